/* SPDX-License-Identifier: MIT */
/* oilway plan: feed, drain and coolant of a job together. */
#include "cli/commands.h"

static const cli_option options[] = {
    {"cards", 'd', NULL, "also the card of each joint: rings, tightening, engagement, cautions", false, NULL},
};

static cli_exit print_plan(cli_run *run, const ow_plan *plan)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_plan_json(&text, plan);
    else if (cli_is_format(run, "yaml"))
        ow_report_plan_yaml(&text, plan);
    else if (cli_is_format(run, "svg"))
        status = ow_draw_plan_svg(&text, plan, NULL);
    else if (cli_is_format(run, "html"))
        status = ow_sheet_plan_html(&text, plan);
    else
        ow_report_plan_text(&text, plan, &run->style);
    if (status == OW_OK)
        return cli_print(run, &text, plan->ok ? CLI_YES : CLI_NO);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit run_plan(cli_run *run)
{
    if (!cli_only_in(run, "cards", "text json html"))
        return CLI_COULD_NOT;
    char *bytes = NULL;
    size_t length = 0;
    ow_status status = ow_file_read(&run->context, run->arguments[0], &bytes, &length);
    cli_exit exit = status == OW_OK ? cli_with_job(run, bytes, length, print_plan) : cli_fail(run, status);
    ow_release(&run->context, bytes);
    return exit;
}

const cli_command cli_plan = {
    .name = "plan",
    .arguments = "JOB",
    .summary = "feed, drain and coolant of a job together, reckoned and checked",
    .detail =
        "JOB is a YAML file that names the engine, the turbo and what is known; - reads standard input.\n"
        "What it does not say is assumed, and every assumption is listed.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 1,
    .most = 1,
    .uses = CLI_USES_SHOP | CLI_USES_STOCK | CLI_USES_PRINT,
    .no = "a finding of severity error",
    .formats = "text json yaml svg html",
    .run = run_plan,
};
