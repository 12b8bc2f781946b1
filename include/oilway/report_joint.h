/* SPDX-License-Identifier: MIT */
/* Printing of joint cards and of verdicts on pairs of ends, as text for a person or as JSON. Nothing is
 * reckoned here. Each appends to `text`; check ow_text_status once at the end. */
#ifndef OILWAY_REPORT_JOINT_H
#define OILWAY_REPORT_JOINT_H

#include "oilway/card.h"
#include "oilway/mates.h"
#include "oilway/report.h"

/* All mates of an end, or all readings of a pair: by reading, the right ones first. */
/* What tells the readings of a half said end apart, in words (ow_typed.decide). */
void ow_report_apart_text(ow_text *text, const char *end, const char *decide, const ow_style *style);
void ow_report_mates_text(ow_text *text, const ow_mates_list *list, const ow_style *style);
/*
 * A list of {end, verdict, turns: [least, most] or null, why, source, reading}; end is the second of the
 * pair. With ask (may be NULL) each that seals also has its `card`, as below.
 */
ow_status ow_report_mates_json(ow_text *text, const ow_mates_list *list, const ow_card_ask *ask);

/* The card of one joint. */
void ow_report_card_text(ow_text *text, const ow_card *card, const ow_style *style);
ow_status ow_report_card_json(ow_text *text, const ow_card *card);

/* The cards of all joints of a layout, in walking order. */
void ow_report_layout_cards_text(ow_text *text, const ow_layout *layout, const ow_style *style);

#endif
