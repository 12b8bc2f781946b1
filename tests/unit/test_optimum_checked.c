/* SPDX-License-Identifier: MIT */
/*
 * Two codes that share nothing agree: what the search lets pass the check finds no error in. Asked at random
 * over the shipped catalogue, and over random catalogues whose pages claim for hoses what their material does
 * not stand.
 */
#include "brute/shop.h"
#include "oilway/check.h"
#include "support/shipped.h"

/* ---- the shipped catalogue ------------------------------------------------------------------- */

typedef struct drawn_ask {
    char from[160], to[2][160], keep[160], bore[32], rating[32], temperature[32];
    ow_ask_words words;
} drawn_ask;

/* A port of an engine or a turbo, or any end of the catalogue. */
static void draw_end(const ow_shipped *self, brute_dice *dice, ow_kind kind, ow_circuit circuit,
                     char words[160])
{
    size_t count = ow_catalog_machine_count(self->catalog);
    for (int tries = 0; circuit != OW_CIRCUIT_NONE && tries < 200; tries++) {
        const ow_machine *machine =
            ow_catalog_machine_at(self->catalog, (size_t)brute_roll(dice, (int)count));
        if (machine->kind != kind || machine->port_count == 0)
            continue;
        const ow_port *port = &machine->ports[brute_roll(dice, (int)machine->port_count)];
        if (port->circuit != circuit)
            continue;
        (void)snprintf(words, 160, "%s:%s", machine->id, port->name);
        return;
    }
    char name[OW_END_TEXT_SIZE];
    int kinds = (int)ow_net_kind_count(self->net);
    (void)snprintf(words, 160, "%s",
                   ow_end_name(ow_net_kind_at(self->net, (size_t)brute_roll(dice, kinds)), name));
}

static const char *pick(brute_dice *dice, const char *const *words, int count, int percent)
{
    return brute_chance(dice, percent) ? words[brute_roll(dice, count)] : NULL;
}

static void draw_limits(brute_dice *dice, ow_ask_words *words)
{
    static const char *const bores[] = {"2 mm", "3.2 mm", "4.4 mm", "7 mm", "12.5 mm"};
    static const char *const ratings[] = {"1 bar", "2.5 bar", "4 bar", "9 bar", "40 bar", "150 psi"};
    static const char *const heats[] = {"-45 C", "-20 C", "90 C",  "101 C",
                                        "125 C", "150 C", "176 C", "250 F"};
    static const char *const flexible[] = {"yes", "no", "any", "some"}, *const closing[] = {"yes", "no"};
    static const char *const restrictors[] = {"required", "forbidden", "any"}, *const fluids[] = {"oil",
                                                                                                  "coolant"};
    words->bore = pick(dice, bores, 5, 25);
    words->rating = pick(dice, ratings, 6, 40);
    words->temperature = pick(dice, heats, 8, 60);
    words->flexible = pick(dice, flexible, 4, 30);
    words->closing = pick(dice, closing, 2, 20);
    words->restrictor = pick(dice, restrictors, 3, 15);
    words->orifice = brute_chance(dice, 10) ? "0.8..1.2 mm" : NULL;
    words->fluid = pick(dice, fluids, 2, 30);
    words->tolerate = brute_chance(dice, 20);
    words->remote_switch = brute_chance(dice, 20);
}

static void draw_ask(const ow_shipped *self, brute_dice *dice, drawn_ask *drawn)
{
    static const char *const circuits[] = {NULL, "feed", "drain", "coolant"};
    int circuit = brute_roll(dice, 5) % 4;
    bool named = circuit != 0 && brute_chance(dice, 80);
    ow_circuit of = named ? (ow_circuit)circuit : OW_CIRCUIT_NONE;
    ow_kind source = of == OW_DRAIN ? OW_TURBO : OW_ENGINE;
    ow_ask_words *words = &drawn->words;
    *words = (ow_ask_words){.from = drawn->from, .circuit = circuits[circuit]};
    draw_end(self, dice, source, of, drawn->from);
    words->to_count = brute_chance(dice, 20) ? 2 : 1;
    for (size_t to = 0; to < words->to_count; to++) {
        draw_end(self, dice, source == OW_TURBO ? OW_ENGINE : OW_TURBO, of, drawn->to[to]);
        words->to[to] = drawn->to[to];
    }
    if (circuit < 2 && brute_chance(dice, 30)) {
        words->keep[words->keep_count++] = drawn->keep;
        (void)snprintf(drawn->keep, sizeof drawn->keep, "1/8-27 NPT male");
    }
    draw_limits(dice, words);
}

static void assert_no_error(const ow_findings *findings, const char *what, int seed)
{
    for (size_t index = 0; index < findings->count; index++)
        if (findings->items[index].severity == OW_ERROR)
            fail_msg("%s %d: %s: %s: %s", what, seed, findings->items[index].rule->id,
                     findings->items[index].where, findings->items[index].message);
}

/* Stacks that the search finds and the check has looked at. */
static size_t look_at(const ow_shipped *self, const ow_ask_words *words, int seed)
{
    const ow_answer_options options = {3, 0, NULL};
    ow_ask_set set;
    ow_answers answers;
    size_t looked = 0;
    if (ow_ask_read(&self->context, self->catalog, self->net, words, &set) != OW_OK)
        return 0; /* an end that leads nowhere by its nature */
    assert_int_equal(ow_answers_find(&self->context, self->catalog, self->net, &set, &options, &answers),
                     OW_OK);
    for (size_t item = 0; item < answers.count; item++)
        for (size_t stack = 0; stack < answers.items[item].stack_count; stack++, looked++)
            assert_no_error(&answers.items[item].stacks[stack].findings, words->from, seed);
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
    return looked;
}

static void answers_over_the_shipped_catalogue_have_no_error(void **state)
{
    const ow_shipped *self = *state;
    int seeds = getenv("OW_SLOW_TOOL") == NULL ? 1500 : 15;
    size_t looked = 0;
    for (int seed = 0; seed < seeds; seed++) {
        brute_dice dice = brute_dice_new((uint64_t)seed);
        drawn_ask drawn;
        draw_ask(self, &dice, &drawn);
        looked += look_at(self, &drawn.words, seed);
    }
    printf("stacks looked at: %zu\n", looked);
    assert_true(looked >= (size_t)seeds / 3);
}

/* ---- random catalogues ----------------------------------------------------------------------- */

static bool check_best(shop *s, int seed)
{
    ow_given givens[BRUTE_PORTS + 1];
    const char *without[BRUTE_PARTS];
    ow_ask ask;
    ow_search *search = NULL;
    ow_layout layout;
    convert_ask(s, givens, without, &ask);
    for (size_t given = 0; given < ask.given_count; given++)
        givens[given].machine = NULL;
    assert_int_equal(ow_net_build(&CONTEXT, s->catalog, &s->net), OW_OK);
    assert_int_equal(ow_search_new(&CONTEXT, s->net, &ask, &search), OW_OK);
    bool found = ow_search_next(search, &layout) == OW_OK;
    if (found) {
        ow_findings findings = ow_findings_new(&CONTEXT), passed = ow_findings_new(&CONTEXT);
        assert_int_equal(ow_check_layout(&CONTEXT, s->catalog, &layout, &findings, &passed), OW_OK);
        assert_no_error(&findings, "random catalogue", seed);
        ow_findings_done(&findings);
        ow_findings_done(&passed);
        ow_layout_free(&layout);
    }
    ow_search_free(search);
    ow_net_free(s->net);
    return found;
}

static void answers_over_random_catalogues_have_no_error(void **state)
{
    (void)state;
    static shop s;
    static const brute_limit limits[] = {BRUTE_LIMIT_MATERIAL, BRUTE_LIMIT_PRESSED, BRUTE_LIMIT_NO_CLAMP,
                                         BRUTE_LIMIT_RATING, BRUTE_LIMIT_COUNT};
    int seeds = getenv("OW_SLOW_TOOL") == NULL ? 2500 : 20;
    size_t looked = 0;
    for (int seed = 0; seed < seeds; seed++) {
        draw_shop(&s, (uint64_t)seed, limits[seed % 5]);
        open_shop(&s);
        looked += check_best(&s, seed);
        ow_catalog_free(s.catalog);
    }
    printf("layouts looked at: %zu\n", looked);
    assert_true(looked >= (size_t)seeds / 5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(answers_over_the_shipped_catalogue_have_no_error, ow_shipped_load,
                                        ow_shipped_unload),
        cmocka_unit_test(answers_over_random_catalogues_have_no_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
