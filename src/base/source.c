/* SPDX-License-Identifier: MIT */
#include "base/source.h"

#include <errno.h>
#include <stdarg.h>
#include <string.h>

#include "base/format.h"
#include "base/words.h"

#define MESSAGE_BYTES 600

/* A byte-order mark is no character of the first line. */
static size_t text_start(const ow_source *source)
{
    return source->length >= 3 && memcmp(source->text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
}

/* A line ends at LF, CR LF or a lone CR. */
static bool ends_line(const ow_source *source, size_t offset)
{
    char byte = source->text[offset];
    return byte == '\n' ||
           (byte == '\r' && (offset + 1 == source->length || source->text[offset + 1] != '\n'));
}

/* The start of the line that holds the offset, and its number from 1. */
static size_t line_start(const ow_source *source, size_t offset, size_t *line)
{
    size_t start = text_start(source);
    *line = 1;
    for (size_t i = start; i < offset; i++) {
        if (ends_line(source, i)) {
            start = i + 1;
            ++*line;
        }
    }
    return start;
}

static size_t line_end(const ow_source *source, size_t offset)
{
    while (offset < source->length && source->text[offset] != '\n' && source->text[offset] != '\r')
        offset++;
    return offset;
}

/* Characters, where each byte that does not go on a character starts one: also in faulty UTF-8. */
static size_t characters(const char *bytes, size_t length)
{
    size_t count = 0;
    for (size_t i = 0; i < length; i++)
        count += ((unsigned char)bytes[i] & 0xC0) != 0x80;
    return count;
}

void ow_source_position(const ow_source *source, size_t offset, size_t *line, size_t *column)
{
    if (offset > source->length)
        offset = source->length;
    size_t start = line_start(source, offset, line);
    *column = 1 + (offset > start ? characters(source->text + start, offset - start) : 0);
}

static void write_message(char *message, size_t size, const char *format, va_list arguments)
    __attribute__((format(printf, 3, 0)));

/* A message that does not fit is cut between characters and says so. */
static void write_message(char *message, size_t size, const char *format, va_list arguments)
{
    static const char cut[] = "…";
    int length = ow_format(message, size, format, arguments);
    if (length < 0) {
        message[0] = '\0';
    } else if ((size_t)length >= size) {
        size_t kept = size - sizeof cut;
        while (kept > 0 && ((unsigned char)message[kept] & 0xC0) == 0x80)
            kept--;
        memcpy(message + kept, cut, sizeof cut);
    }
}

static void report(const ow_context *context, const ow_diagnostic *diagnostic)
{
    if (context != NULL && context->report != NULL)
        context->report(context->report_user, diagnostic);
}

ow_status ow_source_report(const ow_context *context, ow_severity severity, ow_status status,
                           const ow_source *source, ow_span span, const char *expected, const char *mend,
                           const char *message_format, ...)
{
    char message[MESSAGE_BYTES];
    va_list arguments;
    va_start(arguments, message_format);
    write_message(message, sizeof message, message_format, arguments);
    va_end(arguments);

    ow_diagnostic diagnostic = {.severity = severity, .status = status, .file = source->name};
    size_t offset = span.start < source->length ? span.start : source->length;
    size_t start = line_start(source, offset, &diagnostic.line);
    size_t end = line_end(source, start);
    size_t marked = end > offset ? end - offset : 0;
    if (marked > span.length)
        marked = span.length;
    diagnostic.column = 1 + (offset > start ? characters(source->text + start, offset - start) : 0);
    diagnostic.line_text = source->text == NULL ? "" : source->text + start;
    diagnostic.line_length = end - start;
    diagnostic.mark_width = marked == 0 ? 0 : characters(source->text + offset, marked);
    if (diagnostic.mark_width == 0)
        diagnostic.mark_width = 1;
    diagnostic.message = message;
    diagnostic.expected = expected;
    diagnostic.mend = mend;
    report(context, &diagnostic);
    return status;
}

ow_status ow_report(const ow_context *context, ow_severity severity, ow_status status, const char *file,
                    const char *expected, const char *mend, const char *message_format, ...)
{
    char message[MESSAGE_BYTES];
    va_list arguments;
    va_start(arguments, message_format);
    write_message(message, sizeof message, message_format, arguments);
    va_end(arguments);
    ow_diagnostic diagnostic = {.severity = severity,
                                .status = status,
                                .file = file,
                                .message = message,
                                .expected = expected,
                                .mend = mend};
    report(context, &diagnostic);
    return status;
}

ow_status ow_report_errno(const ow_context *context, const char *file, const char *expected, const char *what)
{
    int number = errno;
    char reason[128];
    if (strerror_r(number, reason, sizeof reason) != 0)
        reason[0] = '\0';
    return ow_report(context, OW_ERROR, OW_IO, file, expected, NULL, "%s: %s", what, reason);
}
