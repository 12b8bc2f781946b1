/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "base/sort.h"
#include "net/net.h"
#include "net/ways.h"

static bool amount_in_range(int64_t amount)
{
    return amount >= OW_NET_NOT_SAID && amount <= OW_NET_AMOUNT_MAX;
}

static bool part_in_range(const ow_net_input *input, const ow_net_part *part)
{
    if (part->end_count < 1 || part->end_count > OW_NET_ENDS)
        return false;
    for (size_t end = 0; end < part->end_count; end++)
        if (part->kinds[end] >= input->kind_count || !amount_in_range(part->leg_um[end]))
            return false;
    return amount_in_range(part->orifice_um) && amount_in_range(part->price_cents) &&
           amount_in_range(part->length_um) && part->rating_pa >= OW_NET_NOT_SAID;
}

static ow_status check_input(const ow_net_input *input)
{
    if (input->kind_count > OW_NET_KINDS_MAX || input->part_count > UINT32_MAX / 16 ||
        input->mate_count > UINT32_MAX / 4)
        return OW_RANGE;
    for (size_t i = 0; i < input->mate_count; i++)
        if (input->mates[i].a >= input->kind_count || input->mates[i].b >= input->kind_count)
            return OW_RANGE;
    for (size_t i = 0; i < input->part_count; i++)
        if (!part_in_range(input, &input->parts[i]))
            return OW_RANGE;
    return OW_OK;
}

static int compare_numbers(int64_t left, int64_t right)
{
    return left < right ? -1 : left > right;
}

static int compare_ids(const void *items, uint32_t left, uint32_t right)
{
    const ow_net_part *parts = items;
    return compare_numbers(parts[left].id, parts[right].id);
}

static int64_t length_or_nought(const ow_net_part *part)
{
    return part->length_um == OW_NET_NOT_SAID ? 0 : part->length_um;
}

/* By shape. The parts' kinds are in their own order, so `items` holds sorted copies beside the parts. */
typedef struct sorted_part {
    const ow_net_part *part;
    uint16_t kinds[OW_NET_ENDS];
    uint8_t ends[OW_NET_ENDS]; /* the part's own end behind each sorted place: by kind, then leg */
} sorted_part;

static int compare_shapes(const sorted_part *left, const sorted_part *right)
{
    int order = compare_numbers(left->part->end_count, right->part->end_count);
    for (size_t end = 0; order == 0 && end < OW_NET_ENDS; end++)
        order = compare_numbers(left->kinds[end], right->kinds[end]);
    if (order == 0)
        order = compare_numbers(left->part->hose, right->part->hose);
    if (order == 0)
        order = compare_numbers(left->part->restrictor, right->part->restrictor);
    return order;
}

static int compare_parts(const void *items, uint32_t left, uint32_t right)
{
    const sorted_part *sorted = items;
    const ow_net_part *a = sorted[left].part, *b = sorted[right].part;
    int order = compare_shapes(&sorted[left], &sorted[right]);
    if (order == 0)
        order = compare_numbers(a->price_cents == OW_NET_NOT_SAID, b->price_cents == OW_NET_NOT_SAID);
    if (order == 0)
        order = compare_numbers(a->price_cents, b->price_cents);
    if (order == 0)
        order = compare_numbers(length_or_nought(a), length_or_nought(b));
    return order != 0 ? order : compare_numbers(a->id, b->id);
}

static int compare_passages(const void *items, uint32_t left, uint32_t right)
{
    const sorted_part *sorted = items;
    int order = compare_shapes(&sorted[left], &sorted[right]);
    for (size_t end = 0; order == 0 && end < sorted[left].part->end_count; end++)
        order = compare_numbers(sorted[left].part->leg_um[sorted[left].ends[end]],
                                sorted[right].part->leg_um[sorted[right].ends[end]]);
    return order != 0 ? order
                      : compare_numbers(sorted[left].part->orifice_um, sorted[right].part->orifice_um);
}

static void sort_ends(sorted_part *sorted, const ow_net_part *part)
{
    sorted->part = part;
    memset(sorted->kinds, 0, sizeof sorted->kinds);
    for (uint8_t end = 0; end < part->end_count; end++) {
        size_t at = end;
        for (; at > 0; at--) {
            uint8_t before = sorted->ends[at - 1];
            if (part->kinds[before] < part->kinds[end] ||
                (part->kinds[before] == part->kinds[end] && part->leg_um[before] <= part->leg_um[end]))
                break;
            sorted->ends[at] = before;
        }
        sorted->ends[at] = end;
    }
    for (size_t end = 0; end < part->end_count; end++)
        sorted->kinds[end] = part->kinds[sorted->ends[end]];
}

/* Working memory of one build: sorted copies and an order. */
typedef struct workbench {
    sorted_part *sorted;
    uint32_t *order;
} workbench;

static ow_status check_ids(const ow_context *context, const ow_net_input *input, uint32_t *order)
{
    ow_status status = ow_sort(context, order, input->part_count, compare_ids, input->parts);
    for (size_t i = 1; status == OW_OK && i < input->part_count; i++)
        if (input->parts[order[i - 1]].id == input->parts[order[i]].id)
            status = OW_RANGE;
    return status;
}

static void count_distinct(ow_net_index *net, const workbench *bench)
{
    for (size_t i = 0; i < net->part_count; i++)
        if (i == 0 || compare_passages(bench->sorted, bench->order[i - 1], bench->order[i]) != 0)
            net->distinct_count++;
}

static int64_t lesser(int64_t a, int64_t b)
{
    return a < b ? a : b; /* not said is less than anything said */
}

static void promise_less(ow_net_promise *promise, const ow_net_part *part, bool first)
{
    if (first)
        *promise = (ow_net_promise){INT64_MAX, INT64_MAX, true, INT64_MIN, INT64_MAX, ~0u};
    promise->rating_pa = lesser(promise->rating_pa, part->rating_pa);
    for (size_t end = 0; end < part->end_count; end++)
        promise->leg_um = lesser(promise->leg_um, part->leg_um[end]);
    promise->has_temperature = promise->has_temperature && part->has_temperature;
    if (part->low_mc > promise->low_mc)
        promise->low_mc = part->low_mc;
    promise->high_mc = lesser(promise->high_mc, part->high_mc);
    promise->fluids &= part->fluids;
}

static ow_status place_parts(ow_net_index *net, const ow_net_input *input, const workbench *bench)
{
    size_t count = input->part_count;
    net->parts = ow_arena_get_array(&net->arena, count, sizeof *net->parts);
    net->input_index = ow_arena_get_array(&net->arena, count, sizeof *net->input_index);
    net->place = ow_arena_get_array(&net->arena, count, sizeof *net->place);
    net->shape_of = ow_arena_get_array(&net->arena, count, sizeof *net->shape_of);
    size_t shapes = 0;
    for (size_t i = 0; i < count; i++)
        shapes += i == 0 ||
                  compare_shapes(&bench->sorted[bench->order[i - 1]], &bench->sorted[bench->order[i]]) != 0;
    net->shapes = ow_arena_get_array(&net->arena, shapes, sizeof *net->shapes);
    if (net->parts == NULL || net->input_index == NULL || net->place == NULL || net->shape_of == NULL ||
        net->shapes == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < count; i++) {
        const sorted_part *sorted = &bench->sorted[bench->order[i]];
        net->parts[i] = *sorted->part;
        net->input_index[i] = bench->order[i];
        net->place[bench->order[i]] = (uint32_t)i;
        if (i == 0 || compare_shapes(&bench->sorted[bench->order[i - 1]], sorted) != 0) {
            ow_net_shape *shape = &net->shapes[net->shape_count++];
            shape->end_count = sorted->part->end_count;
            memcpy(shape->kinds, sorted->kinds, sizeof shape->kinds);
            shape->hose = sorted->part->hose;
            shape->restrictor = sorted->part->restrictor;
            shape->first = (uint32_t)i;
        }
        net->shape_of[i] = (uint32_t)(net->shape_count - 1);
        ow_net_shape *last = &net->shapes[net->shape_count - 1];
        last->by_metre = last->by_metre || sorted->part->by_metre;
        promise_less(&last->promise, sorted->part, last->count == 0);
        last->count++;
    }
    return OW_OK;
}

static ow_status build_parts(ow_net_index *net, const ow_net_input *input)
{
    const ow_context *context = net->arena.context;
    size_t count = input->part_count;
    net->part_count = count;
    workbench bench = {ow_new_array(context, count + 1, sizeof *bench.sorted),
                       ow_new_array(context, count + 1, sizeof *bench.order)};
    ow_status status = bench.sorted == NULL || bench.order == NULL ? OW_MEMORY : OW_OK;
    if (status != OW_OK)
        goto done;
    for (size_t i = 0; i < count; i++) {
        sort_ends(&bench.sorted[i], &input->parts[i]);
        bench.order[i] = (uint32_t)i;
    }
    if ((status = check_ids(context, input, bench.order)) != OW_OK ||
        (status = ow_sort(context, bench.order, count, compare_passages, bench.sorted)) != OW_OK)
        goto done;
    count_distinct(net, &bench);
    status = ow_sort(context, bench.order, count, compare_parts, bench.sorted);
    if (status == OW_OK)
        status = place_parts(net, input, &bench);
done:
    ow_release(context, bench.order);
    ow_release(context, bench.sorted);
    return status;
}

static int compare_mates(const void *items, uint32_t left, uint32_t right)
{
    const ow_net_mate *mates = items; /* index / 2 is the pair, index % 2 its direction */
    const ow_net_mate *a = &mates[left / 2], *b = &mates[right / 2];
    int order = compare_numbers(left % 2 ? a->b : a->a, right % 2 ? b->b : b->a);
    return order != 0 ? order : compare_numbers(left % 2 ? a->a : a->b, right % 2 ? b->a : b->b);
}

static ow_status place_links(ow_net_index *net, const ow_net_input *input, const uint32_t *order,
                             size_t count)
{
    net->links = ow_arena_get_array(&net->arena, count, sizeof *net->links);
    net->link_offset = ow_arena_get_array(&net->arena, net->kind_count + 1, sizeof *net->link_offset);
    if (net->links == NULL || net->link_offset == NULL)
        return OW_MEMORY;
    size_t kind = 0;
    for (size_t i = 0; i < count; i++) {
        const ow_net_mate *mate = &input->mates[order[i] / 2];
        uint16_t from = order[i] % 2 ? mate->b : mate->a, to = order[i] % 2 ? mate->a : mate->b;
        for (; kind < from; kind++)
            net->link_offset[kind + 1] = (uint32_t)i;
        net->links[i] = (ow_net_link){to, mate->tolerated, mate->turns};
        if (i > 0 && compare_mates(input->mates, order[i - 1], order[i]) == 0)
            return OW_RANGE; /* a pair twice */
    }
    for (; kind < net->kind_count; kind++)
        net->link_offset[kind + 1] = (uint32_t)count;
    return OW_OK;
}

static ow_status build_links(ow_net_index *net, const ow_net_input *input)
{
    const ow_context *context = net->arena.context;
    uint32_t *order = ow_new_array(context, 2 * input->mate_count + 1, sizeof *order);
    if (order == NULL)
        return OW_MEMORY;
    size_t count = 0;
    for (size_t i = 0; i < input->mate_count; i++) {
        order[count++] = (uint32_t)(2 * i);
        if (input->mates[i].a != input->mates[i].b)
            order[count++] = (uint32_t)(2 * i + 1);
    }
    ow_status status = ow_sort(context, order, count, compare_mates, input->mates);
    if (status == OW_OK)
        status = place_links(net, input, order, count);
    ow_release(context, order);
    return status;
}

ow_status ow_net_index_build(const ow_context *context, const ow_net_input *input, ow_net_index **net)
{
    ow_status status = check_input(input);
    if (status != OW_OK)
        return status;
    ow_net_index *built = ow_new_array(context, 1, sizeof *built);
    if (built == NULL)
        return OW_MEMORY;
    built->arena = ow_arena_new(context);
    built->kind_count = input->kind_count;
    built->kinds = ow_arena_get_array(&built->arena, input->kind_count, sizeof *built->kinds);
    status = built->kinds == NULL ? OW_MEMORY : OW_OK;
    if (status == OW_OK && input->kind_count > 0)
        memcpy(built->kinds, input->kinds, input->kind_count * sizeof *built->kinds);
    if (status == OW_OK)
        status = build_links(built, input);
    if (status == OW_OK)
        status = build_parts(built, input);
    if (status == OW_OK)
        status = ow_net_build_ways(built);
    if (status != OW_OK) {
        ow_net_index_free(built);
        return status;
    }
    *net = built;
    return OW_OK;
}

void ow_net_index_free(ow_net_index *net)
{
    if (net == NULL)
        return;
    const ow_context *context = net->arena.context;
    ow_arena_done(&net->arena);
    ow_release(context, net);
}
