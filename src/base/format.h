/* SPDX-License-Identifier: MIT */
/* printf formatting that no locale can bend: the decimal point stays a point. */
#ifndef OW_BASE_FORMAT_H
#define OW_BASE_FORMAT_H

#include <stdarg.h>
#include <stddef.h>

/* As vsnprintf, in the C locale for this thread. Negative if it could not be done. */
int ow_format(char *out, size_t size, const char *format, va_list arguments)
    __attribute__((format(printf, 3, 0)));

/* As snprintf, the same way. */
int ow_format_to(char *out, size_t size, const char *format, ...) __attribute__((format(printf, 3, 4)));

#endif
