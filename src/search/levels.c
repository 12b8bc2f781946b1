/* SPDX-License-Identifier: MIT */
#include "search/levels.h"

ow_status ow_levels_new(ow_arena *arena, size_t states, ow_levels **levels)
{
    ow_levels *made = ow_arena_get(arena, sizeof *made);
    if (made == NULL)
        return OW_MEMORY;
    made->after = ow_arena_get_array(arena, states, sizeof *made->after);
    made->before = ow_arena_get_array(arena, states, sizeof *made->before);
    if (made->after == NULL || made->before == NULL)
        return OW_MEMORY;
    made->highest = OW_SEARCH_PARTS_MAX + 1;
    ow_levels_clear(made);
    *levels = made;
    return OW_OK;
}

void ow_levels_clear(ow_levels *levels)
{
    for (size_t level = 0; level <= levels->highest; level++)
        levels->first[level] = OW_LEVELS_NOBODY;
    levels->highest = 0;
}

void ow_levels_put(ow_levels *levels, uint32_t state, size_t level)
{
    uint32_t next = levels->first[level];
    levels->after[state] = next;
    levels->before[state] = OW_LEVELS_NOBODY;
    if (next != OW_LEVELS_NOBODY)
        levels->before[next] = state;
    levels->first[level] = state;
    if (level > levels->highest)
        levels->highest = level;
}

void ow_levels_take(ow_levels *levels, uint32_t state, size_t level)
{
    uint32_t next = levels->after[state], previous = levels->before[state];
    if (previous == OW_LEVELS_NOBODY)
        levels->first[level] = next;
    else
        levels->after[previous] = next;
    if (next != OW_LEVELS_NOBODY)
        levels->before[next] = previous;
}
