/* SPDX-License-Identifier: MIT */
/*
 * Is there any layout? Walks forward over multisets of live ends until nothing new turns up.
 *
 * Why this ends, and why nothing found means none: a dead end can be closed or not whatever else the
 * layout holds, so it is dropped as soon as it appears (ends that cannot be closed are never left
 * dead). Each live end has a port of its own beyond it, so there are never more live ends than
 * unserved ports, six at most; and what a path has been through is one of finitely many. So the
 * states are finitely many. Every complete layout passes through a chain of these states, one for
 * each of its parts and ports on paths; if the empty state is never reached, there is none.
 */
#include <string.h>

#include "brute/state.h"

#define STATES_MOST 20000

typedef struct saturation {
    const brute_ground *ground;
    brute_set set;
    bool reached;
} saturation;

static void sort_open(brute_open *open, int count)
{
    for (int i = 1; i < count; i++) {
        brute_open moved = open[i];
        int place = i;
        for (; place > 0 && memcmp(&open[place - 1], &moved, sizeof moved) > 0; place--)
            open[place] = open[place - 1];
        open[place] = moved;
    }
}

/* Live ends only, in an order of their own, pieces numbered by it. */
static void tidy(brute_state *state)
{
    uint8_t live = 0;
    for (uint8_t i = 0; i < state->count; i++)
        if (state->open[i].promise != BRUTE_DEAD) {
            state->open[live] = state->open[i];
            state->open[live++].promise = BRUTE_LIVE;
        }
    for (uint8_t i = live; i < state->count; i++)
        memset(&state->open[i], 0, sizeof state->open[i]);
    state->count = live;
    sort_open(state->open, live);
    uint8_t piece_of[64] = {0}, machine_of[64] = {0}, pieces = 0, machines = 0;
    for (uint8_t i = 0; i < live; i++) {
        brute_open *open = &state->open[i];
        if (open->piece != 0 && piece_of[open->piece] == 0)
            piece_of[open->piece] = ++pieces;
        open->piece = piece_of[open->piece];
        if (open->machine != 0 && machine_of[open->machine] == 0)
            machine_of[open->machine] = ++machines;
        open->machine = machine_of[open->machine];
    }
}

static void note(saturation *s, brute_state next)
{
    bool fresh;
    tidy(&next);
    s->reached = s->reached || (next.count == 0 && !next.forced);
    if (next.count > 0)
        brute_set_add(&s->set, &next, &fresh);
}

/* Dead ends go: all without the forced part, or one of them with it. */
static void taken(void *user, const brute_state *state, const brute_step *step)
{
    saturation *s = user;
    const brute_ground *ground = s->ground;
    bool all_plain = true, one_forced = false;
    for (int i = 0; step->part >= 0 && i < state->count; i++) {
        bool others = true;
        if (state->open[i].promise != BRUTE_DEAD)
            continue;
        all_plain = all_plain && ground->closing_plain[state->open[i].kind];
        for (int k = 0; k < state->count; k++)
            if (k != i && state->open[k].promise == BRUTE_DEAD)
                others = others && ground->closing_plain[state->open[k].kind];
        one_forced = one_forced || (others && ground->closing_forced[state->open[i].kind]);
    }
    if (all_plain)
        note(s, *state);
    if (one_forced && state->forced) {
        brute_state used = *state;
        used.forced = 0;
        note(s, used);
    }
}

brute_answer brute_exists(const brute_net *net, const brute_ask *ask, long *states)
{
    brute_ground ground;
    saturation s = {&ground, {NULL, 0, 0, NULL, 0}, false};
    bool fits = true;
    brute_ground_lay(&ground, net, ask);
    ground.first = -1; /* no key here, so no stick-out */
    brute_state start = brute_state_start(&ground);
    note(&s, start);
    for (long i = 0; i < s.set.count && !s.reached && fits && s.set.count < STATES_MOST; i++) {
        brute_state state = s.set.states[i];
        fits = brute_steps(&ground, &state, taken, &s);
    }
    brute_answer answer = s.reached ? BRUTE_FOUND : BRUTE_NONE;
    if (!s.reached && (!fits || s.set.count >= STATES_MOST))
        answer = BRUTE_TOO_LARGE;
    *states = s.set.count;
    brute_set_free(&s.set);
    return answer;
}
