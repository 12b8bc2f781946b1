/* SPDX-License-Identifier: MIT */
/* Pieces that the physics reports share. */
#ifndef OW_REPORT_PHYSICS_PARTS_H
#define OW_REPORT_PHYSICS_PARTS_H

#include "oilway/report_physics.h"
#include "report/look.h"
#include "report/parts_json.h"

/* A number with seven significant digits: nothing reckoned here is surer than that. */
void ow_json_figure(ow_json *json, cJSON *parent, const char *name, double value);
/* The same, or null where it is not known. */
void ow_json_known_figure(ow_json *json, cJSON *parent, const char *name, bool known, double value);
/* assumptions[].{what,value,source,mark} */
void ow_json_assumptions(ow_json *json, cJSON *parent, const char *name, const ow_assumptions *assumptions);
/* Findings as plain sentences. */
void ow_json_remarks(ow_json *json, cJSON *parent, const char *name, const ow_findings *findings);

/* A line of its own in a paint. */
void ow_physics_title(ow_text *text, ow_paint paint, const ow_style *style, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* "  label          value" */
void ow_physics_row(ow_text *text, const char *label, const char *value_format, ...)
    __attribute__((format(printf, 3, 4)));
/* A number with four significant digits and no exponent. */
void ow_physics_figure(ow_text *text, double value);
/* Assumptions, then findings, then the line that ends every physics answer. */
void ow_physics_end(ow_text *text, const ow_assumptions *assumptions, const ow_findings *findings,
                    const ow_style *style);

#endif
