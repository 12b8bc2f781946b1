/* SPDX-License-Identifier: MIT */
#include "oilway/hose_material.h"

/* word, synonyms, title, oil, coolant, low C, high C, short C, Pa, source, mark */
static const ow_hose_material materials[] = {
    {"ptfe", "100r14 r14", "PTFE, braided", OW_STANDS, OW_STANDS, -54, 204, 204, 0,
     "SAE J517 100R14, from memory", OW_MARK_FROM_MEMORY},
    {"nitrile", "nbr 100r5 100r6 rubber", "nitrile rubber", OW_STANDS, OW_STANDS_LIMITED, -40, 100, 100, 0,
     "SAE J517 100R5 and 100R6, from memory; SAE J20 class B", OW_MARK_FROM_MEMORY},
    {"30r7", "j30-r7", "fuel and oil hose 30R7", OW_STANDS, OW_STANDS_NOT, -40, 125, 125, 350000,
     "SAE J30, from memory", OW_MARK_FROM_MEMORY},
    {"30r9", "j30-r9", "fuel and oil hose 30R9", OW_STANDS, OW_STANDS_NOT, -40, 135, 135, 700000,
     "SAE J30, from memory", OW_MARK_FROM_MEMORY},
    {"silicone", "vmq silicon", "silicone without a liner", OW_STANDS_NOT, OW_STANDS, -55, 175, 175, 0,
     "SAE J20 class A; swells in oil: common practice", OW_MARK_PUBLISHED},
    {"fluoro-silicone", "fluorosilicone fvmq fkm-silicone fluoro-lined", "silicone with a fluoro liner",
     OW_STANDS_DRAIN, OW_STANDS, -50, 175, 200, 0, "common practice", OW_MARK_PRACTICE},
    {"epdm", "", "EPDM rubber", OW_STANDS_NOT, OW_STANDS, -40, 125, 125, 0,
     "SAE J20 class D-1 and D-2 (D-3 to 150 C)", OW_MARK_PUBLISHED},
    {"chloroprene", "cr", "chloroprene rubber", OW_STANDS_LIMITED, OW_STANDS, -40, 100, 100, 0,
     "SAE J20 class C", OW_MARK_PUBLISHED},
    {"fkm", "fluoro", "fluoro rubber", OW_STANDS, OW_STANDS_LIMITED, -20, 200, 200, 0,
     "ASTM D2000 HK, from memory", OW_MARK_FROM_MEMORY},
};

size_t ow_hose_material_count(void)
{
    return sizeof materials / sizeof materials[0];
}

const ow_hose_material *ow_hose_material_at(size_t index)
{
    return index < ow_hose_material_count() ? &materials[index] : NULL;
}

/* SAE J517 100R14, from memory; the hose's own sheet rules. */
static const struct bend {
    int dash;
    double radius_m;
} bends[] = {{4, 0.051}, {5, 0.076}, {6, 0.102}, {8, 0.132}, {10, 0.165}, {12, 0.196}, {16, 0.229}};

double ow_ptfe_bend_radius_m(int dash)
{
    for (size_t i = 0; i < sizeof bends / sizeof bends[0]; i++)
        if (bends[i].dash == dash)
            return bends[i].radius_m;
    return 0.0;
}
