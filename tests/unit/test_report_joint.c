/* SPDX-License-Identifier: MIT */
/* Cards and verdicts in print: text for a person, JSON by the fixed names. */
#include "support/testing.h"

#include <cjson/cJSON.h>
#include <string.h>

#include "oilway/report_joint.h"
#include "support/failing.h"

static ow_end read_end(const char *words)
{
    ow_end end;
    if (ow_end_read(words, &end, NULL) != OW_OK)
        fail_msg("%s was not read", words);
    return end;
}

static ow_card card_of(const char *a, const char *b, const ow_card_ask *ask)
{
    ow_end first = read_end(a), second = read_end(b);
    ow_card card;
    assert_int_equal(ow_card_of(&first, &second, ask, &card), OW_OK);
    return card;
}

static void assert_holds(const ow_text *text, const char *words)
{
    if (!strstr(ow_text_words(text), words))
        fail_msg("\"%s\" is not in:\n%s", words, ow_text_words(text));
}

static void a_card_prints_its_figures_with_their_units_and_sources(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(&context);
    ow_card_ask ask = {.material = "steel"};
    ow_card card = card_of("M14x1.5 male washer", "M14x1.5 female washer", &ask);
    (void)state;
    style.width = 500;
    ow_report_card_text(&text, &card, &style);
    assert_int_equal(ow_text_status(&text), OW_OK);
    assert_holds(&text, "M14x1.5 male washer with M14x1.5 female washer: seals");
    assert_holds(&text, "1 x crush ring 14 x 18 x 1.5 mm");
    assert_holds(&text, "35 to 38.5 N m, stud end, flat ring, steel or iron, threads oiled (a generator-set "
                        "diesel manual, 2017)");
    assert_holds(&text, " turns, ");
    assert_holds(&text, "a crush ring is used once");
    ow_text_done(&text);
}

static void a_card_without_published_figures_says_so(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(&context);
    ow_card card = card_of("3/8-24 UNF male banjo", "3/8-24 UNF female washer", NULL);
    (void)state;
    ow_report_card_text(&text, &card, &style);
    assert_holds(&text, "no published figure");
    assert_holds(&text, "inside at least 9.53 mm: measure");
    ow_text_done(&text);
    text = ow_text_new(&context);
    assert_int_equal(ow_report_card_json(&text, &card), OW_OK);
    cJSON *json = cJSON_Parse(ow_text_words(&text));
    assert_true(cJSON_IsNull(cJSON_GetObjectItem(json, "torque_nm")));
    assert_string_equal(cJSON_GetObjectItem(json, "torque_note")->valuestring, "no published figure");
    assert_int_equal(cJSON_GetArraySize(cJSON_GetObjectItem(json, "consumables")), 0);
    cJSON_Delete(json);
    ow_text_done(&text);
}

static void a_card_in_json_has_numbers_where_the_text_has_figures(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_card card = card_of("-4 o-ring male", "-4 o-ring female", NULL);
    (void)state;
    assert_int_equal(ow_report_card_json(&text, &card), OW_OK);
    cJSON *json = cJSON_Parse(ow_text_words(&text));
    cJSON *ring = cJSON_GetArrayItem(cJSON_GetObjectItem(json, "consumables"), 0);
    assert_string_equal(cJSON_GetObjectItem(ring, "what")->valuestring, "O-ring");
    assert_true(cJSON_GetObjectItem(ring, "inner_mm")->valuedouble == 8.915);
    cJSON *torque = cJSON_GetObjectItem(json, "torque_nm");
    assert_true(cJSON_GetArrayItem(torque, 0)->valuedouble == 10.8);
    assert_true(cJSON_GetArrayItem(torque, 1)->valuedouble == 24.0);
    assert_true(cJSON_IsString(cJSON_GetObjectItem(json, "sealant")));
    cJSON_Delete(json);
    ow_text_done(&text);
}

static void mates_in_json_have_the_fixed_names(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_end end = read_end("M10x1 female washer");
    ow_mates_list list;
    bool null_turns = false;
    (void)state;
    assert_int_equal(ow_mates_of(&context, &end, NULL, 0, &list), OW_OK);
    assert_int_equal(ow_report_mates_json(&text, &list, NULL), OW_OK);
    cJSON *json = cJSON_Parse(ow_text_words(&text)), *item;
    assert_int_equal(cJSON_GetArraySize(json), list.count);
    cJSON_ArrayForEach(item, json)
    {
        ow_end mate;
        cJSON *turns = cJSON_GetObjectItem(item, "turns");
        assert_int_equal(ow_end_read(cJSON_GetObjectItem(item, "end")->valuestring, &mate, NULL), OW_OK);
        assert_true(cJSON_GetObjectItem(item, "verdict")->valuestring[0]);
        assert_true(cJSON_GetObjectItem(item, "why")->valuestring[0]);
        assert_true(cJSON_GetObjectItem(item, "source")->valuestring[0]);
        null_turns = null_turns || cJSON_IsNull(turns);
        if (!cJSON_IsNull(turns))
            assert_true(cJSON_GetArrayItem(turns, 0)->valuedouble <=
                        cJSON_GetArrayItem(turns, 1)->valuedouble);
    }
    assert_true(null_turns);
    cJSON_Delete(json);
    ow_text_done(&text);
    ow_mates_list_done(&list);
}

static void a_verdict_on_a_pair_is_a_list_of_one(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(&context);
    ow_end a = read_end("-4 flare37 male"), b = read_end("1/4 flare45 female swivel");
    ow_mates_list list;
    (void)state;
    assert_int_equal(ow_mates_pair(&context, &a, &b, NULL, 0, &list), OW_OK);
    assert_int_equal(ow_report_mates_json(&text, &list, NULL), OW_OK);
    cJSON *json = cJSON_Parse(ow_text_words(&text));
    assert_int_equal(cJSON_GetArraySize(json), 1);
    cJSON *item = cJSON_GetArrayItem(json, 0);
    assert_string_equal(cJSON_GetObjectItem(item, "end")->valuestring, "1/4 flare45 female swivel");
    assert_string_equal(cJSON_GetObjectItem(item, "verdict")->valuestring, "wrong-seat");
    cJSON_Delete(json);
    ow_text_done(&text);
    text = ow_text_new(&context);
    ow_report_mates_text(&text, &list, &style);
    assert_holds(&text, "-4 flare37 male\n  wrong-seat  1/4 flare45 female swivel, ");
    assert_holds(&text, "8 degrees a side");
    ow_text_done(&text);
    ow_mates_list_done(&list);
}

static void a_joint_that_seals_carries_its_card_when_asked(void **state)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_end a = read_end("M14x1.5 male"), b = read_end("M14x1.5 female washer");
    ow_card_ask ask = {.material = "steel"};
    ow_mates_list list;
    size_t cards = 0;
    (void)state;
    assert_int_equal(ow_mates_pair(&context, &a, &b, NULL, 0, &list), OW_OK);
    assert_int_equal(ow_report_mates_json(&text, &list, &ask), OW_OK);
    cJSON *json = cJSON_Parse(ow_text_words(&text)), *item;
    cJSON_ArrayForEach(item, json)
    {
        bool seals = strcmp(cJSON_GetObjectItem(item, "verdict")->valuestring, "seals") == 0;
        assert_int_equal(seals, cJSON_HasObjectItem(item, "card"));
        cards += seals;
    }
    assert_int_equal(cards, 4); /* washer, own ring, banjo, metric taper */
    cJSON_Delete(json);
    ow_text_done(&text);
    ow_mates_list_done(&list);
}

static ow_status print_job(const ow_context *context, void *data)
{
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(context);
    ow_end a = read_end("M10x1 female washer"), b = read_end("3/8-24 UNF male banjo");
    ow_mates mates;
    (void)ow_mates_judge(&a, &b, &mates);
    ow_mates_list list = {context, &mates, 1, 1};
    ow_report_mates_text(&text, &list, &style);
    ow_report_card_text(&text, data, &style);
    ow_status status = ow_text_status(&text);
    ow_text_done(&text);
    return status;
}

static void printing_that_finds_no_memory_says_so(void **state)
{
    ow_card card = card_of("-6 o-ring male", "-6 o-ring female", NULL);
    (void)state;
    assert_true(ow_test_fail_each(print_job, &card) > 4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_card_prints_its_figures_with_their_units_and_sources),
        cmocka_unit_test(a_card_without_published_figures_says_so),
        cmocka_unit_test(a_card_in_json_has_numbers_where_the_text_has_figures),
        cmocka_unit_test(mates_in_json_have_the_fixed_names),
        cmocka_unit_test(a_verdict_on_a_pair_is_a_list_of_one),
        cmocka_unit_test(a_joint_that_seals_carries_its_card_when_asked),
        cmocka_unit_test(printing_that_finds_no_memory_says_so),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
