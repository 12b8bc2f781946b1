/* SPDX-License-Identifier: MIT */
#include "catalog/values.h"

#include <math.h>
#include <string.h>

static ow_status fault(ow_reader *reader, const ow_yaml *node, const char *expected, const char *mend,
                       const char *key, const char *what)
{
    return ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, node->span, expected, mend,
                            "\"%s\" %s", key, what);
}

ow_status ow_value_scalar(ow_reader *reader, const char *key, const ow_yaml *node)
{
    if (node->kind == OW_YAML_SCALAR)
        return OW_OK;
    return fault(reader, node, "a single value", NULL, key,
                 node->kind == OW_YAML_LIST ? "holds a list" : "holds a map");
}

/* A node of a list has no key of its own: messages are to name the field. */
static ow_yaml named(const ow_field *field, const ow_yaml *node)
{
    ow_yaml copy = *node;
    copy.key = field->key;
    copy.key_span = node->span;
    return copy;
}

/* A hair of slack, so that the limit itself may be written in any unit. */
static double slack(const ow_field *field)
{
    return 1e-12 * (fabs(field->low) + fabs(field->high));
}

ow_status ow_value_quantity(ow_reader *reader, const ow_field *field, const ow_yaml *node, double *value)
{
    double read;
    if (node->kind == OW_YAML_SCALAR && ow_quantity_read(node->words, field->dimension, &read) == OW_OK &&
        read >= field->low - slack(field) && read <= field->high + slack(field)) {
        *value = read;
        return OW_OK;
    }
    ow_yaml copy = named(field, node); /* for its words on what is wrong */
    return ow_yaml_quantity(reader->context, reader->source, &copy, field->dimension,
                            field->low - slack(field), field->high + slack(field), value);
}

ow_status ow_value_number(ow_reader *reader, const ow_field *field, const ow_yaml *node, double *value)
{
    ow_yaml copy = named(field, node);
    double read = 0;
    ow_status status = ow_yaml_number(reader->context, reader->source, &copy, field->low, field->high, &read);
    if (status != OW_OK)
        return status;
    if (field->type == OW_FIELD_COUNT && read != floor(read))
        return fault(reader, node, "a whole number", NULL, field->key, "is not whole");
    *value = read;
    return OW_OK;
}

ow_status ow_value_range(ow_reader *reader, const ow_field *field, const ow_yaml *node, ow_said_range *range)
{
    ow_said_range read = {true, 0, 0};
    ow_status status = ow_value_scalar(reader, field->key, node);
    if (status != OW_OK)
        return status;
    if (ow_quantity_read_range(node->words, field->dimension, &read.low, &read.high) != OW_OK)
        return fault(reader, node, "the least, two points and the most with the unit, as in \"-40..150 C\"",
                     NULL, field->key, "is not a range");
    if (read.low < field->low || read.high > field->high)
        return fault(reader, node, "temperatures from -200 to 1200 C", NULL, field->key, "is out of range");
    *range = read;
    return OW_OK;
}

ow_status ow_value_vector(ow_reader *reader, const ow_field *field, const ow_yaml *node,
                          ow_said_vector *vector)
{
    ow_said_vector read = {true, {0, 0, 0}};
    bool lengths = field->type == OW_FIELD_PLACE;
    const char *expected = lengths ? "a list of x, y and z with their units, as in [120 mm, 40 mm, 310 mm]"
                                   : "a list of three numbers, as in [0, 0, 1]";
    if (node->kind != OW_YAML_LIST || node->count != 3)
        return fault(reader, node, expected, NULL, field->key, "is not three values");
    size_t axis = 0;
    for (const ow_yaml *item = node->first; item; item = item->next, axis++) {
        const ow_yaml *value = ow_yaml_real(item);
        ow_status status = lengths ? ow_value_quantity(reader, field, value, &read.v[axis])
                                   : ow_value_number(reader, field, value, &read.v[axis]);
        if (status != OW_OK)
            return status;
    }
    double size = sqrt(read.v[0] * read.v[0] + read.v[1] * read.v[1] + read.v[2] * read.v[2]);
    if (!lengths && !(size > 0))
        return fault(reader, node, expected, NULL, field->key, "points nowhere");
    for (axis = 0; axis < 3 && !lengths; axis++)
        read.v[axis] /= size;
    *vector = read;
    return OW_OK;
}

/* Digits, a point, at most two digits: cents, exactly. False if it is none. */
static bool read_cents(const char *words, double most, int64_t *cents)
{
    int64_t value = 0;
    int decimals = -1;
    const char *at = words;
    for (; *at; at++) {
        if (*at == '.' && decimals < 0 && at > words) {
            decimals = 0;
            continue;
        }
        if (*at < '0' || *at > '9' || decimals == 2 || value > (int64_t)(most * 100))
            return false;
        value = value * 10 + (*at - '0');
        decimals += decimals >= 0;
    }
    if (at == words || decimals == 0)
        return false;
    for (int missing = decimals < 0 ? 2 : 2 - decimals; missing > 0; missing--)
        value *= 10;
    *cents = value;
    return value <= (int64_t)(most * 100);
}

ow_status ow_value_price(ow_reader *reader, const ow_field *field, const ow_yaml *node, ow_said_price *price)
{
    int64_t cents;
    ow_status status = ow_value_scalar(reader, field->key, node);
    if (status != OW_OK)
        return status;
    if (!read_cents(node->words, field->high, &cents)) {
        const char *comma = strchr(node->words, ',');
        return fault(reader, node, "a decimal number such as 3.10, from 0 to 1000000, or ~ for none",
                     comma ? "write a point for the comma" : NULL, node->words, "is not a price");
    }
    *price = (ow_said_price){true, cents};
    return OW_OK;
}

ow_status ow_value_yes(ow_reader *reader, const ow_field *field, const ow_yaml *node, bool *value)
{
    ow_yaml copy = named(field, node);
    return ow_yaml_bool(reader->context, reader->source, &copy, value);
}

ow_status ow_value_choice(ow_reader *reader, const ow_field *field, const ow_yaml *node, int *value)
{
    ow_yaml copy = named(field, node);
    size_t count = 0, index = 0;
    while (count < OW_FIELD_CHOICES && field->choices[count])
        count++;
    ow_status status = ow_yaml_choice(reader->context, reader->source, &copy, field->choices, count, &index);
    if (status == OW_OK)
        *value = (int)index + 1;
    return status;
}
