/* SPDX-License-Identifier: MIT */
/* The grammar of an end: what is read, how it is written, how a fault is told. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "oilway/end.h"

#define LENGTH(array) (sizeof(array) / sizeof(array)[0])

static ow_end read_end(const char *words)
{
    ow_end end;
    ow_end_fault fault;
    if (ow_end_read(words, &end, &fault) != OW_OK)
        fail_msg("%s: %s; expected %s", words, fault.message, fault.expected);
    return end;
}

static const char *const SPELLINGS[][2] = {
    {"1/8-27 NPT male", "1/8-27 NPT male"},
    {"1/8 NPT male", "1/8-27 NPT male"},
    {"1/8 npt  MALE", "1/8-27 NPT male"},
    {"  1/8\" NPT male ", "1/8-27 NPT male"},
    {"1/8-27 NPT taper male", "1/8-27 NPT male"},
    {"1/8-27 NPTF female", "1/8-27 NPTF female"},
    {"1/4-18 NPSM female swivel", "1/4-18 NPSM female swivel"},
    {"R1/8 male", "R1/8 male"},
    {"1/8 BSPT male", "R1/8 male"},
    {"1/8 BSPT female", "Rc1/8 female"},
    {"Rc1/8 female", "Rc1/8 female"},
    {"Rp1/8 female", "Rp1/8 female"},
    {"G1/8 male washer", "G1/8 male washer"},
    {"1/8 BSPP female washer", "G1/8 female washer"},
    {"G1/4 male cone60", "G1/4 male cone60"},
    {"g1/4 female CONE60 swivel", "G1/4 female cone60 swivel"},
    {"M12x1.5 male washer", "M12x1.5 male washer"},
    {"m12 \xC3\x97 1.5 female washer", "M12x1.5 female washer"},
    {"M10x1 male washer-captive", "M10x1 male washer-captive"},
    {"M12x1.5 male banjo", "M12x1.5 male banjo"},
    {"3/8-24 UNF male banjo", "3/8-24 UNF male banjo"},
    {"M10x1 male taper", "M10x1 male taper"},
    {"M10x1 taper male", "M10x1 male taper"},
    {"M14x1.5 female o-ring", "M14x1.5 female o-ring"},
    {"M16x1.5 female cone24 10L", "M16x1.5 female cone24 10L"},
    {"M16 male cone24 10l", "M16x1.5 male cone24 10L"},
    {"M14x1.5 female flare30 swivel", "M14x1.5 female flare30 swivel"},
    {"3/16 flare45-inverted female", "3/16 flare45-inverted female"},
    {"3/16\" flare45 male", "3/16 flare45 male"},
    {"4.75 convex male", "4.75 convex male"},
    {"4.750 mm convex male", "4.75 convex male"},
    {"6mm convex female", "6 convex female"},
    {"-4 flare37 male", "-4 flare37 male"},
    {"-04 flare37 female swivel", "-4 flare37 female swivel"},
    {"-6 o-ring female", "-6 o-ring female"},
    {"9/16-18 UNF female o-ring", "-6 o-ring female"},
    {"7/16-20 UNF male flare37", "-4 flare37 male"},
    {"9/16-18 UNF male face-o-ring", "-4 face-o-ring male"},
    {"1/2-20 UNF female flare45 swivel", "5/16 flare45 female swivel"},
    {"banjo 10 stud", "banjo 10 stud"},
    {"banjo 10 mm eye", "banjo 10 eye"},
    {"hose -4 ptfe", "hose -4 ptfe"},
    {"hose 16 fluoro-silicone", "hose 16 fluoro-silicone"},
    {"hose -4 PTFE tail", "hose -4 ptfe tail"},
    {"barb 16", "barb 16"},
    {"bead 15.9", "bead 15.9"},
    {"tube 10", "tube 10"},
    {"flange f38", "flange f38"},
    {"weld 16 mm", "weld 16"},
    {"M10 female", "M10 female"},
    {"3/8-24 UNF female", "3/8-24 UNF female"},
    {"M16x1.5 male cone24", "M16x1.5 male cone24"},
};

static void every_spelling_has_one_canonical_text(void **state)
{
    char name[OW_END_TEXT_SIZE];
    (void)state;
    for (size_t i = 0; i < LENGTH(SPELLINGS); i++) {
        ow_end end = read_end(SPELLINGS[i][0]);
        assert_string_equal(ow_end_name(&end, name), SPELLINGS[i][1]);
        ow_end again = read_end(name);
        assert_true(ow_end_same(&end, &again));
    }
}

static const struct {
    const char *words, *marked, *mend;
} FAULTS[] = {
    {"", "", ""},
    {"   ", "   ", ""},
    {"1/8-27 NPT", "", "add male or female"},
    {"1/8-27 NPT mal", "mal", "write male"},
    {"1/8-27 NPT male femal", "femal", "write female"},
    {"M12x1.5 male wahser", "wahser", "write washer"},
    {"M12x1.5  male  wahser", "wahser", "write washer"},
    {"1/8\" NPT male washer", "washer", "leave the seat out, or name a parallel thread"},
    {"-4 fare37 male", "fare37", "write flare37"},
    {"-4 male", "", ""},
    {"-7 flare37 male", "-7", ""},
    {"3/8 flare37 male", "3/8",
     "write its dash, the tube in sixteenths (-6 is 3/8), or its thread, such as 9/16-18 UNF"},
    {"-4 flare45 male", "flare45", "name the thread instead"},
    {"R1/8 female", "R1/8", "write Rc, or Rp for a parallel hole"},
    {"Rc1/8 male", "Rc1/8", "write R for the male thread"},
    {"M12x1.5 female banjo", "banjo", "write female washer"},
    {"M10x1 female taper", "taper", "write female washer"},
    {"M10x1 taper male washer", "washer", "leave it out: a taper thread seals on its flanks"},
    {"M16x1.5 male cone24 12L", "12L", "write M18x1.5"},
    {"M16x1.5 male cone24 11L", "11L", ""},
    {"M16x1.5 male 10L", "10L", "write cone24"},
    {"M26x1.5 male o-ring", "o-ring", ""},
    {"5/8-18 UNF male o-ring", "o-ring", ""},
    {"G1/4 male o-ring", "o-ring", "write washer, or washer-captive for a stud with its own ring"},
    {"1/4-18 NPSM female", "", "write female swivel"},
    {"banjo 10 stub", "stub", "write stud"},
    {"banjoo 10 stud", "banjoo", "write banjo"},
    {"banjo 3/8 eye", "3/8", "write it in millimetres: 9.5"},
    {"hose -4 ptf", "ptf", "write ptfe"},
    {"hose -4", "", ""},
    {"barb 16 male", "male", "leave it out"},
    {"barb 0.5", "0.5", ""},
    {"flange", "", ""},
    {"M12x1.5 male male washer", "male", ""},
    {"M12x1.5 male washer \x01", "\x01", ""},
    {"rubbish", "rubbish", ""},
};

static void a_fault_leaves_the_end_alone_and_points_at_its_words(void **state)
{
    (void)state;
    for (size_t i = 0; i < LENGTH(FAULTS); i++) {
        ow_end end = {.size = 77};
        ow_end_fault fault;
        if (ow_end_read(FAULTS[i].words, &end, &fault) != OW_INPUT)
            fail_msg("%s was read", FAULTS[i].words);
        assert_int_equal(end.size, 77);
        assert_true(fault.start + fault.length <= strlen(FAULTS[i].words));
        assert_int_equal(fault.length, strlen(FAULTS[i].marked));
        if (strncmp(FAULTS[i].words + fault.start, FAULTS[i].marked, fault.length) != 0)
            fail_msg("%s: marked at %zu", FAULTS[i].words, fault.start);
        assert_string_equal(fault.mend, FAULTS[i].mend);
        assert_true(fault.message[0] && fault.expected[0]);
    }
}

static void a_fault_need_not_be_asked_for(void **state)
{
    ow_end end;
    (void)state;
    assert_int_equal(ow_end_read("-7 flare37 male", &end, NULL), OW_INPUT);
    assert_int_equal(ow_end_read("M12x1.5 male wahser", &end, NULL), OW_INPUT);
}

static void a_very_long_text_is_refused_without_harm(void **state)
{
    char words[4000];
    ow_end end;
    ow_end_fault fault;
    (void)state;
    memset(words, 'm', sizeof words - 1);
    words[sizeof words - 1] = '\0';
    assert_int_equal(ow_end_read(words, &end, &fault), OW_INPUT);
    for (size_t i = 0; i + 1 < sizeof words; i += 2)
        words[i] = ' ';
    assert_int_equal(ow_end_read(words, &end, &fault), OW_INPUT);
}

/* Threads by dash: SAE J514, J1926-1, J1453. By tube: SAE J512; ISO 4038 sizes from memory. */
static void a_size_by_dash_or_tube_has_the_thread_of_its_standard(void **state)
{
    static const char *const PAIRS[][2] = {
        {"-2 flare37 male", "5/16-24 UNF"},
        {"-3 flare37 male", "3/8-24 UNF"},
        {"-4 flare37 male", "7/16-20 UNF"},
        {"-5 flare37 male", "1/2-20 UNF"},
        {"-6 flare37 male", "9/16-18 UNF"},
        {"-8 flare37 male", "3/4-16 UNF"},
        {"-10 flare37 male", "7/8-14 UNF"},
        {"-12 flare37 male", "1 1/16-12 UN"},
        {"-14 flare37 male", "1 3/16-12 UN"},
        {"-16 flare37 male", "1 5/16-12 UN"},
        {"-20 flare37 male", "1 5/8-12 UN"},
        {"-6 o-ring female", "9/16-18 UNF"},
        {"-10 o-ring female", "7/8-14 UNF"},
        {"-4 face-o-ring male", "9/16-18 UNF"},
        {"-6 face-o-ring male", "11/16-16 UN"},
        {"-12 face-o-ring male", "1 3/16-12 UN"},
        {"-16 face-o-ring male", "1 7/16-12 UN"},
        {"3/8 flare45 male", "5/8-18 UNF"},
        {"1/2 flare45 male", "3/4-16 UNF"},
        {"3/4 flare45 male", "1 1/16-14 UNS"},
        {"1/4 flare45-inverted male", "7/16-24 UNS"},
        {"1/2 flare45-inverted male", "3/4-18 UNS"},
        {"5/8 flare45-inverted male", "7/8-18 UNS"},
        {"4.75 convex male", "M10x1"},
        {"6 convex male", "M12x1"},
        {"M10x1 male washer", "M10x1"},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(PAIRS); i++) {
        ow_end end = read_end(PAIRS[i][0]);
        ow_thread thread, expected;
        size_t used;
        assert_true(ow_end_thread(&end, &thread));
        assert_int_equal(ow_thread_read(PAIRS[i][1], &expected, &used), OW_OK);
        if (!ow_thread_same(&thread, &expected))
            fail_msg("%s is not on %s", PAIRS[i][0], PAIRS[i][1]);
    }
}

static void ends_that_are_not_screwed_have_no_thread(void **state)
{
    static const char *const ENDS[] = {"banjo 10 eye", "hose -4 ptfe", "hose -4 ptfe tail", "barb 16",
                                       "bead 16",      "tube 10",      "flange f38",        "weld 16"};
    ow_thread thread;
    (void)state;
    for (size_t i = 0; i < LENGTH(ENDS); i++) {
        ow_end end = read_end(ENDS[i]);
        assert_false(ow_end_thread(&end, &thread));
    }
}

/* Which joints can be made last: product words, common practice. */
static void what_turns_or_clamps_freely_is_known(void **state)
{
    static const struct {
        const char *words;
        bool turns, clamps;
    } CASES[] = {
        {"-4 flare37 female swivel", true, false},
        {"-4 flare37 female", false, false},
        {"1/8-27 NPT male", false, false},
        {"1/4-18 NPSM female swivel", true, false},
        {"M12x1.5 male banjo", false, false},
        {"banjo 12 stud", true, false},
        {"banjo 12 eye", true, false},
        {"barb 16", true, true},
        {"bead 16", true, true},
        {"hose 16 rubber", true, true},
        {"hose -4 ptfe", false, false},
        {"hose -4 ptfe tail", false, false},
        {"tube 10", true, false},
        {"3/16 flare45-inverted male", true, false},
        {"3/16 flare45-inverted female", false, false},
        {"4.75 convex male", true, false},
        {"3/16 flare45 male", false, false},
        {"flange f38", true, false},
        {"weld 16", false, false},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end end = read_end(CASES[i].words);
        if (ow_end_turns(&end) != CASES[i].turns || ow_end_clamps(&end) != CASES[i].clamps)
            fail_msg("%s", CASES[i].words);
    }
}

/* Dashes: sixteenths of an inch (SAE J514). Series: ISO 8434-1. A pipe's inches: ASME B1.20.1, ISO 228-1. */
static void an_end_tells_the_size_that_it_is_called_by(void **state)
{
    static const struct {
        const char *words, *name;
        ow_nominal_of of;
        double size_mm;
    } CASES[] = {
        {"-10 flare37 male", "-10", OW_NOMINAL_TUBE, 15.875},
        {"-4 o-ring female", "-4", OW_NOMINAL_TUBE, 6.35},
        {"3/16 flare45-inverted female", "3/16", OW_NOMINAL_TUBE, 4.7625},
        {"4.75 convex male", "4.75", OW_NOMINAL_TUBE, 4.75},
        {"hose -10 ptfe", "-10", OW_NOMINAL_TUBE, 15.875},
        {"hose 16 silicone", "hose 16", OW_NOMINAL_HOSE, 16},
        {"barb 16", "barb 16", OW_NOMINAL_HOSE, 16},
        {"tube 10", "tube 10", OW_NOMINAL_TUBE, 10},
        {"M16x1.5 male cone24 10L", "10L", OW_NOMINAL_TUBE, 10},
        {"M16x1.5 male washer", "M16", OW_NOMINAL_THREAD, 16},
        {"1/8 NPT male", "1/8", OW_NOMINAL_PIPE, 3.175},
        {"G1 1/4 male washer", "1 1/4", OW_NOMINAL_PIPE, 31.75},
        {"1 1/16-12 UN male washer", "1 1/16", OW_NOMINAL_THREAD, 26.9875},
        {"banjo 10 eye", "banjo 10", OW_NOMINAL_EYE, 10},
    };
    (void)state;
    for (size_t i = 0; i < sizeof CASES / sizeof CASES[0]; i++) {
        ow_nominal nominal;
        ow_end end = read_end(CASES[i].words);
        assert_true(ow_end_nominal(&end, &nominal));
        assert_string_equal(nominal.name, CASES[i].name);
        assert_int_equal(nominal.of, CASES[i].of);
        assert_true(nominal.size_m * 1e3 - CASES[i].size_mm < 1e-6 &&
                    CASES[i].size_mm - nominal.size_m * 1e3 < 1e-6);
        assert_true(ow_nominal_of_word(nominal.of)[0]);
    }
    ow_nominal untouched = {OW_NOMINAL_EYE, 1, "x"};
    ow_end flange = read_end("flange f38");
    assert_false(ow_end_nominal(&flange, &untouched));
    assert_string_equal(untouched.name, "x");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_spelling_has_one_canonical_text),
        cmocka_unit_test(a_fault_leaves_the_end_alone_and_points_at_its_words),
        cmocka_unit_test(an_end_tells_the_size_that_it_is_called_by),
        cmocka_unit_test(a_fault_need_not_be_asked_for),
        cmocka_unit_test(a_very_long_text_is_refused_without_harm),
        cmocka_unit_test(a_size_by_dash_or_tube_has_the_thread_of_its_standard),
        cmocka_unit_test(ends_that_are_not_screwed_have_no_thread),
        cmocka_unit_test(what_turns_or_clamps_freely_is_known),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
