/* SPDX-License-Identifier: MIT */
/* Diagnostics kept for later, and the catalogue's check printed from them. */
#include <string.h>

#include "oilway/report.h"
#include "oilway/told.h"
#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"

static const ow_diagnostic sample = {.severity = OW_ERROR,
                                     .status = OW_INPUT,
                                     .file = "a.yaml",
                                     .line = 3,
                                     .column = 5,
                                     .line_text = "x: yz and more",
                                     .line_length = 5,
                                     .mark_width = 2,
                                     .message = "wrong",
                                     .expected = "right",
                                     .mend = NULL};

static void what_is_told_outlives_its_words_and_goes_on_to_the_next_sink(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    const ow_context context = ow_test_context(&sink);
    char message[] = "wrong";
    ow_diagnostic lent = sample;
    ow_told told;
    lent.message = message;
    assert_int_equal(ow_told_new(&context, &told), OW_OK);
    ow_told_take(&told, &lent);
    memset(message, '!', sizeof message - 1);
    lent.severity = OW_WARNING;
    lent.message = "doubtful";
    lent.file = NULL;
    ow_told_take(&told, &lent);
    assert_int_equal(ow_told_status(&told), OW_OK);
    assert_int_equal(told.count, 2);
    assert_int_equal(told.errors, 1);
    assert_int_equal(told.warnings, 1);
    assert_string_equal(told.items[0].message, "wrong");
    assert_string_equal(told.items[0].file, "a.yaml");
    assert_string_equal(told.items[0].line_text, "x: yz");
    assert_null(told.items[0].mend);
    assert_null(told.items[1].file);
    assert_int_equal(sink.count, 2);
    ow_told_done(&told);
    ow_test_diagnostics_clear(&sink);
}

/* Reads a page with a fault and one that is doubtful, looks it over and prints, all through one context. */
static ow_status look_over(const ow_context *context, void *data)
{
    static const char *const names[] = {"page.yaml"};
    static const char *const texts[] = {"page: p\nkind: adapter\ntitle: P\ncolumns: [id, a, b, bore]\nrows:\n"
                                        "- [p-1, 1/8-27 NPT male, -4 flare37 male, 12 mm]\n- [p-2, 1/8-27 "
                                        "NPX male, -4 flare37 male, 4 mm]\n"};
    const ow_catalog_options options = {.skip_bad = true};
    ow_catalog *catalog = NULL;
    ow_told told;
    ow_status status = ow_told_new(context, &told);
    if (status != OW_OK)
        return status;
    ow_context listening = *context;
    listening.report = ow_told_take;
    listening.report_user = &told;
    ow_text text = ow_text_new(context);
    ow_catalog_checked checked = {.told = &told};
    status = ow_catalog_load_texts(&listening, names, texts, 1, &options, &catalog);
    checked.catalog = catalog;
    if (status == OW_OK)
        status = ow_catalog_check(&listening, catalog, &checked.errors, &checked.warnings);
    if (status == OW_OK)
        status = ow_report_catalog_check_json(&text, &checked);
    if (status == OW_OK && data != NULL) {
        assert_false(ow_catalog_checked_ok(&checked));
        assert_non_null(strstr(ow_text_words(&text), "\"left_out\":\t[\"p-2\"]"));
        assert_non_null(strstr(ow_text_words(&text), "\"line\":\t7"));
        assert_non_null(strstr(ow_text_words(&text), "wider than the core of the thread"));
    }
    ow_text_done(&text);
    ow_catalog_free(catalog);
    ow_told_done(&told);
    return status;
}

static void a_catalogue_that_is_looked_over_is_printed_with_places(void **state)
{
    (void)state;
    const ow_context context = OW_CONTEXT_INIT;
    assert_int_equal(look_over(&context, &(int){1}), OW_OK);
}

static void running_out_of_memory_anywhere_is_told(void **state)
{
    (void)state;
    ow_test_fail_each(look_over, NULL);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_told_outlives_its_words_and_goes_on_to_the_next_sink),
        cmocka_unit_test(a_catalogue_that_is_looked_over_is_printed_with_places),
        cmocka_unit_test(running_out_of_memory_anywhere_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
