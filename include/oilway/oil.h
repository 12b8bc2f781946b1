/* SPDX-License-Identifier: MIT */
/*
 * Engine oil: viscosity and density at a temperature, the limits of SAE J300, and typical oils for
 * where only the grade is known. Formulas, marks and errors: docs/physics.md.
 */
#ifndef OILWAY_OIL_H
#define OILWAY_OIL_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/assumption.h"
#include "oilway/hydraulics.h"

/* What the formulas can work in; anything else is OW_RANGE. */
#define OW_OIL_TEMPERATURE_LOW_C (-40.0)
#define OW_OIL_TEMPERATURE_HIGH_C 200.0
#define OW_OIL_KV100_LOW_MM2S 2.0
#define OW_OIL_KV100_HIGH_MM2S 100.0
#define OW_OIL_KV40_HIGH_MM2S 5000.0
#define OW_OIL_DENSITY15_LOW_KGM3 700.0
#define OW_OIL_DENSITY15_HIGH_KGM3 1000.0
/* Thicker than this an oil no longer flows as a liquid (SAE J300 stops pumping at 60 000 mPa s). */
#define OW_OIL_VISCOSITY_HIGH_MM2S 1.0e6
/* Density where nobody says it, kg/m3: the middle of the typical oils below. An assumption. */
#define OW_OIL_DENSITY15_DEFAULT_KGM3 870.0

typedef struct ow_oil {
    const char *name; /* lent; "" if it is known by its viscosities only */
    double kv40_mm2s;
    double kv100_mm2s;
    double density15_kgm3;
    double walther_a, walther_b; /* of ASTM D341, from the two viscosities */
} ow_oil;

/*
 * An oil by its kinematic viscosities at 40 and 100 C and its density at 15 C. OW_RANGE, *oil
 * untouched: a number outside the limits above, or kv40 not above kv100.
 */
ow_status ow_oil_set(const char *name, double kv40_mm2s, double kv100_mm2s, double density15_kgm3,
                     ow_oil *oil);
/* Kinematic viscosity, mm2/s (ASTM D341). OW_RANGE outside -40..200 C, or where it does not flow. */
ow_status ow_oil_viscosity_mm2s(const ow_oil *oil, double temperature_c, double *viscosity_mm2s);
/* Density, kg/m3, falling 0.65 for each degree from 15 C. Any finite temperature. */
double ow_oil_density_kgm3(const ow_oil *oil, double temperature_c);
/* Both, as the hydraulics take them. OW_RANGE as for the viscosity. */
ow_status ow_oil_liquid(const ow_oil *oil, double temperature_c, ow_liquid *liquid);

/* A row of SAE J300 (limits of 2015). What does not apply is 0. */
typedef struct ow_sae_grade {
    const char *name;       /* "40", "15W" */
    double kv100_low_mm2s;  /* at least */
    double kv100_high_mm2s; /* below; 0 for W grades */
    double hths150_mpas;    /* at least, at 150 C; 0 for W grades */
    double cranking_mpas;   /* at most, at cranking_c; W grades only, else 0 */
    double cranking_c;
    double pumping_c; /* at most 60 000 mPa s there; W grades only */
} ow_sae_grade;

size_t ow_sae_grade_count(void);
const ow_sae_grade *ow_sae_grade_at(size_t index);
const ow_sae_grade *ow_sae_grade_find(const char *name, size_t length); /* NULL if there is none */

/* A typical oil of a grade: an assumption, not a product. */
typedef struct ow_typical_oil {
    const char *name; /* "15W-40", "SAE 30" */
    double kv40_mm2s, kv100_mm2s, density15_kgm3;
    const char *source;
} ow_typical_oil;

size_t ow_typical_oil_count(void);
const ow_typical_oil *ow_typical_oil_at(size_t index);
/* By grade in any usual spelling: "15W-40", "sae 15w40", "30". NULL if there is none. */
const ow_typical_oil *ow_typical_oil_find(const char *grade);
/* Adds its figures to a list of assumptions. OW_OK, OW_MEMORY. */
ow_status ow_typical_oil_assume(const ow_typical_oil *oil, ow_assumptions *assumptions);
/* Notes that a density, kg/m3 at 15 C, was not given. OW_MEMORY. */
ow_status ow_oil_density_assume(double density15_kgm3, ow_assumptions *assumptions);

/*
 * The window of KV100 that a grade stands for, mm2/s: low <= KV100 < high. A multigrade meets both of its
 * rows. False if the words are no SAE J300 grade.
 */
bool ow_oil_grade_window(const char *grade, double *low_mm2s, double *high_mm2s);

#endif
