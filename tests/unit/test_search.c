/* SPDX-License-Identifier: MIT */
/*
 * What must hold of the search on any net: the answer is what its own tree says, and does not change where
 * nothing that matters is changed. Whether it is the optimum is proved against brute force in
 * test_optimum_*.c.
 */
#include "support/testing.h"

#include <string.h>

#include "search/resolve.h"
#include "support/random_net.h"

static const ow_context CONTEXT = OW_CONTEXT_INIT;
#define SEEDS 400

/* The best layout of a case; nodes NULL if there is none. */
static ow_tree best_of(const ow_random_case *made)
{
    ow_net_index *net = NULL;
    ow_resolve *resolve = NULL;
    ow_tree tree = {.nodes = NULL};
    assert_int_equal(ow_net_index_build(&CONTEXT, &made->net, &net), OW_OK);
    assert_int_equal(ow_resolve_new(&CONTEXT, net, &made->ask, &resolve), OW_OK);
    ow_status status = ow_resolve_next(resolve, &tree);
    assert_true(status == OW_OK || status == OW_NONE);
    assert_true((status == OW_OK) == (tree.nodes != NULL));
    ow_resolve_free(resolve);
    ow_net_index_free(net);
    return tree;
}

static void let_go(ow_tree *tree)
{
    ow_release(&CONTEXT, tree->nodes);
    tree->nodes = NULL;
}

static void make_case(uint64_t seed, ow_random_case *made)
{
    ow_random random = ow_random_new(seed);
    ow_random_net(&random, 6 + seed % 14, 20 + seed % 60, made);
    ow_random_ask(&random, 1 + seed % 4, made);
}

static int compare_keys(const ow_key *a, const ow_key *b)
{
    const int64_t left[] = {a->parts, a->unpriced, a->cents, a->stick_out_um};
    const int64_t right[] = {b->parts, b->unpriced, b->cents, b->stick_out_um};
    for (size_t i = 0; i < 4; i++)
        if (left[i] != right[i])
            return left[i] < right[i] ? -1 : 1;
    return 0;
}

/* Keys first, then ids in walking order. None comes behind all. */
static int compare_answers(const ow_random_case *made_a, const ow_tree *a, const ow_random_case *made_b,
                           const ow_tree *b)
{
    if (a->nodes == NULL || b->nodes == NULL)
        return (a->nodes == NULL) - (b->nodes == NULL);
    int order = compare_keys(&a->key, &b->key);
    size_t at = 0, other = 0;
    while (order == 0 && at < a->node_count && other < b->node_count) {
        if (a->nodes[at].part == OW_TREE_NONE) {
            at++;
        } else if (b->nodes[other].part == OW_TREE_NONE) {
            other++;
        } else {
            uint32_t left = made_a->parts[a->nodes[at++].part].id;
            uint32_t right = made_b->parts[b->nodes[other++].part].id;
            order = left < right ? -1 : left > right;
        }
    }
    return order;
}

/* ---- the tree says what the key says -------------------------------------------------------- */

static const ow_net_mate *pair_of(const ow_random_case *made, uint32_t a, uint32_t b)
{
    for (size_t i = 0; i < made->net.mate_count; i++)
        if ((made->mates[i].a == a && made->mates[i].b == b) ||
            (made->mates[i].a == b && made->mates[i].b == a))
            return &made->mates[i];
    return NULL;
}

static uint32_t parent_kind(const ow_random_case *made, const ow_tree *tree, size_t node)
{
    const ow_tree_node *at = &tree->nodes[node], *parent = &tree->nodes[at->parent];
    return parent->part == OW_TREE_NONE ? made->ask.source : made->parts[parent->part].kinds[at->parent_end];
}

static void assert_joints(const ow_random_case *made, const ow_tree *tree)
{
    size_t ports_seen = 0;
    for (size_t node = 1; node < tree->node_count; node++) {
        const ow_tree_node *at = &tree->nodes[node];
        assert_true(at->parent < node);
        assert_int_equal(tree->nodes[at->parent].exits[at->parent_end], node);
        bool port = at->part == OW_TREE_NONE;
        uint32_t kind = port ? made->ports[at->port].kind : made->parts[at->part].kinds[at->enter];
        const ow_net_mate *mate = pair_of(made, kind, parent_kind(made, tree, node));
        assert_true(mate != NULL && (!mate->tolerated || made->ask.limits.tolerate));
        if (port)
            ports_seen |= (size_t)1 << at->port;
        for (size_t end = 0; !port && end < made->parts[at->part].end_count; end++)
            assert_true((end == at->enter) == (at->exits[end] == OW_TREE_NONE));
    }
    assert_int_equal(ports_seen, ((size_t)1 << made->ask.port_count) - 1);
}

/* Parts on the path to the first served port, up to its first hose. */
static int64_t stick_out(const ow_random_case *made, const ow_tree *tree)
{
    int64_t sum = 0;
    size_t node = 1;
    while (tree->nodes[node].port != 0) /* the first port of a random ask is a served one */
        node++;
    for (node = tree->nodes[node].parent; node != 0; node = tree->nodes[node].parent) {
        const ow_net_part *part = &made->parts[tree->nodes[node].part];
        if (part->hose)
            sum = 0; /* what lies behind this hose does not count */
        else if (part->length_um != OW_NET_NOT_SAID)
            sum += part->length_um;
    }
    return sum;
}

static ow_key key_of(const ow_random_case *made, const ow_tree *tree)
{
    ow_key key = {0, 0, 0, stick_out(made, tree)};
    for (size_t node = 1; node < tree->node_count; node++) {
        if (tree->nodes[node].part == OW_TREE_NONE)
            continue;
        const ow_net_part *part = &made->parts[tree->nodes[node].part];
        key.parts++;
        if (part->price_cents == OW_NET_NOT_SAID)
            key.unpriced++;
        else if (part->by_metre)
            key.cents += (part->price_cents * made->ask.hose_length_um + 500000) / 1000000;
        else
            key.cents += part->price_cents;
    }
    return key;
}

static void the_key_is_that_of_the_tree(void **state)
{
    (void)state;
    static ow_random_case made;
    size_t found = 0;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        make_case(seed, &made);
        ow_tree tree = best_of(&made);
        if (tree.nodes == NULL)
            continue;
        found++;
        assert_joints(&made, &tree);
        ow_key key = key_of(&made, &tree);
        assert_int_equal(compare_keys(&key, &tree.key), 0);
        let_go(&tree);
    }
    assert_true(found > SEEDS / 3);
}

static void joints_are_parts_and_ports(void **state)
{
    (void)state;
    static ow_random_case made;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        make_case(seed, &made);
        ow_tree tree = best_of(&made);
        if (tree.nodes != NULL) /* each node but the source hangs by one joint */
            assert_int_equal(tree.node_count - 1, tree.key.parts + made.ask.port_count);
        let_go(&tree);
    }
}

/* ---- nothing that does not matter matters --------------------------------------------------- */

typedef void shuffle(ow_random *random, ow_random_case *made);

static void assert_unchanged(shuffle *by, bool ids_too)
{
    static ow_random_case before, after;
    size_t found = 0;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        make_case(seed, &before);
        make_case(seed, &after);
        ow_random random = ow_random_new(seed + 1000);
        by(&random, &after);
        ow_tree first = best_of(&before), second = best_of(&after);
        assert_true((first.nodes == NULL) == (second.nodes == NULL));
        if (first.nodes != NULL) {
            found++;
            assert_int_equal(compare_keys(&first.key, &second.key), 0);
            if (ids_too)
                assert_int_equal(compare_answers(&before, &first, &after, &second), 0);
        }
        let_go(&first);
        let_go(&second);
    }
    assert_true(found > SEEDS / 3);
}

static void shuffled_parts_change_nothing(void **state)
{
    (void)state;
    assert_unchanged(ow_random_shuffle_parts, true);
}
static void shuffled_pairs_change_nothing(void **state)
{
    (void)state;
    assert_unchanged(ow_random_shuffle_mates, true);
}
static void renumbered_kinds_change_nothing(void **state)
{
    (void)state;
    assert_unchanged(ow_random_renumber_kinds, true);
}
static void shuffled_ports_change_nothing(void **state)
{
    (void)state;
    assert_unchanged(ow_random_shuffle_ports, true);
}
static void shuffled_ends_change_only_the_walk(void **state)
{
    (void)state;
    assert_unchanged(ow_random_shuffle_ends, false);
}

static void a_further_part_never_worsens_the_answer(void **state)
{
    (void)state;
    static ow_random_case before, after;
    size_t bettered = 0;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        make_case(seed, &before);
        make_case(seed, &after);
        ow_random random = ow_random_new(seed + 2000);
        for (int i = 0; i < 5; i++)
            ow_random_add_part(&random, &after);
        ow_tree first = best_of(&before), second = best_of(&after);
        int order = compare_answers(&after, &second, &before, &first);
        assert_true(order <= 0);
        bettered += order < 0;
        let_go(&first);
        let_go(&second);
    }
    assert_true(bettered > 20); /* else nothing was tried */
}

static bool uses(const ow_tree *tree, size_t part)
{
    for (size_t node = 0; tree->nodes != NULL && node < tree->node_count; node++)
        if (tree->nodes[node].part == part)
            return true;
    return false;
}

static void a_part_that_is_not_used_can_go(void **state)
{
    (void)state;
    static ow_random_case before, after;
    size_t tried = 0;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        make_case(seed, &before);
        make_case(seed, &after);
        ow_tree first = best_of(&before);
        ow_random random = ow_random_new(seed + 3000);
        size_t gone = ow_random_below(&random, (uint32_t)before.net.part_count);
        if (!uses(&first, gone)) {
            ow_random_remove_part(&after, gone);
            ow_tree second = best_of(&after);
            assert_int_equal(compare_answers(&before, &first, &after, &second), 0);
            let_go(&second);
            tried += first.nodes != NULL;
        }
        let_go(&first);
    }
    assert_true(tried > SEEDS / 4);
}

static void a_limit_never_betters_the_answer(void **state)
{
    (void)state;
    static ow_random_case with, without;
    size_t worsened = 0;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        make_case(seed, &with);
        make_case(seed, &without);
        bool tolerate = without.ask.limits.tolerate, remote = without.ask.limits.remote_switch;
        without.ask.limits = (ow_search_limits)OW_SEARCH_LIMITS_INIT;
        without.ask.limits.tolerate = tolerate;
        without.ask.limits.remote_switch = remote;
        ow_tree first = best_of(&with), second = best_of(&without);
        int order = compare_answers(&without, &second, &with, &first);
        assert_true(order <= 0);
        worsened += order < 0;
        let_go(&first);
        let_go(&second);
    }
    assert_true(worsened > SEEDS / 10);
}

static bool has_clamped_end(const ow_random_case *made, const ow_net_part *part)
{
    for (size_t end = 0; end < part->end_count; end++)
        if (made->kinds[part->kinds[end]].clamped)
            return true;
    return false;
}

static bool is_given(const ow_random_case *made, size_t kind)
{
    bool given = made->ask.source == kind;
    for (size_t port = 0; port < made->ask.port_count; port++)
        given = given || made->ports[port].kind == kind;
    return given;
}

/* Where no given port is held by a clamp it is the same as if the shop had no part with such an end. */
static void without_clamps_is_without_the_parts_that_have_them(void **state)
{
    (void)state;
    size_t changed = 0;
    for (uint64_t seed = 1; seed <= SEEDS; seed++) {
        static ow_random_case asked, poorer;
        make_case(seed, &asked);
        make_case(seed, &poorer);
        for (size_t kind = 0; kind < asked.net.kind_count; kind++)
            asked.kinds[kind].clamped = poorer.kinds[kind].clamped =
                kind % 5 == seed % 5 && !is_given(&asked, kind);
        ow_tree free_of_it = best_of(&asked);
        asked.ask.limits.no_clamp = true;
        for (size_t part = poorer.net.part_count; part-- > 0;)
            if (has_clamped_end(&poorer, &poorer.parts[part]))
                ow_random_remove_part(&poorer, part);
        ow_tree limited = best_of(&asked), removed = best_of(&poorer);
        assert_int_equal(compare_answers(&asked, &limited, &poorer, &removed), 0);
        changed += compare_answers(&asked, &limited, &asked, &free_of_it) != 0;
        let_go(&free_of_it);
        let_go(&limited);
        let_go(&removed);
    }
    assert_true(changed > SEEDS / 20);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_key_is_that_of_the_tree),
        cmocka_unit_test(joints_are_parts_and_ports),
        cmocka_unit_test(shuffled_parts_change_nothing),
        cmocka_unit_test(shuffled_pairs_change_nothing),
        cmocka_unit_test(renumbered_kinds_change_nothing),
        cmocka_unit_test(shuffled_ports_change_nothing),
        cmocka_unit_test(shuffled_ends_change_only_the_walk),
        cmocka_unit_test(a_further_part_never_worsens_the_answer),
        cmocka_unit_test(a_part_that_is_not_used_can_go),
        cmocka_unit_test(a_limit_never_betters_the_answer),
        cmocka_unit_test(without_clamps_is_without_the_parts_that_have_them),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
