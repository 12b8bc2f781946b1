/* SPDX-License-Identifier: MIT */
/* The feed's layout as a tree of pieces: a fork where a part leads to more than one port, loads at the
 * turbos, dead ends at the switches. */
#include <string.h>

#include "plan/planning.h"

typedef struct lining {
    ow_planning *planning;
    const ow_layout *layout;
    double rise_m;
    ow_plan_feed *feed;
    bool unknown;
    ow_status status;
} lining;

static size_t serving_exits(const ow_layout *layout, size_t node, size_t *ends)
{
    size_t count = 0;
    for (size_t end = 0; end < OW_PART_ENDS; end++) {
        size_t child = layout->nodes[node].exits[end];
        if (child != OW_NODE_NONE && ow_layout_leads_to_port(layout, child))
            ends[count++] = end;
    }
    return count;
}

const ow_typical_load *ow_plan_typical_load(const ow_machine *turbo)
{
    if (turbo == NULL)
        return ow_typical_load_at(OW_LOAD_JOURNAL_MEDIUM);
    if (turbo->bearing == OW_BEARING_BALL)
        return ow_typical_load_at(OW_LOAD_BALL);
    switch (turbo->size) {
    case OW_SMALL:
        return ow_typical_load_at(OW_LOAD_JOURNAL_SMALL);
    case OW_LARGE:
        return ow_typical_load_at(OW_LOAD_JOURNAL_LARGE);
    case OW_MEDIUM:
    case OW_SIZE_NOT_SAID:
        break;
    }
    return ow_typical_load_at(OW_LOAD_JOURNAL_MEDIUM);
}

static void end_at_port(lining *line, const ow_given *given, size_t node, ow_piece_list *list,
                        ow_branch *branch)
{
    ow_planning *planning = line->planning;
    branch->name = given->name;
    ow_plan_chamber(planning, given->name, node, list);
    if (given->role == OW_ROLE_KEEP)
        return;
    const ow_typical_load *typical = ow_plan_typical_load(given->machine);
    branch->has_load = true;
    branch->load = typical->load;
    branch->load.name = given->name;
    branch->rise_m = line->rise_m;
    ow_planning_assume(planning, typical->mark,
                       ow_planning_words(planning, "oil that %s takes at 3 bar and 8 mPa s", given->name),
                       typical->source, "%.3g L/min (%s)", typical->load.flow_m3s * 60000.0, typical->title);
}

static void grow(lining *line, size_t node, ow_piece_list *list, ow_branch *branch, int depth);

static void fork_at(lining *line, size_t node, const size_t *ends, size_t count, ow_piece_list *list,
                    ow_branch *branch, int depth)
{
    ow_planning *planning = line->planning;
    ow_branch *branches = ow_arena_get_array(&planning->arena, count, sizeof *branches);
    if (branches == NULL || depth >= OW_BRANCH_DEPTH_MAX) {
        line->status = branches == NULL ? OW_MEMORY : OW_RANGE;
        return;
    }
    ow_plan_pass(planning, line->layout, node, ends[0], OW_PASS_TO_FORK, list);
    for (size_t index = 0; index < count && line->status == OW_OK; index++) {
        ow_piece_list own = {0};
        ow_plan_pass(planning, line->layout, node, ends[index], OW_PASS_FROM_FORK, &own);
        grow(line, line->layout->nodes[node].exits[ends[index]], &own, &branches[index], depth + 1);
    }
    branch->branches = branches;
    branch->branch_count = count;
}

/* Remembers the pieces whose bores are tried and fitted later: hoses, the restrictor. */
static void note_pieces(lining *line, ow_piece_list *list)
{
    ow_plan_feed *feed = line->feed;
    for (size_t index = 0; index < list->count; index++) {
        const ow_part *part = line->layout->nodes[list->nodes[index]].part;
        ow_piece *piece = &list->items[index];
        if (piece->kind == OW_PIECE_RESTRICTOR && feed->feed.restrictor.piece == NULL)
            feed->feed.restrictor.piece = piece;
        if (part != NULL && ow_part_is_hose(part) && piece->kind == OW_PIECE_PIPE &&
            feed->hose_count < OW_PLAN_HOSES)
            feed->hoses[feed->hose_count++] = piece;
    }
}

/* Follows the layout from a node on, into one branch, until it forks or ends. */
static void grow(lining *line, size_t node, ow_piece_list *list, ow_branch *branch, int depth)
{
    while (line->status == OW_OK) {
        const ow_layout_node *at = &line->layout->nodes[node];
        size_t ends[OW_PART_ENDS];
        if (at->part == NULL && node != 0) {
            end_at_port(line, &line->layout->givens[at->given], node, list, branch);
            break;
        }
        size_t count = serving_exits(line->layout, node, ends);
        if (count == 0)
            break;
        if (count > 1) {
            fork_at(line, node, ends, count, list, branch, depth);
            break;
        }
        if (at->part != NULL)
            ow_plan_pass(line->planning, line->layout, node, ends[0], OW_PASS_WHOLE, list);
        node = at->exits[ends[0]];
    }
    line->unknown = line->unknown || list->unknown;
    if (line->status == OW_OK)
        line->status = list->status;
    note_pieces(line, list);
    branch->pieces = list->items;
    branch->piece_count = list->count;
}

/* Turbo inlet above the source: said, or from the two positions, or assumed. */
static double find_rise(ow_planning *planning, const ow_layout *layout)
{
    const ow_port *from = layout->givens[0].port;
    const ow_port *to = layout->givens[1].port;
    if (!planning->job->feed.rise_m.said && from != NULL && to != NULL && from->has_position &&
        to->has_position) {
        double rise_m = to->position_m[2] - from->position_m[2];
        ow_planning_assume(planning, OW_MARK_DERIVED, "turbo inlet above the source",
                           "the positions of the two ports in the catalogue", "%.3g m", rise_m);
        return rise_m;
    }
    return ow_planning_value(planning, &planning->job->feed.rise_m, 0.25, "turbo inlet above the source", 1.0,
                             "m", OW_MARK_ASSUMED, "assumption of this program");
}

ow_status ow_plan_feed_line(ow_planning *planning, const ow_layout *layout, ow_plan_feed *feed)
{
    lining line = {planning, layout, find_rise(planning, layout), feed, false, OW_OK};
    ow_piece_list list = {0};
    feed->feed = (ow_feed){.title = layout->title,
                           .oil = planning->oil,
                           .roughness_m = OW_FEED_ROUGHNESS_M,
                           .state_count = planning->state_count,
                           .states = planning->states};
    feed->hose_count = 0;
    feed->feed.trunk.name = "";
    ow_plan_chamber(planning, layout->givens[0].name, 0, &list);
    grow(&line, 0, &list, &feed->feed.trunk, 0);
    if (line.status != OW_OK)
        return line.status;
    return line.unknown ? OW_RANGE : OW_OK;
}
