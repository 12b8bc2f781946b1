/* SPDX-License-Identifier: MIT */
/* Any bytes as a job over a small shop: nothing harms, and what can be read is planned into finite figures
 * that print; its layouts read back. */
#include <math.h>

#include "oilway/report_plan.h"
#include "plan/small_shop.h"
#include "support/fuzz_report.h"

static void check_feed(const ow_plan_feed *feed)
{
    for (size_t state = 0; feed->solved && state < feed->answer.state_count; state++) {
        const ow_feed_result *result = &feed->answer.results[state];
        OW_FUZZ_CHECK(isfinite(result->turbo_pa) && isfinite(result->flow_m3s) && result->flow_m3s >= 0.0);
        OW_FUZZ_CHECK(feed->verdicts != NULL && feed->verdicts[state] != NULL);
    }
    for (size_t part = 0; part < feed->part_count; part++)
        OW_FUZZ_CHECK(isfinite(feed->parts[part].loss_pa));
}

static void check_return(const ow_plan_return *home)
{
    OW_FUZZ_CHECK(!home->taken || home->port != NULL);
    if (!home->reckoned)
        return;
    OW_FUZZ_CHECK(isfinite(home->pool_m) && home->margin >= 0.0 && isfinite(home->margin));
    for (size_t index = 0; index < home->segment_count; index++) {
        OW_FUZZ_CHECK(home->hot[index].flow.fill >= 0.0 && home->hot[index].flow.fill <= 1.0);
        OW_FUZZ_CHECK(home->cold[index].flow.fill >= 0.0 && home->cold[index].flow.fill <= 1.0);
    }
}

static void check_coolant(const ow_plan_coolant *loop)
{
    if (!loop->reckoned)
        return;
    OW_FUZZ_CHECK(isfinite(loop->siphon.flow_m3s) && loop->siphon.flow_m3s >= 0.0);
    OW_FUZZ_CHECK(isfinite(loop->height_m) && isfinite(loop->most_heat_w));
    for (size_t index = 0; index < loop->curve_count; index++)
        OW_FUZZ_CHECK(isfinite(loop->curve[index].hot_c));
}

static void print(const ow_context *context, const ow_plan *plan)
{
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(context);
    ow_report_plan_text(&text, plan, &style);
    OW_FUZZ_CHECK(ow_report_plan_json(&text, plan) == OW_OK);
    ow_report_plan_yaml(&text, plan);
    OW_FUZZ_CHECK(ow_text_status(&text) == OW_OK);
    ow_text_done(&text);
}

static void plan_job(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                     const ow_job *job, const size_t *told)
{
    ow_plan plan;
    ow_status status = ow_plan_make(context, catalog, net, job, &plan);
    OW_FUZZ_CHECK((status == OW_OK) == (*told == 0));
    if (status != OW_OK)
        return;
    check_feed(&plan.feed);
    if (plan.feed.other != NULL)
        check_feed(plan.feed.other);
    for (size_t index = 0; index < plan.drain.return_count; index++)
        check_return(&plan.drain.returns[index]);
    for (size_t index = 0; index < plan.coolant_count; index++)
        check_coolant(&plan.coolants[index]);
    OW_FUZZ_CHECK(plan.ok == !ow_findings_have(&plan.findings, OW_ERROR));
    print(context, &plan);
    ow_plan_done(&plan);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static ow_catalog *catalog;
    static ow_net *net;
    static const ow_context plain = OW_CONTEXT_INIT;
    static const ow_catalog_options options = {NULL, 0, NULL, false, false};
    size_t told = 0;
    ow_context context = OW_CONTEXT_INIT;
    ow_job *job = NULL;
    if (catalog == NULL) {
        OW_FUZZ_CHECK(ow_catalog_load_texts(&plain, small_shop_names, small_shop, SMALL_SHOP_PAGES, &options,
                                            &catalog) == OW_OK);
        OW_FUZZ_CHECK(ow_net_build(&plain, catalog, &net) == OW_OK);
    }
    context.report = ow_fuzz_report;
    context.report_user = &told;
    if (size > 4096)
        return 0;
    ow_status status = ow_job_read(&context, catalog, "job.yaml", (const char *)data, size, &job);
    OW_FUZZ_CHECK((status == OW_OK) == (told == 0));
    if (status != OW_OK)
        return 0;
    plan_job(&context, catalog, net, job, &told);
    ow_job_free(job);
    return 0;
}
