/* SPDX-License-Identifier: MIT */
/* How far it got: outward from the source, and back from each port. */
#include "search/filter.h"
#include "search/resolve_inner.h"

/* Kinds still to be gone out from; each is put here once. */
typedef struct outward {
    bool *reached;
    uint16_t *waiting;
    size_t count;
} outward;

static void reach(outward *now, uint16_t kind)
{
    if (now->reached[kind])
        return;
    now->reached[kind] = true;
    now->waiting[now->count++] = kind;
}

/* Through every part that passes the filters, whatever its other ends may need. */
static void pass_parts(const ow_table *table, outward *now, uint16_t entry)
{
    const ow_net_index *net = table->net;
    if (entry >= net->kind_count)
        return; /* a kind of the ask alone: no part has it */
    for (size_t i = net->entry_offset[entry]; i < net->entry_offset[entry + 1u]; i++) {
        const ow_net_shape *shape = &net->shapes[net->entry_shapes[i]];
        bool entered = ow_filter_supply(table, net->entry_shapes[i]) == 0;
        if (entered)
            continue;
        for (size_t end = 0; end < shape->end_count; end++) {
            if (shape->kinds[end] == entry && !entered)
                entered = true;
            else
                reach(now, shape->kinds[end]);
        }
    }
}

ow_status ow_resolve_reach_source(ow_resolve *resolve, bool *kinds)
{
    const ow_table *table = resolve->table;
    outward now = {kinds, ow_new_array(resolve->context, table->kind_count + 1, sizeof *now.waiting), 0};
    if (now.waiting == NULL)
        return OW_MEMORY;
    for (size_t kind = 0; kind < table->kind_count; kind++)
        kinds[kind] = false;
    reach(&now, (uint16_t)table->ask->source);
    while (now.count > 0) {
        size_t count;
        const ow_joint_link *links = ow_table_links(table, now.waiting[--now.count], &count);
        for (size_t i = 0; i < count; i++)
            pass_parts(table, &now, links[i].kind);
    }
    ow_release(resolve->context, now.waiting);
    return OW_OK;
}

ow_status ow_resolve_reach_port(ow_resolve *resolve, size_t port, bool *kinds)
{
    const ow_table *table = resolve->table;
    if (port >= table->ask->port_count)
        return OW_RANGE;
    ow_status status = ow_resolve_complete(resolve);
    if (status != OW_OK)
        return status;
    ow_ports set = 1u << port;
    for (size_t kind = 0; kind < table->kind_count; kind++) {
        kinds[kind] = false;
        for (unsigned row = 0; row < ow_table_packing(table, set)->count; row++)
            kinds[kind] = kinds[kind] || table->open[ow_table_at(table, set, row) + kind] != OW_TABLE_NONE;
    }
    return OW_OK;
}
