/* SPDX-License-Identifier: MIT */
/* What is said of a candidate, and of the measurement that decides. */
#include <math.h>
#include <string.h>

#include "threads/caliper_internal.h"
#include "threads/say.h"

#define MM(metres) ((metres)*1e3)
#define ANSWERS_MAX 6 /* candidates whose answers are spelled out */
#define ANSWER_SIZE 48
#define PLACE_LIKELIHOOD 0.01

/* What a reading outside the limits speaks of: nothing while the instrument's error covers it. */
static const char *outside_reason(const ow_suspect *suspect, double below, double above, double accuracy_m)
{
    bool male = suspect->size.male;
    ow_thread_size close;
    if (above > 0 && ow_caliper_close_class(&suspect->size, &close) &&
        above <= close.major.most_m - suspect->crest.most_m + 1e-6)
        return close.thread.family == OW_THREAD_METRIC ? ", as class 6h may" : ", as class 3A may";
    if (below <= accuracy_m && above <= accuracy_m)
        return "";
    bool worn = male ? below > 0 : above > 0;
    if (suspect->size.taper > 0)
        return worn ? ", the jaws astray or it is worn" : ", the jaws astray";
    if (worn)
        return ", worn or misread";
    return ", burred, plated or misread";
}

void ow_caliper_write_why(const ow_caliper_ask *ask, const ow_suspect *suspect, ow_candidate *candidate)
{
    const ow_size_limits *crest = &suspect->crest;
    char where[80], pitch[64] = "";
    double below = crest->least_m - ask->diameter_m, above = ask->diameter_m - crest->most_m;
    if (below > 5e-6)
        ow_say(where, sizeof where, "read %.2f mm below%s", MM(below),
               outside_reason(suspect, below, above, ask->accuracy_m));
    else if (above > 5e-6)
        ow_say(where, sizeof where, "read %.2f mm above%s", MM(above),
               outside_reason(suspect, below, above, ask->accuracy_m));
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

static bool write_mate_answer(char *words, const ow_suspect *suspect)
{
    ow_thread_size mate;
    if (!ow_caliper_mate(suspect, &mate))
        return false;
    ow_size_limits crest = ow_thread_crest_at(&mate, ow_caliper_place_m(&mate));
    ow_say(words, ANSWER_SIZE, "%.2f to %.2f mm", MM(crest.least_m), MM(crest.most_m));
    return true;
}

/* The answer that a candidate would give to a measurement, in words; false if it has none to give. */
static bool write_answer(char *words, ow_measure measure, const ow_suspect *suspect)
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
        ow_say(words, ANSWER_SIZE, "%g tpi (%.3f mm)", round(tpi * 2) / 2, MM(size->pitch_m));
    else if (measure == OW_MEASURE_PITCH)
        ow_say(words, ANSWER_SIZE, "%.3g mm (%.1f tpi)", MM(size->pitch_m), tpi);
    else if (measure == OW_MEASURE_TAPER)
        ow_say(words, ANSWER_SIZE, "%s", size->taper > 0 ? "0.5 mm more" : "the same");
    else if (measure == OW_MEASURE_SEAT)
        ow_say(words, ANSWER_SIZE, "%s", looks[size->thread.family]);
    else if (measure == OW_MEASURE_FLANK_ANGLE)
        ow_say(words, ANSWER_SIZE, "%s", size->flank_angle_rad > 0.5 ? "60 degrees" : "55 degrees");
    else if (measure == OW_MEASURE_FINER)
        ow_say(words, ANSWER_SIZE, "%.2f to %.2f mm", MM(suspect->crest.least_m), MM(suspect->crest.most_m));
    else
        return write_mate_answer(words, suspect);
    return true;
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

/* "20 tpi (1.270 mm) is A or B; 1 mm (25.4 tpi) is C": candidates of one answer stand together. */
static void write_answers(ow_text *text, const ow_suspect *suspects, size_t count, ow_measure measure)
{
    char answers[ANSWERS_MAX][ANSWER_SIZE] = {{0}};
    size_t spelled = count < ANSWERS_MAX ? count : ANSWERS_MAX;
    bool written = false;
    for (size_t i = 0; i < spelled; i++)
        if (!write_answer(answers[i], measure, &suspects[i]))
            answers[i][0] = '\0';
    for (size_t i = 0; i < spelled; i++) {
        if (answers[i][0] == '\0')
            continue;
        ow_text_format(text, "%s%s is ", written ? "; " : ": ", answers[i]);
        ow_thread_write(text, &suspects[i].size.thread);
        written = true;
        for (size_t k = i + 1; k < spelled; k++)
            if (strcmp(answers[k], answers[i]) == 0) {
                ow_text_add(text, " or ");
                ow_thread_write(text, &suspects[k].size.thread);
                answers[k][0] = '\0';
            }
    }
}

/* Where the jaws belong on what may be a taper male. */
void ow_caliper_write_place(const ow_context *context, const ow_suspect *suspects, size_t count,
                            ow_caliper_answer *answer)
{
    ow_text text = ow_text_new(context);
    for (size_t i = 0; i < count; i++) {
        const ow_suspect *suspect = &suspects[i];
        if (suspect->size.taper <= 0 || !suspect->size.male || suspect->likelihood < PLACE_LIKELIHOOD)
            continue;
        ow_text_format(&text, "%s%.1f mm if it is ",
                       text.length ? ", " : "from the small end: ", MM(ow_caliper_place_m(&suspect->size)));
        ow_thread_write(&text, &suspect->size.thread);
    }
    if (ow_text_status(&text) == OW_OK && text.length > 0)
        ow_say(answer->place, sizeof answer->place, "%s", ow_text_words(&text));
    ow_text_done(&text);
}

/* A failed allocation leaves the plain instruction. */
void ow_caliper_write_how(const ow_context *context, const ow_suspect *suspects, size_t count,
                          ow_caliper_answer *answer)
{
    ow_text text = ow_text_new(context);
    const char *plain =
        answer->decide == OW_MEASURE_NONE && count > 1
            ? "No measurement tells the rest apart: screw a known part on by hand; it must run "
              "freely without force, and without rocking"
            : instruction(answer->decide, suspects[0].size.male);
    ow_text_add(&text, plain);
    if (answer->decide != OW_MEASURE_NONE)
        write_answers(&text, suspects, count, answer->decide);
    ow_text_char(&text, '.');
    ow_say(answer->how, sizeof answer->how, "%s",
           ow_text_status(&text) == OW_OK ? ow_text_words(&text) : plain);
    ow_text_done(&text);
}
