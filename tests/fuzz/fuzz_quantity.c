/* SPDX-License-Identifier: MIT */
/*
 * Any words as a quantity of each dimension. What is read is finite; blanks around it change nothing; a range
 * of a quantity with itself reads as that quantity; and what is written reads back as itself to the digits
 * written. The plain number is held against the C library's strtod (in the C locale), an answer that shares
 * nothing with ours.
 */
#include <math.h>
#include <string.h>

#include "base/words.h"
#include "oilway/quantity.h"
#include "support/fuzzing.h"

static bool nearly(double a, double b, double absolute)
{
    return fabs(a - b) <= absolute + 1e-9 * fmax(fabs(a), fabs(b));
}

static void check_number(const char *words, size_t length)
{
    double value = 0;
    size_t used = 0;
    if (!ow_number_read(words, length, &value, &used))
        return;
    OW_FUZZ_CHECK(used > 0 && used <= length && isfinite(value));
    char *part = strndup(words, used);
    OW_FUZZ_CHECK(part != NULL);
    char *end = NULL;
    double expected = strtod(part, &end);
    OW_FUZZ_CHECK(*end == '\0');
    /* Digits after the 19th are dropped: equal then only to the last bit or two. */
    if (used <= 19)
        OW_FUZZ_CHECK(value == expected);
    else
        OW_FUZZ_CHECK(fabs(value - expected) <= 4e-16 * fabs(expected) + 5e-324);
    free(part);
}

static void check_range(const char *words, ow_dimension dimension, double value)
{
    double low = 0, high = 0;
    ow_text range = ow_text_new(NULL);
    ow_text_format(&range, "%s .. %s", words, words);
    if (ow_quantity_read_range(ow_text_words(&range), dimension, &low, &high) != OW_OK)
        abort();
    OW_FUZZ_CHECK(low == value && high == value);
    ow_text_done(&range);
}

static void check_written(ow_dimension dimension, double value)
{
    double again = 0;
    ow_text written = ow_text_new(NULL);
    ow_quantity_write(&written, dimension, value, 12);
    if (fabs(value) < 1e290) { /* further out the trade's unit may overflow */
        OW_FUZZ_CHECK(ow_quantity_read(ow_text_words(&written), dimension, &again) == OW_OK);
        double step = dimension == OW_PRESSURE ? 1e-7 : dimension == OW_TEMPERATURE ? 1e-9 : 1e-12;
        OW_FUZZ_CHECK(nearly(again, value, step));
    }
    ow_text_done(&written);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size > 2000)
        return 0;
    char *words = malloc(size + 3);
    OW_FUZZ_CHECK(words != NULL);
    words[0] = ' ';
    memcpy(words + 1, data, size);
    words[size + 1] = '\0';
    size_t length = strlen(words + 1);
    check_number(words + 1, length);
    for (int i = 0; i < OW_DIMENSION_COUNT; i++) {
        ow_dimension dimension = (ow_dimension)i;
        double value = 0, padded = 0, low = 1, high = 0;
        if (ow_quantity_read_range(words + 1, dimension, &low, &high) == OW_OK)
            OW_FUZZ_CHECK(isfinite(low) && isfinite(high) && low <= high);
        if (ow_quantity_read(words + 1, dimension, &value) != OW_OK)
            continue;
        OW_FUZZ_CHECK(isfinite(value));
        words[length + 1] = '\t';
        words[length + 2] = '\0';
        OW_FUZZ_CHECK(ow_quantity_read(words, dimension, &padded) == OW_OK && padded == value);
        words[length + 1] = '\0';
        check_range(words + 1, dimension, value);
        check_written(dimension, value);
    }
    free(words);
    return 0;
}
