/* SPDX-License-Identifier: MIT */
/* The drain of a job: every return that the engine offers, resolved as wide as it can be had, reckoned,
 * ranked. */
#include <math.h>
#include <string.h>

#include "oilway/hose_material.h"
#include "plan/planning.h"

#define SLACK 1.07 /* of the way: 5 to 8 % between fixed ends, a navy's engine mechanics manual */
#define CUT_STEP_M 0.005
#define NEVER_NEARER_M 0.03

const char *ow_plan_work_words(ow_plan_work work)
{
    static const char *const words[] = {
        [OW_WORK_NONE] = "the hose goes straight on",
        [OW_WORK_SCREW] = "screws in",
        [OW_WORK_BOLT] = "bolts on",
        [OW_WORK_WELD] = "to be welded, sump or cover off",
    };
    return words[work];
}

static bool is_asked_for(const ow_job *job, const ow_port *port)
{
    for (size_t index = 0; index < job->drain.to_count; index++) {
        if (strcmp(job->drain.to[index], port->name) == 0)
            return true;
    }
    return job->drain.to_count == 0;
}

/* A class that does not stand oil is judged, not used: the rest is resolved with what does. */
static bool stands_oil(const char *hose_class)
{
    const ow_hose_material *material = hose_class != NULL ? ow_hose_material_find(hose_class) : NULL;
    return hose_class != NULL && (material == NULL || material->oil != OW_STANDS_NOT);
}

static ow_plan_work work_of(const ow_end *port)
{
    switch (port->form) {
    case OW_FORM_WELD:
        return OW_WORK_WELD;
    case OW_FORM_FLANGE:
        return OW_WORK_BOLT;
    case OW_FORM_HOSE:
    case OW_FORM_TAIL:
    case OW_FORM_BARB:
    case OW_FORM_BEAD:
    case OW_FORM_TUBE:
        return OW_WORK_NONE;
    case OW_FORM_THREAD:
    case OW_FORM_DASH:
    case OW_FORM_TUBE_NUT:
    case OW_FORM_BANJO:
    case OW_FORM_COUNT:
        break;
    }
    return OW_WORK_SCREW;
}

/* As wide as the outlet and never narrower on the way down; else 15 mm; else as it comes, and then it is
 * said. */
static ow_status answer(ow_planning *planning, ow_ask_words *words, const ow_planning_hose *hose,
                        ow_plan_return *home)
{
    double outlet_m = home->outlet->bore_m;
    const double bores_m[] = {outlet_m > 0.0 ? outlet_m : OW_DRAIN_BORE_M,
                              outlet_m > OW_DRAIN_BORE_M ? OW_DRAIN_BORE_M : 0.0, 0.0};
    for (size_t index = 0; index < sizeof bores_m / sizeof bores_m[0]; index++) {
        bool last = bores_m[index] <= 0.0;
        words->bore = last ? NULL : ow_planning_words(planning, "%.9g m", bores_m[index]);
        if (!last && words->bore == NULL)
            return OW_MEMORY;
        ow_status status =
            ow_planning_answer_hose(planning, words, hose, true, &home->asks, &home->answers, &home->layout);
        if (status != OW_OK || home->layout != NULL || last)
            return status;
        ow_answers_done(&home->answers);
        ow_ask_set_done(&home->asks);
    }
    return OW_OK;
}

static ow_status resolve(ow_planning *planning, ow_plan_return *home)
{
    const ow_job *job = planning->job;
    const char *from = ow_planning_words(planning, "%s:%s", home->turbo->id, home->outlet->name);
    const char *to = ow_planning_words(planning, "%s:%s", job->engine->id, home->port->name);
    if (from == NULL || to == NULL)
        return OW_MEMORY;
    ow_ask_words words = ow_planning_ask(planning, from, to);
    double way_m = fmax(ow_plan_drain_length_m(home), NEVER_NEARER_M);
    ow_planning_hose hose = {stands_oil(job->drain.hose) ? job->drain.hose : NULL,
                             ceil(way_m * SLACK / CUT_STEP_M - 1e-9) * CUT_STEP_M,
                             way_m,
                             HUGE_VAL,
                             true,
                             0};
    ow_status status = ow_planning_choose_hose(planning, &hose, &words);
    if (status == OW_OK)
        status = answer(planning, &words, &hose, home);
    home->answered = status == OW_OK;
    if (status == OW_OK)
        status = ow_planning_judge_answer(planning, &home->answers, to, &home->findings);
    return status;
}

static ow_status say_not_reckoned(ow_status why, ow_plan_return *home)
{
    if (why == OW_LIMIT)
        return ow_findings_add(
            &home->findings, "not-reckoned", OW_WARNING, home->port->name, "Give the route by fewer points.",
            "the drain is not reckoned: route and parts make more than %d runs", OW_ROUTE_POINTS_MAX);
    return ow_findings_add(
        &home->findings, "not-reckoned", OW_WARNING, home->port->name, NULL,
        "the drain is not reckoned: a bore is not said or a figure lies outside what the formulas can "
        "work in");
}

static ow_status make_return(ow_planning *planning, ow_plan_return *home)
{
    home->findings = ow_findings_new(planning->context);
    home->work = work_of(&home->port->end);
    ow_plan_drain_route(planning, home);
    ow_status status = resolve(planning, home);
    if (status == OW_OK && home->layout != NULL) {
        status = ow_plan_drain_reckon(planning, home);
        if (status == OW_RANGE || status == OW_LIMIT)
            status = say_not_reckoned(status, home);
    }
    if (status == OW_OK)
        status = ow_plan_return_judge(planning, home);
    if (status == OW_OK && home->reckoned)
        status = ow_plan_return_sureness(planning, home);
    home->ok = !ow_findings_have(&home->findings, OW_ERROR);
    home->clean = !ow_findings_have(&home->findings, OW_WARNING);
    return status;
}

static bool is_before(const ow_plan_return *a, const ow_plan_return *b)
{
    if (a->ok != b->ok)
        return a->ok;
    if ((a->layout != NULL) != (b->layout != NULL))
        return a->layout != NULL;
    if (a->clean != b->clean)
        return a->clean;
    if (a->work != b->work)
        return a->work < b->work;
    if (a->layout == NULL)
        return false;
    size_t a_parts = ow_layout_part_count(a->layout);
    size_t b_parts = ow_layout_part_count(b->layout);
    if (a_parts != b_parts)
        return a_parts < b_parts;
    return (a->reckoned ? a->margin : 0.0) > (b->reckoned ? b->margin : 0.0);
}

/* Returns of one outlet are put in order among themselves; insertion keeps equals as the engine lists them.
 */
static void rank(ow_plan_return *returns, size_t count)
{
    for (size_t index = 1; index < count; index++) {
        for (size_t at = index; at > 0 && is_before(&returns[at], &returns[at - 1]); at--) {
            ow_plan_return moved = returns[at];
            returns[at] = returns[at - 1];
            returns[at - 1] = moved;
        }
    }
}

static ow_status make_outlet(ow_planning *planning, const ow_machine *turbo, const ow_port *outlet,
                             size_t number)
{
    ow_plan_drain *drain = &planning->plan->drain;
    const ow_machine *engine = planning->job->engine;
    size_t first = drain->return_count;
    ow_status status = OW_OK;
    for (size_t index = 0; index < engine->port_count && status == OW_OK; index++) {
        const ow_port *port = &engine->ports[index];
        if (port->circuit != OW_DRAIN || !is_asked_for(planning->job, port) ||
            drain->return_count == OW_PLAN_RETURNS)
            continue;
        ow_plan_return *home = &drain->returns[drain->return_count++];
        home->turbo = turbo;
        home->outlet = outlet;
        home->outlet_number = number;
        home->port = port;
        status = make_return(planning, home);
    }
    rank(&drain->returns[first], drain->return_count - first);
    if (status == OW_OK && drain->return_count == first)
        return ow_findings_add(&planning->plan->findings, "no-return", OW_ERROR, engine->id, NULL,
                               "%s offers no return for the oil of %s", engine->id, turbo->id);
    return status;
}

/* Whether the feed brings more than the returns that are taken carry home. */
static ow_status say_verdict(ow_planning *planning)
{
    const ow_plan_drain *drain = &planning->plan->drain;
    ow_text text = ow_text_new(planning->context);
    bool any = false;
    for (size_t index = 0; index < drain->return_count; index++) {
        const ow_plan_return *home = &drain->returns[index];
        if (!home->taken || !home->reckoned)
            continue;
        ow_text_format(&text, "%s%s %s: half full it carries %.1f times what comes hot, %.1f times cold",
                       any ? "; " : "",
                       home->margin < 1.0 ? "too much for the run to" : "not too much for the run to",
                       home->port->name, home->margin, home->cold_margin);
        any = true;
    }
    const char *words = ow_arena_keep(&planning->arena, &text);
    planning->plan->feed.drain_verdict = any ? words : NULL;
    return words == NULL ? OW_MEMORY : OW_OK;
}

ow_status ow_plan_drain_make(ow_planning *planning)
{
    ow_plan_drain *drain = &planning->plan->drain;
    const ow_job *job = planning->job;
    ow_status status = OW_OK;
    size_t number = 0;
    drain->returns = ow_arena_get_array(&planning->arena, OW_PLAN_RETURNS, sizeof *drain->returns);
    if (drain->returns == NULL)
        return OW_MEMORY;
    drain->aeration = ow_planning_value(planning, &job->drain.aeration, OW_DRAIN_AERATION,
                                        "froth over oil in the drain", 1.0, "volumes", OW_MARK_ASSUMED,
                                        "half gas by volume; no published figure was found");
    if (job->turbo_count > 1)
        ow_planning_assume(planning, OW_MARK_ASSUMED, "places of the turbos",
                           "the engine's positions and a route are taken to hold for each", "%zu turbos",
                           job->turbo_count);
    for (size_t turbo = 0; turbo < job->turbo_count && status == OW_OK; turbo++) {
        size_t before = number;
        for (size_t index = 0; index < job->turbos[turbo]->port_count && status == OW_OK; index++) {
            if (job->turbos[turbo]->ports[index].circuit == OW_DRAIN)
                status =
                    make_outlet(planning, job->turbos[turbo], &job->turbos[turbo]->ports[index], number++);
        }
        if (status == OW_OK && number == before)
            status = ow_findings_add(&planning->plan->findings, "outlet-unknown", OW_WARNING,
                                     job->turbos[turbo]->id, NULL,
                                     "the record of %s names no oil outlet, so no drain is planned for it",
                                     job->turbos[turbo]->id);
    }
    if (status == OW_OK)
        status = ow_plan_drain_take(planning);
    if (status == OW_OK)
        status = say_verdict(planning);
    return status == OW_OK ? ow_plan_drain_made(planning) : status;
}
