/* SPDX-License-Identifier: MIT */
/* Tolerance classes by name, alone and behind a designation. */
#include <string.h>

#include "base/words.h"
#include "oilway/thread_size.h"

#define DESIGNATION_SIZE 64

static const char *const NAMES[OW_CLASS_COUNT] = {"",   "6g", "6h", "6H",      "2A",
                                                  "3A", "2B", "3B", "class A", "class B"};

const char *ow_thread_class_name(ow_thread_class class_named)
{
    return (unsigned)class_named < OW_CLASS_COUNT ? NAMES[class_named] : "";
}

/* "A" and "class A" alike. Case counts only where it decides between 6h and 6H. */
bool ow_thread_class_read(const char *words, ow_thread_class *class_read)
{
    static const char PREFIX[] = "class ";
    for (size_t i = OW_CLASS_6G_EXTERNAL; i < OW_CLASS_COUNT; i++) {
        const char *name = NAMES[i];
        bool metric = name[0] == '6';
        const char *letters = strncmp(name, PREFIX, sizeof PREFIX - 1) == 0 ? name + sizeof PREFIX - 1 : name;
        if (metric ? strcmp(words, name) == 0
                   : ow_words_equal(words, name) || ow_words_equal(words, letters)) {
            *class_read = (ow_thread_class)i;
            return true;
        }
    }
    return false;
}

/* The whole of words as a bare designation. */
static bool read_bare(const char *words, ow_thread *thread)
{
    ow_thread read;
    size_t used = 0;
    if (ow_thread_read(words, &read, &used) != OW_OK || words[used + strspn(words + used, " \t")] != '\0')
        return false;
    *thread = read;
    return true;
}

ow_status ow_thread_read_class(const char *words, ow_thread *thread, ow_thread_class *class_read)
{
    char bare[DESIGNATION_SIZE];
    ow_thread_class read;
    if (read_bare(words, thread)) {
        *class_read = OW_CLASS_USUAL;
        return OW_OK;
    }
    /* The class is the last word, behind a blank, a hyphen, or (A and B of ISO 228-1) the size itself. */
    size_t length = strlen(words);
    for (size_t letters = 1; letters <= 7 && letters < length && length < sizeof bare; letters++) {
        size_t before = length - letters;
        if (!ow_thread_class_read(words + before, &read))
            continue;
        while (before > 0 && (words[before - 1] == ' ' || words[before - 1] == '-'))
            before--;
        memcpy(bare, words, before);
        bare[before] = '\0';
        if (!read_bare(bare, thread))
            continue;
        *class_read = read;
        return OW_OK;
    }
    return OW_INPUT;
}
