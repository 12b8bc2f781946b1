/* SPDX-License-Identifier: MIT */
/*
 * The shape of one end of a part, millimetres. Threads come from their geometry; what no data give is derived
 * from the thread by proportions that are usual on fittings, each said where it is reckoned. Good for a
 * drawing to scale, not for making a part.
 */
#ifndef OW_DRAWING_FORM_H
#define OW_DRAWING_FORM_H

#include "oilway/catalog.h"

typedef enum ow_look {
    OW_LOOK_STUB,   /* a male thread standing out of the body */
    OW_LOOK_POCKET, /* a female thread in the body */
    OW_LOOK_NUT,    /* a nut that turns on its tail */
    OW_LOOK_SPUD,   /* a male nut round a flared pipe */
    OW_LOOK_SLEEVE, /* a hose's own tail: nipple inside, ferrule outside */
    OW_LOOK_BARB,
    OW_LOOK_BEAD,
    OW_LOOK_PIPE,  /* the plain end of a tube */
    OW_LOOK_HOSE,  /* the cut end of a hose */
    OW_LOOK_PLATE, /* a bolted flange */
    OW_LOOK_WELD,
    OW_LOOK_SHANK, /* of a banjo bolt, where an eye sits */
    OW_LOOK_EYE
} ow_look;

/* What the sealing face is like. */
typedef enum ow_nose {
    OW_NOSE_FLAT,   /* none, or a flat face */
    OW_NOSE_RAISED, /* a cone that stands out of the male */
    OW_NOSE_HOLLOW  /* a cone sunk into the male's mouth */
} ow_nose;

typedef struct ow_drawn_end {
    ow_look look;
    ow_seat seat;
    double major_mm, minor_mm, pitch_mm,
        taper;        /* diameters; taper: at the tip of a male, the face of a female */
    double stub_mm;   /* from shoulder to tip, or ferrule, barb, nut, plate: what stands out */
    double enter_mm;  /* how far the inner one's tip goes in beyond the outer one's */
    double depth_mm;  /* of a pocket */
    double back_mm;   /* a nut's wall behind */
    double across_mm; /* hexagon of a nut or spud, across flats */
    double outer_mm;  /* outside of hose, tube, tail, plate, washer land; least body */
    double inner_mm;  /* inside of a hose */
    ow_nose nose;
    double half_angle; /* of the cone, radians */
    double ring_mm;    /* washer between, thickness; 0 if none */
    double ring_outer_mm;
    bool o_ring;
} ow_drawn_end;

/* The shape of an end; bore of its leg in mm, 0 if not known. */
ow_drawn_end ow_form_of(const ow_end *end, double bore_mm);
/* Whether it goes inside its mate. */
bool ow_form_is_inner(ow_look look);
/* How far the tips of two joined ends overlap along the axis. */
double ow_form_overlap(const ow_drawn_end *a, const ow_drawn_end *b);

#define OW_CORNERS 1.1547005383792515 /* of a hexagon, across corners over across flats */

#endif
