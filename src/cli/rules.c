/* SPDX-License-Identifier: MIT */
/* oilway rules [ID]: the table of rules. */
#include <stdio.h>

#include "cli/commands.h"

static cli_exit run_rules(cli_run *run)
{
    const ow_rule *rule = run->argument_count > 0 ? ow_rule_find(run->arguments[0]) : NULL;
    if (run->argument_count > 0 && rule == NULL) {
        const char *nearest = ow_rule_nearest(run->arguments[0]);
        fprintf(stderr, "oilway rules: there is no rule \"%s\"", run->arguments[0]);
        if (nearest != NULL)
            fprintf(stderr, "; did you mean %s?", nearest);
        fputc('\n', stderr);
        return CLI_COULD_NOT;
    }
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_rules_json(&text, rule);
    else if (cli_is_format(run, "md"))
        ow_report_rules_markdown(&text);
    else
        ow_report_rules_text(&text, rule, &run->style);
    if (status == OW_OK)
        return cli_print(run, &text, CLI_YES);
    ow_text_done(&text);
    return cli_fail(run, status);
}

const cli_command cli_rules = {
    .name = "rules",
    .arguments = "[ID]",
    .summary = "the rules that checks and plans judge by, each with its mend and source",
    .detail = "ID is the word that a finding begins with, such as taper-aimed: that rule alone. --format md "
              "writes docs/rules.md, always whole.",
    .least = 0,
    .most = 1,
    .uses = CLI_USES_PRINT,
    .formats = "text json md",
    .run = run_rules,
};
