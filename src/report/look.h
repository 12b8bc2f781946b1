/* SPDX-License-Identifier: MIT */
/* How texts for a person look: signs with an ASCII fallback, colour only where asked, lines folded. */
#ifndef OW_REPORT_LOOK_H
#define OW_REPORT_LOOK_H

#include "oilway/card.h"
#include "oilway/report.h"

typedef enum ow_sign {
    OW_SIGN_DOWN,  /* a line that goes on */
    OW_SIGN_FORK,  /* an exit with others below it */
    OW_SIGN_LAST,  /* the last exit */
    OW_SIGN_JOINT, /* a joint */
    OW_SIGN_DOT,   /* between facts */
    OW_SIGN_TIMES,
    OW_SIGN_GOOD,
    OW_SIGN_BAD,
    OW_SIGN_WARN,
    OW_SIGN_NOTE,
    OW_SIGN_COUNT
} ow_sign;
const char *ow_sign_words(ow_sign sign, const ow_style *style);

typedef enum ow_paint {
    OW_PAINT_STRONG,
    OW_PAINT_FAINT,
    OW_PAINT_GOOD,
    OW_PAINT_BAD,
    OW_PAINT_WARN
} ow_paint;
/* Appends words in a paint; plain where the style has no colour. */
void ow_look_paint(ow_text *text, ow_paint paint, const ow_style *style, const char *words);

/* Columns of UTF-8 words. */
size_t ow_look_width(const char *words);
/* Blanks up to a column, counted from byte `start` of the text; at least one. */
void ow_look_pad(ow_text *text, size_t start, size_t column);
/* Words in a cell: cut and padded to so many columns. */
void ow_look_cell(ow_text *text, const char *words, size_t columns);
/* Appends words folded to the style's width; further lines begin with `indent` blanks. `column` is where the
 * line stands already. Ends without a newline. */
void ow_look_fold(ow_text *text, const ow_style *style, size_t column, size_t indent, const char *words);

/* What a card says on one line: ", 1 x crush ring 14 x 18 x 1.5 mm; 35 to 38.5 N m". */
void ow_look_card(ow_text *text, const ow_card *card);

/* Cents as a decimal number: 31.40. */
void ow_look_price(ow_text *text, int64_t cents);

#endif
