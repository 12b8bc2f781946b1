/* SPDX-License-Identifier: MIT */
/* A text for terminals and printers that know ASCII only. */
#include <string.h>

#include "base/words.h"

/* Signs that the trade's texts hold, and the letters of Western Europe without their marks. */
static const struct sign {
    const char *utf8, *ascii;
} SIGNS[] = {
    {"°", " deg"},   {"×", "x"},   {"·", "-"},   {"–", "-"},  {"—", "-"},  {"−", "-"},     {"…", "..."},
    {"“", "\""},     {"”", "\""},  {"„", "\""},  {"‘", "'"},  {"’", "'"},  {"«", "\""},    {"»", "\""},
    {"½", "1/2"},    {"¼", "1/4"}, {"¾", "3/4"}, {"±", "+-"}, {"µ", "u"},  {"μ", "u"},     {"Ω", "ohm"},
    {"²", "2"},      {"³", "3"},   {"≤", "<="},  {"≥", ">="}, {"→", "->"}, {"Ø", "dia. "}, {"ø", "o"},
    {"\u00a0", " "}, {"ä", "ae"},  {"ö", "oe"},  {"ü", "ue"}, {"Ä", "Ae"}, {"Ö", "Oe"},    {"Ü", "Ue"},
    {"ß", "ss"},     {"å", "aa"},  {"Å", "Aa"},  {"æ", "ae"}, {"Æ", "Ae"}, {"é", "e"},     {"è", "e"},
    {"ê", "e"},      {"ë", "e"},   {"É", "E"},   {"á", "a"},  {"à", "a"},  {"â", "a"},     {"ã", "a"},
    {"ç", "c"},      {"í", "i"},   {"ï", "i"},   {"î", "i"},  {"ñ", "n"},  {"ó", "o"},     {"ô", "o"},
    {"õ", "o"},      {"ú", "u"},   {"û", "u"},   {"ł", "l"},  {"š", "s"},  {"ž", "z"},     {"č", "c"},
};

static const char *ascii_for(const char *bytes, size_t length)
{
    for (size_t index = 0; index < sizeof SIGNS / sizeof SIGNS[0]; index++) {
        if (strlen(SIGNS[index].utf8) == length && memcmp(SIGNS[index].utf8, bytes, length) == 0)
            return SIGNS[index].ascii;
    }
    return "?";
}

void ow_text_make_ascii(ow_text *text)
{
    ow_text plain = ow_text_new(text->context);
    for (size_t at = 0; at < text->length;) {
        unsigned char first = (unsigned char)text->data[at];
        size_t bytes = first < 0xC0 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
        if (bytes > text->length - at)
            bytes = text->length - at;
        if (first < 0x80)
            ow_text_char(&plain, text->data[at]);
        else
            ow_text_add(&plain, ascii_for(text->data + at, bytes));
        at += bytes;
    }
    plain.failed = plain.failed || text->failed;
    ow_text_done(text);
    *text = plain;
}
