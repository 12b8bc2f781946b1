/* SPDX-License-Identifier: MIT */
/*
 * A growing text, the one thing every writer of this library writes into. A failed allocation
 * marks the text as failed and later appends do nothing, so that callers check once, at the end.
 */
#ifndef OILWAY_TEXT_H
#define OILWAY_TEXT_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/context.h"

typedef struct ow_text {
    const ow_context *context;
    char *data;    /* NUL-terminated once anything was appended; may be NULL */
    size_t length; /* bytes, without the NUL */
    size_t capacity;
    bool failed;
} ow_text;

/* An empty text; lends the context until ow_text_done. */
ow_text ow_text_new(const ow_context *context);
void ow_text_done(ow_text *text);
/* Frees a text whose words went into `whole`, which is then marked as failed if the text had failed: words
 * that were lost on the way are not passed over. */
void ow_text_done_into(ow_text *text, ow_text *whole);

void ow_text_bytes(ow_text *text, const char *bytes, size_t length);
void ow_text_add(ow_text *text, const char *words); /* NULL adds nothing */
void ow_text_char(ow_text *text, char character);
void ow_text_repeat(ow_text *text, char character, size_t count);
void ow_text_format(ow_text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Replaces what is not ASCII: signs of the trade by words (37° by 37 deg), other letters by "?". */
void ow_text_make_ascii(ow_text *text);
/* Breaks lines of more columns than that at blanks, so that no terminal breaks them within a word; the rest
 * is set in, behind the strokes of a drawing. A single word that is wider stays whole. */
void ow_text_fit(ow_text *text, size_t width);

/* The words so far, "" when none; lent until the next append. */
const char *ow_text_words(const ow_text *text);
/* OW_MEMORY if any append failed, else OW_OK. */
ow_status ow_text_status(const ow_text *text);

/*
 * Writes a diagnostic as a person reads it: "file:line:column: severity: message", the line, the
 * mark under the fault, then "expected …" and "mend: …" where given. Ends with a newline.
 */
void ow_text_diagnostic(ow_text *text, const ow_diagnostic *diagnostic);

/* The nearest of count known words, for "did you mean", or NULL when none is near enough to be of help. */
const char *ow_words_nearest(const char *word, size_t length, const char *const *known, size_t count);

#endif
