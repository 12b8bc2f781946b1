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
    {"bore", OW_ASKED_QUANTITY, OW_LENGTH, 0.1 * MM, 200 * MM, IN(least_bore_m), {NULL}, OW_CIRCUIT_NONE},
    {"bore-warns", OW_ASKED_YES, 0, 0, 0, IN(bore_warns), {NULL}, OW_CIRCUIT_NONE},
    {"flexible", OW_ASKED_CHOICE, 0, 0, 0, IN(flexible), {"any", "yes", "no", "some"}, OW_CIRCUIT_NONE},
    {"closing", OW_ASKED_YES, 0, 0, 0, IN(closing), {NULL}, OW_CIRCUIT_NONE},
    {"restrictor",
     OW_ASKED_CHOICE,
     0,
     0,
     0,
     IN(restrictor),
     {"any", "required", "forbidden", "by-unit"},
     OW_CIRCUIT_NONE},
    {"orifice", OW_ASKED_RANGE, OW_LENGTH, 0, 50 * MM, IN(orifice_low_m), {NULL}, OW_CIRCUIT_NONE},
    {"rating", OW_ASKED_QUANTITY, OW_PRESSURE, 0, 2000 * BAR, IN(rating_pa), {NULL}, OW_CIRCUIT_NONE},
    {"temperature", OW_ASKED_DEGREES, OW_TEMPERATURE, -200, 1200, IN(temperature_c), {NULL}, OW_CIRCUIT_NONE},
    {"fluid", OW_ASKED_CHOICE, 0, 0, 0, IN(fluid), {"any", "oil", "coolant"}, OW_CIRCUIT_NONE},
    {"tolerate", OW_ASKED_YES, 0, 0, 0, IN(tolerate), {NULL}, OW_CIRCUIT_NONE},
    {"remote-switch", OW_ASKED_YES, 0, 0, 0, IN(remote_switch), {NULL}, OW_CIRCUIT_NONE},
    {"tee", OW_ASKED_UNLESS, 0, 0, 0, IN(no_tee), {NULL}, OW_DRAIN},
    {"clamp", OW_ASKED_UNLESS, 0, 0, 0, IN(no_clamp), {NULL}, OW_FEED},
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
