/* SPDX-License-Identifier: MIT */
/* Chance that is the same in every run: xorshift64* (Vigna 2016). */
#ifndef OW_TESTS_CHANCE_H
#define OW_TESTS_CHANCE_H

#include <stdint.h>

typedef struct ow_chance {
    uint64_t state; /* not 0 */
} ow_chance;

uint64_t ow_chance_next(ow_chance *chance);
double ow_chance_between(ow_chance *chance, double low, double high); /* evenly */
double ow_chance_normal(ow_chance *chance);                           /* mean 0, deviation 1 */

#endif
