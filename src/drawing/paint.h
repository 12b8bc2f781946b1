/* SPDX-License-Identifier: MIT */
/*
 * Parts drawn. What is turned from the bar is shown in half section (ISO 128-3): cut above its axis, from
 * outside below it; tees, crosses, elbows, banjos and ports in full section; switches from outside. Thin
 * sections (washers, O-rings, gaskets) are black. Threads as in ISO 6410-1.
 */
#ifndef OW_DRAWING_PAINT_H
#define OW_DRAWING_PAINT_H

#include "drawing/figure.h"
#include "drawing/hatch.h"
#include "drawing/outline.h"

typedef struct ow_painter {
    ow_canvas *canvas;
    const ow_figure *figure;
    const ow_placed *placed; /* the node in hand */
    double side;             /* which side of its frame is cut: 1 or -1 */
    bool falling;            /* hatching */
    double spacing;
    ow_region regions[OW_HATCH_REGIONS];
    size_t region_count;
} ow_painter;

/* All parts of an arranged figure. OW_OK, OW_MEMORY. */
ow_status ow_paint_figure(ow_canvas *canvas, const ow_figure *figure);

/* ---- by build; each paints painter->placed --------------------------------------------------- */

void ow_paint_straight(ow_painter *painter);
void ow_paint_block(ow_painter *painter);
void ow_paint_bolt(ow_painter *painter);
void ow_paint_eye(ow_painter *painter);
void ow_paint_port(ow_painter *painter);
void ow_paint_switch(ow_painter *painter, bool dashed);
void ow_paint_hose(ow_painter *painter, size_t node);
/* Washers, O-rings, gaskets, welds and clamps at the joint of a node with its parent. */
void ow_paint_seal(ow_painter *painter, size_t child);

/* ---- shared -------------------------------------------------------------------------------- */

/* A leg's frame: x from the hub to the tip, y to the side. */
typedef struct ow_axis {
    ow_spot origin;
    double x, y; /* direction on paper */
    double scale;
} ow_axis;
ow_axis ow_leg_axis(const ow_placed *placed, size_t leg);
ow_spot ow_axis_spot(const ow_axis *axis, double along, double side);
/* 1 if positive sides of the axis lie up on the paper (or to the left of an upright one), else -1. */
double ow_axis_upper(const ow_axis *axis);

/* The outline of a leg as it is joined. */
void ow_painter_outline(const ow_painter *painter, size_t leg, ow_outline *outline);
/* A nut or ferrule: cut on the upper side, from outside below. */
void ow_paint_over(ow_painter *painter, const ow_axis *axis, const ow_outline *outline);
/* A ring cut through: white, edged, hatched; between two runs on one side of the axis. */
void ow_paint_ring(ow_painter *painter, const ow_axis *axis, const ow_run_of_spots *outer,
                   const ow_run_of_spots *inner, double side);
/* The outside of a turned body on one side of its axis; hexagons show an edge. */
void ow_paint_outside(ow_painter *painter, const ow_axis *axis, const ow_run_of_spots *outer, double side,
                      double hexagon);
void ow_paint_threads(ow_painter *painter, const ow_axis *axis, const ow_outline *outline, double side,
                      bool outside_only);

#endif
