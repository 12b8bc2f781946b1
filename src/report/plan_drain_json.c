/* SPDX-License-Identifier: MIT */
/* The drain of a plan as JSON. */
#include "report/plan_parts.h"

static void write_segments(ow_json *json, cJSON *item, const ow_plan_return *home)
{
    cJSON *segments = ow_json_list(json, item, "segments");
    for (size_t index = 0; home->reckoned && index < home->segment_count; index++) {
        const ow_drain_segment *segment = &home->segments[index];
        cJSON *one = ow_json_object(json, segments, NULL);
        ow_json_words(json, one, "part", home->segment_parts[index]);
        ow_json_rounded(json, one, "slope_deg", segment->slope_rad * OW_DEGREES_PER_RADIAN, 4);
        ow_json_rounded(json, one, "length_mm", segment->length_m * 1e3, 3);
        ow_json_rounded(json, one, "bore_mm", segment->bore_m * 1e3, 4);
        ow_json_rounded(json, one, "fill_fraction", home->hot[index].flow.fill, 5);
        ow_json_rounded(json, one, "fill_fraction_cold", home->cold[index].flow.fill, 5);
        ow_json_rounded(json, one, "reynolds", home->hot[index].flow.reynolds, 3);
        ow_json_rounded(json, one, "half_full_lpm", home->hot[index].flow.half_full_m3s * OW_LPM, 4);
    }
}

static void write_figures(ow_json *json, cJSON *item, const ow_plan_return *home)
{
    bool known = home->reckoned;
    ow_json_scaled(json, item, "pool_mm", known ? home->pool_m : -1.0, 1e3, 3);
    ow_json_scaled(json, item, "flow_lpm", known ? home->flow_m3s : -1.0, OW_LPM, 5);
    ow_json_scaled(json, item, "margin", known ? home->margin : -1.0, 1.0, 3);
    ow_json_scaled(json, item, "margin_cold", known ? home->cold_margin : -1.0, 1.0, 3);
    ow_json_scaled(json, item, "least_bore_mm", known ? home->least_bore_m : -1.0, 1e3, 3);
    ow_json_scaled(json, item, "least_slope_deg", known ? home->least_slope_rad : -1.0, OW_DEGREES_PER_RADIAN,
                   3);
    ow_json_scaled(json, item, "least_outlet_bore_mm", known ? home->least_outlet_m : -1.0, 1e3, 3);
    if (home->level_said) {
        ow_json_rounded(json, item, "entry_over_oil_mm", home->entry_over_m * 1e3, 2);
        ow_json_rounded(json, item, "outlet_over_oil_mm", home->outlet_over_m * 1e3, 2);
        ow_json_rounded(json, item, "head_needed_mm", home->head_needed_m * 1e3, 2);
        ow_json_rounded(json, item, "friction_head_mm", home->friction_head_m * 1e3, 2);
    } else {
        ow_json_null(json, item, "entry_over_oil_mm");
        ow_json_null(json, item, "outlet_over_oil_mm");
        ow_json_null(json, item, "head_needed_mm");
        ow_json_null(json, item, "friction_head_mm");
    }
}

static void write_return(ow_json *json, cJSON *list, const ow_plan *plan, const ow_plan_return *home)
{
    cJSON *item = ow_json_object(json, list, NULL);
    ow_json_words(json, item, "turbo", home->turbo->id);
    ow_json_words(json, item, "outlet", home->outlet->name);
    ow_json_words(json, item, "port", home->port->name);
    ow_json_words(json, item, "work", ow_plan_work_words(home->work));
    ow_json_bool(json, item, "ok", home->ok);
    ow_json_bool(json, item, "taken", home->taken);
    ow_plan_stack_json(json, item, plan->context, home->layout);
    write_segments(json, item, home);
    write_figures(json, item, home);
    ow_json_findings(json, item, "findings", &home->findings);
}

static void write_made(ow_json *json, cJSON *list, const ow_plan_made *made)
{
    cJSON *item = ow_json_object(json, list, NULL);
    ow_json_words(json, item, "turbo", made->turbo->id);
    ow_json_words(json, item, "outlet", made->outlet->name);
    ow_json_rounded(json, item, "bore_mm", made->bore_m * 1e3, 3);
    ow_json_scaled(json, item, "hose_mm", made->hose_mm > 0 ? made->hose_mm : -1.0, 1.0, 0);
    ow_json_words(json, item, "hose", made->hose);
    ow_json_words(json, item, "fitting", made->fitting);
    ow_json_words(json, item, "bolt_pattern", made->pattern);
    ow_json_words(json, item, "tapped", made->thread);
    ow_json_words(json, item, "tapped_with", made->tapped_with);
    ow_json_scaled(json, item, "drill_mm", made->thread != NULL ? made->tapping.drill_m : -1.0, 1e3, 2);
    ow_json_scaled(json, item, "wall_mm", made->thread != NULL ? made->tapping.wall_least_m : -1.0, 1e3, 2);
    ow_json_words(json, item, "welded_with", made->welded_with);
    ow_json_scaled(json, item, "least_slope_deg", made->least_slope_rad, OW_DEGREES_PER_RADIAN, 3);
    ow_json_scaled(json, item, "lowest_mm", made->lowest_m, 1e3, 2);
    cJSON *steps = ow_json_list(json, item, "steps");
    for (size_t index = 0; index < made->step_count; index++)
        ow_json_words(json, steps, NULL, made->steps[index]);
}

void ow_plan_drain_json(ow_json *json, cJSON *circuits, const ow_plan *plan)
{
    cJSON *drain = ow_json_object(json, circuits, "drain");
    cJSON *returns = ow_json_list(json, drain, "returns");
    for (size_t index = 0; index < plan->drain.return_count; index++)
        write_return(json, returns, plan, &plan->drain.returns[index]);
    cJSON *made = ow_json_list(json, drain, "made");
    for (size_t index = 0; index < plan->drain.made_count; index++)
        write_made(json, made, &plan->drain.made[index]);
}
