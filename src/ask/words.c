/* SPDX-License-Identifier: MIT */
/* The options of an ask by name: where each goes, and how often it may be given. */
#include <string.h>

#include "oilway/ask.h"

typedef enum word_type { WORD_ONCE, WORD_FLAG, WORD_LIST } word_type;

/* Places are in ow_ask_typed. */
static const struct word_option {
    const char *name;
    word_type type;
    size_t place;
    size_t count_place, most; /* of a list */
} OPTIONS[] = {
    {"from", WORD_ONCE, offsetof(ow_ask_typed, words.from), 0, 1},
    {"to", WORD_LIST, offsetof(ow_ask_typed, words.to), offsetof(ow_ask_typed, words.to_count), OW_TO_MAX},
    {"keep", WORD_LIST, offsetof(ow_ask_typed, words.keep), offsetof(ow_ask_typed, words.keep_count),
     OW_PORTS_MAX - 1},
    {"circuit", WORD_ONCE, offsetof(ow_ask_typed, words.circuit), 0, 1},
    {"bearing", WORD_ONCE, offsetof(ow_ask_typed, words.bearing), 0, 1},
    {"bore", WORD_ONCE, offsetof(ow_ask_typed, words.bore), 0, 1},
    {"flexible", WORD_ONCE, offsetof(ow_ask_typed, words.flexible), 0, 1},
    {"closing", WORD_ONCE, offsetof(ow_ask_typed, words.closing), 0, 1},
    {"restrictor", WORD_ONCE, offsetof(ow_ask_typed, words.restrictor), 0, 1},
    {"orifice", WORD_ONCE, offsetof(ow_ask_typed, words.orifice), 0, 1},
    {"rating", WORD_ONCE, offsetof(ow_ask_typed, words.rating), 0, 1},
    {"temperature", WORD_ONCE, offsetof(ow_ask_typed, words.temperature), 0, 1},
    {"fluid", WORD_ONCE, offsetof(ow_ask_typed, words.fluid), 0, 1},
    {"hose", WORD_ONCE, offsetof(ow_ask_typed, words.hose), 0, 1},
    {"tolerate", WORD_FLAG, offsetof(ow_ask_typed, words.tolerate), 0, 1},
    {"remote-switch", WORD_FLAG, offsetof(ow_ask_typed, words.remote_switch), 0, 1},
    {"without", WORD_LIST, offsetof(ow_ask_typed, without), offsetof(ow_ask_typed, words.without_count),
     OW_WITHOUT_MAX},
};

static const struct word_option *find(const char *name)
{
    for (size_t index = 0; index < sizeof OPTIONS / sizeof OPTIONS[0]; index++)
        if (strcmp(OPTIONS[index].name, name) == 0)
            return &OPTIONS[index];
    return NULL;
}

static ow_status put_flag(bool *flag, const char *value)
{
    bool set = value == NULL || strcmp(value, "yes") == 0;
    if (!set && strcmp(value, "no") != 0)
        return OW_INPUT;
    *flag = set;
    return OW_OK;
}

ow_status ow_ask_typed_put(ow_ask_typed *typed, const char *name, const char *value, size_t *most)
{
    const struct word_option *option = find(name);
    if (option == NULL)
        return OW_NONE;
    void *place = (char *)typed + option->place;
    typed->words.without = typed->without;
    *most = option->most;
    if (option->type == WORD_FLAG)
        return put_flag(place, value);
    size_t at = 0;
    if (option->type == WORD_LIST) {
        size_t *count = (void *)((char *)typed + option->count_place);
        if (*count >= option->most)
            return OW_RANGE;
        at = (*count)++;
    }
    ((const char **)place)[at] = value;
    return OW_OK;
}
