/* SPDX-License-Identifier: MIT */
/*
 * The whole way, from YAML words to a layout, held against the brute force: random catalogues are written
 * as pages, read, netted and searched through the public interface; the brute force works on the figures
 * from which the pages were written.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "brute/random.h"
#include "oilway/joint.h"
#include "oilway/stack.h"

/* Ends that go together, and some that are only tolerated or go with more than one. */
static const char *const ENDS[][2] = {
    {"hose -4 ptfe tail", "hose -4 ptfe"}, /* the first pair: hoses by the metre are made of it */
    {"1/8-27 NPT male", "1/8-27 NPT female"},
    {"-4 flare37 male", "-4 flare37 female swivel"},
    {"M10x1 male washer", "M10x1 female washer"},
    {"M10x1 male taper", "M12x1.5 female washer"},
    {"M12x1.5 male banjo", "M12x1.5 male washer"},
    {"banjo 10 stud", "banjo 10 eye"},
    {"G1/8 male cone60", "G1/8 female cone60 swivel"},
    {"R1/8 male", "Rp1/8 female"},
    {"barb 10", "hose 10 fluoro-silicone"},
    {"1/8-27 NPTF male", "1/8-27 NPSM female swivel"},
    {"3/8-24 UNF male washer", "3/8-24 UNF female washer"},
};
enum { PAIRS = sizeof ENDS / sizeof ENDS[0], TEXT = 16384, HOSE_TAIL = 0, HOSE_CUT = 1 };

typedef struct shop {
    brute_case c;
    ow_end ends[BRUTE_KINDS];
    char words[BRUTE_KINDS][64];
    char *texts[BRUTE_PARTS];
    const char *names[BRUTE_PARTS];
    ow_catalog *catalog;
    ow_net *net;
} shop;

/* Gives the kinds real ends; what mates and what turns is then what the joint rules say. */
static void give_ends(shop *s, brute_dice *dice)
{
    brute_net *net = &s->c.net;
    int pair = 0;
    net->kind_count &= ~1;
    for (int kind = 0; kind < net->kind_count; kind++) {
        if (kind % 2 == 0 && kind > 0)
            pair += 1 + brute_roll(dice, 2);
        const char *words = ENDS[pair % PAIRS][kind % 2];
        snprintf(s->words[kind], sizeof s->words[kind], "%s", words);
        assert_int_equal(ow_end_read(words, &s->ends[kind], NULL), OW_OK);
    }
    for (int a = 0; a < net->kind_count; a++)
        for (int b = 0; b < net->kind_count; b++) {
            const ow_joint_rule *rule = ow_joint_find(&s->ends[a], &s->ends[b]);
            net->mates[a][b] = rule == NULL                    ? BRUTE_NEVER
                               : rule->verdict == OW_TOLERATED ? BRUTE_TOLERATED
                                                               : BRUTE_SEALS;
            net->turns[a][b] = ow_joint_turns(&s->ends[a], &s->ends[b]);
        }
}

/* Makes the random parts such as a page can describe: one bore for a run, one for branches. */
static void make_describable(brute_net *net)
{
    for (int i = 0; i < net->part_count; i++) {
        brute_part *part = &net->parts[i];
        for (int end = 0; end < part->end_count; end++) {
            part->kind[end] %= net->kind_count;
            part->leg_bore_um[end] = part->leg_bore_um[end < 2 ? 0 : 2];
        }
        if (part->end_count != 2)
            part->is_hose = part->is_restrictor = part->by_metre = false;
        if (part->by_metre)
            part->kind[0] = part->kind[1] = HOSE_CUT;
        if (part->by_metre)
            part->length_um = BRUTE_NOT_SAID;
        if (!part->is_restrictor)
            part->orifice_um = BRUTE_NOT_SAID;
    }
}

static size_t put_figure(char *to, int figure, const char *unit)
{
    return (size_t)(figure == BRUTE_NOT_SAID ? sprintf(to, ", ~") : sprintf(to, ", %d %s", figure, unit));
}

/* One page with one row. */
static void write_page(shop *s, int index)
{
    static const char *const kinds[] = {"plug", "adapter", "tee", "cross"};
    static const char *const ends[] = {"a", "a, b", "run-a, run-b, branch",
                                       "run-a, run-b, branch-a, branch-b"};
    const brute_part *part = &s->c.net.parts[index];
    const char *kind = part->by_metre        ? "hose"
                       : part->is_hose       ? "line"
                       : part->is_restrictor ? "restrictor"
                                             : kinds[part->end_count - 1];
    static const char *const fluids[] = {"~", "oil", "coolant", "[oil, coolant]"};
    char *at = s->texts[index] = malloc(TEXT);
    assert_non_null(at);
    at += sprintf(at,
                  "page: page-%02d\nkind: %s\ncolumns: [id, %s, rating, temperature, fluids, price%s%s%s]\n",
                  index, kind, ends[part->end_count - 1], part->by_metre ? "" : ", length",
                  part->end_count > 2    ? ", run-bore, branch-bore"
                  : part->end_count == 2 ? ", bore"
                                         : "",
                  part->is_restrictor ? ", orifice" : "");
    at += sprintf(at, "rows:\n  - [part-%02d", index);
    for (int end = 0; end < part->end_count; end++)
        at += sprintf(at, ", %s", s->words[part->kind[end]]);
    at += put_figure(at, part->rating_kpa, "kPa");
    at += part->has_temperature ? sprintf(at, ", %d..%d C", part->low_c, part->high_c) : sprintf(at, ", ~");
    at += sprintf(at, ", %s", fluids[part->fluids]);
    at += part->has_price ? sprintf(at, ", %d.%02d", part->price_cents / 100, part->price_cents % 100)
                          : sprintf(at, ", ~");
    if (!part->by_metre)
        at += put_figure(at, part->length_um, "um");
    if (part->end_count > 1)
        at += put_figure(at, part->leg_bore_um[0], "um");
    if (part->end_count > 2)
        at += put_figure(at, part->leg_bore_um[2], "um");
    if (part->is_restrictor)
        at += put_figure(at, part->orifice_um, "um");
    sprintf(at, "]\n");
    s->names[index] = "random.yaml";
}

static void report(void *user, const ow_diagnostic *told)
{
    (void)user;
    printf("%s: %.*s\n", told->message, (int)told->line_length, told->line_text ? told->line_text : "");
}

static const ow_context CONTEXT = {NULL, NULL, report, NULL};

/* Reads the pages and lets go of their texts. */
static void load_pages(shop *s, int count)
{
    ow_catalog_options options = {NULL, 0, NULL, false, false};
    assert_int_equal(ow_catalog_load_texts(&CONTEXT, s->names, (const char *const *)s->texts, (size_t)count,
                                           &options, &s->catalog),
                     OW_OK);
    for (int i = 0; i < count; i++)
        free(s->texts[i]);
}

static void open_shop(shop *s)
{
    for (int i = 0; i < s->c.net.part_count; i++)
        write_page(s, i);
    load_pages(s, s->c.net.part_count);
}

/* The ask in the words of the public interface: served ports first. */
static void convert_ask(const shop *s, ow_given givens[], const char *without[], ow_ask *out)
{
    static const ow_machine machine = {.id = "machine"};
    static const ow_choice flexible[] = {OW_ANY, OW_YES, OW_NO};
    const brute_ask *ask = &s->c.ask;
    memset(givens, 0, (BRUTE_PORTS + 1) * sizeof *givens);
    givens[0] = (ow_given){.name = "from", .role = OW_ROLE_SOURCE, .end = s->ends[ask->source]};
    for (int i = 0; i < ask->port_count; i++)
        givens[i + 1] = (ow_given){.name = "port",
                                   .role = ask->ports[i].is_to ? OW_ROLE_TO : OW_ROLE_KEEP,
                                   .end = s->ends[ask->ports[i].kind],
                                   .machine = ask->ports[i].is_machine ? &machine : NULL};
    ow_limits limits = OW_LIMITS_INIT;
    if (ask->least_bore_um != BRUTE_NOT_SAID)
        limits.least_bore_m = ask->least_bore_um * 1e-6;
    limits.flexible = flexible[ask->flexible];
    limits.closing = ask->closing;
    limits.restrictor = ask->restrictor == BRUTE_REQUIRED    ? OW_RESTRICTOR_REQUIRED
                        : ask->restrictor == BRUTE_FORBIDDEN ? OW_RESTRICTOR_FORBIDDEN
                                                             : OW_RESTRICTOR_ANY;
    if (ask->orifice_low_um != BRUTE_NOT_SAID)
        limits.orifice_low_m = ask->orifice_low_um * 1e-6;
    if (ask->orifice_high_um != BRUTE_NOT_SAID)
        limits.orifice_high_m = ask->orifice_high_um * 1e-6;
    if (ask->rating_kpa != BRUTE_NOT_SAID)
        limits.rating_pa = ask->rating_kpa * 1e3;
    limits.has_temperature = ask->has_temperature;
    limits.temperature_c = ask->temperature_c;
    limits.fluid = (ow_fluid)ask->fluid;
    limits.tolerate = ask->tolerate;
    limits.remote_switch = ask->remote_switch;
    limits.no_tee = ask->no_tee;
    *out = (ow_ask){.given_count = (size_t)ask->port_count + 1,
                    .givens = givens,
                    .limits = limits,
                    .hose_length_m = ask->hose_length_mm * 1e-3,
                    .without = without};
    for (int i = 0; i < s->c.net.part_count; i++)
        if (ask->without[i])
            without[out->without_count++] = ow_catalog_part_at(s->catalog, (size_t)i)->id;
}

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
    {BRUTE_LIMIT_BORE, "the least bore"},
    {BRUTE_LIMIT_FLEX_NO, "no hose on the path"},
    {BRUTE_LIMIT_FLEX_YES, "exactly one hose on the path"},
    {BRUTE_LIMIT_FORBIDDEN, "no restrictor on the path"},
    {BRUTE_LIMIT_REQUIRED, "a restrictor on the path"},
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
        (limit == BRUTE_LIMIT_FLEX_NO && ask->flexible != BRUTE_FLEX_NO))
        looser.flexible = ask->flexible;
    if ((limit == BRUTE_LIMIT_REQUIRED && ask->restrictor != BRUTE_REQUIRED) ||
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

static void sort_ports(brute_ask *ask)
{
    ask->ports[0].is_to = true;
    for (int i = 1; i < ask->port_count; i++)
        for (int k = i; k > 0 && ask->ports[k].is_to && !ask->ports[k - 1].is_to; k--) {
            brute_port port = ask->ports[k];
            ask->ports[k] = ask->ports[k - 1];
            ask->ports[k - 1] = port;
        }
    for (int i = 0; i < ask->port_count; i++)
        ask->ports[i].is_machine = ask->ports[i].is_to && ask->ports[i].is_machine;
}

static bool draw_shop(shop *s, uint64_t seed)
{
    brute_dice dice = brute_dice_new(seed);
    memset(s, 0, sizeof *s);
    brute_random_net(&dice, &s->c.net);
    give_ends(s, &dice);
    make_describable(&s->c.net);
    brute_random_ask(&dice, &s->c.net, 1 + (int)(seed % 4), &s->c.ask);
    sort_ports(&s->c.ask);
    for (int count = brute_roll(&dice, 4); count > 0; count--)
        brute_limit_set(&dice, &s->c.net, &s->c.ask, (brute_limit)brute_roll(&dice, BRUTE_LIMIT_KEPT));
    brute_best(&s->c.net, &s->c.ask, &s->c.result);
    return s->c.result.answer != BRUTE_TOO_LARGE;
}

static void layouts_and_reasons_are_those_of_the_brute_force(void **state)
{
    (void)state;
    static shop s;
    bool full = getenv("OW_SLOW_TOOL") == NULL;
    long cases = 0, found = 0;
    explained e = {0, 0, 0, 0};
    for (int seed = 0; seed < (full ? 900 : 20); seed++) {
        if (!draw_shop(&s, (uint64_t)seed))
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

/* --- the made part, made ---------------------------------------------------------------------------- */

/* Writes all pages again, with one more for the made part, and searches again: parts of the best, or -1. */
static long parts_with_made(shop *s, const ow_missing *made)
{
    ow_given givens[BRUTE_PORTS + 1];
    const char *without[BRUTE_PARTS];
    ow_ask ask;
    ow_search *search = NULL;
    ow_layout layout;
    long parts = -1;
    char from[OW_END_TEXT_SIZE], to[OW_END_TEXT_SIZE], *page = malloc(TEXT);
    assert_non_null(page);
    ow_end_name(&made->from, from);
    if (made->is_plug)
        sprintf(page, "kind: plug\ncolumns: [id, a]\nrows:\n  - [x-made, %s]\n", from);
    else
        sprintf(page, "kind: adapter\ncolumns: [id, a, b, bore]\nrows:\n  - [x-made, %s, %s, 150 mm]\n", from,
                ow_end_name(&made->to, to));
    strncat(page, "page: made\nrating: 2000 bar\ntemperature: -200..1000 C\nfluids: [oil, coolant]\n",
            TEXT - strlen(page) - 1);
    int last = s->c.net.part_count;
    s->texts[last] = page;
    s->names[last] = "made.yaml";
    load_pages(s, last + 1);
    convert_ask(s, givens, without, &ask);
    assert_int_equal(ow_net_build(&CONTEXT, s->catalog, &s->net), OW_OK);
    assert_int_equal(ow_search_new(&CONTEXT, s->net, &ask, &search), OW_OK);
    if (ow_search_next(search, &layout) == OW_OK) {
        parts = (long)ow_layout_part_count(&layout);
        ow_layout_free(&layout);
    }
    ow_search_free(search);
    ow_net_free(s->net);
    ow_catalog_free(s->catalog);
    return parts;
}

/* Several of the made part may do better still, one alone not worse. */
static long try_missing(shop *s, int seed)
{
    ow_given givens[BRUTE_PORTS + 1];
    const char *without[BRUTE_PARTS];
    ow_ask ask;
    ow_search *search = NULL;
    ow_missing *missing = NULL;
    size_t count = 0;
    open_shop(s);
    convert_ask(s, givens, without, &ask);
    assert_int_equal(ow_net_build(&CONTEXT, s->catalog, &s->net), OW_OK);
    assert_int_equal(ow_search_new(&CONTEXT, s->net, &ask, &search), OW_OK);
    ow_status status = ow_search_missing(search, 3, &missing, &count);
    assert_true(status == OW_OK || status == OW_NONE);
    ow_search_free(search);
    ow_net_free(s->net);
    ow_catalog_free(s->catalog);
    for (size_t i = 0; status == OW_OK && i < count; i++) {
        for (int part = 0; part < s->c.net.part_count; part++)
            write_page(s, part);
        long parts = parts_with_made(s, &missing[i]);
        if (parts < 0 || parts > (long)missing[i].part_count)
            fail_msg("seed %d: made part %zu gives %ld parts, not %zu", seed, i, parts,
                     missing[i].part_count);
    }
    if (status == OW_OK)
        ow_missing_free(&CONTEXT, missing, count);
    return status == OW_OK ? (long)count : 0;
}

static void a_made_part_put_on_a_page_completes_the_layout(void **state)
{
    (void)state;
    static shop s;
    bool full = getenv("OW_SLOW_TOOL") == NULL;
    long made = 0;
    for (int seed = 0; seed < (full ? 400 : 10); seed++)
        if (draw_shop(&s, (uint64_t)seed) && s.c.result.answer == BRUTE_NONE)
            made += try_missing(&s, seed);
    printf("made parts tried: %ld\n", made);
    assert_true(!full || made >= 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(layouts_and_reasons_are_those_of_the_brute_force),
        cmocka_unit_test(a_made_part_put_on_a_page_completes_the_layout),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
