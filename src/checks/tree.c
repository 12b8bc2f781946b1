/* SPDX-License-Identifier: MIT */
/* The tree itself: no end left open, every port served exactly once. */
#include "checks/checks_internal.h"

static void check_open_ends(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    size_t open = 0;
    for (size_t node = 0; node < layout->node_count; node++) {
        const ow_part *part = layout->nodes[node].part;
        size_t exits = part != NULL ? part->end_count : node == 0 ? 1 : 0;
        for (size_t end = 0; end < exits; end++) {
            char where[OW_WHERE_SIZE];
            char words[OW_END_TEXT_SIZE];
            if ((part != NULL && end == layout->nodes[node].enter) ||
                layout->nodes[node].exits[end] != OW_NODE_NONE)
                continue;
            const ow_end *left = part != NULL ? &part->ends[end] : &layout->givens[0].end;
            ow_checking_find(checking, "open-end", ow_checking_end(checking, node, end, where),
                             "%s is left open", ow_end_name(left, words));
            open++;
        }
    }
    if (open == 0)
        ow_checking_pass(checking, "open-end", "", "no end is left open");
}

void ow_check_tree(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    check_open_ends(checking);
    for (size_t given = 1; given < layout->given_count; given++) {
        size_t times = 0;
        for (size_t node = 1; node < layout->node_count; node++)
            times += layout->nodes[node].part == NULL && layout->nodes[node].given == given;
        if (times != 1)
            ow_checking_find(checking, "unserved", layout->givens[given].name,
                             times == 0 ? "%s is not reached" : "%s is reached more than once",
                             layout->givens[given].name);
        else
            ow_checking_pass(checking, "unserved", layout->givens[given].name, "%s is reached once",
                             layout->givens[given].name);
    }
}
