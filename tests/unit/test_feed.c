/* SPDX-License-Identifier: MIT */
/* The worked feed of docs/physics.md, re-solved there by separate code with the general-purpose library
 * fluids. */
#include "oilway/feed.h"

#include <string.h>

#include "support/failing.h"
#include "support/near.h"

static const double lpm = 1.0 / 60000.0;
static const ow_context plain = OW_CONTEXT_INIT;

#define PIPE(bore, length)                                                        \
    {                                                                             \
        .kind = OW_PIECE_PIPE, .bore_m = (bore), .length_m = (length), .count = 1 \
    }
static const ow_piece worked_pieces[] = {{.kind = OW_PIECE_CHAMBER},
                                         PIPE(0.0044, 0.028),
                                         {.kind = OW_PIECE_TEE_BRANCH, .bore_m = 0.006, .count = 1},
                                         PIPE(0.0044, 0.030),
                                         PIPE(0.0048, 0.650),
                                         {.kind = OW_PIECE_ELBOW_90, .bore_m = 0.0044, .count = 1},
                                         PIPE(0.0044, 0.030),
                                         {.kind = OW_PIECE_CHAMBER}};
static const ow_feed_state worked_states[] = {{"cold", 0.0, 550000.0, false},
                                              {"cool", 20.0, 550000.0, false},
                                              {"hot idle", 100.0, 120000.0, false},
                                              {"hot rev", 100.0, 450000.0, false}};

static ow_feed worked(void)
{
    ow_feed feed = {.title = "worked", .roughness_m = 1.5e-6, .state_count = 4, .states = worked_states};
    assert_int_equal(ow_oil_set("15W-40", 110.0, 14.7, 878.0, &feed.oil), OW_OK);
    feed.trunk = (ow_branch){.piece_count = 8,
                             .pieces = worked_pieces,
                             .rise_m = 0.25,
                             .has_load = true,
                             .load = ow_typical_load_at(OW_LOAD_JOURNAL_MEDIUM)->load};
    return feed;
}

static ow_feed_answer solved(const ow_feed *feed)
{
    ow_feed_answer answer = {0};
    assert_int_equal(ow_feed_solve(&plain, feed, &answer), OW_OK);
    return answer;
}

static double hose_reynolds(const ow_feed_result *result)
{
    for (size_t i = 0; i < result->loss_count; i++)
        if (result->losses[i].piece == 4 && !result->losses[i].is_step)
            return result->losses[i].reynolds;
    return 0.0;
}

static void the_feed_has_the_worked_figures_in_every_state(void **state)
{
    (void)state;
    static const double rows[][3] = {/* L/min, bar, Re in the hose */
                                     {0.02347, 5.169, 0.0785},
                                     {0.09807, 5.169, 1.349},
                                     {0.4887, 1.108, 147.0},
                                     {1.832, 4.154, 550.9}};
    ow_feed feed = worked();
    ow_feed_answer answer = solved(&feed);
    assert_int_equal(answer.state_count, 4);
    for (size_t i = 0; i < 4; i++) {
        const ow_feed_result *result = &answer.results[i];
        assert_near(result->flow_m3s / lpm, rows[i][0], 1e-3);
        assert_near(result->turbo_pa / 1e5, rows[i][1], 1e-3);
        assert_near(hose_reynolds(result), rows[i][2], 1e-3);
        double sum = 0.0;
        for (size_t j = 0; j < result->loss_count; j++)
            sum += result->losses[j].loss_pa;
        assert_near(sum, result->loss_pa, 1e-9);
        assert_near(result->state->source_pa - sum, result->turbo_pa, 1e-9);
        assert_string_equal(result->losses[result->costliest].kind, "pipe");
        assert_int_equal(result->losses[result->costliest].piece, 4);
    }
    ow_feed_answer_free(&answer);
}

static void a_narrower_hose_has_the_worked_figures(void **state)
{
    (void)state;
    ow_feed feed = worked();
    ow_piece pieces[8];
    memcpy(pieces, worked_pieces, sizeof pieces);
    pieces[4].bore_m = 0.0032;
    feed.trunk.pieces = pieces;
    ow_feed_answer answer = solved(&feed);
    assert_near(answer.results[3].flow_m3s / lpm, 1.561, 1e-3);
    assert_near(answer.results[3].turbo_pa / 1e5, 3.539, 1e-3);
    ow_feed_answer_free(&answer);
}

/* Hose volume over the line's own flow at 0 C: 1.7 s; the whole line's volume is 11 % more. */
static void oil_arrives_after_the_worked_time(void **state)
{
    (void)state;
    ow_feed feed = worked();
    ow_feed_answer answer = solved(&feed);
    double hose = ow_pieces_volume_m3(&worked_pieces[4], 1), all = ow_pieces_volume_m3(worked_pieces, 8);
    assert_true(answer.results[0].first_oil_known);
    assert_near(answer.results[0].first_oil_s * hose / all, 1.7, 0.01);
    assert_true(answer.results[3].first_oil_s < 0.1);
    ow_feed_answer_free(&answer);
}

/* Ball bearing on 10W-40, the same line with its last pipe 12 mm long, then the hole, 3 mm long. */
static ow_feed with_restrictor(ow_piece pieces[9], const ow_feed_state *states, size_t count)
{
    ow_feed feed = worked();
    memcpy(pieces, worked_pieces, 8 * sizeof *pieces);
    pieces[6].length_m = 0.012;
    pieces[7] = (ow_piece){.kind = OW_PIECE_RESTRICTOR, .length_m = 0.003, .count = 1};
    pieces[8] = (ow_piece){.kind = OW_PIECE_CHAMBER};
    assert_int_equal(ow_oil_set("10W-40", 95.0, 14.2, 865.0, &feed.oil), OW_OK);
    feed.states = states;
    feed.state_count = count;
    feed.trunk.pieces = pieces;
    feed.trunk.piece_count = 9;
    feed.trunk.load = ow_typical_load_at(OW_LOAD_BALL)->load;
    feed.restrictor = (ow_feed_restrictor){true, &pieces[7], 300000.0, 0};
    return feed;
}

static const ow_feed_state ball_states[] = {{"hot rev", 100.0, 500000.0, false},
                                            {"hot idle", 100.0, 120000.0, false},
                                            {"cold", 0.0, 600000.0, false}};

static void the_restrictor_has_the_worked_figures(void **state)
{
    (void)state;
    ow_piece pieces[9];
    ow_feed feed = with_restrictor(pieces, ball_states, 3);
    ow_feed_answer answer = solved(&feed);
    assert_true(answer.restrictor.needed && answer.restrictor.possible);
    assert_near(answer.restrictor.bore_m * 1e3, 1.019, 1e-3);
    assert_near(answer.restrictor.flow_m3s / lpm, 0.6988, 1e-3);
    assert_near(answer.results[0].turbo_pa, 300000.0, 1e-9);
    assert_near(answer.results[1].flow_m3s / lpm, 0.2562, 1e-3);
    assert_near(answer.results[1].turbo_pa / 1e5, 0.8404, 1e-3);
    assert_near(answer.results[2].flow_m3s / lpm, 0.02672, 1e-3);
    assert_near(answer.results[2].turbo_pa / 1e5, 5.231, 1e-3);
    assert_int_equal(answer.restrictor.offer_count, 2);
    assert_near(answer.restrictor.offers[0].bore_m, 0.0010, 1e-9);
    assert_near(answer.restrictor.offers[1].bore_m, 0.0011, 1e-9);
    assert_near(answer.restrictor.offers[0].results[0].turbo_pa / 1e5, 2.923, 1e-3);
    assert_near(answer.restrictor.offers[1].results[0].turbo_pa / 1e5, 3.300, 1e-3);
    for (size_t i = 0; i < answer.results[0].loss_count; i++)
        if (answer.results[0].losses[i].piece == 7 && !answer.results[0].losses[i].is_step)
            assert_near(answer.results[0].losses[i].reynolds, 1025.0, 1e-3);
    ow_feed_answer_free(&answer);
}

static void a_restrictor_is_not_needed_or_not_possible(void **state)
{
    (void)state;
    ow_piece pieces[9];
    ow_feed feed = with_restrictor(pieces, &ball_states[1], 1);
    ow_feed_answer answer = solved(&feed);
    assert_false(answer.restrictor.needed);
    assert_true(answer.restrictor.bore_m == 0.0 && answer.restrictor.offer_count == 0);
    assert_true(answer.results[0].turbo_pa > 84040.0 && answer.results[0].turbo_pa < 300000.0);
    ow_feed_answer_free(&answer);
    feed = with_restrictor(pieces, ball_states, 3);
    feed.restrictor.target_pa = 1000.0;
    answer = solved(&feed);
    assert_true(answer.restrictor.needed && !answer.restrictor.possible);
    ow_feed_answer_free(&answer);
}

static bool found_in(const ow_findings *findings, const char *rule, const char *where)
{
    for (size_t i = 0; i < findings->count; i++)
        if (strcmp(findings->items[i].rule->id, rule) == 0 && strcmp(findings->items[i].where, where) == 0)
            return true;
    return false;
}

/* Cold, the turbo sees 5.169 bar: above 65 psi, and it must be said. */
static void a_cold_feed_above_65_psi_is_said(void **state)
{
    (void)state;
    ow_feed feed = worked();
    ow_feed_answer answer = solved(&feed);
    ow_findings findings = ow_findings_new(&plain);
    assert_int_equal(ow_feed_judge(&feed, &answer, &findings), OW_OK);
    assert_true(found_in(&findings, "feed-pressure-high", "cold"));
    assert_true(found_in(&findings, "feed-pressure-high", "cool"));
    assert_true(found_in(&findings, "oil-cold", "cold"));
    assert_false(found_in(&findings, "feed-pressure-high", "hot rev"));
    assert_false(found_in(&findings, "feed-pressure-low", "hot idle"));
    ow_findings_done(&findings);
    ow_feed_answer_free(&answer);
}

static void the_restrictors_limits_are_said(void **state)
{
    (void)state;
    ow_piece pieces[9];
    ow_feed feed = with_restrictor(pieces, ball_states, 3);
    ow_feed_answer answer = solved(&feed);
    ow_findings findings = ow_findings_new(&plain);
    assert_int_equal(ow_feed_judge(&feed, &answer, &findings), OW_OK);
    assert_true(found_in(&findings, "restrictor-cold", "cold"));
    assert_true(found_in(&findings, "restrictor-band", "hot rev"));
    assert_false(found_in(&findings, "restrictor-clogs", "hot rev"));
    ow_findings_done(&findings);
    ow_feed_answer_free(&answer);
}

static void a_twin_feed_with_a_switch_reports_each(void **state)
{
    (void)state;
    static const ow_piece trunk[] = {{.kind = OW_PIECE_CHAMBER}, PIPE(0.0044, 0.05)};
    static const ow_piece arm[] = {{.kind = OW_PIECE_TEE_BRANCH, .bore_m = 0.0044, .count = 1},
                                   PIPE(0.0048, 0.5)};
    ow_load load = ow_typical_load_at(OW_LOAD_JOURNAL_SMALL)->load;
    load.name = "front";
    ow_branch arms[3] = {
        {.name = "front", .piece_count = 2, .pieces = arm, .has_load = true, .load = load},
        {.name = "rear", .piece_count = 2, .pieces = arm, .rise_m = 0.2, .has_load = true, .load = load},
        {.name = "sw-2"}};
    ow_feed feed = worked();
    feed.trunk = (ow_branch){.piece_count = 2, .pieces = trunk, .branch_count = 3, .branches = arms};
    ow_feed_answer answer = solved(&feed);
    const ow_feed_result *hot = &answer.results[3];
    assert_int_equal(hot->load_count, 3);
    assert_string_equal(hot->loads[0].name, "front");
    assert_true(hot->loads[2].dead && hot->loads[2].flow_m3s == 0.0);
    assert_true(hot->loads[2].pressure_pa > hot->loads[0].pressure_pa);
    assert_true(hot->loads[1].pressure_pa < hot->loads[0].pressure_pa);
    assert_near(hot->turbo_pa, hot->loads[1].pressure_pa, 1e-12);
    assert_near(hot->flow_m3s, hot->loads[0].flow_m3s + hot->loads[1].flow_m3s, 1e-9);
    assert_true(hot->first_oil_known && hot->first_oil_s > 0.0);
    ow_feed_answer_free(&answer);
}

static void the_band_holds_the_answer_and_opens_both_ways(void **state)
{
    (void)state;
    ow_feed feed = worked();
    ow_feed_answer answer = solved(&feed);
    for (size_t i = 0; i < 4; i++) {
        ow_feed_band band;
        assert_int_equal(ow_feed_state_band(&plain, &feed, i, &band), OW_OK);
        assert_true(band.turbo_low_pa < answer.results[i].turbo_pa &&
                    answer.results[i].turbo_pa < band.turbo_high_pa);
        assert_true(band.flow_low_m3s < answer.results[i].flow_m3s &&
                    answer.results[i].flow_m3s < band.flow_high_m3s);
    }
    ow_feed_band band;
    assert_int_equal(ow_feed_state_band(&plain, &feed, 4, &band), OW_RANGE);
    ow_feed_answer_free(&answer);
}

static void a_feed_out_of_range_is_refused(void **state)
{
    (void)state;
    ow_feed_answer answer = {.state_count = 7};
    ow_feed feed = worked();
    feed.trunk.has_load = false; /* nothing flows anywhere */
    assert_int_equal(ow_feed_solve(&plain, &feed, &answer), OW_RANGE);
    feed = worked();
    feed.state_count = 0;
    assert_int_equal(ow_feed_solve(&plain, &feed, &answer), OW_RANGE);
    feed = worked();
    ow_feed_state wrong[] = {
        {"cold", -41.0, 1e5, false}, {"hot", 100.0, (double)NAN, false}, {"hot", 100.0, 2e7, false}};
    for (size_t i = 0; i < 3; i++) {
        feed.states = &wrong[i];
        feed.state_count = 1;
        assert_int_equal(ow_feed_solve(&plain, &feed, &answer), OW_RANGE);
    }
    assert_int_equal(answer.state_count, 7);
}

static ow_status whole_job(const ow_context *context, void *data)
{
    (void)data;
    ow_piece pieces[9];
    ow_feed feed = with_restrictor(pieces, ball_states, 3);
    ow_feed_answer answer = {0};
    ow_findings findings = ow_findings_new(context);
    ow_feed_band band;
    ow_status status = ow_feed_solve(context, &feed, &answer);
    if (status == OW_OK)
        status = ow_feed_judge(&feed, &answer, &findings);
    if (status == OW_OK)
        status = ow_feed_state_band(context, &feed, 0, &band);
    ow_findings_done(&findings);
    ow_feed_answer_free(&answer);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    assert_true(ow_test_fail_each(whole_job, NULL) > 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_feed_has_the_worked_figures_in_every_state),
        cmocka_unit_test(a_narrower_hose_has_the_worked_figures),
        cmocka_unit_test(oil_arrives_after_the_worked_time),
        cmocka_unit_test(the_restrictor_has_the_worked_figures),
        cmocka_unit_test(a_restrictor_is_not_needed_or_not_possible),
        cmocka_unit_test(a_cold_feed_above_65_psi_is_said),
        cmocka_unit_test(the_restrictors_limits_are_said),
        cmocka_unit_test(a_twin_feed_with_a_switch_reports_each),
        cmocka_unit_test(the_band_holds_the_answer_and_opens_both_ways),
        cmocka_unit_test(a_feed_out_of_range_is_refused),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
