/* SPDX-License-Identifier: MIT */
/* Stable sorts: the C library's own may take memory that no context knows of. */
#ifndef OW_BASE_SORT_H
#define OW_BASE_SORT_H

#include <stddef.h>
#include <stdint.h>

#include "oilway/context.h"

/* Negative, zero or positive as item `left` goes before, with or behind item `right`. */
typedef int ow_compare(const void *items, uint32_t left, uint32_t right);

/* Puts order[0 .. count) into ascending order by compare(items, …); what is in order already is looked at
 * once. OW_MEMORY: order is unchanged. O(count log count). */
ow_status ow_sort(const ow_context *context, uint32_t *order, size_t count, ow_compare *compare,
                  const void *items);

/* The same with the items themselves, count of them of `size` bytes each. OW_MEMORY: they are unchanged. */
ow_status ow_sort_items(const ow_context *context, void *items, size_t count, size_t size,
                        ow_compare *compare);

#endif
