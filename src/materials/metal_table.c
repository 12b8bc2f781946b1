/* SPDX-License-Identifier: MIT */
/* What a thread cut in a metal bears: the least yield of what fittings and housings of it are usually made
 * of. */
#include "materials/metal.h"
#include "oilway/metal.h"

static const ow_metal metals[] = {
    {OW_STEEL, "steel", 235e6, "EN 10025-2 S235, from memory", OW_MARK_FROM_MEMORY},
    {OW_ALUMINIUM, "light alloy", 140e6, "EN 1706 AC-46000 die cast, from memory", OW_MARK_FROM_MEMORY},
    /* 20 ksi at 0.5 % extension, half-hard rod of 1 to 2 in; 25 ksi up to 1 in */
    {OW_COPPER_ALLOY, "brass", 138e6, "ASTM B16 C36000 half-hard", OW_MARK_PUBLISHED},
};

size_t ow_metal_count(void)
{
    return sizeof metals / sizeof metals[0];
}

const ow_metal *ow_metal_at(size_t index)
{
    return index < ow_metal_count() ? &metals[index] : NULL;
}
