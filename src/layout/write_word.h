/* SPDX-License-Identifier: MIT */
/* A word of a YAML text: plain where any reader of YAML would take it for the same word, else in quotes. */
#ifndef OW_LAYOUT_WRITE_WORD_H
#define OW_LAYOUT_WRITE_WORD_H

#include "oilway/text.h"

void ow_write_word(ow_text *text, const char *words);
void ow_write_quoted(ow_text *text, const char *words);

#endif
