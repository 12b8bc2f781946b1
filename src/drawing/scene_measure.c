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

/* Over the middle of the line, or beyond its end where it is too short for them. */
static void place_words(ow_measure *dimension)
{
    double width = ow_words_width(dimension->words, TYPE, false);
    ow_spot a = dimension->from, b = dimension->to;
    double length = hypot(b.x - a.x, b.y - a.y),
           beyond = length > width + 1.0 ? 0.0 : 0.5 * (length + width) + 1.8;
    ow_spot middle = {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
    if (dimension->upright) {
        middle.y += beyond;
        dimension->words_box =
            (ow_box){middle.x - TYPE - 0.6, middle.y - 0.5 * width, middle.x - 0.4, middle.y + 0.5 * width};
    } else {
        middle.x += beyond;
        dimension->words_box =
            (ow_box){middle.x - 0.5 * width, middle.y - TYPE - 0.6, middle.x + 0.5 * width, middle.y - 0.4};
    }
}

/* The box of a dimension's line with its words. */
static ow_box line_box(const ow_measure *measure)
{
    ow_box box = {fmin(measure->from.x, measure->to.x) - 0.8, fmin(measure->from.y, measure->to.y) - 0.8,
                  fmax(measure->from.x, measure->to.x) + 0.8, fmax(measure->from.y, measure->to.y) + 0.8};
    ow_box_join(&box, &measure->words_box);
    return box;
}

/* Keeps labels off a dimension: its line with the words, and the extension lines. */
static void block(ow_scene *scene, const ow_measure *dimension)
{
    ow_box line = line_box(dimension);
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

static bool is_clear(const ow_scene *scene, const ow_measure *measure)
{
    ow_box box = line_box(measure);
    if (box.x0 < 1.0 || box.x1 > OW_PAPER_WIDTH - 1.0)
        return false;
    for (size_t index = 0; index < scene->labels.obstacle_count; index++)
        if (ow_boxes_meet(&box, &scene->labels.obstacles[index].box, 1.0))
            return false;
    return true;
}

/* The dimension's line at a distance beyond the group: below or to the left of it, or on the other side. */
static void set_line(ow_measure *measure, const ow_box *all, const ow_box *parts, ow_spot face, double far,
                     double distance, bool other_side)
{
    if (measure->upright) {
        double x = other_side ? all->x1 + distance : all->x0 - distance;
        measure->from = (ow_spot){x, face.y};
        measure->to = (ow_spot){x, far};
        measure->from_edge = (ow_spot){other_side ? all->x1 : all->x0, face.y};
        measure->to_edge = (ow_spot){0.5 * (parts->x0 + parts->x1), far};
    } else {
        double y = other_side ? all->y0 - distance : all->y1 + distance;
        measure->from = (ow_spot){face.x, y};
        measure->to = (ow_spot){far, y};
        measure->from_edge = (ow_spot){face.x, other_side ? all->y0 : all->y1};
        measure->to_edge = (ow_spot){far, other_side ? parts->y0 : parts->y1};
    }
    place_words(measure);
}

/* Takes the nearest place where the line is clear of everything; the first one where none is. */
static void find_line(const ow_scene *scene, ow_measure *measure, const ow_box *all, const ow_box *parts,
                      ow_spot face, double far)
{
    for (int step = 0; step < 12; step++)
        for (int side = 0; side < 2; side++) {
            set_line(measure, all, parts, face, far, STAND_OFF + 3.0 * step, side == 1);
            if (is_clear(scene, measure))
                return;
        }
    set_line(measure, all, parts, face, far, STAND_OFF, false);
}

static void measure_port(ow_scene *scene, size_t port)
{
    const ow_figure *figure = &scene->figure;
    const ow_placed *placed = &figure->nodes[port];
    ow_box parts, boxes[OW_PLACED_BOXES];
    ow_spot face = ow_leg_tip(placed, 0);
    double direction = ow_leg_direction(placed, 0);
    if (scene->dimension_count == OW_MEASURES_MAX || !part_bounds(figure, placed->group, &parts))
        return;
    ow_box all = parts;
    size_t count = ow_placed_boxes(placed, boxes);
    for (size_t box = 0; box < count; box++)
        ow_box_join(&all, &boxes[box]);
    ow_measure made = {.upright = fabs(sin(direction)) > 0.7};
    double far = made.upright           ? sin(direction) > 0.0 ? parts.y0 : parts.y1
                 : cos(direction) > 0.0 ? parts.x1
                                        : parts.x0;
    double length = fabs(far - (made.upright ? face.y : face.x));
    if (length < 4.0)
        return;
    (void)snprintf(made.words, sizeof made.words, "stick-out %.0f", length / figure->scale);
    find_line(scene, &made, &all, &parts, face, far);
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
