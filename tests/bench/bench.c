/* SPDX-License-Identifier: MIT */
/*
 * `make bench`: how long it takes to read a catalogue, against a bare scan of its YAML events by libyaml; to
 * build the net; and to answer for 1 to 4 ports. Seeded synthetic catalogues; prints docs/bench.md.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <yaml.h>

#include "bench/pages.h"
#include "oilway/stack.h"

enum { ASKS = 41, LOADS = 5, PORTS = 4 };

/* Processor time: everything here runs on one thread, and other work on the machine should not count. */
static double now_ms(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

#ifdef __clang__
#define BUILT_BY "clang " __clang_version__
#else
#define BUILT_BY "gcc " __VERSION__
#endif

static void fail(const char *what)
{
    fprintf(stderr, "bench: %s\n", what);
    exit(1);
}

static int compare_times(const void *a, const void *b)
{
    double left = *(const double *)a, right = *(const double *)b;
    return left < right ? -1 : left > right;
}

static double median(double *times, size_t count)
{
    qsort(times, count, sizeof *times, compare_times);
    return times[count / 2];
}

/* ---- memory: what the library holds, counted at its allocator -------------------------------------- */

typedef struct counter {
    size_t live, peak;
} counter;

/* The size stands before the block; room for it keeps every alignment. */
enum { HEAD = 2 * sizeof(max_align_t) };

static void *counted_resize(void *user, void *block, size_t size)
{
    counter *count = user;
    unsigned char *old = block == NULL ? NULL : (unsigned char *)block - HEAD;
    size_t old_size = 0;
    if (old != NULL)
        memcpy(&old_size, old, sizeof old_size);
    unsigned char *grown = NULL;
    if (size == 0)
        free(old);
    else if ((grown = realloc(old, size + HEAD)) == NULL)
        return NULL;
    count->live += size - old_size;
    count->peak = count->live > count->peak ? count->live : count->peak;
    if (grown == NULL)
        return NULL;
    memcpy(grown, &size, sizeof size);
    return grown + HEAD;
}

static void report(void *user, const ow_diagnostic *diagnostic)
{
    (void)user;
    if (diagnostic->severity == OW_ERROR)
        fprintf(stderr, "%s:%zu: %s\n", diagnostic->file ? diagnostic->file : "", diagnostic->line,
                diagnostic->message);
}

/* ---- the catalogue --------------------------------------------------------------------------------- */

static double scan_ms(const bench_pages *pages)
{
    double start = now_ms();
    for (size_t i = 0; i < pages->count; i++) {
        yaml_parser_t parser;
        yaml_event_t event;
        bool more = true;
        if (!yaml_parser_initialize(&parser))
            fail("libyaml does not start");
        yaml_parser_set_input_string(&parser, (const unsigned char *)pages->texts[i],
                                     strlen(pages->texts[i]));
        while (more) {
            if (!yaml_parser_parse(&parser, &event))
                fail("libyaml does not like a page");
            more = event.type != YAML_STREAM_END_EVENT;
            yaml_event_delete(&event);
        }
        yaml_parser_delete(&parser);
    }
    return now_ms() - start;
}

static ow_catalog *load(const ow_context *context, const bench_pages *pages, double *ms)
{
    ow_catalog_options options = {NULL, 0, NULL, false, false};
    ow_catalog *catalog = NULL;
    double start = now_ms();
    if (ow_catalog_load_texts(context, (const char *const *)pages->names, (const char *const *)pages->texts,
                              pages->count, &options, &catalog) != OW_OK)
        fail("the synthetic catalogue does not load");
    *ms = now_ms() - start;
    return catalog;
}

/* ---- the asks -------------------------------------------------------------------------------------- */

static ow_end draw_end(uint64_t *state, size_t kinds)
{
    char words[128];
    ow_end end;
    if (ow_end_read(bench_kind_words(bench_draw_kind(state, kinds), words), &end, NULL) != OW_OK)
        fail("an end is not read");
    return end;
}

static double answer_ms(const ow_context *context, const ow_net *net, const ow_ask *ask, bool *found)
{
    ow_search *search = NULL;
    ow_layout layout;
    double start = now_ms();
    if (ow_search_new(context, net, ask, &search) != OW_OK)
        fail("an ask is refused");
    ow_status status = ow_search_next(search, &layout);
    double ms = now_ms() - start;
    *found = status == OW_OK;
    if (*found)
        ow_layout_free(&layout);
    ow_search_free(search);
    return ms;
}

/* Median over asks with ports drawn at random; the first port is served, the others kept. */
static double answers_ms(const ow_context *context, const ow_net *net, size_t kinds, size_t ports,
                         bool limited, size_t *found)
{
    uint64_t state = 1000 + ports;
    double times[ASKS];
    static const char *const names[] = {"from", "to", "keep", "keep#2", "keep#3"};
    *found = 0;
    for (size_t i = 0; i < ASKS; i++) {
        ow_given givens[PORTS + 1];
        memset(givens, 0, sizeof givens);
        for (size_t k = 0; k <= ports; k++) {
            givens[k].name = names[k];
            givens[k].role = k == 0 ? OW_ROLE_SOURCE : k == 1 ? OW_ROLE_TO : OW_ROLE_KEEP;
            givens[k].end = draw_end(&state, kinds);
        }
        ow_ask ask = {NULL, OW_CIRCUIT_NONE, ports + 1, givens, OW_LIMITS_INIT, OW_NOT_SAID, NULL, 0};
        if (limited) { /* what a feed asks for */
            ask.limits.flexible = OW_YES;
            ask.limits.closing = true;
            ask.limits.restrictor = OW_RESTRICTOR_FORBIDDEN;
            ask.limits.rating_pa = 6e5;
            ask.limits.fluid = OW_FLUID_OIL;
            ask.limits.least_bore_m = 0.003;
        }
        bool is_found;
        times[i] = answer_ms(context, net, &ask, &is_found);
        *found += is_found;
    }
    return median(times, ASKS);
}

/* ---- the table ------------------------------------------------------------------------------------- */

static void print_head(void)
{
    printf(
        "# Bench\n\n"
        "Printed by `make bench`. Every catalogue is synthetic and seeded, so that the same work is timed "
        "everywhere;\ntimes are processor time of one thread, built by %s at -O2.\n\n"
        "`scan` is libyaml's events over the same bytes and nothing else, `load` is `ow_catalog_load_texts`, "
        "`net` is\n`ow_net_build`: medians of %d. `peak` is the most that the library held at a time. The "
        "aim is "
        "a load of at\nmost 1.5 scans.\n\n"
        "| parts | kinds | shapes | MB of YAML | scan ms | load ms | load / scan | net ms | peak MB |\n"
        "| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n",
        BUILT_BY, LOADS);
}

static void print_answers_head(void)
{
    printf("\nAnswers are `ow_search_new` and the first `ow_search_next`, the net being ready: medians over "
           "%d asks\n"
           "with ports drawn at random, the first served and the others kept, without limits and then with "
           "those\n"
           "of a feed. `found` is how many have a layout. The aim at 100,000 parts is 0.1, 0.5, 2 and 6 ms "
           "for 1\n"
           "to 4 ports.\n\n"
           "| parts | ports | ms | found | ms, as a feed | found |\n| --- | --- | --- | --- | --- | --- |\n",
           ASKS);
}

typedef struct answer_row {
    size_t parts;
    double ms[2][PORTS + 1];
    size_t found[2][PORTS + 1];
} answer_row;

static void time_size(size_t parts, size_t kinds, answer_row *row)
{
    bench_pages pages;
    counter count = {0, 0};
    ow_context context = {.resize = counted_resize, .resize_user = &count, .report = report};
    double scans[LOADS], loads[LOADS], builds[LOADS];
    ow_catalog *catalog = NULL;
    ow_net *net = NULL;
    bench_pages_write(parts, kinds, 1, &pages);
    for (size_t i = 0; i < LOADS; i++) {
        ow_net_free(net);
        ow_catalog_free(catalog);
        scans[i] = scan_ms(&pages);
        catalog = load(&context, &pages, &loads[i]);
        double start = now_ms();
        if (ow_net_build(&context, catalog, &net) != OW_OK)
            fail("no net");
        builds[i] = now_ms() - start;
    }
    row->parts = ow_catalog_part_count(catalog);
    for (size_t ports = 1; ports <= PORTS; ports++)
        for (int limited = 0; limited < 2; limited++)
            row->ms[limited][ports] =
                answers_ms(&context, net, kinds, ports, limited == 1, &row->found[limited][ports]);
    double scan = median(scans, LOADS), loaded = median(loads, LOADS);
    printf("| %zu | %zu | %zu | %.1f | %.1f | %.1f | %.2f | %.1f | %.1f |\n", row->parts,
           ow_net_kind_count(net), ow_net_shape_count(net), (double)pages.bytes / 1e6, scan, loaded,
           loaded / scan, median(builds, LOADS), (double)count.peak / 1e6);
    ow_net_free(net);
    ow_catalog_free(catalog);
    bench_pages_free(&pages);
    if (count.live != 0)
        fail("memory is still held");
}

int main(void)
{
    static const size_t parts[] = {1000, 10000, 100000};
    answer_row rows[3];
    size_t kinds = bench_kind_count();
    print_head();
    for (size_t i = 0; i < 3; i++) {
        time_size(parts[i], i == 0 ? kinds / 5 : i == 1 ? kinds / 2 : kinds, &rows[i]);
        fflush(stdout);
    }
    print_answers_head();
    for (size_t i = 0; i < 3; i++)
        for (size_t ports = 1; ports <= PORTS; ports++)
            printf("| %zu | %zu | %.3f | %zu | %.3f | %zu |\n", rows[i].parts, ports, rows[i].ms[0][ports],
                   rows[i].found[0][ports], rows[i].ms[1][ports], rows[i].found[1][ports]);
    return fflush(stdout) == 0 ? 0 : 1;
}
