/* SPDX-License-Identifier: MIT */
#include "oilway/mates.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "base/format.h"
#include "ends/sizes.h"
#include "joints/rules.h"
#include "joints/seats.h"
#include "oilway/pairing.h"

static void give_source(ow_mates *mates, const char *first, const char *second)
{
    bool both = strcmp(first, second) != 0;
    (void)snprintf(mates->source, sizeof mates->source, "%s%s%s", first, both ? "; " : "",
                   both ? second : "");
}

static void give_turns(ow_mates *mates, const ow_pairing *pairing)
{
    mates->has_turns = pairing->runs;
    mates->turns_least = pairing->turns_least;
    mates->turns_most = pairing->turns_most;
}

/* Which standards give the sizes that the geometry was reckoned from. */
static void give_geometry_source(ow_mates *mates, const ow_pairing *pairing)
{
    ow_thread_size male, female;
    if (ow_thread_size_of(&pairing->male, true, OW_CLASS_USUAL, &male) == OW_OK &&
        ow_thread_size_of(&pairing->female, false, OW_CLASS_USUAL, &female) == OW_OK)
        give_source(mates, male.source, female.source);
    else
        give_source(mates, "geometry", "geometry");
}

static ow_verdict verdict_of(ow_fit fit)
{
    switch (fit) {
    case OW_FIT_LEAKS:
        return OW_LEAKS;
    case OW_FIT_BINDS:
        return OW_BINDS;
    case OW_FIT_WEAK:
        return OW_WEAK;
    case OW_FIT_NO_START:
        return OW_NO_START;
    case OW_FIT_HOME:
    case OW_FIT_COUNT:
        break;
    }
    return OW_WRONG_SEAT;
}

/* Geometry alone calls such a pair a leak (ow_pair); the table knows better, and takes its turns only. */
static void explain_tolerated(const ow_joint_rule *rule, const ow_pairing *pairing, ow_mates *mates)
{
    char turns[48] = "";
    if (pairing && pairing->runs)
        (void)ow_format_to(turns, sizeof turns, "; wedges after %.1f to %.1f turns", pairing->turns_least,
                           pairing->turns_most);
    (void)snprintf(mates->why, sizeof mates->why, "%s: %s%s", rule->seals_by, rule->remark, turns);
}

static void judge_rule(const ow_joint_rule *rule, const ow_pairing *pairing, ow_mates *mates)
{
    const char *why = pairing ? pairing->why : "";
    mates->rule = rule;
    mates->verdict = rule->verdict;
    give_source(mates, rule->source, rule->source);
    if (pairing)
        give_turns(mates, pairing);
    if (rule->verdict == OW_TOLERATED)
        explain_tolerated(rule, pairing, mates);
    else
        (void)snprintf(mates->why, sizeof mates->why, "%s%s%s", rule->seals_by, *why ? "; " : "", why);
}

static void judge_seats(const ow_end *male, const ow_end *female, ow_mates *mates)
{
    const ow_seat_face *of_male = ow_seat_face_of(male->seat), *of_female = ow_seat_face_of(female->seat);
    mates->verdict = OW_WRONG_SEAT;
    ow_seats_explain(male, female, mates->why, sizeof mates->why);
    give_source(mates, of_male ? of_male->source : "common practice",
                of_female ? of_female->source : "common practice");
}

/* Threads that no table carries: only the basic diameters speak. */
static ow_status judge_unlisted(const ow_thread *male, const ow_thread *female, ow_mates *mates)
{
    if (male->pitch == 0 || female->pitch == 0)
        return OW_RANGE;
    mates->verdict = OW_NO_START;
    (void)ow_format_to(
        mates->why, sizeof mates->why,
        "threads of other sizes, at least one in no table: basic diameters %.2f and %.2f mm, pitches "
        "%.3f and %.3f mm",
        ow_thread_major_m(male) * 1e3, ow_thread_major_m(female) * 1e3, ow_thread_pitch_m(male) * 1e3,
        ow_thread_pitch_m(female) * 1e3);
    give_source(mates, "common practice", "common practice");
    return OW_OK;
}

/* Whether the two would join if a seat that is not said were a washer face. */
static bool hangs_on_seat(const ow_end *male, const ow_end *female)
{
    ow_end first = *male, second = *female;
    if (first.seat == OW_SEAT_UNKNOWN)
        first.seat = OW_SEAT_WASHER;
    if (second.seat == OW_SEAT_UNKNOWN)
        second.seat = OW_SEAT_WASHER;
    return ow_joint_find(&first, &second) != NULL;
}

static ow_status judge_threads(const ow_end *male, const ow_end *female, ow_mates *mates)
{
    ow_thread of_male, of_female;
    ow_pairing pairing;
    if (!ow_end_thread(male, &of_male) || !ow_end_thread(female, &of_female))
        return OW_RANGE;
    bool known = ow_pair(&of_male, &of_female, &pairing) == OW_OK;
    const ow_joint_rule *rule = ow_joint_find(male, female);
    if (rule) {
        judge_rule(rule, known ? &pairing : NULL, mates);
        return OW_OK;
    }
    if (!known && !ow_thread_same(&of_male, &of_female))
        return judge_unlisted(&of_male, &of_female, mates);
    bool whole = ow_end_is_whole(male) && ow_end_is_whole(female);
    if (!whole && hangs_on_seat(male, female))
        return OW_RANGE;
    if (!known || pairing.fit == OW_FIT_HOME) {
        if (!whole)
            return OW_RANGE;
        judge_seats(male, female, mates);
        if (known)
            give_turns(mates, &pairing);
        return OW_OK;
    }
    mates->verdict = verdict_of(pairing.fit);
    give_turns(mates, &pairing);
    (void)snprintf(mates->why, sizeof mates->why, "%s", pairing.why);
    give_geometry_source(mates, &pairing);
    return OW_OK;
}

/* ---- ends that are not screwed ------------------------------------------------------------------------- */

static ow_status say(ow_mates *mates, ow_verdict verdict, const char *why)
{
    mates->verdict = verdict;
    (void)snprintf(mates->why, sizeof mates->why, "%s", why);
    give_source(mates, "common practice", "common practice");
    return OW_OK;
}

static ow_status judge_clamped(const ow_end *hose, const ow_end *tail, ow_mates *mates)
{
    if (hose->size_unit != OW_SIZE_UM)
        return say(mates, OW_LEAKS,
                   "a hose that goes by dash is held by a tail of its own dash and class, not clamped");
    if (strcmp(hose->name, "ptfe") == 0)
        return say(mates, OW_LEAKS, "PTFE is too stiff and slippery for a clamp to hold and seal");
    double apart_mm = (hose->size - tail->size) / 1000.0;
    mates->verdict = apart_mm > 0.0 ? OW_LEAKS : OW_NO_START;
    (void)ow_format_to(mates->why, sizeof mates->why,
                       "the hose is %.2f mm %s than the tail; half a millimetre is the most", fabs(apart_mm),
                       apart_mm > 0.0 ? "wider" : "narrower");
    give_source(mates, "common practice", "common practice");
    return OW_OK;
}

static ow_status judge_banjo(const ow_end *stud, const ow_end *eye, ow_mates *mates)
{
    if (stud->size < eye->size)
        return say(mates, OW_LEAKS,
                   "the eye's hole is wider than the stud: its rings find no centre and too little face");
    return say(mates, OW_NO_START, "the stud does not pass the eye's hole");
}

static ow_status judge_same_form(const ow_end *a, const ow_end *b, ow_mates *mates)
{
    const ow_end *stud = a->gender == OW_MALE ? a : b;
    switch (a->form) {
    case OW_FORM_BANJO:
        return judge_banjo(stud, stud == a ? b : a, mates);
    case OW_FORM_FLANGE:
        return say(mates, OW_NO_START, "the bolt patterns are not the same");
    case OW_FORM_WELD:
        return say(mates, OW_NO_START, "the diameters are not the same");
    case OW_FORM_HOSE:
    case OW_FORM_TAIL:
    case OW_FORM_BARB:
    case OW_FORM_BEAD:
    case OW_FORM_TUBE:
    case OW_FORM_THREAD:
    case OW_FORM_DASH:
    case OW_FORM_TUBE_NUT:
    case OW_FORM_COUNT:
        break;
    }
    return say(mates, OW_NO_START, "no cut end joins itself, nor does a tail");
}

static bool is_clamped(const ow_end *end)
{
    return end->form == OW_FORM_BARB || end->form == OW_FORM_BEAD;
}

static ow_status judge_plain(const ow_end *a, const ow_end *b, ow_mates *mates)
{
    if (a->form == b->form)
        return judge_same_form(a, b, mates);
    if (a->form == OW_FORM_HOSE && is_clamped(b))
        return judge_clamped(a, b, mates);
    if (b->form == OW_FORM_HOSE && is_clamped(a))
        return judge_clamped(b, a, mates);
    if ((a->form == OW_FORM_HOSE && b->form == OW_FORM_TAIL) ||
        (a->form == OW_FORM_TAIL && b->form == OW_FORM_HOSE))
        return say(mates, OW_LEAKS, "a hose is held only by a tail of its own size and class");
    if ((a->form == OW_FORM_TUBE && b->seat == OW_SEAT_CONE24) ||
        (b->form == OW_FORM_TUBE && a->seat == OW_SEAT_CONE24))
        return say(mates, OW_WRONG_SEAT,
                   "a tube goes into the 24 degree male of its own diameter, through nut and cutting ring");
    return say(mates, OW_NO_START, "the two are not made to be put together");
}

/* A thread that may turn out to be the 24 degree cone of this tube. */
static bool hangs_on_series(const ow_end *thread, const ow_end *tube)
{
    bool cone = thread->seat == OW_SEAT_UNKNOWN || thread->seat == OW_SEAT_CONE24;
    return tube->form == OW_FORM_TUBE && thread->form == OW_FORM_THREAD && cone && !ow_end_is_whole(thread);
}

ow_status ow_mates_judge(const ow_end *a, const ow_end *b, ow_mates *mates)
{
    ow_mates judged = {.ends = {*a, *b}};
    ow_thread thread;
    ow_status status = OW_OK;
    bool screwed = ow_end_thread(a, &thread) && ow_end_thread(b, &thread);
    const ow_joint_rule *rule = screwed ? NULL : ow_joint_find(a, b);
    bool same_gender = a->gender == b->gender && a->gender != OW_GENDER_NONE;
    if (same_gender && (screwed || a->form == b->form))
        status = say(&judged, OW_NO_START, a->gender == OW_MALE ? "both are male" : "both are female");
    else if (screwed)
        status = judge_threads(a->gender == OW_MALE ? a : b, a->gender == OW_MALE ? b : a, &judged);
    else if (rule)
        judge_rule(rule, NULL, &judged);
    else if (hangs_on_series(a, b) || hangs_on_series(b, a))
        status = OW_RANGE;
    else
        status = judge_plain(a, b, &judged);
    if (status == OW_OK)
        *mates = judged;
    return status;
}
