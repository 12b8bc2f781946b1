/* SPDX-License-Identifier: MIT */
/* Synthetic catalogues: seeded YAML pages in the real grammar, the same on every machine. */
#ifndef BENCH_PAGES_H
#define BENCH_PAGES_H

#include <stddef.h>
#include <stdint.h>

typedef struct bench_pages {
    size_t count;
    char **names, **texts;
    size_t bytes; /* of all texts */
} bench_pages;

/* `parts` rows over about `kinds` kinds of end (at most bench_kind_count()). */
void bench_pages_write(size_t parts, size_t kinds, uint64_t seed, bench_pages *pages);
void bench_pages_free(bench_pages *pages);

size_t bench_kind_count(void);
const char *bench_kind_words(size_t kind, char words[128]); /* returns words */

uint32_t bench_draw(uint64_t *state, uint32_t sides); /* 0 .. sides - 1 */
/* A kind below `kinds`, low numbers more often: a few threads are everywhere, most are rare. */
size_t bench_draw_kind(uint64_t *state, size_t kinds);

#endif
