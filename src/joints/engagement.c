/* SPDX-License-Identifier: MIT */
/*
 * How far threads engage and whether that bears the tightening. Shear area per length of an internal thread:
 * ASME B1.1-2003 appendix B (also FED-STD-H28), with the flank angle of the thread in question.
 */
#include <math.h>

#include "base/format.h"
#include "joints/card_internal.h"
#include "oilway/thread_size.h"

/* Shear yield by von Mises, 1 / sqrt 3, of the yield that the softer metal has at least, which is said on the
 * card with its source; a metal that is not known counts as steel. The pull is torque over friction factor
 * times diameter (common practice). */
#define SHEAR_SHARE 0.577

/* Area sheared per metre of engagement, m: the weaker of male and female thread at their loosest. */
static bool shear_area(const ow_thread *thread, double *area_m)
{
    ow_thread_size male, female;
    if (ow_thread_size_of(thread, true, OW_CLASS_USUAL, &male) != OW_OK ||
        ow_thread_size_of(thread, false, OW_CLASS_USUAL, &female) != OW_OK)
        return false;
    if (!male.pitch_diameter.has_least || !female.minor.has_most || !male.major.has_least ||
        !female.pitch_diameter.has_most)
        return false;
    double half = male.pitch_m / 2.0, slope = tan(male.flank_angle_rad);
    double bore = female.minor.most_m, crest = male.major.least_m;
    double of_male = bore * (half + slope * (male.pitch_diameter.least_m - bore));
    double of_female = crest * (half + slope * (crest - female.pitch_diameter.most_m));
    *area_m = 3.14159265358979 / male.pitch_m * fmin(of_male, of_female);
    return *area_m > 0.0;
}

static void fill_taper(const ow_thread *thread, ow_engagement *engagement)
{
    ow_thread_size size;
    if (ow_thread_size_of(thread, true, OW_CLASS_USUAL, &size) != OW_OK || size.hand_tight_m <= 0.0)
        return;
    engagement->has_length = true;
    engagement->least_m = size.hand_tight_m;
    engagement->most_m = size.hand_tight_m + size.wrench_m;
    engagement->source = size.source;
    engagement->has_needed = true;
    engagement->needed_m = size.hand_tight_m;
    engagement->enough = OW_ENOUGH;
    (void)ow_format_to(engagement->needed_why, sizeof engagement->needed_why,
                       "hand-tight length of the standard; what the spanner adds makes the seal");
}

static void fill_length(const ow_card *card, ow_seat seat, const ow_card_ask *ask, ow_engagement *engagement)
{
    const ow_stud_row *stud = ow_stud_find(&card->thread, seat);
    if (ask->engaged_m > 0.0) {
        engagement->has_length = true;
        engagement->least_m = engagement->most_m = ask->engaged_m;
        engagement->source = "measured";
    } else if (stud) {
        double ring_mm = card->consumable_count > 0 && seat == OW_SEAT_WASHER && !card->consumables[0].measure
                             ? card->consumables[0].thickness_mm
                             : 0.0;
        engagement->has_length = true;
        engagement->most_m = (stud->length_mm - ring_mm) / 1000.0;
        engagement->least_m = engagement->most_m - engagement->pitch_m; /* the chamfer at its tip */
        engagement->source = stud->source;
    }
}

/* The figure that pulls hardest. */
static const ow_torque *hardest(const ow_card *card)
{
    const ow_torque *most = NULL;
    for (size_t i = 0; i < card->torque_count; i++) {
        const ow_torque *torque = &card->torques[i];
        if (torque->most_nm > 0.0 &&
            (!most || torque->most_nm / torque->friction_factor > most->most_nm / most->friction_factor))
            most = torque;
    }
    return most;
}

static void fill_needed(const ow_card *card, const ow_card_ask *ask, ow_engagement *engagement)
{
    const ow_metal *metal = ow_metal_of(ask->material);
    double area_m, major_m = ow_thread_major_m(&card->thread);
    const ow_torque *torque = hardest(card);
    bool known = metal != NULL;
    if (!known)
        metal = ow_metal_of("steel");
    if (!torque || !metal || !shear_area(&card->thread, &area_m))
        return;
    double pull_n = torque->most_nm / (torque->friction_factor * major_m);
    double borne_n_per_m = SHEAR_SHARE * metal->yield_pa * area_m;
    engagement->has_needed = true;
    engagement->needed_m = pull_n / borne_n_per_m;
    (void)ow_format_to(
        engagement->needed_why, sizeof engagement->needed_why,
        "bears %.1f kN, the pull of %.3g N m; assumed: friction factor %.2f, %s%s of %.0f MPa yield (%s)",
        pull_n / 1000.0, torque->most_nm, torque->friction_factor, metal->title,
        known ? "" : " (no material is said)", metal->yield_pa / 1e6, metal->source);
    if (!engagement->has_length)
        return;
    engagement->bears_nm = torque->friction_factor * major_m * borne_n_per_m * fmax(engagement->least_m, 0.0);
    /* A standard's own stud is no proof against a figure published for it: then the depth is to be measured.
     */
    if (engagement->bears_nm >= card->least_nm)
        engagement->enough = OW_ENOUGH;
    else
        engagement->enough = ask->engaged_m > 0.0 ? OW_NOT_ENOUGH : OW_ENOUGH_UNKNOWN;
}

void ow_card_fill_engagement(ow_card *card, ow_seat seat, const ow_card_ask *ask)
{
    ow_engagement *engagement = &card->engagement;
    if (!card->has_thread || card->ends[0].form == OW_FORM_BANJO)
        return;
    engagement->pitch_m = ow_thread_pitch_m(&card->thread);
    if (ow_thread_is_taper(card->thread.family)) {
        fill_taper(&card->thread, engagement);
        return;
    }
    fill_length(card, seat, ask, engagement);
    fill_needed(card, ask, engagement);
}
