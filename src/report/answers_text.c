/* SPDX-License-Identifier: MIT */
/* The answers of `stack` for a person: the drawing, why each part is there, findings, what is missing. */
#include <string.h>

#include "report/look.h"

static void write_count(ow_text *text, size_t count, const char *one, const char *many)
{
    ow_text_format(text, "%zu %s", count, count == 1 ? one : many);
}

static void write_head(ow_text *text, const ow_answer *answer, size_t index, const ow_style *style)
{
    const ow_layout *layout = &answer->stacks[index].layout;
    const char *dot = ow_sign_words(OW_SIGN_DOT, style);
    ow_text head = ow_text_new(text->context);
    bool complete = true;
    int64_t cents = ow_layout_price_cents(layout, &complete);
    double bore = ow_layout_narrowest_bore_m(layout);
    if (answer->stack_count > 1)
        ow_text_format(&head, "%zu. ", index + 1);
    write_count(&head, ow_layout_part_count(layout), "part", "parts");
    ow_text_add(&head, ", ");
    write_count(&head, ow_layout_joint_count(layout), "joint", "joints");
    ow_look_paint(text, OW_PAINT_STRONG, style, ow_text_words(&head));
    ow_text_done_into(&head, text);
    ow_text_format(text, " %s price ", dot);
    ow_look_price(text, cents);
    if (!complete)
        ow_text_add(text, " and parts without a price");
    if (bore >= 0.0) {
        ow_text_format(text, " %s narrowest bore ", dot);
        ow_quantity_write(text, OW_LENGTH, bore, 2);
    }
    if (index == 0)
        ow_text_format(text, " %s no layout has fewer parts", dot);
    ow_text_char(text, '\n');
}

static void write_why(ow_text *text, const ow_layout *layout, const ow_style *style)
{
    ow_text_add(text, "  why each part:\n");
    for (size_t node = 1; node < layout->node_count; node++) {
        if (layout->nodes[node].part == NULL)
            continue;
        ow_text line = ow_text_new(text->context);
        ow_layout_node_name(&line, layout, node);
        ow_text_add(&line, ": ");
        ow_layout_why(&line, layout, node);
        ow_text_add(text, "    ");
        ow_look_fold(text, style, 4, 8, ow_text_words(&line));
        ow_text_char(text, '\n');
        ow_text_done_into(&line, text);
    }
}

static void write_stacks(ow_text *text, const ow_answer *answer, const ow_style *style)
{
    for (size_t index = 0; index < answer->stack_count; index++) {
        const ow_answer_stack *stack = &answer->stacks[index];
        if (index > 0)
            ow_text_char(text, '\n');
        write_head(text, answer, index, style);
        ow_report_layout_text(text, &stack->layout, style);
        if (ow_layout_part_count(&stack->layout) > 0)
            write_why(text, &stack->layout, style);
        ow_report_findings_text(text, &stack->findings, style);
    }
    /* Of one layout that was asked for, it goes without saying that there may be more. */
    if (answer->cut != NULL && (answer->stack_count > 1 || answer->is_short)) {
        ow_text_add(text, "The list ends here: ");
        ow_look_fold(text, style, 20, 4, answer->cut);
        ow_text_char(text, '\n');
    }
}

/* Which limit it is that fails, where lifting it alone is enough. */
static void write_lifted(ow_text *text, const ow_answer *answer, const ow_style *style)
{
    for (size_t index = 0; index < answer->lifted_count; index++) {
        ow_text_add(text, index == 0 ? "  It fails at a limit: " : "  or at: ");
        ow_look_paint(text, OW_PAINT_STRONG, style, answer->lifted[index].limit);
        ow_text_format(text, "\n    without it there is one: %s\n", answer->lifted[index].words);
    }
}

static void write_none(ow_text *text, const ow_answer *answer, const ow_style *style)
{
    ow_look_paint(text, OW_PAINT_BAD, style, "There is no such layout");
    ow_text_add(text, " with the parts of this catalogue, however many are used.\n");
    if (answer->reach.words != NULL) {
        ow_text_add(text, "  ");
        ow_look_fold(text, style, 2, 2, answer->reach.words);
        ow_text_char(text, '\n');
    }
    write_lifted(text, answer, style);
    if (answer->missing_count == 0)
        ow_text_add(text, "  Not even one made part would complete it.\n");
    for (size_t index = 0; index < answer->missing_count; index++) {
        const ow_missing *missing = &answer->missing[index];
        char from[OW_END_TEXT_SIZE];
        char to[OW_END_TEXT_SIZE];
        ow_text_add(text, index == 0 ? "  One made part would complete it: " : "  or: ");
        ow_text line = ow_text_new(text->context);
        ow_text_format(&line, "%s to %s", ow_end_name(&missing->from, from),
                       missing->is_plug ? "nothing (a plug)" : ow_end_name(&missing->to, to));
        ow_look_paint(text, OW_PAINT_STRONG, style, ow_text_words(&line));
        ow_text_done_into(&line, text);
        ow_text_add(text, "\n    ");
        ow_look_fold(text, style, 4, 4, missing->why != NULL ? missing->why : "");
        ow_text_char(text, '\n');
    }
}

/* A given port: by its name and end, a bare END by itself. */
static void write_given(ow_text *text, const ow_given *given)
{
    char words[OW_END_TEXT_SIZE];
    ow_end_name(&given->end, words);
    if (given->machine != NULL || given->fixture != NULL)
        ow_text_format(text, "%s (%s)", given->name, words);
    else
        ow_text_add(text, words);
}

static void write_ask(ow_text *text, const ow_answer *answer)
{
    const ow_ask *ask = answer->ask;
    ow_text_add(text, "from ");
    for (size_t index = 0; index < ask->given_count; index++) {
        if (index > 0)
            ow_text_add(text, ask->givens[index].role == OW_ROLE_KEEP ? ", keeping " : " to ");
        write_given(text, &ask->givens[index]);
    }
    ow_text_char(text, '\n');
}

static void write_explanation(ow_text *text, const ow_answer *answer, const ow_style *style)
{
    if (!answer->explained || answer->explanation.words == NULL)
        return;
    ow_look_fold(text, style, 0, 2, answer->explanation.words);
    ow_text_char(text, '\n');
}

void ow_report_answers_text(ow_text *text, const ow_answers *answers, const ow_style *style)
{
    for (size_t index = 0; index < answers->count; index++) {
        const ow_answer *answer = &answers->items[index];
        if (index > 0)
            ow_text_char(text, '\n');
        if (answer->reading != NULL) {
            ow_text_add(text, "Read as ");
            ow_look_paint(text, OW_PAINT_STRONG, style, answer->reading);
            ow_text_add(text, ": ");
        }
        write_ask(text, answer);
        if (answer->found)
            write_stacks(text, answer, style);
        else
            write_none(text, answer, style);
        ow_report_findings_text(text, &answer->findings, style);
        write_explanation(text, answer, style);
    }
    if (answers->decide != NULL) {
        ow_text_add(text, "\nWhat decides between the readings: ");
        ow_look_fold(text, style, 35, 2, answers->decide);
        ow_text_char(text, '\n');
    }
}
