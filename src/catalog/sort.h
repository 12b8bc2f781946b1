/* SPDX-License-Identifier: MIT */
/* Order by id. The C library's sort may take memory behind the context's back, so this one is our own. */
#ifndef OW_CATALOG_SORT_H
#define OW_CATALOG_SORT_H

#include "catalog/internal.h"

/* Fills order[0 .. count - 1] with the entries' indexes in order of id (bytes). O(n log n). OW_MEMORY. */
ow_status ow_sort_entries(const ow_context *context, const ow_entry *entries, size_t count, size_t *order);

#endif
