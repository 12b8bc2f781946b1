/* SPDX-License-Identifier: MIT */
/*
 * Which kinds of a net mate. Held against the rules are only kinds that have a meeting in common (a thread, a
 * size, a bore), so that a catalogue of many kinds costs little more than the pairs it has.
 */
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

typedef struct mating {
    const ow_net *net;
    bool *meet;
    const ow_end **ends;
    ow_meeting *pairs;
    size_t pair_count;
    ow_net_mate *mates;
    size_t count, capacity;
} mating;

static ow_status find_pairs(mating *now)
{
    const ow_net *net = now->net;
    now->meet = faces_that_meet(net->context);
    now->ends = ow_new_array(net->context, net->kind_count + 1, sizeof *now->ends);
    if (now->meet == NULL || now->ends == NULL)
        return OW_MEMORY;
    for (size_t kind = 0; kind < net->kind_count; kind++)
        now->ends[kind] = &net->kinds[kind];
    return ow_joint_meeting_pairs(net->context, now->ends, net->kind_count, &now->pairs, &now->pair_count);
}

static ow_status note_pair(mating *now, const ow_meeting *pair)
{
    const ow_end *first = now->ends[pair->a], *second = now->ends[pair->b];
    bool tolerated, turns;
    if (!now->meet[face_of(first->form, first->seat) * FACES + face_of(second->form, second->seat)] ||
        !ow_net_pair(first, second, &tolerated, &turns))
        return OW_OK;
    ow_status status =
        ow_grow(now->net->context, (void **)&now->mates, &now->capacity, now->count + 1, sizeof *now->mates);
    if (status == OW_OK)
        now->mates[now->count++] = (ow_net_mate){(uint16_t)pair->a, (uint16_t)pair->b, tolerated, turns};
    return status;
}

ow_status ow_net_find_mates(const ow_net *net, ow_net_mate **mates, size_t *count)
{
    mating now = {.net = net};
    ow_status status = find_pairs(&now);
    for (size_t i = 0; status == OW_OK && i < now.pair_count; i++)
        status = note_pair(&now, &now.pairs[i]);
    ow_release(net->context, now.pairs);
    ow_release(net->context, now.ends);
    ow_release(net->context, now.meet);
    if (status != OW_OK) {
        ow_release(net->context, now.mates);
        return status;
    }
    *mates = now.mates;
    *count = now.count;
    return OW_OK;
}
