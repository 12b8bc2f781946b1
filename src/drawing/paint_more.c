/* SPDX-License-Identifier: MIT */
/* Switches, senders, hoses and pipes, and what lies between two ends. */
#include <math.h>
#include <string.h>

#include "drawing/paint.h"

/* ---- switches ------------------------------------------------------------------------------ */

static void put(ow_run_of_spots *run, double x, double radius)
{
    if (run->count < OW_OUTLINE_SPOTS)
        run->spots[run->count++] = (ow_spot){x, radius};
}

/* Shapes of our own: a hexagon, a cap and a blade; a sender's can is wide. */
static void switch_run(const ow_anatomy *anatomy, ow_run_of_spots *run)
{
    double body = anatomy->body, head = anatomy->head;
    double can = anatomy->build == OW_BUILD_SENDER ? 1.5 * body : 0.8 * body;
    double hexagon = fmin(0.3 * head, 0.8 * body);
    run->count = 0;
    put(run, 0.0, body);
    put(run, hexagon, body);
    put(run, hexagon, 0.62 * body);
    put(run, hexagon + 0.08 * head, 0.62 * body);
    put(run, hexagon + 0.08 * head, can);
    put(run, 0.76 * head, can);
    put(run, 0.80 * head, 0.8 * can);
    put(run, 0.80 * head, 0.22 * body);
    put(run, head, 0.22 * body);
}

void ow_paint_switch(ow_painter *painter, bool dashed)
{
    const ow_anatomy *anatomy = &painter->placed->anatomy;
    ow_outline outline;
    ow_run_of_spots body;
    ow_painter_outline(painter, 0, &outline);
    ow_axis axis = ow_leg_axis(painter->placed, 0), back = axis;
    back.x = -axis.x;
    back.y = -axis.y;
    if (dashed) { /* something of which only the end is known */
        ow_spot corner = ow_axis_spot(&back, anatomy->head, anatomy->body);
        ow_shape_move(painter->canvas, ow_axis_spot(&back, 0.0, anatomy->body));
        ow_shape_line(painter->canvas, corner);
        ow_shape_line(painter->canvas, ow_axis_spot(&back, anatomy->head, -anatomy->body));
        ow_shape_line(painter->canvas, ow_axis_spot(&back, 0.0, -anatomy->body));
        ow_shape_close(painter->canvas);
        ow_shape_end(painter->canvas, OW_PEN_HIDDEN, OW_FILL_WHITE);
    } else {
        switch_run(anatomy, &body);
        ow_paint_outside(painter, &back, &body, 1.0, anatomy->body);
        ow_paint_outside(painter, &back, &body, -1.0, anatomy->body);
    }
    ow_run_of_spots stub = {.count = 0};
    for (size_t index = 1; index < outline.outer.count; index++)
        stub.spots[stub.count++] = outline.outer.spots[index];
    ow_paint_outside(painter, &axis, &stub, 1.0, 0.0);
    ow_paint_outside(painter, &axis, &stub, -1.0, 0.0);
    ow_paint_threads(painter, &axis, &outline, 1.0, true);
    ow_paint_threads(painter, &axis, &outline, -1.0, true);
}

/* ---- hoses and pipes ------------------------------------------------------------------------ */

#define WAY_SPOTS 96

/* A way with its corners rounded, as a fine line of spots. */
static size_t round_way(const ow_hose_way *way, ow_spot spots[WAY_SPOTS])
{
    size_t count = 0;
    spots[count++] = way->spots[0];
    for (size_t index = 1; index + 1 < way->count; index++) {
        ow_spot a = way->spots[index - 1], b = way->spots[index], c = way->spots[index + 1];
        double before = hypot(b.x - a.x, b.y - a.y), after = hypot(c.x - b.x, c.y - b.y);
        double reach = fmin(fmin(0.5 * before, 0.5 * after), fmax(2.2 * way->outer, 7.0));
        if (before < 0.01 || after < 0.01)
            continue;
        ow_spot p = {b.x - reach * (b.x - a.x) / before, b.y - reach * (b.y - a.y) / before};
        ow_spot q = {b.x + reach * (c.x - b.x) / after, b.y + reach * (c.y - b.y) / after};
        for (int step = 0; step <= 10 && count < WAY_SPOTS - 1; step++) { /* a parabola through the corner */
            double t = step / 10.0, s = 1.0 - t;
            spots[count++] = (ow_spot){s * s * p.x + 2.0 * s * t * b.x + t * t * q.x,
                                       s * s * p.y + 2.0 * s * t * b.y + t * t * q.y};
        }
    }
    spots[count++] = way->spots[way->count - 1];
    return count;
}

/* One side of a way: at one offset up to its middle spot, at another from there on. */
typedef struct way_line {
    const ow_spot *spots;
    size_t count, middle;
    double near, far; /* offsets */
} way_line;

static void way_side(ow_canvas *canvas, const way_line *line, bool backward, bool move)
{
    for (size_t step = 0; step < line->count; step++) {
        size_t index = backward ? line->count - 1 - step : step;
        ow_spot a = line->spots[index == 0 ? 0 : index - 1];
        ow_spot b = line->spots[index + 1 == line->count ? index : index + 1];
        double length = fmax(hypot(b.x - a.x, b.y - a.y), 1e-9);
        double offset = index < line->middle ? line->near : line->far;
        ow_spot at = {line->spots[index].x - offset * (b.y - a.y) / length,
                      line->spots[index].y + offset * (b.x - a.x) / length};
        if (move && step == 0)
            ow_shape_move(canvas, at);
        else
            ow_shape_line(canvas, at);
    }
}

/* Both sides; closed and without its ends, or the lines alone. */
static void way_sides(ow_canvas *canvas, way_line line, bool surface)
{
    way_side(canvas, &line, false, true);
    line.near = -line.near;
    line.far = -line.far;
    way_side(canvas, &line, surface, !surface);
    if (surface)
        ow_shape_close(canvas);
}

/* The middle of the longest straight piece, and its direction. */
static ow_spot way_middle(const ow_hose_way *way, ow_spot *direction)
{
    double longest = -1.0;
    ow_spot middle = way->spots[0];
    for (size_t index = 0; index + 1 < way->count; index++) {
        ow_spot a = way->spots[index], b = way->spots[index + 1];
        double length = hypot(b.x - a.x, b.y - a.y);
        if (length <= longest)
            continue;
        longest = length;
        middle = (ow_spot){0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
        *direction = (ow_spot){(b.x - a.x) / fmax(length, 1e-9), (b.y - a.y) / fmax(length, 1e-9)};
    }
    return middle;
}

/* A piece left out: a gap between two wavy lines. */
static void break_way(ow_canvas *canvas, const ow_hose_way *way)
{
    ow_spot d = {1.0, 0.0};
    ow_spot m = way_middle(way, &d);
    double half = 0.5 * fmax(way->outer, way->far_outer) + 0.6;
    ow_spot n = {-d.y, d.x};
    ow_shape_move(canvas, (ow_spot){m.x - d.x + half * n.x, m.y - d.y + half * n.y});
    ow_shape_line(canvas, (ow_spot){m.x + d.x + half * n.x, m.y + d.y + half * n.y});
    ow_shape_line(canvas, (ow_spot){m.x + d.x - half * n.x, m.y + d.y - half * n.y});
    ow_shape_line(canvas, (ow_spot){m.x - d.x - half * n.x, m.y - d.y - half * n.y});
    ow_shape_close(canvas);
    ow_shape_end(canvas, OW_PEN_NONE, OW_FILL_WHITE);
    for (int side = -1; side <= 1; side += 2) {
        ow_spot a = {m.x + side * d.x + half * n.x, m.y + side * d.y + half * n.y};
        ow_spot b = {m.x + side * d.x - half * n.x, m.y + side * d.y - half * n.y};
        ow_spot c = {m.x + side * d.x, m.y + side * d.y};
        ow_shape_move(canvas, a);
        ow_shape_curve(canvas, (ow_spot){a.x + 1.3 * d.x, a.y + 1.3 * d.y},
                       (ow_spot){c.x + 1.3 * d.x, c.y + 1.3 * d.y}, c);
        ow_shape_curve(canvas, (ow_spot){c.x - 1.3 * d.x, c.y - 1.3 * d.y},
                       (ow_spot){b.x - 1.3 * d.x, b.y - 1.3 * d.y}, b);
    }
    ow_shape_end(canvas, OW_PEN_THIN, OW_FILL_NONE);
}

/* The nut or spud at one end of a rigid pipe. */
static void pipe_end(ow_painter *painter, size_t leg, ow_spot tip, ow_spot toward)
{
    const ow_placed *placed = painter->placed;
    ow_leg own = placed->anatomy.legs[leg];
    ow_outline outline;
    double length = fmax(hypot(toward.x - tip.x, toward.y - tip.y), 1e-9);
    own.length = own.form.stub_mm + 1.0;
    ow_axis axis = {tip, (tip.x - toward.x) / length, (tip.y - toward.y) / length, painter->figure->scale};
    axis.origin = ow_axis_spot(&axis, -own.length, 0.0);
    ow_outline_of(&own, 0.5 * own.form.outer_mm, placed->mates[leg], &outline);
    double side = ow_axis_upper(&axis);
    ow_paint_ring(painter, &axis, &outline.outer, &outline.inner, side);
    ow_paint_outside(painter, &axis, &outline.outer, -side, 0.0);
    ow_paint_over(painter, &axis, &outline);
}

/* Two spots more where the longest piece is broken, so that a stepped hose can change there unseen. */
static size_t split_way(const ow_hose_way *way, ow_spot spots[WAY_SPOTS], size_t count, size_t *middle)
{
    ow_spot d = {1.0, 0.0}, m = way_middle(way, &d);
    double best = 1e9;
    *middle = 1;
    for (size_t index = 0; index + 1 < count; index++) { /* the piece that the middle lies on */
        ow_spot a = spots[index], b = spots[index + 1];
        double off = hypot(a.x - m.x, a.y - m.y) + hypot(b.x - m.x, b.y - m.y) - hypot(b.x - a.x, b.y - a.y);
        if (off < best - 1e-9) {
            best = off;
            *middle = index + 1;
        }
    }
    if (count + 2 > WAY_SPOTS)
        return count;
    memmove(&spots[*middle + 2], &spots[*middle], (count - *middle) * sizeof *spots);
    spots[*middle] = (ow_spot){m.x - 0.1 * d.x, m.y - 0.1 * d.y};
    spots[*middle + 1] = (ow_spot){m.x + 0.1 * d.x, m.y + 0.1 * d.y};
    *middle += 1;
    return count + 2;
}

void ow_paint_hose(ow_painter *painter, size_t node)
{
    ow_hose_way way;
    ow_spot spots[WAY_SPOTS];
    ow_canvas *canvas = painter->canvas;
    size_t middle = 0, enter = painter->figure->layout->nodes[node].enter;
    ow_figure_hose(painter->figure, node, &way);
    size_t count = split_way(&way, spots, round_way(&way, spots), &middle);
    way_line outer = {spots, count, middle, 0.5 * way.outer, 0.5 * way.far_outer};
    way_line inner = {spots, count, middle, 0.5 * way.inner, 0.5 * way.far_inner};
    way_sides(canvas, outer, true);
    ow_shape_end(canvas, OW_PEN_NONE, OW_FILL_WHITE);
    way_sides(canvas, outer, false);
    ow_shape_end(canvas, OW_PEN_THICK, OW_FILL_NONE);
    way_sides(canvas, inner, false);
    ow_shape_end(canvas, OW_PEN_HIDDEN, OW_FILL_NONE);
    break_way(canvas, &way);
    if (painter->placed->anatomy.build == OW_BUILD_PIPE && way.count >= 2) {
        pipe_end(painter, enter, way.spots[0], way.spots[1]);
        if (!way.open)
            pipe_end(painter, 1 - enter, way.spots[way.count - 1], way.spots[way.count - 2]);
    }
}

/* ---- between two ends ----------------------------------------------------------------------- */

static void black_box(ow_canvas *canvas, const ow_axis *axis, double x0, double x1, double r0, double r1)
{
    for (int side = -1; side <= 1; side += 2) {
        ow_shape_move(canvas, ow_axis_spot(axis, x0, side * r0));
        ow_shape_line(canvas, ow_axis_spot(axis, x1, side * r0));
        ow_shape_line(canvas, ow_axis_spot(axis, x1, side * r1));
        ow_shape_line(canvas, ow_axis_spot(axis, x0, side * r1));
        ow_shape_close(canvas);
    }
    ow_shape_end(canvas, OW_PEN_THIN, OW_FILL_BLACK);
}

/* Fillets of a weld where a boss stands on a wall. */
static void weld_fillets(ow_canvas *canvas, const ow_axis *axis, double tip, double radius)
{
    for (int side = -1; side <= 1; side += 2) {
        ow_shape_move(canvas, ow_axis_spot(axis, tip, side * radius));
        ow_shape_line(canvas, ow_axis_spot(axis, tip, side * (radius + 2.5)));
        ow_shape_line(canvas, ow_axis_spot(axis, tip - 2.5, side * radius));
        ow_shape_close(canvas);
    }
    ow_shape_end(canvas, OW_PEN_THIN, OW_FILL_BLACK);
}

/* A tail within its hose shows through in hidden lines. */
static void hidden_tail(ow_painter *painter, const ow_placed *placed, size_t leg, const ow_axis *axis)
{
    ow_outline outline;
    double start = placed->anatomy.legs[leg].length - placed->anatomy.legs[leg].form.enter_mm;
    ow_outline_of(&placed->anatomy.legs[leg], placed->anatomy.body, NULL, &outline);
    for (int side = -1; side <= 1; side += 2) {
        bool move = true;
        for (size_t index = 0; index < outline.outer.count; index++) {
            ow_spot spot = outline.outer.spots[index];
            if (spot.x < start - 1e-6)
                continue;
            if (move)
                ow_shape_move(painter->canvas, ow_axis_spot(axis, start, side * spot.y));
            ow_shape_line(painter->canvas, ow_axis_spot(axis, spot.x, side * spot.y));
            move = false;
        }
    }
    ow_shape_end(painter->canvas, OW_PEN_HIDDEN, OW_FILL_NONE);
}

/* The two bolts of a flange, their heads on the part's side. */
static void flange_bolts(ow_painter *painter, const ow_axis *axis, double back, const ow_drawn_end *form)
{
    double head = 0.8 * form->major_mm, height = 0.65 * form->major_mm, shank = 0.5 * form->major_mm - 0.2;
    ow_canvas *canvas = painter->canvas;
    for (int side = -1; side <= 1; side += 2) {
        double at = side * 0.5 * form->pitch_mm;
        ow_shape_move(canvas, ow_axis_spot(axis, back, at - head));
        ow_shape_line(canvas, ow_axis_spot(axis, back - height, at - head));
        ow_shape_line(canvas, ow_axis_spot(axis, back - height, at + head));
        ow_shape_line(canvas, ow_axis_spot(axis, back, at + head));
        ow_shape_close(canvas);
        ow_shape_end(canvas, OW_PEN_EDGE, OW_FILL_WHITE);
        double end = back + form->stub_mm + form->ring_mm + 1.3 * form->major_mm;
        ow_shape_move(canvas, ow_axis_spot(axis, back, at - shank));
        ow_shape_line(canvas, ow_axis_spot(axis, end, at - shank));
        ow_shape_line(canvas, ow_axis_spot(axis, end, at + shank));
        ow_shape_line(canvas, ow_axis_spot(axis, back, at + shank));
        ow_shape_end(canvas, OW_PEN_EDGE, OW_FILL_WHITE);
        ow_draw_line(canvas, OW_PEN_CENTRE, ow_axis_spot(axis, back - height - 2.0, at),
                     ow_axis_spot(axis, end + 2.0, at));
    }
}

/* What belongs to a leg whose end goes in (or lies on) its mate. */
static void seal_of(ow_painter *painter, const ow_placed *placed, size_t leg, const ow_drawn_end *mate)
{
    const ow_drawn_end *form = &placed->anatomy.legs[leg].form;
    ow_axis axis = ow_leg_axis(placed, leg);
    double tip = placed->anatomy.legs[leg].length, shoulder = tip - form->stub_mm;
    if (form->look == OW_LOOK_STUB && form->o_ring && form->seat == OW_SEAT_O_RING) {
        double ring = 0.5 * form->ring_mm;
        for (int side = -1; side <= 1; side += 2)
            ow_draw_circle(painter->canvas, OW_PEN_THIN, OW_FILL_BLACK,
                           ow_axis_spot(&axis, shoulder + ring, side * (0.5 * form->minor_mm + ring)),
                           ring * axis.scale);
    } else if (form->look == OW_LOOK_STUB && form->ring_mm > 0.0 && !form->o_ring) {
        black_box(painter->canvas, &axis, shoulder, shoulder + form->ring_mm, 0.5 * form->major_mm,
                  0.5 * form->ring_outer_mm);
    } else if (form->look == OW_LOOK_PLATE && mate->look == OW_LOOK_PLATE) {
        black_box(painter->canvas, &axis, tip, tip + form->ring_mm,
                  0.5 * placed->anatomy.legs[leg].bore + 1.0, 0.5 * form->outer_mm);
        if (placed->anatomy.build != OW_BUILD_PORT)
            flange_bolts(painter, &axis, shoulder, form);
    } else if (form->look == OW_LOOK_WELD) {
        weld_fillets(painter->canvas, &axis, tip, 0.5 * form->outer_mm);
    } else if ((form->look == OW_LOOK_BARB || form->look == OW_LOOK_BEAD) && mate->look == OW_LOOK_HOSE) {
        hidden_tail(painter, placed, leg, &axis);
        double band = tip - (form->look == OW_LOOK_BARB ? 0.5 : 0.65) * form->stub_mm;
        black_box(painter->canvas, &axis, band - 2.5, band + 2.5, 0.5 * mate->outer_mm,
                  0.5 * mate->outer_mm + 0.9);
    }
}

void ow_paint_seal(ow_painter *painter, size_t child)
{
    const ow_figure *figure = painter->figure;
    const ow_layout_node *node = &figure->layout->nodes[child];
    size_t own = ow_figure_leg(figure, child, node->enter);
    size_t other = ow_figure_leg(figure, node->parent, node->parent_end);
    const ow_placed *a = &figure->nodes[child], *b = &figure->nodes[node->parent];
    bool fixed = a->anatomy.build == OW_BUILD_PORT && b->anatomy.legs[other].form.look == OW_LOOK_PLATE;
    if (!a->is_hose && !fixed)
        seal_of(painter, a, own, &b->anatomy.legs[other].form);
    bool plates = a->anatomy.legs[own].form.look == OW_LOOK_PLATE && a->anatomy.build != OW_BUILD_PORT;
    if (!b->is_hose && !plates) /* a gasket between two plates once, from the loose one's side */
        seal_of(painter, b, other, &a->anatomy.legs[own].form);
}
