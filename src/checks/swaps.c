/* SPDX-License-Identifier: MIT */
/* Which parts could stand in the place of another, and what each would do to the layout. */
#include <string.h>

#include "base/memory.h"
#include "base/progress.h"
#include "base/sort.h"
#include "oilway/joint.h"
#include "oilway/swap.h"

#define PARTS_BETWEEN 1024 /* tellings of progress */

typedef struct finding_swaps {
    const ow_context *context;
    const ow_layout *layout;
    size_t node;
    size_t joined[OW_PART_ENDS];        /* ends of the part there that something is joined to */
    const ow_end *others[OW_PART_ENDS]; /* … the end of it that faces the part */
    size_t count;
    ow_swaps swaps;
    size_t capacity;
} finding_swaps;

/* What is joined to the part now. */
static void find_joined(finding_swaps *now)
{
    const ow_layout_node *at = &now->layout->nodes[now->node];
    for (size_t end = 0; end < at->part->end_count; end++) {
        bool entry = end == at->enter;
        if (!entry && at->exits[end] == OW_NODE_NONE)
            continue;
        now->joined[now->count] = end;
        now->others[now->count++] = entry ? ow_layout_parent_end(now->layout, now->node)
                                          : ow_layout_child_end(now->layout, at->exits[end]);
    }
}

/* Gives joint `index` and those behind it an end each of the part, in the order of its kind: the first way in
 * which all of them join. */
static bool deal(const finding_swaps *now, size_t index, unsigned used, ow_swap *swap)
{
    if (index == now->count)
        return true;
    for (size_t end = 0; end < swap->part->end_count; end++) {
        const ow_joint_rule *rule = NULL;
        bool before = swap->tolerated;
        if ((used & (1u << end)) == 0)
            rule = ow_joint_find(now->others[index], &swap->part->ends[end]);
        if (rule == NULL)
            continue;
        swap->ends[now->joined[index]] = end;
        swap->tolerated = before || rule->verdict == OW_TOLERATED;
        if (deal(now, index + 1, used | (1u << end), swap))
            return true;
        swap->tolerated = before;
    }
    return false;
}

static void count_findings(const ow_findings *findings, size_t *errors, size_t *warnings)
{
    *errors = *warnings = 0;
    for (size_t index = 0; index < findings->count; index++) {
        *errors += findings->items[index].severity == OW_ERROR;
        *warnings += findings->items[index].severity == OW_WARNING;
    }
}

static ow_status judge(const ow_context *context, const ow_layout *layout, size_t *errors, size_t *warnings)
{
    ow_findings findings = ow_findings_new(context);
    ow_status status = ow_check_layout(context, NULL, layout, &findings, NULL);
    if (status == OW_OK && findings.failed)
        status = OW_MEMORY;
    count_findings(&findings, errors, warnings);
    ow_findings_done(&findings);
    return status;
}

static ow_status add(finding_swaps *now, ow_swap *swap)
{
    ow_layout swapped;
    void *items = now->swaps.items;
    ow_status status = ow_grow(now->context, &items, &now->capacity, now->swaps.count + 1, sizeof *swap);
    now->swaps.items = items;
    if (status == OW_OK)
        status = ow_layout_swap(now->context, now->layout, now->node, swap, &swapped);
    if (status != OW_OK)
        return status;
    status = judge(now->context, &swapped, &swap->errors, &swap->warnings);
    ow_layout_free(&swapped);
    if (status == OW_OK)
        now->swaps.items[now->swaps.count++] = *swap;
    return status;
}

static int compare_sizes(size_t a, size_t b)
{
    return (a > b) - (a < b);
}

/* A swap with what its place in the order hangs on beside: whether it is of another kind than the part that
 * stands there now. */
typedef struct ranked {
    ow_swap swap;
    bool other_kind;
} ranked;

static int compare(const void *items, uint32_t left, uint32_t right)
{
    const ranked *a = (const ranked *)items + left, *b = (const ranked *)items + right;
    const ow_part *one = a->swap.part, *two = b->swap.part;
    int order = compare_sizes(a->swap.errors, b->swap.errors);
    if (order == 0)
        order = (int)a->other_kind - (int)b->other_kind;
    if (order == 0)
        order = compare_sizes(a->swap.warnings, b->swap.warnings);
    if (order == 0)
        order = (int)!one->has_price - (int)!two->has_price;
    if (order == 0 && one->has_price)
        order = (one->price_cents > two->price_cents) - (one->price_cents < two->price_cents);
    return order != 0 ? order : strcmp(one->id, two->id);
}

static ow_status sort(finding_swaps *now)
{
    size_t count = now->swaps.count;
    ranked *all = ow_new_array(now->context, count + 1, sizeof *all);
    if (all == NULL)
        return OW_MEMORY;
    for (size_t index = 0; index < count; index++) {
        all[index].swap = now->swaps.items[index];
        all[index].other_kind = all[index].swap.part->kind != now->layout->nodes[now->node].part->kind;
    }
    ow_status status = ow_sort_items(now->context, all, count, sizeof *all, compare);
    for (size_t index = 0; status == OW_OK && index < count; index++)
        now->swaps.items[index] = all[index].swap;
    ow_release(now->context, all);
    return status;
}

static ow_status try_each(finding_swaps *now, const ow_catalog *catalog)
{
    ow_status status = OW_OK;
    const ow_part *own = now->layout->nodes[now->node].part;
    size_t count = ow_catalog_part_count(catalog);
    for (size_t index = 0; index < count && status == OW_OK; index++) {
        ow_swap swap = {.part = ow_catalog_part_at(catalog, index)};
        for (size_t end = 0; end < OW_PART_ENDS; end++)
            swap.ends[end] = OW_PART_ENDS;
        if (swap.part != own && swap.part->end_count == now->count && deal(now, 0, 0, &swap))
            status = add(now, &swap);
        if (status == OW_OK && index % PARTS_BETWEEN == PARTS_BETWEEN - 1)
            status = ow_progress_tell(now->context, "trying what fits there", "parts", index, count);
    }
    return status;
}

ow_status ow_swaps_find(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout,
                        size_t node, ow_swaps *swaps)
{
    if (node >= layout->node_count || layout->nodes[node].part == NULL)
        return OW_RANGE;
    finding_swaps now = {.context = context, .layout = layout, .node = node};
    now.swaps = (ow_swaps){.context = context, .node = node};
    find_joined(&now);
    ow_status status = judge(context, layout, &now.swaps.errors, &now.swaps.warnings);
    if (status == OW_OK)
        status = try_each(&now, catalog);
    if (status == OW_OK)
        status = sort(&now);
    if (status == OW_OK)
        *swaps = now.swaps;
    else
        ow_swaps_done(&now.swaps);
    return status;
}

void ow_swaps_done(ow_swaps *swaps)
{
    ow_release(swaps->context, swaps->items);
    swaps->items = NULL;
    swaps->count = 0;
}
