/* SPDX-License-Identifier: MIT */
/* Reading one option's words, with a report in words for each fault. */
#ifndef OW_PHYSICS_OPTION_H
#define OW_PHYSICS_OPTION_H

#include "base/source.h"
#include "oilway/quantity.h"

typedef struct ow_option_field {
    const char *name; /* "--bore" */
    ow_dimension dimension;
    bool may_be_bare;  /* a number without its unit is in `bare` */
    double bare;       /* SI of one; what a bare number is multiplied by */
    double low, high;  /* SI */
    const char *range; /* in words: "0.1 mm to 200 mm" */
} ow_option_field;

/*
 * Reads words; OW_INPUT after a report if they are NULL, not such a quantity, or out of range; *value
 * untouched then.
 */
ow_status ow_option_read(const ow_context *context, const ow_option_field *field, const char *words,
                         double *value);

#endif
