/* SPDX-License-Identifier: MIT */
/* What a card says in words, by rule. */
#ifndef OW_JOINTS_WORDS_H
#define OW_JOINTS_WORDS_H

#include "oilway/card.h"

typedef struct ow_card_words {
    const char *rule; /* id of the joint rule */
    const char *face, *sealant, *reuse;
    const char *cautions[OW_CARD_CAUTIONS]; /* NULL-filled */
} ow_card_words;

size_t ow_card_words_count(void);
const ow_card_words *ow_card_words_find(const char *rule); /* NULL if there is none */

#endif
