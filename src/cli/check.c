/* SPDX-License-Identifier: MIT */
/* oilway check: reads layouts, re-walks each, prints every joint and rule. */
#include "cli/commands.h"

static const cli_option options[] = {
    {"cards", 'd', NULL, "also the card of each joint: rings, tightening, engagement, cautions", false, NULL},
};

static cli_exit print_checked(cli_run *run, const ow_layout *layouts, const ow_checked *checked)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_check_json(&text, layouts, checked->findings, checked->passed, checked->count);
    else if (cli_is_format(run, "svg"))
        status = ow_draw_layouts_svg(&text, layouts, checked->findings, checked->count, NULL);
    else if (cli_is_format(run, "html"))
        status = ow_sheet_check_html(&text, layouts, checked);
    for (size_t index = 0; index < checked->count && cli_is_format(run, "text"); index++) {
        if (index > 0)
            ow_text_char(&text, '\n');
        ow_report_check_text(&text, &layouts[index], &checked->findings[index], &checked->passed[index],
                             &run->style);
    }
    if (status == OW_OK)
        return cli_print(run, &text, checked->ok ? CLI_YES : CLI_NO);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit check_bytes(cli_run *run, const cli_shop *shop, const char *bytes, size_t length)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_checked checked;
    ow_status status = cli_read_layouts(run, shop, bytes, length, &layouts, &count);
    if (status != OW_OK)
        return cli_fail(run, status);
    status = ow_check_layouts(&run->context, shop->catalog, layouts, count, &checked);
    cli_exit exit = status == OW_OK ? print_checked(run, layouts, &checked) : cli_fail(run, status);
    if (status == OW_OK)
        ow_checked_done(&checked);
    ow_layouts_free(&run->context, layouts, count);
    return exit;
}

static cli_exit check_file(cli_run *run, const cli_shop *shop)
{
    char *bytes = NULL;
    size_t length = 0;
    ow_status status = ow_file_read(&run->context, run->arguments[0], &bytes, &length);
    cli_exit exit = status == OW_OK ? check_bytes(run, shop, bytes, length) : cli_fail(run, status);
    ow_release(&run->context, bytes);
    return exit;
}

static cli_exit run_check(cli_run *run)
{
    if (!cli_only_in(run, "cards", "text json html"))
        return CLI_COULD_NOT;
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
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 1,
    .most = 1,
    .uses = CLI_USES_SHOP | CLI_USES_STOCK | CLI_USES_PRINT,
    .no = "a finding of severity error",
    .formats = "text json svg html",
    .run = run_check,
};
