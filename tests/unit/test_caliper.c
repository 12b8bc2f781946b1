/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/caliper.h"
#include "support/chance.h"
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

/* ---- calibration ---------------------------------------------------------------------------- */
/*
 * Truths are drawn here, from limits reckoned here: ISO 965-1 (formulas, not rounded), ASME B1.1 (the same),
 * ASME B1.20.1 (table of E1), ISO 7-1 and ISO 228-1 (tables). Of the program only the list of sizes and the
 * stated prior are used.
 */
static const double npt_e1_in[][3] = {
    /* size / 64, E1, L1, inches: ASME B1.20.1 */
    {4, 0.28118, 0.160},  {8, 0.37360, 0.1615},  {16, 0.49163, 0.2278}, {24, 0.62701, 0.240},
    {32, 0.77843, 0.320}, {48, 0.98887, 0.339},  {64, 1.23863, 0.400},  {80, 1.58338, 0.420},
    {96, 1.82234, 0.420}, {128, 2.29627, 0.436},
};
static const double bsp_mm[][4] = {
    /* size / 64, major, gauge length, external major tolerance: ISO 7-1, ISO 228-1 */
    {4, 7.723, 4.0, 0.214},    {8, 9.728, 4.0, 0.214},    {16, 13.157, 6.0, 0.25},  {24, 16.662, 6.4, 0.25},
    {32, 20.955, 8.2, 0.284},  {40, 22.911, 8.2, 0.284},  {48, 26.441, 9.5, 0.284}, {56, 30.201, 9.5, 0.284},
    {64, 33.249, 10.4, 0.36},  {72, 37.897, 10.4, 0.36},  {80, 41.910, 12.7, 0.36}, {96, 47.803, 12.7, 0.36},
    {112, 53.746, 12.7, 0.36}, {128, 59.614, 15.9, 0.36},
};

typedef struct truth {  /* mm */
    double least, most; /* of the crest, at the place */
    double pitch;
    bool taper;
    double before, after; /* along a taper, from the place toward the small end and away */
} truth;

static bool metric_truth(const ow_thread *t, bool male, truth *out)
{
    double d = t->size / 1000.0, p = t->pitch / 1000.0;
    double td1 = p < 1 ? 433 * p - 190 * pow(p, 1.22) : 230 * pow(p, 0.7);
    double es = 15 + 11 * p, td = 180 * cbrt(p * p) - 3.15 / sqrt(p), d1 = d - 1.082532 * p;
    *out = male ? (truth){d - es / 1000 - td / 1000, d - es / 1000, p, false, 0, 0}
                : (truth){d1, d1 + td1 / 1000, p, false, 0, 0};
    if (t->family != OW_THREAD_METRIC_TAPER)
        return true;
    double gauge = p <= 1 ? 2.5 : d < 19 ? 3.5 : 4.5;
    *out = (truth){d - p / 16, d + p / 16, p, true, gauge, p <= 1 ? 3 : d < 19 ? 5 : 6};
    return male;
}

static bool unified_truth(double major_in, double p, bool nine_pitches, bool male, truth *out)
{
    double t2a =
        0.0015 * cbrt(major_in) + 0.0015 * sqrt(nine_pitches ? 9 * p : major_in) + 0.015 * cbrt(p * p);
    double top = major_in - 0.3 * t2a, minor = major_in - 1.082532 * p;
    *out = male ? (truth){(top - 0.06 * cbrt(p * p)) * 25.4, top * 25.4, p * 25.4, false, 0, 0}
                : (truth){minor * 25.4, (minor + 0.25 * p - 0.4 * p * p) * 25.4, p * 25.4, false, 0, 0};
    return true;
}

static bool npt_truth(const ow_thread *t, bool male, truth *out)
{
    for (size_t i = 0; i < sizeof npt_e1_in / sizeof npt_e1_in[0]; i++) {
        double e1 = npt_e1_in[i][1], l1 = npt_e1_in[i][2], p = 2.0 / t->pitch;
        double blunt_p = t->pitch > 50 ? 0.096 : t->pitch > 30 ? 0.088 : t->pitch > 25 ? 0.078 : 0.073;
        if ((int)npt_e1_in[i][0] != t->size)
            continue;
        if (t->family == OW_THREAD_NPSM)
            return unified_truth(e1 + 0.649519 * p, p, true, male, out);
        double sharp = 0.8 * p, blunt = (0.866025 - 2 * blunt_p) * p, turn = p / 16;
        double useful = l1 + 0.1 * (t->pitch > 50 ? 1 : 1.8); /* L2 - L1, roughly; inches */
        *out =
            male ? (truth){(e1 - turn + blunt) * 25.4, (e1 + turn + sharp) * 25.4, p * 25.4, true, l1 * 25.4,
                           (useful - l1) * 25.4}
                 : (truth){
                       (e1 - turn - sharp) * 25.4, (e1 + turn - blunt) * 25.4, p * 25.4, true, 0, l1 * 25.4};
        return true;
    }
    return false;
}

static bool bsp_truth(const ow_thread *t, bool male, truth *out)
{
    for (size_t i = 0; i < sizeof bsp_mm / sizeof bsp_mm[0]; i++) {
        double major = bsp_mm[i][1], p = 50.8 / t->pitch, minor = major - 1.280654 * p;
        double bore = t->pitch > 50 ? 0.282 : t->pitch > 30 ? 0.445 : t->pitch > 25 ? 0.541 : 0.640;
        double rp = t->pitch > 50 ? 0.071 : t->pitch > 30 ? 0.104 : t->pitch > 25 ? 0.142 : 0.180;
        if ((int)bsp_mm[i][0] != t->size)
            continue;
        if (t->family == OW_THREAD_G)
            *out = male ? (truth){major - bsp_mm[i][3], major, p, false, 0, 0}
                        : (truth){minor, minor + bore, p, false, 0, 0};
        else if (t->family == OW_THREAD_R)
            *out = (truth){major - p / 16, major + p / 16, p, true, bsp_mm[i][2], 2.75 * p};
        else if (t->family == OW_THREAD_RC)
            *out = (truth){minor + p / 32 - p / 12.8, minor + p / 32 + p / 12.8, p, true, 0, bsp_mm[i][2]};
        else
            *out = (truth){minor - rp, minor + rp, p, false, 0, 0};
        return male == (t->family == OW_THREAD_R) || t->family == OW_THREAD_G;
    }
    return false;
}

static bool truth_of(const ow_thread *t, bool male, truth *out)
{
    char name[32];
    switch (t->family) {
    case OW_THREAD_METRIC:
    case OW_THREAD_METRIC_TAPER:
        return metric_truth(t, male, out);
    case OW_THREAD_UNIFIED:
        name_of(t, name);
        return unified_truth(t->size / 64.0, 2.0 / t->pitch, !strstr(name, "UNC") && !strstr(name, "UNF"),
                             male, out);
    case OW_THREAD_NPT:
    case OW_THREAD_NPSM:
        return npt_truth(t, male, out);
    case OW_THREAD_R:
    case OW_THREAD_RC:
    case OW_THREAD_RP:
    case OW_THREAD_G:
        return bsp_truth(t, male, out);
    case OW_THREAD_NPTF:
    case OW_THREAD_FAMILY_COUNT:
        break;
    }
    return false;
}

typedef struct draw {
    const ow_thread *thread;
    bool male;
    ow_caliper_ask ask;
} draw;

/* careful: jaws at the stated place within a pitch, no wear, the error inside the accuracy. Otherwise as
 * docs/caliper.md states the model. */
static double read_diameter(ow_chance *chance, const truth *t, bool male, double accuracy_mm, bool careful)
{
    double reading = ow_chance_between(chance, t->least, t->most);
    if (t->taper) {
        bool stray = !careful && ow_chance_between(chance, 0, 1) > 0.7;
        double along =
            male ? ow_chance_between(chance, stray ? -t->before : -t->pitch, stray ? t->after : t->pitch)
                 : -ow_chance_between(chance, 0, stray ? t->after : 2 * t->pitch);
        reading += along / 16;
    }
    if (!careful && ow_chance_between(chance, 0, 1) < 0.2)
        reading += (male ? -1 : 1) * ow_chance_between(chance, 0, 0.1);
    double reach = !careful && ow_chance_between(chance, 0, 1) < 0.05 ? 3 * accuracy_mm : accuracy_mm;
    return reading + ow_chance_between(chance, -reach, reach);
}

/* A thread by the stated prior, and what a person would read off it. */
static draw draw_one(ow_chance *chance, bool careful)
{
    for (;;) {
        truth t;
        draw d = {ow_thread_at(ow_chance_next(chance) % ow_thread_count()), ow_chance_next(chance) % 2 == 0,
                  OW_CALIPER_ASK_INIT};
        if (ow_chance_between(chance, 0, 4) > ow_caliper_weight(d.thread) || !truth_of(d.thread, d.male, &t))
            continue;
        d.ask.accuracy_m = (ow_chance_next(chance) % 3 == 0 ? 0.1 : 0.05) * MM;
        d.ask.diameter_m = read_diameter(chance, &t, d.male, d.ask.accuracy_m / MM, careful) * MM;
        if (ow_chance_next(chance) % 4 != 0)
            d.ask.side = d.male ? OW_CALIPER_MALE : OW_CALIPER_FEMALE;
        if (ow_chance_next(chance) % 3 == 0)
            d.ask.pitch_m = t.pitch * MM * (1 + 0.01 * ow_chance_normal(chance));
        if (ow_chance_next(chance) % 3 == 0) {
            bool seen = careful || ow_chance_between(chance, 0, 1) < 0.97;
            d.ask.taper = t.taper == seen ? OW_TAPER_YES : OW_TAPER_NO;
        }
        return d;
    }
}

#define BINS 10
typedef struct tally {
    size_t listed[BINS], true_ones[BINS];
    double stated[BINS];
    size_t draws, missing, first_right;
    double first_stated, left_out;
} tally;

static size_t bin_of(double likelihood)
{
    static const double ends[BINS] = {0.01, 0.05, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.95, 2};
    size_t bin = 0;
    while (likelihood > ends[bin])
        bin++;
    return bin;
}

static void count_one(tally *all, const draw *d)
{
    ow_caliper_answer answer;
    bool found = false;
    all->draws++;
    if (ow_caliper_name(&context, &d->ask, &answer) != OW_OK) {
        all->missing++;
        return;
    }
    for (size_t i = 0; i < answer.count; i++) {
        const ow_candidate *c = &answer.candidates[i];
        bool right = ow_thread_same(&c->thread, d->thread) && c->male == d->male;
        size_t bin = bin_of(c->likelihood);
        all->listed[bin]++;
        all->stated[bin] += c->likelihood;
        all->true_ones[bin] += right;
        found = found || right;
        all->first_right += right && i == 0;
    }
    all->first_stated += answer.candidates[0].likelihood;
    all->left_out += answer.left_out;
    all->missing += !found;
    ow_caliper_done(&context, &answer);
}

static void print_tally(const tally *all, const char *title)
{
    printf("\n%s: %zu draws, first one right %.3f (stated %.3f), not listed %.4f (stated %.4f)\n\n", title,
           all->draws, (double)all->first_right / (double)all->draws, all->first_stated / (double)all->draws,
           (double)all->missing / (double)all->draws, all->left_out / (double)all->draws);
    printf("| stated | candidates | was the true one |\n| --- | --- | --- |\n");
    for (size_t i = 0; i < BINS; i++)
        if (all->listed[i])
            printf("| %.3f | %zu | %.3f |\n", all->stated[i] / (double)all->listed[i], all->listed[i],
                   (double)all->true_ones[i] / (double)all->listed[i]);
}

static void gather(tally *all, size_t draws, uint64_t seed, bool careful, const char *title)
{
    ow_chance chance = {seed};
    for (size_t i = 0; i < draws; i++) {
        draw d = draw_one(&chance, careful);
        count_one(all, &d);
    }
    print_tally(all, title);
}

/* Fewer where each step costs fifty times as much: the bands are then wider of themselves. */
static size_t draws_here(void)
{
    return getenv("OW_SLOW_TOOL") ? 300 : 3000;
}

/* In each band of stated likelihood the share of true ones is the stated one, but for chance (four
 * deviations) and 0.02 for limits that are rounded differently there. */
static void a_likelihood_keeps_its_word(void **state)
{
    tally all = {0};
    (void)state;
    gather(&all, draws_here(), 20240229, false, "As the model says");
    for (size_t i = 0; i < BINS; i++) {
        double n = (double)all.listed[i], stated, seen;
        if (n < 50)
            continue;
        stated = all.stated[i] / n;
        seen = (double)all.true_ones[i] / n;
        if (fabs(seen - stated) > 4 * sqrt(stated * (1 - stated) / n) + 0.02)
            fail_msg("stated %.3f, seen %.3f of %.0f", stated, seen, n);
    }
    assert_true((double)all.missing / (double)all.draws < 0.01);
}

/* A careful person: the true one is always listed, and the likelihoods promise no more than they keep. */
static void the_true_thread_is_listed_for_a_careful_reading(void **state)
{
    tally all = {0};
    (void)state;
    gather(&all, draws_here(), 19951017, true, "Careful readings");
    assert_true((double)all.missing / (double)all.draws < 0.002);
    assert_true((double)all.first_right >= all.first_stated - 4 * sqrt((double)all.draws * 0.25));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_diameter_and_a_pitch_name_the_thread),
        cmocka_unit_test(what_a_diameter_leaves_open_is_listed),
        cmocka_unit_test(the_next_measurement_is_the_one_that_tells_most),
        cmocka_unit_test(the_place_of_the_jaws_is_said_for_each_taper),
        cmocka_unit_test(a_reading_outside_the_limits_says_what_it_speaks_of),
        cmocka_unit_test(a_reading_that_fits_nothing_well_is_doubted),
        cmocka_unit_test(information_is_bounded_by_what_is_open),
        cmocka_unit_test(a_number_out_of_range_is_refused),
        cmocka_unit_test(a_failed_allocation_leaks_nothing),
        cmocka_unit_test(a_likelihood_keeps_its_word),
        cmocka_unit_test(the_true_thread_is_listed_for_a_careful_reading),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
