/* SPDX-License-Identifier: MIT */
/* What is written around a figure. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "drawing/letters.h"
#include "drawing/marks.h"
#include "drawing/scene.h"

#define TYPE 2.6 /* of labels, mm: a little more than ISO 3098's least */
#define LEADING 3.4

size_t ow_scene_joint_number(size_t child)
{
    return child - 1;
}

static void size_label(ow_label *label, double before)
{
    label->size = TYPE;
    label->width = before;
    for (size_t line = 0; line < label->line_count; line++)
        label->width = fmax(label->width, before + ow_words_width(label->lines[line], TYPE, label->bold));
    label->width += 0.6;
    label->height = fmax(LEADING * (double)label->line_count, before > 0.0 ? OW_MARK_SIZE : 0.0) + 0.4;
}

static const char *keep_words(ow_scene *scene, const ow_text *text)
{
    const char *copy = ow_arena_copy(&scene->words, ow_text_words(text), text->length);
    if (copy == NULL || text->failed)
        scene->labels.failed = true;
    return copy == NULL ? "" : copy;
}

static const char *end_words(ow_scene *scene, const ow_end *end)
{
    char buffer[OW_END_TEXT_SIZE];
    const char *name = ow_end_name(end, buffer);
    const char *copy = ow_arena_copy(&scene->words, name, strlen(name));
    if (copy == NULL)
        scene->labels.failed = true;
    return copy == NULL ? "" : copy;
}

/* Two spots on either side of a leg, at a distance from its hub in mm. */
static void side_anchors(const ow_placed *placed, size_t leg, double along, double radius, ow_label *label)
{
    double direction = ow_leg_direction(placed, leg), scale = placed->pose.scale;
    ow_spot origin = ow_leg_origin(placed, leg);
    ow_spot at = {origin.x + scale * along * cos(direction), origin.y - scale * along * sin(direction)};
    for (int side = -1; side <= 1; side += 2)
        if (label->anchor_count < OW_LABEL_ANCHORS)
            label->anchors[label->anchor_count++] = (ow_spot){at.x + side * scale * radius * sin(direction),
                                                              at.y + side * scale * radius * cos(direction)};
}

/* ---- joints -------------------------------------------------------------------------------- */

/* Radius of what shows at a leg's tip. */
static double rim_radius(const ow_placed *placed, size_t leg)
{
    const ow_drawn_end *form = &placed->anatomy.legs[leg].form;
    switch (form->look) {
    case OW_LOOK_NUT:
        return 0.5 * OW_CORNERS * fmax(form->across_mm, form->major_mm + 2.0);
    case OW_LOOK_SLEEVE:
        return 0.5 * form->outer_mm + fmax(0.9, 0.09 * form->outer_mm);
    case OW_LOOK_STUB:
    case OW_LOOK_SPUD:
        return 0.5 * form->major_mm;
    case OW_LOOK_BARB:
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
    case OW_LOOK_PLATE:
    case OW_LOOK_WELD:
        return 0.5 * form->outer_mm;
    case OW_LOOK_POCKET:
    case OW_LOOK_HOSE:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
    default:
        return placed->anatomy.body;
    }
}

/* Where a joint shows from outside: the rim of the outer one of its two ends. */
static void anchor_joint(const ow_scene *scene, size_t child, ow_label *label)
{
    const ow_figure *figure = &scene->figure;
    const ow_layout_node *node = &scene->layout->nodes[child];
    size_t own = ow_figure_leg(figure, child, node->enter);
    size_t other = ow_figure_leg(figure, node->parent, node->parent_end);
    const ow_placed *a = &figure->nodes[child], *b = &figure->nodes[node->parent];
    bool outer_is_child = !ow_form_is_inner(a->anatomy.legs[own].form.look) && !a->is_hose;
    const ow_placed *outer = outer_is_child || b->is_hose ? a : b;
    size_t leg = outer == a ? own : other;
    const ow_anatomy *anatomy = &outer->anatomy;
    if (anatomy->build == OW_BUILD_BOLT || anatomy->build == OW_BUILD_EYE) {
        const ow_placed *bolt = a->anatomy.build == OW_BUILD_BOLT ? a : b;
        size_t stud = bolt == a ? own : other;
        if (bolt->anatomy.build == OW_BUILD_BOLT && stud > 0) { /* at its rings */
            ow_spot origin = ow_leg_origin(bolt, stud);
            double direction = ow_leg_direction(bolt, stud), scale = bolt->pose.scale;
            double reach = -0.9 * bolt->anatomy.width;
            label->anchors[label->anchor_count++] = (ow_spot){origin.x + scale * reach * cos(direction),
                                                              origin.y - scale * reach * sin(direction)};
            return;
        }
    }
    side_anchors(outer, leg, anatomy->legs[leg].length - 0.5, rim_radius(outer, leg), label);
}

static void label_joint(ow_scene *scene, size_t child)
{
    const ow_end *upper = ow_layout_parent_end(scene->layout, child);
    const ow_end *lower = ow_layout_child_end(scene->layout, child);
    ow_label label = {.kind = OW_LABEL_JOINT,
                      .number = ow_scene_joint_number(child),
                      .mark = ow_seat_mark_of(upper, lower),
                      .line_count = 2};
    label.lines[0] = end_words(scene, upper);
    label.lines[1] = end_words(scene, lower);
    anchor_joint(scene, child, &label);
    size_label(&label, OW_MARK_SIZE + 4.6 + ow_joint_letter_more(label.number, OW_JOINT_LETTER));
    ow_labels_add(&scene->labels, &label);
}

/* ---- ports and parts ------------------------------------------------------------------------ */

static void label_port(ow_scene *scene, size_t index)
{
    const ow_given *given = &scene->layout->givens[scene->layout->nodes[index].given];
    const ow_placed *placed = &scene->figure.nodes[index];
    ow_label label = {.kind = OW_LABEL_PORT, .line_count = 1, .bold = true};
    ow_text text = ow_text_new(scene->labels.context);
    if (given->machine != NULL || given->fixture != NULL) /* a bare END is called by its role already */
        ow_text_add(&text, given->role == OW_ROLE_SOURCE ? "from "
                           : given->role == OW_ROLE_TO   ? "to "
                                                         : "kept: ");
    ow_text_add(&text, given->name);
    label.lines[0] = keep_words(scene, &text);
    ow_text_done(&text);
    /* The hexagon of a switch is its widest part. */
    double back = (placed->anatomy.build == OW_BUILD_PORT ? -0.5 : -0.15) * placed->anatomy.head;
    side_anchors(placed, 0, back, placed->anatomy.body, &label);
    size_label(&label, 0.0);
    ow_labels_add(&scene->labels, &label);
}

static ow_spot hose_spot(const ow_scene *scene, size_t index, double share)
{
    ow_hose_way way;
    ow_figure_hose(&scene->figure, index, &way);
    ow_spot a = way.spots[way.count - 2], b = way.spots[way.count - 1];
    return (ow_spot){a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

static void anchor_part(const ow_scene *scene, size_t index, ow_label *label)
{
    const ow_placed *placed = &scene->figure.nodes[index];
    if (placed->is_hose) {
        ow_spot at = hose_spot(scene, index, 0.3);
        double half = 0.5 * scene->figure.scale * placed->anatomy.legs[0].form.outer_mm;
        label->anchors[label->anchor_count++] = (ow_spot){at.x, at.y - half};
        label->anchors[label->anchor_count++] = (ow_spot){at.x, at.y + half};
        return;
    }
    if (placed->anatomy.build == OW_BUILD_BLOCK) { /* on the cut metal beside the hub */
        label->anchors[label->anchor_count++] = ow_pose_spot(&placed->pose, 0.0, -0.8 * placed->anatomy.body);
        label->anchors[label->anchor_count++] =
            ow_pose_spot(&placed->pose, -0.8 * placed->anatomy.body, 0.7 * placed->anatomy.body);
        label->anchors[label->anchor_count++] =
            ow_pose_spot(&placed->pose, 0.8 * placed->anatomy.body, 0.7 * placed->anatomy.body);
        return;
    }
    if (placed->anatomy.build == OW_BUILD_BOLT) { /* on its head */
        double head = placed->anatomy.legs[placed->anatomy.leg_count - 1].along +
                      0.5 * placed->anatomy.width + placed->anatomy.legs[1].form.ring_mm +
                      0.5 * placed->anatomy.head;
        label->anchors[label->anchor_count++] = ow_pose_spot(&placed->pose, head, 0.8 * placed->anatomy.body);
        label->anchors[label->anchor_count++] =
            ow_pose_spot(&placed->pose, head, -0.8 * placed->anatomy.body);
        return;
    }
    side_anchors(
        placed, placed->anatomy.build == OW_BUILD_EYE ? 1 : 0,
        placed->anatomy.build == OW_BUILD_EYE ? 0.6 * placed->anatomy.body : 0.0,
        0.75 * (placed->anatomy.build == OW_BUILD_EYE ? 0.5 * placed->anatomy.width : placed->anatomy.body),
        label);
}

static void label_part(ow_scene *scene, size_t index)
{
    const ow_layout_node *node = &scene->layout->nodes[index];
    ow_label label = {.kind = OW_LABEL_PART, .number = scene->part_numbers[index], .line_count = 1};
    ow_text text = ow_text_new(scene->labels.context);
    ow_layout_node_name(&text, scene->layout, index);
    if (node->part->kind == OW_HOSE && node->length_m > 0.0) {
        ow_text_add(&text, ", ");
        ow_quantity_write(&text, OW_LENGTH, node->length_m, 0);
    }
    label.lines[0] = keep_words(scene, &text);
    ow_text_done(&text);
    anchor_part(scene, index, &label);
    size_label(&label, OW_MARK_SIZE + 0.8);
    ow_labels_add(&scene->labels, &label);
}

/* ---- notes and findings ----------------------------------------------------------------------- */

/* Spots in the bore on the way through a part: at its hub, and half-way along each leg. */
static void bore_anchors(const ow_scene *scene, size_t index, ow_label *label)
{
    const ow_placed *placed = &scene->figure.nodes[index];
    const ow_layout_node *node = &scene->layout->nodes[index];
    if (placed->is_hose) {
        label->anchors[label->anchor_count++] = hose_spot(scene, index, 0.7);
        return;
    }
    label->anchors[label->anchor_count++] = placed->pose.hub;
    for (size_t leg = 0; leg < placed->anatomy.leg_count && node->part->kind != OW_RESTRICTOR; leg++)
        if ((leg == node->enter || node->exits[leg] != OW_NODE_NONE) &&
            label->anchor_count < OW_LABEL_ANCHORS) {
            ow_spot tip = ow_leg_tip(placed, leg), hub = ow_leg_origin(placed, leg);
            label->anchors[label->anchor_count++] = (ow_spot){0.5 * (hub.x + tip.x), 0.5 * (hub.y + tip.y)};
        }
}

static void add_note(ow_scene *scene, size_t index, const char *what, double bore_m)
{
    ow_label label = {.kind = OW_LABEL_NOTE, .line_count = 1, .bold = true};
    ow_text text = ow_text_new(scene->labels.context);
    ow_text_add(&text, what);
    ow_quantity_write(&text, OW_LENGTH, bore_m, 2);
    label.lines[0] = keep_words(scene, &text);
    ow_text_done(&text);
    bore_anchors(scene, index, &label);
    size_label(&label, 0.0);
    ow_labels_add(&scene->labels, &label);
}

static void label_notes(ow_scene *scene)
{
    const ow_layout *layout = scene->layout;
    if (scene->narrowest != OW_NODE_NONE && ow_layout_narrowest_bore_m(layout) > 0.0)
        add_note(scene, scene->narrowest, "narrowest bore ", ow_layout_narrowest_bore_m(layout));
    for (size_t index = 1; index < layout->node_count; index++)
        if (layout->nodes[index].part != NULL && layout->nodes[index].part->kind == OW_RESTRICTOR &&
            layout->nodes[index].part->orifice_m > 0.0)
            add_note(scene, index, "restrictor, hole ", layout->nodes[index].part->orifice_m);
}

/* Where along its first leg a whole part shows its full width. */
static double finding_along(const ow_anatomy *anatomy)
{
    if (anatomy->build == OW_BUILD_PORT)
        return -2.0;
    return anatomy->build == OW_BUILD_SWITCH || anatomy->build == OW_BUILD_SENDER ? -0.15 * anatomy->head
                                                                                  : 1.5;
}

static void label_finding(ow_scene *scene, size_t number)
{
    const ow_finding *finding = &scene->findings->items[number];
    size_t end = OW_PART_ENDS;
    size_t node = ow_scene_where(scene->labels.context, scene->layout, finding->where, &end);
    if (node == OW_NODE_NONE)
        return;
    ow_label label = {.kind = OW_LABEL_FINDING,
                      .number = number + 1,
                      .mark = finding->severity,
                      .width = OW_MARK_SIZE + 0.8,
                      .height = OW_MARK_SIZE + 0.6};
    const ow_placed *placed = &scene->figure.nodes[node];
    if (placed->is_hose)
        label.anchors[label.anchor_count++] = hose_spot(scene, node, 0.85);
    else if (end < placed->anatomy.leg_count)
        side_anchors(placed, end, placed->anatomy.legs[end].length - 0.5, rim_radius(placed, end), &label);
    else
        side_anchors(placed, 0, finding_along(&placed->anatomy), placed->anatomy.body, &label);
    ow_labels_add(&scene->labels, &label);
}

/* ---- all ------------------------------------------------------------------------------------- */

/* The boxes of a hose or pipe along its way, and of the nuts at a pipe's ends. */
static size_t hose_boxes(const ow_figure *figure, size_t index, ow_box boxes[OW_PLACED_BOXES])
{
    const ow_anatomy *anatomy = &figure->nodes[index].anatomy;
    ow_hose_way way;
    size_t count = 0;
    ow_figure_hose(figure, index, &way);
    double half = 0.5 * fmax(way.outer, way.far_outer) + 0.6;
    for (; count + 1 < way.count; count++)
        boxes[count] = (ow_box){fmin(way.spots[count].x, way.spots[count + 1].x) - half,
                                fmin(way.spots[count].y, way.spots[count + 1].y) - half,
                                fmax(way.spots[count].x, way.spots[count + 1].x) + half,
                                fmax(way.spots[count].y, way.spots[count + 1].y) + half};
    for (size_t leg = 0; leg < anatomy->leg_count && anatomy->build == OW_BUILD_PIPE; leg++) {
        const ow_drawn_end *form = &anatomy->legs[leg].form, *mate = figure->nodes[index].mates[leg];
        bool first = leg == figure->layout->nodes[index].enter;
        ow_spot tip = way.spots[first ? 0 : way.count - 1], next = way.spots[first ? 1 : way.count - 2];
        double length = fmax(hypot(next.x - tip.x, next.y - tip.y), 1e-9),
               reach = figure->scale * form->stub_mm;
        double across = form->look == OW_LOOK_PIPE && mate != NULL ? 1.3 * mate->major_mm : form->across_mm;
        double wide = 0.5 * OW_CORNERS * figure->scale * fmax(across, form->major_mm + 2.0);
        ow_spot back = {tip.x + reach * (next.x - tip.x) / length, tip.y + reach * (next.y - tip.y) / length};
        boxes[count++] = (ow_box){fmin(tip.x, back.x) - wide * fabs(next.y - tip.y) / length,
                                  fmin(tip.y, back.y) - wide * fabs(next.x - tip.x) / length,
                                  fmax(tip.x, back.x) + wide * fabs(next.y - tip.y) / length,
                                  fmax(tip.y, back.y) + wide * fabs(next.x - tip.x) / length};
    }
    return count;
}

void ow_scene_block(ow_scene *scene)
{
    const ow_figure *figure = &scene->figure;
    for (size_t index = 0; index < scene->layout->node_count; index++) {
        ow_box boxes[OW_PLACED_BOXES];
        size_t count = figure->nodes[index].is_hose ? hose_boxes(figure, index, boxes)
                                                    : ow_placed_boxes(&figure->nodes[index], boxes);
        for (size_t box = 0; box < count; box++)
            ow_labels_block(&scene->labels, &boxes[box], false);
    }
}

void ow_scene_label(ow_scene *scene)
{
    for (size_t number = 0; scene->findings != NULL && number < scene->findings->count; number++)
        label_finding(scene, number);
    label_notes(scene);
    for (size_t index = 0; index < scene->layout->node_count; index++)
        if (scene->layout->nodes[index].part == NULL)
            label_port(scene, index);
    for (size_t child = 1; child < scene->layout->node_count; child++)
        label_joint(scene, child);
    for (size_t index = 1; index < scene->layout->node_count; index++)
        if (scene->layout->nodes[index].part != NULL)
            label_part(scene, index);
    if (!scene->labels.failed)
        ow_labels_place(&scene->labels);
}
