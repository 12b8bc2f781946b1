/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "oilway/mates_ask.h"
#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"

static const char catalogue[] =
    "{kind: engine, id: brockle-4, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed}}}\n"
    "---\n{kind: switch, id: sw-2, a: 1/8-27 NPT male}\n"
    "---\n{kind: adapter, page: adapters, columns: [id, a, b, bore], rows: [\n"
    "  [tf-2-4, 1/8-27 NPT male, -4 flare37 male, 4.4 mm], [tf-1.5, 1/8-27 NPT male, R1/8 male, 4.4 mm]]}\n";

typedef struct fixture {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
} fixture;

static int begin(void **state)
{
    static fixture self;
    static const char *const name = "c.yaml", *const text = catalogue;
    self = (fixture){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL, NULL};
    self.context = ow_test_context(&self.sink);
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
    ow_test_diagnostics_clear(&self->sink);
    return 0;
}

static void assert_end(fixture *self, const char *words, const char *expected)
{
    ow_end found;
    char name[OW_END_TEXT_SIZE];
    assert_int_equal(ow_end_named_read(&self->context, self->catalog, "END", words, &found), OW_OK);
    assert_string_equal(ow_end_name(&found, name), expected);
}

static void an_end_is_named_by_grammar_port_switch_or_part(void **state)
{
    assert_end(*state, "1/8 npt Male", "1/8-27 NPT male");
    assert_end(*state, "brockle-4:gallery", "1/8-27 NPT female");
    assert_end(*state, "sw-2", "1/8-27 NPT male");
    assert_end(*state, "tf-2-4.b", "-4 flare37 male");
    assert_end(*state, "tf-1.5.b", "R1/8 male");
}

static void a_name_that_means_several_ends_or_none_is_told(void **state)
{
    fixture *self = *state;
    ow_end found;
    assert_int_equal(ow_end_named_read(&self->context, self->catalog, "END", "tf-2-4", &found), OW_INPUT);
    assert_string_equal(self->sink.items[0].mend,
                        "say tf-2-4.a (1/8-27 NPT male) or tf-2-4.b (-4 flare37 male)");
    ow_test_assert_told(&self->sink, "END:1:1: error: this has several ends");
    assert_int_equal(ow_end_named_read(&self->context, self->catalog, "END", "sw-3", &found), OW_INPUT);
    assert_string_equal(self->sink.items[0].mend, "did you mean sw-2?");
    ow_test_diagnostics_clear(&self->sink);
    assert_int_equal(ow_end_named_read(&self->context, self->catalog, "END", "1/8 NPT mael", &found),
                     OW_INPUT);
    assert_string_equal(self->sink.items[0].marked, "mael");
    ow_test_diagnostics_clear(&self->sink);
}

static void every_fault_of_a_question_is_told_at_once(void **state)
{
    fixture *self = *state;
    ow_mates_ask ask;
    ow_mates_words words = {{"M12 mael", "M10x1 female washr"}, 2, "cheese", "M10", "long"};
    assert_int_equal(ow_mates_ask_read(&self->context, self->catalog, &words, &ask), OW_INPUT);
    assert_int_equal(self->sink.count, 5);
    assert_non_null(ow_test_find(&self->sink, "cheese is no material"));
    assert_non_null(ow_test_find(&self->sink, "M10 is no thread with its pitch"));
    assert_non_null(ow_test_find(&self->sink, "long is no length"));
    ow_test_diagnostics_clear(&self->sink);
    words = (ow_mates_words){{"banjo 10 stud", "banjo 10 eye"}, 2, NULL, "M12x1.5", NULL};
    assert_int_equal(ow_mates_ask_read(&self->context, self->catalog, &words, &ask), OW_INPUT);
    ow_test_assert_told(&self->sink, "--bolt:1:1: error: M12x1.5 does not go with an eye of that size");
    words.bolt = "3/8-24 UNF"; /* DIN 7643: the 10 mm eye takes M10 and 3/8-24 */
    assert_int_equal(ow_mates_ask_read(&self->context, self->catalog, &words, &ask), OW_OK);
    assert_ptr_equal(ask.card.bolt, &ask.bolt);
}

static void one_end_has_mates_and_two_have_a_verdict(void **state)
{
    fixture *self = *state;
    ow_mates_ask ask;
    ow_mates_list list;
    ow_mates_words words = {{"brockle-4:gallery", "tf-2-4.a"}, 2, NULL, NULL, NULL};
    assert_int_equal(ow_mates_ask_read(&self->context, self->catalog, &words, &ask), OW_OK);
    assert_int_equal(ow_mates_find(&self->context, self->net, &ask, &list), OW_OK);
    assert_int_equal(list.count, 1);
    assert_int_equal(list.items[0].verdict, OW_SEALS);
    ow_mates_list_done(&list);
    words.end_count = 1;
    assert_int_equal(ow_mates_ask_read(&self->context, self->catalog, &words, &ask), OW_OK);
    assert_int_equal(ow_mates_find(&self->context, self->net, &ask, &list), OW_OK);
    assert_true(list.count > 5);
    ow_mates_list_done(&list);
}

static ow_status ask_all(const ow_context *context, void *data)
{
    fixture *self = data;
    ow_mates_ask ask;
    ow_mates_list list;
    ow_end found;
    ow_mates_words words = {{"brockle-4:gallery", "tf-2-4.a"}, 2, NULL, NULL, NULL};
    if (ow_end_named_read(context, self->catalog, "END", "tf-2-4", &found) == OW_MEMORY ||
        ow_end_named_read(context, self->catalog, "END", "sw-3", &found) == OW_MEMORY)
        return OW_MEMORY;
    ow_status status = ow_mates_ask_read(context, self->catalog, &words, &ask);
    if (status == OW_OK)
        status = ow_mates_find(context, self->net, &ask, &list);
    if (status == OW_OK)
        ow_mates_list_done(&list);
    return status;
}

static void want_of_memory_is_said_and_nothing_leaks(void **state)
{
    ow_test_fail_each(ask_all, *state);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_end_is_named_by_grammar_port_switch_or_part),
        cmocka_unit_test(a_name_that_means_several_ends_or_none_is_told),
        cmocka_unit_test(every_fault_of_a_question_is_told_at_once),
        cmocka_unit_test(one_end_has_mates_and_two_have_a_verdict),
        cmocka_unit_test(want_of_memory_is_said_and_nothing_leaks),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
