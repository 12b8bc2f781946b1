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

/* Puts an arc behind those of its run, unless one of them does all it does. */
static size_t put_arc(ow_arc *run, size_t count, ow_arc arc)
{
    for (size_t i = 0; i < count; i++) {
        if (run[i].weight <= arc.weight && run[i].traits <= arc.traits)
            return count;
        if (arc.weight <= run[i].weight && arc.traits <= run[i].traits) {
            run[i] = arc;
            return count;
        }
    }
    run[count] = arc;
    return count + 1;
}

/* The arcs of one run of carries: the lightest, and the lightest that is wide. Returns how many. */
static size_t build_run(ow_table *table, const ow_net_run *run, ow_arc *arcs)
{
    unsigned traits = (run->hose ? OW_TRAIT_HOSE : 0u) | (run->restrictor ? OW_TRAIT_RESTRICTOR : 0u);
    size_t count = 0;
    for (uint32_t i = run->first; i < run->first + run->count; i++) {
        const ow_net_carry *carry = &table->net->carries[i];
        unsigned supply = ow_filter_supply(table, carry->shape);
        size_t weight = supply == 0 ? OW_TABLE_NONE : weight_of(table, carry->closed, OW_NET_ENDS - 2);
        if (weight == OW_TABLE_NONE)
            continue;
        bool narrow = !ow_supply_meets(supply, carry->need);
        ow_arc arc = {run->entry, (uint16_t)weight, (uint8_t)(traits | (narrow ? OW_ARC_NARROW : 0u))};
        count = put_arc(arcs, count, arc);
        if (weight == 1 && !narrow)
            break; /* none can be better */
    }
    return count;
}

/* Most asks are settled before all kinds have been exits, so the arcs of each wait until it is one. */
const ow_arc *ow_arcs_of(ow_table *table, size_t exit, size_t *count)
{
    const ow_net_index *net = table->net;
    ow_arc *arcs = table->arcs + net->carry_offset[exit];
    *count = table->arc_count[exit];
    if (*count != OW_ARCS_UNBUILT)
        return arcs;
    *count = 0;
    for (size_t i = net->run_offset[exit]; i < net->run_offset[exit + 1]; i++)
        *count += build_run(table, &net->runs[i], arcs + *count);
    table->arc_count[exit] = (uint32_t)*count;
    return arcs;
}

static ow_status prepare_arcs(ow_table *table)
{
    const ow_net_index *net = table->net;
    size_t carries = net->carry_offset[net->kind_count];
    table->arcs = ow_resize(table->context, NULL, (carries + 1) * sizeof *table->arcs);
    table->arc_count = ow_arena_get_array(&table->arena, net->kind_count, sizeof *table->arc_count);
    if (table->arcs == NULL || table->arc_count == NULL)
        return OW_MEMORY;
    for (size_t exit = 0; exit < net->kind_count; exit++)
        table->arc_count[exit] = OW_ARCS_UNBUILT;
    return OW_OK;
}

static ow_status build_forks(ow_table *table)
{
    const ow_net_index *net = table->net;
    table->forks = ow_arena_get_array(&table->arena, net->fork_count, sizeof *table->forks);
    if (table->forks == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < net->fork_count; i++) {
        const ow_net_fork *fork = &net->forks[i];
        unsigned supply = ow_filter_supply(table, fork->shape);
        size_t weight = supply == 0 ? OW_TABLE_NONE : weight_of(table, &fork->closed, 1);
        if (weight == OW_TABLE_NONE)
            continue;
        unsigned traits = ow_shape_traits(&net->shapes[fork->shape]);
        table->fork_traits |= 1u << traits;
        table->forks[table->fork_count++] = (ow_fork_arc){fork->entry,
                                                          {fork->exits[0], fork->exits[1]},
                                                          (uint16_t)weight,
                                                          (uint8_t)traits,
                                                          wide_patterns(supply, fork->need, 4)};
    }
    return OW_OK;
}

static ow_status build_crosses(ow_table *table)
{
    const ow_net_index *net = table->net;
    table->crosses = ow_arena_get_array(&table->arena, net->cross_count, sizeof *table->crosses);
    if (table->crosses == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < net->cross_count; i++) {
        const ow_net_cross *cross = &net->crosses[i];
        unsigned supply = ow_filter_supply(table, cross->shape);
        if (supply == 0)
            continue;
        unsigned traits = ow_shape_traits(&net->shapes[cross->shape]);
        table->cross_traits |= 1u << traits;
        table->crosses[table->cross_count++] =
            (ow_cross_arc){cross->entry,
                           {cross->exits[0], cross->exits[1], cross->exits[2]},
                           1,
                           (uint8_t)traits,
                           wide_patterns(supply, cross->need, 8)};
    }
    return OW_OK;
}

ow_status ow_arcs_build(ow_table *table)
{
    ow_status status = prepare_arcs(table);
    if (status == OW_OK && table->set_count > 2) /* one port has nothing to share */
        status = build_forks(table);
    if (status == OW_OK && table->set_count > 2)
        status = build_crosses(table);
    return status;
}
