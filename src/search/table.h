/* SPDX-License-Identifier: MIT */
/*
 * The table: least number of parts for each open end, history and set of ports. Numbers of parts only;
 * price, stick-out and ids are worked out afterwards for the few states that tie (rank.h).
 *
 *   open[at(set, q) + x]     parts beyond an open end of kind x
 *   entered[at(set, q) + e]  parts from the one on that is entered by an end of kind e
 *
 * q numbers the histories that the set asks about: their bits, packed.
 */
#ifndef OW_SEARCH_TABLE_H
#define OW_SEARCH_TABLE_H

#include "base/memory.h"
#include "net/net.h"
#include "search/rules.h"

#define OW_TABLE_NONE 0xFFFFu /* no layout, or one of more than OW_SEARCH_PARTS_MAX parts */

/* An event that happens exactly once in the layout is one more bit of the set. */
typedef enum ow_event {
    OW_EVENT_NONE,
    OW_EVENT_MADE,  /* a made part that joins any two ends, or closes one */
    OW_EVENT_FORCED /* one use of a given part */
} ow_event;

typedef struct ow_joint_link { /* a mate allowed in this ask */
    uint16_t kind;
    bool turns;
} ow_joint_link;

/* Histories of a set, numbered: the bits that it asks about, packed. */
typedef struct ow_packing {
    unsigned count;                    /* 2^bits */
    uint8_t packed[OW_HISTORY_BITS];   /* of bits to number; bits not asked about are ignored */
    uint8_t unpacked[OW_HISTORY_BITS]; /* of number to bits */
} ow_packing;

/* Forks and crosses of this ask, with what they weigh: the part and what closes its other ends. */
typedef struct ow_fork_arc {
    uint16_t entry, exits[2], weight;
    uint8_t wide; /* bit p: wide enough if the exits in p serve; bit 0 always */
} ow_fork_arc;
typedef struct ow_cross_arc {
    uint16_t entry, exits[3], weight;
    uint8_t wide;
} ow_cross_arc;

typedef struct ow_table {
    const ow_context *context;
    ow_arena arena;
    const ow_net_index *net;
    const ow_search_input *ask;
    ow_rules rules;
    ow_event event;
    ow_ports event_bit; /* 0 without an event */
    uint32_t forced;    /* place of the part in the net */
    size_t kind_count;  /* with the ask's own kinds */
    size_t set_count;
    ow_ports all;
    bool asks_orifice;
    bool *barred; /* by place, or NULL */

    uint32_t *link_offset;
    ow_joint_link *links;
    uint32_t *supply; /* by shape, worked out when first asked for: ow_filter_supply */

    uint8_t asked[OW_SETS_MAX];
    size_t at[OW_SETS_MAX + 1];
    ow_packing packings[OW_HISTORY_BITS]; /* by bits asked about */
    uint16_t *open, *entered;
    bool *any; /* by row, of the sets filled: an open end of it has a label */

    uint32_t fork_offset[OW_FORK_GROUPS + 1], cross_offset[OW_TRAITS + 1]; /* as in the net */
    ow_fork_arc *forks;
    ow_cross_arc *crosses;

    struct ow_fill *fill;

    bool capped; /* a number of parts went over OW_SEARCH_PARTS_MAX */
    bool whole;  /* the last set is filled, not only as far as the source needed it */
    bool torn;   /* filling the rest failed half-way: it must be done before anything is read */
    size_t best; /* parts beyond the source, or OW_TABLE_NONE */
} ow_table;

/* Prepares and fills. whole = false lets the last set stop as soon as the source is settled. OW_RANGE,
 * OW_MEMORY. */
ow_status ow_table_new(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                       ow_event event, uint32_t forced, bool whole, ow_table **table);
void ow_table_free(ow_table *table);
/* Fills what an early stop left out. */
ow_status ow_table_complete(ow_table *table);

static inline size_t ow_table_at(const ow_table *table, ow_ports set, unsigned packed)
{
    return table->at[set] + packed * table->kind_count;
}
static inline size_t ow_table_row(const ow_table *table, ow_ports set, unsigned packed)
{
    return table->at[set] / table->kind_count + packed;
}
static inline const ow_packing *ow_table_packing(const ow_table *table, ow_ports set)
{
    return &table->packings[table->asked[set]];
}
/* Whether an end of that kind turns by itself: asked of what a made part meets. */
static inline bool ow_table_kind_turns(const ow_table *table, size_t kind)
{
    size_t own = table->net->kind_count;
    return kind < own ? table->net->kinds[kind].turns : table->ask->extra_kinds[kind - own].turns;
}
/* Whether a made part may meet it: not where only a clamp would hold, and none may. */
static inline bool ow_table_kind_meets(const ow_table *table, size_t kind)
{
    size_t own = table->net->kind_count;
    return !table->ask->limits.no_clamp ||
           !(kind < own ? table->net->kinds[kind].clamped : table->ask->extra_kinds[kind - own].clamped);
}
/* The kinds that x may be joined to in this ask. */
static inline const ow_joint_link *ow_table_links(const ow_table *table, size_t kind, size_t *count)
{
    *count = table->link_offset[kind + 1] - table->link_offset[kind];
    return table->links + table->link_offset[kind];
}

#endif
