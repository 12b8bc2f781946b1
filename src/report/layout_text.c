/* SPDX-License-Identifier: MIT */
/* A layout drawn in text: parts in walking order, each joint between them with what seals it, branches
 * indented. */
#include <string.h>

#include "oilway/bill.h"
#include "report/look.h"

typedef struct drawing {
    ow_text *text;
    const ow_layout *layout;
    const ow_style *style;
} drawing;

#define PREFIX_SIZE 256

static void line(drawing *draw, const char *prefix, const char *words)
{
    ow_text_add(draw->text, prefix);
    ow_text_add(draw->text, words);
    ow_text_char(draw->text, '\n');
}

static void draw_joint(drawing *draw, size_t child, const char *prefix)
{
    const ow_end *outer = ow_layout_parent_end(draw->layout, child);
    const ow_end *inner = ow_layout_child_end(draw->layout, child);
    const ow_joint_rule *rule = ow_joint_find(outer, inner);
    char words[OW_END_TEXT_SIZE];
    ow_text_add(draw->text, prefix);
    ow_text_format(draw->text, "  %s %s", ow_sign_words(OW_SIGN_JOINT, draw->style),
                   ow_end_name(outer, words));
    ow_text_format(draw->text, " %s %s", ow_sign_words(OW_SIGN_TIMES, draw->style),
                   ow_end_name(inner, words));
    if (rule == NULL) {
        ow_text_add(draw->text, ": ");
        ow_look_paint(draw->text, OW_PAINT_BAD, draw->style, "does not seal");
    } else {
        ow_card card;
        ow_text_format(draw->text, ": %s", rule->seals_by);
        if (ow_layout_joint_card(draw->layout, child, &card) == OW_OK)
            ow_look_card(draw->text, &card);
        if (rule->verdict == OW_TOLERATED)
            ow_look_paint(draw->text, OW_PAINT_WARN, draw->style, " [tolerated, by no standard]");
        ow_text_add(draw->text, " ");
        ow_look_paint(draw->text, OW_PAINT_FAINT, draw->style, "(");
        ow_look_paint(draw->text, OW_PAINT_FAINT, draw->style, rule->source);
        ow_look_paint(draw->text, OW_PAINT_FAINT, draw->style, ")");
    }
    ow_text_char(draw->text, '\n');
}

static void draw_facts(drawing *draw, const ow_layout_node *node)
{
    const ow_part *part = node->part;
    double bore = OW_NOT_SAID;
    for (size_t end = 0; end < part->end_count; end++) {
        if (end == node->enter || node->exits[end] == OW_NODE_NONE)
            continue;
        double through = ow_part_bore_m(part, node->enter, end);
        if (bore < 0.0 || (through >= 0.0 && through < bore))
            bore = through;
    }
    const char *dot = ow_sign_words(OW_SIGN_DOT, draw->style);
    if (bore >= 0.0 && part->end_count > 1) {
        ow_text_format(draw->text, " %s bore ", dot);
        ow_quantity_write(draw->text, OW_LENGTH, bore, 2);
    }
    if (part->orifice_m >= 0.0) {
        ow_text_format(draw->text, " %s hole ", dot);
        ow_quantity_write(draw->text, OW_LENGTH, part->orifice_m, 2);
    }
    double length = node->length_m >= 0.0 ? node->length_m : part->length_m;
    if (length >= 0.0) {
        ow_text_format(draw->text, " %s ", dot);
        ow_quantity_write(draw->text, OW_LENGTH, length, 1);
        ow_text_add(draw->text, " long");
    }
}

static void draw_node(drawing *draw, size_t index, const char *prefix)
{
    const ow_layout_node *node = &draw->layout->nodes[index];
    ow_text name = ow_text_new(draw->text->context);
    ow_layout_node_name(&name, draw->layout, index);
    ow_text_add(draw->text, prefix);
    ow_look_paint(draw->text, OW_PAINT_STRONG, draw->style, ow_text_words(&name));
    ow_text_done_into(&name, draw->text);
    if (node->part != NULL) {
        ow_text_format(draw->text, "  %s", node->part->title);
        draw_facts(draw, node);
    } else {
        const ow_given *given = &draw->layout->givens[node->given];
        char words[OW_END_TEXT_SIZE];
        ow_text_format(draw->text, "  %s%s", ow_end_name(&given->end, words),
                       given->role == OW_ROLE_KEEP ? ", kept" : "");
    }
    ow_text_char(draw->text, '\n');
}

static size_t exits_of(const ow_layout_node *node)
{
    size_t count = 0;
    for (size_t end = 0; end < OW_PART_ENDS; end++)
        count += node->exits[end] != OW_NODE_NONE;
    return count;
}

/* Draws a node and all beyond it. Depth is bounded by the node count of a layout, the prefix by its size. */
static void draw_from(drawing *draw, size_t index, const char *prefix)
{
    for (;;) {
        const ow_layout_node *node = &draw->layout->nodes[index];
        size_t count = exits_of(node);
        draw_node(draw, index, prefix);
        if (count == 0)
            return;
        size_t seen = 0;
        for (size_t end = 0; end < OW_PART_ENDS; end++) {
            size_t child = node->exits[end];
            if (child == OW_NODE_NONE)
                continue;
            seen++;
            if (count == 1) {
                draw_joint(draw, child, prefix);
                index = child;
                break;
            }
            bool last = seen == count;
            char deeper[PREFIX_SIZE];
            size_t length = strlen(prefix);
            const char *down = last ? "   " : draw->style->ascii ? "|  " : "│  ";
            if (length + strlen(down) >= sizeof deeper)
                down = "";
            memcpy(deeper, prefix, length);
            memcpy(deeper + length, down, strlen(down) + 1);
            ow_text_format(draw->text, "%s%s ", prefix,
                           ow_sign_words(last ? OW_SIGN_LAST : OW_SIGN_FORK, draw->style));
            line(draw, "", node->part != NULL ? node->part->end_names[end] : "");
            draw_joint(draw, child, deeper);
            draw_from(draw, child, deeper);
        }
        if (count > 1)
            return;
    }
}

void ow_report_layout_text(ow_text *text, const ow_layout *layout, const ow_style *style)
{
    drawing draw = {text, layout, style};
    if (layout->node_count > 0)
        draw_from(&draw, 0, "  ");
}
