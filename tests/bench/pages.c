/* SPDX-License-Identifier: MIT */
#include "bench/pages.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Families of ends in the grammar of docs: every size with every ending. */
typedef struct family {
    const char *sizes;   /* separated by commas */
    const char *endings; /* likewise */
} family;

static const family FAMILIES[] = {
    {"1/8-27 NPT,1/16-27 NPT,1/4-18 NPT,3/8-18 NPT,1/2-14 NPT,3/4-14 NPT", " male, female"},
    {"-4,-3,-6,-8,-10,-2,-5,-12,-16", " flare37 male, flare37 female, flare37 female swivel"},
    {"M8x1,M10x1,M10x1.25,M12x1,M12x1.25,M12x1.5,M14x1.5,M16x1.5,M18x1.5,M20x1.5,M22x1.5,M24x1.5,M26x1.5,"
     "M27x2",
     " male washer, female washer, male banjo, male washer-captive"},
    {"G1/8,G1/4,G3/8,G1/2,G3/4,G1", " male washer, female washer, male cone60, female cone60 swivel"},
    {"R1/8,R1/4,R3/8,R1/2,R3/4", " male"},
    {"Rc1/8,Rc1/4,Rc3/8,Rc1/2,Rc3/4,Rp1/8,Rp1/4,Rp3/8,Rp1/2", " female"},
    {"-4,-3,-6,-8,-10,-2,-5,-12,-16", " o-ring male, o-ring female"},
    {"3/8-24 UNF,7/16-20 UNF,1/2-20 UNF,9/16-18 UNF,3/4-16 UNF,7/8-14 UNF",
     " male washer, female washer, male banjo"},
    {"banjo 8,banjo 10,banjo 12,banjo 14,banjo 16,banjo 18", " stud, eye"},
    {"3/16,1/4,5/16,3/8,1/2",
     " flare45 male, flare45 female swivel, flare45-inverted male, flare45-inverted female"},
    {"M10x1,M12x1.5,M14x1.5,M16x1.5,M18x1.5,M22x1.5", " male o-ring, female o-ring"},
    {"-4,-6,-8,-10,-12,-16", " face-o-ring male, face-o-ring female, face-o-ring female swivel"},
    {"M12x1.5 male cone24 6L,M14x1.5 male cone24 8L,M16x1.5 male cone24 10L,M18x1.5 male cone24 12L,"
     "M22x1.5 male cone24 15L,M26x1.5 male cone24 18L",
     ""},
    {"M12x1.5 female cone24 6L,M14x1.5 female cone24 8L,M16x1.5 female cone24 10L,M18x1.5 female cone24 12L,"
     "M22x1.5 female cone24 15L,M26x1.5 female cone24 18L",
     ", swivel"},
    {"barb 5,barb 6,barb 8,barb 10,barb 12,barb 16,barb 19,barb 22,barb 25,bead 13,bead 16,bead 19,bead 22",
     ""},
    {"tube 6,tube 8,tube 10,tube 12,weld 12,weld 16,weld 19,flange f38,flange f44,flange f50", ""},
    {"M8x1,M10x1,M12x1.5,M14x1.5,M16x1.5,M18x1.5", " male taper"},
};

enum { FAMILY_COUNT = sizeof FAMILIES / sizeof FAMILIES[0] };

/* Copies the item of that number out of a list by commas; false if there are fewer. */
static int list_item(const char *list, size_t number, char *item, size_t size)
{
    for (; number > 0; number--) {
        list = strchr(list, ',');
        if (list == NULL)
            return 0;
        list++;
    }
    size_t length = strcspn(list, ",");
    snprintf(item, size, "%.*s", (int)length, list);
    return 1;
}

/* Kinds are numbered by size first, so that the small numbers are the common sizes of every family and
 * what mates stands near. Returns the count met on the way, or stops at `wanted`. */
static size_t walk_kinds(size_t wanted, char *words, size_t size)
{
    char of_size[64], ending[64];
    size_t number = 0;
    for (size_t at = 0; at < 16; at++)
        for (size_t i = 0; i < FAMILY_COUNT; i++)
            for (size_t k = 0; list_item(FAMILIES[i].sizes, at, of_size, sizeof of_size) &&
                               list_item(FAMILIES[i].endings, k, ending, sizeof ending);
                 k++) {
                if (number++ != wanted)
                    continue;
                snprintf(words, size, "%s%s", of_size, ending);
                return number;
            }
    return number;
}

size_t bench_kind_count(void)
{
    char words[128];
    return walk_kinds((size_t)-1, words, sizeof words);
}

const char *bench_kind_words(size_t kind, char words[128])
{
    walk_kinds(kind, words, 128);
    return words;
}

/* SplitMix64, as in the tests of the optimum but a generator of its own. */
uint32_t bench_draw(uint64_t *state, uint32_t sides)
{
    uint64_t z = *state += 0x9e3779b97f4a7c15u;
    z = (z ^ z >> 30) * 0xbf58476d1ce4e5b9u;
    z = (z ^ z >> 27) * 0x94d049bb133111ebu;
    return (uint32_t)((z ^ z >> 31) >> 32) % sides;
}

size_t bench_draw_kind(uint64_t *state, size_t kinds)
{
    uint64_t drawn = bench_draw(state, 1u << 16);
    return (size_t)(drawn * drawn * kinds >> 32);
}

/* ---- rows ------------------------------------------------------------------------------------ */

typedef struct row_kind {
    const char *kind, *columns;
    uint32_t per_mille;
    size_t ends; /* drawn from all kinds; 0 for hoses and hose ends, whose ends go together */
} row_kind;

static const row_kind ROWS[] = {
    {"adapter", "id, a, b, bore, length, price", 520, 2},
    {"elbow", "id, a, b, angle, bore, length, price", 150, 2},
    {"tee", "id, run-a, run-b, branch, bore, length, price", 120, 3},
    {"gauge-adapter", "id, a, b, side, bore, length, price", 30, 3},
    {"cross", "id, run-a, run-b, branch-a, branch-b, bore, length, price", 15, 4},
    {"hose-end", "id, nut, tail, angle, bore, length, price", 60, 0},
    {"hose", "id, a, b, bore, bend-radius, price", 15, 0},
    {"plug", "id, a, length, price", 60, 1},
    {"cap", "id, a, length, price", 20, 1},
    {"restrictor", "id, a, b, orifice, bore, length, price", 10, 2},
};

enum { ROW_KINDS = sizeof ROWS / sizeof ROWS[0], ROWS_A_PAGE = 500, ROWS_A_DESIGN = 5 /* on average */ };

/* Kinds of end as text, found once. */
typedef struct words {
    size_t count;
    char (*kind)[128];
} words;

typedef struct page {
    char *text;
    size_t length, capacity;
} page;

static void put(page *to, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void put(page *to, const char *format, ...)
{
    va_list arguments;
    if (to->capacity - to->length < 512) {
        to->capacity = to->capacity * 2 + 4096;
        to->text = realloc(to->text, to->capacity);
        if (to->text == NULL)
            abort();
    }
    va_start(arguments, format);
    to->length += (size_t)vsnprintf(to->text + to->length, to->capacity - to->length, format, arguments);
    va_end(arguments);
}

static void put_ends(page *to, const row_kind *row, const words *ends, uint64_t *state)
{
    static const int dashes[] = {3, 4, 6, 8, 10};
    static const char *const classes[] = {"ptfe", "nitrile"};
    int dash = dashes[bench_draw(state, 5)];
    const char *class = classes[bench_draw(state, 2)];
    if (strcmp(row->kind, "hose-end") == 0)
        put(to, ", %s, hose -%d %s tail", ends->kind[bench_draw_kind(state, ends->count)], dash, class);
    else if (strcmp(row->kind, "hose") == 0)
        put(to, ", hose -%d %s, hose -%d %s", dash, class, dash, class);
    for (size_t end = 0; end < row->ends; end++)
        put(to, ", %s", ends->kind[bench_draw_kind(state, ends->count)]);
}

/* `design` settles the ends: rows of one design differ in length, bore and price. */
static void put_row(page *to, const row_kind *row, size_t number, const words *ends, uint64_t design,
                    uint64_t *state)
{
    put(to, "  - [s%06zu", number);
    put_ends(to, row, ends, &design);
    if (strstr(row->columns, "angle") != NULL)
        put(to, ", %u deg", 45 * (bench_draw(state, 2) + 1));
    if (strstr(row->columns, "orifice") != NULL)
        put(to, ", 0.%u mm", 7 + bench_draw(state, 3));
    if (strstr(row->columns, "bore") != NULL)
        put(to, ", %u.%u mm", 2 + bench_draw(state, 8), bench_draw(state, 10));
    if (strstr(row->columns, "bend-radius") != NULL)
        put(to, ", %u mm", 40 + bench_draw(state, 60));
    if (strstr(row->columns, "length") != NULL)
        put(to, ", %u mm", 15 + bench_draw(state, 60));
    put(to, ", %u.%02u]\n", 1 + bench_draw(state, 30), bench_draw(state, 100));
}

static void finish_page(bench_pages *pages, page *from, const char *kind)
{
    char name[64];
    snprintf(name, sizeof name, "%05zu-%s.yaml", pages->count, kind);
    pages->names = realloc(pages->names, (pages->count + 1) * sizeof *pages->names);
    pages->texts = realloc(pages->texts, (pages->count + 1) * sizeof *pages->texts);
    if (pages->names == NULL || pages->texts == NULL)
        abort();
    pages->names[pages->count] = strdup(name);
    pages->texts[pages->count++] = from->text;
    pages->bytes += from->length;
    memset(from, 0, sizeof *from);
}

static void write_kind(bench_pages *pages, const row_kind *row, size_t rows, size_t *number,
                       const words *ends, uint64_t *state)
{
    page now = {NULL, 0, 0};
    uint64_t design = 0, left = 0;
    for (size_t i = 0; i < rows; i++) {
        if (i % ROWS_A_PAGE == 0)
            put(&now,
                "page: %s-%zu\nkind: %s\ntitle: Synthetic %s\nmaterial: steel\nrating: 160 bar\n"
                "temperature: -40..150 C\nfluids: [oil, coolant]\ncolumns: [%s]\nrows:\n",
                row->kind, pages->count, row->kind, row->kind, row->columns);
        if (left-- == 0) {
            design = *state + i;
            left = bench_draw(state, 2 * ROWS_A_DESIGN - 1);
        }
        put_row(&now, row, (*number)++, ends, design, state);
        if (i % ROWS_A_PAGE == ROWS_A_PAGE - 1 || i + 1 == rows)
            finish_page(pages, &now, row->kind);
    }
}

void bench_pages_write(size_t parts, size_t kinds, uint64_t seed, bench_pages *pages)
{
    words ends = {kinds, malloc(kinds * sizeof *ends.kind)};
    size_t number = 0;
    if (ends.kind == NULL)
        abort();
    if (kinds > bench_kind_count()) {
        fprintf(stderr, "bench: %zu kinds of end are asked for, %zu can be made\n", kinds,
                bench_kind_count());
        exit(1);
    }
    for (size_t kind = 0; kind < kinds; kind++)
        bench_kind_words(kind, ends.kind[kind]);
    memset(pages, 0, sizeof *pages);
    for (size_t i = 0; i < ROW_KINDS; i++)
        write_kind(pages, &ROWS[i], parts * ROWS[i].per_mille / 1000, &number, &ends, &seed);
    free(ends.kind);
}

void bench_pages_free(bench_pages *pages)
{
    for (size_t i = 0; i < pages->count; i++) {
        free(pages->names[i]);
        free(pages->texts[i]);
    }
    free(pages->names);
    free(pages->texts);
    memset(pages, 0, sizeof *pages);
}
