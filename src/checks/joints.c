/* SPDX-License-Identifier: MIT */
/* Every joint: whether its two ends seal on each other; if not, how they deceive, and what would join them.
 */
#include <stdio.h>
#include <string.h>

#include "checks/checks_internal.h"
#include "oilway/mates.h"

static bool joins(const ow_checking *checking, const ow_end *a, const ow_end *b)
{
    const ow_joint_rule *rule = ow_joint_find(a, b);
    return rule != NULL && (rule->verdict == OW_SEALS || checking->limits.tolerate);
}

/* Whether a part of two ends may stand in this layout at all. */
static bool is_fit(const ow_checking *checking, const ow_part *part)
{
    const ow_limits *limits = &checking->limits;
    return part->end_count == 2 && part->rating_pa >= limits->rating_pa &&
           (limits->fluid == OW_FLUID_NONE || (part->fluids & (unsigned)limits->fluid) != 0) &&
           (limits->least_bore_m < 0.0 || ow_part_bore_m(part, 0, 1) >= limits->least_bore_m);
}

static bool is_cheaper(const ow_part *part, const ow_part *than)
{
    if (than == NULL || !than->has_price)
        return than == NULL || part->has_price;
    return part->has_price && part->price_cents < than->price_cents;
}

/* The cheapest adapter or hose end of the catalogue that joins the two, the first by id among equals; NULL if
 * none. */
static const ow_part *find_adapter(const ow_checking *checking, const ow_end *a, const ow_end *b)
{
    const ow_part *best = NULL;
    size_t count = checking->catalog != NULL ? ow_catalog_part_count(checking->catalog) : 0;
    for (size_t index = 0; index < count; index++) {
        const ow_part *part = ow_catalog_part_at(checking->catalog, index);
        if ((part->kind != OW_ADAPTER && part->kind != OW_HOSE_END) || !is_fit(checking, part) ||
            !is_cheaper(part, best))
            continue;
        if ((joins(checking, a, &part->ends[0]) && joins(checking, b, &part->ends[1])) ||
            (joins(checking, a, &part->ends[1]) && joins(checking, b, &part->ends[0])))
            best = part;
    }
    return best;
}

static const ow_part *find_hose(const ow_checking *checking, const ow_end *tail)
{
    const ow_part *best = NULL;
    size_t count = checking->catalog != NULL ? ow_catalog_part_count(checking->catalog) : 0;
    for (size_t index = 0; index < count; index++) {
        const ow_part *part = ow_catalog_part_at(checking->catalog, index);
        if (part->kind == OW_HOSE && is_fit(checking, part) && is_cheaper(part, best) &&
            joins(checking, tail, &part->ends[0]) && joins(checking, tail, &part->ends[1]))
            best = part;
    }
    return best;
}

/* A hose on the tail of another hose: no adapter stands between the two, one of them is the wrong one. */
static bool mend_by_hose(const ow_checking *checking, const ow_end *outer, const ow_end *inner, char *mend,
                         size_t size)
{
    const ow_end *hose = outer->form == OW_FORM_HOSE ? outer : inner;
    const ow_end *tail = hose == outer ? inner : outer;
    if (hose->form != OW_FORM_HOSE || tail->form != OW_FORM_TAIL)
        return false;
    char words[OW_END_TEXT_SIZE];
    ow_end own_tail = *hose;
    own_tail.form = OW_FORM_TAIL;
    const ow_part *better = find_hose(checking, tail);
    snprintf(mend, size,
             "Use the hose that the tail is made for%s%.60s, or a fitting with the tail of this hose, %s.",
             better != NULL ? ", such as " : "", better != NULL ? better->id : "",
             ow_end_name(&own_tail, words));
    return true;
}

static void mend_by_adapter(const ow_checking *checking, const ow_end *outer, const ow_end *inner, char *mend,
                            size_t size)
{
    char on[OW_END_TEXT_SIZE];
    char from[OW_END_TEXT_SIZE];
    const ow_part *adapter = find_adapter(checking, outer, inner);
    if (adapter != NULL)
        snprintf(mend, size, "Put %.60s between them: %.160s.", adapter->id, adapter->title);
    else
        snprintf(mend, size, "Put an adapter between them, one end to fit %s, the other to fit %s%s.",
                 ow_end_name(outer, on), ow_end_name(inner, from),
                 checking->catalog != NULL ? "; the catalogue has none in one piece" : "");
}

static void say_wrong(ow_checking *checking, const char *where, size_t child)
{
    const ow_end *outer = ow_layout_parent_end(checking->layout, child);
    const ow_end *inner = ow_layout_child_end(checking->layout, child);
    char on[OW_END_TEXT_SIZE];
    char from[OW_END_TEXT_SIZE];
    char mend[512];
    ow_mates mates;
    ow_end_name(outer, on);
    ow_end_name(inner, from);
    if (!ow_check_exchanged(checking, child, mend, sizeof mend) &&
        !mend_by_hose(checking, outer, inner, mend, sizeof mend))
        mend_by_adapter(checking, outer, inner, mend, sizeof mend);
    if (ow_mates_judge(outer, inner, &mates) == OW_OK)
        ow_checking_find_mend(checking, "wrong-joint", where, mend, "%s on %s: %s: %s (%s)", from, on,
                              ow_verdict_word(mates.verdict), mates.why, mates.source);
    else
        ow_checking_find_mend(checking, "wrong-joint", where, mend,
                              "%s on %s: whether they seal hangs on a pitch or seat that is not said", from,
                              on);
}

static void check_joint(ow_checking *checking, size_t child)
{
    const ow_layout *layout = checking->layout;
    const ow_end *outer = ow_layout_parent_end(layout, child);
    const ow_end *inner = ow_layout_child_end(layout, child);
    char where[OW_JOINT_WHERE_SIZE];
    char words[OW_END_TEXT_SIZE];
    char other[OW_END_TEXT_SIZE];
    ow_checking_joint(checking, child, where);
    ow_end_name(outer, words);
    ow_end_name(inner, other);
    const ow_joint_rule *rule = ow_joint_find(outer, inner);
    if (rule == NULL) {
        say_wrong(checking, where, child);
        return;
    }
    if (rule->verdict == OW_TOLERATED && !checking->limits.tolerate)
        ow_checking_warn(checking, "tolerated-joint", where, "%s in %s: %s", other, words,
                         rule->remark != NULL ? rule->remark : "no standard blesses it");
    else
        ow_checking_pass(checking, "wrong-joint", where, "%s on %s: %s by %s (%s)", other, words,
                         ow_verdict_word(rule->verdict), rule->seals_by, rule->source);
    ow_check_seal(checking, child, rule);
}

void ow_check_joints(ow_checking *checking)
{
    for (size_t child = 1; child < checking->layout->node_count; child++)
        check_joint(checking, child);
}
