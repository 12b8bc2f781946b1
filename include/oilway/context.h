/* SPDX-License-Identifier: MIT */
/*
 * What the caller lends the library: an allocator, a sink for diagnostics, and an ear for progress.
 * The library keeps no other state, prints nothing and never exits. One context may serve
 * several threads if the allocator, the sink and the ear may.
 */
#ifndef OILWAY_CONTEXT_H
#define OILWAY_CONTEXT_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/status.h"

typedef enum ow_severity { OW_NOTE, OW_WARNING, OW_ERROR } ow_severity;

/* "note", "warning" or "error". */
const char *ow_severity_name(ow_severity severity);

/*
 * One thing to tell a person about a text. Everything pointed to is lent for the length of the
 * report call only. `file` may be NULL; `line` and `column` count from 1, in characters, 0 = not
 * known; `line_text` is the offending line without its end (NULL if none), of which
 * `mark_width` characters from `column` on are at fault. `expected` and `mend` may be NULL.
 */
typedef struct ow_diagnostic {
    ow_severity severity;
    ow_status status;
    const char *file;
    size_t line;
    size_t column;
    const char *line_text;
    size_t line_length; /* bytes */
    size_t mark_width;  /* characters, at least 1 where line_text is given */
    const char *message;
    const char *expected;
    const char *mend;
} ow_diagnostic;

/* What a call is at. The words are constant. */
typedef struct ow_progress {
    const char *doing;   /* "reading the catalogue" */
    const char *counted; /* "pages"; NULL: nothing is counted */
    size_t done, all;    /* of what is counted; all 0: not known */
} ow_progress;

typedef struct ow_context {
    /*
     * As realloc: block may be NULL; size 0 frees and returns NULL. Returns NULL when out of
     * memory, the block then untouched. NULL here = the C library's own.
     */
    void *(*resize)(void *user, void *block, size_t size);
    void *resize_user;
    void (*report)(void *user, const ow_diagnostic *diagnostic); /* NULL = nobody listens */
    void *report_user;
    /*
     * Told now and then, some hundred times a second, by calls that can take long, on the thread that made
     * the call. False stops the call: it frees what it had and returns OW_STOPPED. NULL = nobody waits.
     */
    bool (*progress)(void *user, const ow_progress *progress);
    void *progress_user;
} ow_context;

#define OW_CONTEXT_INIT                    \
    {                                      \
        NULL, NULL, NULL, NULL, NULL, NULL \
    }

/* Allocate, grow, shrink or free through the context; as the resize member above. */
void *ow_resize(const ow_context *context, void *block, size_t size);
void ow_release(const ow_context *context, void *block);

#endif
