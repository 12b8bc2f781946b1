/* SPDX-License-Identifier: MIT */
/* Expected turns: worked by hand from the basic sizes of ISO 724, ASME B1.1, ASME B1.20.1, ISO 7-1 and ISO
 * 228-1 with n = c tan(a) / (|dP| + tan(a) P / 16), at basic size and with 0.2 mm more clearance. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <string.h>

#include <cmocka.h>

#include "oilway/pairing.h"

static ow_thread thread_of(const char *words)
{
    ow_thread thread = {0};
    size_t used;
    if (ow_thread_read(words, &thread, &used) != OW_OK)
        fail_msg("\"%s\" is not read", words);
    return thread;
}

static ow_thread_size size_of(const char *words, bool male)
{
    ow_thread_size size = {0};
    ow_thread thread = thread_of(words);
    if (ow_thread_size_of(&thread, male, OW_CLASS_USUAL, &size) != OW_OK)
        fail_msg("\"%s\" has no size", words);
    return size;
}

static ow_pairing pair(const char *male, const char *female)
{
    ow_pairing pairing = {0};
    ow_thread m = thread_of(male), f = thread_of(female);
    if (ow_pair(&m, &f, &pairing) != OW_OK)
        fail_msg("%s in %s is not judged", male, female);
    return pairing;
}

static void near(const char *male, const char *female, const char *what, double found, double expected,
                 double tolerance)
{
    if (fabs(found - expected) > tolerance)
        fail_msg("%s in %s: %s is %.3f, worked %.3f", male, female, what, found, expected);
}

typedef struct worked {
    const char *male, *female;
    double pitch_diameter_mm;  /* male less female, or the clearance c0 of a taper */
    double pitch_mm;           /* male less female */
    int overlap_percent;       /* parallel pairs only */
    double turns, turns_wider; /* 20 = 20 or more */
} worked;

static const worked parallel[] = {
    {"3/8-24 UNF", "M10x1", -0.513, 0.0583, 56, 5.1, 7.1},
    {"M10x1", "3/8-24 UNF", 0.513, -0.0583, 141, 0, 0},
    {"G1/8", "M10x1", -0.203, -0.0929, 75, 1.2, 2.4},
    {"M10x1", "G1/8", 0.203, 0.0929, 123, 0, 0},
    {"3/8-24 UNF", "G1/8", -0.309, 0.1512, 83, 1.1, 1.8},
    {"5/16-24 UNF", "M8x1", -0.100, 0.0583, 94, 1.0, 3.0},
    {"M10x1.25", "M10x1", -0.162, 0.25, 100, 0.4, 0.8},
    {"M12x1.25", "M12x1.5", 0.162, -0.25, 100, 0, 0.1},
    {"M12x1.5", "M12x1.25", -0.162, 0.25, 100, 0.4, 0.8},
    {"7/16-20 UNF", "M11x1.25", 0.100, 0.02, 108, 0, 2.9},
    {"M11x1.25", "7/16-20 UNF", -0.100, -0.02, 92, 2.9, 8.6},
    {"7/16-24 UNS", "7/16-20 UNF", 0.137, -0.2117, 100, 0, 0.2},
    {"M11x1", "7/16-24 UNS", -0.075, -0.0583, 90, 0.7, 2.7},
    {"7/16-20 UNF", "7/16-24 UNS", -0.137, 0.2117, 100, 0.4, 0.9},
    {"7/16-20 UNF", "M12x1.25", -0.900, 0.02, 34, 20, 20},
    {"M12x1.25", "1/2-20 UNF", -0.687, -0.02, 49, 19.8, 20},
    {"M12x1.5", "1/2-20 UNF", -0.849, 0.23, 49, 2.1, 2.6},
    {"9/16-18 UNF", "M14x1.5", 0.345, -0.0889, 118, 0, 0},
    {"M14x1.5", "9/16-18 UNF", -0.345, 0.0889, 81, 2.2, 3.5},
    {"G1/4", "M14x1.5", -0.725, -0.1632, 48, 2.4, 3.1},
    {"G1/4", "9/16-18 UNF", -1.070, -0.0743, 26, 7.9, 9.4},
    {"M18x1.5", "3/4-16 UNF", -0.993, -0.0875, 39, 6.6, 7.9},
    {"3/4-16 UNF", "M20x1.5", -1.007, 0.0875, 41, 6.6, 8.0},
    {"G1/2", "7/8-14 UNF", -1.254, 0, 35, 20, 20},
    {"M22x1.5", "7/8-14 UNF", -0.021, -0.3143, 89, 0, 0.4},
    {"1 1/16-12 UN", "M27x2", -0.088, 0.1167, 99, 0.4, 1.4},
    {"M16x1.5", "G3/8", -0.780, 0.1632, 61, 2.6, 3.3},
    {"G1", "1 5/16-12 UN", -0.193, 0.1924, 96, 0.5, 1.1},
};

static const worked taper[] = {
    {"1/8-27 NPT", "Rc1/8", -0.058, 0.0336, 0, 0, 1.2},
    {"R1/8", "1/8-27 NPT", 0.592, -0.0336, 0, 5.0, 6.7},
    {"1/4-18 NPT", "Rc1/4", 0.217, 0.0743, 0, 1.0, 1.9},
    {"R1/4", "1/4-18 NPT", 0.561, -0.0743, 0, 2.6, 3.5},
    {"3/8-18 NPT", "Rc3/8", 0.303, 0.0743, 0, 1.4, 2.2},
    {"1/2-14 NPT", "Rc1/2", 0.586, 0, 0, 5.2, 6.9},
    {"R1/2", "1/2-14 NPT", 0.492, 0, 0, 4.3, 6.1},
    {"3/4-14 NPT", "Rc3/4", 0.757, 0, 0, 6.7, 8.4},
    {"1-11.5 NPT", "Rc1", 1.016, -0.1004, 0, 3.2, 3.8},
    {"R1", "1-11.5 NPT", 0.341, 0.1004, 0, 1.0, 1.7},
    {"1/8-27 NPT", "M10x1", 0.117, -0.0593, 0, 0.7, 2.0},
    {"R1/8", "M10x1", 0.453, -0.0929, 0, 2.0, 2.9},
    {"1/8-27 NPT", "G1/8", -0.086, 0.0336, 0, 0, 0.9},
    {"R1/8", "G1/8", 0.250, 0, 0, 4.4, 7.9},
    {"1/8-27 NPT", "3/8-24 UNF", -0.396, -0.1176, 0, 0, 0},
    {"1/16-27 NPT", "M8x1", 0.462, -0.0593, 0, 2.9, 4.1},
    {"1/4-18 NPT", "M14x1.5", 0.900, -0.0889, 0, 3.7, 4.5},
    {"R1/4", "M14x1.5", 1.100, -0.1632, 0, 2.9, 3.4},
    {"1/4-18 NPT", "9/16-18 UNF", 1.245, 0, 0, 14.1, 16.4},
    {"1/4-18 NPT", "G1/4", 0.175, 0.0743, 0, 0.8, 1.7},
    {"3/8-18 NPT", "M18x1.5", 1.481, -0.0889, 0, 6.1, 6.9},
    {"1/2-14 NPT", "M22x1.5", 1.762, 0.3143, 0, 2.7, 3.0},
};

static double twenty(double turns)
{
    return turns > 20 ? 20 : turns;
}

static void assert_turns(const worked *w)
{
    ow_thread_size male = size_of(w->male, true), female = size_of(w->female, false);
    double clearance = ow_pair_clearance_basic_m(&male, &female);
    near(w->male, w->female, "turns", twenty(ow_pair_turns(&male, &female, clearance)), w->turns, 0.0501);
    near(w->male, w->female, "wider turns", twenty(ow_pair_turns(&male, &female, clearance + 0.2e-3)),
         w->turns_wider, 0.0501);
}

static void parallel_threads_run_as_far_as_worked_by_hand(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof parallel / sizeof parallel[0]; i++) {
        const worked *w = &parallel[i];
        ow_thread_size male = size_of(w->male, true), female = size_of(w->female, false);
        ow_pairing pairing = pair(w->male, w->female);
        assert_turns(w);
        near(w->male, w->female, "pitch diameter", -ow_pair_clearance_basic_m(&male, &female) * 1e3,
             w->pitch_diameter_mm, 0.0011);
        near(w->male, w->female, "pitch", pairing.pitch_difference_m * 1e3, w->pitch_mm, 0.00006);
        near(w->male, w->female, "overlap", pairing.overlap_basic * 100, w->overlap_percent, 0.51);
    }
}

static void taper_threads_run_as_far_as_worked_by_hand(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof taper / sizeof taper[0]; i++) {
        const worked *w = &taper[i];
        ow_thread_size male = size_of(w->male, true), female = size_of(w->female, false);
        assert_turns(w);
        near(w->male, w->female, "clearance", ow_pair_clearance_basic_m(&male, &female) * 1e3,
             w->pitch_diameter_mm, 0.0011);
    }
}

static const struct {
    const char *male, *female;
    ow_fit fit;
} confusions[] = {
    {"1/8-27 NPT", "Rc1/8", OW_FIT_BINDS},
    {"1/8-27 NPT", "Rp1/8", OW_FIT_BINDS},
    {"R1/8", "1/8-27 NPT", OW_FIT_BINDS},
    {"G1/8", "M10x1", OW_FIT_BINDS},
    {"R1/8", "M10x1", OW_FIT_BINDS},
    {"M10x1", "G1/8", OW_FIT_BINDS},
    {"M10x1", "Rc1/8", OW_FIT_BINDS},
    {"M10x1", "3/8-24 UNF", OW_FIT_NO_START},
    {"3/8-24 UNF", "M10x1", OW_FIT_WEAK},
    {"M12x1.25", "M12x1.5", OW_FIT_BINDS},
    {"M12x1.5", "M12x1.25", OW_FIT_BINDS},
    {"7/16-20 UNF", "M11x1.25", OW_FIT_BINDS},
    {"M11x1.25", "7/16-20 UNF", OW_FIT_WEAK},
    {"7/16-20 UNF", "7/16-24 UNS", OW_FIT_BINDS},
    {"7/16-24 UNS", "7/16-20 UNF", OW_FIT_BINDS},
    {"M12x1.25", "1/2-20 UNF", OW_FIT_WEAK},
    {"1/2-20 UNF", "M12x1.25", OW_FIT_NO_START},
    {"M14x1.5", "9/16-18 UNF", OW_FIT_BINDS},
    {"9/16-18 UNF", "M14x1.5", OW_FIT_NO_START},
    {"M18x1.5", "3/4-16 UNF", OW_FIT_WEAK},
    {"3/4-16 UNF", "M18x1.5", OW_FIT_NO_START},
    {"3/4-16 UNF", "M20x1.5", OW_FIT_WEAK},
    {"M20x1.5", "3/4-16 UNF", OW_FIT_NO_START},
    {"1/4-18 NPT", "G1/4", OW_FIT_BINDS},
    {"1/4-18 NPT", "M14x1.5", OW_FIT_BINDS},
    {"M14x1.5", "1/4-18 NPT", OW_FIT_NO_START},
    {"G1/4", "1/4-18 NPT", OW_FIT_BINDS},
    {"1/2-14 NPT", "Rc1/2", OW_FIT_LEAKS},
    {"R1/2", "1/2-14 NPT", OW_FIT_LEAKS},
    {"3/4-14 NPT", "Rc3/4", OW_FIT_LEAKS},
    {"R3/4", "3/4-14 NPT", OW_FIT_LEAKS},
    {"1/2-14 NPT", "G1/2", OW_FIT_LEAKS},
    {"R1/8", "G1/8", OW_FIT_LEAKS},
    {"G1/2", "7/8-14 UNF", OW_FIT_WEAK},
    {"1/4-18 NPT", "9/16-18 UNF", OW_FIT_WEAK},
    {"7/16-20 UNF", "M12x1.25", OW_FIT_WEAK},
    {"1/2-20 UNF", "M13x1.25", OW_FIT_WEAK},
    {"1/8-27 NPT", "3/8-24 UNF", OW_FIT_NO_START},
    {"M8x1", "M12x1.5", OW_FIT_NO_START},
    {"R1/8", "Rc1/8", OW_FIT_HOME},
    {"R1/8", "Rp1/8", OW_FIT_HOME},
    {"1/8 NPTF", "1/8 NPT", OW_FIT_HOME},
    {"M10x1 taper", "M10x1", OW_FIT_HOME},
    {"G1/4", "G1/4", OW_FIT_HOME},
    {"1/8 NPT", "1/8 NPSM", OW_FIT_LEAKS},
    {"G1/2", "1/2-14 NPT", OW_FIT_LEAKS},
    {"G3/4", "3/4-14 NPT", OW_FIT_BINDS}, /* jams within the first turn: deceives nobody */
};

static void the_confusions_of_the_trade_come_out_right(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof confusions / sizeof confusions[0]; i++) {
        ow_pairing pairing = pair(confusions[i].male, confusions[i].female);
        if (pairing.fit != confusions[i].fit)
            fail_msg("%s in %s: %s, not %s (%s)", confusions[i].male, confusions[i].female,
                     ow_fit_word(pairing.fit), ow_fit_word(confusions[i].fit), pairing.why);
        assert_true(strlen(pairing.why) > 20);
    }
}

static void the_reason_carries_the_figures_of_the_verdict(void **state)
{
    (void)state;
    assert_non_null(strstr(pair("G1/8", "M10x1").why, "0.093 mm too fine"));
    /* 9.350 - 9.147 and 9.500 - (9.147 - 0.107): ISO 965-1, ISO 228-1. */
    assert_non_null(strstr(pair("G1/8", "M10x1").why, "0.20 to 0.46 mm of play"));
    assert_non_null(strstr(pair("1/8-27 NPT", "G1/8").why, "at most 0."));
    assert_non_null(strstr(pair("M12x1.25", "1/2-20 UNF").why, "% of the flank"));
    assert_non_null(strstr(pair("1/2-14 NPT", "Rc1/2").why, "spiral gap"));
    assert_non_null(strstr(pair("M10x1", "3/8-24 UNF").why, "0.251 mm too large"));
    assert_non_null(strstr(pair("M8x1", "M12x1.5").why, "without touching"));
}

/*
 * What bears is the crest of the male less the bore of the female, here at the tightest (ISO 965-1 6g, ASME
 * B1.1 2A and 2B, ISO 228-1 A): M18x1.5 in 3/4-16: 17.968 - 17.331 = 0.637 mm, and 19.012 - 17.331 = 1.681 in
 * its own; G1/2 in 7/8-14: 20.955 - 20.262 = 0.693 mm against 20.955 - 18.631 = 2.324.
 */
static void where_crests_hardly_meet_the_strength_is_no_more_than_what_bears(void **state)
{
    (void)state;
    near("M18x1.5", "3/4-16", "strength", pair("M18x1.5", "3/4-16 UNF").strength_most, 0.637 / 1.681, 0.002);
    near("G1/2", "7/8-14", "strength", pair("G1/2", "7/8-14 UNF").strength_most, 0.693 / 2.324, 0.002);
    for (size_t i = 0; i < ow_thread_count(); i++)
        for (size_t k = 0; k < ow_thread_count(); k++) {
            ow_pairing p;
            if (ow_pair(ow_thread_at(i), ow_thread_at(k), &p) == OW_OK && p.overlap_least <= 0)
                assert_true(p.strength_least == 0);
        }
}

/* A thread goes home in its own hole in every pair of classes. */
static void every_thread_belongs_in_its_own_hole_in_every_class(void **state)
{
    size_t pairs = 0;
    (void)state;
    for (size_t i = 0; i < ow_thread_count(); i++)
        for (int m = 0; m < OW_CLASS_COUNT; m++)
            for (int f = 0; f < OW_CLASS_COUNT; f++) {
                ow_thread_size male, female;
                ow_pairing pairing;
                if (ow_thread_size_of(ow_thread_at(i), true, (ow_thread_class)m, &male) != OW_OK ||
                    ow_thread_size_of(ow_thread_at(i), false, (ow_thread_class)f, &female) != OW_OK)
                    continue;
                assert_int_equal(ow_pair_sizes(&male, &female, &pairing), OW_OK);
                assert_int_equal(pairing.fit, OW_FIT_HOME);
                assert_true(pairing.strength_least > 0.9);
                assert_true(pairing.tapers || pairing.turns_least == pairing.home_turns);
                pairs++;
            }
    assert_true(pairs > 1000);
}

/* All pairs known: what the figures must keep to, whatever the pair. */
static void figures_hang_together_for_every_pair_known(void **state)
{
    size_t pairs = 0;
    (void)state;
    for (size_t i = 0; i < ow_thread_count(); i++)
        for (size_t k = 0; k < ow_thread_count(); k++) {
            ow_pairing p;
            if (ow_pair(ow_thread_at(i), ow_thread_at(k), &p) != OW_OK)
                continue;
            pairs++;
            assert_true(p.turns_least >= 0 && p.turns_least <= p.turns_most && p.turns_most <= p.home_turns);
            assert_true(p.free_least <= p.free_most && p.clearance_least_m < p.clearance_most_m);
            assert_true(p.overlap_least < p.overlap_most);
            assert_true(p.strength_least >= 0 && p.strength_least <= 1 && p.strength_most <= 1);
            assert_true(p.runs == (p.fit != OW_FIT_NO_START));
            if (p.fit == OW_FIT_BINDS)
                assert_true(p.turns_most < p.home_turns && p.turns_most > 0);
            if (p.fit == OW_FIT_WEAK && !p.tapers)
                assert_true(p.free_most >= p.home_turns);
            if (p.fit == OW_FIT_LEAKS)
                assert_true(p.pitch_difference_m == 0);
            assert_true(strlen(p.why) > 20 && strlen(p.why) < sizeof p.why - 1);
        }
    assert_true(pairs > 30000);
}

/* What one thread is too large by in the other's hole, the other is too small by in its own. */
static void clearances_of_a_pair_swapped_are_opposite(void **state)
{
    size_t pairs = 0;
    (void)state;
    for (size_t i = 0; i < ow_thread_count(); i++)
        for (size_t k = 0; k < i; k++) {
            ow_thread_size male, hole, other_male, other_hole;
            const ow_thread *a = ow_thread_at(i), *b = ow_thread_at(k);
            if (ow_thread_is_taper(a->family) || ow_thread_is_taper(b->family) ||
                ow_thread_size_of(a, true, OW_CLASS_USUAL, &male) != OW_OK ||
                ow_thread_size_of(a, false, OW_CLASS_USUAL, &hole) != OW_OK ||
                ow_thread_size_of(b, true, OW_CLASS_USUAL, &other_male) != OW_OK ||
                ow_thread_size_of(b, false, OW_CLASS_USUAL, &other_hole) != OW_OK)
                continue;
            double one = ow_pair_clearance_basic_m(&male, &other_hole);
            double other = ow_pair_clearance_basic_m(&other_male, &hole);
            assert_true(fabs(one + other) < 1e-12);
            assert_true(ow_pair_turns(&male, &other_hole, one) == 0 ||
                        ow_pair_turns(&other_male, &hole, other) == 0);
            pairs++;
        }
    assert_true(pairs > 10000);
}

static void a_pair_that_cannot_be_judged_is_refused(void **state)
{
    ow_pairing pairing;
    ow_thread a = thread_of("Rc1/8"), b = thread_of("M10"), c = thread_of("M10x1");
    ow_thread_size male = size_of("M10x1", true);
    (void)state;
    assert_int_equal(ow_pair(&a, &c, &pairing), OW_NONE);
    assert_int_equal(ow_pair(&b, &c, &pairing), OW_RANGE);
    assert_int_equal(ow_pair_sizes(&male, &male, &pairing), OW_RANGE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parallel_threads_run_as_far_as_worked_by_hand),
        cmocka_unit_test(taper_threads_run_as_far_as_worked_by_hand),
        cmocka_unit_test(the_confusions_of_the_trade_come_out_right),
        cmocka_unit_test(the_reason_carries_the_figures_of_the_verdict),
        cmocka_unit_test(where_crests_hardly_meet_the_strength_is_no_more_than_what_bears),
        cmocka_unit_test(every_thread_belongs_in_its_own_hole_in_every_class),
        cmocka_unit_test(figures_hang_together_for_every_pair_known),
        cmocka_unit_test(clearances_of_a_pair_swapped_are_opposite),
        cmocka_unit_test(a_pair_that_cannot_be_judged_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
