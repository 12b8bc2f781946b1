/* SPDX-License-Identifier: MIT */
/* A host program may set a locale whose decimal sign is a comma: what the library says stays the same, to the
 * byte, and what it reads too. */
#include <locale.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/check.h"
#include "oilway/mates.h"
#include "oilway/report.h"
#include "oilway/report_joint.h"
#include "oilway/report_plan.h"
#include "support/testing.h"

static const char shop[] =
    "{kind: engine, id: e, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed}}}\n"
    "---\n{kind: turbo, id: t, bearing: journal, ports: {in: {end: M10x1 female washer, circuit: feed}}}\n"
    "---\n{page: a, kind: adapter, rating: 100 bar, fluids: [oil], columns: [id, a, b, bore, price, length], "
    "rows: [[ad, 1/8-27 NPT male, -4 "
    "flare37 "
    "male, 4.4 mm, 3.10, 28.5 mm], [wide, 1/8-27 NPT male, -4 flare37 male, 12.5 mm, 3, 4.5 mm]]}\n"
    "---\n{page: c, kind: hose-end, rating: 100 bar, fluids: [oil], columns: [id, nut, tail, bore, price], "
    "rows: [[he, -4 flare37 female "
    "swivel, hose "
    "-4 ptfe tail, 3.6 mm, 8.25]]}\n"
    "---\n{page: d, kind: hose, rating: 100 bar, fluids: [oil], columns: [id, a, b, bore, price, "
    "bend-radius], rows: [[hose, hose -4 ptfe, "
    "hose -4 "
    "ptfe, 4.8 mm, 12.50, 50.5 mm]]}\n"
    "---\n{page: e, kind: banjo-eye, rating: 100 bar, fluids: [oil], columns: [id, eye, tail, bore, price], "
    "rows: [[eye, banjo 10 eye, hose "
    "-4 ptfe "
    "tail, 3.6 mm, 9.75]]}\n"
    "---\n{page: f, kind: banjo-bolt, rating: 100 bar, fluids: [oil], hole-count: 2, hole-bore: 2.5 mm, "
    "columns: [id, thread, stud, bore, "
    "price], "
    "rows: [[bolt, M10x1 male banjo, banjo 10 stud, 5.5 mm, 2.05]]}\n";

static const char layout[] = "layout: by hand\ncircuit: feed\nfrom: e:gallery\nasked: {bore: 3.75 mm, "
                             "flexible: yes, temperature: 99.5 C}\n"
                             "parts: [ad, he, hose: {length: 0.025 m}, eye, bolt, t:in]\n";

/* Every word that is told goes the same way. */
static void take(void *user, const ow_diagnostic *diagnostic)
{
    ow_text_diagnostic(user, diagnostic);
}

static void write_mates(const ow_context *context, ow_text *text)
{
    static const char *const ends[] = {"M10x1 female washer",     "7/16-20 UNF female washer", "bead 16.5",
                                       "M16x1.5 male cone24 10L", "4.75 convex male",          "R1/8 male"};
    const ow_style style = OW_STYLE_INIT;
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        ow_end end;
        ow_mates_list list;
        ow_nominal nominal;
        assert_int_equal(ow_end_read(ends[i], &end, NULL), OW_OK);
        assert_true(ow_end_nominal(&end, &nominal));
        ow_text_add(text, nominal.name);
        assert_int_equal(ow_mates_of(context, &end, NULL, 0, &list), OW_OK);
        ow_report_mates_text(text, &list, &style);
        for (size_t at = 0; at < list.count; at++) {
            ow_card card;
            if (ow_card_of(&list.items[at].ends[0], &list.items[at].ends[1], NULL, &card) == OW_OK)
                ow_report_card_text(text, &card, &style);
        }
        ow_mates_list_done(&list);
    }
}

/* Ends that nobody makes, and how to write them. */
static void write_end_faults(const ow_context *context, ow_text *text)
{
    static const char *const wrong[] = {"barb 5/8", "4 convex male", "M14x1.5 male cone24 10L",
                                        "M10x1,5 male"};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        ow_end end;
        assert_int_equal(ow_end_read_told(context, "END", wrong[i], &end), OW_INPUT);
    }
    (void)text;
}

static void write_layout(const ow_context *context, const ow_catalog *catalog, ow_text *text)
{
    const ow_style style = OW_STYLE_INIT;
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_checked checked;
    ow_bill bill;
    assert_int_equal(ow_layouts_read(context, catalog, "l.yaml", layout, strlen(layout), &layouts, &count),
                     OW_OK);
    assert_int_equal(ow_check_layouts(context, catalog, layouts, count, &checked), OW_OK);
    ow_report_check_text(text, layouts, checked.findings, checked.passed, &style);
    assert_int_equal(ow_report_check_json(text, layouts, checked.findings, checked.passed, count), OW_OK);
    ow_checked_done(&checked);
    assert_int_equal(ow_bill_new(context, layouts, count, &bill), OW_OK);
    ow_report_bill_text(text, &bill, &style);
    assert_int_equal(ow_report_bill_json(text, &bill), OW_OK);
    ow_report_bill_csv(text, &bill);
    ow_bill_done(&bill);
    ow_report_layout_cards_text(text, layouts, &style);
    ow_layout_write(text, layouts);
    ow_layouts_free(context, layouts, count);
}

static void write_plan(const ow_context *context, const ow_catalog *catalog, ow_text *text)
{
    static const char words[] =
        "job: a feed\nengine: e\nturbo: t\noil: 15W-40\nstates: [{name: hot rev, oil: 99.5 C, "
        "gallery: 4.5 bar}]\nfeed: {from: gallery, to: in, hose: 657.5 mm, rise: 0.25 m}\n";
    const ow_style style = OW_STYLE_INIT;
    ow_net *net = NULL;
    ow_job *job = NULL;
    ow_plan plan;
    assert_int_equal(ow_net_build(context, catalog, &net), OW_OK);
    assert_int_equal(ow_job_read(context, catalog, "job.yaml", words, strlen(words), &job), OW_OK);
    assert_int_equal(ow_plan_make(context, catalog, net, job, &plan), OW_OK);
    assert_non_null(plan.feed.layout);
    ow_report_plan_text(text, &plan, &style);
    assert_int_equal(ow_report_plan_json(text, &plan), OW_OK);
    ow_report_plan_yaml(text, &plan);
    ow_plan_done(&plan);
    ow_job_free(job);
    ow_net_free(net);
}

/* All that is said of the shop, in one text. */
static void write_all(ow_text *text)
{
    static const char *const name = "shop.yaml";
    const char *pages = shop;
    const ow_context context = {.report = take, .report_user = text};
    ow_catalog *catalog = NULL;
    size_t errors, warnings;
    assert_int_equal(ow_catalog_load_texts(&context, &name, &pages, 1, NULL, &catalog), OW_OK);
    assert_int_equal(ow_catalog_check(&context, catalog, &errors, &warnings), OW_OK);
    write_layout(&context, catalog, text);
    write_plan(&context, catalog, text);
    write_mates(&context, text);
    write_end_faults(&context, text);
    ow_catalog_free(catalog);
    assert_int_equal(ow_text_status(text), OW_OK);
}

static void no_locale_changes_a_byte_of_what_is_said(void **state)
{
    (void)state;
    /* The Makefile makes this locale, whose decimal sign is a comma, and says where it is. */
    if (getenv("OW_COMMA_LOCALE") == NULL)
        fail_msg("OW_COMMA_LOCALE names no locale: run by make unit");
    const ow_context plain = OW_CONTEXT_INIT;
    ow_text wanted = ow_text_new(&plain), said = ow_text_new(&plain);
    write_all(&wanted);
    assert_non_null(setlocale(LC_ALL, getenv("OW_COMMA_LOCALE")));
    assert_string_equal(localeconv()->decimal_point, ",");
    write_all(&said);
    setlocale(LC_ALL, "C");
    assert_string_equal(ow_text_words(&said), ow_text_words(&wanted));
    assert_true(wanted.length > 10000);
    ow_text_done(&said);
    ow_text_done(&wanted);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_locale_changes_a_byte_of_what_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
