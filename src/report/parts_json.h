/* SPDX-License-Identifier: MIT */
/* Pieces of JSON that several reports share. */
#ifndef OW_REPORT_PARTS_JSON_H
#define OW_REPORT_PARTS_JSON_H

#include "oilway/report.h"
#include "report/json.h"

void ow_json_end(ow_json *json, cJSON *parent, const char *name, const ow_end *end);
void ow_json_findings(ow_json *json, cJSON *parent, const char *name, const ow_findings *findings);
void ow_json_more_findings(ow_json *json, cJSON *list, const ow_findings *findings);
/* "parts" and "joints" of a layout, and its counts, into an object. */
void ow_json_layout(ow_json *json, cJSON *parent, const ow_context *context, const ow_layout *layout);

void ow_json_bill(ow_json *json, cJSON *parent, const ow_bill *bill);

#endif
