/* SPDX-License-Identifier: MIT */
/* Counter sheets of layouts, the sketch of a made part, and what all words go through: escaping and folding.
 */
#include "support/testing.h"

#include <stdio.h>
#include <string.h>

#include "drawing/escape.h"
#include "drawing/letters.h"
#include "drawing/sketch.h"
#include "oilway/bill.h"
#include "oilway/check.h"
#include "oilway/draw.h"
#include "oilway/thread_size.h"
#include "support/failing.h"
#include "support/pages.h"
#include "support/shipped.h"
#include "support/xml.h"

static const char ODD[] =
    "layout: \"<b>odd</b> & 'quoted' \\\"title\\\"\"\n"
    "circuit: feed\n"
    "from: brockle-4:gallery\n"
    "parts: [tf-2-4, he-4-s, hose-4-ptfe: {length: 400 mm}, he-4-s, plover-41:oil-in]\n";

static void a_checked_layout_has_a_sheet(void **state)
{
    const ow_shipped *self = *state;
    ow_layout *layout = ow_shipped_layout(&self->context, self->catalog, ODD);
    ow_checked checked;
    ow_card card;
    assert_int_equal(ow_check_layouts(&self->context, self->catalog, layout, 1, &checked), OW_OK);
    ow_text html = ow_text_new(&self->context);
    assert_int_equal(ow_sheet_check_html(&html, layout, &checked), OW_OK);
    const char *page = ow_text_words(&html);
    ow_test_assert_html(page);
    ow_test_assert_names(page, "&lt;b&gt;odd&lt;/b&gt; &amp; &#39;quoted&#39; &quot;title&quot;");
    assert_null(strstr(page, "<b>"));
    for (size_t child = 1; child < layout->node_count; child++) { /* each joint's seal and its cautions */
        assert_int_equal(ow_layout_joint_card(layout, child, &card), OW_OK);
        ow_test_assert_names(page, card.rule->seals_by);
        for (size_t index = 0; index < card.caution_count; index++)
            ow_test_assert_names(page, card.cautions[index]);
    }
    assert_true(checked.findings[0].count > 0); /* the switch that loses its place */
    for (size_t index = 0; index < checked.findings[0].count; index++)
        ow_test_assert_names(page, checked.findings[0].items[index].rule->source);
    ow_test_assert_names(page, "Bill of fittings");
    ow_test_assert_names(page, "Fitted by");
    ow_text_done(&html);
    ow_checked_done(&checked);
    ow_layouts_free(&self->context, layout, 1);
}

static void an_answer_has_a_sheet_whether_found_or_not(void **state)
{
    const ow_shipped *self = *state;
    const ow_ask_words asks[] = {
        {.from = "brockle-4:gallery",
         .to = {"plover-41:oil-in"},
         .to_count = 1,
         .keep = {"sw-2"},
         .keep_count = 1},
        {.from = "1/8-27 NPT female", .to = {"M13x1.25 female washer"}, .to_count = 1},
    };
    for (size_t index = 0; index < 2; index++) {
        ow_ask_set set;
        ow_answers answers;
        ow_shipped_answer(self, &asks[index], &set, &answers);
        assert_int_equal(answers.found, index == 0);
        ow_text html = ow_text_new(&self->context);
        assert_int_equal(ow_sheet_answer_html(&html, &answers), OW_OK);
        ow_test_assert_html(ow_text_words(&html));
        ow_test_assert_names(ow_text_words(&html), index == 0 ? "Bill of fittings" : "PROPOSAL");
        ow_text_done(&html);
        ow_answers_done(&answers);
        ow_ask_set_done(&set);
    }
}

/* Their own names stand over the drawings: joined, they would fill the head of the page. */
static void several_layouts_are_titled_by_their_machines(void **state)
{
    const ow_shipped *self = *state;
    static const char BOTH[] = "from: brockle-4:gallery\n"
                               "parts: [tf-2-4, -4 flare37 female swivel]\n"
                               "---\nfrom: brockle-4:gallery\n"
                               "parts: [tf-2-4, he-4-s, hose-4-ptfe: {length: 400 mm}, he-4-s, "
                               "plover-41:oil-in]\n";
    ow_layout *layouts = NULL;
    size_t count = 0;
    assert_int_equal(
        ow_layouts_read(&self->context, self->catalog, "both", BOTH, sizeof BOTH - 1, &layouts, &count),
        OW_OK);
    assert_int_equal(count, 2);
    ow_text html = ow_text_new(&self->context);
    assert_int_equal(ow_sheet_layouts_html(&html, layouts, NULL, count), OW_OK);
    ow_test_assert_names(ow_text_words(&html), "<h1>brockle-4, plover-41: 2 layouts</h1>");
    ow_text_done(&html);
    ow_layouts_free(&self->context, layouts, count);
}

/* The sheet of one layout of an ask; the status is checked, the words stay in `html`. */
static void sheet_of(const ow_shipped *self, const ow_ask_words *words, size_t reading, size_t stack,
                     ow_text *html)
{
    ow_ask_set set;
    ow_answers answers;
    ow_shipped_answer(self, words, &set, &answers);
    assert_int_equal(ow_sheet_stack_html(html, &answers, answers.count, 0), OW_RANGE);
    assert_int_equal(ow_sheet_stack_html(html, &answers, 0, answers.items[0].stack_count), OW_RANGE);
    assert_int_equal(html->length, 0);
    assert_int_equal(ow_sheet_stack_html(html, &answers, reading, stack), OW_OK);
    ow_test_assert_html(ow_text_words(html));
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
}

static void a_sheet_tells_what_the_ask_brought_up(void **state)
{
    const ow_shipped *self = *state;
    const ow_ask_words words = {.from = "brockle-4:gallery", .to = {"plover-41:oil-in"}, .to_count = 1};
    ow_text html = ow_text_new(&self->context);
    sheet_of(self, &words, 0, 0, &html);
    ow_test_assert_names(ow_text_words(&html), "loses its place"); /* nobody keeps the switch */
    ow_test_assert_names(ow_text_words(&html), "1 warning");
    ow_text_done(&html);
}

static void a_sheet_says_which_reading_it_holds_for(void **state)
{
    const ow_shipped *self = *state;
    const ow_ask_words words = {.from = "M10 female washer", .to = {"-4 flare37 male"}, .to_count = 1};
    for (size_t reading = 0; reading < 2; reading++) {
        ow_text html = ow_text_new(&self->context);
        sheet_of(self, &words, reading, 0, &html);
        ow_test_assert_names(ow_text_words(&html), reading == 0 ? "Only if it is M10x1 female washer."
                                                                : "Only if it is M10x1.25 female washer.");
        ow_test_assert_names(ow_text_words(&html), "10 mm is M10x1, 12.5 mm is M10x1.25");
        ow_text_done(&html);
    }
}

static void a_sheet_of_nothing_found_is_not_signed_as_fitted(void **state)
{
    const ow_shipped *self = *state;
    const ow_ask_words words = {.from = "1/8-27 NPT female", .to = {"M13x1.25 female washer"}, .to_count = 1};
    ow_ask_set set;
    ow_answers answers;
    ow_shipped_answer(self, &words, &set, &answers);
    ow_text html = ow_text_new(&self->context);
    assert_int_equal(ow_sheet_answer_html(&html, &answers), OW_OK);
    const char *page = ow_text_words(&html), *reach = answers.items[0].reach.words;
    assert_null(strstr(page, "Fitted by"));
    ow_test_assert_names(page, "Drawing checked by");
    const char *told = strstr(page, reach);
    assert_non_null(told);
    assert_null(strstr(told + 1, reach)); /* once */
    ow_text_done(&html);
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
}

/* ---- the sketch --------------------------------------------------------------------------------- */

static ow_missing missing_between(const char *from, const char *to)
{
    ow_missing missing = {.why = "a reason & <more>", .part_count = 1, .is_plug = to == NULL};
    assert_int_equal(ow_end_read(from, &missing.from, NULL), OW_OK);
    if (to != NULL)
        assert_int_equal(ow_end_read(to, &missing.to, NULL), OW_OK);
    return missing;
}

static void assert_limits(const char *svg, const ow_end *end)
{
    ow_thread thread;
    ow_thread_size size;
    char words[64];
    if (!ow_end_thread(end, &thread) ||
        ow_thread_size_of(&thread, end->gender == OW_MALE, OW_CLASS_USUAL, &size) != OW_OK)
        return;
    if (!size.pitch_diameter.has_least || !size.pitch_diameter.has_most)
        return;
    (void)snprintf(words, sizeof words, "%.3f to %.3f", 1e3 * size.pitch_diameter.least_m,
                   1e3 * size.pitch_diameter.most_m);
    ow_test_assert_names(svg, words);
}

static void a_made_part_is_drawn_with_its_limits(void **state)
{
    const ow_shipped *self = *state;
    static const char *const PAIRS[][2] = {
        {"1/8-27 NPT male", "M11x1 male washer"},
        {"-4 flare37 female swivel", "M13x1.25 male washer"},
        {"G1/4 female cone60", "-6 o-ring male"},
        {"M14x1.5 male cone24 8L", "R1/8 male"},
        {"M22x1.5 female washer", "barb 16"},
        {"3/16 flare45-inverted male", "M10x1 male o-ring"},
        {"flange f38", "-10 flare37 male"},
        {"hose -4 ptfe tail", "M12x1 male washer"},
        {"1/4-18 NPT female", "9/16-18 UNF male washer"},
        {"M10x1 male washer", NULL},
        {"-4 flare37 female swivel", NULL},
        {"weld 30", "bead 16"},
    };
    for (size_t index = 0; index < sizeof PAIRS / sizeof PAIRS[0]; index++) {
        ow_missing missing = missing_between(PAIRS[index][0], PAIRS[index][1]);
        ow_text svg = ow_text_new(&self->context);
        assert_int_equal(ow_draw_sketch_svg(&svg, &missing, OW_NOT_SAID), OW_OK);
        ow_test_assert_svg(ow_text_words(&svg));
        ow_test_assert_names(ow_text_words(&svg), "PROPOSAL");
        ow_test_assert_names(ow_text_words(&svg), "competent person");
        ow_test_assert_names(ow_text_words(&svg), "a reason &amp; &lt;more&gt;");
        ow_test_assert_names(ow_text_words(&svg), PAIRS[index][0]);
        assert_limits(ow_text_words(&svg), &missing.from);
        if (PAIRS[index][1] != NULL)
            assert_limits(ow_text_words(&svg), &missing.to);
        ow_text_done(&svg);
    }
}

static void a_made_part_has_the_bore_that_is_asked_for_and_a_hexagon_over_its_threads(void **state)
{
    (void)state;
    ow_missing missing = missing_between("M22x1.5 male washer", "G1/2 male washer");
    ow_sketch plain = ow_sketch_of(&missing, OW_NOT_SAID), wide = ow_sketch_of(&missing, 0.015);
    assert_true(plain.bore_mm > 4.0 && plain.bore_mm < 15.0);
    assert_true(wide.bore_mm >= 15.0);
    assert_true(plain.hexagon_mm >= 27.0);      /* 22 mm of thread and its ring of 27 mm (DIN 7603) */
    assert_true(plain.length_mm > 14.0 + 14.0); /* two studs of 14 mm (DIN 3852) and a hexagon */
}

/* ---- words -------------------------------------------------------------------------------------- */

static void assert_escapes(const ow_context *context, const char *words, size_t length, const char *expected)
{
    ow_text text = ow_text_new(context);
    ow_escape_bytes(&text, words, length);
    assert_string_equal(ow_text_words(&text), expected);
    ow_text_done(&text);
}

static void words_are_escaped_for_xml(void **state)
{
    const ow_shipped *self = *state;
    assert_escapes(&self->context, "a<b>&\"'", 7, "a&lt;b&gt;&amp;&quot;&#39;");
    assert_escapes(&self->context, "37\xC2\xB0 \xC3\x97", 7, "37\xC2\xB0 \xC3\x97");
    assert_escapes(&self->context, "a\tb\nc", 5, "a b c");
    assert_escapes(&self->context, "a\x01\x7f\0b", 5,
                   "a\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"
                   "b");
    assert_escapes(&self->context, "\xff\xc3", 2, "\xEF\xBF\xBD\xEF\xBF\xBD");
    assert_escapes(&self->context, "\xEF\xBF\xBE", 3, "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");
    assert_escapes(&self->context, "", 0, "");
}

static void words_fold_at_blanks_and_lose_nothing(void **state)
{
    (void)state;
    const char *words = "one two three averyveryverylongwordwithoutablank four";
    size_t length = strlen(words), at = 0, lines = 0;
    char joined[128] = "";
    while (at < length) {
        size_t next = 0;
        size_t bytes = ow_letters_fold(words + at, length - at, 2.7, false, 20.0, &next);
        assert_true(bytes > 0 && next > 0);
        assert_true(ow_letters_width(words + at, bytes, 2.7, false) <= 20.0);
        strncat(joined, words + at, next);
        at += next;
        lines++;
    }
    assert_string_equal(joined, words);
    assert_true(lines >= 3);
}

static void the_checker_of_xml_finds_faults(void **state)
{
    (void)state;
    static const char *const WRONG[] = {"<a><b></a></b>", "<a",          "<a>&bad;</a>",         "<a x=1/>",
                                        "<a/><b/>",       "<a>\x01</a>", "<a x=\"1\" x=\"2\"/>", "",
                                        "words",          "<a>"};
    size_t at = 0;
    for (size_t index = 0; index < sizeof WRONG / sizeof WRONG[0]; index++)
        assert_non_null(ow_test_xml_fault(WRONG[index], strlen(WRONG[index]), &at));
    const char *right = "<!DOCTYPE html>\n<a x=\"&lt;\"><b/>w &amp; w</a>\n";
    assert_null(ow_test_xml_fault(right, strlen(right), &at));
}

static ow_status print_once(const ow_context *context, void *data)
{
    ow_text page = ow_text_new(context);
    ow_missing missing = missing_between("1/8-27 NPT male", "M11x1 male washer");
    ow_status status = ow_sheet_layouts_html(&page, data, NULL, 1);
    if (status == OW_OK)
        status = ow_draw_sketch_svg(&page, &missing, OW_NOT_SAID);
    ow_text_done(&page);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    const ow_shipped *self = *state;
    ow_layout *layout = ow_shipped_layout(&self->context, self->catalog,
                                          "layout: short\nfrom: 1/8-27 NPT female\n"
                                          "parts: [tf-2-4, -4 flare37 female swivel]\n");
    ow_test_fail_each(print_once, layout);
    ow_layouts_free(&self->context, layout, 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_checked_layout_has_a_sheet),
        cmocka_unit_test(an_answer_has_a_sheet_whether_found_or_not),
        cmocka_unit_test(several_layouts_are_titled_by_their_machines),
        cmocka_unit_test(a_sheet_tells_what_the_ask_brought_up),
        cmocka_unit_test(a_sheet_says_which_reading_it_holds_for),
        cmocka_unit_test(a_sheet_of_nothing_found_is_not_signed_as_fitted),
        cmocka_unit_test(a_made_part_is_drawn_with_its_limits),
        cmocka_unit_test(a_made_part_has_the_bore_that_is_asked_for_and_a_hexagon_over_its_threads),
        cmocka_unit_test(words_are_escaped_for_xml),
        cmocka_unit_test(words_fold_at_blanks_and_lose_nothing),
        cmocka_unit_test(the_checker_of_xml_finds_faults),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, ow_shipped_load, ow_shipped_unload);
}
