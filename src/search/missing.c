/* SPDX-License-Identifier: MIT */
/*
 * The one made part that completes a layout: a table in which one bit of the set is a made part still to come
 * (docs/search.md). Walking down all that ties from the source finds every made part of an optimum.
 */
#include "base/sort.h"
#include "search/deals.h"
#include "search/resolve_inner.h"

typedef struct waiting_state {
    bool entered;
    ow_ports set;
    uint16_t kind;
    uint8_t row;
} waiting_state;

typedef struct walk {
    const ow_table *table;
    bool *seen; /* open ends, then entered ones */
    waiting_state *waiting;
    size_t waiting_count, waiting_capacity;
    ow_made *made;
    size_t made_count, made_capacity;
    size_t parts; /* of the entered end at hand */
} walk;

static ow_status await(walk *now, bool entered, ow_ports set, unsigned row, uint16_t kind)
{
    const ow_table *table = now->table;
    bool *seen =
        &now->seen[ow_table_at(table, set, row) + kind + (entered ? table->at[table->set_count] : 0)];
    if (*seen)
        return OW_OK;
    ow_status status = ow_grow(table->context, (void **)&now->waiting, &now->waiting_capacity,
                               now->waiting_count + 1, sizeof *now->waiting);
    if (status == OW_OK) {
        *seen = true;
        now->waiting[now->waiting_count++] = (waiting_state){entered, set, kind, (uint8_t)row};
    }
    return status;
}

static ow_status note(walk *now, const ow_made *made)
{
    ow_status status = ow_grow(now->table->context, (void **)&now->made, &now->made_capacity,
                               now->made_count + 1, sizeof *now->made);
    if (status == OW_OK)
        now->made[now->made_count++] = *made;
    return status;
}

/* A made part on this open end, if that is among its best. */
static ow_status make_here(walk *now, const waiting_state *at, size_t parts)
{
    const ow_table *table = now->table;
    ow_ports rest = at->set & ~table->event_bit;
    if (!ow_table_kind_meets(table, at->kind))
        return OW_OK;
    ow_made made = {.from = at->kind,
                    .at_source =
                        at->set == table->all && at->kind == table->ask->source && parts == table->best};
    if (rest == 0) {
        made.plug = true;
        return parts == 1 ? note(now, &made) : OW_OK;
    }
    const ow_packing *packing = ow_table_packing(table, rest);
    unsigned history =
        ow_rules_join(packing->unpacked[at->row], ow_table_kind_turns(table, at->kind)); /* same bits asked */
    for (size_t kind = 0; kind < table->net->kind_count; kind++) {
        unsigned row = packing->packed[ow_rules_join(history, table->net->kinds[kind].turns)];
        size_t beyond = table->entered[ow_table_at(table, rest, row) + kind];
        made.to = (uint32_t)kind;
        bool fits = beyond != OW_TABLE_NONE && beyond + 1 == parts && ow_table_kind_meets(table, kind);
        ow_status status = fits ? note(now, &made) : OW_OK;
        if (status != OW_OK)
            return status;
    }
    if ((rest & (rest - 1)) != 0 || parts != 1)
        return OW_OK;
    made.port = ow_ports_first(rest);
    made.to = table->ask->ports[made.port].kind;
    made.to_port = true;
    unsigned wanted = ow_rules_wanted(&table->rules, made.port);
    history = ow_rules_join(history, ow_table_kind_turns(table, made.to));
    return (history & wanted) == wanted && ow_table_kind_meets(table, made.to) ? note(now, &made) : OW_OK;
}

static ow_status walk_open(walk *now, const waiting_state *at)
{
    const ow_table *table = now->table;
    const ow_packing *packing = ow_table_packing(table, at->set);
    size_t parts = table->open[ow_table_at(table, at->set, at->row) + at->kind], count;
    ow_status status = make_here(now, at, parts);
    const ow_joint_link *links = ow_table_links(table, at->kind, &count);
    for (size_t i = 0; status == OW_OK && i < count; i++) {
        unsigned row = packing->packed[ow_rules_join(packing->unpacked[at->row], links[i].turns)];
        if (table->entered[ow_table_at(table, at->set, row) + links[i].kind] == parts)
            status = await(now, true, at->set, row, links[i].kind);
    }
    return status;
}

static ow_status follow_deal(void *user, const ow_deal *deal, bool spent)
{
    walk *now = user;
    (void)spent;
    for (size_t i = 0; deal->parts == now->parts && i < deal->exit_count; i++)
        if ((deal->shares[i] & now->table->event_bit) != 0)
            return await(now, false, deal->shares[i], deal->rows[i], deal->exits[i]);
    return OW_OK;
}

static ow_status walk_all(walk *now)
{
    const ow_table *table = now->table;
    ow_status status = await(now, false, table->all, 0, (uint16_t)table->ask->source);
    while (status == OW_OK && now->waiting_count > 0) {
        waiting_state at = now->waiting[--now->waiting_count];
        if (!at.entered) {
            status = walk_open(now, &at);
            continue;
        }
        now->parts = table->entered[ow_table_at(table, at.set, at.row) + at.kind];
        status = ow_deals_of(table, at.kind, at.set, at.row, now->parts, follow_deal, now);
    }
    return status;
}

static int compare_made(const void *items, uint32_t left, uint32_t right)
{
    const ow_made *a = (const ow_made *)items + left, *b = (const ow_made *)items + right;
    const uint32_t by[6][2] = {{a->from, b->from},
                               {a->plug, b->plug},
                               {a->to, b->to},
                               {a->to_port, b->to_port},
                               {(uint32_t)a->port, (uint32_t)b->port},
                               {b->at_source, a->at_source}};
    for (size_t i = 0; i < 6; i++)
        if (by[i][0] != by[i][1])
            return by[i][0] < by[i][1] ? -1 : 1;
    return 0;
}

/* Sorted, each once, in an array of the caller's own. */
static ow_status hand_over(walk *now, ow_made **made, size_t *count)
{
    const ow_context *context = now->table->context;
    uint32_t *order = ow_new_array(context, now->made_count + 1, sizeof *order);
    ow_made *sorted = ow_new_array(context, now->made_count + 1, sizeof *sorted);
    ow_status status = order == NULL || sorted == NULL ? OW_MEMORY : OW_OK;
    for (size_t i = 0; status == OW_OK && i < now->made_count; i++)
        order[i] = (uint32_t)i;
    if (status == OW_OK)
        status = ow_sort(context, order, now->made_count, compare_made, now->made);
    if (status == OW_OK) {
        size_t kept = 0;
        for (size_t i = 0; i < now->made_count; i++)
            if (i == 0 || compare_made(now->made, order[i - 1], order[i]) != 0)
                sorted[kept++] = now->made[order[i]];
        *made = sorted;
        *count = kept;
        sorted = NULL;
    }
    ow_release(context, sorted);
    ow_release(context, order);
    return status;
}

ow_status ow_resolve_missing(ow_resolve *resolve, ow_made **made, size_t *count, size_t *parts)
{
    ow_table *table;
    ow_status status =
        ow_table_new(resolve->context, resolve->net, resolve->ask, OW_EVENT_MADE, 0, false, &table);
    if (status != OW_OK)
        return status;
    walk now = {.table = table};
    if (table->best == OW_TABLE_NONE) {
        status = OW_NONE;
    } else {
        now.seen = ow_new_array(resolve->context, 2 * table->at[table->set_count], sizeof *now.seen);
        status = now.seen == NULL ? OW_MEMORY : walk_all(&now);
    }
    if (status == OW_OK)
        status = hand_over(&now, made, count);
    if (status == OW_OK)
        *parts = table->best;
    ow_release(resolve->context, now.made);
    ow_release(resolve->context, now.waiting);
    ow_release(resolve->context, now.seen);
    ow_table_free(table);
    return status;
}
