/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "oilway/oil.h"

/*
 * SAE J300 as of 2015 (published; J300_202405 changes test methods only). HTHS of grade 40 is 3.5 for 0W, 5W
 * and 10W, 3.7 else: the lower stands here. Columns: name, KV100 low, high, HTHS 150 C, cranking, at, pumping
 * at.
 */
static const ow_sae_grade grades[] = {
    {"8", 4.0, 6.1, 1.7, 0, 0, 0},      {"12", 5.0, 7.1, 2.0, 0, 0, 0},
    {"16", 6.1, 8.2, 2.3, 0, 0, 0},     {"20", 6.9, 9.3, 2.6, 0, 0, 0},
    {"30", 9.3, 12.5, 2.9, 0, 0, 0},    {"40", 12.5, 16.3, 3.5, 0, 0, 0},
    {"50", 16.3, 21.9, 3.7, 0, 0, 0},   {"60", 21.9, 26.1, 3.7, 0, 0, 0},
    {"0W", 3.8, 0, 0, 6200, -35, -40},  {"5W", 3.8, 0, 0, 6600, -30, -35},
    {"10W", 4.1, 0, 0, 7000, -25, -30}, {"15W", 5.6, 0, 0, 7000, -20, -25},
    {"20W", 5.6, 0, 0, 9500, -15, -20}, {"25W", 9.3, 0, 0, 13000, -10, -15},
};

/*
 * Assumptions: what product sheets of each class usually say, from memory, good to 10 %. Every KV100 lies in
 * its SAE J300 window (a test holds them to it).
 */
#define FROM_MEMORY "typical of the grade, from memory, within about 10 %"
static const ow_typical_oil oils[] = {
    {"0W-16", 36, 7.1, 842, FROM_MEMORY},    {"0W-20", 45, 8.6, 845, FROM_MEMORY},
    {"0W-30", 66, 12.0, 845, FROM_MEMORY},   {"0W-40", 76, 13.6, 848, FROM_MEMORY},
    {"5W-20", 49, 8.6, 853, FROM_MEMORY},    {"5W-30", 64, 10.8, 855, FROM_MEMORY},
    {"5W-40", 85, 14.0, 855, FROM_MEMORY},   {"5W-50", 108, 17.5, 858, FROM_MEMORY},
    {"10W-30", 72, 10.8, 868, FROM_MEMORY},  {"10W-40", 95, 14.2, 865, FROM_MEMORY},
    {"10W-50", 122, 18.0, 862, FROM_MEMORY}, {"10W-60", 160, 23.0, 860, FROM_MEMORY},
    {"15W-40", 110, 14.7, 878, FROM_MEMORY}, {"15W-50", 130, 18.2, 876, FROM_MEMORY},
    {"20W-50", 160, 18.2, 885, FROM_MEMORY}, {"20W-60", 215, 24.0, 888, FROM_MEMORY},
    {"SAE 30", 95, 11.0, 890, FROM_MEMORY},  {"SAE 40", 140, 14.5, 893, FROM_MEMORY},
    {"SAE 50", 210, 19.0, 896, FROM_MEMORY},
};

size_t ow_sae_grade_count(void)
{
    return sizeof grades / sizeof grades[0];
}

const ow_sae_grade *ow_sae_grade_at(size_t index)
{
    return index < ow_sae_grade_count() ? &grades[index] : NULL;
}

size_t ow_typical_oil_count(void)
{
    return sizeof oils / sizeof oils[0];
}

const ow_typical_oil *ow_typical_oil_at(size_t index)
{
    return index < ow_typical_oil_count() ? &oils[index] : NULL;
}
