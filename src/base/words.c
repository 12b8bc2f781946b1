/* SPDX-License-Identifier: MIT */
#include "base/words.h"

#include <string.h>

/* Words differ in a few letters or are not worth comparing: longer rests are said to differ wholly. */
#define REST_MAX 64

static char small(char letter)
{
    return letter >= 'A' && letter <= 'Z' ? (char)(letter - 'A' + 'a') : letter;
}

static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

static size_t most(size_t a, size_t b)
{
    return a > b ? a : b;
}

/* One row of the table: distances of a[0..i] to every beginning of b. */
static void fill_row(const char *a, size_t i, const char *b, size_t b_length, size_t rows[3][REST_MAX + 1])
{
    size_t *row = rows[i % 3];
    const size_t *above = rows[(i + 2) % 3], *two_above = rows[(i + 1) % 3];
    row[0] = i;
    for (size_t j = 1; j <= b_length; j++) {
        char left = small(a[i - 1]), right = small(b[j - 1]);
        size_t best = least(above[j], row[j - 1]) + 1;
        best = least(best, above[j - 1] + (left != right));
        bool swapped = i > 1 && j > 1 && left == small(b[j - 2]) && small(a[i - 2]) == right;
        row[j] = swapped ? least(best, two_above[j - 2] + 1) : best;
    }
}

/* Restricted Damerau-Levenshtein distance, by the usual table of which three rows are kept. */
size_t ow_words_distance(const char *a, size_t a_length, const char *b, size_t b_length)
{
    while (a_length > 0 && b_length > 0 && small(*a) == small(*b)) {
        a++, b++;
        a_length--, b_length--;
    }
    while (a_length > 0 && b_length > 0 && small(a[a_length - 1]) == small(b[b_length - 1]))
        a_length--, b_length--;
    if (a_length == 0 || b_length == 0 || a_length > REST_MAX || b_length > REST_MAX)
        return most(a_length, b_length);
    size_t rows[3][REST_MAX + 1];
    for (size_t j = 0; j <= b_length; j++)
        rows[0][j] = j;
    for (size_t i = 1; i <= a_length; i++)
        fill_row(a, i, b, b_length, rows);
    return rows[a_length % 3][b_length];
}

bool ow_words_near(const char *a, size_t a_length, const char *b, size_t b_length, size_t *distance)
{
    size_t allowed = a_length <= 4 ? 1 : a_length <= 8 ? 2 : 3;
    size_t found = ow_words_distance(a, a_length, b, b_length);
    if (distance != NULL)
        *distance = found;
    /* Where every letter of the shorter word may have changed, nothing is alike. */
    return found <= allowed && found < least(a_length, b_length);
}

const char *ow_words_nearest(const char *word, size_t length, const char *const *known, size_t count)
{
    const char *nearest = NULL;
    size_t nearest_distance = 0;
    for (size_t i = 0; i < count; i++) {
        size_t distance;
        if (ow_words_near(word, length, known[i], strlen(known[i]), &distance) &&
            (nearest == NULL || distance < nearest_distance)) {
            nearest = known[i];
            nearest_distance = distance;
        }
    }
    return nearest;
}

bool ow_words_equal_bytes(const char *a, size_t a_length, const char *b)
{
    size_t i = 0;
    while (i < a_length && b[i] != '\0' && small(a[i]) == small(b[i]))
        i++;
    return i == a_length && b[i] == '\0';
}

bool ow_words_equal(const char *a, const char *b)
{
    return ow_words_equal_bytes(a, strlen(a), b);
}

/* Bytes of the character at the start, 0 if it is none. The Unicode Standard, table 3-7. */
static size_t character_length(const unsigned char *bytes, size_t length)
{
    unsigned char first = bytes[0], low = 0x80, high = 0xBF;
    size_t wanted;
    if (first < 0x80)
        return 1;
    if (first < 0xC2 || first > 0xF4)
        return 0;
    wanted = first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
    if (first == 0xE0)
        low = 0xA0; /* shorter spellings exist */
    else if (first == 0xED)
        high = 0x9F; /* surrogates */
    else if (first == 0xF0)
        low = 0x90; /* shorter spellings exist */
    else if (first == 0xF4)
        high = 0x8F; /* past U+10FFFF */
    if (length < wanted || bytes[1] < low || bytes[1] > high)
        return 0;
    for (size_t i = 2; i < wanted; i++)
        if ((bytes[i] & 0xC0) != 0x80)
            return 0;
    return wanted;
}

size_t ow_utf8_valid(const char *bytes, size_t length)
{
    const unsigned long long high_bits = 0x8080808080808080ULL;
    size_t offset = 0;
    while (offset < length) {
        unsigned long long eight;
        if (length - offset >= sizeof eight) { /* most texts are mostly ASCII */
            memcpy(&eight, bytes + offset, sizeof eight);
            if ((eight & high_bits) == 0) {
                offset += sizeof eight;
                continue;
            }
        }
        size_t character = character_length((const unsigned char *)bytes + offset, length - offset);
        if (character == 0)
            return offset;
        offset += character;
    }
    return length;
}

size_t ow_utf8_count(const char *bytes, size_t length)
{
    size_t count = 0;
    for (size_t i = 0; i < length; i++)
        count += ((unsigned char)bytes[i] & 0xC0) != 0x80;
    return count;
}
