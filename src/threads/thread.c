/* SPDX-License-Identifier: MIT */
/* The list of sizes, and what can be said of a thread without its limits. Reading a designation is
 * in thread_read.c. */
#include "oilway/thread.h"

#include <math.h>

#include "threads/sizes.h"

#define M_PER_UM 1e-6
#define M_PER_MM 1e-3
#define M_PER_INCH 0.0254

static const ow_thread_rows *const lists[] = {&ow_metric_rows, &ow_unified_rows, &ow_pipe_rows};
#define LIST_COUNT (sizeof lists / sizeof lists[0])

bool ow_thread_is_inch(ow_thread_family family)
{
    return family != OW_THREAD_METRIC && family != OW_THREAD_METRIC_TAPER;
}

bool ow_thread_is_taper(ow_thread_family family)
{
    return family == OW_THREAD_METRIC_TAPER || family == OW_THREAD_NPT || family == OW_THREAD_NPTF ||
           family == OW_THREAD_R || family == OW_THREAD_RC;
}

bool ow_thread_same(const ow_thread *a, const ow_thread *b)
{
    return a->family == b->family && a->size == b->size && a->pitch == b->pitch;
}

size_t ow_thread_count(void)
{
    size_t count = 0;
    for (size_t i = 0; i < LIST_COUNT; i++)
        count += lists[i]->count;
    return count;
}

const ow_thread *ow_thread_at(size_t index)
{
    for (size_t i = 0; i < LIST_COUNT; i++) {
        if (index < lists[i]->count)
            return &lists[i]->rows[index].thread;
        index -= lists[i]->count;
    }
    return NULL;
}

const ow_thread_row *ow_thread_row_find(const ow_thread *thread)
{
    for (size_t i = 0; i < LIST_COUNT; i++)
        for (size_t k = 0; k < lists[i]->count; k++)
            if (ow_thread_same(&lists[i]->rows[k].thread, thread))
                return &lists[i]->rows[k];
    return NULL;
}

/* ASME B1.20.1: E1 = E0 + L1/16 with E0 = D - (0.05 D + 1.1) P; major = E1 + 0.8 P. NPSM: the
 * straight thread on pitch diameter E1, with the full 60 degree profile. */
static double npt_major_m(const ow_thread *thread)
{
    const ow_npt_size *size = ow_npt_size_find(thread->size);
    if (!size)
        return 0;
    double pitch_in = 2.0 / size->pitch;
    double small_end_in = size->pipe_diameter_in - (0.05 * size->pipe_diameter_in + 1.1) * pitch_in;
    double height_in = (thread->family == OW_THREAD_NPSM ? 0.75 * sqrt(0.75) : 0.8) * pitch_in;
    return (small_end_in + size->hand_tight_in / 16 + height_in) * M_PER_INCH;
}

double ow_thread_major_m(const ow_thread *thread)
{
    switch (thread->family) {
    case OW_THREAD_METRIC:
    case OW_THREAD_METRIC_TAPER:
        return thread->size * M_PER_UM;
    case OW_THREAD_UNIFIED:
        return thread->size * M_PER_INCH / 64;
    case OW_THREAD_NPT:
    case OW_THREAD_NPTF:
    case OW_THREAD_NPSM:
        return npt_major_m(thread);
    case OW_THREAD_R:
    case OW_THREAD_RC:
    case OW_THREAD_RP:
    case OW_THREAD_G: {
        const ow_whitworth_size *size = ow_whitworth_size_find(thread->size);
        return size ? size->major_mm * M_PER_MM : 0;
    }
    case OW_THREAD_FAMILY_COUNT:
        break;
    }
    return 0;
}

double ow_thread_pitch_m(const ow_thread *thread)
{
    if (thread->pitch <= 0)
        return 0;
    return ow_thread_is_inch(thread->family) ? 2 * M_PER_INCH / thread->pitch : thread->pitch * M_PER_UM;
}

const char *ow_thread_joins(ow_thread_family family)
{
    static const char *const joins[OW_THREAD_FAMILY_COUNT] = {
        [OW_THREAD_METRIC_TAPER] = "a male, into the parallel metric hole of its size",
        [OW_THREAD_NPT] = "NPT and NPTF of its size; its male also the NPSM swivel, if chamfered 30 degrees",
        [OW_THREAD_NPTF] = "NPTF and NPT of its size, with sealant",
        [OW_THREAD_NPSM] = "a swivel's nut, on a chamfered NPT male of its size",
        [OW_THREAD_R] = "a male, into Rc (taper) or Rp (parallel) of its size; G is tolerated only",
        [OW_THREAD_RC] = "a female, takes R of its size",
        [OW_THREAD_RP] = "a female, takes R of its size; a G male can bind in it",
        [OW_THREAD_G] =
            "G of its size, sealed on its face or a cone; an R male in its hole is tolerated only",
    };
    bool known = (unsigned)family < OW_THREAD_FAMILY_COUNT && joins[family] != NULL;
    return known ? joins[family] : "";
}
