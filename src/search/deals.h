/* SPDX-License-Identifier: MIT */
/*
 * All that one shape can do for one state: which of its other ends serves which ports, and which is handed
 * the permissions. Slower and plainer than the fill, for the few states that are looked at again.
 */
#ifndef OW_SEARCH_DEALS_H
#define OW_SEARCH_DEALS_H

#include "search/table.h"

typedef struct ow_deal {
    uint32_t shape;
    uint16_t entry;
    unsigned exit_count;
    uint16_t exits[OW_NET_ENDS - 1];  /* kinds of the other ends, ascending */
    ow_ports shares[OW_NET_ENDS - 1]; /* 0: closed */
    uint8_t rows[OW_NET_ENDS - 1];    /* packed history at the exit */
    unsigned need;                    /* places that must be wide */
    size_t parts;                     /* the part and the best beyond each exit */
} ow_deal;

typedef ow_status ow_deal_take(void *user, const ow_deal *deal);

/* Tells each deal that has a layout and for which a part in `supply` (0: in that of the shape) is wide
 * enough; equal ends once. Stops at the first status that is not OW_OK, and returns it. */
ow_status ow_deals(const ow_table *table, uint32_t shape, uint16_t entry, ow_ports set, unsigned packed,
                   unsigned supply, ow_deal_take *take, void *user);

/* The deals of `most` parts or fewer of all shapes with an end of that kind; below OW_TABLE_NONE. In a table
 * of a forced part also those that spend its one use, of which `spent` is told true. */
typedef ow_status ow_deal_take_any(void *user, const ow_deal *deal, bool spent);
ow_status ow_deals_of(const ow_table *table, uint16_t entry, ow_ports set, unsigned packed, size_t most,
                      ow_deal_take_any *take, void *user);

#endif
