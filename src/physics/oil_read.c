/* SPDX-License-Identifier: MIT */
#include "base/words.h"
#include "physics/reading.h"

static const ow_physics_field kv40 = {"kv40", OW_RATIO, OW_OIL_KV100_LOW_MM2S, OW_OIL_KV40_HIGH_MM2S};
static const ow_physics_field kv100 = {"kv100", OW_RATIO, OW_OIL_KV100_LOW_MM2S, OW_OIL_KV100_HIGH_MM2S};
static const ow_physics_field rho15 = {"rho15", OW_RATIO, OW_OIL_DENSITY15_LOW_KGM3,
                                       OW_OIL_DENSITY15_HIGH_KGM3};

static void read_measured(ow_physics_reading *reading, const ow_yaml *node, ow_oil *oil)
{
    static const char *const known[] = {"kv40", "kv100", "rho15"};
    double at40 = 0.0, at100 = 0.0, density = OW_OIL_DENSITY15_DEFAULT_KGM3;
    if (!ow_physics_map(reading, node, known, 3))
        return;
    ow_physics_need(reading, node, &kv40, &at40);
    ow_physics_need(reading, node, &kv100, &at100);
    if (!ow_physics_may(reading, node, &rho15, &density))
        ow_physics_note(reading, ow_oil_density_assume(density, reading->assumptions));
    if (at40 > 0.0 && at100 > 0.0 && ow_oil_set("", at40, at100, density, oil) != OW_OK &&
        reading->status == OW_OK)
        ow_physics_fault(reading, node, "kv40 above kv100", NULL,
                         "no oil has %.4g mm2/s at 40 C and %.4g at 100 C", at40, at100);
}

/* A grade that SAE knows, and nobody has typical figures for. */
static void no_typical(ow_physics_reading *reading, const ow_yaml *node)
{
    ow_text expected = ow_text_new(reading->context);
    ow_text_add(&expected, "{kv40: …, kv100: …, rho15: …} from its product sheet, or one of:");
    for (size_t index = 0; index < ow_typical_oil_count(); index++)
        ow_text_format(&expected, "%s %s", index > 0 ? "," : "", ow_typical_oil_at(index)->name);
    bool listed = ow_physics_note(reading, ow_text_status(&expected));
    ow_physics_fault(reading, node, listed ? ow_text_words(&expected) : NULL, NULL,
                     "no typical oil of grade \"%.40s\" is known", node->words);
    ow_text_done(&expected);
}

static void read_grade(ow_physics_reading *reading, const ow_yaml *node, ow_oil *oil)
{
    const ow_typical_oil *typical = ow_typical_oil_find(node->words);
    double low, high;
    if (typical != NULL) {
        ow_physics_note(reading, ow_oil_set(typical->name, typical->kv40_mm2s, typical->kv100_mm2s,
                                            typical->density15_kgm3, oil));
        ow_physics_note(reading, ow_typical_oil_assume(typical, reading->assumptions));
    } else if (ow_oil_grade_window(node->words, &low, &high)) {
        no_typical(reading, node);
    } else {
        ow_physics_fault(reading, node, "an SAE grade such as 15W-40, or {kv40: …, kv100: …}", NULL,
                         "\"%.40s\" is no SAE grade", node->words);
    }
}

void ow_physics_oil(ow_physics_reading *reading, const ow_yaml *node, ow_oil *oil)
{
    if (node->kind == OW_YAML_MAP)
        read_measured(reading, node, oil);
    else if (node->kind == OW_YAML_SCALAR)
        read_grade(reading, node, oil);
    else
        ow_physics_fault(reading, node, "an SAE grade such as 15W-40, or {kv40: …, kv100: …}", NULL,
                         "a list where an oil belongs");
}
