/* SPDX-License-Identifier: MIT */
#include "oilway/caliper.h"
#include "support/diagnostics.h"
#include "support/near.h"
#include "support/testing.h"

static void what_is_typed_becomes_a_reading(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_caliper_words words = {
        .diameter = "9.9 mm", .tpi = "27", .accuracy = "0.1", .taper = "Yes", .male = true};
    ow_caliper_ask ask = OW_CALIPER_ASK_INIT;
    assert_int_equal(ow_caliper_ask_read(&context, &words, &ask), OW_OK);
    assert_near(ask.diameter_m, 9.9e-3, 1e-12);
    assert_near(ask.pitch_m, 0.0254 / 27, 1e-12);
    assert_near(ask.accuracy_m, 0.1e-3, 1e-12);
    assert_int_equal(ask.side, OW_CALIPER_MALE);
    assert_int_equal(ask.taper, OW_TAPER_YES);
    words = (ow_caliper_words){.diameter = "0.39 in", .pitch = "1", .female = true};
    assert_int_equal(ow_caliper_ask_read(&context, &words, &ask), OW_OK);
    assert_near(ask.diameter_m, 0.39 * 0.0254, 1e-12);
    assert_near(ask.pitch_m, 1e-3, 1e-12);
    assert_int_equal(ask.side, OW_CALIPER_FEMALE);
    assert_int_equal(ask.taper, OW_TAPER_NOT_SAID);
    assert_int_equal(sink.count, 0);
}

static void every_fault_of_a_reading_is_told_at_once(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_caliper_words words = {
        .diameter = "9.9", .tpi = "x", .accuracy = "5", .taper = "perhaps", .male = true, .female = true};
    ow_caliper_ask ask = OW_CALIPER_ASK_INIT;
    ask.diameter_m = 7;
    assert_int_equal(ow_caliper_ask_read(&context, &words, &ask), OW_INPUT);
    assert_near(ask.diameter_m, 7, 1e-12);
    assert_int_equal(sink.count, 5);
    assert_string_equal(sink.items[0].told, "diameter:1:1: error: this is no diameter");
    assert_string_equal(sink.items[1].told, "--tpi:1:1: error: this is no bare number");
    assert_string_equal(sink.items[2].told, "--accuracy:1:1: error: this is out of range");
    assert_string_equal(sink.items[4].marked, "perhaps");
    ow_test_diagnostics_clear(&sink);
}

static void a_diameter_must_be_there_and_a_pitch_only_once(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_caliper_words words = {.tpi = "24", .pitch = "1"};
    ow_caliper_ask ask = OW_CALIPER_ASK_INIT;
    assert_int_equal(ow_caliper_ask_read(&context, &words, &ask), OW_INPUT);
    assert_non_null(ow_test_find(&sink, "diameter is missing"));
    assert_non_null(ow_test_find(&sink, "given twice"));
    ow_test_diagnostics_clear(&sink);
    words = (ow_caliper_words){.diameter = "120 mm"};
    assert_int_equal(ow_caliper_ask_read(&context, &words, &ask), OW_INPUT);
    ow_test_assert_told(&sink, "diameter:1:1: error: this is out of range");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_typed_becomes_a_reading),
        cmocka_unit_test(every_fault_of_a_reading_is_told_at_once),
        cmocka_unit_test(a_diameter_must_be_there_and_a_pitch_only_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
