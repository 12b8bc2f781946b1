/* SPDX-License-Identifier: MIT */
#include "drawing/anatomy.h"

#include <math.h>

#define PI 3.14159265358979323846
#define MM(metres) ((metres) > 0.0 ? (metres)*1000.0 : 0.0)

/* What an end takes of a part's length. */
static double reserve(const ow_drawn_end *form)
{
    switch (form->look) {
    case OW_LOOK_POCKET:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
    case OW_LOOK_HOSE:
    case OW_LOOK_WELD:
        return 0.0;
    case OW_LOOK_NUT:
    case OW_LOOK_STUB:
    case OW_LOOK_SPUD:
    case OW_LOOK_SLEEVE:
    case OW_LOOK_BARB:
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
    case OW_LOOK_PLATE:
    default:
        return form->stub_mm;
    }
}

/* Least body behind an end: a pocket needs its depth, others a collar. */
static double body_behind(const ow_drawn_end *form)
{
    return form->look == OW_LOOK_POCKET ? form->depth_mm + 1.0 : 2.0;
}

/* Radius that the body has at least around an end: a shoulder on a stub, metal around a pocket. */
static double least_radius(const ow_drawn_end *form)
{
    switch (form->look) {
    case OW_LOOK_STUB:
    case OW_LOOK_SPUD:
        return fmax(0.5 * form->major_mm + 1.2, 0.5 * form->ring_outer_mm + 0.3);
    case OW_LOOK_POCKET:
        return 0.5 * form->major_mm + fmax(1.8, 0.14 * form->major_mm);
    case OW_LOOK_NUT:
        return 0.42 * form->major_mm;
    case OW_LOOK_SLEEVE:
        return 0.5 * form->outer_mm + 0.5;
    case OW_LOOK_WELD:
    case OW_LOOK_BARB:
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
        return 0.5 * form->outer_mm;
    case OW_LOOK_PLATE:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
    case OW_LOOK_HOSE:
    default:
        return 0.0;
    }
}

/* Shares a length out between two legs, each at least what its end and the metal behind it need. */
static void share_length(ow_leg *a, ow_leg *b, double length)
{
    double need_a = reserve(&a->form), need_b = reserve(&b->form);
    double rest = length - need_a - need_b;
    double behind_a = body_behind(&a->form), behind_b = body_behind(&b->form);
    double least = behind_a + behind_b;
    if (rest < least)
        rest = least; /* the data are shorter than the threads: drawn longer rather than wrong */
    a->length = need_a + rest * behind_a / least;
    b->length = need_b + rest * behind_b / least;
}

/* A closed end's leg and its head. */
static void close_leg(ow_anatomy *anatomy, double length)
{
    ow_leg *leg = &anatomy->legs[0];
    double need = reserve(&leg->form) + (leg->form.look == OW_LOOK_POCKET ? leg->form.depth_mm : 0.0);
    anatomy->closed = true;
    anatomy->head = fmax(length - need, leg->form.look == OW_LOOK_NUT ? 2.0 : 3.0);
    leg->length = need;
    if (leg->form.look == OW_LOOK_NUT)
        leg->bore = 0.0;
}

static void set_legs(const ow_part *part, ow_anatomy *anatomy)
{
    anatomy->leg_count = part->end_count;
    for (size_t end = 0; end < part->end_count; end++) {
        ow_leg *leg = &anatomy->legs[end];
        leg->bore = MM(part->leg_bore_m[end]);
        leg->form = ow_form_of(&part->ends[end], leg->bore);
        if (leg->bore <= 0.0 && part->end_count > 1) /* not said: half of the thread */
            leg->bore = 0.45 * (leg->form.major_mm > 0.0 ? leg->form.major_mm : leg->form.outer_mm);
        leg->angle = end == 0 ? PI : end == 1 ? 0.0 : end == 2 ? PI / 2.0 : -PI / 2.0;
    }
}

/* The body: the catalogue's hexagon, never thinner than its ends need. */
static void set_body(const ow_part *part, ow_anatomy *anatomy)
{
    double least = 0.0, bore = 0.0;
    for (size_t end = 0; end < anatomy->leg_count; end++) {
        least = fmax(least, least_radius(&anatomy->legs[end].form));
        bore = fmax(bore, anatomy->legs[end].bore);
    }
    least = fmax(least, 0.5 * bore + 1.5);
    anatomy->hexagonal = part->hexagon_m > 0.0 && anatomy->build == OW_BUILD_STRAIGHT;
    anatomy->body = fmax(least, 0.5 * MM(part->hexagon_m) * (anatomy->hexagonal ? OW_CORNERS : 1.0));
    for (size_t end = 0; end < anatomy->leg_count; end++)
        if (anatomy->legs[end].form.look == OW_LOOK_NUT &&
            MM(part->hexagon_m) > anatomy->legs[end].form.major_mm + 1.0)
            anatomy->legs[end].form.across_mm = MM(part->hexagon_m);
}

/* Legs of an elbow or a bent hose end; the branch legs of a block. */
static void set_block(const ow_part *part, ow_anatomy *anatomy)
{
    anatomy->build = OW_BUILD_BLOCK;
    set_body(part, anatomy);
    share_length(&anatomy->legs[0], &anatomy->legs[1], MM(part->length_m));
    if (part->angle_rad > 0.0)
        anatomy->legs[1].angle = part->angle_rad;
    for (size_t end = 0; end < anatomy->leg_count; end++) {
        ow_leg *leg = &anatomy->legs[end];
        double least = anatomy->body + reserve(&leg->form) +
                       (leg->form.look == OW_LOOK_POCKET ? leg->form.depth_mm - 0.5 * anatomy->body : 0.5);
        if (end > 1)
            leg->length = MM(part->branch_length_m);
        leg->length = fmax(leg->length, least);
    }
}

/* DIN 7643: the bolt is about twice its thread long under the head, the eye as wide as the thread. */
static void set_bolt(const ow_part *part, ow_anatomy *anatomy)
{
    ow_leg *thread = &anatomy->legs[0];
    double ring = thread->form.ring_mm, width = thread->form.major_mm;
    size_t eyes = part->end_count - 1;
    double under_head = fmax(MM(part->length_m), 2.0 * thread->form.major_mm * (double)eyes * 0.8);
    anatomy->build = OW_BUILD_BOLT;
    anatomy->width = width;
    anatomy->head = 0.65 * thread->form.major_mm;
    anatomy->hole = part->hole_bore_m > 0.0 ? MM(part->hole_bore_m) : 0.5 * thread->bore;
    anatomy->body = 0.5 * OW_CORNERS * (part->hexagon_m > 0.0 ? MM(part->hexagon_m) : 1.4 * width);
    anatomy->hexagonal = true;
    double stack = (width + ring) * (double)eyes + ring;
    thread->length = fmax(under_head - stack, 0.6 * width) + ring + 0.5 * width;
    thread->form.enter_mm = thread->length - ring - 0.5 * width;
    for (size_t end = 1; end < part->end_count; end++) {
        anatomy->legs[end].angle = end == 1 ? PI / 2.0 : -PI / 2.0;
        anatomy->legs[end].along = (width + ring) * (double)(end - 1);
        anatomy->legs[end].length = 0.0;
        anatomy->legs[end].form.ring_mm = ring;
        anatomy->legs[end].form.ring_outer_mm = thread->form.ring_outer_mm;
    }
}

/* An eye: its ring 1.8 times the hole (DIN 7642, from memory), its tail as the catalogue has it. */
static void set_eye(const ow_part *part, ow_anatomy *anatomy)
{
    ow_leg *tail = &anatomy->legs[1];
    anatomy->build = OW_BUILD_EYE;
    anatomy->width = anatomy->legs[0].form.outer_mm;
    anatomy->body = 0.9 * anatomy->width;
    anatomy->legs[0].length = 0.0;
    tail->length = fmax(MM(part->length_m) - anatomy->body, anatomy->body + reserve(&tail->form) + 3.0);
    if (tail->form.look == OW_LOOK_POCKET)
        tail->length = fmax(tail->length, anatomy->body + tail->form.depth_mm);
    if (part->angle_rad > 0.0)
        tail->angle = part->angle_rad;
}

/* A hose between two cut ends; a line with nuts is a pipe with a wall of a millimetre, or a braided hose. */
static void set_long(const ow_part *part, ow_anatomy *anatomy)
{
    anatomy->build = OW_BUILD_HOSE;
    for (size_t end = 0; end < anatomy->leg_count; end++) {
        ow_leg *leg = &anatomy->legs[end];
        leg->length = 0.0;
        if (leg->form.look == OW_LOOK_HOSE) {
            leg->form.inner_mm = leg->bore;
            continue;
        }
        anatomy->build = OW_BUILD_PIPE;
        leg->form.outer_mm = leg->bore + (part->rigid_tube ? 2.0 : 2.6 + 0.12 * leg->bore);
    }
}

static void set_straight(const ow_part *part, ow_anatomy *anatomy)
{
    anatomy->build = part->kind == OW_SWITCH   ? OW_BUILD_SWITCH
                     : part->kind == OW_SENDER ? OW_BUILD_SENDER
                                               : OW_BUILD_STRAIGHT;
    set_body(part, anatomy);
    if (part->end_count == 1) {
        close_leg(anatomy, MM(part->length_m));
        return;
    }
    share_length(&anatomy->legs[0], &anatomy->legs[1], MM(part->length_m));
    if (part->kind == OW_RESTRICTOR)
        anatomy->orifice = MM(part->orifice_m);
}

ow_anatomy ow_anatomy_of_part(const ow_part *part)
{
    ow_anatomy anatomy = {.build = OW_BUILD_STRAIGHT};
    set_legs(part, &anatomy);
    switch ((int)part->kind) {
    case OW_TEE:
    case OW_CROSS:
    case OW_GAUGE_ADAPTER:
    case OW_ELBOW:
        set_block(part, &anatomy);
        break;
    case OW_BANJO_BOLT:
        set_bolt(part, &anatomy);
        break;
    case OW_BANJO_EYE:
        set_eye(part, &anatomy);
        break;
    case OW_HOSE:
    case OW_LINE:
        set_long(part, &anatomy);
        break;
    default:
        if (part->angle_rad > 0.0 && part->end_count == 2)
            set_block(part, &anatomy);
        else
            set_straight(part, &anatomy);
        break;
    }
    return anatomy;
}

ow_anatomy ow_anatomy_of_given(const ow_given *given)
{
    if (given->fixture != NULL)
        return ow_anatomy_of_part(given->fixture);
    ow_anatomy anatomy = {.build = OW_BUILD_PORT, .leg_count = 1};
    ow_leg *leg = &anatomy.legs[0];
    double bore = given->port != NULL ? MM(given->port->bore_m) : 0.0;
    leg->form = ow_form_of(&given->end, bore);
    leg->bore =
        bore > 0.0 ? bore : 0.5 * (leg->form.major_mm > 0.0 ? leg->form.major_mm : leg->form.outer_mm);
    leg->angle = PI;
    leg->length = reserve(&leg->form);
    anatomy.body =
        fmax(fmax(least_radius(&leg->form) + 3.5, 0.55 * leg->form.outer_mm), 0.5 * leg->bore + 4.0);
    anatomy.head = leg->form.look == OW_LOOK_WELD ? 4.0 : fmax(leg->form.depth_mm + 7.0, 10.0);
    return anatomy;
}
