/* SPDX-License-Identifier: MIT */
#include "drawing/hatch.h"

#include <float.h>
#include <math.h>

#define CROSSINGS_MAX 64
#define ROOT_HALF 0.70710678118654752440

void ow_region_put(ow_region *region, ow_spot spot)
{
    if (region->count < OW_REGION_SPOTS)
        region->spots[region->count++] = spot;
}

void ow_region_shape(ow_canvas *canvas, const ow_region *region)
{
    for (size_t index = 0; index < region->count; index++)
        if (index == 0)
            ow_shape_move(canvas, region->spots[index]);
        else
            ow_shape_line(canvas, region->spots[index]);
    if (region->count > 0)
        ow_shape_close(canvas);
}

/* Where a line enters or leaves one region: `step` +1 into it, -1 out of it. */
typedef struct crossing {
    double along;
    int into_cut, into_open;
} crossing;

/* A spot in the hatching's own axes: x along the lines, y across them. */
static ow_spot turned(const ow_hatch *hatch, ow_spot spot)
{
    double sign = hatch->falling ? 1.0 : -1.0;
    return (ow_spot){ROOT_HALF * (spot.x + sign * spot.y), ROOT_HALF * (spot.y - sign * spot.x)};
}

static ow_spot turned_back(const ow_hatch *hatch, double along, double across)
{
    double sign = hatch->falling ? 1.0 : -1.0;
    return (ow_spot){ROOT_HALF * (along - sign * across), ROOT_HALF * (across + sign * along)};
}

/* Along the line, by insertion: there are few. */
static void sort_crossings(crossing *crossings, size_t count)
{
    for (size_t index = 1; index < count; index++) {
        crossing moved = crossings[index];
        size_t at = index;
        for (; at > 0 && crossings[at - 1].along > moved.along; at--)
            crossings[at] = crossings[at - 1];
        crossings[at] = moved;
    }
}

/* Adds the crossings of a line with one region, paired in order (even-odd). */
static size_t cross_region(const ow_hatch *hatch, const ow_region *region, double across, bool open,
                           crossing *crossings, size_t count)
{
    size_t first = count;
    for (size_t index = 0; index < region->count && count < CROSSINGS_MAX; index++) {
        ow_spot a = turned(hatch, region->spots[index]);
        ow_spot b = turned(hatch, region->spots[(index + 1) % region->count]);
        if ((a.y <= across) == (b.y <= across))
            continue;
        crossings[count++].along = a.x + (across - a.y) / (b.y - a.y) * (b.x - a.x);
    }
    sort_crossings(crossings + first, count - first);
    for (size_t index = first; index < count; index++) {
        int step = (index - first) % 2 == 0 ? 1 : -1;
        crossings[index].into_cut = open ? 0 : step;
        crossings[index].into_open = open ? step : 0;
    }
    return count;
}

static void draw_line(ow_canvas *canvas, const ow_hatch *hatch, double across)
{
    crossing crossings[CROSSINGS_MAX];
    size_t count = 0;
    for (size_t index = 0; index < hatch->cut_count; index++)
        count = cross_region(hatch, hatch->cut[index], across, false, crossings, count);
    for (size_t index = 0; index < hatch->open_count; index++)
        count = cross_region(hatch, hatch->open[index], across, true, crossings, count);
    sort_crossings(crossings, count);
    int cut = 0, open = 0;
    for (size_t index = 0; index + 1 < count; index++) {
        cut += crossings[index].into_cut;
        open += crossings[index].into_open;
        double from = crossings[index].along, to = crossings[index + 1].along;
        if (cut > 0 && open == 0 && to - from > 0.05) {
            ow_shape_move(canvas, turned_back(hatch, from, across));
            ow_shape_line(canvas, turned_back(hatch, to, across));
        }
    }
}

void ow_hatch_draw(ow_canvas *canvas, const ow_hatch *hatch)
{
    double low = DBL_MAX, high = -DBL_MAX;
    for (size_t index = 0; index < hatch->cut_count; index++)
        for (size_t spot = 0; spot < hatch->cut[index]->count; spot++) {
            double across = turned(hatch, hatch->cut[index]->spots[spot]).y;
            low = fmin(low, across);
            high = fmax(high, across);
        }
    if (!(high - low < 1000.0)) /* nothing, or no number */
        return;
    for (double step = ceil(low / hatch->spacing); step * hatch->spacing < high; step += 1.0)
        draw_line(canvas, hatch, step * hatch->spacing + 0.001);
    ow_shape_end(canvas, OW_PEN_HATCH, OW_FILL_NONE);
}
