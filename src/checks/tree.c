/* SPDX-License-Identifier: MIT */
/* The tree itself: no end left open, every port served exactly once. */
#include <string.h>

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

/* Whether two givens are one port of one machine; "snipe-22" and "snipe-22#2" are two of one record. */
static bool is_same_port(const ow_given *a, const ow_given *b)
{
    size_t length = strcspn(a->name, ":");
    return a->port != NULL && a->port == b->port && a->machine == b->machine &&
           strcspn(b->name, ":") == length && memcmp(a->name, b->name, length) == 0;
}

static void check_served(ow_checking *checking, size_t given)
{
    const ow_layout *layout = checking->layout;
    const ow_given *port = &layout->givens[given];
    char words[OW_END_TEXT_SIZE];
    size_t times = 0;
    for (size_t node = 1; node < layout->node_count; node++)
        times += layout->nodes[node].part == NULL && layout->nodes[node].given == given;
    for (size_t other = 0; other < given; other++)
        times += is_same_port(&layout->givens[other], port);
    if (times == 0)
        ow_checking_find(checking, "unserved", port->name, "%s is not reached",
                         ow_checking_port(port, words));
    else if (times > 1 && port->port != NULL)
        ow_checking_find(checking, "unserved", port->name, "%s:%s is reached more than once",
                         port->machine->id, port->port->name);
    else if (times > 1)
        ow_checking_find(checking, "unserved", port->name, "%s is reached more than once",
                         ow_checking_port(port, words));
    else
        ow_checking_pass(checking, "unserved", port->name, "%s is reached once",
                         ow_checking_port(port, words));
}

void ow_check_tree(ow_checking *checking)
{
    check_open_ends(checking);
    for (size_t given = 1; given < checking->layout->given_count; given++)
        check_served(checking, given);
}
