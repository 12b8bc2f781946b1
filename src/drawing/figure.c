/* SPDX-License-Identifier: MIT */
#include "drawing/figure.h"

#include <math.h>
#include <string.h>

size_t ow_figure_leg(const ow_figure *figure, size_t node, size_t end)
{
    return end < figure->nodes[node].anatomy.leg_count ? end : 0;
}

/* Each leg learns what is joined to it. */
static void join_nodes(ow_figure *figure)
{
    for (size_t child = 1; child < figure->layout->node_count; child++) {
        const ow_layout_node *node = &figure->layout->nodes[child];
        size_t own = ow_figure_leg(figure, child, node->enter);
        size_t other = ow_figure_leg(figure, node->parent, node->parent_end);
        figure->nodes[child].mates[own] = &figure->nodes[node->parent].anatomy.legs[other].form;
        figure->nodes[node->parent].mates[other] = &figure->nodes[child].anatomy.legs[own].form;
    }
}

/* A node hangs in its parent's group unless that is a hose. */
static void group_nodes(ow_figure *figure)
{
    figure->group_count = 1;
    figure->groups[0] = (ow_group){.root = 0, .hose = OW_NODE_NONE};
    for (size_t index = 1; index < figure->layout->node_count; index++) {
        const ow_layout_node *node = &figure->layout->nodes[index];
        ow_placed *placed = &figure->nodes[index];
        placed->group = figure->nodes[node->parent].group;
        if (figure->nodes[node->parent].is_hose) {
            placed->group = figure->group_count++;
            figure->groups[placed->group] =
                (ow_group){.root = index, .hose = node->parent, .parent = figure->nodes[node->parent].group};
        }
    }
}

/* A group cannot begin with a hose: hose on hose is drawn as one more group without parts. */
static bool is_long(const ow_anatomy *anatomy)
{
    return anatomy->build == OW_BUILD_HOSE || anatomy->build == OW_BUILD_PIPE;
}

ow_status ow_figure_new(const ow_context *context, const ow_layout *layout, ow_figure *figure)
{
    ow_figure made = {.layout = layout, .scale = 1.0, .arena = ow_arena_new(context)};
    made.nodes = ow_arena_get_array(&made.arena, layout->node_count, sizeof *made.nodes);
    made.groups = ow_arena_get_array(&made.arena, layout->node_count + 1, sizeof *made.groups);
    if (made.nodes == NULL || made.groups == NULL) {
        ow_arena_done(&made.arena);
        return OW_MEMORY;
    }
    for (size_t index = 0; index < layout->node_count; index++) {
        const ow_layout_node *node = &layout->nodes[index];
        ow_placed *placed = &made.nodes[index];
        placed->anatomy = node->part != NULL ? ow_anatomy_of_part(node->part)
                                             : ow_anatomy_of_given(&layout->givens[node->given]);
        placed->is_hose = is_long(&placed->anatomy);
    }
    join_nodes(&made);
    group_nodes(&made);
    *figure = made;
    return OW_OK;
}

void ow_figure_done(ow_figure *figure)
{
    ow_arena_done(&figure->arena);
    memset(figure, 0, sizeof *figure);
}
