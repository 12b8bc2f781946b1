/* SPDX-License-Identifier: MIT */
/*
 * Numbers with units, as the shop writes them, turned into SI once, at the edge.
 * Accepted: mm cm m um in " · bar mbar psi kPa MPa Pa · C F K · L/min lpm l/min m3/s · deg rad ·
 * W kW · g kg · mPa.s Pa.s cP · mm2/s m2/s cSt · kg/m3 · s min · % (as 0.01).
 */
#ifndef OILWAY_QUANTITY_H
#define OILWAY_QUANTITY_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/text.h"

/* The dimension; the SI unit that a value of it is held in stands behind. */
typedef enum ow_dimension {
    OW_LENGTH,              /* m */
    OW_PRESSURE,            /* Pa, gauge unless the name says absolute */
    OW_TEMPERATURE,         /* degrees Celsius: the one exception to SI, as formulas take it */
    OW_TEMPERATURE_STEP,    /* K: differences; "10 C" and "10 K" are the same */
    OW_FLOW,                /* m3/s */
    OW_ANGLE,               /* rad */
    OW_POWER,               /* W */
    OW_MASS,                /* kg */
    OW_DYNAMIC_VISCOSITY,   /* Pa s */
    OW_KINEMATIC_VISCOSITY, /* m2/s */
    OW_DENSITY,             /* kg/m3 */
    OW_TIME,                /* s */
    OW_RATIO,               /* a bare number, or a percentage */
    OW_DIMENSION_COUNT
} ow_dimension;

/* What to write for it, e.g. "a length with its unit, such as 4.4 mm". Never NULL. */
const char *ow_dimension_expected(ow_dimension dimension);

/*
 * Reads the whole of `words` as one quantity. OW_INPUT if it is none (nothing is reported: the
 * caller knows the place); *value is untouched then. Finite numbers only; a bare number is refused
 * unless the dimension is OW_RATIO. Decimal point only, whatever the locale.
 */
ow_status ow_quantity_read(const char *words, ow_dimension dimension, double *value);

/* Reads "LO..HI UNIT", "LO UNIT..HI UNIT": both ends, LO <= HI. */
ow_status ow_quantity_read_range(const char *words, ow_dimension dimension, double *low, double *high);

/* Appends value (SI) in the trade's unit (mm, bar, C, L/min, deg, mm2/s …) with up to `decimals`
 * decimals, trailing zeros dropped. */
void ow_quantity_write(ow_text *text, ow_dimension dimension, double value, int decimals);

#endif
