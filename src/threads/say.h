/* SPDX-License-Identifier: MIT */
#ifndef OW_THREADS_SAY_H
#define OW_THREADS_SAY_H

#include <stddef.h>

/* As snprintf, whatever the locale; what does not fit is cut off. */
void ow_say(char *words, size_t size, const char *format, ...) __attribute__((format(printf, 3, 4)));

#endif
