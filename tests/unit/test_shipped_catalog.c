/* SPDX-License-Identifier: MIT */
/*
 * The catalogue that ships: its size, and that every port of its machines has a part in stock that seals on
 * it. The joint table that judges this is tested against the standards by itself (test_joint_table.c).
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/catalog.h"
#include "oilway/joint.h"
#include "support/diagnostics.h"
#include "support/testing.h"

typedef struct shipped {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
} shipped;

static int load(void **state)
{
    const char *source = getenv("OW_SOURCE_DIR");
    char folder[4096];
    (void)snprintf(folder, sizeof folder, "%s/catalog", source ? source : ".");
    const char *folders[] = {folder};
    const ow_catalog_options options = {folders, 1, NULL, false, true};
    shipped *self = calloc(1, sizeof *self);
    if (!self)
        return -1;
    self->context = ow_test_context(&self->sink);
    *state = self;
    return ow_catalog_load(&self->context, &options, &self->catalog) == OW_OK ? 0 : -1;
}

static int unload(void **state)
{
    shipped *self = *state;
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    free(self);
    return 0;
}

static bool stock_seals_on(const ow_catalog *catalog, const ow_end *end)
{
    for (size_t i = 0; i < ow_catalog_part_count(catalog); i++) {
        const ow_part *part = ow_catalog_part_at(catalog, i);
        for (size_t e = 0; e < part->end_count; e++) {
            const ow_joint_rule *rule = ow_joint_find(end, &part->ends[e]);
            if (rule && rule->verdict == OW_SEALS)
                return true;
        }
    }
    return false;
}

static size_t count_machines(const ow_catalog *catalog, ow_kind kind)
{
    size_t count = 0;
    for (size_t i = 0; i < ow_catalog_machine_count(catalog); i++)
        count += ow_catalog_machine_at(catalog, i)->kind == kind;
    return count;
}

static void it_loads_without_a_word(void **state)
{
    shipped *self = *state;
    assert_int_equal(self->sink.count, 0);
}

static void it_passes_its_own_check_without_a_warning(void **state)
{
    shipped *self = *state;
    size_t errors = 99, warnings = 99;
    assert_int_equal(ow_catalog_check(&self->context, self->catalog, &errors, &warnings), OW_OK);
    if (errors || warnings)
        fail_msg("%s", self->sink.count ? self->sink.items[0].told : "something is wrong");
}

static void it_has_at_least_60_pages_and_3000_parts(void **state)
{
    shipped *self = *state;
    assert_true(ow_catalog_page_count(self->catalog) >= 60);
    assert_true(ow_catalog_part_count(self->catalog) >= 3000);
}

static void it_has_at_least_10_engines_and_16_turbos(void **state)
{
    shipped *self = *state;
    assert_true(count_machines(self->catalog, OW_ENGINE) >= 10);
    assert_true(count_machines(self->catalog, OW_TURBO) >= 16);
    assert_true(count_machines(self->catalog, OW_HEATER) >= 1);
}

static void it_has_parts_of_every_kind(void **state)
{
    shipped *self = *state;
    size_t counts[OW_KIND_COUNT] = {0};
    for (size_t i = 0; i < ow_catalog_part_count(self->catalog); i++)
        counts[ow_catalog_part_at(self->catalog, i)->kind]++;
    for (size_t i = 0; i < ow_catalog_fixture_count(self->catalog); i++)
        counts[ow_catalog_fixture_at(self->catalog, i)->kind]++;
    for (ow_kind kind = OW_ADAPTER; kind < OW_ENGINE; kind++)
        if (counts[kind] == 0)
            fail_msg("no %s", ow_kind_word(kind));
}

static void every_part_says_what_a_limit_asks_about(void **state)
{
    shipped *self = *state;
    for (size_t i = 0; i < ow_catalog_part_count(self->catalog); i++) {
        const ow_part *part = ow_catalog_part_at(self->catalog, i);
        bool passage = part->end_count > 1;
        if (part->rating_pa <= 0 || !part->has_temperature || part->fluids == 0 || !part->has_price ||
            !part->material[0] || (passage && ow_part_bore_m(part, 0, part->end_count - 1) <= 0) ||
            (part->kind != OW_HOSE && part->length_m <= 0))
            fail_msg("%s leaves something out", part->id);
    }
}

/* The root of an external thread is d - 1.226869 P across (ISO 68-1 profile, root rounded): a wall is left.
 */
static void no_male_end_is_bored_out_to_the_root_of_its_thread(void **state)
{
    shipped *self = *state;
    size_t looked_at = 0;
    for (size_t i = 0; i < ow_catalog_part_count(self->catalog); i++) {
        const ow_part *part = ow_catalog_part_at(self->catalog, i);
        for (size_t e = 0; e < part->end_count; e++) {
            ow_thread thread;
            if (part->ends[e].gender != OW_MALE || !ow_end_thread(&part->ends[e], &thread) ||
                part->leg_bore_m[e] <= 0)
                continue;
            double root = ow_thread_major_m(&thread) - 1.226869 * ow_thread_pitch_m(&thread);
            if (part->leg_bore_m[e] >= root - 0.8e-3)
                fail_msg("%s.%s: hardly a wall between bore and thread", part->id, part->end_names[e]);
            looked_at++;
        }
    }
    assert_true(looked_at > 1000);
}

static void every_port_of_a_machine_has_a_part_that_seals_on_it(void **state)
{
    shipped *self = *state;
    for (size_t i = 0; i < ow_catalog_machine_count(self->catalog); i++) {
        const ow_machine *machine = ow_catalog_machine_at(self->catalog, i);
        for (size_t p = 0; p < machine->port_count; p++)
            if (!stock_seals_on(self->catalog, &machine->ports[p].end))
                fail_msg("nothing seals on %s:%s", machine->id, machine->ports[p].name);
    }
}

static void every_switch_and_sender_has_a_part_that_seals_on_it(void **state)
{
    shipped *self = *state;
    for (size_t i = 0; i < ow_catalog_fixture_count(self->catalog); i++) {
        const ow_part *fixture = ow_catalog_fixture_at(self->catalog, i);
        if (!stock_seals_on(self->catalog, &fixture->ends[0]))
            fail_msg("nothing takes %s", fixture->id);
    }
}

static void what_an_engine_holds_is_in_the_catalogue_and_seals_there(void **state)
{
    shipped *self = *state;
    size_t held = 0;
    for (size_t i = 0; i < ow_catalog_machine_count(self->catalog); i++) {
        const ow_machine *machine = ow_catalog_machine_at(self->catalog, i);
        for (size_t p = 0; p < machine->port_count; p++) {
            const ow_port *port = &machine->ports[p];
            if (!port->holds[0])
                continue;
            const ow_part *fixture = ow_catalog_part(self->catalog, port->holds);
            if (!fixture)
                fail_msg("%s:%s holds %s, which is nowhere", machine->id, port->name, port->holds);
            const ow_joint_rule *rule = ow_joint_find(&port->end, &fixture->ends[0]);
            if (!rule || rule->verdict != OW_SEALS)
                fail_msg("%s does not seal in %s:%s", port->holds, machine->id, port->name);
            held++;
        }
    }
    assert_true(held >= 10);
}

static void every_turbo_can_be_fed_and_drained(void **state)
{
    shipped *self = *state;
    for (size_t i = 0; i < ow_catalog_machine_count(self->catalog); i++) {
        const ow_machine *machine = ow_catalog_machine_at(self->catalog, i);
        bool has[OW_COOLANT + 1] = {false};
        for (size_t p = 0; p < machine->port_count; p++)
            has[machine->ports[p].circuit] = true;
        if (machine->kind == OW_TURBO && (!has[OW_FEED] || !has[OW_DRAIN]))
            fail_msg("%s lacks a feed or a drain", machine->id);
        if (machine->kind == OW_ENGINE && (!has[OW_FEED] || !has[OW_DRAIN]))
            fail_msg("%s lacks a gallery or a drain", machine->id);
    }
}

/* The members of the demo scenario that the documents call by name. */
static void the_parts_that_the_documents_name_are_there(void **state)
{
    shipped *self = *state;
    static const char *const PARTS[] = {"tf-2-2m",     "tee-2", "tf-2-4",   "he-4-s", "he-4-90",
                                        "hose-4-ptfe", "sw-2",  "sender-2", NULL};
    static const char *const MACHINES[] = {"brockle-4", "plover-41", "dunlin-63", "curlew-8b", NULL};
    for (size_t i = 0; PARTS[i]; i++)
        if (!ow_catalog_part(self->catalog, PARTS[i]))
            fail_msg("no %s", PARTS[i]);
    for (size_t i = 0; MACHINES[i]; i++)
        if (!ow_catalog_machine(self->catalog, MACHINES[i]))
            fail_msg("no %s", MACHINES[i]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_loads_without_a_word),
        cmocka_unit_test(it_passes_its_own_check_without_a_warning),
        cmocka_unit_test(it_has_at_least_60_pages_and_3000_parts),
        cmocka_unit_test(it_has_at_least_10_engines_and_16_turbos),
        cmocka_unit_test(it_has_parts_of_every_kind),
        cmocka_unit_test(every_part_says_what_a_limit_asks_about),
        cmocka_unit_test(no_male_end_is_bored_out_to_the_root_of_its_thread),
        cmocka_unit_test(every_port_of_a_machine_has_a_part_that_seals_on_it),
        cmocka_unit_test(every_switch_and_sender_has_a_part_that_seals_on_it),
        cmocka_unit_test(what_an_engine_holds_is_in_the_catalogue_and_seals_there),
        cmocka_unit_test(every_turbo_can_be_fed_and_drained),
        cmocka_unit_test(the_parts_that_the_documents_name_are_there),
    };
    return cmocka_run_group_tests(tests, load, unload);
}
