/* SPDX-License-Identifier: MIT */
#include "report/look.h"
#include "report/physics_parts.h"

static const double lpm = 1.0 / 60000.0;
static const double bar = 1e5;
static const double psi = 6894.757;

static void write_title(ow_text *text, const ow_line *line, const ow_style *style)
{
    const char *oil = line->feed.oil.name;
    ow_physics_title(text, OW_PAINT_STRONG, style, "feed %s%s%s", line->feed.title,
                     oil[0] != '\0' ? " on " : "", oil);
}

static void write_states(ow_text *text, const ow_line_answer *answer)
{
    ow_text_format(text, "  %-14s %7s %10s %9s %15s %15s %9s\n", "state", "oil", "viscosity", "gallery",
                   "at the turbo", "flow", "first oil");
    for (size_t i = 0; i < answer->feed.state_count; i++) {
        const ow_feed_result *result = &answer->feed.results[i];
        ow_text_add(text, "  ");
        ow_look_cell(text, result->state->name, 14);
        ow_text_format(text, " %5.0f C %5.4g mm2/s %5.2f bar %5.2f bar %3.0f psi ", result->state->oil_c,
                       result->viscosity_mm2s, result->state->source_pa / bar, result->turbo_pa / bar,
                       result->turbo_pa / psi);
        ow_text_format(text, "%9.4g L/min ", result->flow_m3s / lpm);
        if (result->first_oil_known)
            ow_text_format(text, "%7.2g s\n", result->first_oil_s);
        else
            ow_text_add(text, "        -\n");
    }
}

static void write_loads(ow_text *text, const ow_feed_result *result)
{
    for (size_t i = 0; i < result->load_count; i++) {
        const ow_feed_load *load = &result->loads[i];
        ow_text_add(text, "  ");
        ow_look_cell(text, load->name, 24);
        if (load->dead)
            ow_text_format(text, " %8.3f bar  no flow, sees the pressure\n", load->pressure_pa / bar);
        else
            ow_text_format(text, " %8.3f bar  %9.4g L/min\n", load->pressure_pa / bar, load->flow_m3s / lpm);
    }
}

/* The table along the path, in one state. */
static void write_path(ow_text *text, const ow_feed_result *result, const ow_style *style)
{
    ow_physics_title(text, OW_PAINT_STRONG, style, "along the path, %s", result->state->name);
    ow_text_format(text, "  %-24s %9s %9s %10s %9s\n", "piece", "bore", "Re", "loss", "");
    for (size_t i = 0; i < result->loss_count; i++) {
        const ow_piece_loss *loss = &result->losses[i];
        ow_text_add(text, "  ");
        ow_look_cell(text, loss->name[0] != '\0' ? loss->name : loss->kind, 24);
        ow_text_char(text, ' ');
        if (loss->bore_m > 0.0)
            ow_text_format(text, "%6.2f mm %9.4g", loss->bore_m * 1e3, loss->reynolds);
        else
            ow_text_format(text, "%9s %9s", "", "");
        ow_text_format(text, " %6.4f bar %5.2f psi%s", loss->loss_pa / bar, loss->loss_pa / psi,
                       i == result->costliest ? "  costs most" : "");
        if (result->loss_branches[i][0] != '\0')
            ow_text_format(text, "  (%s)", result->loss_branches[i]);
        ow_text_char(text, '\n');
    }
}

static void write_restrictor(ow_text *text, const ow_feed *feed, const ow_feed_answer *answer,
                             const ow_style *style)
{
    const ow_restrictor_answer *restrictor = &answer->restrictor;
    ow_physics_title(text, OW_PAINT_STRONG, style, "restrictor");
    if (!(restrictor->bore_m > 0.0)) {
        ow_physics_row(text, "hole", "%s", restrictor->needed ? "none is small enough" : "none is needed");
        return;
    }
    ow_physics_row(text, "hole", "%.3f mm for %.2f bar, %s, at %.4g L/min", restrictor->bore_m * 1e3,
                   feed->restrictor.target_pa / bar, feed->states[feed->restrictor.state].name,
                   restrictor->flow_m3s / lpm);
    for (size_t i = 0; i < restrictor->offer_count; i++) {
        const ow_restrictor_offer *offer = &restrictor->offers[i];
        ow_text_format(text, "  drilled %.1f mm: ", offer->bore_m * 1e3);
        for (size_t j = 0; j < answer->state_count; j++)
            ow_text_format(text, "%s%.2f bar %s", j > 0 ? ", " : "", offer->results[j].turbo_pa / bar,
                           offer->results[j].state->name);
        ow_text_char(text, '\n');
    }
}

void ow_report_line_text(ow_text *text, const ow_line *line, const ow_line_answer *answer,
                         const ow_style *style)
{
    const ow_feed_answer *feed = &answer->feed;
    write_title(text, line, style);
    write_states(text, answer);
    const ow_feed_result *last = &feed->results[feed->state_count - 1];
    if (line->feed.trunk.branch_count > 0)
        write_loads(text, last);
    write_path(text, last, style);
    if (feed->restrictor.wanted)
        write_restrictor(text, &line->feed, feed, style);
    ow_physics_end(text, &line->assumptions, &answer->findings, style);
    ow_report_cautions(text, OW_FEED, "  ");
}
