/* SPDX-License-Identifier: MIT */
#include "report/csv.h"

#include <string.h>

void ow_csv_words(ow_text *text, const char *words, bool first)
{
    if (!first)
        ow_text_char(text, ',');
    if (strpbrk(words, ",\"\r\n") == NULL) {
        ow_text_add(text, words);
        return;
    }
    ow_text_char(text, '"');
    for (const char *at = words; *at != '\0'; at++) {
        if (*at == '"')
            ow_text_char(text, '"');
        ow_text_char(text, *at);
    }
    ow_text_char(text, '"');
}
