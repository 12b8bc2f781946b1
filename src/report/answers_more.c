/* SPDX-License-Identifier: MIT */
/* The answers of `stack` for other programs: YAML that check reads, CSV for a sheet, DOT for a graph. */
#include <string.h>

#include "oilway/joint.h"
#include "report/csv.h"
#include "report/look.h"

void ow_report_answers_yaml(ow_text *text, const ow_answers *answers)
{
    size_t written = 0;
    for (size_t index = 0; index < answers->count; index++) {
        for (size_t stack = 0; stack < answers->items[index].stack_count; stack++) {
            if (written++ > 0)
                ow_text_add(text, "---\n");
            ow_layout_write(text, &answers->items[index].stacks[stack].layout);
        }
    }
}

static void write_csv_rows(ow_text *text, const ow_layout *layout, size_t stack, const char *reading)
{
    for (size_t index = 1; index < layout->node_count; index++) {
        const ow_layout_node *node = &layout->nodes[index];
        char words[OW_END_TEXT_SIZE];
        const ow_end *outer = ow_layout_parent_end(layout, index);
        const ow_end *inner = ow_layout_child_end(layout, index);
        const ow_joint_rule *rule = ow_joint_find(outer, inner);
        ow_text name = ow_text_new(text->context);
        ow_layout_node_name(&name, layout, index);
        ow_csv_words(text, reading, true);
        ow_text_format(text, ",%zu,%zu", stack, index);
        ow_csv_words(text, ow_text_words(&name), false);
        ow_csv_words(text, node->part != NULL ? ow_kind_word(node->part->kind) : "port", false);
        ow_csv_words(text, node->part != NULL ? node->part->title : "", false);
        ow_csv_words(text, ow_end_name(outer, words), false);
        ow_csv_words(text, ow_end_name(inner, words), false);
        ow_csv_words(text, rule != NULL ? rule->seals_by : "does not seal", false);
        ow_text_char(text, ',');
        if (node->part != NULL && node->part->has_price)
            ow_look_price(text, node->part->price_cents);
        ow_text_char(text, '\n');
        ow_text_done_into(&name, text);
    }
}

void ow_report_answers_csv(ow_text *text, const ow_answers *answers)
{
    ow_text_add(text, "reading,stack,place,id,kind,title,outer_end,own_end,seals_by,price\n");
    for (size_t index = 0; index < answers->count; index++) {
        const ow_answer *answer = &answers->items[index];
        for (size_t stack = 0; stack < answer->stack_count; stack++)
            write_csv_rows(text, &answer->stacks[stack].layout, stack + 1,
                           answer->reading != NULL ? answer->reading : "");
    }
}

/* Words in a DOT string: quotes and backslashes are escaped. */
static void write_dot_words(ow_text *text, const char *words)
{
    for (const char *at = words; *at != '\0'; at++) {
        if (*at == '"' || *at == '\\')
            ow_text_char(text, '\\');
        ow_text_char(text, *at);
    }
}

static void write_dot_layout(ow_text *text, const ow_layout *layout, size_t graph)
{
    ow_text_format(text, "digraph stack%zu {\n  rankdir=LR;\n  node [shape=box];\n", graph);
    for (size_t index = 0; index < layout->node_count; index++) {
        ow_text name = ow_text_new(text->context);
        ow_layout_node_name(&name, layout, index);
        ow_text_format(text, "  n%zu [label=\"", index);
        write_dot_words(text, ow_text_words(&name));
        ow_text_format(text, "\"%s];\n", layout->nodes[index].part == NULL ? ", shape=ellipse" : "");
        ow_text_done_into(&name, text);
    }
    for (size_t index = 1; index < layout->node_count; index++) {
        char words[OW_END_TEXT_SIZE];
        ow_text_format(text, "  n%zu -> n%zu [label=\"", layout->nodes[index].parent, index);
        write_dot_words(text, ow_end_name(ow_layout_parent_end(layout, index), words));
        ow_text_add(text, "\\n");
        write_dot_words(text, ow_end_name(ow_layout_child_end(layout, index), words));
        ow_text_add(text, "\"];\n");
    }
    ow_text_add(text, "}\n");
}

void ow_report_answers_dot(ow_text *text, const ow_answers *answers)
{
    size_t graph = 0;
    for (size_t index = 0; index < answers->count; index++) {
        for (size_t stack = 0; stack < answers->items[index].stack_count; stack++)
            write_dot_layout(text, &answers->items[index].stacks[stack].layout, ++graph);
    }
}
