/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include "base/source.h"
#include "support/diagnostics.h"
#include "support/testing.h"

static ow_source source_of(const char *text)
{
    ow_source source = {"page.yaml", text, strlen(text)};
    return source;
}

static void assert_place(const char *text, size_t offset, size_t line, size_t column)
{
    ow_source source = source_of(text);
    size_t found_line = 0, found_column = 0;
    ow_source_position(&source, offset, &found_line, &found_column);
    assert_int_equal(found_line, line);
    assert_int_equal(found_column, column);
}

static void lines_and_columns_count_from_one(void **state)
{
    (void)state;
    assert_place("", 0, 1, 1);
    assert_place("abc", 0, 1, 1);
    assert_place("abc", 2, 1, 3);
    assert_place("abc", 3, 1, 4);
    assert_place("abc", 99, 1, 4);
    assert_place("a\nbc\n", 1, 1, 2);
    assert_place("a\nbc\n", 2, 2, 1);
    assert_place("a\nbc\n", 5, 3, 1);
}

static void every_line_end_counts_once(void **state)
{
    (void)state;
    assert_place("a\r\nb", 3, 2, 1);
    assert_place("a\rb", 2, 2, 1);
    assert_place("a\r\rb", 3, 3, 1);
    assert_place("a\n\r\nb", 4, 3, 1);
}

static void columns_count_characters_not_bytes(void **state)
{
    (void)state;
    assert_place("37\xC2\xB0 flare", 5, 1, 5);
    assert_place("\xEF\xBB\xBFpage", 3, 1, 1); /* a byte-order mark is no character */
    assert_place("\xEF\xBB\xBFpage", 5, 1, 3);
    assert_place("\tbore", 1, 1, 2); /* a tab is one */
}

static void a_report_shows_the_line_and_marks_the_fault(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_source source = source_of("page: x\r\nbore: 4\xC2\xB5 oil\r\n");
    ow_status status = ow_source_report(&context, OW_WARNING, OW_RANGE, &source, (ow_span){15, 3}, "a length",
                                        "write mm", "%s has no unit", "4");
    assert_int_equal(status, OW_RANGE);
    assert_int_equal(sink.count, 1);
    const ow_test_diagnostic *told = &sink.items[0];
    assert_string_equal(told->told, "page.yaml:2:7: warning: 4 has no unit");
    assert_string_equal(told->line_text, "bore: 4\xC2\xB5 oil");
    assert_string_equal(told->marked, "4\xC2\xB5");
    assert_int_equal(told->mark_width, 2);
    assert_int_equal(told->status, OW_RANGE);
    assert_string_equal(told->expected, "a length");
    assert_string_equal(told->mend, "write mm");
    ow_test_diagnostics_clear(&sink);
}

static void a_mark_ends_with_its_line_and_is_never_empty(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_source source = source_of("ports:\n  oil-in: x\n");
    ow_source_report(&context, OW_ERROR, OW_INPUT, &source, (ow_span){0, 18}, NULL, NULL, "whole map");
    ow_source_report(&context, OW_ERROR, OW_INPUT, &source, (ow_span){6, 0}, NULL, NULL, "line end");
    ow_source_report(&context, OW_ERROR, OW_INPUT, &source, (ow_span){500, 4}, NULL, NULL, "past the end");
    assert_string_equal(sink.items[0].marked, "ports:");
    assert_int_equal(sink.items[1].column, 7);
    assert_int_equal(sink.items[1].mark_width, 1);
    assert_string_equal(sink.items[2].told, "page.yaml:3:1: error: past the end");
    ow_test_diagnostics_clear(&sink);
}

static void a_long_message_is_cut_between_characters_and_says_so(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    char words[2001];
    for (size_t i = 0; i < 2000; i += 2)
        memcpy(words + i, "\xC2\xB0", 2);
    words[2000] = '\0';
    for (int shift = 0; shift < 2; shift++)
        ow_report(&context, OW_ERROR, OW_INPUT, NULL, NULL, NULL, "%s%s", shift == 0 ? "" : "x", words);
    for (int shift = 0; shift < 2; shift++) {
        const char *message = sink.items[shift].message;
        assert_in_range(strlen(message), 500, 700);
        assert_string_equal(message + strlen(message) - 5, "\xC2\xB0\xE2\x80\xA6");
    }
    ow_test_diagnostics_clear(&sink);
}

static void a_report_without_a_text_has_no_place(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    assert_int_equal(ow_report(&context, OW_NOTE, OW_IO, "a.yaml", NULL, NULL, "gone: %d", 2), OW_IO);
    assert_int_equal(sink.items[0].line, 0);
    assert_null(sink.items[0].line_text);
    ow_test_assert_told(&sink, "a.yaml: note: gone: 2");
}

static void nobody_listening_is_no_fault(void **state)
{
    (void)state;
    ow_context context = OW_CONTEXT_INIT;
    ow_source source = source_of("x");
    assert_int_equal(ow_report(&context, OW_ERROR, OW_IO, NULL, NULL, NULL, "x"), OW_IO);
    assert_int_equal(ow_report(NULL, OW_ERROR, OW_IO, NULL, NULL, NULL, "x"), OW_IO);
    assert_int_equal(ow_source_report(NULL, OW_ERROR, OW_INPUT, &source, (ow_span){0, 1}, NULL, NULL, "x"),
                     OW_INPUT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lines_and_columns_count_from_one),
        cmocka_unit_test(every_line_end_counts_once),
        cmocka_unit_test(columns_count_characters_not_bytes),
        cmocka_unit_test(a_report_shows_the_line_and_marks_the_fault),
        cmocka_unit_test(a_mark_ends_with_its_line_and_is_never_empty),
        cmocka_unit_test(a_long_message_is_cut_between_characters_and_says_so),
        cmocka_unit_test(a_report_without_a_text_has_no_place),
        cmocka_unit_test(nobody_listening_is_no_fault),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
