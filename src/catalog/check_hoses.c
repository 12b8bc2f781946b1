/* SPDX-License-Identifier: MIT */
/* Pages that claim more for a hose than what it is made of stands. The search and the checks go by the
 * lesser of the two. */
#include "catalog/audit.h"

#define MEND "take the claim off the page; or, if the hose is made of something else, name its class"

typedef struct ow_claim {
    const char *fault;
    bool (*beyond)(const ow_part *part, const ow_hose_material *material);
} ow_claim;

static bool claims_oil(const ow_part *part, const ow_hose_material *material)
{
    return (part->fluids & OW_FLUID_OIL) != 0 && material->oil == OW_STANDS_NOT;
}

static bool claims_coolant(const ow_part *part, const ow_hose_material *material)
{
    return (part->fluids & OW_FLUID_COOLANT) != 0 && material->coolant == OW_STANDS_NOT;
}

static bool claims_pressure(const ow_part *part, const ow_hose_material *material)
{
    return material->pressure_pa > 0.0 && part->rating_pa > material->pressure_pa;
}

static bool claims_heat(const ow_part *part, const ow_hose_material *material)
{
    return part->has_temperature && part->temperature_high_c > material->short_high_c;
}

static bool claims_cold(const ow_part *part, const ow_hose_material *material)
{
    return part->has_temperature && part->temperature_low_c < material->low_c;
}

static const ow_claim claims[] = {
    {"claims oil, which its material does not stand", claims_oil},
    {"claims coolant, which its material does not stand", claims_coolant},
    {"claims more pressure than its material is made for", claims_pressure},
    {"claims more heat than its material stands", claims_heat},
    {"claims more cold than its material stands", claims_cold},
};

/* What the material stands, in words: "30R7 stands oil, not coolant; -40 to 125 C; 3.5 bar (SAE J30)". */
static void write_limits(ow_text *text, const ow_hose_material *material)
{
    static const char *const oil[] = {"not oil", "oil fairly", "oil without pressure", "oil"};
    static const char *const coolant[] = {"not coolant", "coolant fairly", "coolant without pressure",
                                          "coolant"};
    bool oil_first = material->oil != OW_STANDS_NOT;
    const char *first = oil_first ? oil[material->oil] : coolant[material->coolant];
    const char *second = oil_first ? coolant[material->coolant] : oil[material->oil];
    ow_text_format(text, "%s stands %s, %s, %.0f to %.0f C", material->title, first, second, material->low_c,
                   material->short_high_c);
    if (material->pressure_pa > 0.0)
        ow_text_format(text, ", %.3g bar", material->pressure_pa / 1e5);
    ow_text_format(text, " (%s)", material->source);
}

/* Hoses of one material with one claim, page by page. */
static void look(ow_audit *audit, const ow_claim *claim, const ow_hose_material *material)
{
    ow_text fault = ow_text_new(audit->context);
    ow_text_format(&fault, "%s: ", claim->fault);
    write_limits(&fault, material);
    if (fault.failed)
        audit->status = OW_MEMORY;
    ow_gather gather = ow_gather_new(audit, OW_WARNING, ow_text_words(&fault), MEND);
    for (size_t i = 0; i < audit->catalog->entry_count && audit->status == OW_OK; i++) {
        const ow_entry *entry = &audit->catalog->entries[i];
        if (entry->part && ow_part_hose_material(entry->part) == material &&
            claim->beyond(entry->part, material))
            ow_gather_add(&gather, entry);
    }
    ow_gather_end(&gather);
    ow_text_done(&fault);
}

void ow_audit_hoses(ow_audit *audit)
{
    for (size_t m = 0; m < ow_hose_material_count(); m++)
        for (size_t c = 0; c < sizeof claims / sizeof *claims && audit->status == OW_OK; c++)
            look(audit, &claims[c], ow_hose_material_at(m));
}
