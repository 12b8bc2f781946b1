/* SPDX-License-Identifier: MIT */
/* oilway counter: the counter page. */
#include "counter/counter.h"

#include <stdio.h>
#include <stdlib.h>

#include "cli/commands.h"

#define PORT_USUAL 8470
#define HOSTS_MAX 16

static const cli_option options[] = {
    {"port", 'p', "N", "port to listen on (8470); 0 for any that is free", false, NULL},
    {"listen", 0, "ADDRESS",
     "listen there, in numbers, for other machines too: everybody who reaches it may look", false, NULL},
    {"host", 0, "NAME", "with --listen: a name that the page may be asked for under", true, NULL},
};

static void say(void *user, bool wrong, const char *words)
{
    cli_run *run = user;
    fprintf(wrong ? stderr : stdout, "%s%s\n", wrong ? "oilway counter: " : "", words);
    fflush(wrong ? stderr : stdout);
    run->errors += wrong;
}

static bool read_port(const cli_run *run, unsigned *port)
{
    const char *words = cli_value(run, "port");
    char *end = NULL;
    if (words == NULL)
        return true;
    unsigned long value = strtoul(words, &end, 10);
    if (words[0] < '0' || words[0] > '9' || *end != '\0' || value > 65535) {
        cli_complain("port", "%s: a whole number from 0 to 65535 is wanted", words);
        return false;
    }
    *port = (unsigned)value;
    return true;
}

static cli_exit run_counter(cli_run *run)
{
    const char *folders[CLI_FOLDERS_MAX];
    const char *hosts[HOSTS_MAX];
    char path[CLI_PATH_SIZE];
    counter_options wanted = {.address = cli_value(run, "listen"), .port = PORT_USUAL, .hosts = hosts};
    wanted.host_count = cli_values(run, "host", hosts, HOSTS_MAX);
    if (!read_port(run, &wanted.port))
        return CLI_COULD_NOT;
    if (wanted.host_count > HOSTS_MAX || (wanted.host_count > 0 && wanted.address == NULL)) {
        cli_complain("host", "goes with --listen, %d at most", HOSTS_MAX);
        return CLI_COULD_NOT;
    }
    wanted.catalog = (ow_catalog_options){folders, cli_find_folders(run, folders, path, sizeof path),
                                          cli_value(run, "stock"), cli_has(run, "skip-bad"), false};
    if (wanted.catalog.folder_count == 0)
        return CLI_COULD_NOT;
    ow_status status = counter_serve(&run->context, &wanted, say, run);
    return status == OW_OK ? CLI_YES : cli_fail(run, status);
}

const cli_command cli_counter = {
    .name = "counter",
    .arguments = "",
    .summary = "the counter page: a local web page over the catalogue, until Ctrl-C",
    .detail =
        "Serves this machine only, unless --listen says otherwise. A change in the catalogue's files "
        "is taken\n"
        "over within three seconds; one with faults is told and left aside. docs/counter.md tells more.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .uses = CLI_USES_CATALOG | CLI_USES_STOCK | CLI_USES_HELP,
    .formats = "text",
    .run = run_counter,
};
