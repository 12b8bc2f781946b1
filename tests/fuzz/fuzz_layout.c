/* SPDX-License-Identifier: MIT */
/* Any bytes as a layout over a small catalogue: what reads is a tree, and writing it, reading that and
 * writing it again gives the same text. */
#include <string.h>

#include "oilway/layout.h"
#include "support/fuzzing.h"

static const char pages[] =
    "{kind: engine, id: e, ports: {g: {end: 1/8-27 NPT female, circuit: feed, holds: s}, d: {end: -10 "
    "flare37 male, circuit: "
    "drain}}}\n"
    "---\n{kind: turbo, id: t, ports: {in: {end: -4 flare37 male, circuit: feed}}}\n"
    "---\n{kind: switch, id: s, a: 1/8-27 NPT male}\n"
    "---\n{page: a, kind: adapter, columns: [id, a, b, bore, price], rows: [[m, 1/8-27 NPT male, 1/8-27 NPT "
    "male, 5 mm, 1], [f, "
    "1/8-27 NPT male, -4 flare37 male, 4 mm, ~], ['7', -4 flare37 female swivel, -4 flare37 male, ~, 2]]}\n"
    "---\n{page: t, kind: tee, columns: [id, run-a, run-b, branch, bore], rows: [[y, 1/8-27 NPT female, "
    "1/8-27 NPT female, "
    "1/8-27 NPT female, 4 mm]]}\n"
    "---\n{page: x, kind: cross, id: x, run-a: -4 flare37 male, run-b: -4 flare37 male, branch-a: -4 flare37 "
    "male, branch-b: "
    "-4 flare37 male}\n"
    "---\n{page: e, kind: hose-end, id: n, nut: -4 flare37 female swivel, tail: hose -4 ptfe tail, bore: 4 "
    "mm}\n"
    "---\n{page: h, kind: hose, id: h, a: hose -4 ptfe, b: hose -4 ptfe, bore: 4.8 mm, price: 9}\n"
    "---\n{page: p, kind: plug, id: p, a: 1/8-27 NPT male}\n";

static void check_told(void *user, const ow_diagnostic *told)
{
    size_t *errors = user;
    OW_FUZZ_CHECK(told->message && told->message[0]);
    OW_FUZZ_CHECK(told->status > OW_OK && told->status < OW_STATUS_COUNT);
    *errors += told->severity == OW_ERROR;
}

static void look_at(const ow_layout *layout)
{
    bool complete;
    OW_FUZZ_CHECK(layout->node_count >= 1 && layout->given_count >= 1 &&
                  layout->given_count <= OW_PORTS_MAX + 1);
    OW_FUZZ_CHECK(layout->givens[0].role == OW_ROLE_SOURCE && layout->nodes[0].parent == OW_NODE_NONE);
    for (size_t i = 1; i < layout->node_count; i++) {
        const ow_layout_node *node = &layout->nodes[i];
        OW_FUZZ_CHECK(node->parent < i && layout->nodes[node->parent].exits[node->parent_end] == i);
        OW_FUZZ_CHECK(!node->part ||
                      (node->enter < node->part->end_count && node->exits[node->enter] == OW_NODE_NONE));
        OW_FUZZ_CHECK(node->part || (node->given > 0 && node->given < layout->given_count));
        OW_FUZZ_CHECK(ow_end_is_whole(ow_layout_child_end(layout, i)) &&
                      ow_end_is_whole(ow_layout_parent_end(layout, i)));
    }
    for (size_t i = 1; i < layout->given_count; i++)
        OW_FUZZ_CHECK(ow_layout_on_path(layout, 0, i) && layout->givens[i].name[0]);
    (void)ow_layout_narrowest_bore_m(layout);
    OW_FUZZ_CHECK(ow_layout_price_cents(layout, &complete) >= 0);
}

static void write_all(ow_text *text, const ow_layout *layouts, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        ow_text_add(text, i ? "---\n" : "");
        ow_layout_write(text, &layouts[i]);
    }
}

static void read_back(const ow_context *context, const ow_catalog *catalog, const ow_layout *layouts,
                      size_t count)
{
    ow_layout *again = NULL;
    size_t again_count = 0;
    ow_text first = ow_text_new(context), second = ow_text_new(context);
    write_all(&first, layouts, count);
    OW_FUZZ_CHECK(ow_layouts_read(context, catalog, "again.yaml", ow_text_words(&first), first.length, &again,
                                  &again_count) == OW_OK);
    OW_FUZZ_CHECK(again_count == count);
    write_all(&second, again, again_count);
    OW_FUZZ_CHECK(strcmp(ow_text_words(&first), ow_text_words(&second)) == 0);
    for (size_t i = 0; i < count; i++) {
        look_at(&layouts[i]);
        OW_FUZZ_CHECK(layouts[i].node_count == again[i].node_count && layouts[i].circuit == again[i].circuit);
        for (size_t port = 0; port < layouts[i].given_count; port++)
            OW_FUZZ_CHECK(strcmp(layouts[i].givens[port].name, again[i].givens[port].name) == 0);
    }
    ow_text_done(&first);
    ow_text_done(&second);
    ow_layouts_free(context, again, again_count);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static const char *const name = "pages.yaml", *const text = pages;
    size_t errors = 0, count = 0;
    const ow_context context = {.report = check_told, .report_user = &errors};
    ow_catalog *catalog = NULL;
    ow_layout *layouts = NULL;
    OW_FUZZ_CHECK(ow_catalog_load_texts(&context, &name, &text, 1, NULL, &catalog) == OW_OK);
    ow_status status =
        ow_layouts_read(&context, catalog, "layout.yaml", (const char *)data, size, &layouts, &count);
    OW_FUZZ_CHECK(status == OW_OK || status == OW_INPUT || status == OW_LIMIT);
    OW_FUZZ_CHECK((status == OW_OK) == (errors == 0) && (status == OW_OK) == (count > 0));
    if (status == OW_OK)
        read_back(&context, catalog, layouts, count);
    ow_layouts_free(&context, layouts, count);
    ow_catalog_free(catalog);
    return 0;
}
