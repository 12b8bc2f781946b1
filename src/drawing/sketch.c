/* SPDX-License-Identifier: MIT */
#include "drawing/sketch.h"

#include <math.h>

#define PI 3.14159265358979323846

/* Usual sizes across flats, mm (ISO 272 and the inch sizes of fittings rounded, from memory). */
static const double HEXAGONS[] = {10, 11, 12, 13, 14, 15, 16, 17, 19, 21, 22,
                                  24, 27, 30, 32, 36, 41, 46, 50, 55, 60, 65};

static double hexagon_over(double least)
{
    for (size_t index = 0; index < sizeof HEXAGONS / sizeof HEXAGONS[0]; index++)
        if (HEXAGONS[index] >= least)
            return HEXAGONS[index];
    return ceil(least);
}

/* What an end asks of the hexagon: a shoulder beyond a stud or its ring, metal around a pocket. */
static double across_for(const ow_drawn_end *form)
{
    switch (form->look) {
    case OW_LOOK_STUB:
    case OW_LOOK_SPUD:
        return fmax(form->major_mm + 2.4, form->ring_outer_mm + 0.6);
    case OW_LOOK_POCKET:
        return 1.28 * form->major_mm + 2.0;
    case OW_LOOK_NUT:
        return form->across_mm;
    case OW_LOOK_SLEEVE:
    case OW_LOOK_BARB:
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
    case OW_LOOK_PLATE:
    case OW_LOOK_WELD:
    case OW_LOOK_HOSE:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
    default:
        return form->outer_mm + 1.0;
    }
}

/* A bore that leaves each thread a wall of a fifth of its root at the least, never wider than a hose's tail.
 */
static double bore_for(const ow_drawn_end *form)
{
    if (form->look == OW_LOOK_SLEEVE || form->look == OW_LOOK_HOSE)
        return 0.75 * form->inner_mm;
    double root = form->minor_mm > 0.0 ? form->minor_mm : form->outer_mm;
    return 0.55 * root;
}

static double length_of(const ow_drawn_end *form)
{
    return form->look == OW_LOOK_POCKET ? form->depth_mm + 2.0 : form->stub_mm;
}

ow_sketch ow_sketch_of(const ow_missing *missing, double least_bore_m)
{
    ow_sketch made = {
        .part = {.kind = missing->is_plug ? OW_PLUG : OW_ADAPTER, .id = "", .title = "", .material = ""}};
    ow_part *part = &made.part;
    const ow_end *ends[2] = {&missing->from, &missing->to};
    double across = 0.0, bore = 1e9, length = 0.0;
    part->end_count = missing->is_plug ? 1 : 2;
    part->angle_rad = part->orifice_m = part->branch_length_m = OW_NOT_SAID;
    for (size_t end = 0; end < part->end_count; end++) {
        ow_drawn_end form = ow_form_of(ends[end], 0.0);
        part->ends[end] = *ends[end];
        across = fmax(across, across_for(&form));
        bore = fmin(bore, bore_for(&form));
        length += length_of(&form);
    }
    bore = fmax(floor(2.0 * bore) / 2.0, 1000.0 * fmax(least_bore_m, 0.0));
    made.bore_mm = missing->is_plug ? 0.0 : bore;
    made.hexagon_mm = hexagon_over(across);
    made.length_mm = ceil(length + fmax(6.0, 0.45 * made.hexagon_mm)); /* metal for a spanner between */
    part->length_m = made.length_mm / 1000.0;
    part->hexagon_m = made.hexagon_mm / 1000.0;
    for (size_t end = 0; end < part->end_count; end++)
        part->leg_bore_m[end] = made.bore_mm / 1000.0;
    made.placed.anatomy = ow_anatomy_of_part(part);
    made.placed.pose = (ow_pose){{0.0, 0.0}, 0.0, 1.0, 1.0};
    return made;
}
