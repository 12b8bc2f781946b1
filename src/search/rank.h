/* SPDX-License-Identifier: MIT */
/*
 * Layouts in order of preference, one after another, on the finished table (Jimenez, Marzal 2000; Huang,
 * Chiang 2005). Each state keeps the derivations found so far in order, and a heap of candidates. Candidates
 * whose best has n parts are only worked out once the state is asked for something of n parts, so that the
 * first answer looks at ties alone.
 *
 * What a candidate needs of the states behind it is put on an agenda and done first. Nothing calls itself: a
 * layout may be OW_SEARCH_PARTS_MAX parts long, and a host's thread may have little stack.
 *
 * A derivation of an open end is the joint with a port, or with the derivation of the entered end that it is
 * screwed to. A derivation of an entered end is a part, with a derivation of the open end behind each of its
 * other ends.
 */
#ifndef OW_SEARCH_RANK_H
#define OW_SEARCH_RANK_H

#include "search/deals.h"
#include "search/table.h"

#define OW_RANK_NO_PART UINT32_MAX

typedef struct ow_rank_state ow_rank_state;

typedef struct ow_branch {
    ow_rank_state *state;
    uint32_t rank;
    uint8_t end;  /* the part's own end */
    bool closing; /* nothing to serve beyond: always its first */
    bool wide;    /* the end must be wide enough */
} ow_branch;

typedef struct ow_derivation {
    ow_key key;
    uint32_t outside; /* parts not in dead ends */
    uint32_t order;   /* of finding: decides between what is equal in all */
    uint32_t part;    /* place in the net; OW_RANK_NO_PART: a joint */
    uint16_t entry;   /* kind of the end entered */
    uint8_t enter;    /* the part's own end */
    bool enter_wide;
    uint8_t branch_count;
    ow_branch branches[OW_NET_ENDS - 1]; /* none and no part: the port itself */
    const uint32_t *ids;                 /* in walking order; only once ranked */
} ow_derivation;

struct ow_rank_state {
    bool entered; /* an entered end, not an open one */
    ow_ports set;
    uint16_t kind;
    uint8_t row; /* packed history */
    size_t where;
    ow_derivation *ranked;
    size_t ranked_count, ranked_capacity;
    ow_derivation *heap; /* and behind it, candidates that wait for the states they need */
    size_t heap_count, waiting_count, heap_capacity;
    size_t least;   /* parts of the first */
    size_t level;   /* next number of parts to work out candidates for; OW_TABLE_NONE: all are */
    size_t later;   /* the one after it, while candidates wait */
    bool succeeded; /* the successors of the last ranked one are in the heap */
    bool exhausted; /* there are no more */
};

/* Something wanted of a state: its derivation of that rank. */
typedef struct ow_rank_wish {
    ow_rank_state *state;
    size_t number;
} ow_rank_wish;

typedef struct ow_rank {
    const ow_table *table;
    ow_arena arena;
    ow_rank_state **slots; /* by hash; capacity is a power of two */
    size_t slot_count, slot_capacity;
    ow_rank_wish *agenda; /* the last is done first */
    size_t agenda_count, agenda_capacity;
    uint32_t *scratch[2]; /* lists of ids being compared, OW_SEARCH_PARTS_MAX each */
    uint32_t order;
    size_t most_parts; /* what has more is not looked at … */
    bool cut;          /* … and this tells that there was some */
} ow_rank;

ow_status ow_rank_new(const ow_table *table, size_t most_parts, ow_rank *rank);
void ow_rank_done(ow_rank *rank);
/* The state of an open end, or of an entered one. */
ow_status ow_rank_state_of(ow_rank *rank, bool entered, ow_ports set, unsigned row, size_t kind,
                           ow_rank_state **state);
/* The derivation of that rank, from 0. OW_NONE: there are not so many. The pointer is good until the state
 * is asked for a further one. */
ow_status ow_rank_get(ow_rank *rank, ow_rank_state *state, size_t number, const ow_derivation **derivation);

/* compose.c: a part with the first of each branch, not weighed yet. */
ow_status ow_rank_compose(ow_rank *rank, const ow_rank_state *state, const ow_deal *deal, bool spent,
                          ow_derivation *derivation);
/* Its key, from branches that are ranked, and of equal ends the best way round. OW_NONE: it has more than
 * rank->most_parts. */
ow_status ow_rank_weigh(ow_rank *rank, const ow_rank_state *state, ow_derivation *derivation);
/* Negative where left comes first. */
int ow_rank_compare(ow_rank *rank, const ow_derivation *left, const ow_derivation *right);
/* Writes the ids in walking order, key.parts of them. */
void ow_rank_list_ids(const ow_rank *rank, const ow_derivation *derivation, uint32_t *ids);

#endif
