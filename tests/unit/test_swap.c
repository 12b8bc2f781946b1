/* SPDX-License-Identifier: MIT */
/* Parts of a layout exchanged, on the catalogue that ships and on a small one. */
#include <stdlib.h>
#include <string.h>

#include "oilway/report_choice.h"
#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"

static const char layout_text[] =
    "layout: a feed\n"
    "circuit: feed\n"
    "from: brockle-4:gallery\n"
    "parts:\n"
    "  - tee: {enter: run-a}\n"
    "    run-b: [nipple, cap]\n"
    "    branch: [to-flare, end, hose: {length: 650 mm}, end, plover-41:oil-in]\n";

static const char catalogue[] =
    "{kind: engine, id: brockle-4, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed}}}\n"
    "---\n{kind: turbo, id: plover-41, ports: {oil-in: {end: -4 flare37 male, circuit: feed}}}\n"
    "---\n{kind: adapter, page: adapters, columns: [id, a, b, bore, price], rows: [\n"
    "  [nipple, 1/8-27 NPT male, 1/8-27 NPT male, 5 mm, 2],\n"
    "  [nipple-long, 1/8-27 NPT male, 1/8-27 NPT male, 5 mm, 1],\n"
    "  [to-flare, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, 3],\n"
    "  [bspt, R1/8 male, R1/8 male, 5 mm, 2],\n"
    "  [wide, 1/4-18 NPT male, -4 flare37 male, 4.4 mm, 3]]}\n"
    "---\n{kind: elbow, page: elbows, columns: [id, a, b, bore, angle, price], rows: [\n"
    "  [bent, -4 flare37 male, 1/8-27 NPT male, 4.4 mm, 90 deg, 2]]}\n"
    "---\n{kind: tee, page: tees, columns: [id, run-a, run-b, branch, bore, price], rows: [\n"
    "  [tee, 1/8-27 NPT male, 1/8-27 NPT female, 1/8-27 NPT female, 4.8 mm, 6],\n"
    "  [tee-turned, 1/8-27 NPT female, 1/8-27 NPT female, 1/8-27 NPT male, 4.8 mm, 5]]}\n"
    "---\n{kind: cross, page: crosses, columns: [id, run-a, run-b, branch-a, branch-b, bore], rows: [\n"
    "  [cross, 1/8-27 NPT male, 1/8-27 NPT female, 1/8-27 NPT female, 1/8-27 NPT female, 4.8 mm]]}\n"
    "---\n{kind: cap, page: caps, columns: [id, a, price], rows: [[cap, 1/8-27 NPT female, 1]]}\n"
    "---\n{kind: hose-end, page: ends, columns: [id, nut, tail, bore, price], rows: [\n"
    "  [end, -4 flare37 female swivel, hose -4 ptfe tail, 4 mm, 4]]}\n"
    "---\n{kind: hose, page: hoses, columns: [id, a, b, bore, price], rows: [\n"
    "  [hose, hose -4 ptfe, hose -4 ptfe, 4.8 mm, 20], [hose-2, hose -4 ptfe, hose -4 ptfe, 4.8 mm, 30]]}\n";

typedef struct fixture {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_layout *layouts;
    size_t count;
} fixture;

static void read_layout(fixture *self, const char *text)
{
    ow_status status = ow_layouts_read(&self->context, self->catalog, "layout", text, strlen(text),
                                       &self->layouts, &self->count);
    for (size_t index = 0; index < self->sink.count; index++)
        print_error("%s\n", self->sink.items[index].told);
    assert_int_equal(status, OW_OK);
}

static int begin(void **state)
{
    static fixture self;
    static const char *const name = "c.yaml", *const text = catalogue;
    self = (fixture){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL, NULL, 0};
    self.context = ow_test_context(&self.sink);
    assert_int_equal(ow_catalog_load_texts(&self.context, &name, &text, 1, NULL, &self.catalog), OW_OK);
    read_layout(&self, layout_text);
    *state = &self;
    return 0;
}

static int end(void **state)
{
    fixture *self = *state;
    ow_layouts_free(&self->context, self->layouts, self->count);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    return 0;
}

static ow_swaps find(fixture *self, const char *place)
{
    ow_swaps swaps;
    size_t node = ow_layout_node_named(&self->layouts[0], place);
    assert_int_not_equal(node, OW_NODE_NONE);
    assert_int_equal(ow_swaps_find(&self->context, self->catalog, &self->layouts[0], node, &swaps), OW_OK);
    return swaps;
}

/* The ids of all swaps in order, blank separated. */
static void assert_swaps(fixture *self, const char *place, const char *ids)
{
    ow_swaps swaps = find(self, place);
    ow_text text = ow_text_new(&self->context);
    for (size_t index = 0; index < swaps.count; index++)
        ow_text_format(&text, "%s%s", index > 0 ? " " : "", swaps.items[index].part->id);
    assert_string_equal(ow_text_words(&text), ids);
    ow_text_done(&text);
    ow_swaps_done(&swaps);
}

static void a_place_is_found_by_the_name_that_messages_use(void **state)
{
    fixture *self = *state;
    const ow_layout *layout = &self->layouts[0];
    assert_int_equal(ow_layout_node_named(layout, "brockle-4:gallery"), 0);
    assert_int_equal(ow_layout_node_named(layout, "tee"), 1);
    assert_int_equal(layout->nodes[ow_layout_node_named(layout, "end#2")].occurrence, 2);
    assert_int_equal(ow_layout_node_named(layout, "end#1"), ow_layout_node_named(layout, "end"));
    assert_ptr_equal(layout->nodes[ow_layout_node_named(layout, "hose")].part,
                     ow_catalog_part(self->catalog, "hose"));
    static const char *const none[] = {"", "e", "end#3", "end#", "end#02", "end#2x", "hose-2", "cross"};
    for (size_t index = 0; index < sizeof none / sizeof none[0]; index++)
        assert_int_equal(ow_layout_node_named(layout, none[index]), OW_NODE_NONE);
}

static void only_parts_whose_ends_join_what_is_there_are_offered(void **state)
{
    fixture *self = *state;
    assert_swaps(self, "nipple", "nipple-long");
    assert_swaps(self, "to-flare", "bent");
    assert_swaps(self, "hose", "hose-2");
    assert_swaps(self, "end", "");
    assert_swaps(self, "cap", "");
    assert_swaps(self, "tee", "tee-turned");
}

static void a_given_port_is_not_exchanged(void **state)
{
    fixture *self = *state;
    ow_swaps swaps;
    assert_int_equal(ow_swaps_find(&self->context, self->catalog, &self->layouts[0], 0, &swaps), OW_RANGE);
    assert_int_equal(ow_swaps_find(&self->context, self->catalog, &self->layouts[0], 999, &swaps), OW_RANGE);
}

static void assert_swapped(fixture *self, const char *place, const char *expected)
{
    ow_swaps swaps = find(self, place);
    ow_layout swapped;
    ow_text text = ow_text_new(&self->context);
    assert_true(swaps.count > 0);
    assert_int_equal(ow_layout_swap(&self->context, &self->layouts[0], swaps.node, &swaps.items[0], &swapped),
                     OW_OK);
    ow_layout_write(&text, &swapped);
    if (strstr(ow_text_words(&text), expected) == NULL)
        fail_msg("no \"%s\" in\n%s", expected, ow_text_words(&text));
    ow_text_done(&text);
    ow_layout_free(&swapped);
    ow_swaps_done(&swaps);
}

static void what_hangs_on_a_part_hangs_on_the_one_in_its_place(void **state)
{
    fixture *self = *state;
    assert_swapped(self, "to-flare", "[bent, end,");
    assert_swapped(self, "hose", "hose-2: {length: 650 mm}");
    /* The turned tee is entered by its branch; the exits are told in its own order. */
    assert_swapped(self, "tee",
                   "  - tee-turned: {enter: branch}\n    run-a: [nipple, cap]\n    run-b: [to-flare, end,");
}

static void a_part_that_was_wrong_can_be_mended(void **state)
{
    fixture *self = *state;
    ow_layouts_free(&self->context, self->layouts, self->count);
    read_layout(self, "layout: wrong\nfrom: 1/8-27 NPT female\nparts: [bspt: {enter: a}, cap]\n");
    ow_swaps swaps = find(self, "bspt");
    assert_true(swaps.errors >= 2);
    assert_int_equal(swaps.count, 2);
    assert_string_equal(swaps.items[0].part->id, "nipple-long");
    assert_int_equal(swaps.items[0].errors, swaps.errors - 2);
    ow_swaps_done(&swaps);
}

static ow_status find_and_print(const ow_context *context, void *data)
{
    fixture *self = data;
    ow_swaps swaps;
    ow_style style = OW_STYLE_INIT;
    ow_status status = ow_swaps_find(context, self->catalog, &self->layouts[0], 1, &swaps);
    if (status != OW_OK)
        return status;
    ow_text text = ow_text_new(context);
    status = ow_report_swaps_json(&text, self->layouts, self->count, 0, &swaps, 10);
    ow_report_swaps_text(&text, self->layouts, 0, &swaps, 10, &style);
    if (status == OW_OK)
        status = ow_text_status(&text);
    ow_text_done(&text);
    ow_swaps_done(&swaps);
    return status;
}

static void want_of_memory_is_said_and_nothing_leaks(void **state)
{
    ow_test_fail_each(find_and_print, *state);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_place_is_found_by_the_name_that_messages_use, begin, end),
        cmocka_unit_test_setup_teardown(only_parts_whose_ends_join_what_is_there_are_offered, begin, end),
        cmocka_unit_test_setup_teardown(a_given_port_is_not_exchanged, begin, end),
        cmocka_unit_test_setup_teardown(what_hangs_on_a_part_hangs_on_the_one_in_its_place, begin, end),
        cmocka_unit_test_setup_teardown(a_part_that_was_wrong_can_be_mended, begin, end),
        cmocka_unit_test_setup_teardown(want_of_memory_is_said_and_nothing_leaks, begin, end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
