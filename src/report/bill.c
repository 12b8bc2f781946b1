/* SPDX-License-Identifier: MIT */
/* The bill of fittings: parts with prices, hoses with cut lengths, consumables by size, what is not in the
 * drawer. */
#include <string.h>

#include "report/bores.h"
#include "report/csv.h"
#include "report/look.h"
#include "report/parts_json.h"

#define PRICE_WIDTH 7

/* Columns as wide as what stands in them. */
typedef struct bill_columns {
    size_t id, price, title;
} bill_columns;

static void write_length(ow_text *text, double length_m)
{
    ow_quantity_write(text, OW_LENGTH, length_m, 1);
}

static void write_quantity(ow_text *text, const ow_bill_line *line)
{
    if (line->part->kind != OW_HOSE) {
        ow_text_format(text, "%zu", line->count);
        return;
    }
    ow_text_format(text, "%zu cut%s, ", line->count, line->count == 1 ? "" : "s");
    write_length(text, line->length_m);
}

static bill_columns find_columns(ow_text *text, const ow_bill *bill)
{
    size_t quantity = 0, id = 0;
    for (size_t index = 0; index < bill->line_count; index++) {
        ow_text words = ow_text_new(text->context);
        write_quantity(&words, &bill->lines[index]);
        quantity = words.length > quantity ? words.length : quantity;
        ow_text_done_into(&words, text);
        size_t length = ow_look_width(bill->lines[index].part->id);
        id = length > id ? length : id;
    }
    bill_columns columns = {quantity + 4, 0, 0};
    columns.price = columns.id + id + 2;
    columns.title = columns.price + PRICE_WIDTH + 2;
    return columns;
}

/* The single lengths, where the line's own does not say them. */
static void write_cuts(ow_text *text, const ow_bill_line *line, size_t column, const ow_style *style)
{
    if (line->cut_count == 0 || (line->count < 2 && !line->length_assumed))
        return;
    ow_text words = ow_text_new(text->context);
    ow_text_add(&words, "cut to ");
    for (size_t index = 0; index < line->cut_count; index++) {
        const ow_bill_cut *cut = &line->cuts[index];
        if (index > 0)
            ow_text_add(&words, index + 1 < line->cut_count ? ", " : " and ");
        if (cut->count > 1)
            ow_text_format(&words, "%zu times ", cut->count);
        write_length(&words, cut->length_m);
        if (cut->assumed)
            ow_text_add(&words, " (assumed: measure)");
    }
    ow_text_repeat(text, ' ', column);
    ow_look_fold(text, style, column, column, ow_text_words(&words));
    ow_text_char(text, '\n');
    ow_text_done_into(&words, text);
}

static void write_price(ow_text *text, const ow_bill_line *line)
{
    ow_text price = ow_text_new(text->context);
    if (line->has_price)
        ow_look_price(&price, line->total_cents);
    else
        ow_text_char(&price, '?');
    ow_text_repeat(text, ' ', price.length < PRICE_WIDTH ? PRICE_WIDTH - price.length : 0);
    ow_text_add(text, ow_text_words(&price));
    ow_text_done_into(&price, text);
}

static void write_line(ow_text *text, const ow_bill_line *line, const bill_columns *columns,
                       const ow_style *style)
{
    size_t start = text->length;
    ow_text_add(text, "  ");
    write_quantity(text, line);
    ow_look_pad(text, start, columns->id);
    ow_text_add(text, line->part->id);
    ow_look_pad(text, start, columns->price);
    write_price(text, line);
    ow_text_add(text, "  ");
    ow_look_fold(text, style, ow_look_width(ow_text_words(text) + start), columns->title, line->part->title);
    if (line->has_stock && line->short_by > 0.0) {
        ow_text_add(text, "  ");
        ow_look_paint(text, OW_PAINT_WARN, style, "the drawer is ");
        ow_text_format(text, "%.4g%s short", line->short_by, line->part->kind == OW_HOSE ? " m" : "");
    }
    ow_text_char(text, '\n');
    write_cuts(text, line, columns->id, style);
}

static void write_consumable(ow_text *text, const ow_bill_consumable *consumable, const ow_style *style)
{
    ow_text line = ow_text_new(text->context);
    if (consumable->count > 0)
        ow_text_format(&line, "%zu ", consumable->count);
    ow_text_format(&line, "%s%s", consumable->what, consumable->count > 1 ? "s" : "");
    if (consumable->size[0] != '\0')
        ow_text_format(&line, ", %s", consumable->size);
    ow_text_format(&line, " (%s)", consumable->source);
    if (consumable->note[0] != '\0')
        ow_text_format(&line, ": %s", consumable->note);
    ow_text_add(text, "  ");
    ow_look_fold(text, style, 2, 6, ow_text_words(&line));
    ow_text_char(text, '\n');
    ow_text_done_into(&line, text);
}

/* Each part's narrowest way beside the tube or hose that it is called by: a -10 is no 16 mm hole. */
static void write_bores(ow_text *text, const ow_bill *bill)
{
    bool headed = false;
    for (size_t index = 0; index < bill->line_count; index++) {
        const ow_part *part = bill->lines[index].part;
        double bore = ow_bores_least_m(part);
        ow_nominal nominal;
        if (bore < 0.0 || !ow_bores_nominal(part, OW_ALL_ENDS, &nominal))
            continue;
        if (!headed)
            ow_text_add(text, "True bores:\n");
        headed = true;
        size_t start = text->length;
        ow_text_format(text, "  %s", part->id);
        ow_look_pad(text, start, 30);
        ow_bores_write(text, bore, &nominal);
        ow_text_char(text, '\n');
    }
}

void ow_report_bill_text(ow_text *text, const ow_bill *bill, const ow_style *style)
{
    ow_look_paint(text, OW_PAINT_STRONG, style, "Bill of fittings");
    ow_text_format(text, ": %zu %s\n", bill->part_count, bill->part_count == 1 ? "part" : "parts");
    bill_columns columns = find_columns(text, bill);
    for (size_t index = 0; index < bill->line_count; index++)
        write_line(text, &bill->lines[index], &columns, style);
    ow_text_add(text, "  total ");
    ow_look_price(text, bill->total_cents);
    if (bill->unpriced_count > 0)
        ow_text_format(text, ", and %zu without a price", bill->unpriced_count);
    ow_text_char(text, '\n');
    if (bill->consumable_count > 0)
        ow_text_add(text, "Consumables:\n");
    for (size_t index = 0; index < bill->consumable_count; index++)
        write_consumable(text, &bill->consumables[index], style);
    write_bores(text, bill);
}

void ow_json_bill(ow_json *json, cJSON *parent, const ow_bill *bill)
{
    ow_json_number(json, parent, "part_count", (double)bill->part_count);
    cJSON *lines = ow_json_list(json, parent, "lines");
    for (size_t index = 0; index < bill->line_count; index++) {
        const ow_bill_line *line = &bill->lines[index];
        cJSON *item = ow_json_object(json, lines, NULL);
        ow_json_words(json, item, "id", line->part->id);
        ow_json_words(json, item, "title", line->part->title);
        ow_json_number(json, item, "count", (double)line->count);
        ow_json_scaled(json, item, "length_mm", line->length_m, 1e3, 3);
        ow_json_bool(json, item, "length_assumed", line->length_assumed);
        cJSON *cuts = ow_json_list(json, item, "cuts");
        for (size_t cut = 0; cut < line->cut_count; cut++) {
            cJSON *one = ow_json_object(json, cuts, NULL);
            ow_json_number(json, one, "count", (double)line->cuts[cut].count);
            ow_json_scaled(json, one, "length_mm", line->cuts[cut].length_m, 1e3, 3);
            ow_json_bool(json, one, "assumed", line->cuts[cut].assumed);
        }
        ow_nominal nominal;
        ow_bores_json(json, item, ow_bores_least_m(line->part),
                      ow_bores_nominal(line->part, OW_ALL_ENDS, &nominal) ? &nominal : NULL);
        ow_json_cents(json, item, "price", line->has_price, line->total_cents);
        ow_json_scaled(json, item, "short_by", line->has_stock ? line->short_by : -1.0, 1.0, 4);
    }
    cJSON *consumables = ow_json_list(json, parent, "consumables");
    for (size_t index = 0; index < bill->consumable_count; index++) {
        const ow_bill_consumable *consumable = &bill->consumables[index];
        cJSON *item = ow_json_object(json, consumables, NULL);
        ow_json_words(json, item, "what", consumable->what);
        ow_json_words(json, item, "size", consumable->size);
        if (consumable->count > 0)
            ow_json_number(json, item, "count", (double)consumable->count);
        else
            ow_json_null(json, item, "count");
        ow_json_words(json, item, "source", consumable->source);
        ow_json_words(json, item, "note", consumable->note);
    }
    ow_json_cents(json, parent, "total", true, bill->total_cents);
    ow_json_number(json, parent, "unpriced", (double)bill->unpriced_count);
}

ow_status ow_report_bill_json(ow_text *text, const ow_bill *bill)
{
    ow_json json = ow_json_new(false);
    ow_json_bill(&json, json.root, bill);
    return ow_json_done(&json, text);
}

void ow_report_bill_csv(ow_text *text, const ow_bill *bill)
{
    ow_text_add(text, "what,id,title,count,length_mm,price,short_by,cuts_mm\n");
    for (size_t index = 0; index < bill->line_count; index++) {
        const ow_bill_line *line = &bill->lines[index];
        ow_text_add(text, "part");
        ow_csv_words(text, line->part->id, false);
        ow_csv_words(text, line->part->title, false);
        ow_text_format(text, ",%zu,", line->count);
        if (line->length_m >= 0.0)
            ow_text_format(text, "%.6g", line->length_m * 1e3);
        ow_text_char(text, ',');
        if (line->has_price)
            ow_look_price(text, line->total_cents);
        ow_text_char(text, ',');
        if (line->has_stock)
            ow_text_format(text, "%.4g", line->short_by);
        ow_text_char(text, ',');
        for (size_t cut = 0; cut < line->cut_count; cut++)
            ow_text_format(text, "%s%zux%.6g", cut > 0 ? "+" : "", line->cuts[cut].count,
                           line->cuts[cut].length_m * 1e3);
        ow_text_char(text, '\n');
    }
    for (size_t index = 0; index < bill->consumable_count; index++) {
        const ow_bill_consumable *consumable = &bill->consumables[index];
        ow_text_add(text, "consumable");
        ow_csv_words(text, consumable->what, false);
        ow_csv_words(text, consumable->size, false);
        if (consumable->count > 0)
            ow_text_format(text, ",%zu,,,,\n", consumable->count);
        else
            ow_text_add(text, ",,,,,\n");
    }
}
