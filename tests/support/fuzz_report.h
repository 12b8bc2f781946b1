/* SPDX-License-Identifier: MIT */
/* A sink for fuzzers: counts what is told at the size_t it is given, and checks that it can be shown. */
#ifndef OW_TESTS_FUZZ_REPORT_H
#define OW_TESTS_FUZZ_REPORT_H

#include "base/words.h"
#include "oilway/text.h"
#include "support/fuzzing.h"

static inline void ow_fuzz_report(void *user, const ow_diagnostic *told)
{
    size_t *count = user;
    ++*count;
    OW_FUZZ_CHECK(told->message != NULL && told->message[0] != '\0');
    OW_FUZZ_CHECK(told->line_text == NULL || (told->line > 0 && told->column > 0 && told->mark_width > 0));
    ow_text shown = ow_text_new(NULL);
    ow_text_diagnostic(&shown, told);
    OW_FUZZ_CHECK(shown.length > 0 && ow_utf8_valid(shown.data, shown.length) == shown.length);
    ow_text_done(&shown);
}

#endif
