/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "physics/branch_copy.h"
#include "physics/feed_internal.h"

static void widen(ow_feed_band *band, const ow_feed_result *result)
{
    band->turbo_low_pa = fmin(band->turbo_low_pa, result->turbo_pa);
    band->turbo_high_pa = fmax(band->turbo_high_pa, result->turbo_pa);
    band->flow_low_m3s = fmin(band->flow_low_m3s, result->flow_m3s);
    band->flow_high_m3s = fmax(band->flow_high_m3s, result->flow_m3s);
}

/* One corner: temperature and bores changed by so much. */
static ow_status corner(ow_arena *arena, const ow_feed *feed, size_t state, double by_k, double by_m,
                        ow_feed_result *result)
{
    ow_feed changed = *feed;
    ow_feed_state at = feed->states[state];
    at.oil_c = fmin(fmax(at.oil_c + by_k, OW_OIL_TEMPERATURE_LOW_C), OW_OIL_TEMPERATURE_HIGH_C);
    changed.states = &at;
    changed.state_count = 1;
    changed.restrictor = (ow_feed_restrictor){0};
    ow_status status = ow_branch_copy(arena, &feed->trunk, by_m, &changed.trunk);
    if (status == OW_OK)
        status = ow_feed_one_state(arena, &changed, 0, result);
    return status;
}

ow_status ow_feed_state_band(const ow_context *context, const ow_feed *feed, size_t state, ow_feed_band *band)
{
    ow_status status = ow_feed_check(feed);
    if (status != OW_OK || state >= feed->state_count)
        return OW_RANGE;
    ow_arena arena = ow_arena_new(context);
    ow_feed_band found = {HUGE_VAL, 0.0, HUGE_VAL, 0.0};
    for (int warmer = -1; warmer <= 1 && status == OW_OK; warmer++) {
        for (int wider = -1; wider <= 1 && status == OW_OK; wider++) {
            ow_feed_result result;
            status = corner(&arena, feed, state, warmer * OW_UNSURE_TEMPERATURE_K, wider * OW_UNSURE_BORE_M,
                            &result);
            if (status == OW_OK)
                widen(&found, &result);
            else if (status == OW_RANGE)
                status = OW_OK; /* too thick to flow there: that corner says nothing */
        }
    }
    if (status == OW_OK && !isfinite(found.turbo_low_pa))
        status = OW_RANGE;
    if (status == OW_OK)
        *band = found;
    ow_arena_done(&arena);
    return status;
}
