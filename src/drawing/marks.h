/* SPDX-License-Identifier: MIT */
/* Small signs: what a joint seals by, how grave a finding is, the number of a part. All ours. */
#ifndef OW_DRAWING_MARKS_H
#define OW_DRAWING_MARKS_H

#include "drawing/canvas.h"
#include "drawing/figure.h"

typedef enum ow_seat_mark {
    OW_MARK_TAPER,  /* two converging flanks */
    OW_MARK_FACE,   /* a washer between two faces */
    OW_MARK_O_RING, /* a round section in its groove */
    OW_MARK_CONE,   /* a nose in a cone */
    OW_MARK_BANJO,  /* an eye between two washers */
    OW_MARK_HOSE,   /* a hose on its own tail */
    OW_MARK_CLAMP,  /* a clamp round a tail */
    OW_MARK_FLANGE, /* two plates, a gasket, a bolt */
    OW_MARK_WELD,   /* a fillet (ISO 2553) */
    OW_MARK_NONE,   /* two ends that do not seal */
    OW_MARK_COUNT
} ow_seat_mark;

/* The mark of two ends put together, and what it stands for. */
ow_seat_mark ow_seat_mark_of(const ow_end *a, const ow_end *b);
const char *ow_seat_mark_words(ow_seat_mark mark);

#define OW_MARK_SIZE 4.0 /* mm */
/* Each is drawn in a square of OW_MARK_SIZE with that corner at its top left. */
void ow_draw_seat_mark(ow_canvas *canvas, ow_seat_mark mark, ow_spot corner);
/* A part's number in a circle (ISO 6433). */
void ow_draw_number(ow_canvas *canvas, size_t number, ow_spot corner);
/* An error's number in a black eight-corner, a warning's in a triangle, a note's in a square. */
void ow_draw_finding_mark(ow_canvas *canvas, ow_severity severity, size_t number, ow_spot corner);
/* A joint's letter: A to Z, AA to ZZ, AAA and on; no two joints have the same. */
void ow_joint_letter(size_t number, char letter[8]);
/* What it takes in bold type of a size, mm, beyond the room for one letter. */
double ow_joint_letter_more(size_t number, double size);

#endif
