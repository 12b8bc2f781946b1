/* SPDX-License-Identifier: MIT */
/* The feed of a job: resolved, its restrictor fitted to the pressure wanted, reckoned in every state, judged.
 */
#include <math.h>
#include <string.h>

#include "plan/planning.h"

#define BALL_TARGET_PA 300000.0 /* between 2.8 and 3.1 bar: common practice */
#define FIT_NEAR_M 0.000051     /* half a drill step, and a hair for rounding */

/* Full names of every feed port of every turbo, up to three. */
static ow_status name_inlets(ow_planning *planning, ow_ask_words *words)
{
    const ow_job *job = planning->job;
    words->to_count = 0;
    for (size_t turbo = 0; turbo < job->turbo_count; turbo++) {
        const ow_machine *machine = job->turbos[turbo];
        for (size_t index = 0; index < machine->port_count; index++) {
            const ow_port *port = &machine->ports[index];
            if (port->circuit != OW_FEED || words->to_count == OW_TO_MAX ||
                (job->feed.to != NULL && strcmp(job->feed.to, port->name) != 0))
                continue;
            const char *name = ow_planning_words(planning, "%s:%s", machine->id, port->name);
            if (name == NULL)
                return OW_MEMORY;
            words->to[words->to_count++] = name;
        }
    }
    return OW_OK;
}

/* The longest straight way from a take-off that may be used to an inlet; 0 if a position is not known. */
static double straight_way(const ow_planning *planning)
{
    const ow_job *job = planning->job;
    double longest_m = 0.0;
    for (size_t index = 0; index < job->engine->port_count; index++) {
        const ow_port *from = &job->engine->ports[index];
        if (from->circuit != OW_FEED || (job->feed.from != NULL && strcmp(job->feed.from, from->name) != 0))
            continue;
        for (size_t turbo = 0; turbo < job->turbo_count; turbo++) {
            for (size_t port = 0; port < job->turbos[turbo]->port_count; port++) {
                double straight_m = 0.0;
                if (job->turbos[turbo]->ports[port].circuit == OW_FEED &&
                    ow_planning_apart(from, &job->turbos[turbo]->ports[port], &straight_m) &&
                    straight_m > longest_m)
                    longest_m = straight_m;
            }
        }
    }
    return longest_m;
}

/* What is asked of the feed, and the hose that was chosen for it. */
typedef struct feed_ask {
    ow_ask_words words;
    ow_planning_hose hose;
} feed_ask;

static ow_status word_ask(ow_planning *planning, feed_ask *ask)
{
    ow_ask_words *words = &ask->words;
    const ow_job *job = planning->job;
    const char *from = job->engine->id;
    if (job->feed.from != NULL)
        from = ow_planning_words(planning, "%s:%s", job->engine->id, job->feed.from);
    *words = ow_planning_ask(planning, from, NULL);
    ow_status status = from == NULL ? OW_MEMORY : name_inlets(planning, words);
    for (size_t index = 0; index < job->keep_count; index++)
        words->keep[index] = job->keep[index];
    words->keep_count = job->keep_count;
    if (job->feed.bore_m.said)
        words->bore = ow_planning_words(planning, "%.9g m", job->feed.bore_m.value);
    if (job->feed.bore_m.said && words->bore == NULL)
        status = OW_MEMORY;
    ask->hose = ow_planning_hose_between(planning, &job->feed.hose_m, straight_way(planning), 1.0,
                                         "length of the feed hose");
    ask->hose.hot = true;
    return status == OW_OK ? ow_planning_choose_hose(planning, &ask->hose, words) : status;
}

static void free_answer(ow_plan_feed *feed)
{
    ow_answers_done(&feed->answers);
    ow_ask_set_done(&feed->asks);
    feed->layout = NULL;
}

static ow_status answer(ow_planning *planning, const feed_ask *ask, ow_plan_feed *feed)
{
    return ow_planning_answer_hose(planning, &ask->words, &ask->hose, false, &feed->asks, &feed->answers,
                                   &feed->layout);
}

/* The bore that holds the target hot at full revs, with the layout as it is. */
static ow_status size_restrictor(ow_planning *planning, ow_plan_feed *feed)
{
    ow_feed_answer sizing;
    ow_feed_restrictor *restrictor = &feed->feed.restrictor;
    double carried_m = restrictor->piece->bore_m;
    restrictor->wanted = true;
    restrictor->target_pa = BALL_TARGET_PA;
    restrictor->state = planning->hot_rev;
    ow_status status = ow_feed_check(&feed->feed);
    if (status == OW_OK)
        status = ow_feed_solve(planning->context, &feed->feed, &sizing);
    restrictor->wanted = false;
    restrictor->piece->bore_m = carried_m;
    feed->carried_restrictor_m = carried_m;
    if (status != OW_OK)
        return status;
    if (sizing.restrictor.needed && sizing.restrictor.possible)
        feed->restrictor_m = sizing.restrictor.bore_m;
    ow_feed_answer_free(&sizing);
    return OW_OK;
}

/* Asks again for a restrictor whose hole is near what is wanted; keeps the first layout where the shop has
 * none. */
static ow_status fit_restrictor(ow_planning *planning, feed_ask *ask, ow_plan_feed *feed)
{
    static const double spreads_m[] = {0.000051, 0.000101, 0.000151, 0.000201}; /* drill steps, and a hair */
    for (size_t index = 0; index < sizeof spreads_m / sizeof spreads_m[0]; index++) {
        ow_plan_feed other = {0};
        ask->words.orifice =
            ow_planning_words(planning, "%.9g..%.9g m", feed->restrictor_m - spreads_m[index],
                              feed->restrictor_m + spreads_m[index]);
        if (ask->words.orifice == NULL)
            return OW_MEMORY;
        ow_status status = answer(planning, ask, &other);
        if (status != OW_OK)
            return status;
        if (other.layout == NULL) {
            free_answer(&other);
            continue;
        }
        free_answer(feed);
        feed->asks = other.asks;
        feed->answers = other.answers;
        feed->layout = other.layout;
        feed->feed.restrictor.piece = NULL;
        status = ow_plan_feed_line(planning, feed->layout, feed);
        if (status == OW_OK && feed->feed.restrictor.piece != NULL)
            feed->carried_restrictor_m = feed->feed.restrictor.piece->bore_m;
        return status;
    }
    return OW_OK;
}

/* `ask`: by which another restrictor may be found; NULL where the layout is not to be changed. */
static ow_status reckon(ow_planning *planning, feed_ask *ask, ow_plan_feed *feed)
{
    ow_status status = ow_plan_feed_line(planning, feed->layout, feed);
    if (status == OW_OK && feed->feed.restrictor.piece != NULL) {
        status = size_restrictor(planning, feed);
        if (status == OW_OK && ask != NULL && feed->restrictor_m > 0.0 &&
            fabs(feed->restrictor_m - feed->carried_restrictor_m) > FIT_NEAR_M)
            status = fit_restrictor(planning, ask, feed);
    }
    if (status == OW_OK)
        status = ow_feed_check(&feed->feed);
    if (status == OW_OK)
        status = ow_feed_solve(planning->context, &feed->feed, &feed->answer);
    if (status != OW_OK)
        return status;
    feed->solved = true;
    feed->hot_rev = planning->hot_rev;
    status = ow_plan_feed_parts(planning, feed);
    return status == OW_OK ? ow_plan_feed_sizes(planning, feed) : status;
}

static void begin_way(ow_planning *planning, ow_plan_feed *feed)
{
    feed->findings = ow_findings_new(planning->context);
    feed->restrictor_m = OW_NOT_SAID;
    feed->carried_restrictor_m = OW_NOT_SAID;
}

static ow_status reckon_or_say(ow_planning *planning, feed_ask *ask, ow_plan_feed *feed)
{
    ow_status status = reckon(planning, ask, feed);
    if (status == OW_RANGE)
        status = ow_findings_add(
            &feed->findings, "not-reckoned", OW_WARNING, "feed", NULL,
            "the feed's pressures are not reckoned: a bore is not said or a figure lies outside "
            "what the formulas can work in");
    return status;
}

ow_status ow_plan_feed_take(ow_planning *planning, const ow_layout *layout)
{
    ow_plan_feed *feed = &planning->plan->feed;
    begin_way(planning, feed);
    feed->layout = layout;
    ow_status status = reckon_or_say(planning, NULL, feed);
    if (status == OW_OK && feed->solved)
        status = ow_plan_feed_judge(planning, feed);
    return status == OW_OK && feed->solved ? ow_plan_feed_verdicts(planning, feed) : status;
}

static ow_status make_way(ow_planning *planning, feed_ask *ask, ow_plan_feed *feed)
{
    begin_way(planning, feed);
    ow_status status = answer(planning, ask, feed);
    if (status == OW_OK && feed->layout != NULL)
        status = reckon_or_say(planning, ask, feed);
    if (status == OW_OK)
        status = ow_planning_judge_answer(planning, &feed->answers, "feed", &feed->findings);
    if (status == OW_OK && feed->solved)
        status = ow_plan_feed_judge(planning, feed);
    return status == OW_OK && feed->solved ? ow_plan_feed_verdicts(planning, feed) : status;
}

/* Whether nobody knows of any of the turbos if a restrictor is built in. */
static bool is_restrictor_unknown(const ow_job *job)
{
    for (size_t index = 0; index < job->turbo_count; index++) {
        if (job->turbos[index]->bearing == OW_BEARING_JOURNAL ||
            job->turbos[index]->restrictor != OW_BUILT_IN_UNKNOWN)
            return false;
    }
    return true;
}

/* Where it is not known whether a restrictor is built in, both ways are shown; the one without is billed,
 * since it is the one that a part can be added to. */
ow_status ow_plan_feed_make(ow_planning *planning)
{
    ow_plan_feed *feed = &planning->plan->feed;
    feed_ask ask;
    ow_status status = word_ask(planning, &ask);
    if (status != OW_OK || !is_restrictor_unknown(planning->job))
        return status == OW_OK ? make_way(planning, &ask, feed) : status;
    ask.words.restrictor = "forbidden";
    feed->supposing = "one is built into the turbo";
    status = make_way(planning, &ask, feed);
    if (status != OW_OK)
        return status;
    feed->other = ow_arena_get_array(&planning->arena, 1, sizeof *feed->other);
    if (feed->other == NULL)
        return OW_MEMORY;
    ask.words.restrictor = "required";
    feed->other->supposing = "none is built in";
    return make_way(planning, &ask, feed->other);
}

void ow_plan_feed_done(ow_plan_feed *feed)
{
    if (feed->solved)
        ow_feed_answer_free(&feed->answer);
    ow_answers_done(&feed->answers);
    ow_ask_set_done(&feed->asks);
    ow_findings_done(&feed->findings);
}
