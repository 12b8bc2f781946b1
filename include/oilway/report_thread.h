/* SPDX-License-Identifier: MIT */
/* Printing threads: dimensions and limits, the hole to tap, and what a caliper has named. As report.h:
 * nothing is reckoned here; check ow_text_status once at the end. */
#ifndef OILWAY_REPORT_THREAD_H
#define OILWAY_REPORT_THREAD_H

#include "oilway/caliper.h"
#include "oilway/report.h"

/* Both genders in all their classes, or only in `only` unless that is OW_CLASS_USUAL; with `tap` the hole and
 * the cautions. A thread whose pitch is not said is printed in every pitch of the tables. False if there is
 * nothing to print: no such size, or not in that class. */
bool ow_report_thread_text(ow_text *text, const ow_thread *thread, ow_thread_class only, bool tap,
                           const ow_style *style);
/* {thread, standard, …, sides: [{gender, class, …}], tap?}; a pitch not said: {thread, readings: […]}.
 * OW_NONE as false above. */
ow_status ow_report_thread_json(ow_text *text, const ow_thread *thread, ow_thread_class only, bool tap);

void ow_report_caliper_text(ow_text *text, const ow_caliper_ask *ask, const ow_caliper_answer *answer,
                            const ow_style *style);
/* {candidates: [{thread, gender, likelihood, why, least_mm, most_mm, mistaken?}], decide: {measure, how,
 * bits}, open_bits, jaws}. `answer` NULL: no thread known reads like that, the list is empty. */
ow_status ow_report_caliper_json(ow_text *text, const ow_caliper_answer *answer);

#endif
