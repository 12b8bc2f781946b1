/* SPDX-License-Identifier: MIT */
#include "counter/signature.h"

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "oilway/file.h"

#define PATH_SIZE 4096

/* FNV-1a, 64 bits: public domain, Fowler, Noll and Vo. */
static uint64_t mix(uint64_t sum, const void *bytes, size_t length)
{
    const unsigned char *at = bytes;
    for (size_t index = 0; index < length; index++)
        sum = (sum ^ at[index]) * UINT64_C(0x100000001b3);
    return sum;
}

static uint64_t mix_file(uint64_t sum, const char *path)
{
    struct stat found;
    sum = mix(sum, path, strlen(path) + 1);
    if (stat(path, &found) != 0)
        return sum;
    sum = mix(sum, &found.st_size, sizeof found.st_size);
    sum = mix(sum, &found.st_ino, sizeof found.st_ino);
    sum = mix(sum, &found.st_mtim.tv_sec, sizeof found.st_mtim.tv_sec);
    return mix(sum, &found.st_mtim.tv_nsec, sizeof found.st_mtim.tv_nsec);
}

static uint64_t mix_folder(uint64_t sum, const char *folder)
{
    ow_context quiet = OW_CONTEXT_INIT;
    char **names = NULL;
    size_t count = 0;
    char path[PATH_SIZE];
    sum = mix(sum, folder, strlen(folder) + 1);
    if (ow_folder_pages(&quiet, folder, &names, &count) != OW_OK)
        return sum;
    for (size_t index = 0; index < count; index++) {
        int length = snprintf(path, sizeof path, "%s/%s", folder, names[index]);
        if (length > 0 && (size_t)length < sizeof path)
            sum = mix_file(sum, path);
    }
    ow_release(&quiet, names);
    return sum;
}

uint64_t counter_signature(const ow_catalog_options *options)
{
    uint64_t sum = UINT64_C(0xcbf29ce484222325);
    for (size_t index = 0; index < options->folder_count; index++)
        sum = mix_folder(sum, options->folders[index]);
    return options->stock_file != NULL ? mix_file(sum, options->stock_file) : sum;
}
