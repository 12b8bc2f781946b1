/* SPDX-License-Identifier: MIT */
/*
 * What the net is built from: kinds of end, pairs that mate, parts. Integers only; nothing here knows
 * threads, catalogues or text, so that the search can be tested against any net one can think of.
 *
 * A quantity that is not said is OW_NET_NOT_SAID; a limit that asks about it then refuses the part.
 */
#ifndef OW_NET_NET_INPUT_H
#define OW_NET_NET_INPUT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define OW_NET_ENDS 4
#define OW_NET_NOT_SAID ((int64_t)-1)
#define OW_NET_KINDS_MAX 65000
#define OW_NET_AMOUNT_MAX ((int64_t)1000000000) /* largest price in cents, length and bore in um */

typedef struct ow_net_kind {
    /* The end itself turns or clamps freely. Asked only where a made part meets it (ow_missing); what
     * turns between two ends of the net is said by their pair. */
    bool turns;
    bool clamped; /* a clamp alone holds what it is joined to: a barb, a bead, the hose on them */
} ow_net_kind;

/* Two kinds that may be joined, in either direction. a == b: the kind mates itself. No pair twice. */
typedef struct ow_net_mate {
    uint16_t a, b;
    bool tolerated; /* joined only where the ask tolerates it */
    bool turns;     /* the joint can be made last: it cuts the layout into pieces (limit `closing`) */
} ow_net_mate;

typedef struct ow_net_part {
    uint32_t id;        /* place of the part's id among all ids: no two alike; smaller is preferred */
    uint16_t end_count; /* 1 .. OW_NET_ENDS; 1 is a plug */
    uint16_t kinds[OW_NET_ENDS]; /* in the part's own order, which is the walking order of its exits */
    int64_t leg_um[OW_NET_ENDS]; /* bore of each end's leg; passage i to j is as wide as the lesser leg */
    bool hose;                   /* passing it, between any two of its ends, passes one hose */
    bool restrictor;             /* passing it, between any two of its ends, passes one restrictor */
    bool by_metre;               /* price_cents is for one metre (a hose off the roll) */
    int64_t orifice_um;          /* restrictor */
    int64_t rating_pa;           /* not bounded by OW_NET_AMOUNT_MAX */
    bool has_temperature;
    int64_t low_mc, high_mc; /* thousandths of a degree Celsius, with has_temperature */
    unsigned fluids;         /* bits; 0 = not said */
    int64_t price_cents;     /* >= 0, or OW_NET_NOT_SAID = unpriced */
    int64_t length_um;       /* rigid length for the stick-out; OW_NET_NOT_SAID counts as 0 */
} ow_net_part;

typedef struct ow_net_input {
    size_t kind_count;
    const ow_net_kind *kinds;
    size_t mate_count;
    const ow_net_mate *mates;
    size_t part_count;
    const ow_net_part *parts; /* in any order */
} ow_net_input;

#endif
