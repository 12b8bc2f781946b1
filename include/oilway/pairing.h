/* SPDX-License-Identifier: MIT */
/*
 * What becomes of a male thread in a female one, by geometry alone: how far it runs, how much of the flanks
 * holds, and the verdict that follows. Seats are not looked at: where the two threads belong together the
 * seat decides (joint.h). docs/threads.md gives the formulas.
 */
#ifndef OILWAY_PAIRING_H
#define OILWAY_PAIRING_H

#include "oilway/thread_size.h"

typedef enum ow_fit {
    OW_FIT_HOME,     /* belongs together: goes home as it was made to; the seat decides */
    OW_FIT_LEAKS,    /* fits and wedges like the right one, and does not seal */
    OW_FIT_BINDS,    /* starts, and jams after some turns */
    OW_FIT_WEAK,     /* goes home, at least where the limits are loosest, and can strip */
    OW_FIT_NO_START, /* flank meets flank before the first turn, or the two do not touch at all */
    OW_FIT_COUNT
} ow_fit;
const char *ow_fit_word(ow_fit fit); /* "home" "leaks" "binds" "weak" "no-start" */

/* The length of thread over which a wrong pitch is reckoned to have come home, m: 8 mm, or one diameter of a
 * male thinner than that. A taper: its useful thread. */
#define OW_HOME_LENGTH_M 0.008

#define OW_PAIRING_WHY_SIZE 320

typedef struct ow_pairing {
    ow_thread male, female;
    ow_fit fit;
    bool runs;                      /* any thread runs: the turns mean something */
    double turns_least, turns_most; /* until it jams or wedges, but no more than home_turns */
    double free_least, free_most;   /* the same without that bound; 1000 where nothing ever jams it */
    double home_turns;              /* turns that bring it home */
    double clearance_least_m,
        clearance_most_m;               /* pitch diameters, female less male; taper: at first contact */
    double pitch_difference_m;          /* male less female */
    double lead_error_m;                /* built up over the home length */
    double gap_m;                       /* where nothing touches: bore less crest, at the tightest; else 0 */
    double overlap_basic;               /* of the flanks, in depths of the female profile; 1.08 = 108 % */
    double overlap_least, overlap_most; /* over the limits of size */
    double strength_least,
        strength_most;             /* of the weaker thread, as a share of what it has in its own partner */
    bool angles_differ;            /* 55 against 60 degrees */
    bool tapers;                   /* one of the two, at least */
    char why[OW_PAIRING_WHY_SIZE]; /* one sentence with the figures */
} ow_pairing;

/* Usual classes. OW_NONE: one of them does not exist in that gender (a female R, a male Rc). OW_RANGE: a
 * pitch is not said, or the size is in no table. *pairing is then untouched. */
ow_status ow_pair(const ow_thread *male, const ow_thread *female, ow_pairing *pairing);
/* The same between two sizes in whatever classes; male->male must be true, female->male false. */
ow_status ow_pair_sizes(const ow_thread_size *male, const ow_thread_size *female, ow_pairing *pairing);

/*
 * Turns until a male jams or wedges, from the clearance c of the pitch diameters (female less male, where the
 * two first meet), m: c tan(a) / (|dP| + tan(a) P / 16 if one of the two is a taper), a the mean of the half
 * thread angles. Not below 0; 1000 where the pitches agree and neither tapers.
 */
double ow_pair_turns(const ow_thread_size *male, const ow_thread_size *female, double clearance_m);

/* Clearance at basic size, m, as the function above wants it. */
double ow_pair_clearance_basic_m(const ow_thread_size *male, const ow_thread_size *female);

#endif
