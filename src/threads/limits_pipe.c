/* SPDX-License-Identifier: MIT */
/* Taper and 55 degree pipe threads: ASME B1.20.1, ISO 7-1, ISO 228-1, and the metric taper of DIN 158-1. */
#include <math.h>

#include "threads/limits.h"

/* ASME B1.20.1: E0 = D - (0.05 D + 1.1) P, L2 = (0.80 D + 6.8) P, a gauge may stand one turn either way,
 * three threads are kept for the wrench. */
void ow_limits_npt(ow_thread_size *size, const ow_npt_size *base)
{
    double pitch = size->pitch_m, pitch_in = pitch / OW_INCH;
    double small_end = (base->pipe_diameter_in - (0.05 * base->pipe_diameter_in + 1.1) * pitch_in) * OW_INCH;
    double hand_tight = base->hand_tight_in * OW_INCH;
    double gauge = small_end + hand_tight * OW_PIPE_TAPER, turn = pitch * OW_PIPE_TAPER;
    double full = OW_DEPTH_NPT * pitch;
    double blunt = size->triangle_m - 2 * base->truncation_most_p * pitch;
    size->depth_m = full;
    size->pitch_diameter = ow_limits_between(gauge, gauge - turn, gauge + turn);
    if (size->male) {
        size->major = ow_limits_between(gauge + full, gauge - turn + blunt, gauge + turn + full);
        size->minor = ow_limits_least(gauge - full, gauge - turn - full);
        size->gauge_m = hand_tight;
        size->small_end_m = small_end;
    } else {
        size->major = ow_limits_most(gauge + full, gauge + turn + full);
        size->minor = ow_limits_between(gauge - full, gauge - turn - full, gauge + turn - blunt);
        size->gauge_m = 0;
        size->mouth_m = gauge;
    }
    size->hand_tight_m = hand_tight;
    size->gauge_tolerance_m = pitch;
    size->useful_m = (0.80 * base->pipe_diameter_in + 6.8) * pitch_in * OW_INCH;
    size->wrench_m = 3 * pitch;
    size->limits_basis = OW_BASIS_PUBLISHED;
    size->source = size->thread.family == OW_THREAD_NPTF ? "ASME B1.20.3; sizes as ASME B1.20.1-2013"
                                                         : "ASME B1.20.1-2013";
}

/* Basic diameters of the 55 degree profile; the tables round the depth to 0.001 mm before use. */
static void basic_55(ow_thread_size *size, double major_mm)
{
    double depth_mm = floor(OW_DEPTH_55 * size->pitch_m / OW_MM * 1e3 + 0.5) / 1e3;
    size->depth_m = depth_mm * OW_MM;
    size->major.basic_m = major_mm * OW_MM;
    size->pitch_diameter.basic_m = (major_mm - depth_mm) * OW_MM;
    size->minor.basic_m = (major_mm - 2 * depth_mm) * OW_MM;
}

static void all_within(ow_thread_size *size, double tolerance_m)
{
    ow_size_limits *each[] = {&size->major, &size->pitch_diameter, &size->minor};
    for (size_t i = 0; i < 3; i++)
        *each[i] = ow_limits_between(each[i]->basic_m, each[i]->basic_m - tolerance_m,
                                     each[i]->basic_m + tolerance_m);
}

/* The gauge plane of a male lies the gauge length from its small end; that of an Rc half a pitch inside
 * the face, give or take 1.25 turns; a parallel Rp has a tolerance on diameter. */
void ow_limits_iso_7(ow_thread_size *size, const ow_whitworth_size *base)
{
    bool parallel = size->thread.family == OW_THREAD_RP;
    double position = size->male ? base->gauge_tolerance_mm * OW_MM : 1.25 * size->pitch_m;
    basic_55(size, base->major_mm);
    all_within(size, parallel ? base->parallel_mm * OW_MM : position * OW_PIPE_TAPER);
    double pitch_diameter = size->pitch_diameter.basic_m;
    if (size->male) {
        size->gauge_m = base->gauge_mm * OW_MM;
        size->small_end_m = pitch_diameter - size->gauge_m * OW_PIPE_TAPER;
    } else {
        size->gauge_m = parallel ? 0 : size->pitch_m / 2;
        size->mouth_m = pitch_diameter + size->gauge_m * OW_PIPE_TAPER;
    }
    size->hand_tight_m = base->gauge_mm * OW_MM;
    size->gauge_tolerance_m = parallel ? 0 : position;
    size->useful_m = base->useful_mm * OW_MM;
    size->wrench_m = (base->useful_mm - base->gauge_mm) * OW_MM;
    size->limits_basis = OW_BASIS_MEMORY;
    size->lengths_basis = base->size > 64 ? OW_BASIS_MEMORY : OW_BASIS_PUBLISHED;
    size->source = "ISO 7-1:1994";
}

void ow_limits_iso_228(ow_thread_size *size, const ow_whitworth_size *base, ow_thread_class class_wanted)
{
    double pitch_tolerance = base->pitch_tolerance_mm * OW_MM;
    basic_55(size, base->major_mm);
    double major = size->major.basic_m, pitch = size->pitch_diameter.basic_m, minor = size->minor.basic_m;
    if (size->male) {
        double taken_off = class_wanted == OW_CLASS_B ? 2 * pitch_tolerance : pitch_tolerance;
        size->major = ow_limits_between(major, major - base->major_tolerance_mm * OW_MM, major);
        size->pitch_diameter = ow_limits_between(pitch, pitch - taken_off, pitch);
        size->minor = ow_limits_most(minor, minor);
    } else {
        size->major = ow_limits_least(major, major);
        size->pitch_diameter = ow_limits_between(pitch, pitch, pitch + pitch_tolerance);
        size->minor = ow_limits_between(minor, minor, minor + base->minor_tolerance_mm * OW_MM);
    }
    size->limits_basis = base->size > 64 ? OW_BASIS_MEMORY : OW_BASIS_PUBLISHED;
    size->source = "ISO 228-1";
}

void ow_limits_metric_taper(ow_thread_size *size, const ow_metric_taper_size *base)
{
    ow_basic_60(size, ow_thread_major_m(&size->thread));
    all_within(size, size->pitch_m * OW_PIPE_TAPER);
    size->gauge_m = base->gauge_mm * OW_MM;
    size->small_end_m = size->pitch_diameter.basic_m - size->gauge_m * OW_PIPE_TAPER;
    size->hand_tight_m = size->gauge_m;
    size->gauge_tolerance_m = size->pitch_m;
    size->useful_m = base->useful_mm * OW_MM;
    size->wrench_m = size->useful_m - size->gauge_m;
    size->limits_basis = size->lengths_basis = OW_BASIS_MEMORY;
    size->source = "DIN 158-1:1997";
}
