/* SPDX-License-Identifier: MIT */
/* What is to be said of a feed, beside its numbers. */
#include <string.h>

#include "oilway/feed.h"

static const double pa_per_bar = 100000.0;
static const double pa_per_psi = 6894.757;
static const double slack = 1.001; /* a hole is solved for to that */
static const double cold_below_c = 20.0;
static const double hot_above_c = 60.0; /* a state this warm is held to the limits in full */

static ow_status judge_oil(const ow_feed_result *result, ow_findings *findings)
{
    double at_c = result->state->oil_c;
    const char *where = result->state->name;
    ow_status status = OW_OK;
    if (at_c < cold_below_c)
        status = ow_findings_add(findings, "oil-cold", OW_WARNING, where, NULL,
                                 "At %.0f C the viscosity of %.0f mm2/s is good to about 40 %%", at_c,
                                 result->viscosity_mm2s);
    else if (at_c > 130.0)
        status = ow_findings_add(findings, "oil-hot", at_c > 150.0 ? OW_ERROR : OW_WARNING, where, NULL,
                                 "The oil is at %.0f C", at_c);
    if (status == OW_OK && result->viscosity_mm2s < 2.0)
        status = ow_findings_add(findings, "oil-thin", OW_WARNING, where, NULL,
                                 "At %.0f C the oil has %.2f mm2/s", at_c, result->viscosity_mm2s);
    return status;
}

/* Held to what the trade finds right behind its restrictor. Cold oil is thick and no restrictor holds it
 * back, so that is noted only; a hair over what was asked for is no news. */
static ow_status judge_ball_bearing(const ow_feed *feed, const ow_feed_result *result,
                                    const ow_feed_load *load, ow_findings *findings)
{
    bool cold = result->state->oil_c < hot_above_c;
    double bar = load->pressure_pa / pa_per_bar, psi = load->pressure_pa / pa_per_psi;
    if (load->pressure_pa <= OW_FEED_BALL_HIGH_PA * slack || (cold && feed->restrictor.wanted))
        return OW_OK; /* restrictor-cold tells of a restrictor that is solved for */
    return ow_findings_add(
        findings, "feed-ball-high", cold ? OW_NOTE : OW_WARNING, result->state->name,
        cold ? "Warm the engine at low speed; the relief valve alone limits cold pressure." : NULL,
        "%s gets %.2f bar (%.0f psi), above the 2.8 to 3.1 bar (40 to 45 psi) that a ball bearing wants%s",
        load->name, bar, psi, cold ? ", while cold" : "");
}

static ow_status judge_low(const ow_feed_result *result, const ow_feed_load *load, ow_findings *findings)
{
    double bar = load->pressure_pa / pa_per_bar, psi = load->pressure_pa / pa_per_psi;
    if (load->pressure_pa >= OW_FEED_IDLE_LOW_PA || result->state->oil_c < hot_above_c)
        return OW_OK;
    return ow_findings_add(findings, "feed-pressure-low", OW_WARNING, result->state->name, NULL,
                           "%s gets %.2f bar (%.0f psi), less than 0.7 bar (10 psi)", load->name, bar, psi);
}

static ow_status judge_load(const ow_feed *feed, const ow_feed_result *result, const ow_feed_load *load,
                            ow_findings *findings)
{
    const char *state = result->state->name;
    double bar = load->pressure_pa / pa_per_bar, psi = load->pressure_pa / pa_per_psi;
    if (load->dead)
        return OW_OK;
    if (!(load->flow_m3s > 0.0))
        return ow_findings_add(findings, "feed-dry", OW_ERROR, state, NULL,
                               "%s gets no oil: %.2f bar do not lift it", load->name,
                               result->state->source_pa / pa_per_bar);
    if (load->ball_bearing && load->pressure_pa >= OW_FEED_IDLE_LOW_PA)
        return judge_ball_bearing(feed, result, load, findings);
    /* a unit that asks for a restrictor is held to its target instead */
    if (load->pressure_pa > OW_FEED_JOURNAL_HIGH_PA && !feed->restrictor.wanted)
        return ow_findings_add(
            findings, "feed-pressure-high", OW_WARNING, state, NULL,
            "%s gets %.2f bar (%.0f psi), above the 4.5 bar (65 psi) of a plain journal bearing%s",
            load->name, bar, psi, result->state->oil_c < hot_above_c ? ", while cold" : "");
    return judge_low(result, load, findings);
}

static ow_status judge_pieces(const ow_feed_result *result, ow_findings *findings)
{
    for (size_t i = 0; i < result->loss_count; i++) {
        const ow_piece_loss *loss = &result->losses[i];
        if (loss->is_step || loss->reynolds < 2000.0 || loss->reynolds > 4000.0 ||
            strcmp(loss->kind, "pipe") != 0)
            continue;
        return ow_findings_add(findings, "feed-transition", OW_NOTE, result->state->name, NULL,
                               "The pipe of %.1f mm runs at Re %.0f", loss->bore_m * 1e3, loss->reynolds);
    }
    return OW_OK;
}

static ow_status judge_restrictor(const ow_feed *feed, const ow_restrictor_answer *answer,
                                  ow_findings *findings)
{
    double target = feed->restrictor.target_pa / pa_per_bar;
    const char *state = feed->states[feed->restrictor.state].name;
    if (!answer->needed)
        return ow_findings_add(findings, "restrictor-needless", OW_NOTE, state, NULL,
                               "The pressure at the turbo does not exceed %.2f bar without a restrictor",
                               target);
    if (!answer->possible)
        return ow_findings_add(findings, "restrictor-clogs", OW_ERROR, state, NULL,
                               "%.2f bar would take a hole of less than 0.3 mm", target);
    ow_status status =
        ow_findings_add(findings, "restrictor-band", OW_NOTE, state, NULL,
                        "A hole of %.2f mm gives %.2f bar to about 10 %%", answer->bore_m * 1e3, target);
    if (status == OW_OK && answer->bore_m < OW_RESTRICTOR_CLOGS_M)
        status = ow_findings_add(findings, "restrictor-clogs", OW_WARNING, state, NULL,
                                 "A hole of %.2f mm clogs", answer->bore_m * 1e3);
    return status;
}

/* A restrictor holds hot and not cold: said with the figure of the coldest state. */
static ow_status judge_cold(const ow_feed *feed, const ow_feed_answer *answer, ow_findings *findings)
{
    const ow_feed_result *coldest = &answer->results[0];
    for (size_t i = 1; i < answer->state_count; i++)
        if (answer->results[i].state->oil_c < coldest->state->oil_c)
            coldest = &answer->results[i];
    if (!answer->restrictor.needed || coldest->state->oil_c >= hot_above_c ||
        coldest->turbo_pa <= feed->restrictor.target_pa)
        return OW_OK;
    return ow_findings_add(findings, "restrictor-cold", OW_NOTE, coldest->state->name, NULL,
                           "At %.0f C the turbo sees %.2f bar behind the restrictor", coldest->state->oil_c,
                           coldest->turbo_pa / pa_per_bar);
}

static ow_status judge_state(const ow_feed *feed, const ow_feed_result *result, ow_findings *findings)
{
    ow_status status = judge_oil(result, findings);
    for (size_t i = 0; i < result->load_count && status == OW_OK; i++)
        status = judge_load(feed, result, &result->loads[i], findings);
    if (status == OW_OK)
        status = judge_pieces(result, findings);
    return status;
}

ow_status ow_feed_judge(const ow_feed *feed, const ow_feed_answer *answer, ow_findings *findings)
{
    ow_status status = OW_OK;
    for (size_t i = 0; i < answer->state_count && status == OW_OK; i++)
        status = judge_state(feed, &answer->results[i], findings);
    if (status == OW_OK && answer->restrictor.wanted)
        status = judge_restrictor(feed, &answer->restrictor, findings);
    if (status == OW_OK && answer->restrictor.wanted)
        status = judge_cold(feed, answer, findings);
    return status;
}
