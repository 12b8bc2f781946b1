/* SPDX-License-Identifier: MIT */
/* Drawings of layouts: what must stand in them, that their words never overlap, that they are sound XML. */
#include "support/testing.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "drawing/scene.h"
#include "oilway/check.h"
#include "oilway/draw.h"
#include "support/failing.h"
#include "support/pages.h"
#include "support/shipped.h"

/* ---- what is asserted of a drawing -------------------------------------------------------------- */

/* Every part, port and end of the layout stands in the drawing, and every finding's message. */
static void assert_complete(const ow_shipped *self, const ow_layout *layout, const ow_findings *findings,
                            const char *svg)
{
    for (size_t node = 0; node < layout->node_count; node++) {
        char buffer[OW_END_TEXT_SIZE];
        ow_text name = ow_text_new(&self->context);
        ow_layout_node_name(&name, layout, node);
        ow_test_assert_names(svg, ow_text_words(&name));
        ow_text_done(&name);
        if (node > 0) {
            ow_test_assert_names(svg, ow_end_name(ow_layout_child_end(layout, node), buffer));
            ow_test_assert_names(svg, ow_end_name(ow_layout_parent_end(layout, node), buffer));
        }
    }
    for (size_t index = 0; index < findings->count; index++)
        ow_test_assert_names(svg, findings->items[index].rule->source);
}

static bool overlap(const ow_box *a, const ow_box *b)
{
    return a->x0 < b->x1 && b->x0 < a->x1 && a->y0 < b->y1 && b->y0 < a->y1;
}

/* No label over another, over a part, or over a dimension; all of them on the paper. */
static void assert_clear(const ow_shipped *self, const ow_layout *layout, const ow_findings *findings,
                         double most_height)
{
    ow_scene scene;
    assert_int_equal(ow_scene_new(&self->context, layout, findings, most_height, &scene), OW_OK);
    const ow_labels *labels = &scene.labels;
    assert_true(labels->count >= 2 * layout->node_count - 1); /* nodes and joints */
    for (size_t a = 0; a < labels->count; a++) {
        const ow_box *box = &labels->items[a].at.box;
        assert_true(labels->items[a].at.placed);
        assert_true(box->x0 >= 0.0 && box->x1 <= OW_PAPER_WIDTH && isfinite(box->y0) && box->y1 > box->y0);
        for (size_t b = a + 1; b < labels->count; b++)
            if (overlap(box, &labels->items[b].at.box))
                fail_msg("labels %s and %s overlap", labels->items[a].lines[0], labels->items[b].lines[0]);
        for (size_t b = 0; b < labels->obstacle_count; b++)
            if (overlap(box, &labels->obstacles[b].box))
                fail_msg("label %s lies over the figure", labels->items[a].lines[0]);
    }
    assert_true(scene.figure.bounds.x0 >= 0.0 && scene.figure.bounds.x1 <= OW_PAPER_WIDTH);
    ow_scene_done(&scene);
}

/* Draws the answer to an ask, if `limited` within a height too, asserts all of it, returns how many parts it
 * has; 0 if there is no layout. */
static size_t draw_ask(ow_shipped *self, const ow_ask_words *words, bool limited)
{
    ow_ask_set set;
    ow_answers answers;
    size_t parts = 0;
    ow_shipped_answer(self, words, &set, &answers);
    if (answers.items[0].stack_count > 0) {
        const ow_answer_stack *stack = &answers.items[0].stacks[0];
        ow_text svg = ow_text_new(&self->context);
        assert_int_equal(ow_draw_layout_svg(&svg, &stack->layout, &stack->findings, NULL), OW_OK);
        ow_test_assert_svg(ow_text_words(&svg));
        assert_complete(self, &stack->layout, &stack->findings, ow_text_words(&svg));
        assert_clear(self, &stack->layout, &stack->findings, 0.0);
        if (limited)
            assert_clear(self, &stack->layout, &stack->findings, 70.0);
        ow_text_done(&svg);
        parts = ow_layout_part_count(&stack->layout);
    }
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
    return parts;
}

/* ---- over the shipped catalogue ------------------------------------------------------------------ */

/* The n-th machine of a kind, going round. */
static const ow_machine *machine(const ow_shipped *self, ow_kind kind, size_t index)
{
    size_t count = 0;
    for (size_t at = 0; at < ow_catalog_machine_count(self->catalog); at++)
        count += ow_catalog_machine_at(self->catalog, at)->kind == kind;
    index %= count;
    for (size_t at = 0;; at++)
        if (ow_catalog_machine_at(self->catalog, at)->kind == kind && index-- == 0)
            return ow_catalog_machine_at(self->catalog, at);
}

static size_t port_name(const ow_machine *of, ow_circuit circuit, size_t skip, char *name, size_t room)
{
    for (size_t port = 0; port < of->port_count; port++)
        if (of->ports[port].circuit == circuit && skip-- == 0) {
            (void)snprintf(name, room, "%s:%s", of->id, of->ports[port].name);
            return 1;
        }
    return 0;
}

static void words_of_drawings_never_overlap(void **state)
{
    ow_shipped *self = *state;
    size_t drawn = 0;
    for (size_t index = 0; index < 30; index++) {
        char from[128], to[128], second[128];
        const ow_machine *engine = machine(self, OW_ENGINE, index);
        const ow_machine *turbo = machine(self, OW_TURBO, index * 7 + 3);
        ow_circuit circuit = index % 3 == 0 ? OW_DRAIN : index % 5 == 1 ? OW_COOLANT : OW_FEED;
        ow_ask_words words = {.from = from, .to = {to, second}, .hose = "650 mm"};
        bool drain = circuit == OW_DRAIN;
        if (port_name(drain ? turbo : engine, circuit, 0, from, sizeof from) == 0)
            continue;
        words.to_count = port_name(drain ? engine : turbo, circuit, 0, to, sizeof to);
        if (circuit == OW_FEED)
            words.to_count += port_name(turbo, circuit, 1, second, sizeof second);
        const ow_port *source = ow_machine_port(engine, strchr(from, ':') + 1);
        if (circuit == OW_FEED && source != NULL && source->holds[0] != '\0')
            words.keep[words.keep_count++] = source->holds;
        if (words.to_count > 0)
            drawn += draw_ask(self, &words, index % 4 == 0) > 0;
    }
    assert_true(drawn >= 20);
}

static void tees_banjos_and_twin_feeds_are_drawn(void **state)
{
    ow_shipped *self = *state;
    const ow_ask_words asks[] = {
        {.from = "drumlow-8:gallery",
         .to = {"phalarope-2x46b:oil-in-1", "phalarope-2x46b:oil-in-2"},
         .to_count = 2,
         .keep = {"sw-4", "sender-2"},
         .keep_count = 2},
        {.from = "skerrow-4:gallery",
         .to = {"ouzel-29:oil-in"},
         .to_count = 1,
         .keep = {"sw-u6-24"},
         .keep_count = 1},
        {.from = "1/8-27 NPT female",
         .to = {"banjo 10 stud"},
         .to_count = 1,
         .keep = {"M10x1 male taper"},
         .keep_count = 1},
        {.from = "tube 8", .to = {"barb 10"}, .to_count = 1},
        {.from = "weld 30", .to = {"-6 flare37 male"}, .to_count = 1},
        {.from = "3/16 flare45-inverted female", .to = {"M18x1.5 male cone24 12L"}, .to_count = 1},
    };
    for (size_t index = 0; index < sizeof asks / sizeof asks[0]; index++)
        assert_true(draw_ask(self, &asks[index], true) > 0);
}

/* ---- by hand --------------------------------------------------------------------------------------- */

static const char WRONG[] = "layout: <wrong> & \"odd\"\n"
                            "circuit: feed\n"
                            "from: brockle-4:gallery\n"
                            "parts:\n"
                            "  - tee-2: {enter: run-a}\n"
                            "    run-b: [sw-2]\n"
                            "    branch: [he-4-s, hose-4-ptfe: {length: 400 mm}]\n";

static void a_wrong_layout_is_drawn_with_its_findings(void **state)
{
    ow_shipped *self = *state;
    ow_layout *layout = ow_shipped_layout(&self->context, self->catalog, WRONG);
    ow_checked checked;
    assert_int_equal(ow_check_layouts(&self->context, self->catalog, layout, 1, &checked), OW_OK);
    assert_true(checked.findings[0].count > 0);
    ow_text svg = ow_text_new(&self->context);
    assert_int_equal(ow_draw_layouts_svg(&svg, layout, checked.findings, 1, NULL), OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    assert_complete(self, layout, &checked.findings[0], ow_text_words(&svg));
    assert_clear(self, layout, &checked.findings[0], 0.0);
    assert_non_null(strstr(ow_text_words(&svg), "&lt;wrong&gt; &amp; &quot;odd&quot;"));
    assert_null(strstr(ow_text_words(&svg), "<wrong>"));
    ow_text_done(&svg);
    ow_checked_done(&checked);
    ow_layouts_free(&self->context, layout, 1);
}

static void a_drawing_is_the_same_each_time(void **state)
{
    ow_shipped *self = *state;
    ow_layout *layout = ow_shipped_layout(&self->context, self->catalog, WRONG);
    ow_text first = ow_text_new(&self->context), second = ow_text_new(&self->context);
    assert_int_equal(ow_draw_layout_svg(&first, layout, NULL, NULL), OW_OK);
    assert_int_equal(ow_draw_layout_svg(&second, layout, NULL, NULL), OW_OK);
    assert_string_equal(ow_text_words(&first), ow_text_words(&second));
    ow_text_done(&first);
    ow_text_done(&second);
    ow_layouts_free(&self->context, layout, 1);
}

static void a_bare_drawing_is_the_figure_alone(void **state)
{
    ow_shipped *self = *state;
    const ow_draw_options bare = {.bare = true};
    ow_layout *layout = ow_shipped_layout(&self->context, self->catalog, WRONG);
    ow_text svg = ow_text_new(&self->context);
    assert_int_equal(ow_draw_layout_svg(&svg, layout, NULL, &bare), OW_OK);
    ow_test_assert_svg(ow_text_words(&svg));
    assert_null(strstr(ow_text_words(&svg), ">Parts<"));
    ow_text_done(&svg);
    ow_layouts_free(&self->context, layout, 1);
}

static ow_status draw_once(const ow_context *context, void *data)
{
    ow_text svg = ow_text_new(context);
    ow_status status = ow_draw_layout_svg(&svg, data, NULL, NULL);
    ow_text_done(&svg);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    ow_shipped *self = *state;
    ow_layout *layout = ow_shipped_layout(&self->context, self->catalog, WRONG);
    ow_test_fail_each(draw_once, layout);
    ow_layouts_free(&self->context, layout, 1);
}

/* Parts shrink, words do not: the same size of type at every height, and nothing far beyond it. */
static void a_drawing_keeps_to_the_height_that_it_is_given(void **state)
{
    ow_shipped *self = *state;
    const ow_ask_words words = {.from = "brockle-4:gallery",
                                .to = {"plover-41:oil-in"},
                                .to_count = 1,
                                .keep = {"sw-2", "sender-2"},
                                .keep_count = 2};
    static const double HEIGHTS[] = {60.0, 80.0, 110.0};
    ow_ask_set set;
    ow_answers answers;
    double scale = 0.0;
    ow_shipped_answer(self, &words, &set, &answers);
    const ow_layout *layout = &answers.items[0].stacks[0].layout;
    for (size_t index = 0; index < sizeof HEIGHTS / sizeof HEIGHTS[0]; index++) {
        ow_scene scene;
        assert_int_equal(ow_scene_new(&self->context, layout, NULL, HEIGHTS[index], &scene), OW_OK);
        ow_box bounds = ow_labels_bounds(&scene.labels);
        assert_true(bounds.y1 - bounds.y0 <= HEIGHTS[index] + 8.0); /* a larger scale is worth a little */
        assert_true(scene.figure.scale >= scale);
        scale = scene.figure.scale;
        for (size_t label = 0; label < scene.labels.count; label++) {
            assert_true(scene.labels.items[label].at.cost < OW_LABEL_NO_PLACE);
            if (scene.labels.items[label].line_count > 0)
                assert_true(fabs(scene.labels.items[label].size - 2.6) < 1e-9);
        }
        ow_scene_done(&scene);
    }
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_of_drawings_never_overlap),
        cmocka_unit_test(tees_banjos_and_twin_feeds_are_drawn),
        cmocka_unit_test(a_wrong_layout_is_drawn_with_its_findings),
        cmocka_unit_test(a_drawing_is_the_same_each_time),
        cmocka_unit_test(a_bare_drawing_is_the_figure_alone),
        cmocka_unit_test(a_drawing_keeps_to_the_height_that_it_is_given),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, ow_shipped_load, ow_shipped_unload);
}
