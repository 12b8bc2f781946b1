/* SPDX-License-Identifier: MIT */
/* A made part before it is drawn: what the catalogue lacks, with the lengths and bores that it would be
 * given. */
#ifndef OW_DRAWING_SKETCH_H
#define OW_DRAWING_SKETCH_H

#include "drawing/figure.h"
#include "drawing/sheet.h"
#include "oilway/draw.h"

typedef struct ow_sketch {
    ow_part part;
    ow_placed placed;
    double bore_mm; /* 0: closed */
    double hexagon_mm;
    double length_mm;
} ow_sketch;

/* Proportions of a made part: bores, a hexagon that clears both threads, the threads' own lengths. */
ow_sketch ow_sketch_of(const ow_missing *missing, double least_bore_m);

/* sketch_words.c: what is written at each end, and the table of limits. */
void ow_sketch_thread_words(ow_text *text, const ow_end *end);
void ow_sketch_seat_words(ow_text *text, const ow_end *end, const ow_drawn_end *form);
void ow_sketch_put_limits(ow_sheet *sheet, const ow_sketch *sketch);

/* Adds a made part's drawing to a sheet. OW_OK, OW_MEMORY. */
ow_status ow_sheet_put_sketch(ow_sheet *sheet, const ow_missing *missing, double least_bore_m);

#endif
