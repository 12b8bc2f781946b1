/* SPDX-License-Identifier: MIT */
#include "base/sort.h"

#include <stdbool.h>
#include <string.h>

#include "base/memory.h"
#include "base/progress.h"

#define TOLD_FROM 65536 /* items: less than that takes no time */

/* Merges from[low .. middle) and from[middle .. high) into to[low .. high). */
static void merge(const uint32_t *from, uint32_t *to, size_t low, size_t middle, size_t high,
                  ow_compare *compare, const void *items)
{
    size_t left = low, right = middle;
    if (middle == high || compare(items, from[middle - 1], from[middle]) <= 0) {
        memcpy(to + low, from + low, (high - low) * sizeof *to);
        return;
    }
    for (size_t at = low; at < high; at++) {
        bool take_left = left < middle && (right >= high || compare(items, from[left], from[right]) <= 0);
        to[at] = take_left ? from[left++] : from[right++];
    }
}

ow_status ow_sort(const ow_context *context, uint32_t *order, size_t count, ow_compare *compare,
                  const void *items)
{
    if (count < 2)
        return OW_OK;
    uint32_t *other = ow_new_array(context, count, sizeof *other);
    if (other == NULL)
        return OW_MEMORY;
    uint32_t *from = order, *to = other;
    ow_status status = OW_OK;
    for (size_t width = 1; width < count && status == OW_OK; width *= 2) {
        for (size_t low = 0; low < count; low += 2 * width) {
            size_t middle = low + width < count ? low + width : count;
            size_t high = low + 2 * width < count ? low + 2 * width : count;
            merge(from, to, low, middle, high, compare, items);
        }
        uint32_t *swap = from;
        from = to;
        to = swap;
        if (count >= TOLD_FROM)
            status = ow_progress_tell(context, "putting parts in order", NULL, 0, 0);
    }
    if (from != order)
        memcpy(order, from, count * sizeof *order);
    ow_release(context, other);
    return status;
}

ow_status ow_sort_items(const ow_context *context, void *items, size_t count, size_t size,
                        ow_compare *compare)
{
    if (count < 2)
        return OW_OK;
    if (count > UINT32_MAX)
        return OW_LIMIT;
    uint32_t *order = ow_new_array(context, count, sizeof *order);
    unsigned char *sorted = ow_new_array(context, count, size);
    ow_status status = order == NULL || sorted == NULL ? OW_MEMORY : OW_OK;
    for (size_t i = 0; status == OW_OK && i < count; i++)
        order[i] = (uint32_t)i;
    if (status == OW_OK)
        status = ow_sort(context, order, count, compare, items);
    for (size_t i = 0; status == OW_OK && i < count; i++)
        memcpy(sorted + i * size, (const unsigned char *)items + order[i] * size, size);
    if (status == OW_OK)
        memcpy(items, sorted, count * size);
    ow_release(context, sorted);
    ow_release(context, order);
    return status;
}
