/* SPDX-License-Identifier: MIT */
#include "layout/write_word.h"

#include <string.h>

#include "base/words.h"

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_inner(char c)
{
    return is_letter(c) || (c >= '0' && c <= '9') || strchr("._/+-", c);
}

/* Words that YAML 1.1 reads as something else (https://yaml.org/type/: bool, null). */
static bool is_taken(const char *words)
{
    static const char *const taken[] = {"y", "n", "yes", "no", "true", "false", "on", "off", "null"};
    for (size_t i = 0; i < sizeof taken / sizeof *taken; i++)
        if (ow_words_equal(words, taken[i]))
            return true;
    return false;
}

/* A letter first; inside also single blanks, and a colon that no blank follows. */
static bool is_plain(const char *words)
{
    if (!is_letter(words[0]) || is_taken(words))
        return false;
    for (const char *at = words; *at; at++) {
        bool last = at[1] == '\0';
        if (!is_inner(*at) && (last || (*at != ' ' && *at != ':') || !is_inner(at[1])))
            return false;
    }
    return true;
}

void ow_write_quoted(ow_text *text, const char *words)
{
    ow_text_char(text, '"');
    for (const char *at = words; *at; at++) {
        unsigned char c = (unsigned char)*at;
        if (c == '"' || c == '\\')
            ow_text_format(text, "\\%c", c);
        else if (c < ' ' || c == 0x7f)
            ow_text_format(text, "\\x%02x", c);
        else
            ow_text_char(text, *at);
    }
    ow_text_char(text, '"');
}

void ow_write_word(ow_text *text, const char *words)
{
    if (is_plain(words))
        ow_text_add(text, words);
    else
        ow_write_quoted(text, words);
}
