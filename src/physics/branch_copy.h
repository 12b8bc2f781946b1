/* SPDX-License-Identifier: MIT */
#ifndef OW_PHYSICS_BRANCH_COPY_H
#define OW_PHYSICS_BRANCH_COPY_H

#include "base/memory.h"
#include "oilway/hydraulics.h"

/* A copy of a tree in the arena with the bores of pipes and fittings (not of drilled holes) changed by
 * bore_m, never below half of what they were. Names stay lent. OW_MEMORY: *copy untouched. */
ow_status ow_branch_copy(ow_arena *arena, const ow_branch *branch, double bore_m, ow_branch *copy);

#endif
