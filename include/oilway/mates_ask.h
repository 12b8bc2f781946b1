/* SPDX-License-Identifier: MIT */
/* From words to a question about mates: ends in the grammar or as those of things in the catalogue. */
#ifndef OILWAY_MATES_ASK_H
#define OILWAY_MATES_ASK_H

#include "oilway/card.h"
#include "oilway/mates.h"
#include "oilway/stack.h"

/* Words as typed; NULL = not given. */
typedef struct ow_mates_words {
    const char *ends[2];                   /* an END, machine:port, a switch's id, part.end */
    size_t end_count;                      /* 1 or 2 */
    const char *material, *bolt, *engaged; /* of the card */
} ow_mates_words;

typedef struct ow_mates_ask {
    size_t end_count;
    ow_end ends[2];
    ow_thread bolt;
    ow_card_ask card; /* may point to `bolt`, so the ask stays where it is; lends the material */
} ow_mates_ask;

/* Reads an end as somebody names it. A fault is reported under `name`, OW_INPUT: *end untouched. OW_MEMORY.
 */
ow_status ow_end_named_read(const ow_context *context, const ow_catalog *catalog, const char *name,
                            const char *words, ow_end *end);

/* Reads the words. All faults are reported, each under its option ("--bolt"; the ends as "END"). OW_INPUT:
 * *ask is then of no use. OW_MEMORY. */
ow_status ow_mates_ask_read(const ow_context *context, const ow_catalog *catalog, const ow_mates_words *words,
                            ow_mates_ask *ask);

/* All mates of the one end, or the verdict on the two, over the net's kinds. As ow_mates_of and
 * ow_mates_pair. */
ow_status ow_mates_find(const ow_context *context, const ow_net *net, const ow_mates_ask *ask,
                        ow_mates_list *list);

#endif
