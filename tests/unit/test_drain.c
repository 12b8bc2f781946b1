/* SPDX-License-Identifier: MIT */
#include "oilway/drain.h"
#include "oilway/oil.h"
#include "support/near.h"

static const double pi = 3.14159265358979323846;
static const double lpm = 1.0 / 60000.0;

static double degrees(double value)
{
    return value * pi / 180.0;
}

static ow_liquid oil_15w40(double at_c)
{
    ow_oil oil;
    ow_liquid liquid = {0};
    assert_int_equal(ow_oil_set("15W-40", 110.0, 14.7, 878.0, &oil), OW_OK);
    assert_int_equal(ow_oil_liquid(&oil, at_c, &liquid), OW_OK);
    return liquid;
}

static ow_drain_flow run(ow_drain_ask ask)
{
    ow_drain_flow flow = {0};
    assert_int_equal(ow_drain_run(&ask, &flow), OW_OK);
    return flow;
}

/* By symmetry the half-full pipe is half of Hagen-Poiseuille's full one: pi/256 and pi/128. */
static void half_full_carries_half_of_full_exactly(void **state)
{
    (void)state;
    assert_near(ow_part_full_star(0.5), pi / 256.0, 1e-14);
    assert_near(ow_part_full_star(1.0), pi / 128.0, 1e-14);
    assert_near(ow_part_full_star(1.0 - 1e-9), pi / 128.0, 1e-4);
}

/* Film flow with a parabolic profile over a shallow arc: (32/105) (h/D)^3.5. */
static void a_thin_film_follows_the_lubrication_limit(void **state)
{
    (void)state;
    assert_near(ow_part_full_star(0.01) / pow(0.01, 3.5), 32.0 / 105.0, 0.016);
    assert_near(ow_part_full_star(0.002) / pow(0.002, 3.5), 32.0 / 105.0, 0.0035);
    assert_near(ow_part_full_star(0.0011) / pow(0.0011, 3.5), 32.0 / 105.0, 0.0018);
}

/* Finite elements (Q2, graded) that agree with the integral to 2e-7; area and wetted perimeter are geometry.
 */
static void the_integral_meets_the_finite_element_table(void **state)
{
    (void)state;
    static const double rows[][4] = {/* depth, Q*, area, perimeter */
                                     {0.05, 7.913e-6, 0.01468, 0.4510}, {0.10, 8.328e-5, 0.04088, 0.6435},
                                     {0.20, 8.146e-4, 0.1118, 0.9273},  {0.30, 2.8932e-3, 0.1982, 1.1593},
                                     {0.40, 6.7278e-3, 0.2934, 1.3694}, {0.50, 1.2272e-2, 0.3927, 1.5708},
                                     {0.55, 1.5523e-2, 0.4426, 1.6710}, {0.60, 1.8934e-2, 0.4920, 1.7722},
                                     {0.70, 2.5528e-2, 0.5872, 1.9823}, {0.80, 3.0261e-2, 0.6736, 2.2143},
                                     {0.85, 3.1215e-2, 0.7115, 2.3462}, {0.90, 3.0789e-2, 0.7445, 2.4981},
                                     {0.95, 2.8646e-2, 0.7707, 2.6906}, {1.00, 2.4544e-2, 0.7854, 3.1416}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        assert_near(ow_part_full_star(rows[i][0]), rows[i][1], 1e-4);
        assert_near(ow_part_full_area(rows[i][0]), rows[i][2], 5e-4);
        assert_near(ow_part_full_perimeter(rows[i][0]), rows[i][3], 1e-4);
    }
}

static void the_polynomial_is_within_15_in_100000_of_the_integral(void **state)
{
    (void)state;
    for (int depth_at = 0; depth_at < 1911; depth_at++) {
        double depth = ow_test_step(0.005, 0.0005, depth_at);
        assert_near(ow_part_full_star_compact(depth), ow_part_full_star(depth), 1.5e-4);
    }
}

static void flow_is_greatest_at_0_8613_of_the_bore(void **state)
{
    (void)state;
    double most = ow_part_full_star(OW_PART_FULL_DEPTH_MAX);
    assert_near(most, OW_PART_FULL_STAR_MAX, 1e-4);
    assert_near(most / ow_part_full_star(1.0), 1.2733, 1e-4);
    for (int depth_at = 0; depth_at < 99; depth_at++) {
        double depth = ow_test_step(0.01, 0.01, depth_at);
        assert_true(ow_part_full_star(depth) <= most);
    }
}

/* 64/Re on the hydraulic diameter, the free surface left out, is within 2 % up to 0.70 of the bore. */
static void the_friction_factor_is_nearly_that_of_a_full_pipe(void **state)
{
    (void)state;
    for (int depth_at = 0; depth_at < 14; depth_at++) {
        double depth = ow_test_step(0.05, 0.05, depth_at);
        double area = ow_part_full_area(depth), radius = area / ow_part_full_perimeter(depth);
        assert_near(32.0 * radius * radius * area / ow_part_full_star(depth), 64.0, 0.02);
    }
}

/* Worked: 15W-40 at 100 C, 15.9 mm, 20 degrees, 4 L/min of froth. Q* by finite elements, depth by bisection.
 */
static void a_hot_drain_has_the_worked_figures(void **state)
{
    (void)state;
    ow_drain_ask ask = {0.0159, degrees(20.0), 4.0 * lpm, oil_15w40(100.0)};
    ow_drain_flow flow = run(ask);
    assert_near(flow.star, 4.572e-3, 1e-3);
    assert_near(flow.fill, 0.3497, 1e-3);
    assert_near(flow.area_m2 * 1e6, 61.87, 1e-3);
    assert_near(flow.velocity_ms, 1.078, 1e-3);
    assert_near(flow.reynolds, 901.5, 1e-3);
    assert_near(flow.half_full_m3s / lpm, 10.74, 1e-3);
    assert_near(ow_pool_weir_m(ask.bore_m, ask.flow_m3s) * 1e3, 8.646, 1e-3);
    assert_near(ow_pool_orifice_m(ask.bore_m, ask.flow_m3s) * 1e3, 12.80, 1e-3);
    assert_false(flow.flooded || flow.turbulent);
}

static void a_cool_drain_has_the_worked_figures(void **state)
{
    (void)state;
    ow_drain_flow flow = run((ow_drain_ask){0.0159, degrees(20.0), 0.1961 * lpm, oil_15w40(20.0)});
    assert_near(flow.star, 4.900e-3, 1e-3);
    assert_near(flow.fill, 0.3581, 1e-3);
    assert_near(flow.half_full_m3s / lpm, 0.4912, 1e-3);
}

static void a_narrow_drain_fails_both_ways(void **state)
{
    (void)state;
    ow_drain_ask ask = {0.0123, degrees(20.0), 4.0 * lpm, oil_15w40(100.0)};
    assert_near(run(ask).fill, 0.5078, 1e-3);
    assert_near(ow_pool_orifice_m(ask.bore_m, ask.flow_m3s) * 1e3, 35.75, 1e-3);
}

/* Half full from slope, by hand: D = [256 Q nu / (pi g sin slope)]^(1/4); and the worked least slopes. */
static void least_bore_and_least_slope_are_those_by_hand(void **state)
{
    (void)state;
    ow_drain_ask ask = {0.0123, degrees(20.0), 4.0 * lpm, oil_15w40(100.0)};
    double viscosity = ask.liquid.dynamic_viscosity_pas / ask.liquid.density_kgm3, bore, slope;
    assert_int_equal(ow_drain_least_bore_m(&ask, &bore), OW_OK);
    assert_near(bore, pow(256.0 * ask.flow_m3s * viscosity / (pi * 9.80665 * sin(ask.slope_rad)), 0.25),
                5e-4);
    static const double rows[][2] = {{15.9, 7.3}, {14.2, 11.6}, {12.3, 20.8}};
    for (size_t i = 0; i < 3; i++) {
        ask.bore_m = rows[i][0] * 1e-3;
        assert_int_equal(ow_drain_least_slope_rad(&ask, &slope), OW_OK);
        assert_near(slope * 180.0 / pi, rows[i][1], 0.005);
        ask.slope_rad = slope;
        assert_near(run(ask).fill, 0.5, 1e-6);
    }
    ask.bore_m = 0.003;
    assert_int_equal(ow_drain_least_slope_rad(&ask, &slope), OW_NONE);
}

/* The trade's 15 to 16 mm for a journal turbo of 2 L/min: the least bore for a pool of 15 mm. */
static void the_pool_limit_gives_back_the_trades_bore(void **state)
{
    (void)state;
    double bore = ow_pool_least_bore_m(4.0 * lpm, OW_DRAIN_POOL_LIMIT_M);
    assert_true(bore > 0.0150 && bore < 0.0160);
    assert_near(fmax(ow_pool_weir_m(bore, 4.0 * lpm), ow_pool_orifice_m(bore, 4.0 * lpm)),
                OW_DRAIN_POOL_LIMIT_M, 1e-9);
}

static void more_slope_more_bore_and_thinner_oil_never_fill_deeper(void **state)
{
    (void)state;
    for (int flow_at = 0; flow_at < 9; flow_at++) {
        double flow = ow_test_grow(0.01, 3.0, flow_at);
        double before_slope = 1.0, before_bore = 1.0, before_oil = 1.0;
        for (int i = 1; i <= 90; i++) {
            ow_drain_ask ask = {0.0159, degrees(i), flow * lpm, oil_15w40(100.0)};
            double fill = run(ask).fill;
            assert_true(fill <= before_slope + 1e-12);
            before_slope = fill;
            ask.slope_rad = degrees(20.0);
            ask.bore_m = 0.0005 * i;
            fill = run(ask).fill;
            assert_true(fill <= before_bore + 1e-12);
            before_bore = fill;
            ask.bore_m = 0.0159;
            ask.liquid = oil_15w40(2.0 * i);
            ow_drain_flow thinner = run(ask);
            if (thinner.reynolds > 1990.0)
                continue; /* turning turbulent costs more than the thinner oil gains */
            assert_true(thinner.fill <= before_oil + 1e-12);
            before_oil = thinner.fill;
        }
    }
}

static void capacity_is_continuous_where_it_turns_turbulent(void **state)
{
    (void)state;
    double before = 0.0;
    bool was_laminar = false, was_turbulent = false;
    for (int slope_at = 0; slope_at < 8901; slope_at++) {
        double slope = ow_test_step(1.0, 0.01, slope_at);
        ow_drain_ask ask = {0.0159, degrees(slope), 1.0 * lpm, oil_15w40(110.0)};
        double now = 0.0;
        assert_int_equal(ow_drain_capacity_m3s(&ask, 0.5, &now), OW_OK);
        assert_true(now >= before);
        if (before > 0.0)
            assert_true(now < before * 1.02);
        ask.flow_m3s = now;
        (run(ask).turbulent ? (was_turbulent = true) : (was_laminar = true));
        before = now;
    }
    assert_true(was_laminar && was_turbulent);
}

/* Darcy: V = sqrt(8 g R sin(slope) / f), f by Colebrook for a smooth wall on 4 R, within its few percent. */
static void a_turbulent_drain_follows_darcy(void **state)
{
    (void)state;
    ow_liquid thin = {820.0, 0.0006};
    ow_drain_ask ask = {0.0159, degrees(30.0), 1.0 * lpm, thin};
    double flow = 0.0;
    assert_int_equal(ow_drain_capacity_m3s(&ask, 0.5, &flow), OW_OK);
    double area = ow_part_full_area(0.5) * 0.0159 * 0.0159, radius = 0.0159 / 4.0;
    double velocity = flow / area, reynolds = 4.0 * radius * velocity * 820.0 / 0.0006, x = 8.0;
    for (int i = 0; i < 50; i++)
        x = -2.0 * log10(2.51 * x / reynolds);
    assert_true(reynolds > 20000.0);
    assert_near(velocity, sqrt(8.0 * 9.80665 * radius * 0.5) * x, 0.015);
}

static void what_it_gives_back_carries_the_flow(void **state)
{
    (void)state;
    for (int flow_at = 0; flow_at < 45; flow_at++) {
        double flow = ow_test_grow(1e-6, 1.5, flow_at);
        ow_drain_ask ask = {0.0159, degrees(20.0), flow * lpm, oil_15w40(100.0)};
        ow_drain_flow found = run(ask);
        double carried = 0.0;
        if (found.flooded)
            continue;
        assert_int_equal(ow_drain_capacity_m3s(&ask, found.fill, &carried), OW_OK);
        assert_near(carried, ask.flow_m3s, 1e-9);
        assert_near(found.velocity_ms * found.area_m2, ask.flow_m3s, 1e-9);
    }
}

static void extremes_are_flooded_or_refused_but_never_nan(void **state)
{
    (void)state;
    static const double bores[] = {0, 1e-300, 1e-4, 0.0159, 0.2, 0.3, (double)NAN},
                        slopes[] = {-1, 0, 1e-9, 1e-5, 0.5, 1.57, 2, (double)NAN},
                        flows[] = {0, 1e-300, 1e-12, 1e-5, 0.1, 1, HUGE_VAL, (double)NAN},
                        thick[] = {0, 1e-5, 0.01, 1e4, 1e9, (double)NAN};
    for (size_t b = 0; b < 7; b++)
        for (size_t s = 0; s < 8; s++)
            for (size_t f = 0; f < 8; f++)
                for (size_t v = 0; v < 6; v++) {
                    ow_drain_ask ask = {bores[b], slopes[s], flows[f], {850.0, thick[v]}};
                    ow_drain_flow flow = {0};
                    if (ow_drain_run(&ask, &flow) != OW_OK)
                        continue;
                    assert_true(isfinite(flow.star) && flow.fill > 0.0 && flow.fill <= 1.0);
                    assert_true(isfinite(flow.velocity_ms) && isfinite(flow.reynolds) &&
                                flow.half_full_m3s > 0.0);
                    assert_true(flow.flooded == (flow.fill > OW_PART_FULL_DEPTH_MAX));
                }
    ow_drain_flow flow;
    assert_int_equal(ow_drain_run(&(ow_drain_ask){0.0159, degrees(20.0), 1e-5, {850.0, 0.01}}, &flow), OW_OK);
    assert_int_equal(ow_drain_run(&(ow_drain_ask){0.0159, 0.0, 1e-5, {850.0, 0.01}}, &flow), OW_RANGE);
    assert_int_equal(ow_drain_run(&(ow_drain_ask){0.0159, degrees(20.0), 0.0, {850.0, 0.01}}, &flow),
                     OW_RANGE);
    assert_int_equal(ow_drain_run(&(ow_drain_ask){0.3, degrees(20.0), 1e-5, {850.0, 0.01}}, &flow), OW_RANGE);
}

static void points_become_slopes_and_lengths(void **state)
{
    (void)state;
    ow_point points[] = {{0, 0, 0}, {0.03, 0.04, -0.05}, {0.03, 0.04, -0.15}, {0.13, 0.04, -0.15}};
    ow_drain_segment segments[3];
    size_t wrong;
    assert_int_equal(ow_route_segments(points, 4, 0.016, segments, &wrong), OW_OK);
    assert_near(segments[0].slope_rad, degrees(45.0), 1e-12);
    assert_near(segments[0].length_m, 0.05 * sqrt(2.0), 1e-12);
    assert_near(segments[1].slope_rad, degrees(90.0), 1e-12);
    assert_true(segments[2].slope_rad == 0.0 && segments[2].bore_m == 0.016);
    points[2] = points[1];
    assert_int_equal(ow_route_segments(points, 4, 0.016, segments, &wrong), OW_RANGE);
    assert_int_equal(wrong, 2);
    points[2].z_m = (double)NAN;
    assert_int_equal(ow_route_segments(points, 4, 0.016, segments, &wrong), OW_RANGE);
    assert_int_equal(ow_route_segments(points, 1, 0.016, segments, &wrong), OW_RANGE);
}

static void a_route_is_judged_piece_by_piece(void **state)
{
    (void)state;
    ow_liquid hot = oil_15w40(100.0);
    ow_drain_segment good[] = {{0.0159, 0.2, degrees(60.0)}, {0.0159, 0.3, degrees(20.0)}};
    ow_segment_flow flows[3];
    size_t governing = 9;
    assert_int_equal(ow_drain_route(good, 2, 0.0159, 4.0 * lpm, &hot, flows, &governing), OW_OK);
    assert_int_equal(flows[0].faults | flows[1].faults, 0);
    assert_int_equal(governing, 1);
    assert_near(flows[1].flow.fill, 0.3497, 1e-3);

    ow_drain_segment bad[] = {
        {0.0159, 0.2, degrees(60.0)}, {0.0123, 0.3, degrees(-5.0)}, {0.0123, 0.1, degrees(10.0)}};
    assert_int_equal(ow_drain_route(bad, 3, 0.018, 4.0 * lpm, &hot, flows, &governing), OW_OK);
    assert_int_equal(flows[0].faults, OW_SEGMENT_NARROWS);
    assert_int_equal(flows[1].faults,
                     OW_SEGMENT_FLAT | OW_SEGMENT_SAG | OW_SEGMENT_NARROWS | OW_SEGMENT_BORE);
    assert_int_equal(flows[2].faults, OW_SEGMENT_SHALLOW | OW_SEGMENT_FILL | OW_SEGMENT_BORE);
    assert_int_equal(governing, 1);
    assert_int_equal(ow_drain_route(bad, 0, 0.018, 4.0 * lpm, &hot, flows, &governing), OW_RANGE);
}

/* One kilopascal is 1000/(rho g) of oil: 123.0 mm at 829.25 kg/m3. */
static void a_drowned_drain_needs_the_head_of_the_crankcase(void **state)
{
    (void)state;
    ow_liquid liquid = {829.25, 0.0157};
    assert_near(ow_head_m(1000.0, &liquid) * 1e3, 123.0, 5e-4);
    assert_near(ow_drowned_drain_drop_m(500.0, 100.0, 250.0, &liquid), 650.0 / (829.25 * 9.80665) + 0.050,
                1e-9);
}

/* Laminar: Hagen and Poiseuille, 128 mu L Q / (pi D^4), piece by piece. Turbulent and smooth: Prandtl and von
 * Karman's friction factor at Re 10^5 is 0.01799 (Schlichting, Boundary-Layer Theory, from memory);
 * Churchill's fit lies within 1 %. */
static void a_full_drain_loses_what_its_pipes_do(void **state)
{
    (void)state;
    ow_liquid oil = {829.25, 0.0157}, water = {998.2, 0.001002};
    const ow_drain_segment route[2] = {{0.0123, 0.030, 0.5}, {0.0159, 0.40, 0.5}};
    double first_pa = 128.0 * 0.0157 * 0.030 * (4.0 * lpm) / (pi * pow(0.0123, 4));
    double second_pa = 128.0 * 0.0157 * 0.40 * (4.0 * lpm) / (pi * pow(0.0159, 4));
    assert_near(ow_drain_full_loss_pa(route, 2, 4.0 * lpm, &oil) / (first_pa + second_pa), 1.0, 1e-9);
    double velocity_ms = 1e5 * 0.001002 / (998.2 * 0.0159);
    double expected_pa = 0.01799 * 0.40 / 0.0159 * 998.2 * velocity_ms * velocity_ms / 2.0;
    assert_near(ow_drain_full_loss_pa(&route[1], 1, velocity_ms * pi / 4.0 * 0.0159 * 0.0159, &water) /
                    expected_pa,
                1.0, 0.01);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(half_full_carries_half_of_full_exactly),
        cmocka_unit_test(a_thin_film_follows_the_lubrication_limit),
        cmocka_unit_test(the_integral_meets_the_finite_element_table),
        cmocka_unit_test(the_polynomial_is_within_15_in_100000_of_the_integral),
        cmocka_unit_test(flow_is_greatest_at_0_8613_of_the_bore),
        cmocka_unit_test(the_friction_factor_is_nearly_that_of_a_full_pipe),
        cmocka_unit_test(a_hot_drain_has_the_worked_figures),
        cmocka_unit_test(a_cool_drain_has_the_worked_figures),
        cmocka_unit_test(a_narrow_drain_fails_both_ways),
        cmocka_unit_test(least_bore_and_least_slope_are_those_by_hand),
        cmocka_unit_test(the_pool_limit_gives_back_the_trades_bore),
        cmocka_unit_test(more_slope_more_bore_and_thinner_oil_never_fill_deeper),
        cmocka_unit_test(capacity_is_continuous_where_it_turns_turbulent),
        cmocka_unit_test(a_turbulent_drain_follows_darcy),
        cmocka_unit_test(what_it_gives_back_carries_the_flow),
        cmocka_unit_test(extremes_are_flooded_or_refused_but_never_nan),
        cmocka_unit_test(points_become_slopes_and_lengths),
        cmocka_unit_test(a_route_is_judged_piece_by_piece),
        cmocka_unit_test(a_drowned_drain_needs_the_head_of_the_crankcase),
        cmocka_unit_test(a_full_drain_loses_what_its_pipes_do),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
