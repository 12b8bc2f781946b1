/* SPDX-License-Identifier: MIT */
/* The tree that is read, and its places. */
#include <stdio.h>
#include <string.h>

#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"
#include "yaml/yaml.h"

static ow_test_diagnostics sink;
static ow_context context; /* outlives what is read with it */

static int listen(void **state)
{
    (void)state;
    context = ow_test_context(&sink);
    return 0;
}

static ow_yaml_text read_well(const char *text)
{
    ow_yaml_text yaml;
    ow_status status = ow_yaml_read(&context, "page.yaml", text, strlen(text), &yaml);
    if (sink.count > 0)
        fail_msg("told: %s", sink.items[0].told);
    assert_int_equal(status, OW_OK);
    return yaml;
}

/* The tree as brackets: [a, b] lists, {k: v} maps, 'x' quoted, *x alias. */
static void write_tree(ow_text *text, const ow_yaml *node)
{
    static const char *const brackets[] = {"''", "[]", "{}"};
    const ow_yaml *real = ow_yaml_real(node);
    if (node->target != NULL)
        ow_text_char(text, '*');
    if (real->kind == OW_YAML_SCALAR) {
        ow_text_format(text, real->quoted ? "'%s'" : "%s", real->words);
        return;
    }
    ow_text_char(text, brackets[real->kind][0]);
    for (const ow_yaml *child = real->first; child != NULL; child = child->next) {
        if (child->key != NULL)
            ow_text_format(text, "%s: ", child->key);
        write_tree(text, child);
        if (child->next != NULL)
            ow_text_add(text, ", ");
    }
    ow_text_char(text, brackets[real->kind][1]);
}

static void assert_tree(const char *yaml_words, const char *expected)
{
    ow_yaml_text yaml = read_well(yaml_words);
    ow_text text = ow_text_new(NULL);
    for (size_t i = 0; i < yaml.document_count; i++) {
        if (i > 0)
            ow_text_add(&text, " --- ");
        write_tree(&text, yaml.documents[i]);
    }
    assert_string_equal(ow_text_words(&text), expected);
    ow_text_done(&text);
    ow_yaml_done(&yaml);
}

static void lists_maps_and_words_become_a_tree(void **state)
{
    (void)state;
    assert_tree("page: taper\nrows:\n  - [tf-2, 1/8-27 NPT male, 4.4 mm]\n  - {k: v}\n",
                "{page: taper, rows: [[tf-2, 1/8-27 NPT male, 4.4 mm], {k: v}]}");
    assert_tree("- - a\n  - b\n- c\n", "[[a, b], c]");
    assert_tree("{}", "{}");
    assert_tree("[]", "[]");
    assert_tree("a:\nb: ~\nc: ''\n", "{a: , b: ~, c: ''}");
    assert_tree("? x\n: y\n", "{x: y}");
    assert_tree("a: plain\n  goes on\n", "{a: plain goes on}");
    assert_tree("a: |\n  one\n  two\nb: >\n  one\n  two\n", "{a: 'one\ntwo\n', b: 'one two\n'}");
    assert_tree("a: \"x\\ty\"\nb: 'it''s'\n", "{a: 'x\ty', b: 'it's'}");
    assert_tree("\"<<\": 1\n", "{<<: 1}");
    assert_tree("'': 1\n", "{: 1}");
}

static void a_text_may_hold_any_number_of_documents(void **state)
{
    (void)state;
    assert_tree("", "");
    assert_tree("# only a remark\n", "");
    assert_tree("---\n---\n", " --- ");
    assert_tree("a: 1\n---\n[b]\n...\n---\nc\n", "{a: 1} --- [b] --- c");
    assert_tree("%YAML 1.1\n---\na: 1\n", "{a: 1}");
}

static void a_byte_order_mark_and_any_line_end_are_accepted(void **state)
{
    (void)state;
    assert_tree("\xEF\xBB\xBFpage: x\n", "{page: x}");
    assert_tree("a: 1\r\nb: 2\r\n", "{a: 1, b: 2}");
    assert_tree("a: 1\rb: 2\r", "{a: 1, b: 2}");
    assert_tree("\xEF\xBB\xBF", "");
}

static void aliases_share_what_they_name(void **state)
{
    (void)state;
    assert_tree("a: &x [1, 2]\nb: *x\n", "{a: [1, 2], b: *[1, 2]}");
    assert_tree("a: &x 1\nb: &x 2\nc: *x\n", "{a: 1, b: 2, c: *2}");
    assert_tree("- &k key\n- {*k : 1}\n", "[key, {key: 1}]");
    assert_tree("&k key: *k\n", "{key: *key}");
    ow_yaml_text yaml = read_well("a: &x {k: v}\nb: *x\n");
    const ow_yaml *map = yaml.documents[0];
    assert_ptr_equal(ow_yaml_member(map, "b"), map->first);
    assert_ptr_equal(ow_yaml_real(map->first->next), map->first);
    assert_string_equal(map->first->next->key, "b");
    assert_string_equal(ow_yaml_member(ow_yaml_member(map, "b"), "k")->words, "v");
    ow_yaml_done(&yaml);
}

static void assert_span(const ow_yaml_text *yaml, ow_span span, const char *words)
{
    assert_int_equal(span.length, strlen(words));
    assert_true(span.start + span.length <= yaml->source.length);
    assert_memory_equal(yaml->source.text + span.start, words, span.length);
}

static void every_node_and_key_knows_its_place(void **state)
{
    (void)state;
    ow_yaml_text yaml = read_well(
        "\xEF\xBB\xBF# 37\xC2\xB0\ntitle: 37\xC2\xB0 fl\xC3\xA4re\nports:\n  \"oil-in\": {end: 'M12'}\n\n"
        "rows: [\xC3\xA4, [b, c]]\nnote: |\n  x\n\nlast: 1\n");
    const ow_yaml *map = yaml.documents[0], *member = map->first;
    assert_span(&yaml, member->key_span, "title");
    assert_span(&yaml, member->span, "37\xC2\xB0 fl\xC3\xA4re");
    member = member->next;
    assert_span(&yaml, member->key_span, "ports");
    assert_span(&yaml, member->span, "\"oil-in\": {end: 'M12'}");
    assert_span(&yaml, member->first->key_span, "\"oil-in\"");
    assert_span(&yaml, member->first->first->span, "'M12'");
    member = member->next;
    assert_span(&yaml, member->span, "[\xC3\xA4, [b, c]]");
    assert_span(&yaml, member->first->next->first->next->span, "c");
    member = member->next;
    assert_span(&yaml, member->span, "|\n  x");
    assert_span(&yaml, member->next->span, "1");
    assert_int_equal(map->count, 5);
    ow_yaml_done(&yaml);
}

static void nothing_stands_behind_its_key(void **state)
{
    (void)state;
    ow_yaml_text yaml = read_well("a:\n\n\nb: 1\n");
    assert_int_equal(yaml.documents[0]->first->span.start, 2);
    assert_int_equal(yaml.documents[0]->first->span.length, 0);
    ow_yaml_done(&yaml);
}

static void only_plain_words_can_be_null(void **state)
{
    (void)state;
    static const bool null[] = {true,  true,  true,  true,  false, false, false,
                                false, false, false, false, true,  true};
    ow_yaml_text yaml = read_well("[~, null, Null, NULL, nULL, '~', \"\", !!str ~, ! null, x, [], &a ~, *a]");
    size_t i = 0;
    for (const ow_yaml *node = yaml.documents[0]->first; node != NULL; node = node->next, i++)
        assert_int_equal(ow_yaml_is_null(node), null[i]);
    assert_int_equal(i, sizeof null / sizeof null[0]);
    ow_yaml_done(&yaml);
    yaml = read_well("a:\n");
    assert_true(ow_yaml_is_null(yaml.documents[0]->first));
    assert_true(ow_yaml_is_null(NULL));
    ow_yaml_done(&yaml);
}

static void core_tags_are_read_and_make_text_of_what_they_say(void **state)
{
    (void)state;
    assert_tree("a: !!str 5\nb: !!int 5\nc: !!map {}\nd: !!seq []\ne: ! 5\nf: !!null ~\n",
                "{a: '5', b: 5, c: {}, d: [], e: '5', f: ~}");
}

static void a_big_map_finds_members_and_keeps_their_order(void **state)
{
    (void)state;
    ow_text text = ow_text_new(NULL);
    for (int i = 0; i < 5000; i++)
        ow_text_format(&text, "k%d: %d\n", i, i);
    ow_yaml_text yaml = read_well(ow_text_words(&text));
    assert_int_equal(yaml.documents[0]->count, 5000);
    assert_string_equal(ow_yaml_member(yaml.documents[0], "k4321")->words, "4321");
    assert_null(ow_yaml_member(yaml.documents[0], "k5000"));
    ow_yaml_done(&yaml);
    ow_text_done(&text);
}

static void looking_for_members_of_no_map_finds_nothing(void **state)
{
    (void)state;
    ow_yaml_text yaml = read_well("[a]");
    assert_null(ow_yaml_member(yaml.documents[0], "a"));
    assert_null(ow_yaml_member(NULL, "a"));
    assert_null(ow_yaml_real(NULL));
    ow_yaml_done(&yaml);
}

static void nesting_up_to_the_limit_is_read(void **state)
{
    (void)state;
    char text[2 * OW_YAML_DEPTH_MAX + 1];
    memset(text, '[', OW_YAML_DEPTH_MAX);
    memset(text + OW_YAML_DEPTH_MAX, ']', OW_YAML_DEPTH_MAX);
    text[2 * OW_YAML_DEPTH_MAX] = '\0';
    ow_yaml_text yaml = read_well(text);
    assert_int_equal(yaml.document_count, 1);
    ow_yaml_done(&yaml);
}

static ow_status read_everything(const ow_context *lent, void *data)
{
    ow_yaml_text yaml;
    ow_status status = ow_yaml_read(lent, "x.yaml", data, strlen(data), &yaml);
    if (status == OW_OK)
        ow_yaml_done(&yaml);
    return status;
}

static void each_failing_allocation_is_told_and_leaks_nothing(void **state)
{
    (void)state;
    ow_text text = ow_text_new(NULL);
    ow_text_add(&text, "a: &x [1, {k: v}]\nb: *x\n---\n");
    for (int i = 0; i < 100; i++)
        ow_text_format(&text, "key-%d: &a%d some words %d\n", i, i, i);
    assert_true(ow_test_fail_each(read_everything, text.data) > 10);
    ow_text_add(&text, "key-7: again\n<<: x\nz: *none\n"); /* and on the way through faults */
    assert_true(ow_test_fail_each(read_everything, text.data) > 10);
    ow_text_done(&text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lists_maps_and_words_become_a_tree),
        cmocka_unit_test(a_text_may_hold_any_number_of_documents),
        cmocka_unit_test(a_byte_order_mark_and_any_line_end_are_accepted),
        cmocka_unit_test(aliases_share_what_they_name),
        cmocka_unit_test(every_node_and_key_knows_its_place),
        cmocka_unit_test(nothing_stands_behind_its_key),
        cmocka_unit_test(only_plain_words_can_be_null),
        cmocka_unit_test(core_tags_are_read_and_make_text_of_what_they_say),
        cmocka_unit_test(a_big_map_finds_members_and_keeps_their_order),
        cmocka_unit_test(looking_for_members_of_no_map_finds_nothing),
        cmocka_unit_test(nesting_up_to_the_limit_is_read),
        cmocka_unit_test(each_failing_allocation_is_told_and_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, listen, NULL);
}
