/* SPDX-License-Identifier: MIT */
/* The best place for one label. Lengths are millimetres on paper; costs are of the same order. */
#include <float.h>
#include <math.h>

#include "drawing/label_map.h"
#include "drawing/labels.h"

#define STEP 1.0       /* of the places tried */
#define FINE 10        /* rings in which every place is tried; beyond, every second */
#define REACH 110      /* rings: how far a label may stand off */
#define TIGHT_REACH 60 /* the same where height is limited: rather a smaller scale */
#define GAP OW_LABEL_GAP
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

static bool meet(const ow_box *a, const ow_box *b, double margin)
{
    return a->x0 < b->x1 + margin && b->x0 < a->x1 + margin && a->y0 < b->y1 + margin &&
           b->y0 < a->y1 + margin;
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

static ow_box line_box(ow_spot a, ow_spot b)
{
    return (ow_box){a.x < b.x ? a.x : b.x, a.y < b.y ? a.y : b.y, a.x < b.x ? b.x : a.x,
                    a.y < b.y ? b.y : a.y};
}

bool ow_labels_collide(const ow_label *a, const ow_label *b)
{
    if (!a->at.placed || !b->at.placed)
        return false;
    ow_box wide_a = widened(&a->at.box, 0.4), wide_b = widened(&b->at.box, 0.4);
    return meet(&a->at.box, &b->at.box, GAP) || covered(a->at.from, a->at.anchor, &wide_b) > 0.0 ||
           covered(b->at.from, b->at.anchor, &wide_a) > 0.0;
}

/* Whether a box stands clear of the other labels and their leaders. */
static bool is_free(const ow_labels *labels, const ow_label *own, const ow_box *box)
{
    ow_box wide = widened(box, 0.4);
    for (size_t index = 0; index < labels->count; index++) {
        const ow_label *other = &labels->items[index];
        if (other == own || !other->at.placed || !meet(box, &other->at.reach, GAP))
            continue;
        if (meet(box, &other->at.box, GAP) || covered(other->at.from, other->at.anchor, &wide) > 0.0)
            return false;
    }
    return true;
}

/* What speaks against a leader; `most` or more where it may not run, or costs too much already. */
static double leader_cost(const ow_labels *labels, const ow_label *own, const ow_label_place *tried,
                          bool alone, double most)
{
    double cost = 0.0;
    ow_box line = line_box(tried->from, tried->anchor);
    for (size_t index = 0; index < labels->count && !alone; index++) {
        const ow_label *other = &labels->items[index];
        if (other == own || !other->at.placed || !meet(&line, &other->at.reach, 0.5))
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

/* A place being sought for one label. */
typedef struct seeking {
    const ow_labels *labels;
    const ow_label *label;
    bool alone;
    ow_spot anchor;
    double inherent; /* the least that a leader from the anchor costs by the parts that it crosses */
    size_t looked;   /* at places, and at labels in their way */
    ow_label_place best;
} seeking;

static void try_place(seeking *self, double x, double y)
{
    const ow_label *label = self->label;
    const ow_labels *labels = self->labels;
    if (x < labels->least_x || x + label->width > labels->most_x || y < labels->least_y ||
        y + label->height > labels->most_y)
        return;
    ow_label_place tried = {
        .box = {x, y, x + label->width, y + label->height}, .anchor = self->anchor, .placed = true};
    tried.from = leader_start(&tried.box, self->anchor);
    double dx = tried.from.x - self->anchor.x, dy = tried.from.y - self->anchor.y;
    double length = sqrt(dx * dx + dy * dy);
    /* A slanted leader is well; a nearly level one under a row of words is not. */
    tried.cost = length + (fabs(dy) < 0.05 ? 0.0 : 3.0 * fabs(dx) / (fabs(dx) + fabs(dy)));
    self->looked++;
    if (tried.cost + self->inherent - ROW >= self->best.cost || length < NEAREST ||
        !ow_label_map_is_free(labels->map, &tried.box))
        return;
    self->looked += labels->count;
    if (!self->alone && !is_free(labels, label, &tried.box))
        return;
    self->looked += labels->obstacle_count;
    tried.cost += leader_cost(self->labels, label, &tried, self->alone, self->best.cost + ROW - tried.cost);
    if (tried.cost - ROW >= self->best.cost)
        return;
    tried.cost += row_bonus(self->labels, label, &tried.box);
    if (tried.cost < self->best.cost - 1e-9)
        self->best = tried;
}

/* The places of the grid whose distance from the anchor is `ring` steps. */
static void try_ring(seeking *self, int ring)
{
    double left = floor((self->anchor.x - 0.5 * self->label->width) / STEP) * STEP;
    double top = floor((self->anchor.y - 0.5 * self->label->height) / STEP) * STEP;
    int across = (int)ceil(0.5 * self->label->width / STEP) + ring;
    int down = (int)ceil(0.5 * self->label->height / STEP) + ring;
    int stride = ring < FINE ? 1 : 2;
    for (int i = -across; i <= across; i += stride) {
        try_place(self, left + i * STEP, top - down * STEP);
        try_place(self, left + i * STEP, top + down * STEP);
    }
    for (int i = -down + 1; i < down; i += stride) {
        try_place(self, left - across * STEP, top + i * STEP);
        try_place(self, left + across * STEP, top + i * STEP);
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
    best->cost = OW_LABEL_NO_PLACE;
    best->placed = true;
}

/*
 * The least that a leader from an anchor costs by the parts that it must cross, whichever way it leaves: over
 * sixteen directions, a quarter taken off for those between. An anchor in the open costs nothing.
 */
static double inherent_cost(const ow_labels *labels, ow_spot anchor)
{
    double least = DBL_MAX;
    for (int way = 0; way < 16; way++) {
        double angle = way * 0.39269908169872414, cost = 0.0;
        ow_spot to = {anchor.x + 60.0 * cos(angle), anchor.y + 60.0 * sin(angle)};
        for (size_t index = 0; index < labels->obstacle_count && cost < least; index++)
            if (anchor.x >= labels->obstacles[index].box.x0 && anchor.x <= labels->obstacles[index].box.x1 &&
                anchor.y >= labels->obstacles[index].box.y0 && anchor.y <= labels->obstacles[index].box.y1)
                cost += COVERED * covered(anchor, to, &labels->obstacles[index].box);
        least = cost < least ? cost : least;
    }
    return 0.75 * least;
}

ow_label_place ow_label_find_place(ow_labels *labels, const ow_label *label, bool alone)
{
    seeking self = {.labels = labels, .label = label, .alone = alone, .best = {.cost = DBL_MAX}};
    double inherent[OW_LABEL_ANCHORS] = {0.0};
    int reach = labels->least_y > -DBL_MAX ? TIGHT_REACH : REACH;
    if (ow_labels_are_spent(labels))
        reach = 0;
    for (size_t anchor = 0; anchor < label->anchor_count && reach > 0; anchor++)
        inherent[anchor] = inherent_cost(labels, label->anchors[anchor]);
    for (int ring = 0; ring < reach && ring * STEP < self.best.cost + ROW; ring += ring < FINE ? 1 : 2)
        for (size_t anchor = 0; anchor < label->anchor_count; anchor++) {
            self.anchor = label->anchors[anchor];
            self.inherent = inherent[anchor];
            if (ring * STEP + self.inherent < self.best.cost + ROW)
                try_ring(&self, ring);
        }
    labels->looked += self.looked;
    if (!self.best.placed)
        place_below(labels, label, &self.best);
    self.best.reach = line_box(self.best.from, self.best.anchor);
    ow_box_join(&self.best.reach, &self.best.box);
    return self.best;
}
