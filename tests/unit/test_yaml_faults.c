/* SPDX-License-Identifier: MIT */
/* What is wrong with a text, where, and how it is told. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/diagnostics.h"
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

static void read_faulty(const char *text, size_t length, ow_status expected)
{
    ow_yaml_text yaml = {.document_count = 77};
    ow_test_diagnostics_clear(&sink);
    ow_status status = ow_yaml_read(&context, "x.yaml", text, length, &yaml);
    if (status != expected)
        fail_msg("%s for: %s", ow_status_text(status), text);
    assert_int_equal(yaml.document_count, 77); /* untouched */
    assert_true(ow_test_count(&sink, OW_ERROR) > 0);
}

typedef struct fault_row {
    const char *text;
    const char *told;   /* of the first */
    const char *marked; /* of the first */
    size_t errors;      /* in all */
} fault_row;

static void assert_faults(const fault_row *rows, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        read_faulty(rows[i].text, strlen(rows[i].text), OW_INPUT);
        assert_string_equal(sink.items[0].told, rows[i].told);
        assert_string_equal(sink.items[0].marked, rows[i].marked);
        assert_int_equal(ow_test_count(&sink, OW_ERROR), rows[i].errors);
    }
    ow_test_diagnostics_clear(&sink);
}

static void syntax_faults_are_told_in_words_at_their_place(void **state)
{
    (void)state;
    static const fault_row rows[] = {
        {"a: \"open\nb: 3\n", "x.yaml:1:4: error: a quoted text is not closed", "\"", 1},
        {"a: 1\n\tb: 2\n", "x.yaml:2:1: error: a tab in the indent", "\t", 1},
        {"a: b: c\n", "x.yaml:1:5: error: a colon where no key can stand", ":", 1},
        {"- a\nb: c\n", "x.yaml:2:1: error: this line does not belong to the list above it", "b", 1},
        {"a: 1\n- b\n", "x.yaml:2:1: error: this line does not belong to the map above it", "-", 1},
        {"a: 1\n  b\nc\nd: 1\n", "x.yaml:3:1: error: a key without a colon", "c", 1},
        {"a: @x\n", "x.yaml:1:4: error: no value begins with this character", "@", 1},
        {"\xC3\xA4: [x, , y]\n", "x.yaml:1:8: error: a value is missing", ",", 1},
        {"a: [1, 2\nb: 3\n", "x.yaml:2:2: error: the list in brackets is not closed or lacks a comma", ":",
         1},
        {"a: {b: 1\nc: 3\n", "x.yaml:2:2: error: the map in braces is not closed or lacks a comma", ":", 1},
        {"a: [1, 2", "x.yaml:1:9: error: the list in brackets is not closed or lacks a comma", "", 1},
        {"a: 1\x01\n", "x.yaml:1:5: error: a control character", "\x01", 1},
        {"a: \"\\q\"\n", "x.yaml:1:5: error: no such escape in a text in double quotes", "\\", 1},
        {"a: !x!y 1\n", "x.yaml:1:4: error: an unknown tag", "!", 1},
        {"%YAML 2.0\n---\na\n", "x.yaml:1:1: error: a version of YAML that is not read here", "%", 1},
        {"a: *\n", "x.yaml:1:4: error: an anchor or alias without a name", "*", 1},
        {"a: 'x\n---\n", "x.yaml:1:4: error: a quoted text is not closed before the document ends", "'", 1},
    };
    assert_faults(rows, sizeof rows / sizeof rows[0]);
}

static void what_yaml_allows_and_we_do_not_is_told(void **state)
{
    (void)state;
    static const fault_row rows[] = {
        {"a: 1\nb: 2\na: 3\n", "x.yaml:3:1: error: the key \"a\" is given twice; first in line 1", "a", 1},
        {"a: {x: 1, \"x\": 2}\n", "x.yaml:1:11: error: the key \"x\" is given twice; first in line 1",
         "\"x\"", 1},
        {"<<: {a: 1}\n", "x.yaml:1:1: error: maps are not merged with \"<<\"", "<<", 1},
        {"? [1, 2]\n: 3\n", "x.yaml:1:3: error: a list or map stands where a key belongs", "[", 1},
        {"? {a: 1}\n: 3\n", "x.yaml:1:3: error: a list or map stands where a key belongs", "{", 1},
        {"- &l [1]\n- {*l : 1}\n", "x.yaml:2:4: error: a list or map stands where a key belongs", "*l", 1},
        {"?\n: 4\n", "x.yaml:1:2: error: a key is missing", "", 1},
        {"a: *none\n", "x.yaml:1:4: error: no anchor \"&none\" stands before this alias", "*none", 1},
        {"- &x 1\n---\n- *x\n", "x.yaml:3:3: error: no anchor \"&x\" stands before this alias", "*x", 1},
        {"a: &x [*x]\n", "x.yaml:1:8: error: the alias \"*x\" stands inside what it names", "*x", 1},
        {"a: !foo 1\n", "x.yaml:1:4: error: the tag \"!foo\" is not read here", "!foo 1", 1},
        {"a: !!binary aGk=\n", "x.yaml:1:4: error: the tag \"tag:yaml.org,2002:binary\" is not read here",
         "!!binary aGk=", 1},
        {"a: !!map x\n", "x.yaml:1:4: error: the tag \"tag:yaml.org,2002:map\" is not read here", "!!map x",
         1},
        {"a: \"x\\0y\"\n", "x.yaml:1:4: error: a NUL character in a text", "\"x\\0y\"", 1},
        {"\"\\0\": y\n", "x.yaml:1:1: error: a NUL character in a text", "\"\\0\"", 1},
    };
    assert_faults(rows, sizeof rows / sizeof rows[0]);
}

static void a_key_given_twice_is_shown_at_both_places(void **state)
{
    (void)state;
    static const char text[] = "bore: 4 mm\nlength: 1 mm\nbore: 5 mm\n";
    read_faulty(text, strlen(text), OW_INPUT);
    assert_int_equal(sink.count, 2);
    assert_string_equal(sink.items[1].told, "x.yaml:1:1: note: \"bore\" is given here first");
    assert_string_equal(sink.items[1].line_text, "bore: 4 mm");
    assert_string_equal(sink.items[0].mend, "keep one of the two");
}

static void all_faults_of_a_text_are_told_in_one_go(void **state)
{
    (void)state;
    static const char text[] =
        "a: *none\na: 2\n<<: {x: 1, x: 2}\nb: !foo [*nor]\n? {y: 1, y: 2}\n: {z: 1, z: 2}\nc: \"\\0\"\n";
    read_faulty(text, strlen(text), OW_INPUT);
    static const char *const expected[] = {"&none", "key \"a\"",          "<<",        "key \"x\"", "!foo",
                                           "&nor",  "stands where a key", "key \"y\"", "key \"z\"", "NUL"};
    for (size_t i = 0; i < sizeof expected / sizeof expected[0]; i++)
        if (ow_test_find(&sink, expected[i]) == NULL)
            fail_msg("not told: %s", expected[i]);
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 10);
}

static void a_list_left_open_is_also_shown_where_it_begins(void **state)
{
    (void)state;
    static const char text[] = "rows:\n  - [a, b\n  - [c, d]\n";
    read_faulty(text, strlen(text), OW_INPUT);
    assert_int_equal(sink.count, 2);
    assert_int_equal(sink.items[0].line, 3);
    assert_string_equal(sink.items[1].told, "x.yaml:2:5: note: it begins here");
}

static void keys_given_twice_are_found_in_big_maps_too(void **state)
{
    (void)state;
    ow_text text = ow_text_new(NULL);
    for (int i = 0; i < 1000; i++)
        ow_text_format(&text, "k%d: 1\n", i == 700 ? 3 : i == 900 ? 4 : i);
    read_faulty(text.data, text.length, OW_INPUT);
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 2);
    assert_string_equal(sink.items[0].told,
                        "x.yaml:701:1: error: the key \"k3\" is given twice; first in line 4");
    assert_string_equal(sink.items[2].told,
                        "x.yaml:901:1: error: the key \"k4\" is given twice; first in line 5");
    ow_text_done(&text);
}

/* Quadratic work on a million keys would take hours, and this test would be noticed. */
static void a_million_keys_in_one_map_are_checked_at_once(void **state)
{
    (void)state;
    int count = getenv("OW_SLOW_TOOL") == NULL ? 1000000 : 10000;
    ow_text text = ow_text_new(NULL);
    for (int i = 0; i < count; i++)
        ow_text_format(&text, "k%d: \n", i);
    ow_text_format(&text, "k%d: x\n", count - 1);
    read_faulty(text.data, text.length, OW_INPUT);
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 1);
    ow_text_done(&text);
}

static void a_text_full_of_faults_ends_after_a_hundred(void **state)
{
    (void)state;
    ow_text text = ow_text_new(NULL);
    for (int i = 0; i < 5000; i++)
        ow_text_add(&text, "- *none\n");
    read_faulty(text.data, text.length, OW_INPUT);
    assert_int_equal(sink.count, 101);
    assert_string_equal(sink.items[100].told,
                        "x.yaml: error: more than 100 faults: the rest of this text was not read");
    ow_text_done(&text);
}

static void other_encodings_are_named_and_broken_utf8_is_located(void **state)
{
    (void)state;
    read_faulty("a: 1\nb: \xC3\x28\n", 11, OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:2:4: error: byte 0xC3 is no UTF-8");
    read_faulty("\xC3\xA4: \xFF", 5, OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:1:4: error: byte 0xFF is no UTF-8");
    read_faulty("\xFF\xFE"
                "a\0:\0",
                6, OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:1:1: error: this text is UTF-16");
    read_faulty("\xFE\xFF\0a", 4, OW_INPUT);
    ow_test_assert_told(&sink, "x.yaml:1:1: error: this text is UTF-16");
    read_faulty("a: x\0y\n", 7, OW_INPUT); /* a NUL byte itself */
    ow_test_assert_told(&sink, "x.yaml:1:5: error: a control character");
}

static void nesting_past_the_limit_is_refused(void **state)
{
    (void)state;
    char text[1000];
    memset(text, '[', sizeof text);
    read_faulty(text, sizeof text, OW_LIMIT);
    ow_test_assert_told(&sink, "x.yaml:1:65: error: lists and maps are nested more than 64 deep");
    for (size_t i = 0; i + 1 < sizeof text; i += 2)
        memcpy(text + i, "- ", 2);
    read_faulty(text, sizeof text, OW_LIMIT);
    ow_test_assert_told(&sink, "x.yaml:1:129: error: lists and maps are nested more than 64 deep");
}

/* Each alias names the list before, in a list: no line is nested, but the whole is. */
static void nesting_through_aliases_is_refused_at_the_same_limit(void **state)
{
    (void)state;
    for (int levels = OW_YAML_DEPTH_MAX - 1; levels <= OW_YAML_DEPTH_MAX; levels++) {
        ow_text text = ow_text_new(NULL);
        ow_text_add(&text, "- &a1 [x]\n"); /* two deep with the list around all */
        for (int i = 2; i <= levels; i++)
            ow_text_format(&text, "- &a%d [*a%d]\n", i, i - 1);
        ow_yaml_text yaml;
        ow_test_diagnostics_clear(&sink);
        ow_status status = ow_yaml_read(&context, "x.yaml", text.data, text.length, &yaml);
        assert_int_equal(status, levels < OW_YAML_DEPTH_MAX ? OW_OK : OW_LIMIT);
        if (status == OW_OK)
            ow_yaml_done(&yaml);
        else
            ow_test_assert_told(
                &sink, "x.yaml:64:9: error: through this alias lists and maps are nested more than 64 deep");
        ow_text_done(&text);
    }
}

/* Nine levels of nine aliases each: 387 million values from a few lines. */
static void aliases_that_explode_are_refused(void **state)
{
    (void)state;
    ow_text text = ow_text_new(NULL);
    ow_text_add(&text, "- &a0 [x,x,x,x,x,x,x,x,x]\n");
    for (int i = 1; i < 9; i++) {
        ow_text_format(&text, "- &a%d [", i);
        for (int j = 0; j < 9; j++)
            ow_text_format(&text, "*a%d,", i - 1);
        ow_text_add(&text, "]\n");
    }
    read_faulty(text.data, text.length, OW_LIMIT);
    assert_int_equal(sink.count, 1);
    assert_string_equal(sink.items[0].message,
                        "with its aliases written out this text has more than 8000000 values");
    assert_int_equal(sink.items[0].line, 8); /* 9^7 fit, 9^8 do not */
    ow_text_done(&text);
    ow_test_diagnostics_clear(&sink);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(syntax_faults_are_told_in_words_at_their_place),
        cmocka_unit_test(what_yaml_allows_and_we_do_not_is_told),
        cmocka_unit_test(a_key_given_twice_is_shown_at_both_places),
        cmocka_unit_test(all_faults_of_a_text_are_told_in_one_go),
        cmocka_unit_test(a_list_left_open_is_also_shown_where_it_begins),
        cmocka_unit_test(keys_given_twice_are_found_in_big_maps_too),
        cmocka_unit_test(a_million_keys_in_one_map_are_checked_at_once),
        cmocka_unit_test(a_text_full_of_faults_ends_after_a_hundred),
        cmocka_unit_test(other_encodings_are_named_and_broken_utf8_is_located),
        cmocka_unit_test(nesting_past_the_limit_is_refused),
        cmocka_unit_test(nesting_through_aliases_is_refused_at_the_same_limit),
        cmocka_unit_test(aliases_that_explode_are_refused),
    };
    return cmocka_run_group_tests(tests, listen, NULL);
}
