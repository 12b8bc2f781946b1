/* SPDX-License-Identifier: MIT */
/* The metals that fittings and housings are made of, and what a thread in them bears. */
#ifndef OILWAY_METAL_H
#define OILWAY_METAL_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/mark.h"

typedef struct ow_metal {
    unsigned bits;     /* of src/materials/metal.h */
    const char *title; /* "light alloy" */
    double yield_pa;   /* least of a usual grade */
    const char *source;
    ow_mark mark;
} ow_metal;

size_t ow_metal_count(void);
const ow_metal *ow_metal_at(size_t index); /* NULL past the end */
/* By a material in words ("zinc-plated steel", "Aluminium", "brass"); NULL if it is not known. */
const ow_metal *ow_metal_of(const char *material);
/* Whether tightening figures are sorted by that material: steel, iron, aluminium, brass, … */
bool ow_material_is_known(const char *material);

#endif
