/* SPDX-License-Identifier: MIT */
/* What a page says of bores, dealt out to the ends. */
#include <math.h>
#include <string.h>

#include "catalog/record.h"

/* Cross-holes side by side pass as much as one hole of their common area (plain geometry). */
static double holes_bore(const ow_part *part)
{
    if (part->hole_count < 1 || part->hole_bore_m < 0)
        return OW_NOT_SAID;
    return sqrt((double)part->hole_count) * part->hole_bore_m;
}

static double leg_bore(const ow_draft *draft, const ow_part *part, const char *end)
{
    double bore = draft->bore_m, own = OW_NOT_SAID;
    if (strncmp(end, "run-", 4) == 0)
        own = draft->run_bore_m;
    else if (strncmp(end, "branch", 6) == 0)
        own = draft->branch_bore_m;
    else if (strcmp(end, "side") == 0)
        own = draft->side_bore_m;
    else if (strncmp(end, "stud", 4) == 0)
        own = holes_bore(part);
    return own < 0 ? bore : own;
}

void ow_fill_legs(const ow_draft *draft, ow_part *part)
{
    for (size_t end = 0; end < OW_PART_ENDS; end++)
        part->leg_bore_m[end] =
            end < part->end_count ? leg_bore(draft, part, part->end_names[end]) : OW_NOT_SAID;
}
