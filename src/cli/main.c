/* SPDX-License-Identifier: MIT */
/* oilway COMMAND …: finds the command in the table and runs it. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"

#ifndef OW_VERSION
#error "OW_VERSION is set by the Makefile"
#endif

static const cli_command *find_command(const char *name)
{
    for (size_t index = 0; index < cli_command_count; index++) {
        if (strcmp(cli_commands[index]->name, name) == 0)
            return cli_commands[index];
    }
    return NULL;
}

static cli_exit complain_of_command(const char *word)
{
    const char *names[CLI_COMMANDS_MAX] = {NULL};
    for (size_t index = 0; index < cli_command_count; index++)
        names[index] = cli_commands[index]->name;
    const char *nearest = ow_words_nearest(word, strlen(word), names, cli_command_count);
    fprintf(stderr, "oilway: there is no command \"%s\"%s%s%s\n", word,
            nearest != NULL ? "; did you mean " : "", nearest != NULL ? nearest : "",
            nearest != NULL ? "?" : "");
    cli_print_usage_hint(NULL);
    return CLI_COULD_NOT;
}

static cli_exit run_command(const cli_command *command, int count, char **words)
{
    cli_run run = {.context = OW_CONTEXT_INIT, .command = command};
    run.context.report = cli_report;
    run.context.report_user = &run;
    run.arguments = calloc((size_t)count + 1, sizeof *run.arguments);
    if (run.arguments == NULL)
        return cli_fail(&run, OW_MEMORY);
    cli_exit exit = CLI_YES;
    if (!cli_read_arguments(&run, count, words)) {
        cli_print_usage_hint(command);
        exit = CLI_COULD_NOT;
    } else if (cli_has(&run, "help")) {
        cli_print_help(command);
    } else {
        cli_find_style(&run);
        if (command != &cli_counter)
            cli_progress_begin(&run);
        exit = command->run(&run);
        cli_progress_erase(&run);
    }
    free(run.arguments);
    cli_die_if_interrupted();
    return exit;
}

int main(int count, char **words)
{
    if (count < 2) {
        cli_print_usage_hint(NULL);
        return CLI_COULD_NOT;
    }
    if (strcmp(words[1], "--help") == 0 || strcmp(words[1], "-h") == 0 || strcmp(words[1], "help") == 0) {
        const cli_command *asked = count > 2 ? find_command(words[2]) : NULL;
        if (count > 2 && asked == NULL)
            return complain_of_command(words[2]);
        cli_print_help(asked);
        return fflush(stdout) == 0 ? CLI_YES : CLI_COULD_NOT;
    }
    if (strcmp(words[1], "--version") == 0 || strcmp(words[1], "version") == 0) {
        puts("oilway " OW_VERSION);
        return fflush(stdout) == 0 ? CLI_YES : CLI_COULD_NOT;
    }
    const cli_command *command = find_command(words[1]);
    if (command == NULL)
        return complain_of_command(words[1]);
    return run_command(command, count - 2, words + 2);
}
