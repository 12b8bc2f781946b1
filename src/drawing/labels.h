/* SPDX-License-Identifier: MIT */
/*
 * Labels put where nothing else is, each with a leader to its place. Every label is tried at all places
 * around its anchors, nearest first. Then those that came off worst are tried again as if they had been
 * first: the labels in their way are placed anew, and the change is kept if all together stand better. No two
 * ever overlap. The effort has a bound: where it is spent nothing is tried again, and what has no place yet
 * goes below the drawing, so that a layout of hundreds of parts is drawn too, if not well.
 */
#ifndef OW_DRAWING_LABELS_H
#define OW_DRAWING_LABELS_H

#include "drawing/figure.h"

#define OW_LABEL_GAP 0.9         /* between labels, and around obstacles, mm */
#define OW_LABEL_NO_PLACE 1000.0 /* what a label costs that found none */
#define OW_LABEL_FAR 120.0       /* and one whose leader is as long as a hand, or runs over much */
#define OW_LABEL_EFFORT \
    400000000 /* looks at places and at labels there: a second or so; counted, not timed */
#define OW_LABEL_LINES 3
#define OW_LABEL_ANCHORS 4

typedef enum ow_label_kind {
    OW_LABEL_PORT,
    OW_LABEL_JOINT,
    OW_LABEL_PART,
    OW_LABEL_NOTE,   /* narrowest bore, orifice, length of a hose */
    OW_LABEL_FINDING /* a mark alone */
} ow_label_kind;

typedef struct ow_label_place {
    ow_box box;
    ow_spot anchor; /* the one that is pointed at */
    ow_spot from;   /* where the leader leaves the box */
    ow_box reach;   /* round box and leader */
    double cost;
    bool placed;
} ow_label_place;

typedef struct ow_label {
    ow_label_kind kind;
    size_t number; /* part: its number; joint: its letter from 0; finding: its number */
    size_t mark;   /* joint: its seat mark; finding: its severity */
    const char *lines[OW_LABEL_LINES];
    size_t line_count;
    double size; /* of the type, mm */
    bool bold;
    double width, height;
    ow_spot anchors[OW_LABEL_ANCHORS];
    size_t anchor_count;
    ow_label_place at; /* set by placing */
} ow_label;

/* What no label may cover. Leaders may run over a part, at a cost; not over words. */
typedef struct ow_obstacle {
    ow_box box;
    bool words;
} ow_obstacle;

typedef struct ow_labels {
    const ow_context *context;
    ow_label *items;
    size_t count, capacity;
    ow_obstacle *obstacles;
    size_t obstacle_count, obstacle_capacity;
    double least_x, most_x;         /* of the paper */
    double least_y, most_y;         /* the same; a label that finds no place between them goes below */
    const struct ow_label_map *map; /* of the obstacles, while labels are placed */
    size_t looked;                  /* the effort spent; kept when labels are done, to go on with */
    bool failed;
} ow_labels;

/* As wide as the paper, and as tall as it likes. */
ow_labels ow_labels_new(const ow_context *context, double least_x, double most_x);
void ow_labels_done(ow_labels *labels);
void ow_labels_add(ow_labels *labels, const ow_label *label);
void ow_labels_block(ow_labels *labels, const ow_box *box, bool words);
/* Finds every label its place. OW_MEMORY marks the labels as failed. */
void ow_labels_place(ow_labels *labels);
/* Whether one found no place, and stands below everything, or none near what it speaks of. */
bool ow_labels_are_crowded(const ow_labels *labels);
/* Whether all effort is spent. */
bool ow_labels_are_spent(const ow_labels *labels);
/* The box around all of them. */
ow_box ow_labels_bounds(const ow_labels *labels);

/* label_place.c: the best place for one label among the others; `alone` as if no other were there. */
ow_label_place ow_label_find_place(ow_labels *labels, const ow_label *label, bool alone);
/* Whether two labels, or the leader of one and the words of the other, are in each other's way. */
bool ow_labels_collide(const ow_label *a, const ow_label *b);

#endif
