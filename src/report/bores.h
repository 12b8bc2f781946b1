/* SPDX-License-Identifier: MIT */
/* True bores beside the sizes that ends are called by. */
#ifndef OW_REPORT_BORES_H
#define OW_REPORT_BORES_H

#include "oilway/catalog.h"
#include "report/json.h"

/* The least tube or hose that the part's ends are called by, of those whose bit is set in ends. False if
 * none. */
bool ow_bores_nominal(const ow_part *part, unsigned ends, ow_nominal *nominal);
#define OW_ALL_ENDS (~0u)

/* The narrowest way through any of its ends, m; OW_NOT_SAID if none is said. Orifices left out. */
double ow_bores_least_m(const ow_part *part);

/* Appends "bore 12.3 mm", and " (-10 is 15.9 mm of tube)" where the two differ. */
void ow_bores_write(ow_text *text, double bore_m, const ow_nominal *nominal);

/* "bore_mm", "nominal_mm" and "nominal", each null where it is not known. */
void ow_bores_json(ow_json *json, cJSON *item, double bore_m, const ow_nominal *nominal);

#endif
