/* SPDX-License-Identifier: MIT */
/* The coolant loops of a plan as JSON. */
#include "report/plan_parts.h"

static void write_loop(ow_json *json, cJSON *item, const ow_plan *plan, const ow_plan_coolant *loop)
{
    ow_json_words(json, item, "turbo", loop->turbo->id);
    ow_json_words(json, item, "heater", loop->heater != NULL ? loop->heater->id : NULL);
    cJSON *legs = ow_json_list(json, item, "legs");
    for (size_t index = 0; index < loop->leg_count; index++) {
        cJSON *leg = ow_json_object(json, legs, NULL);
        ow_json_words(json, leg, "leg", loop->legs[index].hot ? "hot" : "cold");
        ow_plan_stack_json(json, leg, plan->context, loop->legs[index].layout);
    }
    ow_json_words(json, item, "cold_in", loop->low->name);
    ow_json_words(json, item, "hot_out", loop->high->name);
    ow_json_bool(json, item, "teed", loop->teed);
    if (!loop->reckoned) {
        ow_json_null(json, item, "clocking_deg");
        ow_json_null(json, item, "natural_flow_lpm");
        ow_json_null(json, item, "natural_heat_w");
        return;
    }
    ow_json_rounded(json, item, "clocking_deg", loop->loop.angle_rad * OW_DEGREES_PER_RADIAN, 4);
    ow_json_rounded(json, item, "height_mm", loop->height_m * 1e3, 3);
    ow_json_rounded(json, item, "natural_flow_lpm", loop->siphon.flow_m3s * OW_LPM, 6);
    ow_json_rounded(json, item, "natural_heat_w", loop->siphon.stands_still ? 0.0 : loop->loop.heat_w, 3);
    ow_json_rounded(json, item, "most_heat_w", loop->most_heat_w, 1);
    ow_json_rounded(json, item, "hot_temperature_c", loop->siphon.hot_c, 3);
    ow_json_rounded(json, item, "boiling_c", loop->siphon.boiling_c, 3);
    ow_json_bool(json, item, "boils", loop->siphon.boils);
    ow_json_rounded(json, item, "forced_flow_lpm", loop->forced_m3s * OW_LPM, 4);
    ow_json_rounded(json, item, "forced_loss_kpa", loop->forced.loss_pa / 1e3, 4);
    cJSON *curve = ow_json_list(json, item, "curve");
    for (size_t index = 0; index < loop->curve_count; index++) {
        cJSON *one = ow_json_object(json, curve, NULL);
        ow_json_rounded(json, one, "clocking_deg", loop->curve_angle_rad[index] * OW_DEGREES_PER_RADIAN, 3);
        ow_json_rounded(json, one, "flow_lpm", loop->curve[index].flow_m3s * OW_LPM, 6);
        ow_json_rounded(json, one, "hot_temperature_c", loop->curve[index].hot_c, 3);
    }
}

/* The first loop stands under `coolant` itself; a second one beside it, in `more`. */
void ow_plan_coolant_json(ow_json *json, cJSON *circuits, const ow_plan *plan)
{
    cJSON *coolant = NULL;
    cJSON *more = NULL;
    if (plan->coolant_count == 0)
        ow_json_null(json, circuits, "coolant");
    for (size_t index = 0; index < plan->coolant_count; index++) {
        if (index == 0)
            coolant = ow_json_object(json, circuits, "coolant");
        if (index == 1)
            more = ow_json_list(json, coolant, "more");
        write_loop(json, index == 0 ? coolant : ow_json_object(json, more, NULL), plan,
                   &plan->coolants[index]);
    }
}
