/* SPDX-License-Identifier: MIT */
/* The limits: a circuit's defaults, then what the words say. */
#include <string.h>

#include "ask/ask_internal.h"
#include "base/words.h"

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

/* Bounds of what may be asked for, as docs/layout.md tells them of `asked`, so that a layout can say it. */
typedef struct quantity_range {
    const char *option;
    ow_dimension dimension;
    double least, most;
    const char *words;
} quantity_range;

static const quantity_range BORE = {"--bore", OW_LENGTH, 1e-4, 0.2, "0.1 mm to 200 mm"};
static const quantity_range RATING = {"--rating", OW_PRESSURE, 0.0, 2e8, "0 bar to 2000 bar"};
static const quantity_range TEMPERATURE = {"--temperature", OW_TEMPERATURE, -200.0, 1200.0,
                                           "-200 C to 1200 C"};
static const quantity_range HOSE = {"--hose", OW_LENGTH, 1e-3, 100.0, "1 mm to 100 m"};

/* How to mend a quantity with a decimal comma, or NULL. */
static const char *comma_mend(const char *words)
{
    return strchr(words, ',') != NULL ? "write a point for the decimal comma" : NULL;
}

static void read_quantity(ow_asking *asking, const quantity_range *range, const char *words, double *value)
{
    double read = 0.0;
    if (words == NULL)
        return;
    if (ow_quantity_read(words, range->dimension, &read) != OW_OK)
        ow_asking_fault(asking, range->option, words, whole(words), ow_dimension_expected(range->dimension),
                        comma_mend(words), "this cannot be read as a quantity");
    else if (read < range->least * (1.0 - 1e-12) || read > range->most * (1.0 + 1e-12))
        ow_asking_fault(asking, range->option, words, whole(words), range->words, NULL,
                        "this is out of range");
    else
        *value = read;
}

void ow_hose_length_read(ow_asking *asking, const char *words, double *length_m)
{
    read_quantity(asking, &HOSE, words, length_m);
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
    static const char *const choices[] = {"any", "yes", "no"};
    static const char *const yes_no[] = {"no", "yes"};
    static const char *const restrictors[] = {"any", "required", "forbidden"};
    static const char *const fluids[] = {"oil", "coolant"};
    limits->flexible = (ow_choice)ow_asking_choice(asking, "--flexible", words->flexible, choices, 3,
                                                   (size_t)limits->flexible);
    limits->closing = ow_asking_choice(asking, "--closing", words->closing, yes_no, 2, limits->closing) == 1;
    limits->restrictor = (ow_restrictor_ask)ow_asking_choice(asking, "--restrictor", words->restrictor,
                                                             restrictors, 3, (size_t)limits->restrictor);
    size_t fluid = ow_asking_choice(asking, "--fluid", words->fluid, fluids, 2, 2);
    if (fluid < 2)
        limits->fluid = fluid == 0 ? OW_FLUID_OIL : OW_FLUID_COOLANT;
}

void ow_limits_read(ow_asking *asking, const ow_ask_words *words, ow_limits *limits)
{
    read_choices(asking, words, limits);
    read_quantity(asking, &BORE, words->bore, &limits->least_bore_m);
    if (words->bore != NULL)
        limits->bore_warns = false;
    read_quantity(asking, &RATING, words->rating, &limits->rating_pa);
    if (words->temperature != NULL) {
        read_quantity(asking, &TEMPERATURE, words->temperature, &limits->temperature_c);
        limits->has_temperature = true;
    }
    if (words->orifice != NULL && ow_quantity_read_range(words->orifice, OW_LENGTH, &limits->orifice_low_m,
                                                         &limits->orifice_high_m) != OW_OK)
        ow_asking_fault(asking, "--orifice", words->orifice, whole(words->orifice),
                        "a range of lengths such as 0.8..1.2 mm", NULL, "this cannot be read as a range");
    limits->tolerate = words->tolerate;
    limits->remote_switch = words->remote_switch;
}
