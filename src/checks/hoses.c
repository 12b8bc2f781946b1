/* SPDX-License-Identifier: MIT */
/* Hoses: what they are made of, how they are held, how short they are cut; and feeds that have none. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "checks/checks_internal.h"
#include "oilway/hose_judge.h"

#define QUARTER_TURN 1.5707963267948966
#define SLACK_LEAST 1.05 /* of the straight way; up to 1.08: a navy's engine mechanics manual */
#define SLACK_MOST 1.08
#define CUT_M 0.001 /* nobody cuts a hose to less */

static void check_material(ow_checking *checking, size_t node, const ow_part *part)
{
    const ow_limits *limits = &checking->limits;
    const ow_hose_material *material = ow_part_hose_material(part);
    bool knows_fluid = limits->fluid != OW_FLUID_NONE;
    ow_hose_service service = {limits->fluid == OW_FLUID_OIL,
                               knows_fluid && ow_limits_pressed(checking->layout->circuit, limits),
                               limits->rating_pa > 0.0 ? limits->rating_pa : 0.0, limits->temperature_c};
    unsigned told = limits->has_temperature ? 0 : OW_HOSE_HEAT | OW_HOSE_HEAT_SHORT;
    char where[OW_WHERE_SIZE];
    if (material == NULL || checking->status != OW_OK)
        return;
    if (!knows_fluid)
        told |= OW_HOSE_FLUID | OW_HOSE_FLUID_LIMITED;
    ow_checking_node(checking, node, where);
    /* What the part's own page says is told already: one cause, one finding. */
    if (ow_checking_has(checking, "fluid", where))
        told |= OW_HOSE_FLUID | OW_HOSE_FLUID_LIMITED;
    if (ow_checking_has(checking, "temperature", where))
        told |= OW_HOSE_HEAT | OW_HOSE_HEAT_SHORT;
    if (ow_checking_has(checking, "rating", where))
        told |= OW_HOSE_PRESSURE;
    size_t before = checking->findings->count;
    checking->status =
        ow_hose_judge(material, &service, told, checking->rating_assumed ? OW_WARNING : OW_ERROR, where,
                      checking->findings);
    if (checking->findings->count == before && told == 0)
        ow_checking_pass(checking, "hose-fluid", where, "%s: %s stands %s, pressure and heat (%s)", where,
                         material->title, service.oil ? "oil" : "coolant", material->source);
    else if (checking->findings->count == before && (told & OW_HOSE_FLUID) == 0)
        ow_checking_pass(checking, "hose-fluid", where, "%s: %s stands %s%s (%s)", where, material->title,
                         service.oil ? "oil" : "coolant", service.pressurised ? " and the pressure" : "",
                         material->source);
}

/* Joints that hold a hose by a clamp, in a feed. */
static void check_clamps(ow_checking *checking, size_t child)
{
    const ow_layout *layout = checking->layout;
    const ow_joint_rule *rule =
        ow_joint_find(ow_layout_parent_end(layout, child), ow_layout_child_end(layout, child));
    char where[OW_JOINT_WHERE_SIZE];
    if (rule == NULL || (strcmp(rule->id, "hose-barb") != 0 && strcmp(rule->id, "hose-bead") != 0))
        return;
    ow_checking_find(checking, "clamped-feed", ow_checking_joint(checking, child, where),
                     "only a clamp holds the hose here, against the gallery's pressure of hot oil");
}

/* A hose that leads down by gravity had better not bend at all; any other has to get round a corner. */
static void check_bend(ow_checking *checking, size_t node, const ow_part *part)
{
    double length_m = checking->layout->nodes[node].length_m;
    double needed_m = part->bend_radius_m * QUARTER_TURN;
    char where[OW_WHERE_SIZE];
    if (checking->layout->circuit == OW_DRAIN || length_m < 0.0 || part->bend_radius_m <= 0.0)
        return;
    ow_checking_node(checking, node, where);
    if (ow_checking_has(checking, "hose-short", where)) /* and its mend is longer still, or looked at again */
        return;
    if (length_m < needed_m)
        ow_checking_find(
            checking, "hose-bend", where,
            "it is cut %.0f mm long; a quarter turn at its least radius of %.0f mm takes %.0f mm",
            length_m * 1e3, part->bend_radius_m * 1e3, needed_m * 1e3);
    else
        ow_checking_pass(checking, "hose-bend", where,
                         "%s: %.0f mm long, it can bend a quarter turn at %.0f mm radius", where,
                         length_m * 1e3, part->bend_radius_m * 1e3);
}

/* ---- long enough to reach ------------------------------------------------------------------------------ */

/* The least distance between two ports whose heights and distances from the turbo's outlet are known, however
 * the turbo is turned about the vertical. False if a position is not known. */
static bool apart(const ow_given *a, const ow_given *b, double *distance_m)
{
    bool pair = a->machine != NULL && b->machine != NULL && a->machine->kind != OW_HEATER &&
                b->machine->kind != OW_HEATER && a->machine->kind != b->machine->kind;
    if (!pair || a->port == NULL || b->port == NULL || !a->port->has_position || !b->port->has_position)
        return false;
    const double *first = a->port->position_m, *second = b->port->position_m;
    double outward_m = hypot(first[0], first[1]) - hypot(second[0], second[1]);
    *distance_m = hypot(outward_m, first[2] - second[2]);
    return true;
}

/* The one hose on the way to a port, and the length of all that is rigid on it. False if there is not just
 * one hose of a chosen length, or a length is not said. */
static bool measure_way(const ow_layout *layout, size_t port_node, size_t *hose, double *rigid_m)
{
    *hose = OW_NODE_NONE;
    *rigid_m = 0.0;
    for (size_t child = port_node, at = layout->nodes[child].parent; at != OW_NODE_NONE;
         child = at, at = layout->nodes[at].parent) {
        const ow_part *part = layout->nodes[at].part;
        if (part == NULL)
            continue;
        if (part->kind == OW_HOSE && *hose != OW_NODE_NONE)
            return false;
        if (part->kind == OW_HOSE) {
            *hose = at;
            continue;
        }
        double way_m = ow_checking_way_m(part, layout->nodes[at].enter, layout->nodes[child].parent_end);
        if (way_m < 0.0)
            return false;
        *rigid_m += way_m;
    }
    return *hose != OW_NODE_NONE && layout->nodes[*hose].length_m >= 0.0;
}

static void check_reach(ow_checking *checking, size_t given)
{
    const ow_layout *layout = checking->layout;
    size_t port = ow_checking_port_node(checking, given), hose = OW_NODE_NONE;
    double apart_m = 0.0, rigid_m = 0.0;
    char where[OW_WHERE_SIZE];
    char mend[160];
    if (port == OW_NODE_NONE || !apart(&layout->givens[0], &layout->givens[given], &apart_m) ||
        !measure_way(layout, port, &hose, &rigid_m))
        return;
    double taut_m = apart_m - rigid_m, length_m = layout->nodes[hose].length_m;
    ow_checking_node(checking, hose, where);
    bool drains = layout->circuit == OW_DRAIN; /* there slack is a sag */
    if (drains)
        snprintf(mend, sizeof mend, "Cut it %.0f mm long or more, and measure along the way it will lie.",
                 ceil(taut_m * 1e3));
    else
        snprintf(mend, sizeof mend,
                 "Cut it %.0f to %.0f mm long or more, and measure along the way it will lie.",
                 taut_m * SLACK_LEAST * 1e3, taut_m * SLACK_MOST * 1e3);
    if (length_m < taut_m - CUT_M)
        ow_checking_find_mend(
            checking, "hose-short", where, mend,
            "it is cut %.0f mm long; the ports stand %.0f mm apart or more and the fittings "
            "bridge %.0f mm of that at most",
            length_m * 1e3, apart_m * 1e3, rigid_m * 1e3);
    else if (!drains && length_m < taut_m * SLACK_LEAST)
        ow_checking_warn_mend(checking, "hose-short", where, mend,
                              "it is cut %.0f mm long and would be taut: %.0f mm are left between the "
                              "fittings, and 5 to 8 %% of slack are wanted",
                              length_m * 1e3, taut_m * 1e3);
    else
        ow_checking_pass(checking, "hose-short", where,
                         "%s: its %.0f mm reach over the %.0f mm between the fittings", where, length_m * 1e3,
                         taut_m > 0.0 ? taut_m * 1e3 : 0.0);
}

/* A feed without a hose though nobody was made to say so: no-hose tells the others. */
static void check_rigid_feed(ow_checking *checking, size_t given)
{
    const ow_layout *layout = checking->layout;
    size_t node = ow_checking_port_node(checking, given);
    char words[OW_END_TEXT_SIZE];
    if (node == OW_NODE_NONE || checking->limits.flexible == OW_YES || checking->limits.flexible == OW_SOME)
        return;
    for (size_t at = node; at != OW_NODE_NONE; at = layout->nodes[at].parent) {
        if (layout->nodes[at].part != NULL && ow_part_is_hose(layout->nodes[at].part))
            return;
    }
    ow_checking_find(checking, "rigid-feed", layout->givens[given].name, "the whole way to %s is rigid",
                     ow_checking_port(&layout->givens[given], words));
}

void ow_check_hoses(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    bool feeds = layout->circuit == OW_FEED;
    for (size_t given = 1; given < layout->given_count; given++) {
        if (layout->circuit == OW_CIRCUIT_NONE || layout->givens[given].role != OW_ROLE_TO)
            continue;
        check_reach(checking, given);
        if (feeds)
            check_rigid_feed(checking, given);
    }
    for (size_t node = 1; node < layout->node_count; node++) {
        const ow_part *part = layout->nodes[node].part;
        if (checking->limits.no_clamp)
            check_clamps(checking, node);
        if (part == NULL)
            continue;
        check_material(checking, node, part);
        if (part->kind == OW_HOSE && layout->circuit != OW_CIRCUIT_NONE)
            check_bend(checking, node, part);
    }
}
