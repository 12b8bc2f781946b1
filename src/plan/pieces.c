/* SPDX-License-Identifier: MIT */
/*
 * What the liquid sees of a part: pipes, elbows, tees, holes. An elbow's or eye's turn is one fitting on its
 * own bore; a hose end of 120 or 135 degrees is a right angle and half of one, one of 150 or 180 two right
 * angles.
 */
#include <math.h>
#include <string.h>

#include "plan/planning.h"

#define DEGREE_RAD 0.017453292519943295
#define RESTRICTOR_HOLE_M 0.003 /* length of a restrictor's hole: an assumption, listed by the feed */

void ow_plan_add_piece(ow_planning *planning, ow_piece_list *list, size_t node, ow_piece piece)
{
    if (list->status != OW_OK)
        return;
    if (piece.kind != OW_PIECE_CHAMBER && piece.bore_m <= 0.0) {
        list->unknown = true;
        return;
    }
    if (piece.kind == OW_PIECE_PIPE && piece.length_m <= 0.0)
        return;
    if (list->count == list->capacity) {
        size_t capacity = list->capacity * 2 + 16;
        ow_piece *items = ow_arena_get_array(&planning->arena, capacity, sizeof *items);
        size_t *nodes = ow_arena_get_array(&planning->arena, capacity, sizeof *nodes);
        if (items == NULL || nodes == NULL) {
            list->status = OW_MEMORY;
            return;
        }
        if (list->count > 0) {
            memcpy(items, list->items, list->count * sizeof *items);
            memcpy(nodes, list->nodes, list->count * sizeof *nodes);
        }
        list->items = items;
        list->nodes = nodes;
        list->capacity = capacity;
    }
    list->items[list->count] = piece;
    list->nodes[list->count++] = node;
}

void ow_plan_chamber(ow_planning *planning, const char *name, size_t node, ow_piece_list *list)
{
    ow_plan_add_piece(planning, list, node, (ow_piece){.kind = OW_PIECE_CHAMBER, .name = name, .count = 1});
}

static void add_pipe(ow_planning *planning, ow_piece_list *list, size_t node, const char *name, double bore_m,
                     double length_m)
{
    ow_plan_add_piece(
        planning, list, node,
        (ow_piece){.kind = OW_PIECE_PIPE, .name = name, .bore_m = bore_m, .length_m = length_m, .count = 1});
}

static void add_fitting(ow_planning *planning, ow_piece_list *list, size_t node, const char *name,
                        ow_piece_kind kind, double bore_m)
{
    ow_plan_add_piece(planning, list, node,
                      (ow_piece){.kind = kind, .name = name, .bore_m = bore_m, .count = 1});
}

static void add_turn(ow_planning *planning, ow_piece_list *list, size_t node, const char *name,
                     double angle_rad, double bore_m)
{
    double left = angle_rad / DEGREE_RAD;
    for (; left >= 70.0; left -= 90.0)
        add_fitting(planning, list, node, name, OW_PIECE_ELBOW_90, bore_m);
    if (left >= 20.0)
        add_fitting(planning, list, node, name, OW_PIECE_ELBOW_45, bore_m);
}

/* Cross-holes of a banjo bolt: as long as the wall between shank and axial bore. */
static void add_holes(ow_planning *planning, ow_piece_list *list, size_t node, const char *name,
                      const ow_part *part)
{
    double shank_m = ow_thread_major_m(&part->ends[0].thread);
    double wall_m = (shank_m - part->leg_bore_m[0]) / 2.0;
    ow_plan_add_piece(planning, list, node,
                      (ow_piece){.kind = OW_PIECE_HOLES,
                                 .name = name,
                                 .bore_m = part->hole_bore_m,
                                 .length_m = wall_m > 0.0002 ? wall_m : 0.0002,
                                 .count = part->hole_count > 0 ? part->hole_count : 1});
}

static void pass_banjo_bolt(ow_planning *planning, ow_piece_list *list, size_t node, const char *name,
                            const ow_part *part, size_t enter, size_t leave)
{
    if (enter == 0)
        add_pipe(planning, list, node, name, part->leg_bore_m[0], part->length_m);
    else
        add_holes(planning, list, node, name, part);
    if (leave == 0)
        add_pipe(planning, list, node, name, part->leg_bore_m[0], part->length_m);
    else
        add_holes(planning, list, node, name, part);
}

static void pass_restrictor(ow_planning *planning, ow_piece_list *list, size_t node, const char *name,
                            const ow_part *part, size_t enter, size_t leave)
{
    double rest_m = part->length_m > RESTRICTOR_HOLE_M ? part->length_m - RESTRICTOR_HOLE_M : 0.0;
    add_pipe(planning, list, node, name, part->leg_bore_m[enter], rest_m / 2.0);
    ow_plan_add_piece(planning, list, node,
                      (ow_piece){.kind = OW_PIECE_RESTRICTOR,
                                 .name = name,
                                 .bore_m = part->orifice_m,
                                 .length_m = RESTRICTOR_HOLE_M,
                                 .count = 1});
    add_pipe(planning, list, node, name, part->leg_bore_m[leave], rest_m / 2.0);
}

/* Whether two ends of a tee, cross or gauge adapter face each other. */
static bool is_run(const ow_part *part, size_t enter, size_t leave)
{
    size_t low = enter < leave ? enter : leave;
    size_t high = enter < leave ? leave : enter;
    return (low == 0 && high == 1) || (part->kind == OW_CROSS && low == 2 && high == 3);
}

static double leg_length(const ow_part *part, size_t end)
{
    double half_m = part->length_m > 0.0 ? part->length_m / 2.0 : 0.0;
    return end >= 2 && part->branch_length_m > 0.0 ? part->branch_length_m : half_m;
}

static void pass_tee(ow_planning *planning, ow_piece_list *list, size_t node, const char *name,
                     const ow_part *part, size_t enter, size_t leave, ow_passing passing)
{
    if (passing != OW_PASS_FROM_FORK)
        add_pipe(planning, list, node, name, part->leg_bore_m[enter], leg_length(part, enter));
    if (passing == OW_PASS_TO_FORK)
        return;
    add_fitting(planning, list, node, name,
                is_run(part, enter, leave) ? OW_PIECE_TEE_RUN : OW_PIECE_TEE_BRANCH,
                ow_part_bore_m(part, enter, leave));
    add_pipe(planning, list, node, name, part->leg_bore_m[leave], leg_length(part, leave));
}

void ow_plan_pass(ow_planning *planning, const ow_layout *layout, size_t node, size_t leave,
                  ow_passing passing, ow_piece_list *list)
{
    const ow_layout_node *at = &layout->nodes[node];
    const ow_part *part = at->part;
    ow_text text = ow_text_new(planning->context);
    ow_layout_node_name(&text, layout, node);
    const char *name = ow_arena_keep(&planning->arena, &text);
    if (name == NULL) {
        list->status = OW_MEMORY;
        return;
    }
    double bore_m = ow_part_bore_m(part, at->enter, leave);
    if (part->end_count > 2 && part->kind != OW_BANJO_BOLT) {
        pass_tee(planning, list, node, name, part, at->enter, leave, passing);
    } else if (part->kind == OW_BANJO_BOLT) {
        pass_banjo_bolt(planning, list, node, name, part, at->enter, leave);
    } else if (part->kind == OW_RESTRICTOR) {
        pass_restrictor(planning, list, node, name, part, at->enter, leave);
    } else {
        double length_m = at->length_m >= 0.0 ? at->length_m : part->kind == OW_HOSE ? 1.0 : part->length_m;
        if (part->kind == OW_BANJO_EYE)
            add_fitting(planning, list, node, name, OW_PIECE_ELBOW_90, bore_m);
        add_pipe(planning, list, node, name, bore_m, length_m);
        if (part->kind != OW_BANJO_EYE)
            add_turn(planning, list, node, name, part->angle_rad, bore_m);
        if (bore_m < 0.0)
            list->unknown = true;
    }
}

void ow_plan_path(ow_planning *planning, const ow_layout *layout, size_t given, ow_piece_list *list)
{
    size_t path[OW_PIECES_MAX];
    size_t count = 0;
    size_t node = 0;
    for (size_t index = 0; index < layout->node_count; index++) {
        if (layout->nodes[index].part == NULL && layout->nodes[index].given == given)
            node = index;
    }
    for (; node != OW_NODE_NONE && count < OW_PIECES_MAX; node = layout->nodes[node].parent)
        path[count++] = node;
    ow_plan_chamber(planning, layout->givens[0].name, 0, list);
    for (size_t index = count; index-- > 1;) {
        if (layout->nodes[path[index]].part != NULL)
            ow_plan_pass(planning, layout, path[index], layout->nodes[path[index - 1]].parent_end,
                         OW_PASS_WHOLE, list);
    }
    ow_plan_chamber(planning, layout->givens[given].name, count > 0 ? path[0] : 0, list);
}
