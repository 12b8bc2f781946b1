/* SPDX-License-Identifier: MIT */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/quantity.h"
#include "oilway/text.h"
#include "support/failing.h"
#include "support/testing.h"

static void a_new_text_is_empty_words(void **state)
{
    (void)state;
    ow_text text = ow_text_new(NULL);
    assert_string_equal(ow_text_words(&text), "");
    ow_text_add(&text, NULL);
    ow_text_add(&text, "");
    ow_text_bytes(&text, NULL, 0);
    ow_text_repeat(&text, 'x', 0);
    assert_string_equal(ow_text_words(&text), "");
    assert_int_equal(ow_text_status(&text), OW_OK);
    ow_text_done(&text);
}

static void what_is_appended_stands_in_order(void **state)
{
    (void)state;
    ow_text text = ow_text_new(NULL);
    ow_text_add(&text, "bore");
    ow_text_char(&text, ':');
    ow_text_repeat(&text, ' ', 2);
    ow_text_bytes(&text, "4.4 mmXX", 6);
    ow_text_format(&text, " %s %d", "id", 7);
    assert_string_equal(ow_text_words(&text), "bore:  4.4 mm id 7");
    assert_int_equal(text.length, strlen("bore:  4.4 mm id 7"));
    ow_text_done(&text);
    assert_string_equal(ow_text_words(&text), "");
}

static void formatted_words_of_any_length_are_whole(void **state)
{
    (void)state;
    char long_words[1001];
    memset(long_words, 'z', 1000);
    long_words[1000] = '\0';
    for (int length = 250; length <= 260; length++) { /* around the length of the first try */
        ow_text text = ow_text_new(NULL);
        ow_text_format(&text, "%.*s|", length, long_words);
        assert_int_equal(text.length, length + 1);
        assert_int_equal(strlen(ow_text_words(&text)), length + 1);
        assert_int_equal(ow_text_words(&text)[length], '|');
        ow_text_done(&text);
    }
}

static void numbers_have_a_point_whatever_the_locale(void **state)
{
    (void)state;
    /* The Makefile makes this locale, whose decimal sign is a comma, and says where it is. */
    if (getenv("OW_COMMA_LOCALE") == NULL)
        fail_msg("OW_COMMA_LOCALE names no locale: run by make unit");
    assert_non_null(setlocale(LC_NUMERIC, getenv("OW_COMMA_LOCALE")));
    char plain[16];
    snprintf(plain, sizeof plain, "%.1f", 4.4);
    assert_string_equal(plain, "4,4");
    ow_text text = ow_text_new(NULL);
    ow_text_format(&text, "%.1f", 4.4);
    assert_string_equal(ow_text_words(&text), "4.4");
    double read = 0;
    assert_int_equal(ow_quantity_read("4.45678901234567890123 mm", OW_LENGTH, &read), OW_OK);
    assert_true(read > 0.0044567 && read < 0.0044568);
    ow_text_done(&text);
    setlocale(LC_NUMERIC, "C");
}

static void a_failed_text_stays_failed_and_keeps_what_it_had(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_text text = ow_text_new(&context);
    ow_text_add(&text, "kept");
    failing.fail_at = failing.asked + 1;
    ow_text_repeat(&text, 'x', 1000);
    assert_int_equal(ow_text_status(&text), OW_MEMORY);
    size_t asked = failing.asked;
    ow_text_add(&text, "more");
    ow_text_format(&text, "%d", 1);
    ow_text_char(&text, 'c');
    assert_int_equal(failing.asked, asked); /* later appends do nothing */
    assert_string_equal(ow_text_words(&text), "kept");
    ow_text_done(&text);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

static ow_status write_much(const ow_context *context, void *data)
{
    (void)data;
    ow_text text = ow_text_new(context);
    for (int i = 0; i < 50; i++) {
        ow_text_format(&text, "%d %300s", i, "x");
        ow_text_add(&text, "\n");
    }
    ow_status status = ow_text_status(&text);
    ow_text_done(&text);
    return status;
}

static void each_failing_allocation_is_told_and_leaks_nothing(void **state)
{
    (void)state;
    assert_true(ow_test_fail_each(write_much, NULL) > 2);
}

static void assert_shown(const ow_diagnostic *diagnostic, const char *expected)
{
    ow_text text = ow_text_new(NULL);
    ow_text_diagnostic(&text, diagnostic);
    assert_string_equal(ow_text_words(&text), expected);
    ow_text_done(&text);
}

static void a_diagnostic_reads_as_a_person_wants_it(void **state)
{
    (void)state;
    ow_diagnostic full = {.severity = OW_ERROR,
                          .status = OW_INPUT,
                          .file = "catalog/x.yaml",
                          .line = 12,
                          .column = 9,
                          .line_text = "  bore: 4.4  # true",
                          .line_length = 19,
                          .mark_width = 3,
                          .message = "\"4.4\" has no unit",
                          .expected = "a length with its unit, such as 4.4 mm",
                          .mend = "write 4.4 mm"};
    assert_shown(&full, "catalog/x.yaml:12:9: error: \"4.4\" has no unit\n"
                        "      bore: 4.4  # true\n"
                        "            ^^^\n"
                        "    expected a length with its unit, such as 4.4 mm\n"
                        "    mend: write 4.4 mm\n");
    ow_diagnostic bare = {.severity = OW_WARNING, .status = OW_IO, .message = "nothing to read"};
    assert_shown(&bare, "warning: nothing to read\n");
    bare.file = "x.yaml";
    assert_shown(&bare, "x.yaml: warning: nothing to read\n");
    bare.line = 3;
    assert_shown(&bare, "x.yaml:3: warning: nothing to read\n");
}

static ow_diagnostic about_line(const char *line, size_t column, size_t width)
{
    ow_diagnostic made = {.severity = OW_NOTE,
                          .status = OW_INPUT,
                          .line = 1,
                          .column = column,
                          .line_text = line,
                          .line_length = strlen(line),
                          .mark_width = width,
                          .message = "here"};
    return made;
}

static void the_mark_stands_under_the_fault_behind_tabs_and_accents(void **state)
{
    (void)state;
    ow_diagnostic tabbed = about_line("\tbore:\t4", 8, 1);
    assert_shown(&tabbed, "note: here\n"
                          "        bore:    4\n"
                          "                 ^\n");
    ow_diagnostic tab_itself = about_line("a:\tb", 3, 1);
    assert_shown(&tab_itself, "note: here\n"
                              "    a:    b\n"
                              "      ^^^^\n");
    ow_diagnostic accents = about_line("37\xC2\xB0 \xC3\xA9t\xC3\xA9", 5, 3);
    assert_shown(&accents, "note: here\n"
                           "    37\xC2\xB0 \xC3\xA9t\xC3\xA9\n"
                           "        ^^^\n");
    ow_diagnostic behind = about_line("bore:", 6, 1);
    assert_shown(&behind, "note: here\n"
                          "    bore:\n"
                          "         ^\n");
}

static void nothing_in_a_line_or_message_can_steer_a_terminal(void **state)
{
    (void)state;
    ow_diagnostic hostile = about_line("a\x1B[31m\x7F\xC2\x9B\xFF", 1, 1);
    hostile.message = "a\x1B]0;x\x07\nb";
    assert_shown(&hostile, "note: a?]0;x? b\n"
                           "    a?[31m???\n"
                           "    ^\n");
}

static void a_long_line_is_shown_around_its_fault(void **state)
{
    (void)state;
    char line[5001];
    memset(line, '.', 5000);
    line[5000] = '\0';
    line[2999] = 'X';
    ow_diagnostic far = about_line(line, 3000, 1);
    ow_text text = ow_text_new(NULL);
    ow_text_diagnostic(&text, &far);
    const char *shown = strstr(ow_text_words(&text), "\n    ") + 5;
    const char *mark = strstr(shown, "\n    ") + 5;
    assert_in_range(mark - shown, 80, 130);
    assert_true(text.length < 300);
    /* "…" is three bytes and one column. */
    assert_int_equal(strchr(shown, 'X') - shown - 2, strchr(mark, '^') - mark);
    ow_text_done(&text);
}

static void statuses_and_severities_have_words(void **state)
{
    (void)state;
    for (int i = 0; i < OW_STATUS_COUNT; i++) {
        assert_true(strlen(ow_status_text((ow_status)i)) > 3);
        for (int j = 0; j < i; j++)
            assert_string_not_equal(ow_status_text((ow_status)i), ow_status_text((ow_status)j));
    }
    assert_non_null(ow_status_text((ow_status)-1));
    assert_non_null(ow_status_text(OW_STATUS_COUNT));
    assert_string_equal(ow_severity_name(OW_NOTE), "note");
    assert_string_equal(ow_severity_name(OW_WARNING), "warning");
    assert_string_equal(ow_severity_name(OW_ERROR), "error");
    assert_non_null(ow_severity_name((ow_severity)99));
}

static void a_text_put_into_another_takes_its_failure_along(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_text whole = ow_text_new(&context), part = ow_text_new(&context);
    ow_text_add(&whole, "begun ");
    ow_text_add(&part, "words");
    ow_text_add(&whole, ow_text_words(&part));
    ow_text_done_into(&part, &whole);
    assert_int_equal(ow_text_status(&whole), OW_OK);
    assert_string_equal(ow_text_words(&whole), "begun words");
    failing.fail_onward = true;
    failing.fail_at = failing.asked + 1;
    ow_text_add(&part, "lost");
    ow_text_done_into(&part, &whole);
    assert_int_equal(ow_text_status(&whole), OW_MEMORY);
    ow_text_done(&whole);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_new_text_is_empty_words),
        cmocka_unit_test(what_is_appended_stands_in_order),
        cmocka_unit_test(formatted_words_of_any_length_are_whole),
        cmocka_unit_test(numbers_have_a_point_whatever_the_locale),
        cmocka_unit_test(a_failed_text_stays_failed_and_keeps_what_it_had),
        cmocka_unit_test(each_failing_allocation_is_told_and_leaks_nothing),
        cmocka_unit_test(a_diagnostic_reads_as_a_person_wants_it),
        cmocka_unit_test(the_mark_stands_under_the_fault_behind_tabs_and_accents),
        cmocka_unit_test(nothing_in_a_line_or_message_can_steer_a_terminal),
        cmocka_unit_test(a_long_line_is_shown_around_its_fault),
        cmocka_unit_test(statuses_and_severities_have_words),
        cmocka_unit_test(a_text_put_into_another_takes_its_failure_along),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
