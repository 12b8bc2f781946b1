/* SPDX-License-Identifier: MIT */
#include "oilway/quantity.h"

#include <math.h>
#include <string.h>

#include "base/decimal.h"
#include "base/unit_table.h"
#include "base/words.h"

#define UNIT_BYTES 16
#define DECIMALS_MAX 12

typedef struct words_part {
    const char *start;
    size_t length;
} words_part;

const char *ow_dimension_expected(ow_dimension dimension)
{
    if ((int)dimension < 0 || dimension >= OW_DIMENSION_COUNT)
        return "a quantity with its unit";
    return ow_dimension_rows[dimension].expected;
}

static bool is_blank(char letter)
{
    return letter == ' ' || letter == '\t';
}

static words_part trimmed(words_part part)
{
    while (part.length > 0 && is_blank(part.start[0]))
        part.start++, part.length--;
    while (part.length > 0 && is_blank(part.start[part.length - 1]))
        part.length--;
    return part;
}

/* The unit that reads so in this dimension, or NULL. */
static const ow_unit *find_unit(words_part part, ow_dimension dimension)
{
    char name[UNIT_BYTES];
    size_t length = 0;
    for (size_t i = 0; i < part.length; i++) { /* runs of blanks count as one */
        if (is_blank(part.start[i]) && is_blank(part.start[i + 1]))
            continue;
        if (length + 1 >= sizeof name)
            return NULL;
        name[length++] = is_blank(part.start[i]) ? ' ' : part.start[i];
    }
    for (size_t i = 0; i < ow_unit_count; i++) {
        const ow_unit *unit = &ow_units[i];
        if (unit->dimension != dimension)
            continue;
        bool same = unit->any_case ? ow_words_equal_bytes(name, length, unit->name)
                                   : strlen(unit->name) == length && memcmp(unit->name, name, length) == 0;
        if (same)
            return unit;
    }
    return NULL;
}

/* A number, or a fraction of two whole ones as inch sizes are written ("3/8"); the bytes it took, 0 if none.
 */
static size_t read_number(words_part part, ow_decimal *number, double *divisor)
{
    size_t used;
    if (!ow_decimal_read(part.start, part.length, number, &used))
        return 0;
    *divisor = 1.0;
    ow_decimal below;
    size_t more;
    if (used < part.length && part.start[used] == '/' && number->exponent == 0 &&
        ow_decimal_read(part.start + used + 1, part.length - used - 1, &below, &more) &&
        below.exponent == 0 && !below.negative && part.start[used + 1] != '+' && below.digits > 0) {
        *divisor = ow_decimal_value(below, 1, 0);
        used += 1 + more;
    }
    return used;
}

static bool convert(ow_decimal number, double divisor, const ow_unit *unit, double *value)
{
    if (divisor != 1.0 && unit->factor != 254) /* fractions belong to inches */
        return false;
    double converted = ow_decimal_value(number, unit->factor, unit->shift) / divisor;
    converted = (converted + unit->offset) * unit->times / unit->over;
    if (!isfinite(converted))
        return false;
    *value = converted + 0.0; /* -0 becomes 0 */
    return true;
}

ow_status ow_quantity_read(const char *words, ow_dimension dimension, double *value)
{
    words_part part = trimmed((words_part){words, strlen(words)});
    ow_decimal number;
    double divisor;
    size_t used = read_number(part, &number, &divisor);
    if (used == 0)
        return OW_INPUT;
    const ow_unit *unit = find_unit(trimmed((words_part){part.start + used, part.length - used}), dimension);
    return unit != NULL && convert(number, divisor, unit, value) ? OW_OK : OW_INPUT;
}

ow_status ow_quantity_read_range(const char *words, ow_dimension dimension, double *low, double *high)
{
    const char *dots = strstr(words, "..");
    if (dots == NULL)
        return OW_INPUT;
    words_part left = trimmed((words_part){words, (size_t)(dots - words)});
    words_part right = trimmed((words_part){dots + 2, strlen(dots + 2)});
    ow_decimal left_number, right_number;
    double left_divisor, right_divisor, from, to;
    size_t left_used = read_number(left, &left_number, &left_divisor);
    size_t right_used = read_number(right, &right_number, &right_divisor);
    if (left_used == 0 || right_used == 0)
        return OW_INPUT;
    words_part left_unit = trimmed((words_part){left.start + left_used, left.length - left_used});
    words_part right_unit = trimmed((words_part){right.start + right_used, right.length - right_used});
    const ow_unit *unit = find_unit(right_unit, dimension);
    const ow_unit *first_unit = left_unit.length == 0 ? unit : find_unit(left_unit, dimension);
    if (unit == NULL || first_unit == NULL || !convert(left_number, left_divisor, first_unit, &from) ||
        !convert(right_number, right_divisor, unit, &to) || from > to)
        return OW_INPUT;
    *low = from;
    *high = to;
    return OW_OK;
}

void ow_quantity_write(ow_text *text, ow_dimension dimension, double value, int decimals)
{
    if ((int)dimension < 0 || dimension >= OW_DIMENSION_COUNT)
        return;
    const ow_dimension_row *row = &ow_dimension_rows[dimension];
    int places = decimals < 0 ? 0 : decimals > DECIMALS_MAX ? DECIMALS_MAX : decimals;
    ow_text number = ow_text_new(text->context);
    ow_text_format(&number, "%.*f", places, value * row->times / row->over - row->offset);
    const char *digits = ow_text_words(&number);
    size_t length = number.length;
    if (strchr(digits, '.') != NULL) {
        while (length > 0 && digits[length - 1] == '0')
            length--;
        if (length > 0 && digits[length - 1] == '.')
            length--;
    }
    if (length == 2 && digits[0] == '-' && digits[1] == '0')
        digits++, length--;
    ow_text_bytes(text, digits, length);
    ow_text_add(text, row->unit);
    if (number.failed)
        text->failed = true;
    ow_text_done(&number);
}
