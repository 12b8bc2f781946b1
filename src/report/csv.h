/* SPDX-License-Identifier: MIT */
#ifndef OW_REPORT_CSV_H
#define OW_REPORT_CSV_H

#include "oilway/text.h"

/* Appends words as one CSV field (RFC 4180: quoted where they hold a comma, quote or line end), with a
 * comma before it unless it is the first of its row. */
void ow_csv_words(ow_text *text, const char *words, bool first);

#endif
