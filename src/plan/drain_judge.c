/* SPDX-License-Identifier: MIT */
/* What is to be said of one return: its run, its fill, the outlet, the sump, the hose. */
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/format.h"
#include "oilway/hose_judge.h"
#include "plan/planning.h"

#define DEGREES_PER_RADIAN 57.295779513082320876798154814105
#define CRANKCASE_WORN_PA 2500.0 /* common practice, from memory */
#define CRANKCASE_HIGH_PA 1000.0
#define CRANKCASE_ASSUMED_PA 500.0
#define NARROWER_M 0.0001

typedef struct return_judging {
    ow_planning *planning;
    ow_plan_return *home;
    const char *port;
    ow_severity flow_severity; /* of what speaks from flow and froth: milder where they are assumed */
    ow_status status;
} return_judging;

static void say(return_judging *judging, const char *rule, ow_severity severity, const char *where,
                const char *format, ...) __attribute__((format(printf, 5, 6)));

static void say(return_judging *judging, const char *rule, ow_severity severity, const char *where,
                const char *format, ...)
{
    char message[512];
    va_list arguments;
    if (judging->status != OW_OK)
        return;
    va_start(arguments, format);
    (void)ow_format(message, sizeof message, format, arguments);
    va_end(arguments);
    judging->status = ow_findings_add(&judging->home->findings, rule, severity, where, NULL, "%s", message);
}

/* What a segment is held against: the bore before it; behind a hose, whose tail always stands a wall's
 * thickness narrower in it, the narrowest that the oil has come through. */
static double bore_before(const return_judging *judging, size_t index)
{
    const ow_plan_return *home = judging->home;
    double least_m = home->outlet->bore_m > 0.0 ? home->outlet->bore_m : 0.0;
    if (index == 0)
        return least_m;
    const ow_part *part = ow_catalog_part(judging->planning->catalog, home->segment_parts[index - 1]);
    if (part == NULL || !ow_part_is_hose(part))
        return home->segments[index - 1].bore_m;
    for (size_t before = 0; before < index; before++) {
        if (least_m <= 0.0 || home->segments[before].bore_m < least_m)
            least_m = home->segments[before].bore_m;
    }
    return least_m;
}

static void judge_shape(return_judging *judging, size_t index, const char *where)
{
    const ow_plan_return *home = judging->home;
    const ow_drain_segment *segment = &home->segments[index];
    unsigned faults = home->hot[index].faults;
    double slope_deg = segment->slope_rad * DEGREES_PER_RADIAN;
    double least_deg = judging->planning->job->slope_rad.said
                           ? judging->planning->job->slope_rad.value * DEGREES_PER_RADIAN
                           : OW_DRAIN_SLOPE_WARN_RAD * DEGREES_PER_RADIAN;
    if (faults & OW_SEGMENT_SAG)
        say(judging, "drain-sag", OW_ERROR, where, "it rises again by %.1f degrees behind a low point",
            -slope_deg);
    else if (faults & OW_SEGMENT_FLAT)
        say(judging, "drain-level", OW_ERROR, where, "its slope is %.1f degrees: oil does not leave",
            slope_deg);
    else if (slope_deg < least_deg)
        say(judging, "drain-slope", judging->planning->job->slope_rad.said ? OW_ERROR : OW_WARNING, where,
            "its slope is %.1f degrees; %.0f or more are wanted", slope_deg, least_deg);
}

/* One cause, one finding: all that is under 15 mm together, the narrowest told; what narrows is told where it
 * narrows most, and not besides. */
static void judge_bores(return_judging *judging)
{
    const ow_plan_return *home = judging->home;
    size_t narrowest = 0, worst = 0;
    double most_m = 0.0;
    for (size_t index = 0; index < home->segment_count; index++) {
        double by_m = bore_before(judging, index) - home->segments[index].bore_m;
        if (home->segments[index].bore_m < home->segments[narrowest].bore_m - NARROWER_M)
            narrowest = index;
        if (by_m > most_m) {
            most_m = by_m;
            worst = index;
        }
    }
    if (home->hot[narrowest].faults & OW_SEGMENT_BORE)
        say(judging, "drain-bore", OW_WARNING, judging->port,
            "the true bore of %s is %.1f mm; 15 mm or more are wanted", home->segment_parts[narrowest],
            home->segments[narrowest].bore_m * 1e3);
    else if (most_m > NARROWER_M)
        say(judging, "drain-narrows", OW_WARNING, judging->port, "%s narrows it from %.1f mm to %.1f mm",
            home->segment_parts[worst], bore_before(judging, worst) * 1e3,
            home->segments[worst].bore_m * 1e3);
}

static double fill_limit(const return_judging *judging)
{
    const ow_said *said = &judging->planning->job->fill;
    return said->said ? said->value : OW_DRAIN_FILL_LIMIT;
}

static void judge_fill(return_judging *judging, size_t index, const char *where)
{
    const ow_plan_return *home = judging->home;
    const ow_drain_flow *hot = &home->hot[index].flow;
    const ow_drain_flow *cold = &home->cold[index].flow;
    double limit = fill_limit(judging);
    if (home->hot[index].faults & OW_SEGMENT_FLAT)
        return;
    if (hot->flooded)
        say(judging, "drain-flooded", judging->flow_severity, where,
            "it is flooded hot: %.2f L/min of froth, half full it carries %.2f",
            home->flow_m3s * 60000.0 * judging->planning->plan->drain.aeration, hot->half_full_m3s * 60000.0);
    else if (hot->fill > limit)
        say(judging, "drain-fill", judging->flow_severity, where,
            "it runs %.0f %% full hot; %.0f %% leaves air its way", hot->fill * 100.0, limit * 100.0);
    else if (cold->flooded || cold->fill > limit)
        say(judging, "drain-fill", OW_WARNING, where, "cold it runs %s%.0f %% full; hot %.0f %%",
            cold->flooded ? "over " : "", cold->fill * 100.0, hot->fill * 100.0);
}

static void judge_segments(return_judging *judging)
{
    for (size_t index = 0; index < judging->home->segment_count; index++) {
        char where[128];
        snprintf(where, sizeof where, "drain to %.40s, segment %zu (%.40s)", judging->home->port->name,
                 index + 1, judging->home->segment_parts[index]);
        judge_shape(judging, index, where);
        judge_fill(judging, index, where);
    }
    judge_bores(judging);
    if (judging->home->pool_m > OW_DRAIN_POOL_LIMIT_M)
        say(judging, "drain-pool", judging->flow_severity, judging->port,
            "oil stands %.0f mm over the outlet at %.1f L/min of froth; 15 mm is the limit assumed",
            judging->home->pool_m * 1e3,
            judging->home->flow_m3s * judging->planning->plan->drain.aeration * 60000.0);
}

/* Where the return enters, and how high the outlet stands, against the sump's oil and the crankcase's
 * pressure. */
static void judge_sump(return_judging *judging)
{
    const ow_job_drain *drain = &judging->planning->job->drain;
    ow_plan_return *home = judging->home;
    double entry_m = home->points[home->point_count - 1].z_m;
    double crankcase_pa = drain->crankcase_pa.said ? drain->crankcase_pa.value : CRANKCASE_ASSUMED_PA;
    if (crankcase_pa > CRANKCASE_WORN_PA)
        say(judging, "crankcase-pressure", OW_ERROR, judging->port,
            "the crankcase stands at %.2f kPa: a worn engine's", crankcase_pa / 1e3);
    else if (crankcase_pa > CRANKCASE_HIGH_PA)
        say(judging, "crankcase-pressure", OW_WARNING, judging->port,
            "the crankcase stands at %.2f kPa; 1 is healthy", crankcase_pa / 1e3);
    if (!drain->oil_level_m.said) {
        say(judging, "oil-level-unknown", OW_NOTE, judging->port,
            "the sump's oil level is not given: whether the return enters above it is not checked");
        return;
    }
    double level_m = drain->oil_level_m.value;
    if (entry_m <= level_m && home->straight && !home->port->has_position) /* the way is a guess: it warns */
        say(judging, "drain-drowned", OW_WARNING, judging->port,
            "by the way that is assumed the return enters %.0f mm below the sump's oil: give its route",
            (level_m - entry_m) * 1e3);
    else if (entry_m <= level_m)
        say(judging, "drain-drowned", OW_ERROR, judging->port,
            "the return enters %.0f mm below the sump's oil", (level_m - entry_m) * 1e3);
    ow_liquid liquid;
    const ow_feed_state *hot = &judging->planning->states[judging->planning->hot_rev];
    home->level_said = true;
    home->entry_over_m = entry_m - level_m;
    home->outlet_over_m = -level_m;
    if (ow_oil_liquid(&judging->planning->oil, hot->oil_c, &liquid) != OW_OK)
        return;
    double friction_pa = home->friction_head_m * liquid.density_kgm3 * OW_GRAVITY_MS2;
    double needed_m = ow_drowned_drain_drop_m(crankcase_pa, 0.0, friction_pa, &liquid);
    home->head_needed_m = needed_m;
    if (-level_m < needed_m)
        say(judging, "drain-head", drain->crankcase_pa.said ? OW_ERROR : OW_WARNING, judging->port,
            "the outlet stands %.0f mm %s the sump's oil; %.2f kPa in the crankcase needs %.0f mm, "
            "%.0f of them for friction",
            fabs(level_m) * 1e3, level_m > 0.0 ? "below" : "above", crankcase_pa / 1e3, needed_m * 1e3,
            home->friction_head_m * 1e3);
}

/* What a hose is made of, against the oil's heat. A layout's hose is judged for the rest by its check. */
static void judge_hose(return_judging *judging, const ow_hose_material *material, unsigned told)
{
    const ow_feed_state *hot = &judging->planning->states[judging->planning->hot_rev];
    ow_hose_service service = {true, false, 0.0, hot->oil_c};
    if (material != NULL && judging->status == OW_OK)
        judging->status = ow_hose_judge(material, &service, told, hot->assumed ? OW_WARNING : OW_ERROR,
                                        judging->port, &judging->home->findings);
}

static void judge_hoses(return_judging *judging)
{
    const char *asked = judging->planning->job->drain.hose;
    const ow_layout *layout = judging->home->layout;
    /* A class that does not stand oil is told and not used. */
    const ow_hose_material *material = asked != NULL ? ow_hose_material_find(asked) : NULL;
    if (material != NULL && (layout == NULL || material->oil == OW_STANDS_NOT)) {
        judge_hose(judging, material, 0);
        return;
    }
    for (size_t index = 0; layout != NULL && index < layout->node_count; index++) {
        const ow_part *part = layout->nodes[index].part;
        if (part != NULL)
            judge_hose(judging, ow_part_hose_material(part),
                       OW_HOSE_FLUID | OW_HOSE_FLUID_LIMITED | OW_HOSE_PRESSURE);
    }
}

/* Least and most of what is judged, over the corners of what is not sure. */
typedef struct band {
    double fill_low, fill_high;
    double pool_low_m, pool_high_m;
} band;

/* One corner. A bearing lets more of thinner oil through: flow times viscosity stays, as of a laminar load,
 * unless the flow was measured. */
static void widen(const ow_planning *planning, const ow_plan_return *home, const ow_liquid *as_is,
                  double off_m, double off_k, band *found)
{
    const ow_drain_segment *segment = &home->segments[home->governing];
    double at_c = planning->states[planning->hot_rev].oil_c + off_k;
    ow_drain_ask ask = {segment->bore_m + off_m, segment->slope_rad, 0.0, *as_is};
    ow_drain_flow flow;
    at_c = fmin(fmax(at_c, OW_OIL_TEMPERATURE_LOW_C), OW_OIL_TEMPERATURE_HIGH_C);
    if (ow_oil_liquid(&planning->oil, at_c, &ask.liquid) != OW_OK)
        return;
    double thinner = as_is->dynamic_viscosity_pas / ask.liquid.dynamic_viscosity_pas;
    ask.flow_m3s = home->flow_m3s * planning->plan->drain.aeration *
                   (planning->job->drain.flow_m3s.said ? 1.0 : thinner);
    double outlet_m = home->outlet_bore_m + off_m;
    double pool_m = fmax(ow_pool_weir_m(outlet_m, ask.flow_m3s), ow_pool_orifice_m(outlet_m, ask.flow_m3s));
    found->pool_low_m = fmin(found->pool_low_m, pool_m);
    found->pool_high_m = fmax(found->pool_high_m, pool_m);
    if (ow_drain_run(&ask, &flow) != OW_OK)
        return;
    found->fill_low = fmin(found->fill_low, flow.fill);
    found->fill_high = fmax(found->fill_high, flow.fill);
}

/* Whether oil 10 K or bores 0.2 mm off would change whether it runs too full, or stands too deep. */
ow_status ow_plan_return_sureness(ow_planning *planning, ow_plan_return *home)
{
    const ow_job *job = planning->job;
    double limit = job->fill.said ? job->fill.value : OW_DRAIN_FILL_LIMIT;
    band found = {HUGE_VAL, 0.0, HUGE_VAL, 0.0};
    ow_liquid as_is;
    ow_status status = ow_oil_liquid(&planning->oil, planning->states[planning->hot_rev].oil_c, &as_is);
    if (status != OW_OK)
        return status;
    for (int warmer = -1; warmer <= 1; warmer++) {
        for (int wider = -1; wider <= 1; wider++)
            widen(planning, home, &as_is, wider * OW_UNSURE_BORE_M, warmer * OW_UNSURE_TEMPERATURE_K, &found);
    }
    if (found.fill_low <= limit && found.fill_high > limit)
        status = ow_findings_add(
            &home->findings, "unsure", OW_NOTE, home->port->name, NULL,
            "oil 10 C or bores 0.2 mm off would change the verdict: %.0f to %.0f %% full against %.0f %%",
            found.fill_low * 100.0, found.fill_high * 100.0, limit * 100.0);
    if (status == OW_OK && found.pool_low_m <= OW_DRAIN_POOL_LIMIT_M &&
        found.pool_high_m > OW_DRAIN_POOL_LIMIT_M)
        status = ow_findings_add(
            &home->findings, "unsure", OW_NOTE, home->port->name, NULL,
            "oil 10 C or bores 0.2 mm off would change the verdict: %.1f to %.1f mm over the outlet against "
            "%.0f mm",
            found.pool_low_m * 1e3, found.pool_high_m * 1e3, OW_DRAIN_POOL_LIMIT_M * 1e3);
    return status;
}

ow_status ow_plan_return_judge(ow_planning *planning, ow_plan_return *home)
{
    const ow_job_drain *drain = &planning->job->drain;
    bool given = drain->flow_m3s.said && drain->aeration.said;
    return_judging judging = {
        planning, home, ow_planning_words(planning, "%s:%s", planning->job->engine->id, home->port->name),
        given ? OW_ERROR : OW_WARNING, OW_OK};
    if (judging.port == NULL)
        return OW_MEMORY;
    if (home->reckoned)
        judge_segments(&judging);
    judge_sump(&judging);
    judge_hoses(&judging);
    return judging.status;
}
