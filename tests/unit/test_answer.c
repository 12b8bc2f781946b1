/* SPDX-License-Identifier: MIT */
/* answer.h: which of an engine's ports is named, and what is said of a part that nobody has. */
#include <string.h>

#include "oilway/answer.h"
#include "support/diagnostics.h"
#include "support/testing.h"

/* Two ports, a way of one part from each; what differs is a part's price and length. */
#define SHOP(first, second)                                                                                 \
    "{kind: engine, id: e, ports: {a: {end: 1/8-27 NPT female, circuit: feed}, b: {end: G1/8 female "       \
    "washer, "                                                                                              \
    "circuit: feed}}}\n---\n{page: p, kind: adapter, rating: 100 bar, fluids: [oil], bore: 4 mm, columns: " \
    "[id, a, b, "                                                                                           \
    "price, length], rows: [[one, 1/8-27 NPT male, -4 flare37 male, " first                                 \
    "], [two, G1/8 male washer, -4 flare37 "                                                                \
    "male, " second "], [apart, M30x1.5 male washer, M30x1.5 male washer, 1, 20 mm]]}\n"

static void assert_source(const char *pages, const char *wanted)
{
    static const char *const name = "shop.yaml";
    ow_test_diagnostics told = {0};
    const ow_context context = ow_test_context(&told);
    const ow_ask_words words = {
        .from = "e", .to = {"-4 flare37 female swivel"}, .to_count = 1, .flexible = "any", .closing = "no"};
    const ow_answer_options options = OW_ANSWER_OPTIONS_INIT;
    ow_catalog *catalog = NULL;
    ow_net *net = NULL;
    ow_ask_set set;
    ow_answers answers;
    assert_int_equal(ow_catalog_load_texts(&context, &name, &pages, 1, NULL, &catalog), OW_OK);
    assert_int_equal(ow_net_build(&context, catalog, &net), OW_OK);
    assert_int_equal(ow_ask_read(&context, catalog, net, &words, &set), OW_OK);
    assert_int_equal(ow_answers_find(&context, catalog, net, &set, &options, &answers), OW_OK);
    assert_true(answers.found);
    assert_int_equal(answers.count, 1);
    assert_string_equal(answers.items[0].stacks[0].layout.givens[0].name, wanted);
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
    ow_net_free(net);
    ow_catalog_free(catalog);
    ow_test_diagnostics_clear(&told);
}

/* The order is the search's own: docs/search.md. */
static void of_two_source_ports_the_better_layout_is_named(void **state)
{
    (void)state;
    assert_source(SHOP("3, 20 mm", "3, 20 mm"), "e:a"); /* alike: the first */
    assert_source(SHOP("3, 20 mm", "2, 20 mm"), "e:b"); /* cheaper */
    assert_source(SHOP("~, 20 mm", "9, 20 mm"), "e:b"); /* a price goes before none */
    assert_source(SHOP("9, 20 mm", "~, 20 mm"), "e:a");
    assert_source(SHOP("3, 40 mm", "3, 20 mm"), "e:b"); /* stands out less */
    assert_source(SHOP("3, 20 mm", "3, 40 mm"), "e:a");
}

static void a_part_to_explain_that_nobody_has_is_told_with_the_nearest(void **state)
{
    (void)state;
    static const char *const name = "shop.yaml";
    const char *pages = SHOP("3, 20 mm", "3, 20 mm");
    ow_test_diagnostics told = {0};
    const ow_context context = ow_test_context(&told);
    const ow_ask_words words = {.from = "e:a", .to = {"-4 flare37 female swivel"}, .to_count = 1};
    const ow_answer_options options = {1, 3, "aparrt"};
    ow_catalog *catalog = NULL;
    ow_net *net = NULL;
    ow_ask_set set;
    ow_answers answers;
    assert_int_equal(ow_catalog_load_texts(&context, &name, &pages, 1, NULL, &catalog), OW_OK);
    assert_int_equal(ow_net_build(&context, catalog, &net), OW_OK);
    assert_int_equal(ow_ask_read(&context, catalog, net, &words, &set), OW_OK);
    assert_int_equal(ow_answers_find(&context, catalog, net, &set, &options, &answers), OW_INPUT);
    assert_int_equal(told.count, 1);
    assert_non_null(strstr(told.items[0].told, "--explain:1:1: error"));
    assert_string_equal(told.items[0].mend, "did you mean apart?");
    ow_ask_set_done(&set);
    ow_net_free(net);
    ow_catalog_free(catalog);
    ow_test_diagnostics_clear(&told);
}

#define FIT "rating: 100 bar, fluids: [oil], bore: 6 mm, columns: "
#define CLAMPED                                                                              \
    "{kind: engine, id: e, ports: {a: {end: 1/8-27 NPT female, circuit: feed}}}\n"           \
    "---\n{page: p, kind: adapter, " FIT                                                     \
    "[id, a, b], rows: [[in, 1/8-27 NPT male, barb 10], [out, barb 10, -4 flare37 male]]}\n" \
    "---\n{page: q, kind: hose, " FIT "[id, a, b], rows: [[rubber, hose 10 nitrile, hose 10 nitrile]]}\n"
#define SCREWED                                                                                             \
    "---\n{page: r, kind: adapter, " FIT                                                                    \
    "[id, a, b], rows: [[ad, 1/8-27 NPT male, -4 flare37 male], [un, -4 flare37 male, -4 flare37 male]]}\n" \
    "---\n{page: s, kind: hose-end, " FIT                                                                   \
    "[id, nut, tail], rows: [[he, -4 flare37 female swivel, hose -4 ptfe tail]]}\n"                         \
    "---\n{page: t, kind: hose, " FIT "[id, a, b], rows: [[braid, hose -4 ptfe, hose -4 ptfe]]}\n"

/* Parts of the best feed from e:a to a 37 degree nut; 0 if there is none. No error may be found in it. */
static size_t feed_parts(const char *pages)
{
    static const char *const name = "shop.yaml";
    const ow_context context = OW_CONTEXT_INIT;
    const ow_ask_words words = {.from = "e:a", .to = {"-4 flare37 female swivel"}, .to_count = 1};
    const ow_answer_options options = OW_ANSWER_OPTIONS_INIT;
    ow_catalog *catalog = NULL;
    ow_net *net = NULL;
    ow_ask_set set;
    ow_answers answers;
    size_t parts = 0;
    assert_int_equal(ow_catalog_load_texts(&context, &name, &pages, 1, NULL, &catalog), OW_OK);
    assert_int_equal(ow_net_build(&context, catalog, &net), OW_OK);
    assert_int_equal(ow_ask_read(&context, catalog, net, &words, &set), OW_OK);
    assert_int_equal(ow_answers_find(&context, catalog, net, &set, &options, &answers), OW_OK);
    if (answers.found) {
        const ow_answer_stack *stack = &answers.items[0].stacks[0];
        parts = ow_layout_part_count(&stack->layout);
        assert_false(ow_findings_have(&stack->findings, OW_ERROR));
    }
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
    ow_net_free(net);
    ow_catalog_free(catalog);
    return parts;
}

/* A barb and a clamp do not hold a hose against the gallery's pressure, however few parts they are. */
static void a_feed_is_never_held_by_clamps(void **state)
{
    (void)state;
    assert_int_equal(feed_parts(CLAMPED), 0);
    assert_int_equal(feed_parts(CLAMPED SCREWED), 5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_two_source_ports_the_better_layout_is_named),
        cmocka_unit_test(a_part_to_explain_that_nobody_has_is_told_with_the_nearest),
        cmocka_unit_test(a_feed_is_never_held_by_clamps),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
