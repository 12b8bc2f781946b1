/* SPDX-License-Identifier: MIT */
/* Opens the catalogue: --catalog, else OILWAY_CATALOG, else the one that came with the program, which is
 * looked for beside the executable (source tree, then an installed tree) before the place it was built for.
 */
#define _XOPEN_SOURCE 700 /* realpath */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "cli/cli.h"

static bool is_folder(const char *path)
{
    struct stat found;
    return stat(path, &found) == 0 && S_ISDIR(found.st_mode);
}

/* The folder of the running executable, into `folder`; false where the system does not tell. */
static bool own_folder(char *folder, size_t size)
{
    ssize_t length = readlink("/proc/self/exe", folder, size - 1);
    if (length <= 0)
        return false;
    folder[length] = '\0';
    char *slash = strrchr(folder, '/');
    if (slash == NULL)
        return false;
    *slash = '\0';
    return true;
}

/* "build/../catalog" as people write it. */
static void make_plain(char *path, size_t size)
{
    char *plain = realpath(path, NULL);
    if (plain != NULL && strlen(plain) < size)
        memcpy(path, plain, strlen(plain) + 1);
    free(plain);
}

/* The catalogue that came with the program, into `path`. */
static bool shipped_catalog(char *path, size_t size)
{
    static const char *const beside[] = {"../catalog", "../../catalog", "../../../catalog",
                                         "../share/oilway/catalog"};
    char folder[CLI_PATH_SIZE];
    if (own_folder(folder, sizeof folder)) {
        for (size_t index = 0; index < sizeof beside / sizeof beside[0]; index++) {
            int length = snprintf(path, size, "%s/%s", folder, beside[index]);
            if (length > 0 && (size_t)length < size && is_folder(path)) {
                make_plain(path, size);
                return true;
            }
        }
    }
    int length = snprintf(path, size, "%s", OW_INSTALLED_CATALOG);
    return length > 0 && (size_t)length < size && is_folder(path);
}

size_t cli_find_folders(cli_run *run, const char **folders, char *path, size_t size)
{
    size_t count = cli_values(run, "catalog", folders, CLI_FOLDERS_MAX);
    if (count > CLI_FOLDERS_MAX) {
        cli_complain("catalog", "%d folders at most", CLI_FOLDERS_MAX);
        return 0;
    }
    if (count > 0)
        return count;
    const char *environment = getenv("OILWAY_CATALOG");
    if (environment != NULL && environment[0] != '\0') {
        folders[0] = environment;
        return 1;
    }
    if (shipped_catalog(path, size)) {
        folders[0] = path;
        return 1;
    }
    fputs("oilway: no catalogue was found; name one with --catalog DIR or OILWAY_CATALOG\n", stderr);
    run->errors++;
    return 0;
}

static bool same_folder(const char *a, const char *b)
{
    struct stat first, second;
    return stat(a, &first) == 0 && stat(b, &second) == 0 && first.st_dev == second.st_dev &&
           first.st_ino == second.st_ino;
}

/* The first of the words not known that the catalogue in a folder has: a machine, switch, sender or part. The
 * port, or which of several, that may stand behind the id does not count. NULL: none. */
static const char *first_known(const cli_run *run, const char *folder)
{
    const ow_context quiet = OW_CONTEXT_INIT;
    const ow_catalog_options options = {&folder, 1, NULL, false, false};
    const char *found = NULL;
    ow_catalog *catalog = NULL;
    if (run->unknown_count == 0 || ow_catalog_load(&quiet, &options, &catalog) != OW_OK)
        return NULL;
    for (size_t index = 0; index < run->unknown_count && found == NULL; index++) {
        char id[CLI_UNKNOWN_SIZE];
        snprintf(id, sizeof id, "%.*s", (int)strcspn(run->unknown[index], ":#"), run->unknown[index]);
        if (ow_catalog_machine(catalog, id) != NULL || ow_catalog_part(catalog, id) != NULL)
            found = run->unknown[index];
    }
    ow_catalog_free(catalog);
    return found;
}

void cli_hint_at_shipped(cli_run *run)
{
    const char *folders[CLI_FOLDERS_MAX];
    char path[CLI_PATH_SIZE], shipped[CLI_PATH_SIZE];
    if ((run->command->uses & CLI_USES_CATALOG) == 0 || !shipped_catalog(shipped, sizeof shipped))
        return;
    size_t count = cli_find_folders(run, folders, path, sizeof path);
    for (size_t index = 0; index < count; index++) {
        if (same_folder(folders[index], shipped))
            return;
    }
    const char *known = count > 0 ? first_known(run, shipped) : NULL;
    if (known == NULL)
        return;
    fprintf(stderr,
            "oilway %s: the catalogue that came with the program has %s, but %s stands in its place. To have "
            "both, lay "
            "yours over it:\n    --catalog %s",
            run->command->name, known, folders[0], same_folder("catalog", shipped) ? "catalog" : shipped);
    for (size_t index = 0; index < count; index++)
        fprintf(stderr, " --catalog %s", folders[index]);
    fputc('\n', stderr);
}

static void tell_left_out(const ow_catalog *catalog)
{
    size_t count = ow_catalog_left_out_count(catalog);
    if (count == 0)
        return;
    fprintf(stderr, "oilway: left out of the catalogue as unreadable (--skip-bad):");
    for (size_t index = 0; index < count; index++)
        fprintf(stderr, "%s %s", index > 0 ? "," : "", ow_catalog_left_out_at(catalog, index));
    fputc('\n', stderr);
}

ow_status cli_open_shop(cli_run *run, bool with_net, cli_shop *shop)
{
    return cli_open_shop_with(run, cli_value(run, "stock"), with_net, shop);
}

ow_status cli_open_shop_with(cli_run *run, const char *stock, bool with_net, cli_shop *shop)
{
    const char *folders[CLI_FOLDERS_MAX];
    char path[CLI_PATH_SIZE];
    *shop = (cli_shop){NULL, NULL};
    ow_catalog_options options = {folders, cli_find_folders(run, folders, path, sizeof path), stock,
                                  cli_has(run, "skip-bad"), false};
    if (options.folder_count == 0)
        return OW_INPUT;
    ow_status status = ow_catalog_load(&run->context, &options, &shop->catalog);
    if (status != OW_OK)
        return status;
    if (with_net)
        status = ow_net_build(&run->context, shop->catalog, &shop->net);
    cli_progress_erase(run);
    tell_left_out(shop->catalog);
    if (status != OW_OK)
        cli_close_shop(shop);
    return status;
}

void cli_close_shop(cli_shop *shop)
{
    ow_net_free(shop->net);
    ow_catalog_free(shop->catalog);
    *shop = (cli_shop){NULL, NULL};
}
