/* SPDX-License-Identifier: MIT */
/* The card of a joint as it stands in a layout: the material of the softer part, the bolt that a banjo eye
 * sits on. */
#include "oilway/bill.h"

#include "materials/metal.h"

static const char *softer(const ow_part *a, const ow_part *b)
{
    if (a == NULL || b == NULL)
        return a != NULL ? a->material : b != NULL ? b->material : "";
    return ow_material_hardness(a->material) <= ow_material_hardness(b->material) ? a->material : b->material;
}

/* The bolt of a banjo joint, and how many of its studs stand before this one. */
static void find_bolt(const ow_part *part, size_t end, ow_card_ask *ask)
{
    if (part == NULL || part->kind != OW_BANJO_BOLT || end == 0)
        return;
    ask->bolt = &part->ends[0].thread;
    ask->eye = end - 1;
}

/* What is in the circuit, and how hot, as far as the layout says. */
static ow_ring_service ring_service(const ow_layout *layout)
{
    const ow_limits *asked = &layout->asked;
    ow_fluid fluid = asked->fluid;
    if (fluid == OW_FLUID_NONE && layout->circuit != OW_CIRCUIT_NONE)
        fluid = layout->circuit == OW_COOLANT ? OW_FLUID_COOLANT : OW_FLUID_OIL;
    return (ow_ring_service){fluid == OW_FLUID_OIL, fluid == OW_FLUID_COOLANT, asked->has_temperature,
                             asked->temperature_c};
}

ow_status ow_layout_joint_card(const ow_layout *layout, size_t child, ow_card *card)
{
    const ow_layout_node *node = &layout->nodes[child];
    const ow_part *outer = layout->nodes[node->parent].part;
    ow_card_ask ask = {.material = softer(outer, node->part), .ring = ring_service(layout)};
    find_bolt(outer, node->parent_end, &ask);
    find_bolt(node->part, node->enter, &ask);
    return ow_card_of(ow_layout_parent_end(layout, child), ow_layout_child_end(layout, child), &ask, card);
}
