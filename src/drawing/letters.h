/* SPDX-License-Identifier: MIT */
/* How wide words come out, and where they are folded. */
#ifndef OW_DRAWING_LETTERS_H
#define OW_DRAWING_LETTERS_H

#include <stdbool.h>
#include <stddef.h>

/* Width of the words in a sans-serif type of that size, in the unit of the size. */
double ow_letters_width(const char *words, size_t length, double size, bool bold);
double ow_words_width(const char *words, double size, bool bold);

/*
 * Bytes of the first line when the words are folded to a width: up to a blank, or cut where one word alone is
 * too wide. *next is where the following line begins (length where there is none). At least one character.
 */
size_t ow_letters_fold(const char *words, size_t length, double size, bool bold, double width, size_t *next);

#endif
