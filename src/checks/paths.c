/* SPDX-License-Identifier: MIT */
/* What lies on the path from the source to each port: bore, hoses, restrictors. */
#include <string.h>

#include "ask/unit.h"
#include "base/format.h"
#include "checks/checks_internal.h"

#define NARROW_FEED_M 0.003 /* more than a -3 hose's end has; an assumption */
#define HOLE_LEAST_M 0.0008

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

/* Ports are given: what is asked of the parts may be more than a port lets through. */
static void check_port_bore(ow_checking *checking, size_t given)
{
    const ow_given *port = &checking->layout->givens[given];
    double wanted_m = checking->limits.least_bore_m;
    if (wanted_m < 0.0 || checking->limits.bore_warns || port->port == NULL || port->port->bore_m < 0.0 ||
        port->port->bore_m >= wanted_m - OW_CHECKING_SLACK_M)
        return;
    ow_checking_find(checking, "port-bore", port->name,
                     "%s itself has a bore of %.4g mm; %.4g mm is asked for", port->name,
                     port->port->bore_m * 1e3, wanted_m * 1e3);
}

/* One part of the path to `port`, narrower than asked or silent. */
static void say_bore(ow_checking *checking, size_t node, double bore_m, const char *port)
{
    const ow_part *part = checking->layout->nodes[node].part;
    double wanted_m = checking->limits.least_bore_m;
    char where[OW_WHERE_SIZE];
    ow_checking_node(checking, node, where);
    if (bore_m < 0.0)
        ow_checking_find(checking, "bore-not-said", where,
                         "%s does not say its bore; %.4g mm is wanted to %s", part->id, wanted_m * 1e3, port);
    else
        ow_checking_find(checking, "bore", where, "the bore of %s is %.4g mm; %.4g mm is asked for to %s",
                         part->id, bore_m * 1e3, wanted_m * 1e3, port);
}

/* Adds "id 12.3 mm" to a list in words. */
static void list_narrow(char *list, size_t room, const char *name, double bore_m)
{
    size_t used = strlen(list);
    ow_format_to(list + used, room - used, "%s%.60s %.4g mm", used > 0 ? ", " : "", name, bore_m * 1e3);
}

/* A default least bore, the outlet's, warns once for the whole path. */
static void warn_narrow(ow_checking *checking, const ow_given *to, const char *narrow)
{
    ow_checking_warn_mend(checking, "bore", to->name,
                          "Use wider parts, or hold the flow against them: oilway drain, oilway plan.",
                          "narrower than the outlet's %.4g mm: %s", checking->limits.least_bore_m * 1e3,
                          narrow);
}

static void check_bore(ow_checking *checking, size_t port_node, const ow_given *to)
{
    const ow_layout *layout = checking->layout;
    double wanted_m = checking->limits.least_bore_m;
    bool warns = checking->limits.bore_warns, passed = true;
    char narrow[400] = "", name[OW_WHERE_SIZE], words[OW_END_TEXT_SIZE];
    const char *port = ow_checking_port(to, words);
    if (wanted_m < 0.0)
        return;
    for (size_t child = port_node, at = layout->nodes[child].parent; at != OW_NODE_NONE;
         child = at, at = layout->nodes[at].parent) {
        const ow_part *part = layout->nodes[at].part;
        if (part == NULL)
            continue;
        double bore_m = ow_part_bore_m(part, layout->nodes[at].enter, layout->nodes[child].parent_end);
        if (bore_m >= wanted_m - OW_CHECKING_SLACK_M)
            continue;
        passed = false;
        if (warns && bore_m >= 0.0)
            list_narrow(narrow, sizeof narrow, ow_checking_node(checking, at, name), bore_m);
        else
            say_bore(checking, at, bore_m, port);
    }
    if (warns && to->port != NULL && to->port->bore_m >= 0.0 &&
        to->port->bore_m < wanted_m - OW_CHECKING_SLACK_M)
        list_narrow(narrow, sizeof narrow, "the port itself", to->port->bore_m);
    if (narrow[0] != '\0')
        warn_narrow(checking, to, narrow);
    else if (passed)
        ow_checking_pass(checking, "bore", to->name, "no passage to %s is narrower than %.4g mm", port,
                         wanted_m * 1e3);
}

/* A plain bearing drinks more than a ball bearing behind its restrictor. Only hoses and their ends are looked
 * at: a banjo's cross-holes are as narrow and much shorter. Where a bore is asked for, that is judged. */
static void check_narrow_feed(ow_checking *checking, size_t port_node, const ow_given *to)
{
    const ow_layout *layout = checking->layout;
    char where[OW_WHERE_SIZE];
    size_t narrowest = OW_NODE_NONE;
    double least_m = NARROW_FEED_M;
    if (layout->circuit != OW_FEED || checking->limits.least_bore_m >= 0.0 || to->machine == NULL ||
        to->machine->bearing != OW_BEARING_JOURNAL)
        return;
    for (size_t child = port_node, at = layout->nodes[child].parent; at != OW_NODE_NONE;
         child = at, at = layout->nodes[at].parent) {
        const ow_part *part = layout->nodes[at].part;
        if (part == NULL || (part->kind != OW_HOSE_END && !ow_part_is_hose(part)))
            continue;
        double bore_m = ow_part_bore_m(part, layout->nodes[at].enter, layout->nodes[child].parent_end);
        if (bore_m < 0.0 || bore_m >= least_m)
            continue;
        least_m = bore_m;
        narrowest = at;
    }
    if (narrowest != OW_NODE_NONE)
        ow_checking_find(checking, "narrow-feed", ow_checking_node(checking, narrowest, where),
                         "it is %.3g mm wide on the way to %s, which has plain bearings", least_m * 1e3,
                         to->name);
}

static void check_hoses(ow_checking *checking, const path_sum *sum, const ow_given *to)
{
    char where[OW_WHERE_SIZE], words[OW_END_TEXT_SIZE];
    const char *port = ow_checking_port(to, words);
    ow_choice wanted = checking->limits.flexible;
    if ((wanted == OW_YES || wanted == OW_SOME) && sum->hoses == 0)
        ow_checking_find(checking, "no-hose", to->name, "there is no hose on the way to %s", port);
    else if (wanted == OW_YES && sum->hoses > 1)
        ow_checking_find(checking, "two-hoses", ow_checking_node(checking, sum->last_hose, where),
                         "there are %zu hoses on the way to %s", sum->hoses, port);
    else if (wanted == OW_NO && sum->hoses > 0)
        ow_checking_find(checking, "hose", ow_checking_node(checking, sum->last_hose, where),
                         "there is a hose on the way to %s, and none is wanted", port);
    else if (wanted != OW_ANY)
        ow_checking_pass(checking, "no-hose", to->name,
                         wanted == OW_NO   ? "no hose leads to %s"
                         : sum->hoses == 1 ? "one hose leads to %s"
                                           : "several hoses lead to %s",
                         port);
}

static void check_orifice(ow_checking *checking, size_t node)
{
    const ow_limits *limits = &checking->limits;
    const ow_part *part = checking->layout->nodes[node].part;
    char where[OW_WHERE_SIZE];
    bool asks_low = limits->orifice_low_m >= 0.0, asks_high = limits->orifice_high_m >= 0.0;
    bool said = part->orifice_m >= 0.0 || (!asks_low && !asks_high);
    if (said && (!asks_low || part->orifice_m >= limits->orifice_low_m - OW_CHECKING_SLACK_M) &&
        (!asks_high || part->orifice_m <= limits->orifice_high_m + OW_CHECKING_SLACK_M))
        return;
    if (asks_low && asks_high)
        ow_checking_find(checking, "orifice", ow_checking_node(checking, node, where),
                         "the hole of %s is %.3g mm; %.3g to %.3g mm is asked for", part->id,
                         part->orifice_m * 1e3, limits->orifice_low_m * 1e3, limits->orifice_high_m * 1e3);
    else
        ow_checking_find(
            checking, "orifice", ow_checking_node(checking, node, where),
            "the hole of %s is %.3g mm; %.3g mm or %s is asked for", part->id, part->orifice_m * 1e3,
            (asks_low ? limits->orifice_low_m : limits->orifice_high_m) * 1e3, asks_low ? "more" : "less");
}

/* A restrictor that stands where the unit wants none, or behind another. */
static void check_needless(ow_checking *checking, const path_sum *sum, const ow_given *to,
                           ow_restrictor_ask wanted)
{
    char where[OW_WHERE_SIZE], words[OW_END_TEXT_SIZE];
    bool built_in = to->machine != NULL && to->machine->restrictor == OW_BUILT_IN_YES;
    if (sum->restrictors == 0)
        return;
    ow_checking_node(checking, sum->last_restrictor, where);
    bool feeds = checking->layout->circuit == OW_FEED;
    if (sum->restrictors > 1 && (feeds || wanted != OW_RESTRICTOR_ANY))
        ow_checking_find(checking, "second-restrictor", where, "%zu restrictors stand in a row before %s",
                         sum->restrictors, ow_checking_port(to, words));
    else if (sum->restrictors > 1) /* where nothing is asked of them */
        ow_checking_warn(checking, "second-restrictor", where, "%zu restrictors stand in a row before %s",
                         sum->restrictors, ow_checking_port(to, words));
    else if (built_in && wanted == OW_RESTRICTOR_REQUIRED) /* somebody insists */
        ow_checking_warn(checking, "second-restrictor", where,
                         "%s stands before %s, which has a restrictor built in", where, to->machine->id);
    else if (built_in)
        ow_checking_find(checking, "second-restrictor", where,
                         "%s stands before %s, which has a restrictor built in", where, to->machine->id);
    else if (wanted == OW_RESTRICTOR_FORBIDDEN)
        ow_checking_find(checking, "restrictor-wrong", where, "%s stands before %s, which wants none", where,
                         ow_checking_port(to, words));
    else if (ow_given_wants(to, OW_BEARING_UNKNOWN) == OW_RESTRICTOR_FORBIDDEN)
        ow_checking_warn(checking, "restrictor-wrong", where, "%s stands before %s, whose bearing wants none",
                         where, ow_checking_port(to, words));
}

/* A hole below 0.8 mm clogs: common practice. */
static void check_hole(ow_checking *checking, size_t node)
{
    const ow_part *part = checking->layout->nodes[node].part;
    char where[OW_WHERE_SIZE];
    if (part->orifice_m > 0.0 && part->orifice_m < HOLE_LEAST_M * (1.0 - 1e-9))
        ow_checking_find(checking, "restrictor-clogs", ow_checking_node(checking, node, where),
                         "the hole of %s is %.2f mm; less than %.1f mm clogs", part->id,
                         part->orifice_m * 1e3, HOLE_LEAST_M * 1e3);
}

static void check_restrictors(ow_checking *checking, const path_sum *sum, const ow_given *to)
{
    char words[OW_END_TEXT_SIZE];
    const char *port = ow_checking_port(to, words);
    ow_restrictor_ask wanted = checking->limits.restrictor;
    if (wanted == OW_RESTRICTOR_BY_UNIT)
        wanted = ow_given_wants(to, OW_BEARING_UNKNOWN);
    if (sum->restrictors > 0) {
        check_orifice(checking, sum->last_restrictor);
        check_hole(checking, sum->last_restrictor);
    }
    check_needless(checking, sum, to, wanted);
    if (wanted == OW_RESTRICTOR_REQUIRED && sum->restrictors == 0)
        ow_checking_find(checking, "restrictor-missing", to->name, "there is no restrictor on the way to %s",
                         port);
    else if (checking->layout->circuit == OW_FEED && wanted == OW_RESTRICTOR_ANY && sum->restrictors == 0 &&
             ow_given_wants(to, OW_BEARING_UNKNOWN) == OW_RESTRICTOR_REQUIRED)
        ow_checking_warn(checking, "restrictor-missing", to->name,
                         "there is no restrictor on the way to %s, whose ball bearings want one", port);
    else if (wanted == OW_RESTRICTOR_REQUIRED)
        ow_checking_pass(checking, "restrictor-missing", to->name, "a restrictor stands before %s", port);
    else if (wanted == OW_RESTRICTOR_FORBIDDEN && sum->restrictors == 0)
        ow_checking_pass(checking, "restrictor-wrong", to->name, "no restrictor stands before %s", port);
}

static void check_kept(ow_checking *checking, const path_sum *sum, const ow_given *kept)
{
    char words[OW_END_TEXT_SIZE];
    const char *port = ow_checking_port(kept, words);
    if (sum->restrictors > 0)
        ow_checking_find(checking, "switch-behind-restrictor", kept->name, "%s stands behind a restrictor",
                         port);
    if (sum->hoses > 0 && !checking->limits.remote_switch)
        ow_checking_find(checking, "switch-behind-hose", kept->name, "%s stands behind a hose", port);
    if (sum->restrictors == 0 && (sum->hoses == 0 || checking->limits.remote_switch))
        ow_checking_pass(checking, "switch-behind-restrictor", kept->name,
                         "%s sees the source's own pressure", port);
}

void ow_check_paths(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    check_port_bore(checking, 0);
    for (size_t given = 1; given < layout->given_count; given++) {
        size_t node = ow_checking_port_node(checking, given);
        if (node == OW_NODE_NONE)
            continue;
        path_sum sum = sum_path(layout, node);
        if (layout->givens[given].role == OW_ROLE_KEEP) {
            check_kept(checking, &sum, &layout->givens[given]);
            continue;
        }
        check_bore(checking, node, &layout->givens[given]);
        check_narrow_feed(checking, node, &layout->givens[given]);
        check_hoses(checking, &sum, &layout->givens[given]);
        check_restrictors(checking, &sum, &layout->givens[given]);
        check_port_bore(checking, given);
    }
}
