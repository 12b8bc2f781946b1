/* SPDX-License-Identifier: MIT */
#include "search/tree.h"

typedef struct writing {
    const ow_table *table;
    ow_tree_node *nodes;
    size_t count;
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

/* What is joined to an end of the parent: a port, or a part and, in the order of its own ends, what hangs on
 * them. As deep as the layout is long, and no layout is longer than OW_SEARCH_PARTS_MAX. */
static void write_open(writing *now, const ow_derivation *open, ow_ports set, size_t parent,
                       size_t parent_end)
{
    size_t number = new_node(now, parent, parent_end);
    if (open->branch_count == 0) {
        now->nodes[number].port = ow_ports_first(set);
        return;
    }
    const ow_derivation *entered = behind(&open->branches[0]);
    const ow_net_part *part = &now->table->net->parts[entered->part];
    now->nodes[number].part = now->table->net->input_index[entered->part];
    now->nodes[number].enter = entered->enter;
    for (size_t end = 0; end < part->end_count; end++)
        for (size_t i = 0; i < entered->branch_count; i++) {
            const ow_branch *branch = &entered->branches[i];
            if (branch->end == end)
                write_open(now, behind(branch), branch->state->set, number, end);
        }
}

ow_status ow_tree_write(const ow_table *table, const ow_derivation *derivation, ow_tree *tree)
{
    size_t count = 1 + (size_t)derivation->key.parts + table->ask->port_count;
    writing now = {table, ow_new_array(table->context, count, sizeof *now.nodes), 0};
    if (now.nodes == NULL)
        return OW_MEMORY;
    size_t source = new_node(&now, OW_TREE_NONE, OW_TREE_NONE);
    write_open(&now, derivation, table->all, source, 0);
    if (now.count != count) {
        ow_release(table->context, now.nodes);
        return OW_FAULT;
    }
    *tree = (ow_tree){derivation->key, count, now.nodes};
    return OW_OK;
}

static void list_shapes(const ow_table *table, const ow_derivation *open, uint32_t *bill, size_t *count)
{
    if (open->branch_count == 0)
        return;
    const ow_derivation *entered = behind(&open->branches[0]);
    bill[(*count)++] = table->net->shape_of[entered->part];
    for (size_t i = 0; i < entered->branch_count; i++)
        if (!entered->branches[i].closing)
            list_shapes(table, behind(&entered->branches[i]), bill, count);
}

void ow_tree_bill(const ow_table *table, const ow_derivation *derivation, uint32_t *bill)
{
    size_t count = 0;
    list_shapes(table, derivation, bill, &count);
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
