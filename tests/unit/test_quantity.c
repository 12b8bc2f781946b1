/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "base/unit_table.h"
#include "oilway/quantity.h"
#include "support/failing.h"
#include "support/testing.h"

static double read_as(const char *words, ow_dimension dimension)
{
    double value = (double)NAN;
    if (ow_quantity_read(words, dimension, &value) != OW_OK)
        fail_msg("not read: %s", words);
    return value;
}

static void assert_refused(const char *words, ow_dimension dimension)
{
    double value = -77.0;
    if (ow_quantity_read(words, dimension, &value) != OW_INPUT)
        fail_msg("read, but should not be: %s", words);
    assert_true(value == -77.0);
}

typedef struct factor_row {
    const char *words;
    ow_dimension dimension;
    double si;
} factor_row;

/* NIST Special Publication 811 (2008), appendix B.8, to the digits that it gives; SI prefixes; litre = dm3.
 */
static void units_convert_as_published(void **state)
{
    (void)state;
    static const factor_row rows[] = {
        {"1 in", OW_LENGTH, 0.0254},
        {"1 psi", OW_PRESSURE, 6894.757},
        {"1 bar", OW_PRESSURE, 1e5},
        {"1 mbar", OW_PRESSURE, 100},
        {"1 cP", OW_DYNAMIC_VISCOSITY, 1e-3},
        {"1 cSt", OW_KINEMATIC_VISCOSITY, 1e-6},
        {"1 L/min", OW_FLOW, 1.666667e-5},
        {"1 deg", OW_ANGLE, 1.745329e-2},
        {"1 min", OW_TIME, 60},
        {"1 mm", OW_LENGTH, 1e-3},
        {"1 cm", OW_LENGTH, 1e-2},
        {"1 um", OW_LENGTH, 1e-6},
        {"1 kPa", OW_PRESSURE, 1e3},
        {"1 MPa", OW_PRESSURE, 1e6},
        {"1 kW", OW_POWER, 1e3},
        {"1 g", OW_MASS, 1e-3},
        {"1 mPa.s", OW_DYNAMIC_VISCOSITY, 1e-3},
        {"1 mm2/s", OW_KINEMATIC_VISCOSITY, 1e-6},
        {"1 kg/m3", OW_DENSITY, 1},
        {"1 m3/s", OW_FLOW, 1},
        {"1 rad", OW_ANGLE, 1},
        {"1 W", OW_POWER, 1},
        {"1 s", OW_TIME, 1},
        {"1 %", OW_RATIO, 0.01},
        {"1", OW_RATIO, 1},
        {"1 F", OW_TEMPERATURE_STEP, 5.0 / 9.0},
        {"1 C", OW_TEMPERATURE_STEP, 1},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double read = read_as(rows[i].words, rows[i].dimension);
        if (fabs(read / rows[i].si - 1) > 3e-7)
            fail_msg("%s: %.9g instead of %.9g", rows[i].words, read, rows[i].si);
    }
}

/* Fixed points: ice and steam on both scales, -40 on both, absolute zero. */
static void temperatures_meet_at_their_fixed_points(void **state)
{
    (void)state;
    assert_true(read_as("32 F", OW_TEMPERATURE) == 0);
    assert_true(read_as("212 F", OW_TEMPERATURE) == 100);
    assert_true(read_as("-40 F", OW_TEMPERATURE) == -40);
    assert_true(read_as("-40 C", OW_TEMPERATURE) == -40);
    assert_true(read_as("0 K", OW_TEMPERATURE) == -273.15);
    assert_true(fabs(read_as("373.15 K", OW_TEMPERATURE) - 100) < 1e-10);
    assert_true(read_as("10 C", OW_TEMPERATURE_STEP) == read_as("10 K", OW_TEMPERATURE_STEP));
}

static void assert_same(const char *a, const char *b, ow_dimension dimension)
{
    if (read_as(a, dimension) != read_as(b, dimension))
        fail_msg("%s is not %s", a, b);
}

static void spellings_of_one_quantity_are_equal_to_the_last_bit(void **state)
{
    (void)state;
    assert_same("3 mm", "0.003 m", OW_LENGTH);
    assert_same("2.1 mm", "0.21 cm", OW_LENGTH);
    assert_same("2.1 mm", "2100 um", OW_LENGTH);
    assert_same("4.4 mm", "4.4e-3 m", OW_LENGTH);
    assert_same("0.25 in", "6.35 mm", OW_LENGTH);
    assert_same("1 in", "25.4 mm", OW_LENGTH);
    assert_same("3/8 in", "9.525 mm", OW_LENGTH);
    assert_same("4.5 bar", "450 kPa", OW_PRESSURE);
    assert_same("4.5 bar", "0.45 MPa", OW_PRESSURE);
    assert_same("0.3 kPa", "3 mbar", OW_PRESSURE);
    assert_same("14.7 cSt", "14.7 mm2/s", OW_KINEMATIC_VISCOSITY);
    assert_same("0.0147 Pa.s", "14.7 cP", OW_DYNAMIC_VISCOSITY);
    assert_same("50 %", "0.5", OW_RATIO);
    assert_same("2 lpm", "2 L/min", OW_FLOW);
    /* Every tenth of a millimetre up to 200 mm, in three units: plain division by 1000 fails many of these.
     */
    for (int i = 1; i <= 2000; i++) {
        char mm[32], cm[32], m[32];
        snprintf(mm, sizeof mm, "%d.%d mm", i / 10, i % 10);
        snprintf(cm, sizeof cm, "%d.%02d cm", i / 100, i % 100);
        snprintf(m, sizeof m, "0.%04d m", i);
        assert_same(mm, cm, OW_LENGTH);
        assert_same(mm, m, OW_LENGTH);
    }
}

static void every_unit_in_the_table_reads_in_its_dimension_only(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_unit_count; i++) {
        char words[64];
        snprintf(words, sizeof words, "2%s", ow_units[i].name);
        for (int d = 0; d < OW_DIMENSION_COUNT; d++) {
            bool listed = false;
            for (size_t j = 0; j < ow_unit_count; j++)
                listed = listed || (ow_units[j].dimension == (ow_dimension)d &&
                                    strcmp(ow_units[j].name, ow_units[i].name) == 0);
            double value;
            assert_int_equal(ow_quantity_read(words, (ow_dimension)d, &value) == OW_OK, listed);
        }
    }
}

static void blanks_and_harmless_capitals_do_not_matter(void **state)
{
    (void)state;
    assert_same("4.4mm", "  4.4 \t mm  ", OW_LENGTH);
    assert_same("4.4 MM", "4.4 mm", OW_LENGTH);
    assert_same("65 PSI", "65 psi", OW_PRESSURE);
    assert_same("2 l/min", "2 L/MIN", OW_FLOW);
    assert_same("90 deg  C", "90 degC", OW_TEMPERATURE);
    assert_same("90 \xC2\xB0"
                "C",
                "90 C", OW_TEMPERATURE);
    assert_same("15 \xC2\xB0", "15 deg", OW_ANGLE);
    assert_same("1.5 \xC2\xB5m", "1.5 um", OW_LENGTH);
    assert_same("1.5 \xCE\xBCm", "1.5 um", OW_LENGTH);
    assert_same("1/2\"", "0.5 in", OW_LENGTH);
}

static void capitals_that_change_the_meaning_are_kept_apart(void **state)
{
    (void)state;
    assert_refused("5 mPa", OW_PRESSURE);
    assert_refused("5 MPA", OW_PRESSURE);
    assert_refused("5 MPa.s", OW_DYNAMIC_VISCOSITY);
    assert_refused("5 M", OW_LENGTH);
    assert_refused("5 G", OW_MASS);
    assert_refused("5 Mbar", OW_PRESSURE);
}

static void what_is_no_quantity_is_refused(void **state)
{
    (void)state;
    static const char *const rows[] = {
        "",
        " ",
        "4.4",
        "mm",
        "4,4 mm",
        "4.4 mn",
        "4.4 bar",
        "4.4 mm mm",
        "4.4 m m",
        "5. mm",
        ". mm",
        "- 4 mm",
        "1e999 mm",
        "nan mm",
        "inf mm",
        "0x10 mm",
        "1/0 in",
        "1/2 mm",
        "1/-2 in",
        "1/2.5 in",
        "1.5/2 in",
        "1//2 in",
        "1..2 mm",
        "4.4 mm,",
        "4.4 mm\n",
        "1 2 mm",
        "1/2/3 in",
        "/2 in",
        "4.4 millimetresverylong",
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_refused(rows[i], OW_LENGTH);
    assert_refused("1e308 bar", OW_PRESSURE); /* overflows in SI only */
}

static void nothing_is_minus_zero(void **state)
{
    (void)state;
    assert_false(signbit(read_as("-0 mm", OW_LENGTH)));
    assert_false(signbit(read_as("-0", OW_RATIO)));
}

static void assert_range(const char *words, ow_dimension dimension, double low, double high)
{
    double from = (double)NAN, to = (double)NAN;
    if (ow_quantity_read_range(words, dimension, &from, &to) != OW_OK)
        fail_msg("not read: %s", words);
    assert_true(from == low && to == high);
}

static void ranges_read_with_one_unit_or_two(void **state)
{
    (void)state;
    assert_range("-40..150 C", OW_TEMPERATURE, -40, 150);
    assert_range("-40 C .. 302 F", OW_TEMPERATURE, -40, 150);
    assert_range("1..2 mm", OW_LENGTH, 0.001, 0.002);
    assert_range("0.8 mm..1 cm", OW_LENGTH, 0.0008, 0.01);
    assert_range("1/4..1/2 in", OW_LENGTH, 0.00635, 0.0127);
    assert_range(".5..0.5 m", OW_LENGTH, 0.5, 0.5);
    assert_range("0.2..50 %", OW_RATIO, 0.002, 0.5); /* one unit is the unit of both */
    assert_range("1..2", OW_RATIO, 1, 2);
    static const char *const refused[] = {"1 mm",   "2..1 mm", "1..2",       "1 mm..2", "1..2 bar",
                                          "..2 mm", "1.. mm",  "1..2..3 mm", "1.2 mm",  ""};
    for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++) {
        double from = -7, to = -8;
        assert_int_equal(ow_quantity_read_range(refused[i], OW_LENGTH, &from, &to), OW_INPUT);
        assert_true(from == -7 && to == -8);
    }
}

static void assert_written(ow_dimension dimension, double value, int decimals, const char *words)
{
    ow_text text = ow_text_new(NULL);
    ow_quantity_write(&text, dimension, value, decimals);
    assert_string_equal(ow_text_words(&text), words);
    ow_text_done(&text);
}

static void quantities_are_written_in_the_trades_units(void **state)
{
    (void)state;
    assert_written(OW_LENGTH, 0.0044, 2, "4.4 mm");
    assert_written(OW_LENGTH, 0.65, 1, "650 mm");
    assert_written(OW_LENGTH, 0.1, 0, "100 mm");
    assert_written(OW_LENGTH, -0.00001, 1, "0 mm");
    assert_written(OW_PRESSURE, 450000, 2, "4.5 bar");
    assert_written(OW_TEMPERATURE, 99.96, 1, "100 C");
    assert_written(OW_TEMPERATURE, -40, 1, "-40 C");
    assert_written(OW_TEMPERATURE_STEP, 8.25, 1, "8.2 K");
    assert_written(OW_FLOW, 2.0 / 60000, 3, "2 L/min");
    assert_written(OW_ANGLE, 0.26179938779914943654, 2, "15 deg");
    assert_written(OW_POWER, 300, 0, "300 W");
    assert_written(OW_MASS, 0.035, 1, "35 g");
    assert_written(OW_DYNAMIC_VISCOSITY, 0.008, 2, "8 mPa.s");
    assert_written(OW_KINEMATIC_VISCOSITY, 14.7e-6, 2, "14.7 mm2/s");
    assert_written(OW_DENSITY, 878, 1, "878 kg/m3");
    assert_written(OW_TIME, 4.25, 2, "4.25 s");
    assert_written(OW_RATIO, 0.5, 0, "50 %");
}

static void what_is_written_reads_back(void **state)
{
    (void)state;
    for (int d = 0; d < OW_DIMENSION_COUNT; d++) {
        for (double value = 1e-3; value < 1e4; value *= 3.7) {
            ow_text text = ow_text_new(NULL);
            ow_quantity_write(&text, (ow_dimension)d, value, 9);
            double again = read_as(ow_text_words(&text), (ow_dimension)d);
            double last_place =
                d == OW_PRESSURE ? 1e-4 : 1e-9; /* of nine decimals, in SI; less for the rest */
            assert_true(fabs(again - value) <= last_place / 2 + 1e-12 * value);
            ow_text_done(&text);
        }
    }
}

static void every_dimension_says_what_it_expects_and_that_reads(void **state)
{
    (void)state;
    for (int d = 0; d < OW_DIMENSION_COUNT; d++) {
        const char *expected = ow_dimension_expected((ow_dimension)d);
        const char *example = strstr(expected, "such as ");
        assert_non_null(example);
        read_as(example + strlen("such as "), (ow_dimension)d);
    }
    assert_non_null(ow_dimension_expected(OW_DIMENSION_COUNT));
    assert_non_null(ow_dimension_expected((ow_dimension)-1));
}

static ow_status write_one(const ow_context *context, void *data)
{
    (void)data;
    ow_text text = ow_text_new(context);
    ow_quantity_write(&text, OW_LENGTH, 0.0044, 3);
    ow_status status = ow_text_status(&text);
    ow_text_done(&text);
    return status;
}

static void each_failing_allocation_is_told_and_leaks_nothing(void **state)
{
    (void)state;
    assert_true(ow_test_fail_each(write_one, NULL) >= 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(units_convert_as_published),
        cmocka_unit_test(temperatures_meet_at_their_fixed_points),
        cmocka_unit_test(spellings_of_one_quantity_are_equal_to_the_last_bit),
        cmocka_unit_test(every_unit_in_the_table_reads_in_its_dimension_only),
        cmocka_unit_test(blanks_and_harmless_capitals_do_not_matter),
        cmocka_unit_test(capitals_that_change_the_meaning_are_kept_apart),
        cmocka_unit_test(what_is_no_quantity_is_refused),
        cmocka_unit_test(nothing_is_minus_zero),
        cmocka_unit_test(ranges_read_with_one_unit_or_two),
        cmocka_unit_test(quantities_are_written_in_the_trades_units),
        cmocka_unit_test(what_is_written_reads_back),
        cmocka_unit_test(every_dimension_says_what_it_expects_and_that_reads),
        cmocka_unit_test(each_failing_allocation_is_told_and_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
