/* SPDX-License-Identifier: MIT */
/* A made drain while it is being worked out. */
#ifndef OW_PLAN_MAKING_H
#define OW_PLAN_MAKING_H

#include "oilway/hose_material.h"
#include "plan/planning.h"

#define OW_MADE_WALL_M 0.0015 /* of the pipe that is welded into a plate (assumption) */

typedef struct ow_making {
    ow_planning *planning;
    ow_plan_made *made;
    const char *hose_end; /* the cut end of the hose, as an END; NULL if the shop has none that wide */
    ow_thread thread;     /* to tap, where made->thread is said */
    double weld_mm;       /* outside of what is welded in */
} ow_making;

/* Writes made->steps. */
ow_status ow_plan_made_steps(ow_making *making);

#endif
