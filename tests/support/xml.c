/* SPDX-License-Identifier: MIT */
#include "support/xml.h"

#include <ctype.h>
#include <string.h>

#include "base/words.h"
#include "support/testing.h"

#define DEPTH_MAX 64
#define NAMES_MAX 32

typedef struct reader {
    const char *text;
    size_t length, at;
    const char *names[DEPTH_MAX];
    size_t name_lengths[DEPTH_MAX];
    size_t depth;
} reader;

static bool is_name(char character)
{
    return isalnum((unsigned char)character) || character == '-' || character == '_' || character == ':' ||
           character == '.';
}

static size_t name_length(const reader *self)
{
    size_t length = 0;
    while (self->at + length < self->length && is_name(self->text[self->at + length]))
        length++;
    return length;
}

static void skip_blanks(reader *self)
{
    while (self->at < self->length && isspace((unsigned char)self->text[self->at]))
        self->at++;
}

/* Past a reference: one of the five names, or a number. */
static const char *read_reference(reader *self)
{
    static const char *const KNOWN[] = {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;", "&apos;"};
    for (size_t index = 0; index < sizeof KNOWN / sizeof KNOWN[0]; index++)
        if (self->at + strlen(KNOWN[index]) <= self->length &&
            memcmp(self->text + self->at, KNOWN[index], strlen(KNOWN[index])) == 0) {
            self->at += strlen(KNOWN[index]);
            return NULL;
        }
    return "an entity that XML does not know";
}

/* Up to the end character (a quote, or '<'). */
static const char *read_words(reader *self, char end)
{
    while (self->at < self->length && self->text[self->at] != end) {
        unsigned char byte = (unsigned char)self->text[self->at];
        const char *fault = NULL;
        if (byte == '<')
            return "a < within words";
        if (byte < 0x20 && !isspace(byte))
            return "a control character";
        if (byte == '&')
            fault = read_reference(self);
        else
            self->at++;
        if (fault != NULL)
            return fault;
    }
    return NULL;
}

static const char *read_attributes(reader *self)
{
    const char *names[NAMES_MAX];
    size_t lengths[NAMES_MAX], count = 0;
    for (;;) {
        size_t before = self->at;
        skip_blanks(self);
        size_t length = name_length(self);
        if (length == 0)
            return NULL;
        if (before == self->at)
            return "no blank before an attribute";
        for (size_t index = 0; index < count; index++)
            if (lengths[index] == length && memcmp(names[index], self->text + self->at, length) == 0)
                return "an attribute given twice";
        if (count == NAMES_MAX)
            return "more attributes than expected";
        names[count] = self->text + self->at;
        lengths[count++] = length;
        self->at += length;
        if (self->at + 1 >= self->length || self->text[self->at] != '=' || self->text[self->at + 1] != '"')
            return "an attribute without =\"";
        self->at += 2;
        const char *fault = read_words(self, '"');
        if (fault != NULL)
            return fault;
        if (self->at == self->length)
            return "a value without its end";
        self->at++;
    }
}

static const char *read_close(reader *self)
{
    self->at += 2;
    size_t length = name_length(self);
    if (self->depth == 0)
        return "a closing tag without its opening one";
    self->depth--;
    if (length != self->name_lengths[self->depth] ||
        memcmp(self->text + self->at, self->names[self->depth], length) != 0)
        return "a closing tag of another name";
    self->at += length;
    if (self->at == self->length || self->text[self->at] != '>')
        return "a closing tag without >";
    self->at++;
    return NULL;
}

static const char *read_open(reader *self)
{
    self->at++;
    size_t length = name_length(self);
    if (length == 0)
        return "a < without a name";
    if (self->depth == DEPTH_MAX)
        return "too deep";
    self->names[self->depth] = self->text + self->at;
    self->name_lengths[self->depth++] = length;
    self->at += length;
    const char *fault = read_attributes(self);
    if (fault != NULL)
        return fault;
    if (self->at + 1 < self->length && self->text[self->at] == '/' && self->text[self->at + 1] == '>') {
        self->depth--;
        self->at += 2;
        return NULL;
    }
    if (self->at == self->length || self->text[self->at] != '>')
        return "a tag without >";
    self->at++;
    return NULL;
}

static void skip_prolog(reader *self)
{
    skip_blanks(self);
    while (self->at + 1 < self->length && self->text[self->at] == '<' &&
           (self->text[self->at + 1] == '?' || self->text[self->at + 1] == '!')) {
        while (self->at < self->length && self->text[self->at] != '>')
            self->at++;
        self->at += self->at < self->length;
        skip_blanks(self);
    }
}

static const char *read_all(reader *self)
{
    skip_prolog(self);
    size_t start = self->at;
    while (self->at < self->length) {
        const char *fault = NULL;
        if (self->text[self->at] != '<')
            fault = self->depth == 0 ? "words outside the root" : read_words(self, '<');
        else if (self->at + 1 < self->length && self->text[self->at + 1] == '/')
            fault = read_close(self);
        else
            fault = self->depth == 0 && self->at > start ? "a second root" : read_open(self);
        if (fault != NULL)
            return fault;
        if (self->depth == 0)
            skip_blanks(self);
    }
    return self->depth > 0 ? "an element that is not closed" : self->at == start ? "nothing" : NULL;
}

const char *ow_test_xml_fault(const char *text, size_t length, size_t *at)
{
    reader self = {.text = text, .length = length};
    size_t valid = ow_utf8_valid(text, length);
    const char *fault = valid < length ? "a byte that is no UTF-8" : read_all(&self);
    *at = valid < length ? valid : self.at;
    return fault;
}

void ow_test_assert_xml(const char *text)
{
    size_t at = 0;
    const char *fault = ow_test_xml_fault(text, strlen(text), &at);
    if (fault != NULL)
        fail_msg("not well-formed: %s at byte %zu: %.80s", fault, at, text + (at > 20 ? at - 20 : 0));
}
