/* SPDX-License-Identifier: MIT */
/* Sizes that go by dash, tube or series, and the thread that each stands for. Data without logic: the
 * rows are in sizes_table.c, each with its source. */
#ifndef OW_ENDS_SIZES_H
#define OW_ENDS_SIZES_H

#include "oilway/end.h"

/* A size of a dash or tube form. */
typedef struct ow_seat_size {
    ow_seat seat;
    ow_size_unit unit;
    int32_t size;
    ow_thread thread;
    const char *source;
} ow_seat_size;

size_t ow_seat_size_count(void);
const ow_seat_size *ow_seat_size_at(size_t index);
/* The row of that seat and size, or NULL. */
const ow_seat_size *ow_seat_size_find(ow_seat seat, ow_size_unit unit, int32_t size);
/* The row of that seat on that thread (pitch 0: any), or NULL if there is none. */
const ow_seat_size *ow_seat_size_on(ow_seat seat, const ow_thread *thread);

/* A 24 degree cone series: "10L" is 10 mm tube, light, on M16x1.5. */
typedef struct ow_cone_series {
    const char *name;
    int32_t tube_um;
    ow_thread thread;
} ow_cone_series;

size_t ow_cone_series_count(void);
const ow_cone_series *ow_cone_series_at(size_t index);
const ow_cone_series *ow_cone_series_find(const char *name); /* NULL if there is none */

/* Threads of the metric O-ring port, ISO 6149-1. */
const ow_thread *ow_o_ring_port_at(size_t index);
bool ow_is_o_ring_port(const ow_thread *thread); /* pitch 0: any of that diameter */

#endif
