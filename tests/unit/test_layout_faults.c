/* SPDX-License-Identifier: MIT */
/* Layouts that are wrong: each fault is told at its place, and none hides another. */
#include <string.h>

#include "layout/reading.h"
#include "oilway/layout.h"
#include "support/diagnostics.h"
#include "support/testing.h"

static const char catalogue[] =
    "{kind: engine, id: brockle-4, ports: {gallery: {end: 1/8-27 NPT female}, plate: {end: 1/8-27 NPT "
    "female}}}\n"
    "---\n{kind: switch, id: sw-2, a: 1/8-27 NPT male}\n"
    "---\n{page: a, kind: adapter, columns: [id, a, b], rows: [[tf-2-4, 1/8-27 NPT male, -4 flare37 male]]}\n"
    "---\n{page: b, kind: tee, id: tee-2, run-a: 1/8-27 NPT female, run-b: 1/8-27 NPT female, branch: 1/8-27 "
    "NPT female}\n"
    "---\n{page: c, kind: hose, id: hose-4, a: hose -4 ptfe, b: hose -4 ptfe}\n"
    "---\n{page: d, kind: plug, id: pl-2, a: 1/8-27 NPT male}\n";

typedef struct fixture {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
} fixture;

static int begin(void **state)
{
    static fixture self;
    static const char *const name = "c.yaml", *const text = catalogue;
    self = (fixture){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL};
    self.context = ow_test_context(&self.sink);
    *state = &self;
    return ow_catalog_load_texts(&self.context, &name, &text, 1, NULL, &self.catalog) == OW_OK ? 0 : -1;
}

static int end(void **state)
{
    fixture *self = *state;
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    return 0;
}

typedef struct wanted_fault {
    const char *text;
    size_t line, column;
    const char *marked, *message;
    const char *mend; /* NULL: not looked at */
} wanted_fault;

static void check_fault(fixture *self, const wanted_fault *wanted)
{
    ow_layout *layouts = NULL;
    size_t count = 7;
    ow_status status = ow_layouts_read(&self->context, self->catalog, "l.yaml", wanted->text,
                                       strlen(wanted->text), &layouts, &count);
    if (status != OW_INPUT || self->sink.count != 1)
        print_error("in:\n%s", wanted->text);
    for (size_t i = 0; i < self->sink.count && self->sink.count != 1; i++)
        print_error("%s\n", self->sink.items[i].told);
    assert_int_equal(status, OW_INPUT);
    assert_null(layouts);
    assert_int_equal(count, 7);
    assert_int_equal(self->sink.count, 1);
    const ow_test_diagnostic *told = &self->sink.items[0];
    if (!strstr(told->message, wanted->message) || told->line != wanted->line ||
        told->column != wanted->column)
        print_error("%s\n", told->told);
    assert_non_null(strstr(told->message, wanted->message));
    assert_int_equal(told->line, wanted->line);
    assert_int_equal(told->column, wanted->column);
    assert_string_equal(told->marked, wanted->marked);
    if (wanted->mend) {
        assert_non_null(told->mend);
        assert_non_null(strstr(told->mend, wanted->mend));
    }
    ow_test_diagnostics_clear(&self->sink);
}

static void check_faults(fixture *self, const wanted_fault *faults, size_t count)
{
    for (size_t i = 0; i < count; i++)
        check_fault(self, &faults[i]);
}
#define CHECK(faults) check_faults(*state, faults, sizeof faults / sizeof *(faults))
#define FROM "from: brockle-4:gallery\n"

static void a_wrong_head_is_told(void **state)
{
    static const wanted_fault faults[] = {
        {"[a]\n", 1, 1, "[a]", "not a layout", NULL},
        {FROM "parts: []\naskd: {}\n", 3, 1, "askd", "askd", "asked"},
        {FROM "parts: []\ncircuit: fede\n", 3, 10, "fede", "not known", "feed"},
        {FROM "parts: []\nlayout: [a]\n", 3, 9, "[a]", "not a title", NULL},
        {FROM "parts: tf-2-4\n", 2, 8, "tf-2-4", "not a list", NULL},
        {"from: [a]\nparts: []\n", 1, 7, "[a]", "not a port", NULL},
        {"from: tf-2-4\nparts: []\n", 1, 7, "tf-2-4", "is a part", NULL},
        {"from: brockle-4\nparts: []\n", 1, 7, "brockle-4", "no such port", NULL},
        {"from: brockle-4:galery\nparts: []\n", 1, 7, "brockle-4:galery", "no such port", "gallery"},
        {"from: brokle-4:gallery\nparts: []\n", 1, 7, "brokle-4:gallery", "no such machine", "brockle-4"},
        {"from: M10 female\nparts: []\n", 1, 7, "M10 female", "not said in full", NULL},
        {"from: 1/8-27 NPT mael\nparts: []\n", 1, 7, "1/8-27 NPT mael", "no word of an end", "male"},
    };
    CHECK(faults);
}

static void a_wrong_part_is_told(void **state)
{
    static const wanted_fault faults[] = {
        {FROM "parts: [tf-2-5]\n", 2, 9, "tf-2-5", "in no catalogue", "tf-2-4"},
        {FROM "parts: [[tf-2-4]]\n", 2, 9, "[tf-2-4]", "no part and no port", NULL},
        {FROM "parts: [~]\n", 2, 9, "~", "no part and no port", NULL},
        {FROM "parts: [{}]\n", 2, 9, "{}", "no part and no port", NULL},
        {FROM "parts: [tf-2-4: {entre: a}]\n", 2, 18, "entre", "entre", "enter"},
        {FROM "parts: [tf-2-4: {enter: c}]\n", 2, 25, "c", "no such end", NULL},
        {FROM "parts: [tf-2-4: a]\n", 2, 17, "a", "is not a map", NULL},
        {FROM "parts: [tf-2-4: {length: 650 mm}]\n", 2, 26, "650 mm", "only a hose is cut", NULL},
        {FROM "parts: [hose-4: {length: 650}]\n", 2, 26, "650", "has no unit", NULL},
        {FROM "parts: [hose-4: {length: 0 mm}]\n", 2, 26, "0 mm", "out of range", NULL},
        {FROM "parts: [tf-2-4: {seal: tape}]\n", 2, 24, "tape", "\"seal\" is not a map", NULL},
        {FROM "parts: [tf-2-4: {seal: {c: tape}}]\n", 2, 25, "c", "no such end", NULL},
        {FROM "parts: [tf-2-4: {seal: {a: [tape]}}]\n", 2, 28, "[tape]", "needs a word", NULL},
        {FROM "parts: [pl-2, tf-2-4]\n", 2, 15, "tf-2-4", "nothing can follow", NULL},
        {FROM "parts: [sw-2, tf-2-4]\n", 2, 15, "tf-2-4", "nothing can follow", NULL},
        {FROM "parts: [tee-2, tf-2-4]\n", 2, 16, "tf-2-4", "nothing can follow", "exit"},
        {FROM "parts: [sw-2: {seal: {a: tape}}]\n", 2, 9, "sw-2", "a port has no keys", NULL},
        {FROM "parts:\n  - tee-2: {enter: run-a}\n    brunch: [pl-2]\n", 4, 5, "brunch", "no such end",
         "branch"},
        {FROM "parts:\n  - tee-2: {enter: run-a}\n    run-a: [pl-2]\n", 4, 5, "run-a",
         "by which \"tee-2\" is entered", NULL},
    };
    CHECK(faults);
}

static void a_wrong_ask_is_told(void **state)
{
    static const wanted_fault faults[] = {
        {FROM "parts: []\nasked: tight\n", 3, 8, "tight", "\"asked\" is not a map", NULL},
        {FROM "parts: []\nasked: {boer: 3 mm}\n", 3, 9, "boer", "unknown key", "bore"},
        {FROM "parts: []\nasked: {bore: 3}\n", 3, 15, "3", "has no unit", NULL},
        {FROM "parts: []\nasked: {bore: 3 m}\n", 3, 15, "3 m", "out of range", NULL},
        {FROM "parts: []\nasked: {flexible: maybe}\n", 3, 19, "maybe", "not known", NULL},
        {FROM "parts: []\nasked: {closing: 1}\n", 3, 18, "1", "closing", NULL},
        {FROM "parts: []\nasked: {orifice: 1 mm}\n", 3, 18, "1 mm", "this is no range", NULL},
        {FROM "parts: []\nasked: {keep: sw-2}\n", 3, 15, "sw-2", "no part of the layout leads to", NULL},
        {FROM "parts: [sw-2]\nasked: {keep: [sw-2, sw-2]}\n", 3, 22, "sw-2", "named twice", NULL},
        {FROM "parts: [sw-2]\nasked: {keep: ['sw-2#2']}\n", 3, 16, "'sw-2#2'",
         "no part of the layout leads to", NULL},
    };
    CHECK(faults);
}

static void no_fault_hides_another(void **state)
{
    fixture *self = *state;
    static const char text[] =
        "from: brokle-4:gallery\nasked: {boer: 3 mm}\nparts:\n  - tf-2-5\n  - tee-2: {enter: c}\n"
        "    run-b: [sw-3]\n---\nfrom: brockle-4:gallery\nparts: [tf-9-9]\n";
    ow_layout *layouts = NULL;
    size_t count;
    assert_int_equal(
        ow_layouts_read(&self->context, self->catalog, "l.yaml", text, strlen(text), &layouts, &count),
        OW_INPUT);
    static const size_t lines[] = {1, 4, 5, 6, 2, 9};
    assert_int_equal(self->sink.count, 6);
    for (size_t i = 0; i < 6; i++)
        assert_int_equal(self->sink.items[i].line, lines[i]);
}

static void a_text_without_a_layout_is_told(void **state)
{
    fixture *self = *state;
    ow_layout *layouts = NULL;
    size_t count;
    assert_int_equal(
        ow_layouts_read(&self->context, self->catalog, "l.yaml", "# none\n", 7, &layouts, &count), OW_INPUT);
    assert_non_null(ow_test_find(&self->sink, "no layout in it"));
}

static ow_status read_long(fixture *self, const char *item, size_t times)
{
    ow_text text = ow_text_new(&self->context);
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_text_add(&text, FROM "parts:\n");
    for (size_t i = 0; i < times; i++)
        ow_text_add(&text, item);
    ow_status status = ow_layouts_read(&self->context, self->catalog, "l.yaml", ow_text_words(&text),
                                       text.length, &layouts, &count);
    ow_layouts_free(&self->context, layouts, count);
    ow_text_done(&text);
    return status;
}

static void a_layout_past_the_limits_is_refused(void **state)
{
    fixture *self = *state;
    assert_int_equal(read_long(self, "  - tf-2-4\n", OW_LAYOUT_NODES_MAX - 1), OW_OK);
    assert_int_equal(read_long(self, "  - tf-2-4\n", OW_LAYOUT_NODES_MAX), OW_LIMIT);
    assert_int_equal(read_long(self, "  - tf-2-4 # nothing but a long remark\n", 30 * 1000), OW_LIMIT);
    assert_int_equal(self->sink.count, 2);
}

static void endless_faults_come_to_an_end(void **state)
{
    fixture *self = *state;
    assert_int_equal(read_long(self, "  - x9\n", 100 * 1000), OW_INPUT);
    assert_int_equal(self->sink.count, 201);
    assert_non_null(ow_test_find(&self->sink, "more than 200 faults"));
}

static void more_than_six_ports_are_refused(void **state)
{
    fixture *self = *state;
    ow_text text = ow_text_new(&self->context);
    ow_text_add(&text, FROM "parts:\n");
    for (size_t depth = 0; depth < 7; depth++) {
        ow_text_repeat(&text, ' ', 2 + 4 * depth);
        ow_text_add(&text, "- tee-2: {enter: run-a}\n");
        ow_text_repeat(&text, ' ', 4 + 4 * depth);
        ow_text_add(&text, "run-b: [sw-2]\n");
        ow_text_repeat(&text, ' ', 4 + 4 * depth);
        ow_text_add(&text, depth < 6 ? "branch:\n" : "branch: []\n");
    }
    ow_layout *layouts = NULL;
    size_t count = 0;
    assert_int_equal(ow_layouts_read(&self->context, self->catalog, "l.yaml", ow_text_words(&text),
                                     text.length, &layouts, &count),
                     OW_LIMIT);
    assert_non_null(ow_test_find(&self->sink, "too many ports"));
    ow_text_done(&text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_wrong_head_is_told, begin, end),
        cmocka_unit_test_setup_teardown(a_wrong_part_is_told, begin, end),
        cmocka_unit_test_setup_teardown(a_wrong_ask_is_told, begin, end),
        cmocka_unit_test_setup_teardown(no_fault_hides_another, begin, end),
        cmocka_unit_test_setup_teardown(a_text_without_a_layout_is_told, begin, end),
        cmocka_unit_test_setup_teardown(a_layout_past_the_limits_is_refused, begin, end),
        cmocka_unit_test_setup_teardown(endless_faults_come_to_an_end, begin, end),
        cmocka_unit_test_setup_teardown(more_than_six_ports_are_refused, begin, end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
