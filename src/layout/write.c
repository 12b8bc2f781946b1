/* SPDX-License-Identifier: MIT */
/* The YAML of a layout, in the shortest form that reads back as the same. */
#include <string.h>

#include "layout/storage.h"
#include "layout/write_asked.h"
#include "layout/write_word.h"

#define LINE_WIDTH_MAX 100

static void write_list(ow_text *text, const ow_layout *layout, size_t first, size_t indent);

/* Several exits: each is keyed by its name, and the list ends. */
static bool forks(const ow_layout_node *node)
{
    return node->part && node->part->end_count > 2;
}

/* A reader of the YAML should not have to work out by which end a tee is entered. */
static bool says_enter(const ow_layout *layout, size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    return forks(node) ||
           node->enter != ow_layout_usual_entry(node->part, ow_layout_parent_end(layout, index));
}

static bool has_seal(const ow_layout_node *node)
{
    for (size_t end = 0; end < node->part->end_count; end++)
        if (node->seal[end])
            return true;
    return false;
}

static bool has_options(const ow_layout *layout, size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    return says_enter(layout, index) || node->length_m >= 0 || has_seal(node);
}

static void write_seals(ow_text *text, const ow_layout_node *node)
{
    const char *gap = "seal: {";
    for (size_t end = 0; end < node->part->end_count; end++) {
        if (!node->seal[end])
            continue;
        ow_text_format(text, "%s%s: ", gap, node->part->end_names[end]);
        ow_write_word(text, node->seal[end]);
        gap = ", ";
    }
    ow_text_char(text, '}');
}

static void write_options(ow_text *text, const ow_layout *layout, size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    const char *gap = "";
    ow_text_char(text, '{');
    if (says_enter(layout, index)) {
        ow_text_format(text, "enter: %s", node->part->end_names[node->enter]);
        gap = ", ";
    }
    if (node->length_m >= 0) {
        ow_text_format(text, "%slength: ", gap);
        ow_quantity_write(text, OW_LENGTH, node->length_m, 6);
        gap = ", ";
    }
    if (has_seal(node)) {
        ow_text_add(text, gap);
        write_seals(text, node);
    }
    ow_text_char(text, '}');
}

/* "id", "id: {length: 650 mm}", "plover-41:oil-in" */
static void write_item(ow_text *text, const ow_layout *layout, size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    if (!node->part) {
        ow_write_given(text, &layout->givens[node->given], 1);
        return;
    }
    ow_write_word(text, node->part->id);
    if (has_options(layout, index)) {
        ow_text_add(text, ": ");
        write_options(text, layout, index);
    }
}

/* What follows in the same list, or OW_NODE_NONE. */
static size_t following(const ow_layout *layout, size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    if (!node->part || node->part->end_count != 2)
        return OW_NODE_NONE;
    return node->exits[1 - node->enter];
}

/* The whole list on one line, if it does not fork and is short enough. */
static bool write_flow(ow_text *text, const ow_layout *layout, size_t first, size_t width)
{
    ow_text line = ow_text_new(text->context);
    bool flat = true;
    for (size_t at = first; at != OW_NODE_NONE && flat; at = following(layout, at)) {
        flat = !forks(&layout->nodes[at]);
        ow_text_add(&line, at == first ? "[" : ", ");
        write_item(&line, layout, at);
    }
    ow_text_char(&line, ']');
    flat = flat && line.length <= width;
    if (flat)
        ow_text_format(text, " %s\n", ow_text_words(&line));
    ow_text_done_into(&line, text);
    return flat;
}

static void write_exits(ow_text *text, const ow_layout *layout, size_t index, size_t indent)
{
    const ow_layout_node *node = &layout->nodes[index];
    for (size_t end = 0; end < node->part->end_count; end++) {
        if (end == node->enter || node->exits[end] == OW_NODE_NONE)
            continue;
        ow_text_repeat(text, ' ', indent);
        ow_text_format(text, "%s:", node->part->end_names[end]);
        if (write_flow(text, layout, node->exits[end], LINE_WIDTH_MAX - indent))
            continue;
        ow_text_char(text, '\n');
        write_list(text, layout, node->exits[end], indent + 2);
    }
}

static void write_list(ow_text *text, const ow_layout *layout, size_t first, size_t indent)
{
    for (size_t at = first; at != OW_NODE_NONE; at = following(layout, at)) {
        ow_text_repeat(text, ' ', indent);
        ow_text_add(text, "- ");
        write_item(text, layout, at);
        ow_text_char(text, '\n');
        if (forks(&layout->nodes[at]))
            write_exits(text, layout, at, indent + 2);
    }
}

void ow_layout_write(ow_text *text, const ow_layout *layout)
{
    ow_text_add(text, "layout: ");
    ow_write_word(text, layout->title ? layout->title : "");
    ow_text_char(text, '\n');
    if (layout->circuit != OW_CIRCUIT_NONE)
        ow_text_format(text, "circuit: %s\n", ow_circuit_word(layout->circuit));
    ow_text_add(text, "from: ");
    ow_write_given(text, &layout->givens[0], 1);
    ow_text_char(text, '\n');
    ow_write_asked(text, layout);
    if (layout->nodes[0].exits[0] == OW_NODE_NONE) {
        ow_text_add(text, "parts: []\n");
        return;
    }
    ow_text_add(text, "parts:\n");
    write_list(text, layout, layout->nodes[0].exits[0], 2);
}
