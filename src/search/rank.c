/* SPDX-License-Identifier: MIT */
#include "search/rank.h"

#include <string.h>

ow_status ow_rank_new(const ow_table *table, size_t most_parts, ow_rank *rank)
{
    *rank = (ow_rank){.table = table, .arena = ow_arena_new(table->context), .most_parts = most_parts};
    for (size_t i = 0; i < 2; i++)
        rank->scratch[i] = ow_arena_get_array(&rank->arena, OW_SEARCH_PARTS_MAX, sizeof *rank->scratch[i]);
    return rank->scratch[0] == NULL || rank->scratch[1] == NULL ? OW_MEMORY : OW_OK;
}

void ow_rank_done(ow_rank *rank)
{
    if (rank->table == NULL)
        return;
    ow_release(rank->table->context, rank->slots);
    ow_arena_done(&rank->arena);
    *rank = (ow_rank){.table = NULL};
}

/* ---- states, by hash ------------------------------------------------------------------------ */

static size_t slot_of(const ow_rank *rank, bool entered, size_t where)
{
    uint64_t mixed = ((uint64_t)where * 2 + (entered ? 1 : 0)) * 0x9E3779B97F4A7C15u; /* Fibonacci hashing */
    size_t slot = (size_t)(mixed >> 32) & (rank->slot_capacity - 1);
    while (rank->slots[slot] != NULL &&
           (rank->slots[slot]->where != where || rank->slots[slot]->entered != entered))
        slot = (slot + 1) & (rank->slot_capacity - 1);
    return slot;
}

static ow_status make_room(ow_rank *rank)
{
    if (rank->slot_count * 2 < rank->slot_capacity)
        return OW_OK;
    ow_rank_state **old = rank->slots;
    size_t old_capacity = rank->slot_capacity;
    size_t capacity = old_capacity == 0 ? 256 : old_capacity * 2;
    ow_rank_state **slots = ow_new_array(rank->table->context, capacity, sizeof *slots);
    if (slots == NULL)
        return OW_MEMORY;
    rank->slots = slots;
    rank->slot_capacity = capacity;
    for (size_t i = 0; i < old_capacity; i++)
        if (old[i] != NULL)
            slots[slot_of(rank, old[i]->entered, old[i]->where)] = old[i];
    ow_release(rank->table->context, old);
    return OW_OK;
}

ow_status ow_rank_state_of(ow_rank *rank, bool entered, ow_ports set, unsigned row, size_t kind,
                           ow_rank_state **state)
{
    ow_status status = make_room(rank);
    if (status != OW_OK)
        return status;
    const ow_table *table = rank->table;
    size_t where = ow_table_at(table, set, row) + kind;
    size_t slot = slot_of(rank, entered, where);
    if (rank->slots[slot] == NULL) {
        ow_rank_state *made = ow_arena_get(&rank->arena, sizeof *made);
        if (made == NULL)
            return OW_MEMORY;
        made->entered = entered;
        made->set = set;
        made->kind = (uint16_t)kind;
        made->row = (uint8_t)row;
        made->where = where;
        made->level = entered ? table->entered[where] : table->open[where];
        made->succeeded = true;
        rank->slots[slot] = made;
        rank->slot_count++;
    }
    *state = rank->slots[slot];
    return OW_OK;
}

/* ---- the heap of a state -------------------------------------------------------------------- */

static ow_status grow(ow_rank *rank, ow_derivation **items, size_t *capacity, size_t needed)
{
    if (needed <= *capacity)
        return OW_OK;
    size_t wanted = *capacity == 0 ? 4 : *capacity * 2;
    ow_derivation *grown = ow_arena_get_array(&rank->arena, wanted, sizeof *grown);
    if (grown == NULL)
        return OW_MEMORY;
    if (*capacity > 0)
        memcpy(grown, *items, *capacity * sizeof *grown);
    *items = grown;
    *capacity = wanted;
    return OW_OK;
}

static ow_status push(ow_rank *rank, ow_rank_state *state, const ow_derivation *derivation)
{
    ow_status status = grow(rank, &state->heap, &state->heap_capacity, state->heap_count + 1);
    if (status != OW_OK)
        return status;
    size_t at = state->heap_count++;
    while (at > 0 && ow_rank_compare(rank, derivation, &state->heap[(at - 1) / 2]) < 0) {
        state->heap[at] = state->heap[(at - 1) / 2];
        at = (at - 1) / 2;
    }
    state->heap[at] = *derivation;
    return OW_OK;
}

static ow_derivation pop(ow_rank *rank, ow_rank_state *state)
{
    ow_derivation least = state->heap[0], last = state->heap[--state->heap_count];
    size_t at = 0;
    for (;;) {
        size_t child = 2 * at + 1;
        if (child >= state->heap_count)
            break;
        if (child + 1 < state->heap_count &&
            ow_rank_compare(rank, &state->heap[child + 1], &state->heap[child]) < 0)
            child++;
        if (ow_rank_compare(rank, &last, &state->heap[child]) <= 0)
            break;
        state->heap[at] = state->heap[child];
        at = child;
    }
    state->heap[at] = last;
    return least;
}

/* ---- candidates ----------------------------------------------------------------------------- */

/* Working out the candidates of a state whose first has `level` parts; `later` becomes the next such number.
 */
typedef struct working {
    ow_rank *rank;
    ow_rank_state *state;
    size_t level, later;
} working;

static bool on_level(working *now, size_t parts)
{
    if (parts > now->level && parts < now->later) {
        if (parts <= now->rank->most_parts)
            now->later = parts;
        else
            now->rank->cut = true;
    }
    return parts == now->level;
}

static ow_status take_deal(void *user, const ow_deal *deal, bool spent)
{
    working *now = user;
    if (!on_level(now, deal->parts))
        return OW_OK;
    ow_derivation derivation;
    ow_status status = ow_rank_compose(now->rank, now->state, deal, spent, &derivation);
    return status == OW_OK ? push(now->rank, now->state, &derivation) : status;
}

static ow_status join_port(working *now)
{
    const ow_table *table = now->rank->table;
    ow_rank_state *state = now->state;
    if (state->set == 0 || (state->set & (state->set - 1)) != 0 || state->set == table->event_bit)
        return OW_OK;
    size_t port = ow_ports_first(state->set), count;
    unsigned wanted = ow_rules_wanted(&table->rules, port);
    unsigned history = ow_table_packing(table, state->set)->unpacked[state->row];
    const ow_joint_link *links = ow_table_links(table, state->kind, &count);
    ow_derivation made = {.part = OW_RANK_NO_PART};
    for (size_t i = 0; i < count; i++)
        if (links[i].kind == table->ask->ports[port].kind &&
            (ow_rules_join(history, links[i].turns) & wanted) == wanted && on_level(now, 0)) {
            made.order = now->rank->order++;
            return push(now->rank, state, &made);
        }
    return OW_OK;
}

static ow_status join_parts(working *now)
{
    const ow_table *table = now->rank->table;
    ow_rank_state *state = now->state;
    const ow_packing *packing = ow_table_packing(table, state->set);
    size_t count;
    const ow_joint_link *links = ow_table_links(table, state->kind, &count);
    for (size_t i = 0; i < count; i++) {
        unsigned row = packing->packed[ow_rules_join(packing->unpacked[state->row], links[i].turns)];
        size_t parts = table->entered[ow_table_at(table, state->set, row) + links[i].kind];
        if (parts == OW_TABLE_NONE || !on_level(now, parts))
            continue;
        ow_derivation made = {.part = OW_RANK_NO_PART, .branch_count = 1};
        const ow_derivation *beyond;
        ow_status status =
            ow_rank_state_of(now->rank, true, state->set, row, links[i].kind, &made.branches[0].state);
        if (status == OW_OK)
            status = ow_rank_get(now->rank, made.branches[0].state, 0, &beyond);
        if (status != OW_OK)
            return status;
        made.key = beyond->key;
        made.outside = beyond->outside;
        made.order = now->rank->order++;
        if ((status = push(now->rank, state, &made)) != OW_OK)
            return status;
    }
    return OW_OK;
}

static ow_status work_out_level(ow_rank *rank, ow_rank_state *state)
{
    working now = {rank, state, state->level, OW_TABLE_NONE};
    ow_status status;
    if (state->entered) {
        status = ow_deals_of(rank->table, state->kind, state->set, state->row, take_deal, &now);
    } else {
        status = join_port(&now);
        if (status == OW_OK)
            status = join_parts(&now);
    }
    if (status == OW_OK)
        state->level = now.later;
    return status;
}

/* The last ranked one with one branch moved to its next rank: only a branch behind which all are at their
 * first, so that each combination arises once. */
static ow_status push_successors(ow_rank *rank, ow_rank_state *state)
{
    ow_derivation last = state->ranked[state->ranked_count - 1];
    for (size_t i = last.branch_count; i-- > 0;) {
        if (last.branches[i].closing)
            continue;
        ow_derivation next = last;
        next.ids = NULL;
        next.branches[i].rank++;
        ow_status status;
        if (last.part == OW_RANK_NO_PART) {
            const ow_derivation *beyond;
            status = ow_rank_get(rank, next.branches[0].state, next.branches[0].rank, &beyond);
            if (status == OW_OK) {
                next.key = beyond->key;
                next.outside = beyond->outside;
            }
        } else {
            status = ow_rank_recompose(rank, state, &next);
        }
        next.order = rank->order++;
        if (status == OW_OK)
            status = push(rank, state, &next);
        if (status != OW_OK && status != OW_NONE)
            return status;
        if (last.branches[i].rank > 0)
            break;
    }
    state->succeeded = true;
    return OW_OK;
}

static ow_status rank_next(ow_rank *rank, ow_rank_state *state)
{
    ow_status status = state->succeeded ? OW_OK : push_successors(rank, state);
    while (status == OW_OK && state->level != OW_TABLE_NONE &&
           (state->heap_count == 0 || state->heap[0].key.parts >= state->level))
        status = work_out_level(rank, state);
    if (status != OW_OK)
        return status;
    if (state->heap_count == 0)
        return OW_NONE;
    status = grow(rank, &state->ranked, &state->ranked_capacity, state->ranked_count + 1);
    uint32_t *ids = ow_arena_get_array(&rank->arena, state->heap[0].key.parts, sizeof *ids);
    if (status != OW_OK || ids == NULL)
        return OW_MEMORY;
    ow_derivation least = pop(rank, state);
    ow_rank_list_ids(rank, &least, ids);
    least.ids = ids;
    state->ranked[state->ranked_count++] = least;
    state->succeeded = false;
    return OW_OK;
}

ow_status ow_rank_get(ow_rank *rank, ow_rank_state *state, size_t number, const ow_derivation **derivation)
{
    while (state->ranked_count <= number) {
        ow_status status = rank_next(rank, state);
        if (status != OW_OK)
            return status;
    }
    *derivation = &state->ranked[number];
    return OW_OK;
}
