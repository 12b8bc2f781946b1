/* SPDX-License-Identifier: MIT */
/* Words made safe for XML and HTML. */
#ifndef OW_DRAWING_ESCAPE_H
#define OW_DRAWING_ESCAPE_H

#include "oilway/text.h"

/*
 * Appends words with & < > " ' as entities. What XML 1.0 cannot carry (control characters, bytes that are no
 * UTF-8, U+FFFE and U+FFFF) becomes U+FFFD; tab and line ends become a blank.
 */
void ow_escape(ow_text *text, const char *words);
void ow_escape_bytes(ow_text *text, const char *words, size_t length);

#endif
