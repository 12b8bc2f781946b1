/* SPDX-License-Identifier: MIT */
/* The tables of commands and of the options that all of them take. */
#include "cli/commands.h"

const cli_option cli_common_options[] = {
    {"catalog", 'c', "DIR", "catalogue folder; a later one overlays an earlier one", true, NULL},
    {"stock", 0, "FILE", "stock and prices laid over the catalogue", false, NULL},
    {"skip-bad", 0, NULL, "leave out what cannot be read in the catalogue, and say what", false, NULL},
    {"format", 'f', "FORMAT", "how to write the answer", false, NULL},
    {"json", 'j', NULL, "short for --format json", false, NULL},
    {"output", 'o', "FILE", "write the answer there, whole or not at all", false, NULL},
    {"ascii", 0, NULL, "no characters beyond ASCII in a text", false, NULL},
    {"quiet", 'q', NULL, "no display of progress on the terminal", false, NULL},
    {"help", 'h', NULL, "this help", false, NULL},
};
const size_t cli_common_option_count = sizeof cli_common_options / sizeof cli_common_options[0];

const cli_command *const cli_commands[] = {
    &cli_stack,   &cli_check,   &cli_bill,    &cli_swap,       &cli_plan,     &cli_rules,
    &cli_catalog, &cli_caliper, &cli_mates,   &cli_thread,     &cli_oil,      &cli_drain,
    &cli_feed,    &cli_siphon,  &cli_counter, &cli_completion, &cli_complete, &cli_manual,
};
const size_t cli_command_count = sizeof cli_commands / sizeof cli_commands[0];
