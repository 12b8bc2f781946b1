/* SPDX-License-Identifier: MIT */
/* The brute force's net and ask in the search's words, and its trees back. Kinds, parts and mates are put in
 * another order on the way, which must not matter. */
#ifndef BRUTE_CONVERT_H
#define BRUTE_CONVERT_H

#include "brute/random.h"
#include "search/resolve.h"

typedef struct brute_converted {
    uint16_t kind_of[BRUTE_KINDS]; /* the search's number of a kind */
    size_t part_of[BRUTE_PARTS];   /* and of a part */
    int part_back[BRUTE_PARTS];
    ow_net_kind kinds[BRUTE_KINDS];
    ow_net_mate mates[BRUTE_KINDS * BRUTE_KINDS], extra_mates[BRUTE_KINDS * BRUTE_KINDS];
    ow_net_part parts[BRUTE_PARTS];
    ow_net_input net;
    ow_search_port ports[BRUTE_PORTS];
    size_t without[BRUTE_PARTS];
    ow_search_input ask;
} brute_converted;

void brute_convert(const brute_net *net, const brute_ask *ask, brute_dice *dice, brute_converted *converted);
void brute_tree_back(const brute_converted *converted, const ow_tree *tree, brute_tree *back);
/* Whether the search's key is this one, ids left out. */
bool brute_key_is(const brute_key *key, const ow_key *other);

#endif
