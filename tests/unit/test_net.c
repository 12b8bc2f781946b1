/* SPDX-License-Identifier: MIT */
/* The net: shapes, ways through them, indexes. */
#include "support/testing.h"

#include <string.h>

#include "support/failing.h"
#include "support/random_net.h"

static const ow_context CONTEXT = OW_CONTEXT_INIT;

static ow_net_part part_with(uint32_t id, size_t ends, const uint16_t *kinds)
{
    ow_net_part part = {.id = id, .end_count = (uint16_t)ends, .rating_pa = OW_NET_NOT_SAID};
    memcpy(part.kinds, kinds, ends * sizeof *kinds);
    return part;
}

static ow_net_index *build(size_t kinds, const ow_net_part *parts, size_t count)
{
    static const ow_net_kind KINDS[OW_RANDOM_KINDS];
    ow_net_input input = {.kind_count = kinds, .kinds = KINDS, .part_count = count, .parts = parts};
    ow_net_index *net = NULL;
    assert_int_equal(ow_net_index_build(&CONTEXT, &input, &net), OW_OK);
    return net;
}

static void parts_with_the_same_ends_in_any_order_are_one_shape(void **state)
{
    (void)state;
    ow_net_part parts[] = {part_with(0, 3, (uint16_t[]){1, 2, 1}), part_with(1, 3, (uint16_t[]){2, 1, 1}),
                           part_with(2, 3, (uint16_t[]){2, 2, 1}), part_with(3, 2, (uint16_t[]){1, 2})};
    ow_net_index *net = build(3, parts, 4);
    assert_int_equal(net->shape_count, 3);
    assert_int_equal(net->shape_of[net->place[0]], net->shape_of[net->place[1]]);
    assert_int_not_equal(net->shape_of[net->place[0]], net->shape_of[net->place[2]]);
    assert_int_equal(net->distinct_count, 3);
    ow_net_index_free(net);
}

static void hoses_and_restrictors_are_shapes_of_their_own(void **state)
{
    (void)state;
    ow_net_part parts[4];
    for (uint32_t i = 0; i < 4; i++) {
        parts[i] = part_with(i, 2, (uint16_t[]){0, 1});
        parts[i].hose = (i & 1) != 0;
        parts[i].restrictor = (i & 2) != 0;
    }
    ow_net_index *net = build(2, parts, 4);
    assert_int_equal(net->shape_count, 4);
    ow_net_index_free(net);
}

static void bores_make_parts_distinct_but_no_other_shape(void **state)
{
    (void)state;
    ow_net_part parts[3];
    for (uint32_t i = 0; i < 3; i++)
        parts[i] = part_with(i, 2, (uint16_t[]){0, 1});
    parts[1].leg_um[0] = 4000;
    parts[2].price_cents = 100;
    parts[2].length_um = 10;
    ow_net_index *net = build(2, parts, 3);
    assert_int_equal(net->shape_count, 1);
    assert_int_equal(net->distinct_count, 2);
    ow_net_index_free(net);
}

static void parts_of_a_shape_stand_by_price_length_and_id(void **state)
{
    (void)state;
    static const struct {
        int64_t cents, length;
    } SAID[] = {{OW_NET_NOT_SAID, 0}, {300, 5}, {200, 9}, {300, 4}, {300, 4}, {200, OW_NET_NOT_SAID}};
    static const uint32_t WANTED[] = {5, 2, 3, 4, 1, 0};
    ow_net_part parts[6];
    for (uint32_t i = 0; i < 6; i++) {
        parts[i] = part_with(i, 1, (uint16_t[]){0});
        parts[i].price_cents = SAID[i].cents;
        parts[i].length_um = SAID[i].length;
    }
    ow_net_index *net = build(1, parts, 6);
    for (size_t i = 0; i < 6; i++)
        assert_int_equal(net->parts[i].id, WANTED[i]);
    ow_net_index_free(net);
}

/* Ways by hand: from each end, each non-empty choice of the others to lead on; equal choices once. */
static void a_tee_has_six_carries_and_three_forks(void **state)
{
    (void)state;
    ow_net_part tee = part_with(0, 3, (uint16_t[]){0, 1, 2});
    ow_net_index *net = build(3, &tee, 1);
    assert_int_equal(net->carry_offset[3], 6);
    assert_int_equal(net->fork_offset[OW_FORK_GROUPS], 3);
    assert_int_equal(net->cross_offset[OW_TRAITS], 0);
    ow_net_index_free(net);
}

static void a_tee_with_an_equal_run_tells_equal_ways_once(void **state)
{
    (void)state;
    ow_net_part tee = part_with(0, 3, (uint16_t[]){0, 0, 1});
    ow_net_index *net = build(2, &tee, 1);
    /* run to run, run to branch, branch to run; run to both, branch to both runs */
    assert_int_equal(net->carry_offset[2], 3);
    assert_int_equal(net->fork_offset[OW_FORK_GROUPS], 2);
    ow_net_index_free(net);
}

static void a_cross_has_twelve_carries_twelve_forks_and_four_crosses(void **state)
{
    (void)state;
    ow_net_part cross = part_with(0, 4, (uint16_t[]){0, 1, 2, 3});
    ow_net_index *net = build(4, &cross, 1);
    assert_int_equal(net->carry_offset[4], 12);
    assert_int_equal(net->fork_offset[OW_FORK_GROUPS], 12);
    assert_int_equal(net->cross_offset[OW_TRAITS], 4);
    ow_net_index_free(net);
}

static void a_cross_of_equal_ends_has_one_way_of_each_sort(void **state)
{
    (void)state;
    ow_net_part cross = part_with(0, 4, (uint16_t[]){0, 0, 0, 0});
    ow_net_index *net = build(1, &cross, 1);
    assert_int_equal(net->carry_offset[1], 1);
    assert_int_equal(net->fork_offset[OW_FORK_GROUPS], 1);
    assert_int_equal(net->cross_offset[OW_TRAITS], 1);
    assert_int_equal(net->carries[0].need, 3);
    assert_int_equal(net->forks[0].need[0], 0);
    assert_int_equal(net->forks[0].need[3], 7);
    assert_int_equal(net->crosses[0].need[7], 15);
    ow_net_index_free(net);
}

/* Each carry of each shape, found by looking at the parts' ends. */
static void every_carry_of_every_part_is_in_the_index(void **state)
{
    (void)state;
    static ow_random_case made;
    ow_random random = ow_random_new(7);
    ow_random_net(&random, 20, 120, &made);
    ow_net_index *net = build(20, made.parts, made.net.part_count);
    for (size_t i = 0; i < made.net.part_count; i++) {
        const ow_net_part *part = &made.parts[i];
        for (size_t in = 0; in < part->end_count; in++)
            for (size_t out = 0; out < part->end_count; out++) {
                size_t found = 0;
                uint32_t shape = net->shape_of[net->place[i]];
                for (size_t c = net->carry_offset[part->kinds[out]];
                     in != out && c < net->carry_offset[part->kinds[out] + 1u]; c++)
                    found += net->carries[c].entry == part->kinds[in] && net->carries[c].shape == shape;
                assert_int_equal(found, in != out);
            }
    }
    for (size_t i = 1; i < net->shape_count; i++)
        assert_true(net->shapes[i - 1].end_count <= net->shapes[i].end_count);
    ow_net_index_free(net);
}

static void links_go_both_ways(void **state)
{
    (void)state;
    static ow_random_case made;
    ow_random random = ow_random_new(3);
    ow_random_net(&random, 30, 10, &made);
    ow_net_index *net = NULL;
    assert_int_equal(ow_net_index_build(&CONTEXT, &made.net, &net), OW_OK);
    size_t selves = 0;
    for (size_t i = 0; i < made.net.mate_count; i++)
        for (int way = 0; way < 2; way++) {
            const ow_net_mate *mate = &made.mates[i];
            uint16_t from = way ? mate->b : mate->a, to = way ? mate->a : mate->b;
            size_t found = 0;
            for (size_t j = net->link_offset[from]; j < net->link_offset[from + 1u]; j++)
                found += net->links[j].kind == to && net->links[j].turns == mate->turns &&
                         net->links[j].tolerated == mate->tolerated;
            assert_int_equal(found, 1);
            selves += way == 0 && mate->a == mate->b;
        }
    assert_int_equal(net->link_offset[30], 2 * made.net.mate_count - selves);
    ow_net_index_free(net);
}

/* All but the places of parts in the input. */
static void assert_alike(const ow_net_index *a, const ow_net_index *b)
{
    size_t kinds = a->kind_count;
    assert_int_equal(a->shape_count, b->shape_count);
    assert_int_equal(a->fork_offset[OW_FORK_GROUPS], b->fork_offset[OW_FORK_GROUPS]);
    assert_int_equal(a->cross_offset[OW_TRAITS], b->cross_offset[OW_TRAITS]);
    assert_int_equal(a->distinct_count, b->distinct_count);
    assert_memory_equal(a->carry_offset, b->carry_offset, (kinds + 1) * sizeof *a->carry_offset);
    assert_memory_equal(a->entry_offset, b->entry_offset, (kinds + 1) * sizeof *a->entry_offset);
    for (size_t i = 0; i < a->part_count; i++)
        assert_int_equal(a->parts[i].id, b->parts[i].id);
    for (size_t i = 0; i < a->carry_offset[kinds]; i++) {
        assert_int_equal(a->carries[i].shape, b->carries[i].shape);
        assert_int_equal(a->carries[i].entry, b->carries[i].entry);
    }
}

static void nothing_depends_on_the_order_of_parts_or_pairs(void **state)
{
    (void)state;
    static ow_random_case made;
    for (uint64_t seed = 0; seed < 20; seed++) {
        ow_random random = ow_random_new(seed);
        ow_random_net(&random, 16, 90, &made);
        ow_net_index *before = NULL, *after = NULL;
        assert_int_equal(ow_net_index_build(&CONTEXT, &made.net, &before), OW_OK);
        ow_random_shuffle_parts(&random, &made);
        ow_random_shuffle_mates(&random, &made);
        assert_int_equal(ow_net_index_build(&CONTEXT, &made.net, &after), OW_OK);
        assert_alike(before, after);
        ow_net_index_free(before);
        ow_net_index_free(after);
    }
}

static void a_net_of_nothing_is_built(void **state)
{
    (void)state;
    ow_net_input input = {0};
    ow_net_index *net = NULL;
    assert_int_equal(ow_net_index_build(&CONTEXT, &input, &net), OW_OK);
    assert_int_equal(net->shape_count, 0);
    ow_net_index_free(net);
}

typedef void spoil(ow_random_case *made);
static void spoil_kind(ow_random_case *made)
{
    made->parts[3].kinds[0] = (uint16_t)made->net.kind_count;
}
static void spoil_mate(ow_random_case *made)
{
    made->mates[1].b = (uint16_t)made->net.kind_count;
}
static void spoil_twice(ow_random_case *made)
{
    made->mates[1] = (ow_net_mate){made->mates[0].b, made->mates[0].a, false, false};
}
static void spoil_id(ow_random_case *made)
{
    made->parts[2].id = made->parts[7].id;
}
static void spoil_no_end(ow_random_case *made)
{
    made->parts[0].end_count = 0;
}
static void spoil_many_ends(ow_random_case *made)
{
    made->parts[0].end_count = OW_NET_ENDS + 1;
}
static void spoil_price(ow_random_case *made)
{
    made->parts[0].price_cents = OW_NET_AMOUNT_MAX + 1;
}
static void spoil_length(ow_random_case *made)
{
    made->parts[0].length_um = -2;
}

static void numbers_out_of_range_are_refused(void **state)
{
    (void)state;
    static ow_random_case made;
    static spoil *const SPOILS[] = {spoil_kind,   spoil_mate,      spoil_twice, spoil_id,
                                    spoil_no_end, spoil_many_ends, spoil_price, spoil_length};
    for (size_t i = 0; i < sizeof SPOILS / sizeof SPOILS[0]; i++) {
        ow_random random = ow_random_new(5);
        ow_random_net(&random, 10, 20, &made);
        SPOILS[i](&made);
        ow_net_index *net = NULL;
        assert_int_equal(ow_net_index_build(&CONTEXT, &made.net, &net), OW_RANGE);
        assert_null(net);
    }
}

static ow_status build_job(const ow_context *context, void *data)
{
    ow_random_case *made = data;
    ow_net_index *net = NULL;
    ow_status status = ow_net_index_build(context, &made->net, &net);
    ow_net_index_free(net);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    static ow_random_case made;
    ow_random random = ow_random_new(11);
    ow_random_net(&random, 12, 40, &made);
    ow_test_fail_each(build_job, &made);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parts_with_the_same_ends_in_any_order_are_one_shape),
        cmocka_unit_test(hoses_and_restrictors_are_shapes_of_their_own),
        cmocka_unit_test(bores_make_parts_distinct_but_no_other_shape),
        cmocka_unit_test(parts_of_a_shape_stand_by_price_length_and_id),
        cmocka_unit_test(a_tee_has_six_carries_and_three_forks),
        cmocka_unit_test(a_tee_with_an_equal_run_tells_equal_ways_once),
        cmocka_unit_test(a_cross_has_twelve_carries_twelve_forks_and_four_crosses),
        cmocka_unit_test(a_cross_of_equal_ends_has_one_way_of_each_sort),
        cmocka_unit_test(every_carry_of_every_part_is_in_the_index),
        cmocka_unit_test(links_go_both_ways),
        cmocka_unit_test(nothing_depends_on_the_order_of_parts_or_pairs),
        cmocka_unit_test(a_net_of_nothing_is_built),
        cmocka_unit_test(numbers_out_of_range_are_refused),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
