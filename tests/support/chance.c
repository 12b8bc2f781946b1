/* SPDX-License-Identifier: MIT */
#include "support/chance.h"

uint64_t ow_chance_next(ow_chance *chance)
{
    chance->state ^= chance->state >> 12;
    chance->state ^= chance->state << 25;
    chance->state ^= chance->state >> 27;
    return chance->state * 2685821657736338717U;
}

double ow_chance_between(ow_chance *chance, double low, double high)
{
    return low + (high - low) * (double)(ow_chance_next(chance) >> 11) / 9007199254740992.0;
}

/* Twelve even ones less six: near enough to the bell curve out to four deviations. */
double ow_chance_normal(ow_chance *chance)
{
    double sum = -6;
    for (int i = 0; i < 12; i++)
        sum += ow_chance_between(chance, 0, 1);
    return sum;
}
