/* SPDX-License-Identifier: MIT */
/* The commands, and what several of them share. */
#ifndef OW_CLI_COMMANDS_H
#define OW_CLI_COMMANDS_H

#include "cli/cli.h"

extern const cli_command cli_stack;
extern const cli_command cli_check;
extern const cli_command cli_bill;
extern const cli_command cli_plan;
extern const cli_command cli_rules;
extern const cli_command cli_catalog;
extern const cli_command cli_complete;
extern const cli_command cli_completion;
extern const cli_command cli_manual;
extern const cli_command cli_caliper;
extern const cli_command cli_thread;
extern const cli_command cli_mates;
extern const cli_command cli_counter;
extern const cli_command cli_swap;
extern const cli_command cli_oil;
extern const cli_command cli_drain;
extern const cli_command cli_feed;
extern const cli_command cli_siphon;

/* files.c: the layouts in the bytes of the first argument's file; freed with ow_layouts_free. Faults are
 * printed. */
ow_status cli_read_layouts(cli_run *run, const cli_shop *shop, const char *bytes, size_t length,
                           ow_layout **layouts, size_t *count);
/* files.c: plans the job in the bytes of the first argument's file, and lets `use` print it. */
cli_exit cli_with_job(cli_run *run, const char *bytes, size_t length,
                      cli_exit (*use)(cli_run *run, const ow_plan *plan));

#endif
