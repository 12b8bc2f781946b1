/* SPDX-License-Identifier: MIT */
/* Keys by which ends meet, held against the rules themselves: no joint may be lost by looking only where keys
 * agree. */
#include <stdio.h>
#include <stdlib.h>

#include "joints/meeting.h"
#include "joints/rules.h"
#include "oilway/mates.h"
#include "support/testing.h"

static bool meet(const ow_end *a, const ow_end *b)
{
    ow_meetings first = ow_joint_meetings(a), second = ow_joint_meetings(b);
    for (size_t i = 0; i < first.count; i++)
        for (size_t j = 0; j < second.count; j++)
            if (first.keys[i] == second.keys[j])
                return true;
    return false;
}

/* Joined pairs among the ends; none may be without a meeting. */
static size_t count_joined(const ow_end *ends, size_t count, size_t *meeting)
{
    size_t joined = 0;
    for (size_t i = 0; i < count; i++)
        for (size_t j = i; j < count; j++) {
            bool met = meet(&ends[i], &ends[j]);
            *meeting += met;
            if (ow_joint_find(&ends[i], &ends[j]) == NULL)
                continue;
            joined++;
            char left[OW_END_TEXT_SIZE], right[OW_END_TEXT_SIZE];
            if (!met)
                fail_msg("%s and %s are joined and do not meet", ow_end_name(&ends[i], left),
                         ow_end_name(&ends[j], right));
        }
    return joined;
}

/* Listed pairs that a rule joins; each must come once, and in order. */
static size_t count_listed(const ow_end *ends, size_t count)
{
    const ow_end **lent = calloc(count, sizeof *lent);
    ow_meeting *pairs = NULL;
    size_t listed = 0, joined = 0;
    assert_non_null(lent);
    for (size_t i = 0; i < count; i++)
        lent[i] = &ends[i];
    assert_int_equal(ow_joint_meeting_pairs(NULL, lent, count, &pairs, &listed), OW_OK);
    for (size_t i = 0; i < listed; i++) {
        assert_true(pairs[i].a <= pairs[i].b && pairs[i].b < count);
        if (i > 0)
            assert_true(pairs[i - 1].a < pairs[i].a ||
                        (pairs[i - 1].a == pairs[i].a && pairs[i - 1].b < pairs[i].b));
        joined += ow_joint_find(lent[pairs[i].a], lent[pairs[i].b]) != NULL;
    }
    free(pairs);
    free(lent);
    return joined;
}

static void every_two_known_ends_that_are_joined_meet(void **state)
{
    (void)state;
    size_t count = 0, meeting = 0, step = getenv("OW_SLOW_TOOL") == NULL ? 1 : 7;
    ow_end *ends = calloc(ow_known_end_count(), sizeof *ends);
    assert_non_null(ends);
    for (size_t i = 0; i < ow_known_end_count(); i += step)
        count += ow_known_end_at(i, &ends[count]);
    size_t joined = count_joined(ends, count, &meeting);
    assert_int_equal(count_listed(ends, count), joined);
    assert_true(step > 1 || (count > 500 && joined > count / 2));
    assert_true(meeting < count * count / 20); /* or the keys would spare nothing */
    free(ends);
}

/* Half a millimetre either way, common practice: at the edges of the bands as well. */
static void every_hose_meets_the_tails_that_fit_it(void **state)
{
    enum { TAILS = 60, HOSES = 120 };
    static ow_end ends[TAILS + HOSES + 8];
    size_t count = 0, meeting = 0;
    char words[64];
    (void)state;
    for (int i = 0; i < TAILS; i++) {
        snprintf(words, sizeof words, "%s %d.%02d", i % 2 ? "barb" : "bead", 3 + i / 6, 25 * (i % 4));
        assert_int_equal(ow_end_read(words, &ends[count++], NULL), OW_OK);
    }
    for (int i = 0; i < HOSES; i++) {
        snprintf(words, sizeof words, "hose %d.%02d nitrile", 3 + i / 12, 25 * (i % 4) + i % 3 - (i % 4 > 0));
        assert_int_equal(ow_end_read(words, &ends[count++], NULL), OW_OK);
    }
    static const char *const others[] = {"flange f38",        "flange p48",     "weld 23.77",
                                         "tube 10",           "tube 13.37",     "hose -6 ptfe",
                                         "hose -6 ptfe tail", "hose -6 nitrile"};
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
        assert_int_equal(ow_end_read(others[i], &ends[count++], NULL), OW_OK);
    size_t joined = count_joined(ends, count, &meeting);
    assert_true(joined > HOSES);
    assert_int_equal(count_listed(ends, count), joined);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_two_known_ends_that_are_joined_meet),
        cmocka_unit_test(every_hose_meets_the_tails_that_fit_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
