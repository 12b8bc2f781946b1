/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include "base/map.h"
#include "support/failing.h"
#include "support/testing.h"

#define MANY 20000

static char keys[MANY][16];

static int write_keys(void **state)
{
    (void)state;
    for (size_t i = 0; i < MANY; i++)
        snprintf(keys[i], sizeof keys[i], "tf-%zu-%zu", i % 7, i);
    return 0;
}

static void an_empty_map_knows_nothing(void **state)
{
    (void)state;
    ow_map map = ow_map_new(NULL);
    assert_int_equal(ow_map_get(&map, ""), OW_MAP_NONE);
    assert_int_equal(ow_map_get(&map, "tee-2"), OW_MAP_NONE);
    ow_map_done(&map);
    ow_map_done(&map);
}

static void every_key_put_is_found_and_no_other(void **state)
{
    (void)state;
    ow_map map = ow_map_new(NULL);
    for (size_t i = 0; i < MANY; i += 2)
        assert_int_equal(ow_map_put(&map, keys[i], i), OW_OK);
    assert_int_equal(map.count, MANY / 2);
    for (size_t i = 0; i < MANY; i++) {
        char copy[16]; /* equal words, not equal pointers */
        memcpy(copy, keys[i], sizeof copy);
        assert_int_equal(ow_map_get(&map, copy), i % 2 == 0 ? i : OW_MAP_NONE);
    }
    ow_map_done(&map);
}

static void a_key_put_again_replaces_its_value(void **state)
{
    (void)state;
    ow_map map = ow_map_new(NULL);
    assert_int_equal(ow_map_put(&map, "sw-2", 1), OW_OK);
    assert_int_equal(ow_map_put(&map, "sw-2", 0), OW_OK);
    assert_int_equal(ow_map_get(&map, "sw-2"), 0);
    assert_int_equal(map.count, 1);
    assert_int_equal(ow_map_put(&map, "", 7), OW_OK);
    assert_int_equal(ow_map_get(&map, ""), 7);
    assert_int_equal(ow_map_get(&map, "SW-2"), OW_MAP_NONE);
    ow_map_done(&map);
}

static void without_memory_the_map_stays_as_it_was(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_map map = ow_map_new(&context);
    size_t put = 0;
    while (failing.asked == 0 || put < 12) /* fills what the first allocation holds */
        assert_int_equal(ow_map_put(&map, keys[put], put), OW_OK), put++;
    failing.fail_at = failing.asked + 1;
    failing.fail_onward = true;
    ow_status status = OW_OK;
    while (status == OW_OK && put < MANY) {
        status = ow_map_put(&map, keys[put], put);
        put += status == OW_OK;
    }
    assert_int_equal(status, OW_MEMORY);
    assert_int_equal(map.count, put);
    for (size_t i = 0; i < put; i++)
        assert_int_equal(ow_map_get(&map, keys[i]), i);
    assert_int_equal(ow_map_get(&map, keys[put]), OW_MAP_NONE);
    assert_int_equal(ow_map_put(&map, keys[0], 99), OW_OK); /* replacing needs none */
    ow_map_done(&map);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

static ow_status fill(const ow_context *context, void *data)
{
    (void)data;
    ow_map map = ow_map_new(context);
    ow_status status = OW_OK;
    for (size_t i = 0; i < 1000 && status == OW_OK; i++)
        status = ow_map_put(&map, keys[i], i);
    ow_map_done(&map);
    return status;
}

static void each_failing_allocation_is_told_and_leaks_nothing(void **state)
{
    (void)state;
    assert_in_range(ow_test_fail_each(fill, NULL), 4, 12); /* it doubles */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_empty_map_knows_nothing),
        cmocka_unit_test(every_key_put_is_found_and_no_other),
        cmocka_unit_test(a_key_put_again_replaces_its_value),
        cmocka_unit_test(without_memory_the_map_stays_as_it_was),
        cmocka_unit_test(each_failing_allocation_is_told_and_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, write_keys, NULL);
}
