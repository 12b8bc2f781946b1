/* SPDX-License-Identifier: MIT */
/*
 * What an end whose pitch or seat is not said may be: every whole end that is in use, or that
 * something in use would seal on. "In use" is the net's kinds, the fixtures and the machines' ports.
 */
#include <string.h>

#include "ask/ask_internal.h"
#include "base/sort.h"
#include "oilway/joint.h"

typedef struct reading_pool {
    ow_asking *asking;
    const ow_end **used; /* ends in use */
    size_t used_count;
    ow_end *readings;
    size_t count, capacity;
} reading_pool;

static size_t used_most(const ow_asking *asking)
{
    size_t most = ow_catalog_fixture_count(asking->catalog);
    if (asking->net != NULL)
        most += ow_net_kind_count(asking->net);
    for (size_t index = 0; index < ow_catalog_machine_count(asking->catalog); index++)
        most += ow_catalog_machine_at(asking->catalog, index)->port_count;
    return most;
}

static ow_status gather_used(reading_pool *pool)
{
    ow_asking *asking = pool->asking;
    pool->used = ow_arena_get_array(&asking->arena, used_most(asking) + 1, sizeof *pool->used);
    if (pool->used == NULL)
        return OW_MEMORY;
    for (size_t index = 0; asking->net != NULL && index < ow_net_kind_count(asking->net); index++)
        pool->used[pool->used_count++] = ow_net_kind_at(asking->net, index);
    for (size_t index = 0; index < ow_catalog_fixture_count(asking->catalog); index++)
        pool->used[pool->used_count++] = &ow_catalog_fixture_at(asking->catalog, index)->ends[0];
    for (size_t index = 0; index < ow_catalog_machine_count(asking->catalog); index++) {
        const ow_machine *machine = ow_catalog_machine_at(asking->catalog, index);
        for (size_t port = 0; port < machine->port_count; port++)
            pool->used[pool->used_count++] = &machine->ports[port].end;
    }
    return OW_OK;
}

static ow_status add(reading_pool *pool, const ow_end *end)
{
    for (size_t index = 0; index < pool->count; index++) {
        if (ow_end_same(&pool->readings[index], end))
            return OW_OK;
    }
    void *items = pool->readings;
    if (ow_grow(pool->asking->context, &items, &pool->capacity, pool->count + 1, sizeof *end) != OW_OK)
        return OW_MEMORY;
    pool->readings = items;
    pool->readings[pool->count++] = *end;
    return OW_OK;
}

static bool is_of_use(const reading_pool *pool, const ow_end *end)
{
    for (size_t index = 0; index < pool->used_count; index++) {
        if (ow_end_is_whole(pool->used[index]) &&
            (ow_end_same(pool->used[index], end) || ow_joint_find(pool->used[index], end) != NULL))
            return true;
    }
    return false;
}

/* The asked end on one thread in use, with each seat that a thread can have. */
static ow_status add_on_thread(reading_pool *pool, const ow_end *asked, const ow_thread *thread)
{
    static const ow_seat seats[] = {OW_SEAT_TAPER,  OW_SEAT_WASHER, OW_SEAT_WASHER_CAPTIVE, OW_SEAT_BANJO,
                                    OW_SEAT_O_RING, OW_SEAT_CONE60, OW_SEAT_FLARE30};
    ow_end end = *asked;
    end.thread = *thread;
    for (size_t index = 0; index < sizeof seats / sizeof seats[0]; index++) {
        if (asked->seat == OW_SEAT_UNKNOWN)
            end.seat = seats[index];
        /* Through the grammar, so that an end which has another canonical form takes it. */
        char words[OW_END_TEXT_SIZE];
        ow_end read;
        if (ow_end_read(ow_end_name(&end, words), &read, NULL) == OW_OK && ow_end_is_whole(&read) &&
            ow_end_is_reading(asked, &read) && is_of_use(pool, &read)) {
            ow_status status = add(pool, &read);
            if (status != OW_OK)
                return status;
        }
        if (asked->seat != OW_SEAT_UNKNOWN)
            break;
    }
    return OW_OK;
}

static int compare_ends(const void *items, uint32_t left, uint32_t right)
{
    const ow_end *ends = items;
    char a_words[OW_END_TEXT_SIZE];
    char b_words[OW_END_TEXT_SIZE];
    return strcmp(ow_end_name(&ends[left], a_words), ow_end_name(&ends[right], b_words));
}

static ow_status gather_readings(reading_pool *pool, const ow_end *asked)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < pool->used_count && status == OW_OK; index++) {
        const ow_end *used = pool->used[index];
        ow_thread thread;
        if (ow_end_is_whole(used) && ow_end_is_reading(asked, used))
            status = add(pool, used);
        if (status == OW_OK && asked->form == OW_FORM_THREAD && ow_end_thread(used, &thread) &&
            thread.family == asked->thread.family && thread.size == asked->thread.size &&
            (asked->thread.pitch == 0 || asked->thread.pitch == thread.pitch))
            status = add_on_thread(pool, asked, &thread);
    }
    /* A thread that nothing in use has is still a thread: with its pitch said, its seats are tried. */
    if (status == OW_OK && asked->form == OW_FORM_THREAD && asked->thread.pitch != 0)
        status = add_on_thread(pool, asked, &asked->thread);
    return status;
}

ow_status ow_readings_find(ow_asking *asking, const ow_end *asked, const ow_end **readings, size_t *count)
{
    reading_pool pool = {asking, NULL, 0, NULL, 0, 0};
    ow_status status = ow_end_is_whole(asked) ? add(&pool, asked) : gather_used(&pool);
    if (status == OW_OK && !ow_end_is_whole(asked))
        status = gather_readings(&pool, asked);
    if (status != OW_OK)
        goto done;
    ow_end *kept = ow_arena_get_array(&asking->arena, pool.count + 1, sizeof *kept);
    if (kept == NULL) {
        status = OW_MEMORY;
        goto done;
    }
    if (pool.count > 0)
        memcpy(kept, pool.readings, pool.count * sizeof *kept);
    status = ow_sort_items(asking->context, kept, pool.count, sizeof *kept, compare_ends);
    if (status != OW_OK)
        goto done;
    *readings = kept;
    *count = pool.count;
done:
    ow_release(asking->context, pool.readings);
    return status;
}
