/* SPDX-License-Identifier: MIT */
/* Routes whose body is the YAML of a layout or of a job. */
#include <string.h>

#include "counter/api.h"

#define SWAPS_MAX 40 /* as the command */

ow_status counter_read_layouts(counter_call *call, ow_layout **layouts, size_t *count)
{
    return ow_layouts_read(&call->context, call->shop->catalog, "layout", call->body, call->body_length,
                           layouts, count);
}

ow_status counter_api_check(counter_call *call)
{
    ow_layout *layouts = NULL;
    ow_checked checked;
    size_t count = 0;
    ow_status status = counter_read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    status = ow_check_layouts(&call->context, call->shop->catalog, layouts, count, &checked);
    if (status == OW_OK) {
        status = ow_report_check_json(&call->text, layouts, checked.findings, checked.passed, count);
        ow_checked_done(&checked);
    }
    ow_layouts_free(&call->context, layouts, count);
    return status;
}

/* The stock page that a job may name is not read: no path of a request is. */
ow_status counter_with_plan(counter_call *call, ow_status (*use)(counter_call *call, const ow_plan *plan))
{
    ow_job *job = NULL;
    ow_plan plan;
    ow_status status =
        ow_job_read(&call->context, call->shop->catalog, "job", call->body, call->body_length, &job);
    if (status != OW_OK)
        return status;
    status = ow_plan_make(&call->context, call->shop->catalog, call->shop->net, job, &plan);
    if (status == OW_OK) {
        status = use(call, &plan);
        ow_plan_done(&plan);
    }
    ow_job_free(job);
    return status;
}

static ow_status write_plan(counter_call *call, const ow_plan *plan)
{
    return ow_report_plan_json(&call->text, plan);
}

static ow_status write_plan_bill(counter_call *call, const ow_plan *plan)
{
    return ow_report_bill_json(&call->text, &plan->bill);
}

ow_status counter_api_plan(counter_call *call)
{
    return counter_with_plan(call, write_plan);
}

ow_status counter_api_bill(counter_call *call)
{
    ow_layout *layouts = NULL;
    ow_bill bill;
    size_t count = 0;
    if (ow_job_is(call->body, call->body_length))
        return counter_with_plan(call, write_plan_bill);
    ow_status status = counter_read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    status = ow_bill_new(&call->context, layouts, count, &bill);
    if (status == OW_OK) {
        status = ow_report_bill_json(&call->text, &bill);
        ow_bill_done(&bill);
    }
    ow_layouts_free(&call->context, layouts, count);
    return status;
}

/* The oil that is named, or none: then one is assumed. */
static ow_status fill_oil(counter_call *call, ow_job *job)
{
    const char *grade = counter_value(call, "oil");
    if (grade == NULL)
        return OW_OK;
    const ow_typical_oil *oil = ow_typical_oil_find(grade);
    if (oil == NULL) {
        counter_fault(call, "oil", grade, "no figures are known for this oil", "a grade such as 15W-40");
        return OW_INPUT;
    }
    job->has_oil = true;
    job->oil_grade = oil->name;
    return ow_oil_set(oil->name, oil->kv40_mm2s, oil->kv100_mm2s, oil->density15_kgm3, &job->oil);
}

ow_status counter_with_flow(counter_call *call, ow_status (*use)(counter_call *call, const ow_plan *plan))
{
    ow_layout *layouts = NULL;
    ow_job job = {.title = "", .turbo_pressure_pa = {false, 0.0}};
    ow_plan plan;
    size_t count = 0, feed = 0;
    ow_status status = fill_oil(call, &job);
    if (status == OW_OK)
        status = counter_read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    while (feed + 1 < count && layouts[feed].circuit != OW_FEED)
        feed++;
    status = count > 0 ? ow_plan_reckon_feed(&call->context, &job, &layouts[feed], &plan) : OW_NONE;
    if (status == OW_OK) {
        status = use(call, &plan);
        ow_plan_done(&plan);
    }
    ow_layouts_free(&call->context, layouts, count);
    return status;
}

static ow_status write_flow(counter_call *call, const ow_plan *plan)
{
    return ow_report_plan_feed_json(&call->text, plan);
}

ow_status counter_api_flow(counter_call *call)
{
    return counter_with_flow(call, write_flow);
}

static ow_status write_swaps(counter_call *call, const ow_layout *layouts, size_t count, const char *place)
{
    size_t index = 0, node = OW_NODE_NONE;
    for (; index < count; index++) {
        node = ow_layout_node_named(&layouts[index], place);
        if (node != OW_NODE_NONE && layouts[index].nodes[node].part != NULL)
            break;
    }
    if (index == count) {
        counter_fault(call, "place", place, "no part of the layout is called so",
                      "an id, or id#2 for its second");
        return OW_INPUT;
    }
    ow_swaps swaps;
    ow_status status = ow_swaps_find(&call->context, call->shop->catalog, &layouts[index], node, &swaps);
    if (status != OW_OK)
        return status;
    status = ow_report_swaps_json(&call->text, layouts, count, index, &swaps, SWAPS_MAX);
    ow_swaps_done(&swaps);
    return status;
}

ow_status counter_api_swap(counter_call *call)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    const char *place = counter_value(call, "place");
    if (place == NULL) {
        counter_fault(call, "place", "", "the place is missing", "a part of the layout, such as he-4-s#2");
        return OW_INPUT;
    }
    ow_status status = counter_read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    status = write_swaps(call, layouts, count, place);
    ow_layouts_free(&call->context, layouts, count);
    return status;
}
