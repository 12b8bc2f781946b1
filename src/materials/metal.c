/* SPDX-License-Identifier: MIT */
#include "materials/metal.h"

#include <string.h>

#include "base/words.h"
#include "oilway/metal.h"

/* The first that stands in the words decides. */
static const struct material_word {
    const char *word;
    unsigned bits;
} WORDS[] = {
    {"alumin", OW_ALUMINIUM},    {"light alloy", OW_ALUMINIUM},
    {"brass", OW_COPPER_ALLOY},  {"bronze", OW_COPPER_ALLOY},
    {"copper", OW_COPPER_ALLOY}, {"steel", OW_STEEL},
    {"stainless", OW_STEEL},     {"iron", OW_STEEL},
};

static bool holds(const char *words, const char *word)
{
    size_t length = strlen(word), rest = strlen(words);
    for (; rest >= length; words++, rest--)
        if (ow_words_equal_bytes(words, length, word))
            return true;
    return false;
}

unsigned ow_material_bits(const char *material)
{
    for (size_t i = 0; material && i < sizeof WORDS / sizeof WORDS[0]; i++)
        if (holds(material, WORDS[i].word))
            return WORDS[i].bits;
    return 0;
}

unsigned ow_material_hardness(const char *material)
{
    static const unsigned SOFTEST_FIRST[] = {OW_ALUMINIUM, OW_COPPER_ALLOY, OW_STEEL};
    unsigned bits = ow_material_bits(material), hardness = 0;
    while (hardness < sizeof SOFTEST_FIRST / sizeof SOFTEST_FIRST[0] && SOFTEST_FIRST[hardness] != bits)
        hardness++;
    return hardness;
}

bool ow_material_is_known(const char *material)
{
    return ow_material_bits(material) != 0;
}

const ow_metal *ow_metal_of(const char *material)
{
    unsigned bits = ow_material_bits(material);
    for (size_t i = 0; bits != 0 && i < ow_metal_count(); i++)
        if (ow_metal_at(i)->bits == bits)
            return ow_metal_at(i);
    return NULL;
}
