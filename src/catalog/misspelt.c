/* SPDX-License-Identifier: MIT */
#include <stdarg.h>

#include "base/format.h"
#include "catalog/reader.h"

#define MESSAGE_SIZE 256

ow_status ow_misspelt(const ow_context *context, const ow_source *source, ow_span span, const char *expected,
                      const char *nearest, const char *message_format, ...)
{
    char message[MESSAGE_SIZE];
    va_list arguments;
    va_start(arguments, message_format);
    (void)ow_format(message, sizeof message, message_format, arguments);
    va_end(arguments);
    ow_text mend = ow_text_new(context);
    if (nearest)
        ow_text_format(&mend, "did you mean \"%s\"?", nearest);
    ow_status status = ow_text_status(&mend);
    if (status == OW_OK)
        status = ow_source_report(context, OW_ERROR, OW_INPUT, source, span, expected,
                                  nearest ? ow_text_words(&mend) : NULL, "%s", message);
    ow_text_done(&mend);
    return status;
}
