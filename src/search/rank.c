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
    ow_release(rank->table->context, rank->agenda);
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
        made->least = made->level = entered ? table->entered[where] : table->open[where];
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

/* Puts on the agenda what is not ranked yet. */
static ow_status wish(ow_rank *rank, ow_rank_state *state, size_t number)
{
    if (state->exhausted || state->ranked_count > number)
        return OW_OK;
    ow_status status = ow_grow(rank->table->context, (void **)&rank->agenda, &rank->agenda_capacity,
                               rank->agenda_count + 1, sizeof *rank->agenda);
    if (status == OW_OK)
        rank->agenda[rank->agenda_count++] = (ow_rank_wish){state, number};
    return status;
}

/* Working out the candidates of a state whose first has `level` parts; `later` becomes the next such number.
 */
typedef struct gathering {
    ow_rank *rank;
    ow_rank_state *state;
    size_t level, later;
} gathering;

static bool on_level(gathering *now, size_t parts)
{
    if (parts > now->rank->most_parts) {
        now->rank->cut = true;
        return false;
    }
    if (parts > now->level && parts < now->later)
        now->later = parts;
    return parts == now->level;
}

/* The candidate waits behind the heap until the firsts of its branches are ranked. */
static ow_status keep_waiting(ow_rank *rank, ow_rank_state *state, ow_derivation *made)
{
    size_t place = state->heap_count + state->waiting_count;
    ow_status status = grow(rank, &state->heap, &state->heap_capacity, place + 1);
    for (size_t i = 0; status == OW_OK && i < made->branch_count; i++)
        status = wish(rank, made->branches[i].state, 0);
    if (status != OW_OK)
        return status;
    made->order = rank->order++;
    state->heap[place] = *made;
    state->waiting_count++;
    return OW_OK;
}

static ow_status take_deal(void *user, const ow_deal *deal, bool spent)
{
    gathering *now = user;
    if (!on_level(now, deal->parts))
        return OW_OK;
    ow_derivation made;
    ow_status status = ow_rank_compose(now->rank, now->state, deal, spent, &made);
    return status == OW_OK ? keep_waiting(now->rank, now->state, &made) : status;
}

static ow_status join_port(gathering *now)
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
            (ow_rules_join(history, links[i].turns) & wanted) == wanted && on_level(now, 0))
            return keep_waiting(now->rank, state, &made);
    return OW_OK;
}

static ow_status join_parts(gathering *now)
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
        ow_status status =
            ow_rank_state_of(now->rank, true, state->set, row, links[i].kind, &made.branches[0].state);
        if (status == OW_OK)
            status = keep_waiting(now->rank, state, &made);
        if (status != OW_OK)
            return status;
    }
    return OW_OK;
}

/* The candidates of the state's level. Nothing of more parts is looked at for the first of them: most states
 * are never asked for a second, and the next level to look at is then simply the next number. */
static ow_status gather_level(ow_rank *rank, ow_rank_state *state)
{
    bool first = state->level == state->least;
    gathering now = {rank, state, state->level, first ? state->level + 1 : OW_TABLE_NONE};
    size_t most = first ? state->level : OW_TABLE_NONE - 1;
    ow_status status;
    if (state->entered) {
        status = ow_deals_of(rank->table, state->kind, state->set, state->row, most, take_deal, &now);
    } else {
        status = join_port(&now);
        if (status == OW_OK)
            status = join_parts(&now);
    }
    state->later = now.later;
    return status;
}

/* Gathers, and once all that it waits for is ranked, puts it into the heap. */
static ow_status work_out_level(ow_rank *rank, ow_rank_state *state)
{
    size_t wishes = rank->agenda_count;
    ow_status status = state->waiting_count == 0 ? gather_level(rank, state) : OW_OK;
    if (status != OW_OK || rank->agenda_count > wishes)
        return status;
    while (status == OW_OK && state->waiting_count > 0) {
        ow_derivation made = state->heap[state->heap_count]; /* whose place the heap may take */
        state->waiting_count--;
        status = ow_rank_weigh(rank, state, &made);
        if (status == OW_OK)
            status = push(rank, state, &made);
    }
    if (status == OW_OK)
        state->level = state->later;
    return status;
}

/* What the successors need: the next of each branch that may be moved on. */
static ow_status wish_successors(ow_rank *rank, const ow_derivation *last)
{
    ow_status status = OW_OK;
    for (size_t i = last->branch_count; status == OW_OK && i-- > 0;) {
        const ow_branch *branch = &last->branches[i];
        if (branch->closing)
            continue;
        status = wish(rank, branch->state, branch->rank + 1u);
        if (branch->rank > 0)
            break;
    }
    return status;
}

/* The last ranked one with one branch moved to its next rank: only a branch behind which all are at their
 * first, so that each combination arises once. */
static ow_status push_successors(ow_rank *rank, ow_rank_state *state)
{
    ow_derivation last = state->ranked[state->ranked_count - 1];
    size_t wishes = rank->agenda_count;
    ow_status status = wish_successors(rank, &last);
    if (status != OW_OK || rank->agenda_count > wishes)
        return status;
    for (size_t i = last.branch_count; i-- > 0;) {
        if (last.branches[i].closing)
            continue;
        ow_derivation next = last;
        next.ids = NULL;
        if (++next.branches[i].rank < next.branches[i].state->ranked_count) {
            next.order = rank->order++;
            status = ow_rank_weigh(rank, state, &next);
            if (status == OW_OK)
                status = push(rank, state, &next);
            if (status != OW_OK && status != OW_NONE)
                return status;
        }
        if (last.branches[i].rank > 0)
            break;
    }
    state->succeeded = true;
    return OW_OK;
}

/* Ranks one more, or finds that there is none; or leaves on the agenda what must be done before. */
static ow_status rank_next(ow_rank *rank, ow_rank_state *state)
{
    size_t wishes = rank->agenda_count;
    ow_status status = state->succeeded ? OW_OK : push_successors(rank, state);
    while (status == OW_OK && rank->agenda_count == wishes && state->level != OW_TABLE_NONE &&
           (state->heap_count == 0 || state->heap[0].key.parts >= state->level))
        status = work_out_level(rank, state);
    if (status != OW_OK || rank->agenda_count > wishes)
        return status;
    if (state->heap_count == 0) {
        state->exhausted = true;
        return OW_OK;
    }
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
    ow_status status = wish(rank, state, number);
    while (status == OW_OK && rank->agenda_count > 0) {
        const ow_rank_wish *last = &rank->agenda[rank->agenda_count - 1];
        if (last->state->exhausted || last->state->ranked_count > last->number)
            rank->agenda_count--;
        else
            status = rank_next(rank, last->state);
    }
    if (status == OW_OK && state->ranked_count <= number)
        status = OW_NONE;
    if (status == OW_OK)
        *derivation = &state->ranked[number];
    return status;
}
