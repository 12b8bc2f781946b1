/* SPDX-License-Identifier: MIT */
/* The drain of a plan: what is reckoned along a route, which return is taken, what is to be made where none
 * does. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "plan/planned.h"
#include "support/near.h"

#define PLAIN "job: x\nengine: motor\nturbo: plain\nkeep: [sw]\noil: 15W-40\n"
#define DEGREE_RAD 0.017453292519943295

/* Positions of the small shop: the plate lies 300 mm under the outlet and hypot(60, 40) mm aside. */
static void each_run_is_reckoned_at_its_own_slope_and_bore(void **state)
{
    planned self;
    ow_liquid liquid;
    ow_drain_flow flow;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES "drain: {to: plate, flow: 2 L/min, aeration: 2}\n");
    const ow_plan_return *home = &self.plan.drain.returns[0];
    assert_int_equal(self.plan.drain.return_count, 1);
    assert_true(home->reckoned && home->taken && home->straight);
    assert_int_equal(home->segment_count, 3); /* stub, hose, stub */
    assert_near(home->segments[1].slope_rad, atan2(0.300, hypot(0.060, 0.040)), 1e-12);
    /* the two stubs of 30 mm lie on the way too */
    assert_near(home->segments[1].length_m, hypot(0.300, hypot(0.060, 0.040)) - 0.060, 1e-12);
    assert_near(home->segments[0].bore_m, 0.017, 1e-12);
    assert_near(home->segments[1].bore_m, 0.019, 1e-12);
    assert_string_equal(home->segment_parts[1], "h19");
    assert_int_equal(ow_oil_liquid(&self.job->oil, 100.0, &liquid), OW_OK);
    for (size_t index = 0; index < 3; index++) {
        const ow_drain_ask ask = {home->segments[index].bore_m, home->segments[index].slope_rad,
                                  4.0 / 60000.0, liquid};
        assert_int_equal(ow_drain_run(&ask, &flow), OW_OK);
        assert_near(home->hot[index].flow.fill, flow.fill, 1e-12);
    }
    planned_done(&self);
}

/* So many points that the runs between them and the parts at both ends are one too many: nothing is left out
 * without a word. */
static void a_route_of_too_many_runs_is_not_reckoned_in_part(void **state)
{
    planned self;
    char job[4096] = PLAIN "drain: {to: plate, route: [";
    (void)state;
    for (int point = 1; point < OW_ROUTE_POINTS_MAX; point++) {
        size_t length = strlen(job);
        (void)snprintf(job + length, sizeof job - length, "%s[%d mm, 0 mm, -%d mm]", point > 1 ? ", " : "",
                       50 * point, 50 * point);
    }
    (void)snprintf(job + strlen(job), sizeof job - strlen(job), "]}\n");
    planned_make(&self, job);
    const ow_plan_return *home = &self.plan.drain.returns[0];
    assert_int_equal(home->point_count, OW_ROUTE_POINTS_MAX);
    assert_false(home->reckoned);
    assert_true(planned_has(&home->findings, "not-reckoned"));
    planned_done(&self);
}

/* What the return names as margin and as the least that would do is so when it is put in. */
static void the_margin_and_the_least_that_would_do_hold(void **state)
{
    planned self;
    ow_liquid liquid;
    ow_drain_flow flow;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES "drain: {to: plate, flow: 2 L/min, aeration: 2}\n");
    const ow_plan_return *home = &self.plan.drain.returns[0];
    const ow_drain_segment *worst = &home->segments[home->governing];
    assert_int_equal(ow_oil_liquid(&self.job->oil, 100.0, &liquid), OW_OK);
    ow_drain_ask ask = {worst->bore_m, worst->slope_rad, home->margin * 4.0 / 60000.0, liquid};
    assert_int_equal(ow_drain_run(&ask, &flow), OW_OK);
    assert_near(flow.fill, 0.5, 1e-6);
    ask = (ow_drain_ask){home->least_bore_m, worst->slope_rad, 4.0 / 60000.0, liquid};
    assert_int_equal(ow_drain_run(&ask, &flow), OW_OK);
    assert_near(flow.fill, 0.5, 1e-6);
    ask = (ow_drain_ask){worst->bore_m, home->least_slope_rad, 4.0 / 60000.0, liquid};
    assert_int_equal(ow_drain_run(&ask, &flow), OW_OK);
    assert_near(flow.fill, 0.5, 1e-6);
    double pool_m = fmax(ow_pool_weir_m(home->least_outlet_m, 4.0 / 60000.0),
                         ow_pool_orifice_m(home->least_outlet_m, 4.0 / 60000.0));
    assert_near(pool_m, OW_DRAIN_POOL_LIMIT_M, 1e-6);
    assert_true(home->margin > 1.0 && home->ok);
    assert_non_null(strstr(self.plan.feed.drain_verdict, "not too much for the run to plate"));
    planned_done(&self);
}

/* Stub, hose, joiner, hose: the two hoses share what the rigid parts leave of the way, sqrt(120^2 + 300^2) mm
 * long. */
static void a_drain_that_no_single_hose_fits_is_joined_of_two(void **state)
{
    planned self;
    (void)state;
    planned_make_with(&self, ODD_SHOP,
                      "job: x\nengine: wide\nturbo: plain\nkeep: [sw]\noil: 15W-40\nfeed: {from: gallery}\n"
                      "drain: {to: back, oil-level: -330 mm}\n");
    const ow_plan_return *home = &self.plan.drain.returns[0];
    static const char *const parts[] = {"st-f", "h19", "j19", "h22"};
    static const double bores_m[] = {0.017, 0.019, 0.016, 0.022};
    double way_m = hypot(0.120, 0.300), hose_m = (way_m - 0.030 - 0.060) / 2.0;
    const double lengths_m[] = {0.030, hose_m, 0.060, hose_m};
    assert_true(home->taken && home->reckoned);
    assert_int_equal(home->segment_count, 4);
    for (size_t index = 0; index < 4; index++) {
        assert_string_equal(home->segment_parts[index], parts[index]);
        assert_near(home->segments[index].bore_m, bores_m[index], 1e-9);
        assert_near(home->segments[index].length_m, lengths_m[index], 1e-9);
        assert_near(home->segments[index].slope_rad, asin(0.300 / way_m), 1e-9);
    }
    assert_true(planned_has(&home->findings, "two-hoses"));
    assert_true(home->ok);
    planned_done(&self);
}

#define CHEAP_NITRILE                                                    \
    "{page: cheap, kind: hose, " SMALL_ALL                               \
    ", columns: [id, a, b, bore, price], rows: [[n19, hose 19 nitrile, " \
    "hose 19 nitrile, 19 mm, 1.00]]}\n"

static const char *drain_hose(const char *page, const char *states, const char *drain)
{
    static char text[1024], id[64];
    planned self;
    (void)snprintf(text, sizeof text, "%s%sdrain: {to: plate, oil-level: -340 mm%s}\n", PLAIN, states, drain);
    planned_make_with(&self, page, text);
    const ow_layout *layout = self.plan.drain.returns[0].layout;
    (void)snprintf(id, sizeof id, "%s", layout != NULL ? layout->nodes[2].part->id : "none");
    planned_done(&self);
    return id;
}

/* A return that nothing but nitrile fits. */
#define COOL_SHOP                                                                                       \
    "{kind: engine, id: cool, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, bore: 6 mm, "    \
    "pressure: 4.5 "                                                                                    \
    "bar, holds: sw}, back: {end: bead 22, circuit: drain, bore: 20 mm, position: [0 mm, 120 mm, -300 " \
    "mm]}}}\n---\n"                                                                                     \
    "{page: n, kind: hose, " SMALL_ALL                                                                  \
    ", columns: [id, a, b, bore, price], rows: [[n22, hose 22 nitrile, hose 22 "                        \
    "nitrile, 22 mm, 2.00]]}\n---\n{page: j, kind: adapter, " SMALL_ALL                                 \
    ", columns: [id, a, b, bore, length], "                                                             \
    "rows: [[j19, barb 19, barb 22, 16 mm, 60 mm]]}\n"

#define HOT_STATES "states: [{name: hot, oil: 110 C, gallery: 4.5 bar}]\n"

/* Nitrile ends at 100 C (SAE J20 class B), whatever its page says; it is taken where it is asked for, or
 * nothing else is there. */
static void the_hose_is_chosen_to_stand_the_hottest_oil(void **state)
{
    (void)state;
    assert_string_equal(drain_hose(CHEAP_NITRILE, PLANNED_STATES, ""), "n19");
    assert_string_equal(drain_hose(CHEAP_NITRILE, HOT_STATES, ""), "h19");
    assert_string_equal(drain_hose(CHEAP_NITRILE, HOT_STATES, ", hose: nitrile"), "n19");
    planned self;
    planned_make_with(
        &self, COOL_SHOP,
        "job: x\nengine: cool\nturbo: plain\nkeep: [sw]\noil: 15W-40\nfeed: {from: gallery}\n" HOT_STATES
        "drain: {to: back, oil-level: -330 mm}\n");
    const ow_layout *layout = self.plan.drain.returns[0].layout;
    assert_non_null(layout);
    assert_string_equal(layout->nodes[4].part->id, "n22");
    assert_true(planned_has(&self.plan.drain.returns[0].findings, "hose-heat"));
    planned_done(&self);
}

/* Head lost to friction by Hagen and Poiseuille, 128 mu L Q / (pi D^4 rho g), in all the drain's pipes run
 * full. */
static double poiseuille_m(const planned *self, const ow_plan_return *home, double oil_c, double flow_m3s)
{
    double sum_m = 0.0;
    ow_liquid liquid;
    assert_int_equal(ow_oil_liquid(&self->job->oil, oil_c, &liquid), OW_OK);
    for (size_t index = 0; index < home->segment_count; index++)
        sum_m += 128.0 * liquid.dynamic_viscosity_pas * home->segments[index].length_m * flow_m3s /
                 (3.14159265358979 * pow(home->segments[index].bore_m, 4)) / (liquid.density_kgm3 * 9.80665);
    return sum_m;
}

/* 0.5 kPa is 0.5 x 1000 / (rho g) m of oil (hydrostatics); friction comes on top, and 50 mm are kept. */
static void entry_and_outlet_are_held_against_the_oil_level_and_the_crankcase(void **state)
{
    planned self;
    ow_liquid liquid;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES "drain: {to: plate, oil-level: -340 mm, crankcase: 0.5 kPa}\n");
    const ow_plan_return *home = &self.plan.drain.returns[0];
    assert_int_equal(ow_oil_liquid(&self.job->oil, 100.0, &liquid), OW_OK);
    assert_true(home->level_said);
    assert_near(home->entry_over_m, 0.040, 1e-9);
    assert_near(home->outlet_over_m, 0.340, 1e-9);
    double hot_m = poiseuille_m(&self, home, 100.0, home->flow_m3s * self.plan.drain.aeration);
    double cold_m = poiseuille_m(&self, home, 0.0, home->cold_flow_m3s * self.plan.drain.aeration);
    assert_near(home->friction_head_m, fmax(hot_m, cold_m), 1e-6);
    assert_true(home->friction_head_m > 0.003);
    assert_near(home->head_needed_m, 500.0 / (liquid.density_kgm3 * 9.80665) + home->friction_head_m + 0.050,
                1e-9);
    assert_true(home->ok);
    planned_done(&self);
    planned_make(&self, PLAIN PLANNED_STATES "drain: {to: plate, oil-level: -250 mm}\n");
    assert_true(planned_has(&self.plan.findings, "drain-drowned"));
    assert_false(self.plan.drain.returns[0].ok);
    assert_int_equal(self.plan.drain.made_count, 1); /* none does: one is to be made */
    assert_near(self.plan.drain.made[0].lowest_m, 0.250, 1e-9);
    planned_done(&self);
}

static void a_route_in_pieces_is_judged_piece_by_piece(void **state)
{
    planned self;
    (void)state;
    planned_make(
        &self, PLAIN PLANNED_STATES
        "drain: {to: plate, route: [{length: 150 mm, slope: 60 deg}, {length: 100 mm, slope: 10 deg}]}\n");
    const ow_plan_return *home = &self.plan.drain.returns[0];
    assert_false(home->straight);
    assert_int_equal(home->segment_count, 4);
    assert_near(home->segments[1].slope_rad, 60.0 * DEGREE_RAD, 1e-9);
    assert_near(home->segments[2].slope_rad, 10.0 * DEGREE_RAD, 1e-9);
    assert_true(planned_has(&self.plan.findings, "drain-slope"));
    assert_true(home->ok);
    planned_done(&self);
    planned_make(&self, PLAIN PLANNED_STATES "drain: {to: plate, route: [{length: 150 mm, slope: 60 deg}, "
                                             "{length: 50 mm, slope: -5 deg}, {length: "
                                             "100 mm, slope: 40 deg}]}\n");
    assert_true(planned_has(&self.plan.findings, "drain-sag"));
    assert_true(self.plan.drain.returns[0].margin == 0.0);
    assert_false(self.plan.ok);
    planned_done(&self);
    planned_make(&self, PLAIN PLANNED_STATES "drain: {to: plate, route: [{length: 150 mm, slope: 0 deg}]}\n");
    assert_true(planned_has(&self.plan.findings, "drain-level"));
    planned_done(&self);
}

/* Both do; the plate is bolted on, the sump has to be welded. */
static void the_return_with_the_least_work_is_taken(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES "drain: {oil-level: -400 mm}\n");
    const ow_plan_drain *drain = &self.plan.drain;
    assert_int_equal(drain->return_count, 2);
    assert_string_equal(drain->returns[0].port->name, "plate");
    assert_int_equal(drain->returns[0].work, OW_WORK_BOLT);
    assert_int_equal(drain->returns[1].work, OW_WORK_WELD);
    assert_true(drain->returns[0].taken && !drain->returns[1].taken);
    assert_true(drain->returns[0].ok && drain->returns[1].ok);
    assert_int_equal(drain->made_count, 0);
    planned_done(&self);
    planned_make(&self,
                 PLAIN PLANNED_STATES "drain: {oil-level: -310 mm}\n"); /* the sump's lies at -330 mm */
    assert_false(self.plan.drain.returns[1].ok);
    assert_false(planned_has(&self.plan.findings, "drain-drowned")); /* of a return that is not taken */
    assert_true(self.plan.ok);
    planned_done(&self);
}

static void two_turbos_do_not_share_a_return(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, "job: x\nengine: motor\nturbo: [plain, ball]\nkeep: [sw]\nfeed: {from: gallery}\n");
    const ow_plan_drain *drain = &self.plan.drain;
    const ow_port *first = NULL, *second = NULL;
    assert_int_equal(drain->return_count, 4);
    for (size_t index = 0; index < 4; index++) {
        if (drain->returns[index].taken)
            *(drain->returns[index].outlet_number == 0 ? &first : &second) = drain->returns[index].port;
    }
    assert_true(first != NULL && second != NULL && first != second);
    assert_non_null(planned_assumed(&self.plan, "places of the turbos"));
    planned_done(&self);
}

static void the_oil_of_two_turbos_of_one_kind_is_not_counted_twice(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, "job: x\nengine: motor\nturbo: [plain, plain]\nkeep: [sw]\nfeed: {from: gallery}\n");
    const ow_plan_feed *feed = &self.plan.feed;
    double sum_m3s = 0.0;
    for (size_t index = 0; index < self.plan.drain.return_count; index++) {
        if (self.plan.drain.returns[index].taken)
            sum_m3s += self.plan.drain.returns[index].flow_m3s;
    }
    assert_near(sum_m3s, feed->answer.results[feed->hot_rev].flow_m3s, 1e-9);
    planned_done(&self);
}

static void a_third_turbo_without_a_return_gets_a_drain_to_be_made(void **state)
{
    planned self;
    (void)state;
    planned_make(&self,
                 "job: x\nengine: motor\nturbo: [plain, ball, plain]\nkeep: [sw]\nfeed: {from: gallery}\n");
    assert_true(planned_has(&self.plan.findings, "no-return"));
    assert_int_equal(self.plan.drain.made_count, 1);
    assert_false(self.plan.ok);
    planned_done(&self);
}

/* M22x1.5: tapping drill 20.5 mm (ISO 2306: nominal less pitch). */
static void an_engine_without_a_return_gets_a_drain_to_be_made(void **state)
{
    planned self;
    size_t swarf = 0;
    (void)state;
    planned_make(&self, "job: x\nengine: dry\nturbo: plain\ndrain: {oil-level: -260 mm}\n");
    assert_true(planned_has(&self.plan.findings, "no-return"));
    assert_int_equal(self.plan.drain.made_count, 1);
    const ow_plan_made *made = &self.plan.drain.made[0];
    assert_near(made->bore_m, 0.016, 1e-9); /* no narrower than the turbo's outlet */
    assert_string_equal(made->fitting, "st-f");
    assert_int_equal(made->hose_mm, 19);
    assert_string_equal(made->hose, "fluoro-silicone");
    assert_string_equal(made->thread, "M22x1.5 female washer");
    assert_string_equal(made->tapped_with, "st-m");
    assert_near(made->tapping.drill_m, 0.0205, 1e-9);
    assert_string_equal(made->welded_with, "st-w");
    assert_near(made->lowest_m, 0.260, 1e-9);
    for (size_t index = 0; index < made->step_count; index++)
        swarf += strstr(made->steps[index], "chip") != NULL;
    assert_true(swarf >= 1 && made->step_count >= 6);
    planned_done(&self);
}

static void a_flange_that_the_shop_knows_not_is_plated(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, "job: x\nengine: motor\nturbo: plain-2\nkeep: [sw]\nfeed: {from: gallery}\n");
    assert_int_equal(self.plan.drain.made_count, 1);
    const ow_plan_made *made = &self.plan.drain.made[0];
    assert_null(made->fitting);
    assert_null(made->pattern);
    assert_non_null(strstr(made->steps[0], "Make a stub for the turbo's outlet, flange f99"));
    assert_non_null(strstr(made->steps[0], "bored 16 mm"));
    assert_non_null(strstr(made->steps[0], "pipe of 19 mm outside"));
    planned_done(&self);
}

/* 1.5 L/min measured, twice that as froth: found by trying where it runs just half full. */
static void what_a_little_warmer_oil_or_a_little_less_bore_would_change_is_said(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES
                 "drain: {to: plate, flow: 2 L/min, aeration: 2, route: [{length: 300 mm, slope: 16 deg}]}\n"
                 "limits: {slope: 5 deg, fill: 0.36}\n");
    const ow_plan_return *home = &self.plan.drain.returns[0];
    double fill = home->hot[home->governing].flow.fill;
    assert_true(fill > 0.34 && fill < 0.38);
    assert_true(planned_has(&self.plan.findings, "unsure"));
    planned_done(&self);
    planned_make(
        &self, PLAIN PLANNED_STATES
        "drain: {to: plate, flow: 1.2 L/min, aeration: 2, route: [{length: 300 mm, slope: 60 deg}]}\n");
    assert_false(planned_has(&self.plan.findings, "unsure"));
    planned_done(&self);
}

static void plain_silicone_is_refused_and_something_better_resolved(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN PLANNED_STATES "drain: {to: plate, hose: silicone, oil-level: -400 mm}\n");
    assert_int_equal(planned_finding(&self.plan.findings, "hose-fluid")->severity, OW_ERROR);
    assert_non_null(self.plan.drain.returns[0].layout);
    planned_done(&self);
    planned_make(&self,
                 PLAIN PLANNED_STATES "drain: {to: plate, hose: fluoro-silicone, oil-level: -400 mm}\n");
    assert_false(planned_has(&self.plan.findings, "hose-fluid"));
    assert_true(self.plan.ok);
    planned_done(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_run_is_reckoned_at_its_own_slope_and_bore),
        cmocka_unit_test(a_route_of_too_many_runs_is_not_reckoned_in_part),
        cmocka_unit_test(the_margin_and_the_least_that_would_do_hold),
        cmocka_unit_test(a_drain_that_no_single_hose_fits_is_joined_of_two),
        cmocka_unit_test(the_hose_is_chosen_to_stand_the_hottest_oil),
        cmocka_unit_test(entry_and_outlet_are_held_against_the_oil_level_and_the_crankcase),
        cmocka_unit_test(a_route_in_pieces_is_judged_piece_by_piece),
        cmocka_unit_test(the_return_with_the_least_work_is_taken),
        cmocka_unit_test(two_turbos_do_not_share_a_return),
        cmocka_unit_test(the_oil_of_two_turbos_of_one_kind_is_not_counted_twice),
        cmocka_unit_test(a_third_turbo_without_a_return_gets_a_drain_to_be_made),
        cmocka_unit_test(an_engine_without_a_return_gets_a_drain_to_be_made),
        cmocka_unit_test(a_flange_that_the_shop_knows_not_is_plated),
        cmocka_unit_test(what_a_little_warmer_oil_or_a_little_less_bore_would_change_is_said),
        cmocka_unit_test(plain_silicone_is_refused_and_something_better_resolved),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
