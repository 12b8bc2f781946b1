/* SPDX-License-Identifier: MIT */
#include "support/diagnostics.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "support/testing.h"

static char *copy_of(const char *bytes, size_t length)
{
    if (bytes == NULL || length == SIZE_MAX)
        return NULL;
    char *copy = malloc(length + 1);
    assert_non_null(copy);
    memcpy(copy, bytes, length);
    copy[length] = '\0';
    return copy;
}

static char *copy_words(const char *words)
{
    return copy_of(words, words == NULL ? 0 : strlen(words));
}

/* The byte offset of a character, counted from 0, at most the length. */
static size_t offset_of(const char *bytes, size_t length, size_t character)
{
    size_t offset = 0;
    for (; character > 0 && offset < length; character--) {
        do
            offset++;
        while (offset < length && ((unsigned char)bytes[offset] & 0xC0) == 0x80);
    }
    return offset;
}

static char *told_of(const ow_diagnostic *told)
{
    size_t size = 128 + strlen(told->message) + (told->file == NULL ? 0 : strlen(told->file));
    char *words = malloc(size);
    assert_non_null(words);
    char place[64] = "";
    if (told->file != NULL && told->line > 0)
        snprintf(place, sizeof place, ":%zu:%zu", told->line, told->column);
    snprintf(words, size, "%s%s%s%s: %s", told->file == NULL ? "" : told->file, place,
             told->file == NULL ? "" : ": ", ow_severity_name(told->severity), told->message);
    return words;
}

void ow_test_check_diagnostic(void *user, const ow_diagnostic *told)
{
    (void)user;
    assert_non_null(told->message);
    assert_true(told->message[0] != '\0');
    assert_true(told->status > OW_OK && told->status < OW_STATUS_COUNT);
    assert_true(told->status != OW_MEMORY);
    assert_true(told->expected == NULL || told->expected[0] != '\0');
    assert_true(told->mend == NULL || told->mend[0] != '\0');
    if (told->line_text == NULL)
        return;
    assert_true(told->line >= 1 && told->column >= 1 && told->mark_width >= 1);
    for (size_t i = 0; i < told->line_length; i++)
        assert_true(told->line_text[i] != '\n');
    size_t characters = ow_utf8_count(told->line_text, told->line_length);
    assert_true(told->column <= characters + 1);
    assert_true(told->column + told->mark_width <= characters + 2);
}

void ow_test_collect(void *user, const ow_diagnostic *told)
{
    ow_test_check_diagnostic(NULL, told);
    ow_test_diagnostics *sink = user;
    ow_test_diagnostic *items = realloc(sink->items, (sink->count + 1) * sizeof *items);
    assert_non_null(items);
    sink->items = items;
    ow_test_diagnostic *kept = &items[sink->count++];
    *kept = (ow_test_diagnostic){.severity = told->severity,
                                 .status = told->status,
                                 .line = told->line,
                                 .column = told->column,
                                 .mark_width = told->mark_width};
    kept->file = copy_words(told->file);
    kept->line_text = copy_of(told->line_text, told->line_length);
    if (told->line_text != NULL) {
        size_t from = offset_of(told->line_text, told->line_length, told->column - 1);
        size_t to = offset_of(told->line_text, told->line_length, told->column - 1 + told->mark_width);
        kept->marked = copy_of(told->line_text + from, to - from);
    }
    kept->message = copy_words(told->message);
    kept->expected = copy_words(told->expected);
    kept->mend = copy_words(told->mend);
    kept->told = told_of(told);
}

ow_context ow_test_context(ow_test_diagnostics *sink)
{
    ow_context context = OW_CONTEXT_INIT;
    context.report = ow_test_collect;
    context.report_user = sink;
    return context;
}

void ow_test_diagnostics_clear(ow_test_diagnostics *sink)
{
    for (size_t i = 0; i < sink->count; i++) {
        ow_test_diagnostic *kept = &sink->items[i];
        free(kept->file);
        free(kept->line_text);
        free(kept->marked);
        free(kept->message);
        free(kept->expected);
        free(kept->mend);
        free(kept->told);
    }
    free(sink->items);
    sink->items = NULL;
    sink->count = 0;
}

size_t ow_test_count(const ow_test_diagnostics *sink, ow_severity severity)
{
    size_t count = 0;
    for (size_t i = 0; i < sink->count; i++)
        count += sink->items[i].severity == severity;
    return count;
}

const ow_test_diagnostic *ow_test_find(const ow_test_diagnostics *sink, const char *words)
{
    for (size_t i = 0; i < sink->count; i++)
        if (strstr(sink->items[i].message, words) != NULL)
            return &sink->items[i];
    return NULL;
}

void ow_test_assert_told(ow_test_diagnostics *sink, const char *told)
{
    for (size_t i = 1; i < sink->count; i++)
        print_error("also told: %s\n", sink->items[i].told);
    assert_int_not_equal(sink->count, 0);
    assert_string_equal(sink->items[0].told, told);
    assert_int_equal(sink->count, 1);
    ow_test_diagnostics_clear(sink);
}
