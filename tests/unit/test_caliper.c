/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oilway/caliper.h"
#include "support/failing.h"
#include "support/testing.h"

#define MM 1e-3

static const ow_context context = OW_CONTEXT_INIT;

static const char *name_of(const ow_thread *thread, char *name)
{
    ow_text text = ow_text_new(&context);
    ow_thread_write(&text, thread);
    snprintf(name, 32, "%s", ow_text_words(&text));
    ow_text_done(&text);
    return name;
}

static ow_caliper_answer ask(double diameter_mm, ow_caliper_side side, double pitch_mm,
                             ow_caliper_taper taper)
{
    ow_caliper_answer answer = {0};
    ow_caliper_ask asked = OW_CALIPER_ASK_INIT;
    asked.diameter_m = diameter_mm * MM;
    asked.side = side;
    asked.pitch_m = pitch_mm * MM;
    asked.taper = taper;
    assert_int_equal(ow_caliper_name(&context, &asked, &answer), OW_OK);
    return answer;
}

static double likelihood_of(const ow_caliper_answer *answer, const char *name)
{
    char found[32];
    for (size_t i = 0; i < answer->count; i++)
        if (strcmp(name_of(&answer->candidates[i].thread, found), name) == 0)
            return answer->candidates[i].likelihood;
    return 0;
}

static void assert_first(double diameter_mm, ow_caliper_side side, double pitch_mm, ow_caliper_taper taper,
                         const char *name, double at_least)
{
    char found[32];
    ow_caliper_answer answer = ask(diameter_mm, side, pitch_mm, taper);
    if (strcmp(name_of(&answer.candidates[0].thread, found), name) != 0 ||
        answer.candidates[0].likelihood < at_least)
        fail_msg("%.2f mm is %s at %.3f, not %s", diameter_mm, found, answer.candidates[0].likelihood, name);
    ow_caliper_done(&context, &answer);
}

/* Sizes in the middle of published limits (ISO 965-2, ASME B1.1, B1.20.1, ISO 228-1), with the pitch read
 * right. */
static void a_diameter_and_a_pitch_name_the_thread(void **state)
{
    (void)state;
    assert_first(9.88, OW_CALIPER_MALE, 1.0, OW_TAPER_NO, "M10x1", 0.95);
    assert_first(11.85, OW_CALIPER_MALE, 1.5, OW_TAPER_NO, "M12x1.5", 0.9);
    assert_first(10.98, OW_CALIPER_MALE, 25.4 / 20, OW_TAPER_NOT_SAID, "7/16-20 UNF", 0.9);
    assert_first(10.98, OW_CALIPER_MALE, 25.4 / 24, OW_TAPER_NOT_SAID, "7/16-24 UNS", 0.9);
    assert_first(10.2, OW_CALIPER_MALE, 25.4 / 27, OW_TAPER_YES, "1/8-27 NPT", 0.95);
    assert_first(9.7, OW_CALIPER_MALE, 25.4 / 28, OW_TAPER_YES, "R1/8", 0.9);
    assert_first(13.0, OW_CALIPER_MALE, 25.4 / 19, OW_TAPER_NO, "G1/4", 0.9);
    assert_first(9.05, OW_CALIPER_FEMALE, 1.0, OW_TAPER_NO, "M10x1", 0.9);
    assert_first(8.5, OW_CALIPER_FEMALE, 25.4 / 24, OW_TAPER_NOT_SAID, "3/8-24 UNF", 0.9);
}

/* The near misses of the trade stay in the list when the pitch is not known. */
static void what_a_diameter_leaves_open_is_listed(void **state)
{
    ow_caliper_answer answer = ask(9.7, OW_CALIPER_MALE, 0, OW_TAPER_NOT_SAID);
    (void)state;
    assert_true(likelihood_of(&answer, "G1/8") > 0.1);
    assert_true(likelihood_of(&answer, "R1/8") > 0.1);
    assert_true(likelihood_of(&answer, "M10x1") > 0.005);
    ow_caliper_done(&context, &answer);
    answer = ask(11.0, OW_CALIPER_MALE, 0, OW_TAPER_NOT_SAID);
    assert_true(likelihood_of(&answer, "7/16-20 UNF") > 0.1);
    assert_true(likelihood_of(&answer, "M11x1") > 0.005);
    assert_true(answer.candidates[1].has_mistake);
    ow_caliper_done(&context, &answer);
}

static void assert_decides(double diameter_mm, double pitch_mm, ow_caliper_taper taper, ow_measure measure,
                           const char *how)
{
    ow_caliper_answer answer = ask(diameter_mm, OW_CALIPER_MALE, pitch_mm, taper);
    if (answer.decide != measure)
        fail_msg("%.2f mm: %s decides, not %s", diameter_mm, ow_measure_word(answer.decide),
                 ow_measure_word(measure));
    assert_non_null(strstr(answer.how, how));
    ow_caliper_done(&context, &answer);
}

static void the_next_measurement_is_the_one_that_tells_most(void **state)
{
    (void)state;
    assert_decides(9.88, 0, OW_TAPER_NOT_SAID, OW_MEASURE_PITCH, "1 mm");
    assert_decides(11.0, 0, OW_TAPER_NOT_SAID, OW_MEASURE_PITCH, "24 tpi");
    assert_decides(9.7, 25.4 / 28, OW_TAPER_NOT_SAID, OW_MEASURE_TAPER, "8 mm apart");
    assert_decides(20.97, 25.4 / 14, OW_TAPER_YES, OW_MEASURE_FLANK_ANGLE, "60 degrees is 1/2-14 NPT");
    assert_decides(10.2, 25.4 / 27, OW_TAPER_YES, OW_MEASURE_NONE, "by hand");
    /* What is unlikely and strips is still told apart, and candidates of one answer stand together. */
    assert_decides(11.0, 1.27, OW_TAPER_NOT_SAID, OW_MEASURE_SEAT, "is M11x1.25");
    assert_decides(13.1, 0, OW_TAPER_NOT_SAID, OW_MEASURE_TAPER, "0.5 mm more is R1/4 or 1/4-18 NPT");
}

/* Gauge lengths: ISO 7-1 (R1/4 6.0 mm), ASME B1.20.1 (L1 of 1/4: 0.2278 in). */
static void the_place_of_the_jaws_is_said_for_each_taper(void **state)
{
    ow_caliper_answer answer = ask(13.1, OW_CALIPER_MALE, 0, OW_TAPER_NOT_SAID);
    (void)state;
    assert_string_equal(answer.place, "from the small end: 6.0 mm if it is R1/4, 5.8 mm if it is 1/4-18 NPT");
    ow_caliper_done(&context, &answer);
    answer = ask(11.0, OW_CALIPER_MALE, 1.27, OW_TAPER_NOT_SAID);
    assert_string_equal(answer.place, "");
    ow_caliper_done(&context, &answer);
}

static void assert_why(double diameter_mm, const char *name, const char *said, bool is_said)
{
    ow_caliper_answer answer = ask(diameter_mm, OW_CALIPER_MALE, 1.5, OW_TAPER_NO);
    ow_thread wanted = {0};
    size_t used, found = 0;
    assert_int_equal(ow_thread_read(name, &wanted, &used), OW_OK);
    while (found < answer.count && !ow_thread_same(&answer.candidates[found].thread, &wanted))
        found++;
    assert_true(found < answer.count);
    if ((strstr(answer.candidates[found].why, said) != NULL) != is_said)
        fail_msg("%.2f mm, %s: %s", diameter_mm, name, answer.candidates[found].why);
    ow_caliper_done(&context, &answer);
}

/* ISO 965-1: M12x1.5 6g is 11.732 to 11.968 mm over the crests. */
static void a_reading_outside_the_limits_says_what_it_speaks_of(void **state)
{
    (void)state;
    assert_why(11.65, "M12x1.5", "0.08 mm below, worn", true);
    assert_why(12.05, "M12x1.5", "0.08 mm above, burred", true);
    assert_why(11.70, "M12x1.5", "worn", false); /* the instrument's own error covers it */
}

/* ASME B1.1: 3A has no allowance, so that a close male reaches its nominal size, 7/16 in or 11.1125 mm. */
static void a_male_of_the_nominal_size_is_its_thread_however_finely_measured(void **state)
{
    static const struct {
        double diameter_mm, pitch_mm;
        const char *name;
    } rows[] = {{11.1125, 1.27, "7/16-20 UNF"},
                {9.525, 25.4 / 24, "3/8-24 UNF"},
                {14.2875, 25.4 / 18, "9/16-18 UNF"},
                {26.9875, 25.4 / 12, "1 1/16-12 UN"}};
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_caliper_answer answer;
        ow_caliper_ask asked = OW_CALIPER_ASK_INIT;
        asked.diameter_m = rows[i].diameter_mm * MM;
        asked.pitch_m = rows[i].pitch_mm * MM;
        asked.accuracy_m = 0.01 * MM;
        asked.side = OW_CALIPER_MALE;
        assert_int_equal(ow_caliper_name(&context, &asked, &answer), OW_OK);
        assert_true(likelihood_of(&answer, rows[i].name) > 0.95);
        assert_non_null(strstr(answer.candidates[0].why, "as class 3A may"));
        assert_string_equal(answer.doubt, "");
        ow_caliper_done(&context, &answer);
    }
}

/* 24.8 mm and 11 to the inch: between G3/4 (24.1 to 24.7 mm, 14 to the inch) and G1 (30.3), ISO 228-1. */
static void a_reading_that_fits_nothing_well_is_doubted(void **state)
{
    ow_caliper_answer answer = ask(24.8, OW_CALIPER_FEMALE, 25.4 / 11, OW_TAPER_NOT_SAID);
    (void)state;
    assert_non_null(strstr(answer.doubt, "count the threads again"));
    ow_caliper_done(&context, &answer);
    answer = ask(24.8, OW_CALIPER_FEMALE, 25.4 / 12, OW_TAPER_NOT_SAID);
    assert_string_equal(answer.doubt, ""); /* 1 1/16-12, 24.70 to 25.16 mm */
    ow_caliper_done(&context, &answer);
}

/* What is measured already tells nothing more, and no measurement tells more than is open. */
static void information_is_bounded_by_what_is_open(void **state)
{
    (void)state;
    for (int step = 0; step < 45; step++) {
        double diameter = 4.9 + 0.63 * step;
        ow_caliper_answer answer = ask(diameter, OW_CALIPER_EITHER, 0, OW_TAPER_NOT_SAID);
        double sum = answer.left_out;
        for (size_t i = 0; i < answer.count; i++) {
            sum += answer.candidates[i].likelihood;
            assert_true(i == 0 || answer.candidates[i].likelihood <= answer.candidates[i - 1].likelihood);
            assert_true(strlen(answer.candidates[i].why) > 10);
        }
        assert_true(fabs(sum - 1) < 1e-9);
        for (size_t m = 0; m < OW_MEASURE_COUNT; m++)
            assert_true(answer.bits[m] >= 0 && answer.bits[m] <= answer.open_bits + 1e-6);
        ow_caliper_done(&context, &answer);
        answer = ask(diameter, OW_CALIPER_EITHER, 1.25, OW_TAPER_NO);
        assert_true(answer.bits[OW_MEASURE_PITCH] == 0 && answer.bits[OW_MEASURE_TAPER] == 0);
        ow_caliper_done(&context, &answer);
    }
}

static void a_number_out_of_range_is_refused(void **state)
{
    ow_caliper_answer answer = {0};
    ow_caliper_ask asked = OW_CALIPER_ASK_INIT;
    (void)state;
    assert_int_equal(ow_caliper_name(&context, &asked, &answer), OW_RANGE);
    asked.diameter_m = 10 * MM;
    asked.accuracy_m = 0;
    assert_int_equal(ow_caliper_name(&context, &asked, &answer), OW_RANGE);
    asked.accuracy_m = 0.05 * MM;
    asked.pitch_m = 7 * MM;
    assert_int_equal(ow_caliper_name(&context, &asked, &answer), OW_RANGE);
    asked.pitch_m = 0;
    asked.diameter_m = 80 * MM;
    assert_int_equal(ow_caliper_name(&context, &asked, &answer), OW_NONE);
    asked.diameter_m = (double)NAN;
    assert_int_equal(ow_caliper_name(&context, &asked, &answer), OW_RANGE);
    assert_null(answer.candidates);
}

static ow_status name_once(const ow_context *failing, void *data)
{
    ow_caliper_answer answer;
    ow_status status = ow_caliper_name(failing, data, &answer);
    if (status == OW_OK)
        ow_caliper_done(failing, &answer);
    return status;
}

/* The sentence may fall back to its plain form for want of memory, so the writing of it is no fault. */
static void a_failed_allocation_leaks_nothing(void **state)
{
    ow_failing failing = ow_failing_new();
    ow_context failing_context = ow_failing_context(&failing);
    ow_caliper_ask asked = OW_CALIPER_ASK_INIT;
    (void)state;
    asked.diameter_m = 9.9 * MM;
    assert_int_equal(name_once(&failing_context, &asked), OW_OK);
    size_t needed = failing.asked;
    for (size_t at = 1; at <= needed; at++) {
        failing.asked = 0;
        failing.fail_at = at;
        ow_status status = name_once(&failing_context, &asked);
        assert_true(status == OW_MEMORY || status == OW_OK);
        assert_true(at > 3 || status == OW_MEMORY);
        assert_int_equal(failing.live, 0);
        assert_int_equal(failing.wrong_frees, 0);
    }
    ow_failing_done(&failing);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_diameter_and_a_pitch_name_the_thread),
        cmocka_unit_test(what_a_diameter_leaves_open_is_listed),
        cmocka_unit_test(the_next_measurement_is_the_one_that_tells_most),
        cmocka_unit_test(the_place_of_the_jaws_is_said_for_each_taper),
        cmocka_unit_test(a_reading_outside_the_limits_says_what_it_speaks_of),
        cmocka_unit_test(a_male_of_the_nominal_size_is_its_thread_however_finely_measured),
        cmocka_unit_test(a_reading_that_fits_nothing_well_is_doubted),
        cmocka_unit_test(information_is_bounded_by_what_is_open),
        cmocka_unit_test(a_number_out_of_range_is_refused),
        cmocka_unit_test(a_failed_allocation_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
