/* SPDX-License-Identifier: MIT */
/* Which measurement tells readings apart: the pitch first, then the look of the seat. */
#include "ask/ask_internal.h"

/* How a fitter knows each seat at sight, on a male and in a female end: common practice. */
static const char *const seat_marks[OW_SEAT_COUNT][2] = {
    [OW_SEAT_NONE] = {"no seat", "no seat"},
    [OW_SEAT_UNKNOWN] = {"not looked at yet", "not looked at yet"},
    [OW_SEAT_TAPER] = {"a thread that tapers: a caliper shows its front thinner than its back",
                       "no face and no cone: the thread itself seals"},
    [OW_SEAT_WASHER] = {"a flat, square shoulder above a parallel thread",
                        "a flat, square face around a parallel thread"},
    [OW_SEAT_WASHER_CAPTIVE] = {"a ring held in a groove under the hexagon", "a flat, square face"},
    [OW_SEAT_BANJO] = {"a hollow bolt with cross-holes", "a flat, square face"},
    [OW_SEAT_O_RING] = {"an O-ring in a relief behind the thread",
                        "a tapered recess at the mouth of the port"},
    [OW_SEAT_FACE_O_RING] = {"an O-ring in a groove on the flat front face", "a flat sleeve inside the nut"},
    [OW_SEAT_CONE24] = {"a slim inner cone at the mouth, 12 degrees a side",
                        "a slim nose or a cutting ring inside the nut"},
    [OW_SEAT_CONE60] = {"a wide inner cone, 30 degrees a side", "a nose of 30 degrees a side inside the nut"},
    [OW_SEAT_FLARE30] = {"a raised cone, 30 degrees a side", "a flare of 30 degrees a side inside the nut"},
    [OW_SEAT_NPSM] = {"a 30 degree chamfer in the mouth of a taper thread",
                      "a straight pipe thread in a loose nut with a 30 degree nose"},
    [OW_SEAT_FLARE37] = {"a raised cone, 37 degrees a side", "a flare of 37 degrees a side inside the nut"},
    [OW_SEAT_FLARE45] = {"a raised cone, 45 degrees a side", "a flare of 45 degrees a side inside the nut"},
    [OW_SEAT_FLARE45_INVERTED] = {"a loose nut behind a double-flared tube",
                                  "a cone standing at the bottom of the hole"},
    [OW_SEAT_CONVEX] = {"a loose nut behind a bubble-flared tube",
                        "a plain drilled bottom, for a bubble-flared tube"},
};

const char *ow_seat_mark(const ow_end *end)
{
    return (unsigned)end->seat < OW_SEAT_COUNT ? seat_marks[end->seat][end->gender == OW_FEMALE] : "";
}

static bool thread_of(const ow_end *end, ow_thread *thread)
{
    return ow_end_thread(end, thread) && thread->pitch != 0;
}

/* A taper one of the same size and pitch reads alike over ten threads. */
static ow_thread_family pitch_family(const ow_thread *thread)
{
    return thread->family == OW_THREAD_METRIC_TAPER ? OW_THREAD_METRIC : thread->family;
}

static bool pitch_seen(const ow_end *readings, size_t before, const ow_thread *thread)
{
    ow_thread other;
    for (size_t index = 0; index < before; index++) {
        if (thread_of(&readings[index], &other) && pitch_family(&other) == pitch_family(thread) &&
            other.pitch == thread->pitch && other.size == thread->size)
            return true;
    }
    return false;
}

/* "over ten threads …" for each different pitch; how many there are. */
static size_t write_pitches(ow_text *text, const ow_end *readings, size_t count)
{
    size_t pitches = 0;
    for (size_t index = 0; index < count; index++) {
        ow_thread thread;
        if (!thread_of(&readings[index], &thread) || pitch_seen(readings, index, &thread))
            continue;
        ow_text_add(text, pitches++ > 0 ? ", " : "the pitch: over ten threads ");
        ow_quantity_write(text, OW_LENGTH, 10.0 * ow_thread_pitch_m(&thread), 1);
        ow_text_add(text, " is ");
        ow_thread_write(text, &thread);
    }
    return pitches;
}

static void write_seats(ow_text *text, const ow_end *readings, size_t count)
{
    size_t written = 0;
    for (size_t index = 0; index < count; index++) {
        bool seen = false;
        for (size_t before = 0; before < index && !seen; before++)
            seen = readings[before].seat == readings[index].seat;
        if (seen)
            continue;
        char words[OW_END_TEXT_SIZE];
        ow_text_format(text, "%s%s is %s",
                       written++ > 0 ? "; " : "the seat: ", ow_seat_mark(&readings[index]),
                       ow_end_name(&readings[index], words));
    }
}

static bool seats_differ(const ow_end *readings, size_t count)
{
    for (size_t index = 1; index < count; index++) {
        if (readings[index].seat != readings[0].seat)
            return true;
    }
    return false;
}

const char *ow_readings_decide(ow_asking *asking, const ow_end *readings, size_t count)
{
    ow_text pitches = ow_text_new(asking->context);
    ow_text text = ow_text_new(asking->context);
    size_t pitch_count = write_pitches(&pitches, readings, count);
    if (pitch_count > 1)
        ow_text_add(&text, ow_text_words(&pitches));
    if (seats_differ(readings, count)) {
        ow_text_add(&text, text.length > 0 ? "; then " : "");
        write_seats(&text, readings, count);
    }
    ow_text_done_into(&pitches, &text);
    return ow_arena_keep(&asking->arena, &text);
}
