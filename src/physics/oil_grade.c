/* SPDX-License-Identifier: MIT */
/* Grades as people write them: "15W-40", "sae 15w40", "SAE 30", "30". */
#include <ctype.h>
#include <string.h>

#include "base/words.h"
#include "oilway/oil.h"

#define GRADE_LETTERS 12

/* Leaves letters and digits only, without a leading SAE. False if it is longer than any grade. */
static bool plain_grade(const char *words, char plain[GRADE_LETTERS])
{
    size_t length = 0;
    for (; *words != '\0'; words++) {
        unsigned char letter = (unsigned char)*words;
        if (letter == ' ' || letter == '-' || letter == '\t')
            continue;
        if (length + 1 >= GRADE_LETTERS || letter >= 0x80)
            return false;
        plain[length++] = (char)(letter >= 'a' && letter <= 'z' ? letter - 'a' + 'A' : letter);
    }
    plain[length] = '\0';
    if (strncmp(plain, "SAE", 3) == 0)
        memmove(plain, plain + 3, length - 3 + 1);
    return plain[0] != '\0';
}

const ow_sae_grade *ow_sae_grade_find(const char *name, size_t length)
{
    for (size_t i = 0; i < ow_sae_grade_count(); i++)
        if (ow_words_equal_bytes(name, length, ow_sae_grade_at(i)->name))
            return ow_sae_grade_at(i);
    return NULL;
}

const ow_typical_oil *ow_typical_oil_find(const char *grade)
{
    char asked[GRADE_LETTERS], known[GRADE_LETTERS];
    if (grade == NULL || !plain_grade(grade, asked))
        return NULL;
    for (size_t i = 0; i < ow_typical_oil_count(); i++)
        if (plain_grade(ow_typical_oil_at(i)->name, known) && strcmp(asked, known) == 0)
            return ow_typical_oil_at(i);
    return NULL;
}

ow_status ow_typical_oil_assume(const ow_typical_oil *oil, ow_assumptions *assumptions)
{
    return ow_assumptions_add(assumptions, OW_MARK_ASSUMED, "oil", oil->source,
                              "%s: %.4g mm2/s at 40 C, %.4g at 100 C, %.0f kg/m3 at 15 C", oil->name,
                              oil->kv40_mm2s, oil->kv100_mm2s, oil->density15_kgm3);
}

ow_status ow_oil_density_assume(double density15_kgm3, ow_assumptions *assumptions)
{
    return ow_assumptions_add(assumptions, OW_MARK_ASSUMED, "oil density at 15 C",
                              "middle of the typical oils", "%.0f kg/m3", density15_kgm3);
}

bool ow_oil_grade_window(const char *grade, double *low_mm2s, double *high_mm2s)
{
    char plain[GRADE_LETTERS];
    if (grade == NULL || !plain_grade(grade, plain))
        return false;
    const char *after_w = strchr(plain, 'W');
    size_t winter_length = after_w != NULL ? (size_t)(after_w - plain) + 1 : 0;
    const ow_sae_grade *winter = NULL, *summer = NULL;
    if (winter_length > 0 && (winter = ow_sae_grade_find(plain, winter_length)) == NULL)
        return false;
    const char *rest = plain + winter_length;
    if (*rest != '\0') {
        summer = ow_sae_grade_find(rest, strlen(rest));
        if (summer == NULL || summer->kv100_high_mm2s <= 0.0)
            return false;
    }
    *low_mm2s = winter != NULL ? winter->kv100_low_mm2s : 0.0;
    *high_mm2s = OW_OIL_KV100_HIGH_MM2S;
    if (summer != NULL) {
        *low_mm2s = summer->kv100_low_mm2s > *low_mm2s ? summer->kv100_low_mm2s : *low_mm2s;
        *high_mm2s = summer->kv100_high_mm2s;
    }
    return true;
}
