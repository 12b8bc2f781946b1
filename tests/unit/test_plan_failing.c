/* SPDX-License-Identifier: MIT */
/*
 * A whole job, read, planned and printed, with each of its allocations made to fail in turn: said must be
 * OW_MEMORY each time, nothing leaks, nothing is freed twice, and never comes a shorter answer.
 */
#include <string.h>

#include "oilway/report_plan.h"
#include "plan/small_shop.h"
#include "support/failing.h"
#include "support/testing.h"

typedef struct shop {
    ow_catalog *catalog;
    ow_net *net;
    const char *text;
    ow_status said;
} shop;

static ow_status print(const ow_context *context, const ow_plan *plan)
{
    const ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(context);
    ow_report_plan_text(&text, plan, &style);
    ow_status status = ow_text_status(&text);
    if (status == OW_OK) {
        ow_report_plan_yaml(&text, plan);
        status = ow_text_status(&text);
    }
    if (status == OW_OK)
        status = ow_report_plan_json(&text, plan);
    ow_text_done(&text);
    return status;
}

/* The feed that was found, as a layout that is there. */
static ow_status reckon_again(const ow_context *context, const ow_job *job, const ow_plan *plan)
{
    ow_plan flow;
    if (plan->feed.layout == NULL)
        return OW_OK;
    ow_status status = ow_plan_reckon_feed(context, job, plan->feed.layout, &flow);
    if (status != OW_OK)
        return status;
    ow_text text = ow_text_new(context);
    status = ow_report_plan_feed_json(&text, &flow);
    ow_text_done(&text);
    ow_plan_done(&flow);
    return status;
}

static ow_status plan_job(const ow_context *context, void *data)
{
    const shop *self = data;
    ow_job *job = NULL;
    ow_plan plan;
    ow_status status = ow_job_read(context, self->catalog, "job.yaml", self->text, strlen(self->text), &job);
    if (status == OW_OK)
        status = ow_plan_make(context, self->catalog, self->net, job, &plan);
    if (status == OW_OK) {
        status = print(context, &plan);
        if (status == OW_OK)
            status = reckon_again(context, job, &plan);
        ow_plan_done(&plan);
    }
    ow_job_free(job);
    return status;
}

#define NOTHING_MORE "# nothing more\n"

static void fail_each(const char *page, const char *text)
{
    const char *names[SMALL_SHOP_PAGES + 1] = {small_shop_names[0], small_shop_names[1], "more.yaml"};
    const char *texts[SMALL_SHOP_PAGES + 1] = {small_shop[0], small_shop[1], page};
    static const ow_context context = OW_CONTEXT_INIT;
    const ow_catalog_options options = {NULL, 0, NULL, false, false};
    shop self = {NULL, NULL, text, OW_OK};
    assert_int_equal(
        ow_catalog_load_texts(&context, names, texts, SMALL_SHOP_PAGES + 1, &options, &self.catalog), OW_OK);
    assert_int_equal(ow_net_build(&context, self.catalog, &self.net), OW_OK);
    size_t count = ow_test_fail_each(plan_job, &self);
    print_message("%zu allocations\n", count);
    ow_net_free(self.net);
    ow_catalog_free(self.catalog);
}

static void a_plan_of_all_circuits_fails_cleanly_at_every_allocation(void **state)
{
    (void)state;
    fail_each(
        NOTHING_MORE,
        "job: x\nengine: motor\nturbo: plain\nkeep: [sw]\noil: 15W-40\nfeed: {from: gallery, hose: 650 mm}\n"
        "drain: {to: plate, oil-level: -250 mm, hose: silicone}\ncoolant: {heater: yes, heat: 50 W}\n");
}

static void a_plan_of_a_doubtful_unit_fails_cleanly_at_every_allocation(void **state)
{
    (void)state;
    fail_each(
        NOTHING_MORE,
        "job: x\nengine: dry\nturbo: doubtful\nstates: [{name: hot rev, oil: 100 C, gallery: 4.5 bar}]\n");
}

static void a_plan_with_joined_hoses_fails_cleanly_at_every_allocation(void **state)
{
    (void)state;
    fail_each(ODD_SHOP, "job: x\nengine: wide\nturbo: plain\nkeep: [sw]\ndrain: {to: back}\n"
                        "coolant: {from: bottom, to: top}\n");
}

static void a_wrong_job_fails_cleanly_at_every_allocation(void **state)
{
    (void)state;
    fail_each(NOTHING_MORE,
              "job: x\nengine: moter\nturbo: [plain, plain, plane]\nkeep: [sv]\noil: 3W-90\nfeed: {from: "
              "plate, hose: "
              "5}\ndrain: {to: [x], hose: rubber, route: [[1 mm]]}\ncoolant: {heater: perhaps}\n");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_plan_of_all_circuits_fails_cleanly_at_every_allocation),
        cmocka_unit_test(a_plan_of_a_doubtful_unit_fails_cleanly_at_every_allocation),
        cmocka_unit_test(a_plan_with_joined_hoses_fails_cleanly_at_every_allocation),
        cmocka_unit_test(a_wrong_job_fails_cleanly_at_every_allocation),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
