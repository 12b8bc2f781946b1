/* SPDX-License-Identifier: MIT */
/* Oil and drain from words to print: figures, names, findings, refusals. */
#include "oilway/report_physics.h"

#include <string.h>

#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/json_values.h"

static const ow_context plain = OW_CONTEXT_INIT;

/* ---- oil ------------------------------------------------------------------------------------ */

static cJSON *oil_json(const ow_oil_words *words)
{
    ow_oil_request request;
    ow_oil_answer answer;
    ow_text text = ow_text_new(&plain);
    assert_int_equal(ow_oil_request_read(&plain, words, &request), OW_OK);
    assert_int_equal(ow_oil_reckon(&plain, &request, &answer), OW_OK);
    assert_int_equal(ow_report_oil_json(&text, &request, &answer), OW_OK);
    ow_oil_answer_done(&answer);
    ow_oil_request_done(&request);
    return parsed(&text);
}

/* The worked 15W-40, by grade and by its figures. */
static void oil_by_grade_and_by_figures_is_the_same(void **state)
{
    (void)state;
    const ow_oil_words rows[] = {
        {.grade = "15w40", .at = "100 C"},
        {.kv40 = "110", .kv100 = "14.7", .rho15 = "878", .at = "212 F"},
        {.kv40 = "110 mm2/s", .kv100 = "14.7 cSt", .rho15 = "878 kg/m3", .at = "373.15 K"}};
    for (size_t i = 0; i < 3; i++) {
        cJSON *json = oil_json(&rows[i]);
        assert_near(number(json, "viscosity_mm2s"), 14.70, 1e-6);
        assert_near(number(json, "density_kgm3"), 822.8, 1e-3);
        assert_near(number(json, "dynamic_viscosity_mpas"), 12.09, 1e-3);
        assert_int_equal(cJSON_GetArraySize(list(json, "remarks")), 0);
        assert_int_equal(cJSON_GetArraySize(list(json, "assumptions")), i == 0 ? 1 : 0);
        cJSON_Delete(json);
    }
}

static void a_cold_oil_says_how_sure_it_is(void **state)
{
    (void)state;
    cJSON *json = oil_json(&(ow_oil_words){.grade = "15W-40", .at = "0 C"});
    assert_near(number(json, "viscosity_mm2s"), 1323.0, 1e-3);
    assert_non_null(strstr(cJSON_GetArrayItem(list(json, "remarks"), 0)->valuestring, "40 %"));
    cJSON_Delete(json);
}

static void a_viscosity_outside_its_grade_is_said(void **state)
{
    (void)state;
    cJSON *json = oil_json(
        &(ow_oil_words){.grade = "5W-30", .kv40 = "90", .kv100 = "13", .rho15 = "855", .at = "80 C"});
    assert_non_null(strstr(cJSON_GetArrayItem(list(json, "remarks"), 0)->valuestring, "outside 9.3 to 12.5"));
    cJSON_Delete(json);
}

static void what_cannot_be_read_is_refused_with_the_range(void **state)
{
    (void)state;
    static const struct {
        ow_oil_words words;
        const char *message, *expected;
    } rows[] = {
        {{.grade = "15W-40"}, "--at is not given", "-40 C to 200 C"},
        {{.grade = "15W-40", .at = "201 C"}, "--at: \"201 C\" is out of range", "-40 C to 200 C"},
        {{.grade = "15W-40", .at = "100"}, "--at: \"100\" cannot be read", "a temperature with its unit"},
        {{.at = "100 C"}, "no oil is given", "an SAE grade"},
        {{.grade = "15W-4", .at = "100 C"}, "\"15W-4\" is no SAE grade", "15W-40"},
        {{.grade = "25W-60", .at = "100 C"}, "no typical oil of grade \"25W-60\"", "20W-60"},
        {{.kv40 = "10", .at = "100 C"}, "--kv100 is not given", "2 to 100 mm2/s"},
        {{.kv40 = "1e9", .kv100 = "10", .at = "100 C"}, "--kv40: \"1e9\" is out of range", "2 to 5000 mm2/s"},
        {{.kv40 = "nan", .kv100 = "10", .at = "100 C"}, "--kv40: \"nan\" cannot be read", "viscosity"},
        {{.kv40 = "10", .kv100 = "10", .at = "100 C"}, "no oil has 10 mm2/s at 40 C", "--kv40 above --kv100"},
        {{.kv40 = "10", .kv100 = "5", .rho15 = "600", .at = "100 C"},
         "--rho15: \"600\" is out of range",
         "700 to 1000"},
    };
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_oil_request request = {.temperature_c = 7.0};
        assert_int_equal(ow_oil_request_read(&context, &rows[i].words, &request), OW_INPUT);
        const ow_test_diagnostic *told = ow_test_find(&sink, rows[i].message);
        assert_non_null(told);
        assert_non_null(strstr(told->expected, rows[i].expected));
        assert_true(request.temperature_c == 7.0);
        ow_test_diagnostics_clear(&sink);
    }
    ow_oil_request request;
    ow_oil_answer answer;
    assert_int_equal(
        ow_oil_request_read(&context, &(ow_oil_words){.kv40 = "5000", .kv100 = "2", .at = "-40 C"}, &request),
        OW_OK);
    assert_int_equal(ow_oil_reckon(&context, &request, &answer), OW_INPUT);
    assert_non_null(ow_test_find(&sink, "as good as solid"));
    ow_oil_request_done(&request);
    ow_test_diagnostics_clear(&sink);
}

/* ---- drain ---------------------------------------------------------------------------------- */

static cJSON *drain_json(const ow_drain_words *words)
{
    ow_drain_request request;
    ow_drain_answer answer;
    ow_text text = ow_text_new(&plain);
    assert_int_equal(ow_drain_request_read(&plain, words, &request), OW_OK);
    assert_int_equal(ow_drain_reckon(&plain, &request, &answer), OW_OK);
    assert_int_equal(ow_report_drain_json(&text, &request, &answer), OW_OK);
    ow_drain_answer_done(&answer);
    ow_drain_request_done(&request);
    return parsed(&text);
}

static ow_drain_words drain_words(const char *bore, const char *aeration)
{
    return (ow_drain_words){bore, "20 deg", "2 L/min", aeration, {.grade = "15W-40", .at = "100 C"}};
}

/* The worked drain. */
static void a_drain_has_the_worked_figures(void **state)
{
    (void)state;
    ow_drain_words words = drain_words("15.9 mm", "2");
    cJSON *json = drain_json(&words);
    assert_near(number(json, "q_star"), 4.572e-3, 1e-3);
    assert_near(number(json, "fill_fraction"), 0.3497, 1e-3);
    assert_near(number(json, "depth_mm"), 0.3497 * 15.9, 1e-3);
    assert_near(number(json, "area_mm2"), 61.87, 1e-3);
    assert_near(number(json, "velocity_ms"), 1.078, 1e-3);
    assert_near(number(json, "reynolds"), 901.5, 1e-3);
    assert_near(number(json, "half_full_capacity_lpm"), 10.74, 1e-3);
    assert_near(number(json, "pool_weir_mm"), 8.646, 1e-3);
    assert_near(number(json, "pool_orifice_mm"), 12.80, 1e-3);
    assert_near(number(json, "least_bore_mm"), 12.42, 1e-3);
    assert_near(number(json, "least_slope_deg"), 7.3, 0.005);
    assert_true(truth(json, "ok"));
    assert_false(truth(json, "flooded"));
    assert_int_equal(cJSON_GetArraySize(list(json, "findings")), 0);
    cJSON_Delete(json);
}

static void a_narrow_drain_fails_by_what_is_given_and_warns_by_what_is_assumed(void **state)
{
    (void)state;
    ow_drain_words words = drain_words("12.3 mm", "2");
    cJSON *json = drain_json(&words);
    assert_false(truth(json, "ok"));
    assert_string_equal(severity(json, "drain-fill"), "error");
    assert_string_equal(severity(json, "drain-pool"), "error");
    assert_string_equal(severity(json, "drain-bore"), "warning");
    cJSON_Delete(json);
    words.aeration = NULL; /* the froth is then ours */
    json = drain_json(&words);
    assert_true(truth(json, "ok"));
    assert_string_equal(severity(json, "drain-fill"), "warning");
    assert_string_equal(severity(json, "drain-pool"), "warning");
    assert_int_equal(cJSON_GetArraySize(list(json, "assumptions")), 2);
    cJSON_Delete(json);
}

static void a_flooded_drain_and_a_shallow_one_are_said(void **state)
{
    (void)state;
    ow_drain_words words = drain_words("6 mm", "2");
    words.slope = "3 deg";
    cJSON *json = drain_json(&words);
    assert_true(truth(json, "flooded"));
    assert_near(number(json, "fill_fraction"), 1.0, 1e-12);
    assert_string_equal(severity(json, "drain-flooded"), "error");
    assert_string_equal(severity(json, "drain-slope"), "warning");
    assert_true(cJSON_IsNull(cJSON_GetObjectItemCaseSensitive(json, "least_slope_deg")));
    cJSON_Delete(json);
}

/* 12.5 mm at 20 degrees fills 49 %: 0.2 mm less, or oil 10 C colder, is over half full. */
static void a_verdict_that_is_not_sure_is_said(void **state)
{
    (void)state;
    ow_drain_words words = drain_words("12.5 mm", "2");
    cJSON *json = drain_json(&words);
    assert_true(number(json, "fill_fraction_low") < 0.5 && number(json, "fill_fraction_high") > 0.5);
    assert_string_equal(severity(json, "unsure"), "note");
    cJSON_Delete(json);
    words.bore = "15.9 mm";
    json = drain_json(&words);
    assert_null(finding(json, "unsure"));
    cJSON_Delete(json);
}

static void a_drain_out_of_range_is_refused_with_every_range(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_drain_words words = {"0 mm", "-1 deg", "0 L/min", "0.5", {.grade = "15W-40", .at = "100 C"}};
    ow_drain_request request;
    assert_int_equal(ow_drain_request_read(&context, &words, &request), OW_INPUT);
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 4);
    assert_non_null(strstr(ow_test_find(&sink, "--bore")->expected, "0.1 mm to 200 mm"));
    assert_non_null(strstr(ow_test_find(&sink, "--slope")->expected, "90 deg"));
    assert_non_null(strstr(ow_test_find(&sink, "--flow")->expected, "600 L/min"));
    assert_non_null(strstr(ow_test_find(&sink, "--aeration")->expected, "1 to 10"));
    ow_test_diagnostics_clear(&sink);
    assert_int_equal(ow_drain_request_read(&context, &(ow_drain_words){0}, &request), OW_INPUT);
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 5);
    ow_test_diagnostics_clear(&sink);
}

/* The ends of every range still give figures: a null in a JSON would be a NaN. */
static void the_ends_of_the_ranges_reckon(void **state)
{
    (void)state;
    static const char *const bores[] = {"0.1 mm", "15.9 mm", "200 mm"},
                             *const slopes[] = {"0.01 deg", "20 deg", "90 deg"},
                             *const flows[] = {"0.000001 L/min", "2 L/min", "600 L/min"},
                             *const ats[] = {"-30 C", "100 C", "200 C"};
    for (size_t b = 0; b < 3; b++)
        for (size_t s = 0; s < 3; s++)
            for (size_t f = 0; f < 3; f++)
                for (size_t t = 0; t < 3; t++) {
                    cJSON *json = drain_json(&(ow_drain_words){
                        bores[b], slopes[s], flows[f], "10", {.grade = "20W-50", .at = ats[t]}});
                    static const char *const names[] = {
                        "q_star",   "fill_fraction",          "depth_mm",     "area_mm2",       "velocity_ms",
                        "reynolds", "half_full_capacity_lpm", "pool_weir_mm", "pool_orifice_mm"};
                    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
                        assert_true(number(json, names[i]) >= 0.0);
                    cJSON_Delete(json);
                }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(oil_by_grade_and_by_figures_is_the_same),
        cmocka_unit_test(a_cold_oil_says_how_sure_it_is),
        cmocka_unit_test(a_viscosity_outside_its_grade_is_said),
        cmocka_unit_test(what_cannot_be_read_is_refused_with_the_range),
        cmocka_unit_test(a_drain_has_the_worked_figures),
        cmocka_unit_test(a_narrow_drain_fails_by_what_is_given_and_warns_by_what_is_assumed),
        cmocka_unit_test(a_flooded_drain_and_a_shallow_one_are_said),
        cmocka_unit_test(a_verdict_that_is_not_sure_is_said),
        cmocka_unit_test(a_drain_out_of_range_is_refused_with_every_range),
        cmocka_unit_test(the_ends_of_the_ranges_reckon),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
