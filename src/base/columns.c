/* SPDX-License-Identifier: MIT */
/*
 * Widths by ranges, in order: Unicode Standard Annex 11 (East Asian Width, W and F) and the blocks of
 * combining and invisible signs (general categories Mn, Me, Cf), as far as words of a workshop could hold
 * them.
 */
#include "base/columns.h"

#include <stdint.h>

typedef struct width_range {
    uint32_t first, last;
    size_t columns;
} width_range;

static const width_range ranges[] = {
    {0x0300, 0x036F, 0},   {0x0483, 0x0489, 0},   {0x0591, 0x05BD, 0},   {0x0610, 0x061A, 0},
    {0x064B, 0x065F, 0},   {0x1100, 0x115F, 2},   {0x1AB0, 0x1AFF, 0},   {0x1DC0, 0x1DFF, 0},
    {0x200B, 0x200F, 0},   {0x202A, 0x202E, 0},   {0x2060, 0x2064, 0},   {0x20D0, 0x20FF, 0},
    {0x2E80, 0x3029, 2},   {0x302A, 0x302D, 0},   {0x302E, 0x303E, 2},   {0x3041, 0x4DBF, 2},
    {0x4E00, 0xA4CF, 2},   {0xA960, 0xA97C, 2},   {0xAC00, 0xD7A3, 2},   {0xF900, 0xFAFF, 2},
    {0xFE00, 0xFE0F, 0},   {0xFE20, 0xFE2F, 0},   {0xFE30, 0xFE6F, 2},   {0xFEFF, 0xFEFF, 0},
    {0xFF01, 0xFF60, 2},   {0xFFE0, 0xFFE6, 2},   {0x1F300, 0x1F64F, 2}, {0x1F680, 0x1F6FF, 2},
    {0x1F900, 0x1F9FF, 2}, {0x20000, 0x3FFFD, 2}, {0xE0100, 0xE01EF, 0},
};

static size_t columns_of(uint32_t sign)
{
    for (size_t index = 0; index < sizeof ranges / sizeof ranges[0] && sign >= ranges[index].first; index++)
        if (sign <= ranges[index].last)
            return ranges[index].columns;
    return 1;
}

/* The sign at the beginning; returns its bytes. What is no UTF-8 is one byte by itself. */
static size_t read_sign(const char *words, size_t length, uint32_t *sign)
{
    unsigned char first = (unsigned char)words[0];
    size_t bytes = first < 0x80 ? 1 : first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 1;
    *sign = bytes == 1 ? first : first & (0x7Fu >> bytes);
    if (bytes > length)
        bytes = 1;
    for (size_t index = 1; index < bytes; index++) {
        if (((unsigned char)words[index] & 0xC0u) != 0x80u)
            return index;
        *sign = *sign << 6 | ((unsigned char)words[index] & 0x3Fu);
    }
    return bytes;
}

/* Bytes of a colour code, ESC [ … letter; 0 if none begins there. */
static size_t colour_code(const char *words, size_t length)
{
    size_t index = 2;
    if (length < 3 || words[0] != '\033' || words[1] != '[')
        return 0;
    while (index < length && (words[index] == ';' || (words[index] >= '0' && words[index] <= '9')))
        index++;
    return index < length ? index + 1 : 0;
}

size_t ow_columns_cut(const char *words, size_t length, size_t columns)
{
    size_t used = 0;
    for (size_t at = 0; at < length;) {
        uint32_t sign;
        size_t code = colour_code(words + at, length - at);
        size_t bytes = code > 0 ? code : read_sign(words + at, length - at, &sign);
        size_t more = code > 0 ? 0 : columns_of(sign);
        if (used + more > columns)
            return at;
        used += more;
        at += bytes;
    }
    return length;
}

size_t ow_columns(const char *words, size_t length)
{
    size_t used = 0;
    for (size_t at = 0; at < length;) {
        uint32_t sign;
        size_t code = colour_code(words + at, length - at);
        size_t bytes = code > 0 ? code : read_sign(words + at, length - at, &sign);
        used += code > 0 ? 0 : columns_of(sign);
        at += bytes;
    }
    return used;
}
