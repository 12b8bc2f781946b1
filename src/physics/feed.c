/* SPDX-License-Identifier: MIT */
#include "oilway/feed.h"

#include "physics/feed_internal.h"

/* Room that all losses of a tree may need: those of its pieces and one rise for each branch. */
static size_t losses_max(const ow_branch *branch)
{
    size_t most = OW_PIECE_LOSSES_MAX(branch->piece_count) + 1;
    for (size_t i = 0; i < branch->branch_count; i++)
        most += losses_max(&branch->branches[i]);
    return most;
}

static size_t branch_losses(const ow_feed *feed, const ow_liquid *liquid, const ow_branch_flow *flow,
                            ow_piece_loss *losses)
{
    const ow_branch *branch = flow->branch;
    size_t count = ow_pieces_losses(flow->before, branch->pieces, branch->piece_count, liquid,
                                    feed->roughness_m, flow->flow_m3s, losses);
    if (branch->rise_m != 0.0)
        losses[count++] = (ow_piece_loss){
            .kind = "rise", .name = "", .piece = branch->piece_count, .loss_pa = flow->rise_pa};
    return count;
}

static const char *branch_name(const ow_branch *branch)
{
    if (branch->name != NULL && branch->name[0] != '\0')
        return branch->name;
    return branch->has_load && branch->load.name != NULL ? branch->load.name : "";
}

/* A load goes by its own name, a dead branch by the branch's. */
static const char *end_name(const ow_branch *branch)
{
    if (branch->has_load && branch->load.name != NULL && branch->load.name[0] != '\0')
        return branch->load.name;
    return branch_name(branch);
}

static ow_status list_losses(ow_arena *arena, const ow_feed *feed, const ow_branch_flow *flows, size_t count,
                             ow_feed_result *result)
{
    size_t most = losses_max(&feed->trunk);
    result->losses = ow_arena_get_array(arena, most, sizeof *result->losses);
    result->loss_branches = ow_arena_get_array(arena, most, sizeof *result->loss_branches);
    if (result->losses == NULL || result->loss_branches == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < count; i++) {
        size_t start = result->loss_count;
        result->loss_count += branch_losses(feed, &result->liquid, &flows[i], &result->losses[start]);
        for (size_t j = start; j < result->loss_count; j++)
            result->loss_branches[j] = i == 0 ? "" : branch_name(flows[i].branch);
    }
    result->costliest = result->loss_count;
    for (size_t i = 0; i < result->loss_count; i++)
        if (result->losses[i].bore_m > 0.0 &&
            (result->costliest == result->loss_count ||
             result->losses[i].loss_pa > result->losses[result->costliest].loss_pa))
            result->costliest = i;
    return OW_OK;
}

static ow_status list_loads(ow_arena *arena, const ow_branch_flow *flows, size_t count,
                            ow_feed_result *result)
{
    result->loads = ow_arena_get_array(arena, count, sizeof *result->loads);
    if (result->loads == NULL)
        return OW_MEMORY;
    bool found = false;
    for (size_t i = 0; i < count; i++) {
        const ow_branch *branch = flows[i].branch;
        if (branch->branch_count > 0)
            continue;
        result->loads[result->load_count++] = (ow_feed_load){
            end_name(branch), flows[i].flow_m3s, flows[i].end_pa, !branch->has_load, branch->ball_bearing};
        if (branch->has_load && (!found || flows[i].end_pa < result->turbo_pa)) {
            result->turbo_pa = flows[i].end_pa;
            found = true;
        }
    }
    return OW_OK;
}

ow_status ow_feed_one_state(ow_arena *arena, const ow_feed *feed, size_t state, ow_feed_result *result)
{
    ow_feed_result made = {.state = &feed->states[state]};
    size_t count = ow_branch_total(&feed->trunk);
    ow_branch_flow *flows = ow_arena_get_array(arena, count, sizeof *flows);
    if (flows == NULL)
        return OW_MEMORY;
    ow_status status = ow_oil_liquid(&feed->oil, made.state->oil_c, &made.liquid);
    if (status == OW_OK)
        status = ow_oil_viscosity_mm2s(&feed->oil, made.state->oil_c, &made.viscosity_mm2s);
    if (status == OW_OK)
        status = ow_branch_solve(&feed->trunk, &made.liquid, feed->roughness_m, made.state->source_pa, flows);
    if (status == OW_OK)
        status = list_losses(arena, feed, flows, count, &made);
    if (status == OW_OK)
        status = list_loads(arena, flows, count, &made);
    if (status == OW_OK)
        status = ow_feed_first_oil(arena, feed, &made.liquid, made.state->source_pa, flows, count,
                                   &made.first_oil_s, &made.first_oil_known);
    if (status != OW_OK)
        return status;
    made.flow_m3s = flows[0].flow_m3s;
    made.rise_pa = flows[0].rise_pa;
    made.loss_pa = made.state->source_pa - made.turbo_pa;
    *result = made;
    return OW_OK;
}

ow_status ow_feed_all_states(ow_arena *arena, const ow_feed *feed, ow_feed_result **results)
{
    ow_feed_result *made = ow_arena_get_array(arena, feed->state_count, sizeof *made);
    if (made == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < feed->state_count; i++) {
        ow_status status = ow_feed_one_state(arena, feed, i, &made[i]);
        if (status != OW_OK)
            return status;
    }
    *results = made;
    return OW_OK;
}

static bool restrictor_in_range(const ow_feed *feed)
{
    const ow_feed_restrictor *restrictor = &feed->restrictor;
    if (!restrictor->wanted)
        return true;
    if (restrictor->piece == NULL || restrictor->state >= feed->state_count ||
        !(restrictor->target_pa > 0.0 && restrictor->target_pa <= OW_SOURCE_HIGH_PA))
        return false;
    restrictor->piece->kind = OW_PIECE_RESTRICTOR;
    if (!(restrictor->piece->bore_m >= OW_RESTRICTOR_BORE_LOW_M))
        restrictor->piece->bore_m = OW_RESTRICTOR_BORE_LOW_M;
    return true;
}

ow_status ow_feed_check(const ow_feed *feed)
{
    ow_liquid liquid;
    if (feed->state_count == 0 || feed->state_count > OW_FEED_STATES_MAX || !restrictor_in_range(feed) ||
        ow_branch_check(&feed->trunk) != OW_OK || !ow_branch_has_load(&feed->trunk) ||
        !(feed->roughness_m >= 0.0 && feed->roughness_m <= OW_ROUGHNESS_HIGH_M))
        return OW_RANGE;
    for (size_t i = 0; i < feed->state_count; i++)
        if (!(feed->states[i].source_pa >= 0.0 && feed->states[i].source_pa <= OW_SOURCE_HIGH_PA) ||
            ow_oil_liquid(&feed->oil, feed->states[i].oil_c, &liquid) != OW_OK)
            return OW_RANGE;
    return OW_OK;
}

ow_status ow_feed_solve(const ow_context *context, const ow_feed *feed, ow_feed_answer *answer)
{
    ow_status status = ow_feed_check(feed);
    if (status != OW_OK)
        return status;
    ow_arena *arena = ow_new_array(context, 1, sizeof *arena);
    if (arena == NULL)
        return OW_MEMORY;
    *arena = ow_arena_new(context);
    ow_feed_answer made = {.state_count = feed->state_count, .storage = arena};
    if (feed->restrictor.wanted)
        status = ow_feed_size_restrictor(arena, feed, &made.restrictor);
    if (status == OW_OK)
        status = ow_feed_all_states(arena, feed, &made.results);
    if (status == OW_OK)
        *answer = made;
    else
        ow_feed_answer_free(&made);
    return status;
}

void ow_feed_answer_free(ow_feed_answer *answer)
{
    ow_arena *arena = answer->storage;
    if (arena != NULL) {
        const ow_context *context = arena->context;
        ow_arena_done(arena);
        ow_release(context, arena);
    }
    *answer = (ow_feed_answer){0};
}
