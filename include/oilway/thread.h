/* SPDX-License-Identifier: MIT */
/* A thread by its designation. Geometry, limits of size and verdicts stand in thread_size.h. */
#ifndef OILWAY_THREAD_H
#define OILWAY_THREAD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "oilway/text.h"

typedef enum ow_thread_family {
    OW_THREAD_METRIC,       /* ISO 68-1 / ISO 261, parallel */
    OW_THREAD_METRIC_TAPER, /* DIN 158-1, external, 1:16 */
    OW_THREAD_UNIFIED,      /* ASME B1.1 */
    OW_THREAD_NPT,          /* ASME B1.20.1 taper */
    OW_THREAD_NPTF,         /* ASME B1.20.3 dryseal taper: mates as NPT, keeps its name */
    OW_THREAD_NPSM,         /* ASME B1.20.1 straight mechanical, on swivels */
    OW_THREAD_R,            /* ISO 7-1 taper external */
    OW_THREAD_RC,           /* ISO 7-1 taper internal */
    OW_THREAD_RP,           /* ISO 7-1 parallel internal */
    OW_THREAD_G,            /* ISO 228-1 parallel */
    OW_THREAD_FAMILY_COUNT
} ow_thread_family;

/*
 * A designation in exact integers. Metric: size = major diameter in micrometres, pitch = pitch in
 * micrometres (0 = not said). Inch: size = nominal size in 1/64 inch (1/8 = 8, 1 1/16 = 68),
 * pitch = threads per inch times 2 (27 tpi = 54, 11.5 tpi = 23; 0 = not said). NPT, R and G always
 * have their pitch: it follows from the size.
 */
typedef struct ow_thread {
    ow_thread_family family;
    int32_t size;
    int32_t pitch;
} ow_thread;

bool ow_thread_is_inch(ow_thread_family family);
bool ow_thread_is_taper(ow_thread_family family); /* NPT, NPTF, R, RC, METRIC_TAPER */
/* What a thread of that family is screwed to: "male into Rc (taper) or Rp (parallel) of its size"; "" if only
 * to its own. */
const char *ow_thread_joins(ow_thread_family family);
bool ow_thread_same(const ow_thread *a, const ow_thread *b);

/*
 * Reads a designation: M12x1.5, M12 x 1.5, M10 (no pitch), 7/16-20 UNF, 7/16-20, 7/16 UNF,
 * M10x1 taper, 1 1/16-12 UN, 1/8-27 NPT, 1/8 NPT, NPTF, NPSM, R1/8, Rc1/8, Rp1/8, 1/8 BSPT (as R; the grammar
 * of an end turns it into Rc when female), G1/8, 1/8 BSPP. Case and blanks do not matter. *used = bytes read;
 * what follows must begin with a blank or be the end. OW_INPUT when it is not a designation, or a pipe size
 * or UN size that no table carries. Nothing is reported.
 */
ow_status ow_thread_read(const char *words, ow_thread *thread, size_t *used);

/* A designation that the trade uses and that no table here carries: what it is, and what to do. */
typedef struct ow_thread_other {
    const char *what; /* "left-hand threads are not known, only right-hand ones" */
    const char *mend;
} ow_thread_other;
/* Finds the word of such a designation (left-hand, several starts, trapezoidal, Whitworth bolts, old names, a
 * tolerance class), bytes *start and *length of words; NULL if there is none. Lent for ever. */
const ow_thread_other *ow_thread_other_of(const char *words, size_t *start, size_t *length);

/* Appends the canonical name: "M12x1.5", "7/16-20 UNF", "1/8-27 NPT", "R1/8", "G1/4", and "M10x1
 * taper" for DIN 158. */
void ow_thread_write(ow_text *text, const ow_thread *thread);

/* Basic major diameter and pitch in metres, whatever the family; pitch 0 if not said. Taper: major
 * at the gauge plane. */
double ow_thread_major_m(const ow_thread *thread);
double ow_thread_pitch_m(const ow_thread *thread);

/* The table of base sizes, in a fixed order; for those who go over all threads known. */
size_t ow_thread_count(void);
const ow_thread *ow_thread_at(size_t index); /* NULL past the end; lent for ever */

#endif
