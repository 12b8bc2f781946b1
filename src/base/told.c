/* SPDX-License-Identifier: MIT */
#include "oilway/told.h"

#include <string.h>

#include "base/memory.h"

typedef struct told_storage {
    ow_arena arena;
    size_t capacity;
    bool failed;
} told_storage;

ow_status ow_told_new(const ow_context *context, ow_told *told)
{
    told_storage *storage = ow_new_array(context, 1, sizeof *storage);
    if (storage == NULL)
        return OW_MEMORY;
    storage->arena = ow_arena_new(context);
    *told = (ow_told){.context = context, .storage = storage};
    return OW_OK;
}

void ow_told_done(ow_told *told)
{
    told_storage *storage = told->storage;
    if (storage == NULL)
        return;
    ow_release(told->context, told->items);
    ow_arena_done(&storage->arena);
    ow_release(told->context, storage);
    *told = (ow_told){.context = told->context};
}

static const char *keep(told_storage *storage, const char *words, size_t length)
{
    if (words == NULL)
        return NULL;
    const char *kept = ow_arena_copy(&storage->arena, words, length);
    storage->failed = storage->failed || kept == NULL;
    return kept;
}

static const char *keep_words(told_storage *storage, const char *words)
{
    return words == NULL ? NULL : keep(storage, words, strlen(words));
}

void ow_told_take(void *user, const ow_diagnostic *diagnostic)
{
    ow_told *told = user;
    told_storage *storage = told->storage;
    told->errors += diagnostic->severity == OW_ERROR;
    told->warnings += diagnostic->severity == OW_WARNING;
    if (told->context->report != NULL)
        told->context->report(told->context->report_user, diagnostic);
    if (ow_grow(told->context, (void **)&told->items, &storage->capacity, told->count + 1,
                sizeof *told->items) != OW_OK) {
        storage->failed = true;
        return;
    }
    ow_diagnostic kept = *diagnostic;
    kept.file = keep_words(storage, diagnostic->file);
    kept.line_text = keep(storage, diagnostic->line_text, diagnostic->line_length);
    kept.message = keep_words(storage, diagnostic->message);
    kept.expected = keep_words(storage, diagnostic->expected);
    kept.mend = keep_words(storage, diagnostic->mend);
    told->items[told->count++] = kept;
}

ow_status ow_told_status(const ow_told *told)
{
    const told_storage *storage = told->storage;
    return storage == NULL || storage->failed ? OW_MEMORY : OW_OK;
}
