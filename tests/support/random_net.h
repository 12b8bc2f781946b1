/* SPDX-License-Identifier: MIT */
/* Seeded random nets and asks in the integers of the search, the same on every machine; and what tests do to
 * them: shuffle, renumber, add, remove. */
#ifndef OW_TESTS_RANDOM_NET_H
#define OW_TESTS_RANDOM_NET_H

#include "net/net.h"
#include "search/search_input.h"

#define OW_RANDOM_KINDS 64
#define OW_RANDOM_MATES 512
#define OW_RANDOM_PARTS 512

typedef struct ow_random {
    uint64_t state;
} ow_random;

ow_random ow_random_new(uint64_t seed);
uint32_t ow_random_below(ow_random *random, uint32_t limit); /* 0 .. limit - 1 */
bool ow_random_chance(ow_random *random, uint32_t percent);

/* A net and an ask with their storage. Not to be copied: the inputs point into it. */
typedef struct ow_random_case {
    ow_net_kind kinds[OW_RANDOM_KINDS];
    ow_net_mate mates[OW_RANDOM_MATES];
    ow_net_part parts[OW_RANDOM_PARTS];
    ow_search_port ports[OW_SEARCH_PORTS_MAX];
    ow_net_input net;
    ow_search_input ask;
} ow_random_case;

/* Kinds and parts of a counter: pairs that mate, some that mate themselves, tees, hoses, few plugs. */
void ow_random_net(ow_random *random, size_t kinds, size_t parts, ow_random_case *made);
/* The first port is a served one. Limits at random, none of them in about a third of the asks. */
void ow_random_ask(ow_random *random, size_t ports, ow_random_case *made);
/* One more part at the end, with an id of its own. */
void ow_random_add_part(ow_random *random, ow_random_case *made);
void ow_random_remove_part(ow_random_case *made, size_t part);

void ow_random_shuffle_parts(ow_random *random, ow_random_case *made);
void ow_random_shuffle_mates(ow_random *random, ow_random_case *made);
void ow_random_shuffle_ends(ow_random *random, ow_random_case *made);
void ow_random_renumber_kinds(ow_random *random, ow_random_case *made);
/* All ports but the first, whose path gives the stick-out. */
void ow_random_shuffle_ports(ow_random *random, ow_random_case *made);

#endif
