/* SPDX-License-Identifier: MIT */
/* The net: shapes, ways through parts and indexes, built once from net_input.h. */
#ifndef OW_NET_NET_H
#define OW_NET_NET_H

#include "base/memory.h"
#include "net/net_input.h"
#include "oilway/context.h"

/* What all parts of a shape can do alike, so that most asks need not look at the parts one by one. */
typedef struct ow_net_promise {
    int64_t rating_pa; /* the least; OW_NET_NOT_SAID if one does not say */
    int64_t leg_um;    /* the narrowest */
    bool has_temperature;
    int64_t low_mc, high_mc; /* borne by all */
    unsigned fluids;         /* in all */
} ow_net_promise;

/*
 * A shape: the kinds of a part's ends, sorted, with the classes that limits ask about. Parts of one shape
 * stand together, those with a price before those without, then by price, length (not said: 0), id.
 */
typedef struct ow_net_shape {
    uint16_t end_count;
    uint16_t kinds[OW_NET_ENDS]; /* ascending */
    bool hose, restrictor;
    bool by_metre;         /* some part of it is sold by the metre */
    uint32_t first, count; /* parts */
    ow_net_promise promise;
} ow_net_shape;

typedef struct ow_net_link {
    uint16_t kind;
    bool tolerated, turns;
} ow_net_link;

#define OW_NET_KIND_NONE 0xFFFFu

/*
 * Ways through a shape. `need` is the set of the shape's ends, by place among the sorted kinds (of equal
 * kinds always the first ones), that must be wide where the exits in its index serve a port that
 * asks for width: need[1] the entry and the first exit, need[2] the entry and the second, …
 */
typedef struct ow_net_carry { /* one end leads on, the others are closed */
    uint32_t shape;
    uint16_t entry;
    uint16_t closed[OW_NET_ENDS - 2]; /* OW_NET_KIND_NONE-filled */
    uint8_t need;                     /* entry and exit */
    uint8_t traits;                   /* of the shape */
} ow_net_carry;

/* What matters of a part to a path through it. */
#define OW_TRAIT_HOSE 1u
#define OW_TRAIT_RESTRICTOR 2u
#define OW_TRAITS 4u

/*
 * A run: the carries of one entry and one exit whose shapes are alike in hose and restrictor; the part that
 * has no other ends, if there is one, comes first. A block: the runs of one exit and one trait whose entries
 * are among the kinds 64 * place .. 64 * place + 63, a bit each, so that a fill can pass over at once what is
 * settled.
 */
typedef struct ow_net_block {
    uint64_t entries; /* there is such a run … */
    uint64_t bare;    /* … which begins with a part that has no other ends; */
    uint64_t closing; /* … which has parts with further ends, to be closed */
    uint32_t first;   /* run; the others follow in the order of their bits */
    uint16_t place;
    uint8_t traits; /* OW_TRAIT_… */
} ow_net_block;

#define OW_FORK_GROUPS (2 * OW_TRAITS)
typedef struct ow_net_fork { /* two ends lead on, a <= b; at most one is closed */
    uint32_t shape;
    uint16_t entry, exits[2], closed;
    uint8_t need[4];
} ow_net_fork;

typedef struct ow_net_cross { /* three ends lead on */
    uint32_t shape;
    uint16_t entry, exits[3];
    uint8_t need[8];
} ow_net_cross;

typedef struct ow_net_index {
    ow_arena arena;
    size_t kind_count;
    ow_net_kind *kinds;
    uint32_t *link_offset; /* kind_count + 1; links of kind k: link_offset[k] .. link_offset[k + 1] */
    ow_net_link *links;    /* ascending by kind */
    size_t part_count;
    ow_net_part *parts;    /* by shape */
    uint32_t *input_index; /* of each of parts, its index in the input */
    uint32_t *place;       /* of each part of the input, its index in parts */
    uint32_t *shape_of;    /* of each of parts */
    size_t shape_count;
    ow_net_shape *shapes;
    uint32_t *entry_offset; /* kind_count + 1: shapes that have an end of that kind, ascending */
    uint32_t *entry_shapes;
    uint32_t *carry_offset; /* kind_count + 1: carries by exit kind, then traits, entry kind, shape */
    ow_net_carry *carries;
    uint32_t *run_first;    /* of each run its first carry, and one more */
    uint32_t *block_offset; /* kind_count + 1: blocks by exit kind, then traits, place */
    ow_net_block *blocks;
    /* Forks by traits, those of two different exits before those of two equal ones (2 * traits + equal, and
     * one more); crosses by traits. */
    uint32_t fork_offset[OW_FORK_GROUPS + 1], cross_offset[OW_TRAITS + 1];
    ow_net_fork *forks;
    ow_net_cross *crosses;
    size_t distinct_count;
} ow_net_index;

/* Immutable once built; the input may go away. OW_RANGE: a number out of range (kinds, ends, amounts, an
 * id twice, a pair twice). OW_MEMORY. O(P log P). Freed with ow_net_index_free. */
ow_status ow_net_index_build(const ow_context *context, const ow_net_input *input, ow_net_index **net);
void ow_net_index_free(ow_net_index *net);

static inline unsigned ow_shape_traits(const ow_net_shape *shape)
{
    return (shape->hose ? OW_TRAIT_HOSE : 0u) | (shape->restrictor ? OW_TRAIT_RESTRICTOR : 0u);
}
/* The place of the lowest bit; not of 0. */
static inline unsigned ow_net_lowest(uint64_t bits)
{
    return (unsigned)__builtin_ctzll(bits);
}
/* The run of a block whose entry has that bit. */
static inline uint32_t ow_net_run_at(const ow_net_block *block, unsigned bit)
{
    return block->first + (uint32_t)__builtin_popcountll(block->entries & (((uint64_t)1 << bit) - 1));
}

/* The places of the given kinds among the shape's sorted kinds, of equal kinds the first free ones: a bit
 * each. */
unsigned ow_net_places(const ow_net_shape *shape, const uint16_t *kinds, size_t count);

#endif
