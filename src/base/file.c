/* SPDX-License-Identifier: MIT */
#include "base/file.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/progress.h"
#include "base/source.h"

#define STANDARD_INPUT_NAME "standard input"
#define FIRST_READ ((size_t)16 * 1024)

/* Opens without ever waiting for a pipe's other side; *size is a guess at what is to come. */
static ow_status open_input(const ow_context *context, const char *path, int *descriptor, size_t *size)
{
    int opened = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (opened < 0)
        return ow_report_errno(context, path, NULL, "cannot be opened");
    struct stat about;
    ow_status status = OW_OK;
    if (fstat(opened, &about) != 0)
        status = ow_report_errno(context, path, NULL, "cannot be looked at");
    else if (S_ISDIR(about.st_mode))
        status = ow_report(context, OW_ERROR, OW_IO, path, "a file", NULL, "this is a folder");
    else if (!S_ISREG(about.st_mode) && !S_ISFIFO(about.st_mode))
        status = ow_report(context, OW_ERROR, OW_IO, path, "a regular file or a pipe", NULL,
                           "this is a device or a socket");
    else if (fcntl(opened, F_SETFL, 0) < 0)
        status = ow_report_errno(context, path, NULL, "cannot be read");
    if (status != OW_OK) {
        close(opened);
        return status;
    }
    *descriptor = opened;
    *size = S_ISREG(about.st_mode) && about.st_size > 0 && (size_t)about.st_size < OW_FILE_BYTES_MAX
                ? (size_t)about.st_size
                : FIRST_READ;
    return OW_OK;
}

/* Reads to the end. One byte past the limit is asked for, so as to see that there is more. */
static ow_status read_all(const ow_context *context, const char *name, int descriptor, size_t guess,
                          char **bytes, size_t *length)
{
    char *read_bytes = NULL;
    size_t capacity = 0, used = 0;
    ow_status status = ow_grow(context, (void **)&read_bytes, &capacity, guess + 2, 1);
    while (status == OW_OK) {
        ssize_t got = read(descriptor, read_bytes + used, capacity - used - 1);
        if (got < 0 && errno == EINTR) {
            status = ow_progress_tell(context, "reading", NULL, 0, 0);
            continue;
        }
        if (got < 0) {
            status = ow_report_errno(context, name, NULL, "cannot be read");
        } else if (got == 0) {
            break;
        } else {
            used += (size_t)got;
            if (used > OW_FILE_BYTES_MAX)
                status = ow_report(context, OW_ERROR, OW_LIMIT, name, NULL, "split it into several files",
                                   "this file is larger than %zu MiB", OW_FILE_BYTES_MAX / 1024 / 1024);
            else
                status = ow_grow(context, (void **)&read_bytes, &capacity, used + 2, 1);
        }
    }
    if (status != OW_OK) {
        ow_release(context, read_bytes);
        return status;
    }
    read_bytes[used] = '\0';
    *bytes = read_bytes;
    *length = used;
    return OW_OK;
}

ow_status ow_file_read(const ow_context *context, const char *path, char **bytes, size_t *length)
{
    if (strcmp(path, "-") == 0)
        return read_all(context, STANDARD_INPUT_NAME, STDIN_FILENO, FIRST_READ, bytes, length);
    int descriptor = -1;
    size_t size = 0;
    ow_status status = open_input(context, path, &descriptor, &size);
    if (status != OW_OK)
        return status;
    status = read_all(context, path, descriptor, size, bytes, length);
    close(descriptor); /* only read from: nothing can be lost here */
    return status;
}
