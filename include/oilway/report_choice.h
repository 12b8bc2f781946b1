/* SPDX-License-Identifier: MIT */
/* Printing of what may be chosen: what words could become while they are typed, parts that fit in the place
 * of another. Nothing is reckoned here. Each appends to `text`; check ow_text_status once at the end. */
#ifndef OILWAY_REPORT_CHOICE_H
#define OILWAY_REPORT_CHOICE_H

#include "oilway/offer.h"
#include "oilway/report.h"
#include "oilway/swap.h"

/* The swaps of a part of layouts[index], `most` at most. */
void ow_report_swaps_text(ow_text *text, const ow_layout *layouts, size_t index, const ow_swaps *swaps,
                          size_t most, const ow_style *style);
/*
 * {place, part, errors, warnings, count, swaps: [{id, kind, title, price, bore_mm, length_mm, orifice_mm,
 * angle_deg, material, stock, tolerated, errors, warnings, layout}]}: `layout` is the YAML of all `count`
 * layouts with that part changed.
 */
ow_status ow_report_swaps_json(ow_text *text, const ow_layout *layouts, size_t count, size_t index,
                               const ow_swaps *swaps, size_t most);

/*
 * {words, meaning, says, end, whole, readings: […], decide, circuit, kind, holds, fault: {column, width,
 * message, expected, mend}, offers: [{words, says}]}; what does not apply is null.
 */
ow_status ow_report_typed_json(ow_text *text, const char *words, const ow_typed *typed);

#endif
