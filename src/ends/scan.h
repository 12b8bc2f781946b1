/* SPDX-License-Identifier: MIT */
/*
 * The words of an end as typed, made plain: lower case, single blanks, no inch marks; each byte knows
 * where it came from, so that a fault points into what the person wrote.
 */
#ifndef OW_ENDS_SCAN_H
#define OW_ENDS_SCAN_H

#include "oilway/end.h"

#define OW_END_WORDS_MAX 12
#define OW_END_PLAIN_MAX 120 /* bytes; the longest canonical text has 41 */

typedef struct ow_end_word {
    size_t start, length; /* in plain */
} ow_end_word;

typedef struct ow_end_scan {
    char plain[OW_END_PLAIN_MAX + 1];
    size_t origin[OW_END_PLAIN_MAX + 1]; /* byte in the words as typed; of the NUL too */
    size_t length;
    ow_end_word words[OW_END_WORDS_MAX];
    size_t word_count;
    ow_end_fault *fault; /* may be NULL */
} ow_end_scan;

/* OW_INPUT with the fault told: nothing written, too long, or a character that no end has. */
ow_status ow_end_scan_words(const char *words, ow_end_scan *scan);

/* Whether a word is exactly `known` (lower case). */
bool ow_end_word_is(const ow_end_scan *scan, size_t word, const char *known);
/* The word's own bytes; not NUL-terminated. */
const char *ow_end_word_at(const ow_end_scan *scan, size_t word);

/* Tells a fault over plain[start, start + length) and returns OW_INPUT. expected and mend may be "". */
ow_status ow_end_fault_at(const ow_end_scan *scan, size_t start, size_t length, const char *expected,
                          const char *mend, const char *message_format, ...)
    __attribute__((format(printf, 6, 7)));
/* The same over one word; word == word_count: behind the last one. */
ow_status ow_end_fault_word(const ow_end_scan *scan, size_t word, const char *expected, const char *mend,
                            const char *message_format, ...) __attribute__((format(printf, 5, 6)));

/*
 * Reads a length in millimetres ("16", "4.75", "16mm") at the start of a word, as micrometres, 1 to
 * 500 mm and at most three decimals. False if it is none.
 */
bool ow_end_read_um(const ow_end_scan *scan, size_t word, int32_t *um);
/* Reads a fraction or whole number of inches ("3/16", "1") as 64ths. False if it is none. */
bool ow_end_read_inch_64(const ow_end_scan *scan, size_t word, int32_t *inch_64);
/* Reads "-4" as 4. False if it is none. */
bool ow_end_read_dash(const ow_end_scan *scan, size_t word, int32_t *dash);

#endif
