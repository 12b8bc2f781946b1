/* SPDX-License-Identifier: MIT */
/* What the files of the feed share. */
#ifndef OW_PHYSICS_FEED_INTERNAL_H
#define OW_PHYSICS_FEED_INTERNAL_H

#include "base/memory.h"
#include "oilway/feed.h"

/* Solves one state with the pieces as they stand; everything it points to is in the arena. */
ow_status ow_feed_one_state(ow_arena *arena, const ow_feed *feed, size_t state, ow_feed_result *result);
/* Every state; *results in the arena. */
ow_status ow_feed_all_states(ow_arena *arena, const ow_feed *feed, ow_feed_result **results);
/* Finds the restrictor's bore, leaves it in its piece, and reckons the drill sizes on either side. */
ow_status ow_feed_size_restrictor(ow_arena *arena, const ow_feed *feed, ow_restrictor_answer *answer);
/* Longest over the loads: volume of the path over its line-only flow. *known false if a line is too high. */
ow_status ow_feed_first_oil(ow_arena *arena, const ow_feed *feed, const ow_liquid *liquid, double source_pa,
                            const ow_branch_flow *flows, size_t count, double *seconds, bool *known);

#endif
