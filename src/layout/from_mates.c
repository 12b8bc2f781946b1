/* SPDX-License-Identifier: MIT */
/*
 * Which kinds of a net mate. Held against the rules are only kinds that have a meeting in common (a thread, a
 * size, a bore), so that a catalogue of many kinds costs little more than the pairs it has.
 */
#include "base/sort.h"
#include "joints/meeting.h"
#include "joints/rules.h"
#include "layout/from_search.h"
#include "oilway/joint.h"

/* Two males, two screwed ends of different threads, two ends of one form and different sizes never mate: said
 * here first, because most pairs are such and the rules need not be asked. A test holds it against the rules.
 */
static bool plainly_apart(const ow_end *a, const ow_end *b)
{
    if (a->gender == b->gender && a->gender != OW_GENDER_NONE)
        return true;
    if (a->form != b->form)
        return false;
    if (a->form == OW_FORM_THREAD)
        return a->thread.size != b->thread.size || a->thread.pitch != b->thread.pitch;
    return a->size != b->size || a->size_unit != b->size_unit;
}

bool ow_net_pair(const ow_end *a, const ow_end *b, bool *tolerated, bool *turns)
{
    if (plainly_apart(a, b))
        return false;
    const ow_joint_rule *rule = ow_joint_find(a, b);
    if (rule == NULL)
        return false;
    *tolerated = rule->verdict == OW_TOLERATED;
    *turns = ow_joint_turns(a, b);
    return true;
}

/* Which forms and seats any rule brings together. */
#define FACES ((size_t)OW_FORM_COUNT * OW_SEAT_COUNT)

static size_t face_of(ow_form form, ow_seat seat)
{
    return (size_t)form * OW_SEAT_COUNT + (size_t)seat;
}

static bool *faces_that_meet(const ow_context *context)
{
    bool *meet = ow_new_array(context, FACES * FACES, sizeof *meet);
    const ow_joint_row *row;
    for (size_t i = 0; meet != NULL && (row = ow_joint_row_at(i)) != NULL; i++) {
        size_t first = face_of(row->first.form, row->first.seat);
        size_t second = face_of(row->second.form, row->second.seat);
        meet[first * FACES + second] = meet[second * FACES + first] = true;
    }
    return meet;
}

/* One meeting of one kind. */
typedef struct place {
    uint64_t key;
    uint16_t kind;
} place;

typedef struct mating {
    const ow_net *net;
    bool *meet;
    place *places;
    uint32_t *order; /* of places: by key, then kind */
    size_t place_count;
    ow_net_mate *mates;
    size_t count, capacity;
} mating;

static int compare_places(const void *items, uint32_t left, uint32_t right)
{
    const place *a = (const place *)items + left, *b = (const place *)items + right;
    if (a->key != b->key)
        return a->key < b->key ? -1 : 1;
    return a->kind < b->kind ? -1 : a->kind > b->kind;
}

static ow_status list_places(mating *now)
{
    const ow_net *net = now->net;
    size_t most = net->kind_count * OW_MEETINGS_MAX + 1;
    now->places = ow_new_array(net->context, most, sizeof *now->places);
    now->order = ow_new_array(net->context, most, sizeof *now->order);
    if (now->places == NULL || now->order == NULL)
        return OW_MEMORY;
    for (size_t kind = 0; kind < net->kind_count; kind++) {
        ow_meetings meetings = ow_joint_meetings(&net->kinds[kind]);
        for (size_t i = 0; i < meetings.count; i++) {
            now->places[now->place_count] = (place){meetings.keys[i], (uint16_t)kind};
            now->order[now->place_count] = (uint32_t)now->place_count;
            now->place_count++;
        }
    }
    return ow_sort(net->context, now->order, now->place_count, compare_places, now->places);
}

static ow_status note_pair(mating *now, uint16_t a, uint16_t b)
{
    const ow_end *first = &now->net->kinds[a], *second = &now->net->kinds[b];
    bool tolerated, turns;
    if (!now->meet[face_of(first->form, first->seat) * FACES + face_of(second->form, second->seat)] ||
        !ow_net_pair(first, second, &tolerated, &turns))
        return OW_OK;
    ow_status status =
        ow_grow(now->net->context, (void **)&now->mates, &now->capacity, now->count + 1, sizeof *now->mates);
    if (status == OW_OK)
        now->mates[now->count++] = (ow_net_mate){a, b, tolerated, turns};
    return status;
}

static ow_status list_pairs(mating *now)
{
    ow_status status = OW_OK;
    for (size_t i = 0; i < now->place_count; i++) {
        const place *at = &now->places[now->order[i]];
        for (size_t j = i; status == OW_OK && j < now->place_count; j++) {
            const place *other = &now->places[now->order[j]];
            if (other->key != at->key)
                break;
            status = note_pair(now, at->kind, other->kind);
        }
    }
    return status;
}

static int compare_mates(const void *items, uint32_t left, uint32_t right)
{
    const ow_net_mate *a = (const ow_net_mate *)items + left, *b = (const ow_net_mate *)items + right;
    if (a->a != b->a)
        return a->a < b->a ? -1 : 1;
    return a->b < b->b ? -1 : a->b > b->b;
}

/* In order, and each pair once: two kinds may meet in more than one place. */
static ow_status order_pairs(mating *now, ow_net_mate **mates, size_t *count)
{
    const ow_context *context = now->net->context;
    ow_net_mate *ordered = ow_new_array(context, now->count + 1, sizeof *ordered);
    uint32_t *order = ow_new_array(context, now->count + 1, sizeof *order);
    ow_status status = ordered == NULL || order == NULL ? OW_MEMORY : OW_OK;
    size_t kept = 0;
    if (status != OW_OK)
        goto done;
    for (size_t i = 0; i < now->count; i++)
        order[i] = (uint32_t)i;
    status = ow_sort(context, order, now->count, compare_mates, now->mates);
    if (status != OW_OK)
        goto done;
    for (size_t i = 0; i < now->count; i++)
        if (i == 0 || compare_mates(now->mates, order[i - 1], order[i]) != 0)
            ordered[kept++] = now->mates[order[i]];
    *mates = ordered;
    *count = kept;
    ordered = NULL;
done:
    ow_release(context, order);
    ow_release(context, ordered);
    return status;
}

ow_status ow_net_find_mates(const ow_net *net, ow_net_mate **mates, size_t *count)
{
    mating now = {.net = net, .meet = faces_that_meet(net->context)};
    ow_status status = now.meet == NULL ? OW_MEMORY : list_places(&now);
    if (status == OW_OK)
        status = list_pairs(&now);
    if (status == OW_OK)
        status = order_pairs(&now, mates, count);
    ow_release(net->context, now.mates);
    ow_release(net->context, now.order);
    ow_release(net->context, now.places);
    ow_release(net->context, now.meet);
    return status;
}
