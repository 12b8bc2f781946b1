/* SPDX-License-Identifier: MIT */
/* A made drain in sentences: what to make, what to drill and tap, and where not to. */
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "plan/making.h"

#define DEGREES_PER_RADIAN 57.295779513082320876798154814105
#define STEPS_MOST 16

typedef struct stepping {
    ow_making *making;
    const char **steps;
    size_t count;
    bool failed;
} stepping;

static void step(stepping *now, const char *words)
{
    if (words == NULL || now->count == STEPS_MOST)
        now->failed = true;
    else
        now->steps[now->count++] = words;
}

/* The bolts of a flange, from any part of the catalogue that bolts to it. */
static const char *bolt_pattern(const ow_planning *planning, const ow_end *face)
{
    for (size_t index = 0; index < ow_catalog_part_count(planning->catalog); index++) {
        const ow_part *part = ow_catalog_part_at(planning->catalog, index);
        for (size_t end = 0; end < part->end_count; end++) {
            if (part->bolt_pattern[0] != '\0' && ow_end_same(&part->ends[end], face))
                return part->bolt_pattern;
        }
    }
    return NULL;
}

static void say_turbo_end(stepping *now)
{
    ow_planning *planning = now->making->planning;
    ow_plan_made *made = now->making->made;
    char words[OW_END_TEXT_SIZE];
    const char *end = ow_end_name(&made->outlet->end, words);
    int hose_mm =
        made->hose_mm > 0 ? made->hose_mm : (int)((made->bore_m + 2.0 * OW_MADE_WALL_M) * 1e3 + 0.999);
    if (made->fitting != NULL) {
        step(now, ow_planning_words(planning, "On the turbo's outlet, %s: %s.", end, made->fitting));
    } else if (made->outlet->end.form == OW_FORM_FLANGE) {
        made->pattern = bolt_pattern(planning, &made->outlet->end);
        step(now, ow_planning_words(
                      planning,
                      "Make a stub for the turbo's outlet, %s (%s): steel plate of 8 to 10 mm, bored %.0f "
                      "mm; a pipe of %d mm outside and %.0f mm inside or more welded square into it, beaded "
                      "for the hose; the face ground flat, and a gasket cut to the same pattern.",
                      end, made->pattern != NULL ? made->pattern : "take the holes off the housing",
                      made->bore_m * 1e3, hose_mm, made->bore_m * 1e3));
    } else {
        step(now, ow_planning_words(
                      planning,
                      "Have an adapter turned for the turbo's outlet, %s: its counterpart to a beaded "
                      "pipe of %d mm outside, bored as wide as the thread leaves room for.",
                      end, hose_mm));
    }
}

static void say_hose(stepping *now)
{
    ow_planning *planning = now->making->planning;
    const ow_plan_made *made = now->making->made;
    const char *slope = "";
    if (made->least_slope_rad > 0.0)
        slope = ow_planning_words(planning, "; %.0f degrees down would carry it, %.0f or more are wanted",
                                  made->least_slope_rad * DEGREES_PER_RADIAN,
                                  OW_DRAIN_SLOPE_WARN_RAD * DEGREES_PER_RADIAN);
    if (slope == NULL)
        now->failed = true;
    else if (made->hose != NULL)
        step(now, ow_planning_words(planning, "Hose of %d mm, %s, downhill all the way%s.", made->hose_mm,
                                    made->hose, slope));
    else
        step(now,
             ow_planning_words(planning,
                               "Fluoro-lined hose of %.0f mm inside or more, which the catalogue has not, "
                               "downhill all the way%s.",
                               made->bore_m * 1e3, slope));
}

static void say_hole(stepping *now)
{
    ow_planning *planning = now->making->planning;
    const ow_plan_made *made = now->making->made;
    const ow_tapping *tapping = &made->tapping;
    ow_text thread = ow_text_new(planning->context);
    ow_thread_write(&thread, &now->making->thread);
    const char *name = ow_arena_keep(&planning->arena, &thread);
    if (made->thread != NULL) {
        const char *face = tapping->face_m > 0.0
                               ? ow_planning_words(planning, ", spot-faced to %.0f mm", tapping->face_m * 1e3)
                               : ", reamed 1:16 or tapped a little at a time";
        if (face == NULL || name == NULL)
            now->failed = true;
        else
            step(now, ow_planning_words(
                          planning,
                          "In a cast cover, block side or casing thick enough: drill %.1f mm, tap %s, "
                          "full thread %.0f mm deep in iron or steel and %.0f mm in light alloy, with "
                          "%.1f mm of metal left around it%s. It takes %s.",
                          tapping->drill_m * 1e3, name, tapping->thread_depth_m * 1e3,
                          tapping->thread_depth_light_m * 1e3, tapping->wall_least_m * 1e3, face,
                          made->tapped_with));
    }
    if (made->welded_with != NULL)
        step(now, ow_planning_words(
                      planning,
                      "In a sheet-steel sump or casing: take it off, cut a hole of %.4g mm and weld in %s.",
                      now->making->weld_mm, made->welded_with));
    if (made->thread == NULL && made->welded_with == NULL)
        step(now,
             ow_planning_words(planning,
                               "At the engine, a plate with a stub on a cover of the block, or a bung welded "
                               "into the sump, bored %.0f mm or more.",
                               made->bore_m * 1e3));
}

/* Where no thread is chosen yet, only what holds for every hole. */
static bool is_caution_for(const ow_plan_made *made, const ow_thread *thread, size_t index)
{
    const ow_thread parallel = {.family = OW_THREAD_METRIC};
    const ow_thread taper = {.family = OW_THREAD_NPT};
    if (made->thread != NULL)
        return ow_tapping_caution_is_for(index, thread);
    return ow_tapping_caution_is_for(index, &parallel) && ow_tapping_caution_is_for(index, &taper);
}

static void say_place(stepping *now)
{
    ow_planning *planning = now->making->planning;
    const ow_plan_made *made = now->making->made;
    if (made->lowest_m > 0.0)
        step(now, ow_planning_words(
                      planning,
                      "The hole's lower edge stands less than %.0f mm under the turbo's outlet: there "
                      "the sump's oil is.",
                      made->lowest_m * 1e3));
    else
        step(now,
             "Measure the oil level with the engine running and standing level: the hole goes above it.");
    for (size_t index = 0; index < ow_tapping_caution_count(); index++) {
        const char *caution = ow_tapping_caution_at(index);
        if (strstr(caution, "pressure gallery") == NULL && is_caution_for(made, &now->making->thread, index))
            step(now, caution);
    }
}

ow_status ow_plan_made_steps(ow_making *making)
{
    stepping now = {.making = making};
    now.steps = ow_arena_get_array(&making->planning->arena, STEPS_MOST, sizeof *now.steps);
    if (now.steps == NULL)
        return OW_MEMORY;
    say_turbo_end(&now);
    say_hose(&now);
    say_hole(&now);
    say_place(&now);
    making->made->steps = now.steps;
    making->made->step_count = now.count;
    return now.failed ? OW_MEMORY : OW_OK;
}
