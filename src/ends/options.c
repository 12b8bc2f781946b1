/* SPDX-License-Identifier: MIT */
#include "ends/options.h"

#include <stdio.h>
#include <string.h>

#include "base/words.h"
#include "ends/hints.h"

static const char *const SEAT_WORDS[OW_SEAT_COUNT] = {
    [OW_SEAT_NONE] = "",
    [OW_SEAT_UNKNOWN] = "",
    [OW_SEAT_TAPER] = "taper",
    [OW_SEAT_WASHER] = "washer",
    [OW_SEAT_WASHER_CAPTIVE] = "washer-captive",
    [OW_SEAT_BANJO] = "banjo",
    [OW_SEAT_O_RING] = "o-ring",
    [OW_SEAT_FACE_O_RING] = "face-o-ring",
    [OW_SEAT_CONE24] = "cone24",
    [OW_SEAT_CONE60] = "cone60",
    [OW_SEAT_FLARE30] = "flare30",
    [OW_SEAT_NPSM] = "",
    [OW_SEAT_FLARE37] = "flare37",
    [OW_SEAT_FLARE45] = "flare45",
    [OW_SEAT_FLARE45_INVERTED] = "flare45-inverted",
    [OW_SEAT_CONVEX] = "convex",
};

const char *ow_seat_word(ow_seat seat)
{
    return (unsigned)seat < OW_SEAT_COUNT ? SEAT_WORDS[seat] : "";
}

static ow_seat seat_of(const ow_end_scan *scan, size_t word)
{
    for (ow_seat seat = OW_SEAT_TAPER; seat < OW_SEAT_COUNT; seat++)
        if (SEAT_WORDS[seat][0] && ow_end_word_is(scan, word, SEAT_WORDS[seat]))
            return seat;
    return OW_SEAT_NONE;
}

/* "10l" or "6s": a tube in millimetres and the letter of its series. */
static bool series_of(const ow_end_scan *scan, size_t word, char *series)
{
    const char *p = ow_end_word_at(scan, word);
    size_t length = scan->words[word].length;
    if (length < 2 || length > 3 || (p[length - 1] != 'l' && p[length - 1] != 's'))
        return false;
    for (size_t i = 0; i + 1 < length; i++)
        if (p[i] < '0' || p[i] > '9')
            return false;
    (void)snprintf(series, 8, "%.*s%c", (int)(length - 1), p, p[length - 1] == 'l' ? 'L' : 'S');
    return true;
}

static ow_status unknown_word(const ow_end_scan *scan, size_t word)
{
    static const char EXPECTED[] = "male or female, then a seat: washer, washer-captive, banjo, o-ring, "
                                   "face-o-ring, cone24, cone60, flare30, flare37, flare45, "
                                   "flare45-inverted, convex or taper; then swivel";
    const char *known[OW_SEAT_COUNT + 3];
    size_t count = 0;
    for (ow_seat seat = OW_SEAT_TAPER; seat < OW_SEAT_COUNT; seat++)
        if (SEAT_WORDS[seat][0])
            known[count++] = SEAT_WORDS[seat];
    known[count++] = "male";
    known[count++] = "female";
    known[count++] = "swivel";
    int length = (int)scan->words[word].length;
    const char *typed = ow_end_word_at(scan, word);
    const char *near = ow_words_nearest(typed, (size_t)length, known, count);
    const char *hint = ow_end_trade_hint(scan, word);
    char mend[96] = "";
    if (hint)
        (void)snprintf(mend, sizeof mend, "%s", hint);
    else if (near)
        (void)snprintf(mend, sizeof mend, "write %s", near);
    return ow_end_fault_word(scan, word, EXPECTED, mend, "\"%.*s\" is no word of an end", length, typed);
}

/* Notes where a word was said; a second time is a fault. */
static ow_status once(const ow_end_scan *scan, size_t word, size_t *said, const char *what)
{
    if (*said != OW_WORD_NONE)
        return ow_end_fault_word(scan, word, "each said once", "", "%s is said twice", what);
    *said = word;
    return OW_OK;
}

static ow_status read_option(const ow_end_scan *scan, size_t word, ow_end_options *options)
{
    ow_seat seat = seat_of(scan, word);
    if (seat != OW_SEAT_NONE) {
        options->seat = seat;
        return once(scan, word, &options->seat_word, "the seat");
    }
    bool male = ow_end_word_is(scan, word, "male");
    if (male || ow_end_word_is(scan, word, "female")) {
        options->gender = male ? OW_MALE : OW_FEMALE;
        return once(scan, word, &options->gender_word, "the gender");
    }
    if (ow_end_word_is(scan, word, "swivel")) {
        options->swivel = true;
        return once(scan, word, &options->swivel_word, "swivel");
    }
    if (series_of(scan, word, options->series))
        return once(scan, word, &options->series_word, "the series");
    return unknown_word(scan, word);
}

ow_status ow_end_read_options(const ow_end_scan *scan, size_t first, ow_end_options *options)
{
    *options = (ow_end_options){OW_GENDER_NONE, OW_SEAT_NONE, "",           false,
                                OW_WORD_NONE,   OW_WORD_NONE, OW_WORD_NONE, OW_WORD_NONE};
    for (size_t word = first; word < scan->word_count; word++) {
        ow_status status = read_option(scan, word, options);
        if (status != OW_OK)
            return status;
    }
    if (options->gender == OW_GENDER_NONE)
        return ow_end_fault_word(scan, scan->word_count, "male or female", "add male or female",
                                 "the gender is missing");
    return OW_OK;
}
