/* SPDX-License-Identifier: MIT */
/* Columns that words take on a terminal. */
#ifndef OW_BASE_COLUMNS_H
#define OW_BASE_COLUMNS_H

#include <stddef.h>

/*
 * Columns of UTF-8 words: two for the wide signs of East Asia and for pictures, none for signs that combine
 * with the one before them or cannot be seen, nor for a terminal's colour codes. A byte that is no UTF-8
 * takes one.
 */
size_t ow_columns(const char *words, size_t length);
/* Bytes of the longest beginning that takes no more than so many columns; never half a sign. */
size_t ow_columns_cut(const char *words, size_t length, size_t columns);

#endif
