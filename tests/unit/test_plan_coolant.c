/* SPDX-License-Identifier: MIT */
/* The coolant loops of a plan: where they run, how the ports stand, what goes round by itself. */
#include <math.h>

#include "plan/planned.h"
#include "support/near.h"

#define PLAIN "job: x\nengine: motor\nturbo: plain\nkeep: [sw]\noil: 15W-40\nfeed: {from: gallery}\n"
#define DEGREE_RAD 0.017453292519943295

/* The two ports lie 60 mm apart: at 15 degrees one stands 60 sin 15 = 15.53 mm over the other. The higher
 * port of the engine, 160 mm against the turbo's 50 mm, takes the hot return, which so rises 110 mm. */
static void the_loop_leads_cold_in_low_and_home_to_the_higher_port(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN "coolant: {angle: 15 deg, coolant: 50 % glycol, cap: 1.0 bar, heat: 100 W}\n");
    assert_int_equal(self.plan.coolant_count, 1);
    const ow_plan_coolant *loop = &self.plan.coolants[0];
    assert_true(loop->reckoned && !loop->teed && loop->heater == NULL);
    assert_int_equal(loop->leg_count, 2);
    assert_string_equal(loop->low->name, "water-a");
    assert_string_equal(loop->high->name, "water-b");
    assert_string_equal(loop->legs[0].layout->givens[0].name, "motor:bottom");
    assert_string_equal(loop->legs[1].layout->givens[1].name, "motor:head");
    assert_near(loop->loop.apart_m, 0.060, 1e-9);
    assert_near(loop->height_m, 0.060 * sin(15.0 * DEGREE_RAD), 1e-9);
    assert_near(loop->loop.rise_m, 0.110, 1e-9);
    assert_string_equal(planned_assumed(&self.plan, "coolant ports apart"), "60 mm");
    planned_done(&self);
}

/* Heat in is heat carried: Q rho c dT (energy); the curve is monotone, and 15 degrees stands on it. */
static void what_goes_round_by_itself_carries_the_heat_and_grows_with_the_clocking(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN "coolant: {angle: 15 deg, coolant: water, cap: 1.0 bar, heat: 100 W}\n");
    const ow_plan_coolant *loop = &self.plan.coolants[0];
    const ow_siphon *siphon = &loop->siphon;
    assert_false(siphon->stands_still || siphon->boils);
    double carried_w = siphon->flow_m3s * ow_coolant_density_kgm3(OW_WATER, loop->loop.cold_c) *
                       ow_coolant_heat_jkgk(OW_WATER, loop->loop.cold_c) * siphon->rise_k;
    assert_near(carried_w, 100.0, 1e-6);
    bool met = false;
    for (size_t index = 0; index < loop->curve_count; index++) {
        assert_true(index == 0 || loop->curve[index].flow_m3s >= loop->curve[index - 1].flow_m3s);
        if (fabs(loop->curve_angle_rad[index] - 15.0 * DEGREE_RAD) < 1e-9) {
            met = true;
            assert_near(loop->curve[index].flow_m3s, siphon->flow_m3s, 1e-9);
        }
    }
    assert_true(met);
    planned_done(&self);
}

/* Where no single hose fits both ends two share the length: 300 mm of each for the 600 mm that are said. */
static void a_leg_that_no_single_hose_fits_is_joined_of_two(void **state)
{
    planned self;
    (void)state;
    planned_make_with(
        &self, ODD_SHOP,
        "job: x\nengine: wide\nturbo: plain\nkeep: [sw]\noil: 15W-40\nfeed: {from: gallery}\n"
        "coolant: {from: bottom, to: top, angle: 15 deg, coolant: water, cap: 1.0 bar, heat: 100 W, "
        "hoses: [700 mm, 600 mm]}\n");
    const ow_plan_coolant *loop = &self.plan.coolants[0];
    assert_int_equal(ow_layout_part_count(loop->legs[0].layout), 1);
    const ow_layout *hot = loop->legs[1].layout;
    assert_int_equal(ow_layout_part_count(hot), 3);
    assert_string_equal(hot->nodes[1].part->id, "h10");
    assert_string_equal(hot->nodes[2].part->id, "j10");
    assert_string_equal(hot->nodes[3].part->id, "h13");
    assert_near(hot->nodes[1].length_m, 0.300, 1e-9);
    assert_near(hot->nodes[3].length_m, 0.300, 1e-9);
    const ow_finding *told = planned_finding(&self.plan.findings, "two-hoses");
    assert_int_equal(told->severity, OW_NOTE);
    assert_string_equal(told->message, "no single hose of the catalogue fits both ends: 2 are joined");
    assert_true(loop->reckoned);
    assert_false(ow_findings_have(&self.plan.findings, OW_ERROR));
    planned_done(&self);
}

static void the_most_heat_leaves_five_kelvin_to_boiling(void **state)
{
    planned self;
    ow_siphon siphon;
    (void)state;
    planned_make(&self, PLAIN "coolant: {angle: 15 deg, coolant: water, cap: 1.0 bar, heat: 100 W}\n");
    const ow_plan_coolant *loop = &self.plan.coolants[0];
    assert_true(loop->most_heat_w > 100.0);
    ow_loop other = loop->loop;
    other.heat_w = loop->most_heat_w;
    assert_int_equal(ow_siphon_solve(&other, &siphon), OW_OK);
    assert_true(siphon.hot_c <= siphon.boiling_c - 5.0 && siphon.hot_c > siphon.boiling_c - 5.2);
    planned_done(&self);
}

static void a_loop_through_the_heater_has_three_legs(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN "coolant: {heater: yes}\n");
    const ow_plan_coolant *loop = &self.plan.coolants[0];
    assert_int_equal(loop->leg_count, 3);
    assert_true(loop->heater != NULL && strcmp(loop->heater->id, "cab") == 0);
    assert_true(planned_has(&self.plan.findings, "heater-valve"));
    assert_non_null(planned_assumed(&self.plan, "resistance of the heater's core"));
    planned_done(&self);
}

/* The heater's hose is cut: both its halves hang on the tee, and a hose leads from the branch. */
static void a_loop_may_be_teed_into_the_heaters_hoses(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN "coolant: {heater: teed, heater-hose: 16 mm, rise: 0.1 m}\n");
    const ow_plan_coolant *loop = &self.plan.coolants[0];
    assert_true(loop->teed && loop->reckoned);
    assert_int_equal(loop->leg_count, 2);
    for (size_t leg = 0; leg < 2; leg++) {
        const ow_layout *layout = loop->legs[leg].layout;
        size_t tees = 0, hoses = 0;
        assert_int_equal(layout->given_count, 3);
        for (size_t node = 1; node < layout->node_count; node++) {
            const ow_part *part = layout->nodes[node].part;
            tees += part != NULL && part->kind == OW_TEE;
            hoses += part != NULL && ow_part_is_hose(part);
        }
        assert_int_equal(tees, 1);
        assert_int_equal(hoses, 1);
    }
    planned_done(&self);
}

static void without_its_water_the_heat_is_said(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN);
    const ow_finding *finding = planned_finding(&self.plan.findings, "coolant-left-out");
    assert_int_equal(finding->severity, OW_WARNING);
    assert_non_null(strstr(finding->message, "100 to 600 W"));
    assert_int_equal(self.plan.coolant_count, 0);
    planned_done(&self);
}

static void a_turbo_without_water_has_no_loop_and_an_engine_without_ports_is_told(void **state)
{
    planned self;
    (void)state;
    planned_make(&self,
                 "job: x\nengine: motor\nturbo: ball\nkeep: [sw]\nfeed: {from: gallery}\ncoolant: {}\n");
    assert_int_equal(planned_finding(&self.plan.findings, "no-coolant-port")->severity, OW_NOTE);
    planned_done(&self);
    planned_make(&self, "job: x\nengine: dry\nturbo: plain\ncoolant: {}\n");
    assert_int_equal(planned_finding(&self.plan.findings, "no-coolant-port")->severity, OW_ERROR);
    planned_done(&self);
}

/* More heat than it can carry: an error only where heat, cap and rise are all given. */
static void boiling_refuses_only_on_given_figures(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN "coolant: {angle: 15 deg, heat: 5000 W}\n");
    assert_int_equal(planned_finding(&self.plan.findings, "coolant-boils")->severity, OW_WARNING);
    planned_done(&self);
    planned_make(&self, PLAIN "coolant: {angle: 15 deg, heat: 5000 W, cap: 1.0 bar, rise: 0.1 m}\n");
    assert_int_equal(planned_finding(&self.plan.findings, "coolant-boils")->severity, OW_ERROR);
    planned_done(&self);
}

/* A return that the job lets rise and whose port lies lower rises first and then falls. */
static void a_return_that_ends_low_is_told_whatever_rise_is_given(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN "coolant: {from: head, to: bottom, rise: 0.1 m, heat: 20 W}\n");
    assert_true(planned_has(&self.plan.findings, "coolant-falls"));
    planned_done(&self);
}

static void a_hose_that_does_not_stand_the_coolant_is_refused(void **state)
{
    planned self;
    (void)state;
    planned_make(&self, PLAIN "coolant: {hose: j30-r7, heat: 20 W}\n");
    assert_int_equal(planned_finding(&self.plan.findings, "hose-fluid")->severity, OW_ERROR);
    assert_true(self.plan.coolants[0].legs[0].layout != NULL); /* resolved with what does */
    planned_done(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_loop_leads_cold_in_low_and_home_to_the_higher_port),
        cmocka_unit_test(what_goes_round_by_itself_carries_the_heat_and_grows_with_the_clocking),
        cmocka_unit_test(a_leg_that_no_single_hose_fits_is_joined_of_two),
        cmocka_unit_test(the_most_heat_leaves_five_kelvin_to_boiling),
        cmocka_unit_test(a_loop_through_the_heater_has_three_legs),
        cmocka_unit_test(a_loop_may_be_teed_into_the_heaters_hoses),
        cmocka_unit_test(without_its_water_the_heat_is_said),
        cmocka_unit_test(a_turbo_without_water_has_no_loop_and_an_engine_without_ports_is_told),
        cmocka_unit_test(boiling_refuses_only_on_given_figures),
        cmocka_unit_test(a_return_that_ends_low_is_told_whatever_rise_is_given),
        cmocka_unit_test(a_hose_that_does_not_stand_the_coolant_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
