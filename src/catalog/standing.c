/* SPDX-License-Identifier: MIT */
/* What a part stands: no more than its page claims, and no more than what its hose is made of. */
#include <math.h>
#include <string.h>

#include "oilway/catalog.h"

#define WORD_SIZE 32

/* The first of the page's words for the material: "PTFE" of "PTFE, stainless braid". */
static const ow_hose_material *find_first(const char *words)
{
    char word[WORD_SIZE];
    size_t length = strcspn(words, ",;");
    while (length > 0 && words[length - 1] == ' ')
        length--;
    if (length == 0 || length >= sizeof word)
        return NULL;
    memcpy(word, words, length);
    word[length] = '\0';
    return ow_hose_material_find(word);
}

const ow_hose_material *ow_part_hose_material(const ow_part *part)
{
    if (!ow_part_is_hose(part))
        return NULL;
    for (size_t end = 0; end < part->end_count; end++)
        if (part->ends[end].form == OW_FORM_HOSE)
            return ow_hose_material_find(part->ends[end].name);
    return find_first(part->material);
}

static void lessen(const ow_hose_material *material, ow_standing *standing)
{
    if (material->oil == OW_STANDS_NOT)
        standing->fluids &= ~(unsigned)OW_FLUID_OIL;
    if (material->coolant == OW_STANDS_NOT)
        standing->fluids &= ~(unsigned)OW_FLUID_COOLANT;
    standing->pressed_fluids = standing->fluids;
    if (material->oil == OW_STANDS_DRAIN)
        standing->pressed_fluids &= ~(unsigned)OW_FLUID_OIL;
    if (material->coolant == OW_STANDS_DRAIN)
        standing->pressed_fluids &= ~(unsigned)OW_FLUID_COOLANT;
    if (material->pressure_pa > 0.0)
        standing->rating_pa = fmin(standing->rating_pa, material->pressure_pa);
    standing->temperature_low_c = fmax(standing->temperature_low_c, material->low_c);
    standing->temperature_high_c = fmin(standing->temperature_high_c, material->short_high_c);
}

ow_standing ow_part_standing(const ow_part *part)
{
    ow_standing standing = {.rating_pa = part->rating_pa,
                            .has_temperature = part->has_temperature,
                            .temperature_low_c = part->temperature_low_c,
                            .temperature_high_c = part->temperature_high_c,
                            .fluids = part->fluids,
                            .pressed_fluids = part->fluids};
    const ow_hose_material *material = ow_part_hose_material(part);
    if (material != NULL)
        lessen(material, &standing);
    return standing;
}
