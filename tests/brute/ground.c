/* SPDX-License-Identifier: MIT */
/* What is reckoned once for an ask: usable parts, what can be closed, how far it is to a port. All
 * by going round until nothing changes. */
#include <stdlib.h>
#include <string.h>

#include "brute/state.h"

/* Least parts to close the end behind each entry; `skip` is left out. */
static void reckon_closing(const brute_ground *ground, int skip, int closing[BRUTE_KINDS])
{
    const brute_net *net = ground->net;
    for (int kind = 0; kind < BRUTE_KINDS; kind++)
        closing[kind] = BRUTE_FAR;
    for (bool changed = true; changed;) {
        changed = false;
        for (int i = 0; i < net->part_count; i++) {
            const brute_part *part = &net->parts[i];
            for (int entry = 0; ground->usable[i] && i != skip && entry < brute_part_entries(part); entry++) {
                int sum = 1;
                for (int exit = 0; exit < part->end_count; exit++)
                    sum += exit == entry ? 0 : closing[part->kind[exit]];
                for (int kind = 0; kind < net->kind_count; kind++)
                    if (sum < closing[kind] && brute_joins(ground, kind, part->kind[entry])) {
                        closing[kind] = sum;
                        changed = true;
                    }
            }
        }
    }
}

/* Whether a part entered at `entry` closes with the forced part in it or beyond it. */
static bool closes_with_forced(const brute_ground *ground, int index, int entry)
{
    const brute_part *part = &ground->net->parts[index];
    bool is_forced = index == ground->ask->forced;
    for (int with = 0; with < part->end_count; with++) {
        if ((with == entry) != is_forced)
            continue;
        bool closes = true;
        for (int exit = 0; exit < part->end_count; exit++)
            if (exit != entry)
                closes = closes && (exit == with ? ground->closing_forced[part->kind[exit]]
                                                 : ground->closing_plain[part->kind[exit]]);
        if (closes)
            return true;
    }
    return false;
}

static void reckon_closing_forced(brute_ground *ground)
{
    for (bool changed = true; changed;) {
        changed = false;
        for (int i = 0; i < ground->net->part_count; i++)
            for (int entry = 0; ground->usable[i] && entry < brute_part_entries(&ground->net->parts[i]);
                 entry++) {
                if (!closes_with_forced(ground, i, entry))
                    continue;
                for (int kind = 0; kind < ground->net->kind_count; kind++)
                    if (!ground->closing_forced[kind] &&
                        brute_joins(ground, kind, ground->net->parts[i].kind[entry]))
                        ground->closing_forced[kind] = changed = true;
            }
    }
}

static void reckon_distance(brute_ground *ground)
{
    const brute_net *net = ground->net;
    for (int kind = 0; kind < BRUTE_KINDS; kind++) {
        ground->distance[kind] = BRUTE_FAR;
        for (int i = 0; kind < net->kind_count && i < ground->ask->port_count; i++)
            if (brute_joins(ground, kind, ground->ask->ports[i].kind))
                ground->distance[kind] = 0;
    }
    for (bool changed = true; changed;) {
        changed = false;
        for (int i = 0; i < net->part_count; i++) {
            const brute_part *part = &net->parts[i];
            for (int way = 0; ground->usable[i] && way < part->end_count * part->end_count; way++) {
                int entry = way % part->end_count, exit = way / part->end_count;
                int far = ground->distance[part->kind[exit]] + 1;
                for (int kind = 0; exit != entry && kind < net->kind_count; kind++)
                    if (far < ground->distance[kind] && brute_joins(ground, kind, part->kind[entry])) {
                        ground->distance[kind] = far;
                        changed = true;
                    }
            }
        }
    }
}

void brute_ground_lay(brute_ground *ground, const brute_net *net, const brute_ask *ask)
{
    int closing_plain[BRUTE_KINDS];
    memset(ground, 0, sizeof *ground);
    ground->net = net;
    ground->ask = ask;
    for (int i = 0; i < net->part_count; i++)
        ground->usable[i] = brute_part_passes(net, ask, i);
    reckon_closing(ground, -1, ground->closing);
    reckon_closing(ground, ask->forced_once ? ask->forced : -1, closing_plain);
    for (int kind = 0; kind < BRUTE_KINDS; kind++)
        ground->closing_plain[kind] = closing_plain[kind] < BRUTE_FAR;
    if (ask->forced >= 0)
        reckon_closing_forced(ground);
    reckon_distance(ground);
    ground->first = brute_first_to(ask);
    ground->follow_hoses = ask->flexible != BRUTE_FLEX_ANY;
    ground->follow_restrictors = ask->restrictor != BRUTE_FREE;
    for (int i = 0; i < ask->port_count; i++) {
        if (ask->ports[i].is_to || ask->kept_free)
            continue;
        ground->follow_restrictors = true;
        ground->follow_hoses = ground->follow_hoses || !ask->remote_switch;
    }
}

/* Dead ends need their closings, live ones the way to the nearest port; and where there are more
 * ports than live ends, parts with a third and fourth end must come, each good for two ports at most. */
int brute_still_needed(const brute_ground *ground, const brute_state *state)
{
    int closings = 0, ways = 0, live = 0, ports = 0;
    for (int i = 0; i < ground->ask->port_count; i++)
        ports += state->unserved >> i & 1;
    for (int i = 0; i < state->count; i++) {
        const brute_open *open = &state->open[i];
        if (open->promise == BRUTE_DEAD)
            closings += ground->closing[open->kind];
        else
            ways += ground->distance[open->kind];
        live += open->promise != BRUTE_DEAD;
    }
    int forks = (ports - live + 1) / 2;
    return closings + (ways > forks ? ways : forks);
}

void brute_set_free(brute_set *set)
{
    free(set->states);
    free(set->slots);
    memset(set, 0, sizeof *set);
}

static uint64_t state_hash(const brute_state *state)
{
    const unsigned char *bytes = (const unsigned char *)state;
    uint64_t hash = BRUTE_STATE_BYTES(state), word;
    for (size_t i = 0; i < BRUTE_STATE_BYTES(state); i += sizeof word) {
        size_t left = BRUTE_STATE_BYTES(state) - i;
        word = 0;
        memcpy(&word, bytes + i, left < sizeof word ? left : sizeof word);
        hash = (hash ^ word) * 0x9e3779b97f4a7c15u;
        hash ^= hash >> 31;
    }
    return hash;
}

/* The slot where the state is or would be. */
static long *slot_of(const brute_set *set, const brute_state *state)
{
    uint64_t at = state_hash(state) & (uint64_t)(set->slot_count - 1);
    while (set->slots[at] != 0) {
        const brute_state *there = &set->states[set->slots[at] - 1];
        if (there->count == state->count && memcmp(there, state, BRUTE_STATE_BYTES(state)) == 0)
            break;
        at = (at + 1) & (uint64_t)(set->slot_count - 1);
    }
    return &set->slots[at];
}

static void set_grow(brute_set *set)
{
    set->capacity = set->capacity == 0 ? 256 : set->capacity * 2;
    set->states = realloc(set->states, (size_t)set->capacity * sizeof *set->states);
    free(set->slots);
    set->slot_count = set->capacity * 4; /* a power of two */
    set->slots = calloc((size_t)set->slot_count, sizeof *set->slots);
    if (set->states == NULL || set->slots == NULL)
        abort(); /* a test that is out of memory has nothing to say */
    for (long i = 0; i < set->count; i++)
        *slot_of(set, &set->states[i]) = i + 1;
}

long brute_set_add(brute_set *set, const brute_state *state, bool *fresh)
{
    if (set->count == set->capacity)
        set_grow(set);
    long *slot = slot_of(set, state);
    *fresh = *slot == 0;
    if (*fresh) {
        set->states[set->count] = *state;
        *slot = ++set->count;
    }
    return *slot - 1;
}
