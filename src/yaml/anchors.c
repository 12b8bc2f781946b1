/* SPDX-License-Identifier: MIT */
/* Anchors, aliases and what they expand to; tags. */
#include <string.h>

#include "base/words.h"
#include "yaml/reader.h"

#define CORE_PREFIX "tag:yaml.org,2002:"

typedef struct core_tag {
    const char *name;
    ow_yaml_kind kind;
    bool text; /* makes a scalar text, whatever it looks like */
} core_tag;

/* The tags that change nothing here but to make a text of a scalar. */
static const core_tag core_tags[] = {
    {"str", OW_YAML_SCALAR, true},   {"int", OW_YAML_SCALAR, false},  {"float", OW_YAML_SCALAR, false},
    {"bool", OW_YAML_SCALAR, false}, {"null", OW_YAML_SCALAR, false}, {"seq", OW_YAML_LIST, false},
    {"map", OW_YAML_MAP, false},
};

ow_status ow_yaml_tag(ow_yaml_reader *reader, const yaml_char_t *tag, ow_yaml_kind kind, ow_span span,
                      bool *quoted)
{
    if (tag == NULL)
        return OW_OK;
    const char *name = (const char *)tag;
    if (strcmp(name, "!") == 0) {
        *quoted = true;
        return OW_OK;
    }
    size_t prefix = strlen(CORE_PREFIX);
    if (strncmp(name, CORE_PREFIX, prefix) == 0) {
        for (size_t i = 0; i < sizeof core_tags / sizeof core_tags[0]; i++) {
            if (strcmp(name + prefix, core_tags[i].name) == 0 && core_tags[i].kind == kind) {
                *quoted = *quoted || core_tags[i].text;
                return OW_OK;
            }
        }
    }
    ow_source_report(reader->context, OW_ERROR, OW_INPUT, &reader->yaml->source, span, NULL,
                     "take the tag out", "the tag \"%.60s\" is not read here", name);
    return ow_yaml_counted(reader);
}

ow_status ow_yaml_anchor_begin(ow_yaml_reader *reader, const yaml_char_t *name, ow_yaml *node, bool open,
                               size_t *index)
{
    const char *words = (const char *)name;
    char *kept = ow_arena_copy(&reader->yaml->arena, words, strlen(words));
    if (kept == NULL || ow_grow(reader->context, (void **)&reader->anchors, &reader->anchor_capacity,
                                reader->anchor_count + 1, sizeof *reader->anchors) != OW_OK)
        return OW_MEMORY;
    ow_status status = ow_map_put(&reader->names, kept, reader->anchor_count);
    if (status != OW_OK)
        return status;
    *index = reader->anchor_count;
    reader->anchors[reader->anchor_count++] = (ow_yaml_anchor){node, 1, 0, open};
    return OW_OK;
}

ow_status ow_yaml_expand(ow_yaml_reader *reader, size_t nodes, ow_span span)
{
    if (nodes > OW_YAML_NODES_MAX - reader->expanded)
        return ow_source_report(reader->context, OW_ERROR, OW_LIMIT, &reader->yaml->source, span, NULL,
                                "split the text, or use fewer aliases",
                                "with its aliases written out this text has more than %zu values",
                                OW_YAML_NODES_MAX);
    reader->expanded += nodes;
    return OW_OK;
}

const ow_yaml_anchor *ow_yaml_anchor_of(ow_yaml_reader *reader, const yaml_char_t *name, ow_span span,
                                        ow_status *status)
{
    const char *words = (const char *)name;
    const ow_source *source = &reader->yaml->source;
    size_t index = ow_map_get(&reader->names, words);
    if (index == OW_MAP_NONE) {
        ow_source_report(reader->context, OW_ERROR, OW_INPUT, source, span, NULL, NULL,
                         "no anchor \"&%.60s\" stands before this alias", words);
        *status = ow_yaml_counted(reader);
        return NULL;
    }
    const ow_yaml_anchor *anchor = &reader->anchors[index];
    if (anchor->open) {
        ow_source_report(reader->context, OW_ERROR, OW_INPUT, source, span, NULL, NULL,
                         "the alias \"*%.60s\" stands inside what it names", words);
        *status = ow_yaml_counted(reader);
        return NULL;
    }
    if (reader->depth + anchor->height > OW_YAML_DEPTH_MAX) {
        *status = ow_source_report(reader->context, OW_ERROR, OW_LIMIT, source, span, NULL, NULL,
                                   "through this alias lists and maps are nested more than %d deep",
                                   OW_YAML_DEPTH_MAX);
        return NULL;
    }
    *status = ow_yaml_expand(reader, anchor->expanded, span);
    return *status == OW_OK ? anchor : NULL;
}
