/* SPDX-License-Identifier: MIT */
/* LINE and LOOP: what is read, what is told of what cannot be. */
#include "oilway/line.h"

#include <string.h>

#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/near.h"

static const double pi = 3.14159265358979323846;
static const double lpm = 1.0 / 60000.0;

static const char worked[] =
    "line: w7\n"
    "oil: 15W-40\n"
    "rise: 0.25 m\n"
    "roughness: 1.5 um\n"
    "states: [{name: hot rev, oil: 100 C, gallery: 4.5 bar}]\n"
    "pieces:\n"
    "  - chamber\n"
    "  - pipe: {bore: 4.4 mm, length: 28 mm}\n"
    "  - tee-branch: {bore: 6.0 mm}\n"
    "  - pipe: {bore: 4.4 mm, length: 30 mm}\n"
    "  - pipe: {bore: 4.8 mm, length: 650 mm, name: hose}\n"
    "  - elbow-90: {bore: 4.4 mm}\n"
    "  - pipe: {bore: 4.4 mm, length: 30 mm}\n"
    "  - chamber\n"
    "load: {name: turbo, flow: 2 L/min, at: 3 bar, viscosity: 8 mPa.s, density: 830 kg/m3, "
    "laminar-share: 1}\n";

static const char loop_words[] = "loop: level hoses\n"
                                 "coolant: 50 % glycol\n"
                                 "heat: 300 W\n"
                                 "cold: 90 C\n"
                                 "ports: {apart: 70 mm, angle: 15 deg}\n"
                                 "rise: 0.20 m\n"
                                 "cold-leg: [pipe: {bore: 10 mm, length: 1.0 m}]\n"
                                 "hot-leg: [pipe: {bore: 10 mm, length: 0.6 m}]\n"
                                 "jacket: {k: 6, bore: 10 mm}\n"
                                 "cap: 1.0 bar\n";

static ow_status read_line(const ow_context *context, const char *words, ow_line *line)
{
    return ow_line_read(context, "line.yaml", words, strlen(words), line);
}

static void a_line_gives_the_worked_figures(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_line line;
    assert_int_equal(read_line(&context, worked, &line), OW_OK);
    assert_string_equal(line.feed.title, "w7");
    assert_int_equal(line.feed.trunk.piece_count, 8);
    assert_string_equal(line.feed.trunk.pieces[4].name, "hose");
    ow_feed_answer answer;
    assert_int_equal(ow_feed_solve(&context, &line.feed, &answer), OW_OK);
    assert_near(answer.results[0].flow_m3s / lpm, 1.832, 1e-3);
    assert_near(answer.results[0].turbo_pa / 1e5, 4.154, 1e-3);
    ow_feed_answer_free(&answer);
    assert_int_equal(line.assumptions.count, 1); /* the oil's figures */
    assert_string_equal(line.assumptions.items[0].what, "oil");
    ow_line_free(&line);
    assert_int_equal(sink.count, 0);
}

static void what_is_not_given_is_an_assumption(void **state)
{
    (void)state;
    ow_context context = OW_CONTEXT_INIT;
    ow_line line;
    assert_int_equal(read_line(&context,
                               "oil: {kv40: 110, kv100: 14.7}\n"
                               "pieces: [pipe: {bore: 4.8 mm, length: 650 mm}]\n"
                               "load: {bearing: ball}\n",
                               &line),
                     OW_OK);
    assert_int_equal(line.feed.state_count, 3);
    assert_true(line.feed.states[0].assumed);
    assert_near(line.feed.trunk.load.flow_m3s, 0.8 * lpm, 1e-12);
    assert_near(line.feed.trunk.load.laminar_share, 0.5, 1e-12);
    /* density, roughness, three states, five figures of the load */
    assert_int_equal(line.assumptions.count, 10);
    for (size_t i = 0; i < line.assumptions.count; i++)
        assert_true(line.assumptions.items[i].value[0] != '\0' &&
                    line.assumptions.items[i].source[0] != '\0');
    ow_line_free(&line);
}

static void a_split_has_loads_and_dead_ends(void **state)
{
    (void)state;
    ow_context context = OW_CONTEXT_INIT;
    ow_line line;
    assert_int_equal(read_line(&context,
                               "oil: 10W-40\n"
                               "pieces: [chamber, pipe: {bore: 4.4 mm, length: 50 mm}]\n"
                               "split:\n"
                               "  - {name: front, rise: 0.1 m, pieces: [pipe: {bore: 3.2 mm, length: 0.4 "
                               "m}], load: {flow: 1 L/min}}\n"
                               "  - {name: sw-2}\n",
                               &line),
                     OW_OK);
    assert_int_equal(line.feed.trunk.branch_count, 2);
    assert_string_equal(line.feed.trunk.branches[0].name, "front");
    assert_near(line.feed.trunk.branches[0].rise_m, 0.1, 1e-12);
    assert_false(line.feed.trunk.branches[1].has_load);
    ow_line_free(&line);
}

static void a_wanted_restrictor_is_found(void **state)
{
    (void)state;
    ow_context context = OW_CONTEXT_INIT;
    ow_line line;
    assert_int_equal(read_line(&context,
                               "oil: 10W-40\n"
                               "rise: 0.25 m\n"
                               "states: [{name: hot rev, oil: 100 C, gallery: 5 bar}]\n"
                               "pieces:\n"
                               "  - chamber\n"
                               "  - pipe: {bore: 4.4 mm, length: 28 mm}\n"
                               "  - tee-branch: {bore: 6.0 mm}\n"
                               "  - pipe: {bore: 4.4 mm, length: 30 mm}\n"
                               "  - pipe: {bore: 4.8 mm, length: 650 mm}\n"
                               "  - elbow-90: {bore: 4.4 mm}\n"
                               "  - pipe: {bore: 4.4 mm, length: 12 mm}\n"
                               "  - restrictor: wanted\n"
                               "  - chamber\n"
                               "load: {flow: 0.8 L/min, laminar-share: 0.5}\n"
                               "restrictor: {length: 3 mm, target: 3.0 bar, state: hot rev}\n",
                               &line),
                     OW_OK);
    ow_feed_answer answer;
    assert_int_equal(ow_feed_solve(&context, &line.feed, &answer), OW_OK);
    assert_near(answer.restrictor.bore_m * 1e3, 1.019, 1e-3);
    ow_feed_answer_free(&answer);
    ow_line_free(&line);
}

/* Each line of words is a whole LINE but for one fault. */
#define REST "pieces: [pipe: {bore: 4.4 mm, length: 1 m}]\nload: {flow: 1 L/min}\n"
static const struct {
    const char *words, *told;
} LINE_FAULTS[] = {
    {REST, "line.yaml:1:1: error: \"oil\" is missing"},
    {"oil: 15W-41\n" REST, "line.yaml:1:6: error: \"15W-41\" is no SAE grade"},
    {"oil: 10W-20\n" REST, "line.yaml:1:6: error: no typical oil of grade \"10W-20\" is known"},
    {"oil: {kv40: 14, kv100: 15}\n" REST,
     "line.yaml:1:6: error: no oil has 14 mm2/s at 40 C and 15 at 100 C"},
    {"oil: [1]\n" REST, "line.yaml:1:6: error: a list where an oil belongs"},
    {"oil: SAE 30\nrise: 0.25\n" REST, "line.yaml:2:7: error: rise: \"0.25\" has no unit"},
    {"oil: SAE 30\nrise: 21 m\n" REST, "line.yaml:2:7: error: rise: \"21 m\" is out of range"},
    {"oil: SAE 30\nstates: []\n" REST, "line.yaml:2:9: error: no list of states"},
    {"oil: {kv40: 5000, kv100: 2}\nstates: [{oil: -40 C, gallery: 1 bar}]\n" REST,
     "line.yaml:2:16: error: at -40 C this oil is as good as solid"},
    {"oil: SAE 30\npieces: [pip: {bore: 4 mm}]\nload: {flow: 1 L/min}\n",
     "line.yaml:2:10: error: \"pip\" is no piece"},
    {"oil: SAE 30\npieces: [pipe]\nload: {flow: 1 L/min}\n", "line.yaml:2:10: error: pipe has no figures"},
    {"oil: SAE 30\npieces: [chamber: {bore: 4 mm}]\nload: {flow: 1 L/min}\n",
     "line.yaml:2:19: error: a chamber has no figures"},
    {"oil: SAE 30\npieces: [holes: {count: 1.5, bore: 4 mm, length: 1 mm}]\nload: {flow: 1 L/min}\n",
     "line.yaml:2:25: error: count: \"1.5\" is no whole number"},
    {"oil: SAE 30\npieces: [elbow-90: {bore: 0 mm}]\nload: {flow: 1 L/min}\n",
     "line.yaml:2:27: error: bore: \"0 mm\" is out of range"},
    {"oil: SAE 30\npieces: 4 mm\nload: {flow: 1 L/min}\n", "line.yaml:2:9: error: not a list of pieces"},
    {"oil: SAE 30\npieces: [chamber]\n", "line.yaml:1:1: error: the line ends in no load"},
    {"oil: SAE 30\npieces: [chamber]\nload: {size: huge}\n",
     "line.yaml:3:14: error: size: \"huge\" is not known"},
    {"oil: SAE 30\npieces: [restrictor: wanted]\nload: {flow: 1 L/min}\n",
     "line.yaml:2:22: error: a restrictor is wanted, but not what it must hold"},
    {"oil: SAE 30\nrestrictor: {length: 3 mm, target: 3 bar}\n" REST,
     "line.yaml:2:13: error: a restrictor is asked for, but its place is not said"},
    {"oil: SAE 30\npieces: [chamber]\nload: {flow: 1 L/min}\nsplit: [{load: {flow: 1 L/min}}]\n",
     "line.yaml:4:8: error: a line ends in one thing only"},
    {"oil: SAE 30\npieces: [chamber]\nsplit: [{split: [{split: [{split: [{load: {flow: 1 "
     "L/min}}]}]}]}]\n",
     "line.yaml:3:35: error: no split that can be reckoned"},
    {"- 1\n", "line.yaml:1:1: error: not a map"},
};

static void each_fault_of_a_line_is_told_with_its_place(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    for (size_t i = 0; i < sizeof LINE_FAULTS / sizeof LINE_FAULTS[0]; i++) {
        ow_line line = {.storage = &sink};
        assert_int_equal(read_line(&context, LINE_FAULTS[i].words, &line), OW_INPUT);
        assert_ptr_equal(line.storage, &sink); /* untouched */
        ow_test_assert_told(&sink, LINE_FAULTS[i].told);
    }
}

static void all_faults_of_a_line_are_told(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_line line;
    assert_int_equal(read_line(&context,
                               "line: bad\noil: 15W-41\nrise: 25\nroughnes: 1.5 um\n"
                               "states: [{name: hot, oil: 300 C, gallery: 4.5 bar}]\n"
                               "pieces: [chamber, pip: {bore: 4.4 mm}, tee-branch: {bore: 6.0}, elbow-90]\n"
                               "load: {name: turbo, flow: 0.8 L/min, size: huge}\n",
                               &line),
                     OW_INPUT);
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 8);
    assert_non_null(ow_test_find(&sink, "roughnes"));
    assert_string_equal(ow_test_find(&sink, "pip")->mend, "did you mean \"pipe\"?");
    assert_string_equal(ow_test_find(&sink, "pip")->marked, "pip");
    ow_test_diagnostics_clear(&sink);
}

static void a_loop_gives_the_worked_figures(void **state)
{
    (void)state;
    ow_context context = OW_CONTEXT_INIT;
    ow_loop_text loop;
    assert_int_equal(ow_loop_read(&context, "loop.yaml", loop_words, strlen(loop_words), &loop), OW_OK);
    assert_int_equal(loop.assumptions.count, 0);
    assert_near(loop.loop.angle_rad, 15.0 * pi / 180.0, 1e-9);
    ow_siphon siphon;
    assert_int_equal(ow_siphon_solve(&loop.loop, &siphon), OW_OK);
    assert_near(siphon.flow_m3s / lpm, 0.2389, 1e-3);
    assert_near(siphon.rise_k, 20.36, 1e-3);
    ow_loop_free(&loop);
}

static void a_bare_loop_lists_its_assumptions(void **state)
{
    (void)state;
    static const char words[] = "ports: {apart: 70 mm, angle: -15 deg}\n"
                                "cold-leg: [chamber, pipe: {bore: 8 mm, length: 1.0 m}]\n"
                                "hot-leg: [pipe: {bore: 10 mm, length: 0.6 m}]\n";
    ow_context context = OW_CONTEXT_INIT;
    ow_loop_text loop;
    assert_int_equal(ow_loop_read(&context, "loop.yaml", words, strlen(words), &loop), OW_OK);
    /* coolant, heat, cold, cap, rise, the jacket's coefficient and bore */
    assert_int_equal(loop.assumptions.count, 7);
    assert_near(loop.loop.jacket_bore_m, 0.008, 1e-12);
    assert_near(loop.loop.jacket_coefficient, 6.0, 1e-12);
    assert_true(loop.loop.angle_rad < 0.0);
    ow_loop_free(&loop);
}

static void each_fault_of_a_loop_is_told_with_its_place(void **state)
{
    (void)state;
#define LEGS "cold-leg: [pipe: {bore: 8 mm, length: 1 m}]\nhot-leg: [pipe: {bore: 8 mm, length: 1 m}]\n"
#define PORTS "ports: {apart: 70 mm, angle: 15 deg}\n"
    static const struct {
        const char *words, *told;
    } rows[] = {
        {LEGS, "loop.yaml:1:1: error: \"ports\" is missing"},
        {"ports: {apart: 70 mm, angle: 91 deg}\n" LEGS,
         "loop.yaml:1:30: error: angle: \"91 deg\" is out of range"},
        {"coolant: brine\n" PORTS LEGS, "loop.yaml:1:10: error: coolant: \"brine\" is not known"},
        {"heat: 0 W\n" PORTS LEGS, "loop.yaml:1:7: error: heat: \"0 W\" is out of range"},
        {"cold: 140 C\n" PORTS LEGS, "loop.yaml:1:7: error: cold: \"140 C\" is out of range"},
        {"cap: 4 bar\n" PORTS LEGS, "loop.yaml:1:6: error: cap: \"4 bar\" is out of range"},
        {"jacket: 6\n" PORTS LEGS, "loop.yaml:1:9: error: not a map"},
        {PORTS "cold-leg: []\nhot-leg: [pipe: {bore: 8 mm, length: 1 m}]\n",
         "loop.yaml:2:11: error: cold-leg: no pieces"},
        {PORTS "cold-leg: [restrictor: wanted]\nhot-leg: [pipe: {bore: 8 mm, length: 1 m}]\n",
         "loop.yaml:2:24: error: no restrictor can be asked for here"},
    };
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_loop_text loop;
        assert_int_equal(ow_loop_read(&context, "loop.yaml", rows[i].words, strlen(rows[i].words), &loop),
                         OW_INPUT);
        ow_test_assert_told(&sink, rows[i].told);
    }
}

static void one_document_and_no_more(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_line line;
    assert_int_equal(read_line(&context, "", &line), OW_INPUT);
    ow_test_diagnostics_clear(&sink);
    assert_int_equal(read_line(&context, "oil: SAE 30\n---\noil: SAE 40\n", &line), OW_INPUT);
    assert_int_equal(sink.items[0].line, 3);
    ow_test_diagnostics_clear(&sink);
}

static ow_status read_both(const ow_context *context, void *data)
{
    (void)data;
    static const char bare[] =
        "oil: {kv40: 110, kv100: 14.7}\npieces: [chamber]\nsplit: [{name: a, load: {}}, {name: b}]\n";
    ow_line line = {0};
    ow_loop_text loop = {0};
    ow_status status = ow_line_read(context, "line.yaml", bare, strlen(bare), &line);
    if (status == OW_OK) {
        status = ow_loop_read(context, "loop.yaml", loop_words, strlen(loop_words), &loop);
        ow_line_free(&line);
    }
    if (status == OW_OK)
        ow_loop_free(&loop);
    return status;
}

static ow_status read_bad(const ow_context *context, void *data)
{
    (void)data;
    static const char bad[] = "oil: 15W-41\nrise: 25\npieces: [pip: {bore: 4 mm}]\nload: {size: huge}\n";
    ow_line line = {0};
    return ow_line_read(context, "line.yaml", bad, strlen(bad), &line);
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    assert_true(ow_test_fail_each(read_both, NULL) > 20);
    assert_true(ow_test_fail_each(read_bad, NULL) > 5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_line_gives_the_worked_figures),
        cmocka_unit_test(what_is_not_given_is_an_assumption),
        cmocka_unit_test(a_split_has_loads_and_dead_ends),
        cmocka_unit_test(a_wanted_restrictor_is_found),
        cmocka_unit_test(each_fault_of_a_line_is_told_with_its_place),
        cmocka_unit_test(all_faults_of_a_line_are_told),
        cmocka_unit_test(a_loop_gives_the_worked_figures),
        cmocka_unit_test(a_bare_loop_lists_its_assumptions),
        cmocka_unit_test(each_fault_of_a_loop_is_told_with_its_place),
        cmocka_unit_test(one_document_and_no_more),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
