/* SPDX-License-Identifier: MIT */
/* Cards as JSON for any report that shows joints. */
#ifndef OW_REPORT_JOINT_JSON_H
#define OW_REPORT_JOINT_JSON_H

#include "oilway/card.h"
#include "report/json.h"

/* Adds the members of a card to an object. */
void ow_json_card(ow_json *json, cJSON *object, const ow_card *card);

#endif
