/* SPDX-License-Identifier: MIT */
/* oilway bill: the bill of fittings of a layout's file. */
#include <stdio.h>

#include "cli/commands.h"
#include "oilway/check.h"
#include "oilway/report_joint.h"

static const cli_option options[] = {
    {"cards", 'd', NULL, "also the card of each joint: rings, tightening, engagement, cautions", false, NULL},
};

static cli_exit print_bill(cli_run *run, const ow_bill *bill, const ow_layout *layouts, size_t count)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_bill_json(&text, bill);
    else if (cli_is_format(run, "csv"))
        ow_report_bill_csv(&text, bill);
    else if (cli_is_format(run, "svg"))
        status = ow_draw_layouts_svg(&text, layouts, NULL, count, NULL);
    else if (cli_is_format(run, "html"))
        status = ow_sheet_layouts_html(&text, layouts, NULL, count);
    else
        ow_report_bill_text(&text, bill, &run->style);
    if (cli_is_format(run, "text") && cli_has(run, "cards"))
        for (size_t index = 0; index < count; index++)
            ow_report_layout_cards_text(&text, &layouts[index], &run->style);
    if (status == OW_OK)
        return cli_print(run, &text, CLI_YES);
    ow_text_done(&text);
    return cli_fail(run, status);
}

/* Parts that do not go together are still on the bill; whoever buys them is told. */
static ow_status warn_of_errors(cli_run *run, const cli_shop *shop, const ow_layout *layouts, size_t count)
{
    size_t errors = 0;
    for (size_t index = 0; index < count; index++) {
        ow_findings findings = ow_findings_new(&run->context);
        ow_status status = ow_check_layout(&run->context, shop->catalog, &layouts[index], &findings, NULL);
        for (size_t one = 0; one < findings.count; one++)
            errors += findings.items[one].severity == OW_ERROR;
        ow_findings_done(&findings);
        if (status != OW_OK)
            return status;
    }
    if (errors > 0)
        fprintf(stderr, "oilway bill: warning: this cannot be built as drawn, %zu %s: see oilway check %s\n",
                errors, errors == 1 ? "error" : "errors", run->arguments[0]);
    return OW_OK;
}

static cli_exit bill_layouts(cli_run *run, const cli_shop *shop, const char *bytes, size_t length)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_status status = cli_read_layouts(run, shop, bytes, length, &layouts, &count);
    if (status != OW_OK)
        return cli_fail(run, status);
    ow_bill bill;
    cli_exit exit = CLI_COULD_NOT;
    status = warn_of_errors(run, shop, layouts, count);
    if (status == OW_OK)
        status = ow_bill_new(&run->context, layouts, count, &bill);
    if (status == OW_OK) {
        exit = print_bill(run, &bill, layouts, count);
        ow_bill_done(&bill);
    } else {
        cli_fail(run, status);
    }
    ow_layouts_free(&run->context, layouts, count);
    return exit;
}

static cli_exit bill_plan(cli_run *run, const ow_plan *plan)
{
    return print_bill(run, &plan->bill, plan->layouts, plan->layout_count);
}

static cli_exit bill_bytes(cli_run *run, const char *bytes, size_t length)
{
    cli_shop shop;
    if (ow_job_is(bytes, length))
        return cli_with_job(run, bytes, length, bill_plan);
    ow_status status = cli_open_shop(run, false, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = bill_layouts(run, &shop, bytes, length);
    cli_close_shop(&shop);
    return exit;
}

static cli_exit run_bill(cli_run *run)
{
    if (!cli_only_in(run, "cards", "text html"))
        return CLI_COULD_NOT;
    char *bytes = NULL;
    size_t length = 0;
    ow_status status = ow_file_read(&run->context, run->arguments[0], &bytes, &length);
    cli_exit exit = status == OW_OK ? bill_bytes(run, bytes, length) : cli_fail(run, status);
    ow_release(&run->context, bytes);
    return exit;
}

const cli_command cli_bill = {
    .name = "bill",
    .arguments = "LAYOUT | JOB",
    .summary = "the bill of fittings, hoses cut and consumables by size",
    .detail = "LAYOUT and JOB are YAML files as check and plan read them; - reads standard input. What stock "
              "is short of is\n"
              "said, and no reason for another exit status.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 1,
    .most = 1,
    .uses = CLI_USES_SHOP | CLI_USES_STOCK | CLI_USES_PRINT,
    .formats = "text json csv svg html",
    .run = run_bill,
};
