/* SPDX-License-Identifier: MIT */
/* What a catalogue's words for a material mean to a thread: how soft it is, which figures hold for it. */
#ifndef OW_MATERIALS_METAL_H
#define OW_MATERIALS_METAL_H

enum {                   /* bits */
       OW_STEEL = 1,     /* and iron */
       OW_ALUMINIUM = 2, /* light alloy */
       OW_COPPER_ALLOY = 4,
       OW_ANY_MATERIAL = 7
};

/* Bits for a material in words, in capitals or not ("zinc-plated steel", "Aluminium", "brass" …); 0 for NULL
 * and what is not known. */
unsigned ow_material_bits(const char *material);

/* How soft: 0 is the softest, what is not known counts as the hardest (common practice). */
unsigned ow_material_hardness(const char *material);

#endif
