/* SPDX-License-Identifier: MIT */
/* The feed of a plan as JSON: docs/json.md, docs/schema/plan.json. */
#include "report/plan_parts.h"

static void write_loads(ow_json *json, cJSON *item, const ow_feed_result *result)
{
    cJSON *loads = ow_json_list(json, item, "loads");
    for (size_t index = 0; index < result->load_count; index++) {
        const ow_feed_load *load = &result->loads[index];
        cJSON *one = ow_json_object(json, loads, NULL);
        ow_json_words(json, one, "name", load->name);
        ow_json_rounded(json, one, "flow_lpm", load->flow_m3s * OW_LPM, 6);
        ow_json_rounded(json, one, "pressure_bar", load->pressure_pa / 1e5, 6);
        ow_json_bool(json, one, "dead", load->dead);
    }
    cJSON *pieces = ow_json_list(json, item, "pieces");
    for (size_t index = 0; index < result->loss_count; index++) {
        const ow_piece_loss *loss = &result->losses[index];
        cJSON *one = ow_json_object(json, pieces, NULL);
        ow_json_words(json, one, "kind", loss->kind);
        ow_json_words(json, one, "part", loss->name);
        ow_json_rounded(json, one, "bore_mm", loss->bore_m * 1e3, 4);
        ow_json_rounded(json, one, "reynolds", loss->reynolds, 3);
        ow_json_rounded(json, one, "loss_pa", loss->loss_pa, 3);
    }
}

static void write_states(ow_json *json, cJSON *parent, const ow_plan_feed *feed)
{
    cJSON *states = ow_json_list(json, parent, "states");
    for (size_t index = 0; feed->solved && index < feed->answer.state_count; index++) {
        const ow_feed_result *result = &feed->answer.results[index];
        cJSON *item = ow_json_object(json, states, NULL);
        ow_json_words(json, item, "name", result->state->name);
        ow_json_rounded(json, item, "oil_temperature_c", result->state->oil_c, 3);
        ow_json_rounded(json, item, "viscosity_mm2s", result->viscosity_mm2s, 4);
        ow_json_rounded(json, item, "source_pressure_bar", result->state->source_pa / 1e5, 6);
        ow_json_rounded(json, item, "turbo_pressure_bar", result->turbo_pa / 1e5, 6);
        ow_json_rounded(json, item, "turbo_pressure_psi", result->turbo_pa / OW_PA_PER_PSI, 4);
        ow_json_rounded(json, item, "flow_lpm", result->flow_m3s * OW_LPM, 6);
        ow_json_scaled(json, item, "first_oil_s", result->first_oil_known ? result->first_oil_s : -1.0, 1.0,
                       3);
        ow_json_words(json, item, "verdict", feed->verdicts[index]);
        ow_json_bool(json, item, "assumed", result->state->assumed);
        write_loads(json, item, result);
    }
}

static void write_parts(ow_json *json, cJSON *item, const ow_plan_feed *feed)
{
    cJSON *parts = ow_json_list(json, item, "losses");
    for (size_t index = 0; index < feed->part_count; index++) {
        const ow_plan_loss *part = &feed->parts[index];
        cJSON *one = ow_json_object(json, parts, NULL);
        ow_json_words(json, one, "part", part->part);
        ow_json_words(json, one, "branch", part->branch);
        ow_json_scaled(json, one, "bore_mm", part->bore_m > 0.0 ? part->bore_m : -1.0, 1e3, 4);
        ow_json_rounded(json, one, "reynolds", part->reynolds, 3);
        ow_json_rounded(json, one, "loss_bar", part->loss_pa / 1e5, 6);
        ow_json_rounded(json, one, "loss_psi", part->loss_pa / OW_PA_PER_PSI, 5);
        ow_json_bool(json, one, "costs_most", index == feed->costliest);
    }
}

static void write_sizes(ow_json *json, cJSON *item, const ow_plan_feed *feed)
{
    cJSON *sizes = ow_json_list(json, item, "hose_sizes");
    for (size_t index = 0; index < feed->size_count; index++) {
        const ow_plan_size *size = &feed->sizes[index];
        cJSON *one = ow_json_object(json, sizes, NULL);
        ow_json_number(json, one, "dash", size->dash);
        ow_json_rounded(json, one, "bore_mm", size->bore_m * 1e3, 3);
        ow_json_bool(json, one, "drawn", size->carried);
        ow_json_bool(json, one, "enough", size->enough);
        ow_json_rounded(json, one, "turbo_pressure_bar", size->hot_rev_pa / 1e5, 5);
        ow_json_rounded(json, one, "least_warm_pressure_bar", size->idle_pa / 1e5, 5);
        ow_json_rounded(json, one, "flow_lpm", size->flow_m3s * OW_LPM, 5);
        ow_json_scaled(json, one, "first_oil_s", size->first_oil_s, 1.0, 3);
    }
    ow_json_scaled(json, item, "hose_needed_dash", feed->needed_dash > 0 ? feed->needed_dash : -1.0, 1.0, 0);
}

static void write_way(ow_json *json, cJSON *item, const ow_plan *plan, const ow_plan_feed *feed)
{
    ow_json_words(json, item, "supposing", feed->supposing);
    ow_plan_stack_json(json, item, plan->context, feed->layout);
    write_states(json, item, feed);
    write_parts(json, item, feed);
    ow_json_words(json, item, "costs_most", feed->limiting);
    write_sizes(json, item, feed);
    ow_json_words(json, item, "hose_verdict", feed->size_verdict);
    ow_json_scaled(json, item, "restrictor_mm", feed->carried_restrictor_m, 1e3, 4);
    ow_json_scaled(json, item, "restrictor_wanted_mm", feed->restrictor_m, 1e3, 4);
    ow_json_words(json, item, "restrictor_verdict", feed->restrictor_verdict);
    ow_json_words(json, item, "drain_verdict", feed->drain_verdict);
}

void ow_plan_feed_json(ow_json *json, cJSON *circuits, const ow_plan *plan)
{
    const ow_plan_feed *feed = &plan->feed;
    cJSON *item = ow_json_object(json, circuits, "feed");
    write_way(json, item, plan, feed);
    if (feed->other == NULL) {
        ow_json_null(json, item, "other");
        return;
    }
    cJSON *other = ow_json_object(json, item, "other");
    write_way(json, other, plan, feed->other);
    ow_json_findings(json, other, "findings", &feed->other->findings);
}
