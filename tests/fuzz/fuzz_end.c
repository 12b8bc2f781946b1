/* SPDX-License-Identifier: MIT */
/* Any bytes as an end: reading never harms, and what was read is written so that it reads the same. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/end.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void check_fault(const ow_end_fault *fault, size_t length)
{
    if (fault->start > length || fault->length > length - fault->start || fault->message[0] == '\0')
        abort();
}

static void check_read(const ow_end *end)
{
    char name[OW_END_TEXT_SIZE], again_name[OW_END_TEXT_SIZE];
    ow_end again;
    if (ow_end_read(ow_end_name(end, name), &again, NULL) != OW_OK || !ow_end_same(end, &again))
        abort();
    if (strcmp(ow_end_name(&again, again_name), name) != 0 || strlen(name) + 1 == sizeof name)
        abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size > 4096)
        return 0;
    char *words = malloc(size + 1);
    if (!words)
        return 0;
    memcpy(words, data, size);
    words[size] = '\0';
    ow_end end;
    ow_end_fault fault;
    if (ow_end_read(words, &end, &fault) == OW_OK)
        check_read(&end);
    else
        check_fault(&fault, strlen(words));
    free(words);
    return 0;
}
