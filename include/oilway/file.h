/* SPDX-License-Identifier: MIT */
/* Whole files in, whole files out. */
#ifndef OILWAY_FILE_H
#define OILWAY_FILE_H

#include "oilway/text.h"

#define OW_FILE_BYTES_MAX ((size_t)64 * 1024 * 1024)

/* Reads a regular file or a pipe (or "-": standard input) of at most OW_FILE_BYTES_MAX bytes. Directories,
 * devices, missing files and too large ones are reported, with OW_IO or OW_LIMIT. *bytes is freed by the
 * caller with ow_release; it is NUL-terminated behind *length. */
ow_status ow_file_read(const ow_context *context, const char *path, char **bytes, size_t *length);
/* Names (not paths) of the *.yaml files directly in a folder, sorted by bytes; hidden ones (".x.yaml", an
 * editor's leavings) are left out. The array and its strings are one block, freed with ow_release. */
ow_status ow_folder_pages(const ow_context *context, const char *path, char ***names, size_t *count);
/* Writes the whole or nothing: a temporary file beside it, synced, then renamed. A link stays a link, a file
 * keeps its mode; what is no regular file (a pipe, a terminal) is written into. Reports faults, OW_IO. */
ow_status ow_file_write(const ow_context *context, const char *path, const char *bytes, size_t length);

#endif
