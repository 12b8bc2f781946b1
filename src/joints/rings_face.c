/* SPDX-License-Identifier: MIT */
/*
 * Rings under a shoulder, by thread: inside, outside and thickness, mm. Crush rings: DIN 7603 form A, the
 * first of a thread being the usual one and the others wider sisters; sizes from memory except where
 * confirmed. Bonded washers: no standard found; trade sizes from memory, which vary by maker in the
 * outside by up to 2 mm and in thickness by 0.5 mm. No inch ring has a published size.
 */
#include "joints/rings.h"

#define METRIC(size_mm, pitch_mm)                                            \
    {                                                                        \
        OW_THREAD_METRIC, (size_mm)*1000, (int32_t)((pitch_mm)*1000.0 + 0.5) \
    }
#define PIPE(inch_64, half_pitches)        \
    {                                      \
        OW_THREAD_G, inch_64, half_pitches \
    }

#define CRUSH_MEMORY OW_CRUSH_RING, "DIN 7603 form A, from memory"
#define CRUSH_SEEN OW_CRUSH_RING, "DIN 7603 form A"
#define BONDED OW_BONDED_WASHER, "trade size without a standard, from memory"

static const ow_ring_row ROWS[] = {
    {METRIC(5, 0.8), CRUSH_MEMORY, 5, 9, 1},
    {METRIC(6, 1), CRUSH_MEMORY, 6, 10, 1},
    {METRIC(8, 1), CRUSH_MEMORY, 8, 11.5, 1},
    {METRIC(8, 1.25), CRUSH_MEMORY, 8, 11.5, 1},
    {METRIC(10, 1), CRUSH_MEMORY, 10, 13.5, 1},
    {METRIC(10, 1.25), CRUSH_MEMORY, 10, 13.5, 1},
    {METRIC(10, 1.5), CRUSH_MEMORY, 10, 13.5, 1},
    {METRIC(12, 1.25), CRUSH_MEMORY, 12, 15.5, 1.5},
    {METRIC(12, 1.5), CRUSH_MEMORY, 12, 15.5, 1.5},
    {METRIC(12, 1.75), CRUSH_MEMORY, 12, 15.5, 1.5},
    {METRIC(14, 1.25), CRUSH_SEEN, 14, 18, 1.5},
    {METRIC(14, 1.5), CRUSH_SEEN, 14, 18, 1.5},
    {METRIC(16, 1.5), CRUSH_MEMORY, 16, 20, 1.5},
    {METRIC(18, 1.5), CRUSH_MEMORY, 18, 22, 1.5},
    {METRIC(20, 1.5), CRUSH_MEMORY, 20, 24, 1.5},
    {METRIC(22, 1.5), CRUSH_MEMORY, 22, 27, 1.5},
    {METRIC(24, 1.5), CRUSH_MEMORY, 24, 29, 2},
    {METRIC(26, 1.5), CRUSH_MEMORY, 26, 31, 2},
    {METRIC(27, 2), CRUSH_MEMORY, 27, 32, 2},
    {METRIC(30, 1.5), CRUSH_MEMORY, 30, 36, 2},
    {METRIC(30, 2), CRUSH_MEMORY, 30, 36, 2},
    {METRIC(33, 2), CRUSH_MEMORY, 33, 39, 2},
    {PIPE(8, 56), CRUSH_MEMORY, 10, 13.5, 1},
    {PIPE(16, 38), CRUSH_SEEN, 14, 18, 1.5},
    {PIPE(24, 38), CRUSH_MEMORY, 17, 21, 1.5},
    {PIPE(32, 28), CRUSH_MEMORY, 21, 26, 1.5},
    {PIPE(48, 28), CRUSH_MEMORY, 27, 32, 2},
    {PIPE(64, 22), CRUSH_MEMORY, 33, 39, 2},
    {METRIC(8, 1), CRUSH_MEMORY, 8, 12, 1},
    {METRIC(10, 1), CRUSH_MEMORY, 10, 14, 1},
    {METRIC(10, 1), CRUSH_MEMORY, 10, 16, 1},
    {METRIC(12, 1.5), CRUSH_MEMORY, 12, 16, 1.5},
    {METRIC(12, 1.5), CRUSH_MEMORY, 12, 18, 1.5},
    {METRIC(14, 1.5), CRUSH_SEEN, 14, 20, 1.5},
    {METRIC(16, 1.5), CRUSH_MEMORY, 16, 22, 1.5},
    {METRIC(18, 1.5), CRUSH_MEMORY, 18, 24, 1.5},
    {METRIC(20, 1.5), CRUSH_MEMORY, 20, 26, 1.5},
    {METRIC(22, 1.5), CRUSH_MEMORY, 22, 29, 1.5},
    {METRIC(8, 1), BONDED, 8.7, 14, 1},
    {METRIC(10, 1), BONDED, 10.7, 16, 1.5},
    {METRIC(12, 1.5), BONDED, 12.7, 18, 1.5},
    {METRIC(14, 1.5), BONDED, 14.7, 22, 1.5},
    {METRIC(16, 1.5), BONDED, 16.7, 24, 1.5},
    {METRIC(18, 1.5), BONDED, 18.7, 26, 1.5},
    {METRIC(20, 1.5), BONDED, 20.7, 28, 1.5},
    {METRIC(22, 1.5), BONDED, 22.7, 30, 2},
    {METRIC(24, 1.5), BONDED, 24.7, 32, 2},
    {METRIC(26, 1.5), BONDED, 26.7, 35, 2},
    {METRIC(27, 2), BONDED, 27.7, 36, 2},
    {METRIC(30, 2), BONDED, 30.7, 39, 2},
    {METRIC(33, 2), BONDED, 33.7, 42, 2},
    {PIPE(8, 56), BONDED, 10.37, 15.88, 2.03},
    {PIPE(16, 38), BONDED, 13.74, 20.57, 2.03},
    {PIPE(24, 38), BONDED, 17.28, 23.8, 2.03},
    {PIPE(32, 28), BONDED, 21.54, 28.58, 2.64},
    {PIPE(48, 28), BONDED, 27.05, 34.93, 2.64},
    {PIPE(64, 22), BONDED, 33.89, 42.8, 3.38},
};

const ow_ring_rows ow_face_rings = {ROWS, sizeof ROWS / sizeof ROWS[0]};
