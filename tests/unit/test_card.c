/* SPDX-License-Identifier: MIT */
/* The joint card: rings by size, tightening by thread, seat and material, engagement, words. */
#include "support/testing.h"

#include <math.h>
#include <string.h>

#include "joints/rings.h"
#include "joints/rules.h"
#include "joints/words.h"
#include "materials/metal.h"
#include "oilway/card.h"

#define LENGTH(array) (sizeof(array) / sizeof(array)[0])

static void assert_near(double value, double expected, double apart)
{
    if (!(fabs(value - expected) <= apart))
        fail_msg("%g, not %g", value, expected);
}

static ow_end read_end(const char *words)
{
    ow_end end;
    if (ow_end_read(words, &end, NULL) != OW_OK)
        fail_msg("%s was not read", words);
    return end;
}

static ow_card card_of(const char *a, const char *b, const ow_card_ask *ask)
{
    ow_end first = read_end(a), second = read_end(b);
    ow_card card;
    if (ow_card_of(&first, &second, ask, &card) != OW_OK)
        fail_msg("no card for %s with %s", a, b);
    return card;
}

/* DIN 7603 form A: 14 x 18 x 1.5 confirmed by look-up, the others from memory. Ring numbers of SAE J1926-1
 * ports and the -904's 8.92 x 1.83 mm confirmed by look-up (AS568). */
static void a_ring_is_named_by_its_size(void **state)
{
    static const char *const CASES[][4] = {
        {"M14x1.5 male washer", "M14x1.5 female washer", "crush ring", "14 x 18 x 1.5 mm"},
        {"G1/4 male washer", "G1/4 female washer", "crush ring", "14 x 18 x 1.5 mm"},
        {"M10x1 male washer", "M10x1 female washer", "crush ring", "10 x 13.5 x 1 mm"},
        {"G1/2 male washer", "G1/2 female washer", "crush ring", "21 x 26 x 1.5 mm"},
        {"-4 o-ring male", "-4 o-ring female", "O-ring", "-904, 8.92 x 1.83 mm"},
        {"-6 o-ring male", "-6 o-ring female", "O-ring", "-906, 11.89 x 1.98 mm"},
        {"-4 face-o-ring male", "-4 face-o-ring female swivel", "O-ring", "-011, 7.65 x 1.78 mm"},
        {"M14x1.5 male o-ring", "M14x1.5 female o-ring", "O-ring", "11.30 x 2.20 mm"},
        {"1/8 NPT male", "1/8 NPT female", "thread sealant", ""},
        {"hose 16 rubber", "barb 16", "hose clamp", "for hose of 16 mm inside"},
        {"flange f38", "flange f38", "gasket", "pattern f38"},
        {"M16x1.5 male cone24 10L", "tube 10", "tube nut", "10L, for 10 mm tube"},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_card card = card_of(CASES[i][0], CASES[i][1], NULL);
        assert_true(card.consumable_count >= 1);
        assert_string_equal(card.consumables[0].what, CASES[i][2]);
        assert_string_equal(card.consumables[0].size, CASES[i][3]);
        assert_true(card.consumables[0].source[0]);
        ow_card turned = card_of(CASES[i][1], CASES[i][0], NULL);
        assert_string_equal(turned.consumables[0].size, card.consumables[0].size);
    }
}

/* 3/8 inch is 9.525 mm: no ring below that passes the thread. */
static void where_no_ring_size_is_published_the_card_says_the_least_inside_and_measure(void **state)
{
    ow_thread bolt = {OW_THREAD_UNIFIED, 24, 48};
    ow_card_ask ask = {.bolt = &bolt};
    (void)state;
    ow_card eye = card_of("banjo 10 stud", "banjo 10 eye", &ask);
    assert_string_equal(eye.consumables[0].size, "inside at least 9.53 mm: measure");
    assert_true(eye.consumables[0].measure);
    assert_non_null(strstr(eye.consumables[0].note, "0.48 mm of play"));
    ow_card thread = card_of("3/8-24 UNF male banjo", "3/8-24 UNF female washer", NULL);
    assert_int_equal(thread.consumable_count, 0);
    assert_string_equal(thread.ring_hint, "inside at least 9.53 mm: measure, counted with the eyes");
    ow_card washer = card_of("7/16-20 UNF male washer", "7/16-20 UNF female washer", NULL);
    assert_string_equal(washer.consumables[0].size, "inside at least 11.12 mm: measure");
}

static void no_card_leaves_a_consumable_without_a_size_blank(void **state)
{
    const ow_thread *thread;
    (void)state;
    for (size_t i = 0; (thread = ow_thread_at(i)); i++) {
        ow_end male = {.form = OW_FORM_THREAD, .gender = OW_MALE, .seat = OW_SEAT_WASHER, .thread = *thread};
        ow_end female = male;
        ow_card card;
        female.gender = OW_FEMALE;
        if (ow_card_of(&male, &female, NULL, &card) != OW_OK)
            continue;
        assert_int_equal(card.consumable_count, 1);
        assert_true(card.consumables[0].size[0] && card.consumables[0].source[0]);
        assert_true(card.consumables[0].inner_mm + 1e-9 >= ow_thread_major_m(thread) * 1000.0 - 0.5);
    }
}

/* DIN 7643 and common practice: n eyes on one bolt need n + 1 rings. */
static void one_eye_takes_two_rings_and_each_further_one_takes_one(void **state)
{
    ow_thread bolt = {OW_THREAD_METRIC, 12000, 1500};
    (void)state;
    for (size_t eyes = 1; eyes <= 3; eyes++) {
        size_t rings = 0;
        for (size_t eye = 0; eye < eyes; eye++) {
            ow_card_ask ask = {.bolt = &bolt, .eye = eye};
            rings += card_of("banjo 12 stud", "banjo 12 eye", &ask).consumables[0].count;
        }
        assert_int_equal(rings, eyes + 1);
    }
    assert_int_equal(card_of("M12x1.5 male banjo", "M12x1.5 female washer", NULL).consumable_count, 0);
}

/* Service literature, as the card itself names it. */
/* A page may write its material as a sentence begins. */
static void a_material_is_known_in_capitals_too(void **state)
{
    (void)state;
    assert_int_equal(ow_material_bits("Aluminium"), OW_ALUMINIUM);
    assert_int_equal(ow_material_bits("Zinc-plated STEEL"), OW_STEEL);
    assert_int_equal(ow_material_bits("BRASS"), OW_COPPER_ALLOY);
    assert_int_equal(ow_material_bits("nylon"), 0);
    assert_int_equal(ow_material_bits("stee"), 0);
    assert_int_equal(ow_material_bits(""), 0);
    assert_int_equal(ow_material_bits(NULL), 0);
    assert_true(ow_material_hardness("Aluminium") < ow_material_hardness("brass"));
    assert_true(ow_material_hardness("bronze") < ow_material_hardness("stainless steel"));
    assert_true(ow_material_hardness("cast iron") < ow_material_hardness("nylon"));
}

static void tightening_goes_by_thread_seat_and_material(void **state)
{
    ow_card_ask aluminium = {.material = "aluminium"}, steel = {.material = "zinc-plated steel"};
    (void)state;
    ow_card card = card_of("-4 flare37 male", "-4 flare37 female swivel", &aluminium);
    assert_true(card.has_torque);
    assert_near(card.least_nm, 5.6, 1e-9);
    assert_near(card.most_nm, 13.6, 1e-9);
    card = card_of("-4 flare37 male", "-4 flare37 female swivel", &steel);
    assert_near(card.least_nm, 11.3, 1e-9); /* the hose nut's figure, of steel or aluminium */
    assert_near(card.most_nm, 19.0, 1e-9);
    card = card_of("M12x1.5 male washer-captive", "M12x1.5 female washer", NULL);
    assert_near(card.least_nm, 25.0, 1e-9);
    assert_near(card.most_nm, 27.5, 1e-9);
    card = card_of("M10x1 male banjo", "M10x1 female washer", &aluminium);
    assert_near(card.least_nm, 15.0, 1e-9);
    assert_near(card.most_nm, 0.8 * 25.5, 1e-9); /* four fifths of the steel figure, as its source says */
    card = card_of("-6 o-ring male", "-6 o-ring female", &aluminium);
    assert_near(card.least_nm, 21.5, 1e-9); /* half, as its source says */
    card = card_of("1/8 NPT male", "1/8 NPT female", NULL);
    assert_near(card.torques[0].least_turns, 2.0, 1e-9);
    assert_near(card.torques[0].most_turns, 3.0, 1e-9);
}

/* Operator manual, 2010s: two flats for a -4 swivel nut, from finger tight; a flat is a sixth of a turn. */
static void a_flare_may_be_tightened_by_the_flats_of_its_nut(void **state)
{
    ow_card card = card_of("-4 flare37 male", "-4 flare37 female swivel", NULL);
    size_t flats = 0;
    (void)state;
    for (size_t i = 0; i < card.torque_count; i++)
        if (strcmp(card.torques[i].what, "swivel nut, from finger tight") == 0) {
            assert_near(card.torques[i].least_turns, 2.0 / 6.0, 1e-9);
            assert_near(card.torques[i].most_nm, 0.0, 1e-9);
            flats++;
        }
    assert_int_equal(flats, 1);
    assert_true(card.has_torque && card.torques[0].most_nm > 0.0); /* flats stand behind the torques */
}

static void where_no_figure_is_published_there_is_none(void **state)
{
    static const char *const CASES[][2] = {
        {"1/4 flare45 male", "1/4 flare45 female swivel"},
        {"G1/4 male cone60", "G1/4 female cone60 swivel"},
        {"3/16 flare45-inverted male", "3/16 flare45-inverted female"},
        {"G1/4 male washer", "G1/4 female washer"},
        {"3/8-24 UNF male banjo", "3/8-24 UNF female washer"},
        {"hose 16 rubber", "barb 16"},
    };
    (void)state;
    for (size_t i = 0; i < LENGTH(CASES); i++) {
        ow_card card = card_of(CASES[i][0], CASES[i][1], NULL);
        assert_int_equal(card.torque_count, 0);
        assert_false(card.has_torque);
    }
}

/* ASME B1.20.1: hand-tight L1 of 1/8 NPT is 0.1615 in, 4.36 threads; three more for the spanner. */
/* Whatever a ring is made of is told by the fluid and heat it sees, as far as they are known. */
static void the_rubber_of_a_ring_is_told(void **state)
{
    ow_card_ask oil = {.ring = {.oil = true, .has_temperature = true, .temperature_c = 130.0}};
    ow_card_ask water = {.ring = {.coolant = true}};
    ow_card_ask hell = {.ring = {.oil = true, .has_temperature = true, .temperature_c = 250.0}};
    (void)state;
    ow_card card = card_of("-6 o-ring male", "-6 o-ring female", NULL);
    assert_non_null(strstr(card.consumables[0].note,
                           "rubber: for oil NBR to 100 C or FKM to 200 C; for coolant EPDM to 150 C"));
    card = card_of("-6 o-ring male", "-6 o-ring female", &oil);
    assert_non_null(strstr(card.consumables[0].note, "rubber: FKM to 200 C"));
    card = card_of("-6 o-ring male", "-6 o-ring female", &water);
    assert_non_null(strstr(card.consumables[0].note, "rubber: EPDM to 150 C"));
    assert_null(strstr(card.consumables[0].note, "NBR"));
    card = card_of("-6 o-ring male", "-6 o-ring female", &hell);
    assert_non_null(strstr(card.consumables[0].note, "none of the usual rubbers stands 250 C"));
}

static void a_taper_thread_engages_its_hand_tight_length_and_the_spanner_s_turns(void **state)
{
    (void)state;
    ow_engagement engagement = card_of("1/8 NPT male", "1/8 NPT female", NULL).engagement;
    assert_true(engagement.has_length);
    assert_near(engagement.least_m / engagement.pitch_m, 0.1615 * 27.0, 0.01);
    assert_near(engagement.most_m / engagement.pitch_m, 0.1615 * 27.0 + 3.0, 0.01);
    assert_int_equal(engagement.enough, OW_ENOUGH);
}

static void enough_thread_is_judged_by_the_pull_of_the_tightening(void **state)
{
    ow_card_ask good = {.material = "steel", .engaged_m = 0.007},
                poor = {.material = "steel", .engaged_m = 0.001};
    ow_card_ask light = {.material = "aluminium", .engaged_m = 0.007};
    (void)state;
    ow_card card = card_of("M14x1.5 male washer", "M14x1.5 female washer", &good);
    assert_int_equal(card.engagement.enough, OW_ENOUGH);
    assert_string_equal(card.engagement.source, "measured");
    assert_true(card.engagement.bears_nm >= card.least_nm);
    double steel_m = card.engagement.needed_m / 38.5; /* highest of the steel figures, threads oiled */
    assert_int_equal(card_of("M14x1.5 male washer", "M14x1.5 female washer", &poor).engagement.enough,
                     OW_NOT_ENOUGH);
    /* The same pull wants 235/140 as much thread in light alloy, 235/138 in brass: von Mises at the least
     * yields of EN 1706 AC-46000 (from memory) and of ASTM B16 C36000 half-hard rod (20 ksi). */
    card = card_of("M14x1.5 male washer", "M14x1.5 female washer", &light);
    assert_near(card.engagement.needed_m / 27.5 / steel_m, 235.0 / 140.0, 1e-6);
    assert_non_null(strstr(card.engagement.needed_why, "light alloy of 140 MPa yield (EN 1706"));
    ow_card_ask soft = {.material = "brass", .engaged_m = 0.007};
    card = card_of("M14x1.5 male washer", "M14x1.5 female washer", &soft);
    double pulls =
        (25.0 / 0.20) / (38.5 / 0.15); /* brass: the one figure for any metal, its threads not oiled */
    assert_near(card.engagement.needed_m / (38.5 * steel_m) / pulls, 235.0 / 138.0, 1e-6);
    assert_non_null(strstr(card.engagement.needed_why, "brass of 138 MPa yield (ASTM B16"));
    ow_card_ask unknown = {.engaged_m = 0.007};
    card = card_of("M14x1.5 male washer", "M14x1.5 female washer", &unknown);
    assert_non_null(
        strstr(card.engagement.needed_why, "steel (no material is said) of 235 MPa yield (EN 10025-2"));
}

static void a_card_s_rule_and_words_are_all_there(void **state)
{
    const ow_joint_rule *rule;
    (void)state;
    for (size_t i = 0; (rule = ow_joint_rule_at(i)); i++) {
        const ow_card_words *words = ow_card_words_find(rule->id);
        if (!words) {
            fail_msg("no words for %s", rule->id);
            return;
        }
        assert_true(words->face[0] && words->sealant[0] && words->reuse[0] && words->cautions[0]);
        bool says_none = strncmp(words->sealant, "none", 4) == 0;
        assert_int_equal(says_none, strncmp(rule->id, "taper-", 6) != 0);
    }
    assert_int_equal(ow_card_words_count(), ow_joint_rule_count());
}

static void no_joint_no_card(void **state)
{
    ow_end a = read_end("-4 flare37 male"), b = read_end("1/4 flare45 female swivel");
    ow_card card = {.consumable_count = 77};
    (void)state;
    assert_int_equal(ow_card_of(&a, &b, NULL, &card), OW_NONE);
    assert_int_equal(card.consumable_count, 77);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_ring_is_named_by_its_size),
        cmocka_unit_test(where_no_ring_size_is_published_the_card_says_the_least_inside_and_measure),
        cmocka_unit_test(no_card_leaves_a_consumable_without_a_size_blank),
        cmocka_unit_test(one_eye_takes_two_rings_and_each_further_one_takes_one),
        cmocka_unit_test(a_material_is_known_in_capitals_too),
        cmocka_unit_test(tightening_goes_by_thread_seat_and_material),
        cmocka_unit_test(a_flare_may_be_tightened_by_the_flats_of_its_nut),
        cmocka_unit_test(where_no_figure_is_published_there_is_none),
        cmocka_unit_test(the_rubber_of_a_ring_is_told),
        cmocka_unit_test(a_taper_thread_engages_its_hand_tight_length_and_the_spanner_s_turns),
        cmocka_unit_test(enough_thread_is_judged_by_the_pull_of_the_tightening),
        cmocka_unit_test(a_card_s_rule_and_words_are_all_there),
        cmocka_unit_test(no_joint_no_card),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
