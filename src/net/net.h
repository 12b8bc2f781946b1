/* SPDX-License-Identifier: MIT */
/* The net: shapes, ways through parts and indexes, built once from net_input.h. */
#ifndef OW_NET_NET_H
#define OW_NET_NET_H

#include "net/net_input.h"
#include "oilway/context.h"

typedef struct ow_net_index ow_net_index;

/* Immutable once built; the input may go away. OW_RANGE: a number out of range (kinds, ends, amounts, an
 * id twice). OW_LIMIT, OW_MEMORY. O(P log P). Freed with ow_net_index_free. */
ow_status ow_net_index_build(const ow_context *context, const ow_net_input *input, ow_net_index **net);
void ow_net_index_free(ow_net_index *net);

size_t ow_net_index_shape_count(const ow_net_index *net);
size_t ow_net_index_shape_of(const ow_net_index *net, size_t part); /* part: index in the input */
/* Parts distinct in kinds of ends, legs, hose, restrictor and orifice. */
size_t ow_net_index_distinct_count(const ow_net_index *net);

#endif
