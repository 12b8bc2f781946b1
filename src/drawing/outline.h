/* SPDX-License-Identifier: MIT */
/*
 * The half profile of a leg: (x along the leg from the hub to the tip, y the radius), outside and inside, and
 * what sits over it (a nut, a ferrule). Turned around the leg's axis it is the part.
 */
#ifndef OW_DRAWING_OUTLINE_H
#define OW_DRAWING_OUTLINE_H

#include "drawing/anatomy.h"
#include "drawing/canvas.h"

#define OW_OUTLINE_SPOTS 24
#define OW_OUTLINE_THREADS 3

typedef struct ow_run_of_spots {
    ow_spot spots[OW_OUTLINE_SPOTS];
    size_t count;
} ow_run_of_spots;

/* A thin line: the root of a thread (ISO 6410-1); `inside` if it runs through metal of a female. */
typedef struct ow_thread_line {
    ow_spot from, to;
    bool inside;
} ow_thread_line;

typedef struct ow_outline {
    ow_run_of_spots outer, inner;
    ow_thread_line threads[OW_OUTLINE_THREADS];
    size_t thread_count;
    bool has_over; /* a nut or ferrule */
    ow_run_of_spots over_outer, over_inner;
    bool over_hexagonal;
    ow_thread_line over_thread;
    bool over_has_thread;
} ow_outline;

/*
 * The outline of a leg on a body of that radius, beginning at the hub. mate is what is joined to it, or NULL.
 */
void ow_outline_of(const ow_leg *leg, double body, const ow_drawn_end *mate, ow_outline *outline);

#endif
