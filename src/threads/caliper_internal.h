/* SPDX-License-Identifier: MIT */
/* The model of a reading, shared by the ranking and by the choice of the next measurement. */
#ifndef OW_THREADS_CALIPER_INTERNAL_H
#define OW_THREADS_CALIPER_INTERNAL_H

#include "oilway/caliper.h"

/* A candidate while it is weighed. */
typedef struct ow_suspect {
    ow_thread_size size;
    ow_size_limits crest; /* at the stated place */
    double likelihood;
} ow_suspect;

/* Where the jaws go: a taper male at its hand-tight length from the small end, everything else at the end. */
double ow_caliper_place_m(const ow_thread_size *size);

/* Density of a diameter reading, per metre, of a part of that size in an instrument of that accuracy. */
double ow_reading_density(const ow_thread_size *size, double reading_m, double accuracy_m);
/* The same where its class is not known: mostly the usual one, of a male perhaps the close one. */
double ow_suspect_density(const ow_thread_size *size, double reading_m, double accuracy_m);
/* The close class of a male whose crest it moves: 6h, 3A; false if there is none. */
bool ow_caliper_close_class(const ow_thread_size *size, ow_thread_size *close);
/* The chance of a pitch reading between two values. */
double ow_pitch_chance(double pitch_m, double deviation, double low_m, double high_m);
/* Density of a pitch reading, per metre. */
double ow_pitch_density(double pitch_m, double reading_m, double deviation);
/* The chance that a person calls it a taper. */
double ow_taper_chance(bool is_taper);

/* Fills decide, bits, open_bits and how. suspects: most likely first, likelihoods summing to about 1. */
ow_status ow_caliper_decide(const ow_context *context, const ow_caliper_ask *ask, const ow_suspect *suspects,
                            size_t count, ow_caliper_answer *answer);
void ow_caliper_write_how(const ow_context *context, const ow_suspect *suspects, size_t count,
                          ow_caliper_answer *answer);
void ow_caliper_write_place(const ow_context *context, const ow_suspect *suspects, size_t count,
                            ow_caliper_answer *answer);
/* The other gender of the same thread; false if its standard has none. */
bool ow_caliper_mate(const ow_suspect *suspect, ow_thread_size *mate);
void ow_caliper_write_why(const ow_caliper_ask *ask, const ow_suspect *suspect, ow_candidate *candidate);

#endif
