/* SPDX-License-Identifier: MIT */
/* A sink that keeps what was reported, for tests to look at. */
#ifndef OW_TESTS_DIAGNOSTICS_H
#define OW_TESTS_DIAGNOSTICS_H

#include <stddef.h>

#include "oilway/context.h"

typedef struct ow_test_diagnostic {
    ow_severity severity;
    ow_status status;
    size_t line, column, mark_width;
    char *file;      /* copies; NULL where the diagnostic had none */
    char *line_text; /* the whole line */
    char *marked;    /* the part of it that is at fault; NULL without a line */
    char *message;
    char *expected;
    char *mend;
    char *told; /* "file:line:column: severity: message", parts not known left out */
} ow_test_diagnostic;

typedef struct ow_test_diagnostics {
    ow_test_diagnostic *items;
    size_t count;
} ow_test_diagnostics;

/* All zero is an empty sink. */
#define OW_TEST_DIAGNOSTICS_INIT \
    {                            \
        NULL, 0                  \
    }

/* A context with the C library's allocator that reports here. */
ow_context ow_test_context(ow_test_diagnostics *sink);
void ow_test_diagnostics_clear(ow_test_diagnostics *sink);

/* For ow_context.report; user is the sink. Also checks as ow_test_check_diagnostic. */
void ow_test_collect(void *user, const ow_diagnostic *told);
/* For ow_context.report: only asserts that the diagnostic keeps its promises (message there, place inside the
 * line, valid UTF-8, no line end in the line). */
void ow_test_check_diagnostic(void *user, const ow_diagnostic *told);

size_t ow_test_count(const ow_test_diagnostics *sink, ow_severity severity);
/* The first whose message holds these words, or NULL. */
const ow_test_diagnostic *ow_test_find(const ow_test_diagnostics *sink, const char *words);
/* Asserts that exactly one diagnostic was told, that it is told so ("x.yaml:1:4: error: …"), and clears the
 * sink. */
void ow_test_assert_told(ow_test_diagnostics *sink, const char *told);

#endif
