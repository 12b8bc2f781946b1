/* SPDX-License-Identifier: MIT */
#include "catalog/sort.h"

#include <string.h>

static const char *id_of(const ow_entry *entry)
{
    return entry->part ? entry->part->id : entry->machine->id;
}

/* Merges from[low .. middle) and from[middle .. high), both in order, into to[low .. high). */
static void merge(const ow_entry *entries, const size_t *from, size_t low, size_t middle, size_t high,
                  size_t *to)
{
    size_t left = low, right = middle;
    bool in_order =
        middle == high || strcmp(id_of(&entries[from[middle - 1]]), id_of(&entries[from[middle]])) <= 0;
    if (in_order) { /* pages are mostly written in order */
        memcpy(&to[low], &from[low], (high - low) * sizeof *to);
        return;
    }
    for (size_t at = low; at < high; at++) {
        bool take_left = right == high || (left < middle && strcmp(id_of(&entries[from[left]]),
                                                                   id_of(&entries[from[right]])) <= 0);
        to[at] = take_left ? from[left++] : from[right++];
    }
}

ow_status ow_sort_entries(const ow_context *context, const ow_entry *entries, size_t count, size_t *order)
{
    size_t *spare = ow_new_array(context, count + 1, sizeof *spare);
    if (!spare)
        return OW_MEMORY;
    size_t *from = order, *to = spare;
    for (size_t i = 0; i < count; i++)
        order[i] = i;
    for (size_t width = 1; width < count; width *= 2) {
        for (size_t low = 0; low < count; low += 2 * width) {
            size_t middle = count - low > width ? low + width : count;
            size_t high = count - low > 2 * width ? low + 2 * width : count;
            merge(entries, from, low, middle, high, to);
        }
        size_t *swap = from;
        from = to;
        to = swap;
    }
    if (from != order)
        memcpy(order, from, count * sizeof *order);
    ow_release(context, spare);
    return OW_OK;
}
