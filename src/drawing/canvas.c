/* SPDX-License-Identifier: MIT */
#include "drawing/canvas.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "drawing/escape.h"
#include "drawing/letters.h"

/* Types that every system has, of the metrics that letters.c knows. */
#define OW_FONTS "Helvetica,Arial,Liberation Sans,Nimbus Sans,sans-serif"

/* What a pen is in SVG. Widths in mm. */
typedef struct pen_row {
    const char *attributes;
} pen_row;

static const pen_row PENS[OW_PEN_COUNT] = {
    [OW_PEN_NONE] = {"stroke=\"none\""},
    [OW_PEN_THICK] = {"stroke-width=\".45\""},
    [OW_PEN_EDGE] = {"stroke-width=\".3\""},
    [OW_PEN_THIN] = {"stroke-width=\".2\""},
    [OW_PEN_HATCH] = {"stroke-width=\".13\""},
    [OW_PEN_HIDDEN] = {"stroke-width=\".22\" stroke-dasharray=\"1.6 .8\""},
    [OW_PEN_CENTRE] = {"stroke-width=\".18\" stroke-dasharray=\"5 .9 .7 .9\""},
    [OW_PEN_FLOW] = {"stroke=\"#06c\" stroke-width=\".6\" stroke-dasharray=\"3.2 1.1\""},
    [OW_PEN_LEADER] = {"stroke-width=\".18\""},
    [OW_PEN_BOLD] = {"stroke-width=\".6\""},
    [OW_PEN_DASHED] = {"stroke-width=\".6\" stroke-dasharray=\"3 1.2\""},
    [OW_PEN_DOTTED] = {"stroke-width=\".6\" stroke-dasharray=\".7 1\""},
    [OW_PEN_GRID] = {"stroke=\"#888\" stroke-width=\".13\""},
};

static const char *const FILLS[OW_FILL_COUNT] = {
    [OW_FILL_NONE] = "",
    [OW_FILL_WHITE] = " fill=\"#fff\"",
    [OW_FILL_BLACK] = " fill=\"#000\"",
    [OW_FILL_PALE] = " fill=\"#ddd\"",
};

ow_canvas ow_canvas_new(const ow_context *context)
{
    return (ow_canvas){ow_text_new(context), ow_text_new(context), false};
}

void ow_canvas_done(ow_canvas *canvas)
{
    ow_text_done(&canvas->body);
    ow_text_done(&canvas->path);
}

ow_status ow_canvas_status(const ow_canvas *canvas)
{
    if (canvas->body.failed || canvas->path.failed)
        return OW_MEMORY;
    return canvas->bad ? OW_FAULT : OW_OK;
}

void ow_svg_number(ow_canvas *canvas, ow_text *text, double number)
{
    if (!isfinite(number) || fabs(number) > 1e6) {
        canvas->bad = true;
        number = 0.0;
    }
    long hundredths = lround(number * 100.0);
    if (hundredths < 0)
        ow_text_char(text, '-');
    hundredths = labs(hundredths);
    if (hundredths >= 100 || hundredths == 0)
        ow_text_format(text, "%ld", hundredths / 100);
    if (hundredths % 100 == 0)
        return;
    ow_text_format(text, hundredths % 10 == 0 ? ".%ld" : ".%02ld",
                   hundredths % 10 == 0 ? hundredths % 100 / 10 : hundredths % 100);
}

static void put_spot(ow_canvas *canvas, ow_spot spot)
{
    ow_svg_number(canvas, &canvas->path, spot.x);
    ow_text_char(&canvas->path, ' ');
    ow_svg_number(canvas, &canvas->path, spot.y);
}

void ow_shape_move(ow_canvas *canvas, ow_spot to)
{
    ow_text_char(&canvas->path, 'M');
    put_spot(canvas, to);
}

void ow_shape_line(ow_canvas *canvas, ow_spot to)
{
    ow_text_char(&canvas->path, 'L');
    put_spot(canvas, to);
}

void ow_shape_curve(ow_canvas *canvas, ow_spot first, ow_spot second, ow_spot to)
{
    ow_text_char(&canvas->path, 'C');
    put_spot(canvas, first);
    ow_text_char(&canvas->path, ' ');
    put_spot(canvas, second);
    ow_text_char(&canvas->path, ' ');
    put_spot(canvas, to);
}

void ow_shape_close(ow_canvas *canvas)
{
    ow_text_char(&canvas->path, 'Z');
}

static void end_shape(ow_canvas *canvas, const char *pen, const char *fill)
{
    if (canvas->path.length > 0)
        ow_text_format(&canvas->body, "<path %s%s d=\"", pen, fill);
    if (canvas->path.length > 0) {
        ow_text_bytes(&canvas->body, canvas->path.data, canvas->path.length);
        ow_text_add(&canvas->body, "\"/>\n");
    }
    canvas->path.length = 0;
}

void ow_shape_end(ow_canvas *canvas, ow_pen pen, ow_fill fill)
{
    end_shape(canvas, PENS[pen].attributes, FILLS[fill]);
}

void ow_shape_edge(ow_canvas *canvas)
{
    end_shape(canvas, "stroke-width=\".9\"", "");
}

void ow_draw_line(ow_canvas *canvas, ow_pen pen, ow_spot from, ow_spot to)
{
    ow_shape_move(canvas, from);
    ow_shape_line(canvas, to);
    ow_shape_end(canvas, pen, OW_FILL_NONE);
}

void ow_draw_circle(ow_canvas *canvas, ow_pen pen, ow_fill fill, ow_spot centre, double radius)
{
    ow_text_format(&canvas->body, "<circle %s%s cx=\"", PENS[pen].attributes, FILLS[fill]);
    ow_svg_number(canvas, &canvas->body, centre.x);
    ow_text_add(&canvas->body, "\" cy=\"");
    ow_svg_number(canvas, &canvas->body, centre.y);
    ow_text_add(&canvas->body, "\" r=\"");
    ow_svg_number(canvas, &canvas->body, radius);
    ow_text_add(&canvas->body, "\"/>\n");
}

void ow_draw_box(ow_canvas *canvas, ow_pen pen, ow_fill fill, ow_spot corner, double width, double height)
{
    ow_shape_move(canvas, corner);
    ow_shape_line(canvas, (ow_spot){corner.x + width, corner.y});
    ow_shape_line(canvas, (ow_spot){corner.x + width, corner.y + height});
    ow_shape_line(canvas, (ow_spot){corner.x, corner.y + height});
    ow_shape_close(canvas);
    ow_shape_end(canvas, pen, fill);
}

void ow_draw_arrowhead(ow_canvas *canvas, ow_spot tip, ow_spot direction, double size)
{
    double length = hypot(direction.x, direction.y);
    if (length <= 0.0)
        return;
    double x = direction.x / length, y = direction.y / length;
    ow_spot back = {tip.x - size * x, tip.y - size * y};
    ow_shape_move(canvas, tip);
    ow_shape_line(canvas, (ow_spot){back.x - 0.26 * size * y, back.y + 0.26 * size * x});
    ow_shape_line(canvas, (ow_spot){back.x + 0.26 * size * y, back.y - 0.26 * size * x});
    ow_shape_close(canvas);
    ow_shape_end(canvas, OW_PEN_NONE, OW_FILL_BLACK);
}

void ow_draw_words_bytes(ow_canvas *canvas, const ow_type *type, ow_spot at, const char *words, size_t length)
{
    static const char *const ANCHORS[] = {"", " text-anchor=\"middle\"", " text-anchor=\"end\""};
    if (length == 0)
        return;
    ow_text *body = &canvas->body;
    ow_text_format(body, "<text fill=\"%s\" stroke=\"none\" font-family=\"" OW_FONTS "\" x=\"",
                   type->white ? "#fff" : "#000");
    ow_svg_number(canvas, body, at.x);
    ow_text_add(body, "\" y=\"");
    ow_svg_number(canvas, body, at.y);
    ow_text_add(body, "\" font-size=\"");
    ow_svg_number(canvas, body, type->size);
    ow_text_add(body, "\" textLength=\"");
    ow_svg_number(canvas, body, ow_letters_width(words, length, type->size, type->bold));
    ow_text_format(body, "\" lengthAdjust=\"spacingAndGlyphs\"%s%s", ANCHORS[type->anchor],
                   type->bold ? " font-weight=\"bold\"" : "");
    if (type->turned) {
        ow_text_add(body, " transform=\"rotate(-90 ");
        ow_svg_number(canvas, body, at.x);
        ow_text_char(body, ' ');
        ow_svg_number(canvas, body, at.y);
        ow_text_add(body, ")\"");
    }
    ow_text_char(body, '>');
    ow_escape_bytes(body, words, length);
    ow_text_add(body, "</text>\n");
}

void ow_draw_words(ow_canvas *canvas, const ow_type *type, ow_spot at, const char *words)
{
    ow_draw_words_bytes(canvas, type, at, words, strlen(words));
}

void ow_group_begin(ow_canvas *canvas, const char *title)
{
    ow_text_add(&canvas->body, "<g><title>");
    ow_escape(&canvas->body, title);
    ow_text_add(&canvas->body, "</title>\n");
}

void ow_group_end(ow_canvas *canvas)
{
    ow_text_add(&canvas->body, "</g>\n");
}
