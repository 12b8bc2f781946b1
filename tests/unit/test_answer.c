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

/* A shop, an ask and its answers. */
typedef struct asked {
    ow_test_diagnostics told;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    ow_ask_set set;
    ow_answers answers;
    ow_status status;
} asked;

static void open_asked(asked *self, const char *pages, const ow_ask_words *words, const char *explain)
{
    static const char *const name = "shop.yaml";
    const ow_answer_options options = {1, 3, explain};
    memset(self, 0, sizeof *self);
    self->context = ow_test_context(&self->told);
    assert_int_equal(ow_catalog_load_texts(&self->context, &name, &pages, 1, NULL, &self->catalog), OW_OK);
    assert_int_equal(ow_net_build(&self->context, self->catalog, &self->net), OW_OK);
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, words, &self->set), OW_OK);
    self->status =
        ow_answers_find(&self->context, self->catalog, self->net, &self->set, &options, &self->answers);
}

static void close_asked(asked *self)
{
    if (self->status == OW_OK)
        ow_answers_done(&self->answers);
    ow_ask_set_done(&self->set);
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->told);
}

static void assert_source(const char *pages, const char *wanted)
{
    const ow_ask_words words = {
        .from = "e", .to = {"-4 flare37 female swivel"}, .to_count = 1, .flexible = "any", .closing = "no"};
    asked self;
    open_asked(&self, pages, &words, NULL);
    assert_int_equal(self.status, OW_OK);
    assert_true(self.answers.found);
    assert_int_equal(self.answers.count, 1);
    assert_string_equal(self.answers.items[0].stacks[0].layout.givens[0].name, wanted);
    close_asked(&self);
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
    const ow_ask_words words = {.from = "e:a", .to = {"-4 flare37 female swivel"}, .to_count = 1};
    asked self;
    open_asked(&self, SHOP("3, 20 mm", "3, 20 mm"), &words, "aparrt");
    assert_int_equal(self.status, OW_INPUT);
    assert_int_equal(self.told.count, 1);
    assert_non_null(strstr(self.told.items[0].told, "--explain:1:1: error"));
    assert_string_equal(self.told.items[0].mend, "did you mean apart?");
    close_asked(&self);
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
    const ow_ask_words words = {.from = "e:a", .to = {"-4 flare37 female swivel"}, .to_count = 1};
    asked self;
    size_t parts = 0;
    open_asked(&self, pages, &words, NULL);
    assert_int_equal(self.status, OW_OK);
    if (self.answers.found) {
        const ow_answer_stack *stack = &self.answers.items[0].stacks[0];
        parts = ow_layout_part_count(&stack->layout);
        assert_false(ow_findings_have(&stack->findings, OW_ERROR));
    }
    close_asked(&self);
    return parts;
}

/* A tee that is wide one way and narrow the other: what both can have is the narrow one's. */
static void the_most_bore_that_can_be_had_is_that_of_the_narrowest_path(void **state)
{
    static const char pages[] =
        "{page: t, kind: tee, run-bore: 6 mm, branch-bore: 3 mm, columns: [id, run-a, run-b, branch], rows: "
        "[[tee, 1/8-27 NPT male, -4 flare37 male, G1/8 male washer]]}\n";
    const ow_ask_words words = {.from = "1/8-27 NPT female",
                                .to = {"-4 flare37 female swivel", "G1/8 female washer"},
                                .to_count = 2,
                                .bore = "8 mm"};
    (void)state;
    asked self;
    open_asked(&self, pages, &words, NULL);
    assert_int_equal(self.status, OW_OK);
    assert_false(self.answers.found);
    assert_int_equal(self.answers.items[0].lifted_count, 1);
    assert_string_equal(self.answers.items[0].lifted[0].words, "1 part; 3 mm is the most that can be had");
    close_asked(&self);
}

/* The only way has a restrictor, as somebody insists, before a unit with one built in: asked for nothing, it
 * would be refused, and yet the bore alone is what fails. */
static void a_limit_that_helps_is_told_where_another_is_stricter_when_lifted(void **state)
{
    static const char pages[] =
        "{kind: engine, id: e, ports: {a: {end: 1/8-27 NPT female, circuit: feed}}}\n"
        "---\n{kind: turbo, id: t, bearing: ball, restrictor: built-in, ports: {in: {end: -4 flare37 female "
        "swivel, circuit: feed}}}\n"
        "---\n{page: r, kind: restrictor, rating: 100 bar, fluids: [oil], bore: 3 mm, orifice: 1 mm, "
        "columns: [id, a, b], rows: [[r, 1/8-27 NPT male, -4 flare37 male]]}\n";
    const ow_ask_words words = {.from = "e:a",
                                .to = {"t:in"},
                                .to_count = 1,
                                .restrictor = "required",
                                .flexible = "any",
                                .bore = "4 mm"};
    (void)state;
    asked self;
    open_asked(&self, pages, &words, NULL);
    assert_int_equal(self.status, OW_OK);
    assert_false(self.answers.found);
    assert_int_equal(self.answers.items[0].lifted_count, 1);
    assert_string_equal(self.answers.items[0].lifted[0].limit, "bore 4 mm");
    close_asked(&self);
}

/* Each limit alone keeps the tee out, so that no one of them, lifted, is any help; and with a second tee that
 * one of them lets in, that one is. */
static void of_several_limits_only_those_that_alone_bring_a_layout_are_named(void **state)
{
#define TEES(more)                                                                                         \
    "{page: t, kind: tee, fluids: [oil], columns: [id, run-a, run-b, branch, bore, rating], rows: [[tee, " \
    "1/8-27 NPT male, -4 flare37 male, G1/8 male washer, 3 mm, 10 bar]" more "]}\n"
    static const char *const pages[] = {
        TEES(""), TEES(", [wide, 1/8-27 NPT male, -4 flare37 male, G1/8 male washer, 9 mm, 10 bar]")};
    const ow_ask_words words = {.from = "1/8-27 NPT female",
                                .to = {"-4 flare37 female swivel", "G1/8 female washer"},
                                .to_count = 2,
                                .bore = "8 mm",
                                .rating = "20 bar"};
    (void)state;
    for (size_t wide = 0; wide < 2; wide++) {
        asked self;
        open_asked(&self, pages[wide], &words, NULL);
        assert_int_equal(self.status, OW_OK);
        assert_false(self.answers.found);
        assert_int_equal(self.answers.items[0].lifted_count, wide);
        if (wide == 1) {
            assert_string_equal(self.answers.items[0].lifted[0].limit, "rating 20 bar");
            assert_string_equal(self.answers.items[0].lifted[0].words,
                                "1 part; 10 bar is the most that can be had");
        }
        close_asked(&self);
    }
}

/* A barb and a clamp do not hold a hose against the gallery's pressure, however few parts they are. */
static void a_feed_is_never_held_by_clamps(void **state)
{
    (void)state;
    assert_int_equal(feed_parts(CLAMPED), 0);
    assert_int_equal(feed_parts(CLAMPED SCREWED), 5);
}

/* Limits and figures in other units, less apart than anybody measures: what is found is not found fault with.
 */
static void a_hair_between_two_units_is_no_fault(void **state)
{
    (void)state;
    static const char pages[] = "{page: r, kind: adapter, rating: 689475.7 Pa, temperature: -40..99.9999 C, "
                                "fluids: [oil], columns: [id, a, b, "
                                "bore], rows: [[ad, 1/8-27 NPT male, -4 flare37 male, 0.173228346 in]]}\n";
    const ow_ask_words words = {.from = "1/8-27 NPT female",
                                .to = {"-4 flare37 female swivel"},
                                .to_count = 1,
                                .bore = "4.4 mm",
                                .rating = "100 psi",
                                .temperature = "99.99999 C"};
    asked self;
    open_asked(&self, pages, &words, NULL);
    assert_int_equal(self.status, OW_OK);
    assert_true(self.answers.found);
    assert_false(ow_findings_have(&self.answers.items[0].stacks[0].findings, OW_WARNING));
    close_asked(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_two_source_ports_the_better_layout_is_named),
        cmocka_unit_test(a_part_to_explain_that_nobody_has_is_told_with_the_nearest),
        cmocka_unit_test(the_most_bore_that_can_be_had_is_that_of_the_narrowest_path),
        cmocka_unit_test(a_limit_that_helps_is_told_where_another_is_stricter_when_lifted),
        cmocka_unit_test(of_several_limits_only_those_that_alone_bring_a_layout_are_named),
        cmocka_unit_test(a_feed_is_never_held_by_clamps),
        cmocka_unit_test(a_hair_between_two_units_is_no_fault),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
