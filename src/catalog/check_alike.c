/* SPDX-License-Identifier: MIT */
/* Parts that differ in nothing but id and price: mostly a row copied and not changed. */
#include "catalog/audit.h"

/* Everything that tells parts apart, in words: equal words, equal parts. */
static void describe(ow_text *text, const ow_part *part)
{
    char name[OW_END_TEXT_SIZE];
    ow_text_format(text, "%d|%s|%s|%s|%s|%d%d", (int)part->kind, part->title, part->material,
                   part->bolt_pattern, part->note, part->rigid_tube, part->typical);
    for (size_t end = 0; end < part->end_count; end++)
        ow_text_format(text, "|%s %g", ow_end_name(&part->ends[end], name), part->leg_bore_m[end]);
    ow_text_format(text, "|%g %g %g %g %g %g %d", part->length_m, part->branch_length_m, part->angle_rad,
                   part->orifice_m, part->bend_radius_m, part->hole_bore_m, part->hole_count);
    ow_text_format(text, "|%g %d %g %g %u %g %g", part->rating_pa, part->has_temperature,
                   part->temperature_low_c, part->temperature_high_c, part->fluids, part->mass_kg,
                   part->hexagon_m);
}

static ow_status look_at(ow_audit *audit, ow_map *seen, ow_arena *arena, size_t index)
{
    const ow_entry *entry = &audit->catalog->entries[index];
    ow_text text = ow_text_new(audit->context);
    describe(&text, entry->part);
    ow_status status = ow_text_status(&text);
    size_t before = status == OW_OK ? ow_map_get(seen, ow_text_words(&text)) : OW_MAP_NONE;
    if (status == OW_OK && before == OW_MAP_NONE) {
        char *key = ow_arena_copy(arena, ow_text_words(&text), text.length);
        status = key ? ow_map_put(seen, key, index) : OW_MEMORY;
    } else if (status == OW_OK) {
        ow_audit_tell(audit, OW_WARNING, entry, NULL, "leave one of them out",
                      "\"%s\" differs from \"%s\" in id and price only", entry->part->id,
                      audit->catalog->entries[before].part->id);
    }
    ow_text_done(&text);
    return status;
}

void ow_audit_alike(ow_audit *audit)
{
    ow_map seen = ow_map_new(audit->context);
    ow_arena arena = ow_arena_new(audit->context);
    for (size_t i = 0; i < audit->catalog->entry_count && audit->status == OW_OK; i++)
        if (audit->catalog->entries[i].part)
            audit->status = look_at(audit, &seen, &arena, i);
    ow_arena_done(&arena);
    ow_map_done(&seen);
}
