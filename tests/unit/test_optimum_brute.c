/* SPDX-License-Identifier: MIT */
/*
 * The brute force itself, held against nets small enough to be answered by hand, and against the
 * plainest way of all: writing down every tree and keeping the best that passes every limit.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "brute/random.h"

/* Kinds of the hand-made nets: males and females of four sizes, and one that mates itself. */
enum { M1, F1, M2, F2, M3, F3, M4, F4, SELF, KINDS };

typedef struct workbench {
    brute_net net;
    brute_ask ask;
    brute_result result;
} workbench;

static void lay(workbench *b, int source)
{
    memset(b, 0, sizeof *b);
    b->net.kind_count = KINDS;
    for (int kind = M1; kind < SELF; kind += 2)
        b->net.mates[kind][kind + 1] = b->net.mates[kind + 1][kind] = BRUTE_SEALS;
    b->net.mates[SELF][SELF] = BRUTE_SEALS;
    b->ask = brute_ask_plain(source);
}

static brute_part *add(workbench *b, int ends, int k0, int k1, int k2, int k3)
{
    brute_part *part = &b->net.parts[b->net.part_count++];
    part->end_count = ends;
    int kinds[BRUTE_ENDS] = {k0, k1, k2, k3};
    for (int end = 0; end < ends; end++) {
        part->kind[end] = kinds[end];
        part->leg_bore_um[end] = 4000;
    }
    part->orifice_um = BRUTE_NOT_SAID;
    part->length_um = 10000;
    part->rating_kpa = 1000;
    part->has_price = true;
    part->price_cents = 100;
    return part;
}

static brute_part *plug(workbench *b, int kind)
{
    return add(b, 1, kind, 0, 0, 0);
}

static brute_part *adapter(workbench *b, int from, int to)
{
    return add(b, 2, from, to, 0, 0);
}

static void serve(workbench *b, int kind, bool is_to)
{
    brute_port port = {.kind = kind, .is_to = is_to, .is_machine = is_to};
    b->ask.ports[b->ask.port_count++] = port;
}

static void let_turn(workbench *b, int male)
{
    b->net.turns[male][male + 1] = b->net.turns[male + 1][male] = true;
}

static void expect_none(workbench *b)
{
    brute_best(&b->net, &b->ask, &b->result);
    assert_int_equal(b->result.answer, BRUTE_NONE);
}

/* The best has these parts, in this order. */
static void expect(workbench *b, const char *ids)
{
    brute_best(&b->net, &b->ask, &b->result);
    assert_int_equal(b->result.answer, BRUTE_FOUND);
    assert_null(brute_tree_fault(&b->net, &b->ask, &b->result.tree));
    char got[BRUTE_TREE_PARTS + 1] = "";
    for (int i = 0; i < b->result.key.parts; i++)
        got[i] = (char)('0' + b->result.key.ids[i]);
    assert_string_equal(got, ids);
}

static void ports_that_mate_need_no_part(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, M2);
    serve(&b, M1, true);
    expect(&b, "");
}

static void a_chain_is_as_short_as_can_be(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, M2); /* 0 */
    adapter(&b, F2, M3); /* 1 */
    adapter(&b, M4, F3); /* 2, used the other way round */
    adapter(&b, F2, F2); /* 3, of no use */
    serve(&b, F4, true);
    expect(&b, "012");
    adapter(&b, F2, M4); /* 4 */
    expect(&b, "04");
}

static void a_spare_end_takes_a_plug(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F1, F2, 0); /* 0: tee */
    serve(&b, M2, true);
    expect_none(&b); /* the run stays open */
    plug(&b, M1);    /* 1 */
    expect(&b, "01");
}

static void where_no_plug_fits_an_adapter_leads_to_one(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F1, F2, 0); /* 0 */
    adapter(&b, M1, F3);       /* 1 */
    plug(&b, M3);              /* 2 */
    serve(&b, M2, true);
    expect(&b, "012");
}

static void spare_ends_are_not_joined_to_each_other(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 4, M1, F2, SELF, SELF);
    serve(&b, M2, true);
    expect_none(&b);
}

static void a_kept_switch_can_spare_the_plug(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F1, F2, 0); /* 0 */
    serve(&b, M2, true);
    expect_none(&b);
    serve(&b, M1, false);
    expect(&b, "0");
}

static void endless_tees_are_seen_to_lead_nowhere(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F1, F1, 0); /* ever more of the same */
    adapter(&b, M1, F1);
    serve(&b, M2, true);
    expect_none(&b);
}

static void fewer_parts_then_price_then_stick_out_then_ids(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    for (int i = 0; i < 3; i++)
        adapter(&b, M1, M2);
    serve(&b, F2, true);
    expect(&b, "0");
    b.net.parts[2].length_um = 5000;
    expect(&b, "2");
    b.net.parts[1].price_cents = 90;
    expect(&b, "1");
    b.net.parts[1].has_price = false; /* no price is dearer than any */
    b.net.parts[0].price_cents = b.net.parts[2].price_cents = 999999;
    expect(&b, "2");
}

static void stick_out_ends_at_the_hose(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, F2);                 /* 0 */
    adapter(&b, M2, F3)->is_hose = true; /* 1 */
    adapter(&b, M3, F4);                 /* 2 */
    serve(&b, M4, true);
    b.net.parts[1].length_um = 700000;
    b.net.parts[2].length_um = 30000;
    expect(&b, "012");
    assert_int_equal(b.result.key.stick_out_um, 10000);
}

static void a_hose_is_priced_by_its_length(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    brute_part *hose = adapter(&b, M1, M2);
    hose->is_hose = hose->by_metre = true;
    hose->price_cents = 1001;
    b.ask.hose_length_mm = 500;
    serve(&b, F2, true);
    expect(&b, "0");
    assert_int_equal(b.result.key.cents, 501); /* 500.5 rounded */
}

static void least_bore_binds_the_path_only(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F2, F3, 0)->leg_bore_um[2] = 2000; /* 0: a narrow branch */
    plug(&b, M3)->leg_bore_um[0] = BRUTE_NOT_SAID;    /* 1 */
    adapter(&b, M1, F3);                              /* 2 */
    b.ask.least_bore_um = 4000;
    serve(&b, M2, true);
    expect(&b, "01");
    b.ask.ports[0].kind = M3;
    expect(&b, "2");
    b.net.parts[2].leg_bore_um[0] = BRUTE_NOT_SAID;
    expect_none(&b);
}

static void exactly_one_hose_where_flexible(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, F2);                 /* 0 */
    adapter(&b, M1, F3)->is_hose = true; /* 1 */
    adapter(&b, M3, F2)->is_hose = true; /* 2 */
    adapter(&b, M3, F2);                 /* 3 */
    serve(&b, M2, true);
    expect(&b, "0");
    b.ask.flexible = BRUTE_FLEX_YES;
    expect(&b, "13");
    b.ask.flexible = BRUTE_FLEX_NO;
    expect(&b, "0");
    b.ask.without[0] = true;
    expect_none(&b);
}

static void two_machines_are_not_joined_rigidly(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, F2)->is_hose = true; /* 0 */
    add(&b, 3, M2, F3, F3, 0);           /* 1: tee behind the hose */
    add(&b, 3, M1, F4, F4, 0);           /* 2: tee before the hoses */
    adapter(&b, M4, F3)->is_hose = true; /* 3 */
    serve(&b, M3, true);
    serve(&b, M3, true);
    expect(&b, "01");
    b.ask.flexible = BRUTE_FLEX_YES;
    expect(&b, "233");
    b.ask.ports[1].is_machine = false;
    expect(&b, "01");
}

static void a_closing_joint_stands_between_fixed_ports(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, F2); /* 0 */
    adapter(&b, M1, F3); /* 1 */
    adapter(&b, M3, F2); /* 2 */
    serve(&b, M2, true);
    b.ask.closing = true;
    expect_none(&b);
    let_turn(&b, M3);
    expect(&b, "12");
    b.ask.ports[0].is_to = false; /* a kept port is not fixed */
    expect(&b, "0");
}

static void one_turning_joint_frees_one_of_two_ports_only(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F2, F2, 0); /* 0 */
    adapter(&b, M2, F3);       /* 1 */
    serve(&b, M2, true);
    serve(&b, M2, true);
    let_turn(&b, M1); /* the tee turns on the source, and both ports with it */
    expect(&b, "0");
    b.ask.closing = true;
    expect_none(&b);
    let_turn(&b, M2);
    expect(&b, "0");
}

static void restrictors_are_required_or_forbidden_on_the_path(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, F2)->price_cents = 200;    /* 0 */
    adapter(&b, M1, F2)->is_restrictor = true; /* 1 */
    b.net.parts[1].orifice_um = 800;
    serve(&b, M2, true);
    expect(&b, "1");
    b.ask.restrictor = BRUTE_FORBIDDEN;
    expect(&b, "0");
    b.ask.restrictor = BRUTE_REQUIRED;
    expect(&b, "1");
    b.ask.orifice_low_um = 900;
    expect_none(&b);
    b.ask.restrictor = BRUTE_FREE;
    expect(&b, "0");
}

static void a_kept_port_stands_behind_neither_hose_nor_restrictor(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    adapter(&b, M1, F2)->is_hose = true;       /* 0 */
    adapter(&b, M1, F2)->is_restrictor = true; /* 1 */
    serve(&b, M2, false);
    expect_none(&b);
    b.ask.remote_switch = true;
    expect(&b, "0");
    b.ask.ports[0].is_to = true;
    b.ask.remote_switch = false;
    expect(&b, "0");
}

static void what_is_not_said_does_not_pass_and_plugs_count_too(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F2, F3, 0);                 /* 0 */
    plug(&b, M3)->rating_kpa = BRUTE_NOT_SAID; /* 1 */
    serve(&b, M2, true);
    expect(&b, "01");
    b.ask.rating_kpa = 600;
    expect_none(&b);
    b.net.parts[1].rating_kpa = 600;
    expect(&b, "01");
    b.ask.fluid = 2;
    expect_none(&b);
    b.net.parts[0].fluids = b.net.parts[1].fluids = 3;
    expect(&b, "01");
    b.ask.has_temperature = true;
    expect_none(&b);
}

static void a_made_part_is_used_once_only(void **state)
{
    (void)state;
    workbench b;
    lay(&b, F1);
    add(&b, 3, M1, F2, F2, 0); /* 0 */
    plug(&b, M2);              /* 1: the made part */
    plug(&b, M1);
    serve(&b, M2, true);
    b.ask.forced = 1;
    b.ask.forced_once = true;
    expect(&b, "01");
    b.net.parts[0].end_count = 4;
    b.net.parts[0].kind[3] = F2; /* two spare ends, one made plug */
    expect_none(&b);
    b.ask.forced_once = false;
    expect(&b, "011");
}

/* --- against every tree there is -------------------------------------------------------------- */

enum { TREES_LOOKED_AT = 20000 };

typedef struct keeping {
    const brute_case *c;
    bool found;
    brute_key best;
    long looked;
} keeping;

static bool keep_best(void *user, const brute_tree *tree)
{
    keeping *k = user;
    brute_key key;
    if (++k->looked > TREES_LOOKED_AT)
        return false;
    if (brute_tree_fault(&k->c->net, &k->c->ask, tree) != NULL)
        return true;
    brute_tree_key(&k->c->net, &k->c->ask, tree, &key);
    if (!k->found || brute_key_compare(&key, &k->best) < 0)
        k->best = key;
    k->found = true;
    return true;
}

static void it_agrees_with_writing_down_every_tree(void **state)
{
    (void)state;
    enum { MOST = 4 };
    static brute_case c;
    int agreed_found = 0, agreed_none = 0;
    for (int seed = 0; seed < 600; seed++) {
        brute_random_case((uint64_t)seed, 1 + seed % 3, BRUTE_LIMIT_COUNT, &c);
        bool is_found = c.result.answer == BRUTE_FOUND;
        if (c.result.answer == BRUTE_TOO_LARGE || (is_found && c.result.key.parts > MOST))
            continue;
        keeping k = {&c, false, {0}, 0};
        brute_every_tree(&c.net, &c.ask, is_found ? c.result.key.parts : MOST, keep_best, &k);
        if (k.looked > TREES_LOOKED_AT)
            continue;
        assert_int_equal(k.found, is_found);
        if (is_found)
            assert_int_equal(brute_key_compare(&k.best, &c.result.key), 0);
        agreed_found += is_found;
        agreed_none += !is_found;
    }
    printf("every tree: %d found alike, %d none alike\n", agreed_found, agreed_none);
    assert_true(agreed_found >= 200 && agreed_none >= 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ports_that_mate_need_no_part),
        cmocka_unit_test(a_chain_is_as_short_as_can_be),
        cmocka_unit_test(a_spare_end_takes_a_plug),
        cmocka_unit_test(where_no_plug_fits_an_adapter_leads_to_one),
        cmocka_unit_test(spare_ends_are_not_joined_to_each_other),
        cmocka_unit_test(a_kept_switch_can_spare_the_plug),
        cmocka_unit_test(endless_tees_are_seen_to_lead_nowhere),
        cmocka_unit_test(fewer_parts_then_price_then_stick_out_then_ids),
        cmocka_unit_test(stick_out_ends_at_the_hose),
        cmocka_unit_test(a_hose_is_priced_by_its_length),
        cmocka_unit_test(least_bore_binds_the_path_only),
        cmocka_unit_test(exactly_one_hose_where_flexible),
        cmocka_unit_test(two_machines_are_not_joined_rigidly),
        cmocka_unit_test(a_closing_joint_stands_between_fixed_ports),
        cmocka_unit_test(one_turning_joint_frees_one_of_two_ports_only),
        cmocka_unit_test(restrictors_are_required_or_forbidden_on_the_path),
        cmocka_unit_test(a_kept_port_stands_behind_neither_hose_nor_restrictor),
        cmocka_unit_test(what_is_not_said_does_not_pass_and_plugs_count_too),
        cmocka_unit_test(a_made_part_is_used_once_only),
        cmocka_unit_test(it_agrees_with_writing_down_every_tree),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
