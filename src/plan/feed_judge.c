/* SPDX-License-Identifier: MIT */
/* What a plan says of its feed beside what the physics says of any: the job's own limit, the restrictor, how
 * sure. */
#include <string.h>

#include "oilway/hose_judge.h"
#include "plan/planning.h"

#define WARM_C 60.0

/* Whether a figure rests on anything that nobody gave; severity is milder then. */
static ow_severity severity_of(const ow_feed_result *result, ow_severity given)
{
    bool sure = !result->state->assumed && result->state->oil_c >= WARM_C;
    return sure ? given : given == OW_ERROR ? OW_WARNING : given;
}

/* How too much pressure is mended: measured, at the relief valve, by another take-off. A journal bearing is
 * not helped by a restrictor. */
static const char *pressure_mend(ow_planning *planning, const ow_plan_feed *feed)
{
    const ow_machine *engine = planning->job->engine;
    const ow_port *from = feed->layout->givens[0].port;
    ow_text text = ow_text_new(planning->context);
    size_t others = 0;
    ow_text_add(&text, "Measure it at the turbo first; then mend the relief valve");
    for (size_t index = 0; index < engine->port_count; index++) {
        const ow_port *port = &engine->ports[index];
        if (port->circuit == OW_FEED && port != from)
            ow_text_format(&text, "%s%s", others++ == 0 ? " or take the oil from " : " or ", port->name);
    }
    if (others == 0)
        ow_text_add(&text, " or take the oil from another port");
    if (planning->job->turbos[0]->bearing == OW_BEARING_JOURNAL)
        ow_text_add(&text, ". No restrictor: it starves a journal bearing.");
    else
        ow_text_add(&text, ", or fit the restrictor that the unit wants.");
    return ow_arena_keep(&planning->arena, &text);
}

static ow_status judge_limit(ow_planning *planning, ow_plan_feed *feed, const ow_feed_result *result)
{
    const ow_said *limit = &planning->job->turbo_pressure_pa;
    double turbo_pa = 0.0;
    for (size_t index = 0; index < result->load_count; index++) {
        if (!result->loads[index].dead && result->loads[index].pressure_pa > turbo_pa)
            turbo_pa = result->loads[index].pressure_pa;
    }
    if (!limit->said || turbo_pa <= limit->value)
        return OW_OK;
    const char *mend = pressure_mend(planning, feed);
    if (mend == NULL)
        return OW_MEMORY;
    return ow_findings_add(&feed->findings, "turbo-pressure", severity_of(result, OW_ERROR),
                           result->state->name, mend, "the turbo sees %.2f bar, the job allows %.2f bar%s",
                           turbo_pa / 1e5, limit->value / 1e5,
                           result->state->oil_c < WARM_C ? ", while cold" : "");
}

/* The restrictor that the layout carries, against the pressure that a ball bearing wants hot at full revs. */
static ow_status judge_restrictor(ow_plan_feed *feed)
{
    const ow_feed_result *hot = &feed->answer.results[feed->hot_rev];
    bool on_target = hot->turbo_pa >= OW_FEED_BALL_LOW_PA && hot->turbo_pa <= OW_FEED_BALL_HIGH_PA;
    if (feed->carried_restrictor_m < 0.0 || on_target)
        return OW_OK;
    if (feed->restrictor_m < 0.0)
        return ow_findings_add(
            &feed->findings, "restrictor-size", OW_WARNING, hot->state->name, NULL,
            "with the hole of %.2f mm the turbo gets %.2f bar; the gallery gives too little for a "
            "restrictor to hold back",
            feed->carried_restrictor_m * 1e3, hot->turbo_pa / 1e5);
    return ow_findings_add(
        &feed->findings, "restrictor-size", OW_WARNING, hot->state->name, NULL,
        "with the hole of %.2f mm the turbo gets %.2f bar, not 2.8 to 3.1; %.2f mm would hold 3.0",
        feed->carried_restrictor_m * 1e3, hot->turbo_pa / 1e5, feed->restrictor_m * 1e3);
}

static ow_status judge_cold(ow_plan_feed *feed)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < feed->answer.state_count && status == OW_OK; index++) {
        const ow_feed_result *result = &feed->answer.results[index];
        if (feed->carried_restrictor_m >= 0.0 && result->state->oil_c < WARM_C &&
            result->turbo_pa > OW_FEED_BALL_HIGH_PA)
            status =
                ow_findings_add(&feed->findings, "restrictor-cold", OW_NOTE, result->state->name, NULL,
                                "at %.0f C the turbo sees %.2f bar: a restrictor holds back flow, not the "
                                "pressure of cold oil",
                                result->state->oil_c, result->turbo_pa / 1e5);
    }
    return status;
}

static ow_status judge_band(const ow_planning *planning, ow_plan_feed *feed, const ow_feed_result *result,
                            const ow_feed_band *band)
{
    double limit_pa = ow_plan_pressure_limit_pa(planning);
    bool high = limit_pa > 0.0 && (band->turbo_low_pa <= limit_pa) != (band->turbo_high_pa <= limit_pa);
    bool low = (band->turbo_low_pa < OW_FEED_IDLE_LOW_PA) != (band->turbo_high_pa < OW_FEED_IDLE_LOW_PA);
    if (!high && !low)
        return OW_OK;
    return ow_findings_add(&feed->findings, "unsure", OW_NOTE, result->state->name, NULL,
                           "oil 10 C or bores 0.2 mm off would change the verdict: %.2f to %.2f bar at the "
                           "turbo against %.2f",
                           band->turbo_low_pa / 1e5, band->turbo_high_pa / 1e5,
                           (high ? limit_pa : OW_FEED_IDLE_LOW_PA) / 1e5);
}

/* Whether oil 10 K or bores 0.2 mm off would change a verdict of the warm states. */
static ow_status judge_sureness(ow_planning *planning, ow_plan_feed *feed)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < feed->answer.state_count && status == OW_OK; index++) {
        const ow_feed_result *result = &feed->answer.results[index];
        ow_feed_band band;
        if (result->state->oil_c < WARM_C)
            continue;
        status = ow_feed_state_band(planning->context, &feed->feed, index, &band);
        if (status == OW_OK)
            status = judge_band(planning, feed, result, &band);
        else if (status == OW_RANGE)
            status = OW_OK;
    }
    return status;
}

/* A plain bearing's limit is not a ball bearing's. */
static bool is_of_ball_bearing(const ow_planning *planning, const ow_finding *finding)
{
    for (size_t index = 0; index < planning->job->turbo_count; index++) {
        const ow_machine *turbo = planning->job->turbos[index];
        size_t length = strlen(turbo->id);
        if (strncmp(finding->message, turbo->id, length) == 0 && finding->message[length] == ':')
            return turbo->bearing == OW_BEARING_BALL;
    }
    return false;
}

static bool is_alike(const ow_finding *a, const ow_finding *b)
{
    return a->rule == b->rule && strcmp(a->where, b->where) == 0;
}

/* One cause, one finding: what a state does to several inlets is told of the first. */
static ow_status tell_once(ow_planning *planning, const ow_findings *findings, size_t index,
                           ow_plan_feed *feed)
{
    const ow_finding *finding = &findings->items[index];
    bool is_high = strcmp(finding->rule->id, "feed-pressure-high") == 0;
    size_t more = 0;
    for (size_t other = 0; other < findings->count; other++) {
        if (other < index && is_alike(&findings->items[other], finding))
            return OW_OK;
        more += other > index && is_alike(&findings->items[other], finding);
    }
    const char *mend = is_high ? pressure_mend(planning, feed) : finding->mend;
    if (mend == NULL)
        return OW_MEMORY;
    if (more > 0)
        return ow_findings_add(&feed->findings, finding->rule->id, finding->severity, finding->where, mend,
                               "%s; %zu more %s likewise", finding->message, more, more == 1 ? "does" : "do");
    return ow_findings_add(&feed->findings, finding->rule->id, finding->severity, finding->where, mend, "%s",
                           finding->message);
}

/* What the physics says. Where the job sets its own limit, that one is told instead of the plain bearing's; a
 * ball-bearing unit has none. */
static ow_status judge_physics(ow_planning *planning, const ow_feed *judged, ow_plan_feed *feed)
{
    ow_findings findings = ow_findings_new(planning->context);
    ow_status status = ow_feed_judge(judged, &feed->answer, &findings);
    for (size_t index = 0; index < findings.count && status == OW_OK; index++) {
        const ow_finding *finding = &findings.items[index];
        bool is_high = strcmp(finding->rule->id, "feed-pressure-high") == 0;
        if (is_high && (planning->job->turbo_pressure_pa.said || is_of_ball_bearing(planning, finding)))
            continue;
        status = tell_once(planning, &findings, index, feed);
    }
    ow_findings_done(&findings);
    return status;
}

/* What the feed's hoses are made of, against the hottest oil. Their check has judged the rest. */
static ow_status judge_hoses(ow_planning *planning, ow_plan_feed *feed)
{
    const ow_feed_state *hot = ow_planning_hottest(planning);
    ow_status status = OW_OK;
    ow_hose_service service = {true, true, 0.0, hot->oil_c};
    for (size_t node = 0; node < feed->layout->node_count && status == OW_OK; node++) {
        const ow_part *part = feed->layout->nodes[node].part;
        const ow_hose_material *material = part != NULL ? ow_part_hose_material(part) : NULL;
        if (material != NULL)
            status =
                ow_hose_judge(material, &service, OW_HOSE_FLUID | OW_HOSE_FLUID_LIMITED | OW_HOSE_PRESSURE,
                              hot->assumed ? OW_WARNING : OW_ERROR, part->id, &feed->findings);
    }
    return status;
}

ow_status ow_plan_feed_judge(ow_planning *planning, ow_plan_feed *feed)
{
    ow_feed judged = feed->feed;
    /* A unit with a restrictor is held to the restrictor's target, not to the limit of a plain bearing. */
    judged.restrictor.wanted = feed->carried_restrictor_m >= 0.0;
    ow_status status = judge_physics(planning, &judged, feed);
    for (size_t index = 0; index < feed->answer.state_count && status == OW_OK; index++)
        status = judge_limit(planning, feed, &feed->answer.results[index]);
    if (status == OW_OK)
        status = judge_restrictor(feed);
    if (status == OW_OK)
        status = judge_cold(feed);
    if (status == OW_OK)
        status = judge_hoses(planning, feed);
    return status == OW_OK ? judge_sureness(planning, feed) : status;
}
