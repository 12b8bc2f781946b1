/* SPDX-License-Identifier: MIT */
/* cmocka with what it wants included before it. */
#ifndef OW_TESTS_TESTING_H
#define OW_TESTS_TESTING_H

#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#endif
