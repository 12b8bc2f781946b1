/* SPDX-License-Identifier: MIT */
/* bill.h: what a layout by hand comes to, figures worked out beside each check. */
#include <string.h>

#include "oilway/bill.h"
#include "oilway/report.h"
#include "support/near.h"
#include "support/testing.h"

static const char shop[] =
    "{kind: engine, id: e, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed}}}\n"
    "---\n{kind: turbo, id: t, ports: {in: {end: M10x1 female washer, circuit: feed}, too: {end: M10x1 "
    "female washer, "
    "circuit: feed}}}\n"
    "---\n{page: a, kind: tee, columns: [id, run-a, run-b, branch, price], rows: [[tee, 1/8-27 NPT male, -4 "
    "flare37 "
    "male, -4 flare37 male, 6]]}\n"
    "---\n{page: c, kind: hose-end, columns: [id, nut, tail, price], rows: [[he, -4 flare37 female swivel, "
    "hose -4 ptfe "
    "tail, 8.25]]}\n"
    "---\n{page: d, kind: hose, columns: [id, a, b, price], rows: [[hose, hose -4 ptfe, hose -4 ptfe, "
    "12.50]]}\n"
    "---\n{page: e, kind: banjo-eye, columns: [id, eye, tail, price], rows: [[eye, banjo 10 eye, hose -4 "
    "ptfe tail, "
    "~]]}\n"
    "---\n{page: f, kind: banjo-bolt, columns: [id, thread, stud, price], rows: [[bolt, M10x1 male banjo, "
    "banjo 10 "
    "stud, 2.05]]}\n"
    "---\n{kind: stock, columns: [id, quantity], rows: [[hose, 0.5], [he, 1], [tee, 7]]}\n";

static const char layout[] =
    "layout: two inlets\ncircuit: feed\nfrom: e:gallery\nparts:\n  - tee: {enter: run-a}\n"
    "    run-b: [he, hose: {length: 333 mm}, eye, bolt, t:in]\n"
    "    branch: [he, hose: {length: 333 mm}, eye, bolt, t:too]\n";

typedef struct billed {
    ow_context context;
    ow_catalog *catalog;
    ow_layout *layouts;
    size_t count;
    ow_bill bill;
} billed;

static int open_bill(void **state)
{
    static const char *const name = "shop.yaml";
    static billed self;
    const char *pages = shop;
    self = (billed){.context = OW_CONTEXT_INIT};
    assert_int_equal(ow_catalog_load_texts(&self.context, &name, &pages, 1, NULL, &self.catalog), OW_OK);
    assert_int_equal(ow_layouts_read(&self.context, self.catalog, "l.yaml", layout, strlen(layout),
                                     &self.layouts, &self.count),
                     OW_OK);
    assert_int_equal(ow_bill_new(&self.context, self.layouts, self.count, &self.bill), OW_OK);
    *state = &self;
    return 0;
}

static int close_bill(void **state)
{
    billed *self = *state;
    ow_bill_done(&self->bill);
    ow_layouts_free(&self->context, self->layouts, self->count);
    ow_catalog_free(self->catalog);
    return 0;
}

static const ow_bill_line *line_of(const ow_bill *bill, const char *id)
{
    for (size_t i = 0; i < bill->line_count; i++)
        if (strcmp(bill->lines[i].part->id, id) == 0)
            return &bill->lines[i];
    fail_msg("no line for %s", id);
    return NULL;
}

static void parts_are_counted_in_order_of_first_use(void **state)
{
    const ow_bill *bill = &((billed *)*state)->bill;
    static const char *const order[] = {"tee", "he", "hose", "eye", "bolt"};
    assert_int_equal(bill->line_count, 5);
    for (size_t i = 0; i < 5; i++) {
        assert_string_equal(bill->lines[i].part->id, order[i]);
        assert_int_equal(bill->lines[i].count, i == 0 ? 1 : 2);
    }
    assert_int_equal(bill->part_count, 9);
}

/* A cut of 0.333 m at 12.50 a metre is 4.1625, so 4.16; two are 8.32, and not 8.33 as 0.666 m in one piece.
 */
static void a_bill_comes_to_what_its_layout_costs(void **state)
{
    const billed *self = *state;
    bool complete;
    assert_int_equal(line_of(&self->bill, "hose")->total_cents, 832);
    assert_int_equal(self->bill.total_cents, 600 + 2 * 825 + 832 + 2 * 205);
    assert_int_equal(self->bill.total_cents, ow_layout_price_cents(self->layouts, &complete));
    assert_false(complete);
    assert_int_equal(self->bill.unpriced_count, 1);
    assert_false(line_of(&self->bill, "eye")->has_price);
}

static void what_is_not_in_the_drawer_is_told(void **state)
{
    const ow_bill *bill = &((billed *)*state)->bill;
    assert_near(line_of(bill, "hose")->length_m, 0.666, 1e-9);
    assert_near(line_of(bill, "hose")->short_by, 0.166, 1e-9);
    assert_near(line_of(bill, "he")->short_by, 1.0, 0);
    assert_near(line_of(bill, "tee")->short_by, 0.0, 0);
    assert_false(line_of(bill, "bolt")->has_stock);
}

/* One eye on a bolt takes two rings (DIN 7643), of M10: 10 x 13.5 x 1 (DIN 7603, from memory); two bolts
 * four. */
static void rings_are_counted_with_their_eyes(void **state)
{
    const ow_bill *bill = &((billed *)*state)->bill;
    size_t rings = 0, sealants = 0;
    for (size_t i = 0; i < bill->consumable_count; i++) {
        const ow_bill_consumable *item = &bill->consumables[i];
        if (strcmp(item->what, "crush ring") == 0) {
            assert_string_equal(item->size, "10 x 13.5 x 1 mm");
            rings += item->count;
        }
        sealants += strcmp(item->what, "thread sealant") == 0;
    }
    assert_int_equal(rings, 4);
    assert_int_equal(sealants, 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(parts_are_counted_in_order_of_first_use, open_bill, close_bill),
        cmocka_unit_test_setup_teardown(a_bill_comes_to_what_its_layout_costs, open_bill, close_bill),
        cmocka_unit_test_setup_teardown(what_is_not_in_the_drawer_is_told, open_bill, close_bill),
        cmocka_unit_test_setup_teardown(rings_are_counted_with_their_eyes, open_bill, close_bill),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
