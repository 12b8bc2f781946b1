/* SPDX-License-Identifier: MIT */
/*
 * The queue of a fill: one bucket a level (Dial 1969), each a doubly linked list through arrays, so that a
 * label that falls moves in O(1) and nothing is ever allocated in between.
 */
#ifndef OW_SEARCH_LEVELS_H
#define OW_SEARCH_LEVELS_H

#include "base/memory.h"
#include "search/search_input.h"

#define OW_LEVELS_NOBODY UINT32_MAX

typedef struct ow_levels {
    uint32_t *after, *before;
    uint32_t first[OW_SEARCH_PARTS_MAX + 2]; /* the last is always empty: a fill looks one further */
    size_t highest;                          /* no bucket above it is in use */
} ow_levels;

ow_status ow_levels_new(ow_arena *arena, size_t states, ow_levels **levels);
void ow_levels_clear(ow_levels *levels);
void ow_levels_put(ow_levels *levels, uint32_t state, size_t level);
void ow_levels_take(ow_levels *levels, uint32_t state, size_t level);

#endif
