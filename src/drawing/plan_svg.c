/* SPDX-License-Identifier: MIT */
/* A plan drawn: its layouts, then what was reckoned of each circuit. */
#include "drawing/plan_svg.h"
#include "drawing/layout_svg.h"
#include "oilway/draw.h"

static ow_status put_feed(ow_sheet *sheet, const ow_plan *plan)
{
    if (!plan->feed.solved)
        return OW_OK;
    const ow_said *limit = &plan->job->turbo_pressure_pa;
    return ow_sheet_put_pressure(sheet, &plan->feed.feed, &plan->feed.answer,
                                 limit->said ? limit->value : OW_NOT_SAID);
}

static ow_status put_drains(ow_sheet *sheet, const ow_plan *plan)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < plan->drain.return_count && status == OW_OK; index++)
        if (plan->drain.returns[index].taken && plan->drain.returns[index].reckoned)
            status = ow_sheet_put_drain(sheet, &plan->drain.returns[index], &plan->job->drain);
    return status;
}

static ow_status put_coolants(ow_sheet *sheet, const ow_plan *plan)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < plan->coolant_count && status == OW_OK; index++) {
        const ow_plan_coolant *own = &plan->coolants[index];
        if (!own->reckoned)
            continue;
        status = ow_sheet_put_coolant(sheet, own);
        if (status == OW_OK)
            status = ow_sheet_put_siphon(sheet, &own->loop, &own->siphon, own->curve_angle_rad, own->curve,
                                         own->curve_count);
    }
    return status;
}

/* What was found of one of the plan's layouts: the feed's comes first, then those of the returns that are
 * taken. Coolant's findings speak of machines. */
static const ow_findings *findings_of(const ow_plan *plan, size_t layout)
{
    if (plan->feed.layout != NULL && layout-- == 0)
        return &plan->feed.findings;
    for (size_t index = 0; index < plan->drain.return_count; index++) {
        const ow_plan_return *home = &plan->drain.returns[index];
        if (home->taken && home->layout != NULL && layout-- == 0)
            return &home->findings;
    }
    return NULL;
}

ow_status ow_draw_plan_svg(ow_text *text, const ow_plan *plan, const ow_draw_options *options)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    const ow_layout_look look = {.bare = options != NULL && options->bare};
    ow_status status = OW_OK;
    for (size_t index = 0; index < plan->layout_count && status == OW_OK; index++)
        status = ow_sheet_put_layout(&sheet, &plan->layouts[index], findings_of(plan, index), &look);
    if (status == OW_OK)
        status = put_feed(&sheet, plan);
    if (status == OW_OK)
        status = put_drains(&sheet, plan);
    if (status == OW_OK)
        status = put_coolants(&sheet, plan);
    return ow_sheet_finish(&sheet, status, text);
}
