/* SPDX-License-Identifier: MIT */
/* A diagnostic as a person reads it. */
#include <string.h>

#include "base/words.h"
#include "oilway/text.h"

/* A line is shown through a window of this many characters: a page of 10,000 columns helps nobody. */
#define WINDOW 100
#define LEAD 60 /* characters kept before the mark when the line is cut */
#define TAB "    "

/* Bytes of the character at the start; a byte that is no UTF-8 counts as one character. */
static size_t character_bytes(const char *bytes, size_t length)
{
    unsigned char first = (unsigned char)bytes[0];
    size_t wanted = first < 0xC0 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
    if (wanted > length || ow_utf8_valid(bytes, wanted) != wanted)
        return 1;
    return wanted;
}

/* Shows one character, and nothing that could steer a terminal; returns the columns it took. */
static size_t show_character(ow_text *text, const char *bytes, size_t length)
{
    unsigned char first = (unsigned char)bytes[0];
    if (first == '\t') {
        ow_text_add(text, TAB);
        return strlen(TAB);
    }
    bool control =
        first < 0x20 || first == 0x7F || (length == 2 && first == 0xC2 && (unsigned char)bytes[1] < 0xA0);
    bool broken = length == 1 && first >= 0x80;
    if (control || broken)
        ow_text_char(text, '?');
    else
        ow_text_bytes(text, bytes, length);
    return 1;
}

/* Words that may hold what somebody wrote: no line ends, and nothing that could steer a terminal. */
static void show_words(ow_text *text, const char *words)
{
    size_t length = strlen(words);
    for (size_t offset = 0; offset < length;) {
        size_t bytes = character_bytes(words + offset, length - offset);
        if (words[offset] == '\n')
            ow_text_char(text, ' ');
        else
            show_character(text, words + offset, bytes);
        offset += bytes;
    }
}

/* The line, then the mark under the fault. */
static void show_line(ow_text *text, const ow_diagnostic *shown)
{
    size_t column = shown->column == 0 ? 1 : shown->column;
    size_t width = shown->mark_width == 0 ? 1 : shown->mark_width;
    size_t from = column > LEAD ? column - LEAD : 1;
    size_t at = 1, before = 0, under = 0;
    ow_text_add(text, "    ");
    if (from > 1) {
        ow_text_add(text, "…");
        before = 1;
    }
    size_t offset = 0;
    while (offset < shown->line_length && at < from + WINDOW) {
        size_t bytes = character_bytes(shown->line_text + offset, shown->line_length - offset);
        if (at >= from) {
            size_t columns = show_character(text, shown->line_text + offset, bytes);
            if (at < column)
                before += columns;
            else if (at - column < width)
                under += columns;
        }
        offset += bytes;
        at++;
    }
    if (offset < shown->line_length)
        ow_text_add(text, "…");
    ow_text_add(text, "\n    ");
    ow_text_repeat(text, ' ', before);
    ow_text_repeat(text, '^', under == 0 ? 1 : under);
    ow_text_char(text, '\n');
}

void ow_text_diagnostic(ow_text *text, const ow_diagnostic *diagnostic)
{
    if (diagnostic->file != NULL) {
        show_words(text, diagnostic->file);
        if (diagnostic->line > 0)
            ow_text_format(text, ":%zu", diagnostic->line);
        if (diagnostic->line > 0 && diagnostic->column > 0)
            ow_text_format(text, ":%zu", diagnostic->column);
        ow_text_add(text, ": ");
    }
    ow_text_add(text, ow_severity_name(diagnostic->severity));
    ow_text_add(text, ": ");
    show_words(text, diagnostic->message);
    ow_text_char(text, '\n');
    if (diagnostic->line_text != NULL)
        show_line(text, diagnostic);
    if (diagnostic->expected != NULL) {
        ow_text_add(text, "    expected ");
        show_words(text, diagnostic->expected);
        ow_text_char(text, '\n');
    }
    if (diagnostic->mend != NULL) {
        ow_text_add(text, "    mend: ");
        show_words(text, diagnostic->mend);
        ow_text_char(text, '\n');
    }
}
