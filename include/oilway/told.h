/* SPDX-License-Identifier: MIT */
/* Diagnostics kept for later: a sink for a context, and the list of what it was told. */
#ifndef OILWAY_TOLD_H
#define OILWAY_TOLD_H

#include "oilway/context.h"

typedef struct ow_told {
    const ow_context *context; /* its allocator is used, its sink is told too, if it has one */
    ow_diagnostic *items;      /* in the order in which they were told; their words belong to the list */
    size_t count;
    size_t errors, warnings; /* of them */
    void *storage;
} ow_told;

/* OW_MEMORY: *told untouched. The context must outlive the list; freed with ow_told_done. */
ow_status ow_told_new(const ow_context *context, ow_told *told);
void ow_told_done(ow_told *told);
/*
 * For ow_context.report, with the list as its user. What there is no memory for is counted, not kept:
 * ow_told_status says so.
 */
void ow_told_take(void *user, const ow_diagnostic *diagnostic);
ow_status ow_told_status(const ow_told *told); /* OW_OK or OW_MEMORY */

#endif
