/* SPDX-License-Identifier: MIT */
#include "drawing/label_map.h"

#include <float.h>
#include <math.h>
#include <string.h>

#define CELL 0.5      /* mm */
#define SIDE_MAX 2000 /* cells; what lies beyond a metre of paper is not looked at */

static ow_box bounds_of(const ow_labels *labels, double gap)
{
    ow_box bounds = {labels->least_x, DBL_MAX, labels->most_x, -DBL_MAX};
    for (size_t index = 0; index < labels->obstacle_count; index++) {
        bounds.y0 = fmin(bounds.y0, labels->obstacles[index].box.y0 - gap);
        bounds.y1 = fmax(bounds.y1, labels->obstacles[index].box.y1 + gap);
    }
    return bounds;
}

/* The cells from `low` to `high` that a stretch touches; false if none. */
static bool cells(double from, double to, double origin, size_t count, size_t *low, size_t *high)
{
    double first = (from - origin) / CELL, last = (to - origin) / CELL;
    if (!(last > 0.0) || !(first < (double)count))
        return false;
    *low = first > 0.0 ? (size_t)first : 0;
    *high = last < (double)count ? (size_t)last + 1 : count; /* a cell more on a whole number: no harm */
    if (*high > count)
        *high = count;
    return *high > *low;
}

static void mark(ow_label_map *map, const ow_box *box, double gap)
{
    size_t left = 0, right = 0, top = 0, bottom = 0, stride = map->columns + 1;
    if (!cells(box->x0 - gap, box->x1 + gap, map->x, map->columns, &left, &right) ||
        !cells(box->y0 - gap, box->y1 + gap, map->y, map->rows, &top, &bottom))
        return;
    for (size_t row = top; row < bottom; row++)
        for (size_t column = left; column < right; column++)
            map->sums[(row + 1) * stride + column + 1] = 1;
}

ow_status ow_label_map_new(const ow_labels *labels, double gap, ow_label_map *map)
{
    *map = (ow_label_map){.context = labels->context};
    ow_box bounds = bounds_of(labels, gap);
    if (!(bounds.y1 > bounds.y0))
        return OW_OK; /* no obstacles: everything is free */
    map->x = bounds.x0;
    map->y = bounds.y0;
    map->columns = (size_t)fmin(ceil((bounds.x1 - bounds.x0) / CELL), SIDE_MAX);
    map->rows = (size_t)fmin(ceil((bounds.y1 - bounds.y0) / CELL), SIDE_MAX);
    map->sums = ow_new_array(labels->context, (map->columns + 1) * (map->rows + 1), sizeof *map->sums);
    if (map->sums == NULL) {
        map->columns = map->rows = 0;
        return OW_MEMORY;
    }
    for (size_t index = 0; index < labels->obstacle_count; index++)
        mark(map, &labels->obstacles[index].box, gap);
    size_t stride = map->columns + 1;
    for (size_t row = 1; row <= map->rows; row++)
        for (size_t column = 1; column <= map->columns; column++) {
            unsigned *at = &map->sums[row * stride + column];
            *at += at[-1] + at[-(ptrdiff_t)stride] - at[-(ptrdiff_t)stride - 1];
        }
    return OW_OK;
}

void ow_label_map_done(ow_label_map *map)
{
    ow_release(map->context, map->sums);
    map->sums = NULL;
}

bool ow_label_map_is_free(const ow_label_map *map, const ow_box *box)
{
    size_t left = 0, right = 0, top = 0, bottom = 0, stride = map->columns + 1;
    if (map->sums == NULL || !cells(box->x0, box->x1, map->x, map->columns, &left, &right) ||
        !cells(box->y0, box->y1, map->y, map->rows, &top, &bottom))
        return true;
    return map->sums[bottom * stride + right] + map->sums[top * stride + left] ==
           map->sums[top * stride + right] + map->sums[bottom * stride + left];
}
