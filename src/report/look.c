/* SPDX-License-Identifier: MIT */
#include "report/look.h"

#include <string.h>

#include "base/columns.h"

#define FOLDED_LEAST 28 /* columns that folded words have */

static const struct {
    const char *utf8;
    const char *ascii;
} signs[OW_SIGN_COUNT] = {
    [OW_SIGN_DOWN] = {"│", "|"},  [OW_SIGN_FORK] = {"├─", "+-"}, [OW_SIGN_LAST] = {"└─", "`-"},
    [OW_SIGN_JOINT] = {"╪", "#"}, [OW_SIGN_DOT] = {"·", "-"},    [OW_SIGN_TIMES] = {"×", "x"},
    [OW_SIGN_GOOD] = {"✓", "ok"}, [OW_SIGN_BAD] = {"✗", "NO"},   [OW_SIGN_WARN] = {"!", "!"},
    [OW_SIGN_NOTE] = {"·", "-"},
};

const char *ow_sign_words(ow_sign sign, const ow_style *style)
{
    return style->ascii ? signs[sign].ascii : signs[sign].utf8;
}

void ow_look_paint(ow_text *text, ow_paint paint, const ow_style *style, const char *words)
{
    static const char *const codes[] = {
        [OW_PAINT_STRONG] = "1", [OW_PAINT_FAINT] = "2", [OW_PAINT_GOOD] = "32",
        [OW_PAINT_BAD] = "1;31", [OW_PAINT_WARN] = "33",
    };
    if (style->colour)
        ow_text_format(text, "\033[%sm%s\033[0m", codes[paint], words);
    else
        ow_text_add(text, words);
}

size_t ow_look_width(const char *words)
{
    return ow_columns(words, strlen(words));
}

void ow_look_pad(ow_text *text, size_t start, size_t column)
{
    size_t used = text->length > start ? ow_columns(text->data + start, text->length - start) : 0;
    ow_text_repeat(text, ' ', used < column ? column - used : 1);
}

void ow_look_cell(ow_text *text, const char *words, size_t columns)
{
    size_t length = ow_columns_cut(words, strlen(words), columns);
    ow_text_bytes(text, words, length);
    ow_text_repeat(text, ' ', columns - ow_columns(words, length));
}

void ow_look_fold(ow_text *text, const ow_style *style, size_t column, size_t indent, const char *words)
{
    bool first = true;
    if (indent + FOLDED_LEAST > style->width) /* a narrow terminal: room before order */
        indent = style->width > FOLDED_LEAST ? style->width - FOLDED_LEAST : 0;
    for (const char *at = words; *at != '\0';) {
        size_t length = strcspn(at, " ");
        size_t width = ow_columns(at, length);
        if ((!first || column > indent) && column + 1 + width > style->width &&
            width + indent < style->width) {
            ow_text_char(text, '\n');
            ow_text_repeat(text, ' ', indent);
            column = indent;
        } else if (!first) {
            ow_text_char(text, ' ');
            column++;
        }
        ow_text_bytes(text, at, length);
        column += width;
        first = false;
        at += length;
        at += strspn(at, " ");
    }
}

void ow_look_price(ow_text *text, int64_t cents)
{
    ow_text_format(text, "%lld.%02lld", (long long)(cents / 100), (long long)(cents % 100));
}
