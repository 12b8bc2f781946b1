/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "oilway/drain.h"

static const double pi = 3.14159265358979323846;

static bool point_in_range(const ow_point *point)
{
    return fabs(point->x_m) <= OW_LENGTH_HIGH_M && fabs(point->y_m) <= OW_LENGTH_HIGH_M &&
           fabs(point->z_m) <= OW_LENGTH_HIGH_M;
}

ow_status ow_route_segments(const ow_point *points, size_t count, double bore_m, ow_drain_segment *segments,
                            size_t *wrong)
{
    *wrong = 0;
    if (count < 2 || count > OW_ROUTE_POINTS_MAX)
        return OW_RANGE;
    for (size_t i = 0; i < count; i++) {
        *wrong = i;
        if (!point_in_range(&points[i]))
            return OW_RANGE;
        if (i == 0)
            continue;
        double along = hypot(points[i].x_m - points[i - 1].x_m, points[i].y_m - points[i - 1].y_m);
        double down = points[i - 1].z_m - points[i].z_m;
        if (hypot(along, down) < 1e-6)
            return OW_RANGE;
        segments[i - 1] = (ow_drain_segment){bore_m, hypot(along, down), atan2(down, along)};
    }
    return OW_OK;
}

/* Faults that need no reckoning: those of the shape. */
static unsigned shape_faults(const ow_drain_segment *segments, size_t index, double outlet_bore_m)
{
    const ow_drain_segment *segment = &segments[index];
    double bore_before = index > 0 ? segments[index - 1].bore_m : outlet_bore_m;
    unsigned faults = 0;
    if (sin(segment->slope_rad) < 1e-6) {
        faults |= OW_SEGMENT_FLAT;
        for (size_t i = 0; i < index; i++)
            if (segment->slope_rad < -1e-6 && segments[i].slope_rad > 1e-6)
                faults |= OW_SEGMENT_SAG;
    } else if (segment->slope_rad < OW_DRAIN_SLOPE_WARN_RAD - 1e-9) {
        faults |= OW_SEGMENT_SHALLOW;
    }
    if (segment->bore_m < bore_before - 1e-6)
        faults |= OW_SEGMENT_NARROWS;
    if (segment->bore_m < OW_DRAIN_BORE_M - 1e-9)
        faults |= OW_SEGMENT_BORE;
    return faults;
}

static ow_status segment_flow(const ow_drain_segment *segment, double flow_m3s, const ow_liquid *liquid,
                              ow_segment_flow *flow)
{
    if (flow->faults & OW_SEGMENT_FLAT) {
        if (!(fabs(segment->slope_rad) <= pi / 2.0 + 1e-9))
            return OW_RANGE;
        flow->flow.flooded = true;
        flow->flow.fill = 1.0;
        flow->flow.depth_m = segment->bore_m;
        return OW_OK;
    }
    ow_drain_ask ask = {segment->bore_m, segment->slope_rad, flow_m3s, *liquid};
    ow_status status = ow_drain_run(&ask, &flow->flow);
    if (status == OW_OK && (flow->flow.flooded || flow->flow.fill > OW_DRAIN_FILL_LIMIT))
        flow->faults |= OW_SEGMENT_FILL;
    return status;
}

ow_status ow_drain_route(const ow_drain_segment *segments, size_t count, double outlet_bore_m,
                         double flow_m3s, const ow_liquid *liquid, ow_segment_flow *flows, size_t *governing)
{
    if (count == 0)
        return OW_RANGE;
    size_t deepest = 0;
    for (size_t i = 0; i < count; i++) {
        flows[i] = (ow_segment_flow){0};
        flows[i].faults = shape_faults(segments, i, outlet_bore_m);
        ow_status status = segment_flow(&segments[i], flow_m3s, liquid, &flows[i]);
        if (status != OW_OK)
            return status;
        if (flows[i].flow.fill > flows[deepest].flow.fill)
            deepest = i;
    }
    *governing = deepest;
    return OW_OK;
}

double ow_head_m(double pressure_pa, const ow_liquid *liquid)
{
    return pressure_pa / (liquid->density_kgm3 * OW_GRAVITY_MS2);
}

/* Darcy and Weisbach, the pipes smooth; laminar, as drains are, it is Hagen and Poiseuille. */
double ow_drain_full_loss_pa(const ow_drain_segment *segments, size_t count, double flow_m3s,
                             const ow_liquid *liquid)
{
    double sum_pa = 0.0;
    for (size_t i = 0; i < count; i++) {
        double bore_m = segments[i].bore_m;
        double velocity_ms = flow_m3s / (pi / 4.0 * bore_m * bore_m);
        double reynolds = liquid->density_kgm3 * velocity_ms * bore_m / liquid->dynamic_viscosity_pas;
        ow_loss friction = ow_pipe_loss(reynolds, segments[i].length_m / bore_m, 0.0);
        sum_pa += ow_loss_pa(friction, liquid, bore_m, velocity_ms);
    }
    return sum_pa;
}

double ow_drowned_drain_drop_m(double crankcase_pa, double housing_pa, double friction_pa,
                               const ow_liquid *liquid)
{
    return ow_head_m(crankcase_pa - housing_pa + friction_pa, liquid) + OW_DRAIN_HEAD_MARGIN_M;
}
