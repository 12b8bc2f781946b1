/* SPDX-License-Identifier: MIT */
/* The grammar of an end: which form its first word opens, and what each form takes. */
#include <stdio.h>
#include <string.h>

#include "base/format.h"
#include "base/words.h"
#include "ends/hints.h"
#include "ends/options.h"

/* Forms that open with a word of their own. */
typedef struct opening {
    const char *word;
    ow_status (*read)(const ow_end_scan *scan, ow_end *end);
} opening;

static ow_status read_um(const ow_end_scan *scan, size_t word, ow_end *end)
{
    static const char EXPECTED[] = "a size in millimetres from 1 to 500, such as 16 or 4.75";
    end->size_unit = OW_SIZE_UM;
    if (word >= scan->word_count)
        return ow_end_fault_word(scan, word, EXPECTED, "", "the size is missing");
    int32_t inch_64;
    char mend[48] = "";
    if (memchr(ow_end_word_at(scan, word), '/', scan->words[word].length) &&
        ow_end_read_inch_64(scan, word, &inch_64))
        (void)ow_format_to(mend, sizeof mend, "write it in millimetres: %.1f", inch_64 * 25.4 / 64.0);
    if (!ow_end_read_um(scan, word, &end->size))
        return ow_end_fault_word(scan, word, EXPECTED, mend, "\"%.*s\" is no size in millimetres",
                                 (int)scan->words[word].length, ow_end_word_at(scan, word));
    return OW_OK;
}

/* The word behind a size, passing over a unit that stands apart. */
static size_t behind_size(const ow_end_scan *scan, size_t size_word)
{
    return size_word + 1 + (ow_end_word_is(scan, size_word + 1, "mm") ? 1 : 0);
}

static ow_status no_more(const ow_end_scan *scan, size_t word)
{
    if (word < scan->word_count)
        return ow_end_fault_word(scan, word, "nothing more", "leave it out",
                                 "\"%.*s\" stands behind a whole end", (int)scan->words[word].length,
                                 ow_end_word_at(scan, word));
    return OW_OK;
}

static ow_status read_sized(const ow_end_scan *scan, ow_form form, ow_end *end)
{
    end->form = form;
    ow_status status = read_um(scan, 1, end);
    return status == OW_OK ? no_more(scan, behind_size(scan, 1)) : status;
}

static ow_status read_barb(const ow_end_scan *scan, ow_end *end)
{
    return read_sized(scan, OW_FORM_BARB, end);
}

static ow_status read_bead(const ow_end_scan *scan, ow_end *end)
{
    return read_sized(scan, OW_FORM_BEAD, end);
}

static ow_status read_tube(const ow_end_scan *scan, ow_end *end)
{
    return read_sized(scan, OW_FORM_TUBE, end);
}

static ow_status read_weld(const ow_end_scan *scan, ow_end *end)
{
    return read_sized(scan, OW_FORM_WELD, end);
}

static ow_status read_banjo(const ow_end_scan *scan, ow_end *end)
{
    static const char *const SIDES[] = {"stud", "eye"};
    end->form = OW_FORM_BANJO;
    end->seat = OW_SEAT_NONE;
    ow_status status = read_um(scan, 1, end);
    if (status != OW_OK)
        return status;
    size_t word = behind_size(scan, 1);
    if (ow_end_word_is(scan, word, "stud"))
        end->gender = OW_MALE;
    else if (ow_end_word_is(scan, word, "eye"))
        end->gender = OW_FEMALE;
    else {
        const char *near = word < scan->word_count ? ow_words_nearest(ow_end_word_at(scan, word),
                                                                      scan->words[word].length, SIDES, 2)
                                                   : NULL;
        char mend[32] = "";
        if (near)
            (void)snprintf(mend, sizeof mend, "write %s", near);
        return ow_end_fault_word(scan, word, "stud (of the bolt) or eye", mend,
                                 "a banjo has a stud or an eye");
    }
    return no_more(scan, word + 1);
}

/* A name in the trade's words: letters, digits and hyphens, at most 31 bytes, a letter first. */
static ow_status read_name(const ow_end_scan *scan, size_t word, const char *what, ow_end *end)
{
    if (word >= scan->word_count)
        return ow_end_fault_word(scan, word, what, "", "%s is missing", what);
    const char *name = ow_end_word_at(scan, word);
    size_t length = scan->words[word].length;
    bool good = length < OW_END_NAME_SIZE && name[0] >= 'a' && name[0] <= 'z';
    for (size_t i = 0; good && i < length; i++)
        good = (name[i] >= 'a' && name[i] <= 'z') || (name[i] >= '0' && name[i] <= '9') || name[i] == '-';
    if (!good)
        return ow_end_fault_word(scan, word, "a word of letters, digits and hyphens, up to 31", "",
                                 "this cannot be %s", what);
    memcpy(end->name, name, length);
    return OW_OK;
}

static ow_status read_flange(const ow_end_scan *scan, ow_end *end)
{
    end->form = OW_FORM_FLANGE;
    ow_status status = read_name(scan, 1, "the name of a bolt pattern", end);
    return status == OW_OK ? no_more(scan, 2) : status;
}

/* Hose liners of the trade. Others are read too, unless they look like one of these misspelled. */
static const char *const CLASSES[] = {"ptfe",          "rubber", "nitrile", "silicone",     "fluoro-silicone",
                                      "fluoro-rubber", "epdm",   "nylon",   "thermoplastic"};

static ow_status read_class(const ow_end_scan *scan, size_t word, ow_end *end)
{
    ow_status status = read_name(scan, word, "the class of a hose", end);
    if (status != OW_OK)
        return status;
    const char *near =
        ow_words_nearest(end->name, strlen(end->name), CLASSES, sizeof CLASSES / sizeof CLASSES[0]);
    if (near && strcmp(near, end->name) != 0) {
        char mend[64];
        (void)snprintf(mend, sizeof mend, "write %s", near);
        return ow_end_fault_word(scan, word, "a class such as ptfe, rubber, silicone or fluoro-silicone",
                                 mend, "\"%s\" is no class of hose known", end->name);
    }
    return OW_OK;
}

static ow_status read_hose(const ow_end_scan *scan, ow_end *end)
{
    end->form = OW_FORM_HOSE;
    ow_status status = OW_OK;
    if (scan->word_count > 1 && ow_end_read_dash(scan, 1, &end->size))
        end->size_unit = OW_SIZE_DASH;
    else
        status = read_um(scan, 1, end);
    size_t word = behind_size(scan, 1);
    if (status == OW_OK)
        status = read_class(scan, word, end);
    if (status != OW_OK)
        return status;
    if (ow_end_word_is(scan, ++word, "tail")) {
        end->form = OW_FORM_TAIL;
        word++;
    }
    return no_more(scan, word);
}

static const opening OPENINGS[] = {
    {"banjo", read_banjo}, {"hose", read_hose},     {"barb", read_barb}, {"bead", read_bead},
    {"tube", read_tube},   {"flange", read_flange}, {"weld", read_weld},
};
#define OPENING_COUNT (sizeof OPENINGS / sizeof OPENINGS[0])

static ow_status read_dash(const ow_end_scan *scan, ow_end *end)
{
    int32_t dash;
    if (!ow_end_read_dash(scan, 0, &dash))
        return ow_end_fault_word(scan, 0, "a dash size, such as -4", "", "\"%.*s\" is no dash size",
                                 (int)scan->words[0].length, ow_end_word_at(scan, 0));
    ow_end_options options;
    ow_status status = ow_end_read_options(scan, 1, &options);
    return status == OW_OK ? ow_end_settle_size(scan, OW_FORM_DASH, OW_SIZE_DASH, dash, &options, end)
                           : status;
}

/* Whether a tube size opens the end: a bare size, and a flare that goes by tube further on. */
static bool is_tube_nut(const ow_end_scan *scan, ow_size_unit *unit, int32_t *size)
{
    bool flare = false;
    for (size_t word = 1; word < scan->word_count; word++)
        flare = flare || ow_end_word_is(scan, word, "flare45") || ow_end_word_is(scan, word, "convex") ||
                ow_end_word_is(scan, word, "flare45-inverted");
    if (!flare)
        return false;
    bool convex = false;
    for (size_t word = 1; word < scan->word_count; word++)
        convex = convex || ow_end_word_is(scan, word, "convex");
    *unit = convex ? OW_SIZE_UM : OW_SIZE_INCH_64;
    return convex ? ow_end_read_um(scan, 0, size) : ow_end_read_inch_64(scan, 0, size);
}

static ow_status read_tube_nut(const ow_end_scan *scan, ow_size_unit unit, int32_t size, ow_end *end)
{
    ow_end_options options;
    ow_status status = ow_end_read_options(scan, unit == OW_SIZE_UM ? behind_size(scan, 0) : 1, &options);
    return status == OW_OK ? ow_end_settle_size(scan, OW_FORM_TUBE_NUT, unit, size, &options, end) : status;
}

static ow_status unknown_size(const ow_end_scan *scan)
{
    const char *known[OPENING_COUNT];
    for (size_t i = 0; i < OPENING_COUNT; i++)
        known[i] = OPENINGS[i].word;
    int length = (int)scan->words[0].length;
    const char *typed = ow_end_word_at(scan, 0);
    const char *near = ow_words_nearest(typed, (size_t)length, known, OPENING_COUNT);
    char mend[128];
    ow_end_size_hint(scan, mend, sizeof mend);
    if (near && mend[0] == '\0')
        (void)snprintf(mend, sizeof mend, "write %s", near);
    return ow_end_fault_word(scan, 0,
                             "a thread (M12x1.5, 7/16-20 UNF, 1/8 NPT, G1/4, R1/8), a dash (-4), a tube with "
                             "its flare (3/16 flare45), or banjo, hose, barb, bead, tube, flange, weld",
                             mend, "\"%.*s\" is no size of an end", length, typed);
}

/* A thread that the trade has and the tables have not. */
static ow_status other_thread(const ow_end_scan *scan, const ow_thread_other *other, size_t start,
                              size_t length)
{
    return ow_end_fault_at(scan, start, length, "a thread such as M12x1.5, 7/16-20 UNF, 1/8 NPT, G1/4, R1/8",
                           other->mend, "%s", other->what);
}

static ow_status read_thread(const ow_end_scan *scan, ow_end *end)
{
    ow_thread thread;
    size_t used = 0, start, length;
    const ow_thread_other *other = ow_thread_other_of(scan->plain, &start, &length);
    if (other)
        return other_thread(scan, other, start, length);
    if (ow_thread_read(scan->plain, &thread, &used) != OW_OK || used == 0 || used > scan->length ||
        (scan->plain[used] != ' ' && scan->plain[used] != '\0'))
        return unknown_size(scan);
    size_t first = 0;
    while (first < scan->word_count && scan->words[first].start < used)
        first++;
    const char *bspt = strstr(scan->plain, "bspt");
    ow_end_options options;
    ow_status status = ow_end_read_options(scan, first, &options);
    if (status != OW_OK)
        return status;
    return ow_end_settle_thread(scan, &thread, bspt && (size_t)(bspt - scan->plain) < used, &options, end);
}

static ow_status read_plain(const ow_end_scan *scan, ow_end *end)
{
    for (size_t i = 0; i < OPENING_COUNT; i++)
        if (ow_end_word_is(scan, 0, OPENINGS[i].word))
            return OPENINGS[i].read(scan, end);
    ow_size_unit unit;
    int32_t size;
    if (scan->plain[0] == '-')
        return read_dash(scan, end);
    if (is_tube_nut(scan, &unit, &size))
        return read_tube_nut(scan, unit, size, end);
    return read_thread(scan, end);
}

ow_status ow_end_read(const char *words, ow_end *end, ow_end_fault *fault)
{
    ow_end_scan scan = {.fault = fault};
    ow_end read = {0};
    ow_status status = ow_end_scan_words(words, &scan);
    if (status == OW_OK)
        status = read_plain(&scan, &read);
    if (status == OW_OK)
        *end = read;
    return status;
}
