/* SPDX-License-Identifier: MIT */
/*
 * A partial layout as the forward walk sees it: the ends still open, each with what the path to it
 * has been through, and the ports not yet served. Every open end carries a promise that is made when
 * the end appears: no port lies beyond it (dead), at least one does (live), or the first TO and
 * perhaps others do (first). Each complete tree keeps exactly one set of promises, so each arises once.
 */
#ifndef BRUTE_STATE_H
#define BRUTE_STATE_H

#include "brute/brute.h"

#define BRUTE_OPEN 24

enum { BRUTE_DEAD, BRUTE_LIVE, BRUTE_FIRST };

/* Bytes only, so that states can be compared and hashed as memory. All but kind is 0 at dead ends. */
typedef struct brute_open {
    uint8_t kind;
    uint8_t promise;
    uint8_t hoses;      /* 0, 1, 2 = more */
    uint8_t restricted; /* restrictors passed: 0, 1, 2 = more */
    uint8_t narrow;     /* passed something narrower than asked */
    uint8_t piece;      /* 0: the rigid piece here already holds a fixed port; else its number */
    uint8_t machine;    /* the same for pieces between hoses and the machines they hold */
} brute_open;

typedef struct brute_state {
    uint8_t count;
    uint8_t unserved;            /* bits by port */
    uint8_t forced;              /* the forced part is still to be used */
    brute_open open[BRUTE_OPEN]; /* the next one to deal with is the last */
} brute_state;

#define BRUTE_STATE_BYTES(state) (3 + (size_t)(state)->count * sizeof(brute_open))

/* What is reckoned once for an ask. */
#define BRUTE_FAR 100
typedef struct brute_ground {
    const brute_net *net;
    const brute_ask *ask;
    bool usable[BRUTE_PARTS];
    int closing[BRUTE_KINDS];         /* least parts to close an end, BRUTE_FAR = cannot be */
    bool closing_plain[BRUTE_KINDS];  /* can be closed without a forced part that is had once only */
    bool closing_forced[BRUTE_KINDS]; /* can be closed with the forced part among the parts */
    int distance[BRUTE_KINDS];        /* least parts on a path to any port */
    int first;                        /* the port that the stick-out is for, -1 = none followed */
    bool follow_hoses, follow_restrictors;
} brute_ground;

void brute_ground_lay(brute_ground *ground, const brute_net *net, const brute_ask *ask);
bool brute_joins(const brute_ground *ground, int a, int b);
brute_state brute_state_start(const brute_ground *ground);
/* A number of parts that must still be added at least. Never falls by more than 1 with a part, nor
 * at all with a port. BRUTE_FAR or more: hopeless. */
int brute_still_needed(const brute_ground *ground, const brute_state *state);

/* One step: the open end `at` is closed by a port, or by a part entered at `entry`. */
typedef struct brute_step {
    int part; /* or -1 */
    int port;
    int entry;
    bool stick_out; /* the part's length counts */
} brute_step;

typedef void (*brute_taken)(void *user, const brute_state *state, const brute_step *step);
/* Every step at the last open end that is not plainly hopeless. false: a state would not fit. */
bool brute_steps(const brute_ground *ground, const brute_state *state, brute_taken taken, void *user);

/* A set of states. */
typedef struct brute_set {
    brute_state *states;
    long count, capacity;
    long *slots;
    long slot_count;
} brute_set;
void brute_set_free(brute_set *set);
/* Adds; returns its number, and whether it was new. */
long brute_set_add(brute_set *set, const brute_state *state, bool *fresh);

#endif
