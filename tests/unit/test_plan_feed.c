/* SPDX-License-Identifier: MIT */
/* The feed of a plan: the layout reckoned as a LINE written by hand, verdicts, hose size, restrictors. */
#include <math.h>
#include <stdio.h>

#include "oilway/line.h"
#include "plan/planned.h"
#include "support/near.h"

#define PLAIN "job: x\nengine: motor\nturbo: plain\nkeep: [sw]\noil: 15W-40\n"
#define FEED "feed: {from: gallery, to: oil-in, hose: 650 mm, rise: 0.25 m}\n"

/* The layout is gallery, ga (entered by a, left by side), he, h4, he, inlet: 4.4 mm through the gauge
 * adapter, half of its 35 mm before its fork and half behind, and 46 mm in each hose end. */
static const char line_by_hand[] =
    "line: by hand\noil: 15W-40\nrise: 0.25 m\nroughness: 1.5 um\n" PLANNED_STATES "pieces:\n"
    "  - chamber\n"
    "  - pipe: {bore: 4.4 mm, length: 17.5 mm}\n"
    "  - tee-branch: {bore: 4.4 mm}\n"
    "  - pipe: {bore: 4.4 mm, length: 17.5 mm}\n"
    "  - pipe: {bore: 3.6 mm, length: 46 mm}\n"
    "  - pipe: {bore: 4.8 mm, length: 650 mm}\n"
    "  - pipe: {bore: 3.6 mm, length: 46 mm}\n"
    "  - chamber\n"
    "load: {name: turbo, flow: 2 L/min, at: 3 bar, viscosity: 8 mPa.s, density: 830 kg/m3, laminar-share: "
    "1}\n";

static void the_layout_is_reckoned_as_the_line_that_a_hand_writes_for_it(void **state)
{
    planned self;
    ow_line line;
    ow_feed_answer answer;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED);
    assert_true(self.plan.feed.solved);
    assert_int_equal(ow_line_read(&self.context, "line.yaml", line_by_hand, strlen(line_by_hand), &line),
                     OW_OK);
    assert_int_equal(ow_feed_solve(&self.context, &line.feed, &answer), OW_OK);
    assert_int_equal(self.plan.feed.answer.state_count, 3);
    for (size_t index = 0; index < 3; index++) {
        assert_near(self.plan.feed.answer.results[index].turbo_pa, answer.results[index].turbo_pa, 1e-9);
        assert_near(self.plan.feed.answer.results[index].flow_m3s, answer.results[index].flow_m3s, 1e-9);
    }
    ow_feed_answer_free(&answer);
    ow_line_free(&line);
    planned_done(&self);
}

static void what_the_parts_cost_is_all_that_is_lost(void **state)
{
    planned self;
    double sum_pa = 0.0;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED);
    const ow_plan_feed *feed = &self.plan.feed;
    for (size_t index = 0; index < feed->part_count; index++)
        sum_pa += feed->parts[index].loss_pa;
    const ow_feed_result *hot = &feed->answer.results[feed->hot_rev];
    assert_near(sum_pa, hot->state->source_pa - hot->turbo_pa, 1e-9);
    assert_int_equal(feed->part_count, 5); /* ga, he, h4, he#2, the rise */
    assert_string_equal(feed->parts[feed->costliest].part, "h4");
    assert_non_null(strstr(feed->limiting, "h4, bore 4.8 mm"));
    planned_done(&self);
}

static void a_switch_on_the_tee_sees_what_the_gallery_gives(void **state)
{
    planned self;
    bool seen = false;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED);
    const ow_feed_result *hot = &self.plan.feed.answer.results[2];
    for (size_t index = 0; index < hot->load_count; index++) {
        if (!hot->loads[index].dead)
            continue;
        seen = true;
        assert_string_equal(hot->loads[index].name, "sw");
        assert_true(hot->loads[index].pressure_pa <= 4.5e5 && hot->loads[index].pressure_pa > 4.4e5);
        assert_true(hot->loads[index].flow_m3s == 0.0);
    }
    assert_true(seen);
    planned_done(&self);
}

/* Common practice: 0.7 bar or more at hot idle, up to 4.5 bar hot for a plain journal bearing. */
static void each_state_gets_its_verdict(void **state)
{
    static const struct {
        const char *states, *verdict;
    } cases[] = {
        {"[{name: hot rev, oil: 100 C, gallery: 4.5 bar}]", "right"},
        {"[{name: hot rev, oil: 100 C, gallery: 6.5 bar}]", "too much"},
        {"[{name: cold, oil: 0 C, gallery: 6.5 bar}, {name: hot rev, oil: 100 C, gallery: 4 bar}]",
         "high, while cold"},
        {"[{name: cold, oil: 0 C, gallery: 4 bar}, {name: hot rev, oil: 100 C, gallery: 4 bar}]", "right"},
        {"[{name: idle, oil: 100 C, gallery: 0.7 bar}, {name: hot rev, oil: 100 C, gallery: 4 bar}]",
         "too little"},
        {"[{name: idle, oil: 100 C, gallery: 1.2 bar}, {name: hot rev, oil: 100 C, gallery: 4 bar}]",
         "enough"},
        {"[{name: idle, oil: 100 C, gallery: 0.02 bar}, {name: hot rev, oil: 100 C, gallery: 4 bar}]",
         "no oil"},
    };
    (void)state;
    for (size_t index = 0; index < sizeof cases / sizeof cases[0]; index++) {
        char text[512];
        planned self;
        snprintf(text, sizeof text, PLAIN FEED "states: %s\n", cases[index].states);
        planned_make(&self, text);
        assert_string_equal(self.plan.feed.verdicts[0], cases[index].verdict);
        planned_done(&self);
    }
}

static void too_much_pressure_is_mended_at_the_engine_and_never_by_a_restrictor(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN FEED
                 "states: [{name: hot rev, oil: 100 C, gallery: 7 bar}]\nlimits: {turbo-pressure: 4 "
                 "bar}\n");
    const ow_finding *finding = planned_finding(&self.plan.findings, "turbo-pressure");
    assert_int_equal(finding->severity, OW_ERROR);
    assert_non_null(strstr(finding->mend, "Measure it at the turbo first"));
    assert_non_null(strstr(finding->mend, "relief valve or take the oil from boss"));
    assert_non_null(strstr(finding->mend, "No restrictor"));
    assert_false(self.plan.ok);
    assert_non_null(strstr(self.plan.feed.restrictor_verdict, "none may be fitted"));
    planned_done(&self);
}

/* A hose of 2 m of -3 costs a journal feed more than a tenth, one of 0.65 m of -4 does not. */
static void the_hose_size_that_is_needed_is_the_smallest_that_does(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED);
    const ow_plan_feed *feed = &self.plan.feed;
    assert_int_equal(feed->size_count, 3);
    assert_int_equal(feed->needed_dash, 4);
    assert_false(feed->sizes[0].enough);
    assert_true(feed->sizes[1].enough && feed->sizes[1].carried && feed->sizes[2].enough);
    assert_near(feed->sizes[1].hot_rev_pa, feed->answer.results[2].turbo_pa, 1e-12);
    assert_near(feed->sizes[1].idle_pa, feed->answer.results[1].turbo_pa, 1e-12);
    assert_true(feed->sizes[0].hot_rev_pa < feed->sizes[1].hot_rev_pa &&
                feed->sizes[1].hot_rev_pa < feed->sizes[2].hot_rev_pa);
    assert_string_equal(feed->size_verdict, "-4 as drawn is what it needs");
    planned_done(&self);
    planned_make(&self, PLAIN PLANNED_STATES "feed: {hose: 8 m}\n");
    assert_int_equal(self.plan.feed.needed_dash, 6);
    assert_string_equal(self.plan.feed.size_verdict, "-6 is needed");
    planned_done(&self);
    planned_make(&self, PLAIN "states: [{name: hot rev, oil: 100 C, gallery: 0.5 bar}]\n" FEED);
    assert_int_equal(self.plan.feed.needed_dash, 0);
    assert_non_null(strstr(self.plan.feed.size_verdict, "none of the three"));
    planned_done(&self);
}

/* The bore that would hold 3.0 bar holds it: put into the line, it does. */
static void a_ball_bearing_gets_the_restrictor_nearest_to_what_holds_its_target(void **state)
{
    planned self;
    ow_feed_answer answer;
    (void)state;
    planned_make(&self, "job: x\nengine: motor\nturbo: ball\nkeep: [sw]\noil: 10W-40\n" PLANNED_STATES
                        "feed: {from: gallery, hose: 650 mm, rise: 0.25 m}\n");
    ow_plan_feed *feed = &self.plan.feed;
    assert_true(feed->restrictor_m > 0.0009 && feed->restrictor_m < 0.0013);
    double nearest_m =
        fabs(feed->restrictor_m - 0.0010) < fabs(feed->restrictor_m - 0.0012) ? 0.0010 : 0.0012;
    assert_near(feed->carried_restrictor_m, nearest_m, 1e-9);
    feed->feed.restrictor.piece->bore_m = feed->restrictor_m;
    assert_int_equal(ow_feed_solve(&self.context, &feed->feed, &answer), OW_OK);
    assert_near(answer.results[feed->hot_rev].turbo_pa, 3.0e5, 1e-6);
    ow_feed_answer_free(&answer);
    assert_true(planned_has(&self.plan.findings, "restrictor-cold"));
    assert_false(planned_has(&self.plan.findings, "feed-pressure-high"));
    assert_non_null(strstr(feed->restrictor_verdict, "no restrictor holds back cold oil"));
    planned_done(&self);
}

static void where_nobody_knows_of_a_built_in_restrictor_both_ways_are_shown(void **state)
{
    planned self;
    size_t hoses = 0;
    (void)state;
    planned_make(&self, "job: x\nengine: motor\nturbo: doubtful\nkeep: [sw]\n" PLANNED_STATES FEED);
    const ow_plan_feed *feed = &self.plan.feed;
    assert_non_null(feed->other);
    assert_non_null(feed->supposing);
    assert_true(feed->carried_restrictor_m < 0.0 && feed->other->carried_restrictor_m > 0.0);
    assert_int_equal(ow_layout_part_count(feed->other->layout), ow_layout_part_count(feed->layout) + 1);
    assert_true(feed->other->answer.results[2].turbo_pa < feed->answer.results[2].turbo_pa);
    assert_true(planned_has(&self.plan.findings, "restrictor-unknown"));
    assert_true(planned_has(&feed->other->findings, "restrictor-unknown"));
    for (size_t index = 0; index < self.plan.bill.line_count; index++) {
        assert_int_not_equal(self.plan.bill.lines[index].part->kind, OW_RESTRICTOR);
        hoses += self.plan.bill.lines[index].part->kind == OW_HOSE;
    }
    assert_int_equal(hoses, 2); /* the feed's and the drain's: the other way is not billed */
    planned_done(&self);
}

static void a_job_that_says_nothing_assumes_everything_and_lists_it(void **state)
{
    static const char *const wanted[] = {
        "the oil",
        "oil temperature, cold",
        "gallery pressure, cold",
        "oil temperature, hot idle",
        "oil temperature, hot rev",
        "gallery pressure, hot rev",
        "length of the feed hose",
        "turbo inlet above the source",
        "oil that plain:oil-in takes at 3 bar and 8 mPa s",
        "limit: pressure at a journal bearing, hot",
        "limit: pressure at the turbo, hot idle",
        "limit: how full the drain may run",
        "limit: least slope of the drain",
        "limit: least true bore of the drain",
        "limit: oil standing over the turbo's outlet",
        "pressure in the crankcase",
        "froth over oil in the drain",
        "way of the drain to plate",
    };
    planned self;
    (void)state;
    planned_make(&self, "job: x\nengine: motor\nturbo: plain\nkeep: [sw]\nfeed: {from: gallery}\n");
    for (size_t index = 0; index < sizeof wanted / sizeof wanted[0]; index++) {
        if (planned_assumed(&self.plan, wanted[index]) == NULL)
            fail_msg("not listed: %s", wanted[index]);
    }
    assert_string_equal(planned_assumed(&self.plan, "gallery pressure, hot rev"),
                        "4.5 bar"); /* its record's */
    assert_string_equal(planned_assumed(&self.plan, "turbo inlet above the source"), "0.235 m");
    for (size_t index = 0; index < self.plan.assumptions.count; index++)
        assert_true(self.plan.assumptions.items[index].source[0] != '\0');
    planned_done(&self);
}

static void an_oil_by_its_viscosities_alone_has_an_assumed_density(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, "job: x\nengine: motor\nturbo: plain\nkeep: [sw]\nfeed: {from: gallery}\n"
                        "oil: {kv40: 110, kv100: 14.7}\n");
    assert_string_equal(planned_assumed(&self.plan, "oil density at 15 C"), "870 kg/m3");
    planned_done(&self);
    planned_make(&self, "job: x\nengine: motor\nturbo: plain\nkeep: [sw]\nfeed: {from: gallery}\n"
                        "oil: {kv40: 110, kv100: 14.7, rho15: 878}\n");
    assert_null(planned_assumed(&self.plan, "oil density at 15 C"));
    planned_done(&self);
}

static void what_a_job_says_is_not_listed_as_assumed(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED
                 "drain: {to: plate, oil-level: -400 mm, crankcase: 0.5 kPa, aeration: 2}\n"
                 "limits: {turbo-pressure: 4.5 bar, fill: 0.5, slope: 15 deg}\n");
    assert_null(planned_assumed(&self.plan, "limit: pressure at a journal bearing, hot"));
    assert_null(planned_assumed(&self.plan, "limit: how full the drain may run"));
    assert_null(planned_assumed(&self.plan, "limit: least slope of the drain"));
    assert_null(planned_assumed(&self.plan, "pressure in the crankcase"));
    assert_null(planned_assumed(&self.plan, "froth over oil in the drain"));
    assert_null(planned_assumed(&self.plan, "length of the feed hose"));
    assert_null(planned_assumed(&self.plan, "turbo inlet above the source"));
    assert_null(planned_assumed(&self.plan, "gallery pressure, cold"));
    planned_done(&self);
}

/* One layout, two ways to it: planned, and read from the YAML that the plan prints. */
static void a_layout_that_is_there_gets_the_figures_of_its_plan(void **state)
{
    planned self;
    ow_plan flow;
    ow_layout *layouts = NULL;
    size_t count = 0;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED);
    ow_text yaml = ow_text_new(&self.context);
    ow_layout_write(&yaml, self.plan.feed.layout);
    assert_int_equal(ow_layouts_read(&self.context, self.catalog, "layout.yaml", ow_text_words(&yaml),
                                     yaml.length, &layouts, &count),
                     OW_OK);
    assert_int_equal(count, 1);
    assert_int_equal(ow_plan_reckon_feed(&self.context, self.plan.job, &layouts[0], &flow), OW_OK);
    const ow_plan_feed *feed = &self.plan.feed;
    assert_true(flow.feed.solved);
    assert_int_equal(flow.feed.answer.state_count, feed->answer.state_count);
    for (size_t index = 0; index < feed->answer.state_count; index++) {
        assert_near(flow.feed.answer.results[index].turbo_pa, feed->answer.results[index].turbo_pa, 1e-12);
        assert_near(flow.feed.answer.results[index].flow_m3s, feed->answer.results[index].flow_m3s, 1e-12);
        assert_string_equal(flow.feed.verdicts[index], feed->verdicts[index]);
    }
    assert_int_equal(flow.drain.return_count, 0);
    ow_plan_done(&flow);
    ow_layouts_free(&self.context, layouts, count);
    ow_text_done(&yaml);
    planned_done(&self);
}

static ow_status reckon_text(planned *self, const char *text, ow_layout **layouts, size_t *count,
                             ow_plan *flow)
{
    const ow_job nothing = {.title = ""};
    assert_int_equal(
        ow_layouts_read(&self->context, self->catalog, "layout.yaml", text, strlen(text), layouts, count),
        OW_OK);
    return ow_plan_reckon_feed(&self->context, &nothing, &(*layouts)[0], flow);
}

static void between_bare_ends_a_bearing_and_a_length_are_assumed_and_listed(void **state)
{
    planned self;
    ow_plan flow;
    ow_layout *layouts = NULL;
    size_t count = 0;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED);
    assert_int_equal(reckon_text(&self,
                                 "layout: bare\ncircuit: feed\nfrom: 1/8-27 NPT female\nparts:\n"
                                 "  - ga: {enter: a}\n    b: [\"1/8-27 NPT male\"]\n"
                                 "    side: [he, h4, he, \"-4 flare37 male\"]\n",
                                 &layouts, &count, &flow),
                     OW_OK);
    assert_true(flow.feed.solved);
    assert_non_null(planned_assumed(&flow, "length of h4"));
    assert_non_null(planned_assumed(&flow, "gallery pressure, cold"));
    assert_non_null(planned_assumed(&flow, "oil that to takes at 3 bar and 8 mPa s"));
    ow_plan_done(&flow);
    ow_layouts_free(&self.context, layouts, count);
    planned_done(&self);
}

static void only_a_feed_is_reckoned(void **state)
{
    planned self;
    ow_plan flow;
    ow_layout *layouts = NULL;
    size_t count = 0;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES FEED);
    assert_int_equal(reckon_text(&self,
                                 "layout: bare\ncircuit: coolant\nfrom: 1/8-27 NPT female\nparts:\n"
                                 "  - ga: {enter: a}\n    b: [\"1/8-27 NPT male\"]\n"
                                 "    side: [he, h4, he, \"-4 flare37 male\"]\n",
                                 &layouts, &count, &flow),
                     OW_NONE);
    ow_layouts_free(&self.context, layouts, count);
    planned_done(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_layout_is_reckoned_as_the_line_that_a_hand_writes_for_it),
        cmocka_unit_test(what_the_parts_cost_is_all_that_is_lost),
        cmocka_unit_test(a_switch_on_the_tee_sees_what_the_gallery_gives),
        cmocka_unit_test(each_state_gets_its_verdict),
        cmocka_unit_test(too_much_pressure_is_mended_at_the_engine_and_never_by_a_restrictor),
        cmocka_unit_test(the_hose_size_that_is_needed_is_the_smallest_that_does),
        cmocka_unit_test(a_ball_bearing_gets_the_restrictor_nearest_to_what_holds_its_target),
        cmocka_unit_test(where_nobody_knows_of_a_built_in_restrictor_both_ways_are_shown),
        cmocka_unit_test(a_job_that_says_nothing_assumes_everything_and_lists_it),
        cmocka_unit_test(an_oil_by_its_viscosities_alone_has_an_assumed_density),
        cmocka_unit_test(what_a_job_says_is_not_listed_as_assumed),
        cmocka_unit_test(a_layout_that_is_there_gets_the_figures_of_its_plan),
        cmocka_unit_test(between_bare_ends_a_bearing_and_a_length_are_assumed_and_listed),
        cmocka_unit_test(only_a_feed_is_reckoned),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
