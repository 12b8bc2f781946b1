/* SPDX-License-Identifier: MIT */
#include "oilway/hose_material.h"

#include <string.h>

#include "base/words.h"

static bool is_synonym(const char *synonyms, const char *word)
{
    size_t length = strlen(word);
    while (*synonyms != '\0') {
        size_t size = strcspn(synonyms, " ");
        if (size == length && ow_words_equal_bytes(synonyms, size, word))
            return true;
        synonyms += size + (synonyms[size] == ' ' ? 1 : 0);
    }
    return false;
}

const ow_hose_material *ow_hose_material_find(const char *word)
{
    if (word == NULL || *word == '\0')
        return NULL;
    for (size_t i = 0; i < ow_hose_material_count(); i++) {
        const ow_hose_material *material = ow_hose_material_at(i);
        if (ow_words_equal(material->word, word) || is_synonym(material->synonyms, word))
            return material;
    }
    return NULL;
}

/* What nobody measures, and the search does not tell apart either. */
#define SLACK_K 1e-3
#define SLACK_PA 1.0

unsigned ow_hose_faults(const ow_hose_material *material, const ow_hose_service *service)
{
    ow_stands stands = service->oil ? material->oil : material->coolant;
    unsigned faults = 0;
    if (stands == OW_STANDS_NOT)
        faults |= OW_HOSE_FLUID;
    else if (stands == OW_STANDS_LIMITED)
        faults |= OW_HOSE_FLUID_LIMITED;
    else if (stands == OW_STANDS_DRAIN && service->pressurised)
        faults |= OW_HOSE_PRESSURE;
    if (material->pressure_pa > 0.0 && service->pressure_pa > material->pressure_pa + SLACK_PA)
        faults |= OW_HOSE_PRESSURE;
    if (!(service->temperature_c >= material->low_c - SLACK_K &&
          service->temperature_c <= material->short_high_c + SLACK_K))
        faults |= OW_HOSE_HEAT;
    else if (service->temperature_c > material->high_c + SLACK_K)
        faults |= OW_HOSE_HEAT_SHORT;
    return faults;
}
