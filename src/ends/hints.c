/* SPDX-License-Identifier: MIT */
#include "ends/hints.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define BSP "write G (parallel), R (taper male) or Rc (taper female) before the size, such as G1/4"

/* Common practice: what counters and drawings write. */
static const struct trade_word {
    const char *word, *hint;
} TRADE_WORDS[] = {
    {"hose",
     "begin with what it is: hose -6 ptfe for the hose itself, barb 10 for a tail that it slips over"},
    {"barb", "write its size in millimetres behind it, such as barb 10"},
    {"dash", "write the number with its dash and the seat, such as -6 flare37 or -6 o-ring"},
    {"an", "write flare37, such as -4 flare37 male"},
    {"jic", "write flare37, such as -4 flare37 male"},
    {"37", "write flare37"},
    {"orb", "write o-ring, such as -4 o-ring female"},
    {"boss", "write o-ring, such as -4 o-ring female"},
    {"orfs", "write face-o-ring, such as -4 face-o-ring male"},
    {"ors", "write face-o-ring, such as -4 face-o-ring male"},
    {"sae", "say the seat: flare37, flare45, flare45-inverted or o-ring"},
    {"45", "write flare45, or flare45-inverted where the seat is inside the port"},
    {"inverted", "write flare45-inverted, such as 3/16 flare45-inverted female"},
    {"bubble", "write convex, such as 4.75 convex male"},
    {"din", "write cone24 and its series, such as M16x1.5 male cone24 10L"},
    {"jis", "say the seat: flare30, cone60, or R, Rc or G for the thread"},
    {"bsp", BSP},
    {"bspf", BSP},
    {"parallel", "leave it out: G, M and UNF threads are parallel"},
    {"tapered", "write taper, for a metric male; NPT, R and Rc are taper already"},
    {"flat", "write washer: a ring on a flat face"},
    {"crush", "write washer"},
    {"bonded", "write washer"},
    {"copper", "write washer"},
    {"captive", "write washer-captive"},
    {"union", "write swivel, where the nut turns freely"},
    {"nut", "write swivel, where the nut turns freely"},
    {"m", "write male"},
    {"external", "write male"},
    {"ext", "write male"},
    {"f", "write female"},
    {"internal", "write female"},
    {"int", "write female"},
    {"fem", "write female"},
};

const char *ow_end_trade_hint(const ow_end_scan *scan, size_t word)
{
    for (size_t index = 0; index < sizeof TRADE_WORDS / sizeof TRADE_WORDS[0]; index++) {
        if (ow_end_word_is(scan, word, TRADE_WORDS[index].word))
            return TRADE_WORDS[index].hint;
    }
    return NULL;
}

/* Whether words[0, length) can be read as a thread now; then *mend is "write NAME". */
static bool try_thread(const char *words, char *mend, size_t size)
{
    ow_thread thread;
    size_t used = 0;
    if (ow_thread_read(words, &thread, &used) != OW_OK || (words[used] != '\0' && words[used] != ' '))
        return false;
    ow_end end = {.form = OW_FORM_THREAD, .gender = OW_MALE, .seat = OW_SEAT_UNKNOWN, .thread = thread};
    char name[OW_END_TEXT_SIZE];
    ow_end_name(&end, name);
    char *gender = strstr(name, " male");
    if (gender != NULL)
        *gender = '\0';
    (void)snprintf(mend, size, "write %s", name);
    return true;
}

/* "m10x1,5": a decimal comma. */
static bool try_point(const ow_end_scan *scan, char *mend, size_t size)
{
    char words[OW_END_PLAIN_MAX + 1];
    memcpy(words, scan->plain, scan->length + 1);
    char *comma = strchr(words, ',');
    if (comma == NULL)
        return false;
    *comma = '.';
    return try_thread(words, mend, size);
}

/* "1/8-28 npt": the pitch of another thread; the size has its own. */
static bool try_without_pitch(const ow_end_scan *scan, char *mend, size_t size)
{
    char words[OW_END_PLAIN_MAX + 1];
    const char *dash = memchr(scan->plain, '-', scan->words[0].length);
    if (dash == NULL || dash == scan->plain || scan->word_count < 2)
        return false;
    size_t before = (size_t)(dash - scan->plain);
    memcpy(words, scan->plain, before);
    size_t rest = scan->words[0].length;
    memcpy(words + before, scan->plain + rest, scan->length - rest + 1);
    return try_thread(words, mend, size);
}

static bool goes_by_dash(const ow_end_scan *scan)
{
    for (size_t word = 1; word < scan->word_count; word++) {
        if (ow_end_word_is(scan, word, "flare37") || ow_end_word_is(scan, word, "o-ring") ||
            ow_end_word_is(scan, word, "face-o-ring"))
            return true;
    }
    return false;
}

/* "1/8", "1/8-28": inches, and no thread named. Of a size that taper and parallel pipe threads share the
 * count of threads tells which it is. */
static bool try_inches(const ow_end_scan *scan, char *mend, size_t size)
{
    char inches[8], words[32];
    const char *first = ow_end_word_at(scan, 0);
    size_t length = strspn(first, "0123456789/"), whole = scan->words[0].length;
    if (length == 0 || length >= sizeof inches || memchr(first, '/', length) == NULL ||
        (length < whole && first[length] != '-'))
        return false;
    if (goes_by_dash(scan)) {
        (void)snprintf(
            mend, size,
            "write its dash, the tube in sixteenths (-6 is 3/8), or its thread, such as 9/16-18 UNF");
        return true;
    }
    memcpy(inches, first, length);
    inches[length] = '\0';
    (void)snprintf(words, sizeof words, "%.*s npt", (int)(whole < 16 ? whole : 16), first);
    if (length < whole && try_thread(words, mend, size))
        return true;
    (void)snprintf(words, sizeof words, "%.*s unf", (int)(whole < 16 ? whole : 16), first);
    if (length < whole && try_thread(words, mend, size))
        return true;
    (void)snprintf(words, sizeof words, "g%s", inches);
    ow_thread parallel;
    size_t used;
    if (ow_thread_read(words, &parallel, &used) != OW_OK)
        return false;
    long threads = length < whole ? strtol(first + length + 1, NULL, 10) : 0;
    if (2 * threads == parallel.pitch)
        (void)snprintf(mend, size, "write G%s (parallel), R%s (taper male) or Rc%s (taper female)", inches,
                       inches, inches);
    else
        (void)snprintf(mend, size, "say which thread: %s NPT, G%s, R%s or Rc%s; or of a tube its flare",
                       inches, inches, inches, inches);
    return true;
}

/* "an4", "jic-4", "an-4". */
static bool try_dash(const ow_end_scan *scan, char *mend, size_t size)
{
    static const char *const NAMES[] = {"an", "jic"};
    for (size_t index = 0; index < 2; index++) {
        size_t length = strlen(NAMES[index]);
        const char *digits = ow_end_word_at(scan, 0) + length;
        size_t count = scan->words[0].length - length;
        if (scan->words[0].length <= length || memcmp(scan->plain, NAMES[index], length) != 0)
            continue;
        if (*digits == '-') {
            digits++;
            count--;
        }
        if (count >= 1 && count <= 2 && strspn(digits, "0123456789") == count) {
            (void)snprintf(mend, size, "write -%.*s flare37", (int)count, digits);
            return true;
        }
    }
    return false;
}

void ow_end_size_hint(const ow_end_scan *scan, char *mend, size_t size)
{
    mend[0] = '\0';
    if (try_point(scan, mend, size) || try_without_pitch(scan, mend, size) || try_dash(scan, mend, size))
        return;
    static const char *const FIRST[] = {"an", "jic", "npt", "bspt", "bspp"};
    for (size_t index = 0; index < sizeof FIRST / sizeof FIRST[0]; index++) {
        if (ow_end_word_is(scan, 0, FIRST[index]))
            (void)snprintf(mend, size, "write the size first, such as -4 flare37 or 1/8 NPT");
    }
    for (size_t word = 0; word < scan->word_count && mend[0] == '\0'; word++) {
        const char *hint = ow_end_trade_hint(scan, word);
        if (hint != NULL)
            (void)snprintf(mend, size, "%s", hint);
    }
    if (mend[0] == '\0')
        (void)try_inches(scan, mend, size);
}
