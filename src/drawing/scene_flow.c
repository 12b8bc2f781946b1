/* SPDX-License-Identifier: MIT */
/* The way of the fluid, and the words around the figure, drawn. */
#include <math.h>

#include "drawing/marks.h"
#include "drawing/scene.h"

/* ---- flow ------------------------------------------------------------------------------------- */

/* What lies beyond an exit: 2 a port that is served, 1 only kept ones, 0 nothing. */
static int serves(const ow_layout *layout, size_t node)
{
    int best = 0;
    if (node == OW_NODE_NONE)
        return 0;
    for (size_t given = 1; given < layout->given_count; given++)
        if (ow_layout_on_path(layout, node, given)) {
            int rank = layout->givens[given].role == OW_ROLE_TO ? 2 : 1;
            best = rank > best ? rank : best;
        }
    return best;
}

static void arrow_on(ow_canvas *canvas, ow_spot from, ow_spot to, double share)
{
    ow_spot tip = {from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)};
    ow_draw_arrowhead(canvas, tip, (ow_spot){to.x - from.x, to.y - from.y}, 2.6);
}

/* Through a part: from the tip of one leg to the hub's axis, along it, and out at another's. */
static void part_flow(ow_canvas *canvas, const ow_scene *scene, size_t index, size_t exit, ow_pen pen)
{
    const ow_placed *placed = &scene->figure.nodes[index];
    size_t in = ow_figure_leg(&scene->figure, index, scene->layout->nodes[index].enter);
    ow_shape_move(canvas, ow_leg_tip(placed, in));
    ow_shape_line(canvas, ow_leg_origin(placed, in));
    ow_shape_line(canvas, ow_leg_origin(placed, exit));
    ow_shape_line(canvas, ow_leg_tip(placed, exit));
    ow_shape_end(canvas, pen, OW_FILL_NONE);
}

/* A port: from inside the machine to its mouth, or the other way. */
static void port_flow(ow_canvas *canvas, const ow_scene *scene, size_t index, bool source, ow_pen pen)
{
    const ow_placed *placed = &scene->figure.nodes[index];
    double direction = ow_leg_direction(placed, 0), back = placed->anatomy.head * placed->pose.scale - 1.2;
    ow_spot tip = ow_leg_tip(placed, 0), origin = ow_leg_origin(placed, 0);
    ow_spot inside = {origin.x - back * cos(direction), origin.y + back * sin(direction)};
    ow_draw_line(canvas, pen, source ? inside : tip, source ? tip : inside);
    if (pen == OW_PEN_FLOW)
        arrow_on(canvas, source ? inside : tip, source ? tip : inside, source ? 0.75 : 1.0);
}

static void hose_flow(ow_canvas *canvas, const ow_scene *scene, size_t index, ow_pen pen)
{
    ow_hose_way way;
    ow_figure_hose(&scene->figure, index, &way);
    ow_shape_move(canvas, way.spots[0]);
    for (size_t spot = 1; spot + 1 < way.count; spot++) {
        ow_spot a = way.spots[spot - 1], b = way.spots[spot], c = way.spots[spot + 1];
        double before = fmax(hypot(b.x - a.x, b.y - a.y), 1e-9),
               after = fmax(hypot(c.x - b.x, c.y - b.y), 1e-9);
        double reach = fmin(fmin(0.5 * before, 0.5 * after), fmax(2.2 * way.outer, 7.0));
        ow_spot p = {b.x - reach * (b.x - a.x) / before, b.y - reach * (b.y - a.y) / before};
        ow_spot q = {b.x + reach * (c.x - b.x) / after, b.y + reach * (c.y - b.y) / after};
        ow_shape_line(canvas, p);
        ow_shape_curve(canvas, (ow_spot){p.x + 0.667 * (b.x - p.x), p.y + 0.667 * (b.y - p.y)},
                       (ow_spot){q.x + 0.667 * (b.x - q.x), q.y + 0.667 * (b.y - q.y)}, q);
    }
    ow_shape_line(canvas, way.spots[way.count - 1]);
    ow_shape_end(canvas, pen, OW_FILL_NONE);
    if (pen == OW_PEN_FLOW)
        arrow_on(canvas, way.spots[way.count - 2], way.spots[way.count - 1], 0.8);
}

void ow_scene_flow(ow_canvas *canvas, const ow_scene *scene)
{
    const ow_layout *layout = scene->layout;
    static const ow_pen PENS[] = {OW_PEN_CENTRE, OW_PEN_CENTRE, OW_PEN_FLOW};
    for (int rank = 0; rank <= 2; rank++) /* the served ones last, on top */
        for (size_t index = 0; index < layout->node_count; index++) {
            const ow_layout_node *node = &layout->nodes[index];
            int own = serves(layout, index == 0 ? node->exits[0] : index);
            if (node->part == NULL && own == rank) {
                port_flow(canvas, scene, index, index == 0, PENS[rank]);
            } else if (node->part != NULL && scene->figure.nodes[index].is_hose && own == rank) {
                hose_flow(canvas, scene, index, PENS[rank]);
            } else if (node->part != NULL && !scene->figure.nodes[index].is_hose) {
                for (size_t end = 0; end < node->part->end_count; end++)
                    if (end != node->enter && serves(layout, node->exits[end]) == rank)
                        part_flow(canvas, scene, index, end, PENS[rank]);
            }
        }
}

/* ---- words ------------------------------------------------------------------------------------- */

/* An extension line from what is measured to a little beyond the dimension line. */
static void extend(ow_canvas *canvas, ow_spot edge, ow_spot line)
{
    double dx = line.x - edge.x, dy = line.y - edge.y;
    double length = hypot(dx, dy);
    if (length > 0.0)
        ow_draw_line(canvas, OW_PEN_THIN, edge,
                     (ow_spot){line.x + 1.2 * dx / length, line.y + 1.2 * dy / length});
}

static void draw_dimension(ow_canvas *canvas, const ow_measure *dimension)
{
    ow_spot along = {dimension->to.x - dimension->from.x, dimension->to.y - dimension->from.y};
    ow_spot back = {-along.x, -along.y};
    extend(canvas, dimension->from_edge, dimension->from);
    extend(canvas, dimension->to_edge, dimension->to);
    ow_draw_line(canvas, OW_PEN_THIN, dimension->from, dimension->to);
    ow_draw_arrowhead(canvas, dimension->to, along, 2.4);
    ow_draw_arrowhead(canvas, dimension->from, back, 2.4);
    ow_type type = {.size = 2.6, .anchor = OW_AT_MIDDLE, .turned = dimension->upright};
    const ow_box *box = &dimension->words_box;
    ow_spot at = dimension->upright ? (ow_spot){box->x1 - 0.4, 0.5 * (box->y0 + box->y1)}
                                    : (ow_spot){0.5 * (box->x0 + box->x1), box->y1 - 0.4};
    ow_draw_words(canvas, &type, at, dimension->words);
}

static void draw_label_lines(ow_canvas *canvas, const ow_label *label, double x, double y)
{
    ow_type type = {.size = label->size, .bold = label->bold};
    for (size_t line = 0; line < label->line_count; line++)
        ow_draw_words(canvas, &type, (ow_spot){x, y + 2.5 + 3.4 * (double)line}, label->lines[line]);
}

static void draw_joint_label(ow_canvas *canvas, const ow_label *label)
{
    char letter[8];
    ow_type type = {.size = OW_JOINT_LETTER, .bold = true};
    ow_spot corner = {label->at.box.x0 + 0.3, label->at.box.y0};
    double more = ow_joint_letter_more(label->number, OW_JOINT_LETTER);
    ow_joint_letter(label->number, letter);
    ow_draw_words(canvas, &type, (ow_spot){corner.x, corner.y + 4.4}, letter);
    ow_draw_seat_mark(canvas, (ow_seat_mark)label->mark, (ow_spot){corner.x + 3.6 + more, corner.y + 1.2});
    draw_label_lines(canvas, label, corner.x + OW_MARK_SIZE + 4.3 + more, corner.y);
}

static void draw_label(ow_canvas *canvas, const ow_label *label)
{
    ow_spot corner = {label->at.box.x0 + 0.3, label->at.box.y0 + 0.2};
    switch (label->kind) {
    case OW_LABEL_JOINT:
        draw_joint_label(canvas, label);
        break;
    case OW_LABEL_PART:
        ow_draw_number(canvas, label->number, corner);
        draw_label_lines(canvas, label, corner.x + OW_MARK_SIZE + 0.7, corner.y + 0.4);
        break;
    case OW_LABEL_FINDING:
        ow_draw_finding_mark(canvas, (ow_severity)label->mark, label->number,
                             (ow_spot){corner.x + 0.1, corner.y + 0.1});
        break;
    case OW_LABEL_PORT:
    case OW_LABEL_NOTE:
    default:
        draw_label_lines(canvas, label, corner.x, corner.y);
        break;
    }
}

void ow_scene_words(ow_canvas *canvas, const ow_scene *scene)
{
    for (size_t index = 0; index < scene->dimension_count; index++)
        draw_dimension(canvas, &scene->dimensions[index]);
    for (size_t index = 0; index < scene->labels.count; index++) {
        const ow_label *label = &scene->labels.items[index];
        ow_draw_line(canvas, OW_PEN_LEADER, label->at.from, label->at.anchor);
        if (label->kind == OW_LABEL_NOTE)
            ow_draw_arrowhead(
                canvas, label->at.anchor,
                (ow_spot){label->at.anchor.x - label->at.from.x, label->at.anchor.y - label->at.from.y}, 2.0);
        else
            ow_draw_circle(canvas, OW_PEN_NONE, OW_FILL_BLACK, label->at.anchor, 0.45);
    }
    for (size_t index = 0; index < scene->labels.count; index++)
        draw_label(canvas, &scene->labels.items[index]);
}
