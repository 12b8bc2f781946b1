/* SPDX-License-Identifier: MIT */
/* The feed's hose in -3, -4 and -6, all else the same: what each would give, and which is needed. */
#include <math.h>

#include "plan/planning.h"

#define WARM_C 60.0
#define HOSE_SHARE 0.9 /* of what the widest of the three gives: an assumption, listed among the limits */

/* By the tube's dash (SAE J517, 100R14). */
static const struct {
    int dash;
    double bore_m;
} sizes[OW_PLAN_SIZES] = {{3, 0.0032}, {4, 0.0048}, {6, 0.0079}};

static void note_size(const ow_planning *planning, const ow_feed_answer *trial, ow_plan_size *size)
{
    const ow_feed_result *hot = &trial->results[planning->hot_rev];
    const ow_feed_result *coldest = &trial->results[0];
    size->idle_pa = hot->turbo_pa;
    for (size_t state = 0; state < trial->state_count; state++) {
        const ow_feed_result *result = &trial->results[state];
        if (result->state->oil_c < coldest->state->oil_c)
            coldest = result;
        if (result->state->oil_c >= WARM_C)
            size->idle_pa = fmin(size->idle_pa, result->turbo_pa);
    }
    size->hot_rev_pa = hot->turbo_pa;
    size->flow_m3s = hot->flow_m3s;
    size->first_oil_s = coldest->first_oil_known ? coldest->first_oil_s : OW_NOT_SAID;
}

static ow_status try_sizes(ow_planning *planning, ow_plan_feed *feed)
{
    double carried_m[OW_PLAN_HOSES] = {0};
    ow_status status = OW_OK;
    for (size_t hose = 0; hose < feed->hose_count; hose++)
        carried_m[hose] = feed->hoses[hose]->bore_m;
    for (size_t index = 0; index < OW_PLAN_SIZES && status == OW_OK; index++) {
        ow_feed_answer trial;
        for (size_t hose = 0; hose < feed->hose_count; hose++)
            feed->hoses[hose]->bore_m = sizes[index].bore_m;
        status = ow_feed_solve(planning->context, &feed->feed, &trial);
        if (status != OW_OK)
            break;
        ow_plan_size *size = &feed->sizes[feed->size_count++];
        *size = (ow_plan_size){.dash = sizes[index].dash,
                               .bore_m = sizes[index].bore_m,
                               .carried = fabs(carried_m[0] - sizes[index].bore_m) < 1e-5};
        note_size(planning, &trial, size);
        ow_feed_answer_free(&trial);
    }
    for (size_t hose = 0; hose < feed->hose_count; hose++)
        feed->hoses[hose]->bore_m = carried_m[hose];
    return status;
}

static void find_needed(ow_plan_feed *feed)
{
    double widest_pa = feed->sizes[feed->size_count - 1].hot_rev_pa;
    for (size_t index = feed->size_count; index-- > 0;) {
        ow_plan_size *size = &feed->sizes[index];
        size->enough = size->idle_pa >= OW_FEED_IDLE_LOW_PA && size->hot_rev_pa >= HOSE_SHARE * widest_pa;
        if (size->enough)
            feed->needed_dash = size->dash;
    }
}

static ow_status say_verdict(ow_planning *planning, ow_plan_feed *feed)
{
    const ow_plan_size *carried = NULL;
    for (size_t index = 0; index < feed->size_count; index++) {
        if (feed->sizes[index].carried)
            carried = &feed->sizes[index];
    }
    if (feed->needed_dash == 0)
        feed->size_verdict = ow_planning_words(
            planning, "none of the three is enough; most is lost in %s",
            feed->costliest < feed->part_count ? feed->parts[feed->costliest].part : "the rise");
    else if (carried != NULL && carried->dash == feed->needed_dash)
        feed->size_verdict = ow_planning_words(planning, "-%d as drawn is what it needs", carried->dash);
    else if (carried != NULL && carried->enough)
        feed->size_verdict = ow_planning_words(planning, "-%d as drawn is enough; -%d would be too",
                                               carried->dash, feed->needed_dash);
    else
        feed->size_verdict = ow_planning_words(planning, "-%d is needed", feed->needed_dash);
    return feed->size_verdict == NULL ? OW_MEMORY : OW_OK;
}

ow_status ow_plan_feed_sizes(ow_planning *planning, ow_plan_feed *feed)
{
    if (feed->hose_count == 0)
        return OW_OK;
    ow_status status = try_sizes(planning, feed);
    if (status != OW_OK)
        return status;
    find_needed(feed);
    return say_verdict(planning, feed);
}
