/* SPDX-License-Identifier: MIT */
#include "drawing/escape.h"

#include <string.h>

#include "base/words.h"

static const char *entity(unsigned char byte)
{
    switch (byte) {
    case '&':
        return "&amp;";
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '"':
        return "&quot;";
    case '\'':
        return "&#39;";
    case '\t':
    case '\n':
    case '\r':
        return " ";
    default:
        return byte < 0x20 || byte == 0x7f ? "\xEF\xBF\xBD" : NULL;
    }
}

/* Bytes of the character at the start, 0 if it is no UTF-8 or one that XML cannot carry. */
static size_t character_bytes(const char *words, size_t length)
{
    unsigned char first = (unsigned char)words[0];
    size_t bytes = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
    if (bytes > length || ow_utf8_valid(words, bytes) != bytes)
        return 0;
    if (bytes == 3 && (memcmp(words, "\xEF\xBF\xBE", 3) == 0 || memcmp(words, "\xEF\xBF\xBF", 3) == 0))
        return 0;
    return bytes;
}

void ow_escape_bytes(ow_text *text, const char *words, size_t length)
{
    for (size_t index = 0; index < length;) {
        size_t bytes = character_bytes(words + index, length - index);
        const char *instead = bytes == 0   ? "\xEF\xBF\xBD"
                              : bytes == 1 ? entity((unsigned char)words[index])
                                           : NULL;
        if (instead != NULL)
            ow_text_add(text, instead);
        else
            ow_text_bytes(text, words + index, bytes);
        index += bytes == 0 ? 1 : bytes;
    }
}

void ow_escape(ow_text *text, const char *words)
{
    if (words != NULL)
        ow_escape_bytes(text, words, strlen(words));
}
