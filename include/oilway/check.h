/* SPDX-License-Identifier: MIT */
/* A layout re-walked: every joint, the order, the bore, the ratings, the closing joint, the trade's rules.
 * Shares no code with the search: it is the second opinion on its answers. */
#ifndef OILWAY_CHECK_H
#define OILWAY_CHECK_H

#include "oilway/finding.h"
#include "oilway/layout.h"

/*
 * Adds what is wrong (and worth noting) to `findings`, in walking order, and each thing that was looked at
 * and is right to `passed` (NULL = not wanted). A layout that does not say what it is held to is held to the
 * defaults of its circuit and machines. Where two ends do not join, the mend names the cheapest adapter of
 * `catalog` that would join them; NULL: none is looked for. OW_OK or OW_MEMORY. Cost: nodes times ports, and
 * the catalogue once for each wrong joint.
 */
ow_status ow_check_layout(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout,
                          ow_findings *findings, ow_findings *passed);

#endif
