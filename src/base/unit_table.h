/* SPDX-License-Identifier: MIT */
/* The units that are read, and which of them are written. */
#ifndef OW_BASE_UNIT_TABLE_H
#define OW_BASE_UNIT_TABLE_H

#include <stdbool.h>
#include <stdint.h>

#include "oilway/quantity.h"

/* SI value = (number + offset) * factor * 10^shift * times / over. factor and shift cost no rounding. */
typedef struct ow_unit {
    ow_dimension dimension;
    const char *name; /* as written, with single blanks */
    bool any_case;    /* read in capitals or not; never where that changes the meaning (mPa, MPa) */
    uint32_t factor;
    int shift;
    double times;
    double over;
    double offset;
} ow_unit;

extern const ow_unit ow_units[];
extern const size_t ow_unit_count;

/* How a dimension is written: value = SI * times / over - offset. */
typedef struct ow_dimension_row {
    const char *expected;
    const char *unit;
    double times;
    double over;
    double offset;
} ow_dimension_row;

extern const ow_dimension_row ow_dimension_rows[OW_DIMENSION_COUNT];

#endif
