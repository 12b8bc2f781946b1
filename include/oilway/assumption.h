/* SPDX-License-Identifier: MIT */
/* Values that were used though nobody gave them. */
#ifndef OILWAY_ASSUMPTION_H
#define OILWAY_ASSUMPTION_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/context.h"
#include "oilway/mark.h"

typedef struct ow_assumption {
    const char *what;   /* "oil temperature, hot idle" */
    const char *value;  /* "100 C", with its unit */
    const char *source; /* where it comes from */
    ow_mark mark;
} ow_assumption;

/* A list that owns its words. */
typedef struct ow_assumptions {
    const ow_context *context;
    ow_assumption *items;
    size_t count, capacity;
    bool failed; /* an allocation failed: the list is not complete */
} ow_assumptions;

ow_assumptions ow_assumptions_new(const ow_context *context);
void ow_assumptions_done(ow_assumptions *assumptions);
/* Adds one, unless the same `what` with the same value is there; the strings are copied. OW_MEMORY sets
 * failed. */
ow_status ow_assumptions_add(ow_assumptions *assumptions, ow_mark mark, const char *what, const char *source,
                             const char *value_format, ...) __attribute__((format(printf, 5, 6)));
/* Copies those of `from` that are not there yet. */
ow_status ow_assumptions_join(ow_assumptions *assumptions, const ow_assumptions *from);

#endif
