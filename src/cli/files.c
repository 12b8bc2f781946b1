/* SPDX-License-Identifier: MIT */
#include "cli/commands.h"

ow_status cli_read_layouts(cli_run *run, const cli_shop *shop, const char *path, ow_layout **layouts,
                           size_t *count)
{
    char *bytes = NULL;
    size_t length = 0;
    ow_status status = ow_file_read(&run->context, path, &bytes, &length);
    if (status != OW_OK)
        return status;
    status = ow_layouts_read(&run->context, shop->catalog, path, bytes, length, layouts, count);
    ow_release(&run->context, bytes);
    return status;
}
