/* SPDX-License-Identifier: MIT */
/* What the files behind resolve.h share. */
#ifndef OW_SEARCH_RESOLVE_INNER_H
#define OW_SEARCH_RESOLVE_INNER_H

#include "search/rank.h"
#include "search/resolve.h"

typedef struct ow_listed_bill {
    uint32_t *shapes;
    size_t count;
} ow_listed_bill;

struct ow_resolve {
    const ow_context *context;
    const ow_net_index *net;
    const ow_search_input *ask;
    ow_table *table;
    ow_rank rank; /* rank.table NULL: not begun */
    size_t looked;
    ow_listed_bill *listed;
    size_t listed_count, listed_capacity;
    ow_list_end end;
};

/* Fills what an early stop left out. */
ow_status ow_resolve_complete(ow_resolve *resolve);
/* The derivation of the source's open end. */
ow_status ow_rank_source(ow_rank *rank, size_t number, const ow_derivation **derivation);

#endif
