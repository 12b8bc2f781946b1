/* SPDX-License-Identifier: MIT */
/* Small nets made by hand for what is easily got wrong, the bounds, and every allocation failing. */
#include "support/testing.h"

#include <pthread.h>
#include <string.h>

#include "search/resolve.h"
#include "support/failing.h"
#include "support/random_net.h"

static const ow_context CONTEXT = OW_CONTEXT_INIT;

/* A net written as one writes it on paper: "a-b" pairs of kinds, parts as words of kinds. */
static void write_net(ow_random_case *made, const char *pairs, const char *const *parts)
{
    memset(made, 0, sizeof *made);
    made->net = (ow_net_input){26, made->kinds, 0, made->mates, 0, made->parts};
    for (const char *at = pairs; *at != '\0'; at += at[2] == '\0' ? 2 : 3)
        made->mates[made->net.mate_count++] =
            (ow_net_mate){(uint16_t)(at[0] - 'a'), (uint16_t)(at[1] - 'a'), false, false};
    for (; *parts != NULL; parts++) {
        ow_net_part *part = &made->parts[made->net.part_count];
        part->id = (uint32_t)made->net.part_count++;
        part->end_count = (uint16_t)strlen(*parts);
        part->price_cents = 100;
        for (size_t end = 0; end < part->end_count; end++)
            part->kinds[end] = (uint16_t)((*parts)[end] - 'a');
    }
}

static void ask_for(ow_random_case *made, char source, const char *ports)
{
    made->ask = (ow_search_input){.source = (uint32_t)(source - 'a'),
                                  .port_count = strlen(ports),
                                  .ports = made->ports,
                                  .limits = OW_SEARCH_LIMITS_INIT};
    for (size_t i = 0; i < made->ask.port_count; i++)
        made->ports[i] = (ow_search_port){.kind = (uint32_t)(ports[i] - 'a'), .served = true};
}

/* Parts of the best layout, or -1. *capped may be NULL. */
static int parts_of(const ow_random_case *made, bool *capped)
{
    ow_net_index *net = NULL;
    ow_resolve *resolve = NULL;
    ow_tree tree;
    bool over;
    size_t parts = 0;
    assert_int_equal(ow_net_index_build(&CONTEXT, &made->net, &net), OW_OK);
    assert_int_equal(ow_resolve_new(&CONTEXT, net, &made->ask, &resolve), OW_OK);
    ow_status best = ow_resolve_best_parts(resolve, &parts, capped != NULL ? capped : &over);
    ow_status status = ow_resolve_next(resolve, &tree);
    assert_int_equal(status, best);
    if (status == OW_OK) {
        assert_int_equal(tree.key.parts, parts);
        ow_release(&CONTEXT, tree.nodes);
    }
    ow_resolve_free(resolve);
    ow_net_index_free(net);
    return status == OW_OK ? (int)parts : -1;
}

static void ports_that_mate_need_nothing(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"ab", NULL};
    write_net(&made, "ab", PARTS);
    ask_for(&made, 'a', "b");
    assert_int_equal(parts_of(&made, NULL), 0);
}

static void a_kind_may_mate_itself(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"ab", NULL};
    write_net(&made, "aa bb", PARTS);
    ask_for(&made, 'a', "b");
    assert_int_equal(parts_of(&made, NULL), 1);
    ask_for(&made, 'b', "a");
    assert_int_equal(parts_of(&made, NULL), 1);
}

static void a_part_may_be_entered_by_any_end(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"bdf", NULL};
    write_net(&made, "ab cd ef", PARTS);
    ask_for(&made, 'a', "ce");
    assert_int_equal(parts_of(&made, NULL), 1);
    ask_for(&made, 'e', "ac");
    assert_int_equal(parts_of(&made, NULL), 1);
}

/* search.md's trap: the second port closes an end that no plug fits. */
static void more_ports_can_need_fewer_parts(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"bdf", "eg", "hi", "j", NULL};
    write_net(&made, "ab cd ef gh ij", PARTS);
    ask_for(&made, 'a', "c");
    assert_int_equal(parts_of(&made, NULL), 4); /* tee, and three parts to close its third end */
    ask_for(&made, 'a', "ce");
    assert_int_equal(parts_of(&made, NULL), 1);
}

static void an_end_that_nothing_closes_makes_a_tee_useless(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"bdf", NULL};
    write_net(&made, "ab cd ef", PARTS);
    ask_for(&made, 'a', "c");
    assert_int_equal(parts_of(&made, NULL), -1);
}

static void spare_ends_do_not_close_each_other(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"bdef", NULL};
    write_net(&made, "ab cd ef", PARTS);
    ask_for(&made, 'a', "c");
    assert_int_equal(parts_of(&made, NULL), -1);
}

static void ports_of_one_kind_are_still_two(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"bdd", "d", NULL};
    write_net(&made, "ab cd", PARTS);
    ask_for(&made, 'a', "cc");
    assert_int_equal(parts_of(&made, NULL), 1);
    ask_for(&made, 'a', "ccc");
    assert_int_equal(parts_of(&made, NULL), -1); /* there is nothing from d to another tee */
}

static void kinds_of_the_ask_alone_take_part(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"bd", NULL};
    static const ow_net_kind EXTRA[2];
    static const ow_net_mate PAIRS[] = {{26, 1, false, false}, {27, 3, true, false}};
    write_net(&made, "", PARTS);
    ask_for(&made, 'a', "a");
    made.ask.source = 26;
    made.ports[0].kind = 27;
    made.ask.extra_count = 2;
    made.ask.extra_kinds = EXTRA;
    made.ask.extra_mates = PAIRS;
    made.ask.extra_mate_count = 2;
    assert_int_equal(parts_of(&made, NULL), -1);
    made.ask.limits.tolerate = true;
    assert_int_equal(parts_of(&made, NULL), 1);
}

/* ---- bounds --------------------------------------------------------------------------------- */

#define LONG (OW_SEARCH_PARTS_MAX + 1)
typedef struct chain {
    ow_net_kind kinds[2 * LONG + 2];
    ow_net_mate mates[LONG + 1];
    ow_net_part parts[LONG];
} chain;

/* Parts that fit in one order only: 0-1, 2-3, … where 1 mates 2, 3 mates 4. */
static void write_chain(chain *made, size_t parts, ow_net_input *net)
{
    memset(made, 0, sizeof *made);
    *net = (ow_net_input){2 * parts + 2, made->kinds, parts + 1, made->mates, parts, made->parts};
    for (size_t i = 0; i <= parts; i++)
        made->mates[i] = (ow_net_mate){(uint16_t)(2 * i), (uint16_t)(2 * i + 1), false, false};
    for (size_t i = 0; i < parts; i++) {
        made->parts[i] = (ow_net_part){.id = (uint32_t)(parts - i), .end_count = 2};
        made->parts[i].kinds[0] = (uint16_t)(2 * i + 1);
        made->parts[i].kinds[1] = (uint16_t)(2 * i + 2);
    }
}

static int parts_of_chain(size_t parts, bool *capped)
{
    static chain made;
    static ow_random_case asked;
    write_chain(&made, parts, &asked.net);
    ask_for(&asked, 'a', "a");
    asked.ports[0].kind = (uint32_t)(2 * parts + 1);
    return parts_of(&asked, capped);
}

static void a_thousand_parts_are_found_and_one_more_is_said_to_be_too_many(void **state)
{
    (void)state;
    bool capped = true;
    assert_int_equal(parts_of_chain(10, &capped), 10);
    assert_false(capped);
    assert_int_equal(parts_of_chain(OW_SEARCH_PARTS_MAX, &capped), OW_SEARCH_PARTS_MAX);
    assert_false(capped);
    assert_int_equal(parts_of_chain(OW_SEARCH_PARTS_MAX + 1, &capped), -1);
    assert_true(capped);
}

/* Far less than the 8 MiB of a main thread, room enough for the frames of a sanitizer. */
#define SMALL_STACK ((size_t)256 * 1024)

static void *find_longest(void *parts)
{
    bool capped = true;
    *(int *)parts = parts_of_chain(OW_SEARCH_PARTS_MAX, &capped);
    return NULL;
}

static void the_longest_layout_is_found_on_a_small_stack(void **state)
{
    (void)state;
    int parts = 0;
    pthread_t thread;
    pthread_attr_t small;
    assert_int_equal(pthread_attr_init(&small), 0);
    assert_int_equal(pthread_attr_setstacksize(&small, SMALL_STACK), 0);
    assert_int_equal(pthread_create(&thread, &small, find_longest, &parts), 0);
    assert_int_equal(pthread_join(thread, NULL), 0);
    (void)pthread_attr_destroy(&small);
    assert_int_equal(parts, OW_SEARCH_PARTS_MAX);
}

/* Each tee ends in two of the next: closing the first takes 2^12 - 1 parts. */
static void a_closing_that_doubles_and_doubles_is_cut_off(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"bcc", "dee", "fgg", "hii", "jkk", "lmm", "noo",
                                        "pqq", "rss", "tuu", "vww", "x",   "xz",  NULL};
    write_net(&made, "ab cd ef gh ij kl mn op qr st uv wx yz", PARTS);
    ask_for(&made, 'a', "w");
    bool capped = false;
    assert_int_equal(parts_of(&made, &capped), -1);
    assert_true(capped);
    ask_for(&made, 'u', "w"); /* vww, one plug */
    assert_int_equal(parts_of(&made, &capped), -1);
    ask_for(&made, 'u', "y"); /* vww, xz to the port, one plug */
    assert_int_equal(parts_of(&made, &capped), 3);
}

static void numbers_out_of_range_are_refused(void **state)
{
    (void)state;
    static ow_random_case made;
    static const char *const PARTS[] = {"ab", NULL};
    ow_net_index *net = NULL;
    ow_resolve *resolve = NULL;
    static const size_t BEYOND[] = {1};
    write_net(&made, "ab", PARTS);
    assert_int_equal(ow_net_index_build(&CONTEXT, &made.net, &net), OW_OK);
    for (int fault = 0; fault < 6; fault++) {
        ask_for(&made, 'a', "b");
        if (fault == 0)
            made.ask.port_count = 0;
        if (fault == 1)
            made.ask.port_count = OW_SEARCH_PORTS_MAX + 1;
        if (fault == 2)
            made.ask.source = 26;
        if (fault == 3)
            made.ports[0].kind = 26;
        if (fault == 4)
            made.ask.hose_length_um = -1;
        if (fault == 5) {
            made.ask.without = BEYOND;
            made.ask.without_count = 1;
        }
        assert_int_equal(ow_resolve_new(&CONTEXT, net, &made.ask, &resolve), OW_RANGE);
        assert_null(resolve);
    }
    ow_net_index_free(net);
}

/* ---- the list ------------------------------------------------------------------------------- */

/* The first of the list is the same whether the table was filled as far as needed or wholly. */
static void the_first_answer_does_not_wait_for_the_rest(void **state)
{
    (void)state;
    static ow_random_case made;
    size_t found = 0;
    for (uint64_t seed = 0; seed < 300; seed++) {
        ow_random random = ow_random_new(seed);
        ow_random_net(&random, 8 + seed % 9, 30, &made);
        ow_random_ask(&random, 1 + seed % 3, &made);
        ow_net_index *net = NULL;
        ow_resolve *early = NULL, *whole = NULL;
        bool kinds[OW_RANDOM_KINDS];
        ow_tree first = {.nodes = NULL}, second = {.nodes = NULL};
        assert_int_equal(ow_net_index_build(&CONTEXT, &made.net, &net), OW_OK);
        assert_int_equal(ow_resolve_new(&CONTEXT, net, &made.ask, &early), OW_OK);
        assert_int_equal(ow_resolve_new(&CONTEXT, net, &made.ask, &whole), OW_OK);
        assert_int_equal(ow_resolve_reach_port(whole, 0, kinds), OW_OK); /* fills the whole */
        ow_status status = ow_resolve_next(early, &first);
        assert_int_equal(status, ow_resolve_next(whole, &second));
        if (status == OW_OK) {
            found++;
            assert_int_equal(first.node_count, second.node_count);
            for (size_t i = 0; i < first.node_count; i++)
                assert_int_equal(first.nodes[i].part, second.nodes[i].part);
        }
        ow_release(&CONTEXT, first.nodes);
        ow_release(&CONTEXT, second.nodes);
        ow_resolve_free(early);
        ow_resolve_free(whole);
        ow_net_index_free(net);
    }
    assert_true(found > 80);
}

static void what_reaches_a_port_is_what_an_ask_from_there_answers(void **state)
{
    (void)state;
    static ow_random_case made;
    size_t yes = 0, no = 0;
    for (uint64_t seed = 0; seed < 30; seed++) {
        ow_random random = ow_random_new(seed);
        ow_random_net(&random, 10, 18, &made);
        ow_random_ask(&random, 1, &made);
        made.ask.limits =
            (ow_search_limits)OW_SEARCH_LIMITS_INIT; /* no history: any start is like the source */
        ow_net_index *net = NULL;
        ow_resolve *resolve = NULL;
        bool reached[OW_RANDOM_KINDS];
        assert_int_equal(ow_net_index_build(&CONTEXT, &made.net, &net), OW_OK);
        assert_int_equal(ow_resolve_new(&CONTEXT, net, &made.ask, &resolve), OW_OK);
        assert_int_equal(ow_resolve_reach_port(resolve, 0, reached), OW_OK);
        ow_resolve_free(resolve);
        ow_net_index_free(net);
        for (made.ask.source = 0; made.ask.source < 10; made.ask.source++) {
            bool found = parts_of(&made, NULL) >= 0;
            assert_int_equal(reached[made.ask.source], found);
            yes += found;
            no += !found;
        }
    }
    assert_true(yes > 30 && no > 30);
}

/* ---- memory --------------------------------------------------------------------------------- */

typedef struct job_data {
    ow_net_index *net;
    ow_random_case made;
} job_data;

static ow_status list_job(const ow_context *context, void *data)
{
    job_data *job = data;
    ow_resolve *resolve = NULL;
    ow_status status = ow_resolve_new(context, job->net, &job->made.ask, &resolve);
    for (int i = 0; status == OW_OK && i < 4; i++) {
        ow_tree tree;
        status = ow_resolve_next(resolve, &tree);
        if (status == OW_OK)
            ow_release(context, tree.nodes);
    }
    ow_resolve_free(resolve);
    return status;
}

static ow_status none_is_fine(ow_status status)
{
    return status == OW_NONE ? OW_OK : status;
}

static ow_status other_job(const ow_context *context, void *data)
{
    job_data *job = data;
    ow_resolve *resolve = NULL;
    ow_made *made = NULL;
    size_t count, parts;
    bool kinds[OW_RANDOM_KINDS];
    ow_tree tree = {.nodes = NULL};
    ow_status status = ow_resolve_new(context, job->net, &job->made.ask, &resolve);
    if (status == OW_OK)
        status = none_is_fine(ow_resolve_missing(resolve, &made, &count, &parts));
    ow_release(context, made);
    if (status == OW_OK)
        status = ow_resolve_reach_source(resolve, kinds);
    if (status == OW_OK)
        status = ow_resolve_reach_port(resolve, 1, kinds);
    for (size_t part = 0; status == OW_OK && part < 4; part++) {
        status = none_is_fine(ow_resolve_forced(resolve, part, &tree));
        ow_release(context, tree.nodes);
        tree.nodes = NULL;
    }
    ow_resolve_free(resolve);
    return status;
}

/* A net and an ask with at least four really different layouts. */
static void make_job(job_data *job, uint64_t seed)
{
    for (ow_status status = OW_NONE; status != OW_OK; seed++) {
        ow_random random = ow_random_new(seed);
        ow_random_net(&random, 12, 40, &job->made);
        ow_random_ask(&random, 2, &job->made);
        ow_net_index_free(job->net);
        job->net = NULL;
        assert_int_equal(ow_net_index_build(&CONTEXT, &job->made.net, &job->net), OW_OK);
        status = list_job(&CONTEXT, job);
    }
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    static job_data job;
    make_job(&job, 0);
    ow_test_fail_each(list_job, &job);
    ow_test_fail_each(other_job, &job);
    ow_net_index_free(job.net);
}

/* After a failure the same search can be asked again, and goes on with the layout that it owes. */
static void a_list_goes_on_after_a_failure(void **state)
{
    (void)state;
    static job_data job;
    make_job(&job, 100);
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    ow_resolve *smooth = NULL, *rough = NULL;
    assert_int_equal(ow_resolve_new(&CONTEXT, job.net, &job.made.ask, &smooth), OW_OK);
    assert_int_equal(ow_resolve_new(&context, job.net, &job.made.ask, &rough), OW_OK);
    size_t failures = 0;
    for (int i = 0; i < 4; i++) {
        ow_tree wanted, got;
        assert_int_equal(ow_resolve_next(smooth, &wanted), OW_OK);
        ow_status status = OW_MEMORY;
        for (size_t at = 1; status == OW_MEMORY; at++) {
            failing.fail_at = failing.asked + at;
            status = ow_resolve_next(rough, &got);
            failures += status == OW_MEMORY;
        }
        failing.fail_at = 0;
        assert_int_equal(status, OW_OK);
        assert_int_equal(got.node_count, wanted.node_count);
        for (size_t node = 0; node < wanted.node_count; node++)
            assert_int_equal(got.nodes[node].part, wanted.nodes[node].part);
        ow_release(&CONTEXT, wanted.nodes);
        ow_release(&context, got.nodes);
    }
    assert_true(failures >= 4);
    ow_resolve_free(smooth);
    ow_resolve_free(rough);
    assert_int_equal(failing.live, 0);
    ow_failing_done(&failing);
    ow_net_index_free(job.net);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ports_that_mate_need_nothing),
        cmocka_unit_test(a_kind_may_mate_itself),
        cmocka_unit_test(a_part_may_be_entered_by_any_end),
        cmocka_unit_test(more_ports_can_need_fewer_parts),
        cmocka_unit_test(an_end_that_nothing_closes_makes_a_tee_useless),
        cmocka_unit_test(spare_ends_do_not_close_each_other),
        cmocka_unit_test(ports_of_one_kind_are_still_two),
        cmocka_unit_test(kinds_of_the_ask_alone_take_part),
        cmocka_unit_test(a_thousand_parts_are_found_and_one_more_is_said_to_be_too_many),
        cmocka_unit_test(the_longest_layout_is_found_on_a_small_stack),
        cmocka_unit_test(a_closing_that_doubles_and_doubles_is_cut_off),
        cmocka_unit_test(numbers_out_of_range_are_refused),
        cmocka_unit_test(the_first_answer_does_not_wait_for_the_rest),
        cmocka_unit_test(what_reaches_a_port_is_what_an_ask_from_there_answers),
        cmocka_unit_test(every_allocation_may_fail),
        cmocka_unit_test(a_list_goes_on_after_a_failure),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
