/* SPDX-License-Identifier: MIT */
/*
 * What is said of the answers over the shipped catalogue: nothing is wrong with them, little is noted, and
 * nothing twice. A fitter who is told ten things reads none.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/answer.h"
#include "support/diagnostics.h"
#include "support/testing.h"

#define EACH 2 /* of so many pairs one is looked at */
#define MOST_NOTES 2

typedef struct shipped {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    size_t looked_at;
} shipped;

static int load(void **state)
{
    static shipped self;
    const char *source = getenv("OW_SOURCE_DIR");
    char folder[4096];
    (void)snprintf(folder, sizeof folder, "%s/catalog", source ? source : ".");
    const char *folders[] = {folder};
    const ow_catalog_options options = {folders, 1, NULL, false, false};
    self.context = ow_test_context(&self.sink);
    *state = &self;
    if (ow_catalog_load(&self.context, &options, &self.catalog) != OW_OK)
        return -1;
    return ow_net_build(&self.context, self.catalog, &self.net) == OW_OK ? 0 : -1;
}

static int unload(void **state)
{
    shipped *self = *state;
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    return 0;
}

/* What a warning may speak of: what only the asker can find out, and true bores in a drain. */
static bool may_warn(const ow_finding *finding)
{
    return strcmp(finding->rule->id, "restrictor-unknown") == 0 || strcmp(finding->rule->id, "bore") == 0;
}

static void assert_quiet(const ow_answer *answer, const char *from, const char *to)
{
    ow_findings all = ow_findings_new(answer->findings.context);
    size_t told = answer->findings.count + answer->stacks[0].findings.count, notes = 0;
    assert_int_equal(ow_findings_join(&all, &answer->findings, NULL), OW_OK);
    assert_int_equal(ow_findings_join(&all, &answer->stacks[0].findings, NULL), OW_OK);
    if (all.count != told)
        fail_msg("%s to %s: something is told twice", from, to);
    for (size_t index = 0; index < all.count; index++) {
        const ow_finding *finding = &all.items[index];
        notes += finding->severity == OW_NOTE;
        if (finding->severity != OW_NOTE && !may_warn(finding))
            fail_msg("%s to %s: %s: %s", from, to, finding->rule->id, finding->message);
    }
    if (notes > MOST_NOTES)
        fail_msg("%s to %s: %zu notes", from, to, notes);
    ow_findings_done(&all);
}

static void look_at(shipped *self, const ow_machine *a, const ow_port *from, const ow_machine *b,
                    const ow_port *to)
{
    const ow_answer_options options = OW_ANSWER_OPTIONS_INIT;
    char from_name[160], to_name[160];
    ow_ask_set set;
    ow_answers answers;
    (void)snprintf(from_name, sizeof from_name, "%s:%s", a->id, from->name);
    (void)snprintf(to_name, sizeof to_name, "%s:%s", b->id, to->name);
    const ow_ask_words words = {.from = from_name,
                                .to = {to_name},
                                .to_count = 1,
                                .keep = {from->holds},
                                .keep_count = from->holds[0] != '\0',
                                .hose = "800 mm"};
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, &words, &set), OW_OK);
    assert_int_equal(ow_answers_find(&self->context, self->catalog, self->net, &set, &options, &answers),
                     OW_OK);
    if (answers.found)
        assert_quiet(&answers.items[0], from_name, to_name);
    self->looked_at += answers.found;
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
}

static void look_at_circuit(shipped *self, ow_kind a, ow_kind b, ow_circuit circuit)
{
    size_t pair = 0;
    self->looked_at = 0;
    for (size_t i = 0; i < ow_catalog_machine_count(self->catalog); i++) {
        const ow_machine *from = ow_catalog_machine_at(self->catalog, i);
        for (size_t j = 0; from->kind == a && j < ow_catalog_machine_count(self->catalog); j++) {
            const ow_machine *to = ow_catalog_machine_at(self->catalog, j);
            for (size_t p = 0; to->kind == b && p < from->port_count; p++)
                for (size_t q = 0; from->ports[p].circuit == circuit && q < to->port_count; q++)
                    if (to->ports[q].circuit == circuit && pair++ % EACH == 0)
                        look_at(self, from, &from->ports[p], to, &to->ports[q]);
        }
    }
    assert_true(self->looked_at >= 90);
}

static void feeds_are_answered_without_noise(void **state)
{
    look_at_circuit(*state, OW_ENGINE, OW_TURBO, OW_FEED);
}

static void drains_are_answered_without_noise(void **state)
{
    look_at_circuit(*state, OW_TURBO, OW_ENGINE, OW_DRAIN);
}

static void coolant_is_answered_without_noise(void **state)
{
    look_at_circuit(*state, OW_ENGINE, OW_TURBO, OW_COOLANT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(feeds_are_answered_without_noise),
        cmocka_unit_test(drains_are_answered_without_noise),
        cmocka_unit_test(coolant_is_answered_without_noise),
    };
    return cmocka_run_group_tests(tests, load, unload);
}
