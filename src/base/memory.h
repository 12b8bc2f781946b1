/* SPDX-License-Identifier: MIT */
/* What dies together lives in one arena; what grows lives in a vector. Both take memory from the
 * context only, check sizes for overflow, and say OW_MEMORY instead of going on. */
#ifndef OW_BASE_MEMORY_H
#define OW_BASE_MEMORY_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/text.h"

typedef struct ow_arena_block ow_arena_block;
typedef struct ow_arena {
    const ow_context *context;
    ow_arena_block *first; /* newest block; older ones behind it */
} ow_arena;

ow_arena ow_arena_new(const ow_context *context);
void ow_arena_done(ow_arena *arena);
/* Zeroed, aligned for any type; NULL when out of memory. Lives until ow_arena_done. */
void *ow_arena_get(ow_arena *arena, size_t size);
void *ow_arena_get_array(ow_arena *arena, size_t count, size_t size);
/* A NUL-terminated copy; NULL when out of memory. */
char *ow_arena_copy(ow_arena *arena, const char *bytes, size_t length);
/* The words of a text in the arena, and the text freed; NULL when either had no memory. */
char *ow_arena_keep(ow_arena *arena, ow_text *text);

/*
 * Makes room for one more item in a caller's array: *items, *capacity. At least doubles. OW_MEMORY
 * leaves both as they were. Use: ow_grow(context, (void **)&items, &capacity, count + 1, sizeof *items).
 */
ow_status ow_grow(const ow_context *context, void **items, size_t *capacity, size_t needed, size_t item_size);
/* count * size zeroed bytes, NULL on overflow or when out of memory; freed with ow_release. */
void *ow_new_array(const ow_context *context, size_t count, size_t size);

#endif
