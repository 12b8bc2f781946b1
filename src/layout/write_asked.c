/* SPDX-License-Identifier: MIT */
#include "layout/write_asked.h"

#include <string.h>

#include "layout/asked.h"
#include "layout/reading.h"
#include "layout/write_word.h"

void ow_write_given(ow_text *text, const ow_given *given, size_t occurrence)
{
    char name[OW_END_TEXT_SIZE];
    ow_text words = ow_text_new(text->context);
    if (given->machine)
        ow_text_format(&words, "%s:%s", given->machine->id, given->port->name);
    else
        ow_text_add(&words, given->fixture ? given->fixture->id : ow_end_name(&given->end, name));
    if (occurrence > 1)
        ow_text_format(&words, "#%zu", occurrence);
    if (given->machine || given->fixture)
        ow_write_word(text, ow_text_words(&words));
    else
        ow_write_quoted(text, ow_text_words(&words));
    ow_text_done_into(&words, text);
}

static void write_value(ow_text *text, const ow_asked_key *key, const void *from, bool yes)
{
    const double *number = from;
    ow_text_format(text, "%s: ", key->key);
    if (key->type == OW_ASKED_YES || key->type == OW_ASKED_UNLESS)
        ow_text_add(text, yes ? "yes" : "no");
    else if (key->type == OW_ASKED_CHOICE)
        ow_text_add(text, key->choices[*(const int *)from]);
    else
        ow_quantity_write(text, key->dimension, number[0], 6);
    if (key->type == OW_ASKED_RANGE) {
        ow_text_add(text, "..");
        ow_quantity_write(text, key->dimension, number[1], 6);
    }
}

/* Whether the limit differs from what a reader would take for granted. */
static bool is_asked(const ow_layout *layout, const ow_asked_key *key, const void *from, bool *yes)
{
    switch (key->type) {
    case OW_ASKED_QUANTITY:
    case OW_ASKED_RANGE:
        return *(const double *)from >= 0;
    case OW_ASKED_CHOICE:
        return *(const int *)from != 0;
    case OW_ASKED_DEGREES:
        return layout->asked.has_temperature;
    case OW_ASKED_YES:
        *yes = *(const bool *)from;
        return *yes;
    case OW_ASKED_UNLESS:
        *yes = !*(const bool *)from;
        return *yes == (layout->circuit == key->refuses);
    }
    return false;
}

/* The layout's leaves in walking order, as the reader would see them. */
static size_t list_leaves(const ow_layout *layout, ow_leaf leaves[OW_LEAVES_MAX], size_t given[OW_LEAVES_MAX])
{
    size_t count = 1;
    for (size_t i = 1; i < layout->node_count; i++) {
        const ow_layout_node *node = &layout->nodes[i];
        if (node->part || count == OW_LEAVES_MAX)
            continue;
        leaves[count] = (ow_leaf){.given = layout->givens[node->given], .occurrence = 1};
        for (size_t up = node->parent; up != OW_NODE_NONE; up = layout->nodes[up].parent)
            leaves[count].behind_hose = leaves[count].behind_hose ||
                                        (layout->nodes[up].part && ow_part_is_hose(layout->nodes[up].part));
        for (size_t other = 1; other < count; other++) {
            const ow_given *a = &leaves[other].given, *b = &leaves[count].given;
            bool same = a->port == b->port && a->fixture == b->fixture &&
                        (a->port || a->fixture || ow_end_same(&a->end, &b->end));
            leaves[count].occurrence += same;
        }
        given[count++] = node->given;
    }
    return count;
}

/* Whether a reader would give every port its role and place without being told. */
static bool roles_are_usual(const ow_leaf *leaves, const size_t *given, size_t count)
{
    size_t next = 1;
    for (int role = OW_ROLE_TO; role <= OW_ROLE_KEEP; role++)
        for (size_t i = 1; i < count; i++)
            if (ow_leaf_usual_role(leaves, count, i) == (ow_role)role && given[i] != next++)
                return false;
    for (size_t i = 1; i < count; i++)
        if (ow_leaf_usual_role(leaves, count, i) != leaves[i].given.role)
            return false;
    return true;
}

static void write_ports(ow_text *text, const ow_layout *layout, const char **gap)
{
    static const char *const keys[] = {"", "to", "keep"};
    ow_leaf leaves[OW_LEAVES_MAX];
    size_t given[OW_LEAVES_MAX], count = list_leaves(layout, leaves, given);
    if (roles_are_usual(leaves, given, count))
        return;
    for (int role = OW_ROLE_TO; role <= OW_ROLE_KEEP; role++) {
        size_t written = 0;
        for (size_t port = 1; port < layout->given_count; port++) {
            for (size_t i = 1; i < count; i++) {
                if (given[i] != port || leaves[i].given.role != (ow_role)role)
                    continue;
                if (written++ == 0)
                    ow_text_format(text, "%s%s: [", *gap, keys[role]);
                else
                    ow_text_add(text, ", ");
                ow_write_given(text, &leaves[i].given, leaves[i].occurrence);
                *gap = ", ";
            }
        }
        if (written)
            ow_text_char(text, ']');
    }
}

void ow_write_asked(ow_text *text, const ow_layout *layout)
{
    ow_text inside = ow_text_new(text->context);
    const char *gap = "";
    for (size_t i = 0; layout->has_asked && i < ow_asked_key_count(); i++) {
        const ow_asked_key *key = ow_asked_key_at(i);
        const void *from = (const char *)&layout->asked + key->offset;
        bool yes = false;
        if (!is_asked(layout, key, from, &yes))
            continue;
        ow_text_add(&inside, gap);
        write_value(&inside, key, from, yes);
        gap = ", ";
    }
    if (layout->has_asked && inside.length == 0) { /* asked for nothing is not the same as not asked */
        ow_text_add(&inside, "flexible: any");
        gap = ", ";
    }
    write_ports(&inside, layout, &gap);
    if (inside.length > 0)
        ow_text_format(text, "asked: {%s}\n", ow_text_words(&inside));
    ow_text_done_into(&inside, text);
}
