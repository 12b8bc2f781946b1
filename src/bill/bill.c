/* SPDX-License-Identifier: MIT */
/* Counts the parts of layouts, cuts their hoses, gathers the consumables of their joints by size. */
#include "oilway/bill.h"

#include <math.h>
#include <string.h>

#include "base/memory.h"

typedef struct bill_storage {
    ow_arena arena;
    size_t line_capacity, consumable_capacity;
} bill_storage;

#define ASSUMED_HOSE_M 1.0
#define SAME_CUT_M 1e-6

static ow_bill_line *line_of(ow_bill *bill, bill_storage *storage, const ow_part *part)
{
    for (size_t index = 0; index < bill->line_count; index++) {
        if (bill->lines[index].part == part)
            return &bill->lines[index];
    }
    void *items = bill->lines;
    if (ow_grow(bill->context, &items, &storage->line_capacity, bill->line_count + 1, sizeof *bill->lines) !=
        OW_OK)
        return NULL;
    bill->lines = items;
    ow_bill_line *line = &bill->lines[bill->line_count++];
    *line = (ow_bill_line){.part = part, .length_m = OW_NOT_SAID};
    return line;
}

static ow_status add_cut(ow_bill *bill, ow_bill_line *line, double length_m)
{
    bool assumed = length_m < 0.0;
    length_m = assumed ? ASSUMED_HOSE_M : length_m;
    line->length_m = (line->length_m < 0.0 ? 0.0 : line->length_m) + length_m;
    line->length_assumed = line->length_assumed || assumed;
    for (size_t index = 0; index < line->cut_count; index++) {
        ow_bill_cut *cut = &line->cuts[index];
        if (cut->assumed == assumed && fabs(cut->length_m - length_m) < SAME_CUT_M) {
            cut->count++;
            return OW_OK;
        }
    }
    void *items = line->cuts;
    if (ow_grow(bill->context, &items, &line->cut_capacity, line->cut_count + 1, sizeof *line->cuts) != OW_OK)
        return OW_MEMORY;
    line->cuts = items;
    line->cuts[line->cut_count++] = (ow_bill_cut){length_m, 1, assumed};
    return OW_OK;
}

static ow_status add_part(ow_bill *bill, bill_storage *storage, const ow_layout_node *node)
{
    ow_bill_line *line = line_of(bill, storage, node->part);
    if (line == NULL)
        return OW_MEMORY;
    line->count++;
    line->total_cents += ow_part_price_cents(node->part, node->length_m);
    bill->part_count++;
    if (node->part->kind != OW_HOSE)
        return OW_OK;
    return add_cut(bill, line, node->length_m);
}

static ow_status add_consumable(ow_bill *bill, bill_storage *storage, const ow_consumable *needed)
{
    for (size_t index = 0; index < bill->consumable_count; index++) {
        ow_bill_consumable *have = &bill->consumables[index];
        if (strcmp(have->what, needed->what) == 0 && strcmp(have->size, needed->size) == 0) {
            have->count += needed->count;
            return OW_OK;
        }
    }
    void *items = bill->consumables;
    if (ow_grow(bill->context, &items, &storage->consumable_capacity, bill->consumable_count + 1,
                sizeof *bill->consumables) != OW_OK)
        return OW_MEMORY;
    bill->consumables = items;
    const char *size = ow_arena_copy(&storage->arena, needed->size, strlen(needed->size));
    const char *note = ow_arena_copy(&storage->arena, needed->note, strlen(needed->note));
    if (size == NULL || note == NULL)
        return OW_MEMORY;
    bill->consumables[bill->consumable_count++] =
        (ow_bill_consumable){needed->what, size, needed->count, needed->source, note};
    return OW_OK;
}

static ow_status add_joint(ow_bill *bill, bill_storage *storage, const ow_layout *layout, size_t child)
{
    ow_card card;
    if (ow_layout_joint_card(layout, child, &card) != OW_OK)
        return OW_OK; /* ends that do not join need nothing that could be bought: check says so */
    ow_status status = OW_OK;
    for (size_t index = 0; index < card.consumable_count && status == OW_OK; index++)
        status = add_consumable(bill, storage, &card.consumables[index]);
    return status;
}

static ow_status add_layout(ow_bill *bill, bill_storage *storage, const ow_layout *layout)
{
    ow_status status = OW_OK;
    for (size_t node = 1; node < layout->node_count && status == OW_OK; node++) {
        if (layout->nodes[node].part != NULL)
            status = add_part(bill, storage, &layout->nodes[node]);
        if (status == OW_OK)
            status = add_joint(bill, storage, layout, node);
    }
    return status;
}

static void sum_line(ow_bill *bill, ow_bill_line *line)
{
    const ow_part *part = line->part;
    double quantity = part->kind == OW_HOSE ? line->length_m : (double)line->count;
    line->has_price = part->has_price;
    line->has_stock = part->has_stock;
    if (part->has_stock && quantity > part->stock_quantity)
        line->short_by = quantity - part->stock_quantity;
    bill->unpriced_count += !part->has_price;
    bill->total_cents += line->total_cents;
}

ow_status ow_bill_new(const ow_context *context, const ow_layout *layouts, size_t count, ow_bill *bill)
{
    bill_storage *storage = ow_new_array(context, 1, sizeof *storage);
    if (storage == NULL)
        return OW_MEMORY;
    storage->arena = ow_arena_new(context);
    ow_bill made = {.context = context, .storage = storage};
    ow_status status = OW_OK;
    for (size_t index = 0; index < count && status == OW_OK; index++)
        status = add_layout(&made, storage, &layouts[index]);
    if (status != OW_OK) {
        ow_bill_done(&made);
        return status;
    }
    for (size_t index = 0; index < made.line_count; index++)
        sum_line(&made, &made.lines[index]);
    *bill = made;
    return OW_OK;
}

void ow_bill_done(ow_bill *bill)
{
    bill_storage *storage = bill->storage;
    if (storage == NULL)
        return;
    for (size_t index = 0; index < bill->line_count; index++)
        ow_release(bill->context, bill->lines[index].cuts);
    ow_release(bill->context, bill->lines);
    ow_release(bill->context, bill->consumables);
    ow_arena_done(&storage->arena);
    ow_release(bill->context, storage);
    *bill = (ow_bill){.context = bill->context};
}
