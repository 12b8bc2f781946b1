/* SPDX-License-Identifier: MIT */
/* The table of rules as it is printed, and the page that is printed from it. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/file.h"
#include "oilway/report.h"
#include "support/failing.h"
#include "support/testing.h"

static const ow_context plain = OW_CONTEXT_INIT;

static void the_page_of_rules_is_fresh(void **state)
{
    (void)state;
    const char *source = getenv("OW_SOURCE_DIR");
    char path[4096];
    char *page = NULL;
    size_t length = 0;
    (void)snprintf(path, sizeof path, "%s/docs/rules.md", source ? source : ".");
    assert_int_equal(ow_file_read(&plain, path, &page, &length), OW_OK);
    ow_text text = ow_text_new(&plain);
    ow_report_rules_markdown(&text);
    assert_int_equal(ow_text_status(&text), OW_OK);
    if (strcmp(page, ow_text_words(&text)) != 0)
        fail_msg("docs/rules.md is old: oilway rules --format md >docs/rules.md");
    ow_text_done(&text);
    ow_release(&plain, page);
}

static void every_rule_is_printed_once_and_one_alone_where_asked(void **state)
{
    (void)state;
    ow_style style = OW_STYLE_INIT;
    for (size_t index = 0; index < ow_rule_count(); index++) {
        const ow_rule *rule = ow_rule_at(index);
        ow_text all = ow_text_new(&plain), one = ow_text_new(&plain);
        char line[96];
        ow_report_rules_text(&all, NULL, &style);
        ow_report_rules_text(&one, rule, &style);
        (void)snprintf(line, sizeof line, "\n%s %s (", rule->id, ow_severity_name(rule->severity));
        const char *at = strstr(ow_text_words(&all), line);
        assert_non_null(at);
        assert_null(strstr(at + 1, line));
        assert_non_null(strstr(at, ow_text_words(&one)));
        ow_text_done(&all);
        ow_text_done(&one);
    }
}

static void every_rule_stands_in_a_group_and_the_nearest_id_is_found(void **state)
{
    (void)state;
    assert_string_equal(ow_rule_group(0), "What a layout is held to");
    assert_string_equal(ow_rule_group(ow_rule_count() - 1), "A whole job");
    assert_null(ow_rule_group(ow_rule_count()));
    assert_string_equal(ow_rule_nearest("closing-joints"), "closing-joint");
    assert_null(ow_rule_nearest("nothing like any of them"));
}

static ow_status write_all(const ow_context *context, void *data)
{
    (void)data;
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(context);
    ow_report_rules_text(&text, NULL, &style);
    ow_report_rules_markdown(&text);
    ow_status status = ow_report_rules_json(&text, ow_rule_find("bore"));
    if (status == OW_OK)
        status = ow_text_status(&text);
    ow_text_done(&text);
    return status;
}

static void every_allocation_of_printing_may_fail(void **state)
{
    (void)state;
    ow_test_fail_each(write_all, NULL);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_page_of_rules_is_fresh),
        cmocka_unit_test(every_rule_is_printed_once_and_one_alone_where_asked),
        cmocka_unit_test(every_rule_stands_in_a_group_and_the_nearest_id_is_found),
        cmocka_unit_test(every_allocation_of_printing_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
