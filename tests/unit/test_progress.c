/* SPDX-License-Identifier: MIT */
/* Telling who waits, and stopping when told to. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/answer.h"
#include "oilway/swap.h"
#include "support/failing.h"
#include "support/testing.h"

/* An ear that counts, and stops the call at the n-th telling. */
typedef struct ear {
    size_t told, stop_at; /* 0: never */
    bool wrong;           /* more done than there is, or nothing said */
    bool heard_pages, heard_rows, heard_file, heard_states, heard_parts;
} ear;

static bool is(const char *words, const char *other)
{
    return words != NULL && strcmp(words, other) == 0;
}

static bool listen(void *user, const ow_progress *progress)
{
    ear *self = user;
    self->wrong = self->wrong || progress->doing == NULL || progress->doing[0] == '\0' ||
                  (progress->all != 0 && progress->done > progress->all);
    self->heard_pages = self->heard_pages || is(progress->counted, "pages");
    self->heard_rows = self->heard_rows || is(progress->counted, "rows");
    self->heard_file = self->heard_file || is(progress->counted, "kB");
    self->heard_states = self->heard_states || is(progress->counted, "states");
    self->heard_parts = self->heard_parts || is(progress->counted, "parts");
    return ++self->told != self->stop_at;
}

typedef ow_status job(const ow_context *context, const void *data);

static ow_status run(job *work, const void *data, size_t stop_at, ear *heard)
{
    ow_failing failing = ow_failing_new();
    ow_context context = ow_failing_context(&failing);
    *heard = (ear){.stop_at = stop_at};
    context.progress = listen;
    context.progress_user = heard;
    ow_status status = work(&context, data);
    assert_int_equal(failing.live, 0);
    assert_int_equal(failing.wrong_frees, 0);
    assert_false(heard->wrong);
    ow_failing_done(&failing);
    return status;
}

/* Stopped at the first tellings, in the middle and at the last ones: each time OW_STOPPED, and nothing more
 * is told, and nothing leaks. */
static void stop_everywhere(job *work, const void *data, size_t count)
{
    ear heard;
    for (size_t stop_at = 1; stop_at <= count;
         stop_at += stop_at > 4 && stop_at + 12 < count ? count / 5 : 1) {
        assert_int_equal(run(work, data, stop_at, &heard), OW_STOPPED);
        assert_int_equal(heard.told, stop_at);
    }
}

/* ---- a page with many rows -------------------------------------------------------------------- */

#define ROWS 3000

static char *many_rows(void)
{
    static const char head[] =
        "page: many\nkind: adapter\ntitle: Many\ncolumns: [id, a, b, bore, length]\nrows:\n";
    char *text = malloc(sizeof head + ROWS * 80);
    assert_non_null(text);
    size_t at = (size_t)sprintf(text, "%s", head);
    for (int row = 0; row < ROWS; row++)
        at += (size_t)sprintf(text + at, "- [p-%d, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, %d mm]\n", row,
                              20 + row % 40);
    return text;
}

static ow_status load_text(const ow_context *context, const void *data)
{
    const char *name = "many.yaml";
    const char *text = data;
    ow_catalog *catalog = NULL;
    ow_status status = ow_catalog_load_texts(context, &name, &text, 1, NULL, &catalog);
    if (status == OW_OK)
        assert_int_equal(ow_catalog_part_count(catalog), ROWS);
    ow_catalog_free(catalog);
    return status;
}

static void a_long_page_tells_its_bytes_and_rows_and_can_be_stopped_at_any(void **state)
{
    (void)state;
    ear heard;
    char *text = many_rows();
    assert_int_equal(run(load_text, text, 0, &heard), OW_OK);
    assert_true(heard.heard_file && heard.heard_rows);
    stop_everywhere(load_text, text, heard.told);
    free(text);
}

/* ---- the whole way ---------------------------------------------------------------------------- */

typedef struct asking {
    const char *folder;
    size_t to_count, keep_count;
} asking;

static ow_status find_answers(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                              const asking *asked)
{
    const ow_ask_words words = {.from = "1/8-27 NPT female",
                                .to = {"M11x1 female washer", "M12x1.5 female washer"},
                                .to_count = asked->to_count,
                                .keep = {"sw-2", "M10x1 male washer"},
                                .keep_count = asked->keep_count,
                                .circuit = "feed"};
    const ow_answer_options options = {40, 3, NULL};
    ow_ask_set set;
    ow_answers answers;
    ow_status status = ow_ask_read(context, catalog, net, &words, &set);
    if (status != OW_OK)
        return status;
    status = ow_answers_find(context, catalog, net, &set, &options, &answers);
    if (status == OW_OK) {
        ow_swaps swaps;
        assert_true(answers.found);
        status = ow_swaps_find(context, catalog, &answers.items[0].stacks[0].layout, 1, &swaps);
        if (status == OW_OK)
            ow_swaps_done(&swaps);
        ow_answers_done(&answers);
    }
    ow_ask_set_done(&set);
    return status;
}

static ow_status whole_way(const ow_context *context, const void *data)
{
    const asking *asked = data;
    const char *const folders[] = {asked->folder};
    const ow_catalog_options options = {folders, 1, NULL, false, false};
    ow_catalog *catalog = NULL;
    ow_net *net = NULL;
    ow_status status = ow_catalog_load(context, &options, &catalog);
    if (status == OW_OK)
        status = ow_net_build(context, catalog, &net);
    if (status == OW_OK)
        status = find_answers(context, catalog, net, asked);
    ow_net_free(net);
    ow_catalog_free(catalog);
    return status;
}

static void name_shipped(char folder[4096])
{
    const char *source = getenv("OW_SOURCE_DIR");
    snprintf(folder, 4096, "%s/catalog", source != NULL ? source : ".");
}

static void loading_searching_and_swapping_tell_and_can_be_stopped(void **state)
{
    (void)state;
    ear heard;
    char folder[4096];
    name_shipped(folder);
    const asking asked = {folder, 2, 2};
    assert_int_equal(run(whole_way, &asked, 0, &heard), OW_OK);
    assert_true(heard.heard_pages && heard.heard_states && heard.heard_parts);
    stop_everywhere(whole_way, &asked, heard.told);
}

/* With one port the only set is filled twice: as far as the best layout needs, and whole for the next best.
 * `run` asserts that no more is told to be done than there is. */
static void a_set_that_is_filled_twice_is_told_as_one(void **state)
{
    (void)state;
    ear heard;
    char folder[4096];
    name_shipped(folder);
    const asking asked = {folder, 1, 0};
    assert_int_equal(run(whole_way, &asked, 0, &heard), OW_OK);
    assert_true(heard.heard_states);
}

static void who_does_not_listen_is_not_told(void **state)
{
    (void)state;
    char *text = many_rows();
    const ow_context context = OW_CONTEXT_INIT;
    assert_int_equal(load_text(&context, text), OW_OK);
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_long_page_tells_its_bytes_and_rows_and_can_be_stopped_at_any),
        cmocka_unit_test(loading_searching_and_swapping_tell_and_can_be_stopped),
        cmocka_unit_test(a_set_that_is_filled_twice_is_told_as_one),
        cmocka_unit_test(who_does_not_listen_is_not_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
