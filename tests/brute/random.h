/* SPDX-License-Identifier: MIT */
/* Seeded random catalogues and asks: the same on every machine. */
#ifndef BRUTE_RANDOM_H
#define BRUTE_RANDOM_H

#include "brute/brute.h"

typedef struct brute_dice {
    uint64_t state;
} brute_dice;

brute_dice brute_dice_new(uint64_t seed);
int brute_roll(brute_dice *dice, int sides); /* 0 .. sides - 1 */
bool brute_chance(brute_dice *dice, int percent);

/* The limits a case may carry, one bit each. */
/* clang-format does not settle on a list this long. */
/* clang-format off */
#define BRUTE_LIMIT_LIST(X) \
    X(BORE, "least bore") \
    X(RATING, "rating") \
    X(TEMPERATURE, "temperature") \
    X(FLUID, "fluid") \
    X(FLEX_YES, "flexible yes") \
    X(FLEX_NO, "flexible no") \
    X(FLEX_SOME, "flexible some") \
    X(CLOSING, "closing joint") \
    X(REQUIRED, "restrictor required") \
    X(FORBIDDEN, "restrictor forbidden") \
    X(MOST_ONE, "one restrictor at most") \
    X(ORIFICE, "orifice") \
    X(NO_TEE, "no tee") \
    X(NO_CLAMP, "no clamp") \
    X(PRESSED, "under pressure") \
    X(MATERIAL, "what hoses are made of") \
    X(WITHOUT, "without") \
    X(TOLERATE, "tolerate") \
    X(REMOTE, "remote switch") \
    X(KEPT, "kept ports") \
    X(MACHINES, "machines apart") \
    X(BY_PORT, "restrictor by port")
/* clang-format on */
#define BRUTE_LIMIT_NAME(name, words) BRUTE_LIMIT_##name,
typedef enum brute_limit { BRUTE_LIMIT_LIST(BRUTE_LIMIT_NAME) BRUTE_LIMIT_COUNT } brute_limit;
#undef BRUTE_LIMIT_NAME
const char *brute_limit_words(brute_limit limit);
const char *brute_limit_name(brute_limit limit); /* as in the list above */

/* A small catalogue, rich in forks, short of plugs. */
void brute_random_net(brute_dice *dice, brute_net *net);
/* An ask of so many ports without limits over it. */
void brute_random_ask(brute_dice *dice, const brute_net *net, int ports, brute_ask *ask);
/* Puts a limit with random figures on the ask, or takes it off again. */
void brute_limit_set(brute_dice *dice, const brute_net *net, brute_ask *ask, brute_limit limit);
void brute_limit_drop(brute_ask *ask, brute_limit limit);

/* A net, an ask of so many ports that carries `limit` (BRUTE_LIMIT_COUNT: none in particular) and perhaps
 * others, and its best layout; `changes`: leaving the limit out gives another answer. */
typedef struct brute_case {
    brute_net net;
    brute_ask ask;
    brute_result result;
    bool changes;
} brute_case;
/* Whether leaving a limit out gives another answer. */
bool brute_limit_changes(const brute_case *c, brute_limit limit);
void brute_random_case(uint64_t seed, int ports, brute_limit limit, brute_case *c);

#endif
