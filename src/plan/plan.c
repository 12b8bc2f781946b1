/* SPDX-License-Identifier: MIT */
/* A plan: the circuits one after another (the drain needs the feed's flow), then findings, bill and notes of
 * all. */
#include <string.h>

#include "base/progress.h"
#include "plan/planning.h"

static void begin(ow_planning *planning)
{
    const ow_job *job = planning->job;
    planning->machines[planning->machine_count++] = job->engine;
    for (size_t index = 0; index < job->turbo_count; index++)
        planning->machines[planning->machine_count++] = job->turbos[index];
    planning->plan->job = job;
    planning->plan->findings = ow_findings_new(planning->context);
    planning->plan->assumptions = ow_assumptions_new(planning->context);
}

/* The layouts that are taken: the feed, the best return of each outlet, every leg of every loop. */
static ow_status gather_layouts(ow_planning *planning)
{
    ow_plan *plan = planning->plan;
    size_t most = 1 + plan->drain.return_count + plan->coolant_count * OW_PLAN_LEGS;
    plan->layouts = ow_arena_get_array(&planning->arena, most, sizeof *plan->layouts);
    if (plan->layouts == NULL)
        return OW_MEMORY;
    if (plan->feed.layout != NULL)
        plan->layouts[plan->layout_count++] = *plan->feed.layout;
    for (size_t index = 0; index < plan->drain.return_count; index++) {
        const ow_plan_return *home = &plan->drain.returns[index];
        if (home->taken && home->layout != NULL)
            plan->layouts[plan->layout_count++] = *home->layout;
    }
    for (size_t index = 0; index < plan->coolant_count; index++) {
        for (size_t leg = 0; leg < plan->coolants[index].leg_count; leg++) {
            if (plan->coolants[index].legs[leg].layout != NULL)
                plan->layouts[plan->layout_count++] = *plan->coolants[index].legs[leg].layout;
        }
    }
    return OW_OK;
}

/* A return that is not taken is an alternative: what is wrong with it is told there, not held against the
 * job. */
static ow_status gather_findings(ow_plan *plan)
{
    ow_status status = ow_findings_join(&plan->findings, &plan->feed.findings, NULL);
    for (size_t index = 0; index < plan->drain.return_count && status == OW_OK; index++) {
        if (plan->drain.returns[index].taken)
            status = ow_findings_join(&plan->findings, &plan->drain.returns[index].findings, NULL);
    }
    ow_findings_sort(&plan->findings);
    plan->ok = !ow_findings_have(&plan->findings, OW_ERROR);
    return status;
}

static ow_status make(ow_planning *planning)
{
    ow_plan *plan = planning->plan;
    begin(planning);
    ow_status status = ow_plan_oil(planning);
    if (status == OW_OK)
        status = ow_plan_states(planning);
    if (status == OW_OK)
        status = ow_plan_limits(planning);
    if (status == OW_OK)
        status = ow_progress_tell(planning->context, "working out the feed", NULL, 0, 0);
    if (status == OW_OK)
        status = ow_plan_feed_make(planning);
    if (status == OW_OK)
        status = ow_progress_tell(planning->context, "working out the drain", NULL, 0, 0);
    if (status == OW_OK)
        status = ow_plan_drain_make(planning);
    if (status == OW_OK)
        status = ow_progress_tell(planning->context, "working out the coolant", NULL, 0, 0);
    if (status == OW_OK)
        status = ow_plan_coolant_make(planning);
    if (status == OW_OK)
        status = gather_layouts(planning);
    if (status == OW_OK)
        status = gather_findings(plan);
    if (status == OW_OK)
        status = ow_bill_new(planning->context, plan->layouts, plan->layout_count, &plan->bill);
    if (status == OW_OK)
        status = ow_plan_notes(planning);
    return status == OW_OK && plan->assumptions.failed ? OW_MEMORY : status;
}

/* A plan is made by `work`, and handed over once that succeeds. */
static ow_status with_planning(const ow_planning *begun, ow_status (*work)(ow_planning *planning),
                               ow_plan *plan)
{
    const ow_context *context = begun->context;
    ow_planning *planning = ow_new_array(context, 1, sizeof *planning);
    ow_plan *made = ow_new_array(context, 1, sizeof *made);
    if (planning == NULL || made == NULL) {
        ow_release(context, planning);
        ow_release(context, made);
        return OW_MEMORY;
    }
    *planning = *begun;
    planning->plan = made;
    planning->arena = ow_arena_new(context);
    made->context = context;
    made->storage = planning;
    ow_status status = work(planning);
    if (status == OW_OK)
        *plan = *made;
    else
        ow_plan_done(made);
    ow_release(context, made);
    return status;
}

ow_status ow_plan_make(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                       const ow_job *job, ow_plan *plan)
{
    ow_planning begun = {.context = context, .catalog = catalog, .net = net, .job = job};
    return with_planning(&begun, make, plan);
}

/* A job of the machines that a layout joins; one without an id stands for whatever is behind a bare END. */
static ow_status fill_job(ow_planning *planning)
{
    static const ow_machine nobody = {.kind = OW_TURBO, .id = "", .title = ""};
    const ow_layout *layout = planning->layout;
    ow_job *job = ow_arena_get_array(&planning->arena, 1, sizeof *job);
    if (job == NULL)
        return OW_MEMORY;
    *job = *planning->job;
    job->storage = NULL;
    job->engine = layout->givens[0].machine != NULL ? layout->givens[0].machine : &nobody;
    job->feed.from = layout->givens[0].port != NULL ? layout->givens[0].port->name : NULL;
    job->turbo_count = 0;
    for (size_t index = 1; index < layout->given_count; index++) {
        const ow_given *given = &layout->givens[index];
        if (given->role == OW_ROLE_TO && job->turbo_count < OW_JOB_TURBOS)
            job->turbos[job->turbo_count++] = given->machine != NULL ? given->machine : &nobody;
    }
    planning->job = job;
    return job->turbo_count > 0 ? OW_OK : OW_NONE;
}

static void tell_lengths(ow_planning *planning)
{
    const ow_layout *layout = planning->layout;
    for (size_t index = 0; index < layout->node_count; index++) {
        const ow_layout_node *node = &layout->nodes[index];
        if (node->part != NULL && node->part->kind == OW_HOSE && node->length_m < 0.0)
            ow_planning_assume(planning, OW_MARK_ASSUMED,
                               ow_planning_words(planning, "length of %s", node->part->id),
                               "assumption of this program", "1 m");
    }
}

static ow_status reckon_feed(ow_planning *planning)
{
    ow_status status = planning->layout->circuit == OW_FEED ? fill_job(planning) : OW_NONE;
    if (status != OW_OK)
        return status;
    begin(planning);
    status = ow_plan_oil(planning);
    if (status == OW_OK)
        status = ow_plan_states(planning);
    tell_lengths(planning);
    if (status == OW_OK)
        status = ow_plan_feed_take(planning, planning->layout);
    if (status == OW_OK)
        status = gather_findings(planning->plan);
    return status == OW_OK && planning->plan->assumptions.failed ? OW_MEMORY : status;
}

ow_status ow_plan_reckon_feed(const ow_context *context, const ow_job *job, const ow_layout *layout,
                              ow_plan *plan)
{
    ow_planning begun = {.context = context, .job = job, .layout = layout};
    return with_planning(&begun, reckon_feed, plan);
}

void ow_plan_done(ow_plan *plan)
{
    ow_planning *planning = plan->storage;
    if (planning == NULL)
        return;
    const ow_context *context = planning->context;
    ow_plan_feed_done(&plan->feed);
    if (plan->feed.other != NULL)
        ow_plan_feed_done(plan->feed.other);
    for (size_t index = 0; index < plan->drain.return_count; index++) {
        ow_plan_return *home = &plan->drain.returns[index];
        ow_findings_done(&home->findings);
        if (!home->answered)
            continue;
        ow_answers_done(&home->answers);
        ow_ask_set_done(&home->asks);
    }
    for (size_t index = 0; index < plan->coolant_count; index++)
        ow_plan_legs_done(&plan->coolants[index]);
    ow_bill_done(&plan->bill);
    ow_findings_done(&plan->findings);
    ow_assumptions_done(&plan->assumptions);
    ow_arena_done(&planning->arena);
    ow_release(context, planning);
    *plan = (ow_plan){.context = context};
}
