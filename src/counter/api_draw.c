/* SPDX-License-Identifier: MIT */
/* Drawings of layouts and of jobs. */
#include <string.h>

#include "counter/api.h"

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
    call->type = COUNTER_SVG;
    return status;
}

static void write_text(counter_call *call, const ow_layout *layouts, size_t count)
{
    ow_style style = OW_STYLE_INIT;
    for (size_t index = 0; index < count; index++)
        ow_report_layout_text(&call->text, &layouts[index], &style);
    call->type = "text/plain; charset=utf-8";
}

static ow_status draw_layouts(counter_call *call, bool bare, bool text)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_status status = counter_read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    if (text)
        write_text(call, layouts, count);
    else
        status = draw(call, layouts, count, bare);
    ow_layouts_free(&call->context, layouts, count);
    return status;
}

static ow_status draw_pressure(counter_call *call, const ow_plan *plan)
{
    const ow_said *limit = &plan->job->turbo_pressure_pa;
    if (!plan->feed.solved)
        return OW_NONE;
    return ow_draw_pressure_svg(&call->text, &plan->feed.feed, &plan->feed.answer,
                                limit->said ? limit->value : OW_NOT_SAID);
}

static ow_status draw_drain(counter_call *call, const ow_plan *plan, size_t number)
{
    if (number > plan->drain.return_count || !plan->drain.returns[number - 1].reckoned)
        return OW_NONE;
    return ow_draw_drain_svg(&call->text, &plan->drain.returns[number - 1], &plan->job->drain);
}

static ow_status draw_loop(counter_call *call, const ow_plan *plan, size_t number, bool siphon)
{
    if (number > plan->coolant_count || !plan->coolants[number - 1].reckoned)
        return OW_NONE;
    const ow_plan_coolant *own = &plan->coolants[number - 1];
    return siphon ? ow_draw_siphon_svg(&call->text, &own->loop, &own->siphon, own->curve_angle_rad,
                                       own->curve, own->curve_count)
                  : ow_draw_coolant_svg(&call->text, own);
}

/* One drawing of a job; OW_NONE where that was not reckoned. */
static ow_status draw_plan(counter_call *call, const ow_plan *plan)
{
    const char *of = counter_value(call, "of");
    ow_draw_options options = OW_DRAW_OPTIONS_INIT;
    size_t number = 1;
    options.bare = counter_flag(call, "bare");
    counter_count(call, "number", OW_PLAN_RETURNS, &number);
    if (call->faults.errors > 0)
        return OW_INPUT;
    call->type = COUNTER_SVG;
    if (of == NULL || strcmp(of, "all") == 0)
        return ow_draw_plan_svg(&call->text, plan, &options);
    if (strcmp(of, "pressure") == 0)
        return draw_pressure(call, plan);
    if (strcmp(of, "drain") == 0)
        return draw_drain(call, plan, number);
    if (strcmp(of, "coolant") == 0 || strcmp(of, "siphon") == 0)
        return draw_loop(call, plan, number, of[0] == 's');
    counter_fault(call, "of", of, "not a word known here", "all, pressure, drain, coolant or siphon");
    return OW_INPUT;
}

/* A layout has no more to draw than itself and, of a feed, the pressure along it. */
static bool wants_pressure(counter_call *call)
{
    const char *of = counter_value(call, "of");
    if (of != NULL && strcmp(of, "all") != 0 && strcmp(of, "pressure") != 0)
        counter_fault(call, "of", of, "not a word known of a layout", "all or pressure");
    return of != NULL && strcmp(of, "pressure") == 0;
}

static ow_status draw_flow(counter_call *call, const ow_plan *plan)
{
    call->type = COUNTER_SVG;
    return draw_pressure(call, plan);
}

ow_status counter_api_draw(counter_call *call)
{
    const char *format = counter_value(call, "format");
    bool bare = counter_flag(call, "bare"), text = format != NULL && strcmp(format, "text") == 0;
    if (format != NULL && !text && strcmp(format, "svg") != 0)
        counter_fault(call, "format", format, "not a word known here", "svg or text");
    if (call->faults.errors > 0)
        return OW_INPUT;
    if (ow_job_is(call->body, call->body_length))
        return counter_with_plan(call, draw_plan);
    bool pressure = wants_pressure(call);
    if (call->faults.errors > 0)
        return OW_INPUT;
    return pressure ? counter_with_flow(call, draw_flow) : draw_layouts(call, bare, text);
}
