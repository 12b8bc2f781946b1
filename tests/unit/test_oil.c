/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "oilway/oil.h"
#include "support/near.h"

static ow_oil oil_of(double kv40, double kv100, double density15)
{
    ow_oil oil;
    assert_int_equal(ow_oil_set("", kv40, kv100, density15, &oil), OW_OK);
    return oil;
}

static double viscosity(const ow_oil *oil, double at_c)
{
    double found = 0.0;
    assert_int_equal(ow_oil_viscosity_mm2s(oil, at_c, &found), OW_OK);
    return found;
}

/* ASTM D341 worked by hand for 32 and 5.4 mm2/s; a published worksheet, which takes 0 C as 273 K, gives 8.5.
 */
static void viscosity_follows_the_walther_equation(void **state)
{
    (void)state;
    ow_oil oil = oil_of(32.0, 5.4, 870.0);
    assert_near(oil.walther_a, 9.531, 1e-3);
    assert_near(oil.walther_b, 3.747, 1e-3);
    assert_near(viscosity(&oil, 80.0), 8.533, 1e-3);
    assert_near(viscosity(&oil, 40.0), 32.0, 1e-12);
    assert_near(viscosity(&oil, 100.0), 5.4, 1e-12);
}

/*
 * Incropera and DeWitt, table A.5, unused engine oil: kinematic viscosity (from memory; the dynamic values
 * were seen) 288e-6 m2/s at 310 K, 41.7e-6 at 350 K, 22.0e-6 at 370 K. The equation is anchored at the two
 * ends.
 */
static void viscosity_meets_the_handbook_table_of_engine_oil(void **state)
{
    (void)state;
    /* an oil that passes through the table's two points, found from the equation itself */
    double w310 = log10(log10(288.7)), w370 = log10(log10(22.7));
    double b = (w310 - w370) / log10(370.0 / 310.0), a = w310 + b * log10(310.0);
    double kv40 = pow(10.0, pow(10.0, a - b * log10(313.15))) - 0.7;
    double kv100 = pow(10.0, pow(10.0, a - b * log10(373.15))) - 0.7;
    ow_oil oil = oil_of(kv40, kv100, 888.0);
    assert_near(viscosity(&oil, 350.0 - 273.15), 41.7, 0.02);
    assert_near(viscosity(&oil, 350.0 - 273.15), 42.46, 1e-3);
}

/* Worked example of the 15W-40 of the typical oils; four digits by an independent script. */
static void a_typical_15w40_has_the_worked_figures(void **state)
{
    (void)state;
    static const struct {
        double at_c, viscosity, density, dynamic;
    } rows[] = {{0, 1323, 887.8, 1174},
                {90, 18.88, 829.3, 15.66},
                {100, 14.70, 822.8, 12.09},
                {120, 9.537, 809.8, 7.722}};
    const ow_typical_oil *typical = ow_typical_oil_find("15W-40");
    assert_non_null(typical);
    ow_oil oil = oil_of(typical->kv40_mm2s, typical->kv100_mm2s, typical->density15_kgm3);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_liquid liquid;
        assert_int_equal(ow_oil_liquid(&oil, rows[i].at_c, &liquid), OW_OK);
        assert_near(viscosity(&oil, rows[i].at_c), rows[i].viscosity, 1e-3);
        assert_near(liquid.density_kgm3, rows[i].density, 1e-3);
        assert_near(liquid.dynamic_viscosity_pas * 1e3, rows[i].dynamic, 1e-3);
    }
}

/* ASTM D1250 / API MPMS 11.1 for lubricating oils (from memory): 15 C to t by exp(-a d (1 + 0.8 a d)), a =
 * 0.6278/rho. */
static void density_agrees_with_the_petroleum_tables(void **state)
{
    (void)state;
    for (int density15_at = 0; density15_at < 5; density15_at++) {
        double density15 = ow_test_step(850.0, 10.0, density15_at);
        ow_oil oil = oil_of(100.0, 12.0, density15);
        for (int at_c_at = 0; at_c_at < 27; at_c_at++) {
            double at_c = ow_test_step(0.0, 5.0, at_c_at);
            double alpha = 0.6278 / density15, step = at_c - 15.0;
            double table = density15 * exp(-alpha * step * (1.0 + 0.8 * alpha * step));
            assert_near(ow_oil_density_kgm3(&oil, at_c), table, 0.0016);
        }
    }
}

static void every_typical_oil_lies_in_its_sae_window(void **state)
{
    (void)state;
    assert_true(ow_typical_oil_count() >= 8);
    for (size_t i = 0; i < ow_typical_oil_count(); i++) {
        const ow_typical_oil *typical = ow_typical_oil_at(i);
        double low, high;
        assert_true(ow_oil_grade_window(typical->name, &low, &high));
        assert_true(typical->kv100_mm2s >= low && typical->kv100_mm2s < high);
        oil_of(typical->kv40_mm2s, typical->kv100_mm2s, typical->density15_kgm3);
        assert_ptr_equal(ow_typical_oil_find(typical->name), typical);
    }
}

/* SAE J300: 5W-30 is 9.3 to below 12.5 at 100 C, 20W-60 is 21.9 to 26.1. */
static void a_multigrade_meets_both_of_its_rows(void **state)
{
    (void)state;
    double low, high;
    assert_true(ow_oil_grade_window("5W-30", &low, &high));
    assert_near(low, 9.3, 1e-12);
    assert_near(high, 12.5, 1e-12);
    assert_true(ow_oil_grade_window("sae 20w60", &low, &high));
    assert_near(low, 21.9, 1e-12);
    assert_true(ow_oil_grade_window("30", &low, &high));
    assert_near(low, 9.3, 1e-12);
    assert_false(ow_oil_grade_window("17W-40", &low, &high));
    assert_false(ow_oil_grade_window("15W-41", &low, &high));
    assert_false(ow_oil_grade_window("", &low, &high));
    assert_false(ow_oil_grade_window("40-15W", &low, &high));
}

static void a_grade_is_found_in_any_usual_spelling(void **state)
{
    (void)state;
    assert_ptr_equal(ow_typical_oil_find("15w40"), ow_typical_oil_find("SAE 15W-40"));
    assert_ptr_equal(ow_typical_oil_find("sae30"), ow_typical_oil_find("30"));
    assert_non_null(ow_typical_oil_find("30"));
    assert_null(ow_typical_oil_find("15W-4"));
    assert_null(ow_typical_oil_find(""));
    assert_null(ow_typical_oil_find(NULL));
    assert_null(ow_typical_oil_find("a grade far longer than any"));
}

static void viscosity_falls_and_never_is_not_a_number(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_typical_oil_count(); i++) {
        const ow_typical_oil *typical = ow_typical_oil_at(i);
        ow_oil oil = oil_of(typical->kv40_mm2s, typical->kv100_mm2s, typical->density15_kgm3);
        double before = HUGE_VAL;
        for (int at_c_at = 0; at_c_at < 221; at_c_at++) {
            double at_c = ow_test_step(-20.0, 1.0, at_c_at);
            double now = viscosity(&oil, at_c);
            assert_true(now > 0.3 && now < before);
            before = now;
        }
    }
}

static void what_is_out_of_range_is_refused_and_changes_nothing(void **state)
{
    (void)state;
    static const double wrong[][3] = {{32, 32, 870},        {5, 32, 870},          {32, 1.9, 870},
                                      {32, 5, 600},         {32, 5, 1100},         {6000, 5, 870},
                                      {200, 101, 870},      {(double)NAN, 5, 870}, {32, (double)NAN, 870},
                                      {32, 5, (double)NAN}, {HUGE_VAL, 5, 870},    {-1, 5, 870}};
    ow_oil oil = {.kv40_mm2s = 7.0};
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++)
        assert_int_equal(ow_oil_set("", wrong[i][0], wrong[i][1], wrong[i][2], &oil), OW_RANGE);
    assert_true(oil.kv40_mm2s == 7.0);
    oil = oil_of(110.0, 14.7, 878.0);
    double found = 7.0;
    assert_int_equal(ow_oil_viscosity_mm2s(&oil, -40.1, &found), OW_RANGE);
    assert_int_equal(ow_oil_viscosity_mm2s(&oil, 200.1, &found), OW_RANGE);
    assert_int_equal(ow_oil_viscosity_mm2s(&oil, (double)NAN, &found), OW_RANGE);
    oil = oil_of(5000.0, 2.0, 878.0); /* no real oil: a solid in the cold */
    assert_int_equal(ow_oil_viscosity_mm2s(&oil, -40.0, &found), OW_RANGE);
    assert_true(found == 7.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(viscosity_follows_the_walther_equation),
        cmocka_unit_test(viscosity_meets_the_handbook_table_of_engine_oil),
        cmocka_unit_test(a_typical_15w40_has_the_worked_figures),
        cmocka_unit_test(density_agrees_with_the_petroleum_tables),
        cmocka_unit_test(every_typical_oil_lies_in_its_sae_window),
        cmocka_unit_test(a_multigrade_meets_both_of_its_rows),
        cmocka_unit_test(a_grade_is_found_in_any_usual_spelling),
        cmocka_unit_test(viscosity_falls_and_never_is_not_a_number),
        cmocka_unit_test(what_is_out_of_range_is_refused_and_changes_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
