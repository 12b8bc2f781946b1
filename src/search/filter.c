/* SPDX-License-Identifier: MIT */
#include "search/filter.h"

#define ALL_WIDE 0xFu

ow_status ow_filter_bar(ow_table *table)
{
    const ow_search_input *ask = table->ask;
    if (ask->without_count == 0)
        return OW_OK;
    table->barred = ow_arena_get_array(&table->arena, table->net->part_count, sizeof *table->barred);
    if (table->barred == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < ask->without_count; i++) {
        if (ask->without[i] >= table->net->part_count)
            return OW_RANGE;
        table->barred[table->net->place[ask->without[i]]] = true;
    }
    return OW_OK;
}

static bool orifice_in_range(const ow_search_limits *limits, const ow_net_part *part)
{
    if (part->orifice_um == OW_NET_NOT_SAID)
        return false;
    return (limits->orifice_low_um == OW_NET_NOT_SAID || part->orifice_um >= limits->orifice_low_um) &&
           (limits->orifice_high_um == OW_NET_NOT_SAID || part->orifice_um <= limits->orifice_high_um);
}

bool ow_filter_passes(const ow_table *table, size_t place)
{
    const ow_search_limits *limits = &table->ask->limits;
    const ow_net_part *part = &table->net->parts[place];
    if (table->barred != NULL && table->barred[place])
        return false;
    if (limits->no_tee && part->end_count > 2)
        return false;
    if (limits->rating_pa != OW_NET_NOT_SAID && part->rating_pa < limits->rating_pa)
        return false; /* not said is less than any rating asked */
    if (limits->has_temperature && (!part->has_temperature || part->low_mc > limits->temperature_mc ||
                                    part->high_mc < limits->temperature_mc))
        return false;
    if ((part->fluids & limits->fluid) != limits->fluid)
        return false;
    return !part->restrictor || !table->asks_orifice || orifice_in_range(limits, part);
}

bool ow_filter_wide(const ow_table *table, int64_t leg_um)
{
    int64_t least = table->ask->limits.least_bore_um;
    return least == OW_NET_NOT_SAID || (leg_um != OW_NET_NOT_SAID && leg_um >= least);
}

unsigned ow_filter_wide_places(const ow_table *table, const ow_net_shape *shape, const ow_net_part *part)
{
    if (table->ask->limits.least_bore_um == OW_NET_NOT_SAID)
        return ALL_WIDE;
    unsigned places = 0;
    for (size_t end = 0; end < part->end_count; end++) {
        if (!ow_filter_wide(table, part->leg_um[end]))
            continue;
        for (unsigned place = 0; place < shape->end_count; place++)
            if (shape->kinds[place] == part->kinds[end] && (places >> place & 1u) == 0) {
                places |= 1u << place;
                break;
            }
    }
    unsigned all = (1u << part->end_count) - 1;
    return places == all ? ALL_WIDE : places;
}

/* Whether all parts of a shape pass and are wide, by what they promise together. */
static bool promised(const ow_table *table, const ow_net_shape *shape)
{
    const ow_search_limits *limits = &table->ask->limits;
    const ow_net_promise *promise = &shape->promise;
    if (limits->no_tee && shape->end_count > 2)
        return false;
    if (shape->restrictor && table->asks_orifice)
        return false;
    return (limits->rating_pa == OW_NET_NOT_SAID || promise->rating_pa >= limits->rating_pa) &&
           (limits->least_bore_um == OW_NET_NOT_SAID || promise->leg_um >= limits->least_bore_um) &&
           (!limits->has_temperature ||
            (promise->has_temperature && promise->low_mc <= limits->temperature_mc &&
             promise->high_mc >= limits->temperature_mc)) &&
           (promise->fluids & limits->fluid) == limits->fluid;
}

static unsigned look_at_parts(const ow_table *table, const ow_net_shape *shape)
{
    unsigned supply = OW_SUPPLY_KNOWN;
    for (size_t i = 0; i < shape->count; i++) {
        size_t place = shape->first + i;
        if (!ow_filter_passes(table, place))
            continue;
        unsigned wide = ow_filter_wide_places(table, shape, &table->net->parts[place]);
        supply |= 1u << wide;
        if (wide == ALL_WIDE)
            break; /* does whatever any other does */
    }
    return supply;
}

unsigned ow_filter_work_out(const ow_table *table, uint32_t shape)
{
    const ow_net_shape *of = &table->net->shapes[shape];
    unsigned supply = promised(table, of) ? OW_SUPPLY_KNOWN | OW_SUPPLY_ALL_WIDE : look_at_parts(table, of);
    table->supply[shape] = supply;
    return supply;
}

ow_status ow_filter_prepare(ow_table *table)
{
    const ow_search_input *ask = table->ask;
    const ow_net_index *net = table->net;
    table->asks_orifice =
        ask->limits.orifice_low_um != OW_NET_NOT_SAID || ask->limits.orifice_high_um != OW_NET_NOT_SAID;
    table->supply = ow_arena_get_array(&table->arena, net->shape_count, sizeof *table->supply);
    if (table->supply == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < ask->without_count; i++) { /* what a shape promises counts these too */
        uint32_t shape = net->shape_of[net->place[ask->without[i]]];
        table->supply[shape] = look_at_parts(table, &net->shapes[shape]);
    }
    return OW_OK;
}
