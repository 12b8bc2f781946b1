/* SPDX-License-Identifier: MIT */
/* Steps of the forward walk. */
#include <string.h>

#include "brute/state.h"

bool brute_joins(const brute_ground *ground, int a, int b)
{
    brute_mating mating = ground->net->mates[a][b];
    if (ground->ask->no_clamp && (ground->net->kind_clamped[a] || ground->net->kind_clamped[b]))
        return false;
    return mating == BRUTE_SEALS || (mating == BRUTE_TOLERATED && ground->ask->tolerate);
}

static bool joint_turns(const brute_ground *ground, int a, int b)
{
    return ground->net->turns[a][b];
}

brute_state brute_state_start(const brute_ground *ground)
{
    brute_state state;
    memset(&state, 0, sizeof state);
    state.count = 1;
    state.unserved = (uint8_t)((1 << ground->ask->port_count) - 1);
    state.forced = ground->ask->forced >= 0;
    state.open[0].kind = (uint8_t)ground->ask->source;
    state.open[0].promise = ground->first >= 0 ? BRUTE_FIRST : BRUTE_LIVE;
    state.open[0].piece = 0; /* the source is fixed */
    state.open[0].machine = brute_flexes(ground->ask);
    return state;
}

/* Numbers the pieces anew by first appearance, so that equal situations look equal. */
static void renumber(brute_state *state)
{
    uint8_t piece_of[64] = {0}, machine_of[64] = {0}, pieces = 0, machines = 0;
    for (int i = 0; i < state->count; i++) {
        brute_open *open = &state->open[i];
        if (open->piece != 0 && piece_of[open->piece] == 0)
            piece_of[open->piece] = ++pieces;
        open->piece = piece_of[open->piece];
        if (open->machine != 0 && machine_of[open->machine] == 0)
            machine_of[open->machine] = ++machines;
        open->machine = machine_of[open->machine];
    }
}

/* Whether what the path has been through already rules the port out. */
static bool path_ruled_out(const brute_ask *ask, const brute_open *open, const brute_port *port)
{
    if (!port->is_to)
        return !ask->kept_free && (open->restricted || (open->hoses > 0 && !ask->remote_switch));
    if (open->narrow || (brute_wanted(ask, port) == BRUTE_FORBIDDEN && open->restricted))
        return true;
    if (brute_wanted(ask, port) != BRUTE_FREE && open->restricted > 1)
        return true;
    return (ask->flexible == BRUTE_FLEX_NO && open->hoses > 0) ||
           (ask->flexible == BRUTE_FLEX_YES && open->hoses > 1);
}

static bool path_accepted(const brute_ask *ask, const brute_open *open, const brute_port *port)
{
    if (path_ruled_out(ask, open, port))
        return false;
    if (port->is_to && brute_flexes(ask) && open->hoses == 0)
        return false;
    return !(port->is_to && brute_wanted(ask, port) == BRUTE_REQUIRED && !open->restricted);
}

/* Whether some port that this end may have beyond it is unserved and not yet ruled out. */
static bool any_port_left(const brute_ground *ground, const brute_state *state, const brute_open *open)
{
    for (int i = 0; i < ground->ask->port_count; i++) {
        if ((state->unserved >> i & 1) == 0 || path_ruled_out(ground->ask, open, &ground->ask->ports[i]))
            continue;
        if (ground->first < 0 || (i == ground->first) == (open->promise == BRUTE_FIRST))
            return true;
    }
    return false;
}

/* Live ends and unserved ports must be able to come out even. */
static bool promises_hold(const brute_ground *ground, const brute_state *state)
{
    int live = 0, ports = 0;
    for (int i = 0; i < ground->ask->port_count; i++)
        ports += state->unserved >> i & 1;
    for (int i = 0; i < state->count; i++) {
        const brute_open *open = &state->open[i];
        live += open->promise != BRUTE_DEAD;
        if (open->promise == BRUTE_DEAD && ground->closing[open->kind] >= BRUTE_FAR)
            return false;
        if (open->promise != BRUTE_DEAD &&
            (ground->distance[open->kind] >= BRUTE_FAR || !any_port_left(ground, state, open)))
            return false;
    }
    return live <= ports && (live > 0 || ports == 0);
}

static void take_port(const brute_ground *ground, const brute_state *state, int index, brute_taken taken,
                      void *user)
{
    const brute_ask *ask = ground->ask;
    const brute_port *port = &ask->ports[index];
    brute_state next = *state;
    brute_open open = next.open[--next.count];
    memset(&next.open[next.count], 0, sizeof open);
    if (!brute_joins(ground, open.kind, port->kind) || !path_accepted(ask, &open, port))
        return;
    if (ground->first >= 0 && (index == ground->first) != (open.promise == BRUTE_FIRST))
        return;
    if (ask->closing && port->is_to && !joint_turns(ground, open.kind, port->kind)) {
        if (open.piece == 0)
            return;
        for (int i = 0; i < next.count; i++)
            if (next.open[i].piece == open.piece)
                next.open[i].piece = 0;
    }
    if (brute_flexes(ask) && port->is_to && port->is_machine) {
        if (open.machine == 0)
            return;
        for (int i = 0; i < next.count; i++)
            if (next.open[i].machine == open.machine)
                next.open[i].machine = 0;
    }
    next.unserved &= (uint8_t) ~(1 << index);
    renumber(&next);
    brute_step step = {-1, index, 0, false};
    if (promises_hold(ground, &next))
        taken(user, &next, &step);
}

/* What the path has been through at an exit of a part entered at `entry` from `open`. */
static brute_open beyond(const brute_ground *ground, const brute_open *open, const brute_part *part,
                         int entry, int exit)
{
    const brute_ask *ask = ground->ask;
    brute_open next = *open;
    int in = part->leg_bore_um[entry], out = part->leg_bore_um[exit];
    next.kind = (uint8_t)part->kind[exit];
    if ((ground->follow_hoses || ground->first >= 0) && part->is_hose && next.hoses < 2)
        next.hoses++;
    if (ground->follow_restrictors && part->is_restrictor && next.restricted < 2)
        next.restricted++;
    if (ask->least_bore_um != BRUTE_NOT_SAID && (in < ask->least_bore_um || out < ask->least_bore_um))
        next.narrow = 1; /* not said is less than anything */
    if (ask->closing && joint_turns(ground, open->kind, part->kind[entry]))
        next.piece = 60;
    if (brute_flexes(ask) && part->is_hose)
        next.machine = (uint8_t)(60 + exit); /* whatever is beyond a hose is a piece of its own */
    return next;
}

/* The part with these promises at its exits: `lives` says which are live, `first` which has the first TO. */
static bool take_part(const brute_ground *ground, const brute_state *state, int index, int entry, int lives,
                      int first, brute_taken taken, void *user)
{
    const brute_part *part = &ground->net->parts[index];
    brute_state next = *state;
    brute_open open = next.open[--next.count];
    memset(&next.open[next.count], 0, sizeof open);
    if (next.count + part->end_count > BRUTE_OPEN)
        return false;
    for (int exit = part->end_count - 1; exit >= 0; exit--) {
        if (exit == entry)
            continue;
        brute_open *at = &next.open[next.count++];
        if ((lives >> exit & 1) == 0) {
            memset(at, 0, sizeof *at);
            at->kind = (uint8_t)part->kind[exit];
            continue;
        }
        *at = beyond(ground, &open, part, entry, exit);
        at->promise = exit == first ? BRUTE_FIRST : BRUTE_LIVE;
        if (exit != first && !ground->follow_hoses)
            at->hoses = 0;
    }
    if (index == ground->ask->forced)
        next.forced = 0;
    renumber(&next);
    brute_step step = {index, -1, entry, open.promise == BRUTE_FIRST && open.hoses == 0 && !part->is_hose};
    if (promises_hold(ground, &next))
        taken(user, &next, &step);
    return true;
}

static bool take_part_all_ways(const brute_ground *ground, const brute_state *state, int index, int entry,
                               brute_taken taken, void *user)
{
    const brute_part *part = &ground->net->parts[index];
    int promise = state->open[state->count - 1].promise;
    bool fits = true;
    for (int lives = 0; lives < 1 << part->end_count; lives++) {
        if ((lives >> entry & 1) != 0 || (lives != 0) != (promise != BRUTE_DEAD))
            continue;
        if (promise != BRUTE_FIRST) {
            fits = take_part(ground, state, index, entry, lives, -1, taken, user) && fits;
            continue;
        }
        for (int first = 0; first < part->end_count; first++)
            if ((lives >> first & 1) != 0)
                fits = take_part(ground, state, index, entry, lives, first, taken, user) && fits;
    }
    return fits;
}

bool brute_steps(const brute_ground *ground, const brute_state *state, brute_taken taken, void *user)
{
    const brute_open *open = &state->open[state->count - 1];
    const brute_ask *ask = ground->ask;
    bool fits = true;
    for (int i = 0; open->promise != BRUTE_DEAD && i < ask->port_count; i++)
        if ((state->unserved >> i & 1) != 0)
            take_port(ground, state, i, taken, user);
    for (int i = 0; i < ground->net->part_count; i++) {
        if (!ground->usable[i] || (i == ask->forced && ask->forced_once && !state->forced))
            continue;
        for (int entry = 0; entry < brute_part_entries(&ground->net->parts[i]); entry++)
            if (brute_joins(ground, open->kind, ground->net->parts[i].kind[entry]))
                fits = take_part_all_ways(ground, state, i, entry, taken, user) && fits;
    }
    return fits;
}
