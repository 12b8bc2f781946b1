/* SPDX-License-Identifier: MIT */
/*
 * The whole way, from YAML words to a layout, held against the brute force: random catalogues are written
 * as pages, read, netted and searched through the public interface; the brute force works on the figures
 * from which the pages were written.
 */
#include "brute/shop.h"

static void tree_of_layout(const ow_layout *layout, brute_tree *tree)
{
    memset(tree, 0, sizeof *tree);
    for (size_t i = 1; i < layout->node_count; i++) {
        const ow_layout_node *node = &layout->nodes[i];
        brute_node *out = &tree->nodes[tree->count++];
        out->part = node->part == NULL ? -1 : (int)strtol(node->part->id + strlen("part-"), NULL, 10);
        out->port = node->part == NULL ? (int)node->given - 1 : -1;
        out->parent = (int)node->parent - 1;
        out->parent_end = (int)node->parent_end;
        out->entry = (int)node->enter;
    }
}

/* --- why not --------------------------------------------------------------------------------------- */

/* The limits in the order in which a reason is looked for, with the words it is given in. */
static const struct {
    brute_limit limit;
    const char *words;
} REASONS[] = {
    {BRUTE_LIMIT_WITHOUT, "it was left out by name"},
    {BRUTE_LIMIT_RATING, "the pressure rating asked for"},
    {BRUTE_LIMIT_TEMPERATURE, "the temperature asked for"},
    {BRUTE_LIMIT_FLUID, "the fluid"},
    {BRUTE_LIMIT_ORIFICE, "the range of the orifice"},
    {BRUTE_LIMIT_NO_TEE, "no tee"},
    {BRUTE_LIMIT_NO_CLAMP, "no clamp against the feed's pressure"},
    {BRUTE_LIMIT_BORE, "the least bore"},
    {BRUTE_LIMIT_FLEX_NO, "no hose on the path"},
    {BRUTE_LIMIT_FLEX_YES, "exactly one hose on the path"},
    {BRUTE_LIMIT_FLEX_SOME, "a hose on the path"},
    {BRUTE_LIMIT_FORBIDDEN, "no restrictor on the path"},
    {BRUTE_LIMIT_REQUIRED, "a restrictor on the path"},
    {BRUTE_LIMIT_MOST_ONE, "no second restrictor on the path"},
    {BRUTE_LIMIT_CLOSING, "a closing joint between fixed ports"},
    {BRUTE_LIMIT_REMOTE, "no hose before a kept port"},
    {BRUTE_LIMIT_TOLERATE, "joints that are only tolerated are not used"},
};
enum { REASON_COUNT = sizeof REASONS / sizeof REASONS[0] };

static brute_ask lifted(const brute_ask *ask, brute_limit limit)
{
    brute_ask looser = *ask;
    brute_limit_drop(&looser, limit);
    looser.remote_switch =
        ask->remote_switch || limit == BRUTE_LIMIT_REMOTE; /* these two allow, not forbid */
    looser.tolerate = ask->tolerate || limit == BRUTE_LIMIT_TOLERATE;
    if ((limit == BRUTE_LIMIT_FLEX_YES && ask->flexible != BRUTE_FLEX_YES) ||
        (limit == BRUTE_LIMIT_FLEX_SOME && ask->flexible != BRUTE_FLEX_SOME) ||
        (limit == BRUTE_LIMIT_FLEX_NO && ask->flexible != BRUTE_FLEX_NO))
        looser.flexible = ask->flexible;
    if ((limit == BRUTE_LIMIT_REQUIRED && ask->restrictor != BRUTE_REQUIRED) ||
        (limit == BRUTE_LIMIT_MOST_ONE && ask->restrictor != BRUTE_MOST_ONE) ||
        (limit == BRUTE_LIMIT_FORBIDDEN && ask->restrictor != BRUTE_FORBIDDEN))
        looser.restrictor = ask->restrictor;
    return looser;
}

/* The first limit whose removal lets the forced part in; REASON_COUNT: none does. -1: cannot tell. */
static int first_reason(const shop *s, const brute_ask *forced)
{
    for (int i = 0; i < REASON_COUNT; i++) {
        brute_ask looser = lifted(forced, REASONS[i].limit);
        long states;
        brute_answer answer = brute_exists(&s->c.net, &looser, &states);
        if (answer != BRUTE_NONE)
            return answer == BRUTE_FOUND ? i : -1;
    }
    return REASON_COUNT;
}

typedef struct explained {
    long in_best, worse, limited, hopeless;
} explained;

static void compare_impossible(const shop *s, const brute_ask *forced, const ow_explanation *why, int seed,
                               explained *e)
{
    int reason = first_reason(s, forced);
    if (reason < 0)
        return;
    if (why->possible || (reason == REASON_COUNT) != (why->limit == NULL) ||
        (why->limit != NULL && strcmp(why->limit, REASONS[reason].words) != 0))
        fail_msg("seed %d: explained by %s", seed, why->limit != NULL ? why->limit : "no limit");
    e->limited += reason < REASON_COUNT;
    e->hopeless += reason == REASON_COUNT;
}

static void compare_explanation(const shop *s, ow_search *search, int seed, explained *e)
{
    int part = seed % s->c.net.part_count;
    brute_ask forced = s->c.ask;
    brute_result with;
    ow_explanation why;
    forced.forced = part;
    brute_best(&s->c.net, &forced, &with);
    assert_int_equal(ow_search_explain(search, ow_catalog_part_at(s->catalog, (size_t)part)->id, &why),
                     OW_OK);
    assert_true(why.known && why.words != NULL);
    if (with.answer == BRUTE_NONE)
        compare_impossible(s, &forced, &why, seed, e);
    if (with.answer != BRUTE_FOUND)
        return;
    const brute_key *best = &s->c.result.key;
    bool in_best = memchr(best->ids, part, (size_t)best->id_count) != NULL;
    if (!why.possible || why.in_best != in_best || why.worse_parts != with.key.parts - best->parts ||
        why.worse_cents != with.key.cents - best->cents ||
        why.worse_stick_out_um != with.key.stick_out_um - best->stick_out_um)
        fail_msg("seed %d: %s", seed, why.words);
    e->in_best += in_best;
    e->worse += !in_best;
}

static void compare(shop *s, int seed, explained *e)
{
    ow_given givens[BRUTE_PORTS + 1];
    const char *without[BRUTE_PARTS];
    ow_ask ask;
    ow_search *search = NULL;
    ow_layout layout;
    convert_ask(s, givens, without, &ask);
    assert_int_equal(ow_net_build(&CONTEXT, s->catalog, &s->net), OW_OK);
    assert_int_equal(ow_search_new(&CONTEXT, s->net, &ask, &search), OW_OK);
    bool is_found = s->c.result.answer == BRUTE_FOUND;
    ow_status status = ow_search_next(search, &layout);
    if (status != (is_found ? OW_OK : OW_NONE))
        fail_msg("seed %d: status %d", seed, (int)status);
    if (is_found) {
        brute_tree tree;
        brute_key key;
        tree_of_layout(&layout, &tree);
        const char *fault = brute_tree_fault(&s->c.net, &s->c.ask, &tree);
        brute_tree_key(&s->c.net, &s->c.ask, &tree, &key);
        if (fault != NULL || brute_key_compare(&key, &s->c.result.key) != 0)
            fail_msg("seed %d: %s", seed, fault != NULL ? fault : "not the best");
        assert_int_equal(ow_layout_part_count(&layout), key.parts);
        assert_int_equal(ow_layout_joint_count(&layout), key.parts + s->c.ask.port_count);
        bool complete;
        assert_int_equal(ow_layout_price_cents(&layout, &complete), key.cents);
        assert_int_equal(complete, key.unpriced == 0);
        ow_layout_free(&layout);
    }
    compare_explanation(s, search, seed, e);
    ow_search_free(search);
    ow_net_free(s->net);
}

static void layouts_and_reasons_are_those_of_the_brute_force(void **state)
{
    (void)state;
    static shop s;
    bool full = getenv("OW_SLOW_TOOL") == NULL;
    long cases = 0, found = 0;
    explained e = {0, 0, 0, 0};
    for (int seed = 0; seed < (full ? 1200 : 20); seed++) {
        if (!draw_shop(&s, (uint64_t)seed, BRUTE_LIMIT_COUNT))
            continue;
        open_shop(&s);
        compare(&s, seed, &e);
        ow_catalog_free(s.catalog);
        cases++;
        found += s.c.result.answer == BRUTE_FOUND;
    }
    printf("catalogues %ld, solvable %ld\n", cases, found);
    printf("explained: in the best %ld, worse %ld, by a limit %ld, by none %ld\n", e.in_best, e.worse,
           e.limited, e.hopeless);
    assert_true(!full || (cases >= 800 && found >= 300));
    assert_true(!full || (e.in_best >= 50 && e.worse >= 50 && e.limited >= 50 && e.hopeless >= 50));
}

/* Catalogues whose answer is another one without that limit. */
static long compare_changed(brute_limit limit, int seeds)
{
    static shop s;
    explained e = {0, 0, 0, 0};
    long changed = 0;
    for (int seed = 0; seed < seeds; seed++) {
        if (!draw_shop(&s, (uint64_t)seed, limit) || !brute_limit_changes(&s.c, limit))
            continue;
        open_shop(&s);
        compare(&s, seed, &e);
        ow_catalog_free(s.catalog);
        changed++;
    }
    printf("%s: %ld answers changed\n", brute_limit_words(limit), changed);
    return changed;
}

static void what_hoses_are_made_of_and_clamps_change_answers_as_in_the_brute_force(void **state)
{
    (void)state;
    bool full = getenv("OW_SLOW_TOOL") == NULL;
    int seeds = full ? 3000 : 60;
    assert_true(compare_changed(BRUTE_LIMIT_MATERIAL, seeds) >= (full ? 50 : 1));
    assert_true(compare_changed(BRUTE_LIMIT_PRESSED, seeds) >= (full ? 20 : 0));
    assert_true(compare_changed(BRUTE_LIMIT_NO_CLAMP, seeds) >= (full ? 50 : 1));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(layouts_and_reasons_are_those_of_the_brute_force),
        cmocka_unit_test(what_hoses_are_made_of_and_clamps_change_answers_as_in_the_brute_force),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
