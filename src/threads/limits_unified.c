/* SPDX-License-Identifier: MIT */
/* ASME B1.1-2019 classes 2A, 2B, 3A, 3B, and the straight pipe thread NPSM, which takes its tolerances
 * from them. All in inches, each term rounded to 0.0001 as the tables do. The minor limits of holes are
 * printed to 0.001 from 0.138 up (3/8-24 UNF-2B: 0.330 to 0.340); here they keep the fourth place, up to
 * 0.013 mm away, so that a hole of least size is never tighter than the bolt's own profile. */
#include <math.h>
#include <string.h>

#include "threads/limits.h"

static double rounded(double inches)
{
    return floor(inches * 1e4 + 0.5 + 1e-9) / 1e4;
}

/* Length of engagement that the tolerance is made for: the diameter for UNC and UNF, nine pitches for
 * UNEF and the constant-pitch series. */
static double engagement_in(const ow_thread *thread, double major_in, double pitch_in)
{
    const ow_thread_row *row = ow_thread_row_find(thread);
    bool coarse_or_fine = row && (strcmp(row->series, "UNC") == 0 || strcmp(row->series, "UNF") == 0);
    return coarse_or_fine ? major_in : 9 * pitch_in;
}

/* Class 3B minor tolerance (clause 5.8.2, from memory; agrees with the 7/16-20 row of the table). */
static double minor_tolerance_3b(double major_in, double pitch_in)
{
    double tolerance = 0.05 * cbrt(pitch_in * pitch_in) + 0.03 * pitch_in / major_in - 0.002;
    double floor_in = pitch_in <= 1.0 / 13 ? 0.23 * pitch_in - 1.5 * pitch_in * pitch_in : 0.120 * pitch_in;
    return fmin(fmax(tolerance, floor_in), 0.394 * pitch_in);
}

static ow_size_limits between_in(double basic_m, double least_in, double most_in)
{
    return ow_limits_between(basic_m, least_in * OW_INCH, most_in * OW_INCH);
}

static void limit(ow_thread_size *size, bool close, double tolerance_2a)
{
    double pitch_in = size->pitch_m / OW_INCH, major_in = size->major.basic_m / OW_INCH;
    double pitch = rounded(size->pitch_diameter.basic_m / OW_INCH),
           minor = rounded(size->minor.basic_m / OW_INCH);
    if (size->male) {
        double allowance = close ? 0 : rounded(0.3 * tolerance_2a);
        double top = rounded(major_in) - allowance;
        double tolerance = rounded(close ? 0.75 * tolerance_2a : tolerance_2a);
        size->major = between_in(size->major.basic_m, top - rounded(0.060 * cbrt(pitch_in * pitch_in)), top);
        size->pitch_diameter =
            between_in(size->pitch_diameter.basic_m, pitch - allowance - tolerance, pitch - allowance);
        size->minor = ow_limits_most(size->minor.basic_m, (minor - allowance) * OW_INCH);
        return;
    }
    double tolerance = rounded((close ? 0.975 : 1.3) * tolerance_2a);
    double bore =
        close ? minor_tolerance_3b(major_in, pitch_in) : 0.25 * pitch_in - 0.4 * pitch_in * pitch_in;
    size->major = ow_limits_least(size->major.basic_m, rounded(major_in) * OW_INCH);
    size->pitch_diameter = between_in(size->pitch_diameter.basic_m, pitch, pitch + tolerance);
    size->minor = between_in(size->minor.basic_m, minor, minor + rounded(bore));
}

static double tolerance_2a(double major_in, double engagement, double pitch_in)
{
    return 0.0015 * cbrt(major_in) + 0.0015 * sqrt(engagement) + 0.015 * cbrt(pitch_in * pitch_in);
}

void ow_limits_unified(ow_thread_size *size, ow_thread_class class_wanted)
{
    ow_basic_60(size, ow_thread_major_m(&size->thread));
    double major_in = size->major.basic_m / OW_INCH, pitch_in = size->pitch_m / OW_INCH;
    bool close = class_wanted == OW_CLASS_3A || class_wanted == OW_CLASS_3B;
    size->source = "ASME B1.1-2019";
    size->limits_basis = close && !size->male ? OW_BASIS_MEMORY : OW_BASIS_PUBLISHED;
    limit(size, close, tolerance_2a(major_in, engagement_in(&size->thread, major_in, pitch_in), pitch_in));
}

void ow_limits_npsm(ow_thread_size *size)
{
    ow_basic_60(size, ow_thread_major_m(&size->thread));
    double major_in = size->major.basic_m / OW_INCH, pitch_in = size->pitch_m / OW_INCH;
    size->source = "ASME B1.20.1-2013 straight mechanical thread, tolerances as ASME B1.1 class 2";
    size->limits_basis = OW_BASIS_MEMORY;
    limit(size, false, tolerance_2a(major_in, 9 * pitch_in, pitch_in));
}
