/* SPDX-License-Identifier: MIT */
#include "catalog/kinds.h"

#include <string.h>

/* The ends of OW_KIND_LIST as single words; a test holds the two together. Banjo bolts come with one
 * row of cross-holes or with two. */
static const ow_kind_row kinds[OW_KIND_COUNT] = {
    [OW_ADAPTER] = {"adapter", true, {"a", "b"}, {NULL}},
    [OW_ELBOW] = {"elbow", true, {"a", "b"}, {NULL}},
    [OW_TEE] = {"tee", true, {"run-a", "run-b", "branch"}, {NULL}},
    [OW_CROSS] = {"cross", true, {"run-a", "run-b", "branch-a", "branch-b"}, {NULL}},
    [OW_GAUGE_ADAPTER] = {"gauge-adapter", true, {"a", "b", "side"}, {NULL}},
    [OW_BANJO_BOLT] = {"banjo-bolt", true, {"thread", "stud"}, {"thread", "stud-a", "stud-b"}},
    [OW_BANJO_EYE] = {"banjo-eye", true, {"eye", "tail"}, {NULL}},
    [OW_HOSE_END] = {"hose-end", true, {"nut", "tail"}, {NULL}},
    [OW_HOSE] = {"hose", true, {"a", "b"}, {NULL}},
    [OW_LINE] = {"line", true, {"a", "b"}, {NULL}},
    [OW_PLUG] = {"plug", true, {"a"}, {NULL}},
    [OW_CAP] = {"cap", true, {"a"}, {NULL}},
    [OW_RESTRICTOR] = {"restrictor", true, {"a", "b"}, {NULL}},
    [OW_FLANGE] = {"flange", true, {"face", "tail"}, {NULL}},
    [OW_STUB] = {"stub", true, {"face", "tail"}, {NULL}},
    [OW_BUNG] = {"bung", true, {"face", "tail"}, {NULL}},
    [OW_SWITCH] = {"switch", false, {"a"}, {NULL}},
    [OW_SENDER] = {"sender", false, {"a"}, {NULL}},
    [OW_ENGINE] = {"engine", false, {NULL}, {NULL}},
    [OW_TURBO] = {"turbo", false, {NULL}, {NULL}},
    [OW_HEATER] = {"heater", false, {NULL}, {NULL}},
};

const ow_kind_row *ow_kind_row_of(ow_kind kind)
{
    return &kinds[kind];
}

const char *ow_kind_word(ow_kind kind)
{
    return (unsigned)kind < OW_KIND_COUNT ? kinds[kind].word : "";
}

bool ow_kind_is_part(ow_kind kind)
{
    return (unsigned)kind < OW_KIND_COUNT && kinds[kind].is_part;
}

bool ow_kind_is_machine(ow_kind kind)
{
    return kind == OW_ENGINE || kind == OW_TURBO || kind == OW_HEATER;
}

ow_kind ow_kind_find(const char *word)
{
    for (int kind = 0; kind < OW_KIND_COUNT; kind++)
        if (strcmp(kinds[kind].word, word) == 0)
            return (ow_kind)kind;
    return OW_KIND_COUNT;
}

size_t ow_kind_end_count(const char *const ends[OW_PART_ENDS])
{
    size_t count = 0;
    while (count < OW_PART_ENDS && ends[count])
        count++;
    return count;
}

size_t ow_kind_end_slot(const char *const ends[OW_PART_ENDS], const char *key)
{
    for (size_t slot = 0; slot < OW_PART_ENDS && ends[slot]; slot++)
        if (strcmp(ends[slot], key) == 0)
            return slot;
    return OW_PART_ENDS;
}

const char *ow_circuit_word(ow_circuit circuit)
{
    static const char *const words[] = {"", "feed", "drain", "coolant"};
    return (unsigned)circuit < sizeof words / sizeof *words ? words[circuit] : "";
}

const char *ow_bearing_word(ow_bearing bearing)
{
    static const char *const words[] = {"", "journal", "ball"};
    return (unsigned)bearing < sizeof words / sizeof *words ? words[bearing] : "";
}

const char *ow_built_in_word(ow_built_in built_in)
{
    static const char *const words[] = {"unknown", "none", "built-in"};
    return (unsigned)built_in < sizeof words / sizeof *words ? words[built_in] : "";
}

const char *ow_turbo_size_word(ow_turbo_size size)
{
    static const char *const words[] = {"", "small", "medium", "large"};
    return (unsigned)size < sizeof words / sizeof *words ? words[size] : "";
}
