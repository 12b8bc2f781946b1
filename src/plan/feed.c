/* SPDX-License-Identifier: MIT */
/* The feed of a job: resolved, its restrictor fitted to the pressure wanted, reckoned in every state, judged.
 */
#include <math.h>
#include <stdio.h>
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

static ow_status word_ask(ow_planning *planning, ow_ask_words *words)
{
    const ow_job *job = planning->job;
    const char *from = job->engine->id;
    if (job->feed.from != NULL)
        from = ow_planning_words(planning, "%s:%s", job->engine->id, job->feed.from);
    *words = ow_planning_ask(planning, from, NULL);
    ow_status status = from == NULL ? OW_MEMORY : name_inlets(planning, words);
    for (size_t index = 0; index < job->keep_count; index++)
        words->keep[index] = job->keep[index];
    words->keep_count = job->keep_count;
    if (job->feed.hose_m.said)
        words->hose = ow_planning_words(planning, "%.9g m", job->feed.hose_m.value);
    if (job->feed.bore_m.said)
        words->bore = ow_planning_words(planning, "%.9g m", job->feed.bore_m.value);
    if (!job->feed.hose_m.said)
        ow_assumptions_add(&planning->plan->assumptions, OW_MARK_ASSUMED, "length of the feed hose",
                           "assumption of this program: measure it with a string along its way", "1 m");
    return status;
}

static void free_answer(ow_plan_feed *feed)
{
    ow_answers_done(&feed->answers);
    ow_ask_set_done(&feed->asks);
    feed->layout = NULL;
}

static ow_status answer(ow_planning *planning, const ow_ask_words *words, ow_plan_feed *feed)
{
    return ow_planning_answer(planning, words, &feed->asks, &feed->answers, &feed->layout);
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
static ow_status fit_restrictor(ow_planning *planning, ow_ask_words *words, ow_plan_feed *feed)
{
    static const double spreads_m[] = {0.000051, 0.000101, 0.000151, 0.000201}; /* drill steps, and a hair */
    for (size_t index = 0; index < sizeof spreads_m / sizeof spreads_m[0]; index++) {
        ow_plan_feed other = {0};
        words->orifice = ow_planning_words(planning, "%.9g..%.9g m", feed->restrictor_m - spreads_m[index],
                                           feed->restrictor_m + spreads_m[index]);
        if (words->orifice == NULL)
            return OW_MEMORY;
        ow_status status = answer(planning, words, &other);
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

/* The same tree with hoses of other sizes: -3, -4 and -6 by the tube's dash (SAE J517 100R14). */
static ow_status try_sizes(ow_planning *planning, ow_plan_feed *feed)
{
    static const struct {
        int dash;
        double bore_m;
    } sizes[OW_PLAN_SIZES] = {{3, 0.0032}, {4, 0.0048}, {6, 0.0079}};
    double carried_m[OW_PLAN_HOSES] = {0};
    ow_status status = OW_OK;
    for (size_t hose = 0; hose < feed->hose_count; hose++)
        carried_m[hose] = feed->hoses[hose]->bore_m;
    for (size_t index = 0; index < OW_PLAN_SIZES && feed->hose_count > 0 && status == OW_OK; index++) {
        ow_feed_answer trial;
        for (size_t hose = 0; hose < feed->hose_count; hose++)
            feed->hoses[hose]->bore_m = sizes[index].bore_m;
        status = ow_feed_solve(planning->context, &feed->feed, &trial);
        if (status != OW_OK)
            break;
        const ow_feed_result *hot = &trial.results[planning->hot_rev];
        const ow_feed_result *coldest = &trial.results[0];
        for (size_t state = 1; state < trial.state_count; state++) {
            if (trial.results[state].state->oil_c < coldest->state->oil_c)
                coldest = &trial.results[state];
        }
        feed->sizes[feed->size_count++] =
            (ow_plan_size){sizes[index].dash,
                           sizes[index].bore_m,
                           fabs(carried_m[0] - sizes[index].bore_m) < 1e-5,
                           hot->turbo_pa,
                           hot->flow_m3s,
                           coldest->first_oil_known ? coldest->first_oil_s : OW_NOT_SAID};
        ow_feed_answer_free(&trial);
    }
    for (size_t hose = 0; hose < feed->hose_count; hose++)
        feed->hoses[hose]->bore_m = carried_m[hose];
    return status;
}

static ow_status say_limiting(ow_planning *planning, ow_plan_feed *feed)
{
    const ow_feed_result *hot = &feed->answer.results[planning->hot_rev];
    if (hot->costliest >= hot->loss_count)
        return OW_OK;
    const ow_piece_loss *loss = &hot->losses[hot->costliest];
    feed->limiting =
        ow_planning_words(planning, "%s %s, bore %.3g mm: %.3g bar of %.3g", loss->name, loss->kind,
                          loss->bore_m * 1e3, loss->loss_pa / 1e5, hot->loss_pa / 1e5);
    return feed->limiting == NULL ? OW_MEMORY : OW_OK;
}

static ow_status reckon(ow_planning *planning, ow_ask_words *words, ow_plan_feed *feed)
{
    ow_status status = ow_plan_feed_line(planning, feed->layout, feed);
    if (status == OW_OK && feed->feed.restrictor.piece != NULL) {
        status = size_restrictor(planning, feed);
        if (status == OW_OK && feed->restrictor_m > 0.0 &&
            fabs(feed->restrictor_m - feed->carried_restrictor_m) > FIT_NEAR_M)
            status = fit_restrictor(planning, words, feed);
    }
    if (status == OW_OK)
        status = ow_feed_check(&feed->feed);
    if (status == OW_OK)
        status = ow_feed_solve(planning->context, &feed->feed, &feed->answer);
    if (status != OW_OK)
        return status;
    feed->solved = true;
    feed->hot_rev = planning->hot_rev;
    status = say_limiting(planning, feed);
    return status == OW_OK ? try_sizes(planning, feed) : status;
}

ow_status ow_plan_feed_make(ow_planning *planning)
{
    ow_plan_feed *feed = &planning->plan->feed;
    ow_findings *findings = &planning->plan->findings;
    ow_ask_words words;
    feed->restrictor_m = OW_NOT_SAID;
    feed->carried_restrictor_m = OW_NOT_SAID;
    ow_plan_oil(planning, &feed->feed); /* the drain needs it, whether or not there is a feed */
    ow_status status = word_ask(planning, &words);
    if (status == OW_OK)
        status = answer(planning, &words, feed);
    if (status != OW_OK)
        return status;
    if (feed->layout != NULL)
        status = reckon(planning, &words, feed);
    if (status == OW_RANGE)
        status = ow_findings_add(
            findings, "not-reckoned", OW_WARNING, "feed", NULL,
            "the feed's pressures are not reckoned: a bore is not said or a figure lies outside "
            "what the formulas can work in");
    if (status == OW_OK)
        status = ow_planning_judge_answer(planning, &feed->answers, "feed", findings);
    return status == OW_OK && feed->solved ? ow_plan_feed_judge(planning) : status;
}
