/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "physics/feed_internal.h"
#include "physics/root.h"

typedef struct sizing {
    const ow_feed *feed;
    ow_liquid liquid;
    double source_pa;
    ow_branch_flow *flows;
    size_t load; /* index of the load behind the restrictor */
} sizing;

static bool holds_piece(const ow_branch *branch, const ow_piece *piece)
{
    for (size_t i = 0; i < branch->piece_count; i++)
        if (&branch->pieces[i] == piece)
            return true;
    return false;
}

static ow_status solve(const sizing *work)
{
    return ow_branch_solve(&work->feed->trunk, &work->liquid, work->feed->roughness_m, work->source_pa,
                           work->flows);
}

/* The first load at or behind the branch that holds the restrictor. */
static bool find_load(sizing *work, size_t count)
{
    size_t holder = 0;
    while (holder < count && !holds_piece(work->flows[holder].branch, work->feed->restrictor.piece))
        holder++;
    for (size_t i = holder; i < count; i++) {
        size_t up = i;
        while (up != holder && up != 0)
            up = work->flows[up].parent;
        if (up == holder && work->flows[i].branch->has_load) {
            work->load = i;
            return true;
        }
    }
    return false;
}

/* Pressure above the target with a hole of that bore: rises with it. */
static double pressure_surplus(const void *data, double bore_m)
{
    const sizing *work = data;
    const ow_feed_restrictor *ask = &work->feed->restrictor;
    ask->piece->bore_m = bore_m;
    if (solve(work) != OW_OK)
        return -ask->target_pa;
    return work->flows[work->load].end_pa - ask->target_pa;
}

/* Pressure above the target with nothing in the restrictor's place. */
static double open_surplus(const sizing *work)
{
    ow_piece *piece = work->feed->restrictor.piece;
    piece->kind = OW_PIECE_FIXED;
    piece->coefficient = 0.0;
    double surplus = pressure_surplus(work, OW_RESTRICTOR_BORE_HIGH_M);
    piece->kind = OW_PIECE_RESTRICTOR;
    return surplus;
}

static ow_status offer(ow_arena *arena, const ow_feed *feed, double bore_m, ow_restrictor_answer *answer)
{
    ow_restrictor_offer *made = &answer->offers[answer->offer_count];
    feed->restrictor.piece->bore_m = made->bore_m = bore_m;
    ow_status status = ow_feed_all_states(arena, feed, &made->results);
    if (status == OW_OK)
        answer->offer_count++;
    return status;
}

/* The drill sizes on either side; the one size alone where it is a drill's. */
static ow_status offer_drills(ow_arena *arena, const ow_feed *feed, ow_restrictor_answer *answer)
{
    double steps = answer->bore_m / OW_RESTRICTOR_DRILL_STEP_M;
    double below = floor(steps + 1e-6), above = ceil(steps - 1e-6);
    ow_status status = offer(arena, feed, below * OW_RESTRICTOR_DRILL_STEP_M, answer);
    if (status == OW_OK && above > below)
        status = offer(arena, feed, above * OW_RESTRICTOR_DRILL_STEP_M, answer);
    feed->restrictor.piece->bore_m = answer->bore_m;
    return status;
}

ow_status ow_feed_size_restrictor(ow_arena *arena, const ow_feed *feed, ow_restrictor_answer *answer)
{
    const ow_feed_restrictor *ask = &feed->restrictor;
    const ow_feed_state *state = &feed->states[ask->state];
    size_t count = ow_branch_total(&feed->trunk);
    sizing work = {.feed = feed, .source_pa = state->source_pa};
    ow_restrictor_answer made = {.wanted = true};
    work.flows = ow_arena_get_array(arena, count, sizeof *work.flows);
    if (work.flows == NULL)
        return OW_MEMORY;
    ow_status status = ow_oil_liquid(&feed->oil, state->oil_c, &work.liquid);
    if (status == OW_OK)
        status = solve(&work);
    if (status == OW_OK && !find_load(&work, count))
        status = OW_RANGE;
    if (status != OW_OK)
        return status;
    made.needed = open_surplus(&work) > 0.0;
    made.possible = !made.needed || pressure_surplus(&work, OW_RESTRICTOR_BORE_LOW_M) <= 0.0;
    bool sized = made.needed && made.possible &&
                 ow_root_find(pressure_surplus, &work, OW_RESTRICTOR_BORE_LOW_M, OW_RESTRICTOR_BORE_HIGH_M,
                              &made.bore_m);
    if (made.needed && made.possible && !sized)
        made.needed = false; /* wider than any restrictor: as good as none */
    if (!made.needed)
        ask->piece->kind = OW_PIECE_FIXED;
    else
        ask->piece->bore_m = sized ? made.bore_m : OW_RESTRICTOR_BORE_LOW_M;
    status = solve(&work);
    made.flow_m3s = work.flows[work.load].flow_m3s;
    if (status == OW_OK && sized)
        status = offer_drills(arena, feed, &made);
    if (status == OW_OK)
        *answer = made;
    return status;
}
