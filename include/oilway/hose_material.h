/* SPDX-License-Identifier: MIT */
/* What hoses are made of, and which fluid, heat and pressure each stands. */
#ifndef OILWAY_HOSE_MATERIAL_H
#define OILWAY_HOSE_MATERIAL_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/mark.h"

typedef enum ow_stands {
    OW_STANDS_NOT,     /* it swells, weakens or dissolves */
    OW_STANDS_LIMITED, /* for a while, or fairly: a warning */
    OW_STANDS_DRAIN,   /* without pressure only */
    OW_STANDS
} ow_stands;

typedef struct ow_hose_material {
    const char *word;     /* as a hose's class in a catalogue: "ptfe", "fluoro-silicone" */
    const char *synonyms; /* other spellings, blank separated; may be "" */
    const char *title;
    ow_stands oil, coolant;
    double low_c, high_c;
    double short_high_c; /* for minutes; high_c if nothing more is known */
    double pressure_pa;  /* most it is made for whatever its size; 0 = by size, see the part's rating */
    const char *source;
    ow_mark mark;
} ow_hose_material;

size_t ow_hose_material_count(void);
const ow_hose_material *ow_hose_material_at(size_t index);
/* By word or synonym, ASCII case ignored; NULL if it is not known. */
const ow_hose_material *ow_hose_material_find(const char *word);

typedef struct ow_hose_service {
    bool oil;           /* else coolant */
    bool pressurised;   /* a feed or a coolant loop, not a drain */
    double pressure_pa; /* gauge; 0 if not known */
    double temperature_c;
} ow_hose_service;

typedef enum ow_hose_fault {                            /* bits */
                             OW_HOSE_FLUID = 1,         /* does not stand it */
                             OW_HOSE_FLUID_LIMITED = 2, /* stands it fairly only */
                             OW_HOSE_HEAT = 4, /* hotter or colder than its range, the short one included */
                             OW_HOSE_HEAT_SHORT = 8, /* within the short range only */
                             OW_HOSE_PRESSURE = 16 /* above what it is made for, or any where it takes none */
} ow_hose_fault;
/* Faults of a material in a service; 0 = none. What is less than a thousandth of a degree or a pascal apart
 * is equal, as it is to the search. */
unsigned ow_hose_faults(const ow_hose_material *material, const ow_hose_service *service);
/* Least bend radius of smooth-bore PTFE hose (SAE 100R14) by dash, m; 0 if the dash is not known. */
double ow_ptfe_bend_radius_m(int dash);

#endif
