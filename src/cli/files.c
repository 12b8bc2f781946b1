/* SPDX-License-Identifier: MIT */
/* What several commands read: layouts, and jobs with the stock page that they name. */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"

ow_status cli_read_layouts(cli_run *run, const cli_shop *shop, const char *bytes, size_t length,
                           ow_layout **layouts, size_t *count)
{
    return ow_layouts_read(&run->context, shop->catalog, run->arguments[0], bytes, length, layouts, count);
}

/* A path written in a file is meant from that file's folder. */
static void beside(const char *file, const char *path, char *joined, size_t size)
{
    const char *slash = strrchr(file, '/');
    if (path[0] == '/' || slash == NULL)
        snprintf(joined, size, "%s", path);
    else
        snprintf(joined, size, "%.*s/%s", (int)(slash - file), file, path);
}

/* Reads the job; where it names a stock page and the command line does not, opens the shop again with it. */
static ow_status read_job(cli_run *run, cli_shop *shop, const char *bytes, size_t length, ow_job **job)
{
    const char *file = run->arguments[0];
    char stock[4096];
    ow_status status = ow_job_read(&run->context, shop->catalog, file, bytes, length, job);
    if (status != OW_OK || (*job)->stock == NULL || cli_has(run, "stock"))
        return status;
    beside(file, (*job)->stock, stock, sizeof stock);
    ow_job_free(*job);
    *job = NULL;
    cli_close_shop(shop);
    status = cli_open_shop_with(run, stock, true, shop);
    return status == OW_OK ? ow_job_read(&run->context, shop->catalog, file, bytes, length, job) : status;
}

cli_exit cli_with_job(cli_run *run, const char *bytes, size_t length,
                      cli_exit (*use)(cli_run *run, const ow_plan *plan))
{
    cli_shop shop;
    ow_job *job = NULL;
    ow_plan plan;
    ow_status status = cli_open_shop(run, true, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    status = read_job(run, &shop, bytes, length, &job);
    if (status == OW_OK)
        status = ow_plan_make(&run->context, shop.catalog, shop.net, job, &plan);
    cli_exit exit = status == OW_OK ? use(run, &plan) : cli_fail(run, status);
    if (status == OW_OK)
        ow_plan_done(&plan);
    ow_job_free(job);
    cli_close_shop(&shop);
    return exit;
}
