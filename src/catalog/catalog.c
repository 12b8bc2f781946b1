/* SPDX-License-Identifier: MIT */
/* The loaded catalogue, looked at. */
#include <string.h>

#include "base/words.h"
#include "catalog/internal.h"

void ow_catalog_free(ow_catalog *catalog)
{
    if (!catalog)
        return;
    const ow_context *context = catalog->context;
    for (size_t i = 0; i < catalog->text_count; i++)
        ow_release(context, catalog->texts[i]->bytes);
    ow_release(context, catalog->texts);
    ow_release(context, catalog->replaced);
    ow_release(context, catalog->left_out);
    ow_release(context, catalog->machines);
    ow_release(context, catalog->fixtures);
    ow_release(context, catalog->parts);
    ow_map_done(&catalog->ids);
    ow_release(context, catalog->entries);
    ow_arena_done(&catalog->arena);
    ow_release(context, catalog);
}

size_t ow_catalog_part_count(const ow_catalog *catalog)
{
    return catalog->part_count;
}

const ow_part *ow_catalog_part_at(const ow_catalog *catalog, size_t index)
{
    return index < catalog->part_count ? catalog->parts[index] : NULL;
}

size_t ow_catalog_fixture_count(const ow_catalog *catalog)
{
    return catalog->fixture_count;
}

const ow_part *ow_catalog_fixture_at(const ow_catalog *catalog, size_t index)
{
    return index < catalog->fixture_count ? catalog->fixtures[index] : NULL;
}

size_t ow_catalog_machine_count(const ow_catalog *catalog)
{
    return catalog->machine_count;
}

const ow_machine *ow_catalog_machine_at(const ow_catalog *catalog, size_t index)
{
    return index < catalog->machine_count ? catalog->machines[index] : NULL;
}

size_t ow_catalog_page_count(const ow_catalog *catalog)
{
    return catalog->page_count;
}

size_t ow_catalog_left_out_count(const ow_catalog *catalog)
{
    return catalog->left_out_count;
}

const char *ow_catalog_left_out_at(const ow_catalog *catalog, size_t index)
{
    return index < catalog->left_out_count ? catalog->left_out[index] : NULL;
}

const ow_part *ow_catalog_part(const ow_catalog *catalog, const char *id)
{
    size_t found = ow_map_get(&catalog->ids, id);
    return found == OW_MAP_NONE ? NULL : catalog->entries[found].part;
}

const ow_machine *ow_catalog_machine(const ow_catalog *catalog, const char *id)
{
    size_t found = ow_map_get(&catalog->ids, id);
    return found == OW_MAP_NONE ? NULL : catalog->entries[found].machine;
}

const char *ow_catalog_nearest_id(const ow_catalog *catalog, const char *id)
{
    const char *nearest = NULL;
    size_t least = (size_t)-1, length = strlen(id);
    for (size_t i = 0; i < catalog->entry_count; i++) {
        const ow_entry *entry = &catalog->entries[i];
        const char *known = entry->part ? entry->part->id : entry->machine->id;
        size_t distance;
        if (!ow_words_near(id, length, known, strlen(known), &distance))
            continue;
        if (!nearest || distance < least || (distance == least && strcmp(known, nearest) < 0)) {
            least = distance;
            nearest = known;
        }
    }
    return nearest;
}
