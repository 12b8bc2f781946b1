/* SPDX-License-Identifier: MIT */
/* The rules of the trade that checks and plans judge by: data only. */
#ifndef OW_RULES_TABLE_H
#define OW_RULES_TABLE_H

#include "oilway/finding.h"

extern const ow_rule ow_rules[];
extern const size_t ow_rules_count;
extern const ow_rule ow_physics_rules[]; /* those of table_physics.c */
extern const size_t ow_physics_rules_count;
extern const ow_rule ow_practice_rules[]; /* those of table_practice.c */
extern const size_t ow_practice_rules_count;
extern const ow_rule ow_plan_rules[]; /* those of table_plan.c */
extern const size_t ow_plan_rules_count;

#endif
