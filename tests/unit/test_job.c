/* SPDX-License-Identifier: MIT */
/* A job's file: every key read, every fault told at its place. Keys and their meaning: docs/plan.md. */
#include "oilway/job.h"

#include <string.h>

#include "plan/small_shop.h"
#include "support/diagnostics.h"
#include "support/near.h"
#include "support/testing.h"

typedef struct reading {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_job *job;
    ow_status status;
} reading;

static void read_text(reading *self, const char *text)
{
    const ow_catalog_options options = {NULL, 0, NULL, false, false};
    self->sink = (ow_test_diagnostics)OW_TEST_DIAGNOSTICS_INIT;
    self->context = ow_test_context(&self->sink);
    self->job = NULL;
    assert_int_equal(ow_catalog_load_texts(&self->context, small_shop_names, small_shop, SMALL_SHOP_PAGES,
                                           &options, &self->catalog),
                     OW_OK);
    self->status = ow_job_read(&self->context, self->catalog, "job.yaml", text, strlen(text), &self->job);
}

static void done(reading *self)
{
    ow_job_free(self->job);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

#define HEAD "job: x\nengine: motor\nturbo: plain\n"

/* ---- what is read ---------------------------------------------------------------------------------------
 */

static void the_least_job_names_engine_and_turbo(void **state)
{
    reading self;
    (void)state;
    read_text(&self, HEAD);
    assert_int_equal(self.status, OW_OK);
    assert_string_equal(self.job->title, "x");
    assert_string_equal(self.job->engine->id, "motor");
    assert_int_equal(self.job->turbo_count, 1);
    assert_string_equal(self.job->turbos[0]->id, "plain");
    assert_int_equal(self.job->state_count + self.job->keep_count, 0);
    assert_false(self.job->has_oil || self.job->has_feed || self.job->has_drain || self.job->has_coolant);
    assert_false(self.job->turbo_pressure_pa.said || self.job->fill.said || self.job->slope_rad.said);
    assert_null(self.job->stock);
    done(&self);
}

static void every_key_of_the_feed_and_the_states_is_read(void **state)
{
    reading self;
    (void)state;
    read_text(&self, HEAD
              "keep: [sw, 1/4-18 NPT male]\noil: {kv40: 110, kv100: 14.7, rho15: 878}\n"
              "states: [{name: cold, oil: 0 C, gallery: 5.5 bar}, {name: hot rev, oil: 212 F}]\n"
              "feed: {from: gallery, to: oil-in, hose: 650 mm, rise: 0.25 m, bore: 3 mm}\n"
              "limits: {turbo-pressure: 65 psi, fill: 0.4, slope: 20 deg}\nprefer: {stock: drawer.yaml}\n");
    assert_int_equal(self.status, OW_OK);
    const ow_job *job = self.job;
    assert_int_equal(job->keep_count, 2);
    assert_string_equal(job->keep[1], "1/4-18 NPT male");
    assert_true(job->has_oil && job->oil_grade == NULL);
    assert_near(job->oil.kv100_mm2s, 14.7, 1e-12);
    assert_int_equal(job->state_count, 2);
    assert_near(job->states[0].gallery_pa.value, 5.5e5, 1e-9);
    assert_near(job->states[1].oil_c.value, 100.0, 1e-9);
    assert_false(job->states[1].gallery_pa.said);
    assert_string_equal(job->feed.from, "gallery");
    assert_string_equal(job->feed.to, "oil-in");
    assert_near(job->feed.hose_m.value, 0.65, 1e-12);
    assert_near(job->feed.rise_m.value, 0.25, 1e-12);
    assert_near(job->feed.bore_m.value, 0.003, 1e-12);
    assert_near(job->turbo_pressure_pa.value, 65 * 6894.757, 1e-6); /* 1 psi is 6894.757 Pa (NIST SP 811) */
    assert_near(job->fill.value, 0.4, 1e-12);
    assert_near(job->slope_rad.value, 0.3490658504, 1e-9);
    assert_string_equal(job->stock, "drawer.yaml");
    done(&self);
}

static void every_key_of_drain_and_coolant_is_read(void **state)
{
    reading self;
    (void)state;
    read_text(&self, HEAD
              "oil: 15w-40\ndrain: {to: [plate, sump], oil-level: -120 mm, crankcase: 0.5 kPa, hose: "
              "fluoro-silicone, flow: 2 L/min, aeration: 1.5}\n"
              "coolant: {from: bottom, to: head, heater: no, angle: 20 deg, coolant: 50 % glycol, cap: 1.1 "
              "bar, rise: 0.1 m, hoses: [1.0 m, 0.6 m], hose: epdm, heat: 200 W}\n");
    assert_int_equal(self.status, OW_OK);
    const ow_job *job = self.job;
    assert_string_equal(job->oil_grade, "15W-40");
    assert_int_equal(job->drain.to_count, 2);
    assert_string_equal(job->drain.to[1], "sump");
    assert_near(job->drain.oil_level_m.value, -0.12, 1e-12);
    assert_near(job->drain.crankcase_pa.value, 500.0, 1e-9);
    assert_string_equal(job->drain.hose, "fluoro-silicone");
    assert_near(job->drain.flow_m3s.value, 2.0 / 60000.0, 1e-12);
    assert_near(job->drain.aeration.value, 1.5, 1e-12);
    assert_string_equal(job->coolant.from, "bottom");
    assert_string_equal(job->coolant.to, "head");
    assert_true(job->coolant.has_heater && !job->coolant.heater && !job->coolant.teed);
    assert_near(job->coolant.angle_rad.value, 0.3490658504, 1e-9);
    assert_int_equal(job->coolant.coolant, OW_GLYCOL_50);
    assert_near(job->coolant.cap_pa.value, 1.1e5, 1e-9);
    assert_near(job->coolant.rise_m.value, 0.1, 1e-12);
    assert_near(job->coolant.cold_hose_m.value, 1.0, 1e-12);
    assert_near(job->coolant.hot_hose_m.value, 0.6, 1e-12);
    assert_string_equal(job->coolant.hose, "epdm");
    assert_near(job->coolant.heat_w.value, 200.0, 1e-12);
    done(&self);
}

static void the_heater_is_passed_through_by_name_or_teed_into(void **state)
{
    reading self;
    (void)state;
    read_text(&self, HEAD "coolant: {heater: yes}\n");
    assert_true(self.status == OW_OK && self.job->coolant.heater && self.job->coolant.heater_machine == NULL);
    done(&self);
    read_text(&self, HEAD "coolant: {heater: cab}\n");
    assert_int_equal(self.status, OW_OK);
    assert_string_equal(self.job->coolant.heater_machine->id, "cab");
    done(&self);
    read_text(&self, HEAD "coolant: {heater: teed, heater-hose: 16 mm}\n");
    assert_true(self.status == OW_OK && self.job->coolant.teed && !self.job->coolant.heater);
    assert_near(self.job->coolant.heater_hose_m.value, 0.016, 1e-12);
    done(&self);
}

/* A route begins at the outlet, whether or not that is written; pieces go on from the point before them. */
static void a_route_is_given_in_points_or_in_pieces(void **state)
{
    static const char *const routes[] = {
        "[[0 mm, 0 mm, 0 mm], [0 mm, 0 mm, -100 mm], [173.205081 mm, 0 mm, -200 mm]]",
        "[[0 mm, 0 mm, -100 mm], [173.205081 mm, 0 mm, -200 mm]]",
        "[{length: 100 mm, slope: 90 deg}, {length: 200 mm, slope: 30 deg}]",
        "[[0 mm, 0 mm, -10 cm], {length: 200 mm, slope: 30 deg}]"};
    (void)state;
    for (size_t index = 0; index < sizeof routes / sizeof routes[0]; index++) {
        char text[256] = HEAD "drain: {route: ";
        reading self;
        strcat(strcat(text, routes[index]), "}\n");
        if (strstr(text, "-10 cm") != NULL)
            memcpy(strstr(text, "-10 cm"), "-0.1 m", 6);
        read_text(&self, text);
        assert_int_equal(self.status, OW_OK);
        assert_int_equal(self.job->drain.point_count, 3);
        const ow_point *points = self.job->drain.points;
        assert_true(points[0].x_m == 0.0 && points[0].y_m == 0.0 && points[0].z_m == 0.0);
        assert_true(fabs(points[1].z_m + 0.1) < 1e-9);
        assert_near(points[2].x_m, 0.173205081, 1e-8); /* 0.2 cos 30 */
        assert_near(points[2].z_m, -0.2, 1e-8);
        done(&self);
    }
}

static void machines_may_be_written_in_the_job(void **state)
{
    reading self;
    (void)state;
    read_text(
        &self,
        "job: own\nengine: {kind: engine, id: own, ports: {g: {end: G1/8 female washer, circuit: feed}}}\n"
        "turbo: [plain, {kind: turbo, id: mine, bearing: ball, ports: {in: {end: -4 flare37 male, circuit: "
        "feed}, out: {end: flange f38, circuit: drain}}}]\n");
    assert_int_equal(self.status, OW_OK);
    assert_string_equal(self.job->engine->id, "own");
    assert_int_equal(self.job->turbo_count, 2);
    assert_int_equal(self.job->turbos[1]->bearing, OW_BEARING_BALL);
    done(&self);
}

/* ---- what is wrong ----------------------------------------------------------------------------------------
 */

static const struct {
    const char *text;
    size_t line, column; /* of the mark; 0: the text as a whole */
    const char *message, *expected;
} faults[] = {
    {"", 0, 0, "there is nothing in it", "a map that begins with job:"},
    {"- 1\n", 1, 1, "this is no job", "begins with job"},
    {"engine: motor\nturbo: plain\n", 1, 1, "job", NULL},
    {"job: x\nturbo: plain\n", 1, 1, "engine", NULL},
    {"job: x\nengine: motor\n", 1, 1, "turbo", NULL},
    {HEAD "---\n" HEAD, 5, 1, "a job is one document", "one job in a text"},
    {"job: [a]\nengine: motor\nturbo: plain\n", 1, 6, "words are wanted", "what the job is called"},
    {"job: x\nengine: moter\nturbo: plain\n", 2, 9, "no engine \"moter\"", NULL},
    {"job: x\nengine: plain\nturbo: plain\n", 2, 9, "\"plain\" is no engine", NULL},
    {"job: x\nengine: motor\nturbo: motor\n", 3, 8, "\"motor\" is no turbo", NULL},
    {"job: x\nengine: motor\nturbo: []\n", 3, 8, "no turbo is named", NULL},
    {"job: x\nengine: motor\nturbo: [plain, ball, plain, ball]\n", 3, 29, "too many turbos", "three"},
    {"job: x\nengine: {kind: engine, id: e, ports: {d: {end: bead 16, circuit: drain}}}\nturbo: plain\n", 2,
     9, "e has no oil take-off", NULL},
    {"job: x\nengine: motor\nturbo: {kind: turbo, id: t, bearing: ball, ports: {o: {end: bead 16, circuit: "
     "drain}}}\n",
     3, 8, "t has no oil inlet", NULL},
    {HEAD "feeed: {hose: 1 m}\n", 4, 1, "feeed", NULL},
    {HEAD "feed: 650 mm\n", 4, 7, "\"feed\" is no map", "a map"},
    {HEAD "feed: {hose: 650}\n", 4, 14, "unit", NULL},
    {HEAD "feed: {hose: 650 bar}\n", 4, 14, "", NULL},
    {HEAD "feed: {hose: 100 m}\n", 4, 14, "", "20"},
    {HEAD "feed: {from: gallory}\n", 4, 14, "motor has no port \"gallory\"", "gallery boss"},
    {HEAD "feed: {from: plate}\n", 4, 14, "\"plate\" is a port of the drain", "feed ports"},
    {HEAD "feed: {to: oil-out}\n", 4, 12, "\"oil-out\" is a port of the drain", "oil-in"},
    {HEAD "feed: {rise: 9 m}\n", 4, 14, "", NULL},
    {HEAD "keep: {a: sw}\n", 4, 7, "this keeps nothing", NULL},
    {HEAD "keep: [sv]\n", 4, 8, "no switch, sender or end \"sv\"", NULL},
    {HEAD "keep: [ga]\n", 4, 8, "\"ga\" is a part to buy", NULL},
    {HEAD "keep: [M10 male washer]\n", 4, 8, "the pitch or the seat", NULL},
    {HEAD "keep: [sw, sw, sw, sw, sw, sw]\n", 4, 28, "too many kept ports", "five"},
    {"job: x\nengine: motor\nturbo: [plain, plain, plain]\nkeep: [sw, sw, sw, sw]\n", 3, 8,
     "cannot serve 3 inlets and 4 kept", NULL},
    {HEAD "oil: 3W-90\n", 4, 6, "is no SAE grade", "15W-40"},
    {HEAD "oil: 10W-20\n", 4, 6, "no typical oil of grade", "15W-40"},
    {HEAD "oil: {kv40: 10, kv100: 14}\n", 4, 6, "no oil has 10 mm2/s at 40 C", "kv40 above kv100"},
    {HEAD "oil: {kv40: 110}\n", 4, 1, "kv100", NULL},
    {HEAD "oil: {kv40: 110, kv100: 14.7, rho: 8}\n", 4, 31, "rho", NULL},
    {HEAD "states: cold\n", 4, 9, "the states are no list", NULL},
    {HEAD "states: [cold]\n", 4, 10, "this is no state", "gallery"},
    {HEAD "states: [{oil: 0 C}]\n", 4, 10, "name", NULL},
    {HEAD "states: [{name: a, oil: 300 C}]\n", 4, 25, "", "200"},
    {HEAD "states: [{name: a}, {name: A}]\n", 4, 28, "given twice", "each state once"},
    {HEAD "states: [{name: a, pressure: 1 bar}]\n", 4, 20, "pressure", NULL},
    {HEAD "drain: {to: {a: b}}\n", 4, 13, "this names no return", NULL},
    {HEAD "drain: {to: [plate, plate]}\n", 4, 21, "named twice", NULL},
    {HEAD "drain: {to: [gallery]}\n", 4, 14, "\"gallery\" is a port of the feed", "plate sump"},
    {HEAD "drain: {hose: rubber-band}\n", 4, 15, "no hose of class \"rubber-band\"", "fluoro-silicone"},
    {HEAD "drain: {route: here}\n", 4, 16, "the route is no list", NULL},
    {HEAD "drain: {route: []}\n", 4, 16, "the route is no list", NULL},
    {HEAD "drain: {route: [[1 mm, 2 mm]]}\n", 4, 17, "no point of a route", "[x, y, z]"},
    {HEAD "drain: {route: [[0 mm, 0 mm, 0 mm]]}\n", 4, 16, "leads nowhere", NULL},
    {HEAD "drain: {route: [[0 mm, 0 mm, -1 mm], [0 mm, 0 mm, -1 mm]]}\n", 4, 38, "in one place", NULL},
    {HEAD "drain: {route: [[0, 0, -100]]}\n", 4, 18, "unit", NULL},
    {HEAD "drain: {route: [{length: 100 mm}]}\n", 4, 17, "slope", NULL},
    {HEAD "drain: {route: [{length: 100 mm, slope: 120 deg}]}\n", 4, 41, "", "90"},
    {HEAD "drain: {aeration: 0.5}\n", 4, 19, "", "1"},
    {HEAD "coolant: {heater: perhaps}\n", 4, 19, "", "yes"},
    {HEAD "coolant: {heater: odd}\n", 4, 19, "\"odd\" is no such heater", "in and out"},
    {HEAD "coolant: {heater: teed, from: head}\n", 4, 31, "uses no port of the engine", "heater-hose"},
    {HEAD "coolant: {hoses: 1 m}\n", 4, 18, "the two hoses", "[cold, hot]"},
    {HEAD "coolant: {hoses: [1 m, 99 m]}\n", 4, 24, "", "20"},
    {HEAD "coolant: {coolant: beer}\n", 4, 20, "this coolant is not known", "glycol"},
    {HEAD "coolant: {from: plate}\n", 4, 17, "\"plate\" is a port of the drain", "bottom head"},
    {HEAD "limits: {fill: 2}\n", 4, 16, "", NULL},
    {HEAD "limits: {speed: 2}\n", 4, 10, "speed", NULL},
    {HEAD "prefer: cheap\n", 4, 9, "\"prefer\" is no map", "stock"},
    {HEAD "prefer: {price: low}\n", 4, 10, "price", NULL},
};

static bool holds(const char *words, const char *wanted)
{
    return wanted == NULL || (words != NULL && strstr(words, wanted) != NULL);
}

static void every_fault_is_told_at_its_place(void **state)
{
    size_t wrong = 0;
    (void)state;
    for (size_t index = 0; index < sizeof faults / sizeof faults[0]; index++) {
        reading self;
        bool found = false;
        read_text(&self, faults[index].text);
        for (size_t at = 0; at < self.sink.count; at++) {
            const ow_test_diagnostic *told = &self.sink.items[at];
            found = found || (told->line == faults[index].line && told->column == faults[index].column &&
                              told->severity == OW_ERROR && holds(told->message, faults[index].message) &&
                              holds(told->expected, faults[index].expected));
        }
        if (self.status != OW_INPUT || !found || self.job != NULL) {
            print_error("not told as expected (status %d) in:\n%s", self.status, faults[index].text);
            for (size_t at = 0; at < self.sink.count; at++)
                print_error("  %s | %s\n", self.sink.items[at].told, self.sink.items[at].expected);
            wrong++;
        }
        done(&self);
    }
    assert_int_equal(wrong, 0);
}

static void all_faults_of_a_job_are_told_in_one_run(void **state)
{
    reading self;
    (void)state;
    read_text(&self,
              "job: x\nengine: moter\nturbo: plane\nfeed: {hose: 5, bore: 3 bar}\nlimits: {fill: 9}\nx: 1\n");
    assert_int_equal(self.status, OW_INPUT);
    assert_int_equal(ow_test_count(&self.sink, OW_ERROR), 6);
    done(&self);
}

static void a_job_is_told_from_a_layout_by_its_first_key(void **state)
{
    static const char layout[] = "layout: x\nparts: [a]\n# job: none\n  job: inside\n";
    (void)state;
    assert_true(ow_job_is(HEAD, strlen(HEAD)));
    assert_true(ow_job_is("# note\njob: y", 13));
    assert_false(ow_job_is(layout, strlen(layout)));
    assert_false(ow_job_is("jo", 2));
    assert_false(ow_job_is("", 0));
}

static void a_job_past_its_size_is_refused(void **state)
{
    static char large[1024 * 1024 + 2];
    reading self;
    (void)state;
    memset(large, '#', sizeof large - 1);
    read_text(&self, large);
    assert_int_equal(self.status, OW_LIMIT);
    assert_non_null(ow_test_find(&self.sink, "too large"));
    done(&self);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_least_job_names_engine_and_turbo),
        cmocka_unit_test(every_key_of_the_feed_and_the_states_is_read),
        cmocka_unit_test(every_key_of_drain_and_coolant_is_read),
        cmocka_unit_test(the_heater_is_passed_through_by_name_or_teed_into),
        cmocka_unit_test(a_route_is_given_in_points_or_in_pieces),
        cmocka_unit_test(machines_may_be_written_in_the_job),
        cmocka_unit_test(every_fault_is_told_at_its_place),
        cmocka_unit_test(all_faults_of_a_job_are_told_in_one_run),
        cmocka_unit_test(a_job_is_told_from_a_layout_by_its_first_key),
        cmocka_unit_test(a_job_past_its_size_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
