/* SPDX-License-Identifier: MIT */
#include "drawing/outline.h"

#include <math.h>
#include <string.h>

static void put(ow_run_of_spots *run, double x, double radius)
{
    if (run->count < OW_OUTLINE_SPOTS)
        run->spots[run->count++] = (ow_spot){x, fmax(radius, 0.0)};
}

static void put_thread(ow_outline *outline, double from, double from_radius, double to, double to_radius,
                       bool inside)
{
    if (outline->thread_count == OW_OUTLINE_THREADS || to - from < 0.2)
        return;
    outline->threads[outline->thread_count++] =
        (ow_thread_line){{from, from_radius}, {to, to_radius}, inside};
}

/* Length of a cone of that half angle between two radii. */
static double cone_length(double half_angle, double large, double small)
{
    return large > small && half_angle > 0.05 ? (large - small) / tan(half_angle) : 0.0;
}

/* ---- males --------------------------------------------------------------------------------- */

/* A hollow cone's mouth, or a bore broken at its edge. */
static void put_mouth(const ow_leg *leg, double tip_radius, ow_outline *outline)
{
    double bore = 0.5 * leg->bore;
    put(&outline->inner, 0.0, bore);
    if (leg->form.nose == OW_NOSE_HOLLOW && leg->form.seat != OW_SEAT_FLARE45_INVERTED) {
        double mouth = fmax(bore, tip_radius - 0.7);
        double deep = fmin(cone_length(leg->form.half_angle, mouth, bore), 0.8 * leg->form.stub_mm);
        put(&outline->inner, leg->length - deep, mouth - deep * tan(leg->form.half_angle));
        if (mouth - deep * tan(leg->form.half_angle) > bore + 0.05) {
            outline->inner.count--;
            put(&outline->inner, leg->length - deep, bore);
            put(&outline->inner, leg->length - deep, mouth - deep * tan(leg->form.half_angle));
        }
        put(&outline->inner, leg->length, mouth);
        return;
    }
    put(&outline->inner, leg->length, bore);
}

/* The thread's end: a raised cone, or a chamfer. Returns where the full thread ends. */
static double put_nose(const ow_leg *leg, double tip_radius, ow_outline *outline)
{
    const ow_drawn_end *form = &leg->form;
    double bore = 0.5 * leg->bore;
    if (form->nose == OW_NOSE_RAISED && form->half_angle > 0.0) {
        double root = 0.5 * form->minor_mm, rim = fmin(bore + 0.7, root - 0.3);
        double nose = cone_length(form->half_angle, root, rim);
        put(&outline->outer, leg->length - nose - 0.5 * form->pitch_mm, tip_radius);
        put(&outline->outer, leg->length - nose, root);
        put(&outline->outer, leg->length, rim);
        return leg->length - nose - 0.5 * form->pitch_mm;
    }
    double chamfer = fmin(0.6 * form->pitch_mm, 0.5 * (tip_radius - bore));
    put(&outline->outer, leg->length - chamfer, tip_radius);
    put(&outline->outer, leg->length, tip_radius - chamfer);
    return leg->length - 0.3 * chamfer;
}

static void outline_stub(const ow_leg *leg, double body, ow_outline *outline)
{
    const ow_drawn_end *form = &leg->form;
    double shoulder = leg->length - form->stub_mm, crest = 0.5 * form->major_mm, root = 0.5 * form->minor_mm;
    double rise = 0.5 * form->taper * form->stub_mm;
    put(&outline->outer, 0.0, body);
    put(&outline->outer, shoulder, body);
    double start = shoulder;
    if (form->taper <= 0.0 && form->stub_mm > 4.0 * form->pitch_mm) { /* relief behind the thread */
        start = shoulder + 1.2 * form->pitch_mm;
        put(&outline->outer, shoulder, root - 0.1);
        put(&outline->outer, start, root - 0.1);
    }
    put(&outline->outer, start, crest + rise);
    double end = put_nose(leg, crest, outline);
    put_thread(outline, start, root + rise, end, root, false);
    put_mouth(leg, crest - 0.5 * form->pitch_mm, outline);
}

/* A male nut round a pipe with a flared end. */
static void outline_spud(const ow_leg *leg, double body, ow_outline *outline)
{
    const ow_drawn_end *form = &leg->form;
    double tube = 0.5 * form->outer_mm, crest = 0.5 * form->major_mm, root = 0.5 * form->minor_mm;
    double head = 0.5 * form->major_mm, back = leg->length - form->stub_mm,
           flare = 0.8 * form->pitch_mm + 0.6;
    (void)body;
    put(&outline->outer, 0.0, tube);
    put(&outline->outer, leg->length - flare, tube);
    put(&outline->outer, leg->length, fmin(root - 0.3, tube + flare));
    put(&outline->inner, 0.0, 0.5 * leg->bore);
    put(&outline->inner, leg->length - 0.5 * flare, 0.5 * leg->bore);
    put(&outline->inner, leg->length, 0.5 * leg->bore + 0.5 * flare);
    outline->has_over = true;
    put(&outline->over_outer, back, 0.5 * form->across_mm * OW_CORNERS);
    put(&outline->over_outer, back + head, 0.5 * form->across_mm * OW_CORNERS);
    put(&outline->over_outer, back + head, crest);
    put(&outline->over_outer, leg->length - flare - 0.5, crest);
    put(&outline->over_outer, leg->length - flare, crest - 0.5);
    put(&outline->over_inner, back, tube + 0.1);
    put(&outline->over_inner, leg->length - flare, tube + 0.1);
    outline->over_hexagonal = true;
    outline->over_has_thread = true;
    outline->over_thread = (ow_thread_line){{back + head, root}, {leg->length - flare - 0.3, root}, false};
}

/* ---- females ------------------------------------------------------------------------------- */

/* Crest radius that a screwed-in male shows at its tip, and at the mouth. */
static void mate_radii(const ow_drawn_end *mate, double *tip, double *mouth)
{
    *tip = 0.5 * mate->major_mm;
    *mouth = *tip + 0.5 * mate->taper * mate->enter_mm;
}

/* The inside of a pocket from its bottom to the face. */
static void put_pocket_walls(const ow_leg *leg, const ow_drawn_end *mate, double bottom, ow_outline *outline)
{
    const ow_drawn_end *form = &leg->form;
    double crest = 0.5 * form->major_mm, root = 0.5 * form->minor_mm, face = leg->length;
    double open_end = face;
    put(&outline->inner, bottom, root);
    if (mate != NULL && mate->enter_mm > 0.0) {
        double tip = 0.0, mouth = 0.0;
        mate_radii(mate, &tip, &mouth);
        open_end = face - mate->enter_mm;
        put(&outline->inner, open_end, root);
        put(&outline->inner, open_end, tip);
        put(&outline->inner, face, mouth);
    } else {
        put(&outline->inner, face - 0.5 * form->pitch_mm, root);
        put(&outline->inner, face, crest);
    }
    put_thread(outline, bottom + 0.5 * form->pitch_mm, crest, open_end, crest, true);
}

static void outline_pocket(const ow_leg *leg, double body, const ow_drawn_end *mate, ow_outline *outline)
{
    const ow_drawn_end *form = &leg->form;
    double root = 0.5 * form->minor_mm, bore = fmin(0.5 * leg->bore, root);
    double depth = form->depth_mm;
    if (mate != NULL && ow_form_is_inner(mate->look))
        depth = fmax(depth, mate->enter_mm + 0.8);
    depth = fmin(depth, leg->length - 0.5);
    double bottom = leg->length - depth;
    put(&outline->outer, 0.0, body);
    put(&outline->outer, leg->length, body);
    put(&outline->inner, 0.0, bore);
    if (form->seat == OW_SEAT_FLARE45_INVERTED) { /* the hidden seat stands up around the bore */
        double seat = 0.45 * (root - bore);
        put(&outline->inner, bottom + seat, bore);
        put(&outline->inner, bottom, fmin(bore + seat, root));
    } else if (form->nose == OW_NOSE_RAISED && form->half_angle > 0.0) { /* a hollow cone for the nose */
        put(&outline->inner, fmax(bottom - cone_length(form->half_angle, root, bore), 0.2), bore);
    } else if (form->nose == OW_NOSE_HOLLOW && form->half_angle > 0.0) { /* a nose for the hollow cone */
        double nose = fmin(0.6 * depth, 0.5 * cone_length(form->half_angle, root, bore));
        put(&outline->inner, bottom + nose, bore);
        put(&outline->inner, bottom + nose, bore + 0.4);
        put(&outline->inner, bottom, fmin(bore + 0.4 + nose * tan(form->half_angle), root));
    } else if (bore < root - 0.1) { /* the drill's cone */
        put(&outline->inner, fmax(bottom - (root - bore) * 0.58, 0.2), bore);
    }
    put_pocket_walls(leg, mate, bottom, outline);
}

/* Where the tail inside a nut meets the male, and how its face looks. */
static void put_nut_tail(const ow_leg *leg, const ow_drawn_end *mate, double tail, ow_outline *outline)
{
    const ow_drawn_end *form = &leg->form;
    double bore = 0.5 * leg->bore,
           enter = mate != NULL && mate->enter_mm > 0.0 ? mate->enter_mm : form->enter_mm;
    double tip = leg->length - enter;                             /* of the male */
    if (form->nose == OW_NOSE_RAISED && form->half_angle > 0.0) { /* male raised: this one is hollow */
        double rim = fmin(bore + 0.7, tail - 0.3);
        double face = tip + cone_length(form->half_angle, tail, rim);
        double deep = fmin(cone_length(form->half_angle, tail, bore), face);
        put(&outline->outer, face, tail);
        put(&outline->inner, face - deep, bore);
        put(&outline->inner, face, tail);
    } else if (form->nose == OW_NOSE_HOLLOW && form->half_angle > 0.0) { /* a nose into the male's mouth */
        double mouth = fmin(0.5 * form->major_mm - 0.5 * form->pitch_mm - 0.7, tail);
        double rim = fmax(bore + 0.5, mouth - 0.75 * enter * tan(form->half_angle));
        put(&outline->outer, tip, tail);
        put(&outline->outer, tip, mouth);
        put(&outline->outer, tip + cone_length(form->half_angle, mouth, rim), rim);
        put(&outline->inner, tip + cone_length(form->half_angle, mouth, rim), bore);
    } else {
        put(&outline->outer, tip, tail);
        put(&outline->inner, tip, bore);
    }
}

static void outline_nut(const ow_leg *leg, double body, const ow_drawn_end *mate, ow_outline *outline)
{
    const ow_drawn_end *form = &leg->form;
    double back = leg->length - form->stub_mm, root = 0.5 * form->minor_mm, crest = 0.5 * form->major_mm;
    double tail = fmax(root - 0.35, 0.5 * leg->bore + 0.6), neck = fmax(0.5 * leg->bore + 0.8, 0.72 * tail);
    double shoulder = back + form->back_mm;
    neck = fmin(neck, tail);
    put(&outline->outer, 0.0, body);
    put(&outline->outer, back - 0.4, body);
    put(&outline->outer, back - 0.4, neck);
    put(&outline->outer, shoulder, neck);
    put(&outline->outer, shoulder, tail);
    put(&outline->inner, 0.0, 0.5 * leg->bore);
    put_nut_tail(leg, mate, tail, outline);
    double tip_radius = crest, mouth_radius = crest;
    double tip = leg->length - form->enter_mm;
    if (mate != NULL && mate->enter_mm > 0.0) {
        mate_radii(mate, &tip_radius, &mouth_radius);
        tip = leg->length - mate->enter_mm;
    }
    double outside = 0.5 * fmax(form->across_mm, form->major_mm + 2.0) * OW_CORNERS;
    outline->has_over = outline->over_hexagonal = true;
    put(&outline->over_outer, back, outside);
    put(&outline->over_outer, leg->length, outside);
    put(&outline->over_inner, back, neck + 0.15);
    put(&outline->over_inner, shoulder, neck + 0.15);
    put(&outline->over_inner, shoulder, root);
    put(&outline->over_inner, tip, root);
    put(&outline->over_inner, tip, mate != NULL ? tip_radius : root);
    put(&outline->over_inner, leg->length, mate != NULL ? mouth_radius : root);
    outline->over_has_thread = true;
    outline->over_thread =
        (ow_thread_line){{shoulder + 0.5, crest}, {mate != NULL ? tip : leg->length, crest}, true};
}

/* ---- tails --------------------------------------------------------------------------------- */

static void outline_sleeve(const ow_leg *leg, double body, const ow_drawn_end *mate, ow_outline *outline)
{
    const ow_drawn_end *form = mate != NULL && mate->look == OW_LOOK_HOSE ? mate : &leg->form;
    double back = leg->length - leg->form.stub_mm, outside = 0.5 * form->outer_mm;
    double nipple = fmax(0.5 * form->inner_mm, 0.5 * leg->bore + 0.3),
           ferrule = outside + fmax(0.9, 0.09 * form->outer_mm);
    double step = 0.5 * fmin(body, ferrule) + 0.5 * nipple;
    put(&outline->outer, 0.0, body);
    put(&outline->outer, back - 0.6, body);
    put(&outline->outer, back - 0.6, step);
    put(&outline->outer, back + 1.2, step);
    put(&outline->outer, back + 1.2, nipple);
    put(&outline->outer, leg->length - 1.0, nipple);
    put(&outline->inner, 0.0, 0.5 * leg->bore);
    put(&outline->inner, leg->length - 1.0, 0.5 * leg->bore);
    outline->has_over = true;
    put(&outline->over_outer, back, ferrule);
    for (int groove = 0; groove < 3; groove++) { /* pressed rings */
        double at = back + leg->form.stub_mm * (0.25 + 0.22 * groove);
        put(&outline->over_outer, at, ferrule);
        put(&outline->over_outer, at + 0.5, ferrule - 0.45);
        put(&outline->over_outer, at + 1.0, ferrule - 0.45);
        put(&outline->over_outer, at + 1.5, ferrule);
    }
    put(&outline->over_outer, leg->length, ferrule);
    put(&outline->over_inner, back, step + 0.1);
    put(&outline->over_inner, back + 1.2, step + 0.1);
    put(&outline->over_inner, back + 1.2, outside);
    put(&outline->over_inner, leg->length, outside);
}

static void outline_barb(const ow_leg *leg, double body, ow_outline *outline)
{
    double tip = leg->length, back = tip - leg->form.stub_mm, outside = 0.5 * leg->form.outer_mm;
    double root = fmax(outside * 0.9, 0.5 * leg->bore + 0.5);
    put(&outline->outer, 0.0, fmax(body, outside));
    put(&outline->outer, back, fmax(body, outside));
    put(&outline->outer, back, root);
    for (int rib = 0; rib < 3; rib++) {
        double end = tip - (2 - rib) * 0.27 * leg->form.stub_mm;
        double start = end - 0.24 * leg->form.stub_mm;
        put(&outline->outer, start, root);
        put(&outline->outer, start, outside + 0.35);
        put(&outline->outer, end, root);
    }
    put(&outline->inner, 0.0, 0.5 * leg->bore);
    put(&outline->inner, tip, 0.5 * leg->bore);
}

/* The nut that draws a tube into a 24 degree cone: over the male's thread, two threads short of its hexagon.
 */
static void put_tube_nut(const ow_leg *leg, const ow_drawn_end *mate, ow_outline *outline)
{
    double mouth = leg->length - leg->form.enter_mm, back = mouth - 3.0 - 0.2 * mate->major_mm;
    double front = mouth + mate->stub_mm - 2.0 * mate->pitch_mm, outside = 0.62 * mate->major_mm * OW_CORNERS;
    outline->has_over = outline->over_hexagonal = true;
    put(&outline->over_outer, back, outside);
    put(&outline->over_outer, front, outside);
    put(&outline->over_inner, back, 0.5 * leg->form.outer_mm + 0.1);
    put(&outline->over_inner, mouth - 2.0, 0.5 * leg->form.outer_mm + 0.1);
    put(&outline->over_inner, mouth, 0.5 * mate->major_mm);
    put(&outline->over_inner, front, 0.5 * mate->major_mm);
}

static void outline_tube(const ow_leg *leg, double body, const ow_drawn_end *mate, ow_outline *outline)
{
    if (leg->form.look == OW_LOOK_PIPE && mate != NULL && mate->look == OW_LOOK_STUB)
        put_tube_nut(leg, mate, outline);
    double tip = leg->length, back = tip - leg->form.stub_mm, outside = 0.5 * leg->form.outer_mm;
    put(&outline->outer, 0.0, fmax(body, outside));
    put(&outline->outer, back, fmax(body, outside));
    put(&outline->outer, back, outside);
    if (leg->form.look == OW_LOOK_BEAD) {
        double at = tip - 4.5;
        put(&outline->outer, at, outside);
        put(&outline->outer, at + 0.6, outside + 0.9);
        put(&outline->outer, at + 1.6, outside + 0.9);
        put(&outline->outer, at + 2.2, outside);
    }
    put(&outline->outer, tip, outside);
    put(&outline->inner, 0.0, fmin(0.5 * leg->bore, outside - 0.5));
    put(&outline->inner, tip, fmin(0.5 * leg->bore, outside - 0.5));
}

static void outline_plate(const ow_leg *leg, double body, ow_outline *outline)
{
    double back = leg->length - leg->form.stub_mm;
    put(&outline->outer, 0.0, body);
    put(&outline->outer, back, body);
    put(&outline->outer, back, 0.5 * leg->form.outer_mm);
    put(&outline->outer, leg->length, 0.5 * leg->form.outer_mm);
    put(&outline->inner, 0.0, 0.5 * leg->bore);
    put(&outline->inner, leg->length, 0.5 * leg->bore);
}

static void outline_plain(const ow_leg *leg, double radius, ow_outline *outline)
{
    put(&outline->outer, 0.0, radius);
    put(&outline->outer, leg->length, radius);
    put(&outline->inner, 0.0, 0.5 * leg->bore);
    put(&outline->inner, leg->length, 0.5 * leg->bore);
}

void ow_outline_of(const ow_leg *leg, double body, const ow_drawn_end *mate, ow_outline *outline)
{
    memset(outline, 0, sizeof *outline);
    switch (leg->form.look) {
    case OW_LOOK_STUB:
        outline_stub(leg, body, outline);
        break;
    case OW_LOOK_SPUD:
        outline_spud(leg, body, outline);
        break;
    case OW_LOOK_POCKET:
        outline_pocket(leg, body, mate, outline);
        break;
    case OW_LOOK_NUT:
        outline_nut(leg, body, mate, outline);
        break;
    case OW_LOOK_SLEEVE:
        outline_sleeve(leg, body, mate, outline);
        break;
    case OW_LOOK_BARB:
        outline_barb(leg, body, outline);
        break;
    case OW_LOOK_BEAD:
    case OW_LOOK_PIPE:
        outline_tube(leg, body, mate, outline);
        break;
    case OW_LOOK_PLATE:
        outline_plate(leg, body, outline);
        break;
    case OW_LOOK_WELD:
    case OW_LOOK_HOSE:
    case OW_LOOK_SHANK:
    case OW_LOOK_EYE:
    default:
        outline_plain(leg, body, outline);
        break;
    }
}
