/* SPDX-License-Identifier: MIT */
/* A layout, looked at. */
#include <string.h>

#include "layout/storage.h"
#include "oilway/joint.h"

typedef struct ow_layout_storage {
    const ow_context *context;
    ow_arena arena;
} ow_layout_storage;

ow_status ow_layout_begin(const ow_context *context, ow_layout *layout)
{
    ow_layout_storage *storage = ow_new_array(context, 1, sizeof *storage);
    if (!storage)
        return OW_MEMORY;
    *storage = (ow_layout_storage){context, ow_arena_new(context)};
    *layout = (ow_layout){.title = "", .asked = OW_LIMITS_INIT, .storage = storage};
    return OW_OK;
}

ow_arena *ow_layout_arena(ow_layout *layout)
{
    return &((ow_layout_storage *)layout->storage)->arena;
}

void ow_layout_free(ow_layout *layout)
{
    ow_layout_storage *storage = layout ? layout->storage : NULL;
    if (!storage)
        return;
    const ow_context *context = storage->context;
    ow_arena_done(&storage->arena);
    ow_release(context, storage);
    layout->storage = NULL;
}

void ow_layouts_free(const ow_context *context, ow_layout *layouts, size_t count)
{
    for (size_t i = 0; layouts && i < count; i++)
        ow_layout_free(&layouts[i]);
    ow_release(context, layouts);
}

void ow_layout_number(ow_layout *layout)
{
    for (size_t node = 0; node < layout->node_count; node++) {
        size_t before = 0;
        for (size_t other = 0; layout->nodes[node].part && other < node; other++)
            before += layout->nodes[other].part == layout->nodes[node].part;
        layout->nodes[node].occurrence = before + 1;
    }
}

#define UNPRESSED_PA 0.3e5 /* what a drain is assumed to see */

bool ow_limits_pressed(ow_circuit circuit, const ow_limits *limits)
{
    if (circuit == OW_CIRCUIT_NONE)
        return limits->rating_pa > UNPRESSED_PA;
    return circuit != OW_DRAIN;
}

/* What a hose is cut or pushed onto, as against what screws, bolts or is welded. */
static bool is_of_hose(const ow_end *end)
{
    return end->form == OW_FORM_HOSE || end->form == OW_FORM_TAIL || end->form == OW_FORM_BARB ||
           end->form == OW_FORM_BEAD;
}

/* Where no end mates, the first of the same sort is meant: one wrong joint is not to make the next one wrong.
 */
size_t ow_layout_usual_entry(const ow_part *part, const ow_end *onto)
{
    for (size_t end = 0; end < part->end_count; end++)
        if (ow_joint_find(onto, &part->ends[end]))
            return end;
    for (size_t end = 0; end < part->end_count; end++)
        if (is_of_hose(onto) == is_of_hose(&part->ends[end]))
            return end;
    return 0;
}

size_t ow_layout_part_count(const ow_layout *layout)
{
    size_t count = 0;
    for (size_t node = 0; node < layout->node_count; node++)
        count += layout->nodes[node].part != NULL;
    return count;
}

size_t ow_layout_joint_count(const ow_layout *layout)
{
    return layout->node_count > 0 ? layout->node_count - 1 : 0;
}

void ow_layout_node_name(ow_text *text, const ow_layout *layout, size_t node)
{
    const ow_layout_node *at = &layout->nodes[node];
    if (!at->part) {
        ow_text_add(text, layout->givens[at->given].name);
        return;
    }
    ow_text_add(text, at->part->id);
    if (at->occurrence > 1)
        ow_text_format(text, "#%zu", at->occurrence);
}

static const ow_end *end_of(const ow_layout *layout, size_t node, size_t end)
{
    const ow_layout_node *at = &layout->nodes[node];
    return at->part ? &at->part->ends[end] : &layout->givens[at->given].end;
}

const ow_end *ow_layout_child_end(const ow_layout *layout, size_t child)
{
    return end_of(layout, child, layout->nodes[child].enter);
}

const ow_end *ow_layout_parent_end(const ow_layout *layout, size_t child)
{
    return end_of(layout, layout->nodes[child].parent, layout->nodes[child].parent_end);
}

/* The node of a given port, or OW_NODE_NONE. */
static size_t node_of_given(const ow_layout *layout, size_t given)
{
    for (size_t node = 0; node < layout->node_count; node++)
        if (!layout->nodes[node].part && layout->nodes[node].given == given)
            return node;
    return OW_NODE_NONE;
}

bool ow_layout_on_path(const ow_layout *layout, size_t node, size_t given)
{
    size_t at = node_of_given(layout, given);
    while (at != OW_NODE_NONE && at != node)
        at = layout->nodes[at].parent;
    return at == node && at != OW_NODE_NONE;
}

bool ow_layout_leads_to_port(const ow_layout *layout, size_t node)
{
    for (size_t port = 1; port < layout->node_count; port++) {
        if (layout->nodes[port].part != NULL)
            continue;
        for (size_t at = port; at != OW_NODE_NONE; at = layout->nodes[at].parent) {
            if (at == node)
                return true;
        }
    }
    return false;
}

double ow_layout_bore_to_m(const ow_layout *layout, size_t given)
{
    double narrowest = OW_NOT_SAID;
    size_t child = node_of_given(layout, given);
    if (child == OW_NODE_NONE)
        return OW_NOT_SAID;
    for (size_t node = layout->nodes[child].parent; node != OW_NODE_NONE; node = layout->nodes[node].parent) {
        const ow_layout_node *at = &layout->nodes[node];
        if (at->part) {
            double bore = ow_part_bore_m(at->part, at->enter, layout->nodes[child].parent_end);
            if (bore < 0)
                return OW_NOT_SAID;
            if (narrowest < 0 || bore < narrowest)
                narrowest = bore;
        }
        child = node;
    }
    return narrowest;
}

double ow_layout_narrowest_bore_m(const ow_layout *layout)
{
    size_t given = 1;
    while (given < layout->given_count && layout->givens[given].role != OW_ROLE_TO)
        given++;
    return given < layout->given_count ? ow_layout_bore_to_m(layout, given) : OW_NOT_SAID;
}

int64_t ow_layout_price_cents(const ow_layout *layout, bool *complete)
{
    int64_t sum = 0;
    *complete = true;
    for (size_t node = 0; node < layout->node_count; node++) {
        const ow_layout_node *at = &layout->nodes[node];
        if (!at->part)
            continue;
        *complete = *complete && at->part->has_price;
        sum += ow_part_price_cents(at->part, at->length_m);
    }
    return sum;
}
