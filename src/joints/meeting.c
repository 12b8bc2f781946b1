/* SPDX-License-Identifier: MIT */
/*
 * Each way to agree of the table of rules (ow_joint_agree) is a kind of key: the thread, the size, the bore,
 * the name. A test holds the keys against the rules, over all ends known.
 */
#include "joints/meeting.h"

#include "base/memory.h"
#include "base/sort.h"
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

/* ---- pairs -------------------------------------------------------------------------------------- */

/* One key of one end. */
typedef struct place {
    uint64_t key;
    uint32_t end;
} place;

typedef struct pairing {
    const ow_context *context;
    place *places;
    uint32_t *order; /* of places: by key, then end */
    size_t place_count;
    ow_meeting *pairs;
    size_t count, capacity;
} pairing;

static int compare_places(const void *items, uint32_t left, uint32_t right)
{
    const place *a = (const place *)items + left, *b = (const place *)items + right;
    if (a->key != b->key)
        return a->key < b->key ? -1 : 1;
    return a->end < b->end ? -1 : a->end > b->end;
}

static ow_status list_places(pairing *now, const ow_end *const *ends, size_t count)
{
    size_t most = count * OW_MEETINGS_MAX + 1;
    now->places = ow_new_array(now->context, most, sizeof *now->places);
    now->order = ow_new_array(now->context, most, sizeof *now->order);
    if (now->places == NULL || now->order == NULL)
        return OW_MEMORY;
    for (size_t end = 0; end < count; end++) {
        ow_meetings meetings = ow_joint_meetings(ends[end]);
        for (size_t i = 0; i < meetings.count; i++) {
            now->places[now->place_count] = (place){meetings.keys[i], (uint32_t)end};
            now->order[now->place_count] = (uint32_t)now->place_count;
            now->place_count++;
        }
    }
    return ow_sort(now->context, now->order, now->place_count, compare_places, now->places);
}

/* Two of one gender never mate: left out here, they are half of what shares a key. */
static bool may_mate(const ow_end *a, const ow_end *b)
{
    return a->gender != b->gender || a->gender == OW_GENDER_NONE;
}

static ow_status list_pairs(pairing *now, const ow_end *const *ends)
{
    ow_status status = OW_OK;
    for (size_t i = 0; i < now->place_count; i++) {
        const place *at = &now->places[now->order[i]];
        for (size_t j = i; status == OW_OK && j < now->place_count; j++) {
            const place *other = &now->places[now->order[j]];
            if (other->key != at->key)
                break;
            if (!may_mate(ends[at->end], ends[other->end]))
                continue;
            status = ow_grow(now->context, (void **)&now->pairs, &now->capacity, now->count + 1,
                             sizeof *now->pairs);
            if (status == OW_OK)
                now->pairs[now->count++] = (ow_meeting){at->end, other->end};
        }
    }
    return status;
}

static int compare_pairs(const void *items, uint32_t left, uint32_t right)
{
    const ow_meeting *a = (const ow_meeting *)items + left, *b = (const ow_meeting *)items + right;
    if (a->a != b->a)
        return a->a < b->a ? -1 : 1;
    return a->b < b->b ? -1 : a->b > b->b;
}

/* In order, and each pair once: two ends may meet in more than one place. */
static ow_status order_pairs(pairing *now, ow_meeting **pairs, size_t *count)
{
    ow_meeting *ordered = ow_new_array(now->context, now->count + 1, sizeof *ordered);
    uint32_t *order = ow_new_array(now->context, now->count + 1, sizeof *order);
    ow_status status = ordered == NULL || order == NULL ? OW_MEMORY : OW_OK;
    size_t kept = 0;
    for (size_t i = 0; status == OW_OK && i < now->count; i++)
        order[i] = (uint32_t)i;
    if (status == OW_OK)
        status = ow_sort(now->context, order, now->count, compare_pairs, now->pairs);
    for (size_t i = 0; status == OW_OK && i < now->count; i++)
        if (i == 0 || compare_pairs(now->pairs, order[i - 1], order[i]) != 0)
            ordered[kept++] = now->pairs[order[i]];
    ow_release(now->context, order);
    if (status != OW_OK) {
        ow_release(now->context, ordered);
        return status;
    }
    *pairs = ordered;
    *count = kept;
    return OW_OK;
}

ow_status ow_joint_meeting_pairs(const ow_context *context, const ow_end *const *ends, size_t count,
                                 ow_meeting **pairs, size_t *pair_count)
{
    pairing now = {.context = context};
    ow_status status = list_places(&now, ends, count);
    if (status == OW_OK)
        status = list_pairs(&now, ends);
    if (status == OW_OK)
        status = order_pairs(&now, pairs, pair_count);
    ow_release(context, now.pairs);
    ow_release(context, now.order);
    ow_release(context, now.places);
    return status;
}
