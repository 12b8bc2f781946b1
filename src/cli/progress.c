/* SPDX-License-Identifier: MIT */
/*
 * What a person sees who waits: after a second one line on standard error, if that is a terminal, written
 * over itself and erased before anything else is printed. And what Ctrl-C does: the library is asked to stop,
 * so that nothing is left half done.
 */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <time.h>
#include <unistd.h>

#include "cli/cli.h"

#define FIRST_SHOWN_S 1.0
#define BETWEEN_S 0.1

/* The one thing a signal may touch. */
static volatile sig_atomic_t caught;

static void take_signal(int number)
{
    caught = number;
}

bool cli_interrupted(void)
{
    return caught != 0;
}

void cli_die_if_interrupted(void)
{
    int number = caught;
    if (number == 0)
        return;
    signal(number, SIG_DFL);
    raise(number);
}

static double now_s(void)
{
    struct timespec now = {0, 0};
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

/* A line may not reach the last column, where terminals differ about what comes next. */
static size_t columns(void)
{
    struct winsize window;
    bool known = ioctl(STDERR_FILENO, TIOCGWINSZ, &window) == 0 && window.ws_col > 1;
    size_t most = known ? (size_t)window.ws_col - 1 : 79;
    return most < CLI_PROGRESS_SIZE - 1 ? most : CLI_PROGRESS_SIZE - 1;
}

static void show(cli_progress *shown, const ow_progress *progress)
{
    char line[CLI_PROGRESS_SIZE];
    size_t most = columns();
    if (progress->counted == NULL)
        snprintf(line, most + 1, "%s ...", progress->doing);
    else if (progress->all == 0)
        snprintf(line, most + 1, "%s: %zu %s", progress->doing, progress->done, progress->counted);
    else
        snprintf(line, most + 1, "%s: %zu of %zu %s", progress->doing, progress->done, progress->all,
                 progress->counted);
    size_t length = strlen(line);
    int rest = length < shown->width ? (int)(shown->width - length) : 0;
    fprintf(stderr, "\r%s%*s", line, rest, "");
    fflush(stderr);
    shown->width = length;
}

/* For ow_context.progress. */
static bool progressed(void *user, const ow_progress *progress)
{
    cli_progress *shown = user;
    if (cli_interrupted())
        return false;
    double now = shown->wanted ? now_s() : 0.0;
    if (shown->wanted && now >= shown->next_s) {
        show(shown, progress);
        shown->next_s = now + BETWEEN_S;
    }
    return true;
}

void cli_progress_begin(cli_run *run)
{
    const char *terminal = getenv("TERM");
    struct sigaction action = {.sa_handler = take_signal, .sa_flags = SA_RESETHAND};
    run->progress.wanted =
        isatty(STDERR_FILENO) && !cli_has(run, "quiet") && terminal != NULL && strcmp(terminal, "dumb") != 0;
    run->progress.next_s = now_s() + FIRST_SHOWN_S;
    run->context.progress = progressed;
    run->context.progress_user = &run->progress;
    sigemptyset(&action.sa_mask);
    /* What was asked to be ignored, as in the background of a script, stays ignored. */
    const int numbers[] = {SIGINT, SIGTERM, SIGHUP};
    for (size_t index = 0; index < sizeof numbers / sizeof numbers[0]; index++) {
        struct sigaction before;
        if (sigaction(numbers[index], NULL, &before) == 0 && before.sa_handler != SIG_IGN)
            sigaction(numbers[index], &action, NULL);
    }
}

void cli_progress_erase(cli_run *run)
{
    if (run->progress.width == 0)
        return;
    fprintf(stderr, "\r%*s\r", (int)run->progress.width, "");
    fflush(stderr);
    run->progress.width = 0;
}
