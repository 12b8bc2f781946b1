/* SPDX-License-Identifier: MIT */
/* What the feed's figures mean: a few words for each state, and a sentence on the restrictor. */
#include <math.h>

#include "plan/planning.h"

#define WARM_C 60.0

static void live_pressures(const ow_feed_result *result, double *least_pa, double *most_pa)
{
    *least_pa = HUGE_VAL;
    *most_pa = 0.0;
    for (size_t index = 0; index < result->load_count; index++) {
        const ow_feed_load *load = &result->loads[index];
        if (load->dead)
            continue;
        *least_pa = fmin(*least_pa, load->flow_m3s > 0.0 ? load->pressure_pa : 0.0);
        *most_pa = fmax(*most_pa, load->pressure_pa);
    }
}

double ow_plan_pressure_limit_pa(const ow_planning *planning)
{
    const ow_job *job = planning->job;
    if (job->turbo_pressure_pa.said)
        return job->turbo_pressure_pa.value;
    for (size_t index = 0; index < job->turbo_count; index++) {
        if (job->turbos[index]->bearing != OW_BEARING_BALL)
            return OW_FEED_JOURNAL_HIGH_PA;
    }
    return OW_NOT_SAID;
}

static const char *verdict_of(const ow_planning *planning, const ow_plan_feed *feed, size_t state)
{
    const ow_feed_result *result = &feed->answer.results[state];
    double limit_pa = ow_plan_pressure_limit_pa(planning);
    double least_pa = 0.0, most_pa = 0.0;
    bool restricted = feed->carried_restrictor_m > 0.0;
    live_pressures(result, &least_pa, &most_pa);
    bool high = limit_pa > 0.0 && most_pa > limit_pa;
    if (least_pa <= 0.0)
        return "no oil";
    if (result->state->oil_c < WARM_C)
        return high || (restricted && most_pa > OW_FEED_BALL_HIGH_PA) ? "high, while cold" : "right";
    if (least_pa < OW_FEED_IDLE_LOW_PA)
        return "too little";
    if (high)
        return "too much";
    if (state != feed->hot_rev)
        return "enough";
    if (restricted && most_pa > OW_FEED_BALL_HIGH_PA)
        return "over its target";
    return restricted && least_pa < OW_FEED_BALL_LOW_PA ? "under its target" : "right";
}

static const char *say_carried(ow_planning *planning, const ow_plan_feed *feed)
{
    double carried_mm = feed->carried_restrictor_m * 1e3;
    const ow_feed_result *coldest = &feed->answer.results[0];
    for (size_t state = 1; state < feed->answer.state_count; state++) {
        if (feed->answer.results[state].state->oil_c < coldest->state->oil_c)
            coldest = &feed->answer.results[state];
    }
    if (feed->restrictor_m <= 0.0)
        return ow_planning_words(
            planning, "%.2f mm as drawn; the gallery gives too little for any hole to hold back", carried_mm);
    return ow_planning_words(
        planning,
        "%.2f mm as drawn; %.2f mm would hold 3.0 bar hot at full revs, to about 10 %%; no restrictor holds "
        "back cold oil: %.2f bar at %.0f C",
        carried_mm, feed->restrictor_m * 1e3, coldest->turbo_pa / 1e5, coldest->state->oil_c);
}

static const char *say_restrictor(ow_planning *planning, const ow_plan_feed *feed)
{
    const ow_machine *turbo = planning->job->turbos[0];
    if (feed->carried_restrictor_m > 0.0)
        return say_carried(planning, feed);
    if (turbo->bearing == OW_BEARING_JOURNAL)
        return "none, and none may be fitted: it starves a plain journal bearing";
    if (turbo->restrictor == OW_BUILT_IN_YES)
        return "built into the turbo; a second one starves it";
    return feed->supposing != NULL ? "none in the line, supposing that one is built into the turbo" : "none";
}

ow_status ow_plan_feed_verdicts(ow_planning *planning, ow_plan_feed *feed)
{
    const char **verdicts = ow_arena_get_array(&planning->arena, feed->answer.state_count, sizeof *verdicts);
    if (verdicts == NULL)
        return OW_MEMORY;
    for (size_t state = 0; state < feed->answer.state_count; state++)
        verdicts[state] = verdict_of(planning, feed, state);
    feed->verdicts = verdicts;
    feed->restrictor_verdict = say_restrictor(planning, feed);
    return feed->restrictor_verdict == NULL ? OW_MEMORY : OW_OK;
}
