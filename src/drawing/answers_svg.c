/* SPDX-License-Identifier: MIT */
/* Answers drawn: each layout, or in words what is missing. */
#include "drawing/layout_svg.h"
#include "drawing/sketch.h"
#include "oilway/draw.h"

/* In words how far it got, then the made parts that would complete a layout, the plainest drawn. */
static ow_status put_missing(ow_sheet *sheet, const ow_answer *answer)
{
    ow_text words = ow_text_new(sheet->canvas.body.context);
    char buffer[OW_END_TEXT_SIZE];
    ow_text_add(&words, "No layout: the catalogue does not join these ports within the limits");
    ow_sheet_heading(sheet, &words);
    if (answer->reach.words != NULL)
        ow_sheet_words(sheet, 2.0, 2.8, false, answer->reach.words);
    for (size_t index = 0; index < answer->missing_count; index++) {
        const ow_missing *missing = &answer->missing[index];
        words.length = 0;
        ow_text_format(&words, "One made part would do: %s", ow_end_name(&missing->from, buffer));
        if (!missing->is_plug)
            ow_text_format(&words, " to %s", ow_end_name(&missing->to, buffer));
        ow_text_format(&words, ". %s", missing->why);
        ow_sheet_words(sheet, 2.0, 2.8, false, ow_text_words(&words));
        ow_text_format(&sheet->description, "%s ", ow_text_words(&words));
    }
    ow_text_done_into(&words, &sheet->canvas.body);
    if (answer->missing_count == 0)
        return ow_canvas_status(&sheet->canvas);
    return ow_sheet_put_sketch(sheet, &answer->missing[0], answer->ask->limits.least_bore_m);
}

static ow_status put_answer(ow_sheet *sheet, const ow_answer *answer, bool bare)
{
    const ow_layout_look look = {.bare = bare, .alone = answer->stack_count == 1 && answer->reading == NULL};
    ow_status status = OW_OK;
    if (answer->reading != NULL) {
        ow_sheet_words(sheet, 2.0, 3.2, true, "Read as:");
        ow_sheet_words(sheet, 6.0, 3.2, false, answer->reading);
    }
    for (size_t index = 0; index < answer->stack_count && status == OW_OK; index++)
        status =
            ow_sheet_put_layout(sheet, &answer->stacks[index].layout, &answer->stacks[index].findings, &look);
    return answer->stack_count == 0 ? put_missing(sheet, answer) : status;
}

ow_status ow_draw_answers_svg(ow_text *text, const ow_answers *answers, const ow_draw_options *options)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    ow_status status = OW_OK;
    for (size_t index = 0; index < answers->count && status == OW_OK; index++)
        status = put_answer(&sheet, &answers->items[index], options != NULL && options->bare);
    return ow_sheet_finish(&sheet, status, text);
}
