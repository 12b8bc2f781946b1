/* SPDX-License-Identifier: MIT */
/*
 * How a thread reads: size within the limits + where on a taper the jaws sat + wear + the instrument.
 *
 * size: anywhere between the limits, evenly (common practice: nothing better is known of a part); of a male
 * with a close class, that one in 15 of 100.
 *
 * place, on a taper: within a pitch of the stated place (70 %), or anywhere on its thread (30 %).
 *
 * wear: none (77 %), evenly up to 0.1 mm off a crest (20 %), or as far proud of it (3 %: plated, burred,
 * dirty).
 *
 * instrument: evenly within the stated accuracy (95 %), or within three times that (5 %).
 */
#include <math.h>

#include "threads/caliper_internal.h"

#define PLACE_SHARE 0.7
#define WORN_SHARE 0.2
#define WEAR_M 0.1e-3
#define PROUD_SHARE 0.03 /* plated, burred or dirty: as far the other way */
#define CLOSE_SHARE 0.15 /* of the close class of its gender, where that lies elsewhere: 6h, 3A */
#define SLIP_SHARE 0.05
#define SLIP_FACTOR 3
#define TAPER_SEEN 0.97
#define PITCH_BLUNDER 0.01 /* a leaf misread altogether, evenly over 0.2 to 6 mm */
#define PITCH_SPAN_M 5.8e-3
#define STEPS 8 /* midpoints of a box that is summed over */

typedef struct box { /* evenly between two values */
    double low, high;
} box;

/* Density at x of the sum of two even boxes: a trapezium. */
static double two_boxes(box a, box b, double x)
{
    double wide = fmax(a.high - a.low, b.high - b.low), narrow = fmin(a.high - a.low, b.high - b.low);
    double from = x - a.low - b.low;
    if (wide <= 0)
        return 0;
    double rise =
        narrow > 0 ? fmin(from, wide + narrow - from) / narrow : (from >= 0 && from <= wide ? 1 : -1);
    return fmax(fmin(rise, 1), 0) / wide;
}

/* The same with a third box, summed over its midpoints. */
static double three_boxes(box a, box b, box c, double x)
{
    double sum = 0;
    if (c.high - c.low <= 0)
        return two_boxes(a, b, x - c.low);
    for (int i = 0; i < STEPS; i++)
        sum += two_boxes(a, b, x - c.low - (c.high - c.low) * (i + 0.5) / STEPS);
    return sum / STEPS;
}

double ow_caliper_place_m(const ow_thread_size *size)
{
    return size->taper > 0 && size->male ? size->gauge_m : 0;
}

/* How far a taper's crest departs from its value at the stated place, as the jaws stray. */
static void place_boxes(const ow_thread_size *size, box *usual, box *anywhere)
{
    double place = ow_caliper_place_m(size), slope = size->taper;
    if (size->male) {
        *usual = (box){-size->pitch_m * slope, size->pitch_m * slope};
        *anywhere = (box){-place * slope, (size->useful_m - place) * slope};
    } else {
        *usual = (box){-2 * size->pitch_m * slope, 0};
        *anywhere = (box){-size->hand_tight_m * slope, 0};
    }
}

static double with_instrument(box size, box place, double wear_m, bool male, double reading_m,
                              double accuracy_m)
{
    double shifted = male ? reading_m + wear_m : reading_m - wear_m;
    box good = {-accuracy_m, accuracy_m}, slip = {-SLIP_FACTOR * accuracy_m, SLIP_FACTOR * accuracy_m};
    return (1 - SLIP_SHARE) * three_boxes(size, good, place, shifted) +
           SLIP_SHARE * three_boxes(size, slip, place, shifted);
}

/* Worn, or proud: evenly up to `most_m` off its crest, or on it. */
static double with_change(box size, box place, double most_m, bool male, double reading_m, double accuracy_m)
{
    double sum = 0;
    for (int i = 0; i < STEPS; i++)
        sum += with_instrument(size, place, most_m * (i + 0.5) / STEPS, male, reading_m, accuracy_m);
    return sum / STEPS;
}

static double with_wear(box size, box place, bool male, double reading_m, double accuracy_m)
{
    return (1 - WORN_SHARE - PROUD_SHARE) * with_instrument(size, place, 0, male, reading_m, accuracy_m) +
           WORN_SHARE * with_change(size, place, WEAR_M, male, reading_m, accuracy_m) +
           PROUD_SHARE * with_change(size, place, -WEAR_M, male, reading_m, accuracy_m);
}

double ow_reading_density(const ow_thread_size *size, double reading_m, double accuracy_m)
{
    ow_size_limits crest = ow_thread_crest_at(size, ow_caliper_place_m(size));
    box sizes = {crest.least_m, crest.most_m}, usual = {0, 0}, anywhere = {0, 0};
    double stray = SLIP_FACTOR * accuracy_m + WEAR_M + fmax(size->useful_m, 3 * size->pitch_m) * size->taper;
    if (reading_m < crest.least_m - stray || reading_m > crest.most_m + stray)
        return 0;
    if (size->taper <= 0)
        return with_wear(sizes, usual, size->male, reading_m, accuracy_m);
    place_boxes(size, &usual, &anywhere);
    return PLACE_SHARE * with_wear(sizes, usual, size->male, reading_m, accuracy_m) +
           (1 - PLACE_SHARE) * with_wear(sizes, anywhere, size->male, reading_m, accuracy_m);
}

bool ow_caliper_close_class(const ow_thread_size *size, ow_thread_size *close)
{
    ow_thread_class wanted = size->thread.family == OW_THREAD_METRIC    ? OW_CLASS_6H_EXTERNAL
                             : size->thread.family == OW_THREAD_UNIFIED ? OW_CLASS_3A
                                                                        : OW_CLASS_USUAL;
    return size->male && wanted != OW_CLASS_USUAL &&
           ow_thread_size_of(&size->thread, true, wanted, close) == OW_OK;
}

double ow_suspect_density(const ow_thread_size *size, double reading_m, double accuracy_m)
{
    ow_thread_size close;
    double usual = ow_reading_density(size, reading_m, accuracy_m);
    if (!ow_caliper_close_class(size, &close))
        return usual;
    return (1 - CLOSE_SHARE) * usual + CLOSE_SHARE * ow_reading_density(&close, reading_m, accuracy_m);
}

static double below(double reading_m, double pitch_m, double deviation)
{
    return 0.5 * erfc(-(reading_m / pitch_m - 1) / deviation / sqrt(2));
}

double ow_pitch_chance(double pitch_m, double deviation, double low_m, double high_m)
{
    double seen = below(high_m, pitch_m, deviation) - below(low_m, pitch_m, deviation);
    return (1 - PITCH_BLUNDER) * seen + PITCH_BLUNDER * (high_m - low_m) / PITCH_SPAN_M;
}

double ow_pitch_density(double pitch_m, double reading_m, double deviation)
{
    double width = deviation * pitch_m, off = (reading_m - pitch_m) / width;
    return (1 - PITCH_BLUNDER) * exp(-off * off / 2) / (width * sqrt(2 * 3.14159265358979323846)) +
           PITCH_BLUNDER / PITCH_SPAN_M;
}

double ow_taper_chance(bool is_taper)
{
    return is_taper ? TAPER_SEEN : 1 - TAPER_SEEN;
}
