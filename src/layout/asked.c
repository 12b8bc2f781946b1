/* SPDX-License-Identifier: MIT */
#include "layout/asked.h"

#include <stddef.h>
#include <string.h>

#include "layout/reading.h"

#define IN(member) offsetof(ow_limits, member)
#define MM 1e-3
#define BAR 1e5

/* The first choice is what holds when nothing is said; the order is that of the enum. */
static const ow_asked_key keys[] = {
    {"bore", OW_ASKED_QUANTITY, OW_LENGTH, 0.1 * MM, 200 * MM, IN(least_bore_m), {NULL}},
    {"bore-warns", OW_ASKED_YES, 0, 0, 0, IN(bore_warns), {NULL}},
    {"flexible", OW_ASKED_CHOICE, 0, 0, 0, IN(flexible), {"any", "yes", "no"}},
    {"closing", OW_ASKED_YES, 0, 0, 0, IN(closing), {NULL}},
    {"restrictor", OW_ASKED_CHOICE, 0, 0, 0, IN(restrictor), {"any", "required", "forbidden", "by-unit"}},
    {"orifice", OW_ASKED_RANGE, OW_LENGTH, 0, 50 * MM, IN(orifice_low_m), {NULL}},
    {"rating", OW_ASKED_QUANTITY, OW_PRESSURE, 0, 2000 * BAR, IN(rating_pa), {NULL}},
    {"temperature", OW_ASKED_DEGREES, OW_TEMPERATURE, -200, 1200, IN(temperature_c), {NULL}},
    {"fluid", OW_ASKED_CHOICE, 0, 0, 0, IN(fluid), {"any", "oil", "coolant"}},
    {"tolerate", OW_ASKED_YES, 0, 0, 0, IN(tolerate), {NULL}},
    {"remote-switch", OW_ASKED_YES, 0, 0, 0, IN(remote_switch), {NULL}},
    {"tee", OW_ASKED_UNLESS, 0, 0, 0, IN(no_tee), {NULL}},
};

size_t ow_asked_key_count(void)
{
    return sizeof keys / sizeof *keys;
}

const ow_asked_key *ow_asked_key_at(size_t index)
{
    return index < ow_asked_key_count() ? &keys[index] : NULL;
}

const ow_asked_key *ow_asked_key_find(const char *key)
{
    for (size_t i = 0; i < ow_asked_key_count(); i++)
        if (strcmp(keys[i].key, key) == 0)
            return &keys[i];
    return NULL;
}
