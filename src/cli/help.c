/* SPDX-License-Identifier: MIT */
/* Help, printed from the tables. */
#include <stdio.h>
#include <string.h>

#include "cli/cli.h"

static void print_option(const cli_option *option)
{
    char left[64];
    char letter[8] = "    ";
    if (option->letter != 0)
        snprintf(letter, sizeof letter, "-%c, ", option->letter);
    snprintf(left, sizeof left, "%s--%s%s%s", letter, option->name, option->value != NULL ? " " : "",
             option->value != NULL ? option->value : "");
    printf("  %-28s %s%s%s%s\n", left, option->help, option->choices != NULL ? ": " : "",
           option->choices != NULL ? option->choices : "", option->repeats ? " (may be repeated)" : "");
}

static void print_command_help(const cli_command *command)
{
    const cli_option *common;
    printf("usage: oilway %s %s%s[OPTIONS]\n\n%s\n", command->name, command->arguments,
           command->arguments[0] != '\0' ? " " : "", command->summary);
    if (command->detail != NULL)
        printf("\n%s\n", command->detail);
    if (command->option_count > 0) {
        puts("\noptions:");
        for (size_t index = 0; index < command->option_count; index++)
            print_option(&command->options[index]);
    }
    puts("\ncommon options:");
    for (size_t index = 0; (common = cli_common_at(command, index)) != NULL; index++)
        print_option(common);
    if ((command->uses & CLI_USES_FORMAT) != 0)
        printf("\nformats: %s", command->formats);
    puts("\nexit: 0 yes, 1 no, 2 could not work");
}

void cli_print_help(const cli_command *command)
{
    if (command != NULL) {
        print_command_help(command);
        return;
    }
    puts("usage: oilway COMMAND [OPTIONS]\n\n"
         "Finds the fewest-part stack of adapters from an engine's port to a turbo's, checks layouts,\n"
         "writes the bill of fittings, and works out feed, drain and coolant.\n\ncommands:");
    for (size_t index = 0; index < cli_command_count; index++)
        printf("  %-9s %s\n", cli_commands[index]->name, cli_commands[index]->summary);
    puts(
        "\n`oilway COMMAND --help` tells more; `oilway --version` the version.\n"
        "Hot oil under pressure burns and catches fire; coolant scalds. The makers' data, local codes and a\n"
        "qualified fitter come before anything printed here.");
}

void cli_print_usage_hint(const cli_command *command)
{
    if (command != NULL)
        fprintf(stderr, "usage: oilway %s %s%s[OPTIONS]; see oilway %s --help\n", command->name,
                command->arguments, command->arguments[0] != 0 ? " " : "", command->name);
    else
        fputs("usage: oilway COMMAND [OPTIONS]; see oilway --help\n", stderr);
}
