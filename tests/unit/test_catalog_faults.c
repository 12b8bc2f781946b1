/* SPDX-License-Identifier: MIT */
/* Pages that are wrong: each fault is told at its place, none hides another, and nothing is loaded. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/catalog.h"
#include "support/diagnostics.h"
#include "support/testing.h"

#define PLUGS "kind: plug\ncolumns: [id, a, price]\nrows:\n"

/* One text, and what is marked in it with which message and help. */
typedef struct wanted_fault {
    const char *text;
    size_t line, column;
    const char *marked; /* the words under the mark */
    const char *message;
    const char *mend; /* NULL: none, or not looked at */
} wanted_fault;

static void check_fault(const wanted_fault *fault)
{
    const char *const names[] = {"p.yaml"};
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_catalog *catalog = NULL;
    ow_status status = ow_catalog_load_texts(&context, names, &fault->text, 1, NULL, &catalog);
    if (status != OW_INPUT || sink.count != 1)
        print_error("in:\n%s", fault->text);
    for (size_t i = 0; sink.count != 1 && i < sink.count; i++)
        print_error("%s\n", sink.items[i].told);
    assert_int_equal(status, OW_INPUT);
    assert_null(catalog);
    assert_int_equal(sink.count, 1);
    const ow_test_diagnostic *told = &sink.items[0];
    assert_int_equal(told->severity, OW_ERROR);
    assert_string_equal(told->file, "p.yaml");
    if (!strstr(told->message, fault->message) || told->line != fault->line || told->column != fault->column)
        print_error("%s\n", told->told);
    assert_non_null(strstr(told->message, fault->message));
    assert_int_equal(told->line, fault->line);
    assert_int_equal(told->column, fault->column);
    assert_non_null(told->marked);
    assert_string_equal(told->marked, fault->marked);
    if (fault->mend) {
        assert_non_null(told->mend);
        assert_non_null(strstr(told->mend, fault->mend));
    }
    ow_test_diagnostics_clear(&sink);
}

static void check_faults(const wanted_fault *faults, size_t count)
{
    for (size_t i = 0; i < count; i++)
        check_fault(&faults[i]);
}
#define CHECK(faults) check_faults(faults, sizeof faults / sizeof *(faults))

static void a_wrong_head_is_told(void **state)
{
    (void)state;
    static const wanted_fault faults[] = {
        {"kind: adaptor\n", 1, 7, "adaptor", "no kind of part", "adapter"},
        {"kind: [plug]\n", 1, 7, "[plug]", "does not say its kind", NULL},
        {"page: x\n", 1, 1, "p", "does not say its kind", NULL},
        {"- plug\n", 1, 1, "- plug", "is a map", NULL},
        {"just words\n", 1, 1, "just words", "is a map", NULL},
        {"kind: plug\npage: [x]\ncolumns: [id, a]\nrows: []\n", 2, 7, "[x]", "is not a name", NULL},
        {"kind: plug\nmateriel: steel\ncolumns: [id, a]\nrows: []\n", 2, 1, "materiel", "no key of kind plug",
         "material"},
        {"kind: plug\norifice: 1 mm\ncolumns: [id, a]\nrows: []\n", 2, 1, "orifice", "no key of kind plug",
         NULL},
        {"kind: plug\nrating: 200\ncolumns: [id, a]\nrows: []\n", 2, 9, "200", "has no unit", NULL},
        {"kind: plug\ncolumns: [id, a]\n", 1, 1, "k", "no list of rows", NULL},
        {"kind: plug\nrows: []\n", 1, 1, "kind: plug", "no list of columns", NULL},
        {"kind: plug\ncolumns: []\nrows: []\n", 2, 10, "[]", "no list of columns", NULL},
        {"kind: plug\ncolumns: [id, a, a]\nrows: []\n", 2, 18, "a", "stands there twice", NULL},
        {"kind: plug\ncolumns: [id, a, pryce]\nrows: []\n", 2, 18, "pryce", "no key of kind plug", "price"},
        {"kind: plug\ncolumns: [id, price]\nrows: []\n", 2, 10, "[id, price]", "\"a\" is not said", NULL},
        {"kind: plug\ncolumns: [a]\nrows: []\n", 2, 10, "[a]", "\"id\" is not said", NULL},
        {"kind: plug\nid: p\ncolumns: [a, id]\nrows: []\n", 2, 5, "p", "stands above a table", NULL},
        {"kind: plug\nrecords: []\ncolumns: [id, a]\nrows: []\n", 2, 10, "[]", "beside a table", NULL},
    };
    CHECK(faults);
}

static void a_wrong_row_is_told(void **state)
{
    (void)state;
    static const wanted_fault faults[] = {
        {PLUGS "  - [p, -4 o-ring male]\n", 4, 5, "[p, -4 o-ring male]", "2 cells for 3 columns", "~"},
        {PLUGS "  - [p, -4 o-ring male, 1, 2]\n", 4, 5, "[p, -4 o-ring male, 1, 2]", "4 cells for 3 columns",
         NULL},
        {PLUGS "  - p\n", 4, 5, "p", "not a list", NULL},
        {PLUGS "  - {id: p}\n", 4, 5, "{id: p}", "not a list", NULL},
        {PLUGS "  - [~, -4 o-ring male, 1]\n", 4, 5, "[~, -4 o-ring male, 1]", "\"id\" is not said", NULL},
        {PLUGS "  - [p, ~, 1]\n", 4, 5, "[p, ~, 1]", "\"a\" is not said", NULL},
        {PLUGS "  - [p, [x], 1]\n", 4, 9, "[x]", "\"a\" holds a list", NULL},
        {PLUGS "  - [p q, -4 o-ring male, 1]\n", 4, 6, "p q", "\"id\" cannot be", NULL},
        {PLUGS "  - ['a:b', -4 o-ring male, 1]\n", 4, 6, "'a:b'", "\"id\" cannot be", NULL},
        {PLUGS "  - [-p, -4 o-ring male, 1]\n", 4, 6, "-p", "\"id\" cannot be", NULL},
        {PLUGS "  - ['', -4 o-ring male, 1]\n", 4, 6, "''", "\"id\" cannot be", NULL},
        {PLUGS "  - [p, -4 o-ring male, 1]\n  - [p, -6 o-ring male, 1]\n", 5, 6, "p", "first at p.yaml:4:6",
         NULL},
    };
    CHECK(faults);
}

/* The mark stands under the faulty word inside the cell, whatever quotes it wears. */
static void a_wrong_end_is_marked_inside_its_cell(void **state)
{
    (void)state;
    static const wanted_fault faults[] = {
        {PLUGS "  - [p, -4 o-ring mael, 1]\n", 4, 19, "mael", "no word of an end", "male"},
        {PLUGS "  - [p, \"-4 o-ring mael\", 1]\n", 4, 20, "mael", "no word of an end", "male"},
        {PLUGS "  - [p, '-4 o-ring mael', 1]\n", 4, 20, "mael", "no word of an end", "male"},
        {PLUGS "  - [p, \"-4 o-ring \\x6dael\", 1]\n", 4, 9, "\"-4 o-ring \\x6dael\"", "no word of an end",
         "male"},
        {PLUGS "  - [p, M10 female washer, 1]\n", 4, 9, "M10 female washer", "the pitch of \"a\" is not said",
         NULL},
        {PLUGS "  - [p, M10x1 female, 1]\n", 4, 9, "M10x1 female", "the seat of \"a\" is not said", NULL},
        {PLUGS "  - [p, M16x1.5 female cone24, 1]\n", 4, 9, "M16x1.5 female cone24",
         "the seat of \"a\" is not said", NULL},
    };
    CHECK(faults);
}

static void a_wrong_value_is_told(void **state)
{
    (void)state;
#define VALUE(key, value)                                                                                 \
    "kind: restrictor\ncolumns: [id, a, b, " key "]\nrows: [[x, -4 flare37 male, -4 flare37 male, " value \
    "]]\n"
#define AT 3, 46
    static const wanted_fault faults[] = {
        {VALUE("bore", "4.4"), AT, "4.4", "has no unit", NULL},
        {VALUE("bore", "4.4 bar"), AT, "4.4 bar", "unit of something else", NULL},
        {VALUE("bore", "4.4 mn"), AT, "4.4 mn", "no unit that is known", "mm"},
        {VALUE("bore", "4.4 m"), AT, "4.4 m", "out of range", NULL},
        {VALUE("bore", "-4.4 mm"), AT, "-4.4 mm", "out of range", NULL},
        {VALUE("bore", "wide"), AT, "wide", "does not begin with a number", NULL},
        {VALUE("bore", "{a: 1 mm}"), AT, "{a: 1 mm}", "a map where one value belongs", NULL},
        {VALUE("rating", "3000 bar"), AT, "3000 bar", "out of range", NULL},
        {VALUE("temperature", "150 C"), AT, "150 C", "is not a range", NULL},
        {VALUE("temperature", "150..-40 C"), AT, "150..-40 C", "is not a range", NULL},
        {VALUE("temperature", "-40..2000 C"), AT, "-40..2000 C", "out of range", NULL},
        {VALUE("fluids", "[oil, colant]"), 3, 52, "colant", "not known", "coolant"},
        {VALUE("fluids", "petrol"), AT, "petrol", "not known", NULL},
        {VALUE("fluids", "{oil: yes}"), AT, "{oil: yes}", "holds a map", NULL},
        {VALUE("price", "3.105"), AT, "3.105", "is not a price", NULL},
        {VALUE("price", "-3"), AT, "-3", "is not a price", NULL},
        {VALUE("price", "'3,10'"), AT, "'3,10'", "is not a price", "comma"},
        {VALUE("price", "3."), AT, "3.", "is not a price", NULL},
        {VALUE("price", ".5"), AT, ".5", "is not a price", NULL},
        {VALUE("price", "1e2"), AT, "1e2", "is not a price", NULL},
        {VALUE("price", "1000000.01"), AT, "1000000.01", "is not a price", NULL},
        {VALUE("price", "99999999999999999999"), AT, "99999999999999999999", "is not a price", NULL},
        {VALUE("typical", "maybe"), AT, "maybe", "typical", NULL},
        {VALUE("standards", "{a: b}"), AT, "{a: b}", "holds a map", NULL},
        {VALUE("note", "[a, b]"), AT, "[a, b]", "holds a list", NULL},
    };
    CHECK(faults);
}

static void a_banjo_bolt_has_one_set_of_studs(void **state)
{
    (void)state;
    static const wanted_fault faults[] = {
        {"{kind: banjo-bolt, id: b, thread: M10x1 male banjo}\n", 1, 1, "{", "\"stud\" is not said", NULL},
        {"{kind: banjo-bolt, id: b, thread: M10x1 male banjo, stud-a: banjo 10 stud}\n", 1, 1, "{",
         "\"stud-b\" is not said", NULL},
        {"{kind: banjo-bolt, id: b, thread: M10x1 male banjo, stud: banjo 10 stud, stud-a: banjo 10 stud, "
         "stud-b: banjo 10 "
         "stud}\n",
         1, 1, "{", "\"stud\" stands beside \"stud-a\"", NULL},
        {"{kind: banjo-bolt, id: b, thread: M10x1 male banjo, stud: banjo 10 stud, hole-count: 2.5}\n", 1, 86,
         "2.5", "not whole", NULL},
        {"{kind: banjo-bolt, id: b, thread: M10x1 male banjo, stud: banjo 10 stud, hole-count: 0}\n", 1, 86,
         "0", "out of range", NULL},
    };
    CHECK(faults);
}

static void a_wrong_port_is_told(void **state)
{
    (void)state;
    static const wanted_fault faults[] = {
        {"{kind: engine, id: e}\n", 1, 1, "{", "\"ports\" is not said", NULL},
        {"{kind: engine, id: e, ports: [a]}\n", 1, 30, "[a]", "not a map of ports", NULL},
        {"{kind: engine, id: e, ports: {}}\n", 1, 30, "{}", "not a map of ports", NULL},
        {"{kind: engine, id: e, ports: {g: 1/8-27 NPT female}}\n", 1, 34, "1/8-27 NPT female",
         "port \"g\" is not a map", NULL},
        {"{kind: engine, id: e, ports: {g: {circuit: feed}}}\n", 1, 31, "g", "does not say its end", NULL},
        {"{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, circut: feed}}}\n", 1, 63, "circut",
         "unknown key", "circuit"},
        {"{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, circuit: fede}}}\n", 1, 72, "fede",
         "not known", "feed"},
        {"{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, position: [1 mm, 2 mm]}}}\n", 1, 73,
         "[1 mm, 2 mm]", "not three values", NULL},
        {"{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, position: [1 mm, 2, 3 mm]}}}\n", 1,
         80, "2", "has no unit", NULL},
        {"{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, direction: [0, 0, 0]}}}\n", 1, 74,
         "[0, 0, 0]", "points nowhere", NULL},
        {"{kind: engine, id: e, ports: {'a b': {end: M12x1.5 female washer}}}\n", 1, 31, "'a b'", "cannot be",
         NULL},
        {"{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, holds: sw}}}\n", 1, 70, "sw",
         "no switch", NULL},
        {"{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, holds: e}}}\n", 1, 70, "e",
         "no switch", NULL},
        {"{kind: turbo, id: t, bearing: jornal, ports: {g: {end: M12x1.5 female washer}}}\n", 1, 31, "jornal",
         "not known", "journal"},
        {"{kind: engine, id: e, bearing: ball, ports: {g: {end: M12x1.5 female washer}}}\n", 1, 23, "bearing",
         "no key of kind engine", NULL},
    };
    CHECK(faults);
}

static void wrong_stock_is_told(void **state)
{
    (void)state;
#define PLUG "---\n{kind: plug, id: p-1, a: -4 o-ring male}\n"
    static const wanted_fault faults[] = {
        {"kind: stock\nrows: []\n", 1, 1, "k", "no list of columns", NULL},
        {"kind: stock\ncolumns: [id, quantety]\nrows: []\n", 2, 15, "quantety", "no column of the stock",
         "quantity"},
        {"kind: stock\ncolumns: [quantity]\nrows: []\n", 2, 10, "[quantity]", "\"id\" is missing", NULL},
        {"kind: stock\ncolumns: [id]\nrow: []\n", 3, 1, "row", "row", "rows"},
        {"kind: stock\ncolumns: [id]\n", 1, 1, "k", "no list of rows", NULL},
        {"kind: stock\ncolumns: [id, quantity]\nrows: [[p-1]]\n" PLUG, 3, 8, "[p-1]",
         "does not fit the columns", NULL},
        {"kind: stock\ncolumns: [id, quantity]\nrows: [[p-2, 1]]\n" PLUG, 3, 9, "p-2",
         "no part of the catalogue", "p-1"},
        {"kind: stock\ncolumns: [id, quantity]\nrows: [[p-1, 1.5]]\n" PLUG, 3, 9, "p-1",
         "only hose is kept by the metre", NULL},
        {"kind: stock\ncolumns: [id, quantity]\nrows: [[p-1, -1]]\n" PLUG, 3, 14, "-1", "out of range", NULL},
        {"kind: stock\ncolumns: [id, quantity]\nrows: [[p-1, 2 mm]]\n" PLUG, 3, 14, "2 mm",
         "goes on behind the number", NULL},
        {"kind: stock\ncolumns: [id, quantity]\nrows: [[p-1, 1], [p-1, 2]]\n" PLUG, 3, 19, "p-1",
         "names this part twice", NULL},
        {"kind: stock\ncolumns: [id, quantity]\nrows: [[~, 1]]\n" PLUG, 3, 9, "~", "\"id\" is not said",
         NULL},
    };
    CHECK(faults);
}

typedef struct loaded {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_status status;
} loaded;

static void load(loaded *self, const char *text, bool skip_bad)
{
    const char *const names[] = {"p.yaml"};
    const ow_catalog_options options = {.skip_bad = skip_bad};
    *self = (loaded){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL, OW_OK};
    self->context = ow_test_context(&self->sink);
    self->status = ow_catalog_load_texts(&self->context, names, &text, 1, &options, &self->catalog);
}

static void done(loaded *self)
{
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

static const char four_faults[] = PLUGS "  - [p1, -4 o-ring mael, 1.234]\n"
                                        "  - [p2, -4 o-ring male, 1]\n"
                                        "  - [p3, M10 male washer, 1]\n"
                                        "---\nkind: adapter\nrating: 5\ncolumns: [id, a, b]\nrows:\n"
                                        "  - [a1, -4 flare37 male, -4 flare37 male]\n"
                                        "  - [a2, -4 flare37 male]\n"
                                        "---\n{kind: cap, id: c1, a: -4 flare37 female swivel}\n";

static void no_fault_hides_another(void **state)
{
    (void)state;
    loaded self;
    load(&self, four_faults, false);
    assert_int_equal(self.status, OW_INPUT);
    assert_null(self.catalog);
    assert_int_equal(ow_test_count(&self.sink, OW_ERROR), 5);
    static const size_t lines[] = {4, 4, 6, 9, 13};
    for (size_t i = 0; i < 5; i++)
        assert_int_equal(self.sink.items[i].line, lines[i]);
    done(&self);
}

static void skip_bad_leaves_out_the_row_and_the_page_only_where_its_head_is_wrong(void **state)
{
    (void)state;
    loaded self;
    load(&self, four_faults, true);
    assert_int_equal(self.status, OW_OK);
    assert_int_equal(ow_test_count(&self.sink, OW_ERROR), 0);
    assert_int_equal(ow_test_count(&self.sink, OW_WARNING), 5);
    assert_int_equal(ow_catalog_part_count(self.catalog), 2);
    assert_non_null(ow_catalog_part(self.catalog, "p2"));
    assert_non_null(ow_catalog_part(self.catalog, "c1"));
    assert_int_equal(ow_catalog_left_out_count(self.catalog), 3);
    assert_string_equal(ow_catalog_left_out_at(self.catalog, 0), "p1");
    assert_string_equal(ow_catalog_left_out_at(self.catalog, 1), "p3");
    assert_string_equal(ow_catalog_left_out_at(self.catalog, 2), "page p");
    assert_null(ow_catalog_left_out_at(self.catalog, 3));
    done(&self);
}

static void skip_bad_keeps_the_first_of_two_with_one_id(void **state)
{
    (void)state;
    loaded self;
    load(&self, PLUGS "  - [p, -4 o-ring male, 1]\n  - [p, -6 o-ring male, 2]\n", true);
    assert_int_equal(self.status, OW_OK);
    assert_int_equal(ow_catalog_part(self.catalog, "p")->price_cents, 100);
    assert_int_equal(ow_catalog_left_out_count(self.catalog), 1);
    done(&self);
}

static void skip_bad_forgets_what_a_port_holds_if_it_is_nothing(void **state)
{
    (void)state;
    loaded self;
    load(&self, "{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, holds: sw}}}\n", true);
    assert_int_equal(self.status, OW_OK);
    assert_string_equal(ow_catalog_machine(self.catalog, "e")->ports[0].holds, "");
    assert_int_equal(ow_test_count(&self.sink, OW_WARNING), 1);
    done(&self);
}

/* Stock and ports that name a faulty record are not blamed for its fault. */
static void what_names_a_faulty_record_is_not_blamed(void **state)
{
    (void)state;
    loaded self;
    load(&self,
         "kind: stock\ncolumns: [id, quantity]\nrows: [[p, 1]]\n---\n{kind: plug, id: p, a: -4 o-ring mael}\n"
         "---\n{kind: switch, id: sw, a: M10 male taper}\n"
         "---\n{kind: engine, id: e, ports: {g: {end: M12x1.5 female washer, holds: sw}}}\n",
         false);
    assert_int_equal(self.status, OW_INPUT);
    assert_int_equal(self.sink.count, 2);
    done(&self);
}

static void a_syntax_fault_leaves_out_its_file_and_no_other(void **state)
{
    (void)state;
    static const char *const names[] = {"a.yaml", "b.yaml"};
    static const char *const texts[] = {"kind: [plug\n", "{kind: plug, id: p, a: -4 o-ring male}\n"};
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_catalog *catalog = NULL;
    const ow_catalog_options skip = {.skip_bad = true};
    assert_int_equal(ow_catalog_load_texts(&context, names, texts, 2, NULL, &catalog), OW_INPUT);
    assert_null(catalog);
    ow_test_diagnostics_clear(&sink);
    assert_int_equal(ow_catalog_load_texts(&context, names, texts, 2, &skip, &catalog), OW_OK);
    assert_int_equal(ow_catalog_part_count(catalog), 1);
    assert_string_equal(ow_catalog_left_out_at(catalog, 0), "page a.yaml");
    ow_catalog_free(catalog);
    ow_test_diagnostics_clear(&sink);
}

/* Aliases make a small text hold a hundred thousand wrong rows: after 500 faults it is enough. */
static void endless_faults_come_to_an_end(void **state)
{
    (void)state;
    loaded self;
    ow_context plain = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&plain);
    ow_text_add(&text, "kind: plug\ncolumns: [id, a]\nrows:\n  - &r [p, -4 o-ring mael]\n");
    for (size_t i = 0; i < 100 * 1000; i++)
        ow_text_add(&text, "  - *r\n");
    load(&self, ow_text_words(&text), false);
    assert_int_equal(self.status, OW_INPUT);
    assert_int_equal(self.sink.count, 501);
    assert_non_null(ow_test_find(&self.sink, "more than 500 faults"));
    done(&self);
    load(&self, ow_text_words(&text), true);
    assert_int_equal(self.status, OW_OK);
    assert_int_equal(ow_catalog_left_out_count(self.catalog), 501);
    assert_string_equal(ow_catalog_left_out_at(self.catalog, 500), "the rest of p.yaml");
    done(&self);
    ow_text_done(&text);
}

static void a_place_counts_every_kind_of_line_end(void **state)
{
    (void)state;
    static const char *const texts[] = {
        "{kind: plug, id: p, a: -4 o-ring male}\n---\n\n{kind: plug, id: q, a: -4 o-ring male}\n",
        "{kind: plug, id: p, a: -4 o-ring male}\r\n---\r\n\r\n{kind: plug, id: q, a: -4 o-ring male}\r\n",
        "{kind: plug, id: p, a: -4 o-ring male}\r---\r\r{kind: plug, id: q, a: -4 o-ring male}\r"};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        loaded self;
        load(&self, texts[i], false);
        assert_int_equal(self.status, OW_OK);
        assert_int_equal(ow_catalog_part(self.catalog, "q")->place.line, 4);
        assert_int_equal(ow_catalog_part(self.catalog, "q")->place.column, 18);
        done(&self);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_wrong_head_is_told),
        cmocka_unit_test(a_wrong_row_is_told),
        cmocka_unit_test(a_wrong_end_is_marked_inside_its_cell),
        cmocka_unit_test(a_wrong_value_is_told),
        cmocka_unit_test(a_banjo_bolt_has_one_set_of_studs),
        cmocka_unit_test(a_wrong_port_is_told),
        cmocka_unit_test(wrong_stock_is_told),
        cmocka_unit_test(no_fault_hides_another),
        cmocka_unit_test(skip_bad_leaves_out_the_row_and_the_page_only_where_its_head_is_wrong),
        cmocka_unit_test(skip_bad_keeps_the_first_of_two_with_one_id),
        cmocka_unit_test(skip_bad_forgets_what_a_port_holds_if_it_is_nothing),
        cmocka_unit_test(what_names_a_faulty_record_is_not_blamed),
        cmocka_unit_test(a_syntax_fault_leaves_out_its_file_and_no_other),
        cmocka_unit_test(endless_faults_come_to_an_end),
        cmocka_unit_test(a_place_counts_every_kind_of_line_end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
