/* SPDX-License-Identifier: MIT */
#include "physics/reading.h"

#include <stdarg.h>

#include "base/format.h"

bool ow_physics_note(ow_physics_reading *reading, ow_status status)
{
    if (status != OW_OK && reading->status != OW_MEMORY)
        reading->status = status;
    return status == OW_OK;
}

void ow_physics_fault(ow_physics_reading *reading, const ow_yaml *node, const char *expected,
                      const char *mend, const char *message_format, ...)
{
    char message[256];
    va_list arguments;
    va_start(arguments, message_format);
    if (ow_format(message, sizeof message, message_format, arguments) < 0)
        message[0] = '\0';
    va_end(arguments);
    ow_span span = node != NULL ? node->span : (ow_span){0, 0};
    if (span.length == 0 && node != NULL && node->key != NULL)
        span = node->key_span;
    ow_physics_note(reading, ow_source_report(reading->context, OW_ERROR, OW_INPUT, reading->source, span,
                                              expected, mend, "%s", message));
}

void ow_physics_need(ow_physics_reading *reading, const ow_yaml *map, const ow_physics_field *field,
                     double *value)
{
    const ow_yaml *node = ow_yaml_need(reading->context, reading->source, map, field->key);
    if (node == NULL)
        ow_physics_note(reading, OW_INPUT);
    else
        ow_physics_may(reading, map, field, value);
}

bool ow_physics_may(ow_physics_reading *reading, const ow_yaml *map, const ow_physics_field *field,
                    double *value)
{
    const ow_yaml *node = ow_yaml_member(map, field->key);
    if (node == NULL)
        return false;
    ow_status status =
        field->dimension == OW_RATIO
            ? ow_yaml_number(reading->context, reading->source, node, field->low, field->high, value)
            : ow_yaml_quantity(reading->context, reading->source, node, field->dimension, field->low,
                               field->high, value);
    ow_physics_note(reading, status);
    return true;
}

const char *ow_physics_words(ow_physics_reading *reading, const ow_yaml *map, const char *key,
                             const char *otherwise)
{
    const ow_yaml *node = ow_yaml_member(map, key);
    if (node == NULL || ow_yaml_is_null(node))
        return otherwise;
    if (node->kind != OW_YAML_SCALAR) {
        ow_physics_fault(reading, node, "a name", NULL, "%.60s: a list or map where a name belongs", key);
        return otherwise;
    }
    const char *copy = ow_arena_copy(reading->arena, node->words, node->length);
    if (copy == NULL)
        ow_physics_note(reading, OW_MEMORY);
    return copy != NULL ? copy : otherwise;
}

bool ow_physics_map(ow_physics_reading *reading, const ow_yaml *node, const char *const *known, size_t count)
{
    node = ow_yaml_real(node);
    if (node == NULL || node->kind != OW_YAML_MAP) {
        ow_physics_fault(reading, node, "a map of keys and values", NULL, "not a map");
        return false;
    }
    ow_physics_note(reading, ow_yaml_known_keys(reading->context, reading->source, node, known, count));
    return true;
}
