/* SPDX-License-Identifier: MIT */
#include "support/shipped.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/file.h"
#include "support/testing.h"

static void path_of(const char *name, char *path, size_t room)
{
    const char *source = getenv("OW_SOURCE_DIR");
    (void)snprintf(path, room, "%s/%s", source != NULL ? source : ".", name);
}

int ow_shipped_load(void **state)
{
    char folder[4096];
    path_of("catalog", folder, sizeof folder);
    const char *folders[] = {folder};
    const ow_catalog_options options = {folders, 1, NULL, false, false};
    ow_shipped *self = calloc(1, sizeof *self);
    if (self == NULL)
        return -1;
    self->context = ow_test_context(&self->sink);
    *state = self;
    if (ow_catalog_load(&self->context, &options, &self->catalog) != OW_OK)
        return -1;
    return ow_net_build(&self->context, self->catalog, &self->net) == OW_OK ? 0 : -1;
}

int ow_shipped_unload(void **state)
{
    ow_shipped *self = *state;
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    free(self);
    return 0;
}

char *ow_shipped_file(const ow_shipped *self, const char *name, size_t *length)
{
    char path[4096];
    char *bytes = NULL;
    path_of(name, path, sizeof path);
    assert_int_equal(ow_file_read(&self->context, path, &bytes, length), OW_OK);
    return bytes;
}

ow_layout *ow_shipped_layout(const ow_context *context, const ow_catalog *catalog, const char *text)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    assert_int_equal(ow_layouts_read(context, catalog, "test.yaml", text, strlen(text), &layouts, &count),
                     OW_OK);
    assert_int_equal(count, 1);
    return layouts;
}

void ow_shipped_answer(const ow_shipped *self, const ow_ask_words *words, ow_ask_set *set,
                       ow_answers *answers)
{
    const ow_answer_options options = OW_ANSWER_OPTIONS_INIT;
    assert_int_equal(ow_ask_read(&self->context, self->catalog, self->net, words, set), OW_OK);
    assert_int_equal(ow_answers_find(&self->context, self->catalog, self->net, set, &options, answers),
                     OW_OK);
}
