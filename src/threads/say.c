/* SPDX-License-Identifier: MIT */
#include "threads/say.h"

#include <stdarg.h>

#include "base/format.h"

void ow_say(char *words, size_t size, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    if (ow_format(words, size, format, arguments) < 0 && size > 0)
        words[0] = '\0';
    va_end(arguments);
}
