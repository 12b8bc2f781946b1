/* SPDX-License-Identifier: MIT */
/* Routes whose body is the YAML of a layout or of a job. */
#include <string.h>

#include "counter/api.h"

#define SWAPS_MAX 40 /* as the command */

static ow_status read_layouts(counter_call *call, ow_layout **layouts, size_t *count)
{
    return ow_layouts_read(&call->context, call->shop->catalog, "layout", call->body, call->body_length,
                           layouts, count);
}

ow_status counter_api_check(counter_call *call)
{
    ow_layout *layouts = NULL;
    ow_checked checked;
    size_t count = 0;
    ow_status status = read_layouts(call, &layouts, &count);
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

/* Reads and plans a job. The stock page that a job may name is not read: no path of a request is. */
static ow_status with_plan(counter_call *call, ow_status (*use)(counter_call *call, const ow_plan *plan))
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
    return with_plan(call, write_plan);
}

ow_status counter_api_bill(counter_call *call)
{
    ow_layout *layouts = NULL;
    ow_bill bill;
    size_t count = 0;
    if (ow_job_is(call->body, call->body_length))
        return with_plan(call, write_plan_bill);
    ow_status status = read_layouts(call, &layouts, &count);
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
    ow_status status = read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    status = write_swaps(call, layouts, count, place);
    ow_layouts_free(&call->context, layouts, count);
    return status;
}

/* Checked first, because the drawing numbers the findings where they occur. */
static ow_status draw(counter_call *call, const ow_layout *layouts, size_t count, bool bare)
{
    ow_checked checked;
    ow_draw_options options = OW_DRAW_OPTIONS_INIT;
    options.bare = bare;
    ow_status status = ow_check_layouts(&call->context, call->shop->catalog, layouts, count, &checked);
    if (status != OW_OK)
        return status;
    status = ow_draw_layouts_svg(&call->text, layouts, checked.findings, count, &options);
    ow_checked_done(&checked);
    call->type = "image/svg+xml; charset=utf-8";
    return status;
}

static void write_text(counter_call *call, const ow_layout *layouts, size_t count)
{
    ow_style style = OW_STYLE_INIT;
    for (size_t index = 0; index < count; index++)
        ow_report_layout_text(&call->text, &layouts[index], &style);
    call->type = "text/plain; charset=utf-8";
}

ow_status counter_api_draw(counter_call *call)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    const char *format = counter_value(call, "format");
    bool bare = counter_flag(call, "bare"), text = format != NULL && strcmp(format, "text") == 0;
    if (format != NULL && !text && strcmp(format, "svg") != 0)
        counter_fault(call, "format", format, "not a word known here", "svg or text");
    if (call->faults.errors > 0)
        return OW_INPUT;
    ow_status status = read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    if (text)
        write_text(call, layouts, count);
    else
        status = draw(call, layouts, count, bare);
    ow_layouts_free(&call->context, layouts, count);
    return status;
}
