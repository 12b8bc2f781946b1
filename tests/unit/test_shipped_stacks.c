/* SPDX-License-Identifier: MIT */
/*
 * What the shipped catalogue is for: every engine feeds every turbo and keeps the switch that sits in its
 * gallery, drains it, and waters it where it wants water. Under the circuits' defaults, as `stack` asks.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/ask.h"
#include "support/diagnostics.h"
#include "support/testing.h"

typedef struct shipped {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
} shipped;

static int load(void **state)
{
    const char *source = getenv("OW_SOURCE_DIR");
    char folder[4096];
    (void)snprintf(folder, sizeof folder, "%s/catalog", source ? source : ".");
    const char *folders[] = {folder};
    const ow_catalog_options options = {folders, 1, NULL, false, false};
    shipped *self = calloc(1, sizeof *self);
    if (!self)
        return -1;
    self->context = ow_test_context(&self->sink);
    *state = self;
    if (ow_catalog_load(&self->context, &options, &self->catalog) != OW_OK)
        return -1;
    return ow_net_build(&self->context, self->catalog, &self->net) == OW_OK ? 0 : -1;
}

static int unload(void **state)
{
    shipped *self = *state;
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    free(self);
    return 0;
}

/* Parts of the best layout; 0 if there is none. */
static size_t best(shipped *self, const ow_ask_words *words)
{
    ow_ask_set set;
    size_t parts = 0;
    if (ow_ask_read(&self->context, self->catalog, self->net, words, &set) != OW_OK)
        fail_msg("%s to %s is no ask", words->from, words->to[0]);
    for (size_t i = 0; i < set.count && parts == 0; i++) {
        ow_search *search = NULL;
        ow_layout layout;
        assert_int_equal(ow_search_new(&self->context, self->net, &set.items[i].ask, &search), OW_OK);
        if (ow_search_next(search, &layout) == OW_OK) {
            parts = ow_layout_part_count(&layout);
            assert_int_equal(ow_layout_joint_count(&layout), parts + words->to_count + words->keep_count);
            ow_layout_free(&layout);
        }
        ow_search_free(search);
    }
    ow_ask_set_done(&set);
    return parts;
}

typedef void (*pair_job)(shipped *self, const ow_machine *a, const ow_port *from, const ow_machine *b,
                         const ow_port *to);

/* Calls the job for each port of kind a and each of kind b on that circuit. */
static size_t each_pair(shipped *self, ow_kind a, ow_kind b, ow_circuit circuit, pair_job job)
{
    size_t count = 0;
    for (size_t i = 0; i < ow_catalog_machine_count(self->catalog); i++) {
        const ow_machine *from = ow_catalog_machine_at(self->catalog, i);
        for (size_t j = 0; from->kind == a && j < ow_catalog_machine_count(self->catalog); j++) {
            const ow_machine *to = ow_catalog_machine_at(self->catalog, j);
            for (size_t p = 0; to->kind == b && p < from->port_count; p++)
                for (size_t q = 0; from->ports[p].circuit == circuit && q < to->port_count; q++)
                    if (to->ports[q].circuit == circuit) {
                        job(self, from, &from->ports[p], to, &to->ports[q]);
                        count++;
                    }
        }
    }
    return count;
}

static void feed(shipped *self, const ow_machine *engine, const ow_port *gallery, const ow_machine *turbo,
                 const ow_port *inlet)
{
    char from[160], to[160];
    (void)snprintf(from, sizeof from, "%s:%s", engine->id, gallery->name);
    (void)snprintf(to, sizeof to, "%s:%s", turbo->id, inlet->name);
    const ow_ask_words words = {.from = from,
                                .to = {to},
                                .to_count = 1,
                                .keep = {gallery->holds},
                                .keep_count = gallery->holds[0] != 0};
    size_t parts = best(self, &words);
    if (parts == 0)
        fail_msg("%s does not feed %s", from, to);
    if (parts > 7)
        fail_msg("%s feeds %s with as many as %zu parts", from, to, parts);
}

static void every_engine_feeds_every_turbo_and_keeps_its_switch(void **state)
{
    shipped *self = *state;
    assert_true(each_pair(self, OW_ENGINE, OW_TURBO, OW_FEED, feed) >= 160);
}

static void drain(shipped *self, const ow_machine *turbo, const ow_port *outlet, const ow_machine *engine,
                  const ow_port *sump)
{
    char from[160], to[160];
    (void)snprintf(from, sizeof from, "%s:%s", turbo->id, outlet->name);
    (void)snprintf(to, sizeof to, "%s:%s", engine->id, sump->name);
    /* A bore below the outlet's is for check to judge: here only that it can be joined at all. */
    const ow_ask_words words = {.from = from, .to = {to}, .to_count = 1, .bore = "8 mm"};
    if (best(self, &words) == 0)
        fail_msg("%s does not drain into %s", from, to);
}

static void every_turbo_drains_into_every_engine(void **state)
{
    shipped *self = *state;
    assert_true(each_pair(self, OW_TURBO, OW_ENGINE, OW_DRAIN, drain) >= 160);
}

static void water(shipped *self, const ow_machine *engine, const ow_port *outlet, const ow_machine *turbo,
                  const ow_port *port)
{
    char from[160], to[160];
    (void)snprintf(from, sizeof from, "%s:%s", engine->id, outlet->name);
    (void)snprintf(to, sizeof to, "%s:%s", turbo->id, port->name);
    const ow_ask_words words = {.from = from, .to = {to}, .to_count = 1};
    if (best(self, &words) == 0)
        fail_msg("%s does not water %s", from, to);
}

static void every_engine_waters_every_turbo_and_heater(void **state)
{
    shipped *self = *state;
    assert_true(each_pair(self, OW_ENGINE, OW_TURBO, OW_COOLANT, water) >= 100);
    assert_true(each_pair(self, OW_ENGINE, OW_HEATER, OW_COOLANT, water) >= 20);
}

static void at_least_600_parts_are_distinct_in_ends_and_passages(void **state)
{
    shipped *self = *state;
    assert_true(ow_net_distinct_count(self->net) >= 600);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(at_least_600_parts_are_distinct_in_ends_and_passages),
        cmocka_unit_test(every_engine_feeds_every_turbo_and_keeps_its_switch),
        cmocka_unit_test(every_turbo_drains_into_every_engine),
        cmocka_unit_test(every_engine_waters_every_turbo_and_heater),
    };
    return cmocka_run_group_tests(tests, load, unload);
}
