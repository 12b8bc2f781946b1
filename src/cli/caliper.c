/* SPDX-License-Identifier: MIT */
/* oilway caliper DIAMETER. */
#include "cli/commands.h"
#include "oilway/report_thread.h"

static const cli_option options[] = {
    {"male", 'm', NULL, "a male thread, measured over its crests", false, NULL},
    {"female", 0, NULL, "a female thread, measured across its bore", false, NULL},
    {"tpi", 0, "N", "threads per inch, where they were counted", false, NULL},
    {"pitch", 'p', "MM", "pitch in millimetres, where it was measured", false, NULL},
    {"taper", 't', "yes|no", "whether it tapers, where that was looked at", false, "yes no"},
    {"accuracy", 'a', "MM", "of the diameter, plus or minus millimetres (0.05)", false, NULL},
};

static cli_exit print_answer(cli_run *run, const ow_caliper_ask *ask, ow_caliper_answer *answer)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_caliper_json(&text, answer);
    else
        ow_report_caliper_text(&text, ask, answer, &run->style);
    ow_caliper_done(&run->context, answer);
    if (status == OW_OK)
        return cli_print(run, &text, CLI_YES);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit print_none(cli_run *run)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_caliper_json(&text, NULL);
    else
        ow_text_add(&text, "No thread known reads like that. Measure again, over full crests, and say --male "
                           "or --female.\n");
    if (status != OW_OK) {
        ow_text_done(&text);
        return cli_fail(run, status);
    }
    return cli_print(run, &text, CLI_NO);
}

static cli_exit run_caliper(cli_run *run)
{
    ow_caliper_ask ask = OW_CALIPER_ASK_INIT;
    ow_caliper_answer answer;
    ow_caliper_words words = {
        .diameter = run->arguments[0],
        .tpi = cli_value(run, "tpi"),
        .pitch = cli_value(run, "pitch"),
        .accuracy = cli_value(run, "accuracy"),
        .taper = cli_value(run, "taper"),
        .male = cli_has(run, "male"),
        .female = cli_has(run, "female"),
    };
    ow_status status = ow_caliper_ask_read(&run->context, &words, &ask);
    if (status != OW_OK)
        return cli_fail(run, status);
    status = ow_caliper_name(&run->context, &ask, &answer);
    if (status == OW_OK)
        return print_answer(run, &ask, &answer);
    return status == OW_NONE ? print_none(run) : cli_fail(run, status);
}

const cli_command cli_caliper = {
    .name = "caliper",
    .arguments = "DIAMETER",
    .summary = "name a thread from what was measured, and what decides",
    .detail = "DIAMETER carries its unit: \"9.9 mm\". Without --male or --female both are looked at. Exit 0 "
              "if there is a\n"
              "candidate, 1 if none.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 1,
    .most = 1,
    .uses = CLI_USES_PRINT,
    .no = "no thread reads like that",
    .formats = "text json",
    .run = run_caliper,
};
