/* SPDX-License-Identifier: MIT */
#include "net/ways.h"

#include <string.h>

/*
 * All ways of all shapes are told to a sink twice, first to be counted, then to be put in their places.
 * Equal ends are told once: entering a tee by either end of an equal run is one way.
 */
typedef struct way {
    uint32_t shape;
    uint16_t entry;
    size_t exit_count;
    uint16_t exits[OW_NET_ENDS - 1];
    size_t closed_count;
    uint16_t closed[OW_NET_ENDS - 1];
} way;

typedef struct sink {
    ow_net_index *net;
    uint32_t *carry_next, *fork_next, *cross_next; /* counts on the first round, places on the second */
    bool counting;
} sink;

unsigned ow_net_places(const ow_net_shape *shape, const uint16_t *kinds, size_t count)
{
    unsigned taken = 0;
    for (size_t i = 0; i < count; i++)
        for (unsigned end = 0; end < shape->end_count; end++)
            if (shape->kinds[end] == kinds[i] && !(taken >> end & 1u)) {
                taken |= 1u << end;
                break;
            }
    return taken;
}

static uint8_t need_of(const ow_net_shape *shape, const way *told, unsigned serving)
{
    uint16_t kinds[OW_NET_ENDS] = {told->entry};
    size_t count = 1;
    for (size_t i = 0; i < told->exit_count; i++)
        if (serving >> i & 1u)
            kinds[count++] = told->exits[i];
    return serving == 0 ? 0 : (uint8_t)ow_net_places(shape, kinds, count);
}

static void put_carry(sink *into, const way *told)
{
    ow_net_index *net = into->net;
    uint32_t *next = &into->carry_next[told->exits[0]];
    if (!into->counting) {
        ow_net_carry *carry = &net->carries[*next];
        carry->shape = told->shape;
        carry->entry = told->entry;
        for (size_t i = 0; i < OW_NET_ENDS - 2; i++)
            carry->closed[i] = i < told->closed_count ? told->closed[i] : (uint16_t)OW_NET_KIND_NONE;
        carry->need = need_of(&net->shapes[told->shape], told, 1);
        carry->traits = (uint8_t)ow_shape_traits(&net->shapes[told->shape]);
    }
    ++*next;
}

static void put_fork(sink *into, const way *told)
{
    ow_net_index *net = into->net;
    unsigned traits = ow_shape_traits(&net->shapes[told->shape]);
    uint32_t *next = &into->fork_next[2 * traits + (told->exits[0] == told->exits[1] ? 1 : 0)];
    if (!into->counting) {
        ow_net_fork *fork = &net->forks[*next];
        fork->shape = told->shape;
        fork->entry = told->entry;
        memcpy(fork->exits, told->exits, sizeof fork->exits);
        fork->closed = told->closed_count > 0 ? told->closed[0] : (uint16_t)OW_NET_KIND_NONE;
        for (unsigned serving = 0; serving < 4; serving++)
            fork->need[serving] = need_of(&net->shapes[told->shape], told, serving);
    }
    ++*next;
}

static void put_cross(sink *into, const way *told)
{
    ow_net_index *net = into->net;
    uint32_t *next = &into->cross_next[ow_shape_traits(&net->shapes[told->shape])];
    if (!into->counting) {
        ow_net_cross *cross = &net->crosses[*next];
        cross->shape = told->shape;
        cross->entry = told->entry;
        memcpy(cross->exits, told->exits, sizeof cross->exits);
        for (unsigned serving = 0; serving < 8; serving++)
            cross->need[serving] = need_of(&net->shapes[told->shape], told, serving);
    }
    ++*next;
}

/* Splits the other ends by a mask of those that lead on. */
static void tell(sink *into, uint32_t shape, uint16_t entry, const uint16_t *others, size_t count,
                 unsigned leading)
{
    way told = {.shape = shape, .entry = entry};
    for (size_t i = 0; i < count; i++) {
        if (leading >> i & 1u)
            told.exits[told.exit_count++] = others[i];
        else
            told.closed[told.closed_count++] = others[i];
    }
    if (told.exit_count == 1)
        put_carry(into, &told);
    else if (told.exit_count == 2)
        put_fork(into, &told);
    else
        put_cross(into, &told);
}

/* Whether an equal split has a smaller mask: of equal neighbours the first ones must lead on. */
static bool told_already(const uint16_t *others, size_t count, unsigned leading)
{
    for (size_t i = 1; i < count; i++)
        if (others[i] == others[i - 1] && (leading >> i & 1u) && !(leading >> (i - 1) & 1u))
            return true;
    return false;
}

static void tell_entry(sink *into, uint32_t number, size_t entry)
{
    const ow_net_shape *shape = &into->net->shapes[number];
    uint16_t others[OW_NET_ENDS];
    size_t count = 0;
    for (size_t end = 0; end < shape->end_count; end++)
        if (end != entry)
            others[count++] = shape->kinds[end];
    for (unsigned leading = 1; leading < 1u << count; leading++)
        if (!told_already(others, count, leading))
            tell(into, number, shape->kinds[entry], others, count, leading);
}

static void tell_all(sink *into)
{
    for (size_t number = 0; number < into->net->shape_count; number++) {
        const ow_net_shape *shape = &into->net->shapes[number];
        for (size_t entry = 0; entry < shape->end_count; entry++)
            if (entry == 0 || shape->kinds[entry] != shape->kinds[entry - 1])
                tell_entry(into, (uint32_t)number, entry);
    }
}

/* Turns counts into offsets: offset[k] = sum of counts before k; offset has one more than counts. */
static void add_up(uint32_t *offset, size_t count)
{
    uint32_t sum = 0;
    for (size_t i = 0; i <= count; i++) {
        uint32_t here = offset[i];
        offset[i] = sum;
        sum += here;
    }
}

static ow_status build_entries(ow_net_index *net)
{
    uint32_t *offset = ow_arena_get_array(&net->arena, net->kind_count + 2, sizeof *offset);
    if (offset == NULL)
        return OW_MEMORY;
    uint32_t total = 0;
    for (int round = 0; round < 2; round++) {
        for (size_t number = 0; number < net->shape_count; number++) {
            const ow_net_shape *shape = &net->shapes[number];
            for (size_t end = 0; end < shape->end_count; end++) {
                if (end > 0 && shape->kinds[end] == shape->kinds[end - 1])
                    continue;
                /* Counted one place further, so that filling moves each offset to where it belongs. */
                uint32_t *next = &offset[shape->kinds[end] + 1u];
                if (round == 1)
                    net->entry_shapes[*next] = (uint32_t)number;
                ++*next;
                total++;
            }
        }
        if (round == 0) {
            net->entry_shapes = ow_arena_get_array(&net->arena, total, sizeof *net->entry_shapes);
            if (net->entry_shapes == NULL)
                return OW_MEMORY;
            add_up(offset + 1, net->kind_count);
        }
    }
    net->entry_offset = offset;
    return OW_OK;
}

/* Negative where a goes before b among the carries of one exit kind. Shapes of fewer ends have lower numbers.
 */
static int64_t compare_carries(const ow_net_carry *a, const ow_net_carry *b)
{
    if (a->traits != b->traits)
        return a->traits - b->traits;
    return a->entry != b->entry ? a->entry - b->entry : (int64_t)a->shape - b->shape;
}

static void order_carries(ow_net_index *net)
{
    for (size_t kind = 0; kind < net->kind_count; kind++) {
        ow_net_carry *first = net->carries + net->carry_offset[kind];
        size_t count = net->carry_offset[kind + 1] - net->carry_offset[kind];
        for (size_t gap = count / 2; gap > 0; gap /= 2) /* Shell's sort; no two carries are alike */
            for (size_t i = gap; i < count; i++) {
                ow_net_carry moved = first[i];
                size_t at = i;
                for (; at >= gap && compare_carries(&moved, &first[at - gap]) < 0; at -= gap)
                    first[at] = first[at - gap];
                first[at] = moved;
            }
    }
}

/* Whether two carries of one exit, one behind the other, are of one block; of one run. */
static bool same_block(const ow_net_carry *a, const ow_net_carry *b)
{
    return a->traits == b->traits && a->entry / 64 == b->entry / 64;
}

static bool same_run(const ow_net_carry *a, const ow_net_carry *b)
{
    return a->traits == b->traits && a->entry == b->entry;
}

/* Counts of what the carries of all exits come to; with places to put it, puts it there. */
static void walk_blocks(ow_net_index *net, uint32_t *run_count, uint32_t *block_count)
{
    bool counting = net->blocks == NULL;
    *run_count = *block_count = 0;
    for (size_t kind = 0; kind < net->kind_count; kind++) {
        for (uint32_t i = net->carry_offset[kind]; i < net->carry_offset[kind + 1]; i++) {
            const ow_net_carry *carry = &net->carries[i];
            bool first = i == net->carry_offset[kind];
            bool new_block = first || !same_block(carry - 1, carry);
            bool new_run = first || !same_run(carry - 1, carry);
            *block_count += new_block;
            *run_count += new_run;
            if (counting)
                continue;
            ow_net_block *block = &net->blocks[*block_count - 1];
            uint64_t bit = (uint64_t)1 << carry->entry % 64;
            if (new_run)
                net->run_first[*run_count - 1] = i;
            if (new_block)
                *block = (ow_net_block){
                    .first = *run_count - 1, .place = (uint16_t)(carry->entry / 64), .traits = carry->traits};
            block->entries |= bit;
            *(carry->closed[0] == OW_NET_KIND_NONE ? &block->bare : &block->closing) |= bit;
        }
        if (!counting)
            net->block_offset[kind + 1] = *block_count;
    }
}

static ow_status build_blocks(ow_net_index *net)
{
    uint32_t runs, blocks;
    walk_blocks(net, &runs, &blocks);
    net->block_offset = ow_arena_get_array(&net->arena, net->kind_count + 1, sizeof *net->block_offset);
    net->run_first = ow_arena_get_array(&net->arena, runs + (size_t)1, sizeof *net->run_first);
    net->blocks = ow_arena_get_array(&net->arena, blocks, sizeof *net->blocks);
    if (net->block_offset == NULL || net->run_first == NULL || net->blocks == NULL)
        return OW_MEMORY;
    walk_blocks(net, &runs, &blocks);
    net->run_first[runs] = net->carry_offset[net->kind_count];
    return OW_OK;
}

/* Counts every way, and then places it. Offsets are counted one place further, so that placing moves each to
 * where it belongs. */
static ow_status place_ways(ow_net_index *net, uint32_t *carries)
{
    uint32_t forks[OW_FORK_GROUPS + 2] = {0}, crosses[OW_TRAITS + 2] = {0};
    sink into = {net, carries + 1, forks + 1, crosses + 1, true};
    tell_all(&into);
    add_up(carries + 1, net->kind_count);
    add_up(forks + 1, OW_FORK_GROUPS);
    add_up(crosses + 1, OW_TRAITS);
    net->carries = ow_arena_get_array(&net->arena, carries[net->kind_count + 1], sizeof *net->carries);
    net->forks = ow_arena_get_array(&net->arena, forks[OW_FORK_GROUPS + 1], sizeof *net->forks);
    net->crosses = ow_arena_get_array(&net->arena, crosses[OW_TRAITS + 1], sizeof *net->crosses);
    if (net->carries == NULL || net->forks == NULL || net->crosses == NULL)
        return OW_MEMORY;
    into.counting = false;
    tell_all(&into);
    net->carry_offset = carries;
    memcpy(net->fork_offset, forks, sizeof net->fork_offset);
    memcpy(net->cross_offset, crosses, sizeof net->cross_offset);
    return OW_OK;
}

ow_status ow_net_build_ways(ow_net_index *net)
{
    uint32_t *carries = ow_arena_get_array(&net->arena, net->kind_count + 2, sizeof *carries);
    ow_status status = carries == NULL ? OW_MEMORY : place_ways(net, carries);
    if (status != OW_OK)
        return status;
    order_carries(net);
    status = build_blocks(net);
    return status == OW_OK ? build_entries(net) : status;
}
