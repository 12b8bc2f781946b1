/* SPDX-License-Identifier: MIT */
#include "base/format.h"

#include <locale.h>
#include <stdio.h>

int ow_format(char *out, size_t size, const char *format, va_list arguments)
{
    /* POSIX 2008 per-thread locales: setlocale would change the whole program. */
    locale_t plain = newlocale(LC_ALL_MASK, "C", (locale_t)0);
    if (plain == (locale_t)0)
        return -1;
    locale_t before = uselocale(plain);
    int length = vsnprintf(out, size, format, arguments);
    uselocale(before);
    freelocale(plain);
    return length;
}

int ow_format_to(char *out, size_t size, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = ow_format(out, size, format, arguments);
    va_end(arguments);
    return length;
}
