/* SPDX-License-Identifier: MIT */
#include <dirent.h>
#include <errno.h>
#include <string.h>

#include "base/file.h"
#include "base/memory.h"
#include "base/sort.h"
#include "base/source.h"

#define CANNOT "the folder cannot be read"

/* Hidden names are the leavings of editors. */
static bool is_page(const char *name)
{
    static const char ending[] = ".yaml";
    size_t length = strlen(name), ending_length = sizeof ending - 1;
    return name[0] != '.' && length > ending_length && strcmp(name + length - ending_length, ending) == 0;
}

/* Gathers the names, each with its NUL. */
static ow_status gather(const ow_context *context, const char *path, ow_text *gathered, size_t *count)
{
    DIR *folder = opendir(path);
    if (folder == NULL)
        return ow_report_errno(context, path, "a folder", CANNOT);
    size_t found = 0;
    errno = 0;
    for (const struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
        if (is_page(entry->d_name)) {
            ow_text_bytes(gathered, entry->d_name, strlen(entry->d_name) + 1);
            found++;
        }
        errno = 0;
    }
    int number = errno;
    closedir(folder);
    errno = number;
    if (number != 0)
        return ow_report_errno(context, path, "a folder", CANNOT);
    *count = found;
    return ow_text_status(gathered);
}

static int by_bytes(const void *items, uint32_t left, uint32_t right)
{
    const char *const *names = items;
    return strcmp(names[left], names[right]);
}

ow_status ow_folder_pages(const ow_context *context, const char *path, char ***names, size_t *count)
{
    ow_text gathered = ow_text_new(context);
    char **array = NULL;
    size_t found = 0;
    ow_status status = gather(context, path, &gathered, &found);
    if (status != OW_OK)
        goto done;
    array = ow_new_array(context, found * sizeof *array + gathered.length, 1);
    if (array == NULL) {
        status = OW_MEMORY;
        goto done;
    }
    char *words = (char *)(array + found);
    if (gathered.length > 0)
        memcpy(words, gathered.data, gathered.length);
    for (size_t i = 0; i < found; i++) {
        array[i] = words;
        words += strlen(words) + 1;
    }
    status = ow_sort_items(context, array, found, sizeof *array, by_bytes);
    if (status != OW_OK)
        goto done;
    *names = array;
    array = NULL;
    *count = found;
done:
    ow_release(context, array);
    ow_text_done(&gathered);
    return status;
}
