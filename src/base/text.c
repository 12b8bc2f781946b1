/* SPDX-License-Identifier: MIT */
#include "oilway/text.h"

#include <stdint.h>
#include <string.h>

#include "base/format.h"
#include "base/memory.h"

ow_text ow_text_new(const ow_context *context)
{
    ow_text text = {context, NULL, 0, 0, false};
    return text;
}

void ow_text_done(ow_text *text)
{
    ow_release(text->context, text->data);
    *text = ow_text_new(text->context);
}

void ow_text_done_into(ow_text *text, ow_text *whole)
{
    whole->failed = whole->failed || text->failed;
    ow_text_done(text);
}

/* Room for length more bytes and the NUL; false marks the text as failed. */
static bool make_room(ow_text *text, size_t length)
{
    if (text->failed)
        return false;
    if (length > SIZE_MAX - text->length - 1 ||
        ow_grow(text->context, (void **)&text->data, &text->capacity, text->length + length + 1, 1) != OW_OK)
        text->failed = true;
    return !text->failed;
}

void ow_text_bytes(ow_text *text, const char *bytes, size_t length)
{
    if (length == 0 || !make_room(text, length))
        return;
    memcpy(text->data + text->length, bytes, length);
    text->length += length;
    text->data[text->length] = '\0';
}

void ow_text_add(ow_text *text, const char *words)
{
    if (words != NULL)
        ow_text_bytes(text, words, strlen(words));
}

void ow_text_char(ow_text *text, char character)
{
    ow_text_bytes(text, &character, 1);
}

void ow_text_repeat(ow_text *text, char character, size_t count)
{
    if (count == 0 || !make_room(text, count))
        return;
    memset(text->data + text->length, character, count);
    text->length += count;
    text->data[text->length] = '\0';
}

void ow_text_format(ow_text *text, const char *format, ...)
{
    char brief[256];
    va_list arguments;
    va_start(arguments, format);
    va_list again;
    va_copy(again, arguments);
    int length = ow_format(brief, sizeof brief, format, arguments);
    if (length < 0) {
        text->failed = true;
    } else if ((size_t)length < sizeof brief) {
        ow_text_bytes(text, brief, (size_t)length);
    } else if (make_room(text, (size_t)length)) {
        if (ow_format(text->data + text->length, (size_t)length + 1, format, again) == length)
            text->length += (size_t)length;
        else
            text->failed = true;
        text->data[text->length] = '\0';
    }
    va_end(again);
    va_end(arguments);
}

const char *ow_text_words(const ow_text *text)
{
    return text->data == NULL ? "" : text->data;
}

ow_status ow_text_status(const ow_text *text)
{
    return text->failed ? OW_MEMORY : OW_OK;
}
