/* SPDX-License-Identifier: MIT */
#include "base/memory.h"

#include <stdalign.h>
#include <stdint.h>
#include <string.h>

/* Blocks double from the first to the largest, so that a small text costs little and a large catalogue
 * few calls of the allocator. */
#define FIRST_BLOCK ((size_t)4 * 1024)
#define LARGEST_BLOCK ((size_t)1024 * 1024)

struct ow_arena_block {
    ow_arena_block *older;
    size_t used, capacity; /* bytes of `space` */
    alignas(max_align_t) unsigned char space[];
};

ow_arena ow_arena_new(const ow_context *context)
{
    ow_arena arena = {context, NULL};
    return arena;
}

void ow_arena_done(ow_arena *arena)
{
    ow_arena_block *block = arena->first;
    while (block != NULL) {
        ow_arena_block *older = block->older;
        ow_release(arena->context, block);
        block = older;
    }
    arena->first = NULL;
}

static ow_arena_block *new_block(ow_arena *arena, size_t capacity)
{
    if (capacity > SIZE_MAX - sizeof(ow_arena_block))
        return NULL;
    ow_arena_block *block = ow_resize(arena->context, NULL, sizeof *block + capacity);
    if (block == NULL)
        return NULL;
    block->used = 0;
    block->capacity = capacity;
    return block;
}

/* A block that has room for size bytes, put in the chain; NULL when out of memory. */
static ow_arena_block *block_for(ow_arena *arena, size_t size)
{
    ow_arena_block *newest = arena->first;
    if (newest != NULL && newest->capacity - newest->used >= size)
        return newest;
    size_t usual = FIRST_BLOCK;
    if (newest != NULL && newest->capacity >= FIRST_BLOCK)
        usual = newest->capacity < LARGEST_BLOCK / 2 ? newest->capacity * 2 : LARGEST_BLOCK;
    bool own = size > usual / 4;
    ow_arena_block *block = new_block(arena, own ? size : usual);
    if (block == NULL)
        return NULL;
    if (own && newest != NULL) { /* goes behind the newest, whose rest stays in use */
        block->older = newest->older;
        newest->older = block;
    } else {
        block->older = newest;
        arena->first = block;
    }
    return block;
}

void *ow_arena_get(ow_arena *arena, size_t size)
{
    const size_t step = alignof(max_align_t);
    if (size == 0)
        size = 1;
    if (size > SIZE_MAX - step)
        return NULL;
    size = (size + step - 1) / step * step;
    ow_arena_block *block = block_for(arena, size);
    if (block == NULL)
        return NULL;
    void *got = block->space + block->used;
    block->used += size;
    return memset(got, 0, size);
}

void *ow_arena_get_array(ow_arena *arena, size_t count, size_t size)
{
    if (size != 0 && count > SIZE_MAX / size)
        return NULL;
    return ow_arena_get(arena, count * size);
}

char *ow_arena_copy(ow_arena *arena, const char *bytes, size_t length)
{
    if (length == SIZE_MAX)
        return NULL;
    char *copy = ow_arena_get(arena, length + 1);
    if (copy != NULL && length > 0)
        memcpy(copy, bytes, length);
    return copy;
}

char *ow_arena_keep(ow_arena *arena, ow_text *text)
{
    char *kept = text->failed ? NULL : ow_arena_copy(arena, ow_text_words(text), text->length);
    ow_text_done(text);
    return kept;
}

ow_status ow_grow(const ow_context *context, void **items, size_t *capacity, size_t needed, size_t item_size)
{
    if (needed <= *capacity)
        return OW_OK;
    size_t most = SIZE_MAX / (item_size == 0 ? 1 : item_size);
    if (needed > most)
        return OW_MEMORY;
    size_t wanted = *capacity > most / 2 ? most : *capacity * 2;
    if (wanted < needed)
        wanted = needed;
    if (wanted < 8 && most >= 8)
        wanted = 8;
    /* The caller's pointer has a type of its own: copied as bytes, not read as a void pointer. */
    void *old;
    memcpy(&old, items, sizeof old);
    void *grown = ow_resize(context, old, wanted * (item_size == 0 ? 1 : item_size));
    if (grown == NULL)
        return OW_MEMORY;
    memcpy(items, &grown, sizeof grown);
    *capacity = wanted;
    return OW_OK;
}

void *ow_new_array(const ow_context *context, size_t count, size_t size)
{
    if (size != 0 && count > SIZE_MAX / size)
        return NULL;
    size_t bytes = count * size;
    if (bytes == 0)
        bytes = 1;
    void *array = ow_resize(context, NULL, bytes);
    return array == NULL ? NULL : memset(array, 0, bytes);
}
