/* SPDX-License-Identifier: MIT */
/* Turns the words of a screwed end into an end, and refuses those that no fitting has. */
#include <string.h>

#include "base/format.h"
#include "ends/options.h"
#include "ends/sizes.h"

static bool is_parallel(ow_thread_family family)
{
    return family == OW_THREAD_METRIC || family == OW_THREAD_UNIFIED || family == OW_THREAD_G;
}

/* NPT, NPTF, R, Rc, Rp: the seat is the thread's own flanks and need not be said. */
static ow_status settle_pipe(const ow_end_scan *scan, const ow_end_options *options, bool said_bspt,
                             ow_end *end)
{
    ow_thread_family *family = &end->thread.family;
    bool female = options->gender == OW_FEMALE;
    if (options->seat != OW_SEAT_NONE && options->seat != OW_SEAT_TAPER)
        return ow_end_fault_word(scan, options->seat_word, "no seat, or taper",
                                 "leave the seat out, or name a parallel thread",
                                 "this pipe thread seals on its flanks");
    if (*family == OW_THREAD_R && female && said_bspt)
        *family = OW_THREAD_RC;
    else if (*family == OW_THREAD_R && female)
        return ow_end_fault_word(scan, 0, "R male, Rc female (taper) or Rp female (parallel)",
                                 "write Rc, or Rp for a parallel hole", "R is the male thread of ISO 7-1");
    else if ((*family == OW_THREAD_RC || *family == OW_THREAD_RP) && !female)
        return ow_end_fault_word(scan, 0, "R male, Rc female (taper) or Rp female (parallel)",
                                 "write R for the male thread", "Rc and Rp are female threads of ISO 7-1");
    end->seat = OW_SEAT_TAPER;
    return OW_OK;
}

static ow_status settle_npsm(const ow_end_scan *scan, const ow_end_options *options, ow_end *end)
{
    if (options->seat != OW_SEAT_NONE)
        return ow_end_fault_word(scan, options->seat_word, "no seat", "leave the seat out",
                                 "an NPSM swivel has its own seat of 30 degrees");
    if (options->gender != OW_FEMALE || !options->swivel)
        return ow_end_fault_word(scan, scan->word_count, "NPSM female swivel", "write female swivel",
                                 "NPSM is the thread of a female swivel nut");
    end->seat = OW_SEAT_NPSM;
    return OW_OK;
}

/* A unified thread with a seat that goes by dash or tube becomes that form: one kind, one text. */
static ow_status settle_as_size(const ow_end_scan *scan, const ow_end_options *options, ow_end *end)
{
    const ow_seat_size *row = ow_seat_size_on(options->seat, &end->thread);
    if (!row)
        return ow_end_fault_word(scan, options->seat_word, "a thread that this seat is made on", "",
                                 "no %s end has this thread", ow_seat_word(options->seat));
    end->form = row->unit == OW_SIZE_DASH ? OW_FORM_DASH : OW_FORM_TUBE_NUT;
    end->size_unit = row->unit;
    end->size = row->size;
    end->thread = (ow_thread){0};
    return OW_OK;
}

static ow_status settle_cone24(const ow_end_scan *scan, const ow_end_options *options, ow_end *end)
{
    if (options->series_word == OW_WORD_NONE)
        return OW_OK;
    const ow_cone_series *series = ow_cone_series_find(options->series);
    if (!series)
        return ow_end_fault_word(scan, options->series_word,
                                 "6L 8L 10L 12L 15L 18L 22L 28L, 6S 8S 10S 12S 14S 16S 20S or 25S", "",
                                 "%s is no series of ISO 8434-1", options->series);
    if (end->thread.size != series->thread.size ||
        (end->thread.pitch != 0 && end->thread.pitch != series->thread.pitch)) {
        char mend[64];
        (void)ow_format_to(mend, sizeof mend, "write M%dx%g", (int)(series->thread.size / 1000),
                           series->thread.pitch / 1000.0);
        return ow_end_fault_word(scan, options->series_word, "the series of this thread", mend,
                                 "series %s has another thread", options->series);
    }
    end->thread = series->thread;
    memcpy(end->name, options->series, sizeof options->series);
    return OW_OK;
}

static ow_status wrong_seat(const ow_end_scan *scan, const ow_end_options *options, const char *mend)
{
    return ow_end_fault_word(scan, options->seat_word, "a seat that this thread is made with", mend,
                             "%s does not go with this thread", ow_seat_word(options->seat));
}

/* Stud seats: what carries a ring or a hollow bolt is male; the hole for it is `female washer`. */
static ow_status settle_stud(const ow_end_scan *scan, const ow_end_options *options)
{
    if (options->gender == OW_FEMALE)
        return ow_end_fault_word(scan, options->seat_word, "washer", "write female washer",
                                 "%s is said of a male end; its port is a washer face",
                                 ow_seat_word(options->seat));
    return OW_OK;
}

static ow_status settle_taper(const ow_end_scan *scan, const ow_end_options *options, ow_end *end)
{
    if (end->thread.family != OW_THREAD_METRIC)
        return wrong_seat(scan, options, end->thread.family == OW_THREAD_G ? "write R, Rc or Rp for G" : "");
    if (options->gender == OW_FEMALE)
        return ow_end_fault_word(scan, options->seat_word, "washer", "write female washer",
                                 "a metric taper male (DIN 158) goes into a parallel hole");
    end->thread.family = OW_THREAD_METRIC_TAPER;
    return OW_OK;
}

static ow_status settle_parallel(const ow_end_scan *scan, const ow_end_options *options, ow_end *end)
{
    ow_thread_family family = end->thread.family;
    end->seat = options->seat == OW_SEAT_NONE ? OW_SEAT_UNKNOWN : options->seat;
    switch (options->seat) {
    case OW_SEAT_NONE:
    case OW_SEAT_WASHER:
        return OW_OK;
    case OW_SEAT_WASHER_CAPTIVE:
    case OW_SEAT_BANJO:
        return settle_stud(scan, options);
    case OW_SEAT_TAPER:
        return settle_taper(scan, options, end);
    case OW_SEAT_CONE60:
    case OW_SEAT_FLARE30:
        return family != OW_THREAD_UNIFIED ? OW_OK : wrong_seat(scan, options, "");
    case OW_SEAT_CONE24:
        return family == OW_THREAD_METRIC ? settle_cone24(scan, options, end) : wrong_seat(scan, options, "");
    case OW_SEAT_O_RING:
        if (family == OW_THREAD_METRIC && ow_is_o_ring_port(&end->thread))
            return OW_OK;
        if (family == OW_THREAD_G)
            return wrong_seat(scan, options, "write washer, or washer-captive for a stud with its own ring");
        return settle_as_size(scan, options, end);
    case OW_SEAT_FACE_O_RING:
    case OW_SEAT_FLARE37:
    case OW_SEAT_FLARE45:
    case OW_SEAT_FLARE45_INVERTED:
        return settle_as_size(scan, options, end);
    case OW_SEAT_CONVEX:
        return wrong_seat(scan, options, "name the tube: 4.75 convex male");
    case OW_SEAT_UNKNOWN:
    case OW_SEAT_NPSM:
    case OW_SEAT_COUNT:
        break;
    }
    return wrong_seat(scan, options, "");
}

ow_status ow_end_settle_thread(const ow_end_scan *scan, const ow_thread *thread, bool said_bspt,
                               const ow_end_options *options, ow_end *end)
{
    *end = (ow_end){
        .form = OW_FORM_THREAD, .gender = options->gender, .swivel = options->swivel, .thread = *thread};
    if (options->series_word != OW_WORD_NONE && options->seat != OW_SEAT_CONE24)
        return ow_end_fault_word(scan, options->series_word, "cone24 before the series", "write cone24",
                                 "a series belongs to a 24 degree cone");
    if (is_parallel(thread->family))
        return settle_parallel(scan, options, end);
    if (thread->family == OW_THREAD_NPSM)
        return settle_npsm(scan, options, end);
    if (thread->family == OW_THREAD_METRIC_TAPER) {
        if (options->seat != OW_SEAT_NONE && options->seat != OW_SEAT_TAPER)
            return wrong_seat(scan, options, "leave it out: a taper thread seals on its flanks");
        end->thread.family = OW_THREAD_METRIC;
        end->seat = OW_SEAT_TAPER;
        return settle_taper(scan, options, end);
    }
    return settle_pipe(scan, options, said_bspt, end);
}

/* The sizes that a seat is made in, in words. */
static void write_sizes(ow_seat seat, char *words, size_t room)
{
    const ow_seat_size *row;
    size_t at = 0;
    words[0] = '\0';
    for (size_t i = 0; (row = ow_seat_size_at(i)) && at + 1 < room; i++) {
        if (row->seat != seat)
            continue;
        const char *gap = at > 0 ? " " : "";
        int32_t above = row->size, below = 64;
        while (above % 2 == 0 && below > 1)
            above /= 2, below /= 2;
        int used = row->unit == OW_SIZE_DASH
                       ? ow_format_to(words + at, room - at, "%s-%d", gap, (int)row->size)
                   : row->unit == OW_SIZE_UM
                       ? ow_format_to(words + at, room - at, "%s%g", gap, row->size / 1000.0)
                       : ow_format_to(words + at, room - at, "%s%d/%d", gap, (int)above, (int)below);
        at += used > 0 ? (size_t)used : 0;
    }
}

/* Whether sizes of this seat are named by dash, or by tube. */
static bool goes_by(ow_form form, ow_seat seat)
{
    if (form == OW_FORM_DASH)
        return seat == OW_SEAT_FLARE37 || seat == OW_SEAT_O_RING || seat == OW_SEAT_FACE_O_RING;
    return seat == OW_SEAT_FLARE45 || seat == OW_SEAT_FLARE45_INVERTED || seat == OW_SEAT_CONVEX;
}

ow_status ow_end_settle_size(const ow_end_scan *scan, ow_form form, ow_size_unit unit, int32_t size,
                             const ow_end_options *options, ow_end *end)
{
    ow_seat seat = options->seat;
    if (options->series_word != OW_WORD_NONE)
        return ow_end_fault_word(scan, options->series_word, "no series", "leave it out",
                                 "a series belongs to a 24 degree cone");
    if (!goes_by(form, seat)) {
        const char *expected =
            form == OW_FORM_DASH ? "flare37, o-ring or face-o-ring" : "flare45, flare45-inverted or convex";
        if (seat == OW_SEAT_NONE)
            return ow_end_fault_word(scan, scan->word_count, expected, "", "the seat is missing");
        return ow_end_fault_word(scan, options->seat_word, expected, "name the thread instead",
                                 "%s does not go by %s", ow_seat_word(seat),
                                 form == OW_FORM_DASH ? "dash" : "tube");
    }
    if (!ow_seat_size_find(seat, unit, size)) {
        char sizes[sizeof scan->fault->expected];
        write_sizes(seat, sizes, sizeof sizes);
        return ow_end_fault_word(scan, 0, sizes, "", "%s is not made in this size", ow_seat_word(seat));
    }
    *end = (ow_end){.form = form,
                    .gender = options->gender,
                    .seat = seat,
                    .swivel = options->swivel,
                    .size_unit = unit,
                    .size = size};
    return OW_OK;
}
