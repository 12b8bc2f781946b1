/* SPDX-License-Identifier: MIT */
#include "oilway/hydraulics.h"
#include "support/near.h"

/* fluids.friction.Churchill_1977 of python3-fluids 1.0.22. */
static void friction_is_churchills(void **state)
{
    (void)state;
    static const double rows[][3] = {{100, 0, 0.6400},      {1500, 0, 0.04267},   {2300, 1e-4, 0.03084},
                                     {4000, 1e-4, 0.04071}, {1e4, 3e-4, 0.03153}, {1e5, 1e-3, 0.02234}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_near(ow_friction_factor(rows[i][0], rows[i][1], 64.0), rows[i][2], 1e-3);
}

/* Colebrook's equation, solved here by repeated substitution; the worst of these points is 3.2 % off. */
static void turbulent_friction_is_within_3_5_percent_of_colebrook(void **state)
{
    (void)state;
    for (int reynolds_at = 0; reynolds_at < 20; reynolds_at++) {
        double reynolds = ow_test_grow(4500.0, 1.5, reynolds_at);
        for (int rough_at = 0; rough_at < 10; rough_at++) {
            double rough = ow_test_grow(1e-6, 3.0, rough_at);
            double x = 8.0; /* 1 / sqrt f */
            for (int i = 0; i < 50; i++)
                x = -2.0 * log10(rough / 3.7 + 2.51 * x / reynolds);
            assert_near(ow_friction_factor(reynolds, rough, 64.0), 1.0 / (x * x), 0.035);
        }
    }
}

static void laminar_friction_is_64_over_re(void **state)
{
    (void)state;
    for (int reynolds_at = 0; reynolds_at < 53; reynolds_at++) {
        double reynolds = ow_test_grow(1e-9, 1.7, reynolds_at);
        assert_near(ow_friction_factor(reynolds, 1e-4, 64.0) * reynolds, 64.0, 1e-6);
    }
}

/* fluids.fittings.Darby3K of python3-fluids 1.0.22 at a nominal size of half an inch. */
static void fittings_are_darbys(void **state)
{
    (void)state;
    static const double reynolds[] = {20, 100, 500, 2000};
    static const struct {
        ow_piece_kind kind;
        double k[4];
    } rows[] = {{OW_PIECE_ELBOW_90, {40.83, 8.829, 2.429, 1.229}},
                {OW_PIECE_TEE_BRANCH, {26.62, 6.623, 2.623, 1.873}},
                {OW_PIECE_TEE_RUN, {10.54, 2.539, 0.9391, 0.6391}}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        for (size_t j = 0; j < 4; j++)
            assert_near(ow_loss_coefficient(ow_fitting_loss(rows[i].kind, 0.0044), reynolds[j]), rows[i].k[j],
                        1e-3);
}

/* Kittredge and Rowley 1957, measured half-inch elbows, as tabled in Perry's handbook (from memory). */
static void the_elbow_is_never_below_what_was_measured(void **state)
{
    (void)state;
    static const double rows[][2] = {{50, 16}, {100, 7.5}, {500, 1.0}, {1000, 0.9}};
    for (size_t i = 0; i < 4; i++)
        assert_true(ow_loss_coefficient(ow_fitting_loss(OW_PIECE_ELBOW_90, 0.0127), rows[i][0]) >=
                    rows[i][1]);
}

static void every_fitting_has_a_row_and_nothing_else_has(void **state)
{
    (void)state;
    size_t found = 0;
    for (int kind = 0; kind < OW_PIECE_KIND_COUNT; kind++)
        found += ow_three_k_find((ow_piece_kind)kind) != NULL;
    assert_int_equal(found, 6);
    assert_null(ow_three_k_find(OW_PIECE_PIPE));
    assert_string_equal(ow_piece_word(OW_PIECE_TEE_BRANCH), "tee-branch");
    assert_string_equal(ow_piece_word(OW_PIECE_KIND_COUNT), "");
}

/* Entry and exit of a laminar pipe together: 2.25 to 2.28 (Shah and London 1978: 1.25 + 1, from memory). */
static void entry_and_exit_together_cost_what_is_known(void **state)
{
    (void)state;
    double k = ow_loss_coefficient(ow_contraction_loss(0.0, 1900.0), 1900.0) +
               ow_loss_coefficient(ow_expansion_loss(0.0, 1900.0), 1900.0);
    assert_true(k > 2.25 && k < 2.285);
}

/* Borda and Carnot: (1 - s)^2; Idelchik: 0.5 (1 - s)^0.75 (from memory). */
static void turbulent_steps_are_bordas_and_idelchiks(void **state)
{
    (void)state;
    for (int ratio_at = 0; ratio_at < 10; ratio_at++) {
        double ratio = ow_test_step(0.0, 0.1, ratio_at);
        assert_near(ow_loss_coefficient(ow_expansion_loss(ratio, 1e5), 1e5), (1.0 - ratio) * (1.0 - ratio),
                    1e-9);
        assert_near(ow_loss_coefficient(ow_contraction_loss(ratio, 1e5), 1e5), 0.5 * pow(1.0 - ratio, 0.75),
                    1e-9);
    }
}

static void no_step_costs_nothing(void **state)
{
    (void)state;
    for (int reynolds_at = 0; reynolds_at < 6; reynolds_at++) {
        double reynolds = ow_test_grow(1.0, 10.0, reynolds_at);
        assert_true(fabs(ow_loss_coefficient(ow_expansion_loss(1.0, reynolds), reynolds)) < 1e-12);
        assert_true(fabs(ow_loss_coefficient(ow_contraction_loss(1.0, reynolds), reynolds)) < 1e-12);
    }
}

/*
 * Own Navier-Stokes results (axisymmetric Taylor-Hood elements, chamber eight bores wide, two meshes within
 * 0.7 %) beside the formula's own four digits.
 */
static void short_tubes_meet_the_navier_stokes_results(void **state)
{
    (void)state;
    static const struct {
        double length, reynolds, formula, computed;
    } rows[] = {{2, 0.01, 16569, 16508}, {2, 10, 17.14, 17.16},  {2, 100, 3.600, 3.579},
                {2, 400, 2.517, 2.192},  {5, 100, 5.520, 5.605}, {0.5, 100, 2.555, 2.425}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double k =
            ow_loss_coefficient(ow_short_tube_loss(rows[i].length, rows[i].reynolds), rows[i].reynolds);
        assert_near(k, rows[i].formula, 1e-3);
        assert_true(k > 0.98 * rows[i].computed && k < 1.15 * rows[i].computed);
    }
    double k = ow_loss_coefficient(ow_short_tube_loss(2.0, 1500.0), 1500.0);
    assert_near(k, 2.044, 1e-3);
    assert_near(1.0 / sqrt(k), 0.6994, 1e-3);
}

/* Merritt 1967 (from memory): C_d = 1/sqrt(1.5 + 13.74 sqrt(L/(d Re))) or 1/sqrt(2.28 + 64 L/(d Re)),
 * switched at 50. */
static void short_tubes_are_within_two_percent_of_merritt(void **state)
{
    (void)state;
    for (int reynolds_at = 0; reynolds_at < 45; reynolds_at++) {
        double reynolds = ow_test_grow(300.0, 1.1, reynolds_at);
        double z = reynolds / 3.0;
        double merritt = z > 50.0 ? 1.0 / sqrt(1.5 + 13.74 / sqrt(z)) : 1.0 / sqrt(2.28 + 64.0 / z);
        double k = ow_loss_coefficient(ow_short_tube_loss(3.0, reynolds), reynolds);
        assert_near(1.0 / sqrt(k), merritt, 0.018);
    }
}

/* Lichtarowicz, Duggins, Markland 1965 (from memory): measured, L/d 2 to 10, the Reynolds number at the
 * velocity without losses. */
static double measured_discharge(double length, double reynolds)
{
    double discharge = 0.7;
    for (int turn = 0; turn < 60; turn++) {
        double ideal = reynolds / discharge, ten = log10(0.00015 * ideal);
        discharge = 1.0 / (1.0 / (0.827 - 0.0085 * length) + 20.0 / ideal * (1.0 + 2.25 * length) -
                           0.005 * length / (1.0 + 7.5 * ten * ten));
    }
    return discharge;
}

/* What the restrictor's page says of how sure it is: up to a tenth less flow than was measured. */
static void short_tubes_pass_no_more_than_measured_and_a_tenth_less_at_most(void **state)
{
    (void)state;
    static const double lengths[] = {2.0, 3.0, 5.0, 10.0};
    for (size_t i = 0; i < 4; i++)
        for (int at = 0; at < 60; at++) {
            double reynolds = ow_test_grow(30.0, 1.1, at);
            double k = ow_loss_coefficient(ow_short_tube_loss(lengths[i], reynolds), reynolds);
            double share = 1.0 / sqrt(k) / measured_discharge(lengths[i], reynolds);
            assert_true(share > 0.89 && share < 1.005);
        }
}

/* Sampson 1891: a hole in a thin wall, creeping, dp = 24 mu Q / d^3, that is K Re = 12 pi. */
static void a_creeping_hole_in_a_thin_wall_is_sampsons(void **state)
{
    (void)state;
    ow_loss loss = ow_short_tube_loss(1e-9, 1e-9);
    assert_near(loss.viscous, 12.0 * 3.14159265358979, 1e-6);
}

static double loss_of(ow_loss (*formula)(double, double), double shape, double reynolds)
{
    return ow_loss_coefficient(formula(shape, reynolds), reynolds) * reynolds * reynolds;
}

static void loss_rises_with_flow_in_holes_and_entries(void **state)
{
    (void)state;
    static const double lengths[] = {0.0, 0.3, 0.5, 1.0, 3.0, 8.0, 20.0, 21.0, 60.0};
    for (size_t i = 0; i < sizeof lengths / sizeof lengths[0]; i++) {
        double hole = 0.0, in = 0.0;
        for (int reynolds_at = 0; reynolds_at < 2777; reynolds_at++) {
            double reynolds = ow_test_grow(1e-6, 1.01, reynolds_at);
            double hole_now = loss_of(ow_short_tube_loss, lengths[i], reynolds);
            double in_now = loss_of(ow_contraction_loss, 0.04 * (double)i, reynolds);
            assert_true(hole_now > hole && in_now > in);
            hole = hole_now;
            in = in_now;
        }
    }
}

static void nothing_and_almost_nothing_flow_without_nan(void **state)
{
    (void)state;
    ow_liquid liquid = {860.0, 1.0};
    ow_piece pieces[] = {{.kind = OW_PIECE_CHAMBER},
                         {.kind = OW_PIECE_PIPE, .bore_m = 0.004, .length_m = 1.0, .count = 1},
                         {.kind = OW_PIECE_ELBOW_90, .bore_m = 0.005, .count = 1},
                         {.kind = OW_PIECE_RESTRICTOR, .bore_m = 0.001, .length_m = 0.003, .count = 1},
                         {.kind = OW_PIECE_CHAMBER}};
    static const double flows[] = {0.0, 5e-324, 1e-300, 1e-150, 1e-30, 1e-12, 1e-6, 1e-3, 0.1};
    double before = -1.0;
    for (size_t i = 0; i < sizeof flows / sizeof flows[0]; i++) {
        ow_piece_loss losses[OW_PIECE_LOSSES_MAX(5)];
        size_t count = ow_pieces_losses(NULL, pieces, 5, &liquid, 1e-6, flows[i], losses);
        double sum = 0.0;
        for (size_t j = 0; j < count; j++) {
            assert_true(isfinite(losses[j].loss_pa) && isfinite(losses[j].reynolds) &&
                        losses[j].loss_pa >= 0.0);
            sum += losses[j].loss_pa;
        }
        double total = ow_pieces_loss_pa(NULL, pieces, 5, &liquid, 1e-6, flows[i]);
        assert_true(total >= before && isfinite(total));
        assert_near(sum, total, 1e-12);
        before = total;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(friction_is_churchills),
        cmocka_unit_test(turbulent_friction_is_within_3_5_percent_of_colebrook),
        cmocka_unit_test(laminar_friction_is_64_over_re),
        cmocka_unit_test(fittings_are_darbys),
        cmocka_unit_test(the_elbow_is_never_below_what_was_measured),
        cmocka_unit_test(every_fitting_has_a_row_and_nothing_else_has),
        cmocka_unit_test(entry_and_exit_together_cost_what_is_known),
        cmocka_unit_test(turbulent_steps_are_bordas_and_idelchiks),
        cmocka_unit_test(no_step_costs_nothing),
        cmocka_unit_test(short_tubes_meet_the_navier_stokes_results),
        cmocka_unit_test(short_tubes_pass_no_more_than_measured_and_a_tenth_less_at_most),
        cmocka_unit_test(short_tubes_are_within_two_percent_of_merritt),
        cmocka_unit_test(a_creeping_hole_in_a_thin_wall_is_sampsons),
        cmocka_unit_test(loss_rises_with_flow_in_holes_and_entries),
        cmocka_unit_test(nothing_and_almost_nothing_flow_without_nan),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
