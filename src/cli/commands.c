/* SPDX-License-Identifier: MIT */
/* The tables of commands and of the options that several of them take. */
#include "cli/commands.h"

#include <string.h>

const cli_common_option cli_common_options[] = {
    {{"catalog", 'c', "DIR", "catalogue folder; a later one overlays an earlier one", true, NULL},
     CLI_USES_CATALOG,
     "reads no catalogue"},
    {{"stock", 0, "FILE", "stock and prices laid over the catalogue", false, NULL},
     CLI_USES_STOCK,
     "asks for no stock and no price"},
    {{"skip-bad", 0, NULL, "leave out what cannot be read in the catalogue, and say what", false, NULL},
     CLI_USES_CATALOG,
     "reads no catalogue"},
    {{"format", 'f', "FORMAT", "how to write the answer", false, NULL},
     CLI_USES_FORMAT,
     "writes in one way only"},
    {{"json", 'j', NULL, "short for --format json", false, NULL}, CLI_USES_FORMAT, "writes no JSON"},
    {{"output", 'o', "FILE", "write the answer there, whole or not at all", false, NULL},
     CLI_USES_OUTPUT,
     "writes no answer that a file could hold"},
    {{"ascii", 0, NULL, "no characters beyond ASCII in a text", false, NULL},
     CLI_USES_ASCII,
     "writes ASCII or as the shell wants it"},
    {{"quiet", 'q', NULL, "no display of progress on the terminal", false, NULL},
     CLI_USES_QUIET,
     "takes no time, and displays no progress"},
    {{"help", 'h', NULL, "this help", false, NULL}, CLI_USES_HELP, ""},
};
const size_t cli_common_option_count = sizeof cli_common_options / sizeof cli_common_options[0];

static bool takes(const cli_command *command, const cli_common_option *common)
{
    return command == NULL || (command->uses & (unsigned)common->use) != 0;
}

const cli_option *cli_common_at(const cli_command *command, size_t index)
{
    for (size_t at = 0; at < cli_common_option_count; at++) {
        if (takes(command, &cli_common_options[at]) && index-- == 0)
            return &cli_common_options[at].option;
    }
    return NULL;
}

static bool is_called(const cli_option *option, const char *name, size_t length, char letter)
{
    if (letter != 0)
        return option->letter == letter;
    return strlen(option->name) == length && strncmp(option->name, name, length) == 0;
}

const cli_option *cli_find_option(const cli_command *command, const char *name, size_t length, char letter)
{
    const cli_option *common;
    for (size_t index = 0; index < command->option_count; index++) {
        if (is_called(&command->options[index], name, length, letter))
            return &command->options[index];
    }
    for (size_t index = 0; (common = cli_common_at(command, index)) != NULL; index++) {
        if (is_called(common, name, length, letter))
            return common;
    }
    return NULL;
}

const cli_common_option *cli_find_untaken(const cli_command *command, const char *name, size_t length,
                                          char letter)
{
    for (size_t index = 0; index < cli_common_option_count; index++) {
        const cli_common_option *common = &cli_common_options[index];
        if (!takes(command, common) && is_called(&common->option, name, length, letter))
            return common;
    }
    return NULL;
}

const cli_command *const cli_commands[] = {
    &cli_stack,   &cli_check,   &cli_bill,    &cli_swap,       &cli_plan,     &cli_rules,
    &cli_catalog, &cli_caliper, &cli_mates,   &cli_thread,     &cli_oil,      &cli_drain,
    &cli_feed,    &cli_siphon,  &cli_counter, &cli_completion, &cli_complete, &cli_manual,
};
const size_t cli_command_count = sizeof cli_commands / sizeof cli_commands[0];
