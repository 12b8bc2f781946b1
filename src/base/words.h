/* SPDX-License-Identifier: MIT */
/* Small helpers on words: the nearest known one, comparison, UTF-8, numbers without a locale. */
#ifndef OW_BASE_WORDS_H
#define OW_BASE_WORDS_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/text.h"

/* Letters that must change to get from a to b (insert, drop, change, swap neighbours), case ignored. */
size_t ow_words_distance(const char *a, size_t a_length, const char *b, size_t b_length);
/* Whether distance is near enough to suggest b for a: at most 1 up to 4 letters, 2 up to 8, else 3. A
 * wrong hint is worse than none. */
bool ow_words_near(const char *a, size_t a_length, const char *b, size_t b_length, size_t *distance);
bool ow_words_equal(const char *a, const char *b);                        /* ASCII case ignored */
bool ow_words_equal_bytes(const char *a, size_t a_length, const char *b); /* ASCII case ignored */

/* Bytes before the first fault, or length when the whole is valid UTF-8 (no surrogates, no overlong). */
size_t ow_utf8_valid(const char *bytes, size_t length);
/* Characters in valid UTF-8. */
size_t ow_utf8_count(const char *bytes, size_t length);

/* Reads the longest decimal number at the start (sign, digits, '.', exponent), never with a locale;
 * *used bytes. False if there is none or it is not finite. */
bool ow_number_read(const char *words, size_t length, double *value, size_t *used);

#endif
