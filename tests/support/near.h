/* SPDX-License-Identifier: MIT */
/* Comparing numbers within a stated part of what was expected. */
#ifndef OW_TESTS_NEAR_H
#define OW_TESTS_NEAR_H

#include <math.h>

#include "support/testing.h"

/* Fails, showing both, unless |actual - expected| <= part * |expected|; NaN never passes. */
static inline void ow_test_near_at(double actual, double expected, double part, const char *file, int line)
{
    if (!(fabs(actual - expected) <= part * fabs(expected))) {
        print_error("%.9g is not within %g of %.9g\n", actual, part, expected);
        _fail(file, line);
    }
}
#define assert_near(actual, expected, part) ow_test_near_at((actual), (expected), (part), __FILE__, __LINE__)

/* The index-th value of a row that begins at low: by equal steps, or by equal factors. */
static inline double ow_test_step(double low, double step, int index)
{
    return low + step * index;
}
static inline double ow_test_grow(double low, double factor, int index)
{
    return low * pow(factor, index);
}

#endif
