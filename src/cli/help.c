/* SPDX-License-Identifier: MIT */
/* Help, printed from the tables, as wide as the terminal. */
#include <stdio.h>
#include <string.h>

#include "cli/cli.h"

#define HELP_AT 31    /* column of an option's words; on a narrow terminal they go below it */
#define HELP_BELOW 8  /* where they stand there */
#define NARROW 72     /* columns, below which that is done */
#define WIDEST 100    /* columns: longer lines are hard to read */
#define COMMAND_AT 13 /* column of a command's summary */

const cli_value_word cli_value_words[] = {
    {"P",
     "P is MACHINE:PORT, a machine, the id of a switch or sender, or an END such as \"1/8-27 NPT male\" or "
     "\"-4 flare37 female swivel\""},
    {"Q", "Q is a number with its unit: \"4 mm\", \"6 bar\", \"120 C\", \"2 L/min\", \"20 deg\""},
    {"T", "T is a temperature with its unit: \"100 C\", \"212 F\""},
    {NULL, NULL},
};

static size_t help_width(void)
{
    size_t width = cli_terminal_width();
    return width < WIDEST ? width : WIDEST;
}

/* Prints words from `column` on, broken at blanks; further lines begin at `indent`. All our help is ASCII. */
static void fold(size_t column, size_t indent, const char *words)
{
    size_t width = help_width();
    bool first = true;
    for (const char *at = words + strspn(words, " \n"); *at != '\0'; at += strspn(at, " \n")) {
        size_t length = strcspn(at, " \n");
        if (!first && column + 1 + length > width) {
            printf("\n%*s", (int)indent, "");
            column = indent;
            first = true;
        }
        printf("%s%.*s", first ? "" : " ", (int)length, at);
        column += length + !first;
        first = false;
        at += length;
    }
    putchar('\n');
}

static void print_option(const cli_option *option)
{
    char left[64], words[256];
    char letter[8] = "    ";
    if (option->letter != 0)
        snprintf(letter, sizeof letter, "-%c, ", option->letter);
    snprintf(left, sizeof left, "%s--%s%s%s", letter, option->name, option->value != NULL ? " " : "",
             option->value != NULL ? option->value : "");
    snprintf(words, sizeof words, "%s%s%s%s", option->help, option->choices != NULL ? ": " : "",
             option->choices != NULL ? option->choices : "", option->repeats ? " (may be repeated)" : "");
    if (help_width() < NARROW) {
        printf("  %s\n%*s", left, HELP_BELOW, "");
        fold(HELP_BELOW, HELP_BELOW, words);
    } else {
        printf("  %-*s", HELP_AT - 2, left);
        fold(HELP_AT, HELP_AT, words);
    }
}

static bool takes_value(const cli_command *command, const char *value)
{
    for (size_t index = 0; index < command->option_count; index++)
        if (command->options[index].value != NULL && strcmp(command->options[index].value, value) == 0)
            return true;
    return false;
}

static void print_options(const cli_command *command)
{
    const cli_option *common;
    if (command->option_count > 0)
        puts("\noptions:");
    for (size_t index = 0; index < command->option_count; index++)
        print_option(&command->options[index]);
    for (const cli_value_word *word = cli_value_words; word->value != NULL; word++)
        if (takes_value(command, word->value))
            fold(0, 2, word->says);
    puts(command->option_count > 0 ? "\ncommon options:" : "\noptions:");
    for (size_t index = 0; (common = cli_common_at(command, index)) != NULL; index++)
        print_option(common);
}

static void print_command_help(const cli_command *command)
{
    char words[256];
    printf("usage: oilway %s ", command->name);
    snprintf(words, sizeof words, "%s [OPTIONS]", command->arguments);
    fold(15 + strlen(command->name), 7, words);
    putchar('\n');
    fold(0, 0, command->summary);
    if (command->detail != NULL) {
        putchar('\n');
        fold(0, 0, command->detail);
    }
    print_options(command);
    if ((command->uses & CLI_USES_FORMAT) != 0) {
        fputs("\nformats: ", stdout);
        fold(9, 9, command->formats);
    }
    if (command->no != NULL)
        snprintf(words, sizeof words, "exit: 0 yes; 1 no: %s; 2 could not work", command->no);
    else
        snprintf(words, sizeof words, "exit: 0, or 2 could not work");
    fold(0, 6, words);
}

void cli_print_help(const cli_command *command)
{
    if (command != NULL) {
        print_command_help(command);
        return;
    }
    puts("usage: oilway COMMAND [OPTIONS]\n");
    fold(0, 0,
         "Finds the fewest-part stack of adapters from an engine's port to a turbo's, checks layouts, writes "
         "the "
         "bill of fittings, and works out feed, drain and coolant.");
    puts("\ncommands:");
    for (size_t index = 0; index < cli_command_count; index++) {
        printf("  %-*s", COMMAND_AT - 2, cli_commands[index]->name);
        fold(COMMAND_AT, COMMAND_AT, cli_commands[index]->summary);
    }
    putchar('\n');
    fold(0, 0, "`oilway COMMAND --help` tells more, `oilway manual` all; `oilway --version` the version.");
    fold(0, 0,
         "Hot oil under pressure burns and catches fire; coolant scalds; a starved bearing bursts. The "
         "makers' data, "
         "local codes and a qualified fitter come before anything printed here.");
}

void cli_print_usage_hint(const cli_command *command)
{
    if (command != NULL)
        fprintf(stderr, "usage: oilway %s %s%s[OPTIONS]; see oilway %s --help\n", command->name,
                command->arguments, command->arguments[0] != '\0' ? " " : "", command->name);
    else
        fputs("usage: oilway COMMAND [OPTIONS]; see oilway --help\n", stderr);
}
