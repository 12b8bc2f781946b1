/* SPDX-License-Identifier: MIT */
/* The fill of the table, set by set. */
#ifndef OW_SEARCH_FILL_H
#define OW_SEARCH_FILL_H

#include "search/levels.h"
#include "search/table.h"

/* Working memory of a fill. `fresh` are the open ends settled on the level at hand. */
typedef struct ow_fill {
    ow_table *table;
    ow_levels *levels;
    uint32_t *fresh;
    size_t fresh_count;
    size_t seen; /* states settled so far, of all sets */
} ow_fill;

ow_status ow_fill_new(ow_table *table, ow_fill *fill);

/* Set 0: what closes each end. Then the arcs, whose weight is the part and what closes its other ends. */
void ow_fill_closings(ow_fill *fill);
ow_status ow_arcs_build(ow_table *table);
const ow_arc *ow_arcs_of(ow_table *table, size_t exit, size_t *count);
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
