/* SPDX-License-Identifier: MIT */
#ifndef OW_COUNTER_DIGEST_H
#define OW_COUNTER_DIGEST_H

#include <stddef.h>

#define COUNTER_DIGEST_SIZE 45 /* 44 characters and a NUL */

/* SHA-256 (FIPS 180-4) in Base64 (RFC 4648), as a Content-Security-Policy names a style by. */
void counter_digest(const char *bytes, size_t length, char digest[COUNTER_DIGEST_SIZE]);

#endif
