/* SPDX-License-Identifier: MIT */
/*
 * Coolant round a water-cooled bearing housing: properties, boiling, natural circulation after
 * shutdown, and forced flow. SI throughout (temperatures in C); no allocation. Formulas, sources and
 * marks: docs/physics.md.
 */
#ifndef OILWAY_COOLANT_H
#define OILWAY_COOLANT_H

#include "oilway/hydraulics.h"

typedef enum ow_coolant { OW_WATER, OW_GLYCOL_50, OW_COOLANT_COUNT } ow_coolant;
/* "water", "50 % glycol" (ethylene glycol, by volume). */
const char *ow_coolant_word(ow_coolant coolant);
/* Any usual spelling: "50% Glycol", "glycol 50 %", "water". False if it is neither. */
bool ow_coolant_find(const char *words, ow_coolant *coolant);

/* What the formulas are held to as input. Properties beyond 121 C (glycol) or 130 C (water) are extrapolated,
 * and finite up to 300 C. */
#define OW_COOLANT_LOW_C 0.0
#define OW_COOLANT_HIGH_C 130.0
#define OW_COOLANT_HEAT_LOW_W 0.1
#define OW_COOLANT_HEAT_HIGH_W 20000.0
#define OW_COOLANT_CAP_HIGH_PA 300000.0
#define OW_COOLANT_APART_HIGH_M 1.0
#define OW_JACKET_COEFFICIENT 6.0             /* on the port's bore (assumption) */
#define OW_COOLANT_FORCED_M3S (5.0 / 60000.0) /* pump's flow through the housing (assumption) */
#define OW_SOAK_HEAT_W 300.0                  /* heat after shutdown, the middle of 100..600 W (assumption) */
#define OW_BOIL_MARGIN_K 5.0                  /* kept below boiling (assumption) */
#define OW_SIPHON_RISE_HIGH_K 150.0           /* a loop that would heat its water by more stands still */

double ow_coolant_density_kgm3(ow_coolant coolant, double temperature_c);
double ow_coolant_viscosity_pas(ow_coolant coolant, double temperature_c);
double ow_coolant_heat_jkgk(ow_coolant coolant, double temperature_c);
ow_liquid ow_coolant_liquid(ow_coolant coolant, double temperature_c);
/* Temperature up to which the fits hold. */
double ow_coolant_fit_high_c(ow_coolant coolant);
/*
 * Where it boils under a cap pressure, Pa gauge 0..OW_COOLANT_CAP_HIGH_PA, at sea level: IAPWS-IF97 for
 * water, Raoult with a mole fraction of water of 0.7556 for the glycol.
 */
ow_status ow_coolant_boiling_c(ow_coolant coolant, double cap_pa, double *temperature_c);

typedef struct ow_loop {
    const char *title; /* lent; may be NULL */
    ow_coolant coolant;
    double heat_w;    /* soaks into the housing after shutdown */
    double cold_c;    /* of the body of coolant that the loop hangs on */
    double apart_m;   /* between the two ports' centres */
    double angle_rad; /* clocking: hot port above cold port; negative where it is below */
    double rise_m;    /* of the hot return above the high port */
    size_t cold_count;
    const ow_piece *cold_leg; /* at least one piece, without the chambers at its ends */
    size_t hot_count;
    const ow_piece *hot_leg;
    double jacket_coefficient;
    double jacket_bore_m;
    double roughness_m;
    double cap_pa;
} ow_loop;

typedef struct ow_siphon {
    bool stands_still; /* no flow balances: the rest is 0, hot_c = cold_c */
    double flow_m3s;
    double rise_k;
    double hot_c;
    double drive_pa;
    double boiling_c;
    bool boils;        /* hot_c reaches boiling_c, or it stands still */
    bool near_boiling; /* within OW_BOIL_MARGIN_K of it, or boils */
} ow_siphon;

/* OW_RANGE if any number of the loop lies outside what can be worked in. */
ow_status ow_loop_check(const ow_loop *loop);
/* Natural circulation: buoyancy against the loop's resistance, by bracketing. OW_RANGE. */
ow_status ow_siphon_solve(const ow_loop *loop, ow_siphon *siphon);

typedef struct ow_forced {
    double loss_pa; /* all round, with the jacket */
    double jacket_pa;
    double reynolds; /* in the narrowest piece of the cold leg; 0 if it has none */
    double rise_k;   /* heat_w over the flow's heat capacity */
} ow_forced;
/* The pump's flow round the same loop, all at cold_c. OW_RANGE. */
ow_status ow_loop_forced(const ow_loop *loop, double flow_m3s, ow_forced *forced);

#endif
