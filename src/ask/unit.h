/* SPDX-License-Identifier: MIT */
#ifndef OW_ASK_UNIT_H
#define OW_ASK_UNIT_H

#include "oilway/ask.h"

/* Lays the circuit's and the machines' defaults on *limits and says what was assumed. `said` is the
 * bearing that the asker named, else UNKNOWN. OW_OK or OW_MEMORY. */
ow_status ow_unit_lay_defaults(const ow_ask *ask, ow_bearing said, bool rating_said, ow_limits *limits,
                               ow_findings *findings);

#endif
