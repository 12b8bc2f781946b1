/* SPDX-License-Identifier: MIT */
/* All mates of one end, right and wrong. */
#include <math.h>
#include <string.h>

#include "base/memory.h"
#include "base/sort.h"
#include "ends/sizes.h"
#include "oilway/mates.h"

/* What does not join is worth a line only where somebody might try it. */
#define NEAR_MISS_M 0.0013
#define NEAR_TUBE_MM 2.0

typedef struct kind_set {
    ow_end *items;
    size_t count, capacity;
    size_t given; /* the first of them, which the caller named */
} kind_set;

static ow_status add_kind(const ow_context *context, kind_set *all, const ow_end *end)
{
    for (size_t i = 0; i < all->count; i++)
        if (ow_end_same(&all->items[i], end))
            return OW_OK;
    ow_status status =
        ow_grow(context, (void **)&all->items, &all->capacity, all->count + 1, sizeof *all->items);
    if (status == OW_OK)
        all->items[all->count++] = *end;
    return status;
}

/* Partners of what has no table: a tail for a hose, a hose for a barb, and the like. */
static ow_status add_partners(const ow_context *context, kind_set *all, const ow_end *end)
{
    ow_end partner = *end;
    ow_status status = OW_OK;
    if (end->form == OW_FORM_HOSE && end->size_unit == OW_SIZE_UM && strcmp(end->name, "ptfe") != 0) {
        partner.form = OW_FORM_BARB;
        memset(partner.name, 0, sizeof partner.name);
        status = add_kind(context, all, &partner);
        partner.form = OW_FORM_BEAD;
        return status == OW_OK ? add_kind(context, all, &partner) : status;
    }
    if (end->form == OW_FORM_HOSE)
        partner.form = OW_FORM_TAIL;
    else if (end->form == OW_FORM_TAIL)
        partner.form = OW_FORM_HOSE;
    else if (end->form == OW_FORM_BANJO)
        partner.gender = end->gender == OW_MALE ? OW_FEMALE : OW_MALE;
    else if (end->form != OW_FORM_FLANGE && end->form != OW_FORM_WELD)
        return OW_OK;
    return add_kind(context, all, &partner);
}

static ow_status gather(const ow_context *context, const ow_end *end, const ow_end *given, size_t given_count,
                        kind_set *all)
{
    ow_status status = OW_OK;
    ow_end known;
    for (size_t i = 0; i < given_count && status == OW_OK; i++)
        status = add_kind(context, all, &given[i]);
    all->given = all->count;
    if (status == OW_OK)
        status = add_partners(context, all, end);
    for (size_t i = 0; i < ow_known_end_count() && status == OW_OK; i++)
        if (ow_known_end_at(i, &known))
            status = add_kind(context, all, &known);
    return status;
}

static ow_status keep(ow_mates_list *list, const ow_mates *mates)
{
    ow_status status =
        ow_grow(list->context, (void **)&list->items, &list->capacity, list->count + 1, sizeof *list->items);
    if (status == OW_OK)
        list->items[list->count++] = *mates;
    return status;
}

static bool is_seat_verdict(ow_verdict verdict)
{
    return verdict == OW_SEALS || verdict == OW_TOLERATED || verdict == OW_WRONG_SEAT;
}

static double major_m(const ow_end *end)
{
    ow_thread thread;
    return ow_end_thread(end, &thread) ? ow_thread_major_m(&thread) : 0.0;
}

/* Whether a pair of threads that geometry alone decides is listed already, by another seat. */
static bool is_listed(const ow_mates_list *list, size_t from, const ow_mates *mates)
{
    ow_thread thread, other;
    if (is_seat_verdict(mates->verdict) || !ow_end_thread(&mates->ends[1], &thread))
        return false;
    for (size_t i = from; i < list->count; i++) {
        const ow_mates *item = &list->items[i];
        if (!is_seat_verdict(item->verdict) && ow_end_thread(&item->ends[1], &other) &&
            ow_thread_same(&thread, &other) && item->ends[1].gender == mates->ends[1].gender)
            return true;
    }
    return false;
}

/* Diameter by which an end that is not screwed goes, or the tube of a 24 degree cone; 0 if it has none. */
static double tube_mm(const ow_end *end)
{
    const ow_cone_series *series = end->seat == OW_SEAT_CONE24 ? ow_cone_series_find(end->name) : NULL;
    if (series)
        return series->tube_um / 1000.0;
    if (end->form == OW_FORM_THREAD || end->form == OW_FORM_DASH || end->form == OW_FORM_TUBE_NUT)
        return 0.0;
    return end->size_unit == OW_SIZE_DASH ? end->size * 25.4 / 16.0 : end->size / 1000.0;
}

static bool is_near_tube(const ow_mates *mates)
{
    const ow_end *a = &mates->ends[0], *b = &mates->ends[1];
    bool clamped = (a->form == OW_FORM_HOSE && (b->form == OW_FORM_BARB || b->form == OW_FORM_BEAD)) ||
                   (b->form == OW_FORM_HOSE && (a->form == OW_FORM_BARB || a->form == OW_FORM_BEAD));
    double one_mm = tube_mm(a), other_mm = tube_mm(b);
    if (one_mm <= 0.0 || other_mm <= 0.0 || fabs(one_mm - other_mm) > NEAR_TUBE_MM)
        return false;
    return mates->verdict != OW_NO_START || clamped;
}

static bool is_worth_a_line(const ow_mates *mates)
{
    const ow_end *a = &mates->ends[0], *b = &mates->ends[1];
    double apart_m = fabs(major_m(a) - major_m(b));
    bool screwed = major_m(a) > 0.0 && major_m(b) > 0.0;
    if (mates->verdict == OW_SEALS || mates->verdict == OW_TOLERATED)
        return true;
    if (!screwed)
        return is_near_tube(mates);
    return mates->verdict != OW_NO_START || (a->gender != b->gender && apart_m <= NEAR_MISS_M);
}

/* seats_only: what geometry alone decides is judged elsewhere, once for all seats of a thread. */
static ow_status judge_reading(const ow_end *reading, bool seats_only, const kind_set *all,
                               ow_mates_list *list)
{
    ow_status status = OW_OK;
    size_t from = list->count;
    for (size_t i = 0; i < all->count && status == OW_OK; i++) {
        ow_mates mates;
        if (!ow_end_is_whole(&all->items[i]) || ow_mates_judge(reading, &all->items[i], &mates) != OW_OK)
            continue;
        if (seats_only && !is_seat_verdict(mates.verdict))
            continue;
        if (is_worth_a_line(&mates) && (i < all->given || !is_listed(list, from, &mates)))
            status = keep(list, &mates);
    }
    return status;
}

/* The thread of a reading, with all else left open as asked. */
static ow_end thread_of_reading(const ow_end *asked, const ow_end *reading)
{
    ow_end bare = *asked;
    bare.seat = OW_SEAT_UNKNOWN;
    bare.name[0] = '\0';
    (void)ow_end_thread(reading, &bare.thread);
    bare.thread.family = asked->thread.family; /* a taper reading of a metric thread is judged by itself */
    return bare;
}

/* Every reading by its seat, and every thread among the readings by its geometry, once. */
static ow_status judge_readings(const ow_end *asked, const kind_set *all, ow_mates_list *list)
{
    kind_set threads = {0};
    ow_status status = OW_OK;
    for (size_t i = 0; i < all->count && status == OW_OK; i++) {
        const ow_end *reading = &all->items[i];
        if (!ow_end_is_reading(asked, reading))
            continue;
        ow_end bare = thread_of_reading(asked, reading);
        bool taper = reading->thread.family == OW_THREAD_METRIC_TAPER;
        status = judge_reading(reading, !taper, all, list);
        if (status == OW_OK && !taper)
            status = add_kind(list->context, &threads, &bare);
    }
    for (size_t i = 0; i < threads.count && status == OW_OK; i++)
        status = judge_reading(&threads.items[i], false, all, list);
    ow_release(list->context, threads.items);
    return status;
}

/* Seals first; a wrong seat is the likelier trap than a wrong thread, so it stands before those. */
static int rank(ow_verdict verdict)
{
    static const int RANKS[OW_VERDICT_COUNT] = {
        [OW_SEALS] = 0, [OW_TOLERATED] = 1, [OW_WRONG_SEAT] = 2, [OW_LEAKS] = 3,
        [OW_WEAK] = 4,  [OW_BINDS] = 5,     [OW_NO_START] = 6};
    return RANKS[verdict];
}

static int by_reading_and_verdict(const void *items, uint32_t left, uint32_t right)
{
    const ow_mates *a = (const ow_mates *)items + left, *b = (const ow_mates *)items + right;
    char first[OW_END_TEXT_SIZE], second[OW_END_TEXT_SIZE];
    int order = strcmp(ow_end_name(&a->ends[0], first), ow_end_name(&b->ends[0], second));
    if (order == 0)
        order = rank(a->verdict) - rank(b->verdict);
    if (order == 0)
        order = strcmp(ow_end_name(&a->ends[1], first), ow_end_name(&b->ends[1], second));
    return order;
}

static int by_verdict(const void *items, uint32_t left, uint32_t right)
{
    const ow_mates *all = items;
    int order = rank(all[left].verdict) - rank(all[right].verdict);
    return order != 0 ? order : by_reading_and_verdict(items, left, right);
}

ow_status ow_mates_of(const ow_context *context, const ow_end *end, const ow_end *kinds, size_t kind_count,
                      ow_mates_list *list)
{
    kind_set all = {0};
    ow_mates_list found = {.context = context};
    ow_status status = gather(context, end, kinds, kind_count, &all);
    if (status == OW_OK && ow_end_is_whole(end))
        status = judge_reading(end, false, &all, &found);
    else if (status == OW_OK)
        status = judge_readings(end, &all, &found);
    if (status == OW_OK)
        status =
            ow_sort_items(context, found.items, found.count, sizeof *found.items, by_reading_and_verdict);
    ow_release(context, all.items);
    if (status == OW_OK)
        *list = found;
    else
        ow_mates_list_done(&found);
    return status;
}

/* A reading whose seat nobody asked for and which does not matter: its bare thread. */
static ow_end without_seat(const ow_end *asked, const ow_end *reading)
{
    ow_end bare = {.form = OW_FORM_THREAD, .gender = reading->gender, .seat = OW_SEAT_UNKNOWN};
    if (asked->seat != OW_SEAT_UNKNOWN || !ow_end_thread(reading, &bare.thread))
        return *reading;
    if (bare.thread.family == OW_THREAD_METRIC_TAPER)
        bare.seat = OW_SEAT_TAPER;
    return bare;
}

static bool is_listed_pair(const ow_mates_list *list, const ow_mates *mates)
{
    for (size_t i = 0; i < list->count; i++)
        if (ow_end_same(&list->items[i].ends[0], &mates->ends[0]) &&
            ow_end_same(&list->items[i].ends[1], &mates->ends[1]))
            return true;
    return false;
}

/* Where seats decide, each pair of readings; where geometry alone does, each pair of threads once. */
static ow_status judge_pair_of_readings(const ow_end *a, const ow_end *b, const ow_end *first,
                                        const ow_end *second, ow_mates_list *list)
{
    ow_mates mates;
    if (ow_mates_judge(first, second, &mates) != OW_OK)
        return OW_OK;
    if (!is_seat_verdict(mates.verdict)) {
        mates.ends[0] = without_seat(a, first);
        mates.ends[1] = without_seat(b, second);
        if (is_listed_pair(list, &mates))
            return OW_OK;
    }
    return keep(list, &mates);
}

static ow_status judge_pairs(const ow_end *a, const ow_end *b, const kind_set *all, ow_mates_list *list)
{
    ow_status status = OW_OK;
    for (size_t i = 0; i < all->count && status == OW_OK; i++) {
        if (!ow_end_is_reading(a, &all->items[i]))
            continue;
        for (size_t j = 0; j < all->count && status == OW_OK; j++)
            if (ow_end_is_reading(b, &all->items[j]))
                status = judge_pair_of_readings(a, b, &all->items[i], &all->items[j], list);
    }
    return status;
}

ow_status ow_mates_pair(const ow_context *context, const ow_end *a, const ow_end *b, const ow_end *kinds,
                        size_t kind_count, ow_mates_list *list)
{
    kind_set all = {0};
    ow_mates_list found = {.context = context};
    ow_mates mates;
    ow_status status = ow_mates_judge(a, b, &mates);
    if (status == OW_OK) {
        status = keep(&found, &mates);
    } else {
        /* A whole end is its own reading, whether a table has it or not. */
        status = gather(context, a, kinds, kind_count, &all);
        if (status == OW_OK && ow_end_is_whole(a))
            status = add_kind(context, &all, a);
        if (status == OW_OK && ow_end_is_whole(b))
            status = add_kind(context, &all, b);
        if (status == OW_OK)
            status = judge_pairs(a, b, &all, &found);
    }
    if (status == OW_OK)
        status = ow_sort_items(context, found.items, found.count, sizeof *found.items, by_verdict);
    ow_release(context, all.items);
    if (status == OW_OK)
        *list = found;
    else
        ow_mates_list_done(&found);
    return status;
}

void ow_mates_list_done(ow_mates_list *list)
{
    ow_release(list->context, list->items);
    *list = (ow_mates_list){.context = list->context};
}
