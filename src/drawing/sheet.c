/* SPDX-License-Identifier: MIT */
#include "drawing/sheet.h"

#include <inttypes.h>
#include <math.h>
#include <string.h>

#include "drawing/escape.h"
#include "drawing/letters.h"

ow_sheet ow_sheet_new(const ow_context *context, double width)
{
    return (ow_sheet){.canvas = ow_canvas_new(context),
                      .width = width,
                      .y = 2.0,
                      .title = ow_text_new(context),
                      .description = ow_text_new(context)};
}

void ow_sheet_done(ow_sheet *sheet)
{
    ow_canvas_done(&sheet->canvas);
    ow_text_done(&sheet->title);
    ow_text_done(&sheet->description);
}

size_t ow_draw_folded(ow_canvas *canvas, const ow_type *type, ow_spot at, double width, double leading,
                      const char *words)
{
    size_t lines = 0, length = strlen(words);
    while (length > 0) {
        size_t next = 0;
        size_t bytes = ow_letters_fold(words, length, type->size, type->bold, width, &next);
        if (canvas != NULL)
            ow_draw_words_bytes(canvas, type, (ow_spot){at.x, at.y + leading * (double)lines}, words, bytes);
        words += next;
        length -= next;
        lines++;
    }
    return lines;
}

void ow_sheet_words(ow_sheet *sheet, double x, double size, bool bold, const char *words)
{
    ow_type type = {.size = size, .bold = bold};
    double leading = 1.32 * size;
    size_t lines = ow_draw_folded(&sheet->canvas, &type, (ow_spot){x, sheet->y + size},
                                  sheet->width - x - 2.0, leading, words);
    sheet->y += leading * (double)lines + 0.5;
}

void ow_sheet_name(ow_sheet *sheet, const ow_text *words)
{
    ow_text_add(&sheet->title, sheet->title.length > 0 ? "; " : "");
    ow_text_add(&sheet->title, ow_text_words(words));
    sheet->title.failed = sheet->title.failed || words->failed;
}

void ow_sheet_heading(ow_sheet *sheet, const ow_text *words)
{
    if (!sheet->captioned) {
        sheet->y += sheet->y > 5.0 ? 8.0 : 0.0;
        ow_sheet_words(sheet, 2.0, 3.8, true, ow_text_words(words));
    }
    ow_sheet_name(sheet, words);
}

/* ---- tables -------------------------------------------------------------------------------- */

static void rule(ow_sheet *sheet, ow_pen pen, double y)
{
    ow_draw_line(&sheet->canvas, pen, (ow_spot){1.0, y}, (ow_spot){sheet->width - 1.0, y});
}

void ow_sheet_table_head(ow_sheet *sheet, const char *title, const ow_column *columns, size_t count)
{
    ow_type type = {.size = 2.4};
    sheet->y += 2.5;
    ow_sheet_words(sheet, columns[0].x, 3.2, true, title);
    bool headed = false;
    for (size_t column = 0; column < count; column++)
        headed = headed || columns[column].heading[0] != '\0';
    for (size_t column = 0; column < count && headed; column++)
        if (columns[column].heading[0] != '\0')
            ow_draw_words(&sheet->canvas, &type, (ow_spot){columns[column].x, sheet->y + 2.2},
                          columns[column].heading);
    sheet->y += headed ? 3.4 : 0.4;
    rule(sheet, OW_PEN_EDGE, sheet->y);
    sheet->y += 0.6;
}

double ow_sheet_table_row(ow_sheet *sheet, const ow_column *columns, size_t count, const char *const *cells)
{
    ow_type type = {.size = OW_SHEET_TYPE};
    double top = sheet->y;
    size_t lines = 1;
    for (size_t column = 0; column < count; column++) {
        size_t used = ow_draw_folded(&sheet->canvas, &type, (ow_spot){columns[column].x, top + 3.2},
                                     columns[column].width, OW_SHEET_LEADING, cells[column]);
        lines = used > lines ? used : lines;
    }
    sheet->y = top + fmax(OW_SHEET_LEADING * (double)lines + 1.0, 4.7);
    rule(sheet, OW_PEN_GRID, sheet->y);
    sheet->y += 0.4;
    return top;
}

/* ---- writing ------------------------------------------------------------------------------- */

/* A short name that differs between drawings, so that several may stand in one page (FNV-1a). */
static uint64_t name_of(const ow_text *body)
{
    uint64_t hash = 14695981039346656037u;
    for (size_t index = 0; index < body->length; index++)
        hash = (hash ^ (unsigned char)body->data[index]) * 1099511628211u;
    return hash;
}

static void put_size(ow_sheet *sheet, ow_text *text, const char *name, double size, const char *unit)
{
    ow_text_format(text, " %s=\"", name);
    ow_svg_number(&sheet->canvas, text, size);
    ow_text_format(text, "%s\"", unit);
}

ow_status ow_sheet_write(ow_sheet *sheet, ow_text *text)
{
    ow_status status = ow_canvas_status(&sheet->canvas);
    if (sheet->title.failed || sheet->description.failed)
        status = OW_MEMORY;
    if (status != OW_OK)
        return status;
    double height = sheet->captioned ? sheet->y + 0.3 : ceil(sheet->y + 2.0);
    uint64_t name = name_of(&sheet->canvas.body);
    ow_text_add(text, "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\"");
    ow_text_format(text, " aria-labelledby=\"t%016" PRIx64 "\" aria-describedby=\"d%016" PRIx64 "\"", name,
                   name);
    ow_text_add(text, " viewBox=\"0 0 ");
    ow_svg_number(&sheet->canvas, text, sheet->width);
    ow_text_char(text, ' ');
    ow_svg_number(&sheet->canvas, text, height);
    ow_text_char(text, '"');
    put_size(sheet, text, "width", sheet->width, "mm");
    put_size(sheet, text, "height", height, "mm");
    ow_text_format(text, " lang=\"en\">\n<title id=\"t%016" PRIx64 "\">", name);
    ow_escape(text, ow_text_words(&sheet->title));
    ow_text_format(text, "</title>\n<desc id=\"d%016" PRIx64 "\">", name);
    ow_escape(text, ow_text_words(&sheet->description));
    ow_text_add(
        text,
        "</desc>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n<g fill=\"none\" stroke=\"#000\" "
        "stroke-linejoin=\"round\" stroke-linecap=\"round\">\n");
    ow_text_bytes(text, sheet->canvas.body.data, sheet->canvas.body.length);
    ow_text_add(text, "</g>\n</svg>\n");
    return ow_text_status(text);
}

ow_status ow_sheet_finish(ow_sheet *sheet, ow_status status, ow_text *text)
{
    if (status == OW_OK)
        status = ow_sheet_write(sheet, text);
    ow_sheet_done(sheet);
    return status;
}
