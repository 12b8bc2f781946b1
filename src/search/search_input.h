/* SPDX-License-Identifier: MIT */
/*
 * What is asked of the search, in integers, and what it answers.
 *
 * A layout is a tree. Its root is the source. The source mates one end of a part, or a port. Every
 * other end of every part in it mates exactly one end of one further part, or exactly one port; every
 * port is mated exactly once; nothing is left open and there is no ring. A part may be entered by
 * any of its ends and used any number of times. Two things may be joined if their kinds are a pair
 * of the net's mates (or of extra_mates), tolerated pairs only with limits.tolerate.
 *
 * The path to a port is the chain of parts between the source and it. A dead end is what hangs on an
 * end behind which no port stands. "On the path to t" never means a dead end. A part branching to
 * several ports is on the path of each, and the passage that counts for each is from the end entered
 * to the end by which that port's path leaves.
 */
#ifndef OW_SEARCH_SEARCH_INPUT_H
#define OW_SEARCH_SEARCH_INPUT_H

#include "net/net_input.h"

#define OW_SEARCH_PORTS_MAX 6
/* A layout of more parts is not looked for; if that was ever the reason for "none", the answer says so. */
#define OW_SEARCH_PARTS_MAX 1000

typedef enum ow_restricting {
    OW_RESTRICTING_FREE,
    OW_RESTRICTING_NEEDED, /* exactly one part with `restrictor` on the path to each served port */
    OW_RESTRICTING_BARRED, /* none on the path to any served port */
    OW_RESTRICTING_SINGLE, /* one at most on the path to each served port */
    OW_RESTRICTING_BY_PORT /* to each served port as it says itself */
} ow_restricting;

typedef struct ow_search_port {
    uint32_t kind;              /* of the net, or an extra kind of this ask */
    bool served;                /* true: a port to be fed (--to); false: a kept one (a switch, a sender) */
    bool machine;               /* belongs to an engine or a turbo; asked only of served ports */
    ow_restricting restricting; /* of a served port, where limits.restricting is OW_RESTRICTING_BY_PORT */
} ow_search_port;

typedef enum ow_hoses {
    OW_HOSES_FREE,
    OW_HOSES_ONE,  /* exactly one part with `hose` on the path to each served port; and of any two served
                    * ports that are `machine`, the way through the layout from one to the other
                    * passes at least one hose (the branching part itself may be it) */
    OW_HOSES_SOME, /* the same, but at least one on each path */
    OW_HOSES_NONE  /* no part with `hose` on the path to any served port */
} ow_hoses;

/*
 * Whatever the limits, no part with `restrictor` stands on the path to a kept port, and none with
 * `hose` unless remote_switch. Hoses and restrictors in dead ends are free.
 */
typedef struct ow_search_limits {
    /* Every passage on the path to each served port: leg entered >= and leg left >= this. A restrictor's
     * orifice does not count, its legs do. A leg not said does not pass. NOT_SAID: no limit. */
    int64_t least_bore_um;
    ow_hoses hoses;
    /*
     * Closing joint. Cut the layout at every joint whose pair `turns` (the joints at the source and at the
     * ports count). No piece may hold two fixed things; fixed are the source and every served port,
     * kept ports are not.
     */
    bool closing;
    ow_restricting restricting;
    /* Filters: a part that fails is not used anywhere, not in dead ends either. NOT_SAID: not asked. */
    int64_t orifice_low_um, orifice_high_um; /* parts with `restrictor`: orifice said, low <= it <= high */
    int64_t rating_pa;                       /* part's rating said and >= this */
    bool has_temperature;
    int64_t temperature_mc; /* part has_temperature and low <= this <= high */
    unsigned fluid;         /* part's fluids said and hold all these bits; 0 = not asked */
    bool no_tee;            /* parts with three or more ends are not used */
    bool no_clamp;          /* nothing is joined to an end of a clamped kind, ports included */
    bool tolerate;          /* tolerated pairs may be joined */
    bool remote_switch;     /* hoses may stand on the path to a kept port */
} ow_search_limits;
#define OW_SEARCH_LIMITS_INIT                                                                         \
    {                                                                                                 \
        OW_NET_NOT_SAID, OW_HOSES_FREE, false, OW_RESTRICTING_FREE, OW_NET_NOT_SAID, OW_NET_NOT_SAID, \
            OW_NET_NOT_SAID, false, 0, 0, false, false, false, false                                  \
    }

typedef struct ow_search_input {
    uint32_t source;   /* kind */
    size_t port_count; /* 1 .. OW_SEARCH_PORTS_MAX */
    const ow_search_port *ports;
    ow_search_limits limits;
    int64_t hose_length_um; /* of every part with by_metre: 0 .. OW_NET_AMOUNT_MAX; one metre = 1000000 */
    const size_t *without;  /* indexes of parts (in the net's input) that may not be used */
    size_t without_count;
    /* Kinds only this ask knows: numbers kind_count .. kind_count + extra_count - 1, and further pairs.
     * No part has them; the source and ports may. */
    size_t extra_count;
    const ow_net_kind *extra_kinds;
    size_t extra_mate_count;
    const ow_net_mate *extra_mates;
    /* Where the list of next best layouts is cut; 0 = the usual bounds. */
    size_t parts_above; /* more parts than the best one has */
    size_t looked_most; /* derivations looked at */
    /* Spare ends may stay open, at the price of one part each: for hope.c, which asks for no layout. */
    bool spare_open;
} ow_search_input;

/*
 * Order of preference, compared from the top; the least layout is the answer.
 *   parts         every part of the tree, plugs and all
 *   unpriced      parts without a price
 *   cents         sum of prices; a by_metre part costs floor((price * hose_length_um + 500000) / 1000000)
 *   stick_out_um  sum of length_um of the parts on the path to the first served port (lowest index in
 *                 ports) that come before the first part with `hose` on that path; all of the path if there
 * is none; the hose itself adds nothing; 0 if no port is served ids           the list of id of all parts in
 * walking order: a part, then what hangs on each of its other ends in the part's own order of ends, each to
 * its tip before the next. Lists are compared element by element; equal counts make them equally long. Ends
 * of one part that are of one kind are tried each way round: the least list wins.
 */
typedef struct ow_key {
    uint32_t parts;
    uint32_t unpriced;
    int64_t cents;
    int64_t stick_out_um;
} ow_key;
/* Negative, zero or positive as left goes before, with (but for ids) or behind right. */
int ow_key_compare(const ow_key *left, const ow_key *right);

#define OW_TREE_NONE ((size_t)-1)

typedef struct ow_tree_node {
    size_t part;               /* index in the net's input; OW_TREE_NONE for the source and ports */
    size_t port;               /* index of the port; OW_TREE_NONE for the source and parts */
    size_t parent, parent_end; /* OW_TREE_NONE for the source */
    size_t enter;              /* the part's own end; 0 for a port */
    size_t exits[OW_NET_ENDS]; /* node on each other end; source: exits[0] */
} ow_tree_node;

/* Nodes in walking order; node 0 is the source. Always node_count = 1 + parts + ports. */
typedef struct ow_tree {
    ow_key key;
    size_t node_count;
    ow_tree_node *nodes; /* freed by the caller with ow_release */
} ow_tree;

/*
 * The list of next best: the *bill* of a layout is the multiset of the shapes of its parts that are on
 * the path to at least one port (dead ends left out); a shape is the multiset of the kinds of the
 * part's ends, with `hose` and `restrictor`. Layouts come in the order above (equal in all: fewer parts
 * outside dead ends first); one is listed unless the bill of an earlier listed one is contained in its own.
 */

#endif
