/* SPDX-License-Identifier: MIT */
/* Trees of lines: one answer, what goes in comes out, and more of anything that helps never hurts. */
#include "oilway/hydraulics.h"
#include "support/near.h"

static const double pi = 3.14159265358979323846;
static const double lpm = 1.0 / 60000.0;
static const ow_liquid hot = {823.0, 0.0121};
static const ow_load journal = {"turbo", 2.0 / 60000.0, 300000.0, 0.008, 830.0, 1.0};
static const ow_load mixed = {"twin", 1.0 / 60000.0, 300000.0, 0.008, 830.0, 0.4};

static ow_piece pipe(double bore_m, double length_m)
{
    return (ow_piece){.kind = OW_PIECE_PIPE, .bore_m = bore_m, .length_m = length_m, .count = 1};
}

/* Worked: 15W-40 at 90 C, 4.8 mm, 0.65 m, 2 L/min: Hagen-Poiseuille. */
static void a_laminar_hose_is_hagen_poiseuille(void **state)
{
    (void)state;
    ow_liquid liquid = {829.25, 15.66e-3};
    ow_piece hose = pipe(0.0048, 0.65);
    ow_piece_loss loss[OW_PIECE_LOSSES_MAX(1)];
    assert_int_equal(ow_pieces_losses(NULL, &hose, 1, &liquid, 1.5e-6, 2.0 * lpm, loss), 1);
    assert_near(loss[0].velocity_ms, 1.842, 1e-3);
    assert_near(loss[0].reynolds, 468.3, 1e-3);
    assert_near(loss[0].loss_pa, 26030.0, 1e-3);
    assert_near(loss[0].loss_pa, 128.0 * 15.66e-3 * 0.65 * 2.0 * lpm / (pi * pow(0.0048, 4)), 1e-12);
}

static void a_load_passes_through_its_reference_point(void **state)
{
    (void)state;
    ow_liquid reference = {830.0, 0.008};
    for (int share_at = 0; share_at < 5; share_at++) {
        double share = ow_test_step(0.0, 0.25, share_at);
        ow_load load = mixed;
        load.laminar_share = share;
        assert_near(ow_load_pressure_pa(&load, &reference, load.flow_m3s), 300000.0, 1e-12);
        for (int pressure_at = 0; pressure_at < 16; pressure_at++) {
            double pressure = ow_test_grow(1e-9, 10.0, pressure_at);
            assert_near(ow_load_pressure_pa(&load, &hot, ow_load_flow_m3s(&load, &hot, pressure)), pressure,
                        1e-12);
        }
        assert_true(ow_load_flow_m3s(&load, &hot, 0.0) == 0.0);
        assert_true(ow_load_flow_m3s(&load, &hot, -5.0) == 0.0);
    }
}

/* Three loads and a switch behind two splits. */
typedef struct tree {
    ow_piece trunk_pieces[3], left_pieces[2], right_pieces[1], deep_pieces[2][1];
    ow_branch deep[2], arms[3], trunk;
} tree;

static void plant(tree *t)
{
    t->trunk_pieces[0] = (ow_piece){.kind = OW_PIECE_CHAMBER};
    t->trunk_pieces[1] = pipe(0.0044, 0.030);
    t->trunk_pieces[2] = pipe(0.0060, 0.200);
    t->left_pieces[0] = (ow_piece){.kind = OW_PIECE_TEE_BRANCH, .bore_m = 0.006, .count = 1};
    t->left_pieces[1] = pipe(0.0032, 0.50);
    t->right_pieces[0] = pipe(0.0044, 0.40);
    t->deep_pieces[0][0] = pipe(0.0030, 0.20);
    t->deep_pieces[1][0] = pipe(0.0048, 0.10);
    t->deep[0] = (ow_branch){.name = "b",
                             .piece_count = 1,
                             .pieces = t->deep_pieces[0],
                             .rise_m = 0.1,
                             .has_load = true,
                             .load = mixed};
    t->deep[1] = (ow_branch){
        .name = "c", .piece_count = 1, .pieces = t->deep_pieces[1], .has_load = true, .load = journal};
    t->arms[0] = (ow_branch){.name = "a",
                             .piece_count = 2,
                             .pieces = t->left_pieces,
                             .rise_m = 0.3,
                             .has_load = true,
                             .load = journal};
    t->arms[1] = (ow_branch){.name = "switch", .rise_m = -0.1};
    t->arms[2] = (ow_branch){
        .name = "rear", .piece_count = 1, .pieces = t->right_pieces, .branch_count = 2, .branches = t->deep};
    t->trunk = (ow_branch){
        .piece_count = 3, .pieces = t->trunk_pieces, .rise_m = 0.2, .branch_count = 3, .branches = t->arms};
}

static void what_goes_into_a_split_comes_out_of_it(void **state)
{
    (void)state;
    tree t;
    plant(&t);
    assert_int_equal(ow_branch_total(&t.trunk), 6);
    for (int source_at = 0; source_at < 14; source_at++) {
        double source = ow_test_grow(1e3, 2.0, source_at);
        ow_branch_flow f[6];
        assert_int_equal(ow_branch_solve(&t.trunk, &hot, 1.5e-6, source, f), OW_OK);
        assert_near(f[1].flow_m3s + f[3].flow_m3s, f[0].flow_m3s, 1e-9);
        assert_near(f[4].flow_m3s + f[5].flow_m3s, f[3].flow_m3s, 1e-9);
        assert_true(f[2].flow_m3s == 0.0);
        for (size_t i = 0; i < 6; i++) {
            assert_true(f[i].flow_m3s >= 0.0 && (f[i].end_pa >= 0.0 || f[i].branch->branch_count > 0));
            if (i > 0)
                assert_true(f[i].start_pa == f[f[i].parent].end_pa);
            if (f[i].branch->has_load && f[i].flow_m3s > 0.0)
                assert_near(ow_load_pressure_pa(&f[i].branch->load, &hot, f[i].flow_m3s), f[i].end_pa, 1e-8);
        }
        assert_near(f[2].end_pa, fmax(f[0].end_pa + 823.0 * 9.80665 * 0.1, 0.0),
                    1e-12); /* the switch sees the node */
    }
}

/* Found by fuzzing: behind a tight trunk the node's pressure is a small difference of large ones. */
static void a_tight_trunk_and_a_branch_that_falls_keep_the_balance(void **state)
{
    (void)state;
    ow_piece tight = pipe(0.0001, 1.0), wide = pipe(0.02, 0.1);
    ow_branch arms[2] = {
        {.piece_count = 1, .pieces = &wide, .has_load = true, .load = mixed},
        {.piece_count = 1, .pieces = &wide, .rise_m = -0.5, .has_load = true, .load = journal}};
    ow_branch trunk = {.piece_count = 1, .pieces = &tight, .branch_count = 2, .branches = arms};
    for (int step = 0; step < 8; step++) {
        ow_branch_flow f[3];
        double source = ow_test_grow(1.0, 10.0, step);
        trunk.rise_m = step % 2 == 0 ? 0.0 : 0.2;
        assert_int_equal(ow_branch_solve(&trunk, &hot, 1.5e-6, source, f), OW_OK);
        assert_true(f[0].flow_m3s > 0.0 && f[2].flow_m3s > 0.0);
        assert_near(f[1].flow_m3s + f[2].flow_m3s, f[0].flow_m3s, 1e-9);
        assert_true(f[0].end_pa < 0.0 &&
                    f[1].flow_m3s == 0.0); /* the fall pulls, the level one gets nothing */
    }
}

static void two_equal_arms_share_equally_and_match_one_of_half(void **state)
{
    (void)state;
    ow_piece arm = pipe(0.004, 0.5);
    ow_branch arms[2] = {{.piece_count = 1, .pieces = &arm, .has_load = true, .load = journal},
                         {.piece_count = 1, .pieces = &arm, .has_load = true, .load = journal}};
    ow_branch split = {.branch_count = 2, .branches = arms};
    ow_branch_flow both[3], one[1];
    assert_int_equal(ow_branch_solve(&split, &hot, 1.5e-6, 400000.0, both), OW_OK);
    assert_int_equal(ow_branch_solve(&arms[0], &hot, 1.5e-6, 400000.0, one), OW_OK);
    assert_near(both[1].flow_m3s, both[2].flow_m3s, 1e-12);
    assert_near(both[1].flow_m3s, one[0].flow_m3s, 1e-12);
}

/* Laminar pipes and loads are resistors: R = 128 mu L / (pi D^4), and the load's 3 bar over 2 L/min scaled by
 * mu. */
static void a_laminar_tree_is_a_net_of_resistors(void **state)
{
    (void)state;
    ow_piece trunk = pipe(0.004, 1.0), left = pipe(0.003, 0.7), right = pipe(0.005, 0.3);
    ow_liquid cold = {880.0, 1.0};
    ow_branch arms[2] = {{.piece_count = 1, .pieces = &left, .has_load = true, .load = journal},
                         {.piece_count = 1, .pieces = &right, .has_load = true, .load = journal}};
    ow_branch tree_of_two = {.piece_count = 1, .pieces = &trunk, .branch_count = 2, .branches = arms};
    /* the steps of bore are left out of the resistors: they are made nothing by a fixed loss of nothing
     * between */
    ow_piece none = {.kind = OW_PIECE_FIXED, .bore_m = 0.01, .count = 1};
    ow_piece left_pieces[2] = {none, left}, right_pieces[2] = {none, right};
    arms[0].piece_count = arms[1].piece_count = 2;
    arms[0].pieces = left_pieces;
    arms[1].pieces = right_pieces;
    ow_branch_flow f[3];
    assert_int_equal(ow_branch_solve(&tree_of_two, &cold, 1.5e-6, 500000.0, f), OW_OK);
    double load = 300000.0 / (2.0 * lpm) * 1.0 / 0.008;
    double r0 = 128.0 * 1.0 / (pi * pow(0.004, 4)), r1 = 128.0 * 0.7 / (pi * pow(0.003, 4)) + load,
           r2 = 128.0 * 0.3 / (pi * pow(0.005, 4)) + load;
    assert_near(f[0].flow_m3s, 500000.0 / (r0 + 1.0 / (1.0 / r1 + 1.0 / r2)), 1e-9);
    assert_near(f[1].flow_m3s / f[2].flow_m3s, r2 / r1, 1e-9);
}

static void more_pressure_and_thinner_laminar_oil_never_lower_a_flow(void **state)
{
    (void)state;
    tree t;
    plant(&t);
    double before[6] = {0};
    for (int source_at = 0; source_at < 36; source_at++) {
        double source = ow_test_grow(1e3, 1.3, source_at);
        ow_branch_flow f[6];
        assert_int_equal(ow_branch_solve(&t.trunk, &hot, 1.5e-6, source, f), OW_OK);
        for (size_t i = 0; i < 6; i++) {
            assert_true(f[i].flow_m3s >= before[i] * (1.0 - 1e-9));
            before[i] = f[i].flow_m3s;
        }
    }
    double least = 0.0;
    for (int viscosity_at = 0; viscosity_at < 52; viscosity_at++) {
        double viscosity = ow_test_grow(100.0, 1.0 / 1.2, viscosity_at);
        ow_liquid liquid = {850.0, viscosity};
        ow_branch_flow f[6];
        assert_int_equal(ow_branch_solve(&t.trunk, &liquid, 1.5e-6, 300000.0, f), OW_OK);
        assert_true(f[0].flow_m3s > least);
        least = f[0].flow_m3s;
    }
}

static void a_wider_bore_never_lowers_the_flow(void **state)
{
    (void)state;
    double before = 0.0;
    for (int bore_at = 0; bore_at < 39; bore_at++) {
        double bore = ow_test_grow(0.0005, 1.1, bore_at);
        ow_piece pieces[] = {{.kind = OW_PIECE_CHAMBER}, pipe(bore, 0.6)};
        ow_branch line = {.piece_count = 2, .pieces = pieces, .has_load = true, .load = journal};
        ow_branch_flow f[1];
        assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, 300000.0, f), OW_OK);
        assert_true(f[0].flow_m3s > before);
        before = f[0].flow_m3s;
    }
}

static void a_line_too_high_carries_nothing(void **state)
{
    (void)state;
    ow_piece pieces[] = {pipe(0.004, 1.0)};
    ow_branch line = {.piece_count = 1, .pieces = pieces, .rise_m = 2.0, .has_load = true, .load = journal};
    ow_branch_flow f[1];
    assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, 15000.0, f), OW_OK);
    assert_true(f[0].flow_m3s == 0.0 && f[0].end_pa == 0.0 && f[0].loss_pa == 0.0);
    assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, 0.0, f), OW_OK);
    assert_true(f[0].flow_m3s == 0.0);
}

static void extremes_solve_or_are_refused_but_never_give_nan(void **state)
{
    (void)state;
    static const double bores[] = {0.0001, 0.004, 0.2}, lengths[] = {0.0, 1e-9, 1.0, 100.0},
                        viscosities[] = {1e-5, 0.01, 1e4}, sources[] = {1e-300, 1.0, 1e5, 1e7};
    for (size_t b = 0; b < 3; b++)
        for (size_t l = 0; l < 4; l++)
            for (size_t v = 0; v < 3; v++)
                for (size_t s = 0; s < 4; s++) {
                    ow_piece pieces[] = {
                        {.kind = OW_PIECE_CHAMBER},
                        pipe(bores[b], lengths[l]),
                        {.kind = OW_PIECE_HOLES, .bore_m = bores[2 - b], .length_m = lengths[l], .count = 7}};
                    ow_branch line = {.piece_count = 3, .pieces = pieces, .has_load = true, .load = mixed};
                    ow_liquid liquid = {850.0, viscosities[v]};
                    ow_branch_flow f[1];
                    assert_int_equal(ow_branch_solve(&line, &liquid, 1e-3, sources[s], f), OW_OK);
                    assert_true(isfinite(f[0].flow_m3s) && isfinite(f[0].loss_pa));
                    assert_true(f[0].flow_m3s > 0.0 || sources[s] < 1.0);
                    if (sources[s] >= 1.0) /* less than a double can divide further */
                        assert_near(f[0].end_pa + f[0].loss_pa, sources[s], 1e-9);
                }
}

static void what_is_out_of_range_is_refused(void **state)
{
    (void)state;
    ow_piece good = pipe(0.004, 1.0);
    ow_branch_flow f[1] = {{.flow_m3s = 7.0}};
    static const ow_piece wrong[] = {
        {.kind = OW_PIECE_PIPE, .bore_m = 0.0, .length_m = 1.0, .count = 1},
        {.kind = OW_PIECE_PIPE, .bore_m = (double)NAN, .length_m = 1.0, .count = 1},
        {.kind = OW_PIECE_PIPE, .bore_m = 0.004, .length_m = -1.0, .count = 1},
        {.kind = OW_PIECE_PIPE, .bore_m = 0.004, .length_m = 101.0, .count = 1},
        {.kind = OW_PIECE_HOLES, .bore_m = 0.004, .length_m = 0.001, .count = 0},
        {.kind = OW_PIECE_HOLES, .bore_m = 0.004, .length_m = 0.001, .count = 101},
        {.kind = OW_PIECE_FIXED, .bore_m = 0.004, .coefficient = -1.0, .count = 1},
        {.kind = OW_PIECE_KIND_COUNT, .bore_m = 0.004, .count = 1},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        ow_branch line = {.piece_count = 1, .pieces = &wrong[i], .has_load = true, .load = journal};
        assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, 1e5, f), OW_RANGE);
    }
    ow_branch line = {.piece_count = 1, .pieces = &good, .has_load = true, .load = journal};
    assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, -1.0, f), OW_RANGE);
    assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, 2e7, f), OW_RANGE);
    assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, (double)NAN, f), OW_RANGE);
    assert_int_equal(ow_branch_solve(&line, &hot, (double)NAN, 1e5, f), OW_RANGE);
    assert_int_equal(ow_branch_solve(&line, &(ow_liquid){850.0, 0.0}, 1e-6, 1e5, f), OW_RANGE);
    line.load.laminar_share = 1.5;
    assert_int_equal(ow_branch_solve(&line, &hot, 1.5e-6, 1e5, f), OW_RANGE);
    ow_branch chain[5];
    for (size_t i = 0; i < 5; i++)
        chain[i] = (ow_branch){.branch_count = i > 0 ? 1 : 0, .branches = i > 0 ? &chain[i - 1] : NULL};
    assert_int_equal(ow_branch_check(&chain[OW_BRANCH_DEPTH_MAX]), OW_OK);
    assert_int_equal(ow_branch_check(&chain[OW_BRANCH_DEPTH_MAX + 1]), OW_RANGE);
    assert_true(f[0].flow_m3s == 7.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_laminar_hose_is_hagen_poiseuille),
        cmocka_unit_test(a_load_passes_through_its_reference_point),
        cmocka_unit_test(what_goes_into_a_split_comes_out_of_it),
        cmocka_unit_test(a_tight_trunk_and_a_branch_that_falls_keep_the_balance),
        cmocka_unit_test(two_equal_arms_share_equally_and_match_one_of_half),
        cmocka_unit_test(a_laminar_tree_is_a_net_of_resistors),
        cmocka_unit_test(more_pressure_and_thinner_laminar_oil_never_lower_a_flow),
        cmocka_unit_test(a_wider_bore_never_lowers_the_flow),
        cmocka_unit_test(a_line_too_high_carries_nothing),
        cmocka_unit_test(extremes_solve_or_are_refused_but_never_give_nan),
        cmocka_unit_test(what_is_out_of_range_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
