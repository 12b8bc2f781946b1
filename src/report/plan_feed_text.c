/* SPDX-License-Identifier: MIT */
/* The feed of a plan for a person: the layout, each state with its verdict, where the pressure goes. */
#include <string.h>

#include "report/plan_parts.h"

static ow_paint paint_of(const char *verdict)
{
    bool good = strcmp(verdict, "right") == 0 || strcmp(verdict, "enough") == 0;
    bool bad = strncmp(verdict, "too ", 4) == 0 || strncmp(verdict, "no ", 3) == 0;
    return good ? OW_PAINT_GOOD : bad ? OW_PAINT_BAD : OW_PAINT_WARN;
}

static void write_states(ow_text *text, const ow_plan_feed *feed, const ow_style *style)
{
    ow_text_add(text,
                "  state        oil     mm2/s    gallery       at the turbo         flow   first oil\n");
    for (size_t index = 0; index < feed->answer.state_count; index++) {
        const ow_feed_result *result = &feed->answer.results[index];
        ow_text_add(text, "  ");
        ow_look_cell(text, result->state->name, 10);
        ow_text_format(text, " %3.0f C  %8.1f  %5.2f bar  %5.2f bar %3.0f psi  %6.3f L/min",
                       result->state->oil_c, result->viscosity_mm2s, result->state->source_pa / 1e5,
                       result->turbo_pa / 1e5, result->turbo_pa / OW_PA_PER_PSI, result->flow_m3s * OW_LPM);
        if (result->first_oil_known)
            ow_text_format(text, "  %5.1f s  ", result->first_oil_s);
        else
            ow_text_add(text, "      ?    ");
        ow_look_paint(text, paint_of(feed->verdicts[index]), style, feed->verdicts[index]);
        ow_text_char(text, '\n');
    }
}

static void write_loads(ow_text *text, const ow_plan_feed *feed, const ow_style *style)
{
    const ow_feed_result *hot = &feed->answer.results[feed->hot_rev];
    ow_text words = ow_text_new(text->context);
    if (hot->load_count < 2)
        return;
    for (size_t index = 0; index < hot->load_count; index++) {
        const ow_feed_load *load = &hot->loads[index];
        ow_text_format(&words, "%s%s %s %.2f bar", index > 0 ? "; " : "", load->name,
                       load->dead ? "sees" : "gets", load->pressure_pa / 1e5);
        if (!load->dead)
            ow_text_format(&words, " and %.3f L/min", load->flow_m3s * OW_LPM);
    }
    text->failed = text->failed || words.failed;
    ow_plan_line(text, style, hot->state->name, ow_text_words(&words));
    ow_text_done(&words);
}

static void write_parts(ow_text *text, const ow_plan_feed *feed)
{
    const ow_feed_result *hot = &feed->answer.results[feed->hot_rev];
    const char *branch = "";
    ow_text_format(text, "  where the pressure goes, %s:    bore        Re      loss\n", hot->state->name);
    for (size_t index = 0; index < feed->part_count; index++) {
        const ow_plan_loss *part = &feed->parts[index];
        if (strcmp(branch, part->branch) != 0)
            ow_text_format(text, "    to %s\n", part->branch);
        branch = part->branch;
        ow_text_add(text, "    ");
        ow_look_cell(text, part->part, 28);
        if (part->bore_m > 0.0)
            ow_text_format(text, "%5.2f mm  %8.0f", part->bore_m * 1e3, part->reynolds);
        else
            ow_text_repeat(text, ' ', 18);
        ow_text_format(text, "  %7.4f bar  %6.2f psi%s\n", part->loss_pa / 1e5, part->loss_pa / OW_PA_PER_PSI,
                       index == feed->costliest ? "  costs most" : "");
    }
}

static void write_sizes(ow_text *text, const ow_plan_feed *feed, const ow_style *style)
{
    ow_text words = ow_text_new(text->context);
    if (feed->size_count == 0)
        return;
    ow_text_format(&words, "%s; at the turbo hot at full revs and least when warm:", feed->size_verdict);
    for (size_t index = 0; index < feed->size_count; index++) {
        const ow_plan_size *size = &feed->sizes[index];
        ow_text_format(&words, "%s -%d (%.1f mm) %.2f and %.2f bar", index > 0 ? ";" : "", size->dash,
                       size->bore_m * 1e3, size->hot_rev_pa / 1e5, size->idle_pa / 1e5);
    }
    text->failed = text->failed || words.failed;
    ow_plan_line(text, style, "hose", ow_text_words(&words));
    ow_text_done(&words);
}

static void write_way(ow_text *text, const ow_plan_feed *feed, const ow_style *style)
{
    if (feed->layout == NULL) {
        ow_report_answers_text(text, &feed->answers, style);
        return;
    }
    ow_report_layout_text(text, feed->layout, style);
    if (!feed->solved)
        return;
    ow_text_char(text, '\n');
    write_states(text, feed, style);
    write_loads(text, feed, style);
    write_parts(text, feed);
    write_sizes(text, feed, style);
    ow_plan_line(text, style, "restrictor", feed->restrictor_verdict);
    ow_plan_line(text, style, "drain", feed->drain_verdict);
}

void ow_plan_feed_text(ow_text *text, const ow_plan_feed *feed, const ow_style *style)
{
    if (feed->supposing != NULL)
        ow_text_format(text, "  Supposing that %s (look into the inlet before anything is bought):\n",
                       feed->supposing);
    write_way(text, feed, style);
    if (feed->other == NULL)
        return;
    ow_text_format(text, "\n  Supposing that %s (not in the bill below):\n", feed->other->supposing);
    write_way(text, feed->other, style);
    ow_report_findings_text(text, &feed->other->findings, style);
}
