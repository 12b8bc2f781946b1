/* SPDX-License-Identifier: MIT */
/* The limits: a circuit's defaults, then what the words say. */
#include <string.h>

#include "ask/ask_internal.h"
#include "base/words.h"
#include "layout/asked.h"

double ow_circuit_assumed_pressure_pa(ow_circuit circuit)
{
    switch (circuit) {
    case OW_FEED:
        return 6e5;
    case OW_COOLANT:
        return 2e5;
    case OW_DRAIN:
        return 0.3e5;
    case OW_CIRCUIT_NONE:
        break;
    }
    return OW_NOT_SAID;
}

void ow_limits_for_circuit(ow_circuit circuit, ow_limits *limits)
{
    if (circuit == OW_CIRCUIT_NONE)
        return;
    limits->flexible = OW_YES;
    limits->closing = true;
    limits->fluid = circuit == OW_COOLANT ? OW_FLUID_COOLANT : OW_FLUID_OIL;
    limits->rating_pa = ow_circuit_assumed_pressure_pa(circuit);
    limits->no_clamp = circuit == OW_FEED;
    if (circuit == OW_DRAIN) {
        limits->restrictor = OW_RESTRICTOR_FORBIDDEN;
        limits->no_tee = true;
        limits->bore_warns = true;
    }
    if (circuit == OW_COOLANT)
        limits->restrictor = OW_RESTRICTOR_FORBIDDEN;
}

static ow_span whole(const char *words)
{
    return (ow_span){0, strlen(words)};
}

/* How to mend a quantity with a decimal comma, or NULL. */
static const char *comma_mend(const char *words)
{
    return strchr(words, ',') != NULL ? "write a point for the decimal comma" : NULL;
}

static void out_of_range(ow_asking *asking, const char *option, const char *words, ow_dimension dimension,
                         double low, double high)
{
    ow_text expected = ow_text_new(asking->context);
    ow_quantity_write(&expected, dimension, low, 6);
    ow_text_add(&expected, " to ");
    ow_quantity_write(&expected, dimension, high, 6);
    ow_asking_fault(asking, option, words, whole(words), ow_asking_keep(asking, &expected), NULL,
                    "this is out of range");
}

/* Words that were given for a length, a pressure, a temperature between two bounds. */
static void read_between(ow_asking *asking, const char *option, const char *words, ow_dimension dimension,
                         double low, double high, double *value)
{
    double read = 0.0;
    if (words == NULL)
        return;
    if (ow_quantity_read(words, dimension, &read) != OW_OK)
        ow_asking_fault(asking, option, words, whole(words), ow_dimension_expected(dimension),
                        comma_mend(words), "this cannot be read as a quantity");
    else if (read < low || read > high)
        out_of_range(asking, option, words, dimension, low, high);
    else
        *value = read;
}

/* The same in the bounds that `asked` has for it, so that a layout can say it again. */
static void read_asked(ow_asking *asking, const char *option, const char *words, double *value)
{
    const ow_asked_key *key = ow_asked_key_find(option + strlen("--"));
    read_between(asking, option, words, key->dimension, key->low, key->high, value);
}

static void read_orifice(ow_asking *asking, const char *words, ow_limits *limits)
{
    const ow_asked_key *key = ow_asked_key_find("orifice");
    double low, high;
    if (words == NULL)
        return;
    if (ow_quantity_read_range(words, key->dimension, &low, &high) != OW_OK) {
        ow_asking_fault(asking, "--orifice", words, whole(words), "a range of lengths such as 0.8..1.2 mm",
                        comma_mend(words), "this cannot be read as a range");
    } else if (low < key->low || high > key->high) {
        out_of_range(asking, "--orifice", words, key->dimension, key->low, key->high);
    } else {
        limits->orifice_low_m = low;
        limits->orifice_high_m = high;
    }
}

void ow_hose_length_read(ow_asking *asking, const char *words, double *length_m)
{
    read_between(asking, "--hose", words, OW_LENGTH, OW_HOSE_LENGTH_LOW_M, OW_HOSE_LENGTH_HIGH_M, length_m);
}

size_t ow_asking_choice(ow_asking *asking, const char *option, const char *words, const char *const *choices,
                        size_t count, size_t none)
{
    if (words == NULL)
        return none;
    for (size_t index = 0; index < count; index++) {
        if (ow_words_equal(words, choices[index]))
            return index;
    }
    ow_text expected = ow_text_new(asking->context);
    for (size_t index = 0; index < count; index++)
        ow_text_format(&expected, "%s%s",
                       index == 0          ? ""
                       : index + 1 < count ? ", "
                                           : " or ",
                       choices[index]);
    const char *nearest = ow_words_nearest(words, strlen(words), choices, count);
    ow_asking_fault(asking, option, words, whole(words), ow_asking_keep(asking, &expected),
                    ow_asking_did_you_mean(asking, nearest), "not a word known here");
    return none;
}

static void read_choices(ow_asking *asking, const ow_ask_words *words, ow_limits *limits)
{
    static const char *const choices[] = {"any", "yes", "no", "some"};
    static const char *const yes_no[] = {"no", "yes"};
    static const char *const restrictors[] = {"any", "required", "forbidden", "by-unit"};
    static const char *const fluids[] = {"oil", "coolant"};
    limits->flexible = (ow_choice)ow_asking_choice(asking, "--flexible", words->flexible, choices, 4,
                                                   (size_t)limits->flexible);
    limits->closing = ow_asking_choice(asking, "--closing", words->closing, yes_no, 2, limits->closing) == 1;
    limits->restrictor = (ow_restrictor_ask)ow_asking_choice(asking, "--restrictor", words->restrictor,
                                                             restrictors, 4, (size_t)limits->restrictor);
    size_t fluid = ow_asking_choice(asking, "--fluid", words->fluid, fluids, 2, 2);
    if (fluid < 2)
        limits->fluid = fluid == 0 ? OW_FLUID_OIL : OW_FLUID_COOLANT;
}

void ow_limits_read(ow_asking *asking, const ow_ask_words *words, ow_limits *limits)
{
    read_choices(asking, words, limits);
    read_asked(asking, "--bore", words->bore, &limits->least_bore_m);
    if (words->bore != NULL)
        limits->bore_warns = false;
    read_asked(asking, "--rating", words->rating, &limits->rating_pa);
    if (words->temperature != NULL) {
        read_asked(asking, "--temperature", words->temperature, &limits->temperature_c);
        limits->has_temperature = true;
    }
    read_orifice(asking, words->orifice, limits);
    limits->tolerate = words->tolerate;
    limits->remote_switch = words->remote_switch;
}
