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
    ow_text_add(text, ".br\nFormats: ");
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
    ow_text_add(text, ".br\nExit status: ");
    if (command->no != NULL) {
        ow_text_add(text, "0 yes; 1 no: ");
        words(text, command->no);
        ow_text_add(text, "; 2 could not work.\n");
    } else {
        ow_text_add(text, "0, or 2 could not work.\n");
    }
}

static const char head[] =
    ".TH OILWAY 1 \"\" \"oilway " OW_VERSION "\" \"User Commands\"\n"
    ".SH NAME\noilway \\- the fewest\\-part stack of fittings from an engine to a turbo\n"
    ".SH SYNOPSIS\n.B oilway\n\\fICOMMAND\\fR [\\fIOPTIONS\\fR]\n.SH DESCRIPTION\n"
    "Over a shop's own catalogue in YAML, finds the fewest\\-part layout that joins an engine's port to a\n"
    "turbo's, tees and pressure switch included; checks layouts; writes the bill of fittings; works out\n"
    "oil feed, drain and coolant. The grammar of an END and of all files is in\n"
    ".BR oilway (5).\n"
    ".PP\nLong options may be written \\fB\\-\\-name\\fR \\fIvalue\\fR or \\fB\\-\\-name=\\fR\\fIvalue\\fR. "
    "An argument that begins\n"
    "with a minus sign and a digit is an END (\\-4 flare37 male), never an option. A file named \\- is "
    "standard\n"
    "input.\n"
    ".SH ENDS\n"
    "An END is one connection of a part: a thread or size, a gender and a seat, in words and in one "
    "argument.\n"
    ".TP\n1/8\\-27 NPT male; R1/8 male; Rc1/8 female\ntaper pipe threads\n"
    ".TP\nG1/4 male washer; M12x1.5 female washer\nparallel, sealed on the face by a washer\n"
    ".TP\nM14x1.5 male o\\-ring; \\-6 o\\-ring female\nsealed by an O\\-ring in the mouth of the port\n"
    ".TP\n\\-4 flare37 female swivel; 3/16 flare45\\-inverted female\nflares by dash or by tube; a nut that "
    "turns\n"
    ".TP\nM16x1.5 female cone24 10L; G1/4 male cone60\ncones\n"
    ".TP\nbanjo 10 eye; hose \\-4 ptfe; barb 16; flange f38\neyes, cut ends of hoses, tails, bolt patterns\n"
    ".PP\nCase and further blanks do not matter. Pitch or seat may be left out of a question (M10 female): "
    "it is\n"
    "answered for each in use, with what tells them apart.\n";

static const char tail[] =
    ".SH EXIT STATUS\n.TP\n0\nyes\n.TP\n1\nno: there is no stack; a finding of severity error\n.TP\n2\n"
    "could not work: usage, unreadable or wrong input\n"
    ".PP\nCtrl\\-C ends a command between two steps of its work: nothing is left half written, and it dies "
    "of the\n"
    "signal.\n"
    ".SH ENVIRONMENT\n.TP\n.B OILWAY_CATALOG\nthe catalogue folder, where no \\-\\-catalog is given; without "
    "either, the one that came with the program\n"
    ".TP\n.B NO_COLOR\nno colour, even on a terminal\n"
    ".TP\n.B TERM\nwith dumb: no colour and no display of progress\n"
    ".TP\n.B LC_ALL, LC_CTYPE, LANG\nwhether text may hold more than ASCII: where they name UTF\\-8\n"
    ".SH EXAMPLES\n"
    ".nf\noilway stack \\-\\-from brockle\\-4:gallery \\-\\-to curlew\\-8b:oil\\-in \\-\\-keep sw\\-2 "
    "\\-\\-hose \"650 mm\"\n"
    "oilway stack \\-\\-from \"1/8\\-27 NPT female\" \\-\\-to \"\\-4 flare37 male\" \\-\\-format yaml | "
    "oilway bill \\-\n"
    "oilway mates \"\\-4 flare37 male\" \"1/4 flare45 female swivel\"\n"
    "oilway caliper \"9.7 mm\" \\-\\-tpi 28 \\-\\-male\n"
    "oilway catalog check \\-\\-catalog my\\-shop\n.fi\n"
    ".SH CAUTION\nHot oil under pressure burns and catches fire; coolant scalds; a starved bearing "
    "bursts. The\n"
    "makers' data, local codes and a qualified fitter come before anything printed here.\n"
    ".SH SEE ALSO\n.BR oilway (5)\n";

static cli_exit run_manual(cli_run *run)
{
    const cli_option *common;
    ow_text text = ow_text_new(&run->context);
    ow_text_add(&text, head);
    ow_text_add(&text, ".SH COMMANDS\nIn what follows ");
    for (const cli_value_word *word = cli_value_words; word->value != NULL; word++) {
        words(&text, word->says);
        ow_text_add(&text, word[1].value != NULL ? ";\n" : ".\n");
    }
    for (size_t index = 0; index < cli_command_count; index++)
        write_command(&text, cli_commands[index]);
    ow_text_add(&text, ".SH COMMON OPTIONS\n");
    for (size_t index = 0; (common = cli_common_at(NULL, index)) != NULL; index++)
        write_option(&text, common);
    ow_text_add(&text, tail);
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
