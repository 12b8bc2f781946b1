/* SPDX-License-Identifier: MIT */
/* Words of an ask that are wrong: each is told under its option, with the words at fault and the way out. */
#include <string.h>

#include "oilway/ask.h"
#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"

static const char shop[] =
    "{kind: engine, id: brockle, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, pressure: 4.5 bar},"
    " plate: {end: flange p48, circuit: drain}, bung: {end: -10 o-ring female, circuit: drain}}}\n"
    "---\n{kind: turbo, id: plover, bearing: journal, ports: {oil-in: {end: -4 flare37 male, circuit: feed},"
    " oil-out: {end: flange f38, circuit: drain}}}\n"
    "---\n{kind: switch, id: sw-2, a: 1/8-27 NPT male}\n"
    "---\n{page: a, kind: adapter, columns: [id, a, b], rows: [[tf-2-4, 1/8-27 NPT male, -4 flare37 "
    "male]]}\n";

typedef struct fixture {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
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

typedef struct wanted_fault {
    ow_ask_words words;
    const char *file, *marked, *message, *help; /* help: words in what was expected or in the mend */
} wanted_fault;

#define ASK(...)                                                                       \
    {                                                                                  \
        .from = "brockle:gallery", .to = {"plover:oil-in"}, .to_count = 1, __VA_ARGS__ \
    }

static const wanted_fault faults[] = {
    {{.from = "brokle:gallery", .to = {"plover:oil-in"}, .to_count = 1},
     "--from",
     "brokle",
     "no machine of that id",
     "did you mean brockle?"},
    {{.from = "brockle:galery", .to = {"plover:oil-in"}, .to_count = 1},
     "--from",
     "galery",
     "no port of that name",
     "did you mean gallery?"},
    {{.from = "brockle:gallery", .to = {"plover:oil-out"}, .to_count = 1, .circuit = "feed"},
     "--to",
     "plover:oil-out",
     "this port belongs to the drain, the ask is for the feed",
     "ports of one circuit"},
    {{.from = "plover:oil-out", .to = {"brockle"}, .to_count = 1},
     "--to",
     "brockle",
     "several ports of the circuit",
     "brockle:plate brockle:bung"},
    {{.from = "plover", .to = {"brockle:plate"}, .to_count = 1, .circuit = "coolant"},
     "--to",
     "brockle:plate",
     "belongs to the drain",
     "ports of one circuit"},
    {{.from = "tf-2-4", .to = {"plover:oil-in"}, .to_count = 1},
     "--from",
     "tf-2-4",
     "this is a part to buy",
     "write the end itself"},
    {{.from = "sw-3", .to = {"plover:oil-in"}, .to_count = 1},
     "--from",
     "sw-3",
     "neither an id of the catalogue nor an end",
     "did you mean sw-2?"},
    {{.from = "1/8-27 NPT femal", .to = {"plover:oil-in"}, .to_count = 1}, "--from", "femal", "", "female"},
    {{.from = "M77x1 female", .to = {"plover:oil-in"}, .to_count = 1, .circuit = "feed"},
     "--from",
     "M77x1 female",
     "no pitch or seat in use",
     "an end whose pitch and seat are said"},
    {{.from = "brockle:gallery", .to = {"plover:oil-in", "plover:oil-in"}, .to_count = 2},
     "--to",
     "plover:oil-in",
     "named twice",
     "once"},
    {ASK(.circuit = "fed"), "--circuit", "fed", "not a word known here", "feed"},
    {ASK(.bearing = "plain"), "--bearing", "plain", "not a word known here", "journal or ball"},
    {ASK(.flexible = "maybe"), "--flexible", "maybe", "not a word known here", "any, yes, no or some"},
    {ASK(.closing = "ys"), "--closing", "ys", "not a word known here", "did you mean yes?"},
    {ASK(.restrictor = "requred"), "--restrictor", "requred", "not a word known here",
     "did you mean required?"},
    {ASK(.fluid = "water"), "--fluid", "water", "not a word known here", "oil or coolant"},
    {ASK(.bore = "3"), "--bore", "3", "", "mm"},
    {ASK(.bore = "3 bar"), "--bore", "3 bar", "", "mm"},
    {ASK(.rating = "-1 bar"), "--rating", "-1 bar", "", "bar"},
    {ASK(.temperature = "hot"), "--temperature", "hot", "", "C"},
    {ASK(.orifice = "1 mm"), "--orifice", "1 mm", "", "0.8..1.2 mm"},
    {ASK(.hose = "0 mm"), "--hose", "0 mm", "", "mm"},
};

static void assert_fault(fixture *self, const wanted_fault *wanted)
{
    ow_ask_set set = {NULL, 7, NULL, NULL, NULL};
    ow_status status = ow_ask_read(&self->context, self->catalog, self->net, &wanted->words, &set);
    assert_int_equal(status, OW_INPUT);
    assert_int_equal(set.count, 7); /* untouched */
    if (self->sink.count != 1)
        for (size_t index = 0; index < self->sink.count; index++)
            print_error("%s\n", self->sink.items[index].told);
    assert_int_equal(self->sink.count, 1);
    const ow_test_diagnostic *told = &self->sink.items[0];
    const char *help = told->mend != NULL && strstr(told->mend, wanted->help) ? told->mend : told->expected;
    if (strcmp(told->file, wanted->file) != 0 || strcmp(told->marked, wanted->marked) != 0 ||
        strstr(told->message, wanted->message) == NULL || help == NULL || strstr(help, wanted->help) == NULL)
        fail_msg("%s \"%s\": told of \"%s\": %s (%s; %s)", wanted->file, wanted->marked, told->marked,
                 told->told, told->expected ? told->expected : "", told->mend ? told->mend : "");
    ow_test_diagnostics_clear(&self->sink);
}

static void each_fault_is_told_under_its_option_with_the_way_out(void **state)
{
    for (size_t index = 0; index < sizeof faults / sizeof faults[0]; index++)
        assert_fault(*state, &faults[index]);
}

static void all_faults_of_an_ask_are_told_at_once(void **state)
{
    fixture *self = *state;
    const ow_ask_words words = {
        .from = "brokle:gallery", .to = {"plover:oil-inn"}, .to_count = 1, .keep = {"sw-9"}, .keep_count = 1};
    ow_ask_set set;
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, &words, &set), OW_INPUT);
    assert_int_equal(self->sink.count, 3);
    assert_string_equal(self->sink.items[0].file, "--from");
    assert_string_equal(self->sink.items[1].file, "--to");
    assert_string_equal(self->sink.items[2].file, "--keep");
    ow_test_diagnostics_clear(&self->sink);
    ow_ask_words options = ASK(.bore = "x", .rating = "y", .flexible = "z");
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, &options, &set), OW_INPUT);
    assert_int_equal(self->sink.count, 3);
    ow_test_diagnostics_clear(&self->sink);
}

static void an_ask_for_nothing_or_for_too_much_is_refused(void **state)
{
    fixture *self = *state;
    ow_ask_set set;
    const ow_ask_words nothing = {.from = "brockle:gallery"};
    const ow_ask_words nowhere = {.to = {"plover:oil-in"}, .to_count = 1};
    const ow_ask_words many = {.from = "brockle:gallery",
                               .to = {"plover:oil-in", "-4 flare37 male"},
                               .to_count = 2,
                               .keep = {"sw-2", "sw-2", "sw-2", "sw-2", "sw-2"},
                               .keep_count = 5};
    const ow_ask_words *wrong[] = {&nothing, &nowhere, &many};
    for (size_t index = 0; index < 3; index++) {
        assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, wrong[index], &set), OW_INPUT);
        assert_int_equal(self->sink.count, 1);
        ow_test_diagnostics_clear(&self->sink);
    }
}

typedef struct failing_ask {
    const ow_ask_words *words;
    ow_status otherwise;
} failing_ask;

static ow_status read_and_drop(const ow_context *context, void *data)
{
    const failing_ask *job = data;
    const char *const names[] = {"shop.yaml"};
    const char *const texts[] = {shop};
    const ow_catalog_options options = {NULL, 0, NULL, false, false};
    ow_catalog *catalog = NULL;
    ow_ask_set set;
    ow_status status = ow_catalog_load_texts(context, names, texts, 1, &options, &catalog);
    if (status == OW_OK) {
        status = ow_ask_read(context, catalog, NULL, job->words, &set);
        if (status == OW_OK)
            ow_ask_set_done(&set);
    }
    ow_catalog_free(catalog);
    return status == job->otherwise ? OW_OK : status;
}

static void every_allocation_of_reading_may_fail_with_and_without_faults(void **state)
{
    (void)state;
    const ow_ask_words open = {.from = "brockle",
                               .to = {"M10 male", "plover:oil-in"},
                               .to_count = 1,
                               .keep = {"sw-2", "sw-2"},
                               .keep_count = 2};
    const ow_ask_words wrong = {.from = "brokle:gallery", .to = {"plover:oil-inn"}, .to_count = 1};
    failing_ask jobs[] = {{&open, OW_INPUT}, {&wrong, OW_INPUT}};
    const ow_ask_words right = {.from = "brockle",
                                .to = {"plover"},
                                .to_count = 1,
                                .keep = {"sw-2"},
                                .keep_count = 1,
                                .circuit = "feed"};
    failing_ask good = {&right, OW_OK};
    ow_test_fail_each(read_and_drop, &good);
    for (size_t index = 0; index < 2; index++)
        ow_test_fail_each(read_and_drop, &jobs[index]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_fault_is_told_under_its_option_with_the_way_out),
        cmocka_unit_test(all_faults_of_an_ask_are_told_at_once),
        cmocka_unit_test(an_ask_for_nothing_or_for_too_much_is_refused),
        cmocka_unit_test(every_allocation_of_reading_may_fail_with_and_without_faults),
    };
    return cmocka_run_group_tests(tests, load, unload);
}
