/* SPDX-License-Identifier: MIT */
/* Several layouts checked, each with findings of its own. */
#include "base/memory.h"
#include "oilway/check.h"

void ow_checked_done(ow_checked *checked)
{
    for (size_t index = 0; index < checked->count; index++) {
        ow_findings_done(&checked->findings[index]);
        ow_findings_done(&checked->passed[index]);
    }
    ow_release(checked->context, checked->findings);
    ow_release(checked->context, checked->passed);
}

ow_status ow_check_layouts(const ow_context *context, const ow_catalog *catalog, const ow_layout *layouts,
                           size_t count, ow_checked *checked)
{
    ow_checked all = {context, 0, ow_new_array(context, count + 1, sizeof(ow_findings)),
                      ow_new_array(context, count + 1, sizeof(ow_findings)), true};
    ow_status status = all.findings != NULL && all.passed != NULL ? OW_OK : OW_MEMORY;
    while (all.count < count && status == OW_OK) {
        ow_findings *findings = &all.findings[all.count], *passed = &all.passed[all.count];
        *findings = ow_findings_new(context);
        *passed = ow_findings_new(context);
        status = ow_check_layout(context, catalog, &layouts[all.count++], findings, passed);
        all.ok = all.ok && !ow_findings_have(findings, OW_ERROR);
    }
    if (status == OW_OK)
        *checked = all;
    else
        ow_checked_done(&all);
    return status;
}
