/* SPDX-License-Identifier: MIT */
#include "search/fill.h"

#include <string.h>

#include "base/progress.h"

#include "search/deals.h"
#include "search/filter.h"

/* Histories from which a step leads to a given one. */
typedef struct back {
    uint8_t count;
    uint8_t from[OW_HISTORY_BITS];
} back;

#define STATES_BETWEEN 4096 /* tellings of progress */

/* One set being filled. */
typedef struct filling {
    ow_fill *fill;
    ow_table *table;
    ow_ports set;
    bool serves; /* it holds a served port */
    const ow_packing *packing;
    uint16_t *open, *entered;                  /* the set's rows */
    back joint[2][OW_HISTORY_BITS];            /* [turns][packed history behind it] */
    back part[OW_ARC_TRAITS][OW_HISTORY_BITS]; /* [traits of the arc][packed history at the exit] */
    unsigned passable;                         /* with one history: bit t, arcs of traits t may be used */
    uint16_t made[2][OW_HISTORY_BITS];         /* [open end turns][packed]: level that a made part gives it */
} filling;

static void list_steps_back(filling *now)
{
    const ow_packing *packing = now->packing;
    for (uint8_t from = 0; from < packing->count; from++) {
        unsigned history = packing->unpacked[from];
        for (unsigned turns = 0; turns < 2; turns++) {
            back *list = &now->joint[turns][packing->packed[ow_rules_join(history, turns == 1)]];
            list->from[list->count++] = from;
        }
        for (unsigned traits = 0; traits < OW_ARC_TRAITS; traits++) {
            unsigned part = traits & (OW_TRAITS - 1);
            if (((traits & OW_ARC_NARROW) != 0 && now->serves) ||
                !ow_rules_may_pass(&now->table->rules, part, history, now->set))
                continue;
            back *list = &now->part[traits][packing->packed[ow_rules_pass(part, history, true, true)]];
            list->from[list->count++] = from;
            now->passable |= 1u << traits;
        }
    }
}

static void settle_open(filling *now, size_t kind, size_t row, size_t level)
{
    size_t state = row * now->table->kind_count + kind;
    if (now->open[state] != OW_TABLE_NONE)
        return;
    now->open[state] = (uint16_t)level;
    now->fill->fresh[now->fill->fresh_count++] = (uint32_t)state;
}

/* The open ends that mate a port, in the histories that it accepts: nothing more is needed. */
static void settle_port(filling *now, size_t port)
{
    const ow_table *table = now->table;
    unsigned wanted = ow_rules_wanted(&table->rules, port);
    size_t count;
    const ow_joint_link *links = ow_table_links(table, table->ask->ports[port].kind, &count);
    for (size_t i = 0; i < count; i++)
        for (unsigned row = 0; row < now->packing->count; row++)
            if ((ow_rules_join(now->packing->unpacked[row], links[i].turns) & wanted) == wanted)
                settle_open(now, links[i].kind, row, 0);
}

/* The least that a made part leads to, joined from that history on; the port itself costs nothing. */
static uint16_t beyond_made(const filling *now, unsigned history)
{
    const ow_table *table = now->table;
    ow_ports rest = now->set & ~table->event_bit;
    if (rest == 0)
        return 0;
    unsigned least = OW_TABLE_NONE;
    const ow_packing *packing = ow_table_packing(table, rest);
    for (size_t kind = 0; kind < table->net->kind_count; kind++) {
        unsigned row = packing->packed[ow_rules_join(history, table->net->kinds[kind].turns)];
        unsigned parts = table->entered[ow_table_at(table, rest, row) + kind];
        least = parts < least ? parts : least;
    }
    if ((rest & (rest - 1)) == 0) {
        size_t port = ow_ports_first(rest);
        unsigned wanted = ow_rules_wanted(&table->rules, port);
        bool turns = ow_table_kind_turns(table, table->ask->ports[port].kind);
        if ((ow_rules_join(history, turns) & wanted) == wanted)
            least = 0;
    }
    return (uint16_t)least;
}

static void value_made_part(filling *now)
{
    memset(now->made, 0xFF, sizeof now->made);
    if (now->table->event != OW_EVENT_MADE || (now->set & now->table->event_bit) == 0)
        return;
    for (unsigned turns = 0; turns < 2; turns++)
        for (unsigned row = 0; row < now->packing->count; row++) {
            uint16_t beyond = beyond_made(now, ow_rules_join(now->packing->unpacked[row], turns == 1));
            if (beyond < OW_SEARCH_PARTS_MAX)
                now->made[turns][row] = (uint16_t)(beyond + 1u);
            else if (beyond != OW_TABLE_NONE)
                now->table->capped = true;
        }
}

/* Open ends that a made part serves on this level. Returns whether one will on a later level. */
static bool settle_made(filling *now, size_t level)
{
    bool later = false;
    for (unsigned turns = 0; turns < 2; turns++)
        for (unsigned row = 0; row < now->packing->count; row++) {
            later = later || (now->made[turns][row] != OW_TABLE_NONE && now->made[turns][row] > level);
            if (now->made[turns][row] != level)
                continue;
            for (size_t kind = 0; kind < now->table->kind_count; kind++)
                if (ow_table_kind_turns(now->table, kind) == (turns == 1))
                    settle_open(now, kind, row, level);
        }
    return later;
}

/* What one use of the forced part brings: its other ends then serve the set without the event. */
typedef struct spending {
    uint16_t *label;
} spending;

static ow_status spend(void *user, const ow_deal *deal)
{
    spending *now = user;
    if (deal->parts < *now->label)
        *now->label = (uint16_t)(deal->parts < OW_TABLE_NONE ? deal->parts : OW_TABLE_NONE);
    return OW_OK;
}

static ow_status spend_forced(filling *now)
{
    const ow_table *table = now->table;
    const ow_net_index *net = table->net;
    if (table->event != OW_EVENT_FORCED || (now->set & table->event_bit) == 0 ||
        !ow_filter_passes(table, table->forced))
        return OW_OK;
    uint32_t shape = net->shape_of[table->forced];
    const ow_net_shape *of = &net->shapes[shape];
    unsigned supply = 1u << ow_filter_wide_places(table, of, &net->parts[table->forced]);
    ow_status status = OW_OK;
    for (size_t end = 0; end < of->end_count; end++)
        for (unsigned row = 0; status == OW_OK && row < now->packing->count; row++) {
            spending into = {now->entered + row * table->kind_count + of->kinds[end]};
            status = ow_deals(table, shape, of->kinds[end], now->set & ~table->event_bit, row, supply, spend,
                              &into);
        }
    return status;
}

static void settle_level(filling *now, size_t level)
{
    const ow_table *table = now->table;
    const ow_levels *levels = now->fill->levels;
    for (uint32_t state = levels->first[level]; state != OW_LEVELS_NOBODY; state = levels->after[state]) {
        size_t row = state / table->kind_count, entry = state % table->kind_count, count;
        const ow_joint_link *links = ow_table_links(table, entry, &count);
        for (size_t i = 0; i < count; i++) {
            const back *list = &now->joint[links[i].turns ? 1 : 0][row];
            for (size_t j = 0; j < list->count; j++)
                settle_open(now, links[i].kind, list->from[j], level);
        }
    }
}

/* All arcs that lead to an open end just settled. */
static void carry_back(filling *now, uint32_t state, size_t level)
{
    ow_table *table = now->table;
    size_t row = state / table->kind_count, exit = state % table->kind_count, count;
    if (exit >= table->net->kind_count)
        return; /* a kind of the ask alone: no part has it */
    const ow_arc *arcs = ow_arcs_of(table, exit, &count);
    for (size_t i = 0; i < count; i++) {
        const ow_arc *arc = &arcs[i];
        size_t parts = level + arc->weight;
        if (now->packing->count == 1) { /* nothing to remember: the usual case, kept short */
            if ((now->passable >> arc->traits & 1u) != 0 && parts < now->entered[arc->entry])
                ow_fill_lower(now->fill, now->entered, arc->entry, parts);
            continue;
        }
        const back *list = &now->part[arc->traits][row];
        for (size_t j = 0; j < list->count; j++)
            ow_fill_lower(now->fill, now->entered, list->from[j] * table->kind_count + arc->entry, parts);
    }
}

/* Carries each state back that was settled on this level. */
static ow_status carry_fresh_back(filling *now, size_t level)
{
    ow_fill *fill = now->fill;
    const ow_table *table = now->table;
    ow_status status = OW_OK;
    for (size_t i = 0; i < fill->fresh_count && status == OW_OK; i++) {
        carry_back(now, fill->fresh[i], level);
        if (++fill->seen % STATES_BETWEEN == 0)
            status = ow_progress_tell(table->context, "searching", "states", fill->seen,
                                      table->at[table->set_count]);
    }
    return status;
}

static ow_status run_levels(filling *now, bool stop_early)
{
    ow_fill *fill = now->fill;
    const uint16_t *source = now->open + now->table->ask->source; /* history 0 */
    bool made_later = true;
    ow_status status = OW_OK;
    for (size_t level = 0; status == OW_OK && (made_later || level <= fill->levels->highest); level++) {
        if (level > 0)
            fill->fresh_count = 0;
        settle_level(now, level);
        made_later = settle_made(now, level);
        if (stop_early && *source != OW_TABLE_NONE)
            break;
        status = carry_fresh_back(now, level);
    }
    return status;
}

/* Labels from finished sets, put on their levels. */
static void queue_labels(filling *now)
{
    ow_levels_clear(now->fill->levels);
    size_t states = now->packing->count * now->table->kind_count;
    for (size_t state = 0; state < states; state++) {
        if (now->entered[state] == OW_TABLE_NONE)
            continue;
        if (now->entered[state] <= OW_SEARCH_PARTS_MAX) {
            ow_levels_put(now->fill->levels, (uint32_t)state, now->entered[state]);
            continue;
        }
        now->entered[state] = OW_TABLE_NONE;
        now->table->capped = true;
    }
}

ow_status ow_fill_set(ow_fill *fill, ow_ports set, bool stop_early)
{
    ow_table *table = fill->table;
    filling now = {.fill = fill,
                   .table = table,
                   .set = set,
                   .serves = (set & table->rules.served) != 0,
                   .packing = ow_table_packing(table, set),
                   .open = table->open + table->at[set],
                   .entered = table->entered + table->at[set]};
    size_t states = now.packing->count * table->kind_count;
    memset(now.open, 0xFF, states * sizeof *now.open);
    memset(now.entered, 0xFF, states * sizeof *now.entered);
    fill->fresh_count = 0;
    list_steps_back(&now);
    value_made_part(&now);
    ow_status status = ow_fill_forks(fill, set);
    if (status == OW_OK)
        status = spend_forced(&now);
    if (status != OW_OK)
        return status;
    queue_labels(&now);
    if ((set & (set - 1)) == 0 && set != table->event_bit)
        settle_port(&now, ow_ports_first(set));
    return run_levels(&now, stop_early);
}

ow_status ow_fill_new(ow_table *table, ow_fill *fill)
{
    size_t widest = 0;
    for (size_t set = 0; set < table->set_count; set++)
        if (table->at[set + 1] - table->at[set] > widest)
            widest = table->at[set + 1] - table->at[set];
    *fill = (ow_fill){.table = table};
    fill->fresh = ow_arena_get_array(&table->arena, widest, sizeof *fill->fresh);
    return fill->fresh == NULL ? OW_MEMORY : ow_levels_new(&table->arena, widest, &fill->levels);
}
