/* SPDX-License-Identifier: MIT */
/* The order in which parts are painted, so that each hides what it hides in truth. */
#include "drawing/paint.h"

/* Whether a part is cut on both sides of its axis. */
static bool is_full(const ow_placed *placed)
{
    return placed->anatomy.build == OW_BUILD_BLOCK || placed->anatomy.build == OW_BUILD_PORT ||
           placed->anatomy.build == OW_BUILD_EYE;
}

/* Of two joined nodes, the one to be painted first. */
static size_t painted_first(const ow_figure *figure, size_t child)
{
    const ow_layout_node *node = &figure->layout->nodes[child];
    size_t parent = node->parent;
    const ow_placed *a = &figure->nodes[child], *b = &figure->nodes[parent];
    const ow_drawn_end *end_a = &a->anatomy.legs[ow_figure_leg(figure, child, node->enter)].form;
    const ow_drawn_end *end_b = &b->anatomy.legs[ow_figure_leg(figure, parent, node->parent_end)].form;
    if (a->anatomy.build == OW_BUILD_HOSE || b->anatomy.build == OW_BUILD_HOSE) {
        /* A hose slips over a barb, and into a ferrule. */
        bool over = ow_form_is_inner(end_a->look) || ow_form_is_inner(end_b->look);
        bool child_hose = a->anatomy.build == OW_BUILD_HOSE;
        return over == child_hose ? parent : child;
    }
    if (end_a->look == OW_LOOK_EYE || end_b->look == OW_LOOK_EYE)
        return end_a->look == OW_LOOK_EYE ? child : parent;
    bool a_inner = ow_form_is_inner(end_a->look), b_inner = ow_form_is_inner(end_b->look);
    if (end_a->look == OW_LOOK_PIPE || end_b->look == OW_LOOK_PIPE)
        return end_a->look == OW_LOOK_PIPE ? parent : child;
    if (a_inner == b_inner)
        return parent;
    size_t female = a_inner ? parent : child, male = a_inner ? child : parent;
    bool nut = figure->nodes[female].is_hose ||
               (a_inner ? end_b->look : end_a->look) == OW_LOOK_NUT; /* nuts are shown in half */
    return is_full(&figure->nodes[female]) && !nut ? female : male;
}

static void paint_node(ow_painter *painter, size_t node)
{
    const ow_figure *figure = painter->figure;
    const ow_layout *layout = figure->layout;
    painter->placed = &figure->nodes[node];
    painter->falling = node % 2 == 0;
    painter->spacing = 0.95;
    switch (painter->placed->anatomy.build) {
    case OW_BUILD_STRAIGHT:
        ow_paint_straight(painter);
        break;
    case OW_BUILD_BLOCK:
        ow_paint_block(painter);
        break;
    case OW_BUILD_BOLT:
        ow_paint_bolt(painter);
        break;
    case OW_BUILD_EYE:
        ow_paint_eye(painter);
        break;
    case OW_BUILD_HOSE:
    case OW_BUILD_PIPE:
        ow_paint_hose(painter, node);
        break;
    case OW_BUILD_PORT:
        if (layout->givens[layout->nodes[node].given].role == OW_ROLE_KEEP)
            ow_paint_switch(painter, true);
        else
            ow_paint_port(painter);
        break;
    case OW_BUILD_SWITCH:
    case OW_BUILD_SENDER:
    default:
        ow_paint_switch(painter, false);
        break;
    }
}

/* Whether nothing unpainted has to come before it. */
static bool is_ready(const ow_figure *figure, const bool *painted, size_t node)
{
    for (size_t child = 1; child < figure->layout->node_count; child++) {
        size_t parent = figure->layout->nodes[child].parent;
        if (child != node && parent != node)
            continue;
        size_t first = painted_first(figure, child);
        if (first != node && !painted[first])
            return false;
    }
    return true;
}

ow_status ow_paint_figure(ow_canvas *canvas, const ow_figure *figure)
{
    size_t count = figure->layout->node_count;
    bool *painted = ow_new_array(figure->arena.context, count, sizeof *painted);
    if (painted == NULL)
        return OW_MEMORY;
    ow_painter painter = {.canvas = canvas, .figure = figure};
    /* Joints make a tree, so that in every round at least one node is ready. */
    for (size_t round = 0; round < count; round++)
        for (size_t node = 0; node < count; node++)
            if (!painted[node] && is_ready(figure, painted, node)) {
                paint_node(&painter, node);
                painted[node] = true;
            }
    ow_release(figure->arena.context, painted);
    for (size_t child = 1; child < count; child++)
        ow_paint_seal(&painter, child);
    return ow_canvas_status(canvas);
}
