/* SPDX-License-Identifier: MIT */
/* The size that an end is called by, against which its hole is to be seen. */
#include <stdio.h>

#include "base/format.h"
#include "ends/sizes.h"

#define INCH 25.4e-3

static double size_m(const ow_end *end)
{
    switch (end->size_unit) {
    case OW_SIZE_DASH:
        return end->size * INCH / 16.0;
    case OW_SIZE_INCH_64:
        return end->size * INCH / 64.0;
    case OW_SIZE_UM:
        return end->size * 1e-6;
    case OW_SIZE_NONE:
        break;
    }
    return 0.0;
}

/* "3/16", "1 1/4": what a pipe's or a tube's inches are called. */
static void write_inches(char *name, size_t room, int32_t inch_64)
{
    int32_t above = inch_64 % 64, below = 64;
    while (above != 0 && above % 2 == 0) {
        above /= 2;
        below /= 2;
    }
    if (above == 0)
        (void)snprintf(name, room, "%d", (int)(inch_64 / 64));
    else if (inch_64 >= 64)
        (void)snprintf(name, room, "%d %d/%d", (int)(inch_64 / 64), (int)above, (int)below);
    else
        (void)snprintf(name, room, "%d/%d", (int)above, (int)below);
}

static void fill_thread(const ow_end *end, ow_nominal *nominal)
{
    const ow_cone_series *series = end->seat == OW_SEAT_CONE24 ? ow_cone_series_find(end->name) : NULL;
    const ow_thread *thread = &end->thread;
    if (series) {
        nominal->of = OW_NOMINAL_TUBE;
        nominal->size_m = series->tube_um * 1e-6;
        (void)snprintf(nominal->name, sizeof nominal->name, "%s", end->name);
    } else if (thread->family == OW_THREAD_METRIC || thread->family == OW_THREAD_METRIC_TAPER) {
        nominal->of = OW_NOMINAL_THREAD;
        nominal->size_m = thread->size * 1e-6;
        (void)ow_format_to(nominal->name, sizeof nominal->name, "M%g", thread->size / 1000.0);
    } else {
        nominal->of = thread->family == OW_THREAD_UNIFIED ? OW_NOMINAL_THREAD : OW_NOMINAL_PIPE;
        nominal->size_m = thread->size * INCH / 64.0;
        write_inches(nominal->name, sizeof nominal->name, thread->size);
    }
}

/* A form that goes by one size of its own, and what that is the size of. */
static bool fill_sized(const ow_end *end, ow_nominal *nominal)
{
    static const struct {
        ow_form form;
        ow_nominal_of of;
        const char *word;
    } FORMS[] = {
        {OW_FORM_DASH, OW_NOMINAL_TUBE, ""},       {OW_FORM_TUBE_NUT, OW_NOMINAL_TUBE, ""},
        {OW_FORM_BARB, OW_NOMINAL_HOSE, "barb "},  {OW_FORM_BEAD, OW_NOMINAL_HOSE, "bead "},
        {OW_FORM_TUBE, OW_NOMINAL_TUBE, "tube "},  {OW_FORM_WELD, OW_NOMINAL_TUBE, "weld "},
        {OW_FORM_BANJO, OW_NOMINAL_EYE, "banjo "}, {OW_FORM_HOSE, OW_NOMINAL_HOSE, "hose "},
        {OW_FORM_TAIL, OW_NOMINAL_HOSE, "hose "},
    };
    for (size_t i = 0; i < sizeof FORMS / sizeof FORMS[0]; i++) {
        if (FORMS[i].form != end->form)
            continue;
        nominal->of = end->size_unit == OW_SIZE_DASH ? OW_NOMINAL_TUBE : FORMS[i].of;
        nominal->size_m = size_m(end);
        if (end->size_unit == OW_SIZE_DASH)
            (void)snprintf(nominal->name, sizeof nominal->name, "-%d", (int)end->size);
        else if (end->size_unit == OW_SIZE_INCH_64)
            write_inches(nominal->name, sizeof nominal->name, end->size);
        else if (end->size_unit == OW_SIZE_UM)
            (void)ow_format_to(nominal->name, sizeof nominal->name, "%s%g", FORMS[i].word,
                               end->size / 1000.0);
        return true;
    }
    return false;
}

const char *ow_nominal_of_word(ow_nominal_of of)
{
    static const char *const WORDS[OW_NOMINAL_COUNT] = {"tube outside", "hose inside", "pipe size", "thread",
                                                        "eye's hole"};
    return (unsigned)of < OW_NOMINAL_COUNT ? WORDS[of] : "";
}

bool ow_end_nominal(const ow_end *end, ow_nominal *nominal)
{
    ow_nominal made = {OW_NOMINAL_TUBE, 0.0, ""};
    if (end->form == OW_FORM_THREAD)
        fill_thread(end, &made);
    else if (!fill_sized(end, &made))
        return false;
    if (made.size_m <= 0.0)
        return false;
    *nominal = made;
    return true;
}
