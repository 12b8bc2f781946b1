/* SPDX-License-Identifier: MIT */
#include "drawing/form.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "joints/card_internal.h"
#include "joints/seats.h"
#include "oilway/thread_size.h"

#define RADIANS(degrees) ((degrees)*3.14159265358979323846 / 180.0)

/* The size in mm of an end that goes by dash, fraction or millimetres: the tube's outside. */
static double size_mm(const ow_end *end)
{
    switch (end->size_unit) {
    case OW_SIZE_DASH:
        return end->size * 25.4 / 16.0;
    case OW_SIZE_INCH_64:
        return end->size * 25.4 / 64.0;
    case OW_SIZE_UM:
        return end->size / 1000.0;
    case OW_SIZE_NONE:
    default:
        return 10.0;
    }
}

/* The nose of a seat's male, as the table of seats has its faces. */
static void give_nose(ow_drawn_end *form)
{
    const ow_seat_face *face = ow_seat_face_of(form->seat);
    if (face == NULL || face->half_angle_deg <= 0.0)
        return;
    form->half_angle = RADIANS(face->half_angle_deg);
    if (face->male_shape == OW_SHAPE_RAISED)
        form->nose = OW_NOSE_RAISED;
    else if (face->male_shape == OW_SHAPE_HOLLOW)
        form->nose = OW_NOSE_HOLLOW;
}

/*
 * Length of a male from shoulder to tip: of a taper its useful thread; a standard's stud where one is
 * tabulated; else by the diameter: the proportions of 37 degree noses (8.5 + 0.45 D fits SAE J514 sizes -3 to
 * -16 within 1.5 mm, from memory), shorter for cones, and 0.85 D for plain studs.
 */
static double stub_length(const ow_end *end, const ow_thread *thread, const ow_thread_size *size,
                          double major)
{
    if (size->taper > 0.0)
        return (size->useful_m > 0.0 ? size->useful_m * 1000.0 : 0.8 * major) + 0.5 * size->pitch_m * 1000.0;
    const ow_stud_row *stud = ow_stud_find(thread, end->seat);
    if (stud != NULL)
        return stud->length_mm;
    switch ((int)end->seat) {
    case OW_SEAT_FLARE37:
    case OW_SEAT_FLARE45:
        return 8.5 + 0.45 * major;
    case OW_SEAT_CONE24:
        return 8.0 + 0.2 * major;
    case OW_SEAT_CONE60:
    case OW_SEAT_FLARE30:
        return 6.0 + 0.45 * major;
    case OW_SEAT_FLARE45_INVERTED:
    case OW_SEAT_CONVEX:
        return 5.0 + 0.6 * major;
    case OW_SEAT_BANJO:
        return 0.9 * major;
    default:
        return fmin(fmax(0.85 * major, 8.0), 19.0);
    }
}

/* Rings by the card's tables; where none is published, 1.4 times the thread by 0.1 (proportions of DIN 7603).
 */
static void give_ring(const ow_end *end, const ow_thread *thread, ow_drawn_end *form)
{
    if (end->seat == OW_SEAT_O_RING || end->seat == OW_SEAT_FACE_O_RING) {
        const ow_o_ring_row *ring = ow_o_ring_find(end);
        form->o_ring = true;
        form->ring_mm = ring != NULL ? ring->section_mm : 0.14 * form->major_mm + 0.4;
    } else if (end->seat == OW_SEAT_WASHER || end->seat == OW_SEAT_BANJO ||
               end->seat == OW_SEAT_WASHER_CAPTIVE) {
        const ow_ring_row *ring = ow_ring_find(thread, OW_CRUSH_RING);
        form->ring_mm = ring != NULL ? ring->thickness_mm : fmin(fmax(0.1 * form->major_mm, 1.0), 2.0);
        form->ring_outer_mm = ring != NULL ? ring->outer_mm : 1.3 * form->major_mm;
    }
}

/* How far a male goes in: a taper hand-tight and two and a half turns; a stud up to its ring; a cone until
 * the noses meet, two threads short of the hexagon. */
static double enter_length(const ow_drawn_end *form, const ow_thread_size *size)
{
    if (size->taper > 0.0)
        return fmin(size->hand_tight_m * 1000.0 + 2.5 * form->pitch_mm, form->stub_mm);
    if (form->o_ring && form->seat == OW_SEAT_O_RING)
        return form->stub_mm;
    if (form->ring_mm > 0.0 && !form->o_ring)
        return form->stub_mm - form->ring_mm;
    return form->stub_mm - 2.0 * form->pitch_mm;
}

static void give_thread(const ow_end *end, ow_drawn_end *form)
{
    ow_thread thread;
    ow_thread_size size = {0};
    bool male = end->gender == OW_MALE;
    if (!ow_end_thread(end, &thread))
        return;
    /* A female DIN 158 or the like has no size of its own: that of a parallel thread on the same diameter. */
    bool known = ow_thread_size_of(&thread, male, OW_CLASS_USUAL, &size) == OW_OK;
    double major = ow_thread_major_m(&thread) * 1000.0, pitch = ow_thread_pitch_m(&thread) * 1000.0;
    if (pitch <= 0.0)
        pitch = 0.1 * major;
    form->pitch_mm = pitch;
    form->taper = known ? size.taper : 0.0;
    form->major_mm = major;
    form->minor_mm = known && size.minor.basic_m > 0.0 ? size.minor.basic_m * 1000.0 : major - 1.0825 * pitch;
    form->stub_mm = stub_length(end, &thread, &size, major);
    give_ring(end, &thread, form);
    form->enter_mm = enter_length(form, &size);
    if (male && form->taper > 0.0) { /* from the gauge plane down to the small end */
        form->major_mm -= form->taper * size.gauge_m * 1000.0;
        form->minor_mm -= form->taper * size.gauge_m * 1000.0;
    }
    form->depth_mm = form->enter_mm + (form->taper > 0.0 ? 1.5 : 2.5) * pitch;
    if (form->taper == 0.0 && end->seat == OW_SEAT_TAPER) /* Rp and the like take a taper male */
        form->depth_mm = 0.9 * major;
}

/* A nut: usual hexagons are 1.3 times the thread; its wall behind is a quarter of the thread. */
static void give_nut(ow_drawn_end *form)
{
    form->across_mm = 1.3 * form->major_mm;
    form->back_mm = fmax(2.5, 0.25 * form->major_mm);
    form->stub_mm = form->enter_mm + form->back_mm + 1.0;
}

static double hose_wall_mm(const ow_end *end, double inner)
{
    /* Braided PTFE is thin; braided rubber and silicone thick: usual outsides, from memory. */
    bool ptfe = end->name[0] == 'p';
    if (end->size_unit == OW_SIZE_DASH)
        return ptfe ? 1.3 + 0.06 * inner : 3.0 + 0.1 * inner;
    return 2.5 + 0.1 * inner;
}

static void give_hose(const ow_end *end, ow_drawn_end *form)
{
    /* Inside of a hose by dash: one sixteenth less than the tube (SAE J517, R5 and R14); by mm: its name. */
    double size = size_mm(end);
    form->inner_mm = end->size_unit == OW_SIZE_DASH && size > 3.0 ? size - 25.4 / 16.0 : size;
    form->outer_mm = form->inner_mm + 2.0 * hose_wall_mm(end, form->inner_mm);
    form->stub_mm = 12.0 + 0.7 * form->outer_mm; /* of the ferrule */
    form->enter_mm = form->stub_mm - 1.5;
}

/* The number in a pattern's name is its bolts' distance: "f38" 38 mm; else by the bore. */
static void give_plate(const ow_end *end, double bore, ow_drawn_end *form)
{
    double apart = 0.0;
    const char *digits = strpbrk(end->name, "0123456789");
    if (digits != NULL)
        apart = (double)strtol(digits, NULL, 10);
    if (apart < 10.0 || apart > 150.0)
        apart = 2.5 * bore + 12.0;
    form->pitch_mm = apart;
    form->major_mm = apart < 32.0 ? 6.4 : 8.4; /* bolt holes */
    form->outer_mm = apart + 2.1 * form->major_mm;
    form->stub_mm = apart < 32.0 ? 7.0 : 9.0;
    form->ring_mm = 0.8; /* gasket */
}

static void give_tail(const ow_end *end, ow_drawn_end *form)
{
    double size = size_mm(end);
    form->outer_mm = size;
    form->stub_mm = form->look == OW_LOOK_BARB ? 10.0 + 0.9 * size : 12.0 + 0.7 * size;
    form->enter_mm = form->stub_mm - 1.0;
    if (form->look == OW_LOOK_PIPE)
        form->enter_mm = fmin(7.0 + 0.1 * size, form->stub_mm);
}

static ow_look look_of(const ow_end *end)
{
    switch (end->form) {
    case OW_FORM_BANJO:
        return end->gender == OW_MALE ? OW_LOOK_SHANK : OW_LOOK_EYE;
    case OW_FORM_HOSE:
        return OW_LOOK_HOSE;
    case OW_FORM_TAIL:
        return OW_LOOK_SLEEVE;
    case OW_FORM_BARB:
        return OW_LOOK_BARB;
    case OW_FORM_BEAD:
        return OW_LOOK_BEAD;
    case OW_FORM_TUBE:
        return OW_LOOK_PIPE;
    case OW_FORM_FLANGE:
        return OW_LOOK_PLATE;
    case OW_FORM_WELD:
        return OW_LOOK_WELD;
    case OW_FORM_TUBE_NUT:
        if (end->gender == OW_MALE && end->seat != OW_SEAT_FLARE45)
            return OW_LOOK_SPUD;
        break;
    case OW_FORM_THREAD:
    case OW_FORM_DASH:
    case OW_FORM_COUNT:
    default:
        break;
    }
    if (end->swivel && end->gender == OW_FEMALE)
        return OW_LOOK_NUT;
    return end->gender == OW_MALE ? OW_LOOK_STUB : OW_LOOK_POCKET;
}

ow_drawn_end ow_form_of(const ow_end *end, double bore_mm)
{
    ow_drawn_end form = {.look = look_of(end), .seat = end->seat};
    switch (form.look) {
    case OW_LOOK_HOSE:
    case OW_LOOK_SLEEVE:
        give_hose(end, &form);
        break;
    case OW_LOOK_BARB:
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
        give_tail(end, &form);
        break;
    case OW_LOOK_PLATE:
        give_plate(end, bore_mm, &form);
        break;
    case OW_LOOK_WELD:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
        form.outer_mm = form.major_mm = size_mm(end);
        break;
    case OW_LOOK_STUB:
    case OW_LOOK_POCKET:
    case OW_LOOK_NUT:
    case OW_LOOK_SPUD:
    default:
        give_nose(&form);
        give_thread(end, &form);
        if (form.look == OW_LOOK_NUT)
            give_nut(&form);
        if (form.look == OW_LOOK_SPUD) {
            form.across_mm = 1.1 * form.major_mm + 1.0;
            form.outer_mm = size_mm(end);
            form.stub_mm += 0.5 * form.major_mm; /* the nut's hexagon */
        }
        break;
    }
    return form;
}

bool ow_form_is_inner(ow_look look)
{
    return look == OW_LOOK_STUB || look == OW_LOOK_SPUD || look == OW_LOOK_BARB || look == OW_LOOK_BEAD ||
           look == OW_LOOK_PIPE;
}

static double overlap_inside(const ow_drawn_end *inner, const ow_drawn_end *outer)
{
    switch (outer->look) {
    case OW_LOOK_NUT:
    case OW_LOOK_POCKET:
        return inner->look == OW_LOOK_STUB || inner->look == OW_LOOK_SPUD ? inner->enter_mm : 0.0;
    case OW_LOOK_HOSE:
        return inner->enter_mm;
    case OW_LOOK_STUB: /* a tube in a 24 degree cone */
        return inner->look == OW_LOOK_PIPE ? inner->enter_mm : 0.0;
    case OW_LOOK_SPUD:
    case OW_LOOK_SLEEVE:
    case OW_LOOK_BARB:
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
    case OW_LOOK_PLATE:
    case OW_LOOK_WELD:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
    default:
        return 0.0;
    }
}

double ow_form_overlap(const ow_drawn_end *a, const ow_drawn_end *b)
{
    if (a->look == OW_LOOK_PIPE && b->look == OW_LOOK_STUB)
        return a->enter_mm;
    if (b->look == OW_LOOK_PIPE && a->look == OW_LOOK_STUB)
        return b->enter_mm;
    if (a->look == OW_LOOK_SLEEVE && b->look == OW_LOOK_HOSE)
        return a->enter_mm;
    if (b->look == OW_LOOK_SLEEVE && a->look == OW_LOOK_HOSE)
        return b->enter_mm;
    if (a->look == OW_LOOK_PLATE && b->look == OW_LOOK_PLATE)
        return -a->ring_mm;
    if (ow_form_is_inner(a->look) && !ow_form_is_inner(b->look))
        return overlap_inside(a, b);
    if (ow_form_is_inner(b->look) && !ow_form_is_inner(a->look))
        return overlap_inside(b, a);
    return 0.0;
}
