/* SPDX-License-Identifier: MIT */
/* What libFuzzer calls, and a check that stops it. */
#ifndef OW_TESTS_FUZZING_H
#define OW_TESTS_FUZZING_H

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Not assert: it must hold in every build. */
#define OW_FUZZ_CHECK(condition)                                                    \
    do {                                                                            \
        if (!(condition)) {                                                         \
            fprintf(stderr, "%s:%d: not so: %s\n", __FILE__, __LINE__, #condition); \
            abort();                                                                \
        }                                                                           \
    } while (0)

#endif
