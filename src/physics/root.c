/* SPDX-License-Identifier: MIT */
#include "physics/root.h"

#include <float.h>
#include <math.h>

#define STEPS_MAX 400

/* The state of Brent's method (R. P. Brent, Algorithms for Minimization without Derivatives, 1973,
 * chapter 4): best is the nearest guess, opposite holds the other sign, last the guess before. */
typedef struct bracket {
    double best, best_value;
    double opposite, opposite_value;
    double last, last_value;
    double step, step_before;
} bracket;

static void order(bracket *b)
{
    if ((b->best_value > 0.0) == (b->opposite_value > 0.0)) {
        b->opposite = b->last;
        b->opposite_value = b->last_value;
        b->step = b->step_before = b->best - b->last;
    }
    if (fabs(b->opposite_value) < fabs(b->best_value)) {
        b->last = b->best;
        b->last_value = b->best_value;
        b->best = b->opposite;
        b->best_value = b->opposite_value;
        b->opposite = b->last;
        b->opposite_value = b->last_value;
    }
}

/* Secant or inverse quadratic step, kept only if it stays inside and shrinks fast enough. */
static void choose_step(bracket *b, double half, double tolerance)
{
    double numerator, denominator;
    double ratio = b->best_value / b->last_value;
    if (b->last == b->opposite) {
        numerator = 2.0 * half * ratio;
        denominator = 1.0 - ratio;
    } else {
        double q = b->last_value / b->opposite_value;
        double r = b->best_value / b->opposite_value;
        numerator = ratio * (2.0 * half * q * (q - r) - (b->best - b->last) * (r - 1.0));
        denominator = (q - 1.0) * (r - 1.0) * (ratio - 1.0);
    }
    if (numerator > 0.0)
        denominator = -denominator;
    numerator = fabs(numerator);
    double inside = 3.0 * half * denominator - fabs(tolerance * denominator);
    double shrinking = fabs(b->step_before * denominator);
    if (2.0 * numerator < fmin(inside, shrinking)) {
        b->step_before = b->step;
        b->step = numerator / denominator;
    } else {
        b->step = b->step_before = half;
    }
}

bool ow_root_find(ow_root_function *function, const void *data, double low, double high, double *root)
{
    bracket b = {high, function(data, high), low, function(data, low), low, 0.0, high - low, high - low};
    b.last_value = b.opposite_value;
    if (b.opposite_value == 0.0 || b.best_value == 0.0) {
        *root = b.best_value == 0.0 ? high : low;
        return true;
    }
    if ((b.best_value > 0.0) == (b.opposite_value > 0.0))
        return false;
    for (int i = 0; i < STEPS_MAX; i++) {
        order(&b);
        double half = 0.5 * (b.opposite - b.best);
        double tolerance = 2.0 * DBL_EPSILON * fabs(b.best) + DBL_MIN;
        if (fabs(half) <= tolerance || b.best_value == 0.0)
            break;
        if (fabs(b.step_before) >= tolerance && fabs(b.last_value) > fabs(b.best_value))
            choose_step(&b, half, tolerance);
        else
            b.step = b.step_before = half;
        b.last = b.best;
        b.last_value = b.best_value;
        b.best += fabs(b.step) > tolerance ? b.step : copysign(tolerance, half);
        b.best_value = function(data, b.best);
    }
    *root = b.best;
    return true;
}
