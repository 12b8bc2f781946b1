/* SPDX-License-Identifier: MIT */
#include "search/fill.h"
#include "search/filter.h"

/* The part and what closes the given ends; OW_TABLE_NONE if that cannot be. */
static size_t weight_of(ow_table *table, const uint16_t *closed, size_t count)
{
    size_t parts = 1;
    for (size_t i = 0; i < count && closed[i] != OW_NET_KIND_NONE; i++) {
        if (table->open[closed[i]] == OW_TABLE_NONE)
            return OW_TABLE_NONE;
        parts += table->open[closed[i]];
    }
    if (parts <= OW_SEARCH_PARTS_MAX)
        return parts;
    table->capped = true;
    return OW_TABLE_NONE;
}

static uint8_t wide_patterns(unsigned supply, const uint8_t *need, unsigned patterns)
{
    if ((supply & OW_SUPPLY_ALL_WIDE) != 0)
        return 0xFF;
    unsigned wide = 1;
    for (unsigned serving = 1; serving < patterns; serving++)
        if (ow_supply_meets(supply, need[serving]))
            wide |= 1u << serving;
    return (uint8_t)wide;
}

bool ow_carry_is_usable(const ow_table *table, const ow_net_carry *carry, bool serves)
{
    unsigned supply = ow_filter_supply(table, carry->shape);
    return supply != 0 && (!serves || ow_supply_meets(supply, carry->need));
}

size_t ow_run_weight(ow_table *table, uint32_t run, bool serves)
{
    const ow_net_index *net = table->net;
    size_t least = OW_TABLE_NONE;
    for (uint32_t i = net->run_first[run]; i < net->run_first[run + 1]; i++) {
        const ow_net_carry *carry = &net->carries[i];
        size_t weight = weight_of(table, carry->closed, OW_NET_ENDS - 2);
        if (weight < least && ow_carry_is_usable(table, carry, serves))
            least = weight;
    }
    return least;
}

static ow_status build_forks(ow_table *table)
{
    const ow_net_index *net = table->net;
    uint32_t count = 0;
    table->forks = ow_arena_get_array(&table->arena, net->fork_offset[OW_FORK_GROUPS], sizeof *table->forks);
    if (table->forks == NULL)
        return OW_MEMORY;
    for (unsigned group = 0; group < OW_FORK_GROUPS; group++) {
        for (uint32_t i = net->fork_offset[group]; i < net->fork_offset[group + 1]; i++) {
            const ow_net_fork *fork = &net->forks[i];
            unsigned supply = ow_filter_supply(table, fork->shape);
            size_t weight = supply == 0 ? OW_TABLE_NONE : weight_of(table, &fork->closed, 1);
            if (weight == OW_TABLE_NONE)
                continue;
            table->forks[count++] = (ow_fork_arc){fork->entry,
                                                  {fork->exits[0], fork->exits[1]},
                                                  (uint16_t)weight,
                                                  wide_patterns(supply, fork->need, 4)};
        }
        table->fork_offset[group + 1] = count;
    }
    return OW_OK;
}

static ow_status build_crosses(ow_table *table)
{
    const ow_net_index *net = table->net;
    uint32_t count = 0;
    table->crosses = ow_arena_get_array(&table->arena, net->cross_offset[OW_TRAITS], sizeof *table->crosses);
    if (table->crosses == NULL)
        return OW_MEMORY;
    for (unsigned traits = 0; traits < OW_TRAITS; traits++) {
        for (uint32_t i = net->cross_offset[traits]; i < net->cross_offset[traits + 1]; i++) {
            const ow_net_cross *cross = &net->crosses[i];
            unsigned supply = ow_filter_supply(table, cross->shape);
            if (supply != 0)
                table->crosses[count++] = (ow_cross_arc){cross->entry,
                                                         {cross->exits[0], cross->exits[1], cross->exits[2]},
                                                         1,
                                                         wide_patterns(supply, cross->need, 8)};
        }
        table->cross_offset[traits + 1] = count;
    }
    return OW_OK;
}

ow_status ow_arcs_build(ow_table *table)
{
    if (table->set_count <= 2)
        return OW_OK; /* one port has nothing to share */
    ow_status status = build_forks(table);
    return status == OW_OK ? build_crosses(table) : status;
}
