/* SPDX-License-Identifier: MIT */
/*
 * The fewest-part layout, exactly (docs/search.md): a net built once from a catalogue, asks answered
 * over it one after another. Order of preference: parts, price (unpriced last), stick-out, ids.
 */
#ifndef OILWAY_STACK_H
#define OILWAY_STACK_H

#include "oilway/layout.h"

typedef struct ow_net ow_net;

/* Builds the net; immutable afterwards, any number of searches may share it at once. The catalogue must
 * outlive it. O(P log P) in the number of parts. OW_MEMORY, OW_LIMIT. Free with ow_net_free. */
ow_status ow_net_build(const ow_context *context, const ow_catalog *catalog, ow_net **net);
void ow_net_free(ow_net *net);

size_t ow_net_kind_count(const ow_net *net); /* distinct kinds of end, in order of their text */
const ow_end *ow_net_kind_at(const ow_net *net, size_t index);
size_t ow_net_shape_count(const ow_net *net);
/* Parts that are distinct in ends and passages (rows differing in length, material, price count once). */
size_t ow_net_distinct_count(const ow_net *net);

typedef struct ow_ask {
    const char *title; /* may be NULL */
    ow_circuit circuit;
    size_t given_count;     /* 2 .. 7: the source, then the ports served */
    const ow_given *givens; /* [0] the source, then every OW_ROLE_TO, then every OW_ROLE_KEEP */
    ow_limits limits;
    double hose_length_m;       /* hoses' length in the answers and in prices; OW_NOT_SAID = 1 m for prices */
    const char *const *without; /* ids of parts that may not be used */
    size_t without_count;
} ow_ask;

typedef struct ow_search ow_search;

/*
 * Fills the table for an ask. The ask and net must outlive it. OW_OK whether or not there is a layout;
 * OW_RANGE for too many ports; OW_INPUT if a given end is not whole. Time and memory: docs/search.md.
 */
ow_status ow_search_new(const ow_context *context, const ow_net *net, const ow_ask *ask, ow_search **search);
void ow_search_free(ow_search *search);

/* The next best really different layout, in order; OW_NONE when there is no further one. The layout is
 * the caller's (ow_layout_free) and lends the ask's and catalogue's strings. */
ow_status ow_search_next(ow_search *search, ow_layout *layout);
/* Why the list ended or was cut, in words; lent. */
const char *ow_search_cut(const ow_search *search);

/* One made part that alone completes the layout at the lowest total. */
typedef struct ow_missing {
    ow_end from, to;   /* the made part's own ends: from faces the source */
    bool is_plug;      /* `to` is unused: a made plug */
    size_t part_count; /* of the completed layout, the made part included */
    const char *why;
    bool direct; /* it joins source and port themselves */
} ow_missing;
/* Plainest first, at most `most`. OW_NONE if even one made part does not help. The array is one block;
 * freed with ow_missing_free. */
ow_status ow_search_missing(ow_search *search, size_t most, ow_missing **missing, size_t *count);
void ow_missing_free(const ow_context *context, ow_missing *missing, size_t count);

/* How far it got: ends that can be reached from the source, and ends from which each port can be. */
typedef struct ow_reach {
    size_t from_source;           /* count of kinds reached as an open end */
    size_t to_port[OW_PORTS_MAX]; /* by port, in the ask's order */
    const char *words;            /* a sentence or two with the ends nearest to each other; lent by search */
} ow_reach;
ow_status ow_search_reach(ow_search *search, ow_reach *reach);

/* Why part `id` is not in the best answer: worse by how much, or which limit it fails. */
typedef struct ow_explanation {
    bool known; /* the catalogue has it */
    bool in_best;
    bool possible; /* some layout under these limits uses it */
    long long worse_parts;
    long long worse_cents;
    long long worse_stick_out_um;
    const char *limit; /* the first limit whose removal makes it possible, in words; NULL */
    const char *words; /* the whole sentence; lent by search */
} ow_explanation;
ow_status ow_search_explain(ow_search *search, const char *id, ow_explanation *explanation);

#endif
