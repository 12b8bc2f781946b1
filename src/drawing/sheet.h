/* SPDX-License-Identifier: MIT */
/* A sheet of paper that is filled from the top: figures, lines of words, tables; then written as one SVG. */
#ifndef OW_DRAWING_SHEET_H
#define OW_DRAWING_SHEET_H

#include "drawing/canvas.h"

#define OW_SHEET_TYPE 2.7 /* of words in tables, mm */
#define OW_SHEET_LEADING 3.6

typedef struct ow_sheet {
    ow_canvas canvas;
    double width;
    double y;                   /* where the next thing goes */
    ow_text title, description; /* for those who listen */
    bool captioned;             /* headings stand beside it: they are named, not drawn */
    double room;                /* height that the figure may take, mm; 0: as it likes */
} ow_sheet;
/* A sheet below that width is a column of a page: figures are smaller and say less, words are not smaller. */
#define OW_SHEET_NARROW 120.0

ow_sheet ow_sheet_new(const ow_context *context, double width);
void ow_sheet_done(ow_sheet *sheet);

/* A heading, bold, with room above it; it goes into the sheet's title too. */
void ow_sheet_heading(ow_sheet *sheet, const ow_text *words);
/* The same in the title alone. */
void ow_sheet_name(ow_sheet *sheet, const ow_text *words);
/* Words folded to the sheet's width from x on; y moves below them. */
void ow_sheet_words(ow_sheet *sheet, double x, double size, bool bold, const char *words);
/* Words folded to a width with the first base line at `at`; returns how many lines. NULL canvas: only
 * counted. */
size_t ow_draw_folded(ow_canvas *canvas, const ow_type *type, ow_spot at, double width, double leading,
                      const char *words);

/* ---- tables -------------------------------------------------------------------------------- */

#define OW_TABLE_COLUMNS 6
typedef struct ow_column {
    double x, width;
    const char *heading;
} ow_column;

void ow_sheet_table_head(ow_sheet *sheet, const char *title, const ow_column *columns, size_t count);
/* One row; the first `lead` mm of its first column are left free for a mark. Returns the top of its first
 * line. */
double ow_sheet_table_row(ow_sheet *sheet, const ow_column *columns, size_t count, const char *const *cells);

/* ---- writing ------------------------------------------------------------------------------- */

/* Appends the sheet as an SVG. OW_OK, OW_MEMORY. */
ow_status ow_sheet_write(ow_sheet *sheet, ow_text *text);
/* Writes it if status is OW_OK, and frees it. */
ow_status ow_sheet_finish(ow_sheet *sheet, ow_status status, ow_text *text);

#endif
