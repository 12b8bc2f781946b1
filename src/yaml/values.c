/* SPDX-License-Identifier: MIT */
/* Reading values out of the tree, with a report in words for each fault. */
#include <math.h>
#include <string.h>

#include "base/unit_table.h"
#include "base/words.h"
#include "yaml/yaml.h"

const ow_yaml *ow_yaml_real(const ow_yaml *node)
{
    return node != NULL && node->target != NULL ? node->target : node;
}

const ow_yaml *ow_yaml_member(const ow_yaml *map, const char *key)
{
    map = ow_yaml_real(map);
    if (map == NULL || map->kind != OW_YAML_MAP)
        return NULL;
    for (const ow_yaml *member = map->first; member != NULL; member = member->next)
        if (strcmp(member->key, key) == 0)
            return ow_yaml_real(member);
    return NULL;
}

bool ow_yaml_is_null(const ow_yaml *node)
{
    node = ow_yaml_real(node);
    if (node == NULL)
        return true;
    if (node->kind != OW_YAML_SCALAR || node->quoted)
        return false;
    const char *words = node->words;
    if (node->length != 4) /* asked of every value of a catalogue: told by its length, nearly always */
        return node->length == 0 || (node->length == 1 && words[0] == '~');
    return strcmp(words, "null") == 0 || strcmp(words, "Null") == 0 || strcmp(words, "NULL") == 0;
}

/* What a report needs of a node: `bore: ` before the message where there is a key. */
typedef struct subject {
    const ow_context *context;
    const ow_source *source;
    const ow_yaml *node;
    const char *key;
    const char *colon;
} subject;

static subject subject_of(const ow_context *context, const ow_source *source, const ow_yaml *node)
{
    node = ow_yaml_real(node);
    subject about = {context, source, node, "", ""};
    if (node != NULL && node->key != NULL) {
        about.key = node->key;
        about.colon = ": ";
    }
    return about;
}

/* Whether it is a scalar that says something; if not, that was reported. */
static bool is_said(const subject *about, const char *expected)
{
    if (about->node == NULL) {
        ow_report(about->context, OW_ERROR, OW_INPUT, about->source->name, expected, NULL,
                  "a value is missing");
        return false;
    }
    const char *fault = NULL;
    if (about->node->kind == OW_YAML_LIST)
        fault = "a list where one value belongs";
    else if (about->node->kind == OW_YAML_MAP)
        fault = "a map where one value belongs";
    else if (ow_yaml_is_null(about->node))
        fault = "nothing is given";
    if (fault == NULL)
        return true;
    ow_span span = about->node->span;
    if (span.length == 0 && about->node->key != NULL)
        span = about->node->key_span;
    ow_source_report(about->context, OW_ERROR, OW_INPUT, about->source, span, expected, NULL, "%.60s%s%s",
                     about->key, about->colon, fault);
    return false;
}

/* Appends "0.1 mm to 200 mm", "at least …" or "at most …". */
static void add_limits(ow_text *text, ow_dimension dimension, bool bare, double low, double high)
{
    const double ends[2] = {low, high};
    if (!isfinite(low) || !isfinite(high))
        ow_text_add(text, isfinite(low) ? "at least " : "at most ");
    for (int i = 0; i < 2; i++) {
        if (!isfinite(ends[i]))
            continue;
        if (i == 1 && isfinite(low))
            ow_text_add(text, " to ");
        if (bare)
            ow_text_format(text, "%.10g", ends[i]);
        else
            ow_quantity_write(text, dimension, ends[i], 6);
    }
}

static ow_status check_limits(const subject *about, ow_dimension dimension, bool bare, double low,
                              double high, double value)
{
    if (value >= low && value <= high)
        return OW_OK;
    ow_text limits = ow_text_new(about->context);
    add_limits(&limits, dimension, bare, low, high);
    ow_status status = ow_text_status(&limits);
    if (status == OW_OK)
        status = ow_source_report(about->context, OW_ERROR, OW_INPUT, about->source, about->node->span,
                                  ow_text_words(&limits), NULL, "%.60s%s\"%.60s\" is out of range",
                                  about->key, about->colon, about->node->words);
    ow_text_done(&limits);
    return status;
}

/* The unit of any dimension that is written so, or NULL. */
static const ow_unit *unit_named(const char *name)
{
    for (size_t i = 0; i < ow_unit_count; i++)
        if (ow_units[i].name[0] != '\0' && strcmp(ow_units[i].name, name) == 0)
            return &ow_units[i];
    return NULL;
}

static const char *nearest_unit(const char *name, ow_dimension dimension)
{
    const char *nearest = NULL;
    size_t nearest_distance = 0;
    for (size_t i = 0; i < ow_unit_count; i++) {
        size_t distance;
        if (ow_units[i].dimension == dimension &&
            ow_words_near(name, strlen(name), ow_units[i].name, strlen(ow_units[i].name), &distance) &&
            (nearest == NULL || distance < nearest_distance)) {
            nearest = ow_units[i].name;
            nearest_distance = distance;
        }
    }
    return nearest;
}

/* Says why the words are no quantity of this dimension. */
static ow_status report_quantity(const subject *about, ow_dimension dimension)
{
    const char *words = about->node->words, *fault, *near = NULL;
    const char *unit = words + strspn(words, " \t");
    double number;
    size_t used;
    bool is_number = ow_number_read(unit, strlen(unit), &number, &used);
    if (is_number) {
        unit += used;
        unit += strspn(unit, " \t");
    }
    if (!is_number) {
        fault = "does not begin with a number";
    } else if (*unit == '\0') {
        fault = "has no unit";
    } else if (unit_named(unit) != NULL) {
        fault = unit_named(unit)->dimension == dimension ? "is too large" : "has a unit of something else";
    } else {
        fault = "has no unit that is known";
        near = nearest_unit(unit, dimension);
    }
    ow_text mend = ow_text_new(about->context);
    if (near != NULL)
        ow_text_format(&mend, "did you mean \"%s\"?", near);
    ow_status status = ow_text_status(&mend);
    if (status == OW_OK)
        status =
            ow_source_report(about->context, OW_ERROR, OW_INPUT, about->source, about->node->span,
                             ow_dimension_expected(dimension), near == NULL ? NULL : ow_text_words(&mend),
                             "%.60s%s\"%.60s\" %s", about->key, about->colon, words, fault);
    ow_text_done(&mend);
    return status;
}

ow_status ow_yaml_quantity(const ow_context *context, const ow_source *source, const ow_yaml *node,
                           ow_dimension dimension, double low, double high, double *value)
{
    subject about = subject_of(context, source, node);
    if (!is_said(&about, ow_dimension_expected(dimension)))
        return OW_INPUT;
    double read;
    if (ow_quantity_read(about.node->words, dimension, &read) != OW_OK)
        return report_quantity(&about, dimension);
    ow_status status = check_limits(&about, dimension, false, low, high, read);
    if (status == OW_OK)
        *value = read;
    return status;
}

ow_status ow_yaml_number(const ow_context *context, const ow_source *source, const ow_yaml *node, double low,
                         double high, double *value)
{
    static const char expected[] = "a bare number, such as 3.10";
    subject about = subject_of(context, source, node);
    if (!is_said(&about, expected))
        return OW_INPUT;
    const char *fault = NULL, *mend = NULL;
    double read;
    size_t used;
    if (!ow_number_read(about.node->words, about.node->length, &read, &used)) {
        fault = "is no number";
    } else if (used != about.node->length) {
        fault = "goes on behind the number";
        mend = about.node->words[used] == ',' ? "write a point for the decimal comma"
                                              : "leave out what stands behind it";
    } else if (about.node->quoted) {
        fault = "is in quotes, so it is text";
        mend = "take the quotes off";
    }
    if (fault != NULL)
        return ow_source_report(context, OW_ERROR, OW_INPUT, source, about.node->span, expected, mend,
                                "%.60s%s\"%.60s\" %s", about.key, about.colon, about.node->words, fault);
    ow_status status = check_limits(&about, OW_RATIO, true, low, high, read);
    if (status == OW_OK)
        *value = read;
    return status;
}
