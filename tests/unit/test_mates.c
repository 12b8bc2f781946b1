/* SPDX-License-Identifier: MIT */
/* Verdicts on pairs of ends, and the list of all mates of one. */
#include "support/testing.h"

#include <stdlib.h>
#include <string.h>

#include "oilway/mates.h"
#include "support/diagnostics.h"
#include "support/failing.h"

#define LENGTH(array) (sizeof(array) / sizeof(array)[0])

static ow_end read_end(const char *words)
{
    ow_end end;
    if (ow_end_read(words, &end, NULL) != OW_OK)
        fail_msg("%s was not read", words);
    return end;
}

static ow_mates judge(const char *a, const char *b)
{
    ow_end first = read_end(a), second = read_end(b);
    ow_mates mates;
    if (ow_mates_judge(&first, &second, &mates) != OW_OK)
        fail_msg("%s with %s is not judged", a, b);
    return mates;
}

static void assert_verdict(const char *a, const char *b, const char *verdicts)
{
    ow_mates mates = judge(a, b);
    const char *word = ow_verdict_word(mates.verdict);
    if (!strstr(verdicts, word))
        fail_msg("%s with %s: %s, not %s (%s)", a, b, word, verdicts, mates.why);
    assert_true(mates.why[0] && mates.source[0]);
}

/* Threads that are taken for each other. Verdicts reckoned by hand from the profiles of ISO 68-1, ASME B1.1,
 * B1.20.1, ISO 7-1 and ISO 228-1, basic sizes and the loosest limits; 3/8-24 nuts running loosely into M10x1
 * holes and stripping: service note of a brake-pipe trade, common practice. */
static void threads_that_are_taken_for_each_other_are_told_apart(void **state)
{
    static const char *const CASES[][3] = {
        {"1/8-27 NPT male", "Rc1/8 female", "binds"},
        {"R1/8 male", "1/8-27 NPT female", "binds"},
        {"1/2-14 NPT male", "Rc1/2 female", "leaks"},
        {"3/4-14 NPT male", "Rc3/4 female", "leaks"},
        {"R1/2 male", "1/2-14 NPT female", "leaks"},
        {"1/4-18 NPT male", "G1/4 female washer", "binds"},
        {"1/2-14 NPT male", "G1/2 female washer", "leaks"},
        {"1/4-18 NPT male", "M14x1.5 female washer", "binds"},
        {"1/8-27 NPT male", "M10x1 female washer", "binds"},
        {"G1/8 male washer", "M10x1 female washer", "binds"},
        {"R1/8 male", "M10x1 female washer", "binds"},
        {"M10x1 male washer", "G1/8 female washer", "binds no-start"},
        {"3/8-24 UNF male banjo", "M10x1 female washer", "weak"},
        {"M10x1 male banjo", "3/8-24 UNF female washer", "no-start"},
        {"M12x1.25 male washer", "M12x1.5 female washer", "binds"},
        {"M12x1.5 male washer", "M12x1.25 female washer", "binds"},
        {"-4 flare37 male", "M12x1.25 female washer", "weak"},
        {"M11x1.25 male washer", "-4 o-ring female", "weak"},
        {"-4 flare37 male", "1/4 flare45-inverted female", "binds"},
        {"M12x1.25 male washer", "-5 o-ring female", "weak"},
        {"M14x1.5 male washer", "-6 o-ring female", "binds"},
        {"M18x1.5 male washer", "-8 o-ring female", "weak"},
        {"-8 o-ring male", "M20x1.5 female washer", "weak"},
        {"G1/2 male washer", "-10 o-ring female", "weak"},
        {"M10x1 male washer", "M12x1.5 female washer", "no-start"},
        {"M12x1.5 male washer", "M10x1 female washer", "no-start"},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++)
        assert_verdict(CASES[i][0], CASES[i][1], CASES[i][2]);
}

/* Threads that seats share: SAE J514, J512, J1926-1, ISO 6149-1, ISO 8434-1. */
static void the_right_thread_with_another_seat_is_a_wrong_seat(void **state)
{
    static const char *const CASES[][3] = {
        {"-4 flare37 male", "1/4 flare45 female swivel", "8 degrees a side"},
        {"-5 flare37 male", "5/16 flare45 female swivel", "8 degrees a side"},
        {"-8 flare37 male", "1/2 flare45 female swivel", "8 degrees a side"},
        {"-3 flare37 male", "3/8-24 UNF female washer", "37 degrees a side"},
        {"-4 flare37 male", "-4 o-ring female", "touches nothing"},
        {"-4 flare37 male", "7/16-20 UNF female washer", "37 degrees a side"},
        {"-3 flare37 male", "3/16 flare45-inverted female", "hidden in the port"},
        {"3/8-24 UNF male banjo", "3/16 flare45-inverted female", "hidden seat"},
        {"-3 o-ring male", "3/16 flare45-inverted female", "hidden seat"},
        {"3/8-24 UNF male banjo", "-3 o-ring female", "chamfer"},
        {"M16x1.5 male cone24 10L", "M16x1.5 female cone60 swivel", "18 degrees a side"},
        {"M16x1.5 male cone60", "M16x1.5 female cone24 10L swivel", "18 degrees a side"},
        {"M16x1.5 male cone24 10L", "M16x1.5 female washer", "no cone"},
        {"M16x1.5 male cone60", "M16x1.5 female washer", "no cone"},
        {"M16x1.5 male washer", "M16x1.5 female cone24 10L swivel", "no flat face"},
        {"G1/4 male cone60", "G1/4 female washer", "no cone"},
        {"G1/4 male washer", "G1/4 female cone60 swivel", "no flat face"},
        {"G1/4 male cone60", "G1/4 female flare30 swivel", "both are hollow"},
        {"M16x1.5 male cone24 10L", "M16x1.5 female cone24 8S swivel", "other tubes"},
        {"M14x1.5 male o-ring", "M14x1.5 female washer", "no recess"},
        {"M14x1.5 male washer", "M14x1.5 female o-ring", "chamfer"},
        {"M10x1 male taper", "M10x1 female o-ring", "taper"},
        {"-6 o-ring male", "-4 face-o-ring female swivel", "O-ring"},
        {"4.75 convex male", "M10x1 female washer", "flat face"},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        assert_verdict(CASES[i][0], CASES[i][1], "wrong-seat");
        ow_mates mates = judge(CASES[i][0], CASES[i][1]);
        if (!strstr(mates.why, CASES[i][2]))
            fail_msg("%s with %s: %s", CASES[i][0], CASES[i][1], mates.why);
        assert_true(mates.has_turns);
    }
}

static void what_the_table_joins_seals_or_is_tolerated(void **state)
{
    (void)state;
    assert_verdict("-4 flare37 male", "-4 flare37 female swivel", "seals");
    assert_verdict("1/8 NPT male", "1/8 NPT female", "seals");
    assert_verdict("R1/8 male", "Rp1/8 female", "seals");
    assert_verdict("M10x1 male taper", "M10x1 female washer", "seals");
    assert_verdict("hose 16 rubber", "barb 16", "seals");
    assert_verdict("banjo 10 stud", "banjo 10 eye", "seals");
    assert_verdict("tube 10", "M16x1.5 male cone24 10L", "seals");
    assert_verdict("1/4 NPT male", "1/4 NPSM female swivel", "tolerated");
    assert_verdict("R1/4 male", "G1/4 female washer", "tolerated");
    ow_mates mates = judge("-4 flare37 male", "-4 flare37 female swivel");
    assert_string_equal(mates.rule->id, "flare37");
    assert_true(mates.has_turns && mates.turns_least > 0.0 && mates.turns_least <= mates.turns_most);
}

static void what_is_not_screwed_is_judged_too(void **state)
{
    static const char *const CASES[][3] = {
        {"hose 16 ptfe", "barb 16", "leaks"},
        {"hose 18 rubber", "barb 16", "leaks"},
        {"hose 14 rubber", "barb 16", "no-start"},
        {"hose -10 rubber", "barb 16", "leaks"},
        {"hose -4 ptfe", "hose -4 rubber tail", "leaks"},
        {"hose 16 rubber", "hose 16 rubber", "no-start"},
        {"banjo 10 stud", "banjo 12 eye", "leaks"},
        {"banjo 12 stud", "banjo 10 eye", "no-start"},
        {"flange f38", "flange f44", "no-start"},
        {"weld 16", "weld 18", "no-start"},
        {"tube 8", "M16x1.5 male cone24 10L", "wrong-seat"},
        {"barb 16", "M16x1.5 male washer", "no-start"},
        {"M10x1 male washer", "M10x1 male washer", "no-start"},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        assert_verdict(CASES[i][0], CASES[i][1], CASES[i][2]);
        assert_false(judge(CASES[i][0], CASES[i][1]).has_turns);
    }
}

/* Known ends are taken in such strides; a slow tool gets fewer. */
static size_t stride(size_t usual)
{
    return getenv("OW_SLOW_TOOL") == NULL ? usual : usual * 5;
}

/* Over all pairs of a spread of known ends. */
static void the_verdict_does_not_depend_on_the_order_of_the_two(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_known_end_count(); i += stride(7)) {
        for (size_t j = 0; j < ow_known_end_count(); j += stride(3)) {
            ow_end a, b;
            ow_mates first, second;
            if (!ow_known_end_at(i, &a) || !ow_known_end_at(j, &b))
                continue;
            ow_status status = ow_mates_judge(&a, &b, &first);
            assert_int_equal(ow_mates_judge(&b, &a, &second), status);
            assert_int_equal(status, OW_OK);
            assert_int_equal(first.verdict, second.verdict);
            assert_string_equal(first.why, second.why);
            assert_int_equal(first.has_turns, second.has_turns);
            assert_true(first.turns_least == second.turns_least && first.turns_most == second.turns_most);
            assert_true(ow_end_same(&first.ends[0], &a) && ow_end_same(&second.ends[0], &b));
        }
    }
}

static void sealing_and_the_joint_table_agree_on_known_pairs(void **state)
{
    size_t seals = 0;
    (void)state;
    for (size_t i = 0; i < ow_known_end_count(); i += stride(2)) {
        for (size_t j = 1; j < ow_known_end_count(); j += stride(2)) {
            ow_end a, b;
            ow_mates mates;
            if (!ow_known_end_at(i, &a) || !ow_known_end_at(j, &b) || ow_mates_judge(&a, &b, &mates) != OW_OK)
                continue;
            bool good = mates.verdict == OW_SEALS || mates.verdict == OW_TOLERATED;
            assert_int_equal(good, ow_joint_find(&a, &b) != NULL);
            seals += good;
        }
    }
    assert_true(seals > (getenv("OW_SLOW_TOOL") == NULL ? 100 : 0));
}

static void what_hangs_on_an_unsaid_seat_or_pitch_is_not_guessed(void **state)
{
    static const char *const CASES[][2] = {
        {"M10x1 female", "M10x1 male washer"},
        {"M10 female washer", "M10x1 male washer"},
        {"G1/4 female", "R1/4 male"},
        {"M16x1.5 male cone24", "M16x1.5 female cone24 10L"},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end a = read_end(CASES[i][0]), b = read_end(CASES[i][1]);
        ow_mates mates = {.turns_least = 77.0};
        assert_int_equal(ow_mates_judge(&a, &b, &mates), OW_RANGE);
        assert_int_equal(ow_mates_judge(&b, &a, &mates), OW_RANGE);
        assert_true(mates.turns_least > 76.0);
    }
    assert_verdict("3/8-24 UNF male", "M10x1 female", "weak");
}

static const ow_mates *find(const ow_mates_list *list, const char *words)
{
    char name[OW_END_TEXT_SIZE];
    for (size_t i = 0; i < list->count; i++)
        if (strcmp(ow_end_name(&list->items[i].ends[1], name), words) == 0)
            return &list->items[i];
    return NULL;
}

static ow_verdict verdict_on(const ow_mates_list *list, const char *words)
{
    const ow_mates *mates = find(list, words);
    return mates ? mates->verdict : OW_VERDICT_COUNT;
}

static void all_mates_of_an_end_are_listed_the_right_ones_first(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_end end = read_end("M10x1 female washer"), given[] = {read_end("3/8-24 UNF male banjo"), end};
    ow_mates_list list;
    (void)state;
    assert_int_equal(ow_mates_of(&context, &end, given, LENGTH(given), &list), OW_OK);
    assert_int_equal(list.items[0].verdict, OW_SEALS);
    assert_non_null(find(&list, "M10x1 male banjo"));
    assert_int_equal(verdict_on(&list, "M10x1 male taper"), OW_SEALS);
    assert_int_equal(verdict_on(&list, "M10x1 male o-ring"), OW_WRONG_SEAT);
    assert_int_equal(verdict_on(&list, "3/8-24 UNF male banjo"), OW_WEAK); /* given, so named by its seat */
    assert_null(find(&list, "3/8-24 UNF male washer"));
    assert_int_equal(verdict_on(&list, "G1/8 male washer"), OW_BINDS);
    assert_null(find(&list, "M22x1.5 male washer")); /* no near miss */
    assert_null(find(&list, "M10x1 female washer"));
    ow_mates_list_done(&list);
}

static void a_half_said_end_is_judged_in_each_reading(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_end end = read_end("3/8-24 UNF female");
    ow_mates_list list;
    bool washer = false, ring = false, inverted = false;
    char name[OW_END_TEXT_SIZE];
    (void)state;
    assert_int_equal(ow_mates_of(&context, &end, NULL, 0, &list), OW_OK);
    for (size_t i = 0; i < list.count; i++) {
        const char *reading = ow_end_name(&list.items[i].ends[0], name);
        bool seals = list.items[i].verdict == OW_SEALS;
        washer = washer || (seals && strcmp(reading, "3/8-24 UNF female washer") == 0);
        ring = ring || (seals && strcmp(reading, "-3 o-ring female") == 0);
        inverted = inverted || (seals && strcmp(reading, "3/16 flare45-inverted female") == 0);
    }
    assert_true(washer && ring && inverted);
    assert_int_equal(verdict_on(&list, "R1/8 male"), OW_BINDS);
    ow_mates_list_done(&list);
}

static void partners_that_have_no_table_are_named(void **state)
{
    static const char *const CASES[][2] = {
        {"hose -4 ptfe", "hose -4 ptfe tail"},
        {"hose -4 ptfe tail", "hose -4 ptfe"},
        {"hose 16 rubber", "bead 16"},
        {"flange f38", "flange f38"},
        {"weld 16", "weld 16"},
        {"banjo 9 stud", "banjo 9 eye"},
        {"tube 10", "M16x1.5 male cone24 10L"},
    };
    ow_context context = OW_CONTEXT_INIT;
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end end = read_end(CASES[i][0]);
        ow_mates_list list;
        assert_int_equal(ow_mates_of(&context, &end, NULL, 0, &list), OW_OK);
        const ow_mates *mates = find(&list, CASES[i][1]);
        if (!mates || mates->verdict != OW_SEALS)
            fail_msg("%s is no mate of %s", CASES[i][1], CASES[i][0]);
        ow_mates_list_done(&list);
    }
}

/* Of hoses, tails, tubes and eyes only those are worth a line that somebody may try: within 2 mm. */
static void what_is_far_too_wide_or_narrow_is_not_listed(void **state)
{
    static const struct {
        const char *asked, *other;
        bool listed;
    } CASES[] = {
        {"barb 16", "hose 16 silicone", true},      {"barb 16", "hose 17 silicone", true},
        {"barb 16", "hose -10 ptfe", true}, /* 15.9 mm by name */
        {"barb 16", "hose -4 ptfe", false},         {"barb 16", "hose 25 silicone", false},
        {"banjo 10 stud", "banjo 12 eye", true},    {"banjo 10 stud", "banjo 22 eye", false},
        {"banjo 10 stud", "hose 10 rubber", false},
    };
    ow_context context = OW_CONTEXT_INIT;
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end end = read_end(CASES[i].asked), kind = read_end(CASES[i].other);
        ow_mates_list list;
        assert_int_equal(ow_mates_of(&context, &end, &kind, 1, &list), OW_OK);
        if ((find(&list, CASES[i].other) != NULL) != CASES[i].listed)
            fail_msg("%s: %s", CASES[i].asked, CASES[i].other);
        ow_mates_list_done(&list);
    }
}

static void a_half_said_pair_is_judged_in_each_reading_of_both(void **state)
{
    static const struct {
        const char *a, *b;
        size_t least;
        bool seals;
    } CASES[] = {
        {"M10 female", "M10x1 male washer", 4, true},
        {"M10x1 male washer", "M10 female washer", 2, true},
        {"G1/4 female", "R1/4 male", 2, false},
        {"-4 flare37 male", "M12x1.25 female", 1, false}, /* geometry decides, whatever the seat */
        {"M16x1.5 male cone24", "tube 10", 1, true},
    };
    ow_context context = OW_CONTEXT_INIT;
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end a = read_end(CASES[i].a), b = read_end(CASES[i].b);
        ow_mates_list list;
        bool seals = false;
        assert_int_equal(ow_mates_pair(&context, &a, &b, NULL, 0, &list), OW_OK);
        for (size_t k = 0; k < list.count; k++)
            seals = seals || list.items[k].verdict == OW_SEALS;
        if (list.count < CASES[i].least || seals != CASES[i].seals)
            fail_msg("%s with %s: %zu, %d", CASES[i].a, CASES[i].b, list.count, seals);
        ow_mates_list_done(&list);
    }
}

static ow_status list_job(const ow_context *context, void *data)
{
    ow_end end = read_end(data);
    ow_mates_list list;
    ow_status status = ow_mates_of(context, &end, NULL, 0, &list);
    if (status == OW_OK)
        ow_mates_list_done(&list);
    return status;
}

static void a_list_that_finds_no_memory_says_so_and_leaves_nothing(void **state)
{
    char whole[] = "M10x1 female washer", open[] = "3/8-24 UNF female";
    (void)state;
    assert_true(ow_test_fail_each(list_job, whole) > 2);
    assert_true(ow_test_fail_each(list_job, open) > 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(threads_that_are_taken_for_each_other_are_told_apart),
        cmocka_unit_test(the_right_thread_with_another_seat_is_a_wrong_seat),
        cmocka_unit_test(what_the_table_joins_seals_or_is_tolerated),
        cmocka_unit_test(what_is_not_screwed_is_judged_too),
        cmocka_unit_test(the_verdict_does_not_depend_on_the_order_of_the_two),
        cmocka_unit_test(sealing_and_the_joint_table_agree_on_known_pairs),
        cmocka_unit_test(what_hangs_on_an_unsaid_seat_or_pitch_is_not_guessed),
        cmocka_unit_test(all_mates_of_an_end_are_listed_the_right_ones_first),
        cmocka_unit_test(a_half_said_end_is_judged_in_each_reading),
        cmocka_unit_test(partners_that_have_no_table_are_named),
        cmocka_unit_test(what_is_far_too_wide_or_narrow_is_not_listed),
        cmocka_unit_test(a_half_said_pair_is_judged_in_each_reading_of_both),
        cmocka_unit_test(a_list_that_finds_no_memory_says_so_and_leaves_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
