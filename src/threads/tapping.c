/* SPDX-License-Identifier: MIT */
/* The hole to tap: drill, depth, wall, face, and what to mind. */
#include <math.h>

#include "threads/limits.h"

/* Common practice: full thread of one diameter in steel, one and a half in light alloy, four pitches of
 * lead for a plug tap and its point, and at least three tenths of the diameter of metal, never under 3 mm. */
#define STEEL_DIAMETERS 1.0
#define LIGHT_DIAMETERS 1.5
#define TAP_LEAD_PITCHES 4
#define WALL_DIAMETERS 0.3
#define WALL_LEAST_M (3 * OW_MM)

/* A male thread is answered by the hole it screws into. */
static ow_thread hole_for(const ow_thread *thread)
{
    ow_thread hole = *thread;
    if (hole.family == OW_THREAD_R)
        hole.family = OW_THREAD_RC;
    if (hole.family == OW_THREAD_METRIC_TAPER)
        hole.family = OW_THREAD_METRIC;
    return hole;
}

enum { TO_PARALLEL = 1, TO_TAPER = 2, TO_ALL = TO_PARALLEL | TO_TAPER };

static const struct caution {
    int to;
    const char *words;
} cautions[] = {
    {TO_ALL,
     "Drill and tap only where the section is known to be thick enough: oil galleries, water jackets, bolts "
     "and the sump's own ribs hide behind the face. If in doubt do not drill."},
    {TO_ALL,
     "Every chip that goes into an engine ends in a bearing: take the pan or cover off to tap it; if that "
     "cannot be, grease the flutes, drill and tap in short steps, flush, and drain before the first start."},
    {TO_ALL,
     "Chips in a pressure gallery cannot be flushed out through a bearing: plug it downstream or strip it."},
    {TO_ALL, "A drain bung goes above the oil level with the engine running and standing level, and clear of "
             "the crankshaft, the rods and the windage tray."},
    {TO_PARALLEL,
     "Start the tap square, with the first thread under a drill chuck or guide: a washer on a crooked port "
     "leaks."},
    {TO_TAPER,
     "A taper thread is tapped a little at a time and tried with its fitting: hand-tight with the wrench "
     "turns still to go. It splits thin or cast walls: prefer a parallel thread with a washer there."},
    {TO_PARALLEL, "In light alloy use oil or paraffin, tap the greater depth, and think of a thread insert."},
    {TO_TAPER, "In light alloy use oil or paraffin: it tears easily, and a torn taper thread does not seal."},
    {TO_PARALLEL, "Spot-face the port flat and square for its washer: a cast face is neither."},
    {TO_ALL, "Deburr the mouth, clean the port, and pressure-test it before use."},
    {TO_ALL,
     "Work that holds hot oil under pressure wants a competent person; follow the engine maker's data."},
};

size_t ow_tapping_caution_count(void)
{
    return sizeof cautions / sizeof cautions[0];
}

const char *ow_tapping_caution_at(size_t index)
{
    return index < ow_tapping_caution_count() ? cautions[index].words : NULL;
}

bool ow_tapping_caution_is_for(size_t index, const ow_thread *thread)
{
    ow_thread hole = hole_for(thread);
    int kind = ow_thread_is_taper(hole.family) ? TO_TAPER : TO_PARALLEL;
    return index < ow_tapping_caution_count() && (cautions[index].to & kind) != 0;
}

/* Flat faces for a sealing ring, diameter in mm: DIN 3852-1 and -2, form with sealing ring, as a public
 * table of stud ends has them. */
static const struct face {
    ow_thread_family family;
    int32_t size, pitch;
    double face_mm;
} faces[] = {
    {OW_THREAD_METRIC, 10000, 1000, 15},
    {OW_THREAD_METRIC, 12000, 1500, 18},
    {OW_THREAD_METRIC, 14000, 1500, 20},
    {OW_THREAD_METRIC, 16000, 1500, 22},
    {OW_THREAD_METRIC, 18000, 1500, 24},
    {OW_THREAD_METRIC, 20000, 1500, 26},
    {OW_THREAD_METRIC, 22000, 1500, 28},
    {OW_THREAD_METRIC, 26000, 1500, 32},
    {OW_THREAD_METRIC, 27000, 2000, 33},
    {OW_THREAD_METRIC, 33000, 2000, 40},
    {OW_THREAD_METRIC, 42000, 2000, 50},
    {OW_THREAD_METRIC, 48000, 2000, 56},
    {OW_THREAD_G, 8, 56, 15},
    {OW_THREAD_G, 16, 38, 19},
    {OW_THREAD_G, 24, 38, 23},
    {OW_THREAD_G, 32, 28, 27},
    {OW_THREAD_G, 48, 28, 33},
    {OW_THREAD_G, 64, 22, 40},
    {OW_THREAD_G, 80, 22, 50},
    {OW_THREAD_G, 96, 22, 56},
};

static double face_of(const ow_thread *thread)
{
    for (size_t i = 0; i < sizeof faces / sizeof faces[0]; i++)
        if (faces[i].family == thread->family && faces[i].size == thread->size &&
            faces[i].pitch == thread->pitch)
            return faces[i].face_mm * OW_MM;
    return 0;
}

/* Drills come in steps of 0.1 mm. Halves go to the even tenth, as in ISO 2306: 6.75 is 6.8, 10.25 is
 * 10.2. */
static double drill_nearest(double diameter_m)
{
    double tenths = diameter_m / (0.1 * OW_MM), below = floor(tenths + 1e-9);
    double part = tenths - below;
    bool up = fabs(part - 0.5) < 1e-6 ? fmod(below, 2) != 0 : part > 0.5;
    return (below + (up ? 1 : 0)) * 0.1 * OW_MM;
}

static double drill_above(double diameter_m)
{
    return ceil(diameter_m / (0.1 * OW_MM) - 1e-6) * 0.1 * OW_MM;
}

static double drill_below(double diameter_m)
{
    return floor(diameter_m / (0.1 * OW_MM) + 1e-6) * 0.1 * OW_MM;
}

/*
 * Metric: D - P (ISO 2306). Unified: the tenth above D - P, as ISO 2306 lists them. 55 degree parallel: three
 * quarters up the tolerance of the minor diameter, as drill tables for G threads do; Rp is tapped on the
 * minor diameter itself. Taper: the minor diameter at the small end of the hand-tight length, K0.
 */
static double drill_of(const ow_thread_size *size, const ow_tapping *tapping)
{
    double rough = size->major.basic_m - size->pitch_m;
    switch (size->thread.family) {
    case OW_THREAD_METRIC:
    case OW_THREAD_METRIC_TAPER:
        return drill_nearest(rough);
    case OW_THREAD_UNIFIED:
        return drill_above(rough) <= tapping->minor_most_m ? drill_above(rough)
                                                           : drill_below(tapping->minor_most_m);
    case OW_THREAD_NPSM:
        return drill_nearest((tapping->minor_least_m + tapping->minor_most_m) / 2);
    case OW_THREAD_G:
        return drill_nearest(tapping->minor_least_m +
                             0.75 * (tapping->minor_most_m - tapping->minor_least_m));
    case OW_THREAD_RP:
        return drill_nearest(size->minor.basic_m);
    case OW_THREAD_NPT:
    case OW_THREAD_NPTF:
    case OW_THREAD_R:
    case OW_THREAD_RC:
        return drill_nearest(size->minor.basic_m - (size->hand_tight_m - size->gauge_m) * size->taper);
    case OW_THREAD_FAMILY_COUNT:
        break;
    }
    return 0;
}

static void fill_depths(ow_tapping *tapping, const ow_thread_size *size)
{
    double diameter = size->major.basic_m;
    if (size->taper > 0) {
        tapping->thread_depth_m = tapping->thread_depth_light_m = size->hand_tight_m + size->wrench_m;
        tapping->taper_reamed = true;
    } else if (size->thread.family == OW_THREAD_RP) {
        tapping->thread_depth_m = tapping->thread_depth_light_m = size->useful_m;
    } else {
        tapping->thread_depth_m = STEEL_DIAMETERS * diameter;
        tapping->thread_depth_light_m = LIGHT_DIAMETERS * diameter;
    }
    tapping->drill_depth_m = tapping->thread_depth_light_m + TAP_LEAD_PITCHES * size->pitch_m;
    tapping->wall_least_m = fmax(WALL_DIAMETERS * diameter, WALL_LEAST_M);
}

ow_status ow_thread_tapping(const ow_thread *thread, ow_tapping *tapping)
{
    ow_thread_size size;
    ow_thread hole = hole_for(thread);
    ow_status status = ow_thread_size_of(&hole, false, OW_CLASS_USUAL, &size);
    if (status != OW_OK)
        return status;
    ow_tapping made = {
        .hole = hole, .source = size.source, .basis = size.limits_basis, .face_m = face_of(&hole)};
    double narrowing = size.taper > 0 ? (size.hand_tight_m - size.gauge_m) * size.taper : 0;
    made.minor_least_m = size.minor.least_m - narrowing;
    made.minor_most_m = size.minor.most_m - narrowing;
    made.drill_m = drill_of(&size, &made);
    fill_depths(&made, &size);
    *tapping = made;
    return OW_OK;
}
