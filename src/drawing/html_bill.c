/* SPDX-License-Identifier: MIT */
/* The bill of fittings with boxes to tick. */
#include <string.h>

#include "drawing/escape.h"
#include "drawing/html.h"
#include "drawing/marks.h"
#include "report/look.h"

/* How many; of a hose, the lengths that it is cut to. */
static void write_quantity(ow_text *cell, const ow_bill_line *line)
{
    if (line->part->kind != OW_HOSE) {
        ow_text_format(cell, "%zu", line->count);
        return;
    }
    for (size_t index = 0; index < line->cut_count; index++) {
        const ow_bill_cut *cut = &line->cuts[index];
        ow_text_add(cell, index > 0 ? ", " : "");
        if (cut->count > 1)
            ow_text_format(cell, "%zu x ", cut->count);
        ow_quantity_write(cell, OW_LENGTH, cut->length_m, 1);
        if (cut->assumed)
            ow_text_add(cell, " assumed");
    }
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

/* Whether there is anything to say of the drawer. */
static bool knows_stock(const ow_bill *bill)
{
    for (size_t index = 0; index < bill->line_count; index++)
        if (bill->lines[index].has_stock)
            return true;
    return false;
}

static void write_line(ow_text *text, const ow_bill_line *line, bool stock)
{
    ow_text cell = ow_text_new(text->context);
    ow_text_add(text, "<tr>");
    ow_html_tick_cell(text, line->part->id);
    write_quantity(&cell, line);
    ow_html_figure_cell(text, ow_text_words(&cell));
    ow_html_element(text, "th scope=\"row\"", line->part->id);
    cell.length = 0;
    ow_html_cell(text, line->part->title);
    if (stock) {
        write_drawer(&cell, line);
        ow_html_cell(text, cell.length > 0 ? ow_text_words(&cell) : "");
        cell.length = 0;
    }
    if (line->has_price)
        ow_look_price(&cell, line->total_cents);
    ow_html_figure_cell(text, cell.length > 0 ? ow_text_words(&cell) : "no price");
    ow_text_add(text, "</tr>\n");
    ow_text_done_into(&cell, text);
}

static void write_total(ow_text *text, const ow_bill *bill, bool stock)
{
    ow_text total = ow_text_new(text->context);
    ow_text_format(&total, "%zu part%s", bill->part_count, bill->part_count == 1 ? "" : "s");
    if (bill->unpriced_count > 0)
        ow_text_format(&total, ", %zu without a price", bill->unpriced_count);
    ow_text_format(text, "<tr class=\"total\"><td></td><td></td><td colspan=\"%d\">", stock ? 3 : 2);
    ow_text_add(text, ow_text_words(&total));
    ow_text_add(text, "</td>\n");
    total.length = 0;
    ow_look_price(&total, bill->total_cents);
    ow_html_figure_cell(text, ow_text_words(&total));
    ow_text_add(text, "</tr>\n");
    ow_text_done_into(&total, text);
}

/* ---- consumables ------------------------------------------------------------------------------- */

/* The first consumable with the same note and source: what holds for several is told once, by a letter. */
static size_t first_noted(const ow_bill *bill, size_t index)
{
    const ow_bill_consumable *own = &bill->consumables[index];
    size_t first = 0;
    while (strcmp(bill->consumables[first].note, own->note) != 0 ||
           strcmp(bill->consumables[first].source, own->source) != 0)
        first++;
    return first;
}

/* Small ones, since joints have the great. */
static void note_letter(const ow_bill *bill, size_t index, char letter[8])
{
    size_t letters = 0, noted = first_noted(bill, index);
    for (size_t before = 0; before < noted; before++)
        letters += first_noted(bill, before) == before ? 1 : 0;
    ow_joint_letter(letters, letter);
    for (char *at = letter; *at != '\0'; at++)
        *at = (char)(*at - 'A' + 'a');
}

static void write_consumable(ow_text *text, const ow_bill *bill, size_t index)
{
    char letter[8];
    const ow_bill_consumable *item = &bill->consumables[index];
    ow_text cell = ow_text_new(text->context);
    ow_text_add(text, "<tr>");
    ow_text_format(&cell, "%s %s", item->what, item->size);
    ow_html_tick_cell(text, ow_text_words(&cell));
    cell.length = 0;
    if (item->count > 0)
        ow_text_format(&cell, "%zu", item->count);
    else
        ow_text_add(&cell, "by need");
    ow_html_element(text, "td class=\"n whole\"", ow_text_words(&cell));
    ow_html_element(text, "th scope=\"row\"", item->what);
    ow_text_add(text, "<td>");
    ow_escape(text, item->size);
    note_letter(bill, index, letter);
    ow_text_format(text, " <small>(%s)</small></td></tr>\n", letter);
    ow_text_done_into(&cell, text);
}

static void write_notes(ow_text *text, const ow_bill *bill)
{
    char letter[8];
    ow_text_add(text, "<p class=\"notes\">");
    for (size_t index = 0; index < bill->consumable_count; index++) {
        const ow_bill_consumable *item = &bill->consumables[index];
        if (first_noted(bill, index) != index)
            continue;
        note_letter(bill, index, letter);
        ow_text_format(text, "%s(%s) ", index > 0 ? "; " : "", letter);
        ow_escape(text, item->note);
        ow_text_add(text, item->note[0] != '\0' ? "; " : "");
        ow_escape(text, item->source);
    }
    ow_text_add(text, "</p>\n");
}

static void write_consumables(ow_text *text, const ow_bill *bill)
{
    if (bill->consumable_count == 0)
        return;
    ow_html_table_begin(text, "For the joints", ":3|#pieces|consumable|size");
    for (size_t index = 0; index < bill->consumable_count; index++)
        write_consumable(text, bill, index);
    ow_html_table_end(text);
}

#define NOTE_LINE 52 /* letters of a note on a line of the right column */

/* Whether the notes, too, find room beside the bill's lines. */
static bool notes_fit_beside(const ow_bill *bill)
{
    size_t letters = 0;
    for (size_t index = 0; index < bill->consumable_count; index++)
        if (first_noted(bill, index) == index)
            letters += strlen(bill->consumables[index].note) + strlen(bill->consumables[index].source) + 6;
    return bill->consumable_count + letters / NOTE_LINE <= bill->line_count + 2;
}

void ow_html_bill(ow_text *text, const ow_bill *bill)
{
    bool stock = knows_stock(bill), beside = notes_fit_beside(bill);
    ow_text_add(text, "<section class=\"supply\">\n<div>\n");
    ow_html_table_begin(text, "Bill of fittings",
                        stock ? ":3|#pieces:11|part|what it is|drawer|#price"
                              : ":3|#pieces:11|part|what it is|#price");
    for (size_t index = 0; index < bill->line_count; index++)
        write_line(text, &bill->lines[index], stock);
    write_total(text, bill, stock);
    ow_html_table_end(text);
    ow_text_add(text, "</div>\n<div>\n");
    write_consumables(text, bill);
    if (!beside)
        ow_text_add(text, "</div>\n<div>\n");
    if (bill->consumable_count > 0)
        write_notes(text, bill);
    ow_text_add(text, "</div>\n</section>\n");
}
