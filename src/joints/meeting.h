/* SPDX-License-Identifier: MIT */
/* Where ends can meet at all: what spares holding every end against every other. */
#ifndef OW_JOINTS_MEETING_H
#define OW_JOINTS_MEETING_H

#include "oilway/end.h"

#define OW_MEETINGS_MAX 3
typedef struct ow_meetings {
    size_t count;
    uint64_t keys[OW_MEETINGS_MAX];
} ow_meetings;

/* Keys of a whole end. Two ends that any joint rule joins have one in common; two that have one in common
 * need not be joined. */
ow_meetings ow_joint_meetings(const ow_end *end);

#endif
