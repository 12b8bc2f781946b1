/* SPDX-License-Identifier: MIT */
/* What is to be said of a hose's material in its service. */
#ifndef OILWAY_HOSE_JUDGE_H
#define OILWAY_HOSE_JUDGE_H

#include "oilway/finding.h"
#include "oilway/hose_material.h"

/* Says them: hose-fluid, hose-heat, hose-pressure, none worse than `worst` (figures that are assumed only
 * warn). `told`: ow_hose_fault bits that are left out. OW_OK, OW_MEMORY. */
ow_status ow_hose_judge(const ow_hose_material *material, const ow_hose_service *service, unsigned told,
                        ow_severity worst, const char *where, ow_findings *findings);

#endif
