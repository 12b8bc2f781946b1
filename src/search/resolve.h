/* SPDX-License-Identifier: MIT */
/* The search itself, over integers: net_input.h and search_input.h in, trees out (docs/search.md). */
#ifndef OW_SEARCH_RESOLVE_H
#define OW_SEARCH_RESOLVE_H

#include "net/net.h"
#include "oilway/context.h"
#include "search/search_input.h"

typedef struct ow_resolve ow_resolve;

/* Fills the table for an ask. Context, net and ask (with all it points to) must outlive it. OW_OK whether
 * or not there is a layout; OW_RANGE: port count, kinds or amounts out of range; OW_MEMORY. */
ow_status ow_resolve_new(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                         ow_resolve **resolve);
void ow_resolve_free(ow_resolve *resolve);

/* True only if there is no layout, told by each port alone; false: there may be one, or none. Much cheaper
 * than the table of several ports. OW_RANGE, OW_MEMORY. */
ow_status ow_resolve_hopeless(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                              bool *hopeless);

/* Parts of the best layout. OW_NONE: there is no layout (then *capped tells whether OW_SEARCH_PARTS_MAX had a
 * hand in it). */
ow_status ow_resolve_best_parts(const ow_resolve *resolve, size_t *parts, bool *capped);

/* Where the list is cut unless the ask says otherwise. */
#define OW_LIST_USUAL_ABOVE 4
#define OW_LIST_USUAL_LOOKED 20000
typedef enum ow_list_end { OW_LIST_GOES_ON, OW_LIST_ALL, OW_LIST_PARTS_ABOVE, OW_LIST_LOOKED } ow_list_end;
/* The next really different layout in order. OW_NONE when there is no further one; ow_resolve_end says why.
 */
ow_status ow_resolve_next(ow_resolve *resolve, ow_tree *tree);
ow_list_end ow_resolve_end(const ow_resolve *resolve);

/*
 * One made part that alone completes the layout. It is no hose, no restrictor, as wide as asked, passes every
 * filter. It has one end that mates kind `from` and nothing else, and, unless it is a plug, one that mates
 * kind `to` and nothing else; such a joint turns if that kind `turns`. Listed are all that give the
 * lowest total of parts, the made one counted.
 */
typedef struct ow_made {
    uint32_t from; /* kind of the open end, nearer the source, that it is screwed to */
    uint32_t to;   /* kind of the part's end, or of the port, on its other side; unless plug */
    bool plug;     /* one end only */
    bool to_port;  /* `to` is the port `port` itself */
    size_t port;
    bool at_source; /* `from` is the source itself */
} ow_made;
/* Ordered by from, to. *made is freed with ow_release. OW_NONE if no single made part helps. */
ow_status ow_resolve_missing(ow_resolve *resolve, ow_made **made, size_t *count, size_t *parts);

/* The least key of a layout that uses part `part` (index in the net's input) at least once. OW_NONE: there is
 * none. */
ow_status ow_resolve_forced(ow_resolve *resolve, size_t part, ow_tree *tree);
/* The same for any ask, without one that is resolved already. */
ow_status ow_forced_find(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                         size_t part, ow_tree *tree);

/* One flag a kind (the net's, then the ask's own), in the caller's array: kinds reached as an open end from
 * the source, through parts that pass the filters, whatever their other ends need; */
ow_status ow_resolve_reach_source(ow_resolve *resolve, bool *kinds);
/* and kinds from which that port alone can be served, with every spare end closed, after some history. */
ow_status ow_resolve_reach_port(ow_resolve *resolve, size_t port, bool *kinds);

#endif
