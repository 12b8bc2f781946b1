/* SPDX-License-Identifier: MIT */
/* Values that are not said though a limit asks about them: such a part never passes that limit. */
#include "catalog/audit.h"

typedef struct ow_silence {
    const char *fault;
    bool (*silent)(const ow_part *part);
} ow_silence;

static bool no_rating(const ow_part *part)
{
    return part->rating_pa < 0;
}

static bool no_temperature(const ow_part *part)
{
    return !part->has_temperature;
}

static bool no_fluids(const ow_part *part)
{
    return part->fluids == 0;
}

static bool no_bore(const ow_part *part)
{
    for (size_t end = 0; end < part->end_count; end++)
        if (part->end_count > 1 && part->leg_bore_m[end] < 0)
            return true;
    return false;
}

static bool no_orifice(const ow_part *part)
{
    return part->kind == OW_RESTRICTOR && part->orifice_m < 0;
}

static bool no_angle(const ow_part *part)
{
    return part->kind == OW_ELBOW && part->angle_rad < 0;
}

static const ow_silence silences[] = {
    {"the rating is not said", no_rating},
    {"the temperature is not said", no_temperature},
    {"the fluids are not said", no_fluids},
    {"the bore of an end is not said", no_bore},
    {"the restrictor's orifice is not said", no_orifice},
    {"the elbow's angle is not said", no_angle},
};

void ow_audit_silence(ow_audit *audit)
{
    for (size_t s = 0; s < sizeof silences / sizeof *silences; s++) {
        ow_gather gather =
            ow_gather_new(audit, OW_WARNING, silences[s].fault,
                          "say it on the page: what is not said passes no limit that asks about it");
        for (size_t i = 0; i < audit->catalog->entry_count; i++) {
            const ow_entry *entry = &audit->catalog->entries[i];
            if (entry->part && ow_kind_is_part(entry->part->kind) && silences[s].silent(entry->part))
                ow_gather_add(&gather, entry);
        }
        ow_gather_end(&gather);
    }
}
