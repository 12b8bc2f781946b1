/* SPDX-License-Identifier: MIT */
/* A layout drawn in text: parts in walking order, each joint between them with what seals it, branches
 * indented. */
#include <string.h>

#include "oilway/bill.h"
#include "oilway/report_joint.h"
#include "report/bores.h"
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

/* What seals a joint and how it is tightened, each with its own source behind it. */
static void add_seal(drawing *draw, size_t child, const ow_joint_rule *rule, ow_text *words)
{
    ow_card card;
    if (rule == NULL) {
        ow_text_add(words, "does not seal");
        return;
    }
    ow_text_add(words, rule->seals_by);
    if (rule->verdict == OW_TOLERATED)
        ow_text_add(words, " [tolerated, by no standard]");
    ow_text_format(words, " (%s)", rule->source);
    if (ow_layout_joint_card(draw->layout, child, &card) == OW_OK)
        ow_look_card(words, &card);
}

/* Appends words, broken at blanks so that no line is wider than the style; each further line begins as the
 * tree does there. `column` is where the line stands. */
static void fold_behind(drawing *draw, const char *prefix, size_t column, const char *words, ow_text *folded)
{
    size_t start = ow_look_width(prefix) + 5;
    for (const char *at = words; *at != '\0';) {
        size_t length = strcspn(at, " ");
        ow_text word = ow_text_new(draw->text->context);
        ow_text_bytes(&word, at, length);
        size_t width = ow_look_width(ow_text_words(&word));
        if (column + 1 + width > draw->style->width && column > start) {
            ow_text_format(folded, "\n%s     ", prefix);
            column = start;
        }
        ow_text_format(folded, " %s", ow_text_words(&word));
        folded->failed = folded->failed || word.failed;
        ow_text_done(&word);
        column += 1 + width;
        at += length;
        at += strspn(at, " ");
    }
}

static void draw_joint(drawing *draw, size_t child, const char *prefix)
{
    const ow_end *outer = ow_layout_parent_end(draw->layout, child);
    const ow_end *inner = ow_layout_child_end(draw->layout, child);
    const ow_joint_rule *rule = ow_joint_find(outer, inner);
    char name[OW_END_TEXT_SIZE];
    ow_text ends = ow_text_new(draw->text->context);
    ow_text seal = ow_text_new(draw->text->context);
    ow_text folded = ow_text_new(draw->text->context);
    ow_text_format(&ends, "%s  %s %s", prefix, ow_sign_words(OW_SIGN_JOINT, draw->style),
                   ow_end_name(outer, name));
    ow_text_format(&ends, " %s %s:", ow_sign_words(OW_SIGN_TIMES, draw->style), ow_end_name(inner, name));
    add_seal(draw, child, rule, &seal);
    fold_behind(draw, prefix, ow_look_width(ow_text_words(&ends)), ow_text_words(&seal), &folded);
    ow_text_add(draw->text, ow_text_words(&ends));
    if (rule == NULL)
        ow_look_paint(draw->text, OW_PAINT_BAD, draw->style, ow_text_words(&folded));
    else if (rule->verdict == OW_TOLERATED)
        ow_look_paint(draw->text, OW_PAINT_WARN, draw->style, ow_text_words(&folded));
    else
        ow_text_add(draw->text, ow_text_words(&folded));
    ow_text_char(draw->text, '\n');
    draw->text->failed = draw->text->failed || ends.failed || seal.failed || folded.failed;
    ow_text_done(&ends);
    ow_text_done(&seal);
    ow_text_done(&folded);
}

/* The part's title, least bore, hole and length. */
static void add_facts(const drawing *draw, const ow_layout_node *node, ow_text *words)
{
    const ow_part *part = node->part;
    double bore = OW_NOT_SAID;
    unsigned used = 1u << node->enter;
    for (size_t end = 0; end < part->end_count; end++) {
        if (end == node->enter || node->exits[end] == OW_NODE_NONE)
            continue;
        used |= 1u << end;
        double through = ow_part_bore_m(part, node->enter, end);
        if (bore < 0.0 || (through >= 0.0 && through < bore))
            bore = through;
    }
    const char *dot = ow_sign_words(OW_SIGN_DOT, draw->style);
    ow_text_add(words, part->title);
    if (bore >= 0.0 && part->end_count > 1) {
        ow_nominal nominal;
        ow_text_format(words, " %s ", dot);
        ow_bores_write(words, bore, ow_bores_nominal(part, used, &nominal) ? &nominal : NULL);
    }
    if (part->orifice_m >= 0.0) {
        ow_text_format(words, " %s hole ", dot);
        ow_quantity_write(words, OW_LENGTH, part->orifice_m, 2);
    }
    double length = node->length_m >= 0.0 ? node->length_m : part->length_m;
    if (length >= 0.0) {
        ow_text_format(words, " %s ", dot);
        ow_quantity_write(words, OW_LENGTH, length, 1);
        ow_text_add(words, " long");
    }
}

static void draw_node(drawing *draw, size_t index, const char *prefix)
{
    const ow_layout_node *node = &draw->layout->nodes[index];
    ow_text name = ow_text_new(draw->text->context);
    ow_text facts = ow_text_new(draw->text->context);
    ow_layout_node_name(&name, draw->layout, index);
    ow_text_add(draw->text, prefix);
    ow_look_paint(draw->text, OW_PAINT_STRONG, draw->style, ow_text_words(&name));
    size_t column = ow_look_width(prefix) + ow_look_width(ow_text_words(&name)) + 1;
    ow_text_done_into(&name, draw->text);
    if (node->part != NULL) {
        add_facts(draw, node, &facts);
    } else {
        const ow_given *given = &draw->layout->givens[node->given];
        char words[OW_END_TEXT_SIZE];
        ow_text_format(&facts, "%s%s", ow_end_name(&given->end, words),
                       given->role == OW_ROLE_KEEP ? ", kept" : "");
    }
    ow_text_char(draw->text, ' ');
    fold_behind(draw, prefix, column, ow_text_words(&facts), draw->text);
    ow_text_done_into(&facts, draw->text);
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
    if (style->cards) {
        ow_report_layout_cards_text(text, layout, style);
        ow_text_char(text, '\n');
    }
}
