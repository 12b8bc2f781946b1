/* SPDX-License-Identifier: MIT */
#include <stdlib.h>
#include <string.h>

#include "oilway/report_thread.h"
#include "support/failing.h"
#include "support/testing.h"

static ow_thread thread_of(const char *words)
{
    ow_thread thread = {0};
    size_t used;
    if (ow_thread_read(words, &thread, &used) != OW_OK)
        fail_msg("\"%s\" is not read", words);
    return thread;
}

static ow_status write_thread_text(const ow_context *context, void *data)
{
    ow_text text = ow_text_new(context);
    ow_style style = OW_STYLE_INIT;
    ow_thread thread = thread_of(data);
    ow_report_thread_text(&text, &thread, OW_CLASS_USUAL, true, &style);
    ow_status status = ow_text_status(&text);
    ow_text_done(&text);
    return status;
}

static ow_status write_thread_json(const ow_context *context, void *data)
{
    ow_text text = ow_text_new(context);
    ow_thread thread = thread_of(data);
    ow_status status = ow_report_thread_json(&text, &thread, OW_CLASS_USUAL, true);
    ow_text_done(&text);
    return status;
}

static void want_of_memory_is_said_and_nothing_leaks(void **state)
{
    char taper[] = "1/8 NPT", open[] = "M10";
    (void)state;
    ow_test_fail_each(write_thread_text, taper);
    ow_test_fail_each(write_thread_text, open);
    ow_test_fail_each(write_thread_json, taper);
    ow_test_fail_each(write_thread_json, open);
}

static size_t times(const char *words, const char *part)
{
    size_t count = 0;
    for (const char *at = words; (at = strstr(at, part)) != NULL; at += strlen(part))
        count++;
    return count;
}

static void cautions_come_once_however_many_pitches_there_are(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_style style = OW_STYLE_INIT;
    ow_thread thread = thread_of("M10");
    (void)state;
    assert_true(ow_report_thread_text(&text, &thread, OW_CLASS_USUAL, true, &style));
    assert_int_equal(times(ow_text_words(&text), ": drill "), 4);
    assert_int_equal(times(ow_text_words(&text), "ends in a bearing"), 1);
    ow_text_done(&text);
}

static void nothing_is_written_of_what_has_no_size(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_style style = OW_STYLE_INIT;
    ow_thread thread = thread_of("M10x1");
    (void)state;
    ow_text_add(&text, "before");
    assert_false(ow_report_thread_text(&text, &thread, OW_CLASS_2A, true, &style));
    assert_int_equal(ow_report_thread_json(&text, &thread, OW_CLASS_2A, true), OW_NONE);
    assert_string_equal(ow_text_words(&text), "before");
    ow_text_done(&text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(want_of_memory_is_said_and_nothing_leaks),
        cmocka_unit_test(cautions_come_once_however_many_pitches_there_are),
        cmocka_unit_test(nothing_is_written_of_what_has_no_size),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
