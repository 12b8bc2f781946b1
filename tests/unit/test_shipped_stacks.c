/* SPDX-License-Identifier: MIT */
/* The search over the catalogue that ships, held against the code that re-walks layouts and shares nothing
 * with it. */
#include "support/testing.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "layout/from_search.h"
#include "oilway/ask.h"
#include "oilway/check.h"
#include "oilway/joint.h"
#include "support/diagnostics.h"
#include "support/shipped.h"

static void what_mates_is_what_the_joint_table_says(void **state)
{
    ow_shipped *self = *state;
    size_t count = ow_net_kind_count(self->net), pairs = 0;
    assert_true(count > 300);
    for (size_t a = 0; a < count; a++)
        for (size_t b = a; b < count; b++) {
            const ow_end *left = ow_net_kind_at(self->net, a), *right = ow_net_kind_at(self->net, b);
            const ow_joint_rule *rule = ow_joint_find(left, right);
            bool tolerated = false, turns = false;
            bool pair = ow_net_pair(left, right, &tolerated, &turns);
            assert_int_equal(pair, rule != NULL);
            bool linked = false;
            const ow_net_index *index = self->net->index;
            for (size_t i = index->link_offset[a]; i < index->link_offset[a + 1]; i++)
                linked = linked || index->links[i].kind == b;
            assert_int_equal(linked, rule != NULL);
            pairs += pair;
            assert_true(rule == NULL || tolerated == (rule->verdict == OW_TOLERATED));
            assert_true(rule == NULL || turns == ow_joint_turns(left, right));
        }
    assert_true(pairs > count / 2);
}

/* Counts of what the asks came to. */
typedef struct tally {
    size_t found, none;
} tally;

static void assert_sound(ow_shipped *self, const ow_layout *layout)
{
    ow_findings findings = ow_findings_new(&self->context);
    assert_int_equal(ow_check_layout(&self->context, self->catalog, layout, &findings, NULL), OW_OK);
    for (size_t i = 0; i < findings.count; i++)
        if (findings.items[i].severity == OW_ERROR)
            fail_msg("%s to %s: %s: %s", layout->givens[0].name, layout->givens[1].name,
                     findings.items[i].where, findings.items[i].message);
    ow_findings_done(&findings);
    size_t served = layout->given_count - 1;
    assert_int_equal(ow_layout_joint_count(layout), ow_layout_part_count(layout) + served);
}

static void try_ask(ow_shipped *self, const ow_ask_words *words, tally *sum)
{
    ow_ask_set set;
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, words, &set), OW_OK);
    for (size_t item = 0; item < set.count; item++) {
        ow_search *search = NULL;
        assert_int_equal(ow_search_new(&self->context, self->net, &set.items[item].ask, &search), OW_OK);
        ow_layout layout;
        size_t listed = 0, parts = 0;
        while (listed < 3 && ow_search_next(search, &layout) == OW_OK) {
            assert_sound(self, &layout);
            assert_true(ow_layout_part_count(&layout) >= parts);
            parts = ow_layout_part_count(&layout);
            ow_layout_free(&layout);
            listed++;
        }
        *(listed > 0 ? &sum->found : &sum->none) += 1;
        ow_search_free(search);
    }
    ow_ask_set_done(&set);
}

/* Every engine against every turbo, from each source port to each inlet of the circuit. */
static void try_circuit(ow_shipped *self, const char *circuit, ow_circuit of, const char *keep, tally *sum)
{
    for (size_t i = 0; i < ow_catalog_machine_count(self->catalog); i++)
        for (size_t j = 0; j < ow_catalog_machine_count(self->catalog); j++) {
            const ow_machine *engine = ow_catalog_machine_at(self->catalog, i);
            const ow_machine *turbo = ow_catalog_machine_at(self->catalog, j);
            if (engine->kind != OW_ENGINE || turbo->kind != OW_TURBO)
                continue;
            for (size_t p = 0; p < engine->port_count; p++)
                for (size_t q = 0; q < turbo->port_count; q++) {
                    if (engine->ports[p].circuit != of || turbo->ports[q].circuit != of)
                        continue;
                    char from[200], to[200];
                    bool drain = of == OW_DRAIN; /* oil leaves the turbo there */
                    (void)snprintf(from, sizeof from, "%s:%s", engine->id, engine->ports[p].name);
                    (void)snprintf(to, sizeof to, "%s:%s", turbo->id, turbo->ports[q].name);
                    ow_ask_words words = {.from = drain ? to : from,
                                          .to = {drain ? from : to},
                                          .to_count = 1,
                                          .circuit = circuit};
                    if (keep != NULL)
                        words.keep[words.keep_count++] = keep;
                    try_ask(self, &words, sum);
                }
        }
}

static void every_feed_found_is_found_sound_by_the_check(void **state)
{
    ow_shipped *self = *state;
    tally sum = {0, 0};
    try_circuit(self, "feed", OW_FEED, NULL, &sum);
    assert_true(sum.found >= 150);
    print_message("feeds: %zu found, %zu not\n", sum.found, sum.none);
}

static void every_feed_with_a_kept_switch_is_found_sound(void **state)
{
    ow_shipped *self = *state;
    tally sum = {0, 0};
    try_circuit(self, "feed", OW_FEED, "sw-2", &sum);
    assert_true(sum.found >= 150);
    print_message("feeds with a switch: %zu found, %zu not\n", sum.found, sum.none);
}

static void every_drain_and_coolant_line_found_is_found_sound(void **state)
{
    ow_shipped *self = *state;
    tally sum = {0, 0};
    try_circuit(self, "drain", OW_DRAIN, NULL, &sum);
    try_circuit(self, "coolant", OW_COOLANT, NULL, &sum);
    assert_true(sum.found >= 100);
    print_message("drains and coolant lines: %zu found, %zu not\n", sum.found, sum.none);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_mates_is_what_the_joint_table_says),
        cmocka_unit_test(every_feed_found_is_found_sound_by_the_check),
        cmocka_unit_test(every_feed_with_a_kept_switch_is_found_sound),
        cmocka_unit_test(every_drain_and_coolant_line_found_is_found_sound),
    };
    return cmocka_run_group_tests(tests, ow_shipped_load, ow_shipped_unload);
}
