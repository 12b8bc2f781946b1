/* SPDX-License-Identifier: MIT */
/* One record: which keys its kind has, what it must say, and the part or machine that it becomes. */
#ifndef OW_CATALOG_RECORD_H
#define OW_CATALOG_RECORD_H

#include "catalog/reader.h"

/* A key of a record: a field, or one of its ends. */
typedef struct ow_key {
    const char *word;
    const ow_field *field; /* NULL: an end */
    size_t slot;           /* of an end */
    bool plain, alternate; /* the sets of ends that it belongs to */
} ow_key;

/* A record that says nothing yet. */
void ow_draft_begin(ow_draft *draft, ow_kind kind);
/* False if a record of this kind has no such key. */
bool ow_key_find(ow_kind kind, const char *word, ow_key *key);
/* Reports a key that the kind has not, with what it has; `also` are further words of the page. */
ow_status ow_key_unknown(ow_reader *reader, ow_kind kind, const char *word, ow_span span, const char *also);
/* Marks the key as said, without reading it. */
void ow_key_say(const ow_key *key, ow_draft *draft);
ow_status ow_key_read(ow_reader *reader, const ow_key *key, const ow_yaml *node, ow_draft *draft);
/* Reports each thing that a record of its kind must say and that was not said. */
ow_status ow_draft_complete(ow_reader *reader, const ow_draft *draft, ow_span span, const char *how);
/* Fills ends' names and legs and what follows from the fields. */
void ow_draft_part(const ow_draft *draft, ow_part *part);
void ow_draft_machine(const ow_draft *draft, ow_machine *machine);

/*
 * Reads a record written somewhere else in the catalogue's own words, as a job may hold its engine: a
 * map with the fields of that kind (`kind` itself may stand there and must agree). The machine and its
 * words live in the arena. OW_INPUT: reported.
 */
ow_status ow_machine_read(const ow_context *context, const ow_source *source, const ow_yaml *map,
                          ow_kind kind, ow_arena *arena, const ow_machine **machine);

/* Bores of the legs from what was said of the whole, the run, the branch, the side and the holes. */
void ow_fill_legs(const ow_draft *draft, ow_part *part);

#endif
