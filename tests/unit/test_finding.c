/* SPDX-License-Identifier: MIT */
/* The table of rules is sound, and a list of findings keeps what it is told. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "oilway/finding.h"
#include "support/failing.h"

static const ow_context PLAIN = OW_CONTEXT_INIT;

static void every_rule_says_what_how_and_whence(void **state)
{
    (void)state;
    assert_true(ow_rule_count() > 20);
    for (size_t index = 0; index < ow_rule_count(); index++) {
        const ow_rule *rule = ow_rule_at(index);
        assert_ptr_equal(ow_rule_find(rule->id), rule); /* ids differ */
        assert_true(strlen(rule->says) > 10 && rule->says[strlen(rule->says) - 1] == '.');
        assert_true(strlen(rule->mend) > 10 && rule->mend[strlen(rule->mend) - 1] == '.');
        assert_true(strlen(rule->source) > 3);
        assert_true(strstr(rule->circuits, "feed") != NULL || strstr(rule->circuits, "drain") != NULL ||
                    strstr(rule->circuits, "coolant") != NULL);
        assert_int_equal(strspn(rule->id, "abcdefghijklmnopqrstuvwxyz0123456789-"), strlen(rule->id));
    }
    assert_null(ow_rule_at(ow_rule_count()));
    assert_null(ow_rule_find("no such rule"));
}

static void a_finding_keeps_its_own_words(void **state)
{
    (void)state;
    ow_findings findings = ow_findings_new(&PLAIN);
    char where[] = "tee-2.branch";
    assert_int_equal(
        ow_findings_add(&findings, "bore", OW_ERROR, where, NULL, "%d mm is less than %d mm", 3, 4), OW_OK);
    memset(where, 'x', sizeof where - 1);
    assert_int_equal(findings.count, 1);
    assert_string_equal(findings.items[0].where, "tee-2.branch");
    assert_string_equal(findings.items[0].message, "3 mm is less than 4 mm");
    assert_string_equal(findings.items[0].mend, ow_rule_find("bore")->mend);
    assert_int_equal(ow_findings_add(&findings, "no such rule", OW_ERROR, "", NULL, "x"), OW_FAULT);
    assert_int_equal(findings.count, 1);
    ow_findings_done(&findings);
    assert_int_equal(findings.count, 0);
}

static void errors_come_first_and_equals_keep_their_order(void **state)
{
    (void)state;
    ow_findings findings = ow_findings_new(&PLAIN);
    const ow_severity severities[] = {OW_NOTE, OW_ERROR, OW_WARNING, OW_ERROR, OW_NOTE};
    for (int index = 0; index < 5; index++)
        assert_int_equal(ow_findings_add(&findings, "bore", severities[index], "", NULL, "%d", index), OW_OK);
    assert_true(ow_findings_have(&findings, OW_ERROR));
    ow_findings_sort(&findings);
    const char *const order[] = {"1", "3", "2", "0", "4"};
    for (int index = 0; index < 5; index++)
        assert_string_equal(findings.items[index].message, order[index]);
    ow_findings_done(&findings);
    assert_false(ow_findings_have(&findings, OW_NOTE));
}

static ow_status add_some(const ow_context *context, void *data)
{
    (void)data;
    ow_findings findings = ow_findings_new(context);
    ow_status status = OW_OK;
    for (int index = 0; index < 20 && status == OW_OK; index++)
        status = ow_findings_add(&findings, "open-end", OW_ERROR, "a", "mend it", "%d", index);
    assert_int_equal(findings.failed, status == OW_MEMORY);
    ow_findings_done(&findings);
    return status;
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    ow_test_fail_each(add_some, NULL);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_rule_says_what_how_and_whence),
        cmocka_unit_test(a_finding_keeps_its_own_words),
        cmocka_unit_test(errors_come_first_and_equals_keep_their_order),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
