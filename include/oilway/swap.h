/* SPDX-License-Identifier: MIT */
/* Parts that fit in the place of another: in a layout on the bench one part is changed, and it is seen at
 * once what that does to the whole. */
#ifndef OILWAY_SWAP_H
#define OILWAY_SWAP_H

#include "oilway/check.h"

/* A part that could stand in the place of another. */
typedef struct ow_swap {
    const ow_part *part;
    /* By end of the part that stands there now: the end of this one that takes over what is joined there;
     * OW_PART_ENDS where nothing is. */
    size_t ends[OW_PART_ENDS];
    bool tolerated;          /* one of its joints is tolerated only */
    size_t errors, warnings; /* of the whole layout with it */
} ow_swap;

typedef struct ow_swaps {
    const ow_context *context;
    size_t node;
    size_t errors, warnings; /* of the layout as it is */
    ow_swap *items;          /* fewest errors, of the same kind, fewest warnings, cheapest, by id */
    size_t count;
} ow_swaps;

/* The node of that name ("he-4-s", "he-4-s#2", "plover-41:oil-in"); OW_NODE_NONE if there is none. */
size_t ow_layout_node_named(const ow_layout *layout, const char *name);

/*
 * Every other part of the catalogue whose ends join all that is joined to part `node` and leave no end open.
 * OW_RANGE if the node holds no part; OW_MEMORY. Freed with ow_swaps_done. Cost: the catalogue once, and a
 * check of the layout for each that fits.
 */
ow_status ow_swaps_find(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout,
                        size_t node, ow_swaps *swaps);
void ow_swaps_done(ow_swaps *swaps);

/*
 * The layout with the part changed: a hose keeps its length if it stays a hose; what somebody sealed the old
 * part's ends with is forgotten. Lends words from `layout`, which must outlive it; freed with ow_layout_free.
 * OW_OK or OW_MEMORY: *swapped untouched.
 */
ow_status ow_layout_swap(const ow_context *context, const ow_layout *layout, size_t node, const ow_swap *swap,
                         ow_layout *swapped);

#endif
