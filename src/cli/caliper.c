/* SPDX-License-Identifier: MIT */
/* oilway caliper DIAMETER. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

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

/* A bare number of an option between two bounds. True if it was not given. */
static bool read_number(const cli_run *run, const char *option, double low, double high, double *number)
{
    const char *words = cli_value(run, option);
    double value;
    if (words == NULL)
        return true;
    if (ow_quantity_read(words, OW_RATIO, &value) != OW_OK || strchr(words, '%') != NULL) {
        cli_complain(option, "\"%s\" is no bare number", words);
        return false;
    }
    if (value < low || value > high) {
        cli_complain(option, "%s is out of range: %g to %g", words, low, high);
        return false;
    }
    *number = value;
    return true;
}

static bool read_side(const cli_run *run, ow_caliper_ask *ask)
{
    if (cli_has(run, "male") && cli_has(run, "female")) {
        cli_complain("female", "a thread is male or female");
        return false;
    }
    if (cli_has(run, "male"))
        ask->side = OW_CALIPER_MALE;
    if (cli_has(run, "female"))
        ask->side = OW_CALIPER_FEMALE;
    return true;
}

static bool read_taper(const cli_run *run, ow_caliper_ask *ask)
{
    const char *words = cli_value(run, "taper");
    if (words == NULL)
        return true;
    if (strcmp(words, "yes") == 0)
        ask->taper = OW_TAPER_YES;
    else if (strcmp(words, "no") == 0)
        ask->taper = OW_TAPER_NO;
    else {
        cli_complain("taper", "\"%s\" is neither yes nor no", words);
        return false;
    }
    return true;
}

static bool read_pitch(const cli_run *run, ow_caliper_ask *ask)
{
    double tpi = 0, pitch_mm = 0;
    if (!read_number(run, "tpi", 4.5, 100, &tpi) || !read_number(run, "pitch", 0.25, 5.6, &pitch_mm))
        return false;
    if (tpi > 0 && pitch_mm > 0) {
        cli_complain("pitch", "give --tpi or --pitch, not both");
        return false;
    }
    if (tpi > 0)
        ask->pitch_m = 0.0254 / tpi;
    if (pitch_mm > 0)
        ask->pitch_m = pitch_mm * 1e-3;
    return true;
}

static bool read_diameter(const char *words, ow_caliper_ask *ask)
{
    if (ow_quantity_read(words, OW_LENGTH, &ask->diameter_m) != OW_OK) {
        fprintf(stderr, "oilway caliper: \"%s\" is no diameter: expected %s\n", words,
                ow_dimension_expected(OW_LENGTH));
        return false;
    }
    if (ask->diameter_m >= 1e-3 && ask->diameter_m <= 0.1)
        return true;
    fprintf(stderr, "oilway caliper: %s is out of range: 1 mm to 100 mm\n", words);
    return false;
}

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
    if (cli_is_format(run, "json"))
        ow_text_add(
            &text,
            "{\"candidates\": [], \"decide\": {\"measure\": \"diameter\", \"how\": \"No thread known reads "
            "like that: measure again, over full crests.\"}}\n");
    else
        ow_text_add(&text, "No thread known reads like that. Measure again, over full crests, and say --male "
                           "or --female.\n");
    return cli_print(run, &text, CLI_NO);
}

static cli_exit run_caliper(cli_run *run)
{
    ow_caliper_ask ask = OW_CALIPER_ASK_INIT;
    ow_caliper_answer answer;
    double accuracy_mm = 0.05;
    if (!read_diameter(run->arguments[0], &ask) || !read_side(run, &ask) || !read_taper(run, &ask) ||
        !read_pitch(run, &ask) || !read_number(run, "accuracy", 0.001, 1, &accuracy_mm))
        return CLI_COULD_NOT;
    ask.accuracy_m = accuracy_mm * 1e-3;
    ow_status status = ow_caliper_name(&run->context, &ask, &answer);
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
    .formats = "text json",
    .run = run_caliper,
};
