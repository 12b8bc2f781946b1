/* SPDX-License-Identifier: MIT */
/*
 * Closing an end: set 0 of the table. A part closes the end that it enters once all its other ends are
 * closed; plugs, having none, start it. Levels are settled in order, so the last of a part's other
 * ends to be settled finds the rest in the table (Knuth 1977).
 */
#include <string.h>

#include "search/fill.h"
#include "search/filter.h"

static void settle_open(ow_fill *fill, size_t entry, size_t level)
{
    ow_table *table = fill->table;
    size_t count;
    const ow_joint_link *links = ow_table_links(table, entry, &count);
    for (size_t i = 0; i < count; i++)
        if (table->open[links[i].kind] == OW_TABLE_NONE) {
            table->open[links[i].kind] = (uint16_t)level;
            fill->fresh[fill->fresh_count++] = links[i].kind;
        }
}

/* Every part with an exit of that kind, if its other exits are closed too. */
static void close_parts(ow_fill *fill, size_t exit)
{
    ow_table *table = fill->table;
    const ow_net_index *net = table->net;
    if (exit >= net->kind_count)
        return; /* a kind of the ask alone: no part has it */
    for (size_t i = net->carry_offset[exit]; i < net->carry_offset[exit + 1]; i++) {
        const ow_net_carry *carry = &net->carries[i];
        if (table->supply[carry->shape] == 0)
            continue;
        size_t parts = 1 + (size_t)table->open[exit];
        bool closed = true;
        for (size_t end = 0; end < OW_NET_ENDS - 2 && carry->closed[end] != OW_NET_KIND_NONE; end++) {
            closed = closed && table->open[carry->closed[end]] != OW_TABLE_NONE;
            parts += table->open[carry->closed[end]];
        }
        if (closed)
            ow_fill_lower(fill, table->entered, carry->entry, parts);
    }
}

void ow_fill_closings(ow_fill *fill)
{
    ow_table *table = fill->table;
    memset(table->open, 0xFF, table->kind_count * sizeof *table->open);
    memset(table->entered, 0xFF, table->kind_count * sizeof *table->entered);
    ow_levels_clear(fill->levels);
    for (size_t i = 0; i < table->net->shape_count && table->net->shapes[i].end_count == 1; i++)
        if (table->supply[i] != 0)
            ow_fill_lower(fill, table->entered, table->net->shapes[i].kinds[0], 1);
    for (size_t level = 0; level <= fill->levels->highest; level++) {
        fill->fresh_count = 0;
        for (uint32_t state = fill->levels->first[level]; state != OW_LEVELS_NOBODY;
             state = fill->levels->after[state])
            settle_open(fill, state, level);
        for (size_t i = 0; i < fill->fresh_count; i++)
            close_parts(fill, fill->fresh[i]);
    }
}
