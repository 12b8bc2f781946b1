/* SPDX-License-Identifier: MIT */
/*
 * Each way to agree of the table of rules (ow_joint_agree) is a kind of key: the thread, the size, the bore,
 * the name. A test holds the keys against the rules, over all ends known.
 */
#include "joints/meeting.h"

#include "ends/sizes.h"
#include "joints/rules.h"

typedef enum agreed { BY_THREAD, BY_TUBE, BY_BORE, BY_SIZE, BY_NAME } agreed;

/* Different figures may give one key: that only costs a look at the rules. */
static uint64_t key_of(agreed by, uint64_t first, uint64_t second)
{
    return (uint64_t)by << 60 ^ first << 32 ^ second;
}

static void add(ow_meetings *meetings, uint64_t key)
{
    for (size_t i = 0; i < meetings->count; i++)
        if (meetings->keys[i] == key)
            return;
    meetings->keys[meetings->count++] = key;
}

static uint64_t number_of(int32_t figure)
{
    return (uint32_t)figure;
}

static uint64_t number_of_name(const char *name)
{
    uint64_t number = 14695981039346656037u; /* FNV-1a, 64 bits */
    for (; *name != '\0'; name++)
        number = (number ^ (unsigned char)*name) * 1099511628211u;
    return number >> 4;
}

/* Bores fall into bands as wide as a tail's reach from the least hose to the largest, so that what a tail
 * fits lies in its own band or the next. */
#define BAND_UM (2 * OW_TAIL_FIT_UM)

static uint64_t band_of(int32_t bore_um)
{
    return bore_um < 0 ? 0 : (uint64_t)bore_um / BAND_UM;
}

static void add_tail(ow_meetings *meetings, const ow_end *tail)
{
    add(meetings, key_of(BY_BORE, 0, band_of(tail->size - OW_TAIL_FIT_UM)));
    add(meetings, key_of(BY_BORE, 0, band_of(tail->size + OW_TAIL_FIT_UM)));
}

static void add_thread(ow_meetings *meetings, const ow_end *end)
{
    add(meetings, key_of(BY_THREAD, number_of(end->thread.size), number_of(end->thread.pitch)));
    const ow_cone_series *series = end->seat == OW_SEAT_CONE24 ? ow_cone_series_find(end->name) : NULL;
    if (series != NULL)
        add(meetings, key_of(BY_TUBE, 0, number_of(series->tube_um)));
}

ow_meetings ow_joint_meetings(const ow_end *end)
{
    ow_meetings meetings = {0};
    switch (end->form) {
    case OW_FORM_THREAD:
        add_thread(&meetings, end);
        break;
    case OW_FORM_TUBE:
        add(&meetings, key_of(BY_TUBE, 0, number_of(end->size)));
        break;
    case OW_FORM_FLANGE:
        add(&meetings, key_of(BY_NAME, 0, number_of_name(end->name)));
        break;
    case OW_FORM_BARB:
    case OW_FORM_BEAD:
        add_tail(&meetings, end);
        break;
    case OW_FORM_HOSE:
        add(&meetings, key_of(BY_BORE, 0, band_of(end->size)));
        add(&meetings, key_of(BY_SIZE, OW_FORM_TAIL, number_of(end->size)));
        break;
    case OW_FORM_TAIL:
    case OW_FORM_DASH:
    case OW_FORM_TUBE_NUT:
    case OW_FORM_BANJO:
    case OW_FORM_WELD:
    case OW_FORM_COUNT:
        add(&meetings, key_of(BY_SIZE, end->form, number_of(end->size)));
        break;
    }
    return meetings;
}
