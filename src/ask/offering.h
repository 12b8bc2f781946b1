/* SPDX-License-Identifier: MIT */
/* Shared between the files that read along while somebody types. */
#ifndef OW_ASK_OFFERING_H
#define OW_ASK_OFFERING_H

#include "oilway/offer.h"

/* One thing that could be meant. */
typedef struct ow_candidate_port {
    int score; /* how near to what was typed; 0 is nearest */
    int rank;  /* how likely it is wanted, among equals */
    char words[OW_END_TEXT_SIZE + 96];
    const ow_machine *machine; /* with or without port */
    const ow_port *port;
    const ow_part *fixture;
    ow_end end; /* where there is neither */
} ow_candidate_port;

typedef struct ow_offering {
    ow_candidate_port items[OW_OFFERS_MAX]; /* the nearest, in order */
    size_t count;
} ow_offering;

/* Gathers what the words could become. */
void ow_offers_gather(const ow_catalog *catalog, const ow_net *net, const char *words, ow_wanted wanted,
                      ow_offering *offering);

/* How near a candidate is to what was typed: 0 it begins so, 1 each word typed begins a word of it, in order,
 * 2 the same with its title, -1 not at all. ASCII case and further blanks do not count. */
int ow_offer_score(const char *typed, const char *words, const char *title);

/* In one line: what it is, and how to know it. */
void ow_say_port(ow_text *text, const ow_machine *machine, const ow_port *port);
void ow_say_machine(ow_text *text, const ow_machine *machine);
void ow_say_fixture(ow_text *text, const ow_part *fixture);
void ow_say_end(ow_text *text, const ow_end *end);

#endif
