/* SPDX-License-Identifier: MIT */
/* The catalogue that ships, for tests that go over it: a fixture for cmocka. */
#ifndef OW_TESTS_SHIPPED_H
#define OW_TESTS_SHIPPED_H

#include "oilway/answer.h"
#include "support/diagnostics.h"

typedef struct ow_shipped {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
} ow_shipped;

int ow_shipped_load(void **state);
int ow_shipped_unload(void **state);

/* A file of the source tree, whole; freed with ow_release. */
char *ow_shipped_file(const ow_shipped *self, const char *name, size_t *length);
/* One layout of a text; freed with ow_layouts_free. */
ow_layout *ow_shipped_layout(const ow_context *context, const ow_catalog *catalog, const char *text);
/* Reads and answers an ask; asserts that both go well. */
void ow_shipped_answer(const ow_shipped *self, const ow_ask_words *words, ow_ask_set *set,
                       ow_answers *answers);

#endif
