/* SPDX-License-Identifier: MIT */
/* The circuits of a plan, each printed by a file of its own. */
#ifndef OW_REPORT_PLAN_PARTS_H
#define OW_REPORT_PLAN_PARTS_H

#include "oilway/report_plan.h"
#include "report/look.h"
#include "report/parts_json.h"

#define OW_LPM 60000.0
#define OW_PA_PER_PSI 6894.757
#define OW_DEGREES_PER_RADIAN 57.295779513082320876798154814105

/* "label: words", folded under the words. */
void ow_plan_line(ow_text *text, const ow_style *style, const char *label, const char *words);
void ow_plan_feed_text(ow_text *text, const ow_plan_feed *feed, const ow_style *style);
void ow_plan_drain_text(ow_text *text, const ow_plan *plan, const ow_style *style);
void ow_plan_coolant_text(ow_text *text, const ow_plan_coolant *loop, const ow_style *style);

/* The layout as an object `stack` of parent; null without one. */
void ow_plan_stack_json(ow_json *json, cJSON *parent, const ow_context *context, const ow_layout *layout);
void ow_plan_feed_json(ow_json *json, cJSON *circuits, const ow_plan *plan);
void ow_plan_drain_json(ow_json *json, cJSON *circuits, const ow_plan *plan);
void ow_plan_coolant_json(ow_json *json, cJSON *circuits, const ow_plan *plan);

#endif
