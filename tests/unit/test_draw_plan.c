/* SPDX-License-Identifier: MIT */
/* Drawings and sheets of plans: every shipped job, drawn and printed, whatever came of it. */
#include "support/testing.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "drawing/html.h"
#include "oilway/draw.h"
#include "support/failing.h"
#include "support/pages.h"
#include "support/shipped.h"

static const char *const JOBS[] = {"examples/tractor-pull.yaml", "examples/made-drain.yaml",
                                   "examples/must-fail.yaml", "examples/through-the-heater.yaml",
                                   "examples/twin-feed.yaml"};

/* Under valgrind the first two do: they draw feed, drain, coolant and what is to be made. */
static size_t job_count(void)
{
    return getenv("OW_SLOW_TOOL") != NULL ? 2 : sizeof JOBS / sizeof JOBS[0];
}

/* A job read and planned. */
typedef struct planned {
    ow_job *job;
    ow_plan plan;
} planned;

static void plan_job(const ow_shipped *self, const char *path, planned *made)
{
    size_t length = 0;
    char *bytes = ow_shipped_file(self, path, &length);
    assert_int_equal(ow_job_read(&self->context, self->catalog, path, bytes, length, &made->job), OW_OK);
    ow_release(&self->context, bytes);
    assert_int_equal(ow_plan_make(&self->context, self->catalog, self->net, made->job, &made->plan), OW_OK);
}

static void unplan(planned *made)
{
    ow_plan_done(&made->plan);
    ow_job_free(made->job);
}

static void every_shipped_job_is_drawn_whole(void **state)
{
    const ow_shipped *self = *state;
    for (size_t index = 0; index < job_count(); index++) {
        planned made;
        plan_job(self, JOBS[index], &made);
        ow_text svg = ow_text_new(&self->context);
        assert_int_equal(ow_draw_plan_svg(&svg, &made.plan, NULL), OW_OK);
        ow_test_assert_svg(ow_text_words(&svg));
        for (size_t line = 0; line < made.plan.bill.line_count; line++)
            ow_test_assert_names(ow_text_words(&svg), made.plan.bill.lines[line].part->id);
        ow_text_done(&svg);
        unplan(&made);
    }
}

static void every_shipped_job_has_a_sheet(void **state)
{
    const ow_shipped *self = *state;
    for (size_t index = 0; index < job_count(); index++) {
        planned made;
        plan_job(self, JOBS[index], &made);
        ow_text html = ow_text_new(&self->context);
        assert_int_equal(ow_sheet_plan_html(&html, &made.plan), OW_OK);
        const char *page = ow_text_words(&html);
        ow_test_assert_html(page);
        for (size_t line = 0; line < made.plan.bill.line_count; line++)
            ow_test_assert_names(page, made.plan.bill.lines[line].part->id);
        for (size_t at = 0; at < made.plan.findings.count; at++)
            ow_test_assert_names(page, made.plan.findings.items[at].rule->source);
        for (size_t at = 0; at < made.plan.drain.made_count; at++)
            ow_test_assert_names(page, "A drain to be made for");
        for (size_t at = 0; at < made.plan.coolant_count; at++)
            if (made.plan.coolants[at].reckoned)
                ow_test_assert_names(page, "after shutdown, by degrees of clocking");
        ow_test_assert_names(page, "Pressure along the feed, bar");
        ow_test_assert_names(page, "Fitted by");
        if (!made.plan.ok)
            ow_test_assert_names(page, "NOT to be built");
        ow_text_done(&html);
        unplan(&made);
    }
}

/* The figures of the drawings are those of the plan. */
static void pressure_drain_and_loop_carry_the_plans_figures(void **state)
{
    const ow_shipped *self = *state;
    planned made;
    char words[64];
    plan_job(self, JOBS[0], &made);
    ow_text svg = ow_text_new(&self->context);
    assert_int_equal(ow_draw_pressure_svg(&svg, &made.plan.feed.feed, &made.plan.feed.answer, 450000.0),
                     OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    for (size_t index = 0; index < made.plan.feed.answer.state_count; index++) {
        const ow_feed_result *result = &made.plan.feed.answer.results[index];
        (void)snprintf(words, sizeof words, "%s, %.0f C: %.2f bar", result->state->name, result->state->oil_c,
                       result->turbo_pa / 1e5);
        ow_test_assert_names(ow_text_words(&svg), words);
    }
    svg.length = 0;
    const ow_plan_return *home = &made.plan.drain.returns[0];
    assert_int_equal(ow_draw_drain_svg(&svg, home, &made.job->drain), OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    (void)snprintf(words, sizeof words, "%.0f %% full hot", 100.0 * home->hot[0].flow.fill);
    ow_test_assert_names(ow_text_words(&svg), words);
    svg.length = 0;
    const ow_plan_coolant *loop = &made.plan.coolants[0];
    assert_int_equal(ow_draw_coolant_svg(&svg, loop), OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    (void)snprintf(words, sizeof words, "%.0f C after shutdown", loop->siphon.hot_c);
    ow_test_assert_names(ow_text_words(&svg), words);
    svg.length = 0;
    assert_int_equal(ow_draw_siphon_svg(&svg, &loop->loop, &loop->siphon, loop->curve_angle_rad, loop->curve,
                                        loop->curve_count),
                     OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    ow_text_done(&svg);
    unplan(&made);
}

static void a_loop_that_stands_still_is_drawn(void **state)
{
    const ow_shipped *self = *state;
    planned made;
    plan_job(self, JOBS[0], &made);
    ow_plan_coolant loop = made.plan.coolants[0];
    loop.siphon = (ow_siphon){.stands_still = true, .boils = true, .hot_c = loop.loop.cold_c};
    loop.loop.angle_rad = -0.2;
    ow_text svg = ow_text_new(&self->context);
    assert_int_equal(ow_draw_coolant_svg(&svg, &loop), OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    ow_test_assert_names(ow_text_words(&svg), "stands still");
    ow_text_done(&svg);
    unplan(&made);
}

/* A return that rises, one that is flooded, one of no length at all. */
static void odd_drains_are_drawn(void **state)
{
    const ow_shipped *self = *state;
    planned made;
    plan_job(self, JOBS[0], &made);
    ow_plan_return home = made.plan.drain.returns[0];
    home.segments[1].slope_rad = -0.3;
    home.hot[1] = (ow_segment_flow){.faults = OW_SEGMENT_FLAT | OW_SEGMENT_SAG, .flow = {.flooded = true}};
    ow_text svg = ow_text_new(&self->context);
    assert_int_equal(ow_draw_drain_svg(&svg, &home, &made.job->drain), OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    ow_test_assert_names(ow_text_words(&svg), "oil does not leave");
    svg.length = 0;
    home.segment_count = 0;
    assert_int_equal(ow_draw_drain_svg(&svg, &home, &made.job->drain), OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    ow_text_done(&svg);
    unplan(&made);
}

static ow_status print_once(const ow_context *context, void *data)
{
    const planned *made = data;
    ow_text page = ow_text_new(context);
    ow_status status = ow_draw_drain_svg(&page, &made->plan.drain.returns[0], &made->job->drain);
    if (status == OW_OK)
        status = ow_draw_coolant_svg(&page, &made->plan.coolants[0]);
    if (status == OW_OK)
        status = ow_draw_pressure_svg(&page, &made->plan.feed.feed, &made->plan.feed.answer, OW_NOT_SAID);
    ow_plan columns = made->plan; /* the feed's drawing fails in turn in test_draw_layout */
    columns.feed.layout = NULL;
    if (status == OW_OK)
        status = ow_html_figures(&page, &columns);
    if (status == OW_OK)
        status = ow_text_status(&page);
    ow_text_done(&page);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    const ow_shipped *self = *state;
    planned made;
    plan_job(self, JOBS[0], &made);
    ow_test_fail_each(print_once, &made);
    unplan(&made);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_shipped_job_is_drawn_whole),
        cmocka_unit_test(every_shipped_job_has_a_sheet),
        cmocka_unit_test(pressure_drain_and_loop_carry_the_plans_figures),
        cmocka_unit_test(a_loop_that_stands_still_is_drawn),
        cmocka_unit_test(odd_drains_are_drawn),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, ow_shipped_load, ow_shipped_unload);
}
