/* SPDX-License-Identifier: MIT */
/* Designations: the words for a thread, read and written. */
#include <string.h>

#include "oilway/thread.h"
#include "threads/sizes.h"

#define DIGITS_MAX 6

static bool is_digit(char character)
{
    return character >= '0' && character <= '9';
}

static bool is_blank(char character)
{
    return character == ' ' || character == '\t';
}

static char lower(char character)
{
    return (char)(character >= 'A' && character <= 'Z' ? character - 'A' + 'a' : character);
}

static bool is_letter(char character)
{
    return lower(character) >= 'a' && lower(character) <= 'z';
}

static const char *past_blanks(const char *at)
{
    while (is_blank(*at))
        at++;
    return at;
}

/* A whole number of at most DIGITS_MAX digits; NULL if there is none. */
static const char *read_whole(const char *at, int32_t *value)
{
    int32_t sum = 0;
    int digits = 0;
    for (; is_digit(*at); at++, digits++) {
        if (digits == DIGITS_MAX)
            return NULL;
        sum = sum * 10 + (*at - '0');
    }
    if (digits == 0)
        return NULL;
    *value = sum;
    return at;
}

/* A decimal number in thousandths: "1.5" is 1500. More than three decimals only if they are zeros. */
static const char *read_thousandths(const char *at, int32_t *value)
{
    int32_t whole = 0, scale = 100, part = 0;
    if (*at != '.' && !(at = read_whole(at, &whole)))
        return NULL;
    if (*at == '.') {
        if (!is_digit(at[1]))
            return NULL;
        for (at++; is_digit(*at); at++, scale /= 10) {
            if (scale == 0 && *at != '0')
                return NULL;
            part += scale * (*at - '0');
        }
    }
    *value = whole * 1000 + part;
    return at;
}

/* A word of letters that equals one of the list, case ignored; NULL if the word there is none of
 * them. */
static const char *read_word(const char *at, const char *const *words, size_t count, size_t *index)
{
    size_t length = 0;
    while (is_letter(at[length]))
        length++;
    for (size_t i = 0; i < count; i++) {
        size_t k = 0;
        while (k < length && words[i][k] == lower(at[k]))
            k++;
        if (k == length && words[i][k] == '\0') {
            *index = i;
            return at + length;
        }
    }
    return NULL;
}

static bool is_end(char character)
{
    return character == '\0' || is_blank(character);
}

/* ---- metric --------------------------------------------------------------------------------- */

/* "x" in any of its forms; NULL if there is none. */
static const char *read_times(const char *at)
{
    if (lower(*at) == 'x')
        return at + 1;
    if (strncmp(at, "\xc3\x97", 2) == 0)
        return at + 2;
    return NULL;
}

static const char *read_metric_pitch(const char *at, int32_t *pitch)
{
    const char *times = read_times(past_blanks(at));
    const char *end = times ? read_thousandths(past_blanks(times), pitch) : NULL;
    return end ? end : at;
}

static const char *read_metric(const char *at, ow_thread *thread)
{
    static const char *const tapers[] = {"taper", "keg"};
    size_t which;
    ow_thread read = {OW_THREAD_METRIC, 0, 0};
    at = read_thousandths(past_blanks(at), &read.size);
    if (!at || read.size < 1000 || read.size > 300000)
        return NULL;
    const char *after_size = at;
    at = read_metric_pitch(at, &read.pitch);
    if (at != after_size && (read.pitch < 200 || read.pitch > 8000 || read.pitch * 2 > read.size))
        return NULL;
    const char *after_taper = read_word(past_blanks(at), tapers, 2, &which);
    if (after_taper && is_end(*after_taper)) {
        read.family = OW_THREAD_METRIC_TAPER;
        at = after_taper;
    }
    *thread = read;
    return at;
}

/* ---- inch ----------------------------------------------------------------------------------- */

/* "/16" behind a numerator, as 1/64 inch; NULL if it is none or not a binary fraction. */
static const char *read_denominator(const char *at, int32_t numerator, int32_t *size)
{
    int32_t denominator = 0;
    if (*at != '/' || !(at = read_whole(at + 1, &denominator)))
        return NULL;
    if (denominator < 2 || denominator > 64 || 64 % denominator != 0 || numerator >= denominator)
        return NULL;
    *size = numerator * (64 / denominator);
    return at;
}

/* "7/16", "1 1/16", "1-1/16", "2", each with or without an inch mark. */
static const char *read_inches(const char *at, int32_t *size)
{
    int32_t first = 0, second = 0, fraction = 0;
    if (!(at = read_whole(at, &first)) || first > 64)
        return NULL;
    if (*at == '/') {
        at = read_denominator(at, first, size);
    } else {
        const char *next = is_blank(*at) || *at == '-' ? read_whole(past_blanks(at + 1), &second) : NULL;
        next = next ? read_denominator(next, second, &fraction) : NULL;
        at = next ? next : at;
        *size = first * 64 + fraction;
    }
    return at && *at == '"' ? at + 1 : at;
}

/* "-27", "-11.5", "-11 1/2" as twice the threads per inch; at itself if there is none. */
static const char *read_threads_per_inch(const char *at, int32_t *pitch)
{
    int32_t thousandths = 0;
    const char *dash = past_blanks(at);
    const char *end = *dash == '-' ? read_thousandths(past_blanks(dash + 1), &thousandths) : NULL;
    if (!end || thousandths % 500 != 0)
        return at;
    *pitch = thousandths / 500;
    if (*pitch % 2 == 0 && is_blank(*end) && strncmp(past_blanks(end), "1/2", 3) == 0) {
        *pitch += 1;
        return past_blanks(end) + 3;
    }
    return end;
}

enum { SERIES_UNC, SERIES_UNF, SERIES_UNEF, SERIES_UN, SERIES_UNS, SERIES_PIPE, SERIES_NONE = 99 };
static const char *const series_words[] = {"unc", "unf",  "unef", "un",   "uns",
                                           "npt", "nptf", "npsm", "bspt", "bspp"};
static const ow_thread_family pipe_families[] = {OW_THREAD_NPT, OW_THREAD_NPTF, OW_THREAD_NPSM, OW_THREAD_R,
                                                 OW_THREAD_G};

/* The letters on a shop's drawing are often only "UN" or "UNS": they fit every series. */
static bool series_fits(size_t asked, const char *series)
{
    static const char *const names[] = {"UNC", "UNF", "UNEF"};
    return asked >= SERIES_UN || strcmp(names[asked], series) == 0;
}

static bool find_unified(int32_t size, int32_t pitch, size_t series, ow_thread *thread)
{
    if (pitch == 0 && series == SERIES_NONE)
        return false;
    for (size_t i = 0; i < ow_unified_rows.count; i++) {
        const ow_thread_row *row = &ow_unified_rows.rows[i];
        if (row->thread.size != size || (pitch != 0 && row->thread.pitch != pitch) ||
            !series_fits(series, row->series))
            continue;
        *thread = row->thread;
        if (pitch == 0 && series >= SERIES_UN)
            thread->pitch = 0;
        return true;
    }
    return false;
}

/* A pipe size of a family, whose pitch follows from it. pitch 0: not said. */
static bool find_pipe(ow_thread_family family, int32_t size, int32_t pitch, ow_thread *thread)
{
    for (size_t i = 0; i < ow_pipe_rows.count; i++) {
        const ow_thread *row = &ow_pipe_rows.rows[i].thread;
        if (row->family == family && row->size == size && (pitch == 0 || row->pitch == pitch)) {
            *thread = *row;
            return true;
        }
    }
    return false;
}

static const char *read_inch(const char *at, ow_thread *thread)
{
    int32_t size = 0, pitch = 0;
    size_t series = SERIES_NONE;
    if (!(at = read_inches(at, &size)))
        return NULL;
    at = read_threads_per_inch(at, &pitch);
    const char *after_word =
        read_word(past_blanks(at), series_words, sizeof series_words / sizeof series_words[0], &series);
    if (after_word && is_end(*after_word))
        at = after_word;
    else
        series = SERIES_NONE;
    bool found = series != SERIES_NONE && series >= SERIES_PIPE
                     ? find_pipe(pipe_families[series - SERIES_PIPE], size, pitch, thread)
                     : find_unified(size, pitch, series, thread);
    return found ? at : NULL;
}

/* "R1/8", "Rc 1/8", "Rp1/8", "G1/4". */
static const char *read_whitworth(const char *at, ow_thread *thread)
{
    static const char *const words[] = {"r", "rc", "rp", "g"};
    static const ow_thread_family families[] = {OW_THREAD_R, OW_THREAD_RC, OW_THREAD_RP, OW_THREAD_G};
    size_t which = 0;
    int32_t size = 0, pitch = 0;
    if (!(at = read_word(at, words, 4, &which)) || !(at = read_inches(past_blanks(at), &size)))
        return NULL;
    at = read_threads_per_inch(at, &pitch);
    return find_pipe(families[which], size, pitch, thread) ? at : NULL;
}

ow_status ow_thread_read(const char *words, ow_thread *thread, size_t *used)
{
    ow_thread read = {OW_THREAD_METRIC, 0, 0};
    const char *start = past_blanks(words);
    const char *end;
    if (lower(*start) == 'm')
        end = read_metric(start + 1, &read);
    else if (is_digit(*start))
        end = read_inch(start, &read);
    else
        end = read_whitworth(start, &read);
    if (!end || !is_end(*end))
        return OW_INPUT;
    *thread = read;
    *used = (size_t)(end - words);
    return OW_OK;
}

/* ---- writing -------------------------------------------------------------------------------- */

static void write_thousandths(ow_text *text, int32_t value)
{
    char digits[8];
    int32_t part = value % 1000;
    ow_text_format(text, "%d", (int)(value / 1000));
    if (part == 0)
        return;
    digits[0] = '.';
    digits[1] = (char)('0' + part / 100);
    digits[2] = (char)('0' + part / 10 % 10);
    digits[3] = (char)('0' + part % 10);
    size_t length = 4;
    while (digits[length - 1] == '0')
        length--;
    ow_text_bytes(text, digits, length);
}

static void write_inches(ow_text *text, int32_t size)
{
    int32_t numerator = size % 64, denominator = 64;
    while (numerator != 0 && numerator % 2 == 0) {
        numerator /= 2;
        denominator /= 2;
    }
    if (size >= 64)
        ow_text_format(text, "%d%s", (int)(size / 64), numerator ? " " : "");
    if (numerator || size < 64)
        ow_text_format(text, "%d/%d", (int)numerator, (int)denominator);
}

static void write_threads_per_inch(ow_text *text, int32_t pitch)
{
    if (pitch)
        ow_text_format(text, "-%d%s", (int)(pitch / 2), pitch % 2 ? ".5" : "");
}

void ow_thread_write(ow_text *text, const ow_thread *thread)
{
    static const char *const before[OW_THREAD_FAMILY_COUNT] = {"M", "M", "",   "",   "",
                                                               "",  "R", "Rc", "Rp", "G"};
    static const char *const after[OW_THREAD_FAMILY_COUNT] = {"",     "", "UN", "NPT", "NPTF",
                                                              "NPSM", "", "",   "",    ""};
    if (thread->family < 0 || thread->family >= OW_THREAD_FAMILY_COUNT)
        return;
    ow_text_add(text, before[thread->family]);
    if (!ow_thread_is_inch(thread->family)) {
        write_thousandths(text, thread->size);
        if (thread->pitch) {
            ow_text_char(text, 'x');
            write_thousandths(text, thread->pitch);
        }
        ow_text_add(text, thread->family == OW_THREAD_METRIC_TAPER ? " taper" : "");
        return;
    }
    write_inches(text, thread->size);
    if (before[thread->family][0])
        return;
    write_threads_per_inch(text, thread->pitch);
    const ow_thread_row *row = ow_thread_row_find(thread);
    ow_text_format(text, " %s", row && row->series[0] ? row->series : after[thread->family]);
}
