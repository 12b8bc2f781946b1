/* SPDX-License-Identifier: MIT */
#include "base/map.h"

#include <stdint.h>
#include <string.h>

#include "base/memory.h"

struct ow_map_slot {
    const char *key; /* NULL: free */
    uint64_t hash;
    size_t value;
};

/* FNV-1a (Fowler, Noll, Vo), and a last mix since only the low bits choose the slot. */
static uint64_t hash_of(const char *key)
{
    uint64_t hash = UINT64_C(14695981039346656037);
    for (; *key != '\0'; key++)
        hash = (hash ^ (unsigned char)*key) * UINT64_C(1099511628211);
    return hash ^ (hash >> 32);
}

ow_map ow_map_new(const ow_context *context)
{
    ow_map map = {context, NULL, 0, 0};
    return map;
}

void ow_map_done(ow_map *map)
{
    ow_release(map->context, map->slots);
    map->slots = NULL;
    map->count = map->capacity = 0;
}

/* The slot of the key, or the free one where it belongs. The capacity is a power of two and never full. */
static ow_map_slot *slot_of(ow_map_slot *slots, size_t capacity, const char *key, uint64_t hash)
{
    size_t place = (size_t)hash & (capacity - 1);
    while (slots[place].key != NULL && (slots[place].hash != hash || strcmp(slots[place].key, key) != 0))
        place = (place + 1) & (capacity - 1);
    return &slots[place];
}

size_t ow_map_get(const ow_map *map, const char *key)
{
    if (map->count == 0)
        return OW_MAP_NONE;
    const ow_map_slot *slot = slot_of(map->slots, map->capacity, key, hash_of(key));
    return slot->key == NULL ? OW_MAP_NONE : slot->value;
}

static ow_status rebuild(ow_map *map, size_t capacity)
{
    ow_map_slot *slots = ow_new_array(map->context, capacity, sizeof *slots);
    if (slots == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < map->capacity; i++) {
        const ow_map_slot *old = &map->slots[i];
        if (old->key != NULL)
            *slot_of(slots, capacity, old->key, old->hash) = *old;
    }
    ow_release(map->context, map->slots);
    map->slots = slots;
    map->capacity = capacity;
    return OW_OK;
}

ow_status ow_map_put(ow_map *map, const char *key, size_t value)
{
    uint64_t hash = hash_of(key);
    if (map->count > 0) {
        ow_map_slot *known = slot_of(map->slots, map->capacity, key, hash);
        if (known->key != NULL) {
            known->value = value;
            return OW_OK;
        }
    }
    /* Three quarters full at most: longer probe runs cost more than the memory. */
    if (map->count >= map->capacity / 4 * 3) {
        if (map->capacity > SIZE_MAX / 2)
            return OW_MEMORY;
        ow_status status = rebuild(map, map->capacity == 0 ? 16 : map->capacity * 2);
        if (status != OW_OK)
            return status;
    }
    *slot_of(map->slots, map->capacity, key, hash) = (ow_map_slot){key, hash, value};
    map->count++;
    return OW_OK;
}
