/* SPDX-License-Identifier: MIT */
/* Two lines as two ends: the verdict does not hang on their order, agrees with the table of joints, and the
 * card is there whenever it seals. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/card.h"
#include "oilway/mates.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(bool holds)
{
    if (!holds)
        abort();
}

static void check_pair(const ow_end *a, const ow_end *b)
{
    ow_mates first, second;
    ow_card card;
    ow_status status = ow_mates_judge(a, b, &first);
    must(ow_mates_judge(b, a, &second) == status);
    bool joins = ow_joint_find(a, b) != NULL;
    must(joins == (ow_joint_find(b, a) != NULL));
    must(joins == (ow_card_of(a, b, NULL, &card) == OW_OK));
    must(status == OW_OK || !ow_end_is_whole(a) || !ow_end_is_whole(b));
    if (status != OW_OK)
        return;
    must(first.verdict == second.verdict && strcmp(first.why, second.why) == 0 && first.why[0] &&
         first.source[0]);
    must(joins == (first.verdict == OW_SEALS || first.verdict == OW_TOLERATED));
    must(!first.has_turns || (first.turns_least >= 0.0 && first.turns_least <= first.turns_most));
    for (size_t i = 0; joins && i < card.consumable_count; i++)
        must(card.consumables[i].what[0] && card.consumables[i].source[0]);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size > 4096)
        return 0;
    char *words = malloc(size + 1);
    if (!words)
        return 0;
    memcpy(words, data, size);
    words[size] = '\0';
    char *line_end = strchr(words, '\n');
    ow_end a, b;
    if (line_end) {
        *line_end = '\0';
        if (ow_end_read(words, &a, NULL) == OW_OK && ow_end_read(line_end + 1, &b, NULL) == OW_OK)
            check_pair(&a, &b);
    }
    free(words);
    return 0;
}
