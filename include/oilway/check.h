/* SPDX-License-Identifier: MIT */
/* A layout re-walked: every joint, the order, the bore, the ratings, the closing joint, the trade's rules.
 * Shares no code with the search: it is the second opinion on its answers. */
#ifndef OILWAY_CHECK_H
#define OILWAY_CHECK_H

#include "oilway/finding.h"
#include "oilway/layout.h"

/*
 * Adds what is wrong (and worth noting) to `findings`, in walking order, and each thing that was looked at
 * and is right to `passed` (NULL = not wanted). A layout that does not say what it is held to is held to the
 * defaults of its circuit and machines. Where two ends do not join, the mend names the cheapest adapter of
 * `catalog` that would join them; NULL: none is looked for. OW_OK or OW_MEMORY. Cost: nodes times ports, and
 * the catalogue once for each wrong joint.
 */
ow_status ow_check_layout(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout,
                          ow_findings *findings, ow_findings *passed);

/* Several layouts checked. */
typedef struct ow_checked {
    const ow_context *context;
    size_t count;
    ow_findings *findings, *passed; /* one of each for every layout */
    bool ok;                        /* no finding is an error */
} ow_checked;

/* OW_OK or OW_MEMORY; *checked is untouched on failure, else freed with ow_checked_done. */
ow_status ow_check_layouts(const ow_context *context, const ow_catalog *catalog, const ow_layout *layouts,
                           size_t count, ow_checked *checked);
void ow_checked_done(ow_checked *checked);

#endif
