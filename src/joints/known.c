/* SPDX-License-Identifier: MIT */
/*
 * All ends that the tables know, numbered: blocks of threads, dashes and tubes, cone series, banjos. Each
 * block has a fixed number of ends to a row; what a row has not is passed over when counting.
 */
#include "ends/sizes.h"
#include "oilway/mates.h"
#include "oilway/thread_size.h"

typedef struct thread_kind {
    unsigned families;
    ow_gender gender;
    ow_seat seat;
    bool swivel;
} thread_kind;

#define BIT(family) (1u << (family))
#define PARALLEL (BIT(OW_THREAD_METRIC) | BIT(OW_THREAD_UNIFIED) | BIT(OW_THREAD_G))
#define METRIC_OR_PIPE (BIT(OW_THREAD_METRIC) | BIT(OW_THREAD_G))
#define METRIC BIT(OW_THREAD_METRIC)
#define TAPER_MALE (BIT(OW_THREAD_NPT) | BIT(OW_THREAD_NPTF) | BIT(OW_THREAD_R) | BIT(OW_THREAD_METRIC_TAPER))
#define TAPER_FEMALE (BIT(OW_THREAD_NPT) | BIT(OW_THREAD_NPTF) | BIT(OW_THREAD_RC) | BIT(OW_THREAD_RP))

/* Cones and flares of 30 and 60 degrees on metric threads: common from M12x1.5 up. */
static const thread_kind THREAD_KINDS[] = {
    {PARALLEL, OW_MALE, OW_SEAT_WASHER, false},
    {PARALLEL, OW_FEMALE, OW_SEAT_WASHER, false},
    {PARALLEL, OW_MALE, OW_SEAT_WASHER_CAPTIVE, false},
    {PARALLEL, OW_MALE, OW_SEAT_BANJO, false},
    {METRIC, OW_MALE, OW_SEAT_O_RING, false},
    {METRIC, OW_FEMALE, OW_SEAT_O_RING, false},
    {METRIC_OR_PIPE, OW_MALE, OW_SEAT_CONE60, false},
    {METRIC_OR_PIPE, OW_FEMALE, OW_SEAT_CONE60, true},
    {METRIC_OR_PIPE, OW_MALE, OW_SEAT_FLARE30, false},
    {METRIC_OR_PIPE, OW_FEMALE, OW_SEAT_FLARE30, true},
    {TAPER_MALE, OW_MALE, OW_SEAT_TAPER, false},
    {TAPER_FEMALE, OW_FEMALE, OW_SEAT_TAPER, false},
    {BIT(OW_THREAD_NPSM), OW_FEMALE, OW_SEAT_NPSM, true},
};
#define THREAD_KIND_COUNT (sizeof THREAD_KINDS / sizeof THREAD_KINDS[0])

static bool has_seat(const ow_thread *thread, ow_seat seat)
{
    if (seat == OW_SEAT_O_RING)
        return ow_is_o_ring_port(thread);
    if ((seat == OW_SEAT_CONE60 || seat == OW_SEAT_FLARE30) && thread->family == OW_THREAD_METRIC)
        return thread->size >= 12000 && thread->pitch >= 1500 && ow_thread_is_everyday(thread);
    return true;
}

static bool thread_end(size_t index, ow_end *end)
{
    const ow_thread *thread = ow_thread_at(index / THREAD_KIND_COUNT);
    const thread_kind *kind = &THREAD_KINDS[index % THREAD_KIND_COUNT];
    ow_thread_size size;
    if (!thread || !(kind->families & BIT(thread->family)) || !has_seat(thread, kind->seat) ||
        ow_thread_size_of(thread, kind->gender == OW_MALE, OW_CLASS_USUAL, &size) != OW_OK)
        return false;
    *end = (ow_end){.form = OW_FORM_THREAD,
                    .gender = kind->gender,
                    .seat = kind->seat,
                    .swivel = kind->swivel,
                    .thread = *thread};
    return true;
}

/* Seats whose female is a nut that turns. */
static bool is_nut(ow_seat seat)
{
    return seat == OW_SEAT_FLARE37 || seat == OW_SEAT_FLARE45 || seat == OW_SEAT_FACE_O_RING;
}

static bool size_end(size_t index, ow_end *end)
{
    const ow_seat_size *row = ow_seat_size_at(index / 2);
    if (!row)
        return false;
    ow_gender gender = index % 2 == 0 ? OW_MALE : OW_FEMALE;
    *end = (ow_end){.form = row->unit == OW_SIZE_DASH ? OW_FORM_DASH : OW_FORM_TUBE_NUT,
                    .gender = gender,
                    .seat = row->seat,
                    .swivel = gender == OW_FEMALE && is_nut(row->seat),
                    .size_unit = row->unit,
                    .size = row->size};
    return true;
}

static bool cone_end(size_t index, ow_end *end)
{
    const ow_cone_series *row = ow_cone_series_at(index / 3);
    if (!row)
        return false;
    if (index % 3 == 2) {
        *end = (ow_end){.form = OW_FORM_TUBE, .size_unit = OW_SIZE_UM, .size = row->tube_um};
        return true;
    }
    *end = (ow_end){.form = OW_FORM_THREAD,
                    .gender = index % 3 == 0 ? OW_MALE : OW_FEMALE,
                    .seat = OW_SEAT_CONE24,
                    .swivel = index % 3 == 1,
                    .thread = row->thread};
    for (size_t i = 0; row->name[i]; i++)
        end->name[i] = row->name[i];
    return true;
}

/* Bolts of DIN 7643. */
static const int32_t BANJO_UM[] = {8000, 10000, 12000, 14000, 16000, 18000, 22000, 26000};
#define BANJO_COUNT (sizeof BANJO_UM / sizeof BANJO_UM[0])

static size_t thread_slots(void)
{
    return ow_thread_count() * THREAD_KIND_COUNT;
}

size_t ow_known_end_count(void)
{
    return thread_slots() + 2 * ow_seat_size_count() + 3 * ow_cone_series_count() + 2 * BANJO_COUNT;
}

bool ow_known_end_at(size_t index, ow_end *end)
{
    if (index < thread_slots())
        return thread_end(index, end);
    index -= thread_slots();
    if (index < 2 * ow_seat_size_count())
        return size_end(index, end);
    index -= 2 * ow_seat_size_count();
    if (index < 3 * ow_cone_series_count())
        return cone_end(index, end);
    index -= 3 * ow_cone_series_count();
    if (index >= 2 * BANJO_COUNT)
        return false;
    *end = (ow_end){.form = OW_FORM_BANJO,
                    .gender = index % 2 == 0 ? OW_MALE : OW_FEMALE,
                    .size_unit = OW_SIZE_UM,
                    .size = BANJO_UM[index / 2]};
    return true;
}
