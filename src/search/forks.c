/* SPDX-License-Identifier: MIT */
/*
 * Forks: the sets of a fork's exits are proper subsets of the set at hand, so their labels are final. What a
 * fork can do is the same for all of the same traits: it is written down once a set as a list of
 * steps, each naming the rows of the table to be added up.
 */
#include "search/fill.h"

typedef struct step {
    uint32_t to;      /* row of `entered`, within the set */
    uint32_t from[3]; /* rows of `open` */
    uint8_t serving;  /* bit i: the share of exit i holds a served port */
} step;

typedef struct steps {
    const ow_table *table;
    step *items;
    size_t count, capacity;
    size_t ordered; /* the first ones, in which the shares fall: enough where two exits are equal */
} steps;

/* Through which part, with which history, and to which exits the permissions go. */
typedef struct handing {
    unsigned traits, history;
    size_t fix, machine;
} handing;

/* False if nothing serves one of the shares, whatever the end: the step would lower nothing. */
static bool find_rows(const ow_table *table, const ow_ports *shares, size_t exits, handing to, step *added)
{
    for (size_t i = 0; i < exits; i++) {
        unsigned after = ow_rules_pass(to.traits, to.history, i == to.fix, i == to.machine);
        unsigned row = ow_table_packing(table, shares[i])->packed[after];
        if (!table->any[ow_table_row(table, shares[i], row)])
            return false;
        added->from[i] = (uint32_t)ow_table_at(table, shares[i], row);
    }
    return true;
}

/* The rows for one deal and history, once for each exit that may be handed each permission. */
static ow_status add_steps(steps *list, ow_ports set, unsigned traits, const ow_ports *shares, size_t exits,
                           unsigned packed)
{
    const ow_table *table = list->table;
    unsigned history = ow_table_packing(table, set)->unpacked[packed];
    unsigned askers[2] = {0, 0};
    step added = {.to = (uint32_t)(packed * table->kind_count)};
    for (size_t i = 0; i < exits; i++) {
        if (!ow_rules_may_pass(&table->rules, traits, history, shares[i]))
            return OW_OK;
        added.serving |= (uint8_t)((shares[i] & table->rules.served) != 0 ? 1u << i : 0u);
        askers[0] |= (table->asked[shares[i]] & OW_MAY_FIX) != 0 ? 1u << i : 0u;
        askers[1] |= (table->asked[shares[i]] & OW_MAY_MACHINE) != 0 ? 1u << i : 0u;
    }
    if ((history & OW_MAY_FIX) == 0 || askers[0] == 0)
        askers[0] = 1; /* nothing to choose */
    if ((history & OW_MAY_MACHINE) == 0 || askers[1] == 0 || (traits & OW_TRAIT_HOSE) != 0)
        askers[1] = 1;
    for (size_t fix = 0; fix < exits; fix++)
        for (size_t machine = 0; machine < exits; machine++) {
            if ((askers[0] >> fix & 1u) == 0 || (askers[1] >> machine & 1u) == 0)
                continue;
            if (!find_rows(table, shares, exits, (handing){traits, history, fix, machine}, &added))
                continue;
            ow_status status = ow_grow(table->context, (void **)&list->items, &list->capacity,
                                       list->count + 1, sizeof *list->items);
            if (status != OW_OK)
                return status;
            list->items[list->count++] = added;
        }
    return OW_OK;
}

static ow_status add_histories(steps *list, ow_ports set, unsigned traits, const ow_ports *shares,
                               size_t exits)
{
    ow_status status = OW_OK;
    unsigned count = ow_table_packing(list->table, set)->count;
    for (unsigned packed = 0; status == OW_OK && packed < count; packed++)
        status = add_steps(list, set, traits, shares, exits, packed);
    return status;
}

/* Both orders of each pair of shares, first those with the greater share first. */
static ow_status list_fork_steps(steps *list, ow_ports set, unsigned traits)
{
    ow_status status = OW_OK;
    list->count = 0;
    for (int round = 0; round < 2; round++) {
        for (ow_ports share = (set - 1) & set; status == OW_OK && share != 0; share = (share - 1) & set) {
            ow_ports shares[2] = {share, set & ~share};
            if ((shares[0] > shares[1]) == (round == 0))
                status = add_histories(list, set, traits, shares, 2);
        }
        if (round == 0)
            list->ordered = list->count;
    }
    return status;
}

static ow_status list_cross_steps(steps *list, ow_ports set, unsigned traits)
{
    ow_status status = OW_OK;
    list->count = 0;
    for (ow_ports first = (set - 1) & set; first != 0; first = (first - 1) & set) {
        ow_ports rest = set & ~first;
        for (ow_ports second = (rest - 1) & rest; status == OW_OK && second != 0;
             second = (second - 1) & rest) {
            ow_ports shares[3] = {first, second, rest & ~second};
            status = add_histories(list, set, traits, shares, 3);
        }
    }
    return status;
}

/* One step for the forks of one group. The steps stand outside, so that here only kinds are looked up. */
static void run_fork_step(const ow_table *table, const step *at, uint16_t *entered, unsigned group)
{
    const uint16_t *first = table->open + at->from[0], *second = table->open + at->from[1];
    uint16_t *labels = entered + at->to;
    unsigned serving = at->serving;
    for (uint32_t i = table->fork_offset[group]; i < table->fork_offset[group + 1]; i++) {
        const ow_fork_arc *fork = &table->forks[i];
        unsigned parts = (unsigned)fork->weight + first[fork->exits[0]] + second[fork->exits[1]];
        if (parts < labels[fork->entry] && (fork->wide >> serving & 1u) != 0)
            labels[fork->entry] = (uint16_t)parts;
    }
}

static void run_cross_step(const ow_table *table, const step *at, uint16_t *entered, unsigned traits)
{
    const uint16_t *first = table->open + at->from[0], *second = table->open + at->from[1],
                   *third = table->open + at->from[2];
    uint16_t *labels = entered + at->to;
    unsigned serving = at->serving;
    for (uint32_t i = table->cross_offset[traits]; i < table->cross_offset[traits + 1]; i++) {
        const ow_cross_arc *cross = &table->crosses[i];
        unsigned parts = (unsigned)cross->weight + first[cross->exits[0]] + second[cross->exits[1]] +
                         third[cross->exits[2]];
        if (parts < labels[cross->entry] && (cross->wide >> serving & 1u) != 0)
            labels[cross->entry] = (uint16_t)parts;
    }
}

static ow_status fill_traits(steps *list, ow_ports set, uint16_t *entered, unsigned traits)
{
    const ow_table *table = list->table;
    ow_status status = OW_OK;
    if (table->fork_offset[2 * traits] < table->fork_offset[2 * traits + 2]) {
        status = list_fork_steps(list, set, traits);
        for (size_t i = 0; status == OW_OK && i < list->count; i++) {
            run_fork_step(table, &list->items[i], entered, 2 * traits);
            if (i < list->ordered) /* of equal exits, one of two shares may as well have the greater */
                run_fork_step(table, &list->items[i], entered, 2 * traits + 1);
        }
    }
    if (status == OW_OK && table->cross_offset[traits] < table->cross_offset[traits + 1]) {
        status = list_cross_steps(list, set, traits);
        for (size_t i = 0; status == OW_OK && i < list->count; i++)
            run_cross_step(table, &list->items[i], entered, traits);
    }
    return status;
}

ow_status ow_fill_forks(ow_fill *fill, ow_ports set)
{
    ow_table *table = fill->table;
    if ((set & (set - 1)) == 0)
        return OW_OK; /* nothing to deal out */
    steps list = {.table = table};
    ow_status status = OW_OK;
    for (unsigned traits = 0; status == OW_OK && traits < OW_TRAITS; traits++)
        status = fill_traits(&list, set, table->entered + table->at[set], traits);
    ow_release(table->context, list.items);
    return status;
}
