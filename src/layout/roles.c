/* SPDX-License-Identifier: MIT */
/*
 * Which port is served and which is kept. A machine's port is served, a switch or a sender is kept. A
 * bare end may be either: it is kept where a machine is served too, or where another port stands
 * behind a hose and it does not; `asked: {to: …, keep: …}` says it outright.
 */
#include <stdlib.h>
#include <string.h>

#include "layout/reading.h"

ow_role ow_leaf_usual_role(const ow_leaf *leaves, size_t count, size_t leaf)
{
    bool machine = false, hose = false;
    if (leaves[leaf].given.machine)
        return OW_ROLE_TO;
    if (leaves[leaf].given.fixture)
        return OW_ROLE_KEEP;
    for (size_t i = 1; i < count; i++) {
        machine = machine || leaves[i].given.machine;
        hose = hose || leaves[i].behind_hose;
    }
    return machine || (hose && !leaves[leaf].behind_hose) ? OW_ROLE_KEEP : OW_ROLE_TO;
}

/* The leaf that a word of `to` or `keep` means: its words, with #2 for the second of the same. */
static ow_leaf *find_leaf(ow_reading *reading, const char *words)
{
    const char *mark = strrchr(words, '#');
    if (mark && strchr(mark, ':')) /* of a machine: "snipe-22#2:oil-in" */
        mark = NULL;
    size_t occurrence = mark ? (size_t)strtoul(mark + 1, NULL, 10) : 1;
    ow_end end;
    char name[OW_END_TEXT_SIZE];
    ow_text text = ow_text_new(reading->context);
    ow_text_bytes(&text, words, mark ? (size_t)(mark - words) : strlen(words));
    const char *wanted = ow_text_words(&text);
    if (ow_end_read(wanted, &end, NULL) == OW_OK)
        wanted = ow_end_name(&end, name);
    ow_leaf *found = NULL;
    for (size_t i = 1; i < reading->leaf_count && !found; i++)
        if (reading->leaves[i].occurrence == occurrence && strcmp(reading->leaves[i].words, wanted) == 0)
            found = &reading->leaves[i];
    ow_reading_note(reading, ow_text_status(&text));
    ow_text_done(&text);
    return found;
}

static void read_role(ow_reading *reading, const ow_yaml *node, ow_role role, size_t rank)
{
    ow_leaf *leaf = node->kind == OW_YAML_SCALAR ? find_leaf(reading, node->words) : NULL;
    if (!leaf) {
        ow_reading_fault(reading, node->span, "a port that stands in the tree", NULL,
                         "no part of the layout leads to \"%.60s\"", node->words);
        return;
    }
    if (leaf->role_said)
        ow_reading_fault(reading, node->span, "each port once", NULL, "the port \"%.60s\" is named twice",
                         node->words);
    leaf->role_said = true;
    leaf->given.role = role;
    leaf->rank = rank;
}

static void read_roles(ow_reading *reading, const ow_yaml *node, ow_role role)
{
    size_t rank = 0;
    if (!node || ow_yaml_is_null(node))
        return;
    if (node->kind != OW_YAML_LIST) {
        read_role(reading, node, role, rank);
        return;
    }
    for (const ow_yaml *item = node->first; item && !ow_reading_enough(reading); item = item->next)
        read_role(reading, ow_yaml_real(item), role, rank++);
}

/* "to", "to#2", "keep", "sw-2#2": each port has a name of its own. */
static const char *name_of(ow_reading *reading, const ow_leaf *leaf, const ow_given *before, size_t count)
{
    static const char *const bare[] = {"from", "to", "keep"};
    const char *name = leaf->given.name[0] ? leaf->given.name : bare[leaf->given.role];
    size_t length = strlen(name), same = 1;
    for (size_t i = 0; i < count; i++)
        same += strncmp(before[i].name, name, length) == 0 &&
                (before[i].name[length] == '\0' || before[i].name[length] == '#');
    if (same == 1)
        return name;
    ow_text text = ow_text_new(reading->context);
    ow_text_format(&text, "%s#%zu", name, same);
    ow_reading_note(reading, ow_text_status(&text));
    const char *copy = ow_reading_copy(reading, ow_text_words(&text));
    ow_text_done(&text);
    return copy;
}

/* Ports in the order of an ask: the source, those served, those kept; said ones first, in their order. */
static size_t pick(const ow_reading *reading, const bool *taken, ow_role role)
{
    size_t best = 0;
    for (size_t i = 1; i < reading->leaf_count; i++) {
        const ow_leaf *leaf = &reading->leaves[i], *held = &reading->leaves[best];
        if (taken[i] || leaf->given.role != role)
            continue;
        if (best == 0 || (leaf->role_said && (!held->role_said || leaf->rank < held->rank)))
            best = i;
    }
    return best;
}

void ow_reading_roles(ow_reading *reading, const ow_yaml *asked)
{
    ow_given *givens = ow_arena_get_array(ow_layout_arena(reading->layout), OW_LEAVES_MAX, sizeof *givens);
    bool taken[OW_LEAVES_MAX] = {true};
    size_t place[OW_LEAVES_MAX] = {0}, count = 1;
    if (!givens) {
        ow_reading_note(reading, OW_MEMORY);
        return;
    }
    for (size_t i = 1; i < reading->leaf_count; i++)
        reading->leaves[i].given.role = ow_leaf_usual_role(reading->leaves, reading->leaf_count, i);
    if (asked && asked->kind == OW_YAML_MAP) {
        read_roles(reading, ow_yaml_member(asked, "to"), OW_ROLE_TO);
        read_roles(reading, ow_yaml_member(asked, "keep"), OW_ROLE_KEEP);
    }
    givens[0] = reading->leaves[0].given;
    givens[0].name = name_of(reading, &reading->leaves[0], givens, 0);
    for (int role = OW_ROLE_TO; role <= OW_ROLE_KEEP; role++) {
        for (size_t i = pick(reading, taken, (ow_role)role); i > 0; i = pick(reading, taken, (ow_role)role)) {
            taken[i] = true;
            place[i] = count;
            givens[count] = reading->leaves[i].given;
            givens[count].name = name_of(reading, &reading->leaves[i], givens, count);
            count++;
        }
    }
    for (size_t node = 0; node < reading->node_count; node++)
        if (!reading->nodes[node].part)
            reading->nodes[node].given = place[reading->nodes[node].given];
    reading->layout->givens = givens;
    reading->layout->given_count = count;
}
