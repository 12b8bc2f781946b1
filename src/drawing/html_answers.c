/* SPDX-License-Identifier: MIT */
/* Sheets of answers: one of the layouts found, with what the ask itself brought up; or what is missing. */
#include "drawing/html.h"
#include "drawing/sketch.h"

/* A sheet for one reading of several says so before all else: bought for another, nothing of it fits. */
void ow_html_reading(ow_text *text, const char *reading, const char *decide)
{
    if (reading == NULL)
        return;
    ow_text words = ow_text_new(text->context);
    ow_text_format(&words, "Only if it is %s.", reading);
    if (decide != NULL)
        ow_text_format(&words, " What decides: %s.", decide);
    ow_html_element(text, "p class=\"reading\"", ow_text_words(&words));
    ow_text_done_into(&words, text);
}

/* ---- found ------------------------------------------------------------------------------------- */

static ow_status write_stack(ow_text *text, const ow_answers *answers, const ow_answer *answer,
                             const ow_answer_stack *stack, const ow_findings *all)
{
    const ow_layout *layout = &stack->layout;
    ow_bill bill;
    ow_status status = ow_bill_new(text->context, layout, 1, &bill);
    if (status != OW_OK)
        return status;
    ow_text title = ow_text_new(text->context), verdict = ow_text_new(text->context);
    ow_html_layout_title(&title, layout);
    bool no = ow_html_verdict(&verdict, &all, 1, bill.part_count);
    const ow_counter_sheet sheet = {.title = ow_text_words(&title),
                                    .verdict = ow_text_words(&verdict),
                                    .no = no,
                                    .layouts = &layout,
                                    .findings = &all,
                                    .layout_count = 1,
                                    .bill = &bill,
                                    .reading = answer->reading,
                                    .decide = answers->decide};
    status = ow_html_sheet(text, &sheet);
    ow_text_done_into(&title, text);
    ow_text_done_into(&verdict, text);
    ow_bill_done(&bill);
    return status == OW_OK ? ow_text_status(text) : status;
}

ow_status ow_sheet_stack_html(ow_text *text, const ow_answers *answers, size_t reading, size_t stack)
{
    if (reading >= answers->count)
        return OW_RANGE;
    const ow_answer *answer = &answers->items[reading];
    if (stack >= answer->stack_count)
        return OW_RANGE;
    ow_findings all = ow_findings_new(text->context);
    ow_status status = ow_findings_join(&all, &answer->stacks[stack].findings, NULL);
    if (status == OW_OK)
        status = ow_findings_join(&all, &answer->findings, NULL);
    if (status == OW_OK)
        status = write_stack(text, answers, answer, &answer->stacks[stack], &all);
    ow_findings_done(&all);
    return status;
}

/* ---- not found --------------------------------------------------------------------------------- */

static void write_made(ow_text *text, const ow_answer *answer)
{
    if (answer->missing_count == 0) {
        ow_html_element(text, "p", "Not even one made part would complete it.");
        return;
    }
    ow_html_element(text, "h2", "One made part would complete it");
    ow_text_add(text, "<ol>\n");
    for (size_t index = 0; index < answer->missing_count; index++) {
        const ow_missing *missing = &answer->missing[index];
        char from[OW_END_TEXT_SIZE], to[OW_END_TEXT_SIZE];
        ow_text words = ow_text_new(text->context);
        ow_text_format(&words, "%s to %s: %s", ow_end_name(&missing->from, from),
                       missing->is_plug ? "nothing, a plug" : ow_end_name(&missing->to, to),
                       missing->why != NULL ? missing->why : "");
        ow_html_element(text, "li", ow_text_words(&words));
        ow_text_done_into(&words, text);
    }
    ow_text_add(text, "</ol>\n");
}

static void write_lifted(ow_text *text, const ow_answer *answer)
{
    if (answer->lifted_count == 0)
        return;
    ow_html_element(text, "h2", "Or without one of the limits");
    ow_text_add(text, "<ul>\n");
    for (size_t index = 0; index < answer->lifted_count; index++) {
        ow_text words = ow_text_new(text->context);
        ow_text_format(&words, "without %s: %s", answer->lifted[index].limit, answer->lifted[index].words);
        ow_html_element(text, "li", ow_text_words(&words));
        ow_text_done_into(&words, text);
    }
    ow_text_add(text, "</ul>\n");
}

static ow_status write_sketch(ow_text *text, const ow_answer *answer)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    ow_text_add(text, "<figure>\n");
    ow_status status = ow_sheet_finish(
        &sheet, ow_sheet_put_sketch(&sheet, &answer->missing[0], answer->ask->limits.least_bore_m), text);
    ow_text_add(text, "</figure>\n");
    return status;
}

static ow_status write_one_none(ow_text *text, const ow_answer *answer)
{
    ow_html_reading(text, answer->reading, NULL);
    if (answer->reach.words != NULL)
        ow_html_element(text, "p", answer->reach.words);
    write_lifted(text, answer);
    write_made(text, answer);
    ow_status status = answer->missing_count > 0 ? write_sketch(text, answer) : OW_OK;
    if (answer->findings.count > 0)
        ow_html_findings(text, &answer->findings);
    return status;
}

static ow_status write_none(ow_text *text, const ow_answers *answers)
{
    const char *title = answers->count > 0 && answers->items[0].ask->title != NULL
                            ? answers->items[0].ask->title
                            : "What was asked for";
    bool made = false;
    ow_status status = OW_OK;
    ow_html_begin(text, title, "");
    ow_text_add(text, "<header>\n<div class=\"head\">\n");
    ow_html_element(text, "h1", title);
    ow_html_element(text, "p class=\"verdict no\"", "No layout: the catalogue does not join these.");
    ow_text_add(text, "</div>\n</header>\n");
    for (size_t index = 0; index < answers->count && status == OW_OK; index++) {
        made = made || answers->items[index].missing_count > 0;
        status = write_one_none(text, &answers->items[index]);
    }
    ow_html_cautions(text, OW_CIRCUIT_NONE);
    if (made) /* nothing is fitted yet */
        ow_html_signature(text, "Drawing checked", "Part proved");
    ow_html_end(text);
    return status == OW_OK ? ow_text_status(text) : status;
}

ow_status ow_sheet_answer_html(ow_text *text, const ow_answers *answers)
{
    for (size_t index = 0; index < answers->count; index++)
        if (answers->items[index].stack_count > 0)
            return ow_sheet_stack_html(text, answers, index, 0);
    return write_none(text, answers);
}
