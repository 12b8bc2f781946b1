/* SPDX-License-Identifier: MIT */
/* A graph on a sheet: a frame with round steps, curves told apart by their pen and named at their end. */
#ifndef OW_DRAWING_GRAPH_H
#define OW_DRAWING_GRAPH_H

#include "drawing/sheet.h"

typedef struct ow_range { /* from low to high in steps of 1, 2 or 5 times a power of ten */
    double low, high, step;
} ow_range;
/* The rounded range around two values, in about that many steps. */
ow_range ow_range_around(double low, double high, int steps);

typedef struct ow_graph {
    ow_canvas *canvas;
    ow_spot corner; /* top left of the frame */
    double width, height;
    ow_range x, y;
} ow_graph;

ow_spot ow_graph_spot(const ow_graph *graph, double x, double y);
/* The frame with its grid and figures; titles tell quantity and unit. No figures along x if `bare_x`. */
void ow_graph_frame(const ow_graph *graph, const char *x_title, const char *y_title, bool bare_x);
void ow_graph_curve(const ow_graph *graph, ow_pen pen, const ow_spot *values, size_t count);
/* A level or plumb line at a value, with words at its end. */
void ow_graph_level(const ow_graph *graph, ow_pen pen, double y, const char *words);
void ow_graph_plumb(const ow_graph *graph, ow_pen pen, double x, const char *words);

/* Words right of the frame at heights as near to the values as they can stand without overlapping. */
#define OW_GRAPH_NAMES 8
typedef struct ow_graph_names {
    double values[OW_GRAPH_NAMES];
    const char *words[OW_GRAPH_NAMES];
    ow_pen pens[OW_GRAPH_NAMES];
    size_t count;
} ow_graph_names;
void ow_graph_put_names(const ow_graph *graph, const ow_graph_names *names);
/* The same within the frame, at its right edge, each over the end of its curve. */
void ow_graph_put_names_within(const ow_graph *graph, const ow_graph_names *names);

#endif
