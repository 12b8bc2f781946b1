/* SPDX-License-Identifier: MIT */
/* A decimal number before it becomes binary, so that a change of unit by a power of ten or a whole number
 * costs no rounding: "3 mm" and "0.003 m" come out the same to the last bit. */
#ifndef OW_BASE_DECIMAL_H
#define OW_BASE_DECIMAL_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct ow_decimal { /* (-1)^negative * digits * 10^exponent */
    uint64_t digits;
    long exponent;
    bool negative;
} ow_decimal;

/* Reads the longest decimal number at the start: sign, digits with or without '.', exponent. A point without
 * a digit behind it is no part of it ("1..2"). Digits after the 19th are dropped. */
bool ow_decimal_read(const char *words, size_t length, ow_decimal *decimal, size_t *used);

/* The nearest double of decimal * factor * 10^shift; infinite when past the range. */
double ow_decimal_value(ow_decimal decimal, uint64_t factor, int shift);

#endif
