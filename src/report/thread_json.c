/* SPDX-License-Identifier: MIT */
/* A thread's dimensions and limits for a program. */
#include "oilway/report_thread.h"
#include "report/json.h"

#define MM 1e3
#define DECIMALS 4

static void add_name(ow_json *json, cJSON *parent, const ow_text *text, const ow_thread *thread)
{
    ow_text name = ow_text_new(text->context);
    ow_thread_write(&name, thread);
    ow_json_text(json, parent, "thread", &name);
}

static void add_limits(ow_json *json, cJSON *parent, const char *name, const ow_size_limits *limits)
{
    cJSON *object = ow_json_object(json, parent, name);
    ow_json_scaled(json, object, "basic_mm", limits->basic_m, MM, DECIMALS);
    ow_json_scaled(json, object, "least_mm", limits->has_least ? limits->least_m : -1, MM, DECIMALS);
    ow_json_scaled(json, object, "most_mm", limits->has_most ? limits->most_m : -1, MM, DECIMALS);
}

static void add_taper(ow_json *json, cJSON *side, const ow_thread_size *size)
{
    ow_json_scaled(json, side, "gauge_plane_mm", size->gauge_m, MM, DECIMALS);
    ow_json_scaled(json, side, "gauge_tolerance_mm", size->gauge_tolerance_m, MM, DECIMALS);
    ow_json_scaled(json, side, "useful_thread_mm", size->useful_m, MM, DECIMALS);
    ow_json_rounded(json, side, "hand_tight_turns", size->hand_tight_m / size->pitch_m, 2);
    ow_json_rounded(json, side, "wrench_turns", size->wrench_m / size->pitch_m, 2);
    ow_json_scaled(json, side, size->male ? "small_end_pitch_diameter_mm" : "mouth_pitch_diameter_mm",
                   size->male ? size->small_end_m : size->mouth_m, MM, DECIMALS);
    ow_json_words(json, side, "lengths_basis", ow_basis_words(size->lengths_basis));
}

static void add_side(ow_json *json, cJSON *sides, const ow_thread_size *size)
{
    cJSON *side = ow_json_object(json, sides, NULL);
    ow_json_words(json, side, "gender", size->male ? "male" : "female");
    ow_json_words(json, side, "class", size->class_name[0] ? size->class_name : NULL);
    add_limits(json, side, "major", &size->major);
    add_limits(json, side, "pitch_diameter", &size->pitch_diameter);
    add_limits(json, side, "minor", &size->minor);
    ow_json_words(json, side, "basis", ow_basis_words(size->limits_basis));
    if (size->taper > 0)
        add_taper(json, side, size);
}

static void add_head(ow_json *json, cJSON *object, const ow_text *text, const ow_thread_size *size)
{
    add_name(json, object, text, &size->thread);
    ow_json_words(json, object, "source", size->source);
    ow_json_scaled(json, object, "pitch_mm", size->pitch_m, MM, DECIMALS);
    ow_json_rounded(json, object, "tpi", 25.4e-3 / size->pitch_m, 3);
    ow_json_rounded(json, object, "profile_angle_deg",
                    size->flank_angle_rad * 2 * 180 / 3.14159265358979323846, 1);
    ow_json_scaled(json, object, "height_mm", size->triangle_m, MM, DECIMALS);
    ow_json_scaled(json, object, "depth_mm", size->depth_m, MM, DECIMALS);
    ow_json_rounded(json, object, "taper", size->taper, 4);
    ow_json_scaled(json, object, "major_mm", size->major.basic_m, MM, DECIMALS);
    ow_json_scaled(json, object, "pitch_diameter_mm", size->pitch_diameter.basic_m, MM, DECIMALS);
    ow_json_scaled(json, object, "minor_mm", size->minor.basic_m, MM, DECIMALS);
    const char *joins = ow_thread_joins(size->thread.family);
    ow_json_words(json, object, "joins", joins[0] ? joins : NULL);
    ow_json_words(json, object, "use", ow_thread_use(&size->thread));
}

static void add_tap(ow_json *json, cJSON *object, const ow_text *text, const ow_thread *thread)
{
    ow_tapping tapping;
    if (ow_thread_tapping(thread, &tapping) != OW_OK)
        return;
    cJSON *tap = ow_json_object(json, object, "tap");
    add_name(json, tap, text, &tapping.hole);
    ow_json_scaled(json, tap, "drill_mm", tapping.drill_m, MM, 1);
    ow_json_scaled(json, tap, "bore_least_mm", tapping.minor_least_m, MM, DECIMALS);
    ow_json_scaled(json, tap, "bore_most_mm", tapping.minor_most_m, MM, DECIMALS);
    ow_json_scaled(json, tap, "thread_depth_steel_mm", tapping.thread_depth_m, MM, 1);
    ow_json_scaled(json, tap, "thread_depth_light_alloy_mm", tapping.thread_depth_light_m, MM, 1);
    ow_json_scaled(json, tap, "drill_depth_mm", tapping.drill_depth_m, MM, 1);
    ow_json_scaled(json, tap, "wall_least_mm", tapping.wall_least_m, MM, 1);
    ow_json_scaled(json, tap, "face_mm", tapping.face_m > 0 ? tapping.face_m : -1, MM, 1);
    ow_json_bool(json, tap, "taper_ream", tapping.taper_reamed);
    cJSON *cautions = ow_json_list(json, tap, "cautions");
    for (size_t i = 0; i < ow_tapping_caution_count(); i++)
        if (ow_tapping_caution_is_for(i, thread))
            ow_json_words(json, cautions, NULL, ow_tapping_caution_at(i));
}

/* Fills object with a thread of known pitch; false if there is nothing to say. */
static bool add_thread(ow_json *json, cJSON *object, const ow_text *text, const ow_thread *thread,
                       ow_thread_class only, bool tap)
{
    cJSON *sides = NULL;
    for (int male = 1; male >= 0; male--)
        for (int c = only; c < (only == OW_CLASS_USUAL ? OW_CLASS_COUNT : (int)only + 1); c++) {
            ow_thread_size size;
            if (ow_thread_size_of(thread, male != 0, (ow_thread_class)c, &size) != OW_OK ||
                (c == OW_CLASS_USUAL && size.class_name[0]))
                continue;
            if (!sides) {
                add_head(json, object, text, &size);
                sides = ow_json_list(json, object, "sides");
            }
            add_side(json, sides, &size);
            if (json->failed)
                return true;
        }
    if (sides && tap)
        add_tap(json, object, text, thread);
    return sides != NULL;
}

static bool add_readings(ow_json *json, const ow_text *text, const ow_thread *thread, ow_thread_class only,
                         bool tap)
{
    bool any = false;
    add_name(json, json->root, text, thread);
    cJSON *readings = ow_json_list(json, json->root, "readings");
    for (size_t i = 0; i < ow_thread_count() && !json->failed; i++) {
        const ow_thread *known = ow_thread_at(i);
        if (known->family == thread->family && known->size == thread->size)
            any = add_thread(json, ow_json_object(json, readings, NULL), text, known, only, tap) || any;
    }
    return any;
}

ow_status ow_report_thread_json(ow_text *text, const ow_thread *thread, ow_thread_class only, bool tap)
{
    ow_json json = ow_json_new(false);
    bool any = thread->pitch != 0 ? add_thread(&json, json.root, text, thread, only, tap)
                                  : add_readings(&json, text, thread, only, tap);
    size_t length = text->length;
    ow_status status = ow_json_done(&json, text);
    if (status == OW_OK && !any) { /* take the empty object back */
        text->length = length;
        if (text->data)
            text->data[length] = '\0';
        return OW_NONE;
    }
    return status;
}
