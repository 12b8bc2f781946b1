/* SPDX-License-Identifier: MIT */
/*
 * oilway complete WORD...: what may stand in place of the last word, for the scripts of shells.c. Candidates
 * come from the same tables as parsing and help, and from the catalogue in use.
 */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"

/* What is being completed: the last word, or what stands in it behind `--name=`; and where candidates go. */
typedef struct completing {
    const char *before; /* the last word up to its "=", which stays in front of each candidate */
    size_t before_length;
    const char *start;
    size_t length;
    size_t count; /* of candidates so far */
    ow_text text;
} completing;

static void offer(completing *now, const char *words)
{
    if (strncmp(words, now->start, now->length) != 0)
        return;
    ow_text_format(&now->text, "%.*s%s\n", (int)now->before_length, now->before, words);
    now->count++;
}

static void offer_each(completing *now, const char *list)
{
    char word[64];
    for (const char *at = list; *at != '\0';) {
        size_t length = strcspn(at, " ");
        snprintf(word, sizeof word, "%.*s", (int)length, at);
        offer(now, word);
        at += length;
        at += strspn(at, " ");
    }
}

static const cli_command *command_named(const char *name)
{
    for (size_t index = 0; index < cli_command_count; index++) {
        if (strcmp(cli_commands[index]->name, name) == 0)
            return cli_commands[index];
    }
    return NULL;
}

/* The option that `length` characters of `word` are: --name, or -l alone. */
static const cli_option *option_named(const cli_command *command, const char *word, size_t length)
{
    bool is_long = length > 2 && strncmp(word, "--", 2) == 0;
    bool is_short = length == 2 && word[0] == '-' && word[1] != '-';
    if (!is_long && !is_short)
        return NULL;
    const char *name = word + (is_long ? 2 : 0);
    size_t name_length = is_long ? length - 2 : 0;
    char letter = is_short ? word[1] : 0;
    return cli_find_option(command, name, name_length, letter);
}

static void offer_option(completing *now, const cli_option *option)
{
    char word[64];
    snprintf(word, sizeof word, "--%s", option->name);
    offer(now, word);
}

static void offer_options(completing *now, const cli_command *command)
{
    const cli_option *common;
    for (size_t index = 0; index < command->option_count; index++)
        offer_option(now, &command->options[index]);
    for (size_t index = 0; (common = cli_common_at(command, index)) != NULL; index++)
        offer_option(now, common);
}

/* Ends that the catalogue has not, where nothing that it has begins so. */
static void offer_typed(cli_run *run, completing *now, const cli_shop *shop)
{
    ow_typed typed;
    if (ow_typed_read(&run->context, shop->catalog, shop->net, now->start, OW_WANTED_END, &typed) != OW_OK)
        return;
    for (size_t index = 0; index < typed.offer_count; index++)
        offer(now, typed.offers[index].words);
    ow_typed_done(&typed);
}

/* Machines and their ports, switches and senders, and every end in the catalogue. */
static void offer_ports(cli_run *run, completing *now)
{
    char word[160];
    cli_shop shop;
    if (cli_open_shop(run, true, &shop) != OW_OK)
        return;
    for (size_t index = 0; index < ow_catalog_machine_count(shop.catalog); index++) {
        const ow_machine *machine = ow_catalog_machine_at(shop.catalog, index);
        offer(now, machine->id);
        for (size_t port = 0; port < machine->port_count; port++) {
            snprintf(word, sizeof word, "%s:%s", machine->id, machine->ports[port].name);
            offer(now, word);
        }
    }
    for (size_t index = 0; index < ow_catalog_fixture_count(shop.catalog); index++)
        offer(now, ow_catalog_fixture_at(shop.catalog, index)->id);
    for (size_t index = 0; index < ow_net_kind_count(shop.net); index++) {
        char end[OW_END_TEXT_SIZE];
        offer(now, ow_end_name(ow_net_kind_at(shop.net, index), end));
    }
    if (now->count == 0 && now->length > 0)
        offer_typed(run, now, &shop);
    cli_close_shop(&shop);
}

static void offer_ids(cli_run *run, completing *now)
{
    cli_shop shop;
    if (cli_open_shop(run, false, &shop) != OW_OK)
        return;
    for (size_t index = 0; index < ow_catalog_part_count(shop.catalog); index++)
        offer(now, ow_catalog_part_at(shop.catalog, index)->id);
    for (size_t index = 0; index < ow_catalog_machine_count(shop.catalog); index++)
        offer(now, ow_catalog_machine_at(shop.catalog, index)->id);
    cli_close_shop(&shop);
}

static void offer_place(cli_run *run, completing *now, const ow_layout *layout, size_t node)
{
    ow_text name = ow_text_new(&run->context);
    ow_layout_node_name(&name, layout, node);
    if (layout->nodes[node].part != NULL)
        offer(now, ow_text_words(&name));
    ow_text_done(&name);
}

/* The parts of the layouts in a file, as `swap` calls them. */
static void offer_places(cli_run *run, completing *now, const char *file)
{
    cli_shop shop;
    char *bytes = NULL;
    size_t length = 0, count = 0;
    ow_layout *layouts = NULL;
    if (cli_open_shop(run, false, &shop) != OW_OK)
        return;
    if (ow_file_read(&run->context, file, &bytes, &length) == OW_OK &&
        ow_layouts_read(&run->context, shop.catalog, file, bytes, length, &layouts, &count) == OW_OK) {
        for (size_t index = 0; index < count; index++)
            for (size_t node = 0; node < layouts[index].node_count; node++)
                offer_place(run, now, &layouts[index], node);
        ow_layouts_free(&run->context, layouts, count);
    }
    ow_release(&run->context, bytes);
    cli_close_shop(&shop);
}

/* What `value` stands for in the tables: P a port, ID an id, FORMAT a format; words by the option's choices.
 */
static void offer_value(cli_run *run, completing *now, const cli_command *command, const cli_option *option)
{
    if (option->choices != NULL)
        offer_each(now, option->choices);
    else if (strcmp(option->value, "FORMAT") == 0)
        offer_each(now, command->formats);
    else if (strcmp(option->value, "P") == 0)
        offer_ports(run, now);
    else if (strcmp(option->value, "ID") == 0)
        offer_ids(run, now);
}

/* `words` are the arguments before the one that is completed. */
static void offer_arguments(cli_run *run, completing *now, const cli_command *command,
                            const char *const *words, size_t count)
{
    const char *name = command->name;
    if (strcmp(name, "catalog") == 0 && count == 0)
        offer_each(now, "list show check");
    else if (strcmp(name, "catalog") == 0 && count == 1 && strcmp(words[0], "show") == 0)
        offer_ids(run, now);
    else if (strcmp(name, "swap") == 0 && count == 1)
        offer_places(run, now, words[0]);
    else if (strcmp(name, "mates") == 0 && count < 2)
        offer_ports(run, now);
    else if (strcmp(name, "completion") == 0 && count == 0)
        offer_each(now, "bash zsh fish");
    for (size_t index = 0; strcmp(name, "rules") == 0 && count == 0 && index < ow_rule_count(); index++)
        offer(now, ow_rule_at(index)->id);
}

static bool is_option(const char *word)
{
    return word[0] == '-' && (word[1] < '0' || word[1] > '9');
}

/*
 * The words between the command and the one that is completed: --catalog is kept in *run, arguments go to
 * `arguments`. Returns the option whose value the last word is, NULL if none.
 */
static const cli_option *read_before(cli_run *run, const cli_command *command, const char **arguments,
                                     size_t *count)
{
    const cli_option *open = NULL;
    for (size_t index = 1; index + 1 < run->argument_count; index++) {
        const char *word = run->arguments[index];
        const char *equals = strchr(word, '=');
        const char *value = open != NULL ? word : equals != NULL ? equals + 1 : NULL;
        const cli_option *option = open;
        if (open == NULL && !is_option(word)) {
            arguments[(*count)++] = word;
            continue;
        }
        if (open == NULL)
            option = option_named(command, word, equals != NULL ? (size_t)(equals - word) : strlen(word));
        open = option != NULL && option->value != NULL && value == NULL ? option : NULL;
        bool names_shop = option != NULL && value != NULL && strcmp(option->name, "catalog") == 0;
        if (names_shop && run->given_count < CLI_GIVEN_MAX)
            run->given[run->given_count++] = (cli_given){option, value};
    }
    return open;
}

static void offer_all(cli_run *run, completing *now, const cli_command *command)
{
    const char *arguments[CLI_GIVEN_MAX];
    size_t count = 0;
    const cli_option *option = read_before(run, command, arguments, &count);
    const char *equals = option == NULL && is_option(now->start) ? strchr(now->start, '=') : NULL;
    if (equals != NULL) {
        option = option_named(command, now->start, (size_t)(equals - now->start));
        now->before = now->start;
        now->before_length = (size_t)(equals - now->start) + 1;
        now->start = equals + 1;
        now->length -= now->before_length;
    }
    if (option != NULL && option->value != NULL) {
        offer_value(run, now, command, option);
    } else if (equals == NULL && is_option(now->start)) {
        offer_options(now, command);
    } else if (equals == NULL) {
        offer_arguments(run, now, command, arguments, count);
    }
}

static cli_exit run_complete(cli_run *run)
{
    completing now = {"", 0, "", 0, 0, ow_text_new(&run->context)};
    size_t count = run->argument_count;
    run->context.report = NULL; /* a broken catalogue must not write into the command line */
    if (count > 0) {
        now.start = run->arguments[count - 1];
        now.length = strlen(now.start);
    }
    const cli_command *command = count > 1 ? command_named(run->arguments[0]) : NULL;
    if (command != NULL)
        offer_all(run, &now, command);
    for (size_t index = 0; index < cli_command_count && count <= 1; index++)
        offer(&now, cli_commands[index]->name);
    return cli_print(run, &now.text, CLI_YES);
}

const cli_command cli_complete = {
    .name = "complete",
    .arguments = "WORD...",
    .summary = "what may stand in place of the last word (for shells)",
    .most = CLI_GIVEN_MAX,
    .uses = CLI_USES_CATALOG | CLI_USES_HELP,
    .formats = "text",
    .run = run_complete,
};
