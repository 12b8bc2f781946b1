/* SPDX-License-Identifier: MIT */
/* The state of one reading, shared by the files of this folder. */
#ifndef OW_YAML_READER_H
#define OW_YAML_READER_H

#include <yaml.h>

#include "base/map.h"
#include "yaml/yaml.h"

/* Faults told of one text before reading stops: past that the text is something else than it claims. */
#define OW_YAML_FAULTS_MAX 100

typedef struct ow_yaml_anchor {
    ow_yaml *node;
    size_t expanded; /* nodes it stands for, aliases in it counted as often as they are used */
    size_t height;   /* levels of lists and maps, 0 = a scalar */
    bool open;       /* its end is not reached yet */
} ow_yaml_anchor;

/* A list or map whose end is not reached yet. */
typedef struct ow_yaml_frame {
    ow_yaml *node;
    ow_yaml *last;
    const char *key; /* of the member whose value comes next; NULL: a key comes next */
    ow_span key_span;
    size_t height;
    size_t expanded_before; /* the reader's count when it began */
    size_t anchor;          /* OW_MAP_NONE: it has none */
    bool is_key;            /* stands where a key should: told, read and dropped */
    bool drop_value;        /* the next value has no usable key */
} ow_yaml_frame;

typedef struct ow_yaml_reader {
    const ow_context *context;
    ow_yaml_text *yaml;
    yaml_parser_t parser;
    bool ascii; /* then characters and bytes are the same */
    size_t start;
    size_t character, byte; /* a place known in both measures, byte counted in the source */
    ow_yaml_frame frames[OW_YAML_DEPTH_MAX];
    size_t depth;
    ow_map names; /* of anchors, in this document */
    ow_yaml_anchor *anchors;
    size_t anchor_count, anchor_capacity;
    size_t expanded;
    size_t document_capacity;
    size_t fault_count;
} ow_yaml_reader;

/* The bytes between two of libyaml's marks, which count characters. */
ow_span ow_yaml_span(ow_yaml_reader *reader, const yaml_mark_t *from, const yaml_mark_t *to);
/* Counts a fault that was reported: OW_OK to read on, OW_INPUT when there were enough. */
ow_status ow_yaml_counted(ow_yaml_reader *reader);

/* Says in words what libyaml found wrong. OW_INPUT, or OW_MEMORY if that was it. */
ow_status ow_yaml_syntax_fault(ow_yaml_reader *reader);
/* Finds and reports keys given twice in one map. OW_MEMORY, or as ow_yaml_counted. */
ow_status ow_yaml_duplicates(ow_yaml_reader *reader, const ow_yaml *map);
/* Refuses tags that are not of the core schema; *quoted is set by "!" and "!!str". As ow_yaml_counted. */
ow_status ow_yaml_tag(ow_yaml_reader *reader, const yaml_char_t *tag, ow_yaml_kind kind, ow_span span,
                      bool *quoted);

/* Remembers an anchor. OW_MEMORY. */
ow_status ow_yaml_anchor_begin(ow_yaml_reader *reader, const yaml_char_t *name, ow_yaml *node, bool open,
                               size_t *index);
/* The anchor that an alias names, or NULL with *status as ow_yaml_counted, or OW_LIMIT. */
const ow_yaml_anchor *ow_yaml_anchor_of(ow_yaml_reader *reader, const yaml_char_t *name, ow_span span,
                                        ow_status *status);
/* Counts nodes against the limit; OW_LIMIT is reported at the span. */
ow_status ow_yaml_expand(ow_yaml_reader *reader, size_t nodes, ow_span span);

#endif
