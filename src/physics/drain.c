/* SPDX-License-Identifier: MIT */
#include "oilway/drain.h"

#include <math.h>

#include "physics/root.h"

static const double pi = 3.14159265358979323846;
static const double laminar_up_to = 2000.0;

static bool run_in_range(const ow_drain_ask *ask)
{
    return ask->bore_m >= OW_BORE_LOW_M && ask->bore_m <= OW_BORE_HIGH_M && ask->slope_rad > 0.0 &&
           ask->slope_rad <= pi / 2.0 + 1e-9 && sin(ask->slope_rad) >= 1e-6 &&
           ask->liquid.density_kgm3 >= 100.0 && ask->liquid.density_kgm3 <= 5000.0 &&
           ask->liquid.dynamic_viscosity_pas >= 1e-5 && ask->liquid.dynamic_viscosity_pas <= 1e4;
}

static bool flow_in_range(double flow_m3s)
{
    return flow_m3s >= OW_DRAIN_FLOW_LOW_M3S && flow_m3s <= OW_FLOW_HIGH_M3S;
}

static double kinematic_m2s(const ow_liquid *liquid)
{
    return liquid->dynamic_viscosity_pas / liquid->density_kgm3;
}

/* Velocity balance of a section that is not laminar: f V^2 = 8 g R sin(slope), with f R e of the section. */
typedef struct turbulent_section {
    double hydraulic_radius_m;
    double drive_ms2; /* g sin(slope) */
    double viscosity_m2s;
    double laminar; /* f Re of the section at that depth */
} turbulent_section;

static double velocity_surplus(const void *data, double velocity_ms)
{
    const turbulent_section *section = data;
    double reynolds = 4.0 * section->hydraulic_radius_m * velocity_ms / section->viscosity_m2s;
    double factor = reynolds <= laminar_up_to ? section->laminar / reynolds
                                              : ow_friction_factor(reynolds, 0.0, section->laminar);
    return factor * velocity_ms * velocity_ms - 8.0 * section->drive_ms2 * section->hydraulic_radius_m;
}

/* The friction factor steps up by a seventh of a percent where the flow turns turbulent; the
 * bracket then gives the velocity at the step, so that capacity never falls with slope. */
static double capacity(const ow_drain_ask *ask, double depth)
{
    double star = ow_part_full_star_compact(depth);
    double area = ow_part_full_area(depth) * ask->bore_m * ask->bore_m;
    double perimeter = ow_part_full_perimeter(depth) * ask->bore_m;
    double viscosity = kinematic_m2s(&ask->liquid);
    double drive = OW_GRAVITY_MS2 * sin(ask->slope_rad);
    double laminar_m3s = star * drive * pow(ask->bore_m, 4) / viscosity;
    if (!(area > 0.0) || 4.0 * laminar_m3s / (perimeter * viscosity) <= laminar_up_to)
        return laminar_m3s;
    double radius = area / perimeter;
    turbulent_section section = {radius, drive, viscosity, 0.0};
    section.laminar = 32.0 * radius * radius * area / (star * pow(ask->bore_m, 4));
    double lowest = 0.5 * laminar_up_to * viscosity / (4.0 * radius), velocity = 0.0;
    if (!ow_root_find(velocity_surplus, &section, lowest, laminar_m3s / area, &velocity))
        return laminar_m3s;
    return area * velocity;
}

typedef struct depth_problem {
    const ow_drain_ask *ask;
    double depth;
} depth_problem;

static double flow_surplus(const void *data, double depth)
{
    const ow_drain_ask *ask = data;
    return capacity(ask, depth) - ask->flow_m3s;
}

ow_status ow_drain_capacity_m3s(const ow_drain_ask *ask, double depth, double *flow_m3s)
{
    if (!run_in_range(ask) || !(depth >= 0.0 && depth <= OW_PART_FULL_DEPTH_MAX))
        return OW_RANGE;
    *flow_m3s = depth > 0.0 ? capacity(ask, depth) : 0.0;
    return OW_OK;
}

ow_status ow_drain_run(const ow_drain_ask *ask, ow_drain_flow *flow)
{
    if (!run_in_range(ask) || !flow_in_range(ask->flow_m3s))
        return OW_RANGE;
    double viscosity = kinematic_m2s(&ask->liquid), bore = ask->bore_m;
    ow_drain_flow found = {0};
    found.star = ask->flow_m3s * viscosity / (OW_GRAVITY_MS2 * sin(ask->slope_rad) * pow(bore, 4));
    found.half_full_m3s = capacity(ask, 0.5);
    found.flooded = !ow_root_find(flow_surplus, ask, 0.0, OW_PART_FULL_DEPTH_MAX, &found.fill);
    if (found.flooded)
        found.fill = 1.0;
    found.depth_m = found.fill * bore;
    found.area_m2 = ow_part_full_area(found.fill) * bore * bore;
    found.velocity_ms = found.area_m2 > 0.0 ? ask->flow_m3s / found.area_m2 : 0.0;
    found.reynolds = found.fill > 0.0
                         ? 4.0 * ask->flow_m3s / (ow_part_full_perimeter(found.fill) * bore * viscosity)
                         : 0.0;
    found.turbulent = found.reynolds > laminar_up_to;
    *flow = found;
    return OW_OK;
}

static double bore_surplus(const void *data, double bore_m)
{
    ow_drain_ask ask = *(const ow_drain_ask *)data;
    ask.bore_m = bore_m;
    return capacity(&ask, 0.5) - ask.flow_m3s;
}

ow_status ow_drain_least_bore_m(const ow_drain_ask *ask, double *bore_m)
{
    double found;
    if (!run_in_range(ask) || !flow_in_range(ask->flow_m3s) ||
        !ow_root_find(bore_surplus, ask, 1e-6, OW_BORE_HIGH_M, &found))
        return OW_RANGE;
    *bore_m = found;
    return OW_OK;
}

static double slope_surplus(const void *data, double slope_rad)
{
    ow_drain_ask ask = *(const ow_drain_ask *)data;
    ask.slope_rad = slope_rad;
    return capacity(&ask, 0.5) - ask.flow_m3s;
}

ow_status ow_drain_least_slope_rad(const ow_drain_ask *ask, double *slope_rad)
{
    ow_drain_ask plumb = *ask;
    plumb.slope_rad = pi / 2.0;
    double found;
    if (!run_in_range(&plumb) || !flow_in_range(ask->flow_m3s))
        return OW_RANGE;
    if (!ow_root_find(slope_surplus, ask, 0.0, pi / 2.0, &found))
        return OW_NONE;
    *slope_rad = found;
    return OW_OK;
}

/* Drop inlets of road drainage, FHWA HEC-22 (from memory): weir coefficient 1.66 SI, orifice 0.67. */
double ow_pool_weir_m(double bore_m, double flow_m3s)
{
    return pow(flow_m3s / (1.66 * pi * bore_m), 2.0 / 3.0);
}

double ow_pool_orifice_m(double bore_m, double flow_m3s)
{
    double velocity = flow_m3s / (0.67 * 0.25 * pi * bore_m * bore_m);
    return velocity * velocity / (2.0 * OW_GRAVITY_MS2);
}

double ow_pool_least_bore_m(double flow_m3s, double limit_m)
{
    double weir = flow_m3s / (1.66 * pi * pow(limit_m, 1.5));
    double orifice = sqrt(flow_m3s / (0.67 * 0.25 * pi * sqrt(2.0 * OW_GRAVITY_MS2 * limit_m)));
    return fmax(weir, orifice);
}
