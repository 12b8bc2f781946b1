/* SPDX-License-Identifier: MIT */
/* What to write in place of words that the trade uses and the grammar of an end does not. */
#ifndef OW_ENDS_HINTS_H
#define OW_ENDS_HINTS_H

#include "ends/scan.h"

/* How to write what the word means in the trade ("jic": write flare37), or NULL. */
const char *ow_end_trade_hint(const ow_end_scan *scan, size_t word);

/* How to mend a size that cannot be read (a decimal comma, a pipe thread with another's pitch, a dash that
 * hangs on its flare's name), into mend[size]; "" when nothing is known. */
void ow_end_size_hint(const ow_end_scan *scan, char *mend, size_t size);

#endif
