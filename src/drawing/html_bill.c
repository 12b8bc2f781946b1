/* SPDX-License-Identifier: MIT */
/* The bill of fittings with boxes to tick. */
#include "drawing/escape.h"
#include "drawing/html.h"
#include "report/look.h"

static void write_quantity(ow_text *cell, const ow_bill_line *line)
{
    ow_text_format(cell, "%zu", line->count);
    if (line->part->kind != OW_HOSE)
        return;
    ow_text_add(cell, line->count == 1 ? " cut, " : " cuts, ");
    ow_quantity_write(cell, OW_LENGTH, line->length_m, 1);
    if (line->length_assumed)
        ow_text_add(cell, " assumed");
}

static void write_drawer(ow_text *cell, const ow_bill_line *line)
{
    if (!line->has_stock)
        return;
    if (line->short_by > 0.0)
        ow_text_format(cell, "%.4g%s short", line->short_by, line->part->kind == OW_HOSE ? " m" : "");
    else
        ow_text_add(cell, "in the drawer");
}

static void write_line(ow_text *text, const ow_bill_line *line)
{
    ow_text cell = ow_text_new(text->context);
    ow_text_add(text, "<tr>");
    ow_html_tick_cell(text, line->part->id);
    write_quantity(&cell, line);
    ow_html_figure_cell(text, ow_text_words(&cell));
    ow_html_element(text, "th scope=\"row\"", line->part->id);
    ow_html_cell(text, line->part->title);
    cell.length = 0;
    write_drawer(&cell, line);
    ow_html_cell(text, cell.length > 0 ? ow_text_words(&cell) : "");
    cell.length = 0;
    if (line->has_price)
        ow_look_price(&cell, line->total_cents);
    ow_html_figure_cell(text, cell.length > 0 ? ow_text_words(&cell) : "no price");
    ow_text_add(text, "</tr>\n");
    ow_text_done_into(&cell, text);
}

static void write_consumable(ow_text *text, const ow_bill_consumable *item)
{
    ow_text cell = ow_text_new(text->context);
    ow_text_add(text, "<tr>");
    ow_text_format(&cell, "%s %s", item->what, item->size);
    ow_html_tick_cell(text, ow_text_words(&cell));
    cell.length = 0;
    if (item->count > 0)
        ow_text_format(&cell, "%zu", item->count);
    else
        ow_text_add(&cell, "by need");
    ow_html_figure_cell(text, ow_text_words(&cell));
    ow_html_element(text, "th scope=\"row\"", item->what);
    cell.length = 0;
    ow_text_format(&cell, "%s%s%s", item->note, item->note[0] ? "; " : "", item->source);
    ow_text_add(text, "<td colspan=\"3\">");
    ow_escape(text, item->size);
    ow_text_add(text, " <small>");
    ow_escape(text, ow_text_words(&cell));
    ow_text_add(text, "</small></td></tr>\n");
    ow_text_done_into(&cell, text);
}

void ow_html_bill(ow_text *text, const ow_bill *bill)
{
    ow_text total = ow_text_new(text->context);
    ow_html_table_begin(text, "Bill of fittings", ":3|#pieces:10|part:20|what it is:46|drawer:14|#price:8");
    for (size_t index = 0; index < bill->line_count; index++)
        write_line(text, &bill->lines[index]);
    ow_text_format(&total, "%zu parts", bill->part_count);
    if (bill->unpriced_count > 0)
        ow_text_format(&total, ", %zu without a price", bill->unpriced_count);
    ow_text_format(text, "<tr><td></td><td class=\"n\"></td><td colspan=\"3\">");
    ow_html_element(text, "strong", ow_text_words(&total));
    ow_text_add(text, "</td>\n");
    total.length = 0;
    ow_look_price(&total, bill->total_cents);
    ow_html_figure_cell(text, ow_text_words(&total));
    ow_text_add(text, "</tr>\n");
    for (size_t index = 0; index < bill->consumable_count; index++)
        write_consumable(text, &bill->consumables[index]);
    ow_html_table_end(text);
    ow_text_done_into(&total, text);
}
