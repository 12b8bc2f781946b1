/* SPDX-License-Identifier: MIT */
#include "report/physics_parts.h"

static const double lpm = 1.0 / 60000.0;
static const double bar = 1e5;

static void write_pieces(ow_json *json, cJSON *parent, const ow_feed_result *result)
{
    cJSON *list = ow_json_list(json, parent, "pieces");
    for (size_t i = 0; i < result->loss_count; i++) {
        const ow_piece_loss *loss = &result->losses[i];
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_words(json, item, "kind", loss->kind);
        if (loss->name[0] != '\0')
            ow_json_words(json, item, "name", loss->name);
        if (result->loss_branches[i][0] != '\0')
            ow_json_words(json, item, "branch", result->loss_branches[i]);
        ow_json_known_figure(json, item, "bore_mm", loss->bore_m > 0.0, loss->bore_m * 1e3);
        ow_json_known_figure(json, item, "reynolds", loss->bore_m > 0.0, loss->reynolds);
        ow_json_figure(json, item, "loss_pa", loss->loss_pa);
    }
}

static void write_loads(ow_json *json, cJSON *parent, const ow_feed_result *result)
{
    cJSON *list = ow_json_list(json, parent, "loads");
    for (size_t i = 0; i < result->load_count; i++) {
        const ow_feed_load *load = &result->loads[i];
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_words(json, item, "name", load->name);
        ow_json_figure(json, item, "flow_lpm", load->flow_m3s / lpm);
        ow_json_figure(json, item, "pressure_bar", load->pressure_pa / bar);
        ow_json_bool(json, item, "dead", load->dead);
    }
}

static void write_state(ow_json *json, cJSON *list, const ow_feed_result *result, const ow_feed_band *band,
                        bool split)
{
    cJSON *item = ow_json_object(json, list, NULL);
    ow_json_words(json, item, "name", result->state->name);
    ow_json_figure(json, item, "oil_temperature_c", result->state->oil_c);
    ow_json_figure(json, item, "viscosity_mm2s", result->viscosity_mm2s);
    ow_json_figure(json, item, "source_pressure_bar", result->state->source_pa / bar);
    ow_json_figure(json, item, "flow_lpm", result->flow_m3s / lpm);
    ow_json_figure(json, item, "turbo_pressure_bar", result->turbo_pa / bar);
    ow_json_figure(json, item, "loss_bar", result->loss_pa / bar);
    if (band != NULL) {
        ow_json_figure(json, item, "turbo_pressure_low_bar", band->turbo_low_pa / bar);
        ow_json_figure(json, item, "turbo_pressure_high_bar", band->turbo_high_pa / bar);
    }
    ow_json_known_figure(json, item, "first_oil_s", result->first_oil_known, result->first_oil_s);
    if (split)
        write_loads(json, item, result);
    write_pieces(json, item, result);
}

static void write_offers(ow_json *json, cJSON *parent, const ow_restrictor_answer *answer, size_t states)
{
    cJSON *list = ow_json_list(json, parent, "offers");
    for (size_t i = 0; i < answer->offer_count; i++) {
        const ow_restrictor_offer *offer = &answer->offers[i];
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_figure(json, item, "diameter_mm", offer->bore_m * 1e3);
        cJSON *state_list = ow_json_list(json, item, "states");
        for (size_t j = 0; j < states; j++) {
            cJSON *state = ow_json_object(json, state_list, NULL);
            ow_json_words(json, state, "name", offer->results[j].state->name);
            ow_json_figure(json, state, "flow_lpm", offer->results[j].flow_m3s / lpm);
            ow_json_figure(json, state, "turbo_pressure_bar", offer->results[j].turbo_pa / bar);
        }
    }
}

static void write_restrictor(ow_json *json, cJSON *root, const ow_feed *feed, const ow_feed_answer *answer)
{
    const ow_restrictor_answer *restrictor = &answer->restrictor;
    bool sized = restrictor->bore_m > 0.0;
    cJSON *item = ow_json_object(json, root, "restrictor");
    ow_json_bool(json, item, "needed", restrictor->needed);
    ow_json_known_figure(json, item, "diameter_mm", sized, restrictor->bore_m * 1e3);
    ow_json_known_figure(json, item, "flow_lpm", sized, restrictor->flow_m3s / lpm);
    ow_json_figure(json, item, "target_bar", feed->restrictor.target_pa / bar);
    ow_json_words(json, item, "state", feed->states[feed->restrictor.state].name);
    write_offers(json, item, restrictor, answer->state_count);
}

ow_status ow_report_line_json(ow_text *text, const ow_line *line, const ow_line_answer *answer)
{
    ow_json json = ow_json_new(false);
    const ow_feed_answer *feed = &answer->feed;
    ow_json_words(&json, json.root, "line", line->feed.title);
    ow_json_bool(&json, json.root, "ok", answer->ok);
    cJSON *list = ow_json_list(&json, json.root, "states");
    for (size_t i = 0; i < feed->state_count; i++)
        write_state(&json, list, &feed->results[i], answer->bands != NULL ? &answer->bands[i] : NULL,
                    line->feed.trunk.branch_count > 0);
    if (feed->restrictor.wanted)
        write_restrictor(&json, json.root, &line->feed, feed);
    ow_json_findings(&json, json.root, "findings", &answer->findings);
    ow_json_assumptions(&json, json.root, "assumptions", &line->assumptions);
    return ow_json_done(&json, text);
}
