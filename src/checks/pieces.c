/* SPDX-License-Identifier: MIT */
/*
 * The layout cut into pieces: at joints that turn, for closing joints; at hoses, for machines that may not be
 * joined rigidly. A piece is named by its node nearest to the source.
 */
#include "checks/checks_internal.h"

/* The node nearest to the source that hangs together with `node` when the layout is cut through its hoses: a
 * hose is the end of the piece it hangs on. */
static size_t piece_at_hoses(const ow_layout *layout, size_t node)
{
    for (;;) {
        size_t parent = layout->nodes[node].parent;
        if (parent == OW_NODE_NONE ||
            (layout->nodes[parent].part != NULL && ow_part_is_hose(layout->nodes[parent].part)))
            return node;
        node = parent;
    }
}

static void check_closing(ow_checking *checking, size_t first, size_t second, const ow_given *first_port,
                          const ow_given *second_port)
{
    char first_words[OW_END_TEXT_SIZE], second_words[OW_END_TEXT_SIZE];
    const char *first_name = ow_checking_port(first_port, first_words);
    const char *second_name = ow_checking_port(second_port, second_words);
    const ow_layout *layout = checking->layout;
    if (ow_checking_piece(layout, first) == ow_checking_piece(layout, second))
        ow_checking_find(checking, "closing-joint", second_port->name,
                         "nothing between %s and %s turns or clamps freely, so the last joint cannot be made",
                         first_name, second_name);
    else
        ow_checking_pass(checking, "closing-joint", second_port->name,
                         "between %s and %s there is a joint that can be made last", first_name, second_name);
}

static bool is_fixed(const ow_given *given)
{
    return given->role != OW_ROLE_KEEP;
}

static void check_pair(ow_checking *checking, size_t a, size_t b)
{
    const ow_layout *layout = checking->layout;
    const ow_given *first = &layout->givens[a];
    const ow_given *second = &layout->givens[b];
    size_t first_node = a == 0 ? 0 : ow_checking_port_node(checking, a);
    size_t second_node = ow_checking_port_node(checking, b);
    if (first_node == OW_NODE_NONE || second_node == OW_NODE_NONE)
        return;
    if (checking->limits.closing)
        check_closing(checking, first_node, second_node, first, second);
    bool flexible = checking->limits.flexible == OW_YES || checking->limits.flexible == OW_SOME;
    if (flexible && a > 0 && first->machine != NULL && second->machine != NULL &&
        piece_at_hoses(layout, first_node) == piece_at_hoses(layout, second_node))
        ow_checking_find(checking, "rigid-pair", second->name, "%s and %s are joined rigidly behind one hose",
                         first->name, second->name);
}

void ow_check_pieces(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    for (size_t a = 0; a < layout->given_count; a++) {
        for (size_t b = a + 1; b < layout->given_count; b++) {
            if (is_fixed(&layout->givens[a]) && is_fixed(&layout->givens[b]))
                check_pair(checking, a, b);
        }
    }
}
