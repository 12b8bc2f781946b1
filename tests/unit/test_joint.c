/* SPDX-License-Identifier: MIT */
/* Which ends seal with which: one line a joint as the trade knows it, and the pairs that only look right. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "oilway/joint.h"

#define LENGTH(array) (sizeof(array) / sizeof(array)[0])

static ow_end read_end(const char *words)
{
    ow_end end;
    if (ow_end_read(words, &end, NULL) != OW_OK)
        fail_msg("%s was not read", words);
    return end;
}

static const ow_joint_rule *find(const char *a, const char *b)
{
    ow_end first = read_end(a), second = read_end(b);
    return ow_joint_find(&first, &second);
}

/* Standards as named in the rules; tails, clamps and flanges common practice. */
static const char *const JOINTS[][3] = {
    {"1/8 NPT male", "1/8 NPT female", "taper-npt"},
    {"1/8 NPTF male", "1/8 NPTF female", "taper-nptf"},
    {"1/8 NPTF male", "1/8 NPT female", "taper-nptf-in-npt"},
    {"1/8 NPT male", "1/8 NPTF female", "taper-npt"},
    {"R1/8 male", "Rc1/8 female", "taper-r-rc"},
    {"R1/8 male", "Rp1/8 female", "taper-r-rp"},
    {"M10x1 male taper", "M10x1 female washer", "taper-metric"},
    {"M12x1.5 male washer", "M12x1.5 female washer", "washer-metric"},
    {"G1/4 male washer", "G1/4 female washer", "washer-pipe"},
    {"1/2-20 UNF male washer", "1/2-20 UNF female washer", "washer-unified"},
    {"M12x1.5 male washer-captive", "M12x1.5 female washer", "captive-metric"},
    {"G1/4 male washer-captive", "G1/4 female washer", "captive-pipe"},
    {"1/2-20 UNF male washer-captive", "1/2-20 UNF female washer", "captive-unified"},
    {"M12x1.5 male banjo", "M12x1.5 female washer", "banjo-thread-metric"},
    {"G1/8 male banjo", "G1/8 female washer", "banjo-thread-pipe"},
    {"3/8-24 UNF male banjo", "3/8-24 UNF female washer", "banjo-thread-unified"},
    {"banjo 10 stud", "banjo 10 eye", "banjo-eye"},
    {"-6 o-ring male", "9/16-18 UNF female o-ring", "o-ring-inch"},
    {"M14x1.5 male o-ring", "M14x1.5 female o-ring", "o-ring-metric"},
    {"-4 face-o-ring male", "-4 face-o-ring female swivel", "face-o-ring"},
    {"-4 flare37 male", "-4 flare37 female swivel", "flare37"},
    {"1/4 flare45 male", "1/4 flare45 female swivel", "flare45"},
    {"3/16 flare45-inverted male", "3/16 flare45-inverted female", "flare45-inverted"},
    {"4.75 convex male", "4.75 convex female", "convex"},
    {"M16x1.5 male cone24 10L", "M16x1.5 female cone24 10L swivel", "cone24"},
    {"M16x1.5 male cone24 10L", "tube 10", "cone24-tube"},
    {"M16x1.5 male cone24 8S", "tube 8", "cone24-tube"},
    {"G1/4 male cone60", "G1/4 female cone60 swivel", "cone60-pipe"},
    {"M16x1.5 male cone60", "M16x1.5 female cone60 swivel", "cone60-metric"},
    {"G1/4 male flare30", "G1/4 female flare30 swivel", "flare30-pipe"},
    {"M14x1.5 male flare30", "M14x1.5 female flare30 swivel", "flare30-metric"},
    {"hose -4 ptfe", "hose -4 ptfe tail", "hose-tail"},
    {"hose 16 fluoro-silicone", "barb 16", "hose-barb"},
    {"hose 16 rubber", "barb 15.5", "hose-barb"},
    {"hose 16 rubber", "barb 16.5", "hose-barb"},
    {"hose 16 rubber", "bead 16", "hose-bead"},
    {"flange f38", "flange f38", "flange"},
    {"weld 16", "weld 16", "weld"},
    {"1/4 NPT male", "1/4 NPSM female swivel", "npsm-swivel"},
    {"R1/4 male", "G1/4 female washer", "taper-r-in-g"},
};

static void a_joint_of_the_trade_is_found_by_its_rule(void **state)
{
    (void)state;
    for (size_t i = 0; i < LENGTH(JOINTS); i++) {
        const ow_joint_rule *rule = find(JOINTS[i][0], JOINTS[i][1]);
        if (!rule || strcmp(rule->id, JOINTS[i][2]) != 0)
            fail_msg("%s with %s: %s", JOINTS[i][0], JOINTS[i][1], rule ? rule->id : "no rule");
        assert_ptr_equal(find(JOINTS[i][1], JOINTS[i][0]), rule);
    }
}

static const char *const NO_JOINTS[][2] = {
    {"1/8 NPT male", "1/8 NPT male"},                          /* gender */
    {"1/8 NPT male", "1/4 NPT female"},                        /* size */
    {"1/8 NPT male", "Rc1/8 female"},                          /* 60 and 55 degrees */
    {"1/2 NPT male", "Rc1/2 female"},                          /* same 14 to the inch, still leaks */
    {"1/4 NPT male", "G1/4 female washer"},                    /* taper in another parallel thread */
    {"G1/4 male washer", "Rp1/4 female"},                      /* Rp may be smaller than any G male */
    {"G1/4 male washer", "Rc1/4 female"},                      /* parallel in taper */
    {"M10x1 male taper", "M10x1 female o-ring"},               /* a recess where it should wedge */
    {"M12x1.5 male washer", "M12x1.25 female washer"},         /* pitch */
    {"M12x1.5 male washer", "M12x1.5 female o-ring"},          /* washer over a chamfer */
    {"M14x1.5 male o-ring", "M14x1.5 female washer"},          /* no recess for the ring */
    {"M12x1.5 male banjo", "M12x1.5 female o-ring"},           /* as the washer */
    {"M12x1.5 male washer", "banjo 12 eye"},                   /* a solid stud feeds no eye */
    {"M12x1.5 male banjo", "banjo 12 eye"},                    /* the stud passes the eye, not the thread */
    {"banjo 10 stud", "banjo 12 eye"},                         /* size */
    {"banjo 10 stud", "banjo 10 stud"},                        /* gender */
    {"-4 flare37 male", "1/4 flare45 female swivel"},          /* 7/16-20, 8 degrees a side */
    {"-5 flare37 male", "5/16 flare45 female swivel"},         /* 1/2-20 */
    {"-8 flare37 male", "1/2 flare45 female swivel"},          /* 3/4-16 */
    {"-3 flare37 male", "3/8-24 UNF female washer"},           /* nose touches nothing */
    {"-4 flare37 male", "-4 o-ring female"},                   /* a recess, not a cone */
    {"-3 flare37 male", "3/16 flare45-inverted female"},       /* seat hidden in the port */
    {"3/8-24 UNF male banjo", "3/16 flare45-inverted female"}, /* bottoms on the hidden seat */
    {"-6 o-ring male", "-4 face-o-ring female swivel"},        /* both 9/16-18 */
    {"M16x1.5 male cone24 10L", "M16x1.5 female cone24 8S"},   /* one thread, two tubes */
    {"M16x1.5 male cone24 10L", "M16x1.5 female cone60"},      /* angle */
    {"M16x1.5 male cone24 10L", "M16x1.5 female washer"},      /* cone on a flat */
    {"M16x1.5 male cone24 10L", "tube 8"},                     /* tube of the S series */
    {"M16x1.5 female cone24 10L", "tube 10"},                  /* the nut is the female */
    {"G1/4 male cone60", "G1/4 female washer"},                /* cone on a flat */
    {"G1/4 male cone60", "G1/4 female flare30 swivel"},        /* hollow on raised */
    {"hose -4 ptfe", "hose -4 rubber tail"},                   /* class */
    {"hose -4 ptfe", "hose -6 ptfe tail"},                     /* size */
    {"hose -4 ptfe", "hose -4 ptfe"},                          /* no cut end mates itself */
    {"hose -4 ptfe tail", "hose -4 ptfe tail"},                /* nor does a tail */
    {"hose 16 rubber", "hose 16 rubber"},
    {"barb 16", "barb 16"},
    {"tube 10", "tube 10"},
    {"hose 16 ptfe", "barb 16"},       /* too stiff to clamp */
    {"hose -10 rubber", "barb 16"},    /* goes by dash */
    {"hose 16 rubber", "barb 16.501"}, /* over half a millimetre */
    {"hose 16 rubber", "barb 15.499"},
    {"flange f38", "flange f44"},
    {"weld 16", "weld 18"},
    {"M10 male washer", "M10 female washer"}, /* not whole: no answer */
};

/* Reasons stand beside; seat confusions from SAE J514, J512, J1926-1, ISO 8434-1 by shared thread. */
static void what_only_looks_right_is_no_joint(void **state)
{
    (void)state;
    for (size_t i = 0; i < LENGTH(NO_JOINTS); i++) {
        const ow_joint_rule *rule = find(NO_JOINTS[i][0], NO_JOINTS[i][1]);
        if (rule)
            fail_msg("%s with %s: %s", NO_JOINTS[i][0], NO_JOINTS[i][1], rule->id);
        assert_null(find(NO_JOINTS[i][1], NO_JOINTS[i][0]));
    }
}

static void what_is_tolerated_says_why_no_standard_blesses_it(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_joint_rule_count(); i++) {
        const ow_joint_rule *rule = ow_joint_rule_at(i);
        if (rule->verdict == OW_TOLERATED) {
            assert_non_null(rule->remark);
            assert_string_equal(rule->source, "common practice");
        } else {
            assert_int_equal(rule->verdict, OW_SEALS);
        }
    }
}

static void sealant_goes_on_taper_threads_only(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_joint_rule_count(); i++) {
        const ow_joint_rule *rule = ow_joint_rule_at(i);
        bool sealant = rule->needs[0] && strcmp(rule->needs[0], "thread sealant") == 0;
        assert_int_equal(sealant, strncmp(rule->id, "taper-", 6) == 0);
    }
}

static void a_joint_turns_if_either_end_does(void **state)
{
    static const struct {
        const char *a, *b;
        bool turns;
    } CASES[] = {
        {"-4 flare37 male", "-4 flare37 female swivel", true},
        {"-4 flare37 male", "-4 flare37 female", false},
        {"1/8 NPT male", "1/8 NPT female", false},
        {"hose -4 ptfe", "hose -4 ptfe tail", false},
        {"hose 16 rubber", "barb 16", true},
        {"banjo 10 stud", "banjo 10 eye", true},
        {"M12x1.5 male banjo", "M12x1.5 female washer", false},
        {"flange f38", "flange f38", true},
        {"M16x1.5 male cone24 10L", "tube 10", true},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_end a = read_end(CASES[i].a), b = read_end(CASES[i].b);
        assert_int_equal(ow_joint_turns(&a, &b), CASES[i].turns);
        assert_int_equal(ow_joint_turns(&b, &a), CASES[i].turns);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_joint_of_the_trade_is_found_by_its_rule),
        cmocka_unit_test(what_only_looks_right_is_no_joint),
        cmocka_unit_test(what_is_tolerated_says_why_no_standard_blesses_it),
        cmocka_unit_test(sealant_goes_on_taper_threads_only),
        cmocka_unit_test(a_joint_turns_if_either_end_does),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
