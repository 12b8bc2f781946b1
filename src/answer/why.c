/* SPDX-License-Identifier: MIT */
/* Why a part stands where it stands: the ports that its exits lead to, the limit it meets, the change it
 * makes. */
#include <string.h>

#include "oilway/answer.h"
#include "oilway/joint.h"

static size_t serving_exits(const ow_layout *layout, const ow_layout_node *node)
{
    size_t count = 0;
    for (size_t end = 0; end < node->part->end_count; end++)
        count += node->exits[end] != OW_NODE_NONE && ow_layout_leads_to_port(layout, node->exits[end]);
    return count;
}

/* A port of a machine or a switch by its name, a bare END by itself. */
static void write_port(ow_text *text, const ow_given *given)
{
    char words[OW_END_TEXT_SIZE];
    bool named = given->machine != NULL || given->fixture != NULL;
    ow_text_add(text, named ? given->name : ow_end_name(&given->end, words));
}

/* Appends the names of the ports at or beyond a node, with " and " between. */
static void write_ports(ow_text *text, const ow_layout *layout, size_t node)
{
    size_t written = 0;
    for (size_t port = 1; port < layout->node_count; port++) {
        if (layout->nodes[port].part != NULL)
            continue;
        for (size_t at = port; at != OW_NODE_NONE; at = layout->nodes[at].parent) {
            if (at != node)
                continue;
            ow_text_add(text, written++ > 0 ? " and " : "");
            write_port(text, &layout->givens[layout->nodes[port].given]);
        }
    }
}

static void write_fork(ow_text *text, const ow_layout *layout, const ow_layout_node *node)
{
    size_t written = 0;
    ow_text_add(text, "branches: ");
    for (size_t end = 0; end < node->part->end_count; end++) {
        if (node->exits[end] == OW_NODE_NONE || !ow_layout_leads_to_port(layout, node->exits[end]))
            continue;
        ow_text_format(text, "%s%s to ", written++ > 0 ? ", " : "", node->part->end_names[end]);
        write_ports(text, layout, node->exits[end]);
    }
}

/* What changes between the entry and the exit that leads on. */
static void write_change(ow_text *text, const ow_layout *layout, size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    char from[OW_END_TEXT_SIZE];
    char to[OW_END_TEXT_SIZE];
    for (size_t end = 0; end < node->part->end_count; end++) {
        size_t child = node->exits[end];
        if (child == OW_NODE_NONE || !ow_layout_leads_to_port(layout, child))
            continue;
        const ow_end *outer = ow_layout_parent_end(layout, index);
        const ow_end *inner = ow_layout_child_end(layout, child);
        if (ow_joint_turns(&node->part->ends[end], inner) &&
            !ow_joint_turns(outer, &node->part->ends[node->enter]))
            ow_text_add(text, "brings a joint that can be made last; ");
        ow_text_format(text, "leads from %s to %s", ow_end_name(outer, from), ow_end_name(inner, to));
        return;
    }
    ow_text_add(text, "closes an open end");
}

void ow_layout_why(ow_text *text, const ow_layout *layout, size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    if (node->part == NULL)
        return;
    if (!ow_layout_leads_to_port(layout, index)) {
        ow_text_add(text, "closes an open end");
    } else if (serving_exits(layout, node) > 1) {
        write_fork(text, layout, node);
    } else if (ow_part_is_hose(node->part)) {
        ow_text_add(text, "the flexible piece on the way to ");
        write_ports(text, layout, index);
    } else if (node->part->kind == OW_RESTRICTOR) {
        ow_text_add(text, "holds the flow back before ");
        write_ports(text, layout, index);
    } else {
        write_change(text, layout, index);
    }
}
