/* SPDX-License-Identifier: MIT */
/* oilway catalog list|show ID|check. */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"

static cli_exit list(cli_run *run, const cli_shop *shop)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_catalog_list_json(&text, shop->catalog);
    else
        ow_report_catalog_list_text(&text, shop->catalog, &run->style);
    if (status == OW_OK)
        return cli_print(run, &text, CLI_YES);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit show(cli_run *run, const cli_shop *shop, const char *id)
{
    ow_text text = ow_text_new(&run->context);
    if (ow_catalog_part(shop->catalog, id) == NULL && ow_catalog_machine(shop->catalog, id) == NULL) {
        const char *nearest = ow_catalog_nearest_id(shop->catalog, id);
        fprintf(stderr, "oilway catalog: no \"%s\" is in the catalogue", id);
        if (nearest != NULL)
            fprintf(stderr, "; did you mean %s?", nearest);
        fputc('\n', stderr);
        cli_remember_unknown(run, id, strlen(id));
        cli_hint_at_shipped(run);
        return CLI_COULD_NOT;
    }
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_catalog_show_json(&text, shop->catalog, id);
    else
        ow_report_catalog_show_text(&text, shop->catalog, id, &run->style);
    if (status == OW_OK)
        return cli_print(run, &text, CLI_YES);
    ow_text_done(&text);
    return cli_fail(run, status);
}

/* Reads and looks over, while `told` listens in the place of the terminal where JSON is wanted. */
static ow_status look_over(cli_run *run, cli_shop *shop, ow_catalog_checked *checked, const ow_told *told)
{
    size_t errors = 0, warnings = 0;
    ow_status status = cli_open_shop(run, false, shop);
    *checked = (ow_catalog_checked){shop->catalog, told->errors, told->warnings, told};
    if (status == OW_OK)
        status = ow_catalog_check(&run->context, shop->catalog, &errors, &warnings);
    else if (status != OW_MEMORY && status != OW_STOPPED && told->errors > 0)
        status = OW_OK; /* that it cannot be read is an answer */
    checked->errors += errors;
    checked->warnings += warnings;
    return status;
}

static cli_exit print_checked(cli_run *run, const ow_catalog_checked *checked)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_catalog_check_json(&text, checked);
    else
        ow_report_catalog_check_text(&text, checked);
    if (status == OW_OK)
        return cli_print(run, &text, ow_catalog_checked_ok(checked) ? CLI_YES : CLI_COULD_NOT);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit check(cli_run *run)
{
    /* As JSON everything is told in the answer, and nothing beside it. */
    ow_context listening = run->context;
    cli_shop shop = {NULL, NULL};
    ow_catalog_checked checked;
    ow_told told;
    if (cli_is_format(run, "json"))
        listening.report = NULL;
    ow_status status = ow_told_new(&listening, &told);
    if (status != OW_OK)
        return cli_fail(run, status);
    run->context.report = ow_told_take;
    run->context.report_user = &told;
    status = look_over(run, &shop, &checked, &told);
    run->context.report = listening.report;
    run->context.report_user = listening.report_user;
    cli_exit exit = status == OW_OK ? print_checked(run, &checked) : cli_fail(run, status);
    cli_close_shop(&shop);
    ow_told_done(&told);
    return exit;
}

/* Whether the words behind `catalog` are ones that it knows, and as many as it takes. */
static bool read_verb(const cli_run *run, const char **verb)
{
    static const char *const verbs[] = {"list", "show", "check"};
    *verb = run->argument_count > 0 ? run->arguments[0] : "list";
    size_t wanted = strcmp(*verb, "show") == 0 ? 2 : 1;
    for (size_t index = 0; index < 3; index++) {
        if (strcmp(*verb, verbs[index]) != 0)
            continue;
        if (run->argument_count == wanted || run->argument_count == 0)
            return true;
        fprintf(stderr, "oilway catalog %s: %s\n", *verb,
                run->argument_count < wanted ? "whose ID is not said" : "too many arguments");
        return false;
    }
    const char *nearest = ow_words_nearest(*verb, strlen(*verb), verbs, 3);
    fprintf(stderr, "oilway catalog: \"%s\" is none of list, show ID and check%s%s%s\n", *verb,
            nearest != NULL ? "; did you mean " : "", nearest != NULL ? nearest : "",
            nearest != NULL ? "?" : "");
    return false;
}

static cli_exit run_catalog(cli_run *run)
{
    const char *verb = NULL;
    if (!read_verb(run, &verb)) {
        cli_print_usage_hint(run->command);
        return CLI_COULD_NOT;
    }
    if (strcmp(verb, "check") == 0)
        return check(run);
    cli_shop shop;
    ow_status status = cli_open_shop(run, false, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = strcmp(verb, "show") == 0 ? show(run, &shop, run->arguments[1]) : list(run, &shop);
    cli_close_shop(&shop);
    return exit;
}

const cli_command cli_catalog = {
    .name = "catalog",
    .arguments = "[list | show ID | check]",
    .summary = "look at and verify the catalogue",
    .detail = "list (or nothing): every part and machine in a line. show: one of them, all that is known. "
              "check: the pages\n"
              "read and looked over; every fault and doubt is told with its place, and exit is 2 if there is "
              "an error.",
    .most = 2,
    .uses = CLI_USES_SHOP | CLI_USES_STOCK | CLI_USES_PRINT,
    .formats = "text json",
    .run = run_catalog,
};
