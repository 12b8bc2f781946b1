/* SPDX-License-Identifier: MIT */
/* A layout's drawing before it is written: the figure on its paper, its dimensions and its labels. */
#ifndef OW_DRAWING_SCENE_H
#define OW_DRAWING_SCENE_H

#include "drawing/figure.h"
#include "drawing/labels.h"
#include "oilway/finding.h"

#define OW_PAPER_WIDTH 190.0 /* mm: what A4 and Letter both have between margins of 10 mm */

/* A dimension: from one extension line to another. */
typedef struct ow_measure {
    ow_spot from, to;           /* ends of the arrows */
    ow_spot from_edge, to_edge; /* what is measured */
    char words[32];
    ow_box words_box;
    bool upright;
} ow_measure;

#define OW_MEASURES_MAX 8

typedef struct ow_scene {
    const ow_layout *layout;
    const ow_findings *findings; /* may be NULL */
    ow_figure figure;
    ow_labels labels;
    ow_measure dimensions[OW_MEASURES_MAX];
    size_t dimension_count;
    size_t narrowest;     /* node, or OW_NODE_NONE */
    size_t *part_numbers; /* by node; 0: not a part */
    ow_arena words;
} ow_scene;

/* Arranges, measures and labels a layout. most_height: of everything with its words, mm, kept to as far as
 * the scale may shrink while words keep their size; 0: free. OW_OK, OW_MEMORY. The layout and findings must
 * outlive it. */
ow_status ow_scene_new(const ow_context *context, const ow_layout *layout, const ow_findings *findings,
                       double most_height, ow_scene *scene);
void ow_scene_done(ow_scene *scene);

/* scene_label.c: keeps words off the parts. */
void ow_scene_block(ow_scene *scene);
/* Labels for every port, joint and part, the notes and the findings. */
void ow_scene_label(ow_scene *scene);
/* scene_measure.c: how far each rigid group stands out from the port that it is screwed to. */
void ow_scene_measure(ow_scene *scene);
/* scene_where.c: the node that a finding speaks of, OW_NODE_NONE if it names none; *end its end, or
 * OW_PART_ENDS. */
size_t ow_scene_where(const ow_context *context, const ow_layout *layout, const char *where, size_t *end);

/* scene_flow.c: the way of the oil or coolant, and the still branches. */
void ow_scene_flow(ow_canvas *canvas, const ow_scene *scene);
/* Dimensions, leaders and labels. */
void ow_scene_words(ow_canvas *canvas, const ow_scene *scene);

#define OW_JOINT_LETTER 3.2 /* size of a joint's letter in its label, mm */
/* The order in which joints are lettered is that of their child nodes. */
size_t ow_scene_joint_number(size_t child);

#endif
