/* SPDX-License-Identifier: MIT */
/*
 * A layout re-walked: what a wrong joint is told as, what an assumed figure may refuse, how far things reach,
 * and that one cause is one finding. That each rule is raised and mended: test_rules.c.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/check.h"
#include "oilway/file.h"
#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"

typedef struct fixture {
    ow_test_diagnostics sink;
    ow_context context;
    char *pages; /* tests/rules/shop.yaml */
    ow_catalog *catalog;
    ow_findings findings, passed;
} fixture;

static int load(void **state)
{
    static fixture self;
    const char *source = getenv("OW_SOURCE_DIR");
    const char *const names[] = {"shop.yaml"};
    const ow_catalog_options options = {NULL, 0, NULL, false, false};
    char path[4096];
    size_t length = 0;
    (void)snprintf(path, sizeof path, "%s/tests/rules/shop.yaml", source ? source : ".");
    self.context = ow_test_context(&self.sink);
    *state = &self;
    if (ow_file_read(&self.context, path, &self.pages, &length) != OW_OK)
        return -1;
    const char *const texts[] = {self.pages};
    return ow_catalog_load_texts(&self.context, names, texts, 1, &options, &self.catalog) == OW_OK ? 0 : -1;
}

static int unload(void **state)
{
    fixture *self = *state;
    ow_catalog_free(self->catalog);
    ow_release(&self->context, self->pages);
    ow_test_diagnostics_clear(&self->sink);
    return 0;
}

/* Checks the one layout of a text; findings and passed stay until `done`. */
static void check(fixture *self, bool with_catalog, const char *text)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    self->findings = ow_findings_new(&self->context);
    self->passed = ow_findings_new(&self->context);
    ow_status status =
        ow_layouts_read(&self->context, self->catalog, "case.yaml", text, strlen(text), &layouts, &count);
    for (size_t index = 0; index < self->sink.count; index++)
        print_error("%s\n", self->sink.items[index].told);
    assert_int_equal(status, OW_OK);
    assert_int_equal(count, 1);
    assert_int_equal(ow_check_layout(&self->context, with_catalog ? self->catalog : NULL, &layouts[0],
                                     &self->findings, &self->passed),
                     OW_OK);
    ow_layouts_free(&self->context, layouts, count);
}

static void done(fixture *self)
{
    ow_findings_done(&self->findings);
    ow_findings_done(&self->passed);
}

/* The only finding of a rule; fails the test if there is none or more. */
static const ow_finding *only(const ow_findings *findings, const char *rule)
{
    const ow_finding *found = NULL;
    for (size_t index = 0; index < findings->count; index++) {
        const ow_finding *finding = &findings->items[index];
        if (strcmp(finding->rule->id, rule) != 0)
            continue;
        if (found != NULL)
            fail_msg("%s is told twice: %s; %s", rule, found->message, finding->message);
        found = finding;
    }
    if (found == NULL)
        fail_msg("%s is not told", rule);
    return found;
}

static size_t count_of(const ow_findings *findings, const char *rule)
{
    size_t count = 0;
    for (size_t index = 0; index < findings->count; index++)
        count += strcmp(findings->items[index].rule->id, rule) == 0;
    return count;
}

static void assert_holds(const char *text, const char *words)
{
    if (strstr(text, words) == NULL)
        fail_msg("\"%s\" does not hold \"%s\"", text, words);
}

/* ---- joints -------------------------------------------------------------------------------------------- */

static void a_wrong_joint_is_told_with_its_verdict_and_figures(void **state)
{
    fixture *self = *state;
    /* Pairs of threads and seats with the verdicts that geometry and the seats' standards give; test_mates.c
     * holds these themselves against published sizes. */
    static const struct {
        const char *from, *to, *verdict;
    } pairs[] = {
        {"1/8-27 NPT male", "M10x1 female washer", "binds: "},
        {"-4 flare37 male", "7/16-20 UNF female o-ring", "wrong-seat: same thread"},
        {"7/16-20 UNF male washer", "M12x1.25 female washer", "weak: "},
        {"1/2-14 NPT male", "Rc1/2 female", "leaks: "},
        {"M14x1.5 male washer", "M10x1 female washer", "no-start: "},
    };
    for (size_t index = 0; index < sizeof pairs / sizeof pairs[0]; index++) {
        char text[256];
        (void)snprintf(text, sizeof text, "from: \"%s\"\nparts: [\"%s\"]\n", pairs[index].from,
                       pairs[index].to);
        check(self, true, text);
        const ow_finding *wrong = only(&self->findings, "wrong-joint");
        assert_int_equal(wrong->severity, OW_ERROR);
        assert_holds(wrong->message, pairs[index].verdict);
        assert_holds(wrong->message, "("); /* its standards */
        assert_int_equal(count_of(&self->passed, "wrong-joint"), 0);
        done(self);
    }
}

static void the_mend_of_a_wrong_joint_is_an_adapter_that_may_stand_there(void **state)
{
    fixture *self = *state;
    static const char text[] = "circuit: feed\nfrom: brockle:boss\nasked: {rating: %s}\n"
                               "parts: [tf, h45, hose: {length: 650 mm}, he, plover:oil-in]\n";
    char words[256];
    (void)snprintf(words, sizeof words, text, "4 bar");
    check(self, true, words);
    assert_string_equal(only(&self->findings, "wrong-joint")->mend,
                        "Put f45 between them: 45 to 37 degree flare.");
    done(self);
    check(self, false, words); /* without a catalogue nothing is looked for */
    assert_string_equal(
        only(&self->findings, "wrong-joint")->mend,
        "Put an adapter between them, one end to fit -4 flare37 male, the other to fit 1/4 flare45 "
        "female swivel.");
    done(self);
    (void)snprintf(words, sizeof words, text, "220 bar"); /* more than f45 bears */
    check(self, true, words);
    assert_holds(only(&self->findings, "wrong-joint")->mend, "the catalogue has none in one piece");
    done(self);
}

static void every_joint_that_seals_is_passed_with_its_standard(void **state)
{
    fixture *self = *state;
    check(self, true,
          "circuit: feed\nfrom: brockle:boss\nparts: [tf, he, hose: {length: 650 mm}, he, plover:oil-in]\n");
    assert_int_equal(self->findings.count, 0);
    assert_int_equal(count_of(&self->passed, "wrong-joint"), 5); /* four parts and a port */
    static const char *const passed[] = {"open-end",  "unserved",         "rating",        "fluid",
                                         "no-hose",   "restrictor-wrong", "closing-joint", "hose-fluid",
                                         "hose-bend", "long-stick-out"};
    for (size_t index = 0; index < sizeof passed / sizeof passed[0]; index++)
        only(&self->passed, passed[index]);
    for (size_t index = 0; index < self->passed.count; index++)
        assert_int_equal(self->passed.items[index].severity, OW_NOTE);
    done(self);
}

/* ---- what is only assumed warns ------------------------------------------------------------------------ */

static void a_rating_missed_only_on_an_assumed_pressure_warns(void **state)
{
    fixture *self = *state;
    static const char text[] =
        "circuit: feed\nfrom: \"%s\"\n%sparts: [tf, h7, h30: {length: 650 mm}, h7, plover:oil-in]\n";
    char words[256];
    /* 30R7 hose bears 3.5 bar (SAE J30). A bare end has no pressure: 6 bar are assumed. */
    (void)snprintf(words, sizeof words, text, "1/8-27 NPT female", "");
    check(self, true, words);
    assert_int_equal(only(&self->findings, "hose-pressure")->severity, OW_WARNING);
    done(self);
    (void)snprintf(words, sizeof words, text, "1/8-27 NPT female", "asked: {rating: 6 bar, fluid: oil}\n");
    check(self, true, words);
    assert_int_equal(only(&self->findings, "hose-pressure")->severity, OW_ERROR);
    done(self);
    (void)snprintf(words, sizeof words, text, "brockle:boss", ""); /* says its 4.4 bar */
    check(self, true, words);
    assert_int_equal(only(&self->findings, "hose-pressure")->severity, OW_ERROR);
    done(self);
}

static void a_part_too_weak_for_an_assumed_pressure_warns_and_for_a_given_one_fails(void **state)
{
    fixture *self = *state;
    static const char text[] = "circuit: coolant\nfrom: \"1/4-18 NPT female\"\n%s"
                               "parts: [tb, soft: {length: 700 mm}, \"bead 10\"]\n";
    char words[256];
    (void)snprintf(words, sizeof words, text, "");
    check(self, true, words); /* 2 bar are assumed of a coolant source; `soft` bears 1.5 */
    const ow_finding *weak = only(&self->findings, "rating");
    assert_int_equal(weak->severity, OW_WARNING);
    assert_holds(weak->message, "2 bar is assumed of the source");
    done(self);
    (void)snprintf(words, sizeof words, text, "asked: {rating: 2 bar, fluid: coolant}\n");
    check(self, true, words);
    assert_int_equal(only(&self->findings, "rating")->severity, OW_ERROR);
    done(self);
}

/* ---- how far things reach ------------------------------------------------------------------------------ */

static void a_hose_reaches_however_the_turbo_is_turned_or_is_told_short(void **state)
{
    fixture *self = *state;
    /* The ports: (0.18, 0.06, -0.14) and (0, 0, 0.095): 0.18974 m outward, 0.235 m up, 0.30203 m apart by
     * Pythagoras. The fittings bridge 35 + 46 + 46 mm, so that 175.0 mm are left, 183.8 with 5 % of slack. */
    static const struct {
        const char *length;
        int severity; /* -1: it reaches */
    } cuts[] = {{"173 mm", OW_ERROR}, {"177 mm", OW_WARNING}, {"183 mm", OW_WARNING}, {"185 mm", -1}};
    for (size_t index = 0; index < sizeof cuts / sizeof cuts[0]; index++) {
        char text[256];
        (void)snprintf(text, sizeof text,
                       "circuit: feed\nfrom: brockle:gallery\nparts:\n  - ga: {enter: a}\n    side: [sw-2]\n"
                       "    b: [he, hose: {length: %s}, he, plover:oil-in]\n",
                       cuts[index].length);
        check(self, true, text);
        if (cuts[index].severity < 0) {
            assert_int_equal(self->findings.count, 0);
            only(&self->passed, "hose-short");
        } else {
            const ow_finding *told = only(&self->findings, "hose-short");
            assert_int_equal(told->severity, cuts[index].severity);
            assert_string_equal(told->mend,
                                "Cut it 184 to 189 mm long or more, and measure along the way it will lie.");
        }
        done(self);
    }
}

static void a_drain_may_hang_without_slack(void **state)
{
    fixture *self = *state;
    /* The return lies 0.1 m aside and 0.3 m below: 316.2 mm, of which stubs bridge 30 + 31. */
    check(
        self, true,
        "circuit: drain\nfrom: plover:oil-out\nparts: [st-f, h19: {length: 256 mm}, st-p, brockle:plate]\n");
    assert_int_equal(self->findings.count, 0);
    done(self);
    check(
        self, true,
        "circuit: drain\nfrom: plover:oil-out\nparts: [st-f, h19: {length: 250 mm}, st-p, brockle:plate]\n");
    assert_string_equal(only(&self->findings, "hose-short")->mend,
                        "Cut it 256 mm long or more, and measure along the way it will lie.");
    done(self);
}

static void a_heavy_sender_on_a_hose_or_on_short_steel_is_no_finding(void **state)
{
    fixture *self = *state;
    check(self, true,
          "circuit: feed\nfrom: brockle:boss\nparts:\n  - ga: {enter: a}\n    side: [sender-2]\n"
          "    b: [he, hose: {length: 650 mm}, he, plover:oil-in]\n");
    assert_int_equal(self->findings.count, 0);
    assert_holds(only(&self->passed, "overhung-sender")->message, "68 mm out"); /* 35/2 + 20 + 62/2 */
    done(self);
    check(self, true,
          "circuit: feed\nfrom: brockle:boss\nasked: {remote-switch: yes}\nparts:\n  - ga-br: {enter: a}\n   "
          " side: [ht, hose: {length: 300 mm}, he, "
          "un, fs, sender-2]\n    b: [he, hose: {length: 650 mm}, he, plover:oil-in]\n");
    assert_int_equal(count_of(&self->findings, "overhung-sender"), 0);
    assert_int_equal(count_of(&self->passed, "overhung-sender"), 0);
    done(self);
}

static void what_turns_on_a_swivel_is_neither_aimed_nor_swung(void **state)
{
    fixture *self = *state;
    check(self, true,
          "circuit: feed\nfrom: brockle:boss\nparts:\n  - tf\n  - ts: {enter: run-a}\n    run-b: [cap-4]\n"
          "    branch: [he, hose: {length: 650 mm}, he, plover:oil-in]\n");
    assert_int_equal(self->findings.count, 0);
    assert_int_equal(count_of(&self->passed, "swing-room"), 0);
    done(self);
    /* The same by a taper thread, and by a washer, whose tee may not be aimed either but by its washer. */
    check(self, true,
          "circuit: feed\nfrom: brockle:boss\nparts:\n  - tt: {enter: run-a}\n    run-b: [cap-4]\n"
          "    branch: [he, hose: {length: 650 mm}, he, plover:oil-in]\n");
    assert_string_equal(only(&self->findings, "taper-aimed")->where, "tt.branch");
    only(&self->passed, "swing-room");
    done(self);
    check(self, true,
          "circuit: feed\nfrom: brockle:rear\nparts:\n  - tm: {enter: run-a}\n    run-b: [cap-4]\n"
          "    branch: [he, hose: {length: 650 mm}, he, plover:oil-in]\n");
    assert_int_equal(self->findings.count, 0);
    done(self);
}

/* ---- one cause, one finding ---------------------------------------------------------------------------- */

static void a_cause_is_told_once(void **state)
{
    fixture *self = *state;
    /* A hose that the page does not list for oil is not told of its silicone besides. */
    check(
        self, true,
        "circuit: drain\nfrom: plover:oil-out\nparts: [st-f, w19: {length: 300 mm}, st-p, brockle:plate]\n");
    assert_string_equal(only(&self->findings, "fluid")->where, "w19");
    assert_int_equal(self->findings.count, 1);
    done(self);
    /* Tape on a flare is wrong there, not a shred in the feed; a used washer on a taper is wrong, not used.
     */
    check(self, true,
          "circuit: feed\nfrom: brockle:boss\nparts:\n  - tf: {seal: {a: used washer, b: tape}}\n  - he\n"
          "  - hose: {length: 650 mm}\n  - he\n  - plover:oil-in\n");
    assert_int_equal(count_of(&self->findings, "wrong-seal"), 2);
    assert_int_equal(self->findings.count, 2);
    done(self);
    /* A default bore warns once for the whole drain, the port with it. */
    check(self, true,
          "circuit: drain\nfrom: plover:oil-out\nparts: [st-n, h16: {length: 300 mm}, st-n16, "
          "brockle:narrow]\n");
    const ow_finding *bore = only(&self->findings, "bore");
    assert_int_equal(bore->severity, OW_WARNING);
    assert_holds(bore->message,
                 "narrower than the outlet's 15.5 mm: st-n16 13 mm, st-n 14 mm, the port itself 12 mm");
    done(self);
}

static void between_bare_ends_practice_keeps_silent(void **state)
{
    fixture *self = *state;
    check(self, true,
          "from: \"1/8-27 NPT female\"\nparts:\n  - tt: {enter: run-a}\n    run-b: [cap-4]\n"
          "    branch: [fb, h8: {length: 20 mm}, fb, \"-4 flare37 male\"]\n");
    assert_int_equal(self->findings.count, 0);
    done(self);
}

static ow_status check_wrong(const ow_context *context, void *data)
{
    const fixture *self = data;
    static const char text[] =
        "circuit: feed\nfrom: brockle:gallery\nparts:\n  - ga-br: {enter: a, seal: {a: tape}}\n"
        "    side: [sender-2]\n    b: [h45, hose: {length: 90 mm}, he, plover:oil-in]\n";
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_status status =
        ow_layouts_read(context, self->catalog, "case.yaml", text, strlen(text), &layouts, &count);
    if (status != OW_OK)
        return status;
    ow_findings findings = ow_findings_new(context), passed = ow_findings_new(context);
    status = ow_check_layout(context, self->catalog, &layouts[0], &findings, &passed);
    if (status == OW_OK)
        assert_true(findings.count >= 4);
    ow_findings_done(&findings);
    ow_findings_done(&passed);
    ow_layouts_free(context, layouts, count);
    return status;
}

static void every_allocation_of_a_check_that_finds_much_may_fail(void **state)
{
    ow_test_fail_each(check_wrong, *state);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_wrong_joint_is_told_with_its_verdict_and_figures),
        cmocka_unit_test(the_mend_of_a_wrong_joint_is_an_adapter_that_may_stand_there),
        cmocka_unit_test(every_joint_that_seals_is_passed_with_its_standard),
        cmocka_unit_test(a_rating_missed_only_on_an_assumed_pressure_warns),
        cmocka_unit_test(a_part_too_weak_for_an_assumed_pressure_warns_and_for_a_given_one_fails),
        cmocka_unit_test(a_hose_reaches_however_the_turbo_is_turned_or_is_told_short),
        cmocka_unit_test(a_drain_may_hang_without_slack),
        cmocka_unit_test(a_heavy_sender_on_a_hose_or_on_short_steel_is_no_finding),
        cmocka_unit_test(what_turns_on_a_swivel_is_neither_aimed_nor_swung),
        cmocka_unit_test(a_cause_is_told_once),
        cmocka_unit_test(between_bare_ends_practice_keeps_silent),
        cmocka_unit_test(every_allocation_of_a_check_that_finds_much_may_fail),
    };
    return cmocka_run_group_tests(tests, load, unload);
}
