/* SPDX-License-Identifier: MIT */
/* The command line against the tables. An argument that begins with '-' and a digit is an end (-4 flare37
 * male), never an option. */
#include <stdio.h>
#include <string.h>

#include "cli/cli.h"

static bool keep(cli_run *run, const cli_option *option, const char *value)
{
    if (run->given_count == CLI_GIVEN_MAX) {
        cli_complain(option->name, "too many options: %d at most", CLI_GIVEN_MAX);
        return false;
    }
    if (!option->repeats && cli_has(run, option->name)) {
        cli_complain(option->name, "given twice");
        return false;
    }
    run->given[run->given_count++] = (cli_given){option, value};
    return true;
}

#define OPTIONS_MAX 64

/* The option that is spelt nearly so, else the one that begins alike. */
static const char *nearest_option(const cli_run *run, const char *name, size_t length)
{
    const char *names[OPTIONS_MAX] = {NULL};
    size_t count = 0;
    for (size_t index = 0; index < run->command->option_count && count < OPTIONS_MAX; index++)
        names[count++] = run->command->options[index].name;
    const cli_option *common;
    for (size_t index = 0; (common = cli_common_at(run->command, index)) != NULL && count < OPTIONS_MAX;
         index++)
        names[count++] = common->name;
    const char *nearest = ow_words_nearest(name, length, names, count);
    for (size_t index = 0; index < count && nearest == NULL && length >= 3; index++) {
        if (strncmp(names[index], name, 3) == 0)
            nearest = names[index];
    }
    return nearest;
}

/* An option that is known elsewhere: refused, so that nobody believes that it did something. */
static bool untaken(const cli_run *run, const cli_common_option *common)
{
    fprintf(stderr, "oilway %s: --%s is not for this command, which %s; leave it out\n", run->command->name,
            common->option.name, common->otherwise);
    return false;
}

static bool unknown(const cli_run *run, const char *word, size_t length)
{
    const cli_common_option *common = cli_find_untaken(run->command, word, length, 0);
    if (common != NULL)
        return untaken(run, common);
    const char *nearest = nearest_option(run, word, length);
    fprintf(stderr, "oilway %s: there is no option --%.*s", run->command->name, (int)length, word);
    if (nearest != NULL)
        fprintf(stderr, "; did you mean --%s?", nearest);
    fputc('\n', stderr);
    return false;
}

/* One word that begins with "--"; *next is the word behind it, *used set if it was its value. */
static bool read_long(cli_run *run, const char *word, const char *next, bool *used)
{
    const char *name = word + 2;
    const char *equals = strchr(name, '=');
    size_t length = equals != NULL ? (size_t)(equals - name) : strlen(name);
    const cli_option *option = cli_find_option(run->command, name, length, 0);
    if (option == NULL)
        return unknown(run, name, length);
    if (option->value == NULL) {
        if (equals == NULL)
            return keep(run, option, NULL);
        cli_complain(option->name, "takes no value");
        return false;
    }
    const char *value = equals != NULL ? equals + 1 : next;
    if (value == NULL) {
        cli_complain(option->name, "needs %s behind it", option->value);
        return false;
    }
    *used = equals == NULL;
    return keep(run, option, value);
}

static bool read_short(cli_run *run, const char *word, const char *next, bool *used)
{
    for (const char *letter = word + 1; *letter != '\0'; letter++) {
        const cli_option *option = cli_find_option(run->command, "", 0, *letter);
        const cli_common_option *common = cli_find_untaken(run->command, "", 0, *letter);
        if (option == NULL && common != NULL)
            return untaken(run, common);
        if (option == NULL) {
            fprintf(stderr, "oilway %s: there is no option -%c\n", run->command->name, *letter);
            return false;
        }
        if (option->value == NULL) {
            if (!keep(run, option, NULL))
                return false;
            continue;
        }
        const char *value = letter[1] != '\0' ? letter + 1 : next;
        if (value == NULL) {
            cli_complain(option->name, "needs %s behind it", option->value);
            return false;
        }
        *used = letter[1] == '\0';
        return keep(run, option, value);
    }
    return true;
}

static bool is_option(const char *word)
{
    return word[0] == '-' && word[1] != '\0' && (word[1] < '0' || word[1] > '9');
}

static bool read_words(cli_run *run, int count, char **words)
{
    bool only_arguments = false;
    for (int index = 0; index < count; index++) {
        const char *word = words[index];
        const char *next = index + 1 < count ? words[index + 1] : NULL;
        bool used = false;
        bool good = true;
        if (only_arguments || !is_option(word))
            run->arguments[run->argument_count++] = word;
        else if (strcmp(word, "--") == 0)
            only_arguments = true;
        else if (word[1] == '-')
            good = read_long(run, word, next, &used);
        else
            good = read_short(run, word, next, &used);
        if (!good)
            return false;
        index += used;
    }
    return true;
}

/* Whether `word` is one of the blank-separated words of `list`. */
static bool is_among(const char *list, const char *word)
{
    size_t length = strlen(word);
    for (const char *at = list; *at != '\0';) {
        size_t item = strcspn(at, " ");
        if (item == length && strncmp(at, word, length) == 0)
            return true;
        at += item;
        at += strspn(at, " ");
    }
    return false;
}

static bool read_format(cli_run *run)
{
    const char *format = cli_value(run, "format");
    if (cli_has(run, "json") && format != NULL && strcmp(format, "json") != 0) {
        cli_complain("json", "goes with --format json only");
        return false;
    }
    run->format = cli_has(run, "json") ? "json" : format != NULL ? format : "text";
    if (is_among(run->command->formats, run->format))
        return true;
    cli_complain("format", "%s: this command writes %s", run->format, run->command->formats);
    return false;
}

bool cli_read_arguments(cli_run *run, int count, char **words)
{
    if (!read_words(run, count, words))
        return false;
    if (cli_has(run, "help"))
        return true;
    if (run->argument_count < run->command->least || run->argument_count > run->command->most) {
        fprintf(stderr, "oilway %s: %s: expected %s\n", run->command->name,
                run->argument_count < run->command->least ? "something to work on is missing"
                                                          : "too many arguments",
                run->command->arguments[0] != '\0' ? run->command->arguments : "none");
        return false;
    }
    return read_format(run);
}

bool cli_has(const cli_run *run, const char *option)
{
    return cli_values(run, option, NULL, 0) > 0;
}

const char *cli_value(const cli_run *run, const char *option)
{
    for (size_t index = run->given_count; index-- > 0;) {
        if (strcmp(run->given[index].option->name, option) == 0)
            return run->given[index].value;
    }
    return NULL;
}

size_t cli_values(const cli_run *run, const char *option, const char **values, size_t most)
{
    size_t count = 0;
    for (size_t index = 0; index < run->given_count; index++) {
        if (strcmp(run->given[index].option->name, option) != 0)
            continue;
        if (count < most)
            values[count] = run->given[index].value;
        count++;
    }
    return count;
}

bool cli_is_format(const cli_run *run, const char *format)
{
    return strcmp(run->format, format) == 0;
}

bool cli_only_in(const cli_run *run, const char *option, const char *formats)
{
    if (!cli_has(run, option) || is_among(formats, run->format))
        return true;
    cli_complain(option, "says nothing in %s; it goes with %s", run->format, formats);
    return false;
}
