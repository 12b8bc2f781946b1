/* SPDX-License-Identifier: MIT */
/* A text with its name, and spans in it: line, column and the marked line are computed only when a
 * fault is shown. */
#ifndef OW_BASE_SOURCE_H
#define OW_BASE_SOURCE_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/context.h"

typedef struct ow_source {
    const char *name;
    const char *text; /* need not be NUL-terminated */
    size_t length;
} ow_source;

typedef struct ow_span { /* bytes */
    size_t start, length;
} ow_span;

/* Line and column (characters) from 1. */
void ow_source_position(const ow_source *source, size_t offset, size_t *line, size_t *column);

/* Reports a fault at a span of a source. expected and mend may be NULL. Returns status, so that
 * `return ow_source_report(…)` reads well. */
ow_status ow_source_report(const ow_context *context, ow_severity severity, ow_status status,
                           const ow_source *source, ow_span span, const char *expected, const char *mend,
                           const char *message_format, ...) __attribute__((format(printf, 8, 9)));
/* The same without a text: only a file name (may be NULL). */
ow_status ow_report(const ow_context *context, ow_severity severity, ow_status status, const char *file,
                    const char *expected, const char *mend, const char *message_format, ...)
    __attribute__((format(printf, 7, 8)));
/* That a call of the system failed, with the reason that errno gives: OW_IO. expected may be NULL. */
ow_status ow_report_errno(const ow_context *context, const char *file, const char *expected,
                          const char *what);

#endif
