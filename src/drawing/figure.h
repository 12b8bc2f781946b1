/* SPDX-License-Identifier: MIT */
/*
 * A layout laid out on paper: every part placed true to scale and angle, hoses shortened. Parts between two
 * hoses hold rigidly together: such a group is placed as one, turned and mirrored so that nothing overlaps
 * and its hoses leave to the right.
 */
#ifndef OW_DRAWING_FIGURE_H
#define OW_DRAWING_FIGURE_H

#include "base/memory.h"
#include "drawing/anatomy.h"
#include "drawing/canvas.h"

typedef struct ow_box { /* x0 <= x1, y0 <= y1; mm on the paper */
    double x0, y0, x1, y1;
} ow_box;

bool ow_boxes_meet(const ow_box *a, const ow_box *b, double margin);
void ow_box_join(ow_box *box, const ow_box *more);

/* Where a part lies: its hub, how it is turned (radians, counter-clockwise) and whether it is mirrored. */
typedef struct ow_pose {
    ow_spot hub;
    double turn;
    double flip; /* 1 or -1 */
    double scale;
} ow_pose;

/* A place in a part's frame, mm, on the paper. */
ow_spot ow_pose_spot(const ow_pose *pose, double x, double y);

typedef struct ow_placed {
    ow_anatomy anatomy;
    const ow_drawn_end *mates[OW_PART_ENDS]; /* by leg; NULL: left open */
    ow_pose pose;
    ow_box around; /* its boxes, once its group is placed */
    size_t group;
    bool is_hose; /* or a long pipe: between two groups, without a pose */
    bool mirrored, second_mirrored;
} ow_placed;

typedef struct ow_group {
    size_t root;   /* its first node */
    size_t hose;   /* node of the hose that leads to it; OW_NODE_NONE for the first */
    size_t parent; /* group that hose leaves from */
    double start;  /* direction of its entry */
    ow_box bounds; /* of its own parts, then of everything that hangs on it */
    ow_spot shift; /* from its parent's origin to its own */
} ow_group;

typedef struct ow_figure {
    const ow_layout *layout;
    double scale; /* mm on paper per mm */
    ow_placed *nodes;
    ow_group *groups;
    size_t group_count;
    ow_box bounds;
    ow_arena arena;
} ow_figure;

/* OW_OK, OW_MEMORY. The layout must outlive it. Placed by ow_figure_arrange. */
ow_status ow_figure_new(const ow_context *context, const ow_layout *layout, ow_figure *figure);
void ow_figure_done(ow_figure *figure);
/* Chooses how each group is mirrored and turned, a flat one rather than a tall one if `flat`; once, before
 * ow_figure_arrange. */
void ow_figure_choose(ow_figure *figure, bool flat);
/* Places everything at a scale, the source's face at the origin. */
void ow_figure_arrange(ow_figure *figure, double scale);

/* ---- places -------------------------------------------------------------------------------- */

/* A node's leg for one of its ends; a port has one leg only. */
size_t ow_figure_leg(const ow_figure *figure, size_t node, size_t end);
/* The spot where a leg leaves the axis, its tip, and its direction (radians, counter-clockwise). */
ow_spot ow_leg_origin(const ow_placed *placed, size_t leg);
ow_spot ow_leg_tip(const ow_placed *placed, size_t leg);
double ow_leg_direction(const ow_placed *placed, size_t leg);
/* Largest radius of a leg with what sits over it, mm. */
double ow_leg_radius(const ow_placed *placed, size_t leg);

#define OW_PLACED_BOXES 24
/* Boxes that cover a node; returns their number. */
size_t ow_placed_boxes(const ow_placed *placed, ow_box boxes[OW_PLACED_BOXES]);

/* The way of a hose between two groups: from its first end, over corners, to its second end. */
#define OW_HOSE_SPOTS 6
typedef struct ow_hose_way {
    ow_spot spots[OW_HOSE_SPOTS];
    size_t count;
    double outer, inner;         /* diameters on paper, at its first end */
    double far_outer, far_inner; /* at its second: a stepped hose changes between */
    bool open;                   /* its far end hangs free */
} ow_hose_way;
void ow_figure_hose(const ow_figure *figure, size_t node, ow_hose_way *way);

/* Least length on paper of a hose between two groups on one height. */
#define OW_HOSE_SHOWN 34.0

#endif
