/* SPDX-License-Identifier: MIT */
/* Why two seats on one thread do not seal. */
#ifndef OW_JOINTS_SEATS_H
#define OW_JOINTS_SEATS_H

#include "oilway/end.h"

typedef enum ow_shape {
    OW_SHAPE_FLAT,
    OW_SHAPE_RAISED,
    OW_SHAPE_HOLLOW,
    OW_SHAPE_RECESS,
    OW_SHAPE_FLANK
} ow_shape;

/* One seat as the male and as the female carry it. */
typedef struct ow_seat_face {
    ow_seat seat;
    double half_angle_deg; /* of a cone, a side; 0: no cone */
    ow_shape male_shape, female_shape;
    const char *male, *female; /* "a nose of 37 degrees a side" */
    const char *source;
} ow_seat_face;

const ow_seat_face *ow_seat_face_of(ow_seat seat); /* NULL for seats that are none */

/* One sentence why the male's seat does not seal on the female's; their threads belong together. */
void ow_seats_explain(const ow_end *male, const ow_end *female, char *why, size_t room);

#endif
