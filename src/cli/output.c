/* SPDX-License-Identifier: MIT */
/* Where words go: standard output checked at its close, files whole or not at all, faults to standard error.
 */
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include "cli/cli.h"

#define WIDTH_LEAST 40 /* columns: ow_style takes no less */

cli_exit cli_print(cli_run *run, ow_text *text, cli_exit exit)
{
    const char *path = cli_value(run, "output");
    cli_progress_erase(run);
    if (run->style.ascii && cli_is_format(run, "text"))
        ow_text_make_ascii(text);
    if (cli_is_format(run, "text") && path == NULL && isatty(STDOUT_FILENO))
        ow_text_fit(text, run->style.width);
    ow_status status = ow_text_status(text);
    if (status != OW_OK || cli_interrupted()) {
        exit = cli_fail(run, status);
    } else if (path != NULL) {
        status = ow_file_write(&run->context, path, ow_text_words(text), text->length);
        exit = status == OW_OK ? exit : cli_fail(run, status);
    } else if (fwrite(ow_text_words(text), 1, text->length, stdout) != text->length || fflush(stdout) != 0) {
        fputs("oilway: standard output cannot be written\n", stderr);
        exit = CLI_COULD_NOT;
    }
    ow_text_done(text);
    return exit;
}

cli_exit cli_fail(cli_run *run, ow_status status)
{
    cli_progress_erase(run);
    if (cli_interrupted())
        fprintf(stderr, "oilway %s: interrupted; nothing was written\n", run->command->name);
    else if (run->errors == 0)
        fprintf(stderr, "oilway %s: %s\n", run->command->name, ow_status_text(status));
    else if (status == OW_INPUT)
        cli_hint_at_shipped(run);
    return CLI_COULD_NOT;
}

void cli_print_aside(cli_run *run, ow_text *text)
{
    cli_progress_erase(run);
    if (run->style.ascii)
        ow_text_make_ascii(text);
    fputs(ow_text_words(text), stderr);
    ow_text_done(text);
}

void cli_remember_unknown(cli_run *run, const char *words, size_t length)
{
    if (run->unknown_count < CLI_UNKNOWN_MAX)
        snprintf(run->unknown[run->unknown_count++], CLI_UNKNOWN_SIZE, "%.*s", (int)length, words);
}

static void remember_marked(cli_run *run, const ow_diagnostic *diagnostic)
{
    const char *line = diagnostic->line_text;
    size_t start = diagnostic->column - 1, length = diagnostic->mark_width;
    if (line != NULL && diagnostic->column > 0 && start + length <= diagnostic->line_length)
        cli_remember_unknown(run, line + start, length);
}

void cli_report(void *user, const ow_diagnostic *diagnostic)
{
    cli_run *run = user;
    cli_progress_erase(run);
    ow_context plain = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&plain);
    ow_text_diagnostic(&text, diagnostic);
    if (run->style.ascii)
        ow_text_make_ascii(&text);
    if (diagnostic->line_text == NULL && isatty(STDERR_FILENO)) /* a mark must stay below what it marks */
        ow_text_fit(&text, run->style.width);
    fputs(ow_text_words(&text), stderr);
    if (diagnostic->severity == OW_ERROR) {
        run->errors++;
        remember_marked(run, diagnostic);
    }
    ow_text_done(&text);
}

void cli_complain(const char *option, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    fprintf(stderr, "oilway: --%s: ", option);
    vfprintf(stderr, format, arguments);
    fputc('\n', stderr);
    va_end(arguments);
}

/* Whether the locale's character set is UTF-8, by the variables that POSIX names, the first set one. */
static bool locale_is_utf8(void)
{
    const char *names[] = {"LC_ALL", "LC_CTYPE", "LANG"};
    for (size_t index = 0; index < 3; index++) {
        const char *value = getenv(names[index]);
        if (value != NULL && value[0] != '\0')
            return strstr(value, "UTF-8") != NULL || strstr(value, "utf8") != NULL ||
                   strstr(value, "UTF8") != NULL || strstr(value, "utf-8") != NULL;
    }
    return false;
}

size_t cli_terminal_width(void)
{
    const ow_style usual = OW_STYLE_INIT;
    struct winsize window;
    if (!isatty(STDOUT_FILENO) || ioctl(STDOUT_FILENO, TIOCGWINSZ, &window) != 0 || window.ws_col == 0)
        return usual.width;
    return window.ws_col < WIDTH_LEAST ? WIDTH_LEAST : window.ws_col;
}

void cli_find_style(cli_run *run)
{
    const char *no_colour = getenv("NO_COLOR");
    const char *terminal = getenv("TERM");
    run->style = (ow_style)OW_STYLE_INIT;
    run->style.colour = isatty(STDOUT_FILENO) && (no_colour == NULL || no_colour[0] == '\0') &&
                        (terminal == NULL || strcmp(terminal, "dumb") != 0) &&
                        cli_value(run, "output") == NULL;
    run->style.ascii = cli_has(run, "ascii") || !locale_is_utf8();
    run->style.cards = cli_has(run, "cards");
    run->style.width = cli_terminal_width();
}
