/* SPDX-License-Identifier: MIT */
/* Dimensions that fittings have, as data: what ow_catalog_check holds a page against. */
#ifndef OW_CATALOG_RANGES_H
#define OW_CATALOG_RANGES_H

#include "oilway/catalog.h"

/* A dash size, mm. */
typedef struct ow_dash_range {
    int32_t dash;
    double tube_mm;       /* outside diameter of the tube */
    double fitting_mm;    /* through bore of a straight fitting */
    double hose_least_mm; /* bore of the hose classes that go by the tube (ptfe) */
    double hose_most_mm;  /* bore of those that go by the hole */
    const char *source;
} ow_dash_range;
const ow_dash_range *ow_dash_range_find(int32_t dash); /* NULL if no table has it */

/* Hollow screw, mm. */
typedef struct ow_banjo_range {
    ow_thread thread;
    double bore_mm, hole_mm;
    const char *source;
} ow_banjo_range;
const ow_banjo_range *ow_banjo_range_find(const ow_thread *thread);

/* Lengths along the run that such parts have, mm. */
typedef struct ow_length_range {
    ow_kind kind;
    double least_mm, most_mm;
    const char *source;
} ow_length_range;
const ow_length_range *ow_length_range_find(ow_kind kind);

/* Which forms an end of a kind can have; ends not listed can have any. */
typedef struct ow_form_range {
    ow_kind kind;
    const char *end;
    unsigned forms;    /* bits of ow_form */
    ow_gender gender;  /* OW_GENDER_NONE: either */
    const char *words; /* for "expected" */
} ow_form_range;
size_t ow_form_range_count(void);
const ow_form_range *ow_form_range_at(size_t index);

#endif
