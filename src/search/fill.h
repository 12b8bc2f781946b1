/* SPDX-License-Identifier: MIT */
/* The fill of the table, set by set. */
#ifndef OW_SEARCH_FILL_H
#define OW_SEARCH_FILL_H

#include "search/levels.h"
#include "search/table.h"

/* Working memory of a fill. */
typedef struct ow_fill {
    ow_table *table;
    ow_levels *levels;
    uint32_t *settled; /* open ends of the set at hand, in the order of settling */
    size_t settled_count;
    uint64_t *taken;    /* entered ends whose label will not fall any more: a bit each, row by row */
    size_t taken_words; /* of a row */
    size_t seen;        /* states settled so far, those of a set that is filled again once more */
} ow_fill;

ow_status ow_fill_new(ow_table *table, ow_fill *fill);

/* Set 0: what closes each end. Then the forks and crosses, whose weight is the part and what closes its other
 * ends. */
void ow_fill_closings(ow_fill *fill);
ow_status ow_arcs_build(ow_table *table);
/* Whether a part of the carry's shape may be used; `serves`: on the path to a served port. */
bool ow_carry_is_usable(const ow_table *table, const ow_net_carry *carry, bool serves);
/* The least weight of a run's carries that are usable, or OW_TABLE_NONE. */
size_t ow_run_weight(ow_table *table, uint32_t run, bool serves);
/* Sets 1 and up. */
ow_status ow_fill_set(ow_fill *fill, ow_ports set, bool stop_early);

/* Forks and crosses into the labels of `set`, from the finished sets below it (forks.c). */
ow_status ow_fill_forks(ow_fill *fill, ow_ports set);

/* Lowers labels[state] and moves it to its level. */
static inline void ow_fill_lower(ow_fill *fill, uint16_t *labels, size_t state, size_t value)
{
    if (value >= labels[state])
        return;
    if (value > OW_SEARCH_PARTS_MAX) {
        fill->table->capped = true;
        return;
    }
    if (labels[state] != OW_TABLE_NONE)
        ow_levels_take(fill->levels, (uint32_t)state, labels[state]);
    labels[state] = (uint16_t)value;
    ow_levels_put(fill->levels, (uint32_t)state, value);
}

#endif
