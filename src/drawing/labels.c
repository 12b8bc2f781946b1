/* SPDX-License-Identifier: MIT */
#include "drawing/labels.h"

#include "drawing/label_map.h"

#include <float.h>
#include <math.h>
#include <string.h>

#define ROUNDS 3    /* of trying the worst again */
#define WORTH 2.0   /* what a label must gain for others to be moved */
#define CONTENT 4.0 /* a label that costs no more is left where it is */

ow_labels ow_labels_new(const ow_context *context, double least_x, double most_x)
{
    return (ow_labels){.context = context, .least_x = least_x, .most_x = most_x};
}

void ow_labels_done(ow_labels *labels)
{
    ow_release(labels->context, labels->items);
    ow_release(labels->context, labels->obstacles);
    *labels = ow_labels_new(labels->context, labels->least_x, labels->most_x);
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

static void place_all(ow_labels *labels, ow_label_place *places)
{
    for (size_t index = 0; index < labels->count; index++)
        place(labels, index);
    double before = total_cost(labels) + 1.0;
    for (int round = 0; round < ROUNDS && total_cost(labels) < before - 1e-6; round++) {
        before = total_cost(labels);
        for (size_t index = 0; index < labels->count; index++)
            if (labels->items[index].at.cost > CONTENT)
                place(labels, index);
        for (size_t index = 0; index < labels->count; index++)
            if (labels->items[index].at.cost > CONTENT)
                push(labels, index, places);
    }
}

void ow_labels_place(ow_labels *labels)
{
    ow_label_map map;
    ow_label_place *places = ow_new_array(labels->context, labels->count + 1, sizeof *places);
    if (places == NULL || ow_label_map_new(labels, OW_LABEL_GAP, &map) != OW_OK) {
        labels->failed = true;
    } else {
        labels->map = &map;
        place_all(labels, places);
        labels->map = NULL;
        ow_label_map_done(&map);
    }
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
