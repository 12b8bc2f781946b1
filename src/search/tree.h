/* SPDX-License-Identifier: MIT */
/* From a derivation to the tree that it stands for, and to its bill. */
#ifndef OW_SEARCH_TREE_H
#define OW_SEARCH_TREE_H

#include "search/rank.h"

/* The tree below the source; `derivation` is one of the source's own open end. */
ow_status ow_tree_write(const ow_table *table, const ow_derivation *derivation, ow_tree *tree);
/* Shapes of the parts outside dead ends, ascending; `bill` has room for derivation->outside. */
void ow_tree_bill(const ow_table *table, const ow_derivation *derivation, uint32_t *bill);
/* Whether each of `part` (count of it) is in `whole`, as often. Both ascending. */
bool ow_tree_bill_holds(const uint32_t *whole, size_t whole_count, const uint32_t *part, size_t count);

#endif
