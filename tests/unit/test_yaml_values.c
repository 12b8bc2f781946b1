/* SPDX-License-Identifier: MIT */
/* Values read out of the tree, and what is told of those that are wrong. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"
#include "yaml/yaml.h"

static ow_test_diagnostics sink;
static ow_context context;

static int listen(void **state)
{
    (void)state;
    context = ow_test_context(&sink);
    return 0;
}

/* The one map in a text; ow_yaml_done(&yaml) frees it. */
static const ow_yaml *map_of(const char *text, ow_yaml_text *yaml)
{
    assert_int_equal(ow_yaml_read(&context, "x.yaml", text, strlen(text), yaml), OW_OK);
    return yaml->documents[0];
}

/* Reads the member "v" as a length between 1 mm and 200 mm. */
static ow_status read_length(const char *text, double *value)
{
    ow_yaml_text yaml;
    const ow_yaml *map = map_of(text, &yaml);
    ow_status status =
        ow_yaml_quantity(&context, &yaml.source, ow_yaml_member(map, "v"), OW_LENGTH, 0.001, 0.2, value);
    ow_yaml_done(&yaml);
    return status;
}

static void a_quantity_is_read_also_in_quotes_and_through_an_alias(void **state)
{
    (void)state;
    double value = 0;
    assert_int_equal(read_length("v: 4.4 mm\n", &value), OW_OK);
    assert_true(value == 0.0044);
    assert_int_equal(read_length("v: \"1/2\\\"\"\n", &value), OW_OK);
    assert_true(value == 0.0127);
    assert_int_equal(read_length("w: &a 5 mm\nv: *a\n", &value), OW_OK);
    assert_true(value == 0.005);
    assert_int_equal(read_length("v: 1 mm\n", &value), OW_OK); /* the limits themselves are within */
    assert_int_equal(read_length("v: 20 cm\n", &value), OW_OK);
    assert_int_equal(sink.count, 0);
}

typedef struct fault_row {
    const char *text;
    const char *told;
    const char *expected;
    const char *mend;
} fault_row;

#define LENGTH_WANTED "a length with its unit, such as 4.4 mm"

static void a_wrong_quantity_is_told_by_what_is_wrong_with_it(void **state)
{
    (void)state;
    static const fault_row rows[] = {
        {"v: 4.4\n", "x.yaml:1:4: error: v: \"4.4\" has no unit", LENGTH_WANTED, NULL},
        {"v: 4.4 mn\n", "x.yaml:1:4: error: v: \"4.4 mn\" has no unit that is known", LENGTH_WANTED,
         "did you mean \"mm\"?"},
        {"v: 4.4 furlong\n", "x.yaml:1:4: error: v: \"4.4 furlong\" has no unit that is known", LENGTH_WANTED,
         NULL},
        {"v: 5 bar\n", "x.yaml:1:4: error: v: \"5 bar\" has a unit of something else", LENGTH_WANTED, NULL},
        {"v: wide\n", "x.yaml:1:4: error: v: \"wide\" does not begin with a number", LENGTH_WANTED, NULL},
        {"v: 400 mm\n", "x.yaml:1:4: error: v: \"400 mm\" is out of range", "1 mm to 200 mm", NULL},
        {"v: 0.9 mm\n", "x.yaml:1:4: error: v: \"0.9 mm\" is out of range", "1 mm to 200 mm", NULL},
        {"v:\n", "x.yaml:1:1: error: v: nothing is given", LENGTH_WANTED, NULL},
        {"v: ~\n", "x.yaml:1:4: error: v: nothing is given", LENGTH_WANTED, NULL},
        {"v: [4.4 mm]\n", "x.yaml:1:4: error: v: a list where one value belongs", LENGTH_WANTED, NULL},
        {"v: {a: 4.4 mm}\n", "x.yaml:1:4: error: v: a map where one value belongs", LENGTH_WANTED, NULL},
        {"w: 4.4 mm\n", "x.yaml: error: a value is missing", LENGTH_WANTED, NULL},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double value = -7;
        assert_int_equal(read_length(rows[i].text, &value), OW_INPUT);
        assert_true(value == -7);
        assert_string_equal(sink.items[0].expected, rows[i].expected);
        assert_int_equal(sink.items[0].mend == NULL, rows[i].mend == NULL);
        if (rows[i].mend != NULL)
            assert_string_equal(sink.items[0].mend, rows[i].mend);
        ow_test_assert_told(&sink, rows[i].told);
    }
}

static void open_limits_are_told_as_least_or_most(void **state)
{
    (void)state;
    ow_yaml_text yaml;
    const ow_yaml *map = map_of("a: -1 bar\nb: 9\n", &yaml);
    double value = 0;
    assert_int_equal(ow_yaml_quantity(&context, &yaml.source, map->first, OW_PRESSURE, 0, HUGE_VAL, &value),
                     OW_INPUT);
    assert_string_equal(sink.items[0].expected, "at least 0 bar");
    assert_int_equal(ow_yaml_number(&context, &yaml.source, map->first->next, -HUGE_VAL, 5.5, &value),
                     OW_INPUT);
    assert_string_equal(sink.items[1].expected, "at most 5.5");
    assert_string_equal(sink.items[1].told, "x.yaml:2:4: error: b: \"9\" is out of range");
    ow_test_diagnostics_clear(&sink);
    ow_yaml_done(&yaml);
}

static void an_item_of_a_list_has_no_key_to_name(void **state)
{
    (void)state;
    ow_yaml_text yaml;
    const ow_yaml *list = map_of("[4.4]", &yaml);
    double value = 0;
    assert_int_equal(ow_yaml_quantity(&context, &yaml.source, list->first, OW_LENGTH, 0, 1, &value),
                     OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:1:2: error: \"4.4\" has no unit");
    ow_yaml_done(&yaml);
}

static void a_number_is_bare_whole_and_unquoted(void **state)
{
    (void)state;
    static const char *const told[] = {"x.yaml:4:4: error: d: \"3\" is in quotes, so it is text",
                                       "x.yaml:5:4: error: e: \"3x\" goes on behind the number",
                                       "x.yaml:6:4: error: f: \"three\" is no number",
                                       "x.yaml:7:1: error: g: nothing is given",
                                       "x.yaml:8:4: error: h: \"0x1F\" goes on behind the number"};
    ow_yaml_text yaml;
    const ow_yaml *node =
        map_of("a: 3.10\nb: -2\nc: 1e3\nd: \"3\"\ne: 3x\nf: three\ng:\nh: 0x1F\n", &yaml)->first;
    const double expected[] = {3.1, -2, 1000};
    for (size_t i = 0; i < 3; i++, node = node->next) {
        double value = 0;
        assert_int_equal(ow_yaml_number(&context, &yaml.source, node, -5, 1000, &value), OW_OK);
        assert_true(value == expected[i]);
    }
    for (size_t i = 0; i < 5; i++, node = node->next) {
        double value = -7;
        assert_int_equal(ow_yaml_number(&context, &yaml.source, node, -HUGE_VAL, HUGE_VAL, &value), OW_INPUT);
        assert_true(value == -7);
        ow_test_assert_told(&sink, told[i]);
    }
    ow_yaml_done(&yaml);
}

static void a_choice_is_one_of_its_words_and_the_nearest_is_offered(void **state)
{
    (void)state;
    static const char *const kinds[] = {"adapter", "elbow", "tee"};
    ow_yaml_text yaml;
    const ow_yaml *map = map_of("a: Tee\nb: adaptor\nc: gasket\nd: [tee]\ne:\n", &yaml);
    size_t index = 77;
    assert_int_equal(ow_yaml_choice(&context, &yaml.source, ow_yaml_member(map, "a"), kinds, 3, &index),
                     OW_OK);
    assert_int_equal(index, 2);
    assert_int_equal(ow_yaml_choice(&context, &yaml.source, ow_yaml_member(map, "b"), kinds, 3, &index),
                     OW_INPUT);
    assert_string_equal(sink.items[0].mend, "did you mean \"adapter\"?");
    assert_string_equal(sink.items[0].expected, "adapter, elbow or tee");
    ow_test_assert_told(&sink, "x.yaml:2:4: error: b: \"adaptor\" is not known");
    assert_int_equal(ow_yaml_choice(&context, &yaml.source, ow_yaml_member(map, "c"), kinds, 3, &index),
                     OW_INPUT);
    assert_null(sink.items[0].mend); /* nothing is near */
    ow_test_assert_told(&sink, "x.yaml:3:4: error: c: \"gasket\" is not known");
    assert_int_equal(ow_yaml_choice(&context, &yaml.source, ow_yaml_member(map, "d"), kinds, 3, &index),
                     OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:4:4: error: d: a list or map where one word belongs");
    assert_int_equal(ow_yaml_choice(&context, &yaml.source, ow_yaml_member(map, "e"), kinds, 3, &index),
                     OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:5:1: error: e: nothing is given");
    assert_int_equal(ow_yaml_choice(&context, &yaml.source, NULL, kinds, 3, &index), OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml: error: a value is missing");
    assert_int_equal(index, 2);
    ow_yaml_done(&yaml);
}

static void yes_and_no_are_read_as_yaml_1_1_has_them(void **state)
{
    (void)state;
    ow_yaml_text yaml;
    const ow_yaml *node = map_of("[yes, No, TRUE, false, On, off, 'yes', maybe]", &yaml)->first;
    for (int i = 0; i < 6; i++, node = node->next) {
        bool value = i % 2 == 1;
        assert_int_equal(ow_yaml_bool(&context, &yaml.source, node, &value), OW_OK);
        assert_int_equal(value, i % 2 == 0);
    }
    bool value = true;
    assert_int_equal(ow_yaml_bool(&context, &yaml.source, node, &value), OW_INPUT);
    assert_string_equal(sink.items[0].mend, "take the quotes off");
    ow_test_assert_told(&sink, "x.yaml:1:33: error: \"yes\" is in quotes, so it is text");
    assert_int_equal(ow_yaml_bool(&context, &yaml.source, node->next, &value), OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:1:40: error: \"maybe\" is not known");
    assert_true(value);
    ow_yaml_done(&yaml);
}

static void every_unknown_key_is_told_with_the_nearest(void **state)
{
    (void)state;
    static const char *const known[] = {"bore", "length"};
    ow_yaml_text yaml;
    const ow_yaml *map = map_of("bore: 1\nlenght: 2\ncolour: 3\nn: {bore: 1}\nw: word\n", &yaml);
    assert_int_equal(ow_yaml_known_keys(&context, &yaml.source, map, known, 2), OW_INPUT);
    assert_int_equal(sink.count, 4);
    assert_string_equal(sink.items[0].told, "x.yaml:2:1: error: the key \"lenght\" is not known here");
    assert_string_equal(sink.items[0].mend, "did you mean \"length\"?");
    assert_string_equal(sink.items[0].expected, "bore or length");
    assert_string_equal(sink.items[1].told, "x.yaml:3:1: error: the key \"colour\" is not known here");
    assert_null(sink.items[1].mend);
    ow_test_diagnostics_clear(&sink);
    assert_int_equal(ow_yaml_known_keys(&context, &yaml.source, ow_yaml_member(map, "n"), known, 2), OW_OK);
    assert_int_equal(ow_yaml_known_keys(&context, &yaml.source, NULL, known, 2), OW_OK);
    assert_int_equal(ow_yaml_known_keys(&context, &yaml.source, ow_yaml_member(map, "w"), known, 2),
                     OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:5:4: error: w: this is no map");
    ow_yaml_done(&yaml);
}

static void a_member_that_must_be_there_is_missed(void **state)
{
    (void)state;
    ow_yaml_text yaml;
    const ow_yaml *map = map_of("drain:\n  to: x\nlist: [a]\n", &yaml);
    const ow_yaml *drain = ow_yaml_need(&context, &yaml.source, map, "drain");
    assert_non_null(drain);
    assert_int_equal(sink.count, 0);
    assert_null(ow_yaml_need(&context, &yaml.source, drain, "from"));
    ow_test_assert_told(&sink, "x.yaml:1:1: error: drain: \"from\" is missing");
    assert_null(ow_yaml_need(&context, &yaml.source, map, "job"));
    ow_test_assert_told(&sink, "x.yaml:1:1: error: \"job\" is missing");
    assert_null(ow_yaml_need(&context, &yaml.source, ow_yaml_member(map, "list"), "job"));
    ow_test_assert_told(&sink, "x.yaml:3:7: error: list: this is no map, and \"job\" is missing");
    assert_null(ow_yaml_need(&context, &yaml.source, NULL, "job"));
    ow_test_assert_told(&sink, "x.yaml: error: \"job\" is missing");
    ow_yaml_done(&yaml);
}

/* Each reader on its way through a fault, which is where it allocates. */
static ow_status tell_faults(const ow_context *lent, void *data)
{
    static const char *const words[] = {"adapter", "tee"};
    const ow_yaml_text *yaml = data;
    const ow_yaml *node = yaml->documents[0]->first;
    double value = 0;
    size_t index = 0;
    ow_status status = ow_yaml_quantity(lent, &yaml->source, node, OW_LENGTH, 0, 1, &value);
    if (status == OW_INPUT)
        status = ow_yaml_quantity(lent, &yaml->source, node->next, OW_LENGTH, 0, 1, &value);
    if (status == OW_INPUT)
        status = ow_yaml_choice(lent, &yaml->source, node, words, 2, &index);
    if (status == OW_INPUT)
        status = ow_yaml_known_keys(lent, &yaml->source, yaml->documents[0], words, 2);
    return status;
}

static void each_failing_allocation_is_told_and_leaks_nothing(void **state)
{
    (void)state;
    ow_yaml_text yaml;
    map_of("adaptor: 4.4 mn\nb: 5 m\n", &yaml);
    assert_true(ow_test_fail_each(tell_faults, &yaml) > 5);
    ow_yaml_done(&yaml);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_quantity_is_read_also_in_quotes_and_through_an_alias),
        cmocka_unit_test(a_wrong_quantity_is_told_by_what_is_wrong_with_it),
        cmocka_unit_test(open_limits_are_told_as_least_or_most),
        cmocka_unit_test(an_item_of_a_list_has_no_key_to_name),
        cmocka_unit_test(a_number_is_bare_whole_and_unquoted),
        cmocka_unit_test(a_choice_is_one_of_its_words_and_the_nearest_is_offered),
        cmocka_unit_test(yes_and_no_are_read_as_yaml_1_1_has_them),
        cmocka_unit_test(every_unknown_key_is_told_with_the_nearest),
        cmocka_unit_test(a_member_that_must_be_there_is_missed),
        cmocka_unit_test(each_failing_allocation_is_told_and_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, listen, NULL);
}
