/* SPDX-License-Identifier: MIT */
/* The man page, in man(7) macros, from the same tables as help: `oilway manual`, kept as docs/man/oilway.1.
 */
#include <string.h>

#include "cli/commands.h"

/* Words for roff: hyphens and backslashes escaped, a leading dot or quote guarded. */
static void words(ow_text *text, const char *from)
{
    for (const char *at = from; *at != '\0'; at++) {
        bool begins = at == from || at[-1] == '\n';
        if (begins && (*at == '.' || *at == '\''))
            ow_text_add(text, "\\&");
        if (*at == '-')
            ow_text_add(text, "\\-");
        else if (*at == '\\')
            ow_text_add(text, "\\e");
        else
            ow_text_char(text, *at);
    }
}

static void write_option(ow_text *text, const cli_option *option)
{
    ow_text_add(text, ".TP\n\\fB");
    if (option->letter != 0)
        ow_text_format(text, "\\-%c\\fR, \\fB", option->letter);
    ow_text_add(text, "\\-\\-");
    words(text, option->name);
    ow_text_add(text, "\\fR");
    if (option->value != NULL)
        ow_text_format(text, " \\fI%s\\fR", option->value);
    ow_text_char(text, '\n');
    words(text, option->help);
    if (option->choices != NULL) {
        ow_text_add(text, ": ");
        words(text, option->choices);
    }
    ow_text_add(text, option->repeats ? " (may be repeated)\n" : "\n");
}

/* Which of the common options the command takes, and its formats. */
static void write_common(ow_text *text, const cli_command *command)
{
    const cli_option *common;
    ow_text_add(text, ".PP\nCommon options:");
    for (size_t index = 0; (common = cli_common_at(command, index)) != NULL; index++) {
        ow_text_add(text, index > 0 ? ", \\-\\-" : " \\-\\-");
        words(text, common->name);
    }
    ow_text_add(text, ".\n");
    if ((command->uses & CLI_USES_FORMAT) == 0)
        return;
    ow_text_add(text, "Formats: ");
    words(text, command->formats);
    ow_text_add(text, ".\n");
}

static void write_command(ow_text *text, const cli_command *command)
{
    ow_text_format(text, ".SS oilway %s ", command->name);
    words(text, command->arguments);
    ow_text_char(text, '\n');
    words(text, command->summary);
    ow_text_add(text, ".\n");
    if (command->detail != NULL) {
        ow_text_add(text, ".PP\n");
        words(text, command->detail);
        ow_text_char(text, '\n');
    }
    for (size_t index = 0; index < command->option_count; index++)
        write_option(text, &command->options[index]);
    write_common(text, command);
}

static cli_exit run_manual(cli_run *run)
{
    ow_text text = ow_text_new(&run->context);
    ow_text_add(
        &text,
        ".TH OILWAY 1 \"\" \"oilway " OW_VERSION "\" \"User Commands\"\n"
        ".SH NAME\noilway \\- the fewest\\-part stack of fittings from an engine to a turbo\n"
        ".SH SYNOPSIS\n.B oilway\n\\fICOMMAND\\fR [\\fIOPTIONS\\fR]\n.SH DESCRIPTION\n"
        "Over a shop's own catalogue in YAML, finds the fewest\\-part layout that joins an engine's port to "
        "a\n"
        "turbo's, tees and pressure switch included; checks layouts; writes the bill of fittings; works out\n"
        "oil feed, drain and coolant. The grammar of an END and of all files is in\n"
        ".BR oilway (5).\n"
        ".SH COMMANDS\n");
    for (size_t index = 0; index < cli_command_count; index++)
        write_command(&text, cli_commands[index]);
    ow_text_add(&text, ".SH COMMON OPTIONS\n");
    const cli_option *common;
    for (size_t index = 0; (common = cli_common_at(NULL, index)) != NULL; index++)
        write_option(&text, common);
    ow_text_add(
        &text,
        ".SH EXIT STATUS\n.TP\n0\nyes\n.TP\n1\nno: there is no stack; a finding of severity error\n.TP\n2\n"
        "could not work: usage, unreadable or wrong input\n"
        ".SH ENVIRONMENT\n.TP\n.B OILWAY_CATALOG\nthe catalogue folder, where no \\-\\-catalog is given\n"
        ".TP\n.B NO_COLOR\nno colour, even on a terminal\n"
        ".SH CAUTION\nHot oil under pressure burns and catches fire; coolant scalds; a starved bearing "
        "bursts. The\n"
        "makers' data, local codes and a qualified fitter come before anything printed here.\n"
        ".SH SEE ALSO\n.BR oilway (5)\n");
    return cli_print(run, &text, CLI_YES);
}

const cli_command cli_manual = {
    .name = "manual",
    .arguments = "",
    .summary = "this manual as a man page",
    .uses = CLI_USES_OUTPUT | CLI_USES_HELP,
    .formats = "text",
    .run = run_manual,
};
