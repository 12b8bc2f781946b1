/* SPDX-License-Identifier: MIT */
/*
 * What hangs rigidly on a block or a housing: a heavy sender on a long or soft arm, a long stack, the room
 * that an elbow or tee needs to be turned in, and where it points once a taper is tight.
 */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "checks/checks_internal.h"
#include "materials/metal.h"

/* Assumptions of this program, for want of a published figure. */
#define HEAVY_KG 0.1        /* a gauge sender has 150 g, a switch 60 g */
#define SMALL_THREAD_M 0.01 /* 1/8 pipe, M10 and less */
#define ARM_M 0.080         /* of a heavy sender's middle before the block, on steel */
#define STICK_OUT_M 0.150   /* of a stack before its hose */
#define SWING_M 0.030       /* a spanner wants as much room anyway */

/* ---- how an end stands to another of the same part ---------------------------------------------------- */

static bool is_branched(const ow_part *part)
{
    return part->kind == OW_TEE || part->kind == OW_CROSS || part->kind == OW_GAUGE_ADAPTER;
}

/* Whether what goes in at one end comes out at the other at an angle. */
static bool is_turn(const ow_part *part, size_t from, size_t to)
{
    if (is_branched(part))
        return (from >= 2) != (to >= 2);
    return (part->kind == OW_ELBOW || part->kind == OW_HOSE_END) && part->angle_rad > 0.01;
}

/* How far a part reaches from the axis of its end while it is turned in by it, m; 0: it has no arm;
 * OW_NOT_SAID: a length is not said. */
static double swing_m(const ow_part *part, size_t end)
{
    if (part->kind == OW_ELBOW && part->length_m >= 0.0 && part->angle_rad >= 0.0)
        return part->length_m / 2.0 * sin(part->angle_rad); /* its legs taken as equal */
    if (part->kind == OW_ELBOW)
        return OW_NOT_SAID;
    if (!is_branched(part))
        return 0.0;
    if (end < 2)
        return part->branch_length_m;
    return part->length_m >= 0.0 ? part->length_m / 2.0 : OW_NOT_SAID;
}

/* ---- the screw by which a part hangs on something fixed ------------------------------------------------ */

typedef struct screw {
    size_t end;   /* of the part that is turned in */
    size_t child; /* the node whose joint with its parent it is */
    const char *into;
} screw;

static bool is_screwed(const ow_layout *layout, size_t child)
{
    const ow_end *outer = ow_layout_parent_end(layout, child), *inner = ow_layout_child_end(layout, child);
    ow_thread thread;
    return ow_end_thread(outer, &thread) && ow_end_thread(inner, &thread) && !ow_joint_turns(outer, inner);
}

/* The screw toward a port served beyond it, if nothing between turns. */
static bool find_screw_ahead(const ow_checking *checking, size_t node, screw *found)
{
    const ow_layout *layout = checking->layout;
    for (size_t given = 1; given < layout->given_count; given++) {
        size_t port = ow_checking_port_node(checking, given);
        if (port == OW_NODE_NONE || layout->givens[given].role != OW_ROLE_TO ||
            !ow_layout_on_path(layout, node, given) ||
            ow_checking_piece(layout, port) != ow_checking_piece(layout, node))
            continue;
        size_t child = port;
        while (layout->nodes[child].parent != node)
            child = layout->nodes[child].parent;
        *found = (screw){layout->nodes[child].parent_end, child, layout->givens[given].name};
        return is_screwed(layout, child);
    }
    return false;
}

/* The screw by which the part at `node` hangs on the source or on a port served; false if something between
 * turns, so that it can be aimed and held while the nut is tightened. */
static bool find_screw(const ow_checking *checking, size_t node, screw *found)
{
    const ow_layout *layout = checking->layout;
    if (ow_checking_piece(layout, node) != 0)
        return find_screw_ahead(checking, node, found);
    *found = (screw){layout->nodes[node].enter, node, layout->givens[0].name};
    return is_screwed(layout, node);
}

/* ---- room and aim -------------------------------------------------------------------------------------- */

static void check_swing(ow_checking *checking, size_t node, const screw *by)
{
    const ow_part *part = checking->layout->nodes[node].part;
    double reach_m = swing_m(part, by->end);
    char where[OW_WHERE_SIZE];
    if (reach_m == 0.0)
        return;
    ow_checking_node(checking, node, where);
    if (reach_m < 0.0)
        ow_checking_find_mend(checking, "swing-room", where,
                              "Measure how far it sweeps, look that nothing stands there, and write its "
                              "lengths on its page.",
                              "it is turned in by its own thread, and how far it reaches is not said");
    else if (reach_m > SWING_M)
        ow_checking_find(checking, "swing-room", where,
                         "%s is screwed toward %s by its own thread and sweeps %.0f mm about it", where,
                         by->into, reach_m * 1e3);
    else
        ow_checking_pass(checking, "swing-room", where, "%s sweeps %.0f mm while it is turned in", where,
                         reach_m * 1e3);
}

/* The end at the far side of the screw that leads on to a port, if the way turns on it; else OW_PART_ENDS. */
static size_t aimed_end(const ow_layout *layout, size_t node, const screw *by)
{
    const ow_layout_node *at = &layout->nodes[node];
    if (by->child !=
        node) /* screwed into the port ahead: what comes from the source is what it is aimed at */
        return is_turn(at->part, by->end, at->enter) ? at->enter : OW_PART_ENDS;
    for (size_t end = 0; end < at->part->end_count; end++) {
        size_t exit = end != at->enter ? at->exits[end] : OW_NODE_NONE;
        for (size_t given = 1; given < layout->given_count && exit != OW_NODE_NONE; given++) {
            if (layout->givens[given].role == OW_ROLE_TO && ow_layout_on_path(layout, exit, given) &&
                is_turn(at->part, by->end, end))
                return end;
        }
    }
    return OW_PART_ENDS;
}

static void check_aim(ow_checking *checking, size_t node, const screw *by)
{
    const ow_layout *layout = checking->layout;
    const ow_joint_rule *rule =
        ow_joint_find(ow_layout_parent_end(layout, by->child), ow_layout_child_end(layout, by->child));
    size_t end = aimed_end(layout, node, by);
    char where[OW_WHERE_SIZE];
    if (end == OW_PART_ENDS || rule == NULL || strncmp(rule->id, "taper-", 6) != 0)
        return;
    ow_checking_end(checking, node, end, where);
    ow_checking_find(checking, "taper-aimed", where, "it points where the taper thread toward %s is tight",
                     by->into);
}

/* ---- what hangs on it ---------------------------------------------------------------------------------- */

static bool is_soft(const ow_part *part)
{
    return (ow_material_bits(part->material) & (OW_COPPER_ALLOY | OW_ALUMINIUM)) != 0;
}

/* Whether one of its male ends has a thread of 1/8 pipe or less. */
static bool has_small_thread(const ow_part *part)
{
    for (size_t end = 0; end < part->end_count; end++) {
        ow_thread thread;
        if (part->ends[end].gender == OW_MALE && ow_end_thread(&part->ends[end], &thread) &&
            ow_thread_major_m(&thread) <= SMALL_THREAD_M * 1.04) /* 1/8-27 NPT is 10.3 mm */
            return true;
    }
    return false;
}

/* The rigid parts between the block and `node`, which it does not count. */
typedef struct rigid_arm {
    bool hose;        /* there is a hose on the way: not rigid */
    double length_m;  /* of those that say theirs */
    const char *soft; /* the soft part with a small thread nearest to the node, or NULL */
} rigid_arm;

static rigid_arm arm_to(const ow_layout *layout, size_t node)
{
    rigid_arm arm = {false, 0.0, NULL};
    for (size_t child = node, at = layout->nodes[node].parent; at != OW_NODE_NONE;
         child = at, at = layout->nodes[at].parent) {
        const ow_part *part = layout->nodes[at].part;
        if (part == NULL)
            continue;
        double way_m = ow_checking_way_m(part, layout->nodes[at].enter, layout->nodes[child].parent_end);
        arm.hose = arm.hose || ow_part_is_hose(part);
        arm.length_m += way_m > 0.0 ? way_m : 0.0;
        if (arm.soft == NULL && is_soft(part) && has_small_thread(part))
            arm.soft = part->id;
    }
    return arm;
}

/* True if it had something to say. */
static bool check_sender(ow_checking *checking, size_t given)
{
    const ow_part *fixture = checking->layout->givens[given].fixture;
    size_t node = ow_checking_port_node(checking, given);
    if (node == OW_NODE_NONE || fixture == NULL)
        return false;
    bool heavy = fixture->mass_kg >= HEAVY_KG || (fixture->mass_kg < 0.0 && fixture->kind == OW_SENDER);
    rigid_arm arm = arm_to(checking->layout, node);
    if (!heavy || arm.hose)
        return false;
    char weight[48] = "its weight is not known; it hangs";
    const char *name = checking->layout->givens[given].name;
    double middle_m = arm.length_m + (fixture->length_m > 0.0 ? fixture->length_m / 2.0 : 0.0);
    if (fixture->mass_kg >= 0.0)
        snprintf(weight, sizeof weight, "its %.0f g hang", fixture->mass_kg * 1e3);
    if (arm.soft != NULL)
        ow_checking_find(checking, "overhung-sender", name,
                         "%s %.0f mm out from the block on %s, whose small thread is brass or light alloy",
                         weight, middle_m * 1e3, arm.soft);
    else if (middle_m > ARM_M)
        ow_checking_note(checking, "overhung-sender", name, "%s %.0f mm out from the block", weight,
                         middle_m * 1e3);
    else
        ow_checking_pass(checking, "overhung-sender", name, "%s: %s on steel, %.0f mm out from the block",
                         name, weight, middle_m * 1e3);
    return arm.soft != NULL || middle_m > ARM_M;
}

/* From the block to the first hose on the way to the first port served. */
static void check_stick_out(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    size_t given = 1;
    while (given < layout->given_count && layout->givens[given].role != OW_ROLE_TO)
        given++;
    size_t node = given < layout->given_count ? ow_checking_port_node(checking, given) : OW_NODE_NONE;
    size_t hose = OW_NODE_NONE;
    for (; node != OW_NODE_NONE; node = layout->nodes[node].parent) {
        if (layout->nodes[node].part != NULL && ow_part_is_hose(layout->nodes[node].part))
            hose = node;
    }
    if (hose == OW_NODE_NONE)
        return;
    double length_m = arm_to(layout, hose).length_m;
    if (length_m > STICK_OUT_M)
        ow_checking_find(checking, "long-stick-out", layout->givens[0].name,
                         "%.0f mm of rigid parts stand out from %s before the hose begins", length_m * 1e3,
                         layout->givens[0].name);
    else
        ow_checking_pass(checking, "long-stick-out", layout->givens[0].name,
                         "%.0f mm of rigid parts stand out from %s before the hose begins", length_m * 1e3,
                         layout->givens[0].name);
}

void ow_check_block(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    bool told = false;
    if (layout->circuit == OW_CIRCUIT_NONE)
        return;
    for (size_t node = 1; node < layout->node_count; node++) {
        screw by;
        if (layout->nodes[node].part == NULL || !find_screw(checking, node, &by))
            continue;
        check_swing(checking, node, &by);
        check_aim(checking, node, &by);
    }
    for (size_t given = 1; given < layout->given_count; given++) {
        if (layout->givens[given].role == OW_ROLE_KEEP)
            told = check_sender(checking, given) || told;
    }
    if (!told && layout->circuit == OW_FEED)
        check_stick_out(checking);
}
