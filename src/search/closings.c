/* SPDX-License-Identifier: MIT */
/*
 * Closing an end: set 0 of the table. A part closes the end that it enters once all its other ends are
 * closed; plugs, having none, start it.
 *
 * Most ends take a plug, and nearly all others a part that leads to one: so the few ends not closed yet
 * look for a part, level by level, and stop at the first that will do. Should that take more than a
 * few levels, it is done the other way round, from what was closed last to the parts that it completes:
 * each part is then looked at once for each of its ends, whatever the net (Knuth 1977).
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
            fill->settled[fill->settled_count++] = links[i].kind;
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
        if (ow_filter_supply(table, carry->shape) == 0)
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

static void close_from_plugs(ow_fill *fill)
{
    ow_table *table = fill->table;
    memset(table->open, 0xFF, table->kind_count * sizeof *table->open);
    memset(table->entered, 0xFF, table->kind_count * sizeof *table->entered);
    ow_levels_clear(fill->levels);
    for (size_t i = 0; i < table->net->shape_count && table->net->shapes[i].end_count == 1; i++)
        if (ow_filter_supply(table, (uint32_t)i) != 0)
            ow_fill_lower(fill, table->entered, table->net->shapes[i].kinds[0], 1);
    for (size_t level = 0; level <= fill->levels->highest; level++) {
        fill->settled_count = 0;
        for (uint32_t state = fill->levels->first[level]; state != OW_LEVELS_NOBODY;
             state = fill->levels->after[state])
            settle_open(fill, state, level);
        for (size_t i = 0; i < fill->settled_count; i++)
            close_parts(fill, fill->settled[i]);
    }
}

/* The part and what closes its other ends so far; OW_TABLE_NONE if one is not closed. */
static size_t closed_by(const ow_table *table, const ow_net_shape *shape, size_t entry)
{
    size_t parts = 1;
    bool entered = false;
    for (size_t end = 0; end < shape->end_count; end++) {
        if (shape->kinds[end] == entry && !entered) {
            entered = true;
            continue;
        }
        if (table->open[shape->kinds[end]] == OW_TABLE_NONE)
            return OW_TABLE_NONE;
        parts += table->open[shape->kinds[end]];
    }
    return parts;
}

/* The least that closes behind an end entered, as far as settled; the first of `level` parts will do. */
static size_t look_for_closing(const ow_table *table, size_t entry, size_t level)
{
    const ow_net_index *net = table->net;
    size_t least = OW_TABLE_NONE;
    for (size_t i = net->entry_offset[entry]; i < net->entry_offset[entry + 1] && least > level; i++) {
        uint32_t shape = net->entry_shapes[i];
        size_t parts = closed_by(table, &net->shapes[shape], entry);
        if (parts < least && ow_filter_supply(table, shape) != 0)
            least = parts;
    }
    return least;
}

/* One level: all ends that close with so many parts. Returns the least of those that take more. */
static size_t close_level(ow_fill *fill, size_t level, bool *any)
{
    ow_table *table = fill->table;
    size_t later = OW_TABLE_NONE;
    for (size_t entry = 0; entry < table->net->kind_count; entry++) {
        if (table->entered[entry] != OW_TABLE_NONE)
            continue;
        size_t least = look_for_closing(table, entry, level);
        if (least == level) {
            table->entered[entry] = (uint16_t)level;
            fill->settled_count = 0;
            settle_open(fill, entry, level);
            *any = true;
        } else if (least < later) {
            later = least;
        }
    }
    return later;
}

#define LEVELS_LOOKED_FOR 6

void ow_fill_closings(ow_fill *fill)
{
    ow_table *table = fill->table;
    memset(table->open, 0xFF, table->kind_count * sizeof *table->open);
    memset(table->entered, 0xFF, table->kind_count * sizeof *table->entered);
    if (table->ask->spare_open) {
        for (size_t kind = 0; kind < table->kind_count; kind++)
            table->open[kind] = 1;
        return;
    }
    size_t level = 1;
    for (int looked = 0; looked < LEVELS_LOOKED_FOR; looked++) {
        bool any = false;
        size_t later = close_level(fill, level, &any);
        if (!any && later == OW_TABLE_NONE)
            return;
        level = any ? level + 1 : later;
        if (level > OW_SEARCH_PARTS_MAX)
            break;
    }
    close_from_plugs(fill);
}
