/* SPDX-License-Identifier: MIT */
/* What fits in the place of a part, for a person and for a program. */
#include "oilway/report_choice.h"

#include <string.h>

#include "base/words.h"
#include "report/json.h"
#include "report/look.h"

#define DEGREES_PER_RADIAN 57.295779513082320877

static const char *plural(size_t count, const char *one, const char *more)
{
    return count == 1 ? one : more;
}

static void write_swap(ow_text *text, const ow_swap *swap, size_t width)
{
    size_t start = text->length;
    ow_text_format(text, "  %s", swap->part->id);
    ow_look_pad(text, start, width + 4);
    ow_text_add(text, swap->part->title);
    if (swap->part->angle_rad > 0) {
        ow_text_add(text, ", ");
        ow_quantity_write(text, OW_ANGLE, swap->part->angle_rad, 0);
    }
    if (swap->part->material[0] != '\0')
        ow_text_format(text, ", %s", swap->part->material);
    if (swap->part->has_price) {
        ow_text_add(text, ", ");
        ow_look_price(text, swap->part->price_cents);
    }
    if (swap->tolerated)
        ow_text_add(text, ", tolerated only");
    if (swap->errors > 0)
        ow_text_format(text, ", %zu %s", swap->errors, plural(swap->errors, "error", "errors"));
    if (swap->warnings > 0)
        ow_text_format(text, ", %zu %s", swap->warnings, plural(swap->warnings, "warning", "warnings"));
    ow_text_char(text, '\n');
}

void ow_report_swaps_text(ow_text *text, const ow_layout *layouts, size_t index, const ow_swaps *swaps,
                          size_t most, const ow_style *style)
{
    size_t width = 0;
    (void)style;
    ow_text_add(text, "In the place of ");
    ow_layout_node_name(text, &layouts[index], swaps->node);
    ow_text_format(text, " %s; as it is the layout has %zu %s, %zu %s.\n",
                   swaps->count == 0 ? "nothing else fits" : "would fit", swaps->errors,
                   plural(swaps->errors, "error", "errors"), swaps->warnings,
                   plural(swaps->warnings, "warning", "warnings"));
    size_t shown = swaps->count < most ? swaps->count : most;
    for (size_t item = 0; item < shown; item++) {
        size_t length = ow_look_width(swaps->items[item].part->id);
        width = length > width ? length : width;
    }
    for (size_t item = 0; item < shown; item++)
        write_swap(text, &swaps->items[item], width);
    if (shown < swaps->count)
        ow_text_format(text, "  and %zu more\n", swaps->count - shown);
}

/* The YAML of all layouts, with that one part changed. */
static ow_status write_layouts(ow_text *text, const ow_layout *layouts, size_t count, size_t index,
                               size_t node, const ow_swap *swap)
{
    ow_layout swapped;
    ow_status status = ow_layout_swap(text->context, &layouts[index], node, swap, &swapped);
    if (status != OW_OK)
        return status;
    for (size_t each = 0; each < count; each++) {
        if (each > 0)
            ow_text_add(text, "---\n");
        ow_layout_write(text, each == index ? &swapped : &layouts[each]);
    }
    ow_layout_free(&swapped);
    return ow_text_status(text);
}

/* The least bore between any two of its ends in use; not said if one is not. */
static double bore_of(const ow_part *part)
{
    double least = part->end_count > 0 ? part->leg_bore_m[0] : OW_NOT_SAID;
    for (size_t end = 1; end < part->end_count; end++)
        least = part->leg_bore_m[end] < least ? part->leg_bore_m[end] : least;
    return least;
}

static void add_swap(ow_json *json, cJSON *list, const ow_text *layout, const ow_swap *swap)
{
    const ow_part *part = swap->part;
    cJSON *item = ow_json_object(json, list, NULL);
    ow_json_words(json, item, "id", part->id);
    ow_json_words(json, item, "kind", ow_kind_word(part->kind));
    ow_json_words(json, item, "title", part->title);
    ow_json_cents(json, item, "price", part->has_price, part->price_cents);
    ow_json_scaled(json, item, "bore_mm", bore_of(part), 1e3, 2);
    ow_json_scaled(json, item, "length_mm", part->length_m, 1e3, 2);
    ow_json_scaled(json, item, "orifice_mm", part->orifice_m, 1e3, 2);
    ow_json_scaled(json, item, "angle_deg", part->angle_rad, DEGREES_PER_RADIAN, 1);
    ow_json_words(json, item, "material", part->material[0] != '\0' ? part->material : NULL);
    ow_json_scaled(json, item, "stock", part->has_stock ? part->stock_quantity : OW_NOT_SAID, 1, 3);
    ow_json_bool(json, item, "tolerated", swap->tolerated);
    ow_json_number(json, item, "errors", (double)swap->errors);
    ow_json_number(json, item, "warnings", (double)swap->warnings);
    ow_json_words(json, item, "layout", ow_text_words(layout));
}

ow_status ow_report_swaps_json(ow_text *text, const ow_layout *layouts, size_t count, size_t index,
                               const ow_swaps *swaps, size_t most)
{
    ow_json json = ow_json_new(false);
    ow_text place = ow_text_new(text->context);
    ow_layout_node_name(&place, &layouts[index], swaps->node);
    ow_json_text(&json, json.root, "place", &place);
    ow_json_words(&json, json.root, "part", layouts[index].nodes[swaps->node].part->id);
    ow_json_number(&json, json.root, "errors", (double)swaps->errors);
    ow_json_number(&json, json.root, "warnings", (double)swaps->warnings);
    ow_json_number(&json, json.root, "count", (double)swaps->count);
    cJSON *list = ow_json_list(&json, json.root, "swaps");
    for (size_t item = 0; item < swaps->count && item < most; item++) {
        ow_text layout = ow_text_new(text->context);
        if (write_layouts(&layout, layouts, count, index, swaps->node, &swaps->items[item]) != OW_OK)
            json.failed = true;
        add_swap(&json, list, &layout, &swaps->items[item]);
        ow_text_done(&layout);
    }
    return ow_json_done(&json, text);
}
