/* SPDX-License-Identifier: MIT */
#include "drawing/letters.h"

#include <string.h>

/*
 * Widths of the printable ASCII characters in thousandths of the size: those of the common sans-serif types
 * that share their metrics (the base-14 sans-serif of PDF, ISO 32000-1 annex D names it), from memory.
 */
static const unsigned short WIDTHS[95] = {
    278,  278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, /* blank to / */
    556,  556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, /* 0 to ? */
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, /* @ to O */
    667,  778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, /* P to _ */
    333,  556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, /* ` to o */
    556,  556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,      /* p to ~ */
};

/* Beyond ASCII: two bytes hold letters, degree and times signs; three and four wide signs. */
static unsigned wide_width(unsigned char first)
{
    if (first == 0xC2) /* degree, middle dot and the like */
        return 400;
    return first < 0xE0 ? 610 : 1000;
}

static double character_width(const char *words, size_t length, size_t *bytes)
{
    unsigned char first = (unsigned char)words[0];
    *bytes = first < 0xC0 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
    if (*bytes > length)
        *bytes = length;
    if (first < 0x20 || first == 0x7f)
        return 0.6;
    return (first < 0x7f ? WIDTHS[first - 0x20] : wide_width(first)) / 1000.0;
}

double ow_letters_width(const char *words, size_t length, double size, bool bold)
{
    double width = 0.0;
    size_t bytes = 1;
    for (size_t index = 0; index < length; index += bytes)
        width += character_width(words + index, length - index, &bytes);
    return width * size * (bold ? 1.06 : 1.0);
}

double ow_words_width(const char *words, double size, bool bold)
{
    return ow_letters_width(words, strlen(words), size, bold);
}

size_t ow_letters_fold(const char *words, size_t length, double size, bool bold, double width, size_t *next)
{
    double used = 0.0;
    size_t blank = 0, bytes = 1;
    double scale = size * (bold ? 1.06 : 1.0);
    for (size_t index = 0; index < length; index += bytes) {
        used += character_width(words + index, length - index, &bytes) * scale;
        if (words[index] == ' ')
            blank = index;
        if (used > width && index > 0 && words[index] != ' ') {
            *next = blank > 0 ? blank + 1 : index;
            return blank > 0 ? blank : index;
        }
    }
    *next = length;
    return length;
}
