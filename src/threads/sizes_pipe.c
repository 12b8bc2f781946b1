/* SPDX-License-Identifier: MIT */
/* Pipe sizes and metric tapers. Pipe: nominal size in 1/64 inch, threads per inch times 2. */
#include "threads/sizes.h"

#define B1_20_1 "ASME B1.20.1-2013"
#define B1_20_3 "ASME B1.20.3"
#define ISO_7 "ISO 7-1:1994"
#define ISO_228 "ISO 228-1"
#define DIN_158 "DIN 158-1:1997"

/* clang-format off */
static const ow_thread_row rows[] = {
    {{OW_THREAD_METRIC_TAPER, 6000, 1000}, "", false, DIN_158, ""},
    {{OW_THREAD_METRIC_TAPER, 8000, 1000}, "", false, DIN_158, ""},
    {{OW_THREAD_METRIC_TAPER, 10000, 1000}, "", false, DIN_158, "oil-pressure switches and senders (sizes from memory)"},
    {{OW_THREAD_METRIC_TAPER, 12000, 1500}, "", false, DIN_158, "oil-pressure switches and senders (sizes from memory)"},
    {{OW_THREAD_METRIC_TAPER, 14000, 1500}, "", false, DIN_158, ""},
    {{OW_THREAD_METRIC_TAPER, 16000, 1500}, "", false, DIN_158, ""},
    {{OW_THREAD_METRIC_TAPER, 18000, 1500}, "", false, DIN_158, ""},
    {{OW_THREAD_METRIC_TAPER, 20000, 1500}, "", false, DIN_158, ""},
    {{OW_THREAD_METRIC_TAPER, 22000, 1500}, "", false, DIN_158, ""},
    {{OW_THREAD_NPT, 4, 54}, "", true, B1_20_1, ""},
    {{OW_THREAD_NPT, 8, 54}, "", true, B1_20_1, ""},
    {{OW_THREAD_NPT, 16, 36}, "", true, B1_20_1, ""},
    {{OW_THREAD_NPT, 24, 36}, "", true, B1_20_1, ""},
    {{OW_THREAD_NPT, 32, 28}, "", true, B1_20_1, ""},
    {{OW_THREAD_NPT, 48, 28}, "", true, B1_20_1, ""},
    {{OW_THREAD_NPT, 64, 23}, "", true, B1_20_1, ""},
    {{OW_THREAD_NPT, 80, 23}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPT, 96, 23}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPT, 128, 23}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPTF, 4, 54}, "", false, B1_20_3, ""},
    {{OW_THREAD_NPTF, 8, 54}, "", false, B1_20_3, ""},
    {{OW_THREAD_NPTF, 16, 36}, "", false, B1_20_3, ""},
    {{OW_THREAD_NPTF, 24, 36}, "", false, B1_20_3, ""},
    {{OW_THREAD_NPTF, 32, 28}, "", false, B1_20_3, ""},
    {{OW_THREAD_NPTF, 48, 28}, "", false, B1_20_3, ""},
    {{OW_THREAD_NPTF, 64, 23}, "", false, B1_20_3, ""},
    {{OW_THREAD_NPSM, 8, 54}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 16, 36}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 24, 36}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 32, 28}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 48, 28}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 64, 23}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 80, 23}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 96, 23}, "", false, B1_20_1, ""},
    {{OW_THREAD_NPSM, 128, 23}, "", false, B1_20_1, ""},
    {{OW_THREAD_R, 4, 56}, "", false, ISO_7, ""},
    {{OW_THREAD_R, 8, 56}, "", true, ISO_7, ""},
    {{OW_THREAD_R, 16, 38}, "", true, ISO_7, ""},
    {{OW_THREAD_R, 24, 38}, "", true, ISO_7, ""},
    {{OW_THREAD_R, 32, 28}, "", true, ISO_7, ""},
    {{OW_THREAD_R, 48, 28}, "", true, ISO_7, ""},
    {{OW_THREAD_R, 64, 22}, "", true, ISO_7, ""},
    {{OW_THREAD_R, 80, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_R, 96, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_R, 128, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_RC, 4, 56}, "", false, ISO_7, ""},
    {{OW_THREAD_RC, 8, 56}, "", true, ISO_7, ""},
    {{OW_THREAD_RC, 16, 38}, "", true, ISO_7, ""},
    {{OW_THREAD_RC, 24, 38}, "", true, ISO_7, ""},
    {{OW_THREAD_RC, 32, 28}, "", true, ISO_7, ""},
    {{OW_THREAD_RC, 48, 28}, "", true, ISO_7, ""},
    {{OW_THREAD_RC, 64, 22}, "", true, ISO_7, ""},
    {{OW_THREAD_RC, 80, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_RC, 96, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_RC, 128, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_RP, 4, 56}, "", false, ISO_7, ""},
    {{OW_THREAD_RP, 8, 56}, "", true, ISO_7, ""},
    {{OW_THREAD_RP, 16, 38}, "", true, ISO_7, ""},
    {{OW_THREAD_RP, 24, 38}, "", true, ISO_7, ""},
    {{OW_THREAD_RP, 32, 28}, "", true, ISO_7, ""},
    {{OW_THREAD_RP, 48, 28}, "", true, ISO_7, ""},
    {{OW_THREAD_RP, 64, 22}, "", true, ISO_7, ""},
    {{OW_THREAD_RP, 80, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_RP, 96, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_RP, 128, 22}, "", false, ISO_7, ""},
    {{OW_THREAD_G, 4, 56}, "", false, ISO_228, ""},
    {{OW_THREAD_G, 8, 56}, "", true, ISO_228, ""},
    {{OW_THREAD_G, 16, 38}, "", true, ISO_228, ""},
    {{OW_THREAD_G, 24, 38}, "", true, ISO_228, ""},
    {{OW_THREAD_G, 32, 28}, "", true, ISO_228, ""},
    {{OW_THREAD_G, 40, 28}, "", false, ISO_228, ""},
    {{OW_THREAD_G, 48, 28}, "", true, ISO_228, ""},
    {{OW_THREAD_G, 56, 28}, "", false, ISO_228, ""},
    {{OW_THREAD_G, 64, 22}, "", true, ISO_228, ""},
    {{OW_THREAD_G, 72, 22}, "", false, ISO_228, ""},
    {{OW_THREAD_G, 80, 22}, "", false, ISO_228, ""},
    {{OW_THREAD_G, 96, 22}, "", false, ISO_228, ""},
    {{OW_THREAD_G, 112, 22}, "", false, ISO_228, ""},
    {{OW_THREAD_G, 128, 22}, "", false, ISO_228, ""},
};
/* clang-format on */

const ow_thread_rows ow_pipe_rows = {rows, sizeof rows / sizeof rows[0]};

/*
 * ASME B1.20.1-2013 table 2: D and L1; greatest truncation as in its table of the thread form.
 */
static const ow_npt_size npt_sizes[] = {
    {4, 54, 0.3125, 0.160, 0.096},  {8, 54, 0.405, 0.1615, 0.096}, {16, 36, 0.540, 0.2278, 0.088},
    {24, 36, 0.675, 0.240, 0.088},  {32, 28, 0.840, 0.320, 0.078}, {48, 28, 1.050, 0.339, 0.078},
    {64, 23, 1.315, 0.400, 0.073},  {80, 23, 1.660, 0.420, 0.073}, {96, 23, 1.900, 0.420, 0.073},
    {128, 23, 2.375, 0.436, 0.073},
};

/*
 * ISO 7-1:1994 table 1 (gauge and useful lengths; Rp tolerance and gauge tolerance from memory) and
 * ISO 228-1 table 1 (diameters and tolerances). Sizes over 1: from memory.
 */
static const ow_whitworth_size whitworth_sizes[] = {
    {4, 56, 7.723, 4.0, 6.5, 0.9, 0.071, 0.107, 0.282, 0.214},
    {8, 56, 9.728, 4.0, 6.5, 0.9, 0.071, 0.107, 0.282, 0.214},
    {16, 38, 13.157, 6.0, 9.7, 1.3, 0.104, 0.125, 0.445, 0.250},
    {24, 38, 16.662, 6.4, 10.1, 1.3, 0.104, 0.125, 0.445, 0.250},
    {32, 28, 20.955, 8.2, 13.2, 1.8, 0.142, 0.142, 0.541, 0.284},
    {40, 28, 22.911, 0, 0, 0, 0, 0.142, 0.541, 0.284},
    {48, 28, 26.441, 9.5, 14.5, 1.8, 0.142, 0.142, 0.541, 0.284},
    {56, 28, 30.201, 0, 0, 0, 0, 0.142, 0.541, 0.284},
    {64, 22, 33.249, 10.4, 16.8, 2.3, 0.180, 0.180, 0.640, 0.360},
    {72, 22, 37.897, 0, 0, 0, 0, 0.180, 0.640, 0.360},
    {80, 22, 41.910, 12.7, 19.1, 2.3, 0.180, 0.180, 0.640, 0.360},
    {96, 22, 47.803, 12.7, 19.1, 2.3, 0.180, 0.180, 0.640, 0.360},
    {112, 22, 53.746, 0, 0, 0, 0, 0.180, 0.640, 0.360},
    {128, 22, 59.614, 15.9, 23.4, 2.3, 0.180, 0.180, 0.640, 0.360},
};

/* DIN 158-1:1997, short form: useful lengths as a public table of DIN 3852-1 stud ends has them, gauge
 * lengths from memory. */
static const ow_metric_taper_size metric_taper_sizes[] = {
    {6000, 1000, 2.5, 5.5},  {8000, 1000, 2.5, 5.5},   {10000, 1000, 2.5, 5.5},
    {12000, 1500, 3.5, 8.5}, {14000, 1500, 3.5, 8.5},  {16000, 1500, 3.5, 8.5},
    {18000, 1500, 3.5, 8.5}, {20000, 1500, 4.5, 10.5}, {22000, 1500, 4.5, 10.5},
};

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

const ow_npt_size *ow_npt_size_find(int32_t size)
{
    for (size_t i = 0; i < COUNT(npt_sizes); i++)
        if (npt_sizes[i].size == size)
            return &npt_sizes[i];
    return NULL;
}

const ow_whitworth_size *ow_whitworth_size_find(int32_t size)
{
    for (size_t i = 0; i < COUNT(whitworth_sizes); i++)
        if (whitworth_sizes[i].size == size)
            return &whitworth_sizes[i];
    return NULL;
}

const ow_metric_taper_size *ow_metric_taper_size_find(int32_t size, int32_t pitch)
{
    for (size_t i = 0; i < COUNT(metric_taper_sizes); i++)
        if (metric_taper_sizes[i].size == size && metric_taper_sizes[i].pitch == pitch)
            return &metric_taper_sizes[i];
    return NULL;
}
