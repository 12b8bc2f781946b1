/* SPDX-License-Identifier: MIT */
/* How a rigid group is turned and mirrored: every way is tried, the one with least against it is taken. */
#include "drawing/embed.h"

#include <float.h>
#include <math.h>

#define PI 3.14159265358979323846
#define CHOICES_MAX 10 /* mirrors tried; further parts keep their first side */
/* Pairs of parts held against each other in all ways of a group: where it has many parts fewer mirrors are
 * tried, so that a chain of hundreds is drawn in seconds. */
#define PAIRS_MAX ((size_t)16 * 1000 * 1000)

/* Places one node by its parent, which is placed already. */
static void place_node(ow_figure *figure, size_t index)
{
    const ow_layout_node *node = &figure->layout->nodes[index];
    ow_placed *placed = &figure->nodes[index];
    const ow_placed *parent = &figure->nodes[node->parent];
    size_t out = ow_figure_leg(figure, node->parent, node->parent_end);
    size_t in = ow_figure_leg(figure, index, node->enter);
    double overlap = ow_form_overlap(&parent->anatomy.legs[out].form, &placed->anatomy.legs[in].form);
    ow_spot tip = ow_leg_tip(parent, out);
    double direction = ow_leg_direction(parent, out);
    tip.x -= figure->scale * overlap * cos(direction);
    tip.y += figure->scale * overlap * sin(direction);
    ow_place_entry(figure, index, tip, direction);
}

void ow_place_entry(ow_figure *figure, size_t index, ow_spot tip, double direction)
{
    ow_placed *placed = &figure->nodes[index];
    size_t in = index == 0 ? 0 : ow_figure_leg(figure, index, figure->layout->nodes[index].enter);
    placed->pose = (ow_pose){{0.0, 0.0}, 0.0, placed->mirrored ? -1.0 : 1.0, figure->scale};
    placed->pose.turn = direction + PI - ow_leg_direction(placed, in);
    ow_spot own = ow_leg_tip(placed, in);
    placed->pose.hub.x = tip.x - own.x;
    placed->pose.hub.y = tip.y - own.y;
}

static void note_around(ow_placed *placed)
{
    ow_box boxes[OW_PLACED_BOXES];
    size_t count = ow_placed_boxes(placed, boxes);
    placed->around = (ow_box){DBL_MAX, DBL_MAX, -DBL_MAX, -DBL_MAX};
    for (size_t box = 0; box < count; box++)
        ow_box_join(&placed->around, &boxes[box]);
}

void ow_place_group(ow_figure *figure, size_t group, ow_spot origin)
{
    const ow_group *own = &figure->groups[group];
    /* The source's one leg points outward; a group behind a hose is entered. */
    ow_place_entry(figure, own->root, origin, own->root == 0 ? own->start + PI : own->start);
    note_around(&figure->nodes[own->root]);
    for (size_t index = own->root + 1; index < figure->layout->node_count; index++)
        if (figure->nodes[index].group == group && !figure->nodes[index].is_hose) {
            place_node(figure, index);
            note_around(&figure->nodes[index]);
        }
}

ow_box ow_group_bounds(const ow_figure *figure, size_t group)
{
    ow_box bounds = {DBL_MAX, DBL_MAX, -DBL_MAX, -DBL_MAX};
    for (size_t index = 0; index < figure->layout->node_count; index++) {
        if (figure->nodes[index].group == group && !figure->nodes[index].is_hose)
            ow_box_join(&bounds, &figure->nodes[index].around);
    }
    if (bounds.x0 > bounds.x1)
        bounds = (ow_box){0.0, 0.0, 0.0, 0.0};
    return bounds;
}

/* ---- what speaks against a way --------------------------------------------------------------- */

/* Parts that run into one another although they are not joined. */
static double clash(const ow_figure *figure, size_t a, size_t b)
{
    const ow_layout_node *nodes = figure->layout->nodes;
    ow_box of_a[OW_PLACED_BOXES], of_b[OW_PLACED_BOXES];
    bool siblings = nodes[a].parent == nodes[b].parent; /* eyes on one bolt lie close by nature */
    double margin = siblings ? -0.5 : 2.0;
    if (!ow_boxes_meet(&figure->nodes[a].around, &figure->nodes[b].around, margin) || nodes[b].parent == a ||
        nodes[a].parent == b)
        return 0.0;
    size_t count_a = ow_placed_boxes(&figure->nodes[a], of_a),
           count_b = ow_placed_boxes(&figure->nodes[b], of_b);
    for (size_t i = 0; i < count_a; i++)
        for (size_t j = 0; j < count_b; j++)
            if (ow_boxes_meet(&of_a[i], &of_b[j], margin))
                return 1000.0;
    return 0.0;
}

/* A hose best leaves to the right; a switch best stands upright or straight on. */
static double exit_cost(const ow_figure *figure, size_t index)
{
    const ow_layout_node *node = &figure->layout->nodes[index];
    const ow_placed *parent = &figure->nodes[node->parent];
    double direction = ow_leg_direction(parent, ow_figure_leg(figure, node->parent, node->parent_end));
    double right = cos(direction), up = sin(direction);
    if (figure->nodes[index].is_hose)
        return right > 0.5 ? 0.0 : right < -0.5 ? 400.0 : 60.0 + (up < 0.0 ? 5.0 : 0.0);
    if (node->part == NULL && figure->layout->givens[node->given].role == OW_ROLE_TO)
        return right > 0.5 ? 0.0 : right < -0.5 ? 60.0 : up < 0.0 ? 15.0 : 25.0;
    if (node->part == NULL)
        return up > 0.5 ? 0.0 : right > 0.5 ? 5.0 : right < -0.5 ? 25.0 : 12.0;
    return 0.0;
}

static double way_cost(const ow_figure *figure, size_t group, bool flat)
{
    double cost = 0.0;
    size_t count = figure->layout->node_count;
    for (size_t a = 0; a < count; a++) {
        if (figure->nodes[a].group != group)
            continue;
        if (a > figure->groups[group].root)
            cost += exit_cost(figure, a);
        for (size_t b = a + 1; b < count && !figure->nodes[a].is_hose; b++)
            if (figure->nodes[b].group == group && !figure->nodes[b].is_hose)
                cost += clash(figure, a, b);
    }
    ow_box bounds = ow_group_bounds(figure, group);
    if (figure->groups[group].root == 0)
        cost += fabs(sin(figure->groups[group].start)) * 8.0 - 2.0 * sin(figure->groups[group].start);
    return cost + 0.05 * (bounds.x1 - bounds.x0) + (flat ? 0.3 : 0.12) * (bounds.y1 - bounds.y0);
}

/* ---- trying -------------------------------------------------------------------------------- */

typedef struct choice {
    size_t node;
    bool second;
} choice;

static size_t find_choices(const ow_figure *figure, size_t group, choice choices[CHOICES_MAX])
{
    size_t count = 0;
    for (size_t index = 0; index < figure->layout->node_count && count < CHOICES_MAX; index++) {
        const ow_placed *placed = &figure->nodes[index];
        if (placed->group != group || placed->is_hose)
            continue;
        ow_build build = placed->anatomy.build;
        bool turns = build == OW_BUILD_BLOCK || build == OW_BUILD_BOLT ||
                     (build == OW_BUILD_EYE && fabs(placed->anatomy.legs[1].angle) > 0.01);
        if (turns)
            choices[count++] = (choice){index, false};
        if (build == OW_BUILD_BOLT && placed->anatomy.leg_count > 2 && count < CHOICES_MAX)
            choices[count++] = (choice){index, true};
    }
    return count;
}

/* How many of the choices are tried. */
static size_t affordable(const ow_figure *figure, size_t group, size_t count)
{
    size_t parts = 0;
    for (size_t index = 0; index < figure->layout->node_count; index++)
        parts += figure->nodes[index].group == group;
    while (count > 0 && parts * parts > PAIRS_MAX >> count)
        count--;
    return count;
}

static void set_choices(ow_figure *figure, const choice *choices, size_t count, unsigned way)
{
    for (size_t index = 0; index < count; index++) {
        bool mirrored = (way >> index & 1u) != 0;
        if (choices[index].second)
            figure->nodes[choices[index].node].second_mirrored = mirrored;
        else
            figure->nodes[choices[index].node].mirrored = mirrored;
    }
}

static void choose_group(ow_figure *figure, size_t group, bool flat)
{
    static const double STARTS[] = {0.0, PI / 2.0, -PI / 2.0};
    choice choices[CHOICES_MAX];
    size_t count = affordable(figure, group, find_choices(figure, group, choices));
    size_t starts = figure->groups[group].root == 0 ? 3 : 1;
    double best = DBL_MAX, best_start = 0.0;
    unsigned best_way = 0;
    for (size_t start = 0; start < starts; start++)
        for (unsigned way = 0; way < 1u << count; way++) {
            figure->groups[group].start = STARTS[start];
            set_choices(figure, choices, count, way);
            ow_place_group(figure, group, (ow_spot){0.0, 0.0});
            double cost = way_cost(figure, group, flat);
            if (cost < best - 1e-9) {
                best = cost;
                best_way = way;
                best_start = STARTS[start];
            }
        }
    figure->groups[group].start = best_start;
    set_choices(figure, choices, count, best_way);
}

void ow_figure_choose(ow_figure *figure, bool flat)
{
    figure->scale = 1.0;
    for (size_t group = 0; group < figure->group_count; group++)
        choose_group(figure, group, flat);
}
