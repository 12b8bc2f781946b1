/* SPDX-License-Identifier: MIT */
#include "drawing/labels.h"

#include "drawing/label_map.h"

#include <float.h>
#include <math.h>
#include <string.h>

#define ROUNDS 3     /* of trying the worst again */
#define WORTH 2.0    /* what a label must gain for others to be moved */
#define HOPELESS 3.0 /* labels without a place */
#define WELL 20.0    /* an average cost at which no other order is tried */
#define CONTENT 4.0  /* a label that costs no more is left where it is */

typedef enum order_of_labels {
    AS_ADDED,
    BY_LEFT,
    BY_RIGHT,
    BY_TOP,
    BY_FOOT,
    BY_WIDTH,
    ORDER_COUNT
} order_of_labels;

ow_labels ow_labels_new(const ow_context *context, double least_x, double most_x)
{
    return (ow_labels){
        .context = context, .least_x = least_x, .most_x = most_x, .least_y = -DBL_MAX, .most_y = DBL_MAX};
}

void ow_labels_done(ow_labels *labels)
{
    ow_release(labels->context, labels->items);
    ow_release(labels->context, labels->obstacles);
    size_t looked = labels->looked;
    *labels = ow_labels_new(labels->context, labels->least_x, labels->most_x);
    labels->looked = looked;
}

void ow_labels_add(ow_labels *labels, const ow_label *label)
{
    if (ow_grow(labels->context, (void **)&labels->items, &labels->capacity, labels->count + 1,
                sizeof *labels->items) != OW_OK)
        labels->failed = true;
    else
        labels->items[labels->count++] = *label;
}

void ow_labels_block(ow_labels *labels, const ow_box *box, bool words)
{
    if (ow_grow(labels->context, (void **)&labels->obstacles, &labels->obstacle_capacity,
                labels->obstacle_count + 1, sizeof *labels->obstacles) != OW_OK)
        labels->failed = true;
    else
        labels->obstacles[labels->obstacle_count++] = (ow_obstacle){*box, words};
}

/* ---- placing ------------------------------------------------------------------------------- */

static double total_cost(const ow_labels *labels)
{
    double cost = 0.0;
    for (size_t index = 0; index < labels->count; index++)
        cost += labels->items[index].at.cost;
    return cost;
}

static void place(ow_labels *labels, size_t index)
{
    labels->items[index].at.placed = false;
    labels->items[index].at = ow_label_find_place(labels, &labels->items[index], false);
}

static void save(const ow_labels *labels, ow_label_place *places)
{
    for (size_t index = 0; index < labels->count; index++)
        places[index] = labels->items[index].at;
}

static void restore(ow_labels *labels, const ow_label_place *places)
{
    for (size_t index = 0; index < labels->count; index++)
        labels->items[index].at = places[index];
}

/* Gives one label the best place there is, and the others that were there a new one. */
static void push(ow_labels *labels, size_t index, ow_label_place *places)
{
    double before = total_cost(labels), own = labels->items[index].at.cost;
    save(labels, places);
    labels->items[index].at.placed = false;
    labels->items[index].at = ow_label_find_place(labels, &labels->items[index], true);
    if (labels->items[index].at.cost > own - WORTH) { /* no place is much better than its own */
        restore(labels, places);
        return;
    }
    for (size_t other = 0; other < labels->count; other++)
        if (other != index && ow_labels_collide(&labels->items[index], &labels->items[other]))
            labels->items[other].at.placed = false;
    for (size_t other = 0; other < labels->count; other++)
        if (!labels->items[other].at.placed)
            place(labels, other);
    place(labels, index); /* its true cost among the others */
    if (total_cost(labels) >= before - 1e-6)
        restore(labels, places);
}

/* Where a label comes in an order: as they were added, or by where they point. */
static double rank_of(const ow_label *label, size_t index, order_of_labels by)
{
    ow_spot at = label->anchors[0];
    switch (by) {
    case BY_LEFT:
        return at.x;
    case BY_RIGHT:
        return -at.x;
    case BY_TOP:
        return at.y;
    case BY_FOOT:
        return -at.y;
    case BY_WIDTH:
        return -label->width;
    case AS_ADDED:
    case ORDER_COUNT:
    default:
        return (double)index;
    }
}

static void sort_labels(const ow_labels *labels, order_of_labels by, size_t *order)
{
    for (size_t index = 0; index < labels->count; index++) {
        double rank = rank_of(&labels->items[index], index, by);
        size_t at = index;
        for (; at > 0 && rank_of(&labels->items[order[at - 1]], order[at - 1], by) > rank; at--)
            order[at] = order[at - 1];
        order[at] = index;
    }
}

/* Places all anew, first in the order given, and then tries the worst again. */
static void place_all(ow_labels *labels, order_of_labels by, size_t *order, ow_label_place *places)
{
    sort_labels(labels, by, order);
    for (size_t index = 0; index < labels->count; index++)
        labels->items[index].at.placed = false;
    for (size_t index = 0; index < labels->count; index++)
        place(labels, order[index]);
    double before = total_cost(labels) + 1.0;
    for (int round = 0; round < ROUNDS && total_cost(labels) < before - 1e-6 && !ow_labels_are_spent(labels);
         round++) {
        before = total_cost(labels);
        for (size_t index = 0; index < labels->count && !ow_labels_are_spent(labels); index++)
            if (labels->items[index].at.cost > CONTENT)
                place(labels, index);
        for (size_t index = 0; index < labels->count && !ow_labels_are_spent(labels); index++)
            if (labels->items[index].at.cost > CONTENT)
                push(labels, index, places);
    }
}

bool ow_labels_are_spent(const ow_labels *labels)
{
    return labels->looked >= OW_LABEL_EFFORT;
}

bool ow_labels_are_crowded(const ow_labels *labels)
{
    for (size_t index = 0; index < labels->count; index++)
        if (labels->items[index].at.cost >= OW_LABEL_FAR)
            return true;
    return false;
}

/* Whether another order may help: it does not pay where it stands well, nor where much finds no place. */
static bool may_improve(const ow_labels *labels)
{
    double cost = total_cost(labels);
    return (cost > WELL * (double)labels->count || ow_labels_are_crowded(labels)) &&
           !ow_labels_are_spent(labels) && cost < HOPELESS * OW_LABEL_NO_PLACE;
}

/* The best of several orders; the first alone where there is room. */
static void place_best(ow_labels *labels, size_t *order, ow_label_place *places, ow_label_place *best)
{
    bool tight = labels->least_y > -DBL_MAX;
    place_all(labels, AS_ADDED, order, places);
    for (int by = AS_ADDED + 1; tight && by < ORDER_COUNT && may_improve(labels); by++) {
        double before = total_cost(labels);
        save(labels, best);
        place_all(labels, (order_of_labels)by, order, places);
        if (total_cost(labels) >= before)
            restore(labels, best);
    }
}

void ow_labels_place(ow_labels *labels)
{
    ow_label_map map;
    ow_label_place *places = ow_new_array(labels->context, 2 * labels->count + 1, sizeof *places);
    size_t *order = ow_new_array(labels->context, labels->count + 1, sizeof *order);
    if (places == NULL || order == NULL || ow_label_map_new(labels, OW_LABEL_GAP, &map) != OW_OK) {
        labels->failed = true;
    } else {
        labels->map = &map;
        place_best(labels, order, places, places + labels->count);
        labels->map = NULL;
        ow_label_map_done(&map);
    }
    ow_release(labels->context, order);
    ow_release(labels->context, places);
}

ow_box ow_labels_bounds(const ow_labels *labels)
{
    ow_box bounds = {DBL_MAX, DBL_MAX, -DBL_MAX, -DBL_MAX};
    for (size_t index = 0; index < labels->count; index++)
        ow_box_join(&bounds, &labels->items[index].at.box);
    for (size_t index = 0; index < labels->obstacle_count; index++)
        ow_box_join(&bounds, &labels->obstacles[index].box);
    return bounds;
}
