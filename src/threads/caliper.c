/* SPDX-License-Identifier: MIT */
/* Ranks all threads known by how likely each is to read as it did (Bayes' rule over the model). */
#include "oilway/caliper.h"

#include <math.h>

#include "base/memory.h"
#include "base/sort.h"
#include "threads/caliper_internal.h"

#define EVERYDAY_WEIGHT 4.0
#define LISTED_LEAST 0.001

double ow_caliper_weight(const ow_thread *thread)
{
    return ow_thread_is_everyday(thread) ? EVERYDAY_WEIGHT : 1;
}

static bool in_range(const ow_caliper_ask *ask)
{
    return ask->diameter_m >= 1e-3 && ask->diameter_m <= 0.1 && ask->accuracy_m >= 1e-6 &&
           ask->accuracy_m <= 1e-3 && ask->pitch_deviation >= 1e-4 && ask->pitch_deviation <= 0.2 &&
           (ask->pitch_m == 0 || (ask->pitch_m >= 0.2e-3 && ask->pitch_m <= 6e-3));
}

/* Rp and G, NPT and NPTF read alike. NPTF adds nothing but its name. */
static bool weighed(const ow_thread *thread)
{
    return thread->family != OW_THREAD_NPTF;
}

static double weigh(const ow_caliper_ask *ask, const ow_thread_size *size)
{
    double weight =
        ow_caliper_weight(&size->thread) * ow_suspect_density(size, ask->diameter_m, ask->accuracy_m);
    if (ask->pitch_m > 0)
        weight *= ow_pitch_density(size->pitch_m, ask->pitch_m, ask->pitch_deviation);
    if (ask->taper != OW_TAPER_NOT_SAID) {
        double yes = ow_taper_chance(size->taper > 0);
        weight *= ask->taper == OW_TAPER_YES ? yes : 1 - yes;
    }
    return weight;
}

/* All sides of all threads that can read like that; returns how many. */
static size_t gather(const ow_caliper_ask *ask, ow_suspect *suspects)
{
    size_t count = 0;
    for (size_t i = 0; i < ow_thread_count(); i++)
        for (int male = 1; male >= 0; male--) {
            ow_suspect *suspect = &suspects[count];
            if (ask->side == (male ? OW_CALIPER_FEMALE : OW_CALIPER_MALE) || !weighed(ow_thread_at(i)) ||
                ow_thread_size_of(ow_thread_at(i), male != 0, OW_CLASS_USUAL, &suspect->size) != OW_OK)
                continue;
            suspect->crest = ow_thread_crest_at(&suspect->size, ow_caliper_place_m(&suspect->size));
            suspect->likelihood = weigh(ask, &suspect->size);
            if (suspect->likelihood > 0)
                count++;
        }
    return count;
}

static int by_likelihood(const void *items, uint32_t left, uint32_t right)
{
    const ow_suspect *one = (const ow_suspect *)items + left, *other = (const ow_suspect *)items + right;
    if (one->likelihood != other->likelihood)
        return one->likelihood > other->likelihood ? -1 : 1;
    if (one->size.thread.family != other->size.thread.family)
        return one->size.thread.family < other->size.thread.family ? -1 : 1;
    return one->size.thread.size < other->size.thread.size ? -1
                                                           : one->size.thread.size > other->size.thread.size;
}

/* Shares of all, most likely first; how many of them are listed. */
static ow_status rank(const ow_context *context, ow_suspect *suspects, size_t count, size_t *listed)
{
    double sum = 0;
    size_t likely = 0;
    for (size_t i = 0; i < count; i++)
        sum += suspects[i].likelihood;
    for (size_t i = 0; i < count; i++)
        suspects[i].likelihood /= sum;
    ow_status status = ow_sort_items(context, suspects, count, sizeof *suspects, by_likelihood);
    if (status != OW_OK)
        return status;
    while (likely < count && likely < OW_CANDIDATES_MAX && suspects[likely].likelihood >= LISTED_LEAST)
        likely++;
    *listed = likely;
    return OW_OK;
}

static ow_thread partner_of(const ow_thread *thread, bool male)
{
    ow_thread partner = *thread;
    if (male && thread->family == OW_THREAD_R)
        partner.family = OW_THREAD_RC;
    if (male && thread->family == OW_THREAD_METRIC_TAPER)
        partner.family = OW_THREAD_METRIC;
    if (!male && (thread->family == OW_THREAD_RC || thread->family == OW_THREAD_RP))
        partner.family = OW_THREAD_R;
    return partner;
}

/* What becomes of the candidate in a part made for the best one. */
static void fill_mistake(ow_candidate *candidate, const ow_candidate *best)
{
    if (candidate == best || candidate->male != best->male)
        return;
    ow_thread partner = partner_of(&best->thread, best->male);
    const ow_thread *male = candidate->male ? &candidate->thread : &partner;
    const ow_thread *female = candidate->male ? &partner : &candidate->thread;
    candidate->has_mistake = ow_pair(male, female, &candidate->mistake) == OW_OK;
}

static void fill_candidates(const ow_caliper_ask *ask, const ow_suspect *suspects, ow_caliper_answer *answer)
{
    answer->left_out = 1;
    for (size_t i = 0; i < answer->count; i++) {
        ow_candidate *candidate = &answer->candidates[i];
        candidate->thread = suspects[i].size.thread;
        candidate->male = suspects[i].size.male;
        candidate->likelihood = suspects[i].likelihood;
        candidate->least_m = suspects[i].crest.least_m;
        candidate->most_m = suspects[i].crest.most_m;
        answer->left_out -= candidate->likelihood;
        ow_caliper_write_why(ask, &suspects[i], candidate);
        fill_mistake(candidate, &answer->candidates[0]);
    }
    answer->left_out = answer->left_out > 0 ? answer->left_out : 0;
}

static const char *jaws_for(ow_caliper_side side)
{
    if (side == OW_CALIPER_FEMALE)
        return "Inside jaws across the crests at the mouth, behind the chamfer and no more than two threads "
               "in; turn for "
               "the largest reading square to the axis.";
    if (side == OW_CALIPER_MALE)
        return "Flat jaws over the crests. A parallel thread: anywhere on full threads. A taper: the "
               "hand-tight length "
               "from the small end, about 4 mm on a 1/8, 6 mm on 1/4 and 3/8, 8 mm on 1/2 and 3/4, 10 mm on "
               "a 1: every "
               "turn astray is 0.06 to 0.14 mm.";
    return "A male over the crests (a taper: the hand-tight length from its small end); a female across the "
           "bore at its "
           "mouth. Say which, with --male or --female.";
}

/* Four standard deviations of the pitch, or a diameter that the instrument's error does not explain. */
static const char *doubt_of(const ow_caliper_ask *ask, const ow_suspect *best)
{
    double off = ask->pitch_m > 0 ? fabs(ask->pitch_m / best->size.pitch_m - 1) : 0;
    double outside = fmax(best->crest.least_m - ask->diameter_m, ask->diameter_m - best->crest.most_m);
    ow_thread_size close;
    if (ow_caliper_close_class(&best->size, &close))
        outside = fmin(outside, fabs(ask->diameter_m - close.major.most_m));
    if (off > 4 * ask->pitch_deviation)
        return "No thread known has that diameter with that pitch: count the threads again and measure "
               "again.";
    if (outside > ask->accuracy_m && best->size.taper <= 0)
        return "That diameter lies outside the limits of every likely thread: measure again, over full "
               "crests.";
    return "";
}

ow_status ow_caliper_name(const ow_context *context, const ow_caliper_ask *ask, ow_caliper_answer *answer)
{
    ow_status status = OW_OK;
    ow_caliper_answer made = {.jaws = jaws_for(ask->side)};
    if (!in_range(ask))
        return OW_RANGE;
    ow_suspect *suspects = ow_new_array(context, 2 * ow_thread_count() + 1, sizeof *suspects);
    if (!suspects)
        return OW_MEMORY;
    size_t count = gather(ask, suspects);
    status = count ? rank(context, suspects, count, &made.count) : OW_NONE;
    if (status != OW_OK)
        goto done;
    made.doubt = doubt_of(ask, &suspects[0]);
    made.candidates = ow_new_array(context, made.count, sizeof *made.candidates);
    status = made.candidates ? OW_OK : OW_MEMORY;
    if (status != OW_OK)
        goto done;
    fill_candidates(ask, suspects, &made);
    status = ow_caliper_decide(context, ask, suspects, made.count, &made);
    if (status == OW_OK) {
        ow_caliper_write_place(context, suspects, made.count, &made);
        *answer = made;
    } else {
        ow_caliper_done(context, &made);
    }
done:
    ow_release(context, suspects);
    return status;
}

void ow_caliper_done(const ow_context *context, ow_caliper_answer *answer)
{
    ow_release(context, answer->candidates);
    answer->candidates = NULL;
    answer->count = 0;
}
