/* SPDX-License-Identifier: MIT */
/* Any bytes as a designation: reading never harms, what was read is written so that it reads the same, and
 * whatever has a size keeps to what holds of every size, in its own hole and as a caliper reads it. */
#include <string.h>

#include "oilway/caliper.h"
#include "support/fuzzing.h"

static void check_name(const ow_thread *thread)
{
    ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    ow_thread again;
    size_t used = 0;
    ow_thread_write(&text, thread);
    if (ow_text_status(&text) == OW_OK) {
        OW_FUZZ_CHECK(ow_thread_read(ow_text_words(&text), &again, &used) == OW_OK);
        OW_FUZZ_CHECK(ow_thread_same(thread, &again) && used == text.length);
    }
    ow_text_done(&text);
}

static void check_size(const ow_thread *thread)
{
    for (int side = 0; side < 2; side++)
        for (int c = 0; c < OW_CLASS_COUNT; c++) {
            ow_thread_size size;
            if (ow_thread_size_of(thread, side != 0, (ow_thread_class)c, &size) != OW_OK)
                continue;
            OW_FUZZ_CHECK(size.pitch_diameter.least_m < size.pitch_diameter.most_m);
            OW_FUZZ_CHECK(size.minor.basic_m < size.pitch_diameter.basic_m);
            OW_FUZZ_CHECK(size.pitch_diameter.basic_m < size.major.basic_m && size.minor.basic_m > 0);
        }
}

static void check_pair(const ow_thread *thread)
{
    ow_pairing pairing;
    if (ow_pair(thread, thread, &pairing) == OW_OK)
        OW_FUZZ_CHECK(pairing.fit == OW_FIT_HOME && pairing.strength_least > 0.5);
    for (size_t i = 0; i < ow_thread_count(); i += 17)
        if (ow_pair(thread, ow_thread_at(i), &pairing) == OW_OK)
            OW_FUZZ_CHECK(pairing.turns_least <= pairing.turns_most &&
                          strlen(pairing.why) < sizeof pairing.why - 1);
}

/* A class behind the designation, and what is no thread of the tables. */
static void check_words(const char *words)
{
    ow_thread thread;
    ow_thread_class said;
    size_t start = 0, length = 0;
    if (ow_thread_read_class(words, &thread, &said) == OW_OK) {
        OW_FUZZ_CHECK((unsigned)said < OW_CLASS_COUNT);
        check_name(&thread);
    }
    const ow_thread_other *other = ow_thread_other_of(words, &start, &length);
    if (other) {
        OW_FUZZ_CHECK(length > 0 && start + length <= strlen(words));
        OW_FUZZ_CHECK(other->what[0] && other->mend[0]);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    ow_thread thread;
    size_t used = 0;
    if (size > 4096)
        return 0;
    char *words = malloc(size + 1);
    if (!words)
        return 0;
    memcpy(words, data, size);
    words[size] = '\0';
    if (ow_thread_read(words, &thread, &used) == OW_OK) {
        OW_FUZZ_CHECK(used > 0 && used <= strlen(words));
        check_name(&thread);
        check_size(&thread);
        check_pair(&thread);
    }
    check_words(words);
    free(words);
    return 0;
}
