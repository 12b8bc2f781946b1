/* SPDX-License-Identifier: MIT */
#include "base/decimal.h"

#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/words.h"

#define EXPONENT_MAX 100000L /* far past a double's range, far from overflow */

static bool is_digit(const char *words, size_t length, size_t offset)
{
    return offset < length && words[offset] >= '0' && words[offset] <= '9';
}

/* Takes the digits from offset on; each one behind the point lowers the exponent. */
static size_t read_digits(const char *words, size_t length, size_t offset, bool behind_point,
                          ow_decimal *decimal)
{
    for (; is_digit(words, length, offset); offset++) {
        if (decimal->digits <= (UINT64_MAX - 9) / 10) {
            decimal->digits = decimal->digits * 10 + (uint64_t)(words[offset] - '0');
            decimal->exponent -= behind_point;
        } else if (decimal->exponent < EXPONENT_MAX) {
            decimal->exponent += !behind_point;
        }
    }
    return offset;
}

/* Takes "e12" if it is one; the offset behind it. */
static size_t read_exponent(const char *words, size_t length, size_t offset, ow_decimal *decimal)
{
    if (offset >= length || (words[offset] != 'e' && words[offset] != 'E'))
        return offset;
    size_t at = offset + 1;
    bool negative = at < length && words[at] == '-';
    if (negative || (at < length && words[at] == '+'))
        at++;
    if (!is_digit(words, length, at))
        return offset;
    long exponent = 0;
    for (; is_digit(words, length, at); at++)
        if (exponent < EXPONENT_MAX)
            exponent = exponent * 10 + (words[at] - '0');
    decimal->exponent += negative ? -exponent : exponent;
    return at;
}

bool ow_decimal_read(const char *words, size_t length, ow_decimal *decimal, size_t *used)
{
    ow_decimal read = {0, 0, false};
    size_t start = 0;
    if (length > 0 && (words[0] == '-' || words[0] == '+')) {
        read.negative = words[0] == '-';
        start = 1;
    }
    size_t at = read_digits(words, length, start, false, &read);
    if (at < length && words[at] == '.' && is_digit(words, length, at + 1))
        at = read_digits(words, length, at + 1, true, &read);
    if (at == start)
        return false;
    at = read_exponent(words, length, at, &read);
    *decimal = read;
    *used = at;
    return true;
}

/* Correctly rounded: powers of ten to 10^22 and digits to 2^53 are exact doubles, and one operation on exact
 * numbers rounds once (W. D. Clinger, "How to read floating point numbers accurately", 1990). */
static double nearest(uint64_t digits, long exponent)
{
    static const double tens[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                  1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    if (digits == 0)
        return 0.0;
    if (digits <= (UINT64_C(1) << 53) && exponent >= -22 && exponent <= 22)
        return exponent < 0 ? (double)digits / tens[-exponent] : (double)digits * tens[exponent];
    /* No point in it, so that no locale matters. */
    char spelled[48];
    snprintf(spelled, sizeof spelled, "%" PRIu64 "e%ld", digits, exponent);
    return strtod(spelled, NULL);
}

double ow_decimal_value(ow_decimal decimal, uint64_t factor, int shift)
{
    double value;
    if (factor == 0 || decimal.digits <= UINT64_MAX / factor)
        value = nearest(decimal.digits * factor, decimal.exponent + shift);
    else
        value = nearest(decimal.digits, decimal.exponent + shift) * (double)factor;
    return decimal.negative ? -value : value;
}

bool ow_number_read(const char *words, size_t length, double *value, size_t *used)
{
    ow_decimal decimal;
    size_t bytes;
    if (!ow_decimal_read(words, length, &decimal, &bytes))
        return false;
    double read = ow_decimal_value(decimal, 1, 0);
    if (!isfinite(read))
        return false;
    *value = read;
    *used = bytes;
    return true;
}
