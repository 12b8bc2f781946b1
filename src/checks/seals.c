/* SPDX-License-Identifier: MIT */
/* What somebody used to seal a joint: whether it belongs there, is missing, has been used before, or sheds.
 */
#include <string.h>

#include "base/words.h"
#include "checks/checks_internal.h"

/* What people write for a consumable, and the word that a joint rule's needs must hold for it to belong
 * there. */
static const struct {
    const char *used;
    const char *needed;
} seal_words[] = {
    {"tape", "sealant"},
    {"PTFE tape", "sealant"},
    {"paste", "sealant"},
    {"sealant", "sealant"},
    {"thread sealant", "sealant"},
    {"compound", "sealant"},
    {"anaerobic", "sealant"},
    {"washer", "crush ring"},
    {"washers", "crush ring"},
    {"crush washer", "crush ring"},
    {"crush ring", "crush ring"},
    {"bonded washer", "crush ring"},
    {"copper washer", "crush ring"},
    {"copper washers", "crush ring"},
    {"ring", "crush ring"},
    {"o-ring", "O-ring"},
    {"clamp", "clamp"},
    {"hose clamp", "clamp"},
    {"gasket", "gasket"},
};

/* How a thing is called that has been in a joint before. */
static const char *const before_words[] = {"used ", "old ", "same "};

/* Steps over "used " or the like. */
static const char *without_before(const char *used)
{
    for (size_t index = 0; index < sizeof before_words / sizeof before_words[0]; index++) {
        size_t length = strlen(before_words[index]);
        if (strlen(used) > length && ow_words_equal_bytes(used, length, before_words[index]))
            return used + length;
    }
    return used;
}

/* The word of a rule's needs that it stands for; NULL for a thing that is not known here. */
static const char *need_of(const char *used)
{
    for (size_t index = 0; index < sizeof seal_words / sizeof seal_words[0]; index++) {
        if (ow_words_equal(used, seal_words[index].used))
            return seal_words[index].needed;
    }
    return NULL;
}

static bool needs_word(const ow_joint_rule *rule, const char *word)
{
    /* A banjo bolt's thread needs no ring beyond those of its eyes, but one of these is what seals it. */
    if (strcmp(word, "crush ring") == 0 && strstr(rule->seals_by, "washer") != NULL)
        return true;
    for (size_t index = 0; index < sizeof rule->needs / sizeof rule->needs[0]; index++) {
        if (rule->needs[index] != NULL && strstr(rule->needs[index], word) != NULL)
            return true;
    }
    return false;
}

static void check_used(ow_checking *checking, size_t node, size_t end, const ow_joint_rule *rule)
{
    const char *used = checking->layout->nodes[node].seal[end];
    char where[OW_WHERE_SIZE];
    if (used == NULL || ow_words_equal(used, "none"))
        return;
    const char *thing = without_before(used);
    const char *need = need_of(thing);
    ow_checking_end(checking, node, end, where);
    if (need == NULL || !needs_word(rule, need))
        ow_checking_find(checking, "wrong-seal", where, "%s is used on this joint, which seals by %s", used,
                         rule->seals_by);
    else if (thing != used && (strcmp(need, "crush ring") == 0 || strcmp(need, "gasket") == 0))
        ow_checking_find(checking, "ring-reused", where, "%s: it has taken its shape in another joint", used);
    else if (strcmp(need, "sealant") == 0 && strstr(thing, "tape") != NULL &&
             checking->layout->circuit == OW_FEED)
        ow_checking_find(checking, "tape-in-feed", where, "%s is used on a taper thread of the feed", used);
}

/* Whether a side says outright that nothing is used. */
static bool says_none(const ow_layout *layout, size_t node, size_t end)
{
    return layout->nodes[node].part != NULL && layout->nodes[node].seal[end] != NULL &&
           ow_words_equal(layout->nodes[node].seal[end], "none");
}

static bool says_some(const ow_layout *layout, size_t node, size_t end)
{
    return layout->nodes[node].part != NULL && layout->nodes[node].seal[end] != NULL &&
           !ow_words_equal(layout->nodes[node].seal[end], "none");
}

void ow_check_seal(ow_checking *checking, size_t child, const ow_joint_rule *rule)
{
    const ow_layout *layout = checking->layout;
    size_t parent = layout->nodes[child].parent;
    size_t enter = layout->nodes[child].enter, leave = layout->nodes[child].parent_end;
    bool child_none = says_none(layout, child, enter), parent_none = says_none(layout, parent, leave);
    char where[OW_WHERE_SIZE];
    if (layout->nodes[child].part != NULL)
        check_used(checking, child, enter, rule);
    if (layout->nodes[parent].part != NULL)
        check_used(checking, parent, leave, rule);
    if ((child_none || parent_none) && rule->needs[0] != NULL && !says_some(layout, child, enter) &&
        !says_some(layout, parent, leave))
        ow_checking_find(
            checking, "no-seal",
            ow_checking_end(checking, child_none ? child : parent, child_none ? enter : leave, where),
            "nothing is used on this joint, which seals by %s and needs %s", rule->seals_by, rule->needs[0]);
}
