/* SPDX-License-Identifier: MIT */
/* A plan on one page: feed, drain, coolant, findings, bill, notes, assumptions, cautions. */
#include <string.h>

#include "oilway/report_plan.h"
#include "report/look.h"

#define LPM 60000.0
#define PA_PER_PSI 6894.757
#define DEGREES_PER_RADIAN 57.295779513082320876798154814105

static void head(ow_text *text, const char *words, const ow_style *style)
{
    ow_text_char(text, '\n');
    ow_look_paint(text, OW_PAINT_STRONG, style, words);
    ow_text_char(text, '\n');
}

static void write_states(ow_text *text, const ow_plan_feed *feed)
{
    ow_text_add(text, "  state       oil     mm2/s    gallery    turbo bar (psi)   L/min   first oil\n");
    for (size_t index = 0; index < feed->answer.state_count; index++) {
        const ow_feed_result *result = &feed->answer.results[index];
        ow_text_format(text, "  %-10.10s %4.0f C  %8.1f   %5.2f bar   %5.2f (%3.0f)     %8.3f",
                       result->state->name, result->state->oil_c, result->viscosity_mm2s,
                       result->state->source_pa / 1e5, result->turbo_pa / 1e5, result->turbo_pa / PA_PER_PSI,
                       result->flow_m3s * LPM);
        if (result->first_oil_known)
            ow_text_format(text, "   %.1f s", result->first_oil_s);
        ow_text_char(text, '\n');
    }
}

static void write_loads(ow_text *text, const ow_plan_feed *feed)
{
    const ow_feed_result *hot = &feed->answer.results[feed->hot_rev];
    if (hot->load_count < 2)
        return;
    ow_text_format(text, "  in state %s:", hot->state->name);
    for (size_t index = 0; index < hot->load_count; index++) {
        const ow_feed_load *load = &hot->loads[index];
        ow_text_format(text, "%s %s %s %.2f bar", index > 0 ? ";" : "", load->name,
                       load->dead ? "sees" : "gets", load->pressure_pa / 1e5);
        if (!load->dead)
            ow_text_format(text, ", %.3f L/min", load->flow_m3s * LPM);
    }
    ow_text_char(text, '\n');
}

static void write_path(ow_text *text, const ow_plan_feed *feed)
{
    const ow_feed_result *hot = &feed->answer.results[feed->hot_rev];
    ow_text_format(text, "  along the path, state %s:\n", hot->state->name);
    ow_text_add(text, "    piece                              bore mm        Re    loss bar      psi\n");
    for (size_t index = 0; index < hot->loss_count; index++) {
        const ow_piece_loss *loss = &hot->losses[index];
        char name[64];
        if (loss->loss_pa == 0.0) /* of a dead end */
            continue;
        size_t length = strlen(loss->name) < 24 ? strlen(loss->name) : 24;
        memcpy(name, loss->name, length);
        name[length] = '\0';
        ow_text_format(text, "    %-20s %-13s %7.2f  %8.0f  %10.4f  %7.3f%s\n", name, loss->kind,
                       loss->bore_m * 1e3, loss->reynolds, loss->loss_pa / 1e5, loss->loss_pa / PA_PER_PSI,
                       index == hot->costliest ? "  <- costs most" : "");
    }
}

static void write_sizes(ow_text *text, const ow_plan_feed *feed)
{
    if (feed->size_count == 0)
        return;
    ow_text_add(text, "  hose size:");
    for (size_t index = 0; index < feed->size_count; index++) {
        const ow_plan_size *size = &feed->sizes[index];
        ow_text_format(text, "%s -%d (%.1f mm)%s %.2f bar, %.2f L/min", index > 0 ? ";" : "", size->dash,
                       size->bore_m * 1e3, size->carried ? " as drawn" : "", size->hot_rev_pa / 1e5,
                       size->flow_m3s * LPM);
    }
    ow_text_add(text, " hot at full revs\n");
    if (feed->carried_restrictor_m >= 0.0) {
        ow_text_format(text, "  restrictor: %.2f mm as drawn", feed->carried_restrictor_m * 1e3);
        if (feed->restrictor_m > 0.0)
            ow_text_format(text, "; %.2f mm would hold 3.0 bar hot at full revs (to about 10 %%)",
                           feed->restrictor_m * 1e3);
        ow_text_char(text, '\n');
    }
}

static void write_feed(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    const ow_plan_feed *feed = &plan->feed;
    head(text, "Feed", style);
    if (feed->layout == NULL) {
        ow_report_answers_text(text, &feed->answers, style);
        return;
    }
    ow_report_layout_text(text, feed->layout, style);
    if (!feed->solved)
        return;
    write_states(text, feed);
    write_loads(text, feed);
    write_path(text, feed);
    write_sizes(text, feed);
}

static void write_segments(ow_text *text, const ow_plan_return *home)
{
    ow_text_add(text, "    segment  slope     length   bore     full hot   cold       Re\n");
    for (size_t index = 0; index < home->segment_count; index++) {
        const ow_drain_segment *segment = &home->segments[index];
        ow_text_format(text, "    %-7zu %6.1f deg %6.0f mm %5.1f mm  %5.0f %%    %4.0f %%  %7.0f\n",
                       index + 1, segment->slope_rad * DEGREES_PER_RADIAN, segment->length_m * 1e3,
                       segment->bore_m * 1e3, home->hot[index].flow.fill * 100.0,
                       home->cold[index].flow.fill * 100.0, home->hot[index].flow.reynolds);
    }
}

static void write_return(ow_text *text, const ow_plan *plan, const ow_plan_return *home,
                         const ow_style *style)
{
    ow_text_format(text, "  %s:%s to %s:%s: ", home->turbo->id, home->outlet->name, plan->job->engine->id,
                   home->port->name);
    ow_look_paint(text, home->ok ? OW_PAINT_GOOD : OW_PAINT_BAD, style, home->ok ? "does" : "does not do");
    ow_text_add(text, home->taken ? ", taken\n" : ", another way\n");
    if (home->layout == NULL) {
        ow_report_findings_text(text, &home->findings, style);
        return;
    }
    if (home->taken)
        ow_report_layout_text(text, home->layout, style);
    if (home->reckoned && home->taken) {
        write_segments(text, home);
        ow_text_format(text, "    %.2f L/min of oil, %.2f of froth; %.1f mm stand over the outlet",
                       home->flow_m3s * LPM, home->flow_m3s * plan->drain.aeration * LPM, home->pool_m * 1e3);
        if (home->least_bore_m > 0.0)
            ow_text_format(text, "; least bore at the fullest slope %.1f mm", home->least_bore_m * 1e3);
        if (home->least_slope_rad > 0.0)
            ow_text_format(text, "; least slope at its bore %.1f deg",
                           home->least_slope_rad * DEGREES_PER_RADIAN);
        ow_text_char(text, '\n');
    }
    if (!home->taken)
        ow_report_findings_text(text, &home->findings, style);
}

static void write_drain(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    head(text, "Drain", style);
    for (size_t index = 0; index < plan->drain.return_count; index++)
        write_return(text, plan, &plan->drain.returns[index], style);
}

static void write_loop(ow_text *text, const ow_plan_coolant *loop, const ow_style *style)
{
    for (size_t index = 0; index < loop->leg_count; index++) {
        const ow_plan_leg *leg = &loop->legs[index];
        ow_text_format(text, "  %s leg:\n", leg->hot ? "hot" : "cold");
        if (leg->layout != NULL)
            ow_report_layout_text(text, leg->layout, style);
    }
    if (!loop->reckoned)
        return;
    const ow_siphon *siphon = &loop->siphon;
    ow_text_format(text,
                   "  after shutdown, clocked %.0f deg, %.0f W: ", loop->loop.angle_rad * DEGREES_PER_RADIAN,
                   loop->loop.heat_w);
    if (siphon->stands_still)
        ow_text_add(text, "it stands still\n");
    else
        ow_text_format(text, "%.3f L/min go round, %.0f K warmer, %.0f C against boiling at %.0f C\n",
                       siphon->flow_m3s * LPM, siphon->rise_k, siphon->hot_c, siphon->boiling_c);
    ow_text_add(text, "  over the clocking angle (L/min):");
    for (size_t index = 0; index < loop->curve_count; index++)
        ow_text_format(text, " %.0f:%.3f", loop->curve_angle_rad[index] * DEGREES_PER_RADIAN,
                       loop->curve[index].flow_m3s * LPM);
    ow_text_format(text, "\n  engine running, %.1f L/min: %.1f kPa\n", loop->forced_m3s * LPM,
                   loop->forced.loss_pa / 1e3);
}

static void write_assumptions(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    head(text, "Assumed, because nobody said it", style);
    for (size_t index = 0; index < plan->assumptions.count; index++) {
        const ow_assumption *one = &plan->assumptions.items[index];
        ow_text line = ow_text_new(text->context);
        ow_text_format(&line, "%s: %s (%s: %s)", one->what, one->value, ow_mark_words(one->mark),
                       one->source);
        ow_text_add(text, "  ");
        ow_look_fold(text, style, 2, 4, ow_text_words(&line));
        ow_text_char(text, '\n');
        ow_text_done_into(&line, text);
    }
}

static void write_notes(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    head(text, "Order of work", style);
    for (size_t index = 0; index < plan->note_count; index++) {
        ow_text_format(text, " %2zu. ", index + 1);
        ow_look_fold(text, style, 5, 5, plan->notes[index]);
        ow_text_char(text, '\n');
    }
}

void ow_report_plan_text(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    ow_look_paint(text, OW_PAINT_STRONG, style, plan->job->title);
    ow_text_format(text, ": %s\n",
                   plan->ok ? "it can be built as drawn" : "not as it stands: see the errors");
    write_feed(text, plan, style);
    write_drain(text, plan, style);
    if (plan->coolant_count > 0)
        head(text, "Coolant", style);
    for (size_t index = 0; index < plan->coolant_count; index++)
        write_loop(text, &plan->coolants[index], style);
    head(text, "Findings", style);
    ow_report_findings_text(text, &plan->findings, style);
    ow_text_char(text, '\n');
    ow_report_bill_text(text, &plan->bill, style);
    write_notes(text, plan, style);
    write_assumptions(text, plan, style);
    head(text, "Cautions", style);
    ow_report_cautions(text, OW_CIRCUIT_NONE, "  - ");
}

void ow_report_plan_yaml(ow_text *text, const ow_plan *plan)
{
    for (size_t index = 0; index < plan->layout_count; index++) {
        if (index > 0)
            ow_text_add(text, "---\n");
        ow_layout_write(text, &plan->layouts[index]);
    }
}
