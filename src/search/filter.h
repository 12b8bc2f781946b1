/* SPDX-License-Identifier: MIT */
/* Which parts an ask allows at all, and which of their ends are wide enough for a served port. */
#ifndef OW_SEARCH_FILTER_H
#define OW_SEARCH_FILTER_H

#include "search/table.h"

/* Marks `without`. OW_RANGE: an index out of range. */
ow_status ow_filter_bar(ow_table *table);
/* place: of the net's parts. */
bool ow_filter_passes(const ow_table *table, size_t place);
bool ow_filter_wide(const ow_table *table, int64_t leg_um);
/* The places among the sorted kinds of the shape that are wide, of equal kinds the first ones. */
unsigned ow_filter_wide_places(const ow_table *table, const ow_net_shape *shape, const ow_net_part *part);
/*
 * What a shape has to offer: bit m tells that a part passing the filters has the ends in m wide (places
 * among the sorted kinds, of equal kinds the first ones; all ends: bit 15). 0: no part of it may be used.
 */
#define OW_SUPPLY_KNOWN 0x10000u
#define OW_SUPPLY_ALL_WIDE 0x8000u
unsigned ow_filter_work_out(const ow_table *table, uint32_t shape);
static inline unsigned ow_filter_supply(const ow_table *table, uint32_t shape)
{
    unsigned supply = table->supply[shape];
    return (supply != 0 ? supply : ow_filter_work_out(table, shape)) & 0xFFFFu;
}
ow_status ow_filter_prepare(ow_table *table);
/* The bits of a supply that will do for a need. */
static inline bool ow_supply_meets(unsigned supply, unsigned need)
{
    /* superset[need]: bit m set where m holds all of need. Built from the four columns of m. */
    unsigned superset = 0xFFFFu;
    superset &= (need & 1u) != 0 ? 0xAAAAu : 0xFFFFu;
    superset &= (need & 2u) != 0 ? 0xCCCCu : 0xFFFFu;
    superset &= (need & 4u) != 0 ? 0xF0F0u : 0xFFFFu;
    superset &= (need & 8u) != 0 ? 0xFF00u : 0xFFFFu;
    return (supply & superset) != 0;
}

#endif
