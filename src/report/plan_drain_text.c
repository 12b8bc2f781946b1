/* SPDX-License-Identifier: MIT */
/* The drain of a plan for a person: every return in order, how full each of its runs is, what is to be made.
 */
#include <string.h>

#include "oilway/hose_material.h"
#include "report/plan_parts.h"

static void write_segments(ow_text *text, const ow_plan_return *home)
{
    ow_text_add(
        text, "       through                        slope   length      bore   full hot   cold        Re\n");
    for (size_t index = 0; index < home->segment_count; index++) {
        const ow_drain_segment *segment = &home->segments[index];
        ow_text_format(text, "    %2zu ", index + 1);
        ow_look_cell(text, home->segment_parts[index], 28);
        ow_text_format(text, " %5.1f deg  %4.0f mm  %5.1f mm      %3.0f %%  %3.0f %%  %8.0f\n",
                       segment->slope_rad * OW_DEGREES_PER_RADIAN, segment->length_m * 1e3,
                       segment->bore_m * 1e3, home->hot[index].flow.fill * 100.0,
                       home->cold[index].flow.fill * 100.0, home->hot[index].flow.reynolds);
    }
}

/* "     label: words", from a text that is then done with. */
static void line(ow_text *text, const ow_style *style, const char *label, ow_text *words)
{
    text->failed = text->failed || words->failed;
    ow_plan_line(text, style, label, ow_text_words(words));
    ow_text_done(words);
}

static void write_margin(ow_text *text, const ow_plan *plan, const ow_plan_return *home,
                         const ow_style *style)
{
    ow_text carries = ow_text_new(text->context);
    ow_text_format(
        &carries, "half full %.1f times the %.2f L/min of froth (%.2f of oil) that come hot, %.1f times cold",
        home->margin, home->flow_m3s * plan->drain.aeration * OW_LPM, home->flow_m3s * OW_LPM,
        home->cold_margin);
    line(text, style, "   carries", &carries);
    ow_text least = ow_text_new(text->context);
    if (home->least_bore_m > 0.0)
        ow_text_format(&least, "%.1f mm at the slope of the fullest run", home->least_bore_m * 1e3);
    if (home->least_slope_rad > 0.0)
        ow_text_format(&least, "%s%.1f degrees at its bore", least.length > 0 ? ", or " : "",
                       home->least_slope_rad * OW_DEGREES_PER_RADIAN);
    if (least.length == 0)
        ow_text_add(&least, "no bore at that slope, and no slope at that bore");
    line(text, style, "   would do", &least);
    ow_text pool = ow_text_new(text->context);
    ow_text_format(&pool, "%.1f mm of oil stand over its %.1f mm, %.0f at most; %.1f mm would do",
                   home->pool_m * 1e3, home->outlet_bore_m * 1e3, OW_DRAIN_POOL_LIMIT_M * 1e3,
                   home->least_outlet_m * 1e3);
    line(text, style, "   outlet", &pool);
}

static void write_level(ow_text *text, const ow_plan_return *home, const ow_style *style)
{
    ow_text words = ow_text_new(text->context);
    bool under = home->entry_over_m < 0.0;
    if (!home->level_said)
        return;
    ow_text_format(&words,
                   "it enters %.0f mm %s the oil; the turbo's outlet stands %.0f mm over it, %.0f are wanted "
                   "(friction %.0f)",
                   (under ? -home->entry_over_m : home->entry_over_m) * 1e3, under ? "under" : "over",
                   home->outlet_over_m * 1e3, home->head_needed_m * 1e3, home->friction_head_m * 1e3);
    line(text, style, "   sump", &words);
}

/* Of one hose, what lies between its two fittings. It is bought for the whole way, and longer than it needs
 * to be it sags. */
static void write_cut(ow_text *text, const ow_plan_return *home, const ow_style *style)
{
    const ow_part *hose = NULL;
    double between_m = 0.0;
    size_t hoses = 0;
    for (size_t node = 1; home->layout != NULL && node < home->layout->node_count; node++) {
        const ow_part *part = home->layout->nodes[node].part;
        if (part == NULL || !ow_part_is_hose(part))
            continue;
        hose = part;
        hoses++;
    }
    for (size_t index = 0; hoses == 1 && index < home->segment_count; index++)
        between_m += strcmp(home->segment_parts[index], hose->id) == 0 ? home->segments[index].length_m : 0.0;
    if (between_m <= 0.0)
        return;
    ow_text words = ow_text_new(text->context);
    ow_text_format(
        &words,
        "bought with spare; about %.0f mm lie between its fittings: cut it in place to that and what "
        "goes onto their tails, no longer, or it sags",
        between_m * 1e3);
    line(text, style, "   hose", &words);
}

/* What the hose is made of: its check has held it against oil, and the plan against the heat. */
static void write_hose(ow_text *text, const ow_plan_return *home, const ow_style *style)
{
    for (size_t node = 1; home->layout != NULL && node < home->layout->node_count; node++) {
        const ow_part *part = home->layout->nodes[node].part;
        const ow_hose_material *material = part != NULL ? ow_part_hose_material(part) : NULL;
        if (material == NULL)
            continue;
        ow_text words = ow_text_new(text->context);
        ow_text_format(&words, "%s: %s oil, %.0f to %.0f C (%s)", material->title,
                       material->oil == OW_STANDS_NOT ? "does not stand" : "stands", material->low_c,
                       material->high_c, material->source);
        line(text, style, "   hose", &words);
    }
}

/* What is wrong with a return that is not taken, without the mends. */
static void write_faults(ow_text *text, const ow_plan_return *home, const ow_style *style)
{
    for (size_t index = 0; index < home->findings.count; index++) {
        const ow_finding *finding = &home->findings.items[index];
        ow_text words = ow_text_new(text->context);
        ow_text_format(&words, "%s: %s", finding->rule->id, finding->message);
        text->failed = text->failed || words.failed;
        ow_text_format(text, "     %s ", ow_severity_name(finding->severity));
        ow_look_fold(text, style, 6 + strlen(ow_severity_name(finding->severity)), 7, ow_text_words(&words));
        ow_text_char(text, '\n');
        ow_text_done(&words);
    }
}

static void write_return(ow_text *text, const ow_plan *plan, const ow_plan_return *home, size_t rank,
                         const ow_style *style)
{
    ow_text_format(text, "  %zu. %s:%s to %s:%s (%s): ", rank, home->turbo->id, home->outlet->name,
                   plan->job->engine->id, home->port->name, ow_plan_work_words(home->work));
    ow_look_paint(text, home->ok ? OW_PAINT_GOOD : OW_PAINT_BAD, style, home->ok ? "does" : "does not do");
    ow_text_add(text, home->taken ? ", taken\n" : "\n");
    if (home->taken && home->layout != NULL) {
        ow_report_layout_text(text, home->layout, style);
        ow_text_char(text, '\n');
    }
    if (home->reckoned) {
        write_segments(text, home);
        write_margin(text, plan, home, style);
    }
    write_level(text, home, style);
    if (home->reckoned && home->taken)
        write_cut(text, home, style);
    write_hose(text, home, style);
    if (!home->taken)
        write_faults(text, home, style);
}

static bool has_same_steps(const ow_plan_made *made, const ow_plan_made *other)
{
    bool same = made->step_count == other->step_count;
    for (size_t index = 0; index < made->step_count && same; index++)
        same = strcmp(made->steps[index], other->steps[index]) == 0;
    return same;
}

/* What is made twice the same way is written once. */
static void write_made(ow_text *text, const ow_plan_drain *drain, size_t number, const ow_style *style)
{
    const ow_plan_made *made = &drain->made[number];
    for (size_t before = 0; before < number; before++) {
        const ow_plan_made *other = &drain->made[before];
        if (!has_same_steps(made, other))
            continue;
        ow_text_format(text, "  A drain to be made for %s:%s: another one like that for %s:%s\n",
                       made->turbo->id, made->outlet->name, other->turbo->id, other->outlet->name);
        return;
    }
    ow_text_format(text, "  A drain to be made for %s:%s, %.1f mm inside or more all the way:\n",
                   made->turbo->id, made->outlet->name, made->bore_m * 1e3);
    for (size_t index = 0; index < made->step_count; index++) {
        ow_text_format(text, "    %2zu. ", index + 1);
        ow_look_fold(text, style, 8, 8, made->steps[index]);
        ow_text_char(text, '\n');
    }
}

void ow_plan_drain_text(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    size_t rank = 0;
    for (size_t index = 0; index < plan->drain.return_count; index++) {
        const ow_plan_return *home = &plan->drain.returns[index];
        rank =
            index > 0 && plan->drain.returns[index - 1].outlet_number == home->outlet_number ? rank + 1 : 1;
        write_return(text, plan, home, rank, style);
    }
    for (size_t index = 0; index < plan->drain.made_count; index++)
        write_made(text, &plan->drain, index, style);
}
