/* SPDX-License-Identifier: MIT */
/* Joints that are wrong because two things were exchanged: what hangs on two exits, or the ends of a part. */
#include <stdio.h>

#include "checks/checks_internal.h"

static bool seals(const ow_checking *checking, const ow_end *a, const ow_end *b)
{
    const ow_joint_rule *rule = ow_joint_find(a, b);
    return rule != NULL && (rule->verdict == OW_SEALS || checking->limits.tolerate);
}

/* Another exit of the parent, with which to exchange what hangs here, so that both joints seal. */
static bool mend_by_exits(const ow_checking *checking, size_t child, char *mend, size_t size)
{
    const ow_layout *layout = checking->layout;
    size_t parent = layout->nodes[child].parent, at = layout->nodes[child].parent_end;
    const ow_part *part = layout->nodes[parent].part;
    for (size_t end = 0; part != NULL && end < part->end_count; end++) {
        size_t other = layout->nodes[parent].exits[end];
        if (end == at || other == OW_NODE_NONE ||
            !seals(checking, &part->ends[end], ow_layout_child_end(layout, child)) ||
            !seals(checking, &part->ends[at], ow_layout_child_end(layout, other)))
            continue;
        snprintf(mend, size, "Exchange what hangs on %.20s and on %.20s: then both joints seal.",
                 part->end_names[at], part->end_names[end]);
        return true;
    }
    return false;
}

/* The ends that a part of two ends joins, entered by one or the other. */
static bool seals_entered_by(const ow_checking *checking, size_t node, size_t enter)
{
    const ow_layout *layout = checking->layout;
    const ow_part *part = layout->nodes[node].part;
    size_t next = layout->nodes[node].exits[1 - layout->nodes[node].enter];
    return seals(checking, ow_layout_parent_end(layout, node), &part->ends[enter]) &&
           (next == OW_NODE_NONE ||
            seals(checking, &part->ends[1 - enter], ow_layout_child_end(layout, next)));
}

static bool mend_by_turning(const ow_checking *checking, size_t node, char *mend, size_t size)
{
    const ow_layout_node *turned = &checking->layout->nodes[node];
    if (node == 0 || turned->part == NULL || turned->part->end_count != 2 ||
        !seals_entered_by(checking, node, 1 - turned->enter))
        return false;
    char name[OW_WHERE_SIZE];
    ow_checking_node(checking, node, name);
    snprintf(mend, size, "Turn %.80s round, {enter: %.20s}: then it seals at both ends.", name,
             turned->part->end_names[1 - turned->enter]);
    return true;
}

bool ow_check_exchanged(const ow_checking *checking, size_t child, char *mend, size_t size)
{
    return mend_by_exits(checking, child, mend, size) || mend_by_turning(checking, child, mend, size) ||
           mend_by_turning(checking, checking->layout->nodes[child].parent, mend, size);
}
