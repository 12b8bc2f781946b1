/* SPDX-License-Identifier: MIT */
/* The drawings of a plan, each added to a sheet that may hold others. OW_OK, OW_MEMORY. */
#ifndef OW_DRAWING_PLAN_SVG_H
#define OW_DRAWING_PLAN_SVG_H

#include "drawing/sheet.h"
#include "oilway/plan.h"

ow_status ow_sheet_put_pressure(ow_sheet *sheet, const ow_feed *feed, const ow_feed_answer *answer,
                                double limit_pa);
ow_status ow_sheet_put_siphon(ow_sheet *sheet, const ow_loop *loop, const ow_siphon *siphon,
                              const double *angles_rad, const ow_siphon *siphons, size_t count);
ow_status ow_sheet_put_drain(ow_sheet *sheet, const ow_plan_return *home, const ow_job_drain *asked);
/* What is wrong with a run of a drain, in a few words; NULL if nothing is. */
const char *ow_drain_fault_words(unsigned faults);
ow_status ow_sheet_put_coolant(ow_sheet *sheet, const ow_plan_coolant *coolant);
/* What the loop does after shutdown and with the engine running; and the way of its cold or hot side. */
void ow_words_of_loop_shortly(const ow_plan_coolant *coolant, ow_text *words);
void ow_words_of_loop_leg(const ow_plan_coolant *coolant, bool hot, ow_text *words);

#endif
