/* SPDX-License-Identifier: MIT */
/* The routes of the JSON API; docs/api.md describes each. They write what the command's --json prints, by the
 * same functions. */
#ifndef OW_COUNTER_API_H
#define OW_COUNTER_API_H

#include "counter/call.h"

ow_status counter_api_stack(counter_call *call);
ow_status counter_api_sketch(counter_call *call);

ow_status counter_api_check(counter_call *call);
ow_status counter_api_bill(counter_call *call);
ow_status counter_api_plan(counter_call *call);
ow_status counter_api_draw(counter_call *call);
ow_status counter_api_swap(counter_call *call);
ow_status counter_api_flow(counter_call *call);

ow_status counter_api_caliper(counter_call *call);
ow_status counter_api_thread(counter_call *call);
ow_status counter_api_mates(counter_call *call);

ow_status counter_api_oil(counter_call *call);
ow_status counter_api_drain(counter_call *call);
ow_status counter_api_feed(counter_call *call);
ow_status counter_api_siphon(counter_call *call);

ow_status counter_api_read(counter_call *call);
ow_status counter_api_shop(counter_call *call);
ow_status counter_api_catalog(counter_call *call);

/* The counter sheet, as a page of its own: of an ask, or of `layout` or `job` in the query. */
ow_status counter_sheet(counter_call *call);
/* The same of a layout or a job in the body. */
ow_status counter_sheet_posted(counter_call *call);
/* The style that stands in every sheet but a bare one. */
ow_status counter_sheet_style(counter_call *call);
ow_status counter_sheet_of_stack(counter_call *call);

#define COUNTER_SVG "image/svg+xml; charset=utf-8"

/* Reads the body as layouts, freed with ow_layouts_free. */
ow_status counter_read_layouts(counter_call *call, ow_layout **layouts, size_t *count);
/* Reads the body as a job, plans it, and hands the plan over. */
ow_status counter_with_plan(counter_call *call, ow_status (*use)(counter_call *call, const ow_plan *plan));

/* Reads the body as layouts, reckons what the oil does in the first feed, and hands that over; OW_NONE if
 * there is none. */
ow_status counter_with_flow(counter_call *call, ow_status (*use)(counter_call *call, const ow_plan *plan));

#endif
