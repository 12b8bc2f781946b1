/* SPDX-License-Identifier: MIT */
/* What an end that is only half said may turn out to be. */
#include <string.h>

#include "ends/sizes.h"

static bool same_size(const ow_thread *asked, const ow_thread *whole)
{
    ow_thread_family family = whole->family;
    /* A metric male of which no seat is said may be taper. */
    if (family == OW_THREAD_METRIC_TAPER && asked->family != OW_THREAD_METRIC_TAPER)
        family = OW_THREAD_METRIC;
    return asked->family == family && asked->size == whole->size &&
           (asked->pitch == 0 || asked->pitch == whole->pitch);
}

/*
 * Female seats that are only ever made as a loose nut: who asks about the thread alone has not said
 * that it turns, nor that it does not (common practice).
 */
static bool only_as_nut(const ow_end *end)
{
    switch (end->seat) {
    case OW_SEAT_FLARE37:
    case OW_SEAT_FLARE45:
    case OW_SEAT_FACE_O_RING:
    case OW_SEAT_CONE24:
    case OW_SEAT_CONE60:
    case OW_SEAT_FLARE30:
        return end->gender == OW_FEMALE;
    case OW_SEAT_NONE:
    case OW_SEAT_UNKNOWN:
    case OW_SEAT_TAPER:
    case OW_SEAT_WASHER:
    case OW_SEAT_WASHER_CAPTIVE:
    case OW_SEAT_BANJO:
    case OW_SEAT_O_RING:
    case OW_SEAT_NPSM:
    case OW_SEAT_FLARE45_INVERTED:
    case OW_SEAT_CONVEX:
    case OW_SEAT_COUNT:
        break;
    }
    return false;
}

static bool same_swivel(const ow_end *asked, const ow_end *whole)
{
    return asked->swivel == whole->swivel ||
           (asked->seat == OW_SEAT_UNKNOWN && !asked->swivel && only_as_nut(whole));
}

bool ow_end_is_reading(const ow_end *asked, const ow_end *whole)
{
    ow_thread thread;
    if (ow_end_is_whole(asked))
        return ow_end_same(asked, whole);
    if (asked->gender != whole->gender || !same_swivel(asked, whole) || !ow_end_is_whole(whole))
        return false;
    if (!ow_end_thread(whole, &thread) || !same_size(&asked->thread, &thread))
        return false;
    if (asked->seat == OW_SEAT_UNKNOWN)
        return true;
    return asked->seat == whole->seat && (asked->name[0] == '\0' || strcmp(asked->name, whole->name) == 0);
}
