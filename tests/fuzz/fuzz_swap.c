/* SPDX-License-Identifier: MIT */
/* Any bytes as a layout over a small catalogue, and each of its parts exchanged for each that is offered:
 * what comes of it is as whole as before, reads back the same, and has the findings that were promised. */
#include <string.h>

#include "oilway/swap.h"
#include "support/fuzzing.h"

static const char pages[] =
    "{kind: engine, id: e, ports: {g: {end: 1/8-27 NPT female, circuit: feed, holds: s}}}\n"
    "---\n{kind: turbo, id: t, ports: {in: {end: -4 flare37 male, circuit: feed}}}\n"
    "---\n{kind: switch, id: s, a: 1/8-27 NPT male}\n"
    "---\n{page: a, kind: adapter, columns: [id, a, b, bore, price], rows: [\n"
    "  [m, 1/8-27 NPT male, 1/8-27 NPT male, 5 mm, 1], [m2, 1/8-27 NPT male, 1/8-27 NPT male, 4 mm, 2],\n"
    "  [f, 1/8-27 NPT male, -4 flare37 male, 4 mm, ~], [g, -4 flare37 male, 1/8-27 NPT male, 4 mm, 2],\n"
    "  [b, R1/8 male, R1/8 male, 4 mm, 2]]}\n"
    "---\n{page: t, kind: tee, columns: [id, run-a, run-b, branch, bore], rows: [\n"
    "  [y, 1/8-27 NPT female, 1/8-27 NPT female, 1/8-27 NPT female, 4 mm],\n"
    "  [z, 1/8-27 NPT female, 1/8-27 NPT female, -4 flare37 male, 4 mm],\n"
    "  [w, -4 flare37 male, 1/8-27 NPT female, 1/8-27 NPT female, 4 mm]]}\n"
    "---\n{page: x, kind: cross, id: x, run-a: 1/8-27 NPT female, run-b: 1/8-27 NPT female, branch-a: 1/8-27 "
    "NPT "
    "female, branch-b: -4 flare37 male}\n"
    "---\n{page: e, kind: hose-end, columns: [id, nut, tail, bore], rows: [\n"
    "  [n, -4 flare37 female swivel, hose -4 ptfe tail, 4 mm], [o, 1/8-27 NPT male, hose -4 ptfe tail, 4 "
    "mm]]}\n"
    "---\n{page: h, kind: hose, columns: [id, a, b, bore], rows: [\n"
    "  [h, hose -4 ptfe, hose -4 ptfe, 4.8 mm], [i, hose -4 ptfe, hose -4 ptfe, 4.8 mm]]}\n"
    "---\n{page: p, kind: plug, columns: [id, a], rows: [[p, 1/8-27 NPT male], [q, 1/8-27 NPT male]]}\n";

static size_t count_of(const ow_findings *findings, ow_severity severity)
{
    size_t count = 0;
    for (size_t i = 0; i < findings->count; i++)
        count += findings->items[i].severity == severity;
    return count;
}

/* The tree holds together both ways. */
static void look_at(const ow_layout *layout)
{
    for (size_t i = 1; i < layout->node_count; i++) {
        const ow_layout_node *node = &layout->nodes[i];
        OW_FUZZ_CHECK(node->parent < i && layout->nodes[node->parent].exits[node->parent_end] == i);
        OW_FUZZ_CHECK(node->part == NULL ||
                      (node->enter < node->part->end_count && node->exits[node->enter] == OW_NODE_NONE));
    }
}

static void read_back(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout)
{
    ow_layout *again = NULL;
    size_t count = 0;
    ow_text first = ow_text_new(context), second = ow_text_new(context);
    ow_layout_write(&first, layout);
    OW_FUZZ_CHECK(ow_layouts_read(context, catalog, "again", ow_text_words(&first), first.length, &again,
                                  &count) == OW_OK);
    OW_FUZZ_CHECK(count == 1 && again[0].node_count == layout->node_count);
    ow_layout_write(&second, &again[0]);
    OW_FUZZ_CHECK(strcmp(ow_text_words(&first), ow_text_words(&second)) == 0);
    ow_layouts_free(context, again, count);
    ow_text_done(&first);
    ow_text_done(&second);
}

static void use(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout,
                const ow_swaps *swaps, const ow_swap *swap)
{
    ow_layout swapped;
    ow_findings findings = ow_findings_new(context);
    OW_FUZZ_CHECK(ow_layout_swap(context, layout, swaps->node, swap, &swapped) == OW_OK);
    OW_FUZZ_CHECK(swapped.node_count == layout->node_count && swapped.given_count == layout->given_count);
    look_at(&swapped);
    read_back(context, catalog, &swapped);
    OW_FUZZ_CHECK(ow_check_layout(context, NULL, &swapped, &findings, NULL) == OW_OK);
    OW_FUZZ_CHECK(count_of(&findings, OW_ERROR) == swap->errors &&
                  count_of(&findings, OW_WARNING) == swap->warnings);
    ow_findings_done(&findings);
    ow_layout_free(&swapped);
}

static void swap_each(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout)
{
    for (size_t node = 0; node < layout->node_count; node++) {
        ow_swaps swaps;
        ow_text name = ow_text_new(context);
        if (layout->nodes[node].part == NULL)
            continue;
        ow_layout_node_name(&name, layout, node);
        OW_FUZZ_CHECK(ow_layout_node_named(layout, ow_text_words(&name)) == node);
        ow_text_done(&name);
        OW_FUZZ_CHECK(ow_swaps_find(context, catalog, layout, node, &swaps) == OW_OK);
        for (size_t i = 0; i < swaps.count; i++)
            use(context, catalog, layout, &swaps, &swaps.items[i]);
        ow_swaps_done(&swaps);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static ow_catalog *catalog;
    static const char *const name = "c.yaml", *const text = pages;
    static const ow_context context = OW_CONTEXT_INIT;
    ow_layout *layouts = NULL;
    size_t count = 0;
    if (catalog == NULL && ow_catalog_load_texts(&context, &name, &text, 1, NULL, &catalog) != OW_OK)
        abort();
    if (size > 2048 ||
        ow_layouts_read(&context, catalog, "l", (const char *)data, size, &layouts, &count) != OW_OK)
        return 0;
    for (size_t i = 0; i < count; i++)
        swap_each(&context, catalog, &layouts[i]);
    ow_layouts_free(&context, layouts, count);
    return 0;
}
