/* SPDX-License-Identifier: MIT */
/* Printing the quick physics: as text for a person or as JSON for a program. Nothing is reckoned here. Each
 * appends to `text`; check ow_text_status once at the end. */
#ifndef OILWAY_REPORT_PHYSICS_H
#define OILWAY_REPORT_PHYSICS_H

#include "oilway/quick.h"
#include "oilway/report.h"

void ow_report_oil_text(ow_text *text, const ow_oil_request *request, const ow_oil_answer *answer,
                        const ow_style *style);
ow_status ow_report_oil_json(ow_text *text, const ow_oil_request *request, const ow_oil_answer *answer);

void ow_report_drain_text(ow_text *text, const ow_drain_request *request, const ow_drain_answer *answer,
                          const ow_style *style);
ow_status ow_report_drain_json(ow_text *text, const ow_drain_request *request, const ow_drain_answer *answer);

void ow_report_line_text(ow_text *text, const ow_line *line, const ow_line_answer *answer,
                         const ow_style *style);
ow_status ow_report_line_json(ow_text *text, const ow_line *line, const ow_line_answer *answer);

void ow_report_loop_text(ow_text *text, const ow_loop_text *loop, const ow_loop_answer *answer,
                         const ow_style *style);
ow_status ow_report_loop_json(ow_text *text, const ow_loop_text *loop, const ow_loop_answer *answer);

/* What was assumed, a line each under a heading; nothing if nothing was. */
void ow_report_assumptions_text(ow_text *text, const ow_assumptions *assumptions, const ow_style *style);

#endif
