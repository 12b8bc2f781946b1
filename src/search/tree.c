/* SPDX-License-Identifier: MIT */
#include "search/tree.h"

/* An open end whose node is to be written, and where it hangs. */
typedef struct waiting_end {
    const ow_derivation *open;
    ow_ports set;
    size_t parent, parent_end;
} waiting_end;

typedef struct writing {
    const ow_table *table;
    ow_tree_node *nodes;
    size_t count, room;
    waiting_end *waiting; /* the last is written next; no more than there are nodes */
    size_t waiting_count;
} writing;

static const ow_derivation *behind(const ow_branch *branch)
{
    return &branch->state->ranked[branch->rank];
}

static size_t new_node(writing *now, size_t parent, size_t parent_end)
{
    ow_tree_node *node = &now->nodes[now->count];
    *node = (ow_tree_node){OW_TREE_NONE, OW_TREE_NONE, parent, parent_end, 0, {0}};
    for (size_t end = 0; end < OW_NET_ENDS; end++)
        node->exits[end] = OW_TREE_NONE;
    if (parent != OW_TREE_NONE)
        now->nodes[parent].exits[parent_end] = now->count;
    return now->count++;
}

/* What is joined to an end of the parent: a port, or a part; what hangs on its other ends waits, the last end
 * first, so that the nodes come in the order of its own ends. */
static void write_open(writing *now, const waiting_end *at)
{
    size_t number = new_node(now, at->parent, at->parent_end);
    if (at->open->branch_count == 0) {
        now->nodes[number].port = ow_ports_first(at->set);
        return;
    }
    const ow_derivation *entered = behind(&at->open->branches[0]);
    const ow_net_part *part = &now->table->net->parts[entered->part];
    now->nodes[number].part = now->table->net->input_index[entered->part];
    now->nodes[number].enter = entered->enter;
    for (size_t end = part->end_count; end-- > 0;)
        for (size_t i = 0; i < entered->branch_count; i++) {
            const ow_branch *branch = &entered->branches[i];
            if (branch->end == end && now->waiting_count < now->room)
                now->waiting[now->waiting_count++] =
                    (waiting_end){behind(branch), branch->state->set, number, end};
        }
}

ow_status ow_tree_write(const ow_table *table, const ow_derivation *derivation, ow_tree *tree)
{
    const ow_context *context = table->context;
    size_t count = 1 + (size_t)derivation->key.parts + table->ask->port_count;
    writing now = {table, ow_new_array(context, count, sizeof *now.nodes),   0,
                   count, ow_new_array(context, count, sizeof *now.waiting), 0};
    ow_status status = now.nodes == NULL || now.waiting == NULL ? OW_MEMORY : OW_OK;
    if (status != OW_OK)
        goto done;
    size_t source = new_node(&now, OW_TREE_NONE, OW_TREE_NONE);
    now.waiting[now.waiting_count++] = (waiting_end){derivation, table->all, source, 0};
    while (now.waiting_count > 0 && now.count < count) {
        waiting_end at = now.waiting[--now.waiting_count];
        write_open(&now, &at);
    }
    status = now.count != count || now.waiting_count > 0 ? OW_FAULT : OW_OK;
    if (status != OW_OK)
        goto done;
    *tree = (ow_tree){derivation->key, count, now.nodes};
    now.nodes = NULL;
done:
    ow_release(context, now.waiting);
    ow_release(context, now.nodes);
    return status;
}

/* Parts outside dead ends, each at the open end that it is joined to; no more wait than there are parts and
 * ports. */
static size_t list_shapes(const ow_table *table, const ow_derivation *open, uint32_t *bill)
{
    const ow_derivation *waiting[OW_SEARCH_PARTS_MAX + OW_SEARCH_PORTS_MAX] = {open};
    size_t waiting_count = 1, count = 0;
    while (waiting_count > 0) {
        open = waiting[--waiting_count];
        if (open->branch_count == 0)
            continue;
        const ow_derivation *entered = behind(&open->branches[0]);
        bill[count++] = table->net->shape_of[entered->part];
        for (size_t i = 0; i < entered->branch_count; i++)
            if (!entered->branches[i].closing)
                waiting[waiting_count++] = behind(&entered->branches[i]);
    }
    return count;
}

void ow_tree_bill(const ow_table *table, const ow_derivation *derivation, uint32_t *bill)
{
    size_t count = list_shapes(table, derivation, bill);
    for (size_t i = 1; i < count; i++) {
        uint32_t shape = bill[i];
        size_t at = i;
        for (; at > 0 && bill[at - 1] > shape; at--)
            bill[at] = bill[at - 1];
        bill[at] = shape;
    }
}

bool ow_tree_bill_holds(const uint32_t *whole, size_t whole_count, const uint32_t *part, size_t count)
{
    size_t found = 0;
    for (size_t i = 0; i < whole_count && found < count; i++)
        if (whole[i] == part[found])
            found++;
    return found == count;
}
