/* SPDX-License-Identifier: MIT */
#include "drawing/graph.h"

#include <math.h>
#include <stdio.h>

#include "drawing/letters.h"

#define TYPE 2.6
#define NAME_LEADING 4.0
#define STEPS_MAX 40
#define FIGURE_ROOM 5.0 /* mm that a figure along x wants */

ow_range ow_range_around(double low, double high, int steps)
{
    if (!(high - low > 1e-12))
        high = low + 1.0;
    double rough = (high - low) / steps, power = pow(10.0, floor(log10(rough))), share = rough / power;
    double step = power * (share < 1.5 ? 1.0 : share < 3.5 ? 2.0 : share < 7.5 ? 5.0 : 10.0);
    return (ow_range){floor(low / step + 1e-9) * step, ceil(high / step - 1e-9) * step, step};
}

static double share(const ow_range *range, double value)
{
    return (value - range->low) / (range->high - range->low);
}

ow_spot ow_graph_spot(const ow_graph *graph, double x, double y)
{
    return (ow_spot){graph->corner.x + graph->width * share(&graph->x, x),
                     graph->corner.y + graph->height * (1.0 - share(&graph->y, y))};
}

/* A figure of an axis with the decimals that its step has. */
static void figure(double value, double step, char words[32])
{
    int decimals = step < 0.0095 ? 3 : step < 0.095 ? 2 : step < 0.95 ? 1 : 0;
    (void)snprintf(words, 32, "%.*f", decimals, fabs(value) < step * 1e-6 ? 0.0 : value);
    for (char *at = words; *at != '\0'; at++) /* snprintf heeds the locale */
        if (*at == ',')
            *at = '.';
}

static void frame_x(const ow_graph *graph, bool bare)
{
    char words[32];
    ow_type type = {.size = TYPE, .anchor = OW_AT_MIDDLE};
    double apart = graph->width * graph->x.step / (graph->x.high - graph->x.low);
    int every = (int)ceil(FIGURE_ROOM / fmax(apart, 0.5)); /* steps from one figure to the next */
    for (int step = 0; step < STEPS_MAX; step++) {
        double value = graph->x.low + step * graph->x.step;
        if (value > graph->x.high + 1e-9 * graph->x.step || bare)
            break;
        ow_spot foot = ow_graph_spot(graph, value, graph->y.low);
        ow_draw_line(graph->canvas, OW_PEN_GRID, foot, (ow_spot){foot.x, graph->corner.y});
        figure(value, graph->x.step, words);
        if (step % every == 0)
            ow_draw_words(graph->canvas, &type, (ow_spot){foot.x, foot.y + 3.6}, words);
    }
}

static void frame_y(const ow_graph *graph)
{
    char words[32];
    ow_type type = {.size = TYPE, .anchor = OW_AT_END};
    for (int step = 0; step < STEPS_MAX; step++) {
        double value = graph->y.low + step * graph->y.step;
        if (value > graph->y.high + 1e-9 * graph->y.step)
            break;
        ow_spot left = ow_graph_spot(graph, graph->x.low, value);
        ow_draw_line(graph->canvas, OW_PEN_GRID, left, (ow_spot){graph->corner.x + graph->width, left.y});
        figure(value, graph->y.step, words);
        ow_draw_words(graph->canvas, &type, (ow_spot){left.x - 1.2, left.y + 0.9}, words);
    }
}

void ow_graph_frame(const ow_graph *graph, const char *x_title, const char *y_title, bool bare_x)
{
    ow_type type = {.size = TYPE, .anchor = OW_AT_MIDDLE};
    frame_x(graph, bare_x);
    frame_y(graph);
    ow_draw_box(graph->canvas, OW_PEN_EDGE, OW_FILL_NONE, graph->corner, graph->width, graph->height);
    if (x_title[0] != '\0')
        ow_draw_words(graph->canvas, &type,
                      (ow_spot){graph->corner.x + 0.5 * graph->width,
                                graph->corner.y + graph->height + (graph->width < 30.0 ? 6.6 : 8.0)},
                      x_title);
    type.turned = true;
    if (y_title[0] != '\0')
        ow_draw_words(graph->canvas, &type,
                      (ow_spot){fmax(graph->corner.x - 9.0, TYPE), graph->corner.y + 0.5 * graph->height},
                      y_title);
}

void ow_graph_curve(const ow_graph *graph, ow_pen pen, const ow_spot *values, size_t count)
{
    for (size_t index = 0; index < count; index++) {
        ow_spot spot = ow_graph_spot(graph, values[index].x, values[index].y);
        if (index == 0)
            ow_shape_move(graph->canvas, spot);
        else
            ow_shape_line(graph->canvas, spot);
    }
    ow_shape_end(graph->canvas, pen, OW_FILL_NONE);
}

void ow_graph_level(const ow_graph *graph, ow_pen pen, double y, const char *words)
{
    ow_type type = {.size = TYPE};
    ow_spot left = ow_graph_spot(graph, graph->x.low, y);
    ow_draw_line(graph->canvas, pen, left, (ow_spot){graph->corner.x + graph->width, left.y});
    ow_draw_words(graph->canvas, &type, (ow_spot){left.x + 1.0, left.y - 0.8}, words);
}

void ow_graph_plumb(const ow_graph *graph, ow_pen pen, double x, const char *words)
{
    ow_type type = {.size = TYPE, .turned = true};
    ow_spot foot = ow_graph_spot(graph, x, graph->y.low);
    ow_draw_line(graph->canvas, pen, foot, (ow_spot){foot.x, graph->corner.y});
    ow_draw_words(graph->canvas, &type, (ow_spot){foot.x - 0.7, foot.y - 1.0}, words);
}

/* Moves names apart that would overlap, from the top down, then back up into the frame's reach. */
static void spread(double *heights, const size_t *order, size_t count)
{
    for (int round = 0; round < 40; round++)
        for (size_t index = 1; index < count; index++) {
            double *above = &heights[order[index - 1]], *below = &heights[order[index]];
            double lack = NAME_LEADING - (*below - *above);
            if (lack > 0.0) {
                *above -= 0.5 * lack;
                *below += 0.5 * lack;
            }
        }
}

/* Heights of the names on paper, near their values but clear of one another; order from the top down. */
static void find_heights(const ow_graph *graph, const ow_graph_names *names, double lift, double *heights,
                         size_t *order)
{
    for (size_t index = 0; index < names->count; index++) {
        heights[index] = ow_graph_spot(graph, graph->x.high, names->values[index]).y - lift;
        order[index] = index;
        for (size_t at = index; at > 0 && heights[order[at]] < heights[order[at - 1]]; at--) {
            size_t held = order[at];
            order[at] = order[at - 1];
            order[at - 1] = held;
        }
    }
    spread(heights, order, names->count);
}

void ow_graph_put_names_within(const ow_graph *graph, const ow_graph_names *names)
{
    double heights[OW_GRAPH_NAMES], right = graph->corner.x + graph->width - 1.0;
    size_t order[OW_GRAPH_NAMES];
    ow_type type = {.size = TYPE, .anchor = OW_AT_END};
    find_heights(graph, names, 0.9, heights, order); /* the caller leaves room over the highest */
    for (size_t index = 0; index < names->count; index++) {
        double width = ow_words_width(names->words[index], TYPE, false), y = heights[index];
        ow_draw_box(graph->canvas, OW_PEN_NONE, OW_FILL_WHITE, (ow_spot){right - width - 0.4, y - 2.1},
                    width + 0.8, 2.6);
        ow_draw_words(graph->canvas, &type, (ow_spot){right, y}, names->words[index]);
    }
}

void ow_graph_put_names(const ow_graph *graph, const ow_graph_names *names)
{
    double heights[OW_GRAPH_NAMES];
    size_t order[OW_GRAPH_NAMES];
    ow_type type = {.size = TYPE};
    double right = graph->corner.x + graph->width;
    find_heights(graph, names, 0.0, heights, order);
    for (size_t index = 0; index < names->count; index++) {
        ow_spot end = ow_graph_spot(graph, graph->x.high, names->values[index]);
        ow_draw_line(graph->canvas, OW_PEN_LEADER, end, (ow_spot){right + 3.0, heights[index]});
        ow_draw_line(graph->canvas, names->pens[index], (ow_spot){right + 3.4, heights[index]},
                     (ow_spot){right + 9.4, heights[index]});
        ow_draw_words(graph->canvas, &type, (ow_spot){right + 10.4, heights[index] + 0.9},
                      names->words[index]);
    }
}
