/* SPDX-License-Identifier: MIT */
/* The tables of base sizes, as data. What follows from a size by a standard's formula is reckoned
 * elsewhere. */
#ifndef OW_THREADS_SIZES_H
#define OW_THREADS_SIZES_H

#include "oilway/thread.h"

typedef struct ow_thread_row {
    ow_thread thread;
    const char *series; /* unified: "UNC", "UNF", "UNEF", "UN", "UNS"; else "" */
    bool everyday;      /* common on fittings, ports and the bolts beside them (common practice) */
    const char *source;
    const char *use; /* where it is met; "" if nothing is to be said */
} ow_thread_row;

typedef struct ow_thread_rows {
    const ow_thread_row *rows;
    size_t count;
} ow_thread_rows;

extern const ow_thread_rows ow_metric_rows;
extern const ow_thread_rows ow_unified_rows;
extern const ow_thread_rows ow_pipe_rows;

/* The row of a size of the tables; NULL if there is none. */
const ow_thread_row *ow_thread_row_find(const ow_thread *thread);

/* American pipe sizes: ASME B1.20.1 tabulates only the pipe's diameter and L1; the rest is formula. */
typedef struct ow_npt_size {
    int32_t size;             /* 1/64 inch */
    int32_t pitch;            /* threads per inch times 2 */
    double pipe_diameter_in;  /* D */
    double hand_tight_in;     /* L1 */
    double truncation_most_p; /* largest crest truncation in pitches; the least is 0.033 throughout */
} ow_npt_size;
const ow_npt_size *ow_npt_size_find(int32_t size); /* NULL if none */

/* 55 degree pipe sizes: ISO 7-1 and ISO 228-1 share the basic diameters. Zero: not in that standard. */
typedef struct ow_whitworth_size {
    int32_t size;
    int32_t pitch;
    double major_mm;
    double gauge_mm;           /* ISO 7-1: basic gauge length */
    double useful_mm;          /* ISO 7-1: least useful thread for the basic gauge length */
    double gauge_tolerance_mm; /* ISO 7-1: plus or minus, external */
    double parallel_mm;        /* ISO 7-1 Rp: plus or minus on diameter */
    double pitch_tolerance_mm; /* ISO 228-1: internal, and external class A */
    double minor_tolerance_mm; /* ISO 228-1: internal minor */
    double major_tolerance_mm; /* ISO 228-1: external major */
} ow_whitworth_size;
const ow_whitworth_size *ow_whitworth_size_find(int32_t size); /* NULL if none */

/* Metric taper external threads, DIN 158-1, short form. */
typedef struct ow_metric_taper_size {
    int32_t size;  /* um */
    int32_t pitch; /* um */
    double gauge_mm;
    double useful_mm;
} ow_metric_taper_size;
const ow_metric_taper_size *ow_metric_taper_size_find(int32_t size, int32_t pitch); /* NULL if none */

#endif
