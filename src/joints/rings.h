/* SPDX-License-Identifier: MIT */
/* Rings by size: under a shoulder by thread, O-rings by port. */
#ifndef OW_JOINTS_RINGS_H
#define OW_JOINTS_RINGS_H

#include "oilway/end.h"

typedef enum ow_ring_kind { OW_CRUSH_RING, OW_BONDED_WASHER } ow_ring_kind;

typedef struct ow_ring_row {
    ow_thread thread;
    ow_ring_kind kind;
    const char *source;
    double inner_mm, outer_mm, thickness_mm;
} ow_ring_row;

typedef struct ow_ring_rows {
    const ow_ring_row *rows;
    size_t count;
} ow_ring_rows;
extern const ow_ring_rows ow_face_rings;

/* The usual ring of a kind on a thread, or NULL: no published size. */
const ow_ring_row *ow_ring_find(const ow_thread *thread, ow_ring_kind kind);

/* An O-ring of a port or face. */
typedef struct ow_o_ring_row {
    ow_form form;     /* DASH or THREAD */
    ow_seat seat;     /* O_RING or FACE_O_RING */
    int32_t size;     /* dash, or thread's diameter in um */
    int32_t pitch;    /* um, 0 for a dash */
    const char *name; /* "-904", or "" */
    double inner_mm, section_mm;
    const char *source;
} ow_o_ring_row;

const ow_o_ring_row *ow_o_ring_at(size_t index);        /* NULL past the end */
const ow_o_ring_row *ow_o_ring_find(const ow_end *end); /* NULL: no published size */

#endif
