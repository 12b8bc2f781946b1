/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "support/testing.h"

static size_t distance(const char *a, const char *b)
{
    return ow_words_distance(a, strlen(a), b, strlen(b));
}

static void distance_counts_letters_that_change(void **state)
{
    (void)state;
    assert_int_equal(distance("", ""), 0);
    assert_int_equal(distance("tee", "tee"), 0);
    assert_int_equal(distance("tee", "TEE"), 0);
    assert_int_equal(distance("", "tee"), 3);
    assert_int_equal(distance("adaptor", "adapter"), 1);
    assert_int_equal(distance("bnajo", "banjo"), 1); /* neighbours swapped */
    assert_int_equal(distance("washr", "washer"), 1);
    assert_int_equal(distance("washerr", "washer"), 1);
    /* Textbook pairs of the Levenshtein distance. */
    assert_int_equal(distance("kitten", "sitting"), 3);
    assert_int_equal(distance("saturday", "sunday"), 3);
    /* Restricted form: no letter changes twice (the unrestricted distance would be 2). */
    assert_int_equal(distance("ca", "abc"), 3);
}

/* By the recursive definition, with no table and no shortcut: slow, and plainly right. */
static size_t slow_distance(const char *a, size_t i, const char *b, size_t j)
{
    if (i == 0 || j == 0)
        return i + j;
    size_t best = slow_distance(a, i - 1, b, j) + 1, other = slow_distance(a, i, b, j - 1) + 1;
    best = other < best ? other : best;
    other = slow_distance(a, i - 1, b, j - 1) + (a[i - 1] != b[j - 1]);
    best = other < best ? other : best;
    if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        other = slow_distance(a, i - 2, b, j - 2) + 1;
        best = other < best ? other : best;
    }
    return best;
}

static void distance_agrees_with_its_definition_on_all_short_words(void **state)
{
    (void)state;
    char words[363][6]; /* over three letters, up to five long */
    size_t count = 0;
    for (size_t length = 1; length <= 5; length++) {
        size_t total = 1;
        for (size_t i = 0; i < length; i++)
            total *= 3;
        for (size_t code = 0; code < total; code++, count++) {
            size_t rest = code;
            for (size_t i = 0; i < length; i++, rest /= 3)
                words[count][i] = (char)('a' + rest % 3);
            words[count][length] = '\0';
        }
    }
    assert_int_equal(count, 363);
    for (size_t i = 0; i < count; i += 5)
        for (size_t j = 0; j < count; j += 7)
            assert_int_equal(distance(words[i], words[j]),
                             slow_distance(words[i], strlen(words[i]), words[j], strlen(words[j])));
}

static void distance_of_long_words_is_never_too_small(void **state)
{
    (void)state;
    char a[200], b[200];
    memset(a, 'a', sizeof a);
    memset(b, 'b', sizeof b);
    assert_int_equal(ow_words_distance(a, 64, b, 64), 64);
    assert_int_equal(ow_words_distance(a, 65, b, 65), 65);
    assert_int_equal(ow_words_distance(a, 200, b, 150), 200);
    assert_int_equal(ow_words_distance(a, 200, a, 198), 2);
}

static bool near_to(const char *a, const char *b)
{
    return ow_words_near(a, strlen(a), b, strlen(b), NULL);
}

static void only_near_words_are_offered(void **state)
{
    (void)state;
    assert_true(near_to("bor", "bore"));
    assert_true(near_to("adaptor", "adapter"));
    assert_true(near_to("restricotr", "restrictor"));
    assert_false(near_to("x", "a")); /* nothing of it is left */
    assert_false(near_to("a", "ab"));
    assert_false(near_to("bolt", "bore"));     /* two of four */
    assert_false(near_to("flange", "washer")); /* five of six */
    size_t found = 0;
    assert_true(ow_words_near("tite", 4, "title", 5, &found));
    assert_int_equal(found, 1);
}

static void the_nearest_word_wins_and_the_first_of_equals(void **state)
{
    (void)state;
    const char *const known[] = {"adapter", "elbow", "tee", "cross", "hose", "line"};
    assert_string_equal(ow_words_nearest("adaptor", 7, known, 6), "adapter");
    assert_string_equal(ow_words_nearest("hoseXXX", 4, known, 6), "hose"); /* only the length given counts */
    assert_string_equal(ow_words_nearest("ELBWO", 5, known, 6), "elbow");
    assert_null(ow_words_nearest("gasket", 6, known, 6));
    assert_null(ow_words_nearest("tee", 3, known, 0));
    const char *const equals[] = {"hoses", "horse"};
    assert_string_equal(ow_words_nearest("hose", 4, equals, 2), "hoses");
}

static void words_are_equal_whatever_their_case(void **state)
{
    (void)state;
    assert_true(ow_words_equal("NPT", "npt"));
    assert_true(ow_words_equal("", ""));
    assert_false(ow_words_equal("npt", "nptf"));
    assert_false(ow_words_equal("nptf", "npt"));
    assert_true(ow_words_equal_bytes("npt male", 3, "NPT"));
    assert_false(ow_words_equal_bytes("np", 2, "NPT"));
    assert_false(ow_words_equal("@", "`")); /* 32 apart, no letters */
}

typedef struct utf8_row {
    const char *bytes;
    size_t length, valid;
} utf8_row;

/* The Unicode Standard 15.0, table 3-7, and the examples of its section 3.9 for ill-formed sequences. */
static void utf8_is_valid_as_unicode_has_it(void **state)
{
    (void)state;
    static const utf8_row rows[] = {
        {"", 0, 0},
        {"plain", 5, 5},
        {"a\0b", 3, 3},
        {"\xC2\x80", 2, 2},
        {"\xDF\xBF", 2, 2},
        {"\xE0\xA0\x80", 3, 3},
        {"\xED\x9F\xBF", 3, 3},
        {"\xEF\xBF\xBF", 3, 3},
        {"\xF0\x90\x80\x80", 4, 4},
        {"\xF4\x8F\xBF\xBF", 4, 4},
        {"37\xC2\xB0 flare", 10, 10},
        {"\x80", 1, 0},
        {"ab\xBF", 3, 2},
        {"\xC0\xAF", 2, 0},         /* overlong */
        {"\xC1\xBF", 2, 0},         /* overlong */
        {"\xE0\x9F\xBF", 3, 0},     /* overlong */
        {"\xF0\x8F\xBF\xBF", 4, 0}, /* overlong */
        {"\xED\xA0\x80", 3, 0},     /* surrogate */
        {"\xF4\x90\x80\x80", 4, 0}, /* past U+10FFFF */
        {"\xF5\x80\x80\x80", 4, 0},
        {"\xFF", 1, 0},
        {"x\xE2\x82", 3, 1}, /* cut */
        {"x\xE2\x82y", 4, 1},
        {"12345678\xC3\x28", 10, 8},
        {"1234567\xC3\xA4"
         "12345678\xFE",
         18, 17},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_int_equal(ow_utf8_valid(rows[i].bytes, rows[i].length), rows[i].valid);
}

static void utf8_counts_characters(void **state)
{
    (void)state;
    assert_int_equal(ow_utf8_count("", 0), 0);
    assert_int_equal(ow_utf8_count("37\xC2\xB0", 4), 3);
    assert_int_equal(ow_utf8_count("\xF0\x90\x80\x80x", 5), 2);
}

typedef struct number_row {
    const char *words;
    size_t used; /* 0: no number */
} number_row;

static void the_longest_number_at_the_start_is_read(void **state)
{
    (void)state;
    static const number_row rows[] = {
        {"4.4 mm", 3}, {"0", 1},   {"-40..150", 3}, {"1..2", 1},   {"+3", 2},    {".5", 2},   {"5.", 1},
        {"1e3x", 3},   {"1e", 1},  {"1e+", 1},      {"2E-3", 4},   {"1.2.3", 3}, {"007", 3},  {"0x10", 1},
        {"", 0},       {"-", 0},   {".", 0},        {"e5", 0},     {"inf", 0},   {"nan", 0},  {" 1", 0},
        {"1e999", 0},  {"- 1", 0}, {"--1", 0},      {"1e-999", 6}, {"1,5", 1},   {"-.e3", 0},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double value = -77.0;
        size_t used = 77;
        bool read = ow_number_read(rows[i].words, strlen(rows[i].words), &value, &used);
        assert_int_equal(read, rows[i].used > 0);
        assert_int_equal(used, read ? rows[i].used : 77);
        if (!read)
            assert_true(value == -77.0);
    }
    double value = 0;
    size_t used = 0;
    assert_true(ow_number_read("12345", 3, &value, &used)); /* never past the length */
    assert_true(value == 123.0);
}

/* Held against the C library's strtod, which rounds correctly. */
static void numbers_round_as_the_c_library_rounds(void **state)
{
    (void)state;
    static const char *const words[] = {"0.1",
                                        "4.4",
                                        "0.0044",
                                        "2.1e-3",
                                        "25.4",
                                        "1e22",
                                        "1e23",
                                        "123456789012345678",
                                        "9007199254740993",
                                        "1.7976931348623157e308",
                                        "2.2250738585072014e-308",
                                        "4.9e-324",
                                        "2.4e-324",
                                        "1e-400",
                                        "0.000000000000000000000000000001",
                                        "8.41e21",
                                        "9.5e-23"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        double value = -1;
        size_t used = 0;
        assert_true(ow_number_read(words[i], strlen(words[i]), &value, &used));
        assert_true(value == strtod(words[i], NULL));
    }
    unsigned long long random = 88172645463325252ULL; /* xorshift64, G. Marsaglia 2003 */
    for (int i = 0; i < 20000; i++) {
        random ^= random << 13, random ^= random >> 7, random ^= random << 17;
        char spelled[64];
        snprintf(spelled, sizeof spelled, "%s%llu.%llue%d", random & 1 ? "-" : "", random % 1000000000ULL,
                 random >> 40, (int)(random % 600) - 300);
        double value = 0;
        size_t used = 0;
        assert_true(ow_number_read(spelled, strlen(spelled), &value, &used));
        assert_int_equal(used, strlen(spelled));
        assert_true(value == strtod(spelled, NULL));
    }
}

static void very_long_numbers_keep_their_size(void **state)
{
    (void)state;
    char spelled[2000];
    memset(spelled, '9', sizeof spelled);
    double value = 0;
    size_t used = 0;
    assert_true(ow_number_read(spelled, 300, &value, &used));
    assert_int_equal(used, 300);
    assert_true(fabs(value / 1e300 - 1) < 1e-15);
    assert_false(ow_number_read(spelled, sizeof spelled, &value, &used));
    memset(spelled, '0', sizeof spelled);
    memcpy(spelled, "0.", 2);
    memcpy(spelled + 1990, "1e1989", 6); /* 0.00…01 with 1989 places */
    assert_true(ow_number_read(spelled, 1996, &value, &used));
    assert_true(value == 1.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(distance_counts_letters_that_change),
        cmocka_unit_test(distance_agrees_with_its_definition_on_all_short_words),
        cmocka_unit_test(distance_of_long_words_is_never_too_small),
        cmocka_unit_test(only_near_words_are_offered),
        cmocka_unit_test(the_nearest_word_wins_and_the_first_of_equals),
        cmocka_unit_test(words_are_equal_whatever_their_case),
        cmocka_unit_test(utf8_is_valid_as_unicode_has_it),
        cmocka_unit_test(utf8_counts_characters),
        cmocka_unit_test(the_longest_number_at_the_start_is_read),
        cmocka_unit_test(numbers_round_as_the_c_library_rounds),
        cmocka_unit_test(very_long_numbers_keep_their_size),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
