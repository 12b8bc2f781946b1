/* SPDX-License-Identifier: MIT */
/* The made part that completes a layout, made: put on a page of its own, it does. */
#include "brute/shop.h"

/* Writes all pages again, with one more for the made part, and searches again: parts of the best, or -1. */
static long parts_with_made(shop *s, const ow_missing *made)
{
    ow_given givens[BRUTE_PORTS + 1];
    const char *without[BRUTE_PARTS];
    ow_ask ask;
    ow_search *search = NULL;
    ow_layout layout;
    long parts = -1;
    char from[OW_END_TEXT_SIZE], to[OW_END_TEXT_SIZE], *page = malloc(TEXT);
    assert_non_null(page);
    ow_end_name(&made->from, from);
    if (made->is_plug)
        sprintf(page, "kind: plug\ncolumns: [id, a]\nrows:\n  - [x-made, %s]\n", from);
    else
        sprintf(page, "kind: adapter\ncolumns: [id, a, b, bore]\nrows:\n  - [x-made, %s, %s, 150 mm]\n", from,
                ow_end_name(&made->to, to));
    strncat(page, "page: made\nrating: 2000 bar\ntemperature: -200..1000 C\nfluids: [oil, coolant]\n",
            TEXT - strlen(page) - 1);
    int last = s->c.net.part_count;
    s->texts[last] = page;
    s->names[last] = "made.yaml";
    load_pages(s, last + 1);
    convert_ask(s, givens, without, &ask);
    assert_int_equal(ow_net_build(&CONTEXT, s->catalog, &s->net), OW_OK);
    assert_int_equal(ow_search_new(&CONTEXT, s->net, &ask, &search), OW_OK);
    if (ow_search_next(search, &layout) == OW_OK) {
        parts = (long)ow_layout_part_count(&layout);
        ow_layout_free(&layout);
    }
    ow_search_free(search);
    ow_net_free(s->net);
    ow_catalog_free(s->catalog);
    return parts;
}

/* Several of the made part may do better still, one alone not worse. */
static long try_missing(shop *s, int seed)
{
    ow_given givens[BRUTE_PORTS + 1];
    const char *without[BRUTE_PARTS];
    ow_ask ask;
    ow_search *search = NULL;
    ow_missing *missing = NULL;
    size_t count = 0;
    open_shop(s);
    convert_ask(s, givens, without, &ask);
    assert_int_equal(ow_net_build(&CONTEXT, s->catalog, &s->net), OW_OK);
    assert_int_equal(ow_search_new(&CONTEXT, s->net, &ask, &search), OW_OK);
    ow_status status = ow_search_missing(search, 3, &missing, &count);
    assert_true(status == OW_OK || status == OW_NONE);
    ow_search_free(search);
    ow_net_free(s->net);
    ow_catalog_free(s->catalog);
    for (size_t i = 0; status == OW_OK && i < count; i++) {
        for (int part = 0; part < s->c.net.part_count; part++)
            write_page(s, part);
        long parts = parts_with_made(s, &missing[i]);
        if (parts < 0 || parts > (long)missing[i].part_count)
            fail_msg("seed %d: made part %zu gives %ld parts, not %zu", seed, i, parts,
                     missing[i].part_count);
    }
    if (status == OW_OK)
        ow_missing_free(&CONTEXT, missing, count);
    return status == OW_OK ? (long)count : 0;
}

static void a_made_part_put_on_a_page_completes_the_layout(void **state)
{
    (void)state;
    static shop s;
    bool full = getenv("OW_SLOW_TOOL") == NULL;
    long made = 0;
    for (int seed = 0; seed < (full ? 600 : 10); seed++)
        if (draw_shop(&s, (uint64_t)seed, BRUTE_LIMIT_COUNT) && s.c.result.answer == BRUTE_NONE)
            made += try_missing(&s, seed);
    printf("made parts tried: %ld\n", made);
    assert_true(!full || made >= 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_made_part_put_on_a_page_completes_the_layout),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
