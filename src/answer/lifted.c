/* SPDX-License-Identifier: MIT */
#include "answer/lifted.h"

#include <math.h>

#include "layout/from_search.h"

/* One limit: whether the ask has it (then *without lacks it), and how to say it. */
typedef struct liftable {
    bool (*lift)(ow_ask *without);
    void (*say)(ow_text *text, const ow_ask *ask);
    /* For a quantity: tightens `without` just past what the layout found has, and says what it has; false
     * when it has as much as was asked, or nothing is known. NULL: no quantity. */
    bool (*tighten)(ow_ask *without, const ow_ask *ask, const ow_layout *layout, ow_text *has);
} liftable;

/* Just past a value: more than what a limit lets pass for equal, less than values of a catalogue differ by.
 */
#define PAST_M 2e-6
#define PAST_PA 100.0
#define PAST_C 0.01
/* Steps from value to value of a quantity; the catalogue has fewer in use on one path. */
#define STEPS_MAX 64

static bool lift_bore(ow_ask *without)
{
    bool had = without->limits.least_bore_m > 0.0 && !without->limits.bore_warns;
    without->limits.least_bore_m = OW_NOT_SAID;
    return had;
}

static void say_bore(ow_text *text, const ow_ask *ask)
{
    ow_text_add(text, "bore ");
    ow_quantity_write(text, OW_LENGTH, ask->limits.least_bore_m, 2);
}

/* The least bore on the paths to all ports that are to be fed, which is what the limit asks about. */
static bool tighten_bore(ow_ask *without, const ow_ask *ask, const ow_layout *layout, ow_text *has)
{
    double bore = ask->limits.least_bore_m;
    for (size_t given = 1; given < layout->given_count; given++)
        if (layout->givens[given].role == OW_ROLE_TO)
            bore = fmin(bore, ow_layout_bore_to_m(layout, given));
    if (bore < 0.0 || bore >= ask->limits.least_bore_m)
        return false;
    ow_quantity_write(has, OW_LENGTH, bore, 2);
    ow_text_add(has, " is the most that can be had");
    without->limits.least_bore_m = bore + PAST_M;
    return true;
}

static bool lift_flexible(ow_ask *without)
{
    bool had = without->limits.flexible != OW_ANY;
    without->limits.flexible = OW_ANY;
    return had;
}

static void say_flexible(ow_text *text, const ow_ask *ask)
{
    ow_text_add(text, ask->limits.flexible == OW_YES    ? "flexible yes"
                      : ask->limits.flexible == OW_SOME ? "flexible some"
                                                        : "flexible no");
}

static bool lift_closing(ow_ask *without)
{
    bool had = without->limits.closing;
    without->limits.closing = false;
    return had;
}

static void say_closing(ow_text *text, const ow_ask *ask)
{
    (void)ask;
    ow_text_add(text, "closing yes");
}

static bool lift_restrictor(ow_ask *without)
{
    bool had = without->limits.restrictor != OW_RESTRICTOR_ANY;
    without->limits.restrictor = OW_RESTRICTOR_ANY;
    return had;
}

static void say_restrictor(ow_text *text, const ow_ask *ask)
{
    ow_text_add(text, ask->limits.restrictor == OW_RESTRICTOR_REQUIRED ? "restrictor required"
                      : ask->limits.restrictor == OW_RESTRICTOR_FORBIDDEN
                          ? "restrictor forbidden"
                          : "the restrictor that each unit wants");
}

static bool lift_orifice(ow_ask *without)
{
    bool had = without->limits.orifice_low_m >= 0.0;
    without->limits.orifice_low_m = without->limits.orifice_high_m = OW_NOT_SAID;
    return had;
}

static void say_orifice(ow_text *text, const ow_ask *ask)
{
    ow_text_add(text, "orifice ");
    ow_quantity_write(text, OW_LENGTH, ask->limits.orifice_low_m, 2);
    ow_text_add(text, " to ");
    ow_quantity_write(text, OW_LENGTH, ask->limits.orifice_high_m, 2);
}

static bool lift_rating(ow_ask *without)
{
    bool had = without->limits.rating_pa > 0.0;
    without->limits.rating_pa = OW_NOT_SAID;
    return had;
}

static void say_rating(ow_text *text, const ow_ask *ask)
{
    ow_text_add(text, "rating ");
    ow_quantity_write(text, OW_PRESSURE, ask->limits.rating_pa, 1);
}

static bool tighten_rating(ow_ask *without, const ow_ask *ask, const ow_layout *layout, ow_text *has)
{
    double least = OW_NOT_SAID;
    for (size_t node = 0; node < layout->node_count; node++) {
        const ow_part *part = layout->nodes[node].part;
        if (part == NULL)
            continue;
        double rating = ow_part_standing(part).rating_pa;
        if (rating < 0.0)
            return false;
        if (least < 0.0 || rating < least)
            least = rating;
    }
    if (least < 0.0 || least >= ask->limits.rating_pa)
        return false;
    ow_quantity_write(has, OW_PRESSURE, least, 1);
    ow_text_add(has, " is the most that can be had");
    without->limits.rating_pa = least + PAST_PA;
    return true;
}

static bool lift_temperature(ow_ask *without)
{
    bool had = without->limits.has_temperature;
    without->limits.has_temperature = false;
    return had;
}

static void say_temperature(ow_text *text, const ow_ask *ask)
{
    ow_text_add(text, "temperature ");
    ow_quantity_write(text, OW_TEMPERATURE, ask->limits.temperature_c, 1);
}

/* The parts of a layout stand the temperatures that all of them stand. */
static bool tighten_temperature(ow_ask *without, const ow_ask *ask, const ow_layout *layout, ow_text *has)
{
    double low = -1e9, high = 1e9;
    for (size_t node = 0; node < layout->node_count; node++) {
        const ow_part *part = layout->nodes[node].part;
        if (part == NULL)
            continue;
        ow_standing stands = ow_part_standing(part);
        if (!stands.has_temperature)
            return false;
        low = stands.temperature_low_c > low ? stands.temperature_low_c : low;
        high = stands.temperature_high_c < high ? stands.temperature_high_c : high;
    }
    double wanted = ask->limits.temperature_c;
    if (wanted >= low && wanted <= high)
        return false;
    double nearest = wanted > high ? high : low;
    ow_quantity_write(has, OW_TEMPERATURE, nearest, 1);
    ow_text_add(has, wanted > high ? " is the most that can be had" : " is the lowest that can be had");
    without->limits.has_temperature = true;
    without->limits.temperature_c = nearest + (wanted > high ? PAST_C : -PAST_C);
    return true;
}

static bool lift_fluid(ow_ask *without)
{
    bool had = without->limits.fluid != OW_FLUID_NONE;
    without->limits.fluid = OW_FLUID_NONE;
    return had;
}

static void say_fluid(ow_text *text, const ow_ask *ask)
{
    ow_text_add(text, ask->limits.fluid == OW_FLUID_COOLANT ? "fluid coolant" : "fluid oil");
}

static bool lift_no_tee(ow_ask *without)
{
    bool had = without->limits.no_tee;
    without->limits.no_tee = false;
    return had;
}

static void say_no_tee(ow_text *text, const ow_ask *ask)
{
    (void)ask;
    ow_text_add(text, "no tee in a drain");
}

static bool lift_no_clamp(ow_ask *without)
{
    bool had = without->limits.no_clamp;
    without->limits.no_clamp = false;
    return had;
}

static void say_no_clamp(ow_text *text, const ow_ask *ask)
{
    (void)ask;
    ow_text_add(text, "no clamp against the feed's pressure");
}

static bool lift_without(ow_ask *without)
{
    bool had = without->without_count > 0;
    without->without_count = 0;
    return had;
}

static void say_without(ow_text *text, const ow_ask *ask)
{
    ow_text_format(text, "without %s%s", ask->without[0], ask->without_count > 1 ? " and others" : "");
}

static bool lift_remote_switch(ow_ask *without)
{
    bool had = !without->limits.remote_switch && without->limits.flexible != OW_NO;
    bool keeps = false;
    for (size_t index = 1; index < without->given_count; index++)
        keeps = keeps || without->givens[index].role == OW_ROLE_KEEP;
    without->limits.remote_switch = true;
    return had && keeps;
}

static void say_remote_switch(ow_text *text, const ow_ask *ask)
{
    (void)ask;
    ow_text_add(text, "no hose before a kept switch (remote-switch allows one)");
}

static const liftable LIFTABLES[] = {
    {lift_bore, say_bore, tighten_bore},
    {lift_rating, say_rating, tighten_rating},
    {lift_temperature, say_temperature, tighten_temperature},
    {lift_fluid, say_fluid, NULL},
    {lift_restrictor, say_restrictor, NULL},
    {lift_orifice, say_orifice, NULL},
    {lift_flexible, say_flexible, NULL},
    {lift_closing, say_closing, NULL},
    {lift_no_tee, say_no_tee, NULL},
    {lift_no_clamp, say_no_clamp, NULL},
    {lift_remote_switch, say_remote_switch, NULL},
    {lift_without, say_without, NULL},
};
_Static_assert(sizeof LIFTABLES / sizeof LIFTABLES[0] <= OW_LIFTED_MAX, "room for each limit");

static ow_status keep_words(ow_arena *arena, ow_text *text, const char **words)
{
    *words = text->failed ? NULL : ow_arena_copy(arena, ow_text_words(text), text->length);
    ow_text_done(text);
    return *words == NULL ? OW_MEMORY : OW_OK;
}

/* The best layout of an ask: OW_NONE if there is none. */
static ow_status find_best(const ow_context *context, const ow_net *net, const ow_ask *ask, ow_layout *layout)
{
    ow_search *search = NULL;
    ow_status status = ow_search_new_hopeful(context, net, ask, &search);
    if (status == OW_OK)
        status = ow_search_next(search, layout);
    ow_search_free(search);
    return status;
}

/* Goes from value to value of a quantity up to the last that a layout has; *layout is then that one. */
static ow_status find_most(const ow_context *context, const ow_net *net, const ow_ask *ask,
                           const liftable *limit, ow_ask *without, ow_layout *layout, ow_text *has)
{
    for (size_t step = 0; step < STEPS_MAX; step++) {
        ow_layout next;
        ow_text now = ow_text_new(context);
        bool further = limit->tighten(without, ask, layout, &now);
        if (further) {
            ow_text_done(has);
            *has = now;
        } else {
            ow_text_done(&now);
            return OW_OK;
        }
        ow_status status = find_best(context, net, without, &next);
        if (status != OW_OK)
            return status == OW_NONE ? OW_OK : status;
        ow_layout_free(layout);
        *layout = next;
    }
    return OW_OK;
}

/* Searches without one limit; OW_NONE if that alone is no help. */
static ow_status try_without(const ow_context *context, const ow_net *net, const ow_ask *ask,
                             const liftable *limit, ow_arena *arena, ow_lifted *lifted)
{
    ow_ask without = *ask;
    ow_layout layout;
    if (!limit->lift(&without))
        return OW_NONE;
    ow_status status = find_best(context, net, &without, &layout);
    if (status != OW_OK)
        return status;
    ow_text said = ow_text_new(context), has = ow_text_new(context), words = ow_text_new(context);
    if (limit->tighten != NULL)
        status = find_most(context, net, ask, limit, &without, &layout, &has);
    limit->say(&said, ask);
    lifted->part_count = ow_layout_part_count(&layout);
    ow_text_format(&words, "%zu %s", lifted->part_count, lifted->part_count == 1 ? "part" : "parts");
    if (has.length > 0)
        ow_text_format(&words, "; %s", has.data);
    words.failed = words.failed || has.failed;
    ow_text_done(&has);
    ow_status kept = keep_words(arena, &said, &lifted->limit);
    status = status == OW_OK ? kept : status;
    kept = keep_words(arena, &words, &lifted->words);
    ow_layout_free(&layout);
    return status == OW_OK ? kept : status;
}

/* OW_NONE if there is no layout with all limits lifted: then none of them, lifted alone, brings one. */
static ow_status try_without_all(const ow_context *context, const ow_net *net, const ow_ask *ask)
{
    ow_ask without = *ask;
    ow_layout layout;
    for (size_t index = 0; index < sizeof LIFTABLES / sizeof LIFTABLES[0]; index++)
        LIFTABLES[index].lift(&without);
    /* In a feed a free restrictor is not free: one behind another, or before a unit with its own, is refused,
     * though the ask may have wanted just that. */
    without.circuit = OW_CIRCUIT_NONE;
    ow_status status = find_best(context, net, &without, &layout);
    if (status == OW_OK)
        ow_layout_free(&layout);
    return status;
}

ow_status ow_find_lifted(const ow_context *context, const ow_net *net, const ow_ask *ask, ow_arena *arena,
                         ow_lifted *lifted, size_t *count)
{
    *count = 0;
    ow_status all = try_without_all(context, net, ask);
    if (all != OW_OK)
        return all == OW_NONE ? OW_OK : all;
    for (size_t index = 0; index < sizeof LIFTABLES / sizeof LIFTABLES[0]; index++) {
        ow_status status = try_without(context, net, ask, &LIFTABLES[index], arena, &lifted[*count]);
        if (status == OW_OK)
            (*count)++;
        else if (status != OW_NONE)
            return status;
    }
    return OW_OK;
}
