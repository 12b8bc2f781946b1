/* SPDX-License-Identifier: MIT */
/* A plan as JSON: docs/json.md, docs/schema/plan.json. */
#include "oilway/report_plan.h"
#include "report/parts_json.h"

#define LPM 60000.0
#define DEGREES_PER_RADIAN 57.295779513082320876798154814105

static void write_layout(ow_json *json, cJSON *parent, const ow_context *context, const ow_layout *layout)
{
    if (layout == NULL) {
        ow_json_null(json, parent, "stack");
        return;
    }
    ow_json_layout(json, ow_json_object(json, parent, "stack"), context, layout);
}

static void write_loads(ow_json *json, cJSON *item, const ow_feed_result *result)
{
    cJSON *loads = ow_json_list(json, item, "loads");
    for (size_t index = 0; index < result->load_count; index++) {
        const ow_feed_load *load = &result->loads[index];
        cJSON *one = ow_json_object(json, loads, NULL);
        ow_json_words(json, one, "name", load->name);
        ow_json_rounded(json, one, "flow_lpm", load->flow_m3s * LPM, 6);
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
        ow_json_rounded(json, item, "flow_lpm", result->flow_m3s * LPM, 6);
        ow_json_scaled(json, item, "first_oil_s", result->first_oil_known ? result->first_oil_s : -1.0, 1.0,
                       3);
        ow_json_bool(json, item, "assumed", result->state->assumed);
        write_loads(json, item, result);
    }
}

static void write_feed(ow_json *json, cJSON *circuits, const ow_plan *plan)
{
    const ow_plan_feed *feed = &plan->feed;
    cJSON *item = ow_json_object(json, circuits, "feed");
    write_layout(json, item, plan->context, feed->layout);
    write_states(json, item, feed);
    ow_json_words(json, item, "costs_most", feed->limiting);
    cJSON *sizes = ow_json_list(json, item, "hose_sizes");
    for (size_t index = 0; index < feed->size_count; index++) {
        const ow_plan_size *size = &feed->sizes[index];
        cJSON *one = ow_json_object(json, sizes, NULL);
        ow_json_number(json, one, "dash", size->dash);
        ow_json_rounded(json, one, "bore_mm", size->bore_m * 1e3, 3);
        ow_json_bool(json, one, "drawn", size->carried);
        ow_json_rounded(json, one, "turbo_pressure_bar", size->hot_rev_pa / 1e5, 5);
        ow_json_rounded(json, one, "flow_lpm", size->flow_m3s * LPM, 5);
    }
    ow_json_scaled(json, item, "restrictor_mm", feed->carried_restrictor_m, 1e3, 4);
    ow_json_scaled(json, item, "restrictor_wanted_mm", feed->restrictor_m, 1e3, 4);
}

static void write_return(ow_json *json, cJSON *list, const ow_plan *plan, const ow_plan_return *home)
{
    cJSON *item = ow_json_object(json, list, NULL);
    ow_json_words(json, item, "turbo", home->turbo->id);
    ow_json_words(json, item, "outlet", home->outlet->name);
    ow_json_words(json, item, "port", home->port->name);
    ow_json_bool(json, item, "ok", home->ok);
    ow_json_bool(json, item, "taken", home->taken);
    write_layout(json, item, plan->context, home->layout);
    cJSON *segments = ow_json_list(json, item, "segments");
    for (size_t index = 0; home->reckoned && index < home->segment_count; index++) {
        const ow_drain_segment *segment = &home->segments[index];
        cJSON *one = ow_json_object(json, segments, NULL);
        ow_json_rounded(json, one, "slope_deg", segment->slope_rad * DEGREES_PER_RADIAN, 4);
        ow_json_rounded(json, one, "length_mm", segment->length_m * 1e3, 3);
        ow_json_rounded(json, one, "bore_mm", segment->bore_m * 1e3, 4);
        ow_json_rounded(json, one, "fill_fraction", home->hot[index].flow.fill, 5);
        ow_json_rounded(json, one, "fill_fraction_cold", home->cold[index].flow.fill, 5);
        ow_json_rounded(json, one, "reynolds", home->hot[index].flow.reynolds, 3);
    }
    ow_json_scaled(json, item, "pool_mm", home->reckoned ? home->pool_m : -1.0, 1e3, 3);
    ow_json_scaled(json, item, "flow_lpm", home->reckoned ? home->flow_m3s : -1.0, LPM, 5);
    ow_json_scaled(json, item, "least_bore_mm", home->reckoned ? home->least_bore_m : -1.0, 1e3, 3);
    ow_json_scaled(json, item, "least_slope_deg", home->reckoned ? home->least_slope_rad : -1.0,
                   DEGREES_PER_RADIAN, 3);
    ow_json_findings(json, item, "findings", &home->findings);
}

static void write_loop(ow_json *json, cJSON *item, const ow_plan *plan, const ow_plan_coolant *loop)
{
    ow_json_words(json, item, "turbo", loop->turbo->id);
    ow_json_words(json, item, "heater", loop->heater != NULL ? loop->heater->id : NULL);
    cJSON *legs = ow_json_list(json, item, "legs");
    for (size_t index = 0; index < loop->leg_count; index++) {
        cJSON *leg = ow_json_object(json, legs, NULL);
        ow_json_words(json, leg, "leg", loop->legs[index].hot ? "hot" : "cold");
        write_layout(json, leg, plan->context, loop->legs[index].layout);
    }
    if (!loop->reckoned)
        return;
    ow_json_rounded(json, item, "clocking_deg", loop->loop.angle_rad * DEGREES_PER_RADIAN, 4);
    ow_json_rounded(json, item, "natural_flow_lpm", loop->siphon.flow_m3s * LPM, 6);
    ow_json_rounded(json, item, "natural_heat_w", loop->siphon.stands_still ? 0.0 : loop->loop.heat_w, 3);
    ow_json_rounded(json, item, "hot_temperature_c", loop->siphon.hot_c, 3);
    ow_json_rounded(json, item, "boiling_c", loop->siphon.boiling_c, 3);
    ow_json_bool(json, item, "boils", loop->siphon.boils);
    ow_json_rounded(json, item, "forced_flow_lpm", loop->forced_m3s * LPM, 4);
    ow_json_rounded(json, item, "forced_loss_kpa", loop->forced.loss_pa / 1e3, 4);
    cJSON *curve = ow_json_list(json, item, "curve");
    for (size_t index = 0; index < loop->curve_count; index++) {
        cJSON *one = ow_json_object(json, curve, NULL);
        ow_json_rounded(json, one, "clocking_deg", loop->curve_angle_rad[index] * DEGREES_PER_RADIAN, 3);
        ow_json_rounded(json, one, "flow_lpm", loop->curve[index].flow_m3s * LPM, 6);
        ow_json_rounded(json, one, "hot_temperature_c", loop->curve[index].hot_c, 3);
    }
}

ow_status ow_report_plan_json(ow_text *text, const ow_plan *plan)
{
    ow_json json = ow_json_new(false);
    ow_json_words(&json, json.root, "job", plan->job->title);
    ow_json_bool(&json, json.root, "ok", plan->ok);
    cJSON *circuits = ow_json_object(&json, json.root, "circuits");
    write_feed(&json, circuits, plan);
    cJSON *drain = ow_json_object(&json, circuits, "drain");
    cJSON *returns = ow_json_list(&json, drain, "returns");
    for (size_t index = 0; index < plan->drain.return_count; index++)
        write_return(&json, returns, plan, &plan->drain.returns[index]);
    /* The first loop stands under `coolant` itself; a second one beside it, in `more`. */
    if (plan->coolant_count == 0)
        ow_json_null(&json, circuits, "coolant");
    cJSON *coolant = NULL;
    cJSON *more = NULL;
    for (size_t index = 0; index < plan->coolant_count; index++) {
        if (index == 0)
            coolant = ow_json_object(&json, circuits, "coolant");
        if (index == 1)
            more = ow_json_list(&json, coolant, "more");
        write_loop(&json, index == 0 ? coolant : ow_json_object(&json, more, NULL), plan,
                   &plan->coolants[index]);
    }
    ow_json_findings(&json, json.root, "findings", &plan->findings);
    cJSON *assumptions = ow_json_list(&json, json.root, "assumptions");
    for (size_t index = 0; index < plan->assumptions.count; index++) {
        const ow_assumption *one = &plan->assumptions.items[index];
        cJSON *item = ow_json_object(&json, assumptions, NULL);
        ow_json_words(&json, item, "what", one->what);
        ow_json_words(&json, item, "value", one->value);
        ow_json_words(&json, item, "mark", ow_mark_words(one->mark));
        ow_json_words(&json, item, "source", one->source);
    }
    ow_json_bill(&json, ow_json_object(&json, json.root, "bill"), &plan->bill);
    cJSON *notes = ow_json_list(&json, json.root, "notes");
    for (size_t index = 0; index < plan->note_count; index++)
        ow_json_words(&json, notes, NULL, plan->notes[index]);
    return ow_json_done(&json, text);
}
