/* SPDX-License-Identifier: MIT */
/*
 * The next measurement: the one whose answer is expected to tell most, by the information (bits) that it
 * shares with the question which candidate it is. For outcomes o and candidates i of likelihood w: sum over
 * i, o of w_i P(o|i) log2( P(o|i) / sum over k of w_k P(o|k) )
 */
#include <math.h>

#include "base/memory.h"
#include "threads/caliper_internal.h"

#define BINS_MAX 512
#define BIN_M 0.02e-3
#define FINE_BIN_M 0.005e-3
#define FINE_ACCURACY_M 0.01e-3 /* a micrometer, or a caliper's mean of five */
#define ANGLE_SEEN 0.9          /* 55 told from 60 degrees with a gauge leaf against the light */
#define SEAT_SEEN 0.95
#define WORTH_BITS 0.02   /* what an answer must tell to be worth its trouble */
#define OPEN_BITS 0.05    /* below this nothing is left to tell: some 99.5 % are on one */
#define TELLING_SHARE 0.1 /* of what is open: less, and the measurement tells the rest apart no more */

const char *ow_measure_word(ow_measure measure)
{
    static const char *const words[OW_MEASURE_COUNT] = {
        "pitch", "taper", "seat", "flank angle", "mating diameter", "diameter, finer", "confirm by hand"};
    return (unsigned)measure < OW_MEASURE_COUNT ? words[measure] : "";
}

/* What more a measurement must tell before it is preferred to an easier one, bits (common practice: the pitch
 * gauge lies on the bench, the mating part may be at the customer's). */
static const double trouble_bits[OW_MEASURE_COUNT] = {0, 0, 0.1, 0.1, 0.2, 0.2, 0};

/* ---- chances of outcomes --------------------------------------------------------------------- */

enum seat_look { LOOK_NONE, LOOK_FLAT, LOOK_HOLLOW, LOOK_NOSE, LOOK_COUNT };

/* How ends on a thread of each family usually look, shares (common practice). None: a taper without a seat;
 * flat: washer face or O-ring; hollow: 24 or 60 degree cone in the end; nose: 37 or 45 degree flare. */
static const double looks[OW_THREAD_FAMILY_COUNT][LOOK_COUNT] = {
    [OW_THREAD_METRIC] = {0, 0.75, 0.25, 0},
    [OW_THREAD_METRIC_TAPER] = {1, 0, 0, 0},
    [OW_THREAD_UNIFIED] = {0, 0.4, 0, 0.6},
    [OW_THREAD_NPT] = {1, 0, 0, 0},
    [OW_THREAD_NPTF] = {1, 0, 0, 0},
    [OW_THREAD_NPSM] = {0, 0, 1, 0},
    [OW_THREAD_R] = {1, 0, 0, 0},
    [OW_THREAD_RC] = {1, 0, 0, 0},
    [OW_THREAD_RP] = {1, 0, 0, 0},
    [OW_THREAD_G] = {0, 0.6, 0.4, 0},
};

typedef struct grid { /* bins of equal width, or of equal ratio for pitches */
    double low, step;
    size_t count;
} grid;

static double seat_chance(const ow_suspect *suspect, size_t look)
{
    double right = looks[suspect->size.thread.family][look];
    return SEAT_SEEN * right + (1 - SEAT_SEEN) / LOOK_COUNT;
}

static double angle_chance(const ow_suspect *suspect, size_t sixty)
{
    bool is_sixty = suspect->size.flank_angle_rad > 0.5;
    return is_sixty == (sixty != 0) ? ANGLE_SEEN : 1 - ANGLE_SEEN;
}

static double pitch_bin(const ow_suspect *suspect, const grid *bins, double deviation, size_t bin)
{
    double low = bins->low * pow(bins->step, (double)bin);
    return ow_pitch_chance(suspect->size.pitch_m, deviation, low, low * bins->step);
}

/* The other gender of the same thread. */
bool ow_caliper_mate(const ow_suspect *suspect, ow_thread_size *mate)
{
    ow_thread thread = suspect->size.thread;
    if (thread.family == OW_THREAD_R)
        thread.family = OW_THREAD_RC;
    else if (thread.family == OW_THREAD_RC || thread.family == OW_THREAD_RP)
        thread.family = OW_THREAD_R;
    else if (thread.family == OW_THREAD_METRIC_TAPER)
        thread.family = OW_THREAD_METRIC;
    return ow_thread_size_of(&thread, !suspect->size.male, OW_CLASS_USUAL, mate) == OW_OK;
}

/* A finer reading of the same part: its size already lies within reach of the first reading. */
static double finer_chance(const ow_suspect *suspect, const ow_caliper_ask *ask, double low_m, double high_m)
{
    double reach =
        ask->accuracy_m + (suspect->size.taper > 0 ? suspect->size.pitch_m * suspect->size.taper : 0);
    double from = fmax(suspect->crest.least_m, ask->diameter_m - reach) - FINE_ACCURACY_M;
    double to = fmin(suspect->crest.most_m, ask->diameter_m + reach) + FINE_ACCURACY_M;
    if (to <= from) { /* worn, or a slip: it will read again about as it did */
        from = ask->diameter_m - reach;
        to = ask->diameter_m + reach;
    }
    return fmax(fmin(to, high_m) - fmax(from, low_m), 0) / (to - from);
}

/* ---- information ----------------------------------------------------------------------------- */

/* chances[i * outcomes + o] = P(o|i), each row summing to about 1. */
static double information(const ow_suspect *suspects, size_t count, const double *chances, size_t outcomes)
{
    double bits = 0;
    for (size_t o = 0; o < outcomes; o++) {
        double all = 0;
        for (size_t i = 0; i < count; i++)
            all += suspects[i].likelihood * chances[i * outcomes + o];
        for (size_t i = 0; i < count; i++) {
            double one = chances[i * outcomes + o];
            if (one > 0 && all > 0)
                bits += suspects[i].likelihood * one * log2(one / all);
        }
    }
    return bits > 0 ? bits : 0;
}

static grid pitch_grid(const ow_suspect *suspects, size_t count, double deviation)
{
    double low = suspects[0].size.pitch_m, high = low;
    for (size_t i = 1; i < count; i++) {
        low = fmin(low, suspects[i].size.pitch_m);
        high = fmax(high, suspects[i].size.pitch_m);
    }
    grid bins = {low * (1 - 4 * deviation), 1 + deviation / 2, 1};
    while (bins.count < BINS_MAX &&
           bins.low * pow(bins.step, (double)bins.count) < high * (1 + 4 * deviation))
        bins.count++;
    return bins;
}

static grid mate_grid(const ow_suspect *suspects, size_t count)
{
    double low = 1, high = 0;
    for (size_t i = 0; i < count; i++) {
        ow_thread_size mate;
        if (!ow_caliper_mate(&suspects[i], &mate))
            continue;
        ow_size_limits crest = ow_thread_crest_at(&mate, ow_caliper_place_m(&mate));
        low = fmin(low, crest.least_m - 0.5e-3);
        high = fmax(high, crest.most_m + 0.5e-3);
    }
    double bins = ceil((high - low) / BIN_M);
    return (grid){low, BIN_M, bins < 1 ? 1 : bins > BINS_MAX ? BINS_MAX : (size_t)bins};
}

/* One row of chances: of the outcomes of a measurement, if it is this suspect. */
static void fill_row(ow_measure measure, const ow_caliper_ask *ask, const ow_suspect *suspect,
                     const grid *bins, double *row)
{
    ow_thread_size mate;
    bool has_mate = measure == OW_MEASURE_MATE && ow_caliper_mate(suspect, &mate);
    for (size_t o = 0; o < bins->count; o++) {
        double low = bins->low + bins->step * (double)o;
        if (measure == OW_MEASURE_PITCH)
            row[o] = pitch_bin(suspect, bins, ask->pitch_deviation, o);
        else if (measure == OW_MEASURE_TAPER)
            row[o] =
                o ? ow_taper_chance(suspect->size.taper > 0) : 1 - ow_taper_chance(suspect->size.taper > 0);
        else if (measure == OW_MEASURE_SEAT)
            row[o] = seat_chance(suspect, o);
        else if (measure == OW_MEASURE_FLANK_ANGLE)
            row[o] = angle_chance(suspect, o);
        else if (measure == OW_MEASURE_FINER)
            row[o] = finer_chance(suspect, ask, low, low + bins->step);
        else
            row[o] = has_mate ? ow_reading_density(&mate, low + bins->step / 2, ask->accuracy_m) * bins->step
                              : 1.0 / (double)bins->count;
    }
}

static grid outcomes_of(ow_measure measure, const ow_caliper_ask *ask, const ow_suspect *suspects,
                        size_t count)
{
    if (measure == OW_MEASURE_PITCH)
        return pitch_grid(suspects, count, ask->pitch_deviation);
    if (measure == OW_MEASURE_MATE)
        return mate_grid(suspects, count);
    if (measure == OW_MEASURE_SEAT)
        return (grid){0, 1, LOOK_COUNT};
    if (measure == OW_MEASURE_FINER) {
        double reach = ask->accuracy_m + 0.2e-3, bins = ceil(2 * reach / FINE_BIN_M);
        return (grid){ask->diameter_m - reach, fmax(FINE_BIN_M, 2 * reach / BINS_MAX),
                      bins > BINS_MAX ? BINS_MAX : (size_t)bins};
    }
    return (grid){0, 1, 2};
}

static bool already_given(ow_measure measure, const ow_caliper_ask *ask)
{
    return (measure == OW_MEASURE_PITCH && ask->pitch_m > 0) ||
           (measure == OW_MEASURE_TAPER && ask->taper != OW_TAPER_NOT_SAID) ||
           (measure == OW_MEASURE_FINER && ask->accuracy_m <= 2 * FINE_ACCURACY_M);
}

static double open_bits(const ow_suspect *suspects, size_t count)
{
    double bits = 0;
    for (size_t i = 0; i < count; i++)
        bits -= suspects[i].likelihood * log2(suspects[i].likelihood);
    return bits;
}

/* The one that tells most for its trouble. Where little is open none may be worth it; then the one that tells
 * most of that little, so that what is unlikely but dangerous can still be told apart. */
static ow_measure choose(const double *bits, double open)
{
    ow_measure worth = OW_MEASURE_NONE, telling = OW_MEASURE_NONE;
    double most_worth = WORTH_BITS, most_telling = TELLING_SHARE * open;
    for (int m = 0; m < OW_MEASURE_NONE; m++) {
        if (bits[m] - trouble_bits[m] > most_worth) {
            most_worth = bits[m] - trouble_bits[m];
            worth = (ow_measure)m;
        }
        if (bits[m] > most_telling) {
            most_telling = bits[m];
            telling = (ow_measure)m;
        }
    }
    return worth != OW_MEASURE_NONE || open < OPEN_BITS ? worth : telling;
}

ow_status ow_caliper_decide(const ow_context *context, const ow_caliper_ask *ask, const ow_suspect *suspects,
                            size_t count, ow_caliper_answer *answer)
{
    double *chances = ow_new_array(context, count * BINS_MAX, sizeof *chances);
    if (!chances)
        return OW_MEMORY;
    answer->open_bits = open_bits(suspects, count);
    for (int m = 0; m < OW_MEASURE_NONE; m++) {
        ow_measure measure = (ow_measure)m;
        if (already_given(measure, ask))
            continue;
        grid bins = outcomes_of(measure, ask, suspects, count);
        for (size_t i = 0; i < count; i++)
            fill_row(measure, ask, &suspects[i], &bins, &chances[i * bins.count]);
        answer->bits[m] = information(suspects, count, chances, bins.count);
    }
    answer->decide = choose(answer->bits, answer->open_bits);
    ow_release(context, chances);
    ow_caliper_write_how(context, suspects, count, answer);
    return OW_OK;
}
