/* SPDX-License-Identifier: MIT */
/* oilway oil, drain, feed, siphon: quick physics at the counter, without a catalogue. */
#include "cli/commands.h"

#define OIL_OPTIONS                                                                              \
    {"kv40", 0, "N", "kinematic viscosity at 40 C, mm2/s, from the product sheet", false, NULL}, \
        {"kv100", 0, "N", "kinematic viscosity at 100 C, mm2/s", false, NULL},                   \
        {"rho15", 0, "N", "density at 15 C, kg/m3", false, NULL},                                \
    {                                                                                            \
        "at", 't', "T", "temperature of the oil, such as \"100 C\"", false, NULL                 \
    }

static const cli_option oil_options[] = {OIL_OPTIONS};
static const cli_option drain_options[] = {
    {"bore", 'b', "Q", "true inside diameter, such as \"15.9 mm\"", false, NULL},
    {"slope", 0, "Q", "downhill, such as \"20 deg\"", false, NULL},
    {"flow", 0, "Q", "oil that comes down, such as \"2 L/min\"", false, NULL},
    {"aeration", 0, "N", "volume of froth over volume of oil; 2 is assumed", false, NULL},
    {"oil", 0, "GRADE", "SAE grade, such as 15W-40; or --kv40 and --kv100", false, NULL},
    OIL_OPTIONS,
};

/* Prints what was written, or says why it could not be. */
static cli_exit print(cli_run *run, ow_text *text, ow_status status, cli_exit exit)
{
    if (status == OW_OK)
        return cli_print(run, text, exit);
    ow_text_done(text);
    return cli_fail(run, status);
}

static ow_oil_words oil_words(const cli_run *run, const char *grade)
{
    return (ow_oil_words){grade, cli_value(run, "kv40"), cli_value(run, "kv100"), cli_value(run, "rho15"),
                          cli_value(run, "at")};
}

static cli_exit run_oil(cli_run *run)
{
    ow_oil_words words = oil_words(run, run->argument_count > 0 ? run->arguments[0] : NULL);
    ow_oil_request request;
    ow_oil_answer answer;
    ow_text text = ow_text_new(&run->context);
    ow_status status = ow_oil_request_read(&run->context, &words, &request);
    if (status != OW_OK)
        return cli_fail(run, status);
    status = ow_oil_reckon(&run->context, &request, &answer);
    if (status == OW_OK) {
        if (cli_is_format(run, "json"))
            status = ow_report_oil_json(&text, &request, &answer);
        else
            ow_report_oil_text(&text, &request, &answer, &run->style);
        ow_oil_answer_done(&answer);
    }
    ow_oil_request_done(&request);
    return print(run, &text, status, CLI_YES);
}

static cli_exit run_drain(cli_run *run)
{
    ow_drain_words words = {cli_value(run, "bore"), cli_value(run, "slope"), cli_value(run, "flow"),
                            cli_value(run, "aeration"), oil_words(run, cli_value(run, "oil"))};
    ow_drain_request request;
    ow_drain_answer answer;
    ow_text text = ow_text_new(&run->context);
    cli_exit exit = CLI_YES;
    ow_status status = ow_drain_request_read(&run->context, &words, &request);
    if (status != OW_OK)
        return cli_fail(run, status);
    status = ow_drain_reckon(&run->context, &request, &answer);
    if (status == OW_OK) {
        exit = answer.ok ? CLI_YES : CLI_NO;
        if (cli_is_format(run, "json"))
            status = ow_report_drain_json(&text, &request, &answer);
        else
            ow_report_drain_text(&text, &request, &answer, &run->style);
        ow_drain_answer_done(&answer);
    }
    ow_drain_request_done(&request);
    return print(run, &text, status, exit);
}

/* Reckons and prints a LINE that was read. */
static cli_exit answer_line(cli_run *run, const ow_line *line)
{
    ow_line_answer answer;
    ow_text text = ow_text_new(&run->context);
    ow_status status = ow_line_reckon(&run->context, line, &answer);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = answer.ok ? CLI_YES : CLI_NO;
    if (cli_is_format(run, "json"))
        status = ow_report_line_json(&text, line, &answer);
    else
        ow_report_line_text(&text, line, &answer, &run->style);
    ow_line_answer_done(&answer);
    return print(run, &text, status, exit);
}

static cli_exit run_feed(cli_run *run)
{
    char *bytes = NULL;
    size_t length = 0;
    ow_line line;
    ow_status status = ow_file_read(&run->context, run->arguments[0], &bytes, &length);
    if (status == OW_OK)
        status = ow_line_read(&run->context, run->arguments[0], bytes, length, &line);
    ow_release(&run->context, bytes);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = answer_line(run, &line);
    ow_line_free(&line);
    return exit;
}

/* Reckons and prints a LOOP that was read. */
static cli_exit answer_loop(cli_run *run, const ow_loop_text *loop)
{
    ow_loop_answer answer;
    ow_text text = ow_text_new(&run->context);
    ow_status status = ow_loop_reckon(&run->context, loop, &answer);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = answer.ok ? CLI_YES : CLI_NO;
    if (cli_is_format(run, "json"))
        status = ow_report_loop_json(&text, loop, &answer);
    else
        ow_report_loop_text(&text, loop, &answer, &run->style);
    ow_loop_answer_done(&answer);
    return print(run, &text, status, exit);
}

static cli_exit run_siphon(cli_run *run)
{
    char *bytes = NULL;
    size_t length = 0;
    ow_loop_text loop;
    ow_status status = ow_file_read(&run->context, run->arguments[0], &bytes, &length);
    if (status == OW_OK)
        status = ow_loop_read(&run->context, run->arguments[0], bytes, length, &loop);
    ow_release(&run->context, bytes);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = answer_loop(run, &loop);
    ow_loop_free(&loop);
    return exit;
}

const cli_command cli_oil = {
    .name = "oil",
    .arguments = "GRADE --at T | --kv40 N --kv100 N [--rho15 N] --at T",
    .summary = "viscosity and density of an oil at a temperature",
    .detail =
        "GRADE is an SAE grade: 15W-40, 5w30, \"SAE 30\". A typical oil of that grade is then assumed, and "
        "printed.",
    .options = oil_options,
    .option_count = sizeof oil_options / sizeof oil_options[0],
    .most = 1,
    .uses = CLI_USES_PRINT,
    .formats = "text json",
    .run = run_oil,
};

const cli_command cli_drain = {
    .name = "drain",
    .arguments = "--bore Q --slope Q --flow Q --oil GRADE --at T",
    .summary = "how full a gravity drain runs, and what would do",
    .detail = "Exact laminar flow in a partly filled pipe, turbulent where it is; the pool over the outlet.",
    .options = drain_options,
    .option_count = sizeof drain_options / sizeof drain_options[0],
    .uses = CLI_USES_PRINT,
    .no = "a finding of severity error",
    .formats = "text json",
    .run = run_drain,
};

const cli_command cli_feed = {
    .name = "feed",
    .arguments = "LINE",
    .summary = "pressure and flow along a feed written down piece by piece",
    .detail = "LINE is a YAML file of pieces, see oilway(5) or docs/physics.md; - reads standard input.",
    .least = 1,
    .most = 1,
    .uses = CLI_USES_PRINT,
    .no = "a finding of severity error",
    .formats = "text json",
    .run = run_feed,
};

const cli_command cli_siphon = {
    .name = "siphon",
    .arguments = "LOOP",
    .summary = "how a coolant loop goes round by itself after shutdown",
    .detail = "LOOP is a YAML file of two legs, see oilway(5) or docs/physics.md; - reads standard input.",
    .least = 1,
    .most = 1,
    .uses = CLI_USES_PRINT,
    .no = "it boils, or stands still",
    .formats = "text json",
    .run = run_siphon,
};
