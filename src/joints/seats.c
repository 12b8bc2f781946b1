/* SPDX-License-Identifier: MIT */
#include "joints/seats.h"
#include "base/format.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Angles: the standard of each row; the inverted flare's hidden seat of 42 degrees from memory. */
static const ow_seat_face FACES[] = {
    {OW_SEAT_TAPER, 0.0, OW_SHAPE_FLANK, OW_SHAPE_FLANK, "taper flanks", "flanks for a taper male",
     "ISO 7-1, ASME B1.20.1, DIN 158-1"},
    {OW_SEAT_WASHER, 0.0, OW_SHAPE_FLAT, OW_SHAPE_FLAT, "a flat shoulder for a ring",
     "a flat face for a ring", "ISO 9974-1, ISO 1179-1"},
    {OW_SEAT_WASHER_CAPTIVE, 0.0, OW_SHAPE_FLAT, OW_SHAPE_FLAT, "a shoulder with its own ring", "a flat face",
     "ISO 9974-2, ISO 1179-2"},
    {OW_SEAT_BANJO, 0.0, OW_SHAPE_FLAT, OW_SHAPE_FLAT, "a banjo's flat eye and rings", "a flat face",
     "DIN 7643"},
    {OW_SEAT_O_RING, 0.0, OW_SHAPE_RECESS, OW_SHAPE_RECESS, "an O-ring under its shoulder",
     "a chamfered recess for an O-ring", "SAE J1926-1, ISO 6149-1"},
    {OW_SEAT_FACE_O_RING, 0.0, OW_SHAPE_FLAT, OW_SHAPE_FLAT, "an O-ring in its flat end", "a flat sleeve",
     "SAE J1453"},
    {OW_SEAT_CONE24, 12.0, OW_SHAPE_HOLLOW, OW_SHAPE_RAISED, "a hollow cone of 12 degrees a side",
     "a nose of 12 degrees a side", "ISO 8434-1"},
    {OW_SEAT_CONE60, 30.0, OW_SHAPE_HOLLOW, OW_SHAPE_RAISED, "a hollow cone of 30 degrees a side",
     "a nose of 30 degrees a side", "ISO 8434-6"},
    {OW_SEAT_FLARE30, 30.0, OW_SHAPE_RAISED, OW_SHAPE_HOLLOW, "a raised cone of 30 degrees a side",
     "a flare of 30 degrees a side", "JIS B 8363"},
    {OW_SEAT_NPSM, 30.0, OW_SHAPE_HOLLOW, OW_SHAPE_RAISED, "a chamfer of 30 degrees", "a nose of 30 degrees",
     "common practice"},
    {OW_SEAT_FLARE37, 37.0, OW_SHAPE_RAISED, OW_SHAPE_HOLLOW, "a nose of 37 degrees a side",
     "a flare of 37 degrees a side", "SAE J514"},
    {OW_SEAT_FLARE45, 45.0, OW_SHAPE_RAISED, OW_SHAPE_HOLLOW, "a nose of 45 degrees a side",
     "a flare of 45 degrees a side", "SAE J512"},
    {OW_SEAT_FLARE45_INVERTED, 42.0, OW_SHAPE_HOLLOW, OW_SHAPE_RAISED, "a nut behind the tube's double flare",
     "a raised seat of 42 degrees a side hidden in the port", "SAE J512"},
    {OW_SEAT_CONVEX, 0.0, OW_SHAPE_RAISED, OW_SHAPE_RECESS, "a nut behind the tube's convex flare",
     "a drilled bottom for a convex flare", "ISO 4038"},
};

const ow_seat_face *ow_seat_face_of(ow_seat seat)
{
    for (size_t i = 0; i < sizeof FACES / sizeof FACES[0]; i++)
        if (FACES[i].seat == seat)
            return &FACES[i];
    return NULL;
}

static bool is_cone(ow_shape shape)
{
    return shape == OW_SHAPE_RAISED || shape == OW_SHAPE_HOLLOW;
}

/* What happens when the two meet (geometry; common practice). */
static const char *outcome(const ow_seat_face *male, const ow_seat_face *female)
{
    if (female->seat == OW_SEAT_FLARE45_INVERTED && !is_cone(male->male_shape))
        return "it bottoms on the hidden seat before its ring or its flanks are tight";
    if (male->male_shape == OW_SHAPE_FLANK)
        return "this hole is not made for a taper to wedge in: what is left of its thread is short";
    if (female->female_shape == OW_SHAPE_FLANK)
        return "this male is not made to seal on its flanks";
    if (female->seat == OW_SEAT_O_RING)
        return is_cone(male->male_shape) ? "the port has a recess and no cone: the nose touches nothing"
                                         : "the ring bridges the chamfer and lands on an edge, or on nothing";
    if (male->seat == OW_SEAT_O_RING)
        return "there is no recess to hold the O-ring: it is squeezed out from under the shoulder";
    if (is_cone(male->male_shape) && female->female_shape == OW_SHAPE_FLAT)
        return "the cone meets no cone: it touches nothing, or a flat with one edge";
    if (is_cone(female->female_shape))
        return "the cone meets no cone, and there is no flat face for a ring";
    return "nothing closes between the two";
}

static void explain_cones(const ow_seat_face *male, const ow_seat_face *female, char *why, size_t room)
{
    double apart = fabs(male->half_angle_deg - female->half_angle_deg);
    if (male->male_shape == female->female_shape)
        (void)snprintf(why, room, "same thread, but %s meets %s: both are %s, they touch on an edge at most",
                       male->male, female->female, male->male_shape == OW_SHAPE_RAISED ? "raised" : "hollow");
    else
        (void)ow_format_to(
            why, room, "same thread, but %s meets %s: they differ by %g degrees a side, contact is one edge",
            male->male, female->female, apart);
}

void ow_seats_explain(const ow_end *male, const ow_end *female, char *why, size_t room)
{
    const ow_seat_face *of_male = ow_seat_face_of(male->seat), *of_female = ow_seat_face_of(female->seat);
    if (!of_male || !of_female)
        (void)snprintf(why, room, "same thread, but nothing closes between the two");
    else if (male->seat == OW_SEAT_CONE24 && female->seat == OW_SEAT_CONE24)
        (void)snprintf(why, room, "same thread and cone, but series %s and %s are for other tubes",
                       male->name, female->name);
    else if (of_male->half_angle_deg > 0.0 && of_female->half_angle_deg > 0.0)
        explain_cones(of_male, of_female, why, room);
    else
        (void)snprintf(why, room, "same thread, but the male has %s and the female %s: %s", of_male->male,
                       of_female->female, outcome(of_male, of_female));
}
