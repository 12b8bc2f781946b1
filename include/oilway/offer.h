/* SPDX-License-Identifier: MIT */
/*
 * Reading along while somebody types where a port is wanted: what the words mean so far, what is wrong with
 * them, and what they could become. For pages and prompts; docs/api.md shows it at work.
 */
#ifndef OILWAY_OFFER_H
#define OILWAY_OFFER_H

#include "oilway/ask.h"

/* What the words are wanted for. */
typedef enum ow_wanted {
    OW_WANTED_FROM, /* a source: engine:port, an engine, or an end */
    OW_WANTED_TO,   /* turbo:port, a turbo, or an end */
    OW_WANTED_KEEP, /* a switch, a sender, or an end */
    OW_WANTED_END   /* an end only */
} ow_wanted;

typedef enum ow_meaning {
    OW_MEANS_NOTHING, /* see the fault */
    OW_MEANS_PORT,    /* a machine's port */
    OW_MEANS_MACHINE, /* a machine alone: one of its ports is meant */
    OW_MEANS_FIXTURE, /* a switch or a sender */
    OW_MEANS_END
} ow_meaning;
/* "port", "machine", "fixture", "end"; NULL for nothing. */
const char *ow_meaning_word(ow_meaning meaning);

typedef struct ow_offer {
    const char *words; /* what to write */
    const char *says;  /* what it is */
} ow_offer;

#define OW_OFFERS_MAX ((size_t)12)

typedef struct ow_typed {
    const ow_context *context;
    ow_meaning meaning;
    const ow_machine *machine; /* PORT, MACHINE */
    const ow_port *port;       /* PORT */
    const ow_part *fixture;    /* FIXTURE */
    bool has_end;              /* all but MACHINE */
    ow_end end;
    const char *says; /* in one line; "" for NOTHING */
    /* What an end that is not said whole may be, and how to tell; one reading and NULL if it is. */
    const ow_end *readings;
    size_t reading_count;
    const char *decide;
    /* NOTHING: where, in characters from 1, and why. */
    size_t column, width;
    const char *message, *expected, *mend; /* the last two may be NULL */
    ow_offer offers[OW_OFFERS_MAX];        /* nearest to what was typed first; never the very same words */
    size_t offer_count;
    void *storage;
} ow_typed;

/*
 * Reads words as they are typed. OW_OK whatever they are, reporting nothing; OW_MEMORY: *typed untouched.
 * Lends from the catalogue; freed with ow_typed_done. Cost: the catalogue's ports and kinds of end, and all
 * known ends, once.
 */
ow_status ow_typed_read(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                        const char *words, ow_wanted wanted, ow_typed *typed);
void ow_typed_done(ow_typed *typed);

#endif
