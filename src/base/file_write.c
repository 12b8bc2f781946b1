/* SPDX-License-Identifier: MIT */
#define _XOPEN_SOURCE 700 /* realpath */
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/file.h"
#include "base/source.h"

#define NAMES_TRIED 100

static bool write_all(int descriptor, const char *bytes, size_t length)
{
    while (length > 0) {
        ssize_t written = write(descriptor, bytes, length);
        if (written < 0 && errno == EINTR)
            continue;
        if (written < 0)
            return false;
        bytes += written;
        length -= (size_t)written;
    }
    return true;
}

/* A new file beside the wanted one, in the same folder so that the rename is one step. */
static int open_beside(ow_text *name, const char *path)
{
    for (unsigned attempt = 0; attempt < NAMES_TRIED; attempt++) {
        ow_text_done(name);
        ow_text_format(name, "%s.%ld-%u.new", path, (long)getpid(), attempt);
        if (ow_text_status(name) != OW_OK)
            return -1;
        int descriptor = open(ow_text_words(name), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (descriptor >= 0 || errno != EEXIST)
            return descriptor;
    }
    return -1;
}

/* The name itself is only safe once its folder is on the disk; a file system that cannot is no fault. */
static void sync_folder(const char *path)
{
    char folder[PATH_MAX];
    const char *slash = strrchr(path, '/');
    size_t length = slash == NULL ? 0 : (size_t)(slash - path) + 1;
    if (length + 2 > sizeof folder)
        return;
    memcpy(folder, path, length);
    memcpy(folder + length, ".", 2);
    int descriptor = open(folder, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0)
        return;
    (void)fsync(descriptor);
    close(descriptor);
}

static ow_status replace(const ow_context *context, const char *path, const struct stat *before,
                         const char *bytes, size_t length)
{
    ow_text beside = ow_text_new(context);
    int descriptor = open_beside(&beside, path);
    ow_status status = ow_text_status(&beside);
    if (descriptor < 0) {
        if (status == OW_OK)
            status = ow_report_errno(context, path, NULL, "no file can be made beside it");
        goto done;
    }
    bool kept = before == NULL || fchmod(descriptor, before->st_mode & 0777) == 0;
    bool written = kept && write_all(descriptor, bytes, length) && fsync(descriptor) == 0;
    int number = errno;
    if (close(descriptor) != 0 && written) {
        written = false;
        number = errno;
    }
    errno = number;
    if (!written || rename(ow_text_words(&beside), path) != 0) {
        status = ow_report_errno(context, path, NULL, "cannot be written");
        (void)unlink(ow_text_words(&beside));
        goto done;
    }
    sync_folder(path);
done:
    ow_text_done(&beside);
    return status;
}

/* A terminal or a pipe cannot be replaced: it is written into. */
static ow_status write_into(const ow_context *context, const char *path, const char *bytes, size_t length)
{
    int descriptor = open(path, O_WRONLY | O_CLOEXEC | O_NOCTTY);
    if (descriptor < 0)
        return ow_report_errno(context, path, NULL, "cannot be opened");
    bool written = write_all(descriptor, bytes, length);
    int number = errno;
    if (close(descriptor) != 0 && written) {
        written = false;
        number = errno;
    }
    errno = number;
    return written ? OW_OK : ow_report_errno(context, path, NULL, "cannot be written");
}

ow_status ow_file_write(const ow_context *context, const char *path, const char *bytes, size_t length)
{
    struct stat about;
    if (stat(path, &about) != 0) {
        if (errno != ENOENT)
            return ow_report_errno(context, path, NULL, "cannot be written");
        return replace(context, path, NULL, bytes, length);
    }
    if (S_ISDIR(about.st_mode))
        return ow_report(context, OW_ERROR, OW_IO, path, "the name of a file", NULL, "this is a folder");
    if (!S_ISREG(about.st_mode))
        return write_into(context, path, bytes, length);
    /* A link stays a link: what it points to is replaced. */
    char resolved[PATH_MAX];
    if (realpath(path, resolved) == NULL)
        return ow_report_errno(context, path, NULL, "cannot be written");
    return replace(context, resolved, &about, bytes, length);
}
