/* SPDX-License-Identifier: MIT */
#include "ends/scan.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/format.h"
#include "base/words.h"

/* What people type in place of ASCII; inch marks are dropped: they say nothing that the form does not. */
static const struct spelling {
    const char *typed;
    char plain; /* 0: dropped */
} SPELLINGS[] = {
    {"\xC3\x97", 'x'},     /* multiplication sign */
    {"\xE2\x88\x92", '-'}, /* minus sign */
    {"\xE2\x80\x93", '-'}, /* en dash */
    {"\xE2\x80\x91", '-'}, /* hyphen that does not break */
    {"\xE2\x80\xB3", 0},   /* double prime */
    {"\xE2\x80\x9D", 0},   /* closing quotation mark */
    {"\xC2\xA0", ' '},     /* blank that does not break */
    {"\"", 0},
    {"\t", ' '},
};

static size_t spelled(const char *words, char *plain)
{
    for (size_t i = 0; i < sizeof SPELLINGS / sizeof SPELLINGS[0]; i++) {
        size_t length = strlen(SPELLINGS[i].typed);
        if (strncmp(words, SPELLINGS[i].typed, length) == 0) {
            *plain = SPELLINGS[i].plain;
            return length;
        }
    }
    *plain = *words >= 'A' && *words <= 'Z' ? (char)(*words - 'A' + 'a') : *words;
    return *words >= ' ' && *words <= '~' ? 1 : 0;
}

static ow_status tell(ow_end_fault *fault, size_t start, size_t length, const char *expected,
                      const char *mend, const char *message)
{
    if (fault) {
        fault->start = start;
        fault->length = length;
        (void)snprintf(fault->message, sizeof fault->message, "%s", message);
        (void)snprintf(fault->expected, sizeof fault->expected, "%s", expected);
        (void)snprintf(fault->mend, sizeof fault->mend, "%s", mend);
    }
    return OW_INPUT;
}

static ow_status split(ow_end_scan *scan)
{
    for (size_t i = 0; i < scan->length; i++) {
        if (i > 0 && scan->plain[i - 1] != ' ')
            continue;
        if (scan->word_count == OW_END_WORDS_MAX)
            return tell(scan->fault, scan->origin[i], 1, "the words of one end", "",
                        "too many words for an end");
        const char *blank = strchr(scan->plain + i, ' ');
        size_t stop = blank ? (size_t)(blank - scan->plain) : scan->length;
        scan->words[scan->word_count++] = (ow_end_word){i, stop - i};
    }
    return OW_OK;
}

ow_status ow_end_scan_words(const char *words, ow_end_scan *scan)
{
    static const char EXPECTED[] = "an end, such as 1/8-27 NPT male or -4 flare37 female swivel";
    size_t at = 0;
    while (words[at]) {
        char plain;
        size_t length = spelled(words + at, &plain);
        if (length == 0)
            return tell(scan->fault, at, 1, EXPECTED, "", "a character that no end has");
        bool doubled = plain == ' ' && (scan->length == 0 || scan->plain[scan->length - 1] == ' ');
        if (plain && !doubled) {
            if (scan->length == OW_END_PLAIN_MAX)
                return tell(scan->fault, at, 1, EXPECTED, "", "too long for an end");
            scan->origin[scan->length] = at;
            scan->plain[scan->length++] = plain;
        }
        at += length;
    }
    if (scan->length > 0 && scan->plain[scan->length - 1] == ' ')
        at = scan->origin[--scan->length];
    scan->plain[scan->length] = '\0';
    scan->origin[scan->length] = at;
    if (scan->length == 0)
        return tell(scan->fault, 0, at, EXPECTED, "", "nothing written where an end should be");
    return split(scan);
}

const char *ow_end_word_at(const ow_end_scan *scan, size_t word)
{
    return scan->plain + scan->words[word].start;
}

bool ow_end_word_is(const ow_end_scan *scan, size_t word, const char *known)
{
    size_t length = strlen(known);
    return word < scan->word_count && scan->words[word].length == length &&
           memcmp(ow_end_word_at(scan, word), known, length) == 0;
}

static ow_status fault_at(const ow_end_scan *scan, size_t start, size_t length, const char *expected,
                          const char *mend, const char *format, va_list arguments)
    __attribute__((format(printf, 6, 0)));

static ow_status fault_at(const ow_end_scan *scan, size_t start, size_t length, const char *expected,
                          const char *mend, const char *format, va_list arguments)
{
    char message[sizeof scan->fault->message];
    (void)ow_format(message, sizeof message, format, arguments);
    size_t from = scan->origin[start], to = scan->origin[start + length];
    return tell(scan->fault, from, to - from, expected, mend, message);
}

ow_status ow_end_fault_at(const ow_end_scan *scan, size_t start, size_t length, const char *expected,
                          const char *mend, const char *message_format, ...)
{
    va_list arguments;
    va_start(arguments, message_format);
    ow_status status = fault_at(scan, start, length, expected, mend, message_format, arguments);
    va_end(arguments);
    return status;
}

ow_status ow_end_fault_word(const ow_end_scan *scan, size_t word, const char *expected, const char *mend,
                            const char *message_format, ...)
{
    ow_end_word place = word < scan->word_count ? scan->words[word] : (ow_end_word){scan->length, 0};
    va_list arguments;
    va_start(arguments, message_format);
    ow_status status = fault_at(scan, place.start, place.length, expected, mend, message_format, arguments);
    va_end(arguments);
    return status;
}

/* Digits at p, at most 6 of them. False if there are none, or too many. */
static bool digits(const char **p, const char *stop, int32_t *value)
{
    const char *start = *p;
    *value = 0;
    while (*p < stop && **p >= '0' && **p <= '9' && *p - start < 7)
        *value = *value * 10 + (*(*p)++ - '0');
    return *p > start && *p - start < 7;
}

bool ow_end_read_um(const ow_end_scan *scan, size_t word, int32_t *um)
{
    const char *p = ow_end_word_at(scan, word), *stop = p + scan->words[word].length;
    int32_t whole, value;
    if (!digits(&p, stop, &whole) || whole > 500)
        return false;
    value = whole * 1000;
    if (p < stop && *p == '.') {
        int32_t scale = 100;
        for (p++; p < stop && *p >= '0' && *p <= '9'; p++, scale /= 10) {
            if (scale == 0 && *p != '0')
                return false;
            value += (*p - '0') * scale;
        }
    }
    bool unit = stop - p == 2 && p[0] == 'm' && p[1] == 'm';
    if ((p != stop && !unit) || value < 1000 || value > 500000)
        return false;
    *um = value;
    return true;
}

bool ow_end_read_inch_64(const ow_end_scan *scan, size_t word, int32_t *inch_64)
{
    const char *p = ow_end_word_at(scan, word), *stop = p + scan->words[word].length;
    int32_t above, below = 1;
    if (!digits(&p, stop, &above))
        return false;
    if (p < stop && *p == '/') {
        p++;
        if (!digits(&p, stop, &below))
            return false;
    }
    if (p != stop || below == 0 || 64 % below != 0 || above == 0 || above > 4 * below)
        return false;
    *inch_64 = above * (64 / below);
    return true;
}

bool ow_end_read_dash(const ow_end_scan *scan, size_t word, int32_t *dash)
{
    const char *p = ow_end_word_at(scan, word), *stop = p + scan->words[word].length;
    int32_t value;
    if (*p++ != '-' || !digits(&p, stop, &value) || p != stop || value < 1 || value > 64)
        return false;
    *dash = value;
    return true;
}
