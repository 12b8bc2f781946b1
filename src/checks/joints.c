/* SPDX-License-Identifier: MIT */
/* Every joint: whether its two ends seal on each other, and whether what somebody used on it belongs there.
 */
#include <stdio.h>
#include <string.h>

#include "base/words.h"
#include "checks/checks_internal.h"
#include "oilway/joint.h"

/* What people write for a consumable, and the word that a joint rule's needs must hold for it to belong
 * there. */
static const struct {
    const char *used;
    const char *needed;
} seal_words[] = {
    {"tape", "sealant"},
    {"paste", "sealant"},
    {"sealant", "sealant"},
    {"compound", "sealant"},
    {"washer", "crush ring"},
    {"crush washer", "crush ring"},
    {"crush ring", "crush ring"},
    {"bonded washer", "crush ring"},
    {"copper washer", "crush ring"},
    {"ring", "crush ring"},
    {"o-ring", "O-ring"},
    {"clamp", "clamp"},
    {"gasket", "gasket"},
};

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

static void check_seal(ow_checking *checking, size_t node, size_t end, const ow_joint_rule *rule)
{
    const char *used = checking->layout->nodes[node].seal[end];
    char where[OW_WHERE_SIZE];
    if (used == NULL || ow_words_equal(used, "none"))
        return;
    for (size_t index = 0; index < sizeof seal_words / sizeof seal_words[0]; index++) {
        if (ow_words_equal(used, seal_words[index].used) && needs_word(rule, seal_words[index].needed))
            return;
    }
    ow_checking_find(checking, "wrong-seal", ow_checking_end(checking, node, end, where),
                     "%s is used on this joint, which seals by %s", used, rule->seals_by);
}

static void check_joint(ow_checking *checking, size_t child)
{
    const ow_layout *layout = checking->layout;
    const ow_layout_node *node = &layout->nodes[child];
    const ow_end *outer = ow_layout_parent_end(layout, child);
    const ow_end *inner = ow_layout_child_end(layout, child);
    char where[2 * OW_WHERE_SIZE + 8];
    char words[OW_END_TEXT_SIZE];
    char other[OW_END_TEXT_SIZE];
    char from[OW_WHERE_SIZE];
    char to[OW_WHERE_SIZE];
    ow_checking_end(checking, node->parent, node->parent_end, from);
    ow_checking_end(checking, child, node->enter, to);
    snprintf(where, sizeof where, "%s to %s", from, to);
    ow_end_name(outer, words);
    ow_end_name(inner, other);
    if (!ow_end_is_whole(outer) || !ow_end_is_whole(inner)) {
        ow_checking_find(checking, "unknown-end", where, "%s with %s: the pitch or seat is not known", words,
                         other);
        return;
    }
    const ow_joint_rule *rule = ow_joint_find(outer, inner);
    if (rule == NULL) {
        ow_checking_find(checking, "wrong-joint", where, "%s does not seal on %s", other, words);
        return;
    }
    if (rule->verdict == OW_TOLERATED && !checking->limits.tolerate)
        ow_checking_warn(checking, "tolerated-joint", where, "%s in %s: %s", other, words,
                         rule->remark != NULL ? rule->remark : "no standard blesses it");
    ow_checking_pass(checking, "wrong-joint", where, "%s on %s seals by %s (%s)", other, words,
                     rule->seals_by, rule->source);
    check_seal(checking, child, node->enter, rule);
    if (layout->nodes[node->parent].part != NULL)
        check_seal(checking, node->parent, node->parent_end, rule);
}

void ow_check_joints(ow_checking *checking)
{
    for (size_t child = 1; child < checking->layout->node_count; child++)
        check_joint(checking, child);
}
