/* SPDX-License-Identifier: MIT */
#include "oilway/mates_ask.h"

#include <string.h>

#include "base/source.h"
#include "oilway/quantity.h"

typedef struct mates_reading {
    const ow_context *context;
    ow_status status;
} mates_reading;

/* The message goes on from the words: "M12x1.5 is no thread". */
static void fault(mates_reading *reading, const char *option, const char *words, const char *expected,
                  const char *message)
{
    ow_source source = {option, words, strlen(words)};
    reading->status = ow_source_report(reading->context, OW_ERROR, OW_INPUT, &source,
                                       (ow_span){0, source.length}, expected, NULL, "%s %s", words, message);
}

/* A bolt goes through the hole of its eye, and fills it: 3/8-24 goes with 10 mm (DIN 7643), 7/16 with 11 and
 * G1/4 with 13, which are names to the millimetre. */
static bool bolt_fits(const ow_mates_ask *ask)
{
    for (size_t index = 0; index < ask->end_count; index++) {
        double hole_m = (double)ask->ends[index].size * 1e-6;
        double play_m = hole_m - ow_thread_major_m(&ask->bolt);
        if (ask->ends[index].form == OW_FORM_BANJO && (play_m < -0.00025 || play_m > 0.001))
            return false;
    }
    return true;
}

static void read_bolt(mates_reading *reading, const char *words, ow_mates_ask *ask)
{
    size_t used = 0;
    if (words == NULL)
        return;
    if (ow_thread_read(words, &ask->bolt, &used) != OW_OK || words[used] != '\0' || ask->bolt.pitch == 0)
        fault(reading, "--bolt", words, "a thread such as M10x1 or 3/8-24 UNF",
              "is no thread with its pitch");
    else if (reading->status == OW_OK && !bolt_fits(ask))
        fault(reading, "--bolt", words, "a bolt that fills the eye's hole",
              "does not go with an eye of that size");
    else
        ask->card.bolt = &ask->bolt;
}

static void read_card(mates_reading *reading, const ow_mates_words *words, ow_mates_ask *ask)
{
    ask->card.material = words->material;
    if (words->material != NULL && !ow_material_is_known(words->material))
        fault(reading, "--material", words->material,
              "steel, iron, stainless, aluminium, light alloy, brass, bronze or copper",
              "is no material that figures are sorted by");
    if (words->engaged != NULL &&
        (ow_quantity_read(words->engaged, OW_LENGTH, &ask->card.engaged_m) != OW_OK ||
         ask->card.engaged_m <= 0.0))
        fault(reading, "--engaged", words->engaged, ow_dimension_expected(OW_LENGTH), "is no length");
}

ow_status ow_mates_ask_read(const ow_context *context, const ow_catalog *catalog, const ow_mates_words *words,
                            ow_mates_ask *ask)
{
    mates_reading reading = {context, OW_OK};
    *ask = (ow_mates_ask){.end_count = words->end_count};
    for (size_t index = 0; index < words->end_count && reading.status != OW_MEMORY; index++) {
        ow_status status = ow_end_named_read(context, catalog, "END", words->ends[index], &ask->ends[index]);
        if (status != OW_OK)
            reading.status = status;
    }
    if (reading.status == OW_MEMORY)
        return OW_MEMORY;
    read_bolt(&reading, words->bolt, ask);
    read_card(&reading, words, ask);
    return reading.status;
}

ow_status ow_mates_find(const ow_context *context, const ow_net *net, const ow_mates_ask *ask,
                        ow_mates_list *list)
{
    size_t count = ow_net_kind_count(net);
    ow_end *kinds = ow_resize(context, NULL, (count + 1) * sizeof *kinds);
    if (kinds == NULL)
        return OW_MEMORY;
    for (size_t index = 0; index < count; index++)
        kinds[index] = *ow_net_kind_at(net, index);
    ow_status status = ask->end_count == 2
                           ? ow_mates_pair(context, &ask->ends[0], &ask->ends[1], kinds, count, list)
                           : ow_mates_of(context, &ask->ends[0], kinds, count, list);
    ow_release(context, kinds);
    return status;
}
