/* SPDX-License-Identifier: MIT */
#include "catalog/reader.h"

#include <string.h>

#include "base/words.h"
#include "catalog/values.h"

ow_reader ow_reader_new(const ow_context *context, ow_arena *arena, const size_t *faults)
{
    ow_reader reader = {.context = context, .arena = arena, .faults = faults};
    reader.words = ow_map_new(context);
    reader.ends = ow_map_new(context);
    return reader;
}

bool ow_reader_enough(const ow_reader *reader)
{
    return *reader->faults >= OW_CATALOG_FAULTS_MAX;
}

void ow_reader_done(ow_reader *reader)
{
    ow_release(reader->context, reader->held);
    ow_release(reader->context, reader->end_list);
    ow_map_done(&reader->ends);
    ow_release(reader->context, reader->word_list);
    ow_map_done(&reader->words);
}

const char *ow_reader_words(ow_reader *reader, const char *words)
{
    size_t found = ow_map_get(&reader->words, words);
    if (found != OW_MAP_NONE)
        return reader->word_list[found];
    if (ow_grow(reader->context, (void **)&reader->word_list, &reader->word_capacity, reader->word_count + 1,
                sizeof *reader->word_list) != OW_OK)
        return NULL;
    const char *copy = ow_arena_copy(reader->arena, words, strlen(words));
    if (!copy || ow_map_put(&reader->words, copy, reader->word_count) != OW_OK)
        return NULL;
    return reader->word_list[reader->word_count++] = copy;
}

ow_place ow_reader_place(const ow_reader *reader, ow_span span)
{
    ow_place place = {.file = reader->source->name};
    ow_source_position(reader->source, span.start, &place.line, &place.column);
    return place;
}

/* Where a byte range of a scalar's words stands in the text: exact when the scalar is written as it
 * reads, plain or in quotes; the whole scalar when it holds escapes or is folded. */
static ow_span span_inside(const ow_source *source, const ow_yaml *node, size_t start, size_t length)
{
    size_t at = node->span.start + (node->quoted ? 1 : 0);
    bool same =
        at + node->length <= source->length && memcmp(source->text + at, node->words, node->length) == 0;
    if (!same || start > node->length)
        return node->span;
    ow_span span = {at + start, length < node->length - start ? length : node->length - start};
    return span;
}

static ow_status end_not_whole(ow_reader *reader, const char *key, const ow_yaml *node, const ow_end *end)
{
    ow_thread thread;
    bool pitch = ow_end_thread(end, &thread) && thread.pitch == 0;
    return ow_source_report(
        reader->context, OW_ERROR, OW_INPUT, reader->source, node->span,
        pitch ? "an end with its pitch, such as \"M10x1 female washer\""
              : "an end with its seat, such as \"M10x1 female washer\" or \"M16x1.5 female cone24 10L\"",
        "measure it: a catalogue must not guess", "the %s of \"%s\" is not said: \"%s\"",
        pitch ? "pitch" : "seat", key, node->words);
}

static ow_status remember_end(ow_reader *reader, const char *words, const ow_end *end)
{
    ow_status status = ow_grow(reader->context, (void **)&reader->end_list, &reader->end_capacity,
                               reader->end_count + 1, sizeof *reader->end_list);
    if (status != OW_OK)
        return status;
    const char *key = ow_arena_copy(reader->arena, words, strlen(words));
    if (!key)
        return OW_MEMORY;
    status = ow_map_put(&reader->ends, key, reader->end_count);
    if (status == OW_OK)
        reader->end_list[reader->end_count++] = *end;
    return status;
}

ow_status ow_reader_end(ow_reader *reader, const char *key, const ow_yaml *node, ow_end *end)
{
    ow_end read;
    ow_end_fault why;
    ow_status status = ow_value_scalar(reader, key, node);
    if (status != OW_OK)
        return status;
    size_t found = ow_map_get(&reader->ends, node->words);
    if (found != OW_MAP_NONE) {
        *end = reader->end_list[found];
        return OW_OK;
    }
    status = ow_end_read(node->words, &read, &why);
    if (status == OW_INPUT)
        return ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source,
                                span_inside(reader->source, node, why.start, why.length), why.expected,
                                why.mend[0] ? why.mend : NULL, "%s", why.message);
    if (status != OW_OK)
        return status;
    if (!ow_end_is_whole(&read))
        return end_not_whole(reader, key, node, &read);
    status = remember_end(reader, node->words, &read);
    if (status == OW_OK)
        *end = read;
    return status;
}

/* What may not stand in an id, and what it may not begin with: it is written in YAML lists, as ID:PORT, as
 * ID#2, and on a command line. */
static bool stands_in_no_id(unsigned char byte)
{
    if (byte >= '-' && byte != ':' && byte != '[' && byte != ']' && byte != '{' && byte != '}' &&
        byte != 0x7f)
        return false;
    return byte <= ' ' || byte == 0x7f || strchr(":#,[]{}\"'", byte);
}

ow_status ow_reader_id(ow_reader *reader, const char *key, const char *words, ow_span span)
{
    size_t length = 0;
    bool good = words[0] != '\0' && !strchr("-&*!|>%@`", words[0]);
    for (; words[length]; length++)
        good = good && !stands_in_no_id((unsigned char)words[length]);
    if (good && length <= 63)
        return OW_OK;
    return ow_source_report(
        reader->context, OW_ERROR, OW_INPUT, reader->source, span,
        "1 to 63 bytes without blanks and : # , [ ] { } \" ', not beginning with - & * ! | > % @ `", NULL,
        "\"%s\" cannot be \"%s\"", key, words);
}

/* One word or a list of words, each handed to `take`. */
static ow_status each_word(ow_reader *reader, const ow_field *field, const ow_yaml *node,
                           ow_status (*take)(ow_reader *, const ow_field *, const ow_yaml *, void *),
                           void *state)
{
    if (node->kind == OW_YAML_SCALAR)
        return take(reader, field, node, state);
    if (node->kind == OW_YAML_MAP)
        return ow_value_scalar(reader, field->key, node);
    ow_status worst = OW_OK;
    for (const ow_yaml *item = node->first; item && worst != OW_MEMORY && !ow_reader_enough(reader);
         item = item->next) {
        const ow_yaml *word = ow_yaml_real(item);
        ow_status status = ow_value_scalar(reader, field->key, word);
        if (status == OW_OK)
            status = take(reader, field, word, state);
        worst = status == OW_OK ? worst : status;
    }
    return worst;
}

static ow_status take_listed(ow_reader *reader, const ow_field *field, const ow_yaml *node, void *state)
{
    ow_text *text = state;
    (void)reader, (void)field;
    ow_text_format(text, "%s%s", text->length ? ", " : "", node->words);
    return ow_text_status(text);
}

static ow_status take_flag(ow_reader *reader, const ow_field *field, const ow_yaml *node, void *state)
{
    int choice = 0;
    ow_status status = ow_value_choice(reader, field, node, &choice);
    if (status == OW_OK)
        *(unsigned *)state |= 1u << (choice - 1);
    return status;
}

static ow_status read_words(ow_reader *reader, const ow_field *field, const ow_yaml *node, const char **words)
{
    ow_text text = ow_text_new(reader->context);
    ow_status status = OW_OK;
    const char *read = node->words;
    if (field->type == OW_FIELD_LIST) {
        status = each_word(reader, field, node, take_listed, &text);
        read = ow_text_words(&text);
    } else {
        status = ow_value_scalar(reader, field->key, node);
    }
    if (status == OW_OK && !(read = ow_reader_words(reader, read)))
        status = OW_MEMORY;
    if (status == OW_OK)
        *words = read;
    ow_text_done(&text);
    return status;
}

/* Ids are all different: there is nothing to gain by looking for an earlier copy. */
static ow_status read_id(ow_reader *reader, const ow_field *field, const ow_yaml *node, const char **id)
{
    ow_status status = ow_value_scalar(reader, field->key, node);
    if (status == OW_OK)
        status = ow_reader_id(reader, field->key, node->words, node->span);
    if (status != OW_OK)
        return status;
    const char *copy = ow_arena_copy(reader->arena, node->words, node->length);
    if (!copy)
        return OW_MEMORY;
    *id = copy;
    return OW_OK;
}

static ow_status read_flags(ow_reader *reader, const ow_field *field, const ow_yaml *node, unsigned *flags)
{
    unsigned read = 0;
    ow_status status = each_word(reader, field, node, take_flag, &read);
    if (status == OW_OK)
        *flags = read;
    return status;
}

static ow_status read_count(ow_reader *reader, const ow_field *field, const ow_yaml *node, int *count)
{
    double value = 0;
    ow_status status = ow_value_number(reader, field, node, &value);
    if (status == OW_OK)
        *count = (int)value;
    return status;
}

ow_status ow_field_read(ow_reader *reader, const ow_field *field, const ow_yaml *node, void *draft)
{
    void *to = (char *)draft + field->offset;
    ow_draft *record = draft;
    if (ow_yaml_is_null(node))
        return OW_OK;
    switch (field->type) {
    case OW_FIELD_ID:
        return read_id(reader, field, node, to);
    case OW_FIELD_WORDS:
    case OW_FIELD_LIST:
        return read_words(reader, field, node, to);
    case OW_FIELD_QUANTITY:
        return ow_value_quantity(reader, field, node, to);
    case OW_FIELD_NUMBER:
        return ow_value_number(reader, field, node, to);
    case OW_FIELD_RANGE:
        return ow_value_range(reader, field, node, to);
    case OW_FIELD_COUNT:
        return read_count(reader, field, node, to);
    case OW_FIELD_CHOICE:
        return ow_value_choice(reader, field, node, to);
    case OW_FIELD_FLAGS:
        return read_flags(reader, field, node, to);
    case OW_FIELD_YES:
        return ow_value_yes(reader, field, node, to);
    case OW_FIELD_PRICE:
        return ow_value_price(reader, field, node, to);
    case OW_FIELD_PLACE:
    case OW_FIELD_DIRECTION:
        return ow_value_vector(reader, field, node, to);
    case OW_FIELD_END:
        return ow_reader_end(reader, field->key, node, to);
    case OW_FIELD_PORTS:
        return ow_ports_read(reader, node, &record->port_count, &record->ports);
    }
    return OW_FAULT;
}
