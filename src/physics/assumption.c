/* SPDX-License-Identifier: MIT */
#include "oilway/assumption.h"

#include <stdarg.h>
#include <string.h>

#include "base/format.h"
#include "base/memory.h"

#define VALUE_MAX 128 /* a number or two with their units */

ow_assumptions ow_assumptions_new(const ow_context *context)
{
    ow_assumptions assumptions = {context, NULL, 0, 0, false};
    return assumptions;
}

void ow_assumptions_done(ow_assumptions *assumptions)
{
    for (size_t i = 0; i < assumptions->count; i++) {
        /* what, value and source share one block that begins with what */
        union {
            const char *lent;
            void *owned;
        } block = {assumptions->items[i].what};
        ow_release(assumptions->context, block.owned);
    }
    ow_release(assumptions->context, assumptions->items);
    *assumptions = ow_assumptions_new(assumptions->context);
}

static bool is_there(const ow_assumptions *assumptions, const char *what, const char *value)
{
    for (size_t i = 0; i < assumptions->count; i++)
        if (strcmp(assumptions->items[i].what, what) == 0 && strcmp(assumptions->items[i].value, value) == 0)
            return true;
    return false;
}

static ow_status append(ow_assumptions *assumptions, ow_mark mark, const char *what, const char *value,
                        const char *source)
{
    void *items = assumptions->items;
    ow_status status = ow_grow(assumptions->context, &items, &assumptions->capacity, assumptions->count + 1,
                               sizeof(ow_assumption));
    if (status != OW_OK)
        return status;
    assumptions->items = items;
    size_t what_size = strlen(what) + 1, value_size = strlen(value) + 1, source_size = strlen(source) + 1;
    char *words = ow_resize(assumptions->context, NULL, what_size + value_size + source_size);
    if (words == NULL)
        return OW_MEMORY;
    memcpy(words, what, what_size);
    memcpy(words + what_size, value, value_size);
    memcpy(words + what_size + value_size, source, source_size);
    assumptions->items[assumptions->count++] =
        (ow_assumption){words, words + what_size, words + what_size + value_size, mark};
    return OW_OK;
}

static ow_status add(ow_assumptions *assumptions, ow_mark mark, const char *what, const char *value,
                     const char *source)
{
    if (is_there(assumptions, what, value))
        return OW_OK;
    ow_status status = append(assumptions, mark, what, value, source);
    if (status != OW_OK)
        assumptions->failed = true;
    return status;
}

ow_status ow_assumptions_add(ow_assumptions *assumptions, ow_mark mark, const char *what, const char *source,
                             const char *value_format, ...)
{
    char value[VALUE_MAX];
    va_list arguments;
    va_start(arguments, value_format);
    int length = ow_format(value, sizeof value, value_format, arguments);
    va_end(arguments);
    if (length < 0)
        value[0] = '\0';
    return add(assumptions, mark, what, value, source);
}

ow_status ow_assumptions_join(ow_assumptions *assumptions, const ow_assumptions *from)
{
    for (size_t i = 0; i < from->count; i++) {
        const ow_assumption *item = &from->items[i];
        ow_status status = add(assumptions, item->mark, item->what, item->value, item->source);
        if (status != OW_OK)
            return status;
    }
    return OW_OK;
}
