/* SPDX-License-Identifier: MIT */
/*
 * A YAML 1.1 text as a tree with the place of every node, read by libyaml's events. Reports: syntax
 * faults, duplicate keys, invalid UTF-8, keys that are no scalars, merges and tags that are refused,
 * and texts past the limits. Aliases share the node they name; the expanded size is counted, so that
 * a text whose aliases explode is refused.
 */
#ifndef OW_YAML_H
#define OW_YAML_H

#include "base/memory.h"
#include "base/source.h"
#include "oilway/quantity.h"

#define OW_YAML_DEPTH_MAX 64
#define OW_YAML_NODES_MAX ((size_t)8 * 1000 * 1000) /* expanded, a text */

typedef enum ow_yaml_kind { OW_YAML_SCALAR, OW_YAML_LIST, OW_YAML_MAP } ow_yaml_kind;

typedef struct ow_yaml ow_yaml;
struct ow_yaml {
    ow_yaml_kind kind;
    bool quoted;       /* a scalar in quotes, or block style: never null, never a number by accident */
    ow_span span;      /* in the source */
    const char *words; /* scalar: NUL-terminated, no NUL inside; "" for lists and maps */
    size_t length;
    const char *key; /* of a map's member: its key; NULL otherwise */
    ow_span key_span;
    ow_yaml *first;  /* list items or map members */
    ow_yaml *next;   /* the next item or member */
    ow_yaml *target; /* an alias: the node it stands for (use ow_yaml_real), else NULL */
    size_t count;
};

typedef struct ow_yaml_text {
    ow_source source;
    ow_arena arena;      /* nodes and words */
    ow_yaml **documents; /* in the arena */
    size_t document_count;
} ow_yaml_text;

/* Reads all documents. text stays lent until ow_yaml_done. OW_INPUT, OW_LIMIT, OW_MEMORY: nothing to free. */
ow_status ow_yaml_read(const ow_context *context, const char *name, const char *text, size_t length,
                       ow_yaml_text *yaml);
void ow_yaml_done(ow_yaml_text *yaml);

const ow_yaml *ow_yaml_real(const ow_yaml *node);                   /* follows an alias; NULL for NULL */
const ow_yaml *ow_yaml_member(const ow_yaml *map, const char *key); /* real node, or NULL */
bool ow_yaml_is_null(const ow_yaml *node);                          /* plain ~, null, Null, NULL or nothing */

/* Readers that report in words on a fault, naming the key. Each returns OW_OK or OW_INPUT. */
ow_status ow_yaml_quantity(const ow_context *context, const ow_source *source, const ow_yaml *node,
                           ow_dimension dimension, double low, double high, double *value);
ow_status ow_yaml_number(const ow_context *context, const ow_source *source, const ow_yaml *node, double low,
                         double high, double *value);
ow_status ow_yaml_choice(const ow_context *context, const ow_source *source, const ow_yaml *node,
                         const char *const *words, size_t count, size_t *index);
/* yes/no/true/false/on/off as YAML 1.1 has them. */
ow_status ow_yaml_bool(const ow_context *context, const ow_source *source, const ow_yaml *node, bool *value);
/* Reports every key of map that is not in known, with the nearest; OW_INPUT if any. */
ow_status ow_yaml_known_keys(const ow_context *context, const ow_source *source, const ow_yaml *map,
                             const char *const *known, size_t count);
/* A member that must be there: NULL and a report if it is not. */
const ow_yaml *ow_yaml_need(const ow_context *context, const ow_source *source, const ow_yaml *map,
                            const char *key);
/* The same, with what the line could look like: "engine: brockle-4". */
const ow_yaml *ow_yaml_need_such(const ow_context *context, const ow_source *source, const ow_yaml *map,
                                 const char *key, const char *example);

/* What a document is, by the key that it is headed with. */
typedef enum ow_yaml_document {
    OW_DOCUMENT_LAYOUT,
    OW_DOCUMENT_JOB,
    OW_DOCUMENT_LINE,
    OW_DOCUMENT_LOOP
} ow_yaml_document;
/*
 * Reports a document that is headed as one of another kind, once, instead of each of its keys: OW_INPUT.
 * OW_OK if it is headed as wanted, or as nothing that is known.
 */
ow_status ow_yaml_is_document(const ow_context *context, const ow_source *source, const ow_yaml *map,
                              ow_yaml_document wanted);

#endif
