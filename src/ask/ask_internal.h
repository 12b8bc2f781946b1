/* SPDX-License-Identifier: MIT */
/* Shared between the files of src/ask: ports found from words, limits from words, readings. */
#ifndef OW_ASK_INTERNAL_H
#define OW_ASK_INTERNAL_H

#include "base/memory.h"
#include "base/source.h"
#include "oilway/ask.h"

typedef struct ow_asking {
    const ow_context *context;
    const ow_catalog *catalog;
    const ow_ask_words *words;
    const ow_net *net; /* may be NULL: readings then come from the catalogue's fixtures and machines only */
    ow_arena arena;
    bool wrong;         /* a fault was reported */
    bool out_of_memory; /* … but not in full, for lack of memory */
} ow_asking;

/* A port understood. With `machine` and no `port`, an engine alone: every source port is meant. */
typedef struct ow_asked_port {
    ow_given given;
    const char *option; /* "--from", "--to", "--keep" */
    const char *words;  /* as typed behind it */
} ow_asked_port;

/* Reports a fault in the words given to an option and marks the asking as wrong. */
void ow_asking_fault(ow_asking *asking, const char *option, const char *words, ow_span span,
                     const char *expected, const char *mend, const char *message);

/* Words of a report in the arena; NULL and a note when out of memory. */
const char *ow_asking_keep(ow_asking *asking, ow_text *text);
/* "did you mean X?" in the arena; NULL for NULL and, with a note, when out of memory. */
const char *ow_asking_did_you_mean(ow_asking *asking, const char *nearest);

/* The index of words among count choices; `none` when not given or, with a report, when not among them. */
size_t ow_asking_choice(ow_asking *asking, const char *option, const char *words, const char *const *choices,
                        size_t count, size_t none);

/* Finds the port that `words` name. On a fault it is reported and asking->wrong set. */
ow_status ow_asked_port_find(ow_asking *asking, const char *option, const char *words, ow_role role,
                             ow_asked_port *port);

/* Reads the length of each hose: 1 mm to 100 m, as a layout has it. NULL leaves it not said. */
void ow_hose_length_read(ow_asking *asking, const char *words, double *length_m);

/* Lays the options' words over *limits. */
void ow_limits_read(ow_asking *asking, const ow_ask_words *words, ow_limits *limits);

/* The whole ends that `asked` may mean, sorted by text, in the arena. A whole end means itself. */
ow_status ow_readings_find(ow_asking *asking, const ow_end *asked, const ow_end **readings, size_t *count);

/* In words, the measurement or look that tells the readings apart; in the arena. NULL when out of memory. */
const char *ow_readings_decide(ow_asking *asking, const ow_end *readings, size_t count);

/* How to know a seat when one sees it: "a flat spot-faced rim around the hole". Never NULL. */
const char *ow_seat_mark(const ow_end *end);

#endif
