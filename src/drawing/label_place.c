/* SPDX-License-Identifier: MIT */
/* The best place for one label. Lengths are millimetres on paper; costs are of the same order. */
#include <float.h>
#include <math.h>

#include "drawing/labels.h"

#define STEP 1.0      /* of the places tried */
#define FINE 14       /* rings in which every place is tried; beyond, every second */
#define REACH 110     /* rings: how far a label may stand off */
#define GAP 0.9       /* between labels, and around obstacles */
#define NEAREST 1.6   /* of a label to its anchor */
#define CROSSING 18.0 /* a leader across another leader */
#define COVERED 1.6   /* each mm of a leader across parts */
#define ROW 1.2       /* for standing level with another label */

static double clamp(double value, double low, double high)
{
    return value < low ? low : value > high ? high : value;
}

/* The part of a line that lies within a box (Liang and Barsky's clipping, 1984). */
static double covered(ow_spot from, ow_spot to, const ow_box *box)
{
    double dx = to.x - from.x, dy = to.y - from.y, low = 0.0, high = 1.0;
    if ((from.x < box->x0 && to.x < box->x0) || (from.x > box->x1 && to.x > box->x1) ||
        (from.y < box->y0 && to.y < box->y0) || (from.y > box->y1 && to.y > box->y1))
        return 0.0;
    const double p[4] = {-dx, dx, -dy, dy};
    const double q[4] = {from.x - box->x0, box->x1 - from.x, from.y - box->y0, box->y1 - from.y};
    for (int side = 0; side < 4; side++) {
        if (p[side] < -1e-12 && q[side] / p[side] > low)
            low = q[side] / p[side];
        else if (p[side] > 1e-12 && q[side] / p[side] < high)
            high = q[side] / p[side];
    }
    return high > low ? (high - low) * sqrt(dx * dx + dy * dy) : 0.0;
}

static double turn(ow_spot a, ow_spot b, ow_spot c)
{
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static bool crosses(ow_spot a, ow_spot b, ow_spot c, ow_spot d)
{
    return turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0;
}

static ow_box widened(const ow_box *box, double by)
{
    return (ow_box){box->x0 - by, box->y0 - by, box->x1 + by, box->y1 + by};
}

bool ow_labels_collide(const ow_label *a, const ow_label *b)
{
    if (!a->at.placed || !b->at.placed)
        return false;
    ow_box wide_a = widened(&a->at.box, 0.4), wide_b = widened(&b->at.box, 0.4);
    return ow_boxes_meet(&a->at.box, &b->at.box, GAP) || covered(a->at.from, a->at.anchor, &wide_b) > 0.0 ||
           covered(b->at.from, b->at.anchor, &wide_a) > 0.0;
}

/* Whether a box may stand there at all. */
static bool is_free(const ow_labels *labels, const ow_label *own, const ow_box *box, bool alone)
{
    if (box->x0 < labels->least_x || box->x1 > labels->most_x)
        return false;
    for (size_t index = 0; index < labels->obstacle_count; index++)
        if (ow_boxes_meet(box, &labels->obstacles[index].box, GAP))
            return false;
    ow_box wide = widened(box, 0.4);
    for (size_t index = 0; index < labels->count && !alone; index++) {
        const ow_label *other = &labels->items[index];
        if (other == own || !other->at.placed)
            continue;
        if (ow_boxes_meet(box, &other->at.box, GAP) || covered(other->at.from, other->at.anchor, &wide) > 0.0)
            return false;
    }
    return true;
}

/* What speaks against a leader; `most` or more where it may not run, or costs too much already. */
static double leader_cost(const ow_labels *labels, const ow_label *own, const ow_label_place *tried,
                          bool alone, double most)
{
    double cost = 0.0;
    for (size_t index = 0; index < labels->count && !alone; index++) {
        const ow_label *other = &labels->items[index];
        if (other == own || !other->at.placed)
            continue;
        ow_box wide = widened(&other->at.box, 0.4);
        if (covered(tried->from, tried->anchor, &wide) > 0.0)
            return most;
        if (crosses(tried->from, tried->anchor, other->at.from, other->at.anchor))
            cost += CROSSING;
        if (cost >= most)
            return most;
    }
    for (size_t index = 0; index < labels->obstacle_count && cost < most; index++) {
        double across = covered(tried->from, tried->anchor, &labels->obstacles[index].box);
        if (across > 0.0 && labels->obstacles[index].words)
            return most;
        cost += COVERED * across;
    }
    return cost;
}

/* The leader leaves the side that faces the anchor, plumb or level where it can. */
static ow_spot leader_start(const ow_box *box, ow_spot anchor)
{
    if (anchor.y > box->y0 + 0.5 && anchor.y < box->y1 - 0.5)
        return (ow_spot){anchor.x < box->x0 ? box->x0 : box->x1, anchor.y};
    return (ow_spot){clamp(anchor.x, box->x0 + 1.0, box->x1 - 1.0),
                     anchor.y < box->y0 + 1.0 ? box->y0 : box->y1};
}

/* A little for rows: labels whose lines stand level with others' read better. */
static double row_bonus(const ow_labels *labels, const ow_label *own, const ow_box *box)
{
    for (size_t index = 0; index < labels->count; index++) {
        const ow_label *other = &labels->items[index];
        if (other != own && other->at.placed && fabs(other->at.box.y0 - box->y0) < 0.01 &&
            fabs(other->at.box.x0 - box->x0) < 70.0)
            return -ROW;
    }
    return 0.0;
}

static void try_place(const ow_labels *labels, const ow_label *label, ow_spot anchor, ow_spot corner,
                      bool alone, ow_label_place *best)
{
    ow_label_place tried = {.box = {corner.x, corner.y, corner.x + label->width, corner.y + label->height},
                            .anchor = anchor,
                            .placed = true};
    tried.from = leader_start(&tried.box, anchor);
    double dx = tried.from.x - anchor.x, dy = tried.from.y - anchor.y, length = sqrt(dx * dx + dy * dy);
    /* A slanted leader is well; a nearly level one under a row of words is not. */
    tried.cost = length + (fabs(dy) < 0.05 ? 0.0 : 3.0 * fabs(dx) / (fabs(dx) + fabs(dy)));
    if (tried.cost - ROW >= best->cost || length < NEAREST || !is_free(labels, label, &tried.box, alone))
        return;
    tried.cost += leader_cost(labels, label, &tried, alone, best->cost + ROW - tried.cost);
    if (tried.cost - ROW >= best->cost)
        return;
    tried.cost += row_bonus(labels, label, &tried.box);
    if (tried.cost < best->cost - 1e-9)
        *best = tried;
}

/* The places of the grid whose distance from the anchor is `ring` steps. */
static void try_ring(const ow_labels *labels, const ow_label *label, ow_spot anchor, int ring, bool alone,
                     ow_label_place *best)
{
    double left = floor((anchor.x - 0.5 * label->width) / STEP) * STEP;
    double top = floor((anchor.y - 0.5 * label->height) / STEP) * STEP;
    int across = (int)ceil(0.5 * label->width / STEP) + ring,
        down = (int)ceil(0.5 * label->height / STEP) + ring;
    int stride = ring < FINE ? 1 : 2;
    for (int i = -across; i <= across; i += stride) {
        try_place(labels, label, anchor, (ow_spot){left + i * STEP, top - down * STEP}, alone, best);
        try_place(labels, label, anchor, (ow_spot){left + i * STEP, top + down * STEP}, alone, best);
    }
    for (int i = -down + 1; i < down; i += stride) {
        try_place(labels, label, anchor, (ow_spot){left - across * STEP, top + i * STEP}, alone, best);
        try_place(labels, label, anchor, (ow_spot){left + across * STEP, top + i * STEP}, alone, best);
    }
}

/* Nothing free within reach (a very crowded drawing): under everything, in a column. */
static void place_below(const ow_labels *labels, const ow_label *label, ow_label_place *best)
{
    double lowest = 0.0;
    for (size_t index = 0; index < labels->obstacle_count; index++)
        lowest = fmax(lowest, labels->obstacles[index].box.y1);
    for (size_t index = 0; index < labels->count; index++)
        if (labels->items[index].at.placed && &labels->items[index] != label)
            lowest = fmax(lowest, labels->items[index].at.box.y1);
    best->box =
        (ow_box){labels->least_x, lowest + 2.0, labels->least_x + label->width, lowest + 2.0 + label->height};
    best->anchor = label->anchors[0];
    best->from = leader_start(&best->box, best->anchor);
    best->cost = 1000.0;
    best->placed = true;
}

ow_label_place ow_label_find_place(const ow_labels *labels, const ow_label *label, bool alone)
{
    ow_label_place best = {.cost = DBL_MAX};
    for (int ring = 0; ring < REACH && ring * STEP < best.cost + ROW; ring += ring < FINE ? 1 : 2)
        for (size_t anchor = 0; anchor < label->anchor_count; anchor++)
            try_ring(labels, label, label->anchors[anchor], ring, alone, &best);
    if (!best.placed)
        place_below(labels, label, &best);
    return best;
}
