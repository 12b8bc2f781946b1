/* SPDX-License-Identifier: MIT */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "oilway/text.h"

static void holds(const char *words, const char *expected)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_text_add(&text, words);
    ow_text_make_ascii(&text);
    assert_int_equal(ow_text_status(&text), OW_OK);
    assert_string_equal(ow_text_words(&text), expected);
    ow_text_done(&text);
}

static void signs_of_the_trade_become_words(void **state)
{
    (void)state;
    holds("Hose end, 37° flare × ½", "Hose end, 37 deg flare x 1/2");
    holds("", "");
    holds("plain", "plain");
}

static void letters_keep_their_sound_or_become_a_question_mark(void **state)
{
    (void)state;
    holds("Überwurfmutter", "Ueberwurfmutter");
    holds("油", "?");
}

static void a_text_cut_inside_a_letter_is_survived(void **state)
{
    (void)state;
    holds("a\xC3", "a?");
    holds("a\xE2\x80", "a?");
    holds("\x80", "?");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(signs_of_the_trade_become_words),
        cmocka_unit_test(letters_keep_their_sound_or_become_a_question_mark),
        cmocka_unit_test(a_text_cut_inside_a_letter_is_survived),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
