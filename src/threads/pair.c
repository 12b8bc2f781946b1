/* SPDX-License-Identifier: MIT */
/* A male thread in a female one: clearance, turns, overlap of the flanks, strength, verdict. */
#include "threads/pair.h"

#include <math.h>

#define NEVER_JAMS 1000.0
#define SAME_PITCH_M 1e-9
/* A pair of one pitch that keeps this share of its strength does not strip before it leaks. */
#define STRONG 0.75
/* What jams within the first turn deceives nobody. */
#define DECEIVING_TURNS 1.0

const char *ow_fit_word(ow_fit fit)
{
    static const char *const words[OW_FIT_COUNT] = {"home", "leaks", "binds", "weak", "no-start"};
    return (unsigned)fit < OW_FIT_COUNT ? words[fit] : "";
}

typedef struct range {
    double least, most;
} range;

/* Pitch diameter where the two first meet: a male's small end, a female's mouth. */
static double meeting_basic(const ow_thread_size *size)
{
    if (size->taper > 0)
        return size->male ? size->small_end_m : size->mouth_m;
    return size->pitch_diameter.basic_m;
}

static range meeting(const ow_thread_size *size)
{
    double shift = meeting_basic(size) - size->pitch_diameter.basic_m;
    return (range){size->pitch_diameter.least_m + shift, size->pitch_diameter.most_m + shift};
}

double ow_pair_clearance_basic_m(const ow_thread_size *male, const ow_thread_size *female)
{
    return meeting_basic(female) - meeting_basic(male);
}

double ow_pair_turns(const ow_thread_size *male, const ow_thread_size *female, double clearance_m)
{
    double slope = tan((male->flank_angle_rad + female->flank_angle_rad) / 2);
    double difference = fabs(male->pitch_m - female->pitch_m);
    double taper = fmax(male->taper, female->taper);
    /* Each turn spends the pitch difference, and of a taper its growth over one pitch. */
    double spent = (difference > SAME_PITCH_M ? difference : 0) + slope * taper * male->pitch_m;
    if (clearance_m <= 0)
        return 0;
    return spent > 0 ? fmin(clearance_m * slope / spent, NEVER_JAMS) : NEVER_JAMS;
}

/* ---- do they belong together? --------------------------------------------------------------- */

static ow_thread_family kin(ow_thread_family family)
{
    if (family == OW_THREAD_NPTF)
        return OW_THREAD_NPT;
    if (family == OW_THREAD_METRIC_TAPER)
        return OW_THREAD_METRIC;
    if (family == OW_THREAD_RC || family == OW_THREAD_RP)
        return OW_THREAD_R;
    return family;
}

static bool belong(const ow_thread *male, const ow_thread *female)
{
    return kin(male->family) == kin(female->family) && male->size == female->size &&
           male->pitch == female->pitch;
}

/* The size of the partner that a thread was made for. */
static ow_status own_partner(const ow_thread_size *size, ow_thread_size *partner)
{
    ow_thread other = size->thread;
    if (other.family == OW_THREAD_METRIC_TAPER)
        other.family = OW_THREAD_METRIC;
    else if (other.family == OW_THREAD_R)
        other.family = OW_THREAD_RC;
    else if (other.family == OW_THREAD_RC || other.family == OW_THREAD_RP)
        other.family = OW_THREAD_R;
    return ow_thread_size_of(&other, !size->male, OW_CLASS_USUAL, partner);
}

/* ---- strength ------------------------------------------------------------------------------- */

/*
 * Area that must shear, per length of thread and pi (FED-STD-H28/2, ASME B1.1 appendix B): of a ridge at the
 * other's crest. Loose: the limits that leave least.
 */
static double male_shear(const ow_thread_size *male, const ow_thread_size *female, bool loose)
{
    double cut = loose ? female->minor.most_m : female->minor.least_m;
    double pitch = loose ? male->pitch_diameter.least_m : male->pitch_diameter.most_m;
    double crest = loose ? male->major.least_m : male->major.most_m;
    double width = male->pitch_m / 2 + (pitch - cut) * tan(male->flank_angle_rad);
    return crest > cut && width > 0 ? cut * width / male->pitch_m : 0;
}

static double female_shear(const ow_thread_size *male, const ow_thread_size *female, bool loose)
{
    double cut = loose ? male->major.least_m : male->major.most_m;
    double pitch = loose ? female->pitch_diameter.most_m : female->pitch_diameter.least_m;
    double crest = loose ? female->minor.most_m : female->minor.least_m;
    double width = female->pitch_m / 2 + (cut - pitch) * tan(female->flank_angle_rad);
    return crest < cut && width > 0 ? cut * width / female->pitch_m : 0;
}

/* Depth of flank that bears, on the diameter. Where the crests hardly meet they yield or ride over each other
 * long before a ridge shears: what bears cannot carry more than its share. */
static double bearing(const ow_thread_size *male, const ow_thread_size *female, bool loose)
{
    double crest = loose ? male->major.least_m : male->major.most_m;
    double bore = loose ? female->minor.most_m : female->minor.least_m;
    return fmax(crest - bore, 0);
}

static double share(double part, double own)
{
    return own > 0 ? fmin(part / own, 1) : 0;
}

/* The least of what shear and bearing leave of each thread, against its own partner. */
static double strength(const ow_thread_size *male, const ow_thread_size *female,
                       const ow_thread_size *for_male, const ow_thread_size *for_female, bool loose)
{
    double bears = bearing(male, female, loose);
    double of_male = fmin(share(male_shear(male, female, loose), male_shear(male, for_male, loose)),
                          share(bears, bearing(male, for_male, loose)));
    double of_female = fmin(share(female_shear(male, female, loose), female_shear(for_female, female, loose)),
                            share(bears, bearing(for_female, female, loose)));
    return fmin(of_male, of_female);
}

static ow_status reckon_strength(const ow_thread_size *male, const ow_thread_size *female,
                                 ow_pairing *pairing)
{
    ow_thread_size for_male, for_female;
    ow_status status = own_partner(male, &for_male);
    if (status == OW_OK)
        status = own_partner(female, &for_female);
    if (status != OW_OK)
        return status;
    pairing->strength_least = strength(male, female, &for_male, &for_female, true);
    pairing->strength_most = strength(male, female, &for_male, &for_female, false);
    return OW_OK;
}

/* ---- figures -------------------------------------------------------------------------------- */

static double overlap(double male_crest_m, double female_minor_m, const ow_thread_size *female)
{
    return (male_crest_m - female_minor_m) / (female->major.basic_m - female->minor.basic_m);
}

static double home_length(const ow_thread_size *male, const ow_thread_size *female)
{
    if (male->taper > 0)
        return male->useful_m;
    if (female->taper > 0)
        return female->useful_m;
    return fmin(OW_HOME_LENGTH_M, male->major.basic_m);
}

static void reckon_turns(const ow_thread_size *male, const ow_thread_size *female, ow_pairing *pairing)
{
    range of_male = meeting(male), of_female = meeting(female);
    pairing->clearance_least_m = of_female.least - of_male.most;
    pairing->clearance_most_m = of_female.most - of_male.least;
    pairing->free_least = ow_pair_turns(male, female, pairing->clearance_least_m);
    pairing->free_most = ow_pair_turns(male, female, pairing->clearance_most_m);
    if (belong(&male->thread, &female->thread) && !pairing->tapers) /* classes that just touch go home */
        pairing->free_least = pairing->free_most = NEVER_JAMS;
    pairing->home_turns = home_length(male, female) / male->pitch_m;
    pairing->turns_least = fmin(pairing->free_least, pairing->home_turns);
    pairing->turns_most = fmin(pairing->free_most, pairing->home_turns);
    pairing->pitch_difference_m = male->pitch_m - female->pitch_m;
    if (fabs(pairing->pitch_difference_m) < SAME_PITCH_M)
        pairing->pitch_difference_m = 0;
    pairing->lead_error_m = fabs(pairing->pitch_difference_m) * pairing->home_turns;
}

static void reckon_overlap(const ow_thread_size *male, const ow_thread_size *female, ow_pairing *pairing)
{
    pairing->overlap_basic = overlap(male->major.basic_m, female->minor.basic_m, female);
    pairing->overlap_least = overlap(male->major.least_m, female->minor.most_m, female);
    pairing->overlap_most = overlap(male->major.most_m, female->minor.least_m, female);
    pairing->gap_m = fmax(female->minor.least_m - male->major.most_m, 0);
}

static ow_fit same_pitch_fit(const ow_thread_size *male, const ow_thread_size *female,
                             const ow_pairing *pairing)
{
    if (pairing->tapers && pairing->turns_most < DECEIVING_TURNS)
        return OW_FIT_BINDS;
    if (pairing->tapers) {
        double basic = ow_pair_turns(male, female, ow_pair_clearance_basic_m(male, female));
        return basic < pairing->home_turns ? OW_FIT_LEAKS : OW_FIT_WEAK;
    }
    return pairing->strength_least >= STRONG ? OW_FIT_LEAKS : OW_FIT_WEAK;
}

static ow_fit judge(const ow_thread_size *male, const ow_thread_size *female, const ow_pairing *pairing)
{
    if (belong(&male->thread, &female->thread))
        return OW_FIT_HOME;
    if (pairing->clearance_most_m <= 0 || pairing->overlap_most <= 0)
        return OW_FIT_NO_START;
    if (pairing->pitch_difference_m == 0)
        return same_pitch_fit(male, female, pairing);
    return pairing->free_most >= pairing->home_turns ? OW_FIT_WEAK : OW_FIT_BINDS;
}

ow_status ow_pair_sizes(const ow_thread_size *male, const ow_thread_size *female, ow_pairing *pairing)
{
    if (!male->male || female->male)
        return OW_RANGE;
    ow_pairing made = {.male = male->thread, .female = female->thread};
    made.tapers = male->taper > 0 || female->taper > 0;
    made.angles_differ = fabs(male->flank_angle_rad - female->flank_angle_rad) > 1e-6;
    reckon_turns(male, female, &made);
    reckon_overlap(male, female, &made);
    ow_status status = reckon_strength(male, female, &made);
    if (status != OW_OK)
        return status;
    made.fit = judge(male, female, &made);
    made.runs = made.fit != OW_FIT_NO_START;
    if (!made.runs)
        made.turns_least = made.turns_most = 0;
    ow_pairing_explain(&made);
    *pairing = made;
    return OW_OK;
}

ow_status ow_pair(const ow_thread *male, const ow_thread *female, ow_pairing *pairing)
{
    ow_thread_size of_male, of_female;
    ow_status status = ow_thread_size_of(male, true, OW_CLASS_USUAL, &of_male);
    if (status == OW_OK)
        status = ow_thread_size_of(female, false, OW_CLASS_USUAL, &of_female);
    return status == OW_OK ? ow_pair_sizes(&of_male, &of_female, pairing) : status;
}
