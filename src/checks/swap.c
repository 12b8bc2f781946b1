/* SPDX-License-Identifier: MIT */
/* One part of a layout exchanged for another. */
#include "oilway/swap.h"

#include <stdlib.h>
#include <string.h>

#include "layout/storage.h"

static bool is_named(const ow_layout *layout, size_t node, const char *name)
{
    const ow_layout_node *at = &layout->nodes[node];
    if (at->part == NULL)
        return strcmp(layout->givens[at->given].name, name) == 0;
    size_t length = strlen(at->part->id);
    if (strncmp(at->part->id, name, length) != 0)
        return false;
    if (name[length] == '\0')
        return at->occurrence == 1;
    return name[length] == '#' && name[length + 1] >= '1' && name[length + 1] <= '9' &&
           strtoul(name + length + 1, NULL, 10) == at->occurrence &&
           strspn(name + length + 1, "0123456789") == strlen(name + length + 1);
}

size_t ow_layout_node_named(const ow_layout *layout, const char *name)
{
    for (size_t node = 0; node < layout->node_count; node++) {
        if (is_named(layout, node, name))
            return node;
    }
    return OW_NODE_NONE;
}

/* Copies what hangs on old node `from` under new node `parent`, depth first, exits in the part's order. The
 * nodes of a layout are in walking order, which another part may change where it forks. */
typedef struct copying {
    const ow_layout *layout;
    size_t node; /* the one whose part is changed */
    const ow_swap *swap;
    ow_layout_node *nodes; /* the copy */
    size_t count;
    size_t *waiting; /* old nodes still to be copied, the next one last … */
    size_t *parents; /* … and the new nodes that they hang on */
    size_t waiting_count;
} copying;

/* The exits of an old node by end of the part that will stand there. */
static void exits_after(const copying *now, size_t old, size_t *exits)
{
    const ow_layout_node *at = &now->layout->nodes[old];
    for (size_t end = 0; end < OW_PART_ENDS; end++)
        exits[end] = OW_NODE_NONE;
    if (old != now->node) {
        memcpy(exits, at->exits, sizeof at->exits);
        return;
    }
    for (size_t end = 0; end < at->part->end_count; end++) {
        if (now->swap->ends[end] < OW_PART_ENDS && end != at->enter)
            exits[now->swap->ends[end]] = at->exits[end];
    }
}

static void change_part(const copying *now, ow_layout_node *copy)
{
    bool hose = copy->part->kind == OW_HOSE && now->swap->part->kind == OW_HOSE;
    copy->enter = now->swap->ends[copy->enter];
    copy->part = now->swap->part;
    if (!hose)
        copy->length_m = OW_NOT_SAID;
    for (size_t end = 0; end < OW_PART_ENDS; end++)
        copy->seal[end] = NULL;
}

/* Copies one old node and puts its exits on the pile. */
static void copy_node(copying *now, size_t old, size_t parent)
{
    size_t exits[OW_PART_ENDS];
    size_t own = now->count++;
    ow_layout_node *copy = &now->nodes[own];
    *copy = now->layout->nodes[old];
    copy->parent = parent;
    if (old == now->node)
        change_part(now, copy);
    exits_after(now, old, exits);
    for (size_t end = OW_PART_ENDS; end-- > 0;) {
        copy->exits[end] = OW_NODE_NONE;
        if (exits[end] == OW_NODE_NONE)
            continue;
        now->waiting[now->waiting_count] = exits[end];
        now->parents[now->waiting_count++] = own;
    }
}

/* Hangs a new node on its parent: by the end that its parent has for it now. */
static void hang(copying *now, size_t old, size_t own)
{
    ow_layout_node *copy = &now->nodes[own];
    if (copy->parent == OW_NODE_NONE)
        return;
    if (now->layout->nodes[old].parent == now->node)
        copy->parent_end = now->swap->ends[copy->parent_end];
    now->nodes[copy->parent].exits[copy->parent_end] = own;
}

ow_status ow_layout_swap(const ow_context *context, const ow_layout *layout, size_t node, const ow_swap *swap,
                         ow_layout *swapped)
{
    ow_layout result;
    ow_status status = ow_layout_begin(context, &result);
    if (status != OW_OK)
        return status;
    void *storage = result.storage;
    result = *layout;
    result.storage = storage;
    ow_arena *arena = ow_layout_arena(&result);
    copying now = {layout,
                   node,
                   swap,
                   ow_arena_get_array(arena, layout->node_count, sizeof *result.nodes),
                   0,
                   ow_arena_get_array(arena, layout->node_count, sizeof(size_t)),
                   ow_arena_get_array(arena, layout->node_count, sizeof(size_t)),
                   0};
    if (now.nodes == NULL || now.waiting == NULL || now.parents == NULL) {
        ow_layout_free(&result);
        return OW_MEMORY;
    }
    now.waiting[now.waiting_count] = 0;
    now.parents[now.waiting_count++] = OW_NODE_NONE;
    while (now.waiting_count > 0) {
        size_t old = now.waiting[--now.waiting_count];
        copy_node(&now, old, now.parents[now.waiting_count]);
        hang(&now, old, now.count - 1);
    }
    result.nodes = now.nodes;
    ow_layout_number(&result);
    *swapped = result;
    return OW_OK;
}
