/* SPDX-License-Identifier: MIT */
/* oilway stack: from words to answers to print. */
#include <stdio.h>
#include <stdlib.h>

#include "cli/commands.h"

static const cli_option options[] = {
    {"from", 0, "P", "the source: an END, engine:port, or an engine alone", false, NULL},
    {"to", 0, "P", "a port to reach: an END or turbo:port; up to three", true, NULL},
    {"keep", 'k', "P", "a switch or sender that keeps its place; an id or an END; up to five", true, NULL},
    {"best", 'n', "N", "the N best really different layouts (1)", false, NULL},
    {"circuit", 0, "WORD", "the circuit whose defaults hold", false, "feed drain coolant"},
    {"bearing", 0, "WORD", "bearing of the unit fed, where that is no machine of the catalogue", false,
     "journal ball"},
    {"bore", 'b', "Q",
     "least bore on the path to every --to, such as \"4 mm\"; a restrictor's hole is exempt", false, NULL},
    {"flexible", 0, "WORD", "exactly one hose on each path, one or more, none, or as it comes", false,
     "yes some no any"},
    {"closing", 0, "WORD", "whether fixed ports must have a joint that can be made last", false, "yes no"},
    {"restrictor", 0, "WORD", "a restrictor on the path to every --to; by-unit: as each unit wants", false,
     "required forbidden any by-unit"},
    {"orifice", 0, "LO..HI", "range of a restrictor's hole, such as \"0.9 mm..1.1 mm\"", false, NULL},
    {"rating", 0, "Q", "least pressure rating of every part, such as \"6 bar\"", false, NULL},
    {"temperature", 0, "Q", "temperature that every part must stand, such as \"120 C\"", false, NULL},
    {"fluid", 0, "WORD", "fluid that every part must stand", false, "oil coolant"},
    {"hose", 0, "Q", "length of each hose in the answer, such as \"650 mm\"; prices are for 1 m without it",
     false, NULL},
    {"tolerate", 0, NULL, "allow joints that practice tolerates but no standard blesses", false, NULL},
    {"remote-switch", 0, NULL, "a hose may stand before a kept switch", false, NULL},
    {"without", 0, "ID", "do not use this part", true, NULL},
    {"sketch", 0, "FILE", "where there is no layout: a drawing of the part to be made, as SVG", false, NULL},
    {"explain", 0, "ID", "why this part is not in the answer", false, NULL},
    {"cards", 'd', NULL, "also the card of each joint: rings, tightening, engagement, cautions", false, NULL},
};

/* A whole number from 1 to most; false after complaining. */
static bool read_count(const cli_run *run, const char *option, size_t most, size_t *count)
{
    const char *words = cli_value(run, option);
    if (words == NULL)
        return true;
    char *end = NULL;
    unsigned long value = strtoul(words, &end, 10);
    if (words[0] < '0' || words[0] > '9' || *end != '\0' || value < 1 || value > most) {
        cli_complain(option, "%s: a whole number from 1 to %zu is wanted", words, most);
        return false;
    }
    *count = value;
    return true;
}

static bool fill_words(const cli_run *run, ow_ask_typed *typed)
{
    for (size_t index = 0; index < run->given_count; index++) {
        const cli_given *given = &run->given[index];
        size_t most = 0;
        if (ow_ask_typed_put(typed, given->option->name, given->value, &most) != OW_RANGE)
            continue;
        cli_complain(given->option->name, "it may be given %zu times at most", most);
        return false;
    }
    return true;
}

static bool worth_saying(const ow_findings *findings)
{
    for (size_t index = 0; index < findings->count; index++)
        if (findings->items[index].severity != OW_NOTE)
            return true;
    return false;
}

/* A format for programs that has no place for it: that there is none, and what was found wrong. */
static void print_beside(cli_run *run, const ow_answers *answers)
{
    ow_text text = ow_text_new(&run->context);
    ow_style style = run->style;
    style.colour = false;
    if (!answers->found)
        ow_report_answers_text(&text, answers, &style);
    for (size_t index = 0; answers->found && index < answers->count; index++) {
        const ow_answer *answer = &answers->items[index];
        if (answer->found && worth_saying(&answer->findings))
            ow_report_findings_text(&text, &answer->findings, &style);
        if (answer->found && worth_saying(&answer->stacks[0].findings))
            ow_report_findings_text(&text, &answer->stacks[0].findings, &style);
    }
    cli_print_aside(run, &text);
}

/* Writes the made part of the first answer that lacks one, or says that none is wanted. */
static ow_status write_sketch(cli_run *run, const ow_answers *answers)
{
    const char *path = cli_value(run, "sketch");
    const ow_answer *lacking = NULL;
    for (size_t index = 0; index < answers->count && lacking == NULL; index++)
        if (answers->items[index].missing_count > 0)
            lacking = &answers->items[index];
    if (path == NULL)
        return OW_OK;
    if (answers->found || lacking == NULL) {
        fprintf(stderr, "oilway stack: --sketch: %s; %s is not written\n",
                answers->found ? "there is a layout, nothing needs to be made"
                               : "no single made part would complete a layout",
                path);
        return OW_OK;
    }
    ow_text text = ow_text_new(&run->context);
    ow_status status = ow_draw_sketch_svg(&text, &lacking->missing[0], lacking->ask->limits.least_bore_m);
    if (status == OW_OK)
        status = ow_file_write(&run->context, path, ow_text_words(&text), text.length);
    ow_text_done(&text);
    return status;
}

/* A layout for an ask that is itself wrong is no yes. */
static bool is_yes(const ow_answers *answers)
{
    bool wrong = false;
    for (size_t index = 0; index < answers->count; index++)
        wrong = wrong || ow_findings_have(&answers->items[index].findings, OW_ERROR);
    return answers->found && !wrong;
}

static cli_exit print_answers(cli_run *run, const ow_answers *answers)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = write_sketch(run, answers);
    if (status != OW_OK)
        ow_text_done(&text);
    else if (cli_is_format(run, "json"))
        status = ow_report_answers_json(&text, answers);
    else if (cli_is_format(run, "yaml"))
        ow_report_answers_yaml(&text, answers);
    else if (cli_is_format(run, "csv"))
        ow_report_answers_csv(&text, answers);
    else if (cli_is_format(run, "dot"))
        ow_report_answers_dot(&text, answers);
    else if (cli_is_format(run, "svg"))
        status = ow_draw_answers_svg(&text, answers, NULL);
    else if (cli_is_format(run, "html"))
        status = ow_sheet_answer_html(&text, answers);
    else
        ow_report_answers_text(&text, answers, &run->style);
    if (status != OW_OK) {
        ow_text_done(&text);
        return cli_fail(run, status);
    }
    if (!cli_is_format(run, "text") && !cli_is_format(run, "json"))
        print_beside(run, answers);
    return cli_print(run, &text, is_yes(answers) ? CLI_YES : CLI_NO);
}

static cli_exit answer(cli_run *run, const cli_shop *shop, const ow_ask_words *words,
                       const ow_answer_options *wanted)
{
    ow_ask_set set;
    ow_answers answers;
    ow_status status = ow_ask_read(&run->context, shop->catalog, shop->net, words, &set);
    if (status != OW_OK)
        return cli_fail(run, status);
    status = ow_answers_find(&run->context, shop->catalog, shop->net, &set, wanted, &answers);
    cli_progress_erase(run);
    cli_exit exit = CLI_COULD_NOT;
    if (status == OW_OK) {
        exit = print_answers(run, &answers);
        ow_answers_done(&answers);
    } else {
        cli_fail(run, status);
    }
    ow_ask_set_done(&set);
    return exit;
}

static cli_exit run_stack(cli_run *run)
{
    ow_ask_typed typed = {0};
    ow_answer_options wanted = OW_ANSWER_OPTIONS_INIT;
    cli_shop shop;
    wanted.explain = cli_value(run, "explain");
    if (!cli_only_in(run, "cards", "text json html") || !cli_only_in(run, "explain", "text json") ||
        !cli_only_in(run, "best", "text json yaml csv svg dot"))
        return CLI_COULD_NOT;
    if (!fill_words(run, &typed) || !read_count(run, "best", 1000, &wanted.best))
        return CLI_COULD_NOT;
    ow_status status = cli_open_shop(run, true, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = answer(run, &shop, &typed.words, &wanted);
    cli_close_shop(&shop);
    return exit;
}

const cli_command cli_stack = {
    .name = "stack",
    .arguments = "--from P --to P [--keep P]...",
    .summary = "the fewest-part layout that joins them",
    .detail =
        "As soon as a port of a machine or --circuit is named, that circuit's defaults hold: one hose, a "
        "joint\n"
        "that can be made last, its fluid, a rating of the source's pressure. Between two bare ENDs nothing "
        "is\n"
        "asked that is not asked here. An END whose pitch or seat is left out is answered for each in use.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .uses = CLI_USES_SHOP | CLI_USES_STOCK | CLI_USES_PRINT,
    .no = "there is no layout, or a finding of severity error",
    .formats = "text json yaml csv svg html dot",
    .run = run_stack,
};
