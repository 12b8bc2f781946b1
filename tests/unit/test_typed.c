/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "oilway/report_choice.h"
#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"

static const char catalogue[] =
    "{kind: engine, id: brockle-4, title: Brockle four, ports: {gallery: {end: 1/8-27 NPT female, circuit: "
    "feed, "
    "pressure: 4.5 bar, holds: sw-2}, bung: {end: -10 o-ring female, circuit: drain}}}\n"
    "---\n{kind: turbo, id: plover-41, title: Plover, ports: {oil-in: {end: M12x1.5 female washer, circuit: "
    "feed}}}\n"
    "---\n{kind: switch, id: sw-2, title: Oil pressure switch, a: 1/8-27 NPT male}\n"
    "---\n{kind: adapter, page: adapters, columns: [id, a, b, bore], rows: [\n"
    "  [one, 1/8-27 NPT male, -4 flare37 male, 4.4 mm], [two, M12x1.5 male washer, -4 flare37 male, 4.4 "
    "mm],\n"
    "  [three, M12x1.25 male washer, -4 flare37 male, 4.4 mm]]}\n";

typedef struct fixture {
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    ow_typed typed;
} fixture;

static int begin(void **state)
{
    static fixture self;
    static const char *const name = "c.yaml", *const text = catalogue;
    self = (fixture){.context = OW_CONTEXT_INIT};
    assert_int_equal(ow_catalog_load_texts(&self.context, &name, &text, 1, NULL, &self.catalog), OW_OK);
    assert_int_equal(ow_net_build(&self.context, self.catalog, &self.net), OW_OK);
    *state = &self;
    return 0;
}

static int end(void **state)
{
    fixture *self = *state;
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    return 0;
}

static const ow_typed *type(fixture *self, const char *words, ow_wanted wanted)
{
    assert_int_equal(ow_typed_read(&self->context, self->catalog, self->net, words, wanted, &self->typed),
                     OW_OK);
    return &self->typed;
}

static bool offers(const ow_typed *typed, const char *words)
{
    for (size_t index = 0; index < typed->offer_count; index++) {
        if (strcmp(typed->offers[index].words, words) == 0)
            return true;
    }
    return false;
}

static void what_is_understood_is_said(void **state)
{
    fixture *self = *state;
    const ow_typed *typed = type(self, "brockle-4:gallery", OW_WANTED_FROM);
    assert_int_equal(typed->meaning, OW_MEANS_PORT);
    assert_string_equal(typed->says, "gallery of Brockle four: 1/8-27 NPT female, feed, 4.5 bar, holds sw-2");
    ow_typed_done(&self->typed);
    typed = type(self, "brockle-4", OW_WANTED_FROM);
    assert_int_equal(typed->meaning, OW_MEANS_MACHINE);
    assert_false(typed->has_end);
    assert_string_equal(typed->says, "engine, Brockle four, one of its ports: gallery, bung");
    ow_typed_done(&self->typed);
    typed = type(self, "sw-2", OW_WANTED_KEEP);
    assert_int_equal(typed->meaning, OW_MEANS_FIXTURE);
    ow_typed_done(&self->typed);
    /* Limits of size: ISO 965-2, M12 x 1.5, 6g: 11.732 to 11.968. */
    typed = type(self, "m12 x 1.5 MALE washer", OW_WANTED_END);
    assert_int_equal(typed->meaning, OW_MEANS_END);
    assert_non_null(strstr(typed->says, "11.73 to 11.97 mm over its crests"));
    assert_int_equal(typed->reading_count, 1);
    assert_null(typed->decide);
    ow_typed_done(&self->typed);
}

static void an_end_left_open_has_its_readings(void **state)
{
    fixture *self = *state;
    const ow_typed *typed = type(self, "M12 male washer", OW_WANTED_TO);
    assert_int_equal(typed->meaning, OW_MEANS_END);
    assert_int_equal(typed->reading_count, 2);
    assert_non_null(strstr(typed->decide, "12.5 mm is M12x1.25, 15 mm is M12x1.5"));
    ow_typed_done(&self->typed);
}

static void a_fault_is_marked_and_mended(void **state)
{
    fixture *self = *state;
    const ow_typed *typed = type(self, "1/8 NPT femle", OW_WANTED_FROM);
    assert_int_equal(typed->meaning, OW_MEANS_NOTHING);
    assert_int_equal(typed->column, 9);
    assert_int_equal(typed->width, 5);
    assert_string_equal(typed->mend, "write female");
    ow_typed_done(&self->typed);
    typed = type(self, "brockle-4:galery", OW_WANTED_FROM);
    assert_int_equal(typed->column, 11);
    assert_string_equal(typed->mend, "did you mean gallery?");
    ow_typed_done(&self->typed);
    typed = type(self, "  ", OW_WANTED_END);
    assert_int_equal(typed->meaning, OW_MEANS_NOTHING);
    assert_int_equal(typed->width, 0);
    ow_typed_done(&self->typed);
    /* An id is no end. */
    typed = type(self, "sw-2", OW_WANTED_END);
    assert_int_equal(typed->meaning, OW_MEANS_NOTHING);
    ow_typed_done(&self->typed);
}

static void offers_go_on_from_what_was_typed(void **state)
{
    fixture *self = *state;
    const ow_typed *typed = type(self, "bro", OW_WANTED_FROM);
    assert_string_equal(typed->offers[0].words, "brockle-4:gallery");
    assert_true(offers(typed, "brockle-4"));
    assert_false(offers(typed, "plover-41:oil-in"));
    ow_typed_done(&self->typed);
    typed = type(self, "npt m", OW_WANTED_END);
    assert_string_equal(typed->offers[0].words, "1/8-27 NPT male"); /* in use: before what is only known */
    assert_true(offers(typed, "1/4-18 NPT male"));
    assert_false(offers(typed, "1/4-18 NPT female"));
    ow_typed_done(&self->typed);
    typed = type(self, "FOUR gal", OW_WANTED_FROM); /* by its title */
    assert_int_equal(typed->offer_count, 0);
    ow_typed_done(&self->typed);
    typed = type(self, "gallery four", OW_WANTED_FROM);
    assert_string_equal(typed->offers[0].words, "brockle-4:gallery");
    ow_typed_done(&self->typed);
    typed = type(self, "", OW_WANTED_KEEP);
    assert_string_equal(typed->offers[0].words, "sw-2");
    assert_int_equal(typed->offer_count, OW_OFFERS_MAX);
    ow_typed_done(&self->typed);
    typed = type(self, "", OW_WANTED_TO);
    assert_string_equal(typed->offers[0].words, "plover-41:oil-in");
    ow_typed_done(&self->typed);
}

static ow_status read_and_print(const ow_context *context, void *data)
{
    fixture *self = data;
    static const struct {
        const char *words;
        ow_wanted wanted;
    } each[] = {
        {"brockle-4", OW_WANTED_FROM}, {"M12 male washer", OW_WANTED_TO}, {"1/8 NPT femle", OW_WANTED_END}};
    for (size_t index = 0; index < sizeof each / sizeof each[0]; index++) {
        ow_typed typed;
        ow_text text = ow_text_new(context);
        ow_status status =
            ow_typed_read(context, self->catalog, self->net, each[index].words, each[index].wanted, &typed);
        if (status != OW_OK)
            return status;
        status = ow_report_typed_json(&text, each[index].words, &typed);
        ow_text_done(&text);
        ow_typed_done(&typed);
        if (status != OW_OK)
            return status;
    }
    return OW_OK;
}

static void want_of_memory_is_said_and_nothing_leaks(void **state)
{
    ow_test_fail_each(read_and_print, *state);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_understood_is_said),
        cmocka_unit_test(an_end_left_open_has_its_readings),
        cmocka_unit_test(a_fault_is_marked_and_mended),
        cmocka_unit_test(offers_go_on_from_what_was_typed),
        cmocka_unit_test(want_of_memory_is_said_and_nothing_leaks),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
