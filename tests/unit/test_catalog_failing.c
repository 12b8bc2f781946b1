/* SPDX-License-Identifier: MIT */
/* Every allocation of loading, checking, reading and writing is made to fail in turn. */
#include <string.h>

#include "oilway/layout.h"
#include "support/failing.h"
#include "support/testing.h"

static const char pages[] =
    "{kind: engine, id: e, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, holds: sw}, b: {end: "
    "1/8-27 NPT female}}}\n"
    "---\n{kind: turbo, id: t, ports: {oil-in: {end: -4 flare37 male, circuit: feed}}}\n"
    "---\n{kind: switch, id: sw, a: 1/8-27 NPT male}\n"
    "---\npage: a\nkind: adapter\nstandards: [ASME B1.20.1, SAE J514]\nfluids: [oil, coolant]\ncolumns: [id, "
    "a, b, bore, price]\n"
    "rows:\n  - [tf, 1/8-27 NPT male, -4 flare37 female swivel, 4.4 mm, 1.20]\n  - [tm, 1/8-27 NPT male, "
    "1/8-27 NPT male, 12 mm, ~]\n"
    "---\n{page: b, kind: tee, records: [{id: tee, run-a: 1/8-27 NPT female, run-b: 1/8-27 NPT female, "
    "branch: 1/8-27 NPT female}]}\n"
    "---\n{kind: stock, columns: [id, quantity, price], rows: [[tf, 3, 1.10]]}\n";

static const char wrong[] =
    "kind: adaptor\n---\nkind: plug\nrating: 5\ncolumns: [id, a]\nrows: [[x, -4 o-ring mael]]\n"
    "---\nkind: plug\ncolumns: [id, a, fluids]\nrows:\n  - [p, M10 male washer, oli]\n  - [q]\n"
    "  - [r, -4 o-ring male, oil]\n  - [r, -4 o-ring male, oil]\n"
    "---\n{kind: engine, id: e, ports: {g: {end: 1/8-27 NPT female, holds: s, pressur: 1}}}\n"
    "---\n{kind: stock, columns: [id, quantity], rows: [[t, 3], [r, 0.5]]}\n";

static ow_status load(const ow_context *context, const char *text, bool skip_bad, ow_catalog **catalog)
{
    static const char *const name = "p.yaml";
    const ow_catalog_options options = {.skip_bad = skip_bad, .notes = true};
    return ow_catalog_load_texts(context, &name, &text, 1, &options, catalog);
}

static ow_status load_and_check(const ow_context *context, void *data)
{
    ow_catalog *catalog = NULL;
    size_t errors, warnings;
    ow_status status = load(context, data, false, &catalog);
    if (status == OW_OK)
        status = ow_catalog_check(context, catalog, &errors, &warnings);
    ow_catalog_free(catalog);
    return status;
}

static ow_status load_skipping(const ow_context *context, void *data)
{
    ow_catalog *catalog = NULL;
    ow_status status = load(context, data, true, &catalog);
    ow_catalog_free(catalog);
    return status;
}

typedef struct layout_job {
    ow_catalog *catalog;
    const char *text;
} layout_job;

static ow_status read_and_write(const ow_context *context, void *data)
{
    layout_job *job = data;
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_text text = ow_text_new(context);
    ow_status status =
        ow_layouts_read(context, job->catalog, "l.yaml", job->text, strlen(job->text), &layouts, &count);
    for (size_t i = 0; i < count; i++)
        ow_layout_write(&text, &layouts[i]);
    if (status == OW_OK)
        status = ow_text_status(&text);
    ow_text_done(&text);
    ow_layouts_free(context, layouts, count);
    return status;
}

static char *without_const(const char *words, char *into)
{
    return strcpy(into, words);
}

static void loading_and_checking_bears_every_failed_allocation(void **state)
{
    (void)state;
    char text[sizeof pages];
    assert_true(ow_test_fail_each(load_and_check, without_const(pages, text)) > 40);
}

static void telling_faults_bears_every_failed_allocation(void **state)
{
    (void)state;
    char text[sizeof wrong];
    assert_true(ow_test_fail_each(load_and_check, without_const(wrong, text)) > 30);
    assert_true(ow_test_fail_each(load_skipping, without_const(wrong, text)) > 30);
}

static void layouts_bear_every_failed_allocation(void **state)
{
    (void)state;
    static const char *const texts[] = {
        "layout: a b\nfrom: e:gallery\nasked: {bore: 3 mm, keep: 'sw'}\nparts:\n  - tm: {seal: {a: tape}}\n  "
        "- tee: {enter: run-b}\n"
        "    run-a: [sw]\n    branch: [tf, t:oil-in]\n---\nfrom: '1/8-27 NPT female'\nparts: ['1/8-27 NPT "
        "male']\n",
        "from: e:galery\nasked: {boer: 3}\nparts: [tx, tee: {enter: c}, '1/8-27 NPT mael']\n",
    };
    const ow_context plain = OW_CONTEXT_INIT;
    layout_job job = {NULL, NULL};
    assert_int_equal(load(&plain, pages, false, &job.catalog), OW_OK);
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        job.text = texts[i];
        assert_true(ow_test_fail_each(read_and_write, &job) > 10);
    }
    ow_catalog_free(job.catalog);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(loading_and_checking_bears_every_failed_allocation),
        cmocka_unit_test(telling_faults_bears_every_failed_allocation),
        cmocka_unit_test(layouts_bear_every_failed_allocation),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
