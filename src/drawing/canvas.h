/* SPDX-License-Identifier: MIT */
/*
 * Lines, shapes and words on a sheet, written as SVG. Lengths are millimetres on the paper, x to the right, y
 * down. Presentation attributes only: no style sheet, no script, no reference to anything, so that a drawing
 * can stand inside any page. Line widths after ISO 128-2: 0.5 and half of it.
 */
#ifndef OW_DRAWING_CANVAS_H
#define OW_DRAWING_CANVAS_H

#include "oilway/text.h"

typedef struct ow_spot {
    double x, y;
} ow_spot;

typedef enum ow_pen {
    OW_PEN_NONE,
    OW_PEN_THICK,  /* visible outlines */
    OW_PEN_EDGE,   /* visible edges within an outline */
    OW_PEN_THIN,   /* roots of threads, dimensions */
    OW_PEN_HATCH,  /* cut surfaces */
    OW_PEN_HIDDEN, /* short dashes */
    OW_PEN_CENTRE, /* long dash, dot */
    OW_PEN_FLOW,   /* heavy long dashes: the way of the oil or coolant */
    OW_PEN_LEADER, /* from a label to its place */
    OW_PEN_BOLD,   /* curves of a graph */
    OW_PEN_DASHED, /* a second curve */
    OW_PEN_DOTTED, /* a third curve */
    OW_PEN_GRID,   /* a graph's grid */
    OW_PEN_COUNT
} ow_pen;

typedef enum ow_fill { OW_FILL_NONE, OW_FILL_WHITE, OW_FILL_BLACK, OW_FILL_PALE, OW_FILL_COUNT } ow_fill;

typedef enum ow_anchor { OW_AT_START, OW_AT_MIDDLE, OW_AT_END } ow_anchor;

/* How words are set; size is the height of the font in mm. */
typedef struct ow_type {
    double size;
    bool bold;
    ow_anchor anchor;
    bool white;  /* on a black mark */
    bool turned; /* read from the right: a quarter turn to the left */
} ow_type;

typedef struct ow_canvas {
    ow_text body;
    ow_text path; /* the shape being drawn */
    bool bad;     /* a number that is none was asked for: a fault of ours */
} ow_canvas;

ow_canvas ow_canvas_new(const ow_context *context);
void ow_canvas_done(ow_canvas *canvas);
/* OW_MEMORY, OW_FAULT or OW_OK. */
ow_status ow_canvas_status(const ow_canvas *canvas);

/* A number as SVG has it: at most two decimals. */
void ow_svg_number(ow_canvas *canvas, ow_text *text, double number);

/* A shape is begun by a move, goes on by lines and curves, and is drawn by its end. */
void ow_shape_move(ow_canvas *canvas, ow_spot to);
void ow_shape_line(ow_canvas *canvas, ow_spot to);
void ow_shape_curve(ow_canvas *canvas, ow_spot first, ow_spot second, ow_spot to); /* cubic */
void ow_shape_close(ow_canvas *canvas);
void ow_shape_end(ow_canvas *canvas, ow_pen pen, ow_fill fill);
/* The same with a pen twice as wide: what is filled over afterwards keeps its whole edge. */
void ow_shape_edge(ow_canvas *canvas);

void ow_draw_line(ow_canvas *canvas, ow_pen pen, ow_spot from, ow_spot to);
void ow_draw_circle(ow_canvas *canvas, ow_pen pen, ow_fill fill, ow_spot centre, double radius);
void ow_draw_box(ow_canvas *canvas, ow_pen pen, ow_fill fill, ow_spot corner, double width, double height);
/* A slender arrowhead whose tip is at `tip`, pointing along the direction. */
void ow_draw_arrowhead(ow_canvas *canvas, ow_spot tip, ow_spot direction, double size);

/* Words on their base line at `at`. They are given the width that was reckoned for them. */
void ow_draw_words(ow_canvas *canvas, const ow_type *type, ow_spot at, const char *words);
void ow_draw_words_bytes(ow_canvas *canvas, const ow_type *type, ow_spot at, const char *words,
                         size_t length);

/* A group with a title, which screen readers and pointers show. */
void ow_group_begin(ow_canvas *canvas, const char *title);
void ow_group_end(ow_canvas *canvas);

#endif
