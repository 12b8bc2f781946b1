/* SPDX-License-Identifier: MIT */
/* oilway check: reads layouts, re-walks each, prints every joint and rule. */
#include <stdio.h>
#include <stdlib.h>

#include "cli/commands.h"

/* Layouts of a file with what the check said of each. */
typedef struct checked {
    ow_layout *layouts;
    ow_findings *findings;
    ow_findings *passed;
    size_t count;
} checked;

static void free_checked(cli_run *run, checked *all)
{
    for (size_t index = 0; all->findings != NULL && index < all->count; index++)
        ow_findings_done(&all->findings[index]);
    for (size_t index = 0; all->passed != NULL && index < all->count; index++)
        ow_findings_done(&all->passed[index]);
    free(all->findings);
    free(all->passed);
    ow_layouts_free(&run->context, all->layouts, all->count);
}

static ow_status check_all(cli_run *run, const cli_shop *shop, checked *all)
{
    all->findings = calloc(all->count + 1, sizeof *all->findings);
    all->passed = calloc(all->count + 1, sizeof *all->passed);
    if (all->findings == NULL || all->passed == NULL)
        return OW_MEMORY;
    for (size_t index = 0; index < all->count; index++) {
        all->findings[index] = ow_findings_new(&run->context);
        all->passed[index] = ow_findings_new(&run->context);
    }
    ow_status status = OW_OK;
    for (size_t index = 0; index < all->count && status == OW_OK; index++)
        status = ow_check_layout(&run->context, shop->catalog, &all->layouts[index], &all->findings[index],
                                 &all->passed[index]);
    return status;
}

static cli_exit print_checked(cli_run *run, const checked *all)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    cli_exit exit = CLI_YES;
    if (cli_is_format(run, "json"))
        status = ow_report_check_json(&text, all->layouts, all->findings, all->passed, all->count);
    for (size_t index = 0; index < all->count; index++) {
        if (cli_is_format(run, "text"))
            ow_report_check_text(&text, &all->layouts[index], &all->findings[index], &all->passed[index],
                                 &run->style);
        if (ow_findings_have(&all->findings[index], OW_ERROR))
            exit = CLI_NO;
    }
    if (status == OW_OK)
        return cli_print(run, &text, exit);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit check_file(cli_run *run, const cli_shop *shop)
{
    checked all = {NULL, NULL, NULL, 0};
    cli_exit exit = CLI_COULD_NOT;
    char *bytes = NULL;
    size_t length = 0;
    ow_status status = ow_file_read(&run->context, run->arguments[0], &bytes, &length);
    if (status == OW_OK)
        status = cli_read_layouts(run, shop, bytes, length, &all.layouts, &all.count);
    if (status == OW_OK)
        status = check_all(run, shop, &all);
    if (status == OW_OK)
        exit = print_checked(run, &all);
    else
        cli_fail(run, status);
    free_checked(run, &all);
    ow_release(&run->context, bytes);
    return exit;
}

static cli_exit run_check(cli_run *run)
{
    cli_shop shop;
    ow_status status = cli_open_shop(run, false, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = check_file(run, &shop);
    cli_close_shop(&shop);
    return exit;
}

const cli_command cli_check = {
    .name = "check",
    .arguments = "LAYOUT",
    .summary = "every joint and rule of a layout, with reason and source",
    .detail =
        "LAYOUT is a YAML file as `stack --format yaml` writes it; - reads standard input. A layout without\n"
        "`asked` is held to its circuit's defaults.",
    .least = 1,
    .most = 1,
    .formats = "text json",
    .run = run_check,
};
