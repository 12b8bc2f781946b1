/* SPDX-License-Identifier: MIT */
/*
 * What ow_catalog_check tells of pages that read well. Each case is one fault in a catalogue that is
 * otherwise whole; the same catalogue without it passes, so that the case proves the look.
 */
#include <stdio.h>
#include <string.h>

#include "catalog/ranges.h"
#include "oilway/catalog.h"
#include "support/diagnostics.h"
#include "support/testing.h"

/* A small whole catalogue: an engine and a turbo, a switch, and parts with which every end is closed. */
#define WHOLE                                                                                                \
    "{kind: engine, id: e, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, holds: sw}}}\n---\n"     \
    "{kind: turbo, id: t, ports: {oil-in: {end: -4 flare37 male, circuit: feed}}}\n---\n"                    \
    "{kind: switch, id: sw, a: 1/8-27 NPT male, length: 40 mm}\n---\n"                                       \
    "page: base\nkind: adapter\nrating: 200 bar\ntemperature: -40..150 C\nfluids: oil\ncolumns: [id, a, b, " \
    "bore]\n"                                                                                                \
    "rows:\n  - [tf, 1/8-27 NPT male, -4 flare37 male, 4.4 mm]\n"                                            \
    "  - [ff, -4 flare37 female swivel, -4 flare37 female swivel, 4.4 mm]\n---\n"
#define SAID "rating: 100 bar, temperature: -40..150 C, fluids: oil"
#define ONE(kind, rest) "{page: case, kind: " kind ", id: x, " SAID ", " rest "}\n"

typedef struct checked {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    size_t errors, warnings;
} checked;

static void check(checked *self, const char *rest)
{
    static const char *const names[] = {"whole.yaml", "case.yaml"};
    const char *const texts[] = {WHOLE, rest};
    *self = (checked){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL, 99, 99};
    self->context = ow_test_context(&self->sink);
    ow_status status = ow_catalog_load_texts(&self->context, names, texts, 2, NULL, &self->catalog);
    for (size_t i = 0; i < self->sink.count; i++)
        print_error("%s\n", self->sink.items[i].told);
    assert_int_equal(status, OW_OK);
    assert_int_equal(ow_catalog_check(&self->context, self->catalog, &self->errors, &self->warnings), OW_OK);
    assert_int_equal(self->errors, ow_test_count(&self->sink, OW_ERROR));
    assert_int_equal(self->warnings, ow_test_count(&self->sink, OW_WARNING));
}

static void done(checked *self)
{
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

static void assert_passes(const char *rest)
{
    checked self;
    check(&self, rest);
    for (size_t i = 0; i < self.sink.count; i++)
        print_error("%s\n", self.sink.items[i].told);
    assert_int_equal(self.sink.count, 0);
    done(&self);
}

static void assert_tells(ow_severity severity, const char *words, const char *rest)
{
    checked self;
    check(&self, rest);
    if (self.sink.count != 1)
        for (size_t i = 0; i < self.sink.count; i++)
            print_error("%s\n", self.sink.items[i].told);
    assert_int_equal(self.sink.count, 1);
    assert_int_equal(self.sink.items[0].severity, severity);
    if (!strstr(self.sink.items[0].message, words))
        print_error("%s\n", self.sink.items[0].told);
    assert_non_null(strstr(self.sink.items[0].message, words));
    done(&self);
}

static void a_whole_catalogue_passes(void **state)
{
    (void)state;
    assert_passes("");
}

/* Root of 1/8-27 NPT at the gauge plane: 9.489 - 1.6 * 0.9407 is 7.98 mm; with the standard's turn of
 * tolerance and flat root no more than 8.8 (ASME B1.20.1). M10x1: root 8.773 (ISO 724). */
static void a_bore_wider_than_the_thread_is_an_error(void **state)
{
    (void)state;
    assert_passes(ONE("adapter", "a: 1/8-27 NPT male, b: -4 flare37 female swivel, bore: 5 mm"));
    assert_tells(OW_ERROR, "wider than the core",
                 ONE("adapter", "a: 1/8-27 NPT male, b: -4 flare37 female swivel, bore: 9 mm"));
    assert_tells(OW_ERROR, "wider than the tube",
                 ONE("adapter", "a: 3/16 flare45-inverted male, b: 3/16 flare45-inverted female, bore: 4.9 "
                                "mm") "---\n{page: d, kind: adapter, id: y, " SAID
                                      ", a: 1/8-27 NPT male, b: 3/16 flare45-inverted female, bore: 3 mm}\n"
                                      "---\n{page: d, kind: plug, id: z, " SAID
                                      ", a: 3/16 flare45-inverted male}\n");
}

static void a_bore_wider_than_the_dash_is_told(void **state)
{
    (void)state;
    assert_tells(OW_ERROR, "wider than the size",
                 ONE("adapter", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 6.4 mm"));
    assert_tells(OW_WARNING, "unusually wide",
                 ONE("adapter", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 5.9 mm"));
}

static void a_bore_like_a_pin_is_told_unless_it_restricts(void **state)
{
    (void)state;
    assert_tells(OW_WARNING, "unusually narrow",
                 ONE("adapter", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 0.44 mm"));
    assert_passes(
        ONE("restrictor", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 1 mm, orifice: 1 mm"));
}

static void an_orifice_wider_than_its_bore_is_an_error(void **state)
{
    (void)state;
    assert_tells(
        OW_ERROR, "orifice of \"x\"",
        ONE("restrictor", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 4.4 mm, orifice: 4.5 mm"));
}

static void an_odd_length_is_told(void **state)
{
    (void)state;
    assert_passes(
        ONE("adapter", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 4 mm, length: 30 mm"));
    assert_tells(OW_WARNING, "3000 mm long",
                 ONE("adapter", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 4 mm, length: 3 m"));
}

static void a_hexagon_must_leave_metal(void **state)
{
    (void)state;
    assert_passes(ONE("adapter", "a: 1/8-27 NPT female, b: 1/8-27 NPT male, bore: 5 mm, hexagon: 14 mm"));
    assert_tells(OW_ERROR, "no metal left",
                 ONE("adapter", "a: 1/8-27 NPT female, b: 1/8-27 NPT male, bore: 5 mm, hexagon: 10 mm"));
}

#define HOSE(bore, bend)                                                                                 \
    "{page: c, kind: hose, id: x, " SAID                                                                 \
    ", a: hose 16 fluoro-silicone, b: hose 16 fluoro-silicone, bore: " bore ", bend-radius: " bend "}\n" \
    "---\n{page: d, kind: adapter, id: y, " SAID ", a: barb 16, b: 1/8-27 NPT male, bore: 5 mm}\n"

static void a_hose_in_millimetres_has_that_bore(void **state)
{
    (void)state;
    assert_passes(HOSE("16 mm", "80 mm"));
    assert_tells(OW_WARNING, "has a bore of 15 mm", HOSE("15 mm", "80 mm"));
    assert_tells(OW_WARNING, "kink", HOSE("16 mm", "20 mm"));
}

#define BANJO(thread, stud, eye, rest)                                                                    \
    "{page: c, kind: banjo-bolt, id: x, " SAID ", thread: " thread ", stud: " stud ", " rest "}\n"        \
    "---\n{page: d, kind: banjo-eye, id: y, " SAID ", eye: " eye ", tail: -4 flare37 male, bore: 4 mm}\n" \
    "---\n{page: d, kind: adapter, id: z, " SAID                                                          \
    ", a: 1/8-27 NPT male, b: M10x1 female washer, bore: 4 mm}\n"

/* DIN 7643 (from memory): M10x1 has 5.5 mm along and 2.8 mm across. */
static void a_banjo_bolt_far_from_the_usual_is_told(void **state)
{
    (void)state;
    assert_passes(BANJO("M10x1 male banjo", "banjo 10 stud", "banjo 10 eye",
                        "bore: 5.5 mm, hole-count: 2, hole-bore: 2.8 mm"));
    assert_tells(OW_WARNING, "are far from 2.8 mm",
                 BANJO("M10x1 male banjo", "banjo 10 stud", "banjo 10 eye",
                       "bore: 5.5 mm, hole-count: 2, hole-bore: 1.2 mm"));
    assert_tells(OW_WARNING, "is far from 5.5 mm",
                 BANJO("M10x1 male banjo", "banjo 10 stud", "banjo 10 eye",
                       "bore: 2.7 mm, hole-count: 2, hole-bore: 2.5 mm"));
    assert_tells(OW_WARNING, "wider than its bore",
                 BANJO("M10x1 male banjo", "banjo 10 stud", "banjo 10 eye",
                       "bore: 3 mm, hole-count: 2, hole-bore: 3.5 mm"));
    assert_tells(OW_WARNING, "for an eye of 12 mm",
                 BANJO("M10x1 male banjo", "banjo 12 stud", "banjo 12 eye",
                       "bore: 5 mm, hole-count: 2, hole-bore: 2.5 mm"));
}

static void an_end_that_a_kind_cannot_have_is_an_error(void **state)
{
    (void)state;
    assert_tells(OW_ERROR, "the thread of \"x\" cannot be",
                 BANJO("M10x1 male washer", "banjo 10 stud", "banjo 10 eye",
                       "bore: 5 mm, hole-count: 2, hole-bore: 2.5 mm"));
    checked self;
    check(&self, ONE("hose", "a: -4 flare37 female swivel, b: -4 flare37 female swivel, bore: 4.4 mm"));
    assert_int_equal(self.errors, 2);
    assert_non_null(ow_test_find(&self.sink, "the a of \"x\" cannot be"));
    done(&self);
}

static void a_switch_that_does_not_seal_in_its_port_is_an_error(void **state)
{
    (void)state;
    assert_tells(OW_ERROR, "cannot hold \"sw\"",
                 "{kind: engine, id: e2, ports: {g: {end: M12x1.5 female washer, holds: sw}}}\n---\n"
                 "{page: c, kind: adapter, id: x, " SAID
                 ", a: M12x1.5 male washer, b: -4 flare37 male, bore: 4 mm}\n");
}

#define BARB                                \
    "{page: b, kind: adapter, id: y, " SAID \
    ", a: -4 flare37 female swivel, b: barb 10, bore: 4.4 mm, length: 30 mm}\n---\n"
#define CLAIM(class, claims)                                             \
    BARB "page: c\nkind: hose\nbore: 10 mm\nbend-radius: 60 mm\n" claims \
         "columns: [id, a, b]\nrows:\n  - [x, hose 10 " class ", hose 10 " class "]\n"

/* SAE J20: silicone is class A and EPDM class D, coolant hoses; SAE J30 (from memory): 30R7 to 0.35 MPa. */
static void what_a_hose_claims_beyond_its_material_is_told(void **state)
{
    (void)state;
    assert_tells(
        OW_WARNING,
        "page \"c\": claims oil, which its material does not stand: EPDM rubber stands coolant, not oil",
        CLAIM("epdm", "rating: 3 bar\ntemperature: -40..100 C\nfluids: [oil, coolant]\n"));
    assert_tells(OW_WARNING, "claims coolant, which its material does not stand",
                 CLAIM("j30-r7", "rating: 3 bar\ntemperature: -40..100 C\nfluids: [oil, coolant]\n"));
    assert_tells(OW_WARNING,
                 "claims more pressure than its material is made for: fuel and oil hose 30R7 stands oil, "
                 "not coolant, -40 to 125 C, 3.5 bar",
                 CLAIM("j30-r7", "rating: 4 bar\ntemperature: -40..100 C\nfluids: oil\n"));
    assert_tells(OW_WARNING, "claims more heat than its material stands",
                 CLAIM("silicone", "rating: 3 bar\ntemperature: -40..180 C\nfluids: coolant\n"));
    assert_tells(OW_WARNING, "claims more cold than its material stands",
                 CLAIM("fkm", "rating: 3 bar\ntemperature: -40..180 C\nfluids: oil\n"));
}

static void values_that_limits_ask_about_are_missed(void **state)
{
    (void)state;
    assert_tells(OW_WARNING, "page \"c\": the rating is not said (2 parts: x, y)",
                 "page: c\nkind: adapter\ntemperature: -40..150 C\nfluids: oil\nbore: 4 mm\ncolumns: [id, a, "
                 "b, length]\nrows:\n"
                 "  - [x, 1/8-27 NPT male, -4 flare37 male, 30 mm]\n  - [y, 1/8-27 NPT male, -4 flare37 "
                 "male, 40 mm]\n");
    assert_tells(OW_WARNING, "the temperature is not said (1 part: x)",
                 "{page: c, kind: plug, id: x, rating: 9 bar, fluids: oil, a: 1/8-27 NPT male}\n");
    assert_tells(OW_WARNING, "the fluids are not said",
                 "{page: c, kind: plug, id: x, rating: 9 bar, temperature: 0..90 C, a: 1/8-27 NPT male}\n");
    assert_tells(
        OW_WARNING, "the bore of an end is not said",
        ONE("tee",
            "run-a: 1/8-27 NPT male, run-b: 1/8-27 NPT female, branch: 1/8-27 NPT female, run-bore: 4 mm"));
    assert_tells(OW_WARNING, "orifice is not said",
                 ONE("restrictor", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 1 mm"));
    assert_tells(OW_WARNING, "angle is not said",
                 ONE("elbow", "a: -4 flare37 female swivel, b: -4 flare37 male, bore: 4 mm"));
}

static void parts_alike_in_all_but_id_and_price_are_told(void **state)
{
    (void)state;
#define TWINS(second)                                                                                  \
    "page: c\nkind: plug\nrating: 9 bar\ntemperature: 0..90 C\nfluids: oil\ncolumns: [id, a, length, " \
    "price]\nrows:\n"                                                                                  \
    "  - [x, 1/8-27 NPT male, 12 mm, 1.00]\n  - [y, 1/8-27 NPT male, " second ", 2.00]\n"
    assert_tells(OW_WARNING, "\"y\" differs from \"x\" in id and price only", TWINS("12 mm"));
    assert_passes(TWINS("13 mm"));
}

static void an_end_that_nothing_mates_is_told(void **state)
{
    (void)state;
    assert_tells(OW_WARNING, "an end that nothing in the catalogue mates (1 part: x.b)",
                 ONE("adapter", "a: 1/8-27 NPT male, b: M13x1.25 male washer, bore: 4 mm"));
    assert_tells(OW_WARNING, "nothing in the catalogue mates port \"e2:g\"",
                 "{kind: engine, id: e2, ports: {g: {end: M13x1.25 female washer}}}\n");
}

/* -8 flare mates -8 swivel, but both parts lead only to each other: neither is ever closed. */
static void a_part_that_no_stack_could_use_is_told(void **state)
{
    (void)state;
#define PAIR                                                                                               \
    "{page: c, kind: adapter, id: x, " SAID ", a: 1/8-27 NPT male, b: -8 flare37 male, bore: 5 mm}\n---\n" \
    "{page: c, kind: adapter, id: y, " SAID                                                                \
    ", a: -8 flare37 female swivel, b: -8 flare37 male, bore: 9 mm}\n"
    assert_tells(OW_WARNING,
                 "page \"c\": no stack can use it: an end can be neither closed nor served (2 parts: x, y)",
                 PAIR);
    assert_passes(PAIR "---\n{page: d, kind: cap, id: z, " SAID ", a: -8 flare37 female swivel}\n");
}

/* Closed it can be, but nothing that is given leads to it. */
static void a_part_that_nothing_leads_to_is_told(void **state)
{
    (void)state;
    assert_tells(
        OW_WARNING, "no stack can use it",
        "{page: c, kind: cap, id: x, " SAID ", a: -8 flare37 female swivel}\n---\n"
        "{page: d, kind: plug, id: y, " SAID ", a: -8 o-ring male}\n---\n"
        "{page: c, kind: adapter, id: z, " SAID ", a: 1/8-27 NPT male, b: -8 flare37 male, bore: 5 mm}\n---\n"
        "{page: d, kind: adapter, id: w, " SAID ", a: -8 o-ring female, b: -8 o-ring female, bore: 5 mm}\n");
}

static void without_machines_any_end_may_be_asked_from(void **state)
{
    (void)state;
    static const char *const name = "c.yaml";
    static const char *const text =
        "{page: c, kind: adapter, id: x, " SAID ", a: 1/8-27 NPT male, b: -8 flare37 male, bore: 5 mm}\n"
        "---\n{page: c, kind: adapter, id: y, " SAID
        ", a: 1/8-27 NPT female, b: -8 flare37 female swivel, bore: 5 mm}\n";
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_catalog *catalog = NULL;
    size_t errors = 9, warnings = 9;
    assert_int_equal(ow_catalog_load_texts(&context, &name, &text, 1, NULL, &catalog), OW_OK);
    assert_int_equal(ow_catalog_check(&context, catalog, &errors, &warnings), OW_OK);
    assert_int_equal(errors + warnings, 0);
    assert_int_equal(sink.count, 0);
    ow_catalog_free(catalog);
}

/* The dash table: tube outside diameters are sixteenths of an inch (SAE J514, J517), each bore fits inside.
 */
static void the_dash_table_is_in_order(void **state)
{
    (void)state;
    size_t rows = 0;
    double before = 0;
    for (int32_t dash = 1; dash < 64; dash++) {
        const ow_dash_range *range = ow_dash_range_find(dash);
        if (!range)
            continue;
        rows++;
        assert_true(range->tube_mm > 25.4 * dash / 16 - 0.001 && range->tube_mm < 25.4 * dash / 16 + 0.001);
        assert_true(range->fitting_mm > before && range->fitting_mm < range->tube_mm);
        assert_true(range->hose_least_mm >= range->fitting_mm && range->hose_least_mm < range->hose_most_mm);
        before = range->fitting_mm;
    }
    assert_int_equal(rows, 13);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_whole_catalogue_passes),
        cmocka_unit_test(a_bore_wider_than_the_thread_is_an_error),
        cmocka_unit_test(a_bore_wider_than_the_dash_is_told),
        cmocka_unit_test(a_bore_like_a_pin_is_told_unless_it_restricts),
        cmocka_unit_test(an_orifice_wider_than_its_bore_is_an_error),
        cmocka_unit_test(an_odd_length_is_told),
        cmocka_unit_test(a_hexagon_must_leave_metal),
        cmocka_unit_test(a_hose_in_millimetres_has_that_bore),
        cmocka_unit_test(a_banjo_bolt_far_from_the_usual_is_told),
        cmocka_unit_test(an_end_that_a_kind_cannot_have_is_an_error),
        cmocka_unit_test(a_switch_that_does_not_seal_in_its_port_is_an_error),
        cmocka_unit_test(what_a_hose_claims_beyond_its_material_is_told),
        cmocka_unit_test(values_that_limits_ask_about_are_missed),
        cmocka_unit_test(parts_alike_in_all_but_id_and_price_are_told),
        cmocka_unit_test(an_end_that_nothing_mates_is_told),
        cmocka_unit_test(a_part_that_no_stack_could_use_is_told),
        cmocka_unit_test(a_part_that_nothing_leads_to_is_told),
        cmocka_unit_test(without_machines_any_end_may_be_asked_from),
        cmocka_unit_test(the_dash_table_is_in_order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
