/* SPDX-License-Identifier: MIT */
/*
 * `make brute-cases`: looks for seeds whose case is worth running (the limit changes the answer, the
 * brute force can settle it) and prints tests/brute/cases.h. Only seeds are kept; the tests reckon
 * everything again and count for themselves what they have proved.
 */
#include <stdio.h>

#include "brute/random.h"

#define EACH 33           /* cases for each limit and number of ports */
#define SEEDS_TRIED 20000 /* some limits cannot matter: one port has no second machine */
#define WANTED_MOST 120
#define EACH_PLAIN 110 /* cases without a limit in particular, solvable and not */
#define EACH_MANY 24   /* the same for five and six ports */

static void find(int ports, brute_limit limit, int wanted)
{
    static brute_case c;
    int found = 0, solvable = 0, seeds[WANTED_MOST];
    for (int seed = 0; seed < SEEDS_TRIED && found < wanted; seed++) {
        brute_random_case((uint64_t)seed, ports, limit, &c);
        bool is_found = c.result.answer == BRUTE_FOUND;
        if (c.result.answer == BRUTE_TOO_LARGE || (limit != BRUTE_LIMIT_COUNT && !c.changes))
            continue;
        /* Of those that a limit brings to nothing, a third is enough; but no two ports do without a tee. */
        if (limit != BRUTE_LIMIT_NO_TEE && limit != BRUTE_LIMIT_COUNT && !is_found &&
            (found - solvable) * 3 > found)
            continue;
        seeds[found++] = seed;
        solvable += is_found;
    }
    if (found == 0)
        return;
    printf("    {%d, BRUTE_LIMIT_%s, {", ports,
           limit == BRUTE_LIMIT_COUNT ? "COUNT" : brute_limit_name(limit));
    for (int i = 0; i < found; i++)
        printf("%s%d", i == 0 ? "" : ", ", seeds[i]);
    printf("}, %d},\n", found);
}

static int wanted(int ports, brute_limit limit)
{
    if (limit == BRUTE_LIMIT_NO_TEE)
        return ports == 1 ? 3 * EACH + 6 : 4;
    if (limit == BRUTE_LIMIT_MOST_ONE && ports == 4)
        return EACH / 4; /* they are rare, and each takes long */
    return limit == BRUTE_LIMIT_MACHINES ? EACH + 12 : EACH;
}

int main(void)
{
    printf("/* SPDX-License-Identifier: MIT */\n/* Made by `make brute-cases`; see find_cases.c. */\n"
           "/* clang-format off */\n");
    for (int ports = 1; ports <= 4; ports++) {
        for (int limit = 0; limit < BRUTE_LIMIT_COUNT; limit++)
            find(ports, (brute_limit)limit, wanted(ports, (brute_limit)limit));
        find(ports, BRUTE_LIMIT_COUNT, EACH_PLAIN);
    }
    for (int ports = 5; ports <= BRUTE_PORTS; ports++)
        find(ports, BRUTE_LIMIT_COUNT, EACH_MANY);
    printf("/* clang-format on */\n");
    return 0;
}
