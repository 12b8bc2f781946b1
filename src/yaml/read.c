/* SPDX-License-Identifier: MIT */
#include "yaml/reader.h"

#include <string.h>

#include "base/progress.h"
#include "base/words.h"

#define EVENTS_BETWEEN 16384 /* tellings of progress */
#define YAML_MESSAGE_DEPTH "lists and maps are nested more than %d deep"

/* Moves the known place to the character asked for. Events come nearly in order, so steps are short. */
static size_t byte_of(ow_yaml_reader *reader, size_t character)
{
    const char *text = reader->yaml->source.text;
    size_t length = reader->yaml->source.length;
    if (reader->ascii)
        return reader->start + character > length ? length : reader->start + character;
    while (reader->character < character && reader->byte < length) {
        do
            reader->byte++;
        while (reader->byte < length && ((unsigned char)text[reader->byte] & 0xC0) == 0x80);
        reader->character++;
    }
    while (reader->character > character && reader->byte > reader->start) {
        do
            reader->byte--;
        while (reader->byte > reader->start && ((unsigned char)text[reader->byte] & 0xC0) == 0x80);
        reader->character--;
    }
    return reader->byte;
}

ow_span ow_yaml_span(ow_yaml_reader *reader, const yaml_mark_t *from, const yaml_mark_t *to)
{
    ow_span span = {byte_of(reader, from->index), 0};
    size_t end = byte_of(reader, to->index);
    span.length = end > span.start ? end - span.start : 0;
    return span;
}

static bool is_blank(char byte)
{
    return byte == ' ' || byte == '\n' || byte == '\t' || byte == '\r';
}

/* A block ends where the next thing begins: the blank lines between are not its own. */
static void trim_end(const ow_yaml_reader *reader, ow_span *span)
{
    const char *text = reader->yaml->source.text;
    while (span->length > 0 && is_blank(text[span->start + span->length - 1]))
        span->length--;
    /* Nothing at all stands behind what came before, not at the next thing. */
    while (span->length == 0 && span->start > reader->start && is_blank(text[span->start - 1]))
        span->start--;
}

ow_status ow_yaml_counted(ow_yaml_reader *reader)
{
    reader->fault_count++;
    if (reader->fault_count < OW_YAML_FAULTS_MAX)
        return OW_OK;
    return ow_report(reader->context, OW_ERROR, OW_INPUT, reader->yaml->source.name, NULL, NULL,
                     "more than %d faults: the rest of this text was not read", OW_YAML_FAULTS_MAX);
}

/* A node in the arena with its words behind it, in one piece. */
static ow_yaml *new_node(ow_yaml_reader *reader, ow_yaml_kind kind, ow_span span, const char *words,
                         size_t length)
{
    ow_yaml *node = ow_arena_get(&reader->yaml->arena, sizeof *node + length + 1);
    if (node == NULL)
        return NULL;
    char *copy = (char *)(node + 1);
    if (length > 0)
        memcpy(copy, words, length);
    node->kind = kind;
    node->span = span;
    node->words = copy;
    node->length = length;
    return node;
}

/* Puts a node where it belongs: into the open list or map, or as a document. */
static ow_status attach(ow_yaml_reader *reader, ow_yaml *node)
{
    ow_yaml_text *yaml = reader->yaml;
    if (reader->depth == 0) {
        if (ow_grow(reader->context, (void **)&yaml->documents, &reader->document_capacity,
                    yaml->document_count + 1, sizeof(ow_yaml *)) != OW_OK)
            return OW_MEMORY;
        yaml->documents[yaml->document_count++] = node;
        return OW_OK;
    }
    ow_yaml_frame *frame = &reader->frames[reader->depth - 1];
    if (frame->node->kind == OW_YAML_MAP) {
        bool drop = frame->drop_value;
        node->key = frame->key;
        node->key_span = frame->key_span;
        frame->key = NULL;
        frame->drop_value = false;
        if (drop)
            return OW_OK;
    }
    if (frame->last == NULL)
        frame->node->first = node;
    else
        frame->last->next = node;
    frame->last = node;
    frame->node->count++;
    return OW_OK;
}

static bool key_comes_next(const ow_yaml_reader *reader)
{
    if (reader->depth == 0)
        return false;
    const ow_yaml_frame *frame = &reader->frames[reader->depth - 1];
    return frame->node->kind == OW_YAML_MAP && frame->key == NULL && !frame->drop_value;
}

/* A key that cannot be used: its value is still read, for the faults in it. */
static ow_status drop_key(ow_yaml_reader *reader)
{
    reader->frames[reader->depth - 1].drop_value = true;
    return ow_yaml_counted(reader);
}

static ow_status take_key(ow_yaml_reader *reader, const char *words, size_t length, bool quoted, ow_span span)
{
    const ow_source *source = &reader->yaml->source;
    ow_yaml_frame *frame = &reader->frames[reader->depth - 1];
    if (!quoted && strcmp(words, "<<") == 0) {
        ow_source_report(reader->context, OW_ERROR, OW_INPUT, source, span, NULL,
                         "write out the keys that it would bring in", "maps are not merged with \"<<\"");
        return drop_key(reader);
    }
    if (!quoted && length == 0) {
        ow_source_report(reader->context, OW_ERROR, OW_INPUT, source, span, "a key before the colon", NULL,
                         "a key is missing");
        return drop_key(reader);
    }
    char *key = ow_arena_copy(&reader->yaml->arena, words, length);
    if (key == NULL)
        return OW_MEMORY;
    frame->key = key;
    frame->key_span = span;
    return OW_OK;
}

static ow_status read_scalar(ow_yaml_reader *reader, const yaml_event_t *event)
{
    const char *words = (const char *)event->data.scalar.value;
    size_t length = event->data.scalar.length;
    bool quoted = event->data.scalar.style != YAML_PLAIN_SCALAR_STYLE;
    ow_span span = ow_yaml_span(reader, &event->start_mark, &event->end_mark);
    trim_end(reader, &span);
    ow_status status = ow_yaml_tag(reader, event->data.scalar.tag, OW_YAML_SCALAR, span, &quoted);
    if (status != OW_OK)
        return status;
    if (memchr(words, '\0', length) != NULL) {
        ow_source_report(reader->context, OW_ERROR, OW_INPUT, &reader->yaml->source, span, NULL,
                         "take the \\0 out", "a NUL character in a text");
        status = ow_yaml_counted(reader);
        length = strlen(words);
        if (status != OW_OK)
            return status;
    }
    bool is_key = key_comes_next(reader);
    ow_yaml *node = NULL;
    if (!is_key || event->data.scalar.anchor != NULL) {
        node = new_node(reader, OW_YAML_SCALAR, span, words, length);
        if (node == NULL)
            return OW_MEMORY;
        node->quoted = quoted;
    }
    if (event->data.scalar.anchor != NULL) {
        size_t index;
        status = ow_yaml_anchor_begin(reader, event->data.scalar.anchor, node, false, &index);
        if (status != OW_OK)
            return status;
    }
    if (is_key)
        return take_key(reader, words, length, quoted, span);
    status = ow_yaml_expand(reader, 1, span);
    return status != OW_OK ? status : attach(reader, node);
}

static ow_status read_alias(ow_yaml_reader *reader, const yaml_event_t *event)
{
    ow_span span = ow_yaml_span(reader, &event->start_mark, &event->end_mark);
    ow_status status = OW_OK;
    const ow_yaml_anchor *anchor = ow_yaml_anchor_of(reader, event->data.alias.anchor, span, &status);
    if (status != OW_OK)
        return status;
    if (key_comes_next(reader)) {
        if (anchor != NULL && anchor->node->kind == OW_YAML_SCALAR)
            return take_key(reader, anchor->node->words, anchor->node->length, anchor->node->quoted, span);
        if (anchor != NULL)
            ow_source_report(reader->context, OW_ERROR, OW_INPUT, &reader->yaml->source, span,
                             "a word as the key", NULL, "a list or map stands where a key belongs");
        return drop_key(reader);
    }
    ow_yaml *node = new_node(reader, OW_YAML_SCALAR, span, "", 0);
    if (node == NULL)
        return OW_MEMORY;
    if (anchor != NULL) {
        ow_yaml *target = anchor->node;
        *node = *target; /* so that also who forgets ow_yaml_real sees the right thing */
        node->target = target->target != NULL ? target->target : target;
        node->span = span;
        node->next = NULL;
        node->key = NULL;
        if (reader->depth > 0 && reader->frames[reader->depth - 1].height < anchor->height + 1)
            reader->frames[reader->depth - 1].height = anchor->height + 1;
    }
    return attach(reader, node);
}

/* A list or map begins. */
static ow_status open_frame(ow_yaml_reader *reader, ow_yaml_kind kind, const yaml_event_t *event,
                            const yaml_char_t *anchor, const yaml_char_t *tag)
{
    ow_span span = ow_yaml_span(reader, &event->start_mark, &event->end_mark);
    bool ignored = false, is_key = key_comes_next(reader);
    ow_status status = ow_yaml_tag(reader, tag, kind, span, &ignored);
    if (status != OW_OK)
        return status;
    if (reader->depth == OW_YAML_DEPTH_MAX)
        return ow_source_report(reader->context, OW_ERROR, OW_LIMIT, &reader->yaml->source, span, NULL, NULL,
                                YAML_MESSAGE_DEPTH, OW_YAML_DEPTH_MAX);
    ow_yaml_frame frame = {.height = 1, .expanded_before = reader->expanded, .anchor = OW_MAP_NONE};
    status = ow_yaml_expand(reader, 1, span);
    if (status != OW_OK)
        return status;
    frame.node = new_node(reader, kind, span, "", 0);
    if (frame.node == NULL)
        return OW_MEMORY;
    frame.is_key = is_key;
    if (is_key) {
        ow_source_report(reader->context, OW_ERROR, OW_INPUT, &reader->yaml->source, span,
                         "a word as the key", "put quotes around it if it is meant as text",
                         "a list or map stands where a key belongs");
        status = drop_key(reader);
    } else {
        status = attach(reader, frame.node);
    }
    if (status == OW_OK && anchor != NULL)
        status = ow_yaml_anchor_begin(reader, anchor, frame.node, true, &frame.anchor);
    if (status == OW_OK)
        reader->frames[reader->depth++] = frame;
    return status;
}

/* A list or map ends. */
static ow_status close_frame(ow_yaml_reader *reader, const yaml_event_t *event)
{
    const ow_yaml_frame *frame = &reader->frames[--reader->depth];
    ow_span end = ow_yaml_span(reader, &event->start_mark, &event->end_mark);
    frame->node->span.length = end.start + end.length - frame->node->span.start;
    trim_end(reader, &frame->node->span);
    if (frame->anchor != OW_MAP_NONE) {
        ow_yaml_anchor *anchor = &reader->anchors[frame->anchor];
        anchor->open = false;
        anchor->height = frame->height;
        anchor->expanded = reader->expanded - frame->expanded_before;
    }
    if (reader->depth > 0 && reader->frames[reader->depth - 1].height < frame->height + 1)
        reader->frames[reader->depth - 1].height = frame->height + 1;
    return frame->node->kind == OW_YAML_MAP ? ow_yaml_duplicates(reader, frame->node) : OW_OK;
}

static ow_status take_event(ow_yaml_reader *reader, const yaml_event_t *event)
{
    switch (event->type) {
    case YAML_SCALAR_EVENT:
        return read_scalar(reader, event);
    case YAML_ALIAS_EVENT:
        return read_alias(reader, event);
    case YAML_SEQUENCE_START_EVENT:
        return open_frame(reader, OW_YAML_LIST, event, event->data.sequence_start.anchor,
                          event->data.sequence_start.tag);
    case YAML_MAPPING_START_EVENT:
        return open_frame(reader, OW_YAML_MAP, event, event->data.mapping_start.anchor,
                          event->data.mapping_start.tag);
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT:
        return close_frame(reader, event);
    case YAML_DOCUMENT_END_EVENT: /* anchors hold in their own document only */
        ow_map_done(&reader->names);
        reader->anchor_count = 0;
        return OW_OK;
    case YAML_NO_EVENT:
    case YAML_STREAM_START_EVENT:
    case YAML_STREAM_END_EVENT:
    case YAML_DOCUMENT_START_EVENT:
        break;
    }
    return OW_OK;
}

static ow_status read_events(ow_yaml_reader *reader)
{
    ow_status status = OW_OK;
    bool more = true;
    for (size_t count = 1; status == OW_OK && more; count++) {
        yaml_event_t event;
        if (!yaml_parser_parse(&reader->parser, &event))
            return ow_yaml_syntax_fault(reader);
        more = event.type != YAML_STREAM_END_EVENT;
        status = take_event(reader, &event);
        if (status == OW_OK && count % EVENTS_BETWEEN == 0)
            status = ow_progress_tell(reader->context, "reading a file", "kB", event.end_mark.index / 1000,
                                      reader->yaml->source.length / 1000);
        yaml_event_delete(&event);
    }
    if (status == OW_OK && reader->fault_count > 0)
        status = OW_INPUT;
    return status;
}

static bool is_ascii(const char *bytes, size_t length)
{
    unsigned char all = 0;
    for (size_t i = 0; i < length; i++)
        all |= (unsigned char)bytes[i];
    return all < 0x80;
}

/* The whole must be UTF-8 before libyaml sees it: so the place is right and other encodings are named. */
static ow_status check_encoding(ow_yaml_reader *reader)
{
    const ow_source *source = &reader->yaml->source;
    size_t valid = ow_utf8_valid(source->text, source->length);
    if (valid < source->length) {
        bool sixteen = source->length >= 2 &&
                       (memcmp(source->text, "\xFF\xFE", 2) == 0 || memcmp(source->text, "\xFE\xFF", 2) == 0);
        return ow_source_report(reader->context, OW_ERROR, OW_INPUT, source, (ow_span){valid, 1}, NULL,
                                "save the file as UTF-8",
                                sixteen ? "this text is UTF-16" : "byte 0x%02X is no UTF-8",
                                (unsigned)(unsigned char)source->text[valid]);
    }
    if (source->length >= 3 && memcmp(source->text, "\xEF\xBB\xBF", 3) == 0)
        reader->start = 3;
    size_t rest = source->length - reader->start;
    reader->ascii = is_ascii(source->text + reader->start, rest);
    reader->byte = reader->start;
    return OW_OK;
}

static ow_status read_text(ow_yaml_reader *reader)
{
    ow_status status = check_encoding(reader);
    if (status != OW_OK)
        return status;
    const ow_source *source = &reader->yaml->source;
    if (!yaml_parser_initialize(&reader->parser))
        return OW_MEMORY;
    yaml_parser_set_encoding(&reader->parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&reader->parser, (const unsigned char *)source->text + reader->start,
                                 source->length - reader->start);
    status = read_events(reader);
    yaml_parser_delete(&reader->parser);
    return status;
}

ow_status ow_yaml_read(const ow_context *context, const char *name, const char *text, size_t length,
                       ow_yaml_text *yaml)
{
    ow_yaml_text read = {.source = {name, length == 0 ? "" : text, length}, .arena = ow_arena_new(context)};
    ow_yaml_reader *reader = ow_new_array(context, 1, sizeof *reader);
    if (reader == NULL)
        return OW_MEMORY;
    reader->context = context;
    reader->yaml = &read;
    reader->names = ow_map_new(context);
    ow_status status = read_text(reader);
    ow_yaml **grown = read.documents;
    if (status == OW_OK) {
        read.documents = ow_arena_get_array(&read.arena, read.document_count, sizeof(ow_yaml *));
        if (read.documents == NULL)
            status = OW_MEMORY;
        else if (read.document_count > 0)
            memcpy(read.documents, grown, read.document_count * sizeof(ow_yaml *));
    }
    ow_release(context, grown);
    ow_release(context, reader->anchors);
    ow_map_done(&reader->names);
    ow_release(context, reader);
    if (status == OW_OK)
        *yaml = read;
    else
        ow_arena_done(&read.arena);
    return status;
}

void ow_yaml_done(ow_yaml_text *yaml)
{
    ow_arena_done(&yaml->arena);
    yaml->documents = NULL;
    yaml->document_count = 0;
}
