/* SPDX-License-Identifier: MIT */
/* ISO 965-1: fundamental deviation and grade 6 tolerances of metric threads. */
#include <math.h>

#include "threads/limits.h"

#define UM 1e-6

/* Diameter ranges of ISO 965-1, "over" and "up to and including", mm. */
enum { OVER_2_8, OVER_5_6, OVER_11_2, OVER_22_4, RANGE_COUNT };
static const double range_ends_mm[] = {0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355};

typedef struct tolerance_row { /* micrometres; 0: not in the table */
    int32_t pitch_um;
    double deviation_g;    /* es(g), taken off */
    double external_major; /* Td(6) */
    double internal_minor; /* TD1(6) */
    double external_pitch[RANGE_COUNT];
    double internal_pitch[RANGE_COUNT];
} tolerance_row;

/* ISO 965-1:1998 tables 1 to 5. The standard rounds its own formulas in a way that cannot be
 * reproduced for every cell, so where the table was seen the table holds. */
static const tolerance_row table[] = {
    {800, 24, 150, 200, {95, 0, 0, 0}, {125, 0, 0, 0}},
    {1000, 26, 180, 236, {0, 112, 118, 125}, {0, 150, 160, 170}},
    {1250, 28, 212, 265, {0, 118, 132, 0}, {0, 160, 180, 0}},
    {1500, 32, 236, 300, {0, 132, 140, 150}, {0, 180, 190, 200}},
    {1750, 34, 265, 335, {0, 0, 150, 0}, {0, 0, 200, 0}},
    {2000, 38, 280, 375, {0, 0, 160, 170}, {0, 0, 212, 224}},
};

typedef struct tolerances {
    double deviation, major, minor, external_pitch, internal_pitch; /* um */
    ow_basis basis;
} tolerances;

/* ISO 3, series R40. */
static const double r40[] = {1.00, 1.06, 1.12, 1.18, 1.25, 1.32, 1.40, 1.50, 1.60, 1.70, 1.80,
                             1.90, 2.00, 2.12, 2.24, 2.36, 2.50, 2.65, 2.80, 3.00, 3.15, 3.35,
                             3.55, 3.75, 4.00, 4.25, 4.50, 4.75, 5.00, 5.30, 5.60, 6.00, 6.30,
                             6.70, 7.10, 7.50, 8.00, 8.50, 9.00, 9.50, 10.0};

/* The nearest number of that series, to which ISO 965-1 rounds. */
static double round_to_r40(double value)
{
    double decade = pow(10, floor(log10(value))), nearest = r40[0];
    for (size_t i = 1; i < sizeof r40 / sizeof r40[0]; i++)
        if (fabs(r40[i] - value / decade) < fabs(nearest - value / decade))
            nearest = r40[i];
    return nearest * decade;
}

/* ISO 965-1 clause 13: the formulas behind the tables. pitch and diameter in mm. */
static tolerances by_formula(double pitch_mm, double diameter_mm)
{
    size_t range = 1;
    while (range + 1 < sizeof range_ends_mm / sizeof range_ends_mm[0] && diameter_mm > range_ends_mm[range])
        range++;
    double mean_mm = sqrt(range_ends_mm[range - 1] * range_ends_mm[range]);
    double pitch_tolerance = 90 * pow(pitch_mm, 0.4) * pow(mean_mm, 0.1);
    double minor = pitch_mm < 1 ? 433 * pitch_mm - 190 * pow(pitch_mm, 1.22) : 230 * pow(pitch_mm, 0.7);
    return (tolerances){
        .deviation = round(15 + 11 * pitch_mm),
        .major = round_to_r40(180 * cbrt(pitch_mm * pitch_mm) - 3.15 / sqrt(pitch_mm)),
        .minor = round_to_r40(minor),
        .external_pitch = round_to_r40(pitch_tolerance),
        .internal_pitch = round_to_r40(1.32 * pitch_tolerance),
        .basis = OW_BASIS_COMPUTED,
    };
}

static size_t table_range(double diameter_mm)
{
    size_t range = 0;
    while (range < RANGE_COUNT && diameter_mm > range_ends_mm[range + 3])
        range++;
    return diameter_mm > range_ends_mm[2] ? range : RANGE_COUNT;
}

static tolerances tolerances_of(const ow_thread *thread)
{
    double diameter_mm = thread->size / 1000.0;
    size_t range = table_range(diameter_mm);
    for (size_t i = 0; range < RANGE_COUNT && i < sizeof table / sizeof table[0]; i++) {
        const tolerance_row *row = &table[i];
        if (row->pitch_um == thread->pitch && row->external_pitch[range] > 0)
            return (tolerances){row->deviation_g,           row->external_major,        row->internal_minor,
                                row->external_pitch[range], row->internal_pitch[range], OW_BASIS_PUBLISHED};
    }
    return by_formula(thread->pitch / 1000.0, diameter_mm);
}

void ow_limits_metric(ow_thread_size *size, ow_thread_class class_wanted)
{
    tolerances allowed = tolerances_of(&size->thread);
    ow_basic_60(size, ow_thread_major_m(&size->thread));
    double major = size->major.basic_m, pitch = size->pitch_diameter.basic_m, minor = size->minor.basic_m;
    size->source = "ISO 68-1, ISO 724, ISO 965-1";
    size->limits_basis = allowed.basis;
    if (size->male) {
        double shift = class_wanted == OW_CLASS_6H_EXTERNAL ? 0 : allowed.deviation * UM;
        size->major = ow_limits_between(major, major - shift - allowed.major * UM, major - shift);
        size->pitch_diameter =
            ow_limits_between(pitch, pitch - shift - allowed.external_pitch * UM, pitch - shift);
        size->minor = ow_limits_most(minor, minor - shift);
    } else {
        size->major = ow_limits_least(major, major);
        size->pitch_diameter = ow_limits_between(pitch, pitch, pitch + allowed.internal_pitch * UM);
        size->minor = ow_limits_between(minor, minor, minor + allowed.minor * UM);
    }
}
