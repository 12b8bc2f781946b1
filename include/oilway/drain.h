/* SPDX-License-Identifier: MIT */
/*
 * Oil going home by gravity in a partly filled pipe: exact where it is laminar, by friction factor where it
 * is not; the pool over the housing's outlet; routes and their slopes; the head that crankcase pressure
 * needs. SI throughout; no allocation. Formulas, sources and marks: docs/physics.md.
 */
#ifndef OILWAY_DRAIN_H
#define OILWAY_DRAIN_H

#include "oilway/hydraulics.h"

/* Limits that a drain is held to; assumptions and common practice, see docs/physics.md. */
#define OW_DRAIN_FILL_LIMIT 0.5     /* of the bore, so that air has its way (common practice) */
#define OW_DRAIN_POOL_LIMIT_M 0.015 /* over the outlet (assumption) */
#define OW_DRAIN_AERATION 2.0       /* volume of froth over volume of oil (assumption) */
#define OW_DRAIN_AERATION_HIGH 10.0 /* worked with up to here */
#define OW_DRAIN_BORE_M 0.015       /* least inside diameter (common practice) */
#define OW_DRAIN_SLOPE_WARN_RAD 0.2617993877991494 /* 15 degrees (common practice) */
#define OW_DRAIN_FLOW_LOW_M3S 1.0e-12
#define OW_DRAIN_HEAD_MARGIN_M 0.050 /* over what pressure and friction need (assumption) */

/* ---- the section --------------------------------------------------------------------------- */

/* Depth of the fullest unique flow: beyond it the pipe carries less and the depth is not unique. */
#define OW_PART_FULL_DEPTH_MAX 0.8613
#define OW_PART_FULL_STAR_MAX 0.031252

/* Wetted area over bore squared, and wetted perimeter over bore; depth over bore 0..1. */
double ow_part_full_area(double depth);
double ow_part_full_perimeter(double depth);
/*
 * Q* = Q nu / (g sin(slope) bore^4) of laminar flow with a free surface, depth over bore 0..1, by the exact
 * integral in bipolar coordinates. 0 at depth 0, pi/256 at 1/2, pi/128 at 1.
 */
double ow_part_full_star(double depth);
/* The same by a polynomial within 0.015 % for 0.005 <= depth <= 0.96; what the solver uses. */
double ow_part_full_star_compact(double depth);

/* ---- one straight run ---------------------------------------------------------------------- */

/* A run and what is asked of it. Slope positive downhill, up to a right angle. */
typedef struct ow_drain_ask {
    double bore_m;
    double slope_rad;
    double flow_m3s; /* of the froth: oil times aeration */
    ow_liquid liquid;
} ow_drain_ask;

typedef struct ow_drain_flow {
    double star; /* Q* */
    double fill; /* depth over bore; 1 if flooded */
    double depth_m;
    double area_m2;
    double velocity_ms;
    double reynolds;      /* 4 Q / (wetted perimeter nu) */
    bool turbulent;       /* Re > 2000 */
    bool flooded;         /* it carries more than the pipe can with a free surface */
    double half_full_m3s; /* what it carries at half full, of froth */
} ow_drain_flow;

/*
 * Normal depth: where friction balances the slope, in a run long enough. OW_RANGE, untouched: bore outside
 * OW_BORE_LOW..HIGH, slope not in 0 < slope <= pi/2, flow not in OW_DRAIN_FLOW_LOW_M3S..OW_FLOW_HIGH_M3S, or
 * a liquid that is none. More slope, more bore and thinner liquid never fill deeper.
 */
ow_status ow_drain_run(const ow_drain_ask *ask, ow_drain_flow *flow);
/* What a run carries at a depth over bore, 0..OW_PART_FULL_DEPTH_MAX, m3/s. OW_RANGE as above (flow unused).
 */
ow_status ow_drain_capacity_m3s(const ow_drain_ask *ask, double depth, double *flow_m3s);
/* The bore that carries the flow half full at that slope. OW_RANGE if none up to OW_BORE_HIGH_M does. */
ow_status ow_drain_least_bore_m(const ow_drain_ask *ask, double *bore_m);
/* The slope at which that bore carries the flow half full. OW_NONE if even a plumb one does not. */
ow_status ow_drain_least_slope_rad(const ow_drain_ask *ask, double *slope_rad);

/* ---- the housing's outlet ------------------------------------------------------------------ */

/* Depth of the pool over a round outlet, as a weir around its edge and as an orifice; the larger governs.
 * Flow
 * >= 0, bore > 0. */
double ow_pool_weir_m(double bore_m, double flow_m3s);
double ow_pool_orifice_m(double bore_m, double flow_m3s);
/* Bore at which the deeper of the two is limit_m. */
double ow_pool_least_bore_m(double flow_m3s, double limit_m);

/* ---- routes -------------------------------------------------------------------------------- */

#define OW_ROUTE_POINTS_MAX 64

typedef struct ow_point { /* z up */
    double x_m, y_m, z_m;
} ow_point;

typedef struct ow_drain_segment {
    double bore_m;
    double length_m;  /* of the run */
    double slope_rad; /* positive downhill */
} ow_drain_segment;

/* Segments between points, all of one bore; segments takes count - 1. OW_RANGE: fewer than 2 or too many
 * points, one that is not finite or further than OW_LENGTH_HIGH_M, or two in one place (*wrong: the later
 * one). */
ow_status ow_route_segments(const ow_point *points, size_t count, double bore_m, ow_drain_segment *segments,
                            size_t *wrong);

typedef enum ow_segment_fault {                         /* bits */
                                OW_SEGMENT_FLAT = 1,    /* level or rising: oil does not leave */
                                OW_SEGMENT_SAG = 2,     /* a low point before it: it rises after falling, and
                                                           holds a slug of oil */
                                OW_SEGMENT_NARROWS = 4, /* its bore is less than that before it */
                                OW_SEGMENT_SHALLOW = 8, /* less than 15 degrees */
                                OW_SEGMENT_FILL = 16,   /* more than half full, or flooded */
                                OW_SEGMENT_BORE = 32    /* less than 15 mm inside */
} ow_segment_fault;

typedef struct ow_segment_flow {
    unsigned faults;    /* ow_segment_fault bits */
    ow_drain_flow flow; /* zeroed but for flooded where the segment is flat */
} ow_segment_flow;

/*
 * Each segment of a route from the outlet down, at its own slope. outlet_bore_m: the first is held against
 * it; 0 = not known. *governing is the segment that fills deepest. OW_RANGE as ow_drain_run, or no segment.
 */
ow_status ow_drain_route(const ow_drain_segment *segments, size_t count, double outlet_bore_m,
                         double flow_m3s, const ow_liquid *liquid, ow_segment_flow *flows, size_t *governing);

/* ---- crankcase ----------------------------------------------------------------------------- */

/* Head of liquid that stands for a pressure, m (may be negative). */
double ow_head_m(double pressure_pa, const ow_liquid *liquid);
/* Friction of a route whose pipes run full, Pa: each segment at its own bore. flow > 0, bores > 0. */
double ow_drain_full_loss_pa(const ow_drain_segment *segments, size_t count, double flow_m3s,
                             const ow_liquid *liquid);
/*
 * Least drop from outlet to sump level where the drain's end is drowned, so that gas cannot pass: pressure
 * difference, friction of the full pipe, and OW_DRAIN_HEAD_MARGIN_M. Pressures gauge.
 */
double ow_drowned_drain_drop_m(double crankcase_pa, double housing_pa, double friction_pa,
                               const ow_liquid *liquid);

#endif
