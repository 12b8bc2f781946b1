/* SPDX-License-Identifier: MIT */
/* The reason for a verdict, with its figures. */
#include <math.h>

#include "threads/pair.h"
#include "threads/say.h"

#define MM(metres) ((metres)*1e3)
#define PERCENT(part) ((part)*100)

#define WORDS_SIZE 64

/* "1.2 to 2.7 turns", "less than half a turn", "3.0 turns", "at most 0.6 turns". */
static void write_turns(char *words, double least, double most)
{
    if (most < 0.5)
        ow_say(words, WORDS_SIZE, "less than half a turn");
    else if (most - least < 0.05)
        ow_say(words, WORDS_SIZE, "%.1f turns", most);
    else if (least < 0.05)
        ow_say(words, WORDS_SIZE, "at most %.1f turns", most);
    else
        ow_say(words, WORDS_SIZE, "%.1f to %.1f turns", least, most);
}

static void write_pitch(char *words, double difference_m)
{
    if (difference_m == 0)
        ow_say(words, WORDS_SIZE, "the pitches agree");
    else
        ow_say(words, WORDS_SIZE, "the male's pitch is %.3f mm too %s", fabs(MM(difference_m)),
               difference_m > 0 ? "coarse" : "fine");
}

/* What the pitch error, or the taper, uses up: the play between the pitch diameters. */
static void write_play(char *words, const ow_pairing *pairing)
{
    if (pairing->clearance_least_m > 0)
        ow_say(words, WORDS_SIZE, "%.2f to %.2f mm", MM(pairing->clearance_least_m),
               MM(pairing->clearance_most_m));
    else
        ow_say(words, WORDS_SIZE, "at most %.2f mm", MM(pairing->clearance_most_m));
}

static const char *leak_reason(const ow_pairing *pairing)
{
    if (pairing->angles_differ)
        return "55 against 60 degree flanks leave a spiral gap";
    if (pairing->female.family == OW_THREAD_G)
        return "ISO 7-1 wants Rp or Rc: a G hole may be too wide to wedge in time";
    if (pairing->tapers)
        return "a straight thread is not made to seal on its flanks";
    return "neither is made to seal on the other";
}

static void explain_home(ow_pairing *pairing, const char *turns)
{
    if (pairing->tapers)
        ow_say(pairing->why, sizeof pairing->why, "same thread: hand-tight after %s", turns);
    else
        ow_say(pairing->why, sizeof pairing->why,
               "same thread: goes home with %.3f to %.3f mm of play on the flanks",
               MM(fmax(pairing->clearance_least_m, 0)), MM(pairing->clearance_most_m));
}

static void explain_no_start(ow_pairing *pairing)
{
    if (pairing->gap_m > 0)
        ow_say(pairing->why, sizeof pairing->why,
               "drops in without touching: the male's crest is at least %.2f mm smaller than the bore",
               MM(pairing->gap_m));
    else
        ow_say(pairing->why, sizeof pairing->why,
               "will not start: at the loosest the male's pitch diameter is still %.3f mm too large",
               MM(-pairing->clearance_most_m));
}

void ow_pairing_explain(ow_pairing *pairing)
{
    char turns[WORDS_SIZE], pitch[WORDS_SIZE], play[WORDS_SIZE];
    write_turns(turns, pairing->turns_least, pairing->turns_most);
    write_pitch(pitch, pairing->pitch_difference_m);
    switch (pairing->fit) {
    case OW_FIT_HOME:
        explain_home(pairing, turns);
        break;
    case OW_FIT_LEAKS:
        ow_say(pairing->why, sizeof pairing->why, "%s: %s %s like the right part, but %s", pitch,
               pairing->tapers ? "wedges after" : "goes home after", turns, leak_reason(pairing));
        break;
    case OW_FIT_BINDS:
        write_play(play, pairing);
        ow_say(pairing->why, sizeof pairing->why,
               "%s, and the pitch diameters have %s of play: starts and jams after %s", pitch, play, turns);
        break;
    case OW_FIT_WEAK:
        ow_say(pairing->why, sizeof pairing->why,
               "%s: goes home%s, but only %.0f to %.0f %% of the flank holds and it strips at %.0f to %.0f "
               "%% of "
               "the strength",
               pitch, pairing->free_least < pairing->home_turns ? " where the limits are loose" : "",
               PERCENT(fmax(pairing->overlap_least, 0)), PERCENT(pairing->overlap_most),
               PERCENT(pairing->strength_least), PERCENT(pairing->strength_most));
        break;
    case OW_FIT_NO_START:
        explain_no_start(pairing);
        break;
    case OW_FIT_COUNT:
        break;
    }
}
