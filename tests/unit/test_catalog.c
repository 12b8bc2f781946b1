/* SPDX-License-Identifier: MIT */
/* The catalogue from texts: what a page says arrives in the part, in SI. */
#include <math.h>
#include <string.h>

#include "oilway/catalog.h"
#include "support/diagnostics.h"
#include "support/testing.h"

typedef struct loaded {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_status status;
} loaded;

static void load_with(loaded *self, const char *text, const ow_catalog_options *options)
{
    const char *const names[] = {"page.yaml"};
    *self = (loaded){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL, OW_OK};
    self->context = ow_test_context(&self->sink);
    self->status = ow_catalog_load_texts(&self->context, names, &text, 1, options, &self->catalog);
}

static void load(loaded *self, const char *text)
{
    load_with(self, text, NULL);
    for (size_t i = 0; i < self->sink.count; i++)
        print_error("%s\n", self->sink.items[i].told);
    assert_int_equal(self->status, OW_OK);
    assert_int_equal(self->sink.count, 0);
}

static void done(loaded *self)
{
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

static void assert_near(double value, double wanted)
{
    assert_true(fabs(value - wanted) <= 1e-12 + 1e-9 * fabs(wanted));
}

static void assert_end(const ow_part *part, size_t index, const char *name, const char *words)
{
    char text[OW_END_TEXT_SIZE];
    assert_true(index < part->end_count);
    assert_string_equal(part->end_names[index], name);
    assert_string_equal(ow_end_name(&part->ends[index], text), words);
    assert_int_equal(ow_part_end_index(part, name), index);
}

/* The page that the format's description opens with. */
static const char example[] = "page: taper-male-to-flare-male\n"
                              "kind: adapter\n"
                              "title: Taper pipe male to 37° flare male, straight\n"
                              "material: steel\n"
                              "rating: 200 bar\n"
                              "temperature: -40..150 C\n"
                              "fluids: [oil, coolant]\n"
                              "standards: [ASME B1.20.1, SAE J514]\n"
                              "columns: [id, a, b, bore, length, price]\n"
                              "rows:\n"
                              "  - [tf-2-4, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, 28 mm, 3.10]\n"
                              "  - [tf-0, 1/8-27 NPT male, -3 flare37 male, ~, 1.1 in, ~]\n";

static void a_table_gives_a_part_for_each_row_with_what_stands_above(void **state)
{
    (void)state;
    loaded self;
    load(&self, example);
    assert_int_equal(ow_catalog_part_count(self.catalog), 2);
    assert_int_equal(ow_catalog_page_count(self.catalog), 1);
    const ow_part *part = ow_catalog_part(self.catalog, "tf-2-4");
    assert_non_null(part);
    assert_int_equal(part->kind, OW_ADAPTER);
    assert_string_equal(part->page, "taper-male-to-flare-male");
    assert_string_equal(part->title, "Taper pipe male to 37° flare male, straight");
    assert_string_equal(part->material, "steel");
    assert_string_equal(part->standards, "ASME B1.20.1, SAE J514");
    assert_near(part->rating_pa, 200e5);
    assert_true(part->has_temperature);
    assert_near(part->temperature_low_c, -40);
    assert_near(part->temperature_high_c, 150);
    assert_int_equal(part->fluids, OW_FLUID_OIL | OW_FLUID_COOLANT);
    assert_int_equal(part->end_count, 2);
    assert_end(part, 0, "a", "1/8-27 NPT male");
    assert_end(part, 1, "b", "-4 flare37 male");
    assert_near(ow_part_bore_m(part, 0, 1), 4.4e-3);
    assert_near(part->length_m, 28e-3);
    assert_true(part->has_price);
    assert_int_equal(part->price_cents, 310);
    assert_string_equal(part->place.file, "page.yaml");
    assert_int_equal(part->place.line, 11);
    assert_int_equal(part->place.column, 6);
    done(&self);
}

static void what_a_row_does_not_say_is_not_said(void **state)
{
    (void)state;
    loaded self;
    load(&self, example);
    const ow_part *part = ow_catalog_part(self.catalog, "tf-0");
    assert_non_null(part);
    assert_false(part->has_price);
    assert_near(ow_part_bore_m(part, 0, 1), OW_NOT_SAID);
    assert_near(part->length_m, 27.94e-3); /* 1.1 in at 25.4 mm exactly (ISO 31-1) */
    assert_near(part->mass_kg, OW_NOT_SAID);
    assert_near(part->orifice_m, OW_NOT_SAID);
    assert_string_equal(part->note, "");
    assert_false(part->has_stock);
    assert_null(ow_catalog_part(self.catalog, "tf-3"));
    done(&self);
}

static void parts_come_in_order_of_their_ids(void **state)
{
    (void)state;
    loaded self;
    load(&self, "kind: plug\ncolumns: [id, a]\nrows: [[z, -4 o-ring male], [B, -4 o-ring male], [a-2, -4 "
                "o-ring male], "
                "[a, -4 o-ring male], [a-10, -4 o-ring male]]\n");
    static const char *const order[] = {"B", "a", "a-10", "a-2", "z"};
    assert_int_equal(ow_catalog_part_count(self.catalog), 5);
    for (size_t i = 0; i < 5; i++)
        assert_string_equal(ow_catalog_part_at(self.catalog, i)->id, order[i]);
    assert_null(ow_catalog_part_at(self.catalog, 5));
    assert_string_equal(ow_catalog_part_at(self.catalog, 0)->page, "page"); /* from the file's name */
    done(&self);
}

static void a_record_says_more_than_its_page_and_wins_over_it(void **state)
{
    (void)state;
    loaded self;
    load(&self, "page: tees\nkind: tee\nmaterial: steel\nrun-bore: 5 mm\nrecords:\n"
                "  - {id: t1, run-a: -4 flare37 male, run-b: -4 flare37 male, branch: -3 flare37 male, "
                "branch-bore: 3 mm}\n"
                "  - id: t2\n    material: brass\n    run-a: -4 flare37 male\n    run-b: -4 flare37 male\n"
                "    branch: -4 flare37 male\n    bore: 4 mm\n    run-bore: ~\n");
    const ow_part *first = ow_catalog_part(self.catalog, "t1"), *second = ow_catalog_part(self.catalog, "t2");
    assert_string_equal(first->material, "steel");
    assert_near(ow_part_bore_m(first, 0, 1), 5e-3);
    assert_near(ow_part_bore_m(first, 0, 2), 3e-3);
    assert_string_equal(second->material, "brass");
    assert_near(ow_part_bore_m(second, 0, 1), 5e-3); /* the page's run-bore stands: ~ says nothing */
    assert_near(ow_part_bore_m(second, 0, 2), 4e-3);
    done(&self);
}

/* sqrt(count) holes of the same bore have the area of one: plain geometry. */
static void a_banjo_bolts_stud_is_as_wide_as_its_holes_together(void **state)
{
    (void)state;
    loaded self;
    load(&self, "kind: banjo-bolt\ncolumns: [id, thread, stud, bore, hole-count, hole-bore]\n"
                "rows: [[b4, M10x1 male banjo, banjo 10 stud, 5 mm, 4, 1.5 mm], [b0, M10x1 male banjo, banjo "
                "10 stud, 5 mm, ~, ~]]\n"
                "---\n{kind: banjo-bolt, id: d2, thread: M10x1 male banjo, stud-a: banjo 10 stud, stud-b: "
                "banjo 10 stud, "
                "bore: 5 mm, hole-count: 2, hole-bore: 2.5 mm}\n");
    const ow_part *four = ow_catalog_part(self.catalog, "b4"), *none = ow_catalog_part(self.catalog, "b0");
    const ow_part *twice = ow_catalog_part(self.catalog, "d2");
    assert_near(four->leg_bore_m[0], 5e-3);
    assert_near(four->leg_bore_m[1], 3e-3);
    assert_int_equal(four->hole_count, 4);
    assert_near(none->leg_bore_m[1], 5e-3);
    assert_int_equal(twice->end_count, 3);
    assert_end(twice, 1, "stud-a", "banjo 10 stud");
    assert_end(twice, 2, "stud-b", "banjo 10 stud");
    assert_near(ow_part_bore_m(twice, 0, 2), 2.5e-3 * sqrt(2.0));
    assert_near(ow_part_bore_m(twice, 1, 2), 2.5e-3 * sqrt(2.0));
    done(&self);
}

static void a_gauge_adapters_side_has_a_bore_of_its_own(void **state)
{
    (void)state;
    loaded self;
    load(&self, "{kind: gauge-adapter, id: g, a: -4 flare37 male, b: -4 flare37 female swivel, side: 1/8-27 "
                "NPT female, "
                "bore: 4.4 mm, side-bore: 3 mm}\n");
    const ow_part *part = ow_catalog_part(self.catalog, "g");
    assert_near(ow_part_bore_m(part, 0, 1), 4.4e-3);
    assert_near(ow_part_bore_m(part, 1, 2), 3e-3);
    assert_near(ow_part_bore_m(part, 0, 3), OW_NOT_SAID); /* there is no such end */
    done(&self);
}

static void a_line_is_a_hose_unless_it_is_tube(void **state)
{
    (void)state;
    loaded self;
    load(&self,
         "kind: line\ncolumns: [id, a, b, bore, length, tube]\nrows:\n"
         "  - [l1, -4 flare37 female swivel, -4 flare37 female swivel, 4 mm, 0.65 m, no]\n"
         "  - [l2, -4 flare37 female swivel, -4 flare37 female swivel, 4 mm, 0.65 m, yes]\n"
         "---\nkind: hose\ncolumns: [id, a, b, bore]\nrows: [[h, hose -4 ptfe, hose -4 ptfe, 4.8 mm]]\n");
    assert_true(ow_part_is_hose(ow_catalog_part(self.catalog, "l1")));
    assert_false(ow_part_is_hose(ow_catalog_part(self.catalog, "l2")));
    assert_true(ow_part_is_hose(ow_catalog_part(self.catalog, "h")));
    done(&self);
}

static const char machines[] = "kind: engine\nid: brockle-4\ntitle: Brockle\nports:\n"
                               "  gallery:\n    end: 1/8-27 NPT female\n    circuit: feed\n    bore: 6 mm\n  "
                               "  pressure: 5 bar\n    holds: sw-2\n"
                               "    position: [120 mm, 40 mm, 310 mm]\n    direction: [0, 0, 2]\n"
                               "  sump: {end: -10 o-ring female, circuit: drain}\n"
                               "---\n{kind: switch, id: sw-2, a: 1/8-27 NPT male, mass: 60 g}\n"
                               "---\nkind: turbo\nid: plover-41\nbearing: ball\nrestrictor: built-in\nsize: "
                               "large\ncoolant-apart: 70 mm\n"
                               "ports: {oil-in: {end: M12x1.5 female washer}}\n";

static void a_machine_has_named_ports(void **state)
{
    (void)state;
    loaded self;
    load(&self, machines);
    assert_int_equal(ow_catalog_machine_count(self.catalog), 2);
    assert_string_equal(ow_catalog_machine_at(self.catalog, 0)->id, "brockle-4");
    const ow_machine *engine = ow_catalog_machine(self.catalog, "brockle-4");
    assert_int_equal(engine->kind, OW_ENGINE);
    assert_int_equal(engine->port_count, 2);
    const ow_port *gallery = ow_machine_port(engine, "gallery");
    assert_non_null(gallery);
    assert_int_equal(gallery->circuit, OW_FEED);
    assert_near(gallery->bore_m, 6e-3);
    assert_near(gallery->pressure_pa, 5e5);
    assert_string_equal(gallery->holds, "sw-2");
    assert_true(gallery->has_position && gallery->has_direction);
    assert_near(gallery->position_m[2], 0.31);
    assert_near(gallery->direction[2], 1); /* made a unit vector */
    assert_int_equal(gallery->place.line, 5);
    const ow_port *sump = ow_machine_port(engine, "sump");
    assert_false(sump->has_position || sump->has_direction);
    assert_near(sump->pressure_pa, OW_NOT_SAID);
    assert_string_equal(sump->holds, "");
    assert_null(ow_machine_port(engine, "oil-in"));
    done(&self);
}

static void a_turbo_says_its_bearing_restrictor_and_size(void **state)
{
    (void)state;
    loaded self;
    load(&self, machines);
    const ow_machine *turbo = ow_catalog_machine(self.catalog, "plover-41");
    assert_int_equal(turbo->bearing, OW_BEARING_BALL);
    assert_int_equal(turbo->restrictor, OW_BUILT_IN_YES);
    assert_int_equal(turbo->size, OW_LARGE);
    assert_near(turbo->coolant_apart_m, 0.07);
    assert_string_equal(turbo->title, "plover-41");
    const ow_machine *engine = ow_catalog_machine(self.catalog, "brockle-4");
    assert_int_equal(engine->bearing, OW_BEARING_UNKNOWN);
    assert_int_equal(engine->restrictor, OW_BUILT_IN_UNKNOWN);
    assert_int_equal(engine->size, OW_SIZE_NOT_SAID);
    done(&self);
}

static void a_switch_is_no_part_of_the_net_but_is_found_by_id(void **state)
{
    (void)state;
    loaded self;
    load(&self, machines);
    assert_int_equal(ow_catalog_part_count(self.catalog), 0);
    assert_int_equal(ow_catalog_fixture_count(self.catalog), 1);
    assert_string_equal(ow_catalog_fixture_at(self.catalog, 0)->id, "sw-2");
    assert_ptr_equal(ow_catalog_part(self.catalog, "sw-2"), ow_catalog_fixture_at(self.catalog, 0));
    assert_null(ow_catalog_part(self.catalog, "brockle-4"));
    assert_null(ow_catalog_machine(self.catalog, "sw-2"));
    done(&self);
}

static void stock_is_laid_over_parts_wherever_it_stands(void **state)
{
    (void)state;
    loaded self;
    load(&self,
         "kind: stock\ncolumns: [id, quantity, price]\nrows: [[p, 6, 2.95], [q, 0, ~], [h, 12.5, 18]]\n"
         "---\nkind: plug\nprice: 1.2\ncolumns: [id, a]\nrows: [[p, -4 o-ring male], [q, -4 o-ring male], "
         "[r, -4 o-ring male]]\n"
         "---\n{kind: hose, id: h, a: hose -4 ptfe, b: hose -4 ptfe}\n");
    const ow_part *part = ow_catalog_part(self.catalog, "p");
    assert_true(part->has_stock && part->has_price);
    assert_near(part->stock_quantity, 6);
    assert_int_equal(part->price_cents, 295);
    part = ow_catalog_part(self.catalog, "q");
    assert_true(part->has_stock);
    assert_near(part->stock_quantity, 0);
    assert_int_equal(part->price_cents, 120);
    assert_false(ow_catalog_part(self.catalog, "r")->has_stock);
    assert_near(ow_catalog_part(self.catalog, "h")->stock_quantity, 12.5);
    assert_int_equal(ow_catalog_part(self.catalog, "h")->price_cents, 1800);
    done(&self);
}

static void prices_are_read_to_the_cent(void **state)
{
    (void)state;
    loaded self;
    load(&self,
         "kind: plug\ncolumns: [id, a, price]\nrows: [[a, -4 o-ring male, 0.29], [b, -4 o-ring male, 7], "
         "[c, -4 o-ring male, 1.5], [d, -4 o-ring male, 1000000], [e, -4 o-ring male, 0], [f, -4 o-ring "
         "male, '19.99']]\n");
    static const struct {
        const char *id;
        int64_t cents;
    } wanted[] = {{"a", 29}, {"b", 700}, {"c", 150}, {"d", 100000000}, {"e", 0}, {"f", 1999}};
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
        assert_int_equal(ow_catalog_part(self.catalog, wanted[i].id)->price_cents, wanted[i].cents);
    done(&self);
}

static void an_empty_text_is_an_empty_catalogue(void **state)
{
    (void)state;
    loaded self;
    load(&self, "# nothing yet\n");
    assert_int_equal(ow_catalog_part_count(self.catalog), 0);
    assert_int_equal(ow_catalog_page_count(self.catalog), 0);
    assert_null(ow_catalog_nearest_id(self.catalog, "x"));
    done(&self);
}

static void the_nearest_id_is_near_or_none(void **state)
{
    (void)state;
    loaded self;
    load(&self, machines);
    assert_string_equal(ow_catalog_nearest_id(self.catalog, "brokle-4"), "brockle-4");
    assert_string_equal(ow_catalog_nearest_id(self.catalog, "SW-2"), "sw-2");
    assert_null(ow_catalog_nearest_id(self.catalog, "curlew-8b"));
    done(&self);
}

static void an_alias_may_stand_for_a_value(void **state)
{
    (void)state;
    loaded self;
    load(&self,
         "kind: adapter\nfluids: &both [oil, coolant]\nmaterial: &steel steel\ncolumns: [id, a, b, note]\n"
         "rows: [[x, &end -4 flare37 male, *end, *steel]]\n");
    const ow_part *part = ow_catalog_part(self.catalog, "x");
    assert_true(ow_end_same(&part->ends[0], &part->ends[1]));
    assert_string_equal(part->note, "steel");
    done(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_table_gives_a_part_for_each_row_with_what_stands_above),
        cmocka_unit_test(what_a_row_does_not_say_is_not_said),
        cmocka_unit_test(parts_come_in_order_of_their_ids),
        cmocka_unit_test(a_record_says_more_than_its_page_and_wins_over_it),
        cmocka_unit_test(a_banjo_bolts_stud_is_as_wide_as_its_holes_together),
        cmocka_unit_test(a_gauge_adapters_side_has_a_bore_of_its_own),
        cmocka_unit_test(a_line_is_a_hose_unless_it_is_tube),
        cmocka_unit_test(a_machine_has_named_ports),
        cmocka_unit_test(a_turbo_says_its_bearing_restrictor_and_size),
        cmocka_unit_test(a_switch_is_no_part_of_the_net_but_is_found_by_id),
        cmocka_unit_test(stock_is_laid_over_parts_wherever_it_stands),
        cmocka_unit_test(prices_are_read_to_the_cent),
        cmocka_unit_test(an_empty_text_is_an_empty_catalogue),
        cmocka_unit_test(the_nearest_id_is_near_or_none),
        cmocka_unit_test(an_alias_may_stand_for_a_value),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
