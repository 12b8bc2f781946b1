/* SPDX-License-Identifier: MIT */
/* Feed and siphon from YAML to print, and every allocation of the quick physics. */
#include "oilway/report_physics.h"

#include <string.h>

#include "support/failing.h"
#include "support/json_values.h"

static const ow_context plain = OW_CONTEXT_INIT;

/* ---- feed and siphon ------------------------------------------------------------------------ */

static const char twin[] =
    "line: twin\noil: 10W-40\nrise: 0.25 m\n"
    "states: [{name: cold, oil: 0 C, gallery: 6 bar}, {name: hot rev, oil: 100 C, gallery: 5 bar}]\n"
    "pieces: [chamber, pipe: {bore: 4.4 mm, length: 50 mm}, restrictor: wanted]\n"
    "split:\n"
    "  - {name: front, pieces: [pipe: {bore: 4.8 mm, length: 0.5 m}, chamber], load: {name: a, flow: 0.8 "
    "L/min, laminar-share: 0.5}}\n"
    "  - {name: rear, pieces: [pipe: {bore: 4.8 mm, length: 0.7 m}, chamber], load: {name: b, flow: 0.8 "
    "L/min, laminar-share: 0.5}}\n"
    "  - {name: sw-2}\n"
    "restrictor: {length: 3 mm, target: 3.0 bar, state: hot rev}\n";

static void reckon_line(const char *words, ow_text *text, bool as_json)
{
    ow_line line;
    ow_line_answer answer;
    ow_style style = OW_STYLE_INIT;
    assert_int_equal(ow_line_read(&plain, "line.yaml", words, strlen(words), &line), OW_OK);
    assert_int_equal(ow_line_reckon(&plain, &line, &answer), OW_OK);
    if (as_json)
        assert_int_equal(ow_report_line_json(text, &line, &answer), OW_OK);
    else
        ow_report_line_text(text, &line, &answer, &style);
    ow_line_answer_done(&answer);
    ow_line_free(&line);
}

static void a_feed_prints_states_loads_pieces_and_restrictor(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&plain);
    reckon_line(twin, &text, true);
    cJSON *json = parsed(&text);
    assert_int_equal(cJSON_GetArraySize(list(json, "states")), 2);
    const cJSON *hot = cJSON_GetArrayItem(list(json, "states"), 1);
    assert_string_equal(cJSON_GetObjectItemCaseSensitive(hot, "name")->valuestring, "hot rev");
    const cJSON *loads = list(hot, "loads");
    assert_int_equal(cJSON_GetArraySize(loads), 3);
    double through = 0.0, lost = 0.0;
    const cJSON *item;
    cJSON_ArrayForEach(item, loads) through += number(item, "flow_lpm");
    assert_near(through, number(hot, "flow_lpm"), 1e-6);
    assert_near(number(cJSON_GetArrayItem(loads, 0), "pressure_bar"), 3.0, 1e-6);
    cJSON_ArrayForEach(item, list(hot, "pieces"))
    {
        const cJSON *branch = cJSON_GetObjectItemCaseSensitive(item, "branch");
        if (branch == NULL || strcmp(branch->valuestring, "rear") == 0)
            lost += number(item, "loss_pa");
    }
    assert_near(5.0 - lost / 1e5, number(hot, "turbo_pressure_bar"), 1e-6);
    assert_near(number(hot, "loss_bar") + number(hot, "turbo_pressure_bar"), 5.0, 1e-6);
    const cJSON *restrictor = cJSON_GetObjectItemCaseSensitive(json, "restrictor");
    assert_true(number(restrictor, "diameter_mm") > 1.0 && number(restrictor, "flow_lpm") > 0.5);
    assert_int_equal(cJSON_GetArraySize(list(restrictor, "offers")), 2);
    assert_true(truth(json, "ok"));
    cJSON_Delete(json);
}

static void a_feed_reads_well_as_text(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&plain);
    reckon_line(twin, &text, false);
    assert_int_equal(ow_text_status(&text), OW_OK);
    static const char *const words[] = {"feed twin on 10W-40",
                                        "hot rev",
                                        "sw-2",
                                        "sees the pressure",
                                        "costs most",
                                        "drilled 1.",
                                        "assumed",
                                        "restrictor-cold",
                                        "A starved bearing bursts",
                                        "psi"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        if (strstr(ow_text_words(&text), words[i]) == NULL)
            fail_msg("\"%s\" is not in:\n%s", words[i], ow_text_words(&text));
    ow_text_done(&text);
}

static void a_dry_feed_is_an_error(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&plain);
    reckon_line("oil: SAE 30\nrise: 15 m\nstates: [{name: idle, oil: 100 C, gallery: 1 bar}]\n"
                "pieces: [pipe: {bore: 4 mm, length: 15 m}]\nload: {flow: 1 L/min}\n",
                &text, true);
    cJSON *json = parsed(&text);
    assert_false(truth(json, "ok"));
    assert_string_equal(severity(json, "feed-dry"), "error");
    cJSON_Delete(json);
}

static cJSON *loop_json(const char *words, bool *text_too)
{
    ow_loop_text loop;
    ow_loop_answer answer;
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(&plain), shown = ow_text_new(&plain);
    assert_int_equal(ow_loop_read(&plain, "loop.yaml", words, strlen(words), &loop), OW_OK);
    assert_int_equal(ow_loop_reckon(&plain, &loop, &answer), OW_OK);
    assert_int_equal(ow_report_loop_json(&text, &loop, &answer), OW_OK);
    ow_report_loop_text(&shown, &loop, &answer, &style);
    *text_too =
        ow_text_status(&shown) == OW_OK && strstr(ow_text_words(&shown), "Hot coolant scalds") != NULL;
    ow_text_done(&shown);
    ow_loop_answer_done(&answer);
    ow_loop_free(&loop);
    return parsed(&text);
}

#define LEGS                                                                                          \
    "cold-leg: [pipe: {bore: 10 mm, length: 1.0 m}]\nhot-leg: [pipe: {bore: 10 mm, length: 0.6 m}]\n" \
    "jacket: {k: 6, bore: 10 mm}\ncap: 1.0 bar\ncoolant: 50 % glycol\ncold: 90 C\n"

static void a_siphon_prints_the_worked_figures_and_a_curve(void **state)
{
    (void)state;
    bool text_too = false;
    cJSON *json =
        loop_json("heat: 300 W\nports: {apart: 70 mm, angle: 15 deg}\nrise: 0.2 m\n" LEGS, &text_too);
    assert_true(text_too);
    assert_near(number(json, "flow_lpm"), 0.2389, 1e-3);
    assert_near(number(json, "temperature_rise_k"), 20.36, 1e-3);
    assert_near(number(json, "drive_pa"), 34.44, 1e-3);
    assert_near(number(json, "hot_temperature_c"), 110.36, 1e-3);
    assert_false(truth(json, "boils"));
    assert_true(truth(json, "ok"));
    const cJSON *curve = list(json, "curve"), *item;
    double before = 0.0;
    assert_int_equal(cJSON_GetArraySize(curve), OW_CURVE_POINTS);
    cJSON_ArrayForEach(item, curve)
    {
        assert_true(number(item, "flow_lpm") > before);
        before = number(item, "flow_lpm");
    }
    assert_near(number(cJSON_GetArrayItem(curve, 0), "flow_lpm"), 0.2349, 1e-3);
    assert_near(number(cJSON_GetArrayItem(curve, 3), "flow_lpm"), 0.2389, 1e-3);
    cJSON_Delete(json);
}

static void a_siphon_that_boils_or_stands_still_says_no(void **state)
{
    (void)state;
    bool text_too = false;
    cJSON *json = loop_json("heat: 100 W\nports: {apart: 70 mm, angle: 15 deg}\nrise: 0 m\n" LEGS, &text_too);
    assert_true(text_too && truth(json, "boils") && !truth(json, "ok"));
    cJSON_Delete(json);
    json = loop_json("heat: 100 W\nports: {apart: 70 mm, angle: -15 deg}\nrise: 0 m\n" LEGS, &text_too);
    assert_true(text_too && truth(json, "stands_still") && !truth(json, "ok"));
    assert_true(cJSON_IsNull(cJSON_GetObjectItemCaseSensitive(json, "hot_temperature_c")));
    assert_near(number(json, "flow_lpm") + 1.0, 1.0, 1e-12);
    cJSON_Delete(json);
    json = loop_json("heat: 100 W\nports: {apart: 70 mm, angle: -15 deg}\nrise: 0.2 m\n" LEGS, &text_too);
    assert_true(text_too && truth(json, "ok")); /* reckoned, with a remark */
    assert_non_null(
        strstr(cJSON_GetArrayItem(list(json, "remarks"), 0)->valuestring, "cold port stands higher"));
    cJSON_Delete(json);
}

/* ---- memory --------------------------------------------------------------------------------- */

static ow_status print_all(const ow_context *context, void *data)
{
    (void)data;
    static const char loop_words[] = "ports: {apart: 70 mm, angle: 15 deg}\n" LEGS;
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(context);
    ow_drain_words words = {"12.3 mm", "20 deg", "2 L/min", NULL, {.grade = "15W-40", .at = "100 C"}};
    ow_drain_request request;
    ow_drain_answer drained;
    ow_line line;
    ow_line_answer fed;
    ow_loop_text loop;
    ow_loop_answer cooled;
    ow_status status = ow_drain_request_read(context, &words, &request);
    if (status != OW_OK)
        return status;
    status = ow_drain_reckon(context, &request, &drained);
    if (status == OW_OK) {
        ow_report_drain_text(&text, &request, &drained, &style);
        status = ow_report_drain_json(&text, &request, &drained);
        ow_drain_answer_done(&drained);
    }
    ow_drain_request_done(&request);
    if (status == OW_OK && (status = ow_line_read(context, "l", twin, strlen(twin), &line)) == OW_OK) {
        status = ow_line_reckon(context, &line, &fed);
        if (status == OW_OK) {
            ow_report_line_text(&text, &line, &fed, &style);
            status = ow_report_line_json(&text, &line, &fed);
            ow_line_answer_done(&fed);
        }
        ow_line_free(&line);
    }
    if (status == OW_OK &&
        (status = ow_loop_read(context, "l", loop_words, strlen(loop_words), &loop)) == OW_OK) {
        status = ow_loop_reckon(context, &loop, &cooled);
        if (status == OW_OK) {
            ow_report_loop_text(&text, &loop, &cooled, &style);
            status = ow_report_loop_json(&text, &loop, &cooled);
            ow_loop_answer_done(&cooled);
        }
        ow_loop_free(&loop);
    }
    ow_text_done(&text);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    assert_true(ow_test_fail_each(print_all, NULL) > 60);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_feed_prints_states_loads_pieces_and_restrictor),
        cmocka_unit_test(a_feed_reads_well_as_text),
        cmocka_unit_test(a_dry_feed_is_an_error),
        cmocka_unit_test(a_siphon_prints_the_worked_figures_and_a_curve),
        cmocka_unit_test(a_siphon_that_boils_or_stands_still_says_no),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
