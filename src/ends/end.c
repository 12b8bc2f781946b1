/* SPDX-License-Identifier: MIT */
#include "oilway/end.h"

#include <stdio.h>
#include <string.h>

#include "ends/options.h"
#include "ends/sizes.h"

static void write_um(ow_text *text, int32_t um)
{
    char words[24];
    int length = snprintf(words, sizeof words, "%d.%03d", (int)(um / 1000), (int)(um % 1000));
    while (length > 0 && words[length - 1] == '0')
        length--;
    if (length > 0 && words[length - 1] == '.')
        length--;
    ow_text_bytes(text, words, (size_t)length);
}

static void write_size(ow_text *text, const ow_end *end)
{
    int32_t above = end->size, below = 64;
    switch (end->size_unit) {
    case OW_SIZE_DASH:
        ow_text_format(text, "-%d", (int)end->size);
        break;
    case OW_SIZE_UM:
        write_um(text, end->size);
        break;
    case OW_SIZE_INCH_64:
        while (above % 2 == 0 && below > 1)
            above /= 2, below /= 2;
        if (below == 1)
            ow_text_format(text, "%d", (int)above);
        else
            ow_text_format(text, "%d/%d", (int)above, (int)below);
        break;
    case OW_SIZE_NONE:
        break;
    }
}

static void write_word(ow_text *text, const char *word)
{
    if (*word) {
        ow_text_char(text, ' ');
        ow_text_add(text, word);
    }
}

static const char *gender_word(const ow_end *end)
{
    return end->gender == OW_MALE ? "male" : "female";
}

/* A pipe thread and an NPSM swivel say their seat already; DIN 158 is a metric thread said to be taper. */
static void write_thread_end(ow_text *text, const ow_end *end)
{
    ow_thread thread = end->thread;
    bool metric_taper = thread.family == OW_THREAD_METRIC_TAPER;
    if (metric_taper)
        thread.family = OW_THREAD_METRIC;
    ow_thread_write(text, &thread);
    write_word(text, gender_word(end));
    if (end->seat != OW_SEAT_TAPER || metric_taper)
        write_word(text, ow_seat_word(end->seat));
    write_word(text, end->name);
}

void ow_end_write(ow_text *text, const ow_end *end)
{
    static const char *const FORM_WORDS[OW_FORM_COUNT] = {
        [OW_FORM_THREAD] = "",       [OW_FORM_DASH] = "",      [OW_FORM_TUBE_NUT] = "",
        [OW_FORM_BANJO] = "banjo ",  [OW_FORM_HOSE] = "hose ", [OW_FORM_TAIL] = "hose ",
        [OW_FORM_BARB] = "barb ",    [OW_FORM_BEAD] = "bead ", [OW_FORM_TUBE] = "tube ",
        [OW_FORM_FLANGE] = "flange", [OW_FORM_WELD] = "weld ",
    };
    ow_text_add(text, (unsigned)end->form < OW_FORM_COUNT ? FORM_WORDS[end->form] : "");
    write_size(text, end);
    if (end->form == OW_FORM_THREAD) {
        write_thread_end(text, end);
    } else if (end->form == OW_FORM_DASH || end->form == OW_FORM_TUBE_NUT) {
        write_word(text, ow_seat_word(end->seat));
        write_word(text, gender_word(end));
    } else if (end->form == OW_FORM_BANJO) {
        write_word(text, end->gender == OW_MALE ? "stud" : "eye");
    } else {
        write_word(text, end->name);
    }
    if (end->form == OW_FORM_TAIL)
        write_word(text, "tail");
    if (end->swivel)
        write_word(text, "swivel");
}

/* One block, lent from the caller's stack: enough for any end, so that naming one never allocates. */
typedef struct block {
    char bytes[1024];
} block;

static void *lend_block(void *user, void *old, size_t size)
{
    block *lent = (block *)user;
    (void)old;
    return size > 0 && size <= sizeof lent->bytes ? lent->bytes : NULL;
}

const char *ow_end_name(const ow_end *end, char *buffer)
{
    block lent;
    ow_context context = {.resize = lend_block, .resize_user = &lent};
    ow_text text = ow_text_new(&context);
    ow_end_write(&text, end);
    (void)snprintf(buffer, OW_END_TEXT_SIZE, "%s", ow_text_words(&text));
    return buffer;
}

bool ow_end_same(const ow_end *a, const ow_end *b)
{
    return a->form == b->form && a->gender == b->gender && a->seat == b->seat && a->swivel == b->swivel &&
           a->size_unit == b->size_unit && a->size == b->size && ow_thread_same(&a->thread, &b->thread) &&
           strcmp(a->name, b->name) == 0;
}

bool ow_end_is_whole(const ow_end *end)
{
    if (end->form != OW_FORM_THREAD)
        return true;
    return end->thread.pitch != 0 && end->seat != OW_SEAT_UNKNOWN &&
           (end->seat != OW_SEAT_CONE24 || end->name[0]);
}

bool ow_end_thread(const ow_end *end, ow_thread *thread)
{
    if (end->form == OW_FORM_THREAD) {
        *thread = end->thread;
        return true;
    }
    if (end->form != OW_FORM_DASH && end->form != OW_FORM_TUBE_NUT)
        return false;
    const ow_seat_size *row = ow_seat_size_find(end->seat, end->size_unit, end->size);
    if (!row)
        return false;
    *thread = row->thread;
    return true;
}

bool ow_end_turns(const ow_end *end)
{
    switch (end->form) {
    case OW_FORM_BANJO:
    case OW_FORM_BARB:
    case OW_FORM_BEAD:
    case OW_FORM_TUBE:
    case OW_FORM_FLANGE:
        return true;
    case OW_FORM_HOSE:
        return end->size_unit == OW_SIZE_UM;
    case OW_FORM_TUBE_NUT: /* the male is a loose nut behind the tube's flare */
        return end->swivel || (end->gender == OW_MALE && end->seat != OW_SEAT_FLARE45);
    case OW_FORM_THREAD:
    case OW_FORM_DASH:
        return end->swivel;
    case OW_FORM_TAIL:
    case OW_FORM_WELD:
    case OW_FORM_COUNT:
        break;
    }
    return false;
}

bool ow_end_clamps(const ow_end *end)
{
    return end->form == OW_FORM_BARB || end->form == OW_FORM_BEAD ||
           (end->form == OW_FORM_HOSE && end->size_unit == OW_SIZE_UM);
}
