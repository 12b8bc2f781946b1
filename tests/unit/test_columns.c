/* SPDX-License-Identifier: MIT */
/* Columns of words, and texts made to fit, held against the C library's wcwidth. */
#define _XOPEN_SOURCE 700
#include "base/columns.h"

#include <locale.h>
#include <string.h>
#include <wchar.h>

#include "oilway/text.h"
#include "support/failing.h"
#include "support/testing.h"

/* Scripts that people write names of parts in: Latin, Greek, Cyrillic, punctuation and signs, kana, Han,
 * Hangul, full width forms. */
static const struct {
    unsigned first, last;
} scripts[] = {{0x20, 0x7E},     {0xA0, 0x52F},     {0x1E00, 0x1FFF}, {0x2010, 0x2027}, {0x2030, 0x205E},
               {0x20A0, 0x22FF}, {0x2500, 0x25FC},  {0x3000, 0x303E}, {0x3041, 0x3096}, {0x30A0, 0x312F},
               {0x3400, 0x4DBF}, {0x4E00, 0x9FFF},  {0xAC00, 0xD7A3}, {0xF900, 0xFAD9}, {0xFF01, 0xFF60},
               {0xFFE0, 0xFFE6}, {0x20000, 0x2A6DF}};

static size_t utf8(unsigned sign, char bytes[4])
{
    size_t count = sign < 0x80 ? 1 : sign < 0x800 ? 2 : sign < 0x10000 ? 3 : 4;
    static const unsigned heads[] = {0, 0, 0xC0, 0xE0, 0xF0};
    for (size_t index = count; index-- > 1; sign >>= 6)
        bytes[index] = (char)(0x80u | (sign & 0x3Fu));
    bytes[0] = (char)(heads[count] | sign);
    return count;
}

static void signs_take_the_columns_that_the_c_library_gives_them(void **state)
{
    (void)state;
    size_t looked = 0;
    if (setlocale(LC_CTYPE, "C.UTF-8") == NULL)
        fail_msg("no C.UTF-8 locale");
    for (size_t script = 0; script < sizeof scripts / sizeof scripts[0]; script++) {
        for (unsigned sign = scripts[script].first; sign <= scripts[script].last; sign++) {
            char bytes[4];
            int wanted = wcwidth((wchar_t)sign);
            size_t count = utf8(sign, bytes);
            if (wanted < 0) /* not assigned */
                continue;
            if (ow_columns(bytes, count) != (size_t)wanted)
                fail_msg("U+%04X: %zu columns, not %d", sign, ow_columns(bytes, count), wanted);
            looked++;
        }
    }
    assert_true(looked > 40000);
    setlocale(LC_CTYPE, "C");
}

static void colour_codes_take_none_and_stray_bytes_one(void **state)
{
    (void)state;
    assert_int_equal(ow_columns("\033[1mab\033[0m", 10), 2);
    assert_int_equal(ow_columns("a\xFF\xC3", 3), 3);
    assert_int_equal(ow_columns("", 0), 0);
    assert_int_equal(ow_columns("e\u0301", 3), 1);
}

static void words_are_cut_between_signs_only(void **state)
{
    (void)state;
    const char words[] = "a\u00B0\u6F22b"; /* 1 + 1 + 2 + 1 columns */
    assert_int_equal(ow_columns_cut(words, sizeof words - 1, 2), 3);
    assert_int_equal(ow_columns_cut(words, sizeof words - 1, 3), 3);
    assert_int_equal(ow_columns_cut(words, sizeof words - 1, 4), 6);
    assert_int_equal(ow_columns_cut(words, sizeof words - 1, 9), 7);
}

static void assert_fits(const char *words, size_t width, const char *wanted)
{
    const ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_text_add(&text, words);
    ow_text_fit(&text, width);
    assert_int_equal(ow_text_status(&text), OW_OK);
    assert_string_equal(ow_text_words(&text), wanted);
    ow_text_done(&text);
}

static void long_lines_are_broken_at_blanks_and_set_in(void **state)
{
    (void)state;
    assert_fits("short\nnone\n", 10, "short\nnone\n");
    assert_fits("one two three four", 9, "one two\n    three\n    four");
    assert_fits("  one  two three", 11, "  one  two\n      three");
    assert_fits("  │  ab cd ef\nnext", 11, "  │  ab cd\n  │      ef\nnext");
    assert_fits("unbreakable word", 5, "unbreakable\n    word");
    assert_fits("\033[1mone two\033[0m six", 8, "\033[1mone two\033[0m\n    six");
    assert_fits("漢字 漢字 ab", 9, "漢字 漢字\n    ab");
    assert_fits("", 5, "");
}

static ow_status fit(const ow_context *context, void *data)
{
    (void)data;
    ow_text text = ow_text_new(context);
    ow_text_add(&text, "  one two three four five six seven eight nine ten\n");
    ow_text_fit(&text, 12);
    ow_status status = ow_text_status(&text);
    ow_text_done(&text);
    return status;
}

static void running_out_of_memory_is_told(void **state)
{
    (void)state;
    ow_test_fail_each(fit, NULL);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(signs_take_the_columns_that_the_c_library_gives_them),
        cmocka_unit_test(colour_codes_take_none_and_stray_bytes_one),
        cmocka_unit_test(words_are_cut_between_signs_only),
        cmocka_unit_test(long_lines_are_broken_at_blanks_and_set_in),
        cmocka_unit_test(running_out_of_memory_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
