/* SPDX-License-Identifier: MIT */
/* oilway plan: feed, drain and coolant of a job together. */
#include "cli/commands.h"

cli_exit cli_with_job(cli_run *run, const cli_shop *shop, cli_exit (*use)(cli_run *run, const ow_plan *plan))
{
    char *bytes = NULL;
    size_t length = 0;
    ow_job *job = NULL;
    ow_plan plan;
    const char *path = run->arguments[0];
    ow_status status = ow_file_read(&run->context, path, &bytes, &length);
    if (status == OW_OK)
        status = ow_job_read(&run->context, shop->catalog, path, bytes, length, &job);
    if (status == OW_OK)
        status = ow_plan_make(&run->context, shop->catalog, shop->net, job, &plan);
    cli_exit exit = status == OW_OK ? use(run, &plan) : cli_fail(run, status);
    if (status == OW_OK)
        ow_plan_done(&plan);
    ow_job_free(job);
    ow_release(&run->context, bytes);
    return exit;
}

static cli_exit print_plan(cli_run *run, const ow_plan *plan)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_plan_json(&text, plan);
    else if (cli_is_format(run, "yaml"))
        ow_report_plan_yaml(&text, plan);
    else
        ow_report_plan_text(&text, plan, &run->style);
    if (status == OW_OK)
        return cli_print(run, &text, plan->ok ? CLI_YES : CLI_NO);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit run_plan(cli_run *run)
{
    cli_shop shop;
    ow_status status = cli_open_shop(run, true, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = cli_with_job(run, &shop, print_plan);
    cli_close_shop(&shop);
    return exit;
}

const cli_command cli_plan = {
    .name = "plan",
    .arguments = "JOB",
    .summary = "feed, drain and coolant of a job together, reckoned and checked",
    .detail =
        "JOB is a YAML file that names the engine, the turbo and what is known; - reads standard input.\n"
        "What it does not say is assumed, and every assumption is listed.",
    .least = 1,
    .most = 1,
    .formats = "text json yaml",
    .run = run_plan,
};
