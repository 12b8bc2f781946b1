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

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(any_list_is_put_in_order_and_equals_keep_theirs),
        cmocka_unit_test(without_memory_the_order_is_as_it_was),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
