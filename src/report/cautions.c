/* SPDX-License-Identifier: MIT */
/* The usual cautions: short, at the end of every sheet. */
#include <string.h>

#include "oilway/report.h"

static const struct caution {
    const char *circuits; /* "" = all */
    const char *words;
} cautions[] = {
    {"feed drain",
     "Hot oil under pressure burns and catches fire on a hot turbine housing: check every joint for leaks."},
    {"feed",
     "A starved bearing bursts: prime the turbo with oil, and see pressure before the engine is revved."},
    {"coolant",
     "Hot coolant scalds: open nothing before it is cold, and bleed the air out at the highest point."},
    {"", "The makers' data, local codes and a qualified fitter go before these figures; what is assumed is "
         "to be measured."},
};

/* Whether one of the blank separated words is the word. */
static bool is_among(const char *words, const char *word)
{
    size_t length = strlen(word);
    while (*words != '\0') {
        size_t size = strcspn(words, " ");
        if (size == length && memcmp(words, word, length) == 0)
            return true;
        words += size + (words[size] == ' ' ? 1 : 0);
    }
    return false;
}

void ow_report_cautions(ow_text *text, ow_circuit circuit, const char *bullet)
{
    for (size_t i = 0; i < sizeof cautions / sizeof cautions[0]; i++) {
        if (cautions[i].circuits[0] == '\0' || circuit == OW_CIRCUIT_NONE ||
            is_among(cautions[i].circuits, ow_circuit_word(circuit)))
            ow_text_format(text, "%s%s\n", bullet, cautions[i].words);
    }
}
