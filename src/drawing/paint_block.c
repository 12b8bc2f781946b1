/* SPDX-License-Identifier: MIT */
/* Tees, crosses, elbows, gauge adapters, banjos and ports: cut through in full. */
#include <math.h>
#include <string.h>

#include "drawing/paint.h"

#define PI 3.14159265358979323846

/* A run mirrored about its axis, as one region. */
static void both_sides(const ow_axis *axis, const ow_run_of_spots *run, ow_region *region)
{
    region->count = 0;
    for (size_t index = 0; index < run->count; index++)
        ow_region_put(region, ow_axis_spot(axis, run->spots[index].x, run->spots[index].y));
    for (size_t index = run->count; index-- > 0;)
        ow_region_put(region, ow_axis_spot(axis, run->spots[index].x, -run->spots[index].y));
}

static void disc(ow_spot centre, double radius, ow_region *region)
{
    region->count = 0;
    for (int step = 0; step < 32; step++)
        ow_region_put(region, (ow_spot){centre.x + radius * cos(step * PI / 16.0),
                                        centre.y + radius * sin(step * PI / 16.0)});
}

static void box_region(const ow_axis *axis, double x0, double x1, double half, ow_region *region)
{
    region->count = 0;
    ow_region_put(region, ow_axis_spot(axis, x0, half));
    ow_region_put(region, ow_axis_spot(axis, x1, half));
    ow_region_put(region, ow_axis_spot(axis, x1, -half));
    ow_region_put(region, ow_axis_spot(axis, x0, -half));
}

/* Cut metal of several regions together, then the passages in it. `sides` are the passages' walls. */
static void paint_cut(ow_painter *painter, const ow_region *solid, size_t solid_count,
                      const ow_region *hollow, size_t hollow_count)
{
    ow_hatch hatch = {.spacing = painter->spacing, .falling = painter->falling};
    for (size_t index = 0; index < solid_count; index++) {
        ow_region_shape(painter->canvas, &solid[index]);
        hatch.cut[hatch.cut_count++] = &solid[index];
    }
    ow_shape_edge(painter->canvas);
    for (size_t index = 0; index < solid_count; index++)
        ow_region_shape(painter->canvas, &solid[index]);
    ow_shape_end(painter->canvas, OW_PEN_NONE, OW_FILL_WHITE);
    for (size_t index = 0; index < hollow_count; index++)
        hatch.open[hatch.open_count++] = &hollow[index];
    ow_hatch_draw(painter->canvas, &hatch);
}

/* Walls of the passages: each run on both sides, its ends left open; then the passages themselves. */
static void paint_walls(ow_painter *painter, const ow_axis *axes, const ow_outline *outlines, size_t count,
                        const ow_region *hollow, size_t hollow_count)
{
    for (size_t leg = 0; leg < count; leg++)
        for (int side = -1; side <= 1; side += 2) {
            const ow_run_of_spots *run = &outlines[leg].inner;
            for (size_t index = 0; index < run->count; index++) {
                ow_spot spot = ow_axis_spot(&axes[leg], run->spots[index].x, side * run->spots[index].y);
                if (index == 0)
                    ow_shape_move(painter->canvas, spot);
                else
                    ow_shape_line(painter->canvas, spot);
            }
        }
    ow_shape_edge(painter->canvas);
    for (size_t index = 0; index < hollow_count; index++)
        ow_region_shape(painter->canvas, &hollow[index]);
    ow_shape_end(painter->canvas, OW_PEN_NONE, OW_FILL_WHITE);
}

static bool is_bent(const ow_anatomy *anatomy)
{
    return anatomy->leg_count == 2 && fabs(anatomy->legs[1].angle) > 0.01 && anatomy->build == OW_BUILD_BLOCK;
}

void ow_paint_block(ow_painter *painter)
{
    const ow_placed *placed = painter->placed;
    size_t legs = placed->anatomy.leg_count, solids = 0, hollows = 0;
    ow_outline outlines[OW_PART_ENDS];
    ow_axis axes[OW_PART_ENDS];
    ow_region solid[OW_PART_ENDS + 1], hollow[OW_PART_ENDS + 1];
    double bore = 0.0;
    memset(solid, 0, sizeof solid);
    memset(hollow, 0, sizeof hollow);
    for (size_t leg = 0; leg < legs; leg++) {
        ow_painter_outline(painter, leg, &outlines[leg]);
        axes[leg] = ow_leg_axis(placed, leg);
        both_sides(&axes[leg], &outlines[leg].outer, &solid[solids++]);
        both_sides(&axes[leg], &outlines[leg].inner, &hollow[hollows++]);
        bore = fmax(bore, placed->anatomy.legs[leg].bore);
    }
    if (is_bent(&placed->anatomy)) {
        disc(placed->pose.hub, placed->anatomy.body * placed->pose.scale, &solid[solids++]);
        disc(placed->pose.hub, 0.5 * bore * placed->pose.scale, &hollow[hollows++]);
    }
    paint_cut(painter, solid, solids, hollow, hollows);
    paint_walls(painter, axes, outlines, legs, hollow, hollows);
    for (size_t leg = 0; leg < legs; leg++) {
        ow_paint_threads(painter, &axes[leg], &outlines[leg], 1.0, false);
        ow_paint_threads(painter, &axes[leg], &outlines[leg], -1.0, false);
        ow_paint_over(painter, &axes[leg], &outlines[leg]);
    }
}

/* ---- ports --------------------------------------------------------------------------------- */

/* A free-hand line across a piece of wall that goes on (ISO 128-2, line 01.1), as spots of its edge. */
static void wavy_spots(const ow_axis *axis, double half, ow_region *region)
{
    for (int step = 0; step <= 12; step++) {
        double across = half * (1.0 - step / 6.0);
        ow_region_put(region, ow_axis_spot(axis, 0.7 / axis->scale * sin(step * PI / 3.0), -across));
    }
}

/* The sides of a run, without what closes it at its beginning. */
static void open_edge(ow_painter *painter, const ow_region *region)
{
    for (size_t index = 0; index < region->count; index++)
        if (index == 0)
            ow_shape_move(painter->canvas, region->spots[index]);
        else
            ow_shape_line(painter->canvas, region->spots[index]);
}

void ow_paint_port(ow_painter *painter)
{
    const ow_placed *placed = painter->placed;
    const ow_anatomy *anatomy = &placed->anatomy;
    ow_canvas *canvas = painter->canvas;
    ow_leg leg = anatomy->legs[0];
    ow_outline outline;
    ow_region solid, hollow, edge = {.count = 0};
    leg.length += anatomy->head; /* from the broken edge to the tip */
    ow_axis axis = ow_leg_axis(placed, 0);
    axis.origin = ow_axis_spot(&axis, -anatomy->head, 0.0);
    ow_outline_of(&leg, anatomy->body, placed->mates[0], &outline);
    both_sides(&axis, &outline.outer, &solid);
    both_sides(&axis, &outline.inner, &hollow);
    open_edge(painter, &solid);
    ow_shape_edge(canvas);
    wavy_spots(&axis, anatomy->body, &edge);
    wavy_spots(&axis, anatomy->body, &solid);
    ow_region_shape(canvas, &solid);
    ow_shape_end(canvas, OW_PEN_NONE, OW_FILL_WHITE);
    ow_hatch hatch = {.cut = {&solid},
                      .cut_count = 1,
                      .open = {&hollow},
                      .open_count = 1,
                      .spacing = 1.5 * painter->spacing,
                      .falling = painter->falling};
    ow_hatch_draw(canvas, &hatch);
    paint_walls(painter, &axis, &outline, 1, &hollow, 1);
    open_edge(painter, &edge);
    ow_shape_end(canvas, OW_PEN_THIN, OW_FILL_NONE);
    ow_paint_threads(painter, &axis, &outline, 1.0, false);
    ow_paint_threads(painter, &axis, &outline, -1.0, false);
    ow_paint_over(painter, &axis, &outline);
}

/* ---- banjo --------------------------------------------------------------------------------- */

void ow_paint_eye(ow_painter *painter)
{
    const ow_placed *placed = painter->placed;
    const ow_anatomy *anatomy = &placed->anatomy;
    double hole = 0.5 * anatomy->width, half = 0.5 * anatomy->width;
    ow_outline outline;
    ow_leg tail = anatomy->legs[1];
    ow_region solid[3], hollow[3];
    ow_axis ring = ow_leg_axis(placed, 0), axis = ow_leg_axis(placed, 1);
    ow_outline_of(&tail, fmin(0.42 * anatomy->width + 0.5 * tail.bore, half), placed->mates[1], &outline);
    box_region(&ring, -anatomy->body, anatomy->body, half, &solid[0]);
    both_sides(&axis, &outline.outer, &solid[1]);
    box_region(&ring, -hole - 0.1, hole + 0.1, half, &hollow[0]);
    box_region(&ring, -hole - 0.16 * anatomy->width, hole + 0.16 * anatomy->width, 0.32 * anatomy->width,
               &hollow[1]);
    both_sides(&axis, &outline.inner, &hollow[2]);
    paint_cut(painter, solid, 2, hollow, 3);
    for (size_t index = 0; index < 2; index++)
        ow_region_shape(painter->canvas, &hollow[index]);
    ow_shape_end(painter->canvas, OW_PEN_EDGE, OW_FILL_NONE);
    paint_walls(painter, &axis, &outline, 1, hollow, 3);
    ow_paint_threads(painter, &axis, &outline, 1.0, false);
    ow_paint_threads(painter, &axis, &outline, -1.0, false);
    ow_paint_over(painter, &axis, &outline);
}

/* The bolt's axis: from the middle of the first eye towards the head. */
static ow_axis bolt_axis(const ow_placed *placed)
{
    ow_axis axis = ow_leg_axis(placed, 0);
    axis.x = -axis.x;
    axis.y = -axis.y;
    return axis;
}

/* Rings on both faces of each eye, black. */
static void paint_rings(ow_painter *painter, const ow_axis *axis, const ow_anatomy *anatomy)
{
    double ring = anatomy->legs[1].form.ring_mm, inner = 0.5 * anatomy->legs[0].form.major_mm;
    double outer = fmax(0.5 * anatomy->legs[1].form.ring_outer_mm, 1.3 * inner);
    size_t eyes = anatomy->leg_count - 1;
    for (size_t index = 0; index <= eyes; index++) {
        double from = -0.5 * anatomy->width - ring + (double)index * (anatomy->width + ring);
        for (int side = -1; side <= 1; side += 2) {
            ow_shape_move(painter->canvas, ow_axis_spot(axis, from, side * inner));
            ow_shape_line(painter->canvas, ow_axis_spot(axis, from + ring, side * inner));
            ow_shape_line(painter->canvas, ow_axis_spot(axis, from + ring, side * outer));
            ow_shape_line(painter->canvas, ow_axis_spot(axis, from, side * outer));
            ow_shape_close(painter->canvas);
        }
    }
    ow_shape_end(painter->canvas, OW_PEN_THIN, OW_FILL_BLACK);
}

static void paint_head(ow_painter *painter, const ow_axis *axis, double from, double height, double radius)
{
    ow_run_of_spots run = {.count = 0};
    double deep = 0.12 * radius;
    run.spots[run.count++] = (ow_spot){from, radius};
    run.spots[run.count++] = (ow_spot){from + height - 0.5 * deep, radius};
    run.spots[run.count++] = (ow_spot){from + height, radius - deep};
    ow_paint_outside(painter, axis, &run, 1.0, radius);
    ow_paint_outside(painter, axis, &run, -1.0, radius);
}

void ow_paint_bolt(ow_painter *painter)
{
    const ow_anatomy *anatomy = &painter->placed->anatomy;
    const ow_leg *thread = &anatomy->legs[0];
    double radius = 0.5 * thread->form.major_mm, root = 0.5 * thread->form.minor_mm,
           bore = 0.5 * thread->bore;
    double last = anatomy->legs[anatomy->leg_count - 1].along, width = anatomy->width;
    double under_head = last + 0.5 * width + anatomy->legs[1].form.ring_mm;
    ow_axis axis = bolt_axis(painter->placed);
    ow_region solid, hollow[3];
    size_t hollows = 0;
    ow_run_of_spots shank = {.count = 0};
    shank.spots[shank.count++] = (ow_spot){-thread->length, radius - 0.6 * thread->form.pitch_mm};
    shank.spots[shank.count++] = (ow_spot){-thread->length + 0.6 * thread->form.pitch_mm, radius};
    shank.spots[shank.count++] = (ow_spot){under_head, radius};
    both_sides(&axis, &shank, &solid);
    box_region(&axis, -thread->length, last + 0.6 * anatomy->hole, bore, &hollow[hollows++]);
    for (size_t eye = 1; eye < anatomy->leg_count; eye++)
        box_region(&axis, anatomy->legs[eye].along - 0.5 * anatomy->hole,
                   anatomy->legs[eye].along + 0.5 * anatomy->hole, radius, &hollow[hollows++]);
    paint_cut(painter, &solid, 1, hollow, hollows);
    for (size_t index = 0; index < hollows; index++)
        ow_region_shape(painter->canvas, &hollow[index]);
    ow_shape_end(painter->canvas, OW_PEN_THICK, OW_FILL_NONE);
    for (size_t index = 0; index < hollows; index++)
        ow_region_shape(painter->canvas, &hollow[index]);
    ow_shape_end(painter->canvas, OW_PEN_NONE, OW_FILL_WHITE);
    for (int side = -1; side <= 1; side += 2)
        ow_draw_line(painter->canvas, OW_PEN_THIN, ow_axis_spot(&axis, -thread->length + 0.4, side * root),
                     ow_axis_spot(&axis, -0.5 * width - thread->form.ring_mm, side * root));
    paint_rings(painter, &axis, anatomy);
    paint_head(painter, &axis, under_head, anatomy->head, anatomy->body);
}
