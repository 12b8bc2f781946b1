/* SPDX-License-Identifier: MIT */
/* What a plan reckoned, in tables and drawings, and the order of work. */
#include "drawing/html.h"
#include "drawing/plan_svg.h"

static void cell_format(ow_text *text, double value, int decimals)
{
    ow_text_format(text, "<td class=\"n\">%.*f</td>", decimals, value);
}

static void write_feed(ow_text *text, const ow_plan_feed *feed)
{
    if (!feed->solved)
        return;
    ow_html_table_begin(text, "Feed", "state|#oil, C|#gallery, bar|#turbo, bar|#flow, L/min|#first oil, s");
    for (size_t index = 0; index < feed->answer.state_count; index++) {
        const ow_feed_result *result = &feed->answer.results[index];
        ow_text_add(text, "<tr>");
        ow_html_element(text, "th scope=\"row\"", result->state->name);
        cell_format(text, result->state->oil_c, 0);
        cell_format(text, result->state->source_pa / 1e5, 2);
        cell_format(text, result->turbo_pa / 1e5, 2);
        cell_format(text, result->flow_m3s * 6e4, 3);
        if (result->first_oil_known)
            cell_format(text, result->first_oil_s, 1);
        else
            ow_html_cell(text, "");
        ow_text_add(text, "</tr>\n");
    }
    ow_html_table_end(text);
}

void ow_html_order_of_work(ow_text *text, const ow_plan *plan)
{
    if (plan->note_count == 0)
        return;
    ow_text_add(text, "<section>\n");
    ow_html_element(text, "h2", "Order of work");
    ow_text_add(text, "<ol>\n");
    for (size_t index = 0; index < plan->note_count; index++)
        ow_html_element(text, "li", plan->notes[index]);
    ow_text_add(text, "</ol>\n</section>\n");
}

/* Half a page wide, so that two stand side by side with words of full size. */
#define HALF_WIDTH 93.0

static ow_status draw_drain(ow_text *text, const ow_plan_return *home, const ow_job_drain *asked)
{
    ow_sheet sheet = ow_sheet_new(text->context, HALF_WIDTH);
    ow_text_add(text, "<figure>\n");
    ow_status status = ow_sheet_finish(&sheet, ow_sheet_put_drain(&sheet, home, asked), text);
    ow_text_add(text, "</figure>\n");
    return status;
}

static ow_status draw_coolant(ow_text *text, const ow_plan_coolant *coolant)
{
    ow_sheet sheet = ow_sheet_new(text->context, HALF_WIDTH);
    ow_text_add(text, "<figure>\n");
    ow_status status = ow_sheet_finish(&sheet, ow_sheet_put_coolant(&sheet, coolant), text);
    ow_text_add(text, "</figure>\n");
    return status;
}

static ow_status draw_pairs(ow_text *text, const ow_plan *plan)
{
    ow_status status = OW_OK;
    ow_text_add(text, "<div class=\"pair\">\n");
    for (size_t index = 0; index < plan->drain.return_count && status == OW_OK; index++)
        if (plan->drain.returns[index].taken && plan->drain.returns[index].reckoned)
            status = draw_drain(text, &plan->drain.returns[index], &plan->job->drain);
    for (size_t index = 0; index < plan->coolant_count && status == OW_OK; index++)
        if (plan->coolants[index].reckoned)
            status = draw_coolant(text, &plan->coolants[index]);
    ow_text_add(text, "</div>\n");
    return status;
}

ow_status ow_html_plan(ow_text *text, const ow_plan *plan)
{
    const ow_draw_options bare = {.bare = true};
    ow_status status = OW_OK;
    if (plan->feed.layout != NULL) {
        ow_html_layout_heading(text, plan->feed.layout);
        ow_text_add(text, "<figure>\n");
        status = ow_draw_layout_svg(text, plan->feed.layout, NULL, &bare);
        ow_text_add(text, "</figure>\n");
    }
    write_feed(text, &plan->feed);
    return status == OW_OK ? draw_pairs(text, plan) : status;
}
