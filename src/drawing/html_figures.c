/* SPDX-License-Identifier: MIT */
/*
 * The drawings of a plan on its sheet. The feed takes the width of the page; below it stand three columns:
 * graphs first, then drains and coolant loops. Words in a drawing are never made smaller to make it fit.
 */
#include <math.h>

#include "drawing/html.h"
#include "drawing/layout_svg.h"
#include "drawing/plan_svg.h"

#define DEGREES(radians) ((radians)*180.0 / 3.14159265358979323846)
#define COLUMN_WIDTH 61.0 /* mm: three of them and two gaps of 3.5 on a page */
#define COLUMN_TALL 58.0  /* that drains may take, mm; one alone beside a coolant loop: */
#define BESIDE_LOOP_TALL 74.0
#define LEAST_TALL 30.0 /* of a drain, however many there are */

static ow_sheet column_sheet(const ow_text *text, double room)
{
    ow_sheet sheet = ow_sheet_new(text->context, COLUMN_WIDTH);
    sheet.y = 0.5;
    sheet.captioned = true;
    sheet.room = room;
    return sheet;
}

static void begin_figure(ow_text *text, const ow_text *caption)
{
    ow_text_add(text, "<figure>\n");
    ow_html_element(text, "figcaption", ow_text_words(caption));
    text->failed = text->failed || caption->failed;
}

static void end_figure(ow_text *text)
{
    ow_text_add(text, "</figure>\n");
}

static void write_figure(ow_text *text, double value, int decimals)
{
    ow_text_format(text, "<td class=\"n\">%.*f</td>", decimals, value);
}

static size_t count_loops(const ow_plan *plan)
{
    size_t count = 0;
    for (size_t index = 0; index < plan->coolant_count; index++)
        count += plan->coolants[index].reckoned ? 1 : 0;
    return count;
}

/* ---- graphs ------------------------------------------------------------------------------------ */

static void write_states(ow_text *text, const ow_feed_answer *answer)
{
    ow_html_table_begin(text, "Feed by state",
                        "state|#oil, C|#source, bar|#turbo, bar|#flow, L/min|#first oil, s");
    for (size_t index = 0; index < answer->state_count; index++) {
        const ow_feed_result *result = &answer->results[index];
        ow_text_add(text, "<tr>");
        ow_html_element(text, "th scope=\"row\"", result->state->name);
        write_figure(text, result->state->oil_c, 0);
        write_figure(text, result->state->source_pa / 1e5, 2);
        write_figure(text, result->turbo_pa / 1e5, 2);
        write_figure(text, result->flow_m3s * 6e4, 3);
        if (result->first_oil_known)
            write_figure(text, result->first_oil_s, 1);
        else
            ow_html_cell(text, "");
        ow_text_add(text, "</tr>\n");
    }
    ow_html_table_end(text);
}

static ow_status put_pressure(ow_text *text, const ow_plan *plan)
{
    if (!plan->feed.solved)
        return OW_OK;
    const ow_said *limit = &plan->job->turbo_pressure_pa;
    ow_sheet sheet = column_sheet(text, 0.0);
    ow_text caption = ow_text_new(text->context);
    ow_text_add(&caption, "Pressure along the feed, bar");
    begin_figure(text, &caption);
    ow_status status = ow_sheet_finish(&sheet,
                                       ow_sheet_put_pressure(&sheet, &plan->feed.feed, &plan->feed.answer,
                                                             limit->said ? limit->value : OW_NOT_SAID),
                                       text);
    write_states(text, &plan->feed.answer);
    end_figure(text);
    ow_text_done_into(&caption, text);
    return status;
}

/* A loop by its turbo; of several on one housing by its ports. */
static void name_loop(ow_text *words, const ow_plan *plan, const ow_plan_coolant *own)
{
    size_t loops = 0;
    for (size_t index = 0; index < plan->coolant_count; index++)
        loops += plan->coolants[index].reckoned && plan->coolants[index].turbo == own->turbo ? 1 : 0;
    if (loops < 2 || plan->job->turbo_count > 1)
        ow_text_format(words, "%s%s", own->turbo->id, loops < 2 ? "" : ", ");
    if (loops > 1)
        ow_text_format(words, "%s to %s", own->low->name, own->high->name);
}

static ow_status put_siphon(ow_text *text, const ow_plan *plan, const ow_plan_coolant *own, bool several)
{
    ow_sheet sheet = column_sheet(text, 0.0);
    ow_text caption = ow_text_new(text->context);
    if (several) {
        name_loop(&caption, plan, own);
        ow_text_add(&caption, ": ");
    }
    ow_text_add(&caption, "after shutdown, by degrees of clocking");
    begin_figure(text, &caption);
    ow_status status =
        ow_sheet_finish(&sheet,
                        ow_sheet_put_siphon(&sheet, &own->loop, &own->siphon, own->curve_angle_rad,
                                            own->curve, own->curve_count),
                        text);
    end_figure(text);
    ow_text_done_into(&caption, text);
    return status;
}

/* ---- drains -------------------------------------------------------------------------------------- */

static void write_run(ow_text *text, const ow_plan_return *home, size_t index)
{
    const ow_drain_segment *segment = &home->segments[index];
    const char *fault = ow_drain_fault_words(home->hot[index].faults);
    ow_text_format(text, "<tr><th scope=\"row\">%zu</th>", index + 1);
    ow_text part = ow_text_new(text->context);
    ow_text_add(&part, home->segment_parts[index] != NULL ? home->segment_parts[index] : "");
    ow_text_format(&part, "%s%s", fault != NULL ? ": " : "", fault != NULL ? fault : "");
    ow_html_cell(text, ow_text_words(&part));
    ow_text_done_into(&part, text);
    write_figure(text, 1e3 * segment->length_m, 0);
    write_figure(text, DEGREES(segment->slope_rad), 0);
    write_figure(text, 1e3 * segment->bore_m, 1);
    for (int cold = 0; cold < 2; cold++) {
        const ow_segment_flow *flow = cold ? &home->cold[index] : &home->hot[index];
        if (flow->flow.flooded)
            ow_html_figure_cell(text, "flooded");
        else
            write_figure(text, 100.0 * flow->flow.fill, 0);
    }
    ow_text_add(text, "</tr>\n");
}

static void write_runs(ow_text *text, const ow_plan_return *home)
{
    ow_html_table_begin(text, "Drain, run by run", "|run|#mm|#deg|#bore|#hot|#cold");
    for (size_t index = 0; index < home->segment_count; index++)
        write_run(text, home, index);
    ow_html_table_end(text);
    ow_text_format(text, "<p class=\"notes\">Hot, cold: %% full, with %.2f L/min; carries %.1f times.</p>\n",
                   home->flow_m3s * 6e4, home->margin);
}

static ow_status put_drain(ow_text *text, const ow_plan *plan, const ow_plan_return *home, double room)
{
    ow_sheet sheet = column_sheet(text, fmax(room - 12.0 - 4.4 * (double)home->segment_count, LEAST_TALL));
    ow_text caption = ow_text_new(text->context);
    ow_text_add(&caption, "Drain, ");
    if (plan->job->turbo_count > 1)
        ow_text_format(&caption, "%s:", home->turbo->id);
    ow_text_format(&caption, "%s to %s", home->outlet->name, home->port->name);
    begin_figure(text, &caption);
    ow_status status = ow_sheet_finish(&sheet, ow_sheet_put_drain(&sheet, home, &plan->job->drain), text);
    write_runs(text, home);
    end_figure(text);
    ow_text_done_into(&caption, text);
    return status;
}

/* What has to be made where no return of the engine does. */
static void put_made(ow_text *text, const ow_plan_made *made)
{
    ow_text caption = ow_text_new(text->context);
    ow_text_format(&caption, "A drain to be made for %s:%s, %.1f mm inside or more all the way",
                   made->turbo->id, made->outlet->name, 1e3 * made->bore_m);
    begin_figure(text, &caption);
    ow_text_add(text, "<ol>\n");
    for (size_t step = 0; step < made->step_count; step++)
        ow_html_element(text, "li", made->steps[step]);
    ow_text_add(text, "</ol>\n");
    end_figure(text);
    ow_text_done_into(&caption, text);
}

/* ---- coolant --------------------------------------------------------------------------------------- */

static ow_status put_coolant(ow_text *text, const ow_plan *plan, const ow_plan_coolant *own)
{
    ow_sheet sheet = column_sheet(text, 0.0);
    ow_text words = ow_text_new(text->context);
    ow_text_add(&words, "Coolant, ");
    name_loop(&words, plan, own);
    ow_text_format(&words, ", %s%.0f deg", count_loops(plan) > 1 ? "" : "clocked ",
                   DEGREES(own->loop.angle_rad));
    begin_figure(text, &words);
    ow_status status = ow_sheet_finish(&sheet, ow_sheet_put_coolant(&sheet, own), text);
    for (int hot = 0; hot < 2; hot++) {
        words.length = 0;
        ow_words_of_loop_leg(own, hot == 1, &words);
        ow_html_element(text, "p", ow_text_words(&words));
    }
    words.length = 0;
    ow_words_of_loop_shortly(own, &words);
    ow_html_element(text, "p", ow_text_words(&words));
    end_figure(text);
    ow_text_done_into(&words, text);
    return status;
}

/* ---- columns ----------------------------------------------------------------------------------------- */

static bool is_drawn(const ow_plan_return *home)
{
    return home->taken && home->reckoned;
}

static size_t count_drains(const ow_plan *plan)
{
    size_t count = 0;
    for (size_t index = 0; index < plan->drain.return_count; index++)
        count += is_drawn(&plan->drain.returns[index]) ? 1 : 0;
    return count;
}

static ow_status put_graphs(ow_text *text, const ow_plan *plan)
{
    ow_status status = put_pressure(text, plan);
    for (size_t index = 0; index < plan->coolant_count && status == OW_OK; index++)
        if (plan->coolants[index].reckoned && plan->coolants[index].curve_count > 1)
            status = put_siphon(text, plan, &plan->coolants[index], count_loops(plan) > 1);
    return status;
}

/* Drains in the second column; without coolant, every other one in the third. */
static ow_status put_drains(ow_text *text, const ow_plan *plan, bool third, bool shared)
{
    size_t count = count_drains(plan), seen = 0, in_column = shared ? (count + 1) / 2 : count;
    double tall = !shared && count == 1 ? BESIDE_LOOP_TALL : COLUMN_TALL;
    ow_status status = OW_OK;
    for (size_t index = 0; index < plan->drain.return_count && status == OW_OK; index++) {
        if (!is_drawn(&plan->drain.returns[index]))
            continue;
        if (!shared || (seen % 2 == 1) == third)
            status = put_drain(text, plan, &plan->drain.returns[index], tall / (double)in_column);
        seen++;
    }
    return status;
}

static ow_status put_loops(ow_text *text, const ow_plan *plan)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < plan->coolant_count && status == OW_OK; index++)
        if (plan->coolants[index].reckoned)
            status = put_coolant(text, plan, &plan->coolants[index]);
    return status;
}

static void put_all_made(ow_text *text, const ow_plan *plan)
{
    for (size_t index = 0; index < plan->drain.made_count; index++)
        put_made(text, &plan->drain.made[index]);
}

/* Drains in the second column; coolant in the third, or drains too. With nothing drawn there, what has to be
 * made takes both; else it stands below. */
static ow_status put_columns(ow_text *text, const ow_plan *plan)
{
    bool loops = count_loops(plan) > 0, wide = !loops && count_drains(plan) == 0;
    ow_text_add(text, "<div class=\"figures\">\n<div>\n");
    ow_status status = put_graphs(text, plan);
    ow_text_format(text, "</div>\n<div%s>\n", wide ? " class=\"wide\"" : "");
    if (status == OW_OK)
        status = put_drains(text, plan, false, !loops);
    if (wide)
        put_all_made(text, plan);
    else
        ow_text_add(text, "</div>\n<div>\n");
    if (status == OW_OK && !wide)
        status = loops ? put_loops(text, plan) : put_drains(text, plan, true, true);
    ow_text_add(text, "</div>\n</div>\n");
    if (!wide)
        put_all_made(text, plan);
    return status;
}

/* How tall the drawing of the feed may be, mm: what has more to say has more room, but not all. */
static double feed_tall(const ow_plan *plan)
{
    double tall = 40.0 + 4.0 * (double)plan->feed.layout->node_count;
    bool crowded = count_loops(plan) > 1 || (count_loops(plan) > 0 && count_drains(plan) > 1);
    return fmin(fmax(tall, 62.0), crowded ? 74.0 : 86.0);
}

static ow_status put_feed(ow_text *text, const ow_plan *plan)
{
    const ow_layout_look look = {.bare = true, .alone = true, .most_height = feed_tall(plan)};
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    sheet.y = -1.0;
    sheet.captioned = true;
    ow_html_layout_heading(text, plan->feed.layout);
    ow_text_add(text, "<figure>\n");
    ow_status status =
        ow_sheet_finish(&sheet, ow_sheet_put_layout(&sheet, plan->feed.layout, &plan->findings, &look), text);
    end_figure(text);
    return status;
}

ow_status ow_html_figures(ow_text *text, const ow_plan *plan)
{
    ow_status status = plan->feed.layout != NULL ? put_feed(text, plan) : OW_OK;
    return status == OW_OK ? put_columns(text, plan) : status;
}
