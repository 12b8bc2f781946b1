/* SPDX-License-Identifier: MIT */
/* Which standard reckons a thread, and in which classes. */
#include <math.h>
#include <string.h>

#include "threads/limits.h"

#define DEGREE (3.14159265358979323846 / 180)

/* Which classes each side of a family has; the first of a side is its usual one. */
static const struct side {
    ow_thread_family family;
    bool male;
    ow_thread_class classes[2];
} sides[] = {
    {OW_THREAD_METRIC, true, {OW_CLASS_6G_EXTERNAL, OW_CLASS_6H_EXTERNAL}},
    {OW_THREAD_METRIC, false, {OW_CLASS_6H_INTERNAL, OW_CLASS_USUAL}},
    {OW_THREAD_METRIC_TAPER, true, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_UNIFIED, true, {OW_CLASS_2A, OW_CLASS_3A}},
    {OW_THREAD_UNIFIED, false, {OW_CLASS_2B, OW_CLASS_3B}},
    {OW_THREAD_NPT, true, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_NPT, false, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_NPTF, true, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_NPTF, false, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_NPSM, true, {OW_CLASS_2A, OW_CLASS_USUAL}},
    {OW_THREAD_NPSM, false, {OW_CLASS_2B, OW_CLASS_USUAL}},
    {OW_THREAD_R, true, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_RC, false, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_RP, false, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
    {OW_THREAD_G, true, {OW_CLASS_A, OW_CLASS_B}},
    {OW_THREAD_G, false, {OW_CLASS_USUAL, OW_CLASS_USUAL}},
};

const char *ow_basis_words(ow_basis basis)
{
    static const char *const words[] = {"published", "computed", "from memory"};
    return (unsigned)basis < sizeof words / sizeof words[0] ? words[basis] : "";
}

ow_size_limits ow_limits_between(double basic_m, double least_m, double most_m)
{
    return (ow_size_limits){basic_m, true, true, least_m, most_m};
}

ow_size_limits ow_limits_least(double basic_m, double least_m)
{
    return (ow_size_limits){basic_m, true, false, least_m, least_m};
}

ow_size_limits ow_limits_most(double basic_m, double most_m)
{
    return (ow_size_limits){basic_m, false, true, most_m, most_m};
}

/* ISO 68-1: pitch diameter D - 3/4 H, minor D - 5/4 H. */
void ow_basic_60(ow_thread_size *size, double major_m)
{
    size->depth_m = 0.625 * size->triangle_m;
    size->major.basic_m = major_m;
    size->pitch_diameter.basic_m = major_m - 0.75 * size->triangle_m;
    size->minor.basic_m = major_m - 1.25 * size->triangle_m;
}

static bool is_55(ow_thread_family family)
{
    return family == OW_THREAD_R || family == OW_THREAD_RC || family == OW_THREAD_RP || family == OW_THREAD_G;
}

static const struct side *find_side(ow_thread_family family, bool male)
{
    for (size_t i = 0; i < sizeof sides / sizeof sides[0]; i++)
        if (sides[i].family == family && sides[i].male == male)
            return &sides[i];
    return NULL;
}

static bool class_of(const struct side *side, ow_thread_class wanted, ow_thread_class *given)
{
    if (wanted != OW_CLASS_USUAL && wanted != side->classes[0] && wanted != side->classes[1])
        return false;
    *given = wanted == OW_CLASS_USUAL ? side->classes[0] : wanted;
    return true;
}

/* False if the size is in no table. */
static bool limit(ow_thread_size *size, ow_thread_class given)
{
    const ow_npt_size *npt = ow_npt_size_find(size->thread.size);
    const ow_whitworth_size *whitworth = ow_whitworth_size_find(size->thread.size);
    const ow_metric_taper_size *taper = ow_metric_taper_size_find(size->thread.size, size->thread.pitch);
    switch (size->thread.family) {
    case OW_THREAD_METRIC:
        ow_limits_metric(size, given);
        return true;
    case OW_THREAD_METRIC_TAPER:
        if (taper)
            ow_limits_metric_taper(size, taper);
        return taper != NULL;
    case OW_THREAD_UNIFIED:
        ow_limits_unified(size, given);
        return true;
    case OW_THREAD_NPT:
    case OW_THREAD_NPTF:
        if (npt)
            ow_limits_npt(size, npt);
        return npt != NULL;
    case OW_THREAD_NPSM:
        if (npt)
            ow_limits_npsm(size);
        return npt != NULL;
    case OW_THREAD_R:
    case OW_THREAD_RC:
    case OW_THREAD_RP:
        if (whitworth && whitworth->gauge_mm > 0)
            ow_limits_iso_7(size, whitworth);
        return whitworth && whitworth->gauge_mm > 0;
    case OW_THREAD_G:
        if (whitworth)
            ow_limits_iso_228(size, whitworth, given);
        return whitworth != NULL;
    case OW_THREAD_FAMILY_COUNT:
        break;
    }
    return false;
}

ow_status ow_thread_size_of(const ow_thread *thread, bool male, ow_thread_class class_wanted,
                            ow_thread_size *size)
{
    ow_thread_class given;
    const struct side *side = find_side(thread->family, male);
    if (!side)
        return OW_NONE;
    if (thread->pitch <= 0 || thread->size <= 0 || !class_of(side, class_wanted, &given))
        return OW_RANGE;
    ow_thread_size made = {.thread = *thread, .male = male, .class_name = ow_thread_class_name(given)};
    made.pitch_m = ow_thread_pitch_m(thread);
    made.flank_angle_rad = (is_55(thread->family) ? 27.5 : 30) * DEGREE;
    made.triangle_m = (is_55(thread->family) ? OW_TRIANGLE_55 : OW_TRIANGLE_60) * made.pitch_m;
    made.taper = ow_thread_is_taper(thread->family) ? OW_PIPE_TAPER : 0;
    if (made.pitch_m * 2 > ow_thread_major_m(thread) || !limit(&made, given))
        return OW_RANGE;
    *size = made;
    return OW_OK;
}

static ow_size_limits shifted(ow_size_limits limits, double by_m)
{
    limits.basic_m += by_m;
    limits.least_m += by_m;
    limits.most_m += by_m;
    return limits;
}

ow_size_limits ow_thread_crest_at(const ow_thread_size *size, double distance_m)
{
    double from_gauge_m = distance_m - size->gauge_m;
    if (size->male)
        return shifted(size->major, from_gauge_m * size->taper);
    return shifted(size->minor, -from_gauge_m * size->taper);
}

const char *ow_thread_use(const ow_thread *thread)
{
    const ow_thread_row *row = ow_thread_row_find(thread);
    return row ? row->use : "";
}

bool ow_thread_is_everyday(const ow_thread *thread)
{
    const ow_thread_row *row = ow_thread_row_find(thread);
    return row && row->everyday;
}
