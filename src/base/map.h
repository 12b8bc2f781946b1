/* SPDX-License-Identifier: MIT */
/* A hash map from words to an index. Keys are lent: they must outlive the map. */
#ifndef OW_BASE_MAP_H
#define OW_BASE_MAP_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/context.h"

typedef struct ow_map_slot ow_map_slot;
typedef struct ow_map {
    const ow_context *context;
    ow_map_slot *slots;
    size_t count, capacity;
} ow_map;

#define OW_MAP_NONE ((size_t)-1)

ow_map ow_map_new(const ow_context *context);
void ow_map_done(ow_map *map);
/* The value under the key, or OW_MAP_NONE. */
size_t ow_map_get(const ow_map *map, const char *key);
/* Puts or replaces. OW_MEMORY: unchanged. */
ow_status ow_map_put(ow_map *map, const char *key, size_t value);

#endif
