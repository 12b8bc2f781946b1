/* SPDX-License-Identifier: MIT */
/*
 * The search held against the brute force over small random catalogues: the whole key with its ids,
 * and "none", and that what is called hopeless after a quick look is. Every answer goes through the brute
 * force's own validator. What is proved is counted here.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "brute/convert.h"

typedef struct seeds {
    int ports;
    brute_limit limit; /* the one that is known to change the answer; COUNT = none in particular */
    int seed[120];
    int count;
} seeds;

static const seeds SEEDS[] = {
#include "brute/cases.h"
};

typedef struct tally {
    long cases, found, by_ports[BRUTE_PORTS + 1], too_large, changed[BRUTE_LIMIT_COUNT];
    long differ, hopeless[2]; /* of one port, of several */
} tally;

static void say(const seeds *row, int seed, const char *what)
{
    printf("ports %d, limit %s, seed %d: %s\n", row->ports,
           row->limit == BRUTE_LIMIT_COUNT ? "COUNT" : brute_limit_name(row->limit), seed, what);
}

/* NULL, or in what the search's best is not the brute force's. */
static const char *compare_best(const brute_case *c, const brute_converted *in, const ow_tree *tree)
{
    brute_tree back;
    brute_key key;
    if (tree->node_count != 1u + tree->key.parts + (size_t)c->ask.port_count)
        return "joints are not parts + ports";
    brute_tree_back(in, tree, &back);
    const char *fault = brute_tree_fault(&c->net, &c->ask, &back);
    if (fault != NULL)
        return fault;
    brute_tree_key(&c->net, &c->ask, &back, &key);
    if (!brute_key_is(&key, &tree->key))
        return "the key is not that of the tree";
    int order = brute_key_compare(&key, &c->result.key);
    return order == 0 ? NULL : order < 0 ? "the brute force is worse" : "the search is worse";
}

static const char *compare(const brute_case *c, const brute_converted *in, ow_resolve *resolve)
{
    ow_tree tree;
    size_t parts;
    bool capped = false;
    ow_status best = ow_resolve_best_parts(resolve, &parts, &capped);
    ow_status status = ow_resolve_next(resolve, &tree);
    if (best != status)
        return "best parts and next disagree";
    if (c->result.answer == BRUTE_NONE)
        return status == OW_NONE ? NULL : "there is none";
    if (status != OW_OK)
        return "none found";
    const char *fault = compare_best(c, in, &tree);
    if (fault == NULL && parts != tree.key.parts)
        fault = "best parts are not the tree's";
    ow_release(NULL, tree.nodes);
    return fault;
}

static void run_case(const seeds *row, int seed, tally *t)
{
    static brute_case c;
    static brute_converted in;
    const ow_context context = OW_CONTEXT_INIT;
    ow_net_index *net = NULL;
    ow_resolve *resolve = NULL;
    brute_random_case((uint64_t)seed, row->ports, row->limit, &c);
    if (c.result.answer == BRUTE_TOO_LARGE) {
        t->too_large++;
        return;
    }
    brute_dice dice = brute_dice_new((uint64_t)seed + 1);
    brute_convert(&c.net, &c.ask, &dice, &in);
    assert_int_equal(ow_net_index_build(&context, &in.net, &net), OW_OK);
    assert_int_equal(ow_resolve_new(&context, net, &in.ask, &resolve), OW_OK);
    const char *fault = compare(&c, &in, resolve);
    bool hopeless = false;
    assert_int_equal(ow_resolve_hopeless(&context, net, &in.ask, &hopeless), OW_OK);
    if (hopeless && c.result.answer == BRUTE_FOUND)
        fault = "called hopeless";
    t->hopeless[row->ports > 1] += hopeless;
    ow_resolve_free(resolve);
    ow_net_index_free(net);
    if (fault != NULL) {
        say(row, seed, fault);
        t->differ++;
    }
    t->cases++;
    t->by_ports[row->ports]++;
    t->found += c.result.answer == BRUTE_FOUND;
    if (row->limit != BRUTE_LIMIT_COUNT && c.changes)
        t->changed[row->limit]++;
}

/* Under a slow tool every `step`-th case only, and nothing is claimed about how many. */
static long step_of_run(void)
{
    return getenv("OW_SLOW_TOOL") == NULL ? 1 : 40;
}

static void the_search_finds_what_the_brute_force_finds(void **state)
{
    (void)state;
    tally t;
    long step = step_of_run(), at = 0;
    memset(&t, 0, sizeof t);
    for (size_t row = 0; row < sizeof SEEDS / sizeof SEEDS[0]; row++)
        for (int i = 0; i < SEEDS[row].count; i++)
            if (at++ % step == 0)
                run_case(&SEEDS[row], SEEDS[row].seed[i], &t);
    printf("cases %ld, solvable %ld, by ports 1 %ld 2 %ld 3 %ld 4 %ld 5 %ld 6 %ld, too large %ld\n", t.cases,
           t.found, t.by_ports[1], t.by_ports[2], t.by_ports[3], t.by_ports[4], t.by_ports[5], t.by_ports[6],
           t.too_large);
    printf("hopeless at a quick look: of one port %ld, of several %ld\n", t.hopeless[0], t.hopeless[1]);
    for (int limit = 0; limit < BRUTE_LIMIT_COUNT; limit++)
        printf("%s changes %ld answers\n", brute_limit_words((brute_limit)limit), t.changed[limit]);
    assert_int_equal(t.differ, 0);
    if (step > 1)
        return;
    assert_true(t.cases >= 2000);
    assert_true(t.found * 100 >= t.cases * 40);
    assert_true(t.hopeless[0] >= 50 && t.hopeless[1] >= 50);
    for (int ports = 1; ports <= 4; ports++)
        assert_true(t.by_ports[ports] >= 400);
    for (int limit = 0; limit < BRUTE_LIMIT_COUNT; limit++)
        assert_true(t.changed[limit] >= 100);
    assert_int_equal(t.too_large, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_search_finds_what_the_brute_force_finds),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
