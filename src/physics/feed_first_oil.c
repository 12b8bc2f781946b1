/* SPDX-License-Identifier: MIT */
/* How long a dry line takes to fill: no longer than its volume over the flow that it carries when full
 * and open at its end, since a part-filled line resists less. */
#include <string.h>

#include "physics/feed_internal.h"

/* The pieces from the source to the end of flows[leaf], in order. */
static ow_status path_pieces(ow_arena *arena, const ow_branch_flow *flows, size_t leaf, ow_piece **pieces,
                             size_t *count, double *rise_pa)
{
    size_t total = 0;
    *rise_pa = 0.0;
    for (size_t i = leaf;; i = flows[i].parent) {
        total += flows[i].branch->piece_count;
        *rise_pa += flows[i].rise_pa;
        if (i == 0)
            break;
    }
    ow_piece *made = ow_arena_get_array(arena, total, sizeof *made);
    if (made == NULL)
        return OW_MEMORY;
    size_t end = total;
    for (size_t i = leaf;; i = flows[i].parent) {
        const ow_branch *branch = flows[i].branch;
        end -= branch->piece_count;
        if (branch->piece_count > 0)
            memcpy(&made[end], branch->pieces, branch->piece_count * sizeof *made);
        if (i == 0)
            break;
    }
    *pieces = made;
    *count = total;
    return OW_OK;
}

/* A path longer than one branch may be is left unknown rather than refused. */
static bool fill_time(const ow_feed *feed, const ow_piece *pieces, size_t count, const ow_liquid *liquid,
                      double drop_pa, double *seconds)
{
    double flow;
    if (count > OW_PIECES_MAX || drop_pa <= 0.0 ||
        ow_pieces_free_flow_m3s(pieces, count, liquid, feed->roughness_m, drop_pa, &flow) != OW_OK ||
        !(flow > 0.0))
        return false;
    *seconds = ow_pieces_volume_m3(pieces, count) / flow;
    return true;
}

ow_status ow_feed_first_oil(ow_arena *arena, const ow_feed *feed, const ow_liquid *liquid, double source_pa,
                            const ow_branch_flow *flows, size_t count, double *seconds, bool *known)
{
    double longest = 0.0;
    bool all = true;
    for (size_t i = 0; i < count; i++) {
        if (!flows[i].branch->has_load)
            continue;
        ow_piece *pieces;
        size_t piece_count;
        double rise_pa, time = 0.0;
        ow_status status = path_pieces(arena, flows, i, &pieces, &piece_count, &rise_pa);
        if (status != OW_OK)
            return status;
        all = all && fill_time(feed, pieces, piece_count, liquid, source_pa - rise_pa, &time);
        longest = time > longest ? time : longest;
    }
    *seconds = all ? longest : 0.0;
    *known = all;
    return OW_OK;
}
