/* SPDX-License-Identifier: MIT */
/*
 * Completion: `oilway completion SHELL` prints a script for the shell; the script asks `oilway complete
 * WORD...` what may stand in place of the last word. Candidates come from the same tables as parsing and
 * help, and from the catalogue in use.
 */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"

/* The last word, which is being completed, and where its candidates go. */
typedef struct completing {
    const char *start;
    size_t length;
    ow_text text;
} completing;

static void offer(completing *now, const char *words)
{
    if (strncmp(words, now->start, now->length) == 0)
        ow_text_format(&now->text, "%s\n", words);
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

static const cli_option *option_named(const cli_command *command, const char *word)
{
    if (strncmp(word, "--", 2) != 0)
        return NULL;
    for (size_t index = 0; index < command->option_count; index++) {
        if (strcmp(command->options[index].name, word + 2) == 0)
            return &command->options[index];
    }
    for (size_t index = 0; index < cli_common_option_count; index++) {
        if (strcmp(cli_common_options[index].name, word + 2) == 0)
            return &cli_common_options[index];
    }
    return NULL;
}

static void offer_options(completing *now, const cli_option *options, size_t count)
{
    char word[64];
    for (size_t index = 0; index < count; index++) {
        snprintf(word, sizeof word, "--%s", options[index].name);
        offer(now, word);
    }
}

/* Machines and their ports, switches and senders, and every end in the catalogue. */
static void offer_ports(completing *now, const cli_shop *shop)
{
    char word[160];
    for (size_t index = 0; index < ow_catalog_machine_count(shop->catalog); index++) {
        const ow_machine *machine = ow_catalog_machine_at(shop->catalog, index);
        offer(now, machine->id);
        for (size_t port = 0; port < machine->port_count; port++) {
            snprintf(word, sizeof word, "%s:%s", machine->id, machine->ports[port].name);
            offer(now, word);
        }
    }
    for (size_t index = 0; index < ow_catalog_fixture_count(shop->catalog); index++)
        offer(now, ow_catalog_fixture_at(shop->catalog, index)->id);
    for (size_t index = 0; index < ow_net_kind_count(shop->net); index++) {
        char end[OW_END_TEXT_SIZE];
        offer(now, ow_end_name(ow_net_kind_at(shop->net, index), end));
    }
}

static void offer_ids(completing *now, const cli_shop *shop)
{
    for (size_t index = 0; index < ow_catalog_part_count(shop->catalog); index++)
        offer(now, ow_catalog_part_at(shop->catalog, index)->id);
    for (size_t index = 0; index < ow_catalog_machine_count(shop->catalog); index++)
        offer(now, ow_catalog_machine_at(shop->catalog, index)->id);
}

/* What `value` stands for in the tables: P a port, ID an id, FORMAT a format; words by the option's choices.
 */
static void offer_value(cli_run *run, completing *now, const cli_command *command, const cli_option *option)
{
    cli_shop shop;
    if (option->choices != NULL) {
        offer_each(now, option->choices);
    } else if (strcmp(option->value, "FORMAT") == 0) {
        offer_each(now, command->formats);
    } else if (strcmp(option->value, "P") == 0 && cli_open_shop(run, true, &shop) == OW_OK) {
        offer_ports(now, &shop);
        cli_close_shop(&shop);
    } else if (strcmp(option->value, "ID") == 0 && cli_open_shop(run, false, &shop) == OW_OK) {
        offer_ids(now, &shop);
        cli_close_shop(&shop);
    }
}

static void offer_arguments(cli_run *run, completing *now, const cli_command *command, const char *before)
{
    cli_shop shop;
    if (strcmp(command->name, "catalog") == 0 && strcmp(before, "catalog") == 0)
        offer_each(now, "list show check");
    else if (strcmp(before, "show") == 0 && cli_open_shop(run, false, &shop) == OW_OK) {
        offer_ids(now, &shop);
        cli_close_shop(&shop);
    } else if (strcmp(command->name, "mates") == 0 && cli_open_shop(run, true, &shop) == OW_OK) {
        offer_ports(now, &shop);
        cli_close_shop(&shop);
    } else if (strcmp(command->name, "completion") == 0) {
        offer_each(now, "bash zsh fish");
    }
}

static cli_exit run_complete(cli_run *run)
{
    completing now = {"", 0, ow_text_new(&run->context)};
    size_t count = run->argument_count;
    run->context.report = NULL; /* a broken catalogue must not write into the command line */
    if (count > 0) {
        now.start = run->arguments[count - 1];
        now.length = strlen(now.start);
    }
    const cli_command *command = count > 1 ? command_named(run->arguments[0]) : NULL;
    if (command == NULL) {
        for (size_t index = 0; index < cli_command_count && count <= 1; index++)
            offer(&now, cli_commands[index]->name);
        return cli_print(run, &now.text, CLI_YES);
    }
    const char *before = run->arguments[count - 2];
    const cli_option *option = option_named(command, before);
    if (option != NULL && option->value != NULL) {
        offer_value(run, &now, command, option);
    } else if (now.start[0] == '-' && (now.start[1] < '0' || now.start[1] > '9')) {
        offer_options(&now, command->options, command->option_count);
        offer_options(&now, cli_common_options, cli_common_option_count);
    } else {
        offer_arguments(run, &now, command, before);
    }
    return cli_print(run, &now.text, CLI_YES);
}

static const char bash_script[] =
    "# oilway completion for bash: eval \"$(oilway completion bash)\"\n"
    "_oilway() {\n"
    "    # The line is split here, at blanks and by quotes: colons are part of a port's name, blanks of an "
    "end.\n"
    "    local line=${COMP_LINE:0:COMP_POINT} words=() word= quote= begun= i c reply\n"
    "    for ((i = 0; i < ${#line}; i++)); do\n"
    "        c=${line:i:1}\n"
    "        case $quote$c in\n"
    "        \\\"\\\" | \\'\\') quote= ;;\n"
    "        [\\\"\\']?) word+=$c ;;\n"
    "        [\\\"\\']) quote=$c begun=1 ;;\n"
    "        \\\\) word+=${line:++i:1} begun=1 ;;\n"
    "        [[:space:]]) [[ $begun ]] && words+=(\"$word\"); word= begun= ;;\n"
    "        *) word+=$c begun=1 ;;\n"
    "        esac\n"
    "    done\n"
    "    words+=(\"$word\")\n"
    "    # What stands before the last colon is no part of what the shell replaces.\n"
    "    local before=\n"
    "    [[ -z $quote && $word == *:* && $COMP_WORDBREAKS == *:* ]] && before=${word%\"${word##*:}\"}\n"
    "    COMPREPLY=()\n"
    "    while IFS= read -r reply; do\n"
    "        reply=${reply#\"$before\"}\n"
    "        [[ $quote ]] || printf -v reply %q \"$reply\"\n"
    "        COMPREPLY+=(\"$reply\")\n"
    "    done < <(oilway complete -- \"${words[@]:1}\" 2>/dev/null)\n"
    "}\n"
    "complete -o default -F _oilway oilway\n";

static const char zsh_script[] =
    "#compdef oilway\n"
    "# oilway completion for zsh: eval \"$(oilway completion zsh)\"\n"
    "_oilway() {\n"
    "    local -a found\n"
    "    found=(\"${(@f)$(oilway complete -- \"${(@Q)words[2,CURRENT]}\" 2>/dev/null)}\")\n"
    "    compadd -- \"${found[@]}\" || _files\n"
    "}\n"
    "compdef _oilway oilway\n";

static const char fish_script[] = "# oilway completion for fish: oilway completion fish | source\n"
                                  "function __oilway_complete\n"
                                  "    set -l words (commandline -opc) (commandline -ct)\n"
                                  "    oilway complete -- $words[2..-1] 2>/dev/null\n"
                                  "end\n"
                                  "complete -c oilway -a '(__oilway_complete)'\n";

static cli_exit run_completion(cli_run *run)
{
    const char *shell = run->arguments[0];
    const char *script = strcmp(shell, "bash") == 0   ? bash_script
                         : strcmp(shell, "zsh") == 0  ? zsh_script
                         : strcmp(shell, "fish") == 0 ? fish_script
                                                      : NULL;
    if (script == NULL) {
        fprintf(stderr, "oilway completion: %s: bash, zsh or fish is wanted\n", shell);
        return CLI_COULD_NOT;
    }
    ow_text text = ow_text_new(&run->context);
    ow_text_add(&text, script);
    return cli_print(run, &text, CLI_YES);
}

const cli_command cli_complete = {
    .name = "complete",
    .arguments = "WORD...",
    .summary = "what may stand in place of the last word (for shells)",
    .most = CLI_GIVEN_MAX,
    .formats = "text",
    .run = run_complete,
};

const cli_command cli_completion = {
    .name = "completion",
    .arguments = "bash | zsh | fish",
    .summary = "a completion script for your shell",
    .least = 1,
    .most = 1,
    .formats = "text",
    .run = run_completion,
};
