/* SPDX-License-Identifier: MIT */
/* What is said of a candidate, and of the measurement that decides. */
#include <math.h>
#include <string.h>

#include "threads/caliper_internal.h"
#include "threads/say.h"

#define MM(metres) ((metres)*1e3)
#define ANSWERS_MAX 4 /* candidates whose answers are spelled out */

void ow_caliper_write_why(const ow_caliper_ask *ask, const ow_suspect *suspect, ow_candidate *candidate)
{
    const ow_size_limits *crest = &suspect->crest;
    char where[48], pitch[64] = "";
    double below = crest->least_m - ask->diameter_m, above = ask->diameter_m - crest->most_m;
    if (below > 5e-6)
        ow_say(where, sizeof where, "read %.2f mm below", MM(below));
    else if (above > 5e-6)
        ow_say(where, sizeof where, "read %.2f mm above", MM(above));
    else
        ow_say(where, sizeof where, "read inside");
    if (ask->pitch_m > 0) {
        double off = (ask->pitch_m / suspect->size.pitch_m - 1) * 100;
        if (fabs(off) < 0.2)
            ow_say(pitch, sizeof pitch, "; pitch %.3f mm as read", MM(suspect->size.pitch_m));
        else
            ow_say(pitch, sizeof pitch, "; pitch %.3f mm, read %.1f %% off", MM(suspect->size.pitch_m),
                   fabs(off));
    }
    ow_say(candidate->why, sizeof candidate->why, "%s%s %.2f to %.2f mm%s: %s%s",
           suspect->size.male ? "male, over the crests" : "female, across the bore",
           suspect->size.taper > 0 ? (suspect->size.male ? " at hand-tight length" : " at the mouth") : "",
           MM(crest->least_m), MM(crest->most_m), suspect->size.class_name[0] ? " by its class" : "", where,
           pitch);
}

/* The answer that a candidate would give to a measurement, in words; false if it has none to give. */
static bool write_answer(ow_text *text, ow_measure measure, const ow_suspect *suspect)
{
    static const char *const looks[OW_THREAD_FAMILY_COUNT] = {"flat face, ring or 24 degree cone",
                                                              "no seat",
                                                              "flare nose or O-ring face",
                                                              "no seat",
                                                              "no seat",
                                                              "30 degree cone",
                                                              "no seat",
                                                              "no seat",
                                                              "no seat",
                                                              "flat face or 60 degree cone"};
    const ow_thread_size *size = &suspect->size;
    double tpi = 25.4e-3 / size->pitch_m;
    if (measure == OW_MEASURE_PITCH && ow_thread_is_inch(size->thread.family))
        ow_text_format(text, "%g tpi (%.3f mm)", round(tpi * 2) / 2, MM(size->pitch_m));
    else if (measure == OW_MEASURE_PITCH)
        ow_text_format(text, "%.3g mm (%.1f tpi)", MM(size->pitch_m), tpi);
    else if (measure == OW_MEASURE_TAPER)
        ow_text_add(text, size->taper > 0 ? "0.5 mm more" : "the same");
    else if (measure == OW_MEASURE_SEAT)
        ow_text_add(text, looks[size->thread.family]);
    else if (measure == OW_MEASURE_FLANK_ANGLE)
        ow_text_add(text, size->flank_angle_rad > 0.5 ? "60 degrees" : "55 degrees");
    else if (measure == OW_MEASURE_FINER)
        ow_text_format(text, "%.2f to %.2f mm", MM(suspect->crest.least_m), MM(suspect->crest.most_m));
    else
        return false;
    return true;
}

static void write_mate_answer(ow_text *text, const ow_suspect *suspect)
{
    ow_thread thread = suspect->size.thread;
    ow_thread_size mate;
    if (thread.family == OW_THREAD_R)
        thread.family = OW_THREAD_RC;
    else if (thread.family == OW_THREAD_RC || thread.family == OW_THREAD_RP)
        thread.family = OW_THREAD_R;
    else if (thread.family == OW_THREAD_METRIC_TAPER)
        thread.family = OW_THREAD_METRIC;
    if (ow_thread_size_of(&thread, !suspect->size.male, OW_CLASS_USUAL, &mate) != OW_OK)
        return;
    ow_size_limits crest = ow_thread_crest_at(&mate, ow_caliper_place_m(&mate));
    ow_text_format(text, "%.2f to %.2f mm", MM(crest.least_m), MM(crest.most_m));
}

static const char *instruction(ow_measure measure, bool male)
{
    static const char *const both[OW_MEASURE_COUNT] = {
        [OW_MEASURE_PITCH] =
            "Lay a pitch gauge on the thread, or count threads over 10 mm (a rule on the crests, or an "
            "impression of a hole in wax)",
        [OW_MEASURE_SEAT] = "Look at the end and the face for how it seals",
        [OW_MEASURE_FLANK_ANGLE] =
            "Hold 55 and 60 degree gauge leaves of that pitch into the thread against the light",
        [OW_MEASURE_FINER] =
            "Measure the same diameter again to 0.01 mm, with a micrometer or as the mean of five readings",
        [OW_MEASURE_NONE] =
            "Nothing known is left to tell apart: screw a known part on by hand; it must run freely without "
            "force, and without rocking",
    };
    if (measure == OW_MEASURE_TAPER)
        return male ? "Measure over the crests twice, 8 mm apart along the axis (short thread: 4 mm, and "
                      "expect half)"
                    : "Measure across the bore at the mouth and 8 mm deeper (short thread: 4 mm, and expect "
                      "half)";
    if (measure == OW_MEASURE_MATE)
        return male ? "Measure the bore of the hole that it came out of, across the crests at the mouth"
                    : "Measure the male that came out of it, over the crests";
    return both[measure];
}

static void write_answers(ow_text *text, const ow_suspect *suspects, size_t count, ow_measure measure)
{
    for (size_t i = 0; i < count && i < ANSWERS_MAX; i++) {
        ow_text_add(text, i ? "; " : ": ");
        if (!write_answer(text, measure, &suspects[i]))
            write_mate_answer(text, &suspects[i]);
        ow_text_add(text, " is ");
        ow_thread_write(text, &suspects[i].size.thread);
    }
}

/* A failed allocation leaves the plain instruction. */
void ow_caliper_write_how(const ow_context *context, const ow_suspect *suspects, size_t count,
                          ow_caliper_answer *answer)
{
    ow_text text = ow_text_new(context);
    const char *plain = instruction(answer->decide, suspects[0].size.male);
    ow_text_add(&text, plain);
    if (answer->decide != OW_MEASURE_NONE)
        write_answers(&text, suspects, count, answer->decide);
    ow_text_char(&text, '.');
    ow_say(answer->how, sizeof answer->how, "%s",
           ow_text_status(&text) == OW_OK ? ow_text_words(&text) : plain);
    ow_text_done(&text);
}
