/* SPDX-License-Identifier: MIT */
#include "oilway/hose_material.h"

#include <string.h>

#include "oilway/assumption.h"
#include "oilway/finding.h"
#include "support/failing.h"
#include "support/near.h"

static unsigned faults(const char *word, bool oil, bool pressurised, double pressure_pa, double at_c)
{
    const ow_hose_material *material = ow_hose_material_find(word);
    assert_non_null(material);
    return ow_hose_faults(material, &(ow_hose_service){oil, pressurised, pressure_pa, at_c});
}

/* ASTM D2000 (from memory): silicone FE/GE swells up to 80 % in oil; common practice refuses it. */
static void plain_silicone_is_refused_for_oil_and_taken_for_coolant(void **state)
{
    (void)state;
    assert_int_equal(faults("silicone", true, false, 0.0, 110.0), OW_HOSE_FLUID);
    assert_int_equal(faults("silicone", false, true, 1e5, 110.0), 0);
}

static void fluoro_lined_silicone_drains_oil_but_feeds_none(void **state)
{
    (void)state;
    assert_int_equal(faults("fluoro-silicone", true, false, 0.0, 130.0), 0);
    assert_int_equal(faults("FVMQ", true, true, 4e5, 130.0), OW_HOSE_PRESSURE);
    assert_int_equal(faults("fluoro-silicone", true, false, 0.0, 190.0), OW_HOSE_HEAT_SHORT);
    assert_int_equal(faults("fluoro-silicone", true, false, 0.0, 201.0), OW_HOSE_HEAT);
}

/* SAE J517 100R14: -54 to 204 C. */
static void ptfe_stands_both_fluids_to_204_degrees(void **state)
{
    (void)state;
    assert_int_equal(faults("PTFE", true, true, 6e5, 204.0), 0);
    assert_int_equal(faults("100R14", false, true, 6e5, -54.0), 0);
    assert_int_equal(faults("ptfe", true, true, 6e5, 205.0), OW_HOSE_HEAT);
    assert_int_equal(faults("ptfe", true, true, 6e5, (double)NAN), OW_HOSE_HEAT);
}

/* SAE J20: EPDM is class D, coolant only; SAE J30 30R7 to 0.35 MPa. */
static void rubbers_have_their_limits(void **state)
{
    (void)state;
    assert_int_equal(faults("epdm", true, false, 0.0, 90.0), OW_HOSE_FLUID);
    assert_int_equal(faults("epdm", false, true, 1e5, 110.0), 0);
    assert_int_equal(faults("nitrile", false, true, 1e5, 90.0), OW_HOSE_FLUID_LIMITED);
    assert_int_equal(faults("30R7", true, true, 4e5, 100.0), OW_HOSE_PRESSURE);
    assert_int_equal(faults("30R9", true, true, 4e5, 100.0), 0);
    assert_int_equal(faults("nitrile", true, true, 4e5, 120.0), OW_HOSE_HEAT);
}

static void the_tables_are_whole(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_hose_material_count(); i++) {
        const ow_hose_material *material = ow_hose_material_at(i);
        assert_ptr_equal(ow_hose_material_find(material->word), material);
        assert_true(material->low_c < material->high_c && material->high_c <= material->short_high_c);
        assert_true(material->source[0] != '\0' && material->title[0] != '\0');
        assert_true(material->oil == OW_STANDS_NOT || material->coolant == OW_STANDS_NOT ||
                    material->high_c >= 100);
    }
    assert_null(ow_hose_material_find("straw"));
    assert_null(ow_hose_material_find(""));
    assert_null(ow_hose_material_find("100"));
    assert_null(ow_hose_material_at(ow_hose_material_count()));
    double before = 0.0;
    static const int dashes[] = {4, 5, 6, 8, 10, 12, 16};
    for (size_t i = 0; i < 7; i++) {
        assert_true(ow_ptfe_bend_radius_m(dashes[i]) > before);
        before = ow_ptfe_bend_radius_m(dashes[i]);
    }
    assert_true(ow_ptfe_bend_radius_m(7) == 0.0);
}

static void every_rule_has_its_words_and_one_id(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_rule_count(); i++) {
        const ow_rule *rule = ow_rule_at(i);
        assert_ptr_equal(ow_rule_find(rule->id), rule);
        assert_true(rule->says[0] != '\0' && rule->mend[0] != '\0' && rule->source[0] != '\0');
        assert_true(strlen(rule->circuits) >= 4);
    }
    assert_null(ow_rule_at(ow_rule_count()));
}

static ow_status list_some(const ow_context *context, void *data)
{
    ow_assumptions list = ow_assumptions_new(context), other = ow_assumptions_new(context);
    size_t *count = data;
    ow_status status = OW_OK;
    for (int i = 0; i < 20 && status == OW_OK; i++)
        status = ow_assumptions_add(&list, OW_MARK_ASSUMED, "oil temperature", "assumption", "%d C", i % 10);
    if (status == OW_OK)
        status = ow_assumptions_join(&other, &list);
    *count = other.count;
    assert_true((status == OW_OK) == (!list.failed && !other.failed));
    ow_assumptions_done(&list);
    ow_assumptions_done(&other);
    return status;
}

static void assumptions_are_listed_once_and_every_allocation_may_fail(void **state)
{
    (void)state;
    size_t count = 0;
    ow_context context = OW_CONTEXT_INIT;
    assert_int_equal(list_some(&context, &count), OW_OK);
    assert_int_equal(count, 10);
    assert_true(ow_test_fail_each(list_some, &count) > 20);
    assert_string_equal(ow_mark_words(OW_MARK_PRACTICE), "common practice");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(plain_silicone_is_refused_for_oil_and_taken_for_coolant),
        cmocka_unit_test(fluoro_lined_silicone_drains_oil_but_feeds_none),
        cmocka_unit_test(ptfe_stands_both_fluids_to_204_degrees),
        cmocka_unit_test(rubbers_have_their_limits),
        cmocka_unit_test(the_tables_are_whole),
        cmocka_unit_test(every_rule_has_its_words_and_one_id),
        cmocka_unit_test(assumptions_are_listed_once_and_every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
