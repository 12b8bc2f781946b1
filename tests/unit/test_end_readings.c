/* SPDX-License-Identifier: MIT */
/* Ends of which the pitch or the seat is not said, and what they may turn out to be. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "oilway/end.h"

#define LENGTH(array) (sizeof(array) / sizeof(array)[0])

static ow_end read_end(const char *words)
{
    ow_end end;
    if (ow_end_read(words, &end, NULL) != OW_OK)
        fail_msg("%s was not read", words);
    return end;
}

static void only_what_leaves_nothing_open_is_whole(void **state)
{
    static const struct {
        const char *words;
        bool whole;
    } CASES[] = {
        {"M10x1 female washer", true},  {"M10 female washer", false},
        {"M10x1 female", false},        {"M10 female", false},
        {"3/8-24 UNF female", false},   {"G1/8 male", false},
        {"1/8 NPT male", true},         {"R1/8 male", true},
        {"M16x1.5 male cone24", false}, {"M16x1.5 male cone24 8S", true},
        {"-4 flare37 male", true},      {"hose -4 ptfe", true},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end end = read_end(CASES[i].words);
        if (ow_end_is_whole(&end) != CASES[i].whole)
            fail_msg("%s", CASES[i].words);
    }
}

/* Seats that share a thread: SAE J514, J512, J1926-1, ISO 6149-1, ISO 8434-1. */
static void a_reading_agrees_in_all_that_was_said(void **state)
{
    static const struct {
        const char *asked, *whole;
        bool reading;
    } CASES[] = {
        {"M10 female", "M10x1 female washer", true},
        {"M10 female", "M10x1.25 female washer", true},
        {"M10 female", "M10x1 female o-ring", true},
        {"M10 female", "4.75 convex female", true},
        {"M10 female", "M10x1 male washer", false},
        {"M10 female", "M12x1.5 female washer", false},
        {"M10 female washer", "M10x1 female washer", true},
        {"M10 female washer", "M10x1 female o-ring", false},
        {"M10x1 male", "M10x1 male taper", true},
        {"M10x1 male", "M10x1.25 male washer", false},
        {"M10x1 male washer", "M10x1 male washer", true},
        {"3/8-24 UNF female", "3/8-24 UNF female washer", true},
        {"3/8-24 UNF female", "-3 o-ring female", true},
        {"3/8-24 UNF female", "3/16 flare45-inverted female", true},
        {"3/8-24 UNF female", "-3 flare37 female swivel", true},
        {"3/8-24 UNF female", "-4 o-ring female", false},
        {"3/8-24 UNF female swivel", "3/8-24 UNF female washer", false},
        {"7/16-20 UNF male", "-4 flare37 male", true},
        {"7/16-20 UNF male", "1/4 flare45 male", true},
        {"7/16-20 UNF male", "1/4 flare45-inverted male", false},
        {"M16x1.5 male cone24", "M16x1.5 male cone24 10L", true},
        {"M16x1.5 male cone24", "M16x1.5 male cone24 8S", true},
        {"M16x1.5 male cone24", "M18x1.5 male cone24 12L", false},
        {"M16x1.5 male", "M16x1.5 male cone24 8S", true},
        {"G1/4 male", "G1/4 male cone60", true},
        {"G1/4 male", "R1/4 male", false},
        {"1/8 NPT male", "1/8 NPTF male", false},
        {"-4 flare37 male", "-4 flare37 male", true},
        {"M10 female", "M10 female washer", false}, /* not whole itself */
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end asked = read_end(CASES[i].asked), whole = read_end(CASES[i].whole);
        if (ow_end_is_reading(&asked, &whole) != CASES[i].reading)
            fail_msg("%s as %s", CASES[i].asked, CASES[i].whole);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(only_what_leaves_nothing_open_is_whole),
        cmocka_unit_test(a_reading_agrees_in_all_that_was_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
