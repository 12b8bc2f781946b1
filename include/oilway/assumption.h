/* SPDX-License-Identifier: MIT */
/* Values that were used though nobody gave them, and how far a figure can be trusted. */
#ifndef OILWAY_ASSUMPTION_H
#define OILWAY_ASSUMPTION_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/context.h"

/* How far a figure can be trusted. */
typedef enum ow_mark {
    OW_MARK_PUBLISHED,   /* P: seen in a public copy */
    OW_MARK_FROM_MEMORY, /* M: published, quoted from memory */
    OW_MARK_DERIVED,     /* D: derived or computed, and checked by a second route */
    OW_MARK_PRACTICE,    /* C: common practice */
    OW_MARK_ASSUMED      /* A: an assumption of this program */
} ow_mark;
/* "published", "published, from memory", "derived", "common practice", "assumption". */
const char *ow_mark_words(ow_mark mark);

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
