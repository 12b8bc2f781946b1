/* SPDX-License-Identifier: MIT */
/* Printing a plan: one page for a person, JSON with stable names, or its layouts as YAML. */
#ifndef OILWAY_REPORT_PLAN_H
#define OILWAY_REPORT_PLAN_H

#include "oilway/plan.h"
#include "oilway/report.h"

void ow_report_plan_text(ow_text *text, const ow_plan *plan, const ow_style *style);
ow_status ow_report_plan_json(ow_text *text, const ow_plan *plan);
/* The feed of a layout as ow_plan_reckon_feed makes it. */
ow_status ow_report_plan_feed_json(ow_text *text, const ow_plan *plan);
void ow_report_plan_yaml(ow_text *text, const ow_plan *plan); /* the layouts, one document each */

#endif
