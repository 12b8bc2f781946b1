/* SPDX-License-Identifier: MIT */
/* stack.h over small catalogues written here: integers in, the catalogue's own words out. */
#include "support/testing.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oilway/joint.h"
#include "oilway/stack.h"
#include "support/diagnostics.h"
#include "support/failing.h"

#define HEAD "rating: 100 bar\ntemperature: -40..150 C\nfluids: [oil]\n"
static const char ADAPTERS[] =
    "page: adapters\nkind: adapter\n" HEAD "columns: [id, a, b, bore, length, price]\nrows:\n"
    "  - [ad-long,  1/8-27 NPT male, -4 flare37 male, 4.4 mm, 40 mm, 3.10]\n"
    "  - [ad-short, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, 20 mm, 3.10]\n"
    "  - [ad-wide,  1/8-27 NPT male, -4 flare37 male, 6.0 mm, 20 mm, 9.10]\n"
    "  - [union,    -4 flare37 male, -4 flare37 male, 4.4 mm, 30 mm, 2.00]\n";
static const char TEES[] =
    "page: tees\nkind: tee\n" HEAD "columns: [id, run-a, run-b, branch, bore, length, price]\nrows:\n"
    "  - [tee, 1/8-27 NPT male, 1/8-27 NPT female, 1/8-27 NPT female, 5 mm, 30 mm, 6]\n";
static const char PLUGS[] = "page: plugs\nkind: plug\n" HEAD "columns: [id, a, price]\nrows:\n"
                            "  - [plug, 1/8-27 NPT male, 0.50]\n";
static const char HOSE_ENDS[] =
    "page: hose-ends\nkind: hose-end\n" HEAD "columns: [id, nut, tail, bore, length, price]\nrows:\n"
    "  - [he-4, -4 flare37 female swivel, hose -4 ptfe tail, 3.6 mm, 46 mm, 8]\n";
static const char HOSES[] = "page: hoses\nkind: hose\n" HEAD "columns: [id, a, b, bore, price]\nrows:\n"
                            "  - [hose-4, hose -4 ptfe, hose -4 ptfe, 4.8 mm, 12.50]\n";
static const char SWITCHES[] = "page: switches\nkind: switch\ncolumns: [id, a]\nrows:\n"
                               "  - [sw, 1/8-27 NPT male]\n";
static const char MADE[] = "page: made\nkind: adapter\n" HEAD "columns: [id, a, b, bore]\nrows:\n"
                           "  - [made, %s, %s, 9 mm]\n";

#define PAGES_MAX 8
typedef struct shop {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    ow_given givens[OW_PORTS_MAX + 1];
    ow_machine machine;
    ow_ask ask;
} shop;

static void open_shop(shop *self, const char *further)
{
    static const char *const NAMES[PAGES_MAX] = {"adapters.yaml",  "tees.yaml",  "plugs.yaml",
                                                 "hose-ends.yaml", "hoses.yaml", "switches.yaml",
                                                 "further.yaml"};
    const char *texts[PAGES_MAX] = {ADAPTERS, TEES, PLUGS, HOSE_ENDS, HOSES, SWITCHES, further};
    static const ow_catalog_options OPTIONS;
    memset(self, 0, sizeof *self);
    self->context = ow_test_context(&self->sink);
    ow_status status = ow_catalog_load_texts(&self->context, NAMES, texts, further == NULL ? 6 : 7, &OPTIONS,
                                             &self->catalog);
    if (status != OW_OK && self->sink.count > 0)
        print_error("%s\n", self->sink.items[0].told);
    assert_int_equal(status, OW_OK);
    assert_int_equal(ow_net_build(&self->context, self->catalog, &self->net), OW_OK);
    self->ask = (ow_ask){.givens = self->givens, .limits = OW_LIMITS_INIT, .hose_length_m = OW_NOT_SAID};
}

static void close_shop(shop *self)
{
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

static void give(shop *self, const char *name, ow_role role, const char *words, bool machine)
{
    ow_given *given = &self->givens[self->ask.given_count++];
    *given = (ow_given){.name = name, .role = role, .machine = machine ? &self->machine : NULL};
    assert_int_equal(ow_end_read(words, &given->end, NULL), OW_OK);
}

/* The feed of the demo in small: a gallery, a turbo, a switch. */
static void ask_feed(shop *self)
{
    give(self, "engine:gallery", OW_ROLE_SOURCE, "1/8-27 NPT female", true);
    give(self, "turbo:oil-in", OW_ROLE_TO, "-4 flare37 male", true);
    give(self, "sw", OW_ROLE_KEEP, "1/8-27 NPT male", false);
    self->ask.limits.flexible = OW_YES;
    self->ask.limits.closing = true;
    self->ask.hose_length_m = 0.65;
}

static ow_search *search_for(shop *self)
{
    ow_search *search = NULL;
    assert_int_equal(ow_search_new(&self->context, self->net, &self->ask, &search), OW_OK);
    return search;
}

/* The ids of the best layout in walking order, ports by name. */
static void assert_best(shop *self, const char *wanted)
{
    ow_search *search = search_for(self);
    ow_layout layout;
    ow_text words = ow_text_new(&self->context);
    ow_status status = ow_search_next(search, &layout);
    if (status == OW_OK) {
        for (size_t node = 0; node < layout.node_count; node++) {
            if (node > 0)
                ow_text_char(&words, ' ');
            ow_layout_node_name(&words, &layout, node);
        }
        ow_layout_free(&layout);
    } else {
        assert_int_equal(status, OW_NONE);
    }
    assert_string_equal(ow_text_words(&words), wanted);
    ow_text_done(&words);
    ow_search_free(search);
}

static void kinds_stand_in_the_order_of_their_text(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    assert_int_equal(ow_net_kind_count(self.net), 6);
    char before[OW_END_TEXT_SIZE] = "", name[OW_END_TEXT_SIZE];
    for (size_t kind = 0; kind < ow_net_kind_count(self.net); kind++) {
        assert_true(strcmp(before, ow_end_name(ow_net_kind_at(self.net, kind), name)) < 0);
        memcpy(before, name, sizeof before);
    }
    assert_int_equal(ow_net_shape_count(self.net), 6);    /* three of the adapters are one shape */
    assert_int_equal(ow_net_distinct_count(self.net), 7); /* and one of these is wider */
    close_shop(&self);
}

static void a_feed_that_keeps_its_switch_is_found(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    ask_feed(&self);
    assert_best(&self, "engine:gallery tee sw ad-short he-4 hose-4 he-4#2 turbo:oil-in");
    close_shop(&self);
}

static void a_layout_is_whole(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    ask_feed(&self);
    self.ask.title = "feed";
    self.ask.circuit = OW_FEED;
    ow_search *search = search_for(&self);
    ow_layout layout;
    assert_int_equal(ow_search_next(search, &layout), OW_OK);
    ow_search_free(search); /* the layout lives on without it */
    assert_string_equal(layout.title, "feed");
    assert_int_equal(layout.circuit, OW_FEED);
    assert_int_equal(layout.asked.flexible, OW_YES);
    assert_int_equal(ow_layout_part_count(&layout), 5);
    assert_int_equal(ow_layout_joint_count(&layout), 7);
    for (size_t node = 1; node < layout.node_count; node++) {
        const ow_layout_node *at = &layout.nodes[node];
        assert_int_equal(layout.nodes[at->parent].exits[at->parent_end], node);
        assert_non_null(
            ow_joint_find(ow_layout_parent_end(&layout, node), ow_layout_child_end(&layout, node)));
        bool hose = at->part != NULL && at->part->kind == OW_HOSE;
        assert_true(fabs(at->length_m - (hose ? 0.65 : OW_NOT_SAID)) < 1e-12);
    }
    bool complete;
    /* 6 + 3.10 + 8 + 12.50 * 0.65 + 8, to the cent with a half rounded up: 33.225 */
    assert_int_equal(ow_layout_price_cents(&layout, &complete), 3323);
    assert_true(complete);
    ow_layout_free(&layout);
    close_shop(&self);
}

static void limits_reach_the_search(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "1/8-27 NPT female", false);
    give(&self, "to", OW_ROLE_TO, "-4 flare37 female swivel", false);
    assert_best(&self, "from ad-short to");
    self.ask.limits.least_bore_m = 0.005;
    assert_best(&self, "from ad-wide to");
    self.ask.limits.bore_warns = true; /* a default: it warns, it does not refuse */
    assert_best(&self, "from ad-short to");
    self.ask.limits.fluid = OW_FLUID_COOLANT;
    assert_best(&self, "");
    self.ask.limits.fluid = OW_FLUID_OIL;
    self.ask.limits.rating_pa = 101e5;
    assert_best(&self, "");
    self.ask.limits.rating_pa = 100e5;
    self.ask.limits.has_temperature = true;
    self.ask.limits.temperature_c = 151;
    assert_best(&self, "");
    close_shop(&self);
}

static void parts_left_out_are_left_out_and_unknown_ones_ignored(void **state)
{
    (void)state;
    shop self;
    static const char *const WITHOUT[] = {"nothing-of-the-kind", "ad-short"};
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "1/8-27 NPT female", false);
    give(&self, "to", OW_ROLE_TO, "-4 flare37 female swivel", false);
    self.ask.without = WITHOUT;
    self.ask.without_count = 2;
    assert_best(&self, "from ad-long to");
    close_shop(&self);
}

static void ports_that_no_part_knows_can_still_be_joined(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "M12x1.5 female washer", false);
    give(&self, "to", OW_ROLE_TO, "M12x1.5 male washer", false);
    assert_best(&self, "from to");
    close_shop(&self);
}

static void an_ask_that_leaves_something_open_is_refused(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "M10 female", false);
    give(&self, "to", OW_ROLE_TO, "-4 flare37 male", false);
    ow_search *search = NULL;
    assert_int_equal(ow_search_new(&self.context, self.net, &self.ask, &search), OW_INPUT);
    assert_non_null(ow_test_find(&self.sink, "leaves something open"));
    self.ask.given_count = 1;
    assert_int_equal(ow_search_new(&self.context, self.net, &self.ask, &search), OW_RANGE);
    assert_null(search);
    close_shop(&self);
}

static void the_list_says_why_it_ends(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "1/8-27 NPT female", false);
    give(&self, "to", OW_ROLE_TO, "-4 flare37 female swivel", false);
    ow_search *search = search_for(&self);
    ow_layout layout;
    assert_int_equal(ow_search_next(search, &layout), OW_OK);
    ow_layout_free(&layout);
    assert_non_null(strstr(ow_search_cut(search), "as many as were asked for"));
    /* The other adapters are the same shape; a longer way round holds the adapter all the same. */
    assert_int_equal(ow_search_next(search, &layout), OW_NONE);
    assert_non_null(strstr(ow_search_cut(search), "over 4 parts more"));
    ow_search_free(search);
    close_shop(&self);
}

/* ---- what is missing ------------------------------------------------------------------------ */

/* Each made part named, put into the catalogue, completes the layout with just the parts promised. */
static void a_made_part_does_what_it_promises(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "gallery", OW_ROLE_SOURCE, "M14x1.5 female washer", true);
    give(&self, "oil-in", OW_ROLE_TO, "-4 flare37 male", true);
    give(&self, "sw", OW_ROLE_KEEP, "1/8-27 NPT male", false);
    self.ask.limits.flexible = OW_YES;
    self.ask.limits.closing = true;
    assert_best(&self, "");
    ow_search *search = search_for(&self);
    ow_missing *missing = NULL;
    size_t count = 0;
    assert_int_equal(ow_search_missing(search, 3, &missing, &count), OW_OK);
    assert_true(count >= 1);
    ow_search_free(search);
    for (size_t i = 0; i < count; i++) {
        assert_false(missing[i].is_plug);
        assert_false(missing[i].direct);
        assert_true(strlen(missing[i].why) > 0);
        for (size_t other = 0; other < i; other++) /* one made part is told once */
            assert_false(ow_end_same(&missing[i].from, &missing[other].from) &&
                         ow_end_same(&missing[i].to, &missing[other].to));
        char from[OW_END_TEXT_SIZE], to[OW_END_TEXT_SIZE], page[512];
        (void)snprintf(page, sizeof page, MADE, ow_end_name(&missing[i].from, from),
                       ow_end_name(&missing[i].to, to));
        shop second;
        open_shop(&second, page);
        second.ask = self.ask;
        ow_search *again = search_for(&second);
        ow_layout layout;
        assert_int_equal(ow_search_next(again, &layout), OW_OK);
        assert_int_equal(ow_layout_part_count(&layout), missing[i].part_count);
        ow_layout_free(&layout);
        ow_search_free(again);
        close_shop(&second);
    }
    ow_missing_free(&self.context, missing, count);
    close_shop(&self);
}

static void a_made_part_between_two_ports_is_direct(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "M14x1.5 female washer", false);
    give(&self, "to", OW_ROLE_TO, "G1/4 male washer", false);
    ow_search *search = search_for(&self);
    ow_missing *missing = NULL;
    size_t count = 0;
    assert_int_equal(ow_search_missing(search, 9, &missing, &count), OW_OK);
    char name[OW_END_TEXT_SIZE];
    assert_int_equal(count, 1);
    assert_true(missing[0].direct);
    assert_int_equal(missing[0].part_count, 1);
    assert_string_equal(ow_end_name(&missing[0].from, name), "M14x1.5 male washer");
    assert_string_equal(ow_end_name(&missing[0].to, name), "G1/4 female washer");
    ow_missing_free(&self.context, missing, count);
    ow_search_free(search);
    close_shop(&self);
}

/* ---- why not -------------------------------------------------------------------------------- */

static void assert_explained(shop *self, const char *id, const char *words, long long parts, long long cents)
{
    ow_search *search = search_for(self);
    ow_explanation told;
    assert_int_equal(ow_search_explain(search, id, &told), OW_OK);
    if (strstr(told.words, words) == NULL)
        fail_msg("\"%s\" does not say \"%s\"", told.words, words);
    assert_int_equal(told.worse_parts, parts);
    assert_int_equal(told.worse_cents, cents);
    ow_search_free(search);
}

static void explaining_says_by_how_much_or_which_limit(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "1/8-27 NPT female", false);
    give(&self, "to", OW_ROLE_TO, "-4 flare37 female swivel", false);
    assert_explained(&self, "ad-short", "is in the best layout", 0, 0);
    assert_explained(&self, "ad-long", "20.0 mm further", 0, 0);
    assert_explained(&self, "ad-wide", "6.00 dearer", 0, 600);
    /* adapter, hose end, a metre of hose, hose end, union: by hand 3.10 + 8 + 12.50 + 8 + 2 */
    assert_explained(&self, "hose-4", "5 parts, 4 more", 4, 3360 - 310);
    assert_explained(&self, "sw", "never a part", 0, 0);
    assert_explained(&self, "nothing", "no part nothing", 0, 0);
    self.ask.limits.flexible = OW_NO;
    assert_explained(&self, "hose-4", "no hose on the path", 0, 0);
    self.ask.limits.flexible = OW_ANY;
    self.ask.limits.least_bore_m = 0.005;
    assert_explained(&self, "ad-short", "the least bore", 0, 0);
    self.ask.limits.least_bore_m = OW_NOT_SAID;
    close_shop(&self);
}

/* One ask, one limit at a time that keeps a part out; lifted, the part can be used again. */
static void each_limit_is_named_as_the_reason(void **state)
{
    (void)state;
    shop self;
    static const char *const WITHOUT[] = {"ad-wide"};
    const ow_limits none = OW_LIMITS_INIT;
    open_shop(&self, "page: clamped\nkind: adapter\n" HEAD "columns: [id, a, b, bore]\nrows:\n"
                     "  - [ad-barb, 1/8-27 NPT male, barb 10, 6 mm]\n"
                     "  - [barb-out, barb 10, -4 flare37 male, 6 mm]\n"
                     "---\npage: rubber\nkind: hose\n" HEAD "columns: [id, a, b, bore]\nrows:\n"
                     "  - [hose-10, hose 10 nitrile, hose 10 nitrile, 10 mm]\n");
    give(&self, "from", OW_ROLE_SOURCE, "1/8-27 NPT female", false);
    give(&self, "to", OW_ROLE_TO, "-4 flare37 female swivel", false);
    ow_limits *limits = &self.ask.limits;
    self.ask.without = WITHOUT;
    self.ask.without_count = 1;
    assert_explained(&self, "ad-wide", "it was left out by name", 0, 0);
    self.ask.without_count = 0;
    limits->rating_pa = 200e5;
    assert_explained(&self, "ad-wide", "the pressure rating", 0, 0);
    *limits = none;
    limits->has_temperature = true;
    limits->temperature_c = -41;
    assert_explained(&self, "ad-wide", "the temperature", 0, 0);
    *limits = none;
    limits->fluid = OW_FLUID_COOLANT;
    assert_explained(&self, "ad-wide", "the fluid", 0, 0);
    *limits = none;
    limits->no_tee = true;
    assert_explained(&self, "tee", "no tee", 0, 0);
    *limits = none;
    limits->no_clamp = true;
    assert_explained(&self, "ad-barb", "no clamp", 0, 0);
    *limits = none;
    limits->flexible = OW_YES;
    limits->no_clamp = true; /* else the rubber hose is fewer parts */
    assert_explained(&self, "ad-wide", "5 parts, as many; 6.00 dearer", 0, 600);
    close_shop(&self);
}

static void reach_counts_both_sides(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    give(&self, "from", OW_ROLE_SOURCE, "M14x1.5 female washer", false);
    give(&self, "to", OW_ROLE_TO, "-4 flare37 female swivel", false);
    ow_search *search = search_for(&self);
    ow_reach reach;
    assert_int_equal(ow_search_reach(search, &reach), OW_OK);
    assert_int_equal(reach.from_source, 1); /* nothing screws into it: itself alone */
    /* Five of the six kinds lead there. A male 1/8 NPT does not: only the tee takes it, and no cap closes the
     * tee's own male. */
    assert_int_equal(reach.to_port[0], 5);
    assert_non_null(strstr(reach.words, "the source (M14x1.5 female washer)"));
    ow_search_free(search);
    close_shop(&self);
}

/* ---- memory --------------------------------------------------------------------------------- */

static ow_status all_of_it(const ow_context *context, void *data)
{
    shop *self = data;
    ow_net *net = NULL;
    ow_search *search = NULL;
    ow_layout layout;
    ow_missing *missing = NULL;
    ow_explanation told;
    ow_reach reach;
    size_t count = 0;
    ow_status status = ow_net_build(context, self->catalog, &net);
    if (status == OW_OK)
        status = ow_search_new(context, net, &self->ask, &search);
    for (int i = 0; i < 2 && status == OW_OK; i++) {
        status = ow_search_next(search, &layout);
        if (status == OW_OK)
            ow_layout_free(&layout);
    }
    if (status == OW_OK || status == OW_NONE)
        status = ow_search_missing(search, 3, &missing, &count);
    ow_missing_free(context, missing, count);
    if (status == OW_OK)
        status = ow_search_explain(search, "plug", &told);
    if (status == OW_OK)
        status = ow_search_reach(search, &reach);
    ow_search_free(search);
    ow_net_free(net);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    shop self;
    open_shop(&self, NULL);
    ask_feed(&self);
    ow_test_fail_each(all_of_it, &self);
    close_shop(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(kinds_stand_in_the_order_of_their_text),
        cmocka_unit_test(a_feed_that_keeps_its_switch_is_found),
        cmocka_unit_test(a_layout_is_whole),
        cmocka_unit_test(limits_reach_the_search),
        cmocka_unit_test(parts_left_out_are_left_out_and_unknown_ones_ignored),
        cmocka_unit_test(ports_that_no_part_knows_can_still_be_joined),
        cmocka_unit_test(an_ask_that_leaves_something_open_is_refused),
        cmocka_unit_test(the_list_says_why_it_ends),
        cmocka_unit_test(a_made_part_does_what_it_promises),
        cmocka_unit_test(a_made_part_between_two_ports_is_direct),
        cmocka_unit_test(explaining_says_by_how_much_or_which_limit),
        cmocka_unit_test(each_limit_is_named_as_the_reason),
        cmocka_unit_test(reach_counts_both_sides),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
