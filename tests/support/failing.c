/* SPDX-License-Identifier: MIT */
#include "support/failing.h"

#include <stdlib.h>
#include <string.h>

#include "support/diagnostics.h"
#include "support/testing.h"

#define RUBBISH 0xA5
#define GONE ((void *)-1) /* a slot whose block was freed */

struct ow_failing_slot {
    void *block; /* NULL: never used */
    size_t size;
};

ow_failing ow_failing_new(void)
{
    ow_failing failing = {0};
    return failing;
}

void ow_failing_done(ow_failing *failing)
{
    for (size_t i = 0; i < failing->slot_capacity; i++)
        if (failing->slots[i].block != GONE)
            free(failing->slots[i].block);
    free(failing->slots);
    *failing = ow_failing_new();
}

static size_t first_place(const ow_failing *failing, const void *block)
{
    uint64_t number = (uint64_t)(uintptr_t)block >> 4;
    return (size_t)((number * UINT64_C(0x9E3779B97F4A7C15)) >> 32) & (failing->slot_capacity - 1);
}

static ow_failing_slot *find(const ow_failing *failing, const void *block)
{
    if (failing->slot_capacity == 0)
        return NULL;
    size_t place = first_place(failing, block);
    while (failing->slots[place].block != NULL) {
        if (failing->slots[place].block == block)
            return &failing->slots[place];
        place = (place + 1) & (failing->slot_capacity - 1);
    }
    return NULL;
}

static void insert(ow_failing *failing, void *block, size_t size)
{
    size_t place = first_place(failing, block);
    while (failing->slots[place].block != NULL)
        place = (place + 1) & (failing->slot_capacity - 1);
    failing->slots[place] = (ow_failing_slot){block, size};
    failing->slots_used++;
}

/* A fresh table with room for all live blocks; the marks of freed ones are dropped. */
static void rebuild(ow_failing *failing, size_t capacity)
{
    ow_failing_slot *old = failing->slots;
    size_t old_capacity = failing->slot_capacity;
    failing->slots = calloc(capacity, sizeof *failing->slots);
    assert_non_null(failing->slots);
    failing->slot_capacity = capacity;
    failing->slots_used = 0;
    for (size_t i = 0; i < old_capacity; i++)
        if (old[i].block != NULL && old[i].block != GONE)
            insert(failing, old[i].block, old[i].size);
    free(old);
}

static void *give(ow_failing *failing, size_t size)
{
    void *block = malloc(size);
    assert_non_null(block);
    memset(block, RUBBISH, size);
    if (failing->slots_used * 2 >= failing->slot_capacity) {
        size_t capacity = 1024;
        while (capacity < failing->live * 4)
            capacity *= 2;
        rebuild(failing, capacity);
    }
    insert(failing, block, size);
    failing->live++;
    failing->live_bytes += size;
    if (failing->live_bytes > failing->peak_bytes)
        failing->peak_bytes = failing->live_bytes;
    return block;
}

static void take_back(ow_failing *failing, ow_failing_slot *slot)
{
    failing->live--;
    failing->live_bytes -= slot->size;
    memset(slot->block, RUBBISH, slot->size);
    free(slot->block);
    slot->block = GONE;
}

static void *resize(void *user, void *block, size_t size)
{
    ow_failing *failing = user;
    ow_failing_slot *slot = block == NULL ? NULL : find(failing, block);
    if (block != NULL && slot == NULL) {
        failing->wrong_frees++;
        return NULL;
    }
    if (size == 0) {
        if (slot != NULL)
            take_back(failing, slot);
        return NULL;
    }
    failing->asked++;
    bool refused = failing->fail_at != 0 && (failing->asked == failing->fail_at ||
                                             (failing->fail_onward && failing->asked > failing->fail_at));
    if (refused) {
        failing->failed++;
        return NULL;
    }
    void *given = give(failing, size);
    if (block != NULL)
        slot = find(failing, block); /* the table may have moved */
    if (slot != NULL) {
        memcpy(given, block, slot->size < size ? slot->size : size);
        take_back(failing, slot);
    }
    return given;
}

ow_context ow_failing_context(ow_failing *failing)
{
    ow_context context = {.resize = resize, .resize_user = failing, .report = ow_test_check_diagnostic};
    return context;
}

/* One run; whether the job was touched by a refusal. */
static bool run(ow_test_job job, void *data, size_t fail_at, bool onward, ow_status *untouched, size_t *asked)
{
    ow_failing failing = ow_failing_new();
    failing.fail_at = fail_at;
    failing.fail_onward = onward;
    ow_context context = ow_failing_context(&failing);
    ow_status status = job(&context, data);
    bool touched = failing.failed > 0;
    if (failing.live != 0)
        fail_msg("allocation %zu refused: %zu blocks of %zu bytes leaked", fail_at, failing.live,
                 failing.live_bytes);
    if (failing.wrong_frees != 0)
        fail_msg("allocation %zu refused: %zu blocks freed twice, or not from here", fail_at,
                 failing.wrong_frees);
    if (fail_at == 0)
        *untouched = status;
    else if (touched && status != OW_MEMORY)
        fail_msg("allocation %zu refused, but the job says: %s", fail_at, ow_status_text(status));
    else if (!touched && status != *untouched)
        fail_msg("no allocation refused, but the job says: %s", ow_status_text(status));
    *asked = failing.asked;
    ow_failing_done(&failing);
    return touched;
}

/* Valgrind sees little here, since fresh memory is written on: of a long job it gets every seventh failure
 * only. */
static size_t step_of(size_t count)
{
    return getenv("OW_SLOW_TOOL") != NULL && count > 100 ? count / 50 : 1;
}

size_t ow_test_fail_each(ow_test_job job, void *data)
{
    ow_status untouched = OW_OK;
    size_t count, asked;
    run(job, data, 0, false, &untouched, &count);
    assert_int_not_equal(count, 0);
    for (int onward = 0; onward < 2; onward++) {
        for (size_t fail_at = 1; fail_at <= count; fail_at += step_of(count))
            assert_true(run(job, data, fail_at, onward == 1, &untouched, &asked));
        assert_false(run(job, data, count + 1, onward == 1, &untouched, &asked));
    }
    return count;
}
