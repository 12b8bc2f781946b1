/* SPDX-License-Identifier: MIT */
/* Stick-out: how far what is screwed to a port stands off its face, rigid up to the first hose. */
#include <float.h>
#include <math.h>
#include <stdio.h>

#include "drawing/letters.h"
#include "drawing/scene.h"

#define STAND_OFF 6.0 /* of a dimension line from what it measures, mm */
#define TYPE 2.6

/* The bounds of a group's parts without its ports; false if it has none. */
static bool part_bounds(const ow_figure *figure, size_t group, ow_box *bounds)
{
    bool any = false;
    *bounds = (ow_box){DBL_MAX, DBL_MAX, -DBL_MAX, -DBL_MAX};
    for (size_t index = 0; index < figure->layout->node_count; index++) {
        const ow_placed *placed = &figure->nodes[index];
        ow_box boxes[OW_PLACED_BOXES];
        if (placed->group != group || placed->is_hose || placed->anatomy.build == OW_BUILD_PORT)
            continue;
        size_t count = ow_placed_boxes(placed, boxes);
        for (size_t box = 0; box < count; box++)
            ow_box_join(bounds, &boxes[box]);
        any = any || count > 0;
    }
    return any;
}

static void place_words(ow_measure *dimension)
{
    double width = ow_words_width(dimension->words, TYPE, false);
    ow_spot middle = {0.5 * (dimension->from.x + dimension->to.x),
                      0.5 * (dimension->from.y + dimension->to.y)};
    if (dimension->upright)
        dimension->words_box =
            (ow_box){middle.x - TYPE - 0.6, middle.y - 0.5 * width, middle.x - 0.4, middle.y + 0.5 * width};
    else
        dimension->words_box =
            (ow_box){middle.x - 0.5 * width, middle.y - TYPE - 0.6, middle.x + 0.5 * width, middle.y - 0.4};
}

/* Keeps labels off a dimension: its line with the words, and the extension lines. */
static void block(ow_scene *scene, const ow_measure *dimension)
{
    ow_box line = {
        fmin(dimension->from.x, dimension->to.x) - 0.8, fmin(dimension->from.y, dimension->to.y) - 0.8,
        fmax(dimension->from.x, dimension->to.x) + 0.8, fmax(dimension->from.y, dimension->to.y) + 0.8};
    ow_box_join(&line, &dimension->words_box);
    ow_labels_block(&scene->labels, &line, false);
    ow_labels_block(&scene->labels, &dimension->words_box, true);
    for (int end = 0; end < 2; end++) {
        ow_spot a = end == 0 ? dimension->from : dimension->to;
        ow_spot b = end == 0 ? dimension->from_edge : dimension->to_edge;
        ow_labels_block(
            &scene->labels,
            &(ow_box){fmin(a.x, b.x) - 0.3, fmin(a.y, b.y) - 0.3, fmax(a.x, b.x) + 0.3, fmax(a.y, b.y) + 0.3},
            false);
    }
}

/* The outermost line of a group, its ports included, on the side where the dimension goes. */
static void measure_port(ow_scene *scene, size_t port)
{
    const ow_figure *figure = &scene->figure;
    const ow_placed *placed = &figure->nodes[port];
    size_t group = placed->group;
    ow_box parts, all = figure->groups[group].bounds;
    ow_spot face = ow_leg_tip(placed, 0);
    double direction = ow_leg_direction(placed, 0);
    if (scene->dimension_count == OW_MEASURES_MAX || !part_bounds(figure, group, &parts))
        return;
    all = parts;
    ow_box boxes[OW_PLACED_BOXES];
    size_t count = ow_placed_boxes(placed, boxes);
    for (size_t box = 0; box < count; box++)
        ow_box_join(&all, &boxes[box]);
    ow_measure made = {.upright = fabs(sin(direction)) > 0.7};
    double far = made.upright           ? (sin(direction) > 0.0 ? parts.y0 : parts.y1)
                 : cos(direction) > 0.0 ? parts.x1
                                        : parts.x0;
    double length = fabs(far - (made.upright ? face.y : face.x));
    if (length < 4.0)
        return;
    snprintf(made.words, sizeof made.words, "stick-out %.0f", length / figure->scale);
    if (made.upright) {
        double x = all.x0 - STAND_OFF;
        made.from = (ow_spot){x, face.y};
        made.to = (ow_spot){x, far};
        made.from_edge = (ow_spot){boxes[0].x0, face.y};
        made.to_edge = (ow_spot){0.5 * (parts.x0 + parts.x1), far};
    } else {
        double y = all.y1 + STAND_OFF;
        made.from = (ow_spot){face.x, y};
        made.to = (ow_spot){far, y};
        made.from_edge = (ow_spot){face.x, all.y1};
        made.to_edge = (ow_spot){far, parts.y1};
    }
    place_words(&made);
    block(scene, &made);
    scene->dimensions[scene->dimension_count++] = made;
}

void ow_scene_measure(ow_scene *scene)
{
    const ow_layout *layout = scene->layout;
    for (size_t index = 0; index < layout->node_count; index++)
        if (layout->nodes[index].part == NULL && scene->figure.nodes[index].anatomy.build == OW_BUILD_PORT &&
            layout->givens[layout->nodes[index].given].role != OW_ROLE_KEEP)
            measure_port(scene, index);
}
