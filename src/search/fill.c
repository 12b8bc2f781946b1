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
    uint16_t *open, *entered;              /* the set's rows */
    back joint[2][OW_HISTORY_BITS];        /* [turns][packed history behind it] */
    back part[OW_TRAITS][OW_HISTORY_BITS]; /* [traits of the part][packed history at its exit] */
    uint16_t made[2][OW_HISTORY_BITS];     /* [open end turns][packed]: level that a made part gives it */
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
        for (unsigned traits = 0; traits < OW_TRAITS; traits++) {
            if (!ow_rules_may_pass(&now->table->rules, traits, history, now->set))
                continue;
            back *list = &now->part[traits][packing->packed[ow_rules_pass(traits, history, true, true)]];
            list->from[list->count++] = from;
        }
    }
}

static void settle_open(filling *now, size_t kind, size_t row, size_t level)
{
    size_t state = row * now->table->kind_count + kind;
    if (now->open[state] != OW_TABLE_NONE)
        return;
    now->open[state] = (uint16_t)level;
    now->fill->settled[now->fill->settled_count++] = (uint32_t)state;
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
        if (!ow_table_kind_meets(table, kind))
            continue;
        unsigned row = packing->packed[ow_rules_join(history, table->net->kinds[kind].turns)];
        unsigned parts = table->entered[ow_table_at(table, rest, row) + kind];
        least = parts < least ? parts : least;
    }
    if ((rest & (rest - 1)) == 0) {
        size_t port = ow_ports_first(rest);
        unsigned wanted = ow_rules_wanted(&table->rules, port);
        bool turns = ow_table_kind_turns(table, table->ask->ports[port].kind);
        bool meets = ow_table_kind_meets(table, table->ask->ports[port].kind);
        if (meets && (ow_rules_join(history, turns) & wanted) == wanted)
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
                if (ow_table_kind_turns(now->table, kind) == (turns == 1) &&
                    ow_table_kind_meets(now->table, kind))
                    settle_open(now, kind, row, level);
        }
    return later;
}

/* What one use of the forced part brings, to the label in `user`: its other ends then serve the set without
 * the event. */
static ow_status spend(void *user, const ow_deal *deal)
{
    uint16_t *label = user;
    if (deal->parts < *label)
        *label = (uint16_t)deal->parts;
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
            uint16_t *label = now->entered + row * table->kind_count + of->kinds[end];
            status = ow_deals(table, shape, of->kinds[end], now->set & ~table->event_bit, row, supply, spend,
                              label);
        }
    return status;
}

/* The bits of entered ends of one row and place whose labels will not fall any more. */
static uint64_t *taken_of(const filling *now, size_t row, size_t place)
{
    return &now->fill->taken[row * now->fill->taken_words + place];
}

static void settle_level(filling *now, size_t level)
{
    const ow_table *table = now->table;
    const ow_levels *levels = now->fill->levels;
    for (uint32_t state = levels->first[level]; state != OW_LEVELS_NOBODY; state = levels->after[state]) {
        size_t row = state / table->kind_count, entry = state % table->kind_count, count;
        const ow_joint_link *links = ow_table_links(table, entry, &count);
        *taken_of(now, row, entry / 64) |= (uint64_t)1 << entry % 64;
        for (size_t i = 0; i < count; i++) {
            const back *list = &now->joint[links[i].turns ? 1 : 0][row];
            for (size_t j = 0; j < list->count; j++)
                settle_open(now, links[i].kind, list->from[j], level);
        }
    }
}

/* Lowers the entries of one block in one row to what an exit of `level` parts makes of them. */
static void carry_block(filling *now, const ow_net_block *block, size_t row, size_t level, bool bare)
{
    ow_table *table = now->table;
    uint64_t *taken = taken_of(now, row, block->place);
    uint64_t left = (bare ? block->bare : block->closing) & ~*taken;
    for (; left != 0; left &= left - 1) {
        unsigned bit = ow_net_lowest(left);
        uint32_t run = ow_net_run_at(block, bit);
        size_t weight = 1;
        if (!bare)
            weight = ow_run_weight(table, run, now->serves);
        else if (!ow_carry_is_usable(table, &table->net->carries[table->net->run_first[run]], now->serves))
            weight = OW_TABLE_NONE;
        if (weight == OW_TABLE_NONE)
            continue;
        ow_fill_lower(now->fill, now->entered, row * table->kind_count + block->place * 64u + bit,
                      level + weight);
        if (weight == (bare ? 1 : 2)) /* no other way to it is left that takes fewer */
            *taken |= (uint64_t)1 << bit;
    }
}

/* All carries to an open end that is settled. */
static void carry_back(filling *now, uint32_t state, size_t level, bool bare)
{
    const ow_table *table = now->table;
    const ow_net_index *net = table->net;
    size_t row = state / table->kind_count, exit = state % table->kind_count;
    if (exit >= net->kind_count)
        return; /* a kind of the ask alone: no part has it */
    for (uint32_t i = net->block_offset[exit]; i < net->block_offset[exit + 1]; i++) {
        const ow_net_block *block = &net->blocks[i];
        const back *list = &now->part[block->traits][row];
        for (size_t j = 0; j < list->count; j++)
            carry_block(now, block, list->from[j], level, bare);
    }
}

static ow_status carry_all_back(filling *now, size_t from, size_t past, size_t level, bool bare)
{
    ow_fill *fill = now->fill;
    const ow_table *table = now->table;
    ow_status status = OW_OK;
    for (size_t i = from; i < past && status == OW_OK; i++) {
        carry_back(now, fill->settled[i], level, bare);
        if (bare && ++fill->seen % STATES_BETWEEN == 0)
            status = ow_progress_tell(table->context, "searching", "states", table->at[now->set] + i,
                                      table->at[table->set_count]);
    }
    return status;
}

/*
 * A part without further ends weighs 1, any other at least 2. So on each level the former are looked at for
 * what was settled on it, the latter for what was settled on the level before: both then lead to the next
 * level, and what the first have taken the others need not weigh.
 */
static ow_status run_levels(filling *now, bool stop_early)
{
    ow_fill *fill = now->fill;
    const uint16_t *source = now->open + now->table->ask->source; /* history 0 */
    size_t before = 0, here = 0; /* where in `settled` the level before and this one begin */
    bool made_later = true;
    ow_status status = OW_OK;
    for (size_t level = 0; status == OW_OK && (made_later || before < here || level <= fill->levels->highest);
         level++) {
        settle_level(now, level);
        made_later = settle_made(now, level);
        if (stop_early && *source != OW_TABLE_NONE)
            break;
        size_t past = fill->settled_count;
        status = carry_all_back(now, here, past, level, true);
        if (status == OW_OK)
            status = carry_all_back(now, before, here, level - 1, false);
        before = here;
        here = past;
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

static void note_rows(const filling *now)
{
    ow_table *table = now->table;
    bool *any = table->any + ow_table_row(table, now->set, 0);
    for (size_t row = 0; row < now->packing->count; row++)
        any[row] = false;
    for (size_t i = 0; i < now->fill->settled_count; i++)
        any[now->fill->settled[i] / table->kind_count] = true;
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
    memset(fill->taken, 0, now.packing->count * fill->taken_words * sizeof *fill->taken);
    fill->settled_count = 0;
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
    status = run_levels(&now, stop_early);
    note_rows(&now);
    return status;
}

ow_status ow_fill_new(ow_table *table, ow_fill *fill)
{
    size_t widest = 0;
    for (size_t set = 0; set < table->set_count; set++)
        if (table->at[set + 1] - table->at[set] > widest)
            widest = table->at[set + 1] - table->at[set];
    *fill = (ow_fill){.table = table, .taken_words = table->kind_count / 64 + 1};
    fill->settled = ow_arena_get_array(&table->arena, widest, sizeof *fill->settled);
    fill->taken = ow_arena_get_array(&table->arena, OW_HISTORY_BITS * fill->taken_words, sizeof *fill->taken);
    return fill->settled == NULL || fill->taken == NULL ? OW_MEMORY
                                                        : ow_levels_new(&table->arena, widest, &fill->levels);
}
