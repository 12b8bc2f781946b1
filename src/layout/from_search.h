/* SPDX-License-Identifier: MIT */
/* Between the catalogue and the search, which knows integers only: what stack.h promises. */
#ifndef OW_LAYOUT_FROM_SEARCH_H
#define OW_LAYOUT_FROM_SEARCH_H

#include "base/map.h"
#include "base/memory.h"
#include "oilway/stack.h"
#include "search/resolve.h"

struct ow_net {
    const ow_context *context;
    const ow_catalog *catalog;
    ow_arena arena;
    size_t kind_count;
    ow_end *kinds;  /* in order of their canonical text */
    ow_map by_text; /* canonical text to kind */
    ow_net_index *index;
};

struct ow_search {
    const ow_context *context;
    const ow_net *net;
    const ow_ask *ask;
    ow_arena arena;
    ow_search_input input;
    const ow_end **extra; /* ends that only the ask knows, by kind less the net's kinds */
    ow_resolve *resolve;
    bool begun;     /* the best layout, if any, was worked out … */
    ow_tree best;   /* … and is kept; nodes NULL: there is none */
    bool best_told; /* and was given away as the first of the list */
    ow_text words;  /* being written by explain or reach */
};

/* The end of a kind of the net or of the ask. */
const ow_end *ow_search_kind_end(const ow_search *search, size_t kind);
/* A given port as one speaks of it: its name, or "the source", "port to#2" with its end. */
void ow_search_write_given(const ow_search *search, size_t given, ow_text *text);
/* As ow_search_new, but OW_NONE and no search where a quick look shows that there is no layout. */
ow_status ow_search_new_hopeful(const ow_context *context, const ow_net *net, const ow_ask *ask,
                                ow_search **search);
/* Works out the best layout once. OW_NONE: there is none. */
ow_status ow_search_best(ow_search *search);
/* Which of two searches has the better best, as ow_key_compare; both were worked out and have one. */
int ow_search_compare(const ow_search *left, const ow_search *right);
/* A lasting copy of `words`, which is then empty again. */
ow_status ow_search_keep_words(ow_search *search, const char **kept);
/* Index of a part in the catalogue; false if it has no such part. */
bool ow_search_part_index(const ow_search *search, const char *id, size_t *index);
/* Bits of the search's fluids, beside those of the fluids: stood under pressure, too. */
#define OW_PRESSED(fluids) ((fluids) << 2)
/* Limits of an ask in the integers of the search. */
ow_search_limits ow_search_limits_of(const ow_ask *ask);
/* Whether two kinds of end may be joined at all, and how. False: never. */
bool ow_net_pair(const ow_end *a, const ow_end *b, bool *tolerated, bool *turns);
/* The pairs of the net's kinds that may be joined, each once, in order; freed with ow_release. */
ow_status ow_net_find_mates(const ow_net *net, ow_net_mate **mates, size_t *count);
int64_t ow_um_of(double metres); /* OW_NOT_SAID stays not said; larger than a kilometre is a kilometre */

#endif
