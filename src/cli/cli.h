/* SPDX-License-Identifier: MIT */
/* The command: tables of commands and options, from which parsing, help, completion and the man page come. */
#ifndef OW_CLI_H
#define OW_CLI_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/oilway.h"

typedef enum cli_exit { CLI_YES = 0, CLI_NO = 1, CLI_COULD_NOT = 2 } cli_exit;

/* An option, long and perhaps short; `value` names its argument, NULL for a flag. */
typedef struct cli_option {
    const char *name;  /* "bore" */
    char letter;       /* 'b', or 0 */
    const char *value; /* "Q" */
    const char *help;
    bool repeats;
    const char *choices; /* the words that it takes, blank separated, or NULL */
} cli_option;

/* What of the options that several commands share a command can make use of. */
typedef enum cli_use {
    CLI_USES_CATALOG = 1, /* --catalog, --skip-bad */
    CLI_USES_STOCK = 2,   /* --stock */
    CLI_USES_FORMAT = 4,  /* --format, --json */
    CLI_USES_OUTPUT = 8,  /* --output */
    CLI_USES_ASCII = 16,  /* --ascii */
    CLI_USES_QUIET = 32,  /* --quiet: it may take long */
    CLI_USES_HELP = 64
} cli_use;
#define CLI_USES_PRINT (CLI_USES_FORMAT | CLI_USES_OUTPUT | CLI_USES_ASCII | CLI_USES_HELP)
#define CLI_USES_SHOP (CLI_USES_CATALOG | CLI_USES_QUIET)

typedef struct cli_common_option {
    cli_option option;
    cli_use use;
    const char *otherwise; /* of a command that does not: "oilway X …" */
} cli_common_option;

typedef struct cli_run cli_run;

typedef struct cli_command {
    const char *name;
    const char *arguments; /* as usage shows them */
    const char *summary;
    const char *detail; /* further paragraphs of its help, or NULL */
    const cli_option *options;
    size_t option_count;
    size_t least, most;  /* positional arguments */
    unsigned uses;       /* of cli_use */
    const char *no;      /* what exit status 1 says; NULL: it is never returned */
    const char *formats; /* what --format takes here, blank separated */
    cli_exit (*run)(cli_run *run);
} cli_command;

typedef struct cli_given {
    const cli_option *option;
    const char *value; /* NULL for a flag */
} cli_given;

#define CLI_GIVEN_MAX 256
#define CLI_PROGRESS_SIZE 160
#define CLI_UNKNOWN_MAX 8
#define CLI_UNKNOWN_SIZE 64

/* The line that tells a person who waits what is being done. */
typedef struct cli_progress {
    bool wanted;
    double next_s; /* when it may be written (again) */
    size_t width;  /* of what stands there now */
} cli_progress;

/* One call of the command. */
struct cli_run {
    ow_context context;
    const cli_command *command;
    cli_given given[CLI_GIVEN_MAX];
    size_t given_count;
    const char **arguments; /* positional */
    size_t argument_count;
    const char *format;
    ow_style style;
    cli_progress progress;
    char unknown[CLI_UNKNOWN_MAX]
                [CLI_UNKNOWN_SIZE]; /* marked words of errors: ids, perhaps, of another catalogue */
    size_t unknown_count;
    size_t errors; /* diagnostics of severity error that were printed */
};

extern const cli_command *const cli_commands[];
extern const size_t cli_command_count;
#define CLI_COMMANDS_MAX 32
extern const cli_common_option cli_common_options[];
extern const size_t cli_common_option_count;
/* The common options that a command takes, one after another; NULL behind the last. Of no command: all. */
const cli_option *cli_common_at(const cli_command *command, size_t index);
/* The option of either table of that name, or letter if it is not 0; NULL if the command takes none such. */
const cli_option *cli_find_option(const cli_command *command, const char *name, size_t length, char letter);
/* The same among the common options that it does not take. */
const cli_common_option *cli_find_untaken(const cli_command *command, const char *name, size_t length,
                                          char letter);

/* args.c: reads the command line into *run; false after printing what is wrong. */
bool cli_read_arguments(cli_run *run, int count, char **words);
bool cli_has(const cli_run *run, const char *option);
const char *cli_value(const cli_run *run, const char *option); /* the last given, or NULL */
/* Up to `most` values in order; returns how many were given in all. */
size_t cli_values(const cli_run *run, const char *option, const char **values, size_t most);
bool cli_is_format(const cli_run *run, const char *format);
/* Whether the option is not given, or the format is among the blank-separated ones; complains otherwise. */
bool cli_only_in(const cli_run *run, const char *option, const char *formats);

/* help.c: the letters that stand for values, with what they are; the last row is NULL. */
typedef struct cli_value_word {
    const char *value, *says;
} cli_value_word;
extern const cli_value_word cli_value_words[];
void cli_print_help(const cli_command *command); /* NULL: of the whole */
void cli_print_usage_hint(const cli_command *command);

/* output.c: prints to standard output (or --output FILE, whole or not at all) and frees the text. */
cli_exit cli_print(cli_run *run, ow_text *text, cli_exit exit);
/* Prints a text for a person beside the output, on standard error, and frees it. */
void cli_print_aside(cli_run *run, ow_text *text);
/* Says what a status means if nothing was said yet; CLI_COULD_NOT. */
cli_exit cli_fail(cli_run *run, ow_status status);
void cli_report(void *user, const ow_diagnostic *diagnostic);
void cli_find_style(cli_run *run);
/* Columns of the terminal that standard output is, 40 at the least; 100 if it is none. */
size_t cli_terminal_width(void);
void cli_complain(const char *option, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* progress.c: begins to listen to the library, and to Ctrl-C. */
void cli_progress_begin(cli_run *run);
/* Takes the line away: before anything else is printed, and when what took long is done. */
void cli_progress_erase(cli_run *run);
bool cli_interrupted(void);
/* Dies of the signal that came, so that whoever started the command knows. */
void cli_die_if_interrupted(void);

/* shop.c: the catalogue and net that the options name. */
typedef struct cli_shop {
    ow_catalog *catalog;
    ow_net *net;
} cli_shop;
ow_status cli_open_shop(cli_run *run, bool with_net, cli_shop *shop);
/* The same with a stock page; NULL = none. */
ow_status cli_open_shop_with(cli_run *run, const char *stock, bool with_net, cli_shop *shop);
void cli_close_shop(cli_shop *shop);
/* Where a thing was not known that the catalogue which ships has, and that was not laid under the others:
 * says how to have both. */
void cli_hint_at_shipped(cli_run *run);
/* Keeps words that were not known, for that hint. */
void cli_remember_unknown(cli_run *run, const char *words, size_t length);
#define CLI_FOLDERS_MAX 32
#define CLI_PATH_SIZE 4096
/* The folders of the catalogue, CLI_FOLDERS_MAX at most, of which one may be written into `path`; 0 after
 * saying that there is none. */
size_t cli_find_folders(cli_run *run, const char **folders, char *path, size_t size);

#endif
