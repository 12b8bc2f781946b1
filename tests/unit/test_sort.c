/* SPDX-License-Identifier: MIT */
/* base/sort.h against what a sort is: a permutation, in order, equal items as they stood. */
#include "base/sort.h"
#include "support/chance.h"
#include "support/failing.h"
#include "support/testing.h"

#define MOST 70

static int by_tens(const void *items, uint32_t left, uint32_t right)
{
    const unsigned *values = items;
    return (values[left] / 10 > values[right] / 10) - (values[left] / 10 < values[right] / 10);
}

static void any_list_is_put_in_order_and_equals_keep_theirs(void **state)
{
    (void)state;
    const ow_context context = OW_CONTEXT_INIT;
    ow_chance chance = {11};
    for (size_t count = 0; count <= MOST; count++) {
        unsigned values[MOST] = {0};
        uint32_t order[MOST];
        for (size_t i = 0; i < count; i++) {
            values[i] = count % 3 == 0 ? (unsigned)i : (unsigned)(ow_chance_next(&chance) % 100);
            order[i] = (uint32_t)i;
        }
        assert_int_equal(ow_sort(&context, order, count, by_tens, values), OW_OK);
        bool seen[MOST] = {false};
        for (size_t i = 0; i < count; i++) {
            assert_false(seen[order[i]]);
            seen[order[i]] = true;
            if (i == 0)
                continue;
            int step = by_tens(values, order[i - 1], order[i]);
            assert_true(step < 0 || (step == 0 && order[i - 1] < order[i]));
        }
    }
}

static void without_memory_the_order_is_as_it_was(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    failing.fail_at = 1;
    const ow_context context = ow_failing_context(&failing);
    const unsigned values[] = {30, 20, 10};
    uint32_t order[] = {0, 1, 2};
    assert_int_equal(ow_sort(&context, order, 3, by_tens, values), OW_MEMORY);
    for (uint32_t i = 0; i < 3; i++)
        assert_int_equal(order[i], i);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

static int by_tens_of_bytes(const void *items, uint32_t left, uint32_t right)
{
    const char *words = items;
    return words[3 * left] - words[3 * right];
}

static void items_are_moved_whole_and_equals_keep_their_places(void **state)
{
    (void)state;
    const ow_context context = OW_CONTEXT_INIT;
    char words[5][3] = {"31", "12", "30", "11", "20"};
    assert_int_equal(ow_sort_items(&context, words, 5, sizeof words[0], by_tens_of_bytes), OW_OK);
    static const char *const wanted[] = {"12", "11", "20", "31", "30"};
    for (size_t i = 0; i < 5; i++)
        assert_string_equal(words[i], wanted[i]);
}

/* Whatever fails, the items stay as they were. */
static ow_status sort_two(const ow_context *context, void *data)
{
    (void)data;
    char words[2][3] = {"31", "12"};
    ow_status status = ow_sort_items(context, words, 2, sizeof words[0], by_tens_of_bytes);
    assert_string_equal(words[0], status == OW_OK ? "12" : "31");
    return status;
}

static void without_memory_the_items_are_as_they_were(void **state)
{
    (void)state;
    assert_int_equal(ow_test_fail_each(sort_two, NULL), 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(any_list_is_put_in_order_and_equals_keep_theirs),
        cmocka_unit_test(without_memory_the_order_is_as_it_was),
        cmocka_unit_test(items_are_moved_whole_and_equals_keep_their_places),
        cmocka_unit_test(without_memory_the_items_are_as_they_were),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
