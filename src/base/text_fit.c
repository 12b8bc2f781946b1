/* SPDX-License-Identifier: MIT */
/* A text made to fit a terminal. */
#include <string.h>

#include "base/columns.h"
#include "oilway/text.h"

#define FURTHER 4 /* columns by which the rest of a line is set in */

/* Bytes of the blanks and upright strokes that a line begins with: they go on in its rest. */
static size_t stem_of(const char *line, size_t length)
{
    static const char stroke[] = "│";
    size_t at = 0;
    while (at < length) {
        if (line[at] == ' ' || line[at] == '|')
            at++;
        else if (length - at >= sizeof stroke - 1 && memcmp(line + at, stroke, sizeof stroke - 1) == 0)
            at += sizeof stroke - 1;
        else
            break;
    }
    return at;
}

static size_t word_length(const char *line, size_t length)
{
    const char *blank = memchr(line, ' ', length);
    return blank != NULL ? (size_t)(blank - line) : length;
}

static void break_line(ow_text *text, const char *line, size_t length, size_t width)
{
    size_t stem = stem_of(line, length);
    size_t further = ow_columns(line, stem) + FURTHER;
    size_t column = ow_columns(line, stem);
    bool begun = false;
    ow_text_bytes(text, line, stem);
    for (size_t at = stem; at < length;) {
        size_t blanks = 0;
        while (at + blanks < length && line[at + blanks] == ' ')
            blanks++;
        size_t word = word_length(line + at + blanks, length - at - blanks);
        size_t columns = ow_columns(line + at + blanks, word);
        if (begun && column + blanks + columns > width && column + blanks > further) {
            ow_text_char(text, '\n');
            ow_text_bytes(text, line, stem);
            ow_text_repeat(text, ' ', FURTHER);
            column = further;
        } else {
            ow_text_repeat(text, ' ', blanks);
            column += blanks;
        }
        ow_text_bytes(text, line + at + blanks, word);
        column += columns;
        at += blanks + word;
        begun = true;
    }
}

void ow_text_fit(ow_text *text, size_t width)
{
    ow_text fitted = ow_text_new(text->context);
    for (size_t at = 0; at < text->length;) {
        const char *line = text->data + at;
        const char *end = memchr(line, '\n', text->length - at);
        size_t length = end != NULL ? (size_t)(end - line) : text->length - at;
        if (ow_columns(line, length) <= width)
            ow_text_bytes(&fitted, line, length);
        else
            break_line(&fitted, line, length, width);
        if (end != NULL)
            ow_text_char(&fitted, '\n');
        at += length + (end != NULL);
    }
    fitted.failed = fitted.failed || text->failed;
    ow_text_done(text);
    *text = fitted;
}
