/* SPDX-License-Identifier: MIT */
#include "catalog/values.h"

#include <math.h>
#include <string.h>

#include "base/words.h"

static ow_status fault(ow_reader *reader, const ow_yaml *node, const char *expected, const char *mend,
                       const char *key, const char *what)
{
    return ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, node->span, expected, mend,
                            "`%s` %s", key, what);
}

ow_status ow_value_scalar(ow_reader *reader, const char *key, const ow_yaml *node)
{
    if (node->kind == OW_YAML_SCALAR)
        return OW_OK;
    return fault(reader, node, "a single value", NULL, key,
                 node->kind == OW_YAML_LIST ? "holds a list" : "holds a map");
}

/* The unit to propose where somebody wrote a bare number. */
static const char *usual_unit(ow_dimension dimension)
{
    static const char *const units[OW_DIMENSION_COUNT] = {[OW_LENGTH] = "mm",
                                                          [OW_PRESSURE] = "bar",
                                                          [OW_TEMPERATURE] = "C",
                                                          [OW_ANGLE] = "deg",
                                                          [OW_MASS] = "g"};
    return units[dimension] ? units[dimension] : "";
}

static ow_status not_a_quantity(ow_reader *reader, const ow_field *field, const ow_yaml *node)
{
    double number;
    size_t used;
    bool bare = ow_number_read(node->words, node->length, &number, &used) && used == node->length;
    ow_text mend = ow_text_new(reader->context);
    if (bare)
        ow_text_format(&mend, "write the unit too, as in `%s %s`", node->words, usual_unit(field->dimension));
    ow_status status = ow_text_status(&mend);
    if (status == OW_OK)
        status = ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, node->span,
                                  ow_dimension_expected(field->dimension), bare ? ow_text_words(&mend) : NULL,
                                  bare ? "`%s` is the bare number `%s`" : "`%s` cannot be `%s`", field->key,
                                  node->words);
    ow_text_done(&mend);
    return status;
}

static ow_status out_of_range(ow_reader *reader, const ow_field *field, const ow_yaml *node)
{
    ow_text expected = ow_text_new(reader->context);
    bool bare =
        field->type != OW_FIELD_QUANTITY && field->type != OW_FIELD_RANGE && field->type != OW_FIELD_PLACE;
    if (bare) {
        ow_text_format(&expected, "%.10g to %.10g", field->low, field->high);
    } else {
        ow_quantity_write(&expected, field->dimension, field->low, 3);
        ow_text_add(&expected, " to ");
        ow_quantity_write(&expected, field->dimension, field->high, 3);
    }
    ow_status status = ow_text_status(&expected);
    if (status == OW_OK)
        status = ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, node->span,
                                  ow_text_words(&expected), NULL, "`%s` of `%s` is out of range", field->key,
                                  node->words);
    ow_text_done(&expected);
    return status;
}

/* A hair of slack, so that a limit of the table may itself be written in another unit. */
static bool in_range(const ow_field *field, double value)
{
    double slack = 1e-9 * (fabs(field->low) + fabs(field->high));
    return value >= field->low - slack && value <= field->high + slack;
}

ow_status ow_value_quantity(ow_reader *reader, const ow_field *field, const ow_yaml *node, double *value)
{
    double read;
    ow_status status = ow_value_scalar(reader, field->key, node);
    if (status != OW_OK)
        return status;
    if (ow_quantity_read(node->words, field->dimension, &read) != OW_OK)
        return not_a_quantity(reader, field, node);
    if (!in_range(field, read))
        return out_of_range(reader, field, node);
    *value = read;
    return OW_OK;
}

ow_status ow_value_number(ow_reader *reader, const ow_field *field, const ow_yaml *node, double *value)
{
    double read;
    size_t used;
    ow_status status = ow_value_scalar(reader, field->key, node);
    if (status != OW_OK)
        return status;
    if (!ow_number_read(node->words, node->length, &read, &used) || used != node->length)
        return fault(reader, node, "a bare number", NULL, field->key, "is not a number");
    if (!in_range(field, read))
        return out_of_range(reader, field, node);
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
        return fault(reader, node, "the least, two points and the most with the unit, as in `-40..150 C`",
                     NULL, field->key, "is not a range");
    if (!in_range(field, read.low) || !in_range(field, read.high))
        return out_of_range(reader, field, node);
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
                     comma ? "write a point for the comma" : NULL, field->key, "is not a price");
    }
    *price = (ow_said_price){true, cents};
    return OW_OK;
}

ow_status ow_value_yes(ow_reader *reader, const char *key, const ow_yaml *node, bool *value)
{
    static const char *const yes[] = {"yes", "true", "on"}, *const no[] = {"no", "false", "off"};
    ow_status status = ow_value_scalar(reader, key, node);
    if (status != OW_OK)
        return status;
    for (size_t i = 0; i < 3; i++) {
        if (ow_words_equal(node->words, yes[i]) || ow_words_equal(node->words, no[i])) {
            *value = ow_words_equal(node->words, yes[i]);
            return OW_OK;
        }
    }
    return fault(reader, node, "yes or no", NULL, key, "is neither yes nor no");
}

ow_status ow_value_choice(ow_reader *reader, const ow_field *field, const ow_yaml *node, int *value)
{
    ow_status status = ow_value_scalar(reader, field->key, node);
    if (status != OW_OK)
        return status;
    size_t count = 0;
    for (; count < OW_FIELD_CHOICES && field->choices[count]; count++) {
        if (strcmp(field->choices[count], node->words) == 0) {
            *value = (int)count + 1;
            return OW_OK;
        }
    }
    ow_text expected = ow_text_new(reader->context);
    for (size_t i = 0; i < count; i++)
        ow_text_format(&expected, "%s%s", i == 0 ? "" : i + 1 == count ? " or " : ", ", field->choices[i]);
    status = ow_text_status(&expected);
    if (status == OW_OK)
        status = ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, node->span,
                                  ow_text_words(&expected),
                                  ow_words_nearest(node->words, node->length, field->choices, count),
                                  "`%s` cannot be `%s`", field->key, node->words);
    ow_text_done(&expected);
    return status;
}
