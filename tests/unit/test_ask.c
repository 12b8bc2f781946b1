/* SPDX-License-Identifier: MIT */
/*
 * From words to an ask: the circuit that it is for, the defaults that it brings (docs/asking.md), what the
 * words lay over them, and what is left open.
 */
#include <string.h>

#include "oilway/ask.h"
#include "support/diagnostics.h"
#include "support/near.h"
#include "support/testing.h"

static const char shop[] =
    "{kind: engine, id: eng, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, pressure: 4.5 bar, "
    "holds: sw},"
    " rear: {end: M10x1 female washer, circuit: feed}, plate: {end: flange p48, circuit: drain, bore: 17 mm},"
    " out: {end: bead 10, circuit: coolant}}}\n"
    "---\n{kind: engine, id: bare, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed}}}\n"
    "---\n{kind: turbo, id: plain, bearing: journal, restrictor: none, ports: {in: {end: -4 flare37 male, "
    "circuit: feed},"
    " oil-out: {end: flange f38, circuit: drain, bore: 15 mm}, water: {end: bead 10, circuit: coolant}}}\n"
    "---\n{kind: turbo, id: ball, bearing: ball, restrictor: none, ports: {in: {end: -4 flare37 male, "
    "circuit: feed}}}\n"
    "---\n{kind: turbo, id: held, bearing: ball, restrictor: built-in, ports: {in: {end: -4 flare37 male, "
    "circuit: feed}}}\n"
    "---\n{kind: turbo, id: odd, bearing: ball, ports: {in: {end: -4 flare37 male, circuit: feed}}}\n"
    "---\n{kind: turbo, id: twin, bearing: journal, restrictor: none, ports: {left: {end: -4 flare37 male, "
    "circuit: feed},"
    " right: {end: -4 flare37 male, circuit: feed}}}\n"
    "---\n{kind: switch, id: sw, a: 1/8-27 NPT male}\n"
    "---\n{kind: sender, id: sn, a: M10x1 male taper}\n"
    "---\n{page: a, kind: adapter, columns: [id, a, b], rows: [[ad, 1/8-27 NPT male, -4 flare37 male],"
    " [m1, M10x1 male washer, -4 flare37 male], [m125, M10x1.25 male washer, -4 flare37 male],"
    " [u, 3/8-24 UNF male washer, -4 flare37 male], [o3, -3 o-ring male, -4 flare37 male]]}\n";

typedef struct fixture {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    ow_ask_set set;
} fixture;

static int load(void **state)
{
    static fixture self;
    const char *const names[] = {"shop.yaml"};
    const char *const texts[] = {shop};
    const ow_catalog_options options = {NULL, 0, NULL, false, false};
    self.context = ow_test_context(&self.sink);
    *state = &self;
    if (ow_catalog_load_texts(&self.context, names, texts, 1, &options, &self.catalog) != OW_OK)
        return -1;
    return ow_net_build(&self.context, self.catalog, &self.net) == OW_OK ? 0 : -1;
}

static int unload(void **state)
{
    fixture *self = *state;
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    return 0;
}

/* Reads words that have no fault; the first item's ask. */
static const ow_ask *ask(fixture *self, const ow_ask_words *words)
{
    ow_status status = ow_ask_read(&self->context, self->catalog, self->net, words, &self->set);
    for (size_t index = 0; index < self->sink.count; index++)
        print_error("%s\n", self->sink.items[index].told);
    assert_int_equal(status, OW_OK);
    return &self->set.items[0].ask;
}

static void done(fixture *self)
{
    ow_ask_set_done(&self->set);
}

static bool found(const fixture *self, size_t item, const char *rule)
{
    const ow_findings *findings = &self->set.items[item].findings;
    for (size_t index = 0; index < findings->count; index++) {
        if (strcmp(findings->items[index].rule->id, rule) == 0)
            return true;
    }
    return false;
}

#define WORDS(from_words, to_words)                         \
    {                                                       \
        .from = from_words, .to = {to_words}, .to_count = 1 \
    }

/* ---- defaults ------------------------------------------------------------------------------------------ */

static void two_bare_ends_ask_nothing_that_is_not_said(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = WORDS("1/8-27 NPT female", "-4 flare37 male");
    const ow_ask *asked = ask(self, &words);
    assert_int_equal(asked->circuit, OW_CIRCUIT_NONE);
    assert_int_equal(asked->limits.flexible, OW_ANY);
    assert_false(asked->limits.closing);
    assert_int_equal(asked->limits.restrictor, OW_RESTRICTOR_ANY);
    assert_int_equal(asked->limits.fluid, OW_FLUID_NONE);
    assert_true(asked->limits.rating_pa < 0.0 && asked->limits.least_bore_m < 0.0);
    assert_false(asked->limits.no_tee || asked->limits.no_clamp || asked->limits.tolerate ||
                 asked->limits.has_temperature);
    assert_int_equal(self->set.items[0].findings.count, 0);
    assert_string_equal(asked->givens[0].name, "from");
    assert_string_equal(asked->givens[1].name, "to");
    done(self);
}

static void a_circuit_alone_brings_its_defaults(void **state)
{
    fixture *self = *state;
    static const struct {
        const char *circuit;
        double bar;
        ow_fluid fluid;
        ow_restrictor_ask restrictor;
        bool no_tee;
    } wanted[] = {{"feed", 6.0, OW_FLUID_OIL, OW_RESTRICTOR_ANY, false},
                  {"drain", 0.3, OW_FLUID_OIL, OW_RESTRICTOR_FORBIDDEN, true},
                  {"coolant", 2.0, OW_FLUID_COOLANT, OW_RESTRICTOR_FORBIDDEN, false}};
    for (size_t index = 0; index < 3; index++) {
        ow_ask_words words = WORDS("1/8-27 NPT female", "-4 flare37 male");
        words.circuit = wanted[index].circuit;
        const ow_limits *limits = &ask(self, &words)->limits;
        assert_int_equal(limits->flexible, OW_YES);
        assert_true(limits->closing);
        assert_near(limits->rating_pa, wanted[index].bar * 1e5, 1e-9);
        assert_int_equal(limits->fluid, wanted[index].fluid);
        assert_int_equal(limits->restrictor, wanted[index].restrictor);
        assert_int_equal(limits->no_tee, wanted[index].no_tee);
        assert_int_equal(limits->no_clamp, index == 0);
        assert_true(found(self, 0, "pressure-assumed"));
        /* A unit that nobody named may have anything built in. */
        assert_int_equal(found(self, 0, "restrictor-unknown"), index == 0);
        done(self);
    }
}

static void the_rating_is_the_pressure_of_the_source_or_assumed_and_told(void **state)
{
    fixture *self = *state;
    const ow_ask_words given = WORDS("eng:gallery", "plain:in");
    assert_near(ask(self, &given)->limits.rating_pa, 4.5e5, 1e-9);
    assert_false(found(self, 0, "pressure-assumed"));
    done(self);
    const ow_ask_words silent = WORDS("bare:gallery", "plain:in");
    assert_near(ask(self, &silent)->limits.rating_pa, 6e5, 1e-9);
    assert_true(found(self, 0, "pressure-assumed"));
    done(self);
    ow_ask_words said = WORDS("bare:gallery", "plain:in");
    said.rating = "10 bar";
    assert_near(ask(self, &said)->limits.rating_pa, 10e5, 1e-9);
    assert_false(found(self, 0, "pressure-assumed"));
    done(self);
}

static void a_feed_has_the_restrictor_that_the_unit_wants(void **state)
{
    fixture *self = *state;
    static const struct {
        const char *to;
        ow_restrictor_ask wants;
        bool unknown;
    } units[] = {{"plain:in", OW_RESTRICTOR_FORBIDDEN, false},
                 {"ball:in", OW_RESTRICTOR_REQUIRED, false},
                 {"held:in", OW_RESTRICTOR_FORBIDDEN, false},
                 {"odd:in", OW_RESTRICTOR_ANY, true}};
    for (size_t index = 0; index < sizeof units / sizeof units[0]; index++) {
        const ow_ask_words words = WORDS("bare:gallery", units[index].to);
        assert_int_equal(ask(self, &words)->limits.restrictor, units[index].wants);
        assert_int_equal(found(self, 0, "restrictor-unknown"), units[index].unknown);
        done(self);
    }
}

static void the_bearing_that_is_said_goes_before_that_of_the_catalogue(void **state)
{
    fixture *self = *state;
    ow_ask_words words = WORDS("bare:gallery", "odd:in");
    words.bearing = "journal";
    assert_int_equal(ask(self, &words)->limits.restrictor, OW_RESTRICTOR_FORBIDDEN);
    done(self);
    words = (ow_ask_words)WORDS("1/8-27 NPT female", "-4 flare37 male");
    words.circuit = "feed";
    words.bearing = "ball"; /* and whether one is built in, nobody knows */
    assert_int_equal(ask(self, &words)->limits.restrictor, OW_RESTRICTOR_ANY);
    assert_true(found(self, 0, "restrictor-unknown"));
    done(self);
}

static void two_units_that_want_different_things_each_get_theirs(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = {.from = "bare:gallery", .to = {"plain:in", "ball:in"}, .to_count = 2};
    assert_int_equal(ask(self, &words)->limits.restrictor, OW_RESTRICTOR_BY_UNIT);
    done(self);
}

static void a_drain_is_held_to_the_bore_of_the_outlet_from_either_side_and_only_warns(void **state)
{
    fixture *self = *state;
    const ow_ask_words down = WORDS("plain:oil-out", "eng:plate"), up = WORDS("eng:plate", "plain:oil-out");
    const ow_limits *limits = &ask(self, &down)->limits;
    assert_near(limits->least_bore_m, 0.015, 1e-9);
    assert_true(limits->bore_warns && limits->no_tee);
    done(self);
    assert_near(ask(self, &up)->limits.least_bore_m, 0.015, 1e-9);
    done(self);
    ow_ask_words said = WORDS("plain:oil-out", "eng:plate");
    said.bore = "12 mm";
    limits = &ask(self, &said)->limits;
    assert_near(limits->least_bore_m, 0.012, 1e-9);
    assert_false(limits->bore_warns); /* what is asked for refuses */
    done(self);
}

static void what_the_words_say_goes_before_the_defaults(void **state)
{
    fixture *self = *state;
    ow_ask_words words = WORDS("eng:gallery", "ball:in");
    words.flexible = "any";
    words.closing = "no";
    words.restrictor = "any";
    words.orifice = "0.8..1.2 mm";
    words.temperature = "130 C";
    words.fluid = "coolant";
    words.bore = "3 mm";
    words.hose = "650 mm";
    words.tolerate = true;
    words.remote_switch = true;
    const ow_ask *asked = ask(self, &words);
    const ow_limits *limits = &asked->limits;
    assert_int_equal(limits->flexible, OW_ANY);
    assert_false(limits->closing);
    assert_int_equal(limits->restrictor, OW_RESTRICTOR_ANY);
    assert_near(limits->orifice_low_m, 0.0008, 1e-9);
    assert_near(limits->orifice_high_m, 0.0012, 1e-9);
    assert_true(limits->has_temperature);
    assert_near(limits->temperature_c, 130.0, 1e-9);
    assert_int_equal(limits->fluid, OW_FLUID_COOLANT);
    assert_near(limits->least_bore_m, 0.003, 1e-9);
    assert_near(asked->hose_length_m, 0.65, 1e-9);
    assert_true(limits->tolerate && limits->remote_switch);
    done(self);
}

/* ---- circuits and ports -------------------------------------------------------------------------------- */

static void the_circuit_comes_from_the_port_that_is_named(void **state)
{
    fixture *self = *state;
    static const struct {
        const char *from, *to;
        ow_circuit circuit;
    } asks[] = {{"eng:gallery", "-4 flare37 male", OW_FEED}, {"1/8-27 NPT female", "plain:in", OW_FEED},
                {"plain:oil-out", "eng:plate", OW_DRAIN},    {"eng:out", "plain:water", OW_COOLANT},
                {"eng", "plain:water", OW_COOLANT},          {"eng", "-4 flare37 male", OW_FEED}};
    for (size_t index = 0; index < sizeof asks / sizeof asks[0]; index++) {
        const ow_ask_words words = WORDS(asks[index].from, asks[index].to);
        assert_int_equal(ask(self, &words)->circuit, asks[index].circuit);
        done(self);
    }
}

static void an_engine_alone_is_asked_about_at_every_source_port(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = WORDS("eng", "plain");
    ask(self, &words);
    assert_int_equal(self->set.count, 2);
    assert_string_equal(self->set.items[0].ask.givens[0].name, "eng:gallery");
    assert_string_equal(self->set.items[1].ask.givens[0].name, "eng:rear");
    assert_string_equal(self->set.items[0].ask.givens[1].name, "plain:in"); /* its only feed port */
    assert_null(self->set.items[0].reading);
    assert_null(self->set.decide);
    /* What holds for one source port need not hold for another. */
    assert_true(found(self, 0, "switch-loses-place"));
    assert_false(found(self, 1, "switch-loses-place"));
    assert_false(found(self, 0, "pressure-assumed"));
    assert_true(found(self, 1, "pressure-assumed"));
    done(self);
}

static void a_kept_switch_does_not_lose_its_place(void **state)
{
    fixture *self = *state;
    static const struct {
        const char *keep;
        bool loses;
    } keeps[] = {{"sw", false}, {"sn", true}, {"1/8-27 NPT male", false}};
    for (size_t index = 0; index < 3; index++) {
        const ow_ask_words words = {.from = "eng:gallery",
                                    .to = {"plain:in"},
                                    .to_count = 1,
                                    .keep = {keeps[index].keep},
                                    .keep_count = 1};
        const ow_ask *asked = ask(self, &words);
        assert_int_equal(found(self, 0, "switch-loses-place"), keeps[index].loses);
        assert_int_equal(asked->givens[2].role, OW_ROLE_KEEP);
        assert_string_equal(asked->givens[2].name, index == 2 ? "keep" : keeps[index].keep);
        done(self);
    }
}

static void equal_names_are_numbered(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = {.from = "1/8-27 NPT female",
                                .to = {"-4 flare37 male", "-6 flare37 male"},
                                .to_count = 2,
                                .keep = {"sw", "sw", "M10x1 male taper"},
                                .keep_count = 3};
    const ow_ask *asked = ask(self, &words);
    static const char *const names[] = {"from", "to", "to#2", "sw", "sw#2", "keep"};
    assert_int_equal(asked->given_count, 6);
    for (size_t index = 0; index < 6; index++)
        assert_string_equal(asked->givens[index].name, names[index]);
    done(self);
}

/* ---- readings ------------------------------------------------------------------------------------------ */

static void an_end_without_pitch_is_read_in_every_pitch_in_use(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = WORDS("M10 female washer", "-4 flare37 male");
    ask(self, &words);
    assert_int_equal(self->set.count, 2);
    assert_string_equal(self->set.items[0].reading, "M10x1 female washer");
    assert_string_equal(self->set.items[1].reading, "M10x1.25 female washer");
    /* ISO 261: pitches 1 and 1.25 mm, over ten threads 10 and 12.5 mm. */
    assert_non_null(strstr(self->set.decide, "over ten threads 10 mm is M10x1, 12.5 mm is M10x1.25"));
    assert_null(strstr(self->set.decide, "seat"));
    done(self);
}

static void an_end_without_seat_is_read_in_every_seat_in_use(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = WORDS("3/8-24 UNF female", "-4 flare37 male");
    ask(self, &words);
    assert_int_equal(self->set.count, 2);
    assert_string_equal(self->set.items[0].reading, "-3 o-ring female"); /* SAE J1926-1: 3/8-24 is dash 3 */
    assert_string_equal(self->set.items[1].reading, "3/8-24 UNF female washer");
    assert_non_null(strstr(self->set.decide, "the seat: "));
    assert_non_null(strstr(self->set.decide, "a flat, square face"));
    assert_null(strstr(self->set.decide, "over ten threads"));
    done(self);
}

static void two_ends_left_open_are_read_in_each_combination(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = WORDS("M10 female washer", "3/8-24 UNF female");
    ask(self, &words);
    assert_int_equal(self->set.count, 4);
    assert_string_equal(self->set.items[0].reading, "M10x1 female washer and -3 o-ring female");
    assert_string_equal(self->set.items[3].reading, "M10x1.25 female washer and 3/8-24 UNF female washer");
    for (size_t index = 0; index < 4; index++)
        for (size_t given = 0; given < 2; given++)
            assert_true(ow_end_is_whole(&self->set.items[index].ask.givens[given].end));
    done(self);
}

static void a_whole_end_has_no_reading(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = WORDS("M10x1 female washer", "-4 flare37 male");
    ask(self, &words);
    assert_int_equal(self->set.count, 1);
    assert_null(self->set.items[0].reading);
    assert_null(self->set.decide);
    done(self);
}

static void more_readings_than_can_be_answered_at_once_are_refused(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = {.from = "M10 female washer",
                                .to = {"M10 male washer", "M10 male washer", "M10 male washer"},
                                .to_count = 3,
                                .keep = {"M10 male washer", "M10 male washer", "M10 male washer"},
                                .keep_count = 3};
    ow_ask_set set;
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, &words, &set), OW_LIMIT); /* 2^7 */
    assert_int_equal(self->sink.count, 1);
    assert_non_null(strstr(self->sink.items[0].message, "more than 64 readings"));
    ow_test_diagnostics_clear(&self->sink);
}

/* Each option by the name that the words are known by goes to the words of that name, and to no other's. */
static void an_option_goes_where_its_name_says(void **state)
{
    (void)state;
    ow_ask_typed typed = {0};
    ow_ask_words *words = &typed.words;
    const struct {
        const char *name;
        const char **place;
    } once[] = {
        {"from", &words->from},
        {"circuit", &words->circuit},
        {"bearing", &words->bearing},
        {"bore", &words->bore},
        {"flexible", &words->flexible},
        {"closing", &words->closing},
        {"restrictor", &words->restrictor},
        {"orifice", &words->orifice},
        {"rating", &words->rating},
        {"temperature", &words->temperature},
        {"fluid", &words->fluid},
        {"hose", &words->hose},
    };
    size_t most = 0;
    for (size_t i = 0; i < sizeof once / sizeof once[0]; i++)
        assert_int_equal(ow_ask_typed_put(&typed, once[i].name, once[i].name, &most), OW_OK);
    for (size_t i = 0; i < sizeof once / sizeof once[0]; i++)
        assert_string_equal(*once[i].place, once[i].name);
    assert_int_equal(ow_ask_typed_put(&typed, "bore", "4 mm", &most), OW_OK);
    assert_string_equal(words->bore, "4 mm");
    assert_false(words->tolerate || words->remote_switch);
    assert_int_equal(ow_ask_typed_put(&typed, "tolerate", NULL, &most), OW_OK);
    assert_true(words->tolerate && !words->remote_switch);
    assert_int_equal(ow_ask_typed_put(&typed, "remote-switch", "yes", &most), OW_OK);
    assert_int_equal(ow_ask_typed_put(&typed, "tolerate", "no", &most), OW_OK);
    assert_true(!words->tolerate && words->remote_switch);
    assert_int_equal(ow_ask_typed_put(&typed, "tolerate", "perhaps", &most), OW_INPUT);
    assert_int_equal(ow_ask_typed_put(&typed, "best", "3", &most), OW_NONE);
}

static void an_option_is_taken_as_often_as_there_is_room_for_it(void **state)
{
    (void)state;
    ow_ask_typed typed = {0};
    const ow_ask_words *words = &typed.words;
    static const struct {
        const char *name;
        size_t most;
    } lists[] = {{"to", OW_TO_MAX}, {"keep", OW_PORTS_MAX - 1}, {"without", OW_WITHOUT_MAX}};
    for (size_t i = 0; i < sizeof lists / sizeof lists[0]; i++) {
        size_t most = 0;
        for (size_t count = 0; count < lists[i].most; count++)
            assert_int_equal(ow_ask_typed_put(&typed, lists[i].name, lists[i].name, &most), OW_OK);
        assert_int_equal(ow_ask_typed_put(&typed, lists[i].name, "one more", &most), OW_RANGE);
        assert_int_equal(most, lists[i].most);
    }
    assert_int_equal(words->to_count, OW_TO_MAX);
    assert_int_equal(words->keep_count, OW_PORTS_MAX - 1);
    assert_int_equal(words->without_count, OW_WITHOUT_MAX);
    assert_string_equal(words->to[OW_TO_MAX - 1], "to");
    assert_string_equal(words->keep[OW_PORTS_MAX - 2], "keep");
    assert_string_equal(words->without[OW_WITHOUT_MAX - 1], "without");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_option_goes_where_its_name_says),
        cmocka_unit_test(an_option_is_taken_as_often_as_there_is_room_for_it),
        cmocka_unit_test(two_bare_ends_ask_nothing_that_is_not_said),
        cmocka_unit_test(a_circuit_alone_brings_its_defaults),
        cmocka_unit_test(the_rating_is_the_pressure_of_the_source_or_assumed_and_told),
        cmocka_unit_test(a_feed_has_the_restrictor_that_the_unit_wants),
        cmocka_unit_test(the_bearing_that_is_said_goes_before_that_of_the_catalogue),
        cmocka_unit_test(two_units_that_want_different_things_each_get_theirs),
        cmocka_unit_test(a_drain_is_held_to_the_bore_of_the_outlet_from_either_side_and_only_warns),
        cmocka_unit_test(what_the_words_say_goes_before_the_defaults),
        cmocka_unit_test(the_circuit_comes_from_the_port_that_is_named),
        cmocka_unit_test(an_engine_alone_is_asked_about_at_every_source_port),
        cmocka_unit_test(a_kept_switch_does_not_lose_its_place),
        cmocka_unit_test(equal_names_are_numbered),
        cmocka_unit_test(an_end_without_pitch_is_read_in_every_pitch_in_use),
        cmocka_unit_test(an_end_without_seat_is_read_in_every_seat_in_use),
        cmocka_unit_test(two_ends_left_open_are_read_in_each_combination),
        cmocka_unit_test(a_whole_end_has_no_reading),
        cmocka_unit_test(more_readings_than_can_be_answered_at_once_are_refused),
    };
    return cmocka_run_group_tests(tests, load, unload);
}
