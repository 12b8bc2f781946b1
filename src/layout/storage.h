/* SPDX-License-Identifier: MIT */
/* What a layout owns: one arena for its nodes, given ports and words. Whoever makes a layout (the reader
 * here, the search) begins with ow_layout_begin, so that ow_layout_free serves all. */
#ifndef OW_LAYOUT_STORAGE_H
#define OW_LAYOUT_STORAGE_H

#include "base/memory.h"
#include "oilway/layout.h"

/* An empty layout with storage. OW_MEMORY: nothing to free. */
ow_status ow_layout_begin(const ow_context *context, ow_layout *layout);
/* Where its nodes, given ports and words are to be taken from. */
ow_arena *ow_layout_arena(ow_layout *layout);
/* Numbers the occurrences of each id in walking order. */
void ow_layout_number(ow_layout *layout);

/* The end by which a part is entered where nobody says: the first, in the order of its kind, that mates
 * the end it hangs on; the first of all if none does. */
size_t ow_layout_usual_entry(const ow_part *part, const ow_end *onto);

#endif
