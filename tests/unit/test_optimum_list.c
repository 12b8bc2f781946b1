/* SPDX-License-Identifier: MIT */
/*
 * What the search tells beside the best: the list of really different layouts against writing down every
 * tree, the made part against trying every pair of ends, a forced part against a re-solve that forces it.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "brute/convert.h"

static const ow_context CONTEXT = OW_CONTEXT_INIT;

/* Under a slow tool few seeds only, and nothing is claimed about how many. */
static int seeds_of_run(int seeds)
{
    return getenv("OW_SLOW_TOOL") == NULL ? seeds : seeds / 30;
}

static bool full_run(void)
{
    return getenv("OW_SLOW_TOOL") == NULL;
}

typedef struct resolved {
    brute_converted in;
    ow_net_index *net;
    ow_resolve *resolve;
} resolved;

static void resolve(const brute_case *c, uint64_t seed, size_t parts_above, resolved *r)
{
    brute_dice dice = brute_dice_new(seed + 1);
    r->net = NULL;
    r->resolve = NULL;
    brute_convert(&c->net, &c->ask, &dice, &r->in);
    r->in.ask.parts_above = parts_above;
    r->in.ask.looked_most = 1000000;
    assert_int_equal(ow_net_index_build(&CONTEXT, &r->in.net, &r->net), OW_OK);
    assert_int_equal(ow_resolve_new(&CONTEXT, r->net, &r->in.ask, &r->resolve), OW_OK);
}

static void resolved_free(resolved *r)
{
    ow_resolve_free(r->resolve);
    ow_net_index_free(r->net);
}

/* --- the list --------------------------------------------------------------------------------- */

enum { TREES_KEPT = 4000, TREES_LOOKED_AT = 60000 };

/* A layout, and its bill: shapes on paths, ascending. */
typedef struct listed {
    brute_key key;
    int shapes[BRUTE_TREE_PARTS];
    int shape_count;
} listed;

typedef struct listing {
    const brute_case *c;
    int shape_of[BRUTE_PARTS];
    listed all[TREES_KEPT];
    int count;
    long looked;
} listing;

/* The multiset of kinds of ends, with hose and restrictor. */
static bool same_shape(const brute_part *a, const brute_part *b)
{
    int uses[BRUTE_KINDS] = {0};
    for (int end = 0; end < a->end_count; end++)
        uses[a->kind[end]]++;
    for (int end = 0; end < b->end_count; end++)
        uses[b->kind[end]]--;
    for (int kind = 0; kind < BRUTE_KINDS; kind++)
        if (uses[kind] != 0)
            return false;
    return a->is_hose == b->is_hose && a->is_restrictor == b->is_restrictor;
}

static void name_shapes(listing *l)
{
    const brute_net *net = &l->c->net;
    for (int i = 0; i < net->part_count; i++)
        for (l->shape_of[i] = 0; !same_shape(&net->parts[i], &net->parts[l->shape_of[i]]);)
            l->shape_of[i]++;
}

static bool note_tree(void *user, const brute_tree *tree)
{
    listing *l = user;
    if (++l->looked > TREES_LOOKED_AT || l->count == TREES_KEPT) {
        l->looked = TREES_LOOKED_AT + 1;
        return false;
    }
    if (brute_tree_fault(&l->c->net, &l->c->ask, tree) != NULL)
        return true;
    listed *entry = &l->all[l->count++];
    int parts[BRUTE_TREE_PARTS];
    brute_tree_key(&l->c->net, &l->c->ask, tree, &entry->key);
    entry->shape_count = brute_tree_path_parts(tree, parts);
    for (int i = 0; i < entry->shape_count; i++) {
        int place = i, shape = l->shape_of[parts[i]];
        for (; place > 0 && entry->shapes[place - 1] > shape; place--)
            entry->shapes[place] = entry->shapes[place - 1];
        entry->shapes[place] = shape;
    }
    return true;
}

static int listed_order(const void *left, const void *right)
{
    const listed *a = left, *b = right;
    int order = brute_key_compare(&a->key, &b->key);
    return order != 0 ? order : a->shape_count - b->shape_count;
}

static bool bill_contains(const listed *large, const listed *small)
{
    int at = 0;
    for (int i = 0; i < small->shape_count; i++, at++) {
        while (at < large->shape_count && large->shapes[at] < small->shapes[i])
            at++;
        if (at == large->shape_count || large->shapes[at] != small->shapes[i])
            return false;
    }
    return true;
}

/* Keeps the really different ones, in order. */
static void thin_out(listing *l)
{
    int kept = 0;
    qsort(l->all, (size_t)l->count, sizeof l->all[0], listed_order);
    for (int i = 0; i < l->count; i++) {
        bool is_new = true;
        for (int k = 0; k < kept && is_new; k++)
            is_new = !bill_contains(&l->all[i], &l->all[k]);
        if (is_new)
            l->all[kept++] = l->all[i];
    }
    l->count = kept;
}

static void compare_list(const listing *l, resolved *r)
{
    for (int i = 0; i < l->count; i++) {
        ow_tree tree;
        brute_tree back;
        brute_key key;
        assert_int_equal(ow_resolve_next(r->resolve, &tree), OW_OK);
        brute_tree_back(&r->in, &tree, &back);
        assert_null(brute_tree_fault(&l->c->net, &l->c->ask, &back));
        brute_tree_key(&l->c->net, &l->c->ask, &back, &key);
        assert_true(brute_key_is(&key, &tree.key));
        ow_release(&CONTEXT, tree.nodes);
        assert_int_equal(brute_key_compare(&key, &l->all[i].key), 0);
    }
    ow_tree further;
    assert_int_equal(ow_resolve_next(r->resolve, &further), OW_NONE);
    ow_list_end end = ow_resolve_end(r->resolve);
    assert_true(end == OW_LIST_ALL || end == OW_LIST_PARTS_ABOVE);
}

static void the_list_is_every_really_different_tree_in_order(void **state)
{
    (void)state;
    enum { ABOVE = 2, MOST = 6 };
    static brute_case c;
    static listing l;
    static resolved r;
    long lists = 0, entries = 0, longest = 0;
    for (int seed = 0; seed < seeds_of_run(1500); seed++) {
        brute_random_case((uint64_t)seed, 1 + seed % 3, BRUTE_LIMIT_COUNT, &c);
        if (c.result.answer != BRUTE_FOUND || c.result.key.parts + ABOVE > MOST)
            continue;
        l.c = &c;
        l.count = 0;
        l.looked = 0;
        name_shapes(&l);
        brute_every_tree(&c.net, &c.ask, c.result.key.parts + ABOVE, note_tree, &l);
        if (l.looked > TREES_LOOKED_AT)
            continue;
        thin_out(&l);
        resolve(&c, (uint64_t)seed, ABOVE, &r);
        compare_list(&l, &r);
        resolved_free(&r);
        lists++;
        entries += l.count;
        longest = l.count > longest ? l.count : longest;
    }
    printf("%ld lists, %ld layouts on them, longest %ld\n", lists, entries, longest);
    assert_true(!full_run() || (lists >= 300 && entries >= 2 * lists && longest >= 8));
}

/* --- the made part ---------------------------------------------------------------------------- */

/* Port and source get kinds of their own, so that each pair of ends can be tried by itself. */
static void set_apart(brute_net *net, int *kind)
{
    int own = net->kind_count++;
    for (int other = 0; other < own; other++) {
        net->mates[own][other] = net->mates[other][own] = net->mates[*kind][other];
        net->turns[own][other] = net->turns[other][own] = net->turns[*kind][other];
    }
    net->mates[own][own] = net->mates[*kind][*kind];
    net->turns[own][own] = net->turns[*kind][*kind];
    net->kind_turns[own] = net->kind_turns[*kind];
    net->kind_clamped[own] = net->kind_clamped[*kind];
    *kind = own;
}

/* A kind that mates only this one. */
static int only_for(brute_net *net, int kind)
{
    int own = net->kind_count++;
    for (int other = 0; other < BRUTE_KINDS; other++) {
        net->mates[own][other] = net->mates[other][own] = other == kind ? BRUTE_SEALS : BRUTE_NEVER;
        net->turns[own][other] = net->turns[other][own] = other == kind && net->kind_turns[kind];
    }
    return own;
}

enum { NO_LAYOUT = -1, CANNOT_TELL = -2 };

/* Fewest parts with one made part between an open end `from` and `to` (-1: a plug), or one of the above. */
static int parts_with_made(const brute_case *c, int from, int to)
{
    static brute_net net;
    brute_ask ask = c->ask;
    brute_result result;
    net = c->net;
    brute_part *made = &net.parts[net.part_count];
    memset(made, 0, sizeof *made);
    made->end_count = to < 0 ? 1 : 2;
    made->kind[0] = only_for(&net, from);
    if (to >= 0)
        made->kind[1] = only_for(&net, to);
    made->first_only = true;
    made->leg_bore_um[0] = made->leg_bore_um[1] = 1000000;
    made->rating_kpa = 1000000;
    made->has_temperature = true;
    made->low_c = -1000;
    made->high_c = 1000;
    made->fluids = 3;
    made->has_price = true;
    made->orifice_um = BRUTE_NOT_SAID;
    ask.forced = net.part_count++;
    ask.forced_once = true;
    brute_best(&net, &ask, &result);
    if (result.answer == BRUTE_TOO_LARGE)
        return CANNOT_TELL;
    return result.answer == BRUTE_FOUND ? result.key.parts : NO_LAYOUT;
}

typedef struct made_pairs {
    int least;
    bool best[BRUTE_KINDS][BRUTE_KINDS + 1]; /* last column: plugs */
} made_pairs;

/* false: some pair was too large to settle. */
static bool try_every_pair(const brute_case *c, made_pairs *pairs)
{
    memset(pairs, 0, sizeof *pairs);
    pairs->least = NO_LAYOUT;
    for (int from = 0; from < c->net.kind_count; from++)
        for (int to = -1; to < c->net.kind_count; to++) {
            int parts = parts_with_made(c, from, to);
            if (parts == CANNOT_TELL)
                return false;
            if (parts == NO_LAYOUT || (pairs->least >= 0 && parts > pairs->least))
                continue;
            if (pairs->least < 0 || parts < pairs->least)
                memset(pairs->best, 0, sizeof pairs->best);
            pairs->least = parts;
            pairs->best[from][to < 0 ? BRUTE_KINDS : to] = true;
        }
    return true;
}

static int kind_back(const brute_case *c, const brute_converted *in, uint32_t kind)
{
    for (int i = 0; i < c->net.kind_count; i++)
        if (in->kind_of[i] == kind)
            return i;
    return -1;
}

static void compare_made(const brute_case *c, const resolved *r, made_pairs *pairs)
{
    ow_made *made = NULL;
    size_t count = 0, parts = 0;
    ow_status status = ow_resolve_missing(r->resolve, &made, &count, &parts);
    if (pairs->least < 0) {
        assert_int_equal(status, OW_NONE);
        return;
    }
    assert_int_equal(status, OW_OK);
    assert_int_equal(parts, pairs->least);
    for (size_t i = 0; i < count; i++) {
        int from = kind_back(c, &r->in, made[i].from);
        int to = made[i].plug ? BRUTE_KINDS : kind_back(c, &r->in, made[i].to);
        assert_true(pairs->best[from][to]); /* in the list, and once only */
        pairs->best[from][to] = false;
        assert_int_equal(made[i].at_source, from == c->ask.source);
        if (!made[i].plug && made[i].to_port)
            assert_int_equal(c->ask.ports[made[i].port].kind, to);
        assert_int_equal(!made[i].plug && made[i].to_port, to < BRUTE_KINDS && to > c->ask.source);
    }
    for (int from = 0; from < BRUTE_KINDS; from++)
        for (int to = 0; to <= BRUTE_KINDS; to++)
            assert_false(pairs->best[from][to]);
    ow_release(&CONTEXT, made);
}

static void the_missing_part_is_the_best_of_every_pair_of_ends(void **state)
{
    (void)state;
    static brute_case c;
    static resolved r;
    static made_pairs pairs;
    long helped = 0, helpless = 0;
    for (int seed = 0; seed < seeds_of_run(330); seed++) {
        /* A made part, too, may not meet an end that only a clamp would hold: drawn seldom, so set. */
        brute_limit limit = seed % 3 == 1 ? BRUTE_LIMIT_NO_CLAMP : BRUTE_LIMIT_COUNT;
        brute_random_case((uint64_t)seed, 1 + seed % 3, limit, &c);
        if (c.result.answer != BRUTE_NONE)
            continue;
        set_apart(&c.net, &c.ask.source);
        for (int i = 0; i < c.ask.port_count; i++)
            set_apart(&c.net, &c.ask.ports[i].kind);
        if (!try_every_pair(&c, &pairs))
            continue;
        resolve(&c, (uint64_t)seed, 0, &r);
        compare_made(&c, &r, &pairs);
        resolved_free(&r);
        helped += pairs.least >= 0;
        helpless += pairs.least < 0;
    }
    printf("made part: helps %ld, does not %ld\n", helped, helpless);
    assert_true(!full_run() || (helped >= 40 && helpless >= 10));
}

/* --- a forced part ---------------------------------------------------------------------------- */

static void compare_forced(const brute_case *c, const resolved *r, int part, long counts[2])
{
    brute_ask ask = c->ask;
    brute_result result;
    ow_tree tree;
    brute_tree back;
    brute_key key;
    ask.forced = part;
    brute_best(&c->net, &ask, &result);
    if (result.answer == BRUTE_TOO_LARGE)
        return;
    ow_status status = ow_resolve_forced(r->resolve, r->in.part_of[part], &tree);
    counts[result.answer == BRUTE_FOUND]++;
    assert_int_equal(status, result.answer == BRUTE_FOUND ? OW_OK : OW_NONE);
    if (status != OW_OK)
        return;
    brute_tree_back(&r->in, &tree, &back);
    assert_null(brute_tree_fault(&c->net, &ask, &back));
    brute_tree_key(&c->net, &ask, &back, &key);
    assert_true(brute_key_is(&key, &tree.key));
    assert_int_equal(brute_key_compare(&key, &result.key), 0);
    ow_release(&CONTEXT, tree.nodes);
}

static void a_forced_part_costs_what_a_search_that_forces_it_says(void **state)
{
    (void)state;
    static brute_case c;
    static resolved r;
    long counts[2] = {0, 0};
    for (int seed = 0; seed < seeds_of_run(400); seed++) {
        brute_random_case((uint64_t)seed, 1 + seed % 3, BRUTE_LIMIT_COUNT, &c);
        if (c.result.answer == BRUTE_TOO_LARGE || c.result.states > 3000)
            continue;
        resolve(&c, (uint64_t)seed, 0, &r);
        for (int part = seed % 3; part < c.net.part_count; part += 3)
            compare_forced(&c, &r, part, counts);
        resolved_free(&r);
    }
    printf("forced: %ld possible, %ld not\n", counts[1], counts[0]);
    assert_true(!full_run() || (counts[1] >= 300 && counts[0] >= 300));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_list_is_every_really_different_tree_in_order),
        cmocka_unit_test(the_missing_part_is_the_best_of_every_pair_of_ends),
        cmocka_unit_test(a_forced_part_costs_what_a_search_that_forces_it_says),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
