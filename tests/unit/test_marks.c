/* SPDX-License-Identifier: MIT */
/* Letters of joints: each once, and none into the mark beside it. */
#include <string.h>

#include "drawing/letters.h"
#include "drawing/marks.h"
#include "drawing/scene.h"
#include "support/testing.h"

static void assert_letter(size_t number, const char *wanted)
{
    char letter[8];
    ow_joint_letter(number, letter);
    assert_string_equal(letter, wanted);
}

static void joints_are_lettered_as_columns_of_a_table_are(void **state)
{
    (void)state;
    assert_letter(0, "A");
    assert_letter(25, "Z");
    assert_letter(26, "AA");
    assert_letter(51, "AZ");
    assert_letter(52, "BA");
    assert_letter(701, "ZZ");
    assert_letter(702, "AAA");
    assert_letter(18277, "ZZZ");
}

/* Ordered by length, then by letter: so no two are alike. */
static void no_two_joints_have_the_same_letter(void **state)
{
    char before[8], letter[8];
    (void)state;
    ow_joint_letter(0, before);
    for (size_t number = 1; number < 3000; number++) {
        ow_joint_letter(number, letter);
        size_t longer = strlen(letter), shorter = strlen(before);
        assert_true(longer > shorter || (longer == shorter && strcmp(letter, before) > 0));
        memcpy(before, letter, sizeof before);
    }
}

/* The mark stands 3.6 mm from where one letter begins, and further on by what more letters take. */
static void a_letter_ends_before_the_mark_beside_it(void **state)
{
    (void)state;
    for (size_t number = 0; number < 3000; number++) {
        char letter[8];
        ow_joint_letter(number, letter);
        double more = ow_joint_letter_more(number, OW_JOINT_LETTER);
        assert_true(ow_words_width(letter, OW_JOINT_LETTER, true) + 0.2 <= 3.6 + more);
        assert_true(number < 26 ? more == 0.0 : more >= 0.0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(joints_are_lettered_as_columns_of_a_table_are),
        cmocka_unit_test(no_two_joints_have_the_same_letter),
        cmocka_unit_test(a_letter_ends_before_the_mark_beside_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
