/* SPDX-License-Identifier: MIT */
/* Any words typed where a port or an end is wanted: they mean something or have a fault in them, and every
 * offer that is made is understood when it is taken. */
#include <string.h>

#include "oilway/offer.h"
#include "support/fuzzing.h"

static const char pages[] =
    "{kind: engine, id: brockle-4, title: Brockle four, ports: {gallery: {end: 1/8-27 NPT female, circuit: "
    "feed, "
    "holds: sw-2}, bung: {end: -10 o-ring female, circuit: drain}}}\n"
    "---\n{kind: turbo, id: plover-41, ports: {oil-in: {end: M12x1.5 female washer, circuit: feed}}}\n"
    "---\n{kind: switch, id: sw-2, title: Oil pressure switch, a: 1/8-27 NPT male}\n"
    "---\n{kind: adapter, page: a, columns: [id, a, b, bore], rows: [[tf-2-4, 1/8-27 NPT male, -4 flare37 "
    "male, 4 "
    "mm]]}\n";

/* One of the offers, by chance of the words: each costs as much as the words themselves. */
static void take_offer(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                       const ow_typed *typed, ow_wanted wanted, size_t size)
{
    ow_typed taken;
    if (typed->offer_count == 0)
        return;
    const ow_offer *offer = &typed->offers[size % typed->offer_count];
    OW_FUZZ_CHECK(ow_typed_read(context, catalog, net, offer->words, wanted, &taken) == OW_OK);
    OW_FUZZ_CHECK(taken.meaning != OW_MEANS_NOTHING);
    OW_FUZZ_CHECK(strcmp(taken.says, offer->says) == 0);
    ow_typed_done(&taken);
}

static void look_at(const ow_typed *typed, size_t size)
{
    OW_FUZZ_CHECK(typed->offer_count <= OW_OFFERS_MAX && typed->says != NULL);
    if (typed->meaning == OW_MEANS_NOTHING)
        OW_FUZZ_CHECK(typed->message != NULL && typed->column <= size + 1 && typed->width <= size + 1);
    else
        OW_FUZZ_CHECK(typed->message == NULL && typed->has_end == (typed->meaning != OW_MEANS_MACHINE));
    OW_FUZZ_CHECK((typed->reading_count > 1) == (typed->decide != NULL));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static ow_catalog *catalog;
    static ow_net *net;
    static const char *const name = "c.yaml", *const text = pages;
    static const ow_context context = OW_CONTEXT_INIT;
    if (catalog == NULL && (ow_catalog_load_texts(&context, &name, &text, 1, NULL, &catalog) != OW_OK ||
                            ow_net_build(&context, catalog, &net) != OW_OK))
        abort();
    char *words = malloc(size + 1);
    if (words == NULL || size > 200) {
        free(words);
        return 0;
    }
    memcpy(words, data, size);
    words[size] = '\0';
    for (int wanted = OW_WANTED_FROM; wanted <= OW_WANTED_END; wanted++) {
        ow_typed typed;
        OW_FUZZ_CHECK(ow_typed_read(&context, catalog, net, words, (ow_wanted)wanted, &typed) == OW_OK);
        look_at(&typed, strlen(words));
        take_offer(&context, catalog, net, &typed, (ow_wanted)wanted, size);
        ow_typed_done(&typed);
    }
    free(words);
    return 0;
}
