/* SPDX-License-Identifier: MIT */
/* An audit of the table of joint rules itself, and of the page that carries it. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "ends/sizes.h"
#include "joints/rules.h"

#define ENDS_MAX 4000

static ow_end ends[ENDS_MAX];
static size_t end_count;

static void add(const char *words)
{
    ow_end end;
    if (ow_end_read(words, &end, NULL) != OW_OK || !ow_end_is_whole(&end))
        return;
    for (size_t i = 0; i < end_count; i++)
        if (ow_end_same(&ends[i], &end))
            return;
    assert_true(end_count < ENDS_MAX);
    ends[end_count++] = end;
}

/* Every thread known with every seat and gender that the grammar takes. */
static void add_threads(const char *name)
{
    static const char *const SEATS[] = {"",           "washer",      "washer-captive", "banjo",
                                        "o-ring",     "cone60",      "flare30",        "taper",
                                        "flare37",    "face-o-ring", "flare45",        "flare45-inverted",
                                        "cone24 10L", "cone24 8S",   "cone24 8L"};
    char words[128];
    for (size_t i = 0; i < sizeof SEATS / sizeof SEATS[0]; i++) {
        (void)snprintf(words, sizeof words, "%s male %s", name, SEATS[i]);
        add(words);
        (void)snprintf(words, sizeof words, "%s female %s", name, SEATS[i]);
        add(words);
    }
    (void)snprintf(words, sizeof words, "%s female swivel", name);
    add(words);
}

static int all_ends(void **state)
{
    static const char *const OTHERS[] = {
        "4.75 convex male",
        "4.75 convex female",
        "5 convex male",
        "6 convex male",
        "6 convex female",
        "banjo 10 stud",
        "banjo 10 eye",
        "banjo 12 stud",
        "banjo 12 eye",
        "hose -4 ptfe",
        "hose -4 ptfe tail",
        "hose -4 rubber",
        "hose -4 rubber tail",
        "hose -6 ptfe tail",
        "hose 16 rubber",
        "hose 16 ptfe",
        "hose 15.5 silicone",
        "barb 16",
        "barb 15",
        "bead 16",
        "bead 17",
        "tube 6",
        "tube 8",
        "tube 10",
        "flange f38",
        "flange f44",
        "weld 16",
        "weld 18",
    };
    (void)state;
    const ow_thread *thread;
    for (size_t i = 0; (thread = ow_thread_at(i)); i++) {
        ow_context context = OW_CONTEXT_INIT;
        ow_text text = ow_text_new(&context);
        ow_thread_write(&text, thread);
        add_threads(ow_text_words(&text));
        ow_text_done(&text);
    }
    for (size_t i = 0; i < sizeof OTHERS / sizeof OTHERS[0]; i++)
        add(OTHERS[i]);
    return end_count > 400 ? 0 : 1;
}

static void a_joint_does_not_depend_on_the_order_of_its_ends(void **state)
{
    (void)state;
    for (size_t i = 0; i < end_count; i++)
        for (size_t j = i; j < end_count; j++)
            assert_ptr_equal(ow_joint_find(&ends[i], &ends[j]), ow_joint_find(&ends[j], &ends[i]));
}

static void a_pair_is_spoken_of_by_one_rule_at_most(void **state)
{
    const ow_joint_row *row;
    (void)state;
    for (size_t i = 0; i < end_count; i++) {
        for (size_t j = 0; j < end_count; j++) {
            int rules = 0;
            for (size_t k = 0; (row = ow_joint_row_at(k)); k++)
                rules += ow_joint_row_fits(row, &ends[i], &ends[j]);
            assert_true(rules <= 1);
        }
    }
}

static void no_rule_joins_male_to_male_or_female_to_female(void **state)
{
    (void)state;
    for (size_t i = 0; i < end_count; i++)
        for (size_t j = 0; j < end_count; j++)
            if (ow_joint_find(&ends[i], &ends[j]) && ends[i].gender != OW_GENDER_NONE)
                assert_int_not_equal(ends[i].gender, ends[j].gender);
}

static void every_rule_speaks_of_some_pair_and_every_end_has_a_mate(void **state)
{
    const ow_joint_row *row;
    bool used[100] = {false};
    (void)state;
    for (size_t i = 0; i < end_count; i++) {
        bool mated = false;
        for (size_t j = 0; j < end_count; j++) {
            const ow_joint_rule *rule = ow_joint_find(&ends[i], &ends[j]);
            mated = mated || rule != NULL;
            for (size_t k = 0; rule && (row = ow_joint_row_at(k)); k++)
                used[k] = used[k] || rule == &row->rule;
        }
        /* A female NPTF takes NPT males; a tube, hose or barb of an odd size needs its own partner. */
        char name[OW_END_TEXT_SIZE];
        if (!mated && ends[i].form <= OW_FORM_BANJO && ends[i].seat != OW_SEAT_CONVEX)
            fail_msg("nothing mates %s", ow_end_name(&ends[i], name));
    }
    for (size_t k = 0; (row = ow_joint_row_at(k)); k++)
        if (!used[k])
            fail_msg("rule %s speaks of nothing", row->rule.id);
}

static void every_seat_has_at_least_one_rule(void **state)
{
    const ow_joint_row *row;
    bool seats[OW_SEAT_COUNT] = {false};
    bool forms[OW_FORM_COUNT] = {false};
    (void)state;
    for (size_t k = 0; (row = ow_joint_row_at(k)); k++) {
        seats[row->first.seat] = seats[row->second.seat] = true;
        forms[row->first.form] = forms[row->second.form] = true;
    }
    for (int seat = 0; seat < OW_SEAT_COUNT; seat++)
        assert_true(seats[seat] || seat == OW_SEAT_UNKNOWN);
    for (int form = 0; form < OW_FORM_COUNT; form++)
        assert_true(forms[form]);
}

static void every_rule_has_a_name_of_its_own_and_its_words(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_joint_rule_count(); i++) {
        const ow_joint_rule *rule = ow_joint_rule_at(i);
        assert_true(rule->id[0] && rule->seals_by[0] && rule->source[0]);
        for (size_t j = 0; j < i; j++)
            assert_string_not_equal(rule->id, ow_joint_rule_at(j)->id);
    }
    assert_null(ow_joint_rule_at(ow_joint_rule_count()));
}

/* ---- docs/joints.md: | `rule` | one end | other end | verdict | seals by | needs | source | ---- */
static char *read_page(void)
{
    const char *folder = getenv("OW_SOURCE_DIR");
    char path[4096];
    (void)snprintf(path, sizeof path, "%s/docs/joints.md", folder ? folder : ".");
    FILE *file = fopen(path, "rb");
    assert_non_null(file);
    char *page = calloc(1, 100000);
    assert_non_null(page);
    assert_true(fread(page, 1, 99999, file) > 0);
    (void)fclose(file);
    return page;
}

/* Cuts a table line into its cells, blanks and backquotes trimmed. */
static size_t cut_cells(char *line, char *cells[], size_t most)
{
    size_t count = 0;
    char *rest = line;
    for (char *cell; count < most && (cell = strtok_r(NULL, "|", &rest)); count++) {
        while (*cell == ' ' || *cell == '`')
            cell++;
        size_t length = strlen(cell);
        while (length > 0 && (cell[length - 1] == ' ' || cell[length - 1] == '`'))
            cell[--length] = '\0';
        cells[count] = cell;
    }
    return count;
}

static void check_row(char *cells[])
{
    ow_end a, b;
    assert_int_equal(ow_end_read(cells[1], &a, NULL), OW_OK);
    assert_int_equal(ow_end_read(cells[2], &b, NULL), OW_OK);
    const ow_joint_rule *rule = ow_joint_find(&a, &b);
    assert_non_null(rule);
    char needs[256] = "";
    for (size_t i = 0; i < 3 && rule->needs[i]; i++)
        (void)snprintf(needs + strlen(needs), sizeof needs - strlen(needs), "%s%s", i ? ", " : "",
                       rule->needs[i]);
    assert_string_equal(cells[0], rule->id);
    assert_string_equal(cells[3], ow_verdict_word(rule->verdict));
    assert_string_equal(cells[4], rule->seals_by);
    assert_string_equal(cells[5], needs);
    assert_string_equal(cells[6], rule->source);
}

static void the_page_on_joints_says_what_the_table_says(void **state)
{
    char *page = read_page(), *rest = page;
    size_t rows = 0;
    (void)state;
    for (char *line; (line = strtok_r(NULL, "\n", &rest));) {
        char *cells[8];
        if (strncmp(line, "| `", 3) != 0 || cut_cells(line, cells, 8) != 7)
            continue;
        check_row(cells);
        rows++;
    }
    assert_int_equal(rows, ow_joint_rule_count());
    free(page);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_joint_does_not_depend_on_the_order_of_its_ends),
        cmocka_unit_test(a_pair_is_spoken_of_by_one_rule_at_most),
        cmocka_unit_test(no_rule_joins_male_to_male_or_female_to_female),
        cmocka_unit_test(every_rule_speaks_of_some_pair_and_every_end_has_a_mate),
        cmocka_unit_test(every_seat_has_at_least_one_rule),
        cmocka_unit_test(every_rule_has_a_name_of_its_own_and_its_words),
        cmocka_unit_test(the_page_on_joints_says_what_the_table_says),
    };
    return cmocka_run_group_tests(tests, all_ends, NULL);
}
