/* SPDX-License-Identifier: MIT */
/* The catalogues under examples/: those that must read do, and the faulty one has every fault found. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/catalog.h"
#include "oilway/check.h"
#include "oilway/file.h"
#include "oilway/joint.h"
#include "support/diagnostics.h"
#include "support/testing.h"

typedef struct loaded {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_status status;
} loaded;

/* In place: the catalogue holds on to the context. */
static void load(loaded *self, const char *first, const char *second, const char *stock)
{
    const char *source = getenv("OW_SOURCE_DIR");
    char paths[3][4096];
    const char *names[] = {first, second, stock};
    for (size_t i = 0; i < 3; i++)
        (void)snprintf(paths[i], sizeof paths[i], "%s/%s", source ? source : ".", names[i] ? names[i] : "");
    const char *folders[] = {paths[0], paths[1]};
    const ow_catalog_options options = {folders, second ? 2 : 1, stock ? paths[2] : NULL, false, false};
    *self = (loaded){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL, OW_OK};
    self->context = ow_test_context(&self->sink);
    self->status = ow_catalog_load(&self->context, &options, &self->catalog);
}

static void done(loaded *self)
{
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

static void the_examples_that_must_read_do(void **state)
{
    (void)state;
    static const char *const FOLDERS[] = {"examples/short-drawer", "examples/made-up-lines",
                                          "examples/odd-turbo", "examples/doubtful-catalogue"};
    for (size_t i = 0; i < sizeof FOLDERS / sizeof FOLDERS[0]; i++) {
        loaded self;
        load(&self, FOLDERS[i], NULL, NULL);
        if (self.status != OW_OK || self.sink.count)
            fail_msg("%s: %s", FOLDERS[i], self.sink.count ? self.sink.items[0].told : "not read");
        done(&self);
    }
}

static void the_overlays_lie_over_the_shipped_catalogue(void **state)
{
    (void)state;
    loaded self;
    load(&self, "catalog", "examples/made-up-lines", NULL);
    assert_int_equal(self.status, OW_OK);
    const ow_part *line = ow_catalog_part(self.catalog, "lm-f4s-f4s-650");
    assert_non_null(line);
    assert_true(ow_part_is_hose(line));
    assert_non_null(ow_catalog_part(self.catalog, "tf-2-4"));
    done(&self);
}

static void the_stock_names_only_parts_that_there_are(void **state)
{
    (void)state;
    loaded self;
    load(&self, "catalog", NULL, "examples/stock.yaml");
    assert_int_equal(self.status, OW_OK);
    assert_int_equal(self.sink.count, 0);
    const ow_part *part = ow_catalog_part(self.catalog, "tf-2-4");
    assert_non_null(part);
    assert_true(part->has_stock);
    assert_int_equal(part->price_cents, 295);
    done(&self);
}

/* M13x1.25 is in no standard series (ISO 261 has no such pair), so nothing in stock may seal on it. */
static void no_part_seals_on_the_odd_turbo(void **state)
{
    (void)state;
    loaded self;
    load(&self, "catalog", "examples/odd-turbo", NULL);
    assert_int_equal(self.status, OW_OK);
    const ow_machine *turbo = ow_catalog_machine(self.catalog, "corncrake-40");
    assert_non_null(turbo);
    const ow_port *inlet = ow_machine_port(turbo, "oil-in");
    assert_non_null(inlet);
    for (size_t i = 0; i < ow_catalog_part_count(self.catalog); i++) {
        const ow_part *part = ow_catalog_part_at(self.catalog, i);
        for (size_t e = 0; e < part->end_count; e++)
            assert_null(ow_joint_find(&inlet->end, &part->ends[e]));
    }
    done(&self);
}

/* Each comment in the faulty pages promises these. */
static void every_fault_of_the_faulty_catalogue_is_named_at_its_place(void **state)
{
    (void)state;
    static const struct {
        const char *file;
        size_t line;
    } FAULTS[] = {
        {"bracket.yaml", 7}, {"ends.yaml", 11},   {"ends.yaml", 12},  {"ends.yaml", 13},  {"ends.yaml", 14},
        {"engine.yaml", 6},  {"engine.yaml", 7},  {"rows.yaml", 11},  {"rows.yaml", 12},  {"rows.yaml", 14},
        {"ranges.yaml", 7},  {"ranges.yaml", 11}, {"rows.yaml", 15},  {"rows.yaml", 16},  {"twice.yaml", 6},
        {"units.yaml", 6},   {"units.yaml", 11},  {"units.yaml", 12}, {"units.yaml", 13}, {"words.yaml", 3},
        {"words.yaml", 12},  {"words.yaml", 14},  {"words.yaml", 15}, {"words.yaml", 16}, {"words.yaml", 23},
        {"words.yaml", 24},  {"words.yaml", 26},
    };
    loaded self;
    load(&self, "examples/faulty-catalogue", NULL, NULL);
    assert_int_equal(self.status, OW_INPUT);
    for (size_t f = 0; f < sizeof FAULTS / sizeof FAULTS[0]; f++) {
        bool found = false;
        for (size_t i = 0; i < self.sink.count && !found; i++) {
            const ow_test_diagnostic *told = &self.sink.items[i];
            found = told->severity == OW_ERROR && told->line == FAULTS[f].line && told->file &&
                    strstr(told->file, FAULTS[f].file);
        }
        if (!found)
            fail_msg("nothing is said of %s line %zu", FAULTS[f].file, FAULTS[f].line);
    }
    assert_int_equal(ow_test_count(&self.sink, OW_ERROR), sizeof FAULTS / sizeof FAULTS[0]);
    done(&self);
}

/* Its comments promise that check doubts each page for one reason. */
static void every_page_of_the_doubtful_catalogue_is_doubted(void **state)
{
    (void)state;
    static const struct {
        size_t line;
        const char *words;
    } DOUBTS[] = {{11, "db-1"},   {12, "db-2"},        {23, "de-1"},
                  {31, "rating"}, {31, "temperature"}, {31, "fluids"}};
    loaded self;
    load(&self, "examples/doubtful-catalogue", NULL, NULL);
    assert_int_equal(self.status, OW_OK);
    size_t errors = 0, warnings = 0;
    assert_int_equal(ow_catalog_check(&self.context, self.catalog, &errors, &warnings), OW_OK);
    assert_true(errors >= 1);
    assert_true(warnings >= 4);
    for (size_t d = 0; d < sizeof DOUBTS / sizeof DOUBTS[0]; d++) {
        bool found = false;
        for (size_t i = 0; i < self.sink.count && !found; i++)
            found = self.sink.items[i].line == DOUBTS[d].line &&
                    strstr(self.sink.items[i].message, DOUBTS[d].words);
        if (!found)
            fail_msg("nothing is said of line %zu, %s", DOUBTS[d].line, DOUBTS[d].words);
    }
    done(&self);
}

/* Drawn by hand, not by the search, and sound in every joint. */
static void the_layouts_drawn_by_hand_pass_the_check(void **state)
{
    (void)state;
    loaded self;
    load(&self, "catalog", NULL, NULL);
    assert_int_equal(self.status, OW_OK);
    const char *source = getenv("OW_SOURCE_DIR");
    char path[4096];
    (void)snprintf(path, sizeof path, "%s/examples/plover-on-brockle.yaml", source ? source : ".");
    char *text = NULL;
    size_t length = 0, count = 0;
    ow_layout *layouts = NULL;
    assert_int_equal(ow_file_read(&self.context, path, &text, &length), OW_OK);
    assert_int_equal(ow_layouts_read(&self.context, self.catalog, path, text, length, &layouts, &count),
                     OW_OK);
    assert_int_equal(count, 4);
    for (size_t i = 0; i < count; i++) {
        ow_findings findings = ow_findings_new(&self.context);
        ow_findings passed = ow_findings_new(&self.context);
        assert_int_equal(ow_check_layout(&self.context, self.catalog, &layouts[i], &findings, &passed),
                         OW_OK);
        for (size_t f = 0; f < findings.count; f++)
            if (findings.items[f].severity >= OW_WARNING)
                fail_msg("%s: %s: %s", layouts[i].title, findings.items[f].where, findings.items[f].message);
        assert_true(passed.count >= ow_layout_joint_count(&layouts[i]));
        ow_findings_done(&findings);
        ow_findings_done(&passed);
    }
    ow_layouts_free(&self.context, layouts, count);
    ow_release(&self.context, text);
    done(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_examples_that_must_read_do),
        cmocka_unit_test(the_overlays_lie_over_the_shipped_catalogue),
        cmocka_unit_test(the_stock_names_only_parts_that_there_are),
        cmocka_unit_test(no_part_seals_on_the_odd_turbo),
        cmocka_unit_test(every_fault_of_the_faulty_catalogue_is_named_at_its_place),
        cmocka_unit_test(every_page_of_the_doubtful_catalogue_is_doubted),
        cmocka_unit_test(the_layouts_drawn_by_hand_pass_the_check),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
