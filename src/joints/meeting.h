/* SPDX-License-Identifier: MIT */
/* Where ends can meet at all: what spares holding every end against every other. */
#ifndef OW_JOINTS_MEETING_H
#define OW_JOINTS_MEETING_H

#include "oilway/context.h"
#include "oilway/end.h"

#define OW_MEETINGS_MAX 3
typedef struct ow_meetings {
    size_t count;
    uint64_t keys[OW_MEETINGS_MAX];
} ow_meetings;

/* Keys of a whole end. Two ends that any joint rule joins have one in common; two that have one in common
 * need not be joined. */
ow_meetings ow_joint_meetings(const ow_end *end);

typedef struct ow_meeting {
    uint32_t a, b; /* a <= b */
} ow_meeting;
/* The pairs of ends, by their places, that have a key in common: an end with itself, too. Each once, in
 * order; freed with ow_release. Costs the pairs and a sorting, not the square of the count. OW_MEMORY. */
ow_status ow_joint_meeting_pairs(const ow_context *context, const ow_end *const *ends, size_t count,
                                 ow_meeting **pairs, size_t *pair_count);

#endif
