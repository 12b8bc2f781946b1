/* SPDX-License-Identifier: MIT */
/* What lies on the path from the source to each port: bore, hoses, restrictors. */
#include "checks/checks_internal.h"

/* What a walk from a port back to the source meets. */
typedef struct path_sum {
    size_t hoses, restrictors;
    size_t last_hose, last_restrictor; /* nodes, nearest to the source */
} path_sum;

static path_sum sum_path(const ow_layout *layout, size_t port_node)
{
    path_sum sum = {0, 0, OW_NODE_NONE, OW_NODE_NONE};
    for (size_t node = layout->nodes[port_node].parent; node != OW_NODE_NONE;
         node = layout->nodes[node].parent) {
        const ow_part *part = layout->nodes[node].part;
        if (part == NULL)
            continue;
        if (ow_part_is_hose(part)) {
            sum.hoses++;
            sum.last_hose = node;
        }
        if (part->kind == OW_RESTRICTOR) {
            sum.restrictors++;
            sum.last_restrictor = node;
        }
    }
    return sum;
}

static void check_bore(ow_checking *checking, size_t port_node, const char *port)
{
    const ow_layout *layout = checking->layout;
    double wanted = checking->limits.least_bore_m;
    if (wanted < 0.0)
        return;
    bool passed = true;
    for (size_t child = port_node; layout->nodes[child].parent != OW_NODE_NONE;
         child = layout->nodes[child].parent) {
        size_t node = layout->nodes[child].parent;
        const ow_part *part = layout->nodes[node].part;
        char where[OW_WHERE_SIZE];
        if (part == NULL)
            continue;
        double bore = ow_part_bore_m(part, layout->nodes[node].enter, layout->nodes[child].parent_end);
        if (bore >= wanted)
            continue;
        passed = false;
        ow_checking_node(checking, node, where);
        if (bore < 0.0)
            ow_checking_find(checking, "bore-not-said", where,
                             "%s does not say its bore; %.4g mm is wanted to %s", part->id, wanted * 1e3,
                             port);
        else if (checking->limits.bore_warns)
            ow_checking_warn(checking, "bore", where,
                             "the bore of %s is %.4g mm on the way to %s; the outlet's is %.4g mm", part->id,
                             bore * 1e3, port, wanted * 1e3);
        else
            ow_checking_find(checking, "bore", where, "the bore of %s is %.4g mm; %.4g mm is asked for to %s",
                             part->id, bore * 1e3, wanted * 1e3, port);
    }
    if (passed)
        ow_checking_pass(checking, "bore", port, "no passage to %s is narrower than %.4g mm", port,
                         wanted * 1e3);
}

static void check_hoses(ow_checking *checking, const path_sum *sum, const char *port)
{
    char where[OW_WHERE_SIZE];
    ow_choice wanted = checking->limits.flexible;
    if (wanted == OW_YES && sum->hoses == 0)
        ow_checking_find(checking, "no-hose", port, "there is no hose on the way to %s", port);
    else if (wanted == OW_YES && sum->hoses > 1)
        ow_checking_find(checking, "two-hoses", ow_checking_node(checking, sum->last_hose, where),
                         "there are %zu hoses on the way to %s", sum->hoses, port);
    else if (wanted == OW_NO && sum->hoses > 0)
        ow_checking_find(checking, "hose", ow_checking_node(checking, sum->last_hose, where),
                         "there is a hose on the way to %s, and none is wanted", port);
    else if (wanted != OW_ANY)
        ow_checking_pass(checking, "no-hose", port,
                         wanted == OW_YES ? "one hose leads to %s" : "no hose leads to %s", port);
}

static void check_orifice(ow_checking *checking, size_t node)
{
    const ow_limits *limits = &checking->limits;
    const ow_part *part = checking->layout->nodes[node].part;
    char where[OW_WHERE_SIZE];
    if (limits->orifice_low_m < 0.0 ||
        (part->orifice_m >= limits->orifice_low_m && part->orifice_m <= limits->orifice_high_m))
        return;
    ow_checking_find(checking, "orifice", ow_checking_node(checking, node, where),
                     "the hole of %s is %.3g mm; %.3g to %.3g mm is asked for", part->id,
                     part->orifice_m * 1e3, limits->orifice_low_m * 1e3, limits->orifice_high_m * 1e3);
}

static void check_restrictors(ow_checking *checking, const path_sum *sum, const char *port)
{
    char where[OW_WHERE_SIZE];
    if (sum->restrictors > 0)
        check_orifice(checking, sum->last_restrictor);
    switch (checking->limits.restrictor) {
    case OW_RESTRICTOR_REQUIRED:
        if (sum->restrictors == 0)
            ow_checking_find(checking, "restrictor-missing", port, "there is no restrictor on the way to %s",
                             port);
        else
            ow_checking_pass(checking, "restrictor-missing", port, "a restrictor stands before %s", port);
        break;
    case OW_RESTRICTOR_FORBIDDEN:
        if (sum->restrictors > 0)
            ow_checking_find(checking, "restrictor-wrong",
                             ow_checking_node(checking, sum->last_restrictor, where),
                             "a restrictor stands before %s, which wants none", port);
        else
            ow_checking_pass(checking, "restrictor-wrong", port, "no restrictor stands before %s", port);
        break;
    case OW_RESTRICTOR_ANY:
        break;
    }
}

static void check_kept(ow_checking *checking, const path_sum *sum, const char *port)
{
    if (sum->restrictors > 0)
        ow_checking_find(checking, "switch-behind-restrictor", port, "%s stands behind a restrictor", port);
    if (sum->hoses > 0 && !checking->limits.remote_switch)
        ow_checking_find(checking, "switch-behind-hose", port, "%s stands behind a hose", port);
    if (sum->restrictors == 0 && (sum->hoses == 0 || checking->limits.remote_switch))
        ow_checking_pass(checking, "switch-behind-restrictor", port, "%s sees the source's own pressure",
                         port);
}

void ow_check_paths(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    for (size_t given = 1; given < layout->given_count; given++) {
        size_t node = ow_checking_port_node(checking, given);
        if (node == OW_NODE_NONE)
            continue;
        path_sum sum = sum_path(layout, node);
        const char *port = layout->givens[given].name;
        if (layout->givens[given].role == OW_ROLE_KEEP) {
            check_kept(checking, &sum, port);
            continue;
        }
        check_bore(checking, node, port);
        check_hoses(checking, &sum, port);
        check_restrictors(checking, &sum, port);
    }
}
