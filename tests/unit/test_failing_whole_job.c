/* SPDX-License-Identifier: MIT */
/*
 * A counter's whole job, each of its allocations made to fail in turn: catalogue, net, ask, search, check,
 * bill, and every text that is printed of them. Said must be OW_MEMORY each time, never a shorter answer.
 */
#include <string.h>

#include "oilway/check.h"
#include "oilway/report.h"
#include "oilway/report_joint.h"
#include "oilway/report_plan.h"
#include "support/failing.h"
#include "support/testing.h"

/* Small, for each allocation means a run; but with a tee, a plug, a hose, a switch in its place, a part
 * without a price, and a banjo's rings on the bill. */
static const char shop[] =
    "{kind: engine, id: e, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, holds: sw}}}\n"
    "---\n{kind: turbo, id: t, bearing: journal, ports: {in: {end: M10x1 female washer, circuit: feed}}}\n"
    "---\n{kind: switch, id: sw, a: 1/8-27 NPT male}\n"
    "---\n{page: a, kind: adapter, rating: 100 bar, temperature: -40..150 C, fluids: [oil], columns: [id, a, "
    "b, "
    "bore, price], rows: [[nip, 1/8-27 NPT male, 1/8-27 NPT male, 5 mm, ~], [ad, 1/8-27 NPT male, -4 flare37 "
    "male, "
    "4.4 mm, 3.10]]}\n"
    "---\n{page: b, kind: tee, rating: 100 bar, temperature: -40..150 C, fluids: [oil], columns: [id, run-a, "
    "run-b, "
    "branch, bore, price], rows: [[tee, 1/8-27 NPT female, 1/8-27 NPT female, 1/8-27 NPT female, 5 mm, 6]]}\n"
    "---\n{page: c, kind: hose-end, rating: 100 bar, temperature: -40..150 C, fluids: [oil], columns: [id, "
    "nut, "
    "tail, bore, price], rows: [[he, -4 flare37 female swivel, hose -4 ptfe tail, 3.6 mm, 8]]}\n"
    "---\n{page: d, kind: hose, rating: 100 bar, temperature: -40..150 C, fluids: [oil], columns: [id, a, b, "
    "bore, "
    "price], rows: [[hose, hose -4 ptfe, hose -4 ptfe, 4.8 mm, 12.50]]}\n"
    "---\n{page: e, kind: banjo-eye, rating: 100 bar, temperature: -40..150 C, fluids: [oil], columns: [id, "
    "eye, "
    "tail, bore, price], rows: [[eye, banjo 10 eye, hose -4 ptfe tail, 3.6 mm, 9]]}\n"
    "---\n{page: f, kind: banjo-bolt, rating: 100 bar, temperature: -40..150 C, fluids: [oil], hole-count: "
    "2, "
    "hole-bore: 3 mm, columns: [id, thread, stud, bore, price], rows: [[bolt, M10x1 male banjo, banjo 10 "
    "stud, 5 mm, "
    "2]]}\n"
    "---\n{page: g, kind: plug, rating: 100 bar, temperature: -40..150 C, fluids: [oil], columns: [id, a, "
    "price], "
    "rows: [[plug, 1/8-27 NPT male, 0.50]]}\n"
    "---\n{kind: stock, columns: [id, quantity], rows: [[hose, 0.25], [tee, 0], [ad, 3]]}\n";

typedef struct counter_job {
    ow_ask_words words;
    ow_answer_options options;
    bool found; /* what is to come out where nothing fails */
} counter_job;

/* What is printed of a layout found: checked, billed, in each way of writing. */
static ow_status print_stack(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout,
                             ow_text *text)
{
    const ow_style style = OW_STYLE_INIT;
    ow_checked checked;
    ow_bill bill;
    ow_status status = ow_check_layouts(context, catalog, layout, 1, &checked);
    if (status != OW_OK)
        return status;
    ow_report_check_text(text, layout, &checked.findings[0], &checked.passed[0], &style);
    ow_checked_done(&checked);
    status = ow_bill_new(context, layout, 1, &bill);
    if (status != OW_OK)
        return status;
    ow_report_bill_text(text, &bill, &style);
    ow_report_bill_csv(text, &bill);
    ow_report_layout_cards_text(text, layout, &style);
    ow_bill_done(&bill);
    return OW_OK;
}

static ow_status print_answers(const ow_context *context, const ow_catalog *catalog,
                               const ow_answers *answers, ow_text *text)
{
    const ow_style style = OW_STYLE_INIT;
    ow_report_answers_text(text, answers, &style);
    ow_report_answers_yaml(text, answers);
    ow_report_answers_csv(text, answers);
    ow_report_answers_dot(text, answers);
    if (!answers->found)
        return OW_OK;
    return print_stack(context, catalog, &answers->items[0].stacks[0].layout, text);
}

static ow_status ask(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                     const counter_job *job, ow_text *text)
{
    ow_ask_set set;
    ow_answers answers;
    ow_status status = ow_ask_read(context, catalog, net, &job->words, &set);
    if (status != OW_OK)
        return status;
    status = ow_answers_find(context, catalog, net, &set, &job->options, &answers);
    if (status == OW_OK) {
        status = print_answers(context, catalog, &answers, text);
        if (status == OW_OK && answers.found != job->found)
            status = OW_FAULT;
        ow_answers_done(&answers);
    }
    ow_ask_set_done(&set);
    return status;
}

static ow_status open_shop(const ow_context *context, ow_catalog **catalog, ow_net **net)
{
    static const char *const name = "shop.yaml";
    const char *pages = shop;
    ow_status status = ow_catalog_load_texts(context, &name, &pages, 1, NULL, catalog);
    return status == OW_OK ? ow_net_build(context, *catalog, net) : status;
}

static ow_status whole_job(const ow_context *context, void *data)
{
    ow_catalog *catalog = NULL;
    ow_net *net = NULL;
    ow_text text = ow_text_new(context);
    ow_status status = open_shop(context, &catalog, &net);
    if (status == OW_OK)
        status = ask(context, catalog, net, data, &text);
    if (status == OW_OK)
        status = ow_text_status(&text);
    ow_text_done(&text);
    ow_net_free(net);
    ow_catalog_free(catalog);
    return status;
}

/* A job's page instead: feed resolved, reckoned, judged, billed. */
static ow_status plan(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                      const char *words, ow_text *text)
{
    const ow_style style = OW_STYLE_INIT;
    ow_job *job = NULL;
    ow_plan made;
    ow_status status = ow_job_read(context, catalog, "job.yaml", words, strlen(words), &job);
    if (status != OW_OK)
        return status;
    status = ow_plan_make(context, catalog, net, job, &made);
    if (status == OW_OK) {
        ow_report_plan_text(text, &made, &style);
        ow_report_plan_yaml(text, &made);
        ow_plan_done(&made);
    }
    ow_job_free(job);
    return status;
}

static ow_status planned_job(const ow_context *context, void *data)
{
    const char *const *words = data;
    ow_catalog *catalog = NULL;
    ow_net *net = NULL;
    ow_text text = ow_text_new(context);
    ow_status status = open_shop(context, &catalog, &net);
    if (status == OW_OK)
        status = plan(context, catalog, net, *words, &text);
    if (status == OW_OK)
        status = ow_text_status(&text);
    ow_text_done(&text);
    ow_net_free(net);
    ow_catalog_free(catalog);
    return status;
}

static void a_whole_job_bears_every_failed_allocation(void **state)
{
    (void)state;
    counter_job job = {.words = {.from = "e", .to = {"t:in"}, .to_count = 1, .keep = {"sw"}, .keep_count = 1},
                       .options = {2, 3, "plug"},
                       .found = true};
    assert_true(ow_test_fail_each(whole_job, &job) > 250);
}

static void a_job_without_a_stack_bears_every_failed_allocation(void **state)
{
    (void)state;
    counter_job job = {.words = {.from = "e:gallery", .to = {"M10 male washer"}, .to_count = 1},
                       .options = {1, 3, NULL},
                       .found = false};
    assert_true(ow_test_fail_each(whole_job, &job) > 100);
}

static void an_ask_with_faults_bears_every_failed_allocation(void **state)
{
    (void)state;
    static const char *const without[] = {"tea"};
    static const counter_job jobs[] = {
        {.words = {.from = "e:galery", .to = {"t:in"}, .to_count = 1}},
        {.words = {.from = "f:gallery", .to = {"t:in"}, .to_count = 1}},
        {.words = {.from = "tea", .to = {"t:in"}, .to_count = 1}},
        {.words = {.from = "e", .to = {"t:in"}, .to_count = 1, .circuit = "drain"}},
        {.words = {.from = "e:gallery", .to = {"t:in"}, .to_count = 1, .circuit = "coolant"}},
        {.words =
             {.from = "e", .to = {"t:in"}, .to_count = 1, .flexible = "yse", .bore = "x", .orifice = "2"}},
        {.words = {.from = "e", .to = {"t:in"}, .to_count = 1, .without = without, .without_count = 1}},
    };
    for (size_t i = 0; i < sizeof jobs / sizeof *jobs; i++) {
        counter_job job = jobs[i];
        assert_true(ow_test_fail_each(whole_job, &job) > 50);
    }
}

static void a_plan_bears_every_failed_allocation(void **state)
{
    (void)state;
    static const char *const jobs[] = {
        "job: a feed\nengine: e\nturbo: t\nkeep: [sw]\noil: 15W-40\n"
        "feed: {from: gallery, to: in, hose: 650 mm, rise: 0.25 m}\n",
        "job: faults\nengine: f\nturbo: t\nkeep: [swi]\noil: 15W\nfeed: {form: gallery}\n",
    };
    for (size_t i = 0; i < sizeof jobs / sizeof *jobs; i++) {
        const char *words = jobs[i];
        assert_true(ow_test_fail_each(planned_job, &words) > 50);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_whole_job_bears_every_failed_allocation),
        cmocka_unit_test(a_job_without_a_stack_bears_every_failed_allocation),
        cmocka_unit_test(an_ask_with_faults_bears_every_failed_allocation),
        cmocka_unit_test(a_plan_bears_every_failed_allocation),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
