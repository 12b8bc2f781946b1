/* SPDX-License-Identifier: MIT */
#include "oilway/ring_material.h"

#include <string.h>

#include "base/format.h"

/* Class limits, ASTM D2000 and ISO 1629 names; a compound may stand more. EPDM swells in oil; the amines of
 * engine oil and coolant attack FKM when hot and wet, so that it is not named for coolant. */
static const ow_ring_material rings[] = {
    {"NBR", "nitrile rubber", true, false, -40, 100, "from memory; 100 to 120 C by compound",
     OW_MARK_FROM_MEMORY},
    {"FKM", "fluoro rubber", true, false, -20, 200, "from memory", OW_MARK_FROM_MEMORY},
    {"EPDM", "EPDM", false, true, -50, 150, "from memory", OW_MARK_FROM_MEMORY},
    {"VMQ", "silicone", false, true, -55, 200, "from memory", OW_MARK_FROM_MEMORY},
};

size_t ow_ring_material_count(void)
{
    return sizeof rings / sizeof rings[0];
}

const ow_ring_material *ow_ring_material_at(size_t index)
{
    return index < ow_ring_material_count() ? &rings[index] : NULL;
}

/* Appends those for one fluid that stand the heat, as far as it is known. */
static void write_fluid(const ow_ring_service *service, bool oil, char words[OW_RING_WORDS_SIZE])
{
    size_t written = 0;
    for (size_t i = 0; i < ow_ring_material_count(); i++) {
        const ow_ring_material *ring = &rings[i];
        bool stands = oil ? ring->oil : ring->coolant;
        bool hot = service->has_temperature &&
                   (service->temperature_c > ring->high_c || service->temperature_c < ring->low_c);
        if (!stands || hot)
            continue;
        size_t at = strlen(words);
        (void)ow_format_to(words + at, OW_RING_WORDS_SIZE - at, "%s%s to %.0f C", written++ > 0 ? " or " : "",
                           ring->word, ring->high_c);
    }
    size_t at = strlen(words);
    if (written == 0)
        (void)ow_format_to(words + at, OW_RING_WORDS_SIZE - at, "none of the usual rubbers stands %.0f C",
                           service->temperature_c);
}

void ow_ring_rubbers_write(const ow_ring_service *service, char words[OW_RING_WORDS_SIZE])
{
    words[0] = '\0';
    if (service->oil != service->coolant) {
        write_fluid(service, service->oil, words);
        return;
    }
    (void)ow_format_to(words, OW_RING_WORDS_SIZE, "for oil ");
    write_fluid(service, true, words);
    size_t at = strlen(words);
    (void)ow_format_to(words + at, OW_RING_WORDS_SIZE - at, "; for coolant ");
    write_fluid(service, false, words);
}
