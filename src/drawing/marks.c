/* SPDX-License-Identifier: MIT */
#include "drawing/marks.h"

#include <math.h>
#include <stdio.h>

#include "drawing/letters.h"
#include "oilway/joint.h"

#define PI 3.14159265358979323846

ow_seat_mark ow_seat_mark_of(const ow_end *a, const ow_end *b)
{
    if (ow_joint_find(a, b) == NULL)
        return OW_MARK_NONE;
    if (a->form == OW_FORM_BANJO || a->seat == OW_SEAT_BANJO || b->seat == OW_SEAT_BANJO)
        return OW_MARK_BANJO;
    if (a->form == OW_FORM_FLANGE)
        return OW_MARK_FLANGE;
    if (a->form == OW_FORM_WELD)
        return OW_MARK_WELD;
    if (a->form == OW_FORM_HOSE || b->form == OW_FORM_HOSE)
        return a->form == OW_FORM_TAIL || b->form == OW_FORM_TAIL ? OW_MARK_HOSE : OW_MARK_CLAMP;
    switch ((int)(a->seat == OW_SEAT_NONE ? b->seat : a->seat)) {
    case OW_SEAT_WASHER:
    case OW_SEAT_WASHER_CAPTIVE:
        return a->seat == OW_SEAT_TAPER || b->seat == OW_SEAT_TAPER ? OW_MARK_TAPER : OW_MARK_FACE;
    case OW_SEAT_O_RING:
    case OW_SEAT_FACE_O_RING:
        return OW_MARK_O_RING;
    case OW_SEAT_TAPER:
        return b->seat == OW_SEAT_NPSM ? OW_MARK_CONE : OW_MARK_TAPER;
    default:
        return OW_MARK_CONE;
    }
}

const char *ow_seat_mark_words(ow_seat_mark mark)
{
    static const char *const WORDS[OW_MARK_COUNT] = {
        "taper thread, on its flanks",
        "washer on the face",
        "O-ring",
        "cone or flare, metal to metal",
        "banjo, a washer each side",
        "hose on its own tail",
        "hose clamped on a tail",
        "flange with gasket",
        "weld",
        "does not seal",
    };
    return WORDS[mark];
}

void ow_joint_letter(size_t number, char letter[8])
{
    char backwards[8];
    size_t count = 0, left = number + 1;
    for (; left > 0 && count < sizeof backwards - 1; left = (left - 1) / 26)
        backwards[count++] = (char)('A' + (left - 1) % 26);
    for (size_t index = 0; index < count; index++)
        letter[index] = backwards[count - 1 - index];
    letter[count] = '\0';
}

double ow_joint_letter_more(size_t number, double size)
{
    char letter[8] = "";
    ow_joint_letter(number, letter);
    return letter[1] == '\0' ? 0.0 : fmax(ow_words_width(letter, size, true) - size, 0.0);
}

/* ---- drawing ------------------------------------------------------------------------------- */

/* A shape on a grid of 40 by 40 on a mark's square: lines through spots, "x,y" pairs, of which a negative x
 * alone begins anew; or a circle by its middle and radius. */
#define NUMBERS_MAX 26
typedef struct mark_shape {
    ow_seat_mark mark;
    ow_pen pen;
    ow_fill fill;
    bool circle;
    size_t count;
    signed char numbers[NUMBERS_MAX];
} mark_shape;

#define SHAPE(mark, pen, fill, circle, ...)                                  \
    {                                                                        \
        mark, pen, fill, circle, sizeof((const signed char[]){__VA_ARGS__}), \
        {                                                                    \
            __VA_ARGS__                                                      \
        }                                                                    \
    }
#define THICK(mark, ...) SHAPE(mark, OW_PEN_THICK, OW_FILL_NONE, false, __VA_ARGS__)
#define EDGE(mark, ...) SHAPE(mark, OW_PEN_EDGE, OW_FILL_NONE, false, __VA_ARGS__)
#define BLACK(mark, ...) SHAPE(mark, OW_PEN_THIN, OW_FILL_BLACK, false, __VA_ARGS__)

static const mark_shape SHAPES[] = {
    THICK(OW_MARK_TAPER, 5, 8, 10, 13, 15, 9, 20, 14, 25, 11, 30, 15, 35, 13),
    THICK(OW_MARK_TAPER, 5, 32, 10, 27, 15, 31, 20, 26, 25, 29, 30, 25, 35, 27),
    THICK(OW_MARK_FACE, 11, 5, 11, 35, -1, 29, 5, 29, 35),
    BLACK(OW_MARK_FACE, 15, 6, 25, 6, 25, 15, 15, 15, 15, 6, -1, 15, 25, 25, 25, 25, 34, 15, 34, 15, 25),
    THICK(OW_MARK_O_RING, 6, 30, 34, 30, -1, 6, 8, 14, 8, 20, 14, 26, 8, 34, 8),
    SHAPE(OW_MARK_O_RING, OW_PEN_THIN, OW_FILL_BLACK, true, 20, 22, 6),
    THICK(OW_MARK_CONE, 6, 12, 14, 12, 26, 20, 14, 28, 6, 28, -1, 18, 5, 34, 20, 18, 35),
    SHAPE(OW_MARK_BANJO, OW_PEN_THICK, OW_FILL_NONE, true, 20, 20, 8),
    BLACK(OW_MARK_BANJO, 8, 5, 32, 5, 32, 9, 8, 9, 8, 5, -1, 8, 31, 32, 31, 32, 35, 8, 35, 8, 31),
    THICK(OW_MARK_HOSE, 5, 14, 35, 14, -1, 5, 26, 35, 26),
    BLACK(OW_MARK_HOSE, 14, 8, 26, 8, 26, 12, 14, 12, 14, 8, -1, 14, 28, 26, 28, 26, 32, 14, 32, 14, 28),
    THICK(OW_MARK_CLAMP, 5, 16, 35, 16, -1, 5, 24, 35, 24),
    THICK(OW_MARK_CLAMP, 20, 5, 20, 14, -1, 20, 26, 20, 35, -1, 15, 5, 25, 5, -1, 15, 35, 25, 35),
    THICK(OW_MARK_FLANGE, 16, 5, 16, 35, -1, 24, 5, 24, 35),
    EDGE(OW_MARK_FLANGE, 6, 11, 34, 11, -1, 6, 29, 34, 29),
    BLACK(OW_MARK_WELD, 12, 8, 12, 30, 34, 30, 12, 8),
    THICK(OW_MARK_WELD, 5, 32, 36, 32),
    THICK(OW_MARK_NONE, 8, 8, 32, 32, -1, 32, 8, 8, 32),
};

/* The triangle of a warning, which is no joint. */
static const mark_shape TRIANGLE =
    SHAPE(OW_MARK_NONE, OW_PEN_THICK, OW_FILL_WHITE, false, 20, 0, 42, 38, 0, 38, 20, 0);

static ow_spot on_grid(ow_spot corner, const signed char *pair)
{
    return (ow_spot){corner.x + pair[0] * OW_MARK_SIZE / 40.0, corner.y + pair[1] * OW_MARK_SIZE / 40.0};
}

static void draw_lines(ow_canvas *canvas, ow_spot corner, const mark_shape *shape)
{
    bool move = true;
    for (size_t at = 0; at + 1 < shape->count;) {
        if (shape->numbers[at] < 0) {
            move = true;
            at++;
            continue;
        }
        ow_spot spot = on_grid(corner, &shape->numbers[at]);
        if (move)
            ow_shape_move(canvas, spot);
        else
            ow_shape_line(canvas, spot);
        move = false;
        at += 2;
    }
    ow_shape_end(canvas, shape->pen, shape->fill);
}

void ow_draw_seat_mark(ow_canvas *canvas, ow_seat_mark mark, ow_spot corner)
{
    for (size_t index = 0; index < sizeof SHAPES / sizeof SHAPES[0]; index++) {
        const mark_shape *shape = &SHAPES[index];
        if (shape->mark != mark)
            continue;
        if (shape->circle)
            ow_draw_circle(canvas, shape->pen, shape->fill, on_grid(corner, shape->numbers),
                           shape->numbers[2] * OW_MARK_SIZE / 40.0);
        else
            draw_lines(canvas, corner, shape);
    }
}

static void put_number(ow_canvas *canvas, size_t number, ow_spot middle, double size, bool white)
{
    char words[24];
    ow_type type = {.size = size, .bold = true, .anchor = OW_AT_MIDDLE, .white = white};
    snprintf(words, sizeof words, "%zu", number);
    ow_draw_words(canvas, &type, (ow_spot){middle.x, middle.y + 0.36 * size}, words);
}

void ow_draw_number(ow_canvas *canvas, size_t number, ow_spot corner)
{
    ow_spot middle = {corner.x + 0.5 * OW_MARK_SIZE, corner.y + 0.5 * OW_MARK_SIZE};
    ow_draw_circle(canvas, OW_PEN_EDGE, OW_FILL_WHITE, middle, 0.48 * OW_MARK_SIZE);
    put_number(canvas, number, middle, number > 9 ? 2.3 : 2.7, false);
}

void ow_draw_finding_mark(ow_canvas *canvas, ow_severity severity, size_t number, ow_spot corner)
{
    ow_spot middle = {corner.x + 0.5 * OW_MARK_SIZE, corner.y + 0.5 * OW_MARK_SIZE};
    if (severity == OW_ERROR) {
        for (int side = 0; side < 8; side++) {
            ow_spot at = {middle.x + 0.54 * OW_MARK_SIZE * cos((side + 0.5) * PI / 4.0),
                          middle.y + 0.54 * OW_MARK_SIZE * sin((side + 0.5) * PI / 4.0)};
            if (side == 0)
                ow_shape_move(canvas, at);
            else
                ow_shape_line(canvas, at);
        }
        ow_shape_close(canvas);
        ow_shape_end(canvas, OW_PEN_THICK, OW_FILL_BLACK);
    } else if (severity == OW_WARNING) {
        draw_lines(canvas, corner, &TRIANGLE);
        middle.y += 0.12 * OW_MARK_SIZE;
    } else {
        ow_draw_box(canvas, OW_PEN_THICK, OW_FILL_WHITE, (ow_spot){corner.x + 0.2, corner.y + 0.2},
                    OW_MARK_SIZE - 0.4, OW_MARK_SIZE - 0.4);
    }
    put_number(canvas, number, middle, severity == OW_WARNING || number > 9 ? 2.1 : 2.5,
               severity == OW_ERROR);
}
