/* SPDX-License-Identifier: MIT */
/*
 * A part as a hub with legs, millimetres and radians, in a frame of its own: the hub at the origin, the first
 * end to the left, y to the side on which a branch stands. Lengths and bores are the catalogue's; what it
 * does not say is derived from the ends.
 */
#ifndef OW_DRAWING_ANATOMY_H
#define OW_DRAWING_ANATOMY_H

#include "drawing/form.h"
#include "oilway/layout.h"

typedef enum ow_build {
    OW_BUILD_STRAIGHT, /* turned from the bar: one axis, drawn in half section */
    OW_BUILD_BLOCK,    /* tee, cross, elbow, gauge adapter: drawn in full section */
    OW_BUILD_BOLT,     /* banjo bolt */
    OW_BUILD_EYE,
    OW_BUILD_HOSE,
    OW_BUILD_PIPE,   /* a line: long, shown shortened */
    OW_BUILD_PORT,   /* a machine's port: a piece of its wall */
    OW_BUILD_SWITCH, /* drawn from outside */
    OW_BUILD_SENDER
} ow_build;

typedef struct ow_leg {
    double angle;  /* of its direction */
    double along;  /* where it leaves the axis, for the studs of a banjo bolt */
    double length; /* from there to its tip */
    double bore;   /* 0: closed */
    ow_drawn_end form;
} ow_leg;

typedef struct ow_anatomy {
    ow_build build;
    size_t leg_count;
    ow_leg legs[OW_PART_ENDS];
    double body; /* radius of hexagon (across corners) or barrel */
    bool hexagonal;
    double orifice; /* a restrictor's hole, 0 if none */
    double head;    /* banjo bolt: height of its hexagon; plug, cap, switch: length behind the ends */
    double hole;    /* banjo bolt: bore of a cross-hole */
    double width;   /* banjo: of an eye, along the bolt */
    bool closed;    /* plug or cap */
} ow_anatomy;

ow_anatomy ow_anatomy_of_part(const ow_part *part);
/* Of a given port; the wall around it. */
ow_anatomy ow_anatomy_of_given(const ow_given *given);

#endif
