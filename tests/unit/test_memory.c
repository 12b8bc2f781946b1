/* SPDX-License-Identifier: MIT */
#include <stdalign.h>
#include <string.h>

#include "base/memory.h"
#include "support/failing.h"
#include "support/testing.h"

static bool is_zero(const unsigned char *bytes, size_t size)
{
    for (size_t i = 0; i < size; i++)
        if (bytes[i] != 0)
            return false;
    return true;
}

static void arena_memory_is_zeroed_aligned_and_apart(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_arena arena = ow_arena_new(&context);
    unsigned char *got[200];
    for (size_t i = 0; i < 200; i++) {
        size_t size = (i * 37) % 3000;
        got[i] = ow_arena_get(&arena, size);
        assert_non_null(got[i]);
        assert_int_equal((uintptr_t)got[i] % alignof(max_align_t), 0);
        assert_true(is_zero(got[i], size));
        memset(got[i], (int)i + 1, size);
    }
    for (size_t i = 0; i < 200; i++) /* no piece was written over by another */
        for (size_t j = 0; j < (i * 37) % 3000; j++)
            assert_int_equal(got[i][j], (unsigned char)(i + 1));
    ow_arena_done(&arena);
    assert_int_equal(failing.live, 0);
    assert_int_equal(failing.wrong_frees, 0);
    ow_arena_done(&arena); /* once more does nothing */
    ow_failing_done(&failing);
}

static void a_large_piece_leaves_the_rest_of_the_block_in_use(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_arena arena = ow_arena_new(&context);
    assert_non_null(ow_arena_get(&arena, 16));
    assert_non_null(ow_arena_get(&arena, 1000000));
    size_t before = failing.asked;
    for (int i = 0; i < 100; i++)
        assert_non_null(ow_arena_get(&arena, 16));
    assert_int_equal(failing.asked, before);
    ow_arena_done(&arena);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

static void a_million_small_pieces_take_few_allocations(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_arena arena = ow_arena_new(&context);
    for (int i = 0; i < 1000000; i++)
        assert_non_null(ow_arena_get(&arena, 16));
    assert_in_range(failing.asked, 15, 40); /* 16 MB in blocks of up to 1 MiB */
    ow_arena_done(&arena);
    ow_failing_done(&failing);
}

static void sizes_that_overflow_are_refused(void **state)
{
    (void)state;
    ow_arena arena = ow_arena_new(NULL);
    assert_null(ow_arena_get(&arena, SIZE_MAX));
    assert_null(ow_arena_get(&arena, SIZE_MAX - 20));
    assert_null(ow_arena_get_array(&arena, SIZE_MAX / 8 + 1, 8));
    assert_null(ow_arena_get_array(&arena, SIZE_MAX / 2, 3));
    assert_null(ow_arena_copy(&arena, "", SIZE_MAX));
    assert_null(ow_new_array(NULL, SIZE_MAX / 4, 5));
    ow_arena_done(&arena);
    void *items = NULL;
    size_t capacity = 0;
    assert_int_equal(ow_grow(NULL, &items, &capacity, SIZE_MAX / 4, 8), OW_MEMORY);
    assert_null(items);
    assert_int_equal(capacity, 0);
}

static void a_copy_ends_with_a_nul(void **state)
{
    (void)state;
    ow_arena arena = ow_arena_new(NULL);
    assert_string_equal(ow_arena_copy(&arena, "banjo eye", 5), "banjo");
    assert_string_equal(ow_arena_copy(&arena, NULL, 0), "");
    assert_memory_equal(ow_arena_copy(&arena, "a\0b", 3), "a\0b", 4);
    ow_arena_done(&arena);
}

static void a_growing_array_keeps_its_items_and_doubles(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    long *items = NULL;
    size_t capacity = 0;
    for (size_t i = 0; i < 10000; i++) {
        assert_int_equal(ow_grow(&context, (void **)&items, &capacity, i + 1, sizeof *items), OW_OK);
        assert_true(capacity > i);
        items[i] = (long)i;
    }
    for (size_t i = 0; i < 10000; i++)
        assert_int_equal(items[i], i);
    assert_in_range(failing.asked, 8, 14); /* log2(10000) */
    failing.fail_at = failing.asked + 1;
    long *before = items;
    size_t capacity_before = capacity;
    assert_int_equal(ow_grow(&context, (void **)&items, &capacity, capacity + 1, sizeof *items), OW_MEMORY);
    assert_ptr_equal(items, before);
    assert_int_equal(capacity, capacity_before);
    assert_int_equal(items[9999], 9999);
    ow_release(&context, items);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

static void a_new_array_is_zeroed_even_without_items(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    unsigned char *array = ow_new_array(&context, 100, 7);
    assert_true(is_zero(array, 700));
    void *empty = ow_new_array(&context, 0, 8);
    assert_non_null(empty);
    ow_release(&context, empty);
    ow_release(&context, array);
    ow_release(&context, NULL);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

static void without_an_allocator_the_c_library_serves(void **state)
{
    (void)state;
    ow_context context = OW_CONTEXT_INIT;
    char *block = ow_resize(&context, NULL, 4);
    assert_non_null(block);
    memcpy(block, "oil", 4);
    block = ow_resize(&context, block, 4000);
    assert_string_equal(block, "oil");
    assert_null(ow_resize(&context, block, 0));
}

static ow_status fill_an_arena(const ow_context *context, void *data)
{
    (void)data;
    ow_arena arena = ow_arena_new(context);
    ow_status status = OW_OK;
    for (size_t size = 1; size < 200000 && status == OW_OK; size = size * 3 / 2 + 1)
        if (ow_arena_get(&arena, size) == NULL)
            status = OW_MEMORY;
    ow_arena_done(&arena);
    return status;
}

static void each_failing_allocation_of_an_arena_is_told_and_leaks_nothing(void **state)
{
    (void)state;
    assert_true(ow_test_fail_each(fill_an_arena, NULL) > 3);
}

/* The allocator of the tests is itself a thing that could be wrong. */
static void the_failing_allocator_sees_leaks_double_frees_and_refuses_on_time(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    failing.fail_at = 2;
    void *first = ow_resize(&context, NULL, 10);
    assert_non_null(first);
    assert_null(ow_resize(&context, NULL, 10));
    void *third = ow_resize(&context, NULL, 10);
    assert_non_null(third);
    assert_int_equal(failing.live, 2);
    ow_release(&context, first);
    ow_release(&context, first);
    assert_int_equal(failing.wrong_frees, 1);
    assert_int_equal(failing.live, 1);
    failing.fail_onward = true;
    assert_null(ow_resize(&context, third, 20));
    assert_int_equal(failing.live, 1);
    assert_int_equal(failing.live_bytes, 10);
    ow_failing_done(&failing);
}

static void words_kept_in_an_arena_outlive_their_text(void **state)
{
    (void)state;
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_arena arena = ow_arena_new(&context);
    ow_text text = ow_text_new(&context);
    ow_text_format(&text, "%d eyes need %d rings", 2, 3);
    const char *kept = ow_arena_keep(&arena, &text);
    assert_string_equal(kept, "2 eyes need 3 rings");
    assert_string_equal(ow_text_words(&text), "");
    assert_string_equal(ow_arena_keep(&arena, &text), "");
    text.failed = true;
    assert_null(ow_arena_keep(&arena, &text));
    assert_false(text.failed);
    ow_arena_done(&arena);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(arena_memory_is_zeroed_aligned_and_apart),
        cmocka_unit_test(a_large_piece_leaves_the_rest_of_the_block_in_use),
        cmocka_unit_test(a_million_small_pieces_take_few_allocations),
        cmocka_unit_test(sizes_that_overflow_are_refused),
        cmocka_unit_test(a_copy_ends_with_a_nul),
        cmocka_unit_test(a_growing_array_keeps_its_items_and_doubles),
        cmocka_unit_test(a_new_array_is_zeroed_even_without_items),
        cmocka_unit_test(without_an_allocator_the_c_library_serves),
        cmocka_unit_test(each_failing_allocation_of_an_arena_is_told_and_leaks_nothing),
        cmocka_unit_test(the_failing_allocator_sees_leaks_double_frees_and_refuses_on_time),
        cmocka_unit_test(words_kept_in_an_arena_outlive_their_text),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
