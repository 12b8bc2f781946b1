/* SPDX-License-Identifier: MIT */
/* Layouts that the search found over the shipped catalogue, written as YAML and read again: the tree, its
 * ports with their roles and order, and what was asked are the same. */
#include "support/testing.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/ask.h"
#include "support/diagnostics.h"
#include "support/shipped.h"

static void assert_limits_same(const ow_limits *a, const ow_limits *b)
{
    assert_true(a->least_bore_m == b->least_bore_m && a->rating_pa == b->rating_pa);
    assert_true(a->orifice_low_m == b->orifice_low_m && a->orifice_high_m == b->orifice_high_m);
    assert_true(a->has_temperature == b->has_temperature && a->temperature_c == b->temperature_c);
    assert_true(a->flexible == b->flexible && a->closing == b->closing && a->restrictor == b->restrictor);
    assert_true(a->fluid == b->fluid && a->tolerate == b->tolerate && a->remote_switch == b->remote_switch);
    assert_true(a->no_tee == b->no_tee && a->no_clamp == b->no_clamp && a->bore_warns == b->bore_warns);
}

static void assert_same(const ow_layout *a, const ow_layout *b)
{
    assert_string_equal(a->title, b->title);
    assert_int_equal(a->circuit, b->circuit);
    assert_int_equal(a->has_asked, b->has_asked);
    assert_limits_same(&a->asked, &b->asked);
    assert_int_equal(a->given_count, b->given_count);
    for (size_t i = 0; i < a->given_count; i++) {
        assert_string_equal(a->givens[i].name, b->givens[i].name);
        assert_int_equal(a->givens[i].role, b->givens[i].role);
        assert_ptr_equal(a->givens[i].port, b->givens[i].port);
        assert_ptr_equal(a->givens[i].fixture, b->givens[i].fixture);
        assert_true(ow_end_same(&a->givens[i].end, &b->givens[i].end));
    }
    assert_int_equal(a->node_count, b->node_count);
    for (size_t i = 0; i < a->node_count; i++) {
        assert_ptr_equal(a->nodes[i].part, b->nodes[i].part);
        assert_int_equal(a->nodes[i].enter, b->nodes[i].enter);
        assert_int_equal(a->nodes[i].parent, b->nodes[i].parent);
        assert_int_equal(a->nodes[i].parent_end, b->nodes[i].parent_end);
        assert_int_equal(a->nodes[i].occurrence, b->nodes[i].occurrence);
        assert_true(a->nodes[i].part || a->nodes[i].given == b->nodes[i].given);
        assert_true(a->nodes[i].length_m == b->nodes[i].length_m);
        assert_memory_equal(a->nodes[i].exits, b->nodes[i].exits, sizeof a->nodes[i].exits);
    }
}

static void assert_reads_back(ow_shipped *self, const ow_layout *layout)
{
    ow_layout *again = NULL;
    size_t count = 0;
    ow_text text = ow_text_new(&self->context);
    ow_layout_write(&text, layout);
    assert_int_equal(ow_text_status(&text), OW_OK);
    ow_status status = ow_layouts_read(&self->context, self->catalog, "again.yaml", ow_text_words(&text),
                                       text.length, &again, &count);
    if (status != OW_OK)
        print_error("%s", ow_text_words(&text));
    assert_int_equal(status, OW_OK);
    assert_int_equal(count, 1);
    assert_same(layout, again);
    ow_layouts_free(&self->context, again, count);
    ow_text_done(&text);
}

static size_t try_words(ow_shipped *self, const ow_ask_words *words)
{
    ow_ask_set set;
    size_t found = 0;
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, words, &set), OW_OK);
    for (size_t item = 0; item < set.count; item++) {
        ow_search *search = NULL;
        ow_layout layout;
        assert_int_equal(ow_search_new(&self->context, self->net, &set.items[item].ask, &search), OW_OK);
        for (size_t listed = 0; listed < 4 && ow_search_next(search, &layout) == OW_OK; listed++) {
            assert_reads_back(self, &layout);
            ow_layout_free(&layout);
            found++;
        }
        ow_search_free(search);
    }
    ow_ask_set_done(&set);
    return found;
}

#define NPT_FEMALE "1/8-27 NPT female"
#define NPT_MALE "1/8-27 NPT male"
#define FLARE "-4 flare37 male"

static void stacks_between_machines_read_back(void **state)
{
    static const ow_ask_words asks[] = {
        {.from = "brockle-4:gallery", .to = {"plover-41:oil-in"}, .to_count = 1},
        {.from = "brockle-4:gallery",
         .to = {"plover-41:oil-in"},
         .to_count = 1,
         .keep = {"sw-2"},
         .keep_count = 1,
         .hose = "650 mm"},
        {.from = "brockle-4:gallery",
         .to = {"plover-41:oil-in", "dunlin-63:oil-in"},
         .to_count = 2,
         .keep = {"sw-2", "sw-2"},
         .keep_count = 2},
        {.from = "brockle-4:gallery", .to = {"dunlin-63:oil-in", "plover-41:oil-in"}, .to_count = 2},
        {.from = "brockle-4",
         .to = {"curlew-8b:oil-in"},
         .to_count = 1,
         .orifice = "0.8..1.2 mm",
         .temperature = "120 C"},
        {.from = "plover-41:oil-out", .to = {"brockle-4:side-plate"}, .to_count = 1},
        {.from = "brockle-4:head-outlet", .to = {"plover-41:coolant-a"}, .to_count = 1},
        {.from = "brockle-4:gallery",
         .to = {"plover-41:oil-in"},
         .to_count = 1,
         .keep = {NPT_MALE, NPT_MALE},
         .keep_count = 2},
    };
    for (size_t i = 0; i < sizeof asks / sizeof *asks; i++)
        if (try_words(*state, &asks[i]) == 0)
            fail_msg("ask %zu has no stack to read back", i);
}

/* Bare ends may be served or kept: nothing in the tree tells, so the text must. */
static void stacks_between_bare_ends_read_back(void **state)
{
    static const ow_ask_words asks[] = {
        {.from = NPT_FEMALE, .to = {FLARE}, .to_count = 1},
        {.from = NPT_FEMALE, .to = {FLARE}, .to_count = 1, .keep = {NPT_MALE}, .keep_count = 1},
        {.from = NPT_FEMALE,
         .to = {FLARE},
         .to_count = 1,
         .keep = {FLARE},
         .keep_count = 1,
         .flexible = "yes"},
        {.from = NPT_FEMALE, .to = {FLARE, FLARE}, .to_count = 2, .keep = {FLARE, NPT_MALE}, .keep_count = 2},
        {.from = NPT_FEMALE,
         .to = {"M12x1.5 female washer", FLARE, "M12x1.5 female washer"},
         .to_count = 3,
         .flexible = "no"},
        {.from = NPT_FEMALE, .to = {"sw-2"}, .to_count = 1, .keep = {NPT_MALE}, .keep_count = 1},
        {.from = NPT_FEMALE,
         .to = {NPT_FEMALE},
         .to_count = 1,
         .keep = {"sw-2"},
         .keep_count = 1,
         .remote_switch = true},
        {.from = NPT_FEMALE,
         .to = {NPT_FEMALE},
         .to_count = 1,
         .circuit = "drain",
         .tolerate = true,
         .bore = "2.5 mm"},
        {.from = NPT_MALE, .to = {NPT_FEMALE}, .to_count = 1},
    };
    for (size_t i = 0; i < sizeof asks / sizeof *asks; i++)
        if (try_words(*state, &asks[i]) == 0)
            fail_msg("ask %zu has no stack to read back", i);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(stacks_between_machines_read_back),
        cmocka_unit_test(stacks_between_bare_ends_read_back),
    };
    return cmocka_run_group_tests(tests, ow_shipped_load, ow_shipped_unload);
}
