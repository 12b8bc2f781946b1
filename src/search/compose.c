/* SPDX-License-Identifier: MIT */
/* Which part of a shape, entered and left by which of its own ends: the least key that a deal can have. */
#include <string.h>

#include "search/filter.h"
#include "search/rank.h"

static const ow_net_part *part_of(const ow_rank *rank, const ow_derivation *derivation)
{
    return &rank->table->net->parts[derivation->part];
}

static const ow_derivation *branch_derivation(const ow_branch *branch)
{
    return &branch->state->ranked[branch->rank];
}

static ow_key part_key(const ow_table *table, const ow_net_part *part, bool sticks_out)
{
    ow_key key = {1, 0, 0, 0};
    if (part->price_cents == OW_NET_NOT_SAID)
        key.unpriced = 1;
    else if (part->by_metre)
        key.cents = (part->price_cents * table->ask->hose_length_um + 500000) / 1000000;
    else
        key.cents = part->price_cents;
    if (sticks_out && part->length_um != OW_NET_NOT_SAID)
        key.stick_out_um = part->length_um;
    return key;
}

int ow_key_compare(const ow_key *left, const ow_key *right)
{
    if (left->parts != right->parts)
        return left->parts < right->parts ? -1 : 1;
    if (left->unpriced != right->unpriced)
        return left->unpriced < right->unpriced ? -1 : 1;
    if (left->cents != right->cents)
        return left->cents < right->cents ? -1 : 1;
    if (left->stick_out_um != right->stick_out_um)
        return left->stick_out_um < right->stick_out_um ? -1 : 1;
    return 0;
}

static void add_key(ow_key *sum, const ow_key *more)
{
    sum->parts += more->parts;
    sum->unpriced += more->unpriced;
    sum->cents += more->cents;
    sum->stick_out_um += more->stick_out_um;
}

/* Whether no later part of the shape can have a lesser key: they stand by price, length, id. Not so where
 * some are priced by the metre, and among equal prices only where length counts. */
static bool beyond_hope(const ow_net_shape *shape, const ow_net_part *best, const ow_net_part *next,
                        bool sticks_out)
{
    return !shape->by_metre && (sticks_out || best->price_cents != next->price_cents);
}

static uint32_t choose_part(const ow_table *table, const ow_deal *deal, bool sticks_out)
{
    const ow_net_index *net = table->net;
    const ow_net_shape *shape = &net->shapes[deal->shape];
    uint32_t best = OW_RANK_NO_PART;
    ow_key best_key = {0, 0, 0, 0};
    for (uint32_t place = shape->first; place < shape->first + shape->count; place++) {
        const ow_net_part *part = &net->parts[place];
        if (best != OW_RANK_NO_PART && beyond_hope(shape, &net->parts[best], part, sticks_out))
            break;
        if (!ow_filter_passes(table, place) || (deal->need & ~ow_filter_wide_places(table, shape, part)) != 0)
            continue;
        ow_key key = part_key(table, part, sticks_out);
        int order = best == OW_RANK_NO_PART ? -1 : ow_key_compare(&key, &best_key);
        if (order < 0 || (order == 0 && part->id < net->parts[best].id)) {
            best = place;
            best_key = key;
        }
    }
    return best;
}

void ow_rank_list_ids(const ow_rank *rank, const ow_derivation *derivation, uint32_t *ids)
{
    if (derivation->part == OW_RANK_NO_PART) {
        if (derivation->branch_count > 0) {
            const ow_derivation *beyond = branch_derivation(&derivation->branches[0]);
            memcpy(ids, beyond->ids, beyond->key.parts * sizeof *ids);
        }
        return;
    }
    const ow_net_part *part = part_of(rank, derivation);
    *ids++ = part->id;
    for (uint8_t end = 0; end < part->end_count; end++)
        for (size_t i = 0; i < derivation->branch_count; i++) {
            if (derivation->branches[i].end != end)
                continue;
            const ow_derivation *beyond = branch_derivation(&derivation->branches[i]);
            if (beyond->key.parts > 0) /* the port itself has no list */
                memcpy(ids, beyond->ids, beyond->key.parts * sizeof *ids);
            ids += beyond->key.parts;
        }
}

static int compare_ids(const uint32_t *left, const uint32_t *right, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (left[i] != right[i])
            return left[i] < right[i] ? -1 : 1;
    return 0;
}

int ow_rank_compare(ow_rank *rank, const ow_derivation *left, const ow_derivation *right)
{
    int order = ow_key_compare(&left->key, &right->key);
    if (order != 0)
        return order;
    ow_rank_list_ids(rank, left, rank->scratch[0]);
    ow_rank_list_ids(rank, right, rank->scratch[1]);
    order = compare_ids(rank->scratch[0], rank->scratch[1], left->key.parts);
    if (order == 0 && left->outside != right->outside)
        order = left->outside < right->outside ? -1 : 1;
    if (order == 0)
        order = left->order < right->order ? -1 : left->order > right->order;
    return order;
}

/* The ways round in which the part's own ends can take the entry and the branches. */
typedef struct turning {
    ow_rank *rank;
    ow_derivation *at; /* being tried */
    ow_derivation best;
    bool found;
} turning;

static void keep_if_least(turning *now)
{
    if (now->found) {
        ow_rank_list_ids(now->rank, &now->best, now->rank->scratch[0]);
        ow_rank_list_ids(now->rank, now->at, now->rank->scratch[1]);
        if (compare_ids(now->rank->scratch[1], now->rank->scratch[0], now->at->key.parts) >= 0)
            return;
    }
    now->best = *now->at;
    now->found = true;
}

/* Gives an end to each role: role 0 is the entry, role i the branch i - 1. */
static void turn_ends(turning *now, size_t role, unsigned taken)
{
    const ow_net_part *part = part_of(now->rank, now->at);
    if (role > now->at->branch_count) {
        keep_if_least(now);
        return;
    }
    ow_branch *branch = role == 0 ? NULL : &now->at->branches[role - 1];
    uint16_t kind = branch == NULL ? now->at->entry : branch->state->kind;
    bool wide = branch == NULL ? now->at->enter_wide : branch->wide;
    for (uint8_t end = 0; end < part->end_count; end++) {
        if ((taken >> end & 1u) != 0 || part->kinds[end] != kind ||
            (wide && !ow_filter_wide(now->rank->table, part->leg_um[end])))
            continue;
        if (branch == NULL)
            now->at->enter = end;
        else
            branch->end = end;
        turn_ends(now, role + 1, taken | 1u << end);
    }
}

static void add_branches(ow_derivation *derivation)
{
    for (size_t i = 0; i < derivation->branch_count; i++) {
        const ow_derivation *beyond = branch_derivation(&derivation->branches[i]);
        add_key(&derivation->key, &beyond->key);
        derivation->outside += beyond->outside;
    }
}

ow_status ow_rank_weigh(ow_rank *rank, const ow_rank_state *state, ow_derivation *derivation)
{
    const ow_table *table = rank->table;
    if (derivation->part == OW_RANK_NO_PART) {
        derivation->key = (ow_key){0, 0, 0, 0};
        derivation->outside = 0;
        add_branches(derivation);
        return OW_OK;
    }
    const ow_net_shape *shape = &table->net->shapes[table->net->shape_of[derivation->part]];
    unsigned history = ow_table_packing(table, state->set)->unpacked[state->row];
    bool sticks_out = ow_rules_sticks_out(&table->rules, ow_shape_traits(shape), history, state->set);
    derivation->key = part_key(table, part_of(rank, derivation), sticks_out);
    derivation->outside = state->set == 0 ? 0 : 1;
    add_branches(derivation);
    if (derivation->key.parts > rank->most_parts) {
        rank->cut = true;
        return OW_NONE;
    }
    turning now = {.rank = rank, .at = derivation};
    turn_ends(&now, 0, 0);
    if (!now.found)
        return OW_FAULT;
    *derivation = now.best;
    return OW_OK;
}

ow_status ow_rank_compose(ow_rank *rank, const ow_rank_state *state, const ow_deal *deal, bool spent,
                          ow_derivation *derivation)
{
    const ow_table *table = rank->table;
    const ow_net_shape *shape = &table->net->shapes[deal->shape];
    unsigned history = ow_table_packing(table, state->set)->unpacked[state->row];
    bool sticks_out = ow_rules_sticks_out(&table->rules, ow_shape_traits(shape), history, state->set);
    ow_derivation made = {.part = spent ? table->forced : choose_part(table, deal, sticks_out),
                          .entry = deal->entry,
                          .enter_wide = deal->need != 0,
                          .branch_count = (uint8_t)deal->exit_count};
    if (made.part == OW_RANK_NO_PART)
        return OW_FAULT;
    for (size_t i = 0; i < deal->exit_count; i++) {
        ow_branch *branch = &made.branches[i];
        branch->closing = deal->shares[i] == 0;
        branch->wide = (deal->shares[i] & table->rules.served) != 0;
        ow_status status =
            ow_rank_state_of(rank, false, deal->shares[i], deal->rows[i], deal->exits[i], &branch->state);
        if (status != OW_OK)
            return status;
    }
    *derivation = made;
    return OW_OK;
}
