/* SPDX-License-Identifier: MIT */
/* What all painters share, and the parts turned from the bar. */
#include "drawing/paint.h"

#include <math.h>
#include <string.h>

ow_axis ow_leg_axis(const ow_placed *placed, size_t leg)
{
    double direction = ow_leg_direction(placed, leg);
    return (ow_axis){ow_leg_origin(placed, leg), cos(direction), -sin(direction), placed->pose.scale};
}

ow_spot ow_axis_spot(const ow_axis *axis, double along, double side)
{
    return (ow_spot){axis->origin.x + axis->scale * (along * axis->x + side * axis->y),
                     axis->origin.y + axis->scale * (along * axis->y - side * axis->x)};
}

double ow_axis_upper(const ow_axis *axis)
{
    /* The positive side's direction on paper is (y, -x). */
    if (fabs(axis->x) > 0.3)
        return axis->x > 0.0 ? 1.0 : -1.0;
    return axis->y < 0.0 ? 1.0 : -1.0;
}

void ow_painter_outline(const ow_painter *painter, size_t leg, ow_outline *outline)
{
    const ow_anatomy *anatomy = &painter->placed->anatomy;
    ow_outline_of(&anatomy->legs[leg], anatomy->body, painter->placed->mates[leg], outline);
}

static ow_region ring_region(const ow_axis *axis, const ow_run_of_spots *outer, const ow_run_of_spots *inner,
                             double side)
{
    ow_region region = {.count = 0};
    for (size_t index = 0; index < outer->count; index++)
        ow_region_put(&region, ow_axis_spot(axis, outer->spots[index].x, side * outer->spots[index].y));
    for (size_t index = inner->count; index-- > 0;)
        ow_region_put(&region, ow_axis_spot(axis, inner->spots[index].x, side * inner->spots[index].y));
    return region;
}

void ow_paint_ring(ow_painter *painter, const ow_axis *axis, const ow_run_of_spots *outer,
                   const ow_run_of_spots *inner, double side)
{
    ow_region region = ring_region(axis, outer, inner, side);
    ow_region_shape(painter->canvas, &region);
    ow_shape_end(painter->canvas, OW_PEN_THICK, OW_FILL_WHITE);
    ow_hatch hatch = {
        .cut = {&region}, .cut_count = 1, .spacing = painter->spacing, .falling = painter->falling};
    ow_hatch_draw(painter->canvas, &hatch);
}

/* Edges that run round the body: at each corner of its outline, from the axis to the outline. */
static void draw_edges(ow_painter *painter, const ow_axis *axis, const ow_run_of_spots *outer, double side)
{
    for (size_t index = 1; index + 1 < outer->count; index++) {
        ow_spot spot = outer->spots[index];
        double radius =
            fmin(spot.y, outer->spots[index - 1].x == spot.x ? outer->spots[index - 1].y : spot.y);
        if (outer->spots[index + 1].x == spot.x) /* a step: drawn once, at its second corner */
            continue;
        ow_shape_move(painter->canvas, ow_axis_spot(axis, spot.x, 0.0));
        ow_shape_line(painter->canvas, ow_axis_spot(axis, spot.x, side * radius));
    }
    ow_shape_end(painter->canvas, OW_PEN_EDGE, OW_FILL_NONE);
}

/* The edge between two faces of a hexagon seen across corners stands at half its radius. */
static void draw_hexagon_edge(ow_painter *painter, const ow_axis *axis, const ow_run_of_spots *outer,
                              double side, double hexagon)
{
    for (size_t index = 0; index + 1 < outer->count; index++) {
        ow_spot a = outer->spots[index], b = outer->spots[index + 1];
        if (fabs(a.y - hexagon) > 1e-6 || fabs(b.y - hexagon) > 1e-6)
            continue;
        ow_shape_move(painter->canvas, ow_axis_spot(axis, a.x, side * 0.5 * hexagon));
        ow_shape_line(painter->canvas, ow_axis_spot(axis, b.x, side * 0.5 * hexagon));
    }
    ow_shape_end(painter->canvas, OW_PEN_EDGE, OW_FILL_NONE);
}

void ow_paint_outside(ow_painter *painter, const ow_axis *axis, const ow_run_of_spots *outer, double side,
                      double hexagon)
{
    if (outer->count == 0)
        return;
    ow_canvas *canvas = painter->canvas;
    for (int pass = 0; pass < 2; pass++) { /* the surface, then its outline without the axis */
        ow_shape_move(canvas, ow_axis_spot(axis, outer->spots[0].x, 0.0));
        for (size_t index = 0; index < outer->count; index++)
            ow_shape_line(canvas, ow_axis_spot(axis, outer->spots[index].x, side * outer->spots[index].y));
        ow_shape_line(canvas, ow_axis_spot(axis, outer->spots[outer->count - 1].x, 0.0));
        ow_shape_end(canvas, pass == 0 ? OW_PEN_NONE : OW_PEN_THICK,
                     pass == 0 ? OW_FILL_WHITE : OW_FILL_NONE);
    }
    draw_edges(painter, axis, outer, side);
    if (hexagon > 0.0)
        draw_hexagon_edge(painter, axis, outer, side, hexagon);
}

static void draw_thread(ow_painter *painter, const ow_axis *axis, const ow_thread_line *line, double side)
{
    ow_draw_line(painter->canvas, OW_PEN_THIN, ow_axis_spot(axis, line->from.x, side * line->from.y),
                 ow_axis_spot(axis, line->to.x, side * line->to.y));
}

void ow_paint_threads(ow_painter *painter, const ow_axis *axis, const ow_outline *outline, double side,
                      bool outside_only)
{
    for (size_t index = 0; index < outline->thread_count; index++)
        if (!outside_only || !outline->threads[index].inside)
            draw_thread(painter, axis, &outline->threads[index], side);
}

void ow_paint_over(ow_painter *painter, const ow_axis *axis, const ow_outline *outline)
{
    if (!outline->has_over)
        return;
    double side = ow_axis_upper(axis);
    bool falling = painter->falling;
    painter->falling = !falling; /* a neighbour is hatched the other way */
    ow_paint_ring(painter, axis, &outline->over_outer, &outline->over_inner, side);
    painter->falling = falling;
    ow_paint_outside(painter, axis, &outline->over_outer, -side,
                     outline->over_hexagonal ? outline->over_outer.spots[1].y : 0.0);
    if (outline->over_has_thread) {
        draw_thread(painter, axis, &outline->over_thread, side);
        if (!outline->over_thread.inside)
            draw_thread(painter, axis, &outline->over_thread, -side);
    }
}

/* ---- turned parts -------------------------------------------------------------------------- */

static void put(ow_run_of_spots *run, double x, double radius)
{
    if (run->count < OW_OUTLINE_SPOTS)
        run->spots[run->count++] = (ow_spot){x, radius};
}

/* The outer runs of two legs made one along the first leg's axis (negative x: the second leg). */
static void join_runs(const ow_run_of_spots *first, const ow_run_of_spots *second, ow_run_of_spots *joined)
{
    joined->count = 0;
    for (size_t index = second->count; index-- > 1;)
        put(joined, -second->spots[index].x, second->spots[index].y);
    for (size_t index = second->count > 0 ? 1 : 0; index < first->count; index++)
        put(joined, first->spots[index].x, first->spots[index].y);
}

/* Corners of a hexagon's ends are turned off. */
static void bevel_hexagon(ow_run_of_spots *run, double radius)
{
    ow_run_of_spots made = {.count = 0};
    double deep = 0.11 * radius;
    for (size_t index = 0; index < run->count; index++) {
        ow_spot spot = run->spots[index];
        bool here = fabs(spot.y - radius) < 1e-6;
        bool before = index > 0 && fabs(run->spots[index - 1].y - radius) < 1e-6;
        bool after = index + 1 < run->count && fabs(run->spots[index + 1].y - radius) < 1e-6;
        if (here && after && !before) {
            put(&made, spot.x, radius - deep);
            put(&made, spot.x + 0.6 * deep, radius);
        } else if (here && before && !after) {
            put(&made, spot.x - 0.6 * deep, radius);
            put(&made, spot.x, radius - deep);
        } else {
            put(&made, spot.x, spot.y);
        }
    }
    *run = made;
}

/* A restrictor's web: a hole in a wall of three millimetres between two drill points. */
static void put_web(const ow_anatomy *anatomy, ow_run_of_spots *inner)
{
    double bore = 0.5 * fmin(anatomy->legs[0].bore, anatomy->legs[1].bore), hole = 0.5 * anatomy->orifice;
    double cone = 0.58 * (bore - hole);
    ow_run_of_spots made = {.count = 0};
    bool placed = false;
    for (size_t index = 0; index < inner->count; index++) {
        if (!placed && inner->spots[index].x > 0.0) {
            put(&made, -1.5 - cone, bore);
            put(&made, -1.5, hole);
            put(&made, 1.5, hole);
            put(&made, 1.5 + cone, bore);
            placed = true;
        }
        put(&made, inner->spots[index].x, inner->spots[index].y);
    }
    *inner = made;
}

static void join_bodies(const ow_anatomy *anatomy, const ow_outline outlines[2], ow_run_of_spots *outer,
                        ow_run_of_spots *inner)
{
    join_runs(&outlines[1].outer, &outlines[0].outer, outer);
    join_runs(&outlines[1].inner, &outlines[0].inner, inner);
    if (anatomy->closed) { /* the head behind, and where the bore ends */
        put(outer, anatomy->head, anatomy->body);
        put(inner, anatomy->legs[0].form.look == OW_LOOK_POCKET ? 0.0 : -0.01, 0.0);
        put(inner, anatomy->head, 0.0);
    }
    if (anatomy->orifice > 0.0)
        put_web(anatomy, inner);
    if (anatomy->hexagonal)
        bevel_hexagon(outer, anatomy->body);
}

void ow_paint_straight(ow_painter *painter)
{
    const ow_anatomy *anatomy = &painter->placed->anatomy;
    ow_outline outlines[2];
    ow_run_of_spots outer, inner;
    memset(outlines, 0, sizeof outlines);
    for (size_t leg = 0; leg < anatomy->leg_count && leg < 2; leg++)
        ow_painter_outline(painter, leg, &outlines[leg]);
    join_bodies(anatomy, outlines, &outer, &inner);
    ow_axis axes[2] = {ow_leg_axis(painter->placed, 0), ow_leg_axis(painter->placed, 0)};
    axes[1].x = -axes[0].x; /* the second leg, or the head of a plug, goes on straight */
    axes[1].y = -axes[0].y;
    double side = ow_axis_upper(&axes[1]);
    ow_paint_ring(painter, &axes[1], &outer, &inner, side);
    ow_paint_outside(painter, &axes[1], &outer, -side, anatomy->hexagonal ? anatomy->body : 0.0);
    for (size_t leg = 0; leg < anatomy->leg_count && leg < 2; leg++) {
        double upper = ow_axis_upper(&axes[leg]);
        ow_paint_threads(painter, &axes[leg], &outlines[leg], upper, false);
        ow_paint_threads(painter, &axes[leg], &outlines[leg], -upper, true);
        ow_paint_over(painter, &axes[leg], &outlines[leg]);
    }
}
