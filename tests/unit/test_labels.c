/* SPDX-License-Identifier: MIT */
/* Labels find their places, near where there is room, and at a bounded effort where there is none. */
#include "support/testing.h"

#include "drawing/labels.h"
#include "support/failing.h"

#define PAPER 190.0

/* A bar across the paper with so many labels that point at it, evenly along it. */
static ow_labels bar_with(const ow_context *context, size_t count)
{
    ow_labels labels = ow_labels_new(context, 1.0, PAPER - 1.0);
    ow_labels_block(&labels, &(ow_box){40.0, 0.0, 150.0, 8.0}, false);
    for (size_t index = 0; index < count; index++) {
        double x = 40.0 + 110.0 * ((double)index + 0.5) / (double)count;
        ow_label label = {.kind = OW_LABEL_JOINT,
                          .width = 24.0,
                          .height = 7.0,
                          .anchors = {{x, 0.0}, {x, 8.0}},
                          .anchor_count = 2};
        ow_labels_add(&labels, &label);
    }
    ow_labels_place(&labels);
    return labels;
}

static void assert_none_overlap(const ow_labels *labels)
{
    for (size_t a = 0; a < labels->count; a++) {
        const ow_box *one = &labels->items[a].at.box;
        assert_true(labels->items[a].at.placed);
        assert_true(one->y1 <= 0.0 || one->y0 >= 8.0 || one->x1 <= 40.0 || one->x0 >= 150.0);
        for (size_t b = 0; b < a; b++) {
            const ow_box *other = &labels->items[b].at.box;
            assert_true(one->x1 <= other->x0 || other->x1 <= one->x0 || one->y1 <= other->y0 ||
                        other->y1 <= one->y0);
        }
    }
}

static void where_there_is_room_labels_stand_near(void **state)
{
    (void)state;
    ow_labels labels = bar_with(NULL, 8);
    assert_none_overlap(&labels);
    for (size_t index = 0; index < labels.count; index++)
        assert_true(labels.items[index].at.cost < 15.0);
    assert_false(ow_labels_are_crowded(&labels));
    ow_labels_done(&labels);
}

/* Each search asks one label at least, so the bound can be passed by one search of the whole paper at most.
 */
static void five_hundred_labels_are_placed_at_a_bounded_effort(void **state)
{
    (void)state;
    ow_labels labels = bar_with(NULL, 500);
    assert_none_overlap(&labels);
    assert_true(ow_labels_are_spent(&labels) && ow_labels_are_crowded(&labels));
    assert_true(labels.looked < OW_LABEL_EFFORT + OW_LABEL_EFFORT / 10);
    ow_labels_done(&labels);
}

static ow_status place_some(const ow_context *context, void *data)
{
    (void)data;
    ow_labels labels = bar_with(context, 5);
    ow_status status = labels.failed ? OW_MEMORY : OW_OK;
    ow_labels_done(&labels);
    return status;
}

static void labels_without_memory_say_so(void **state)
{
    (void)state;
    assert_true(ow_test_fail_each(place_some, NULL) > 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(where_there_is_room_labels_stand_near),
        cmocka_unit_test(five_hundred_labels_are_placed_at_a_bounded_effort),
        cmocka_unit_test(labels_without_memory_say_so),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
