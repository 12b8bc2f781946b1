/* SPDX-License-Identifier: MIT */
/* Values and keys out of a known list of words. */
#include <string.h>

#include "base/format.h"
#include "base/words.h"
#include "yaml/reader.h"

#define ADD_IT "add it"

/* "adapter, elbow or tee" */
static void add_list(ow_text *text, const char *const *words, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (i > 0)
            ow_text_add(text, i + 1 == count ? " or " : ", ");
        ow_text_add(text, words[i]);
    }
}

/* Reports that words are none of the list, and which they may have been meant to be. */
static ow_status report_unknown(const ow_context *context, const ow_source *source, ow_span span,
                                const char *words, size_t length, const char *const *known, size_t count,
                                const char *before, const char *after)
{
    ow_text expected = ow_text_new(context), mend = ow_text_new(context);
    add_list(&expected, known, count);
    const char *nearest = ow_words_nearest(words, length, known, count);
    if (nearest != NULL)
        ow_text_format(&mend, "did you mean \"%s\"?", nearest);
    ow_status status = ow_text_status(&expected);
    if (status == OW_OK)
        status = ow_text_status(&mend);
    if (status == OW_OK)
        status = ow_source_report(
            context, OW_ERROR, OW_INPUT, source, span, count == 0 ? NULL : ow_text_words(&expected),
            nearest == NULL ? NULL : ow_text_words(&mend), "%.80s\"%.60s\" %s", before, words, after);
    ow_text_done(&mend);
    ow_text_done(&expected);
    return status;
}

/* "bore: ", cut to size where the key is absurdly long. */
typedef struct label {
    char words[68];
} label;

static label label_of(const ow_yaml *node)
{
    label made = {""};
    if (node == NULL || node->key == NULL)
        return made;
    size_t length = strlen(node->key);
    if (length > 60)
        length = 60;
    memcpy(made.words, node->key, length);
    memcpy(made.words + length, ": ", 3);
    return made;
}

ow_status ow_yaml_choice(const ow_context *context, const ow_source *source, const ow_yaml *node,
                         const char *const *words, size_t count, size_t *index)
{
    node = ow_yaml_real(node);
    label before = label_of(node);
    if (node == NULL)
        return ow_report(context, OW_ERROR, OW_INPUT, source->name, NULL, NULL, "a value is missing");
    if (node->kind == OW_YAML_SCALAR) {
        for (size_t i = 0; i < count; i++) {
            if (ow_words_equal(node->words, words[i])) {
                *index = i;
                return OW_OK;
            }
        }
        if (!ow_yaml_is_null(node))
            return report_unknown(context, source, node->span, node->words, node->length, words, count,
                                  before.words, "is not known");
    }
    ow_text expected = ow_text_new(context);
    add_list(&expected, words, count);
    ow_status status = ow_text_status(&expected);
    if (status == OW_OK)
        status = ow_source_report(context, OW_ERROR, OW_INPUT, source,
                                  node->span.length == 0 && node->key != NULL ? node->key_span : node->span,
                                  ow_text_words(&expected), NULL, "%s%s", before.words,
                                  node->kind == OW_YAML_SCALAR ? "nothing is given"
                                                               : "a list or map where one word belongs");
    ow_text_done(&expected);
    return status;
}

ow_status ow_yaml_bool(const ow_context *context, const ow_source *source, const ow_yaml *node, bool *value)
{
    static const char *const words[] = {"yes", "no", "true", "false", "on", "off"};
    node = ow_yaml_real(node);
    if (node != NULL && node->kind == OW_YAML_SCALAR && node->quoted)
        return ow_source_report(context, OW_ERROR, OW_INPUT, source, node->span, "yes or no",
                                "take the quotes off", "%s\"%.60s\" is in quotes, so it is text",
                                label_of(node).words, node->words);
    size_t index = 0;
    ow_status status = ow_yaml_choice(context, source, node, words, sizeof words / sizeof words[0], &index);
    if (status == OW_OK)
        *value = index % 2 == 0;
    return status;
}

ow_status ow_yaml_known_keys(const ow_context *context, const ow_source *source, const ow_yaml *map,
                             const char *const *known, size_t count)
{
    map = ow_yaml_real(map);
    if (map == NULL)
        return OW_OK;
    if (map->kind != OW_YAML_MAP)
        return ow_source_report(context, OW_ERROR, OW_INPUT, source, map->span, "a map: keys with values",
                                NULL, "%sthis is no map", label_of(map).words);
    ow_status status = OW_OK;
    size_t faults = 0;
    for (const ow_yaml *member = map->first; member != NULL; member = member->next) {
        size_t i = 0;
        while (i < count && strcmp(known[i], member->key) != 0)
            i++;
        if (i < count)
            continue;
        if (faults++ == OW_YAML_FAULTS_MAX)
            return ow_source_report(context, OW_ERROR, OW_INPUT, source, member->key_span, NULL, NULL,
                                    "more than %d unknown keys: the rest were not looked at",
                                    OW_YAML_FAULTS_MAX);
        status = report_unknown(context, source, member->key_span, member->key, strlen(member->key), known,
                                count, "the key ", "is not known here");
        if (status != OW_INPUT)
            return status;
    }
    return status;
}

const ow_yaml *ow_yaml_need(const ow_context *context, const ow_source *source, const ow_yaml *map,
                            const char *key)
{
    char example[64];
    ow_format_to(example, sizeof example, "%.50s: …", key);
    return ow_yaml_need_such(context, source, map, key, example);
}

const ow_yaml *ow_yaml_need_such(const ow_context *context, const ow_source *source, const ow_yaml *map,
                                 const char *key, const char *example)
{
    char expected[160];
    const ow_yaml *member = ow_yaml_member(map, key);
    if (member != NULL)
        return member;
    ow_format_to(expected, sizeof expected, "a line such as %.140s", example);
    map = ow_yaml_real(map);
    if (map == NULL)
        ow_report(context, OW_ERROR, OW_INPUT, source->name, expected, ADD_IT, "\"%s\" is missing", key);
    else if (map->kind != OW_YAML_MAP)
        ow_source_report(context, OW_ERROR, OW_INPUT, source, map->span, "a map: keys with values", NULL,
                         "%sthis is no map, and \"%s\" is missing", label_of(map).words, key);
    else
        ow_source_report(context, OW_ERROR, OW_INPUT, source, map->key != NULL ? map->key_span : map->span,
                         expected, ADD_IT, "%s\"%s\" is missing", label_of(map).words, key);
    return NULL;
}
