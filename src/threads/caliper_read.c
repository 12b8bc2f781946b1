/* SPDX-License-Identifier: MIT */
/* A caliper's reading from the words that a person types. */
#include <string.h>

#include "base/source.h"
#include "base/words.h"
#include "oilway/caliper.h"
#include "oilway/quantity.h"

#define DIAMETER_LEAST_M 1e-3
#define DIAMETER_MOST_M 0.1

typedef struct caliper_reading {
    const ow_context *context;
    bool wrong;
} caliper_reading;

static void fault(caliper_reading *reading, const char *option, const char *words, const char *expected,
                  const char *message)
{
    ow_source source = {option, words, strlen(words)};
    const char *mend = strchr(words, ',') != NULL ? "write a point for the decimal comma" : NULL;
    ow_source_report(reading->context, OW_ERROR, OW_INPUT, &source, (ow_span){0, source.length}, expected,
                     mend, "%s", message);
    reading->wrong = true;
}

/* A bare number between two bounds; `number` is left as it is where nothing was said. */
static void read_number(caliper_reading *reading, const char *option, const char *words, double low,
                        double high, const char *expected, double *number)
{
    double value;
    if (words == NULL)
        return;
    if (ow_quantity_read(words, OW_RATIO, &value) != OW_OK || strchr(words, '%') != NULL)
        fault(reading, option, words, expected, "this is no bare number");
    else if (value < low || value > high)
        fault(reading, option, words, expected, "this is out of range");
    else
        *number = value;
}

/* The same of millimetres, which may also be said with their unit, or in inches with theirs. */
static void read_mm(caliper_reading *reading, const char *option, const char *words, double low, double high,
                    const char *expected, double *mm)
{
    double length_m;
    if (words == NULL || ow_quantity_read(words, OW_LENGTH, &length_m) != OW_OK)
        read_number(reading, option, words, low, high, expected, mm);
    else if (length_m * 1e3 < low || length_m * 1e3 > high)
        fault(reading, option, words, expected, "this is out of range");
    else
        *mm = length_m * 1e3;
}

static void read_pitch(caliper_reading *reading, const ow_caliper_words *words, ow_caliper_ask *ask)
{
    double tpi = 0, pitch_mm = 0;
    read_number(reading, "--tpi", words->tpi, 4.5, 100, "threads per inch, 4.5 to 100", &tpi);
    read_mm(reading, "--pitch", words->pitch, 0.25, 5.6, "millimetres, 0.25 to 5.6", &pitch_mm);
    if (tpi > 0 && pitch_mm > 0)
        fault(reading, "--pitch", words->pitch, "--tpi or --pitch, not both", "the pitch is given twice");
    if (tpi > 0)
        ask->pitch_m = 0.0254 / tpi;
    if (pitch_mm > 0)
        ask->pitch_m = pitch_mm * 1e-3;
}

static void read_diameter(caliper_reading *reading, const char *words, ow_caliper_ask *ask)
{
    if (words == NULL)
        fault(reading, "diameter", "", ow_dimension_expected(OW_LENGTH), "the diameter is missing");
    else if (ow_quantity_read(words, OW_LENGTH, &ask->diameter_m) != OW_OK)
        fault(reading, "diameter", words, ow_dimension_expected(OW_LENGTH), "this is no diameter");
    else if (ask->diameter_m < DIAMETER_LEAST_M || ask->diameter_m > DIAMETER_MOST_M)
        fault(reading, "diameter", words, "1 mm to 100 mm", "this is out of range");
}

static void read_sides(caliper_reading *reading, const ow_caliper_words *words, ow_caliper_ask *ask)
{
    if (words->male && words->female)
        fault(reading, "--female", "female", "--male, --female, or neither", "a thread is male or female");
    else if (words->male)
        ask->side = OW_CALIPER_MALE;
    else if (words->female)
        ask->side = OW_CALIPER_FEMALE;
    if (words->taper == NULL)
        return;
    if (ow_words_equal(words->taper, "yes"))
        ask->taper = OW_TAPER_YES;
    else if (ow_words_equal(words->taper, "no"))
        ask->taper = OW_TAPER_NO;
    else
        fault(reading, "--taper", words->taper, "yes or no", "this is neither");
}

ow_status ow_caliper_ask_read(const ow_context *context, const ow_caliper_words *words, ow_caliper_ask *ask)
{
    caliper_reading reading = {context, false};
    ow_caliper_ask read = OW_CALIPER_ASK_INIT;
    double accuracy_mm = 1e3 * read.accuracy_m;
    read_diameter(&reading, words->diameter, &read);
    read_pitch(&reading, words, &read);
    read_mm(&reading, "--accuracy", words->accuracy, 0.001, 1, "millimetres, 0.001 to 1", &accuracy_mm);
    read_sides(&reading, words, &read);
    if (reading.wrong)
        return OW_INPUT;
    read.accuracy_m = accuracy_mm * 1e-3;
    *ask = read;
    return OW_OK;
}
