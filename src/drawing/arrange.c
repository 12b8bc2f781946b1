/* SPDX-License-Identifier: MIT */
/* Groups put side by side, and the hoses between them. */
#include <float.h>
#include <math.h>

#include "drawing/embed.h"

#define ROW_GAP 9.0 /* between rows, for labels */
#define SLANT 24.0  /* along a slanted end before the hose turns level */

typedef struct way_out { /* of a hose from its group */
    size_t child;        /* group */
    ow_spot spot;
    double direction;
} way_out;

/* The tip that a hose node hangs on, and its direction. */
static void hose_start(const ow_figure *figure, size_t hose, ow_spot *spot, double *direction)
{
    const ow_layout_node *node = &figure->layout->nodes[hose];
    const ow_placed *parent = &figure->nodes[node->parent];
    size_t leg = ow_figure_leg(figure, node->parent, node->parent_end);
    *spot = ow_leg_tip(parent, leg);
    *direction = ow_leg_direction(parent, leg);
    double overlap =
        ow_form_overlap(&parent->anatomy.legs[leg].form, &figure->nodes[hose].anatomy.legs[node->enter].form);
    spot->x -= figure->scale * overlap * cos(*direction);
    spot->y += figure->scale * overlap * sin(*direction);
}

/* The tip of a group's root where its hose arrives, the overlap taken off. */
static ow_spot hose_finish(const ow_figure *figure, const ow_group *group)
{
    const ow_layout_node *node = &figure->layout->nodes[group->root];
    const ow_placed *root = &figure->nodes[group->root];
    size_t leg = ow_figure_leg(figure, group->root, node->enter);
    ow_spot spot = ow_leg_tip(root, leg);
    double direction = ow_leg_direction(root, leg); /* outward: towards the hose */
    double overlap = ow_form_overlap(&root->anatomy.legs[leg].form,
                                     &figure->nodes[group->hose].anatomy.legs[node->parent_end].form);
    spot.x -= figure->scale * overlap * cos(direction);
    spot.y += figure->scale * overlap * sin(direction);
    return spot;
}

/* How long a hose is shown: what its ends hide, and a piece that can be seen. */
static double shown_length(const ow_figure *figure, size_t hose)
{
    const ow_anatomy *anatomy = &figure->nodes[hose].anatomy;
    double hidden = 0.0;
    for (size_t leg = 0; leg < anatomy->leg_count; leg++) {
        const ow_drawn_end *mate = figure->nodes[hose].mates[leg];
        if (anatomy->build == OW_BUILD_PIPE)
            hidden += anatomy->legs[leg].form.stub_mm;
        else if (mate != NULL)
            hidden += mate->enter_mm;
    }
    return fmax(OW_HOSE_SHOWN, 16.0 + figure->scale * hidden);
}

/* Order of rows: straight ones first, then those that leave upward from right to left, then downward. */
static int rank_way(const way_out *way)
{
    return cos(way->direction) > 0.5 ? 0 : sin(way->direction) > -0.5 ? 1 : 2;
}

static void sort_ways(way_out *ways, size_t count)
{
    for (size_t i = 1; i < count; i++)
        for (size_t j = i; j > 0; j--) {
            int before = rank_way(&ways[j - 1]), after = rank_way(&ways[j]);
            if (before < after || (before == after && ways[j - 1].spot.x >= ways[j].spot.x))
                break;
            way_out held = ways[j];
            ways[j] = ways[j - 1];
            ways[j - 1] = held;
        }
}

/* Shifts a child's block so that it stands clear of what its parent's block holds already. */
static void place_child(ow_figure *figure, ow_group *parent, const ow_box *own, const way_out *way,
                        bool first)
{
    ow_group *child = &figure->groups[way->child];
    ow_box block = child->bounds;
    int rank = rank_way(way);
    double shown = shown_length(figure, child->hose), rise = sin(way->direction) * SLANT;
    double y = way->spot.y, x = way->spot.x + shown;
    if (rank == 0) {
        y -= fabs(rise) > 1.0 ? rise : 0.0; /* a slanted end leads up or down first */
        x = fmax(own->x1, way->spot.x) + shown;
        if (!first && y + block.y0 < parent->bounds.y1 + ROW_GAP)
            y = parent->bounds.y1 + ROW_GAP - block.y0;
    } else if (rank == 1) {
        y = parent->bounds.y0 - ROW_GAP - block.y1;
        y = fmin(y, way->spot.y - 14.0);
    } else {
        y = parent->bounds.y1 + ROW_GAP - block.y0;
        y = fmax(y, way->spot.y + 14.0);
    }
    child->shift = (ow_spot){x, y};
    block.x0 += x;
    block.x1 += x;
    block.y0 += y;
    block.y1 += y;
    ow_box_join(&parent->bounds, &block);
    ow_box_join(&parent->bounds, &(ow_box){way->spot.x, way->spot.y, way->spot.x, way->spot.y});
}

static void arrange_group(ow_figure *figure, size_t index)
{
    ow_group *group = &figure->groups[index];
    way_out ways[16];
    size_t count = 0;
    ow_place_group(figure, index, (ow_spot){0.0, 0.0});
    group->bounds = ow_group_bounds(figure, index);
    ow_box own = group->bounds;
    for (size_t child = index + 1; child < figure->group_count && count < 16; child++)
        if (figure->groups[child].parent == index) {
            ways[count].child = child;
            hose_start(figure, figure->groups[child].hose, &ways[count].spot, &ways[count].direction);
            count++;
        }
    sort_ways(ways, count);
    for (size_t way = 0; way < count; way++)
        place_child(figure, group, &own, &ways[way], way == 0);
}

void ow_figure_arrange(ow_figure *figure, double scale)
{
    figure->scale = scale;
    for (size_t index = figure->group_count; index-- > 0;)
        arrange_group(figure, index);
    figure->bounds = figure->groups[0].bounds;
    figure->groups[0].shift = (ow_spot){0.0, 0.0};
    for (size_t index = 0; index < figure->group_count; index++) {
        ow_group *group = &figure->groups[index];
        if (index > 0) {
            group->shift.x += figure->groups[group->parent].shift.x;
            group->shift.y += figure->groups[group->parent].shift.y;
        }
        ow_place_group(figure, index, group->shift);
    }
}

/* ---- the way of a hose --------------------------------------------------------------------- */

static void add_spot(ow_hose_way *way, double x, double y)
{
    if (way->count < OW_HOSE_SPOTS)
        way->spots[way->count++] = (ow_spot){x, y};
}

void ow_figure_hose(const ow_figure *figure, size_t node, ow_hose_way *way)
{
    const ow_anatomy *anatomy = &figure->nodes[node].anatomy;
    double direction = 0.0;
    ow_spot start = {0.0, 0.0}, finish;
    size_t group = 0;
    *way = (ow_hose_way){.count = 0};
    const ow_leg *near = &anatomy->legs[figure->layout->nodes[node].enter], *far = near;
    if (anatomy->leg_count == 2)
        far = &anatomy->legs[1 - figure->layout->nodes[node].enter];
    way->outer = figure->scale * near->form.outer_mm;
    way->inner = figure->scale * fmax(near->bore, 0.5);
    way->far_outer = figure->scale * far->form.outer_mm;
    way->far_inner = figure->scale * fmax(far->bore, 0.5);
    hose_start(figure, node, &start, &direction);
    while (group < figure->group_count && figure->groups[group].hose != node)
        group++;
    way->open = group == figure->group_count;
    if (way->open)
        finish =
            (ow_spot){start.x + OW_HOSE_SHOWN * cos(direction), start.y - OW_HOSE_SHOWN * sin(direction)};
    else
        finish = hose_finish(figure, &figure->groups[group]);
    add_spot(way, start.x, start.y);
    bool level = fabs(finish.y - start.y) < 0.05;
    if (!way->open && !(level && cos(direction) > 0.99)) {
        if (fabs(sin(direction)) > 0.05 && (finish.y - start.y) * sin(direction) < 0.0) {
            /* on along its end until it is level with the other, then right */
            add_spot(way, start.x - (finish.y - start.y) * cos(direction) / sin(direction), finish.y);
        } else if (fabs(sin(direction)) > 0.5) {
            add_spot(way, start.x, finish.y);
        } else if (cos(direction) > 0.0) { /* a step */
            double middle = start.x + 0.45 * (finish.x - start.x);
            add_spot(way, middle, start.y);
            add_spot(way, middle, finish.y);
        } else { /* back: round the outside */
            add_spot(way, start.x - 12.0, start.y);
            add_spot(way, start.x - 12.0, finish.y);
        }
    }
    add_spot(way, finish.x, finish.y);
}
