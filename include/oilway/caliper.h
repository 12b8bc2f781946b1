/* SPDX-License-Identifier: MIT */
/*
 * Names an unknown thread from what a bench can measure: a diameter, perhaps a pitch, perhaps whether it
 * tapers. Candidates are all threads known; each gets the likelihood that its tolerance limits and the
 * instrument's error give the reading, and the next measurement is the one that is expected to tell most.
 * docs/caliper.md states the model and shows how well its likelihoods keep their word.
 */
#ifndef OILWAY_CALIPER_H
#define OILWAY_CALIPER_H

#include "oilway/pairing.h"

typedef enum ow_caliper_side { OW_CALIPER_EITHER, OW_CALIPER_MALE, OW_CALIPER_FEMALE } ow_caliper_side;
typedef enum ow_caliper_taper { OW_TAPER_NOT_SAID, OW_TAPER_YES, OW_TAPER_NO } ow_caliper_taper;

typedef struct ow_caliper_ask {
    double diameter_m; /* over a male's crests, or across a female's bore; 1 to 100 mm */
    double accuracy_m; /* of that reading, plus or minus; 0.001 to 1 mm */
    ow_caliper_side side;
    double pitch_m; /* 0 = not known; 0.2 to 6 mm */
    /* Standard deviation of a pitch reading, of this one or one still to be taken, as a share of it: 0.0001
     * to 0.2. */
    double pitch_deviation;
    ow_caliper_taper taper;
} ow_caliper_ask;

/* 1 %: a pitch gauge or a rule laid over 10 mm of thread, read to 0.1 mm. */
#define OW_CALIPER_ASK_INIT                                       \
    {                                                             \
        0, 0.05e-3, OW_CALIPER_EITHER, 0, 0.01, OW_TAPER_NOT_SAID \
    }

/* The reading in words as typed; NULL = not given. */
typedef struct ow_caliper_words {
    const char *diameter; /* with its unit: "9.9 mm" */
    const char *tpi;      /* threads per inch, 4.5 to 100; or */
    const char *pitch;    /* bare millimetres, 0.25 to 5.6 */
    const char *accuracy; /* bare millimetres, 0.001 to 1 */
    const char *taper;    /* yes | no */
    bool male, female;    /* neither: either */
} ow_caliper_words;
/* Reads the words. All faults are reported, each under the name of its option ("--pitch"; the diameter as
 * "diameter"). OW_INPUT: *ask untouched. */
ow_status ow_caliper_ask_read(const ow_context *context, const ow_caliper_words *words, ow_caliper_ask *ask);

#define OW_CALIPER_WHY_SIZE 192
#define OW_CALIPER_HOW_SIZE 640
#define OW_CALIPER_PLACE_SIZE 192

typedef struct ow_candidate {
    ow_thread thread;
    bool male;
    double likelihood;      /* 0 to 1; all candidates known sum to 1 */
    double least_m, most_m; /* what a good part measures at the stated place */
    char why[OW_CALIPER_WHY_SIZE];
    /* What happens to it in a part made for the first candidate; meaningless for the first itself. */
    bool has_mistake;
    ow_pairing mistake;
} ow_candidate;

typedef enum ow_measure {
    OW_MEASURE_PITCH,
    OW_MEASURE_TAPER,
    OW_MEASURE_SEAT,
    OW_MEASURE_FLANK_ANGLE,
    OW_MEASURE_MATE, /* the other gender's diameter, on the part that it came out of */
    OW_MEASURE_FINER,
    OW_MEASURE_NONE, /* nothing left to tell apart */
    OW_MEASURE_COUNT
} ow_measure;
/* "pitch", "taper", "seat", "flank angle", "mating diameter", "diameter, finer", "confirm by hand". */
const char *ow_measure_word(ow_measure measure);

typedef struct ow_caliper_answer {
    ow_candidate *candidates; /* best first; those of at least 0.1 %, never more than OW_CANDIDATES_MAX */
    size_t count;
    double left_out; /* likelihood of all that are not listed */
    ow_measure decide;
    double bits[OW_MEASURE_COUNT];     /* expected information of each measurement, bits; 0 if it was given */
    double open_bits;                  /* what is still open before it */
    char how[OW_CALIPER_HOW_SIZE];     /* how to measure it and what the answers mean */
    char place[OW_CALIPER_PLACE_SIZE]; /* "from the small end: 4.0 mm if it is R1/8"; "" if none tapers */
    const char *doubt;                 /* why even the best fits badly, or ""; lent */
    const char *jaws;                  /* where to put the jaws for the reading that was given; lent */
} ow_caliper_answer;

#define OW_CANDIDATES_MAX ((size_t)40)

/*
 * OW_RANGE if a number of the ask lies outside its range; OW_NONE if no thread known can read like that;
 * OW_MEMORY. *answer is untouched unless OW_OK is returned; then it is freed with ow_caliper_done. Cost: some
 * hundred thousand evaluations of a density, a few milliseconds.
 */
ow_status ow_caliper_name(const ow_context *context, const ow_caliper_ask *ask, ow_caliper_answer *answer);
void ow_caliper_done(const ow_context *context, ow_caliper_answer *answer);

/* The prior share of a thread before anything is measured, relative to others: everyday ones weigh more. */
double ow_caliper_weight(const ow_thread *thread);

#endif
