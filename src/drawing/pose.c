/* SPDX-License-Identifier: MIT */
/* Where things of a figure are on the paper. */
#include <math.h>

#include "drawing/figure.h"

bool ow_boxes_meet(const ow_box *a, const ow_box *b, double margin)
{
    return a->x0 < b->x1 + margin && b->x0 < a->x1 + margin && a->y0 < b->y1 + margin &&
           b->y0 < a->y1 + margin;
}

void ow_box_join(ow_box *box, const ow_box *more)
{
    box->x0 = fmin(box->x0, more->x0);
    box->y0 = fmin(box->y0, more->y0);
    box->x1 = fmax(box->x1, more->x1);
    box->y1 = fmax(box->y1, more->y1);
}

ow_spot ow_pose_spot(const ow_pose *pose, double x, double y)
{
    double side = pose->flip * y, cosine = cos(pose->turn), sine = sin(pose->turn);
    return (ow_spot){pose->hub.x + pose->scale * (x * cosine - side * sine),
                     pose->hub.y - pose->scale * (x * sine + side * cosine)};
}

ow_spot ow_leg_origin(const ow_placed *placed, size_t leg)
{
    return ow_pose_spot(&placed->pose, placed->anatomy.legs[leg].along, 0.0);
}

/* The angle of a leg in its frame; the second stud of a double bolt may be on the first one's side. */
static double leg_angle(const ow_placed *placed, size_t leg)
{
    double angle = placed->anatomy.legs[leg].angle;
    return placed->anatomy.build == OW_BUILD_BOLT && leg == 2 && placed->second_mirrored ? -angle : angle;
}

ow_spot ow_leg_tip(const ow_placed *placed, size_t leg)
{
    const ow_leg *own = &placed->anatomy.legs[leg];
    double angle = leg_angle(placed, leg);
    return ow_pose_spot(&placed->pose, own->along + own->length * cos(angle), own->length * sin(angle));
}

double ow_leg_direction(const ow_placed *placed, size_t leg)
{
    return placed->pose.turn + placed->pose.flip * leg_angle(placed, leg);
}

double ow_leg_radius(const ow_placed *placed, size_t leg)
{
    const ow_drawn_end *form = &placed->anatomy.legs[leg].form;
    double radius = placed->anatomy.build == OW_BUILD_BOLT ? 0.5 * form->major_mm : placed->anatomy.body;
    switch (form->look) {
    case OW_LOOK_NUT:
    case OW_LOOK_SPUD:
        return fmax(radius, 0.5 * OW_CORNERS * fmax(form->across_mm, form->major_mm + 2.0));
    case OW_LOOK_SLEEVE:
        return fmax(radius, 0.5 * form->outer_mm + fmax(0.9, 0.09 * form->outer_mm));
    case OW_LOOK_PLATE:
    case OW_LOOK_BARB:
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
        return fmax(radius, 0.5 * form->outer_mm + 1.0);
    case OW_LOOK_STUB:
    case OW_LOOK_POCKET:
    case OW_LOOK_HOSE:
    case OW_LOOK_WELD:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
    default:
        return radius;
    }
}

/* Adds boxes along a line from one place of the part's frame to another, with a radius. */
static size_t add_boxes(const ow_pose *pose, ow_spot from, ow_spot to, double radius, ow_box *boxes,
                        size_t room)
{
    ow_spot a = ow_pose_spot(pose, from.x, from.y), b = ow_pose_spot(pose, to.x, to.y);
    double half = radius * pose->scale, length = hypot(b.x - a.x, b.y - a.y);
    bool upright = fabs(b.x - a.x) < 0.01, level = fabs(b.y - a.y) < 0.01;
    size_t steps = upright || level ? 1 : 4;
    if (room < steps)
        return 0;
    for (size_t step = 0; step < steps; step++) {
        double low = (double)step / (double)steps, high = (double)(step + 1) / (double)steps;
        ow_spot p = {a.x + low * (b.x - a.x), a.y + low * (b.y - a.y)};
        ow_spot q = {a.x + high * (b.x - a.x), a.y + high * (b.y - a.y)};
        double wide = level && length > 0.01 ? 0.0 : upright || length <= 0.01 ? half : 0.8 * half;
        double tall = upright && length > 0.01 ? 0.0 : level || length <= 0.01 ? half : 0.8 * half;
        boxes[step] = (ow_box){fmin(p.x, q.x) - wide, fmin(p.y, q.y) - tall, fmax(p.x, q.x) + wide,
                               fmax(p.y, q.y) + tall};
    }
    return steps;
}

/* What lies behind the ends: a wall, a switch's body, a head. */
static size_t back_boxes(const ow_placed *placed, ow_box *boxes, size_t room)
{
    const ow_anatomy *anatomy = &placed->anatomy;
    double start = 0.0;
    switch (anatomy->build) {
    case OW_BUILD_PORT:
    case OW_BUILD_SWITCH:
    case OW_BUILD_SENDER:
        break;
    case OW_BUILD_BOLT:
        start = 0.5 * anatomy->width + anatomy->legs[1].form.ring_mm +
                anatomy->legs[anatomy->leg_count - 1].along;
        break;
    case OW_BUILD_EYE: {
        double half = 0.5 * anatomy->width;
        return add_boxes(&placed->pose, (ow_spot){0.0, -half}, (ow_spot){0.0, half}, anatomy->body, boxes,
                         room);
    }
    case OW_BUILD_STRAIGHT:
    case OW_BUILD_BLOCK:
    case OW_BUILD_HOSE:
    case OW_BUILD_PIPE:
    default:
        break;
    }
    if (anatomy->head <= 0.0)
        return 0;
    double radius =
        anatomy->build == OW_BUILD_SENDER ? fmax(anatomy->body, 1.6 * anatomy->body) : anatomy->body;
    return add_boxes(&placed->pose, (ow_spot){start, 0.0}, (ow_spot){start + anatomy->head, 0.0}, radius,
                     boxes, room);
}

size_t ow_placed_boxes(const ow_placed *placed, ow_box boxes[OW_PLACED_BOXES])
{
    size_t count = 0;
    for (size_t leg = 0; leg < placed->anatomy.leg_count; leg++) {
        const ow_leg *own = &placed->anatomy.legs[leg];
        if (own->length <= 0.0)
            continue;
        double angle = leg_angle(placed, leg);
        ow_spot from = {own->along, 0.0};
        ow_spot to = {own->along + own->length * cos(angle), own->length * sin(angle)};
        count += add_boxes(&placed->pose, from, to, ow_leg_radius(placed, leg), boxes + count,
                           OW_PLACED_BOXES - count);
        if (own->form.look == OW_LOOK_PLATE && count < OW_PLACED_BOXES) { /* its bolts' heads */
            double back = own->along + own->length - own->form.stub_mm - 0.7 * own->form.major_mm;
            from = (ow_spot){back * cos(angle), back * sin(angle)};
            count += add_boxes(&placed->pose, from, to, 0.5 * own->form.pitch_mm + 0.9 * own->form.major_mm,
                               boxes + count, OW_PLACED_BOXES - count);
        }
    }
    return count + back_boxes(placed, boxes + count, OW_PLACED_BOXES - count);
}
