/* SPDX-License-Identifier: MIT */
#include "search/table.h"

#include "search/fill.h"
#include "search/filter.h"

static ow_status check_ask(const ow_net_index *net, const ow_search_input *ask)
{
    size_t kinds = net->kind_count + ask->extra_count;
    if (ask->port_count < 1 || ask->port_count > OW_SEARCH_PORTS_MAX || kinds >= OW_NET_KIND_NONE ||
        ask->extra_count > OW_NET_KINDS_MAX || ask->source >= kinds)
        return OW_RANGE;
    for (size_t i = 0; i < ask->port_count; i++)
        if (ask->ports[i].kind >= kinds)
            return OW_RANGE;
    for (size_t i = 0; i < ask->extra_mate_count; i++)
        if (ask->extra_mates[i].a >= kinds || ask->extra_mates[i].b >= kinds)
            return OW_RANGE;
    if (ask->hose_length_um < 0 || ask->hose_length_um > OW_NET_AMOUNT_MAX)
        return OW_RANGE;
    return OW_OK;
}

static bool allowed(const ow_table *table, size_t a, size_t b, bool tolerated)
{
    return (!tolerated || table->ask->limits.tolerate) && ow_table_kind_meets(table, a) &&
           ow_table_kind_meets(table, b);
}

/* Counts, or with `links` places, both directions of an extra pair. next[k] is moved on for each. */
static void put_extra(const ow_table *table, uint32_t *next, ow_joint_link *links)
{
    const ow_search_input *ask = table->ask;
    for (size_t i = 0; i < ask->extra_mate_count; i++) {
        const ow_net_mate *mate = &ask->extra_mates[i];
        if (!allowed(table, mate->a, mate->b, mate->tolerated))
            continue;
        if (links != NULL)
            links[next[mate->a]] = (ow_joint_link){mate->b, mate->turns};
        next[mate->a]++;
        if (mate->a == mate->b)
            continue;
        if (links != NULL)
            links[next[mate->b]] = (ow_joint_link){mate->a, mate->turns};
        next[mate->b]++;
    }
}

static void put_own(const ow_table *table, uint32_t *next, ow_joint_link *links)
{
    const ow_net_index *net = table->net;
    for (size_t kind = 0; kind < net->kind_count; kind++)
        for (size_t i = net->link_offset[kind]; i < net->link_offset[kind + 1]; i++) {
            if (!allowed(table, kind, net->links[i].kind, net->links[i].tolerated))
                continue;
            if (links != NULL)
                links[next[kind]] = (ow_joint_link){net->links[i].kind, net->links[i].turns};
            next[kind]++;
        }
}

static ow_status build_links(ow_table *table)
{
    uint32_t *offset = ow_arena_get_array(&table->arena, table->kind_count + 2, sizeof *offset);
    if (offset == NULL)
        return OW_MEMORY;
    uint32_t *next = offset + 1; /* counts first; then, moved on while placing, they end as offsets */
    put_own(table, next, NULL);
    put_extra(table, next, NULL);
    uint32_t sum = 0;
    for (size_t kind = 0; kind <= table->kind_count; kind++) {
        uint32_t here = next[kind];
        next[kind] = sum;
        sum += here;
    }
    table->links = ow_arena_get_array(&table->arena, sum, sizeof *table->links);
    if (table->links == NULL)
        return OW_MEMORY;
    put_own(table, next, table->links);
    put_extra(table, next, table->links);
    table->link_offset = offset;
    return OW_OK;
}

static void build_packing(ow_packing *packing, unsigned asked)
{
    packing->count = 0;
    for (unsigned history = 0; history < OW_HISTORY_BITS; history++)
        if ((history & ~asked) == 0) {
            packing->packed[history] = (uint8_t)packing->count;
            packing->unpacked[packing->count++] = (uint8_t)history;
        }
    for (unsigned history = 0; history < OW_HISTORY_BITS; history++)
        packing->packed[history] = packing->packed[history & asked];
}

static ow_status lay_out_rows(ow_table *table)
{
    for (unsigned asked = 0; asked < OW_HISTORY_BITS; asked++)
        build_packing(&table->packings[asked], asked);
    size_t rows = 0;
    for (ow_ports set = 0; set < table->set_count; set++) {
        table->asked[set] = (uint8_t)ow_rules_asked(&table->rules, set);
        table->at[set] = rows * table->kind_count;
        rows += ow_table_packing(table, set)->count;
    }
    table->at[table->set_count] = rows * table->kind_count;
    table->open = ow_arena_get_array(&table->arena, rows * table->kind_count, sizeof *table->open);
    table->entered = ow_arena_get_array(&table->arena, rows * table->kind_count, sizeof *table->entered);
    table->any = ow_arena_get_array(&table->arena, rows, sizeof *table->any);
    return table->open == NULL || table->entered == NULL || table->any == NULL ? OW_MEMORY : OW_OK;
}

static ow_status prepare(ow_table *table)
{
    ow_status status = ow_filter_bar(table);
    if (status == OW_OK)
        status = build_links(table);
    if (status == OW_OK)
        status = ow_filter_prepare(table);
    if (status == OW_OK)
        status = lay_out_rows(table);
    if (status != OW_OK)
        return status;
    table->fill = ow_arena_get(&table->arena, sizeof *table->fill);
    return table->fill == NULL ? OW_MEMORY : ow_fill_new(table, table->fill);
}

static ow_status fill_all(ow_table *table, bool whole)
{
    ow_fill_closings(table->fill);
    ow_status status = ow_arcs_build(table);
    for (ow_ports set = 1; status == OW_OK && set < table->set_count; set++)
        status = ow_fill_set(table->fill, set, set == table->all && !whole);
    table->whole = whole;
    table->best = table->open[ow_table_at(table, table->all, 0) + table->ask->source];
    return status;
}

ow_status ow_table_new(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                       ow_event event, uint32_t forced, bool whole, ow_table **table)
{
    ow_status status = check_ask(net, ask);
    if (status != OW_OK)
        return status;
    ow_table *made = ow_new_array(context, 1, sizeof *made);
    if (made == NULL)
        return OW_MEMORY;
    made->context = context;
    made->arena = ow_arena_new(context);
    made->net = net;
    made->ask = ask;
    made->rules = ow_rules_of(ask);
    made->event = event;
    made->event_bit = event == OW_EVENT_NONE ? 0 : 1u << ask->port_count;
    made->forced = forced;
    made->kind_count = net->kind_count + ask->extra_count;
    made->set_count = (size_t)1 << (ask->port_count + (event == OW_EVENT_NONE ? 0 : 1));
    made->all = (ow_ports)made->set_count - 1;
    status = prepare(made);
    if (status == OW_OK)
        status = fill_all(made, whole);
    if (status != OW_OK) {
        ow_table_free(made);
        return status;
    }
    *table = made;
    return OW_OK;
}

void ow_table_free(ow_table *table)
{
    if (table == NULL)
        return;
    const ow_context *context = table->context;
    ow_arena_done(&table->arena);
    ow_release(context, table);
}

ow_status ow_table_complete(ow_table *table)
{
    if (table->whole)
        return OW_OK;
    ow_status status = ow_fill_set(table->fill, table->all, false);
    table->whole = status == OW_OK;
    table->torn = status != OW_OK;
    return status;
}
