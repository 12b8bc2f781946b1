/* SPDX-License-Identifier: MIT */
/* Reads one value of a page into its field: the only code that knows the field types. */
#ifndef OW_CATALOG_READER_H
#define OW_CATALOG_READER_H

#include "base/map.h"
#include "catalog/fields.h"
#include "yaml/yaml.h"

/* A port's word on the switch that sits in it, to be looked up once all pages are read. */
typedef struct ow_held {
    const ow_source *source;
    ow_span span;
    const char *id, *port;
} ow_held;

/* What reading needs, and remembers: words written often are kept once, an end's text is read once. */
typedef struct ow_reader {
    const ow_context *context; /* allocates and reports */
    const ow_source *source;   /* the text being read */
    ow_arena *arena;           /* where words and ports go */
    ow_map words;
    const char **word_list;
    size_t word_count, word_capacity;
    ow_map ends;
    ow_end *end_list;
    size_t end_count, end_capacity;
    ow_held *held;
    size_t held_count, held_capacity;
    const size_t *faults; /* told of this text so far */
} ow_reader;

/* So many faults of one text are told; then the rest of it is not read. */
#define OW_CATALOG_FAULTS_MAX 500
bool ow_reader_enough(const ow_reader *reader);

ow_reader ow_reader_new(const ow_context *context, ow_arena *arena, const size_t *faults);
void ow_reader_done(ow_reader *reader);

/* The one copy of these words; NULL when out of memory. */
const char *ow_reader_words(ow_reader *reader, const char *words);

/*
 * Reads node as the field's value into *draft. OW_INPUT: reported, the draft is as it was. OW_MEMORY.
 * A null node says nothing: OW_OK.
 */
ow_status ow_field_read(ow_reader *reader, const ow_field *field, const ow_yaml *node, void *draft);
/* Reads a whole end (pitch and seat said); the fault is marked inside the value. */
ow_status ow_reader_end(ow_reader *reader, const char *key, const ow_yaml *node, ow_end *end);
/* Reads a map whose keys are fields of a table into *draft. *said gets a bit for each field written. */
ow_status ow_fields_read(ow_reader *reader, ow_field_table table, const char *of, const ow_yaml *map,
                         void *draft, uint64_t *said);
/* A map of named ports. */
ow_status ow_ports_read(ow_reader *reader, const ow_yaml *node, size_t *count, ow_port **ports);
/* Whether the words may be an id; else it is reported. */
ow_status ow_reader_id(ow_reader *reader, const char *key, const char *words, ow_span span);
/* Reports a word that is not known; nearest (may be NULL) becomes "did you mean …?". */
ow_status ow_misspelt(const ow_context *context, const ow_source *source, ow_span span, const char *expected,
                      const char *nearest, const char *message_format, ...)
    __attribute__((format(printf, 6, 7)));
/* Where a span begins. */
ow_place ow_reader_place(const ow_reader *reader, ow_span span);

#define OW_MACHINE_PORTS_MAX 64

#endif
