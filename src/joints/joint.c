/* SPDX-License-Identifier: MIT */
#include "oilway/joint.h"

#include <string.h>

#include "ends/sizes.h"
#include "joints/rules.h"

const char *ow_verdict_word(ow_verdict verdict)
{
#define WORD(name, word) [name] = word,
    static const char *const WORDS[OW_VERDICT_COUNT] = {OW_VERDICT_LIST(WORD)};
#undef WORD
    return (unsigned)verdict < OW_VERDICT_COUNT ? WORDS[verdict] : "";
}

static bool is_side(const ow_joint_side *side, const ow_end *end)
{
    if (end->form != side->form || end->seat != side->seat)
        return false;
    return end->form != OW_FORM_THREAD || (side->families & OW_FAMILY(end->thread.family)) != 0;
}

static bool genders_fit(const ow_joint_row *row, const ow_end *a, const ow_end *b)
{
    /* A bare tube has no gender: its nut, which is on the bill with it, is the female. */
    bool tube = b->form == OW_FORM_TUBE;
    if (row->first_gender == OW_GENDER_NONE)
        return a->gender == OW_GENDER_NONE && b->gender == OW_GENDER_NONE;
    return a->gender == OW_MALE && b->gender == (tube ? OW_GENDER_NONE : OW_FEMALE);
}

static bool same_size(const ow_end *a, const ow_end *b)
{
    return a->size_unit == b->size_unit && a->size == b->size;
}

static bool bores_fit(const ow_end *hose, const ow_end *tail)
{
    int32_t apart = hose->size - tail->size;
    return hose->size_unit == OW_SIZE_UM && tail->size_unit == OW_SIZE_UM && apart <= OW_TAIL_FIT_UM &&
           apart >= -OW_TAIL_FIT_UM && strcmp(hose->name, "ptfe") != 0;
}

static bool tube_fits(const ow_end *cone, const ow_end *tube)
{
    const ow_cone_series *series = ow_cone_series_find(cone->name);
    return series && tube->size_unit == OW_SIZE_UM && series->tube_um == tube->size;
}

bool ow_joint_row_fits(const ow_joint_row *row, const ow_end *a, const ow_end *b)
{
    if (!is_side(&row->first, a) || !is_side(&row->second, b) || !genders_fit(row, a, b))
        return false;
    bool threads = a->thread.size == b->thread.size && a->thread.pitch == b->thread.pitch;
    switch (row->agree) {
    case OW_AGREE_THREAD:
        return threads;
    case OW_AGREE_SIZE:
        return same_size(a, b);
    case OW_AGREE_SERIES:
        return threads && strcmp(a->name, b->name) == 0;
    case OW_AGREE_TUBE_SERIES:
        return tube_fits(a, b);
    case OW_AGREE_SIZE_AND_NAME:
        return same_size(a, b) && strcmp(a->name, b->name) == 0;
    case OW_AGREE_BORE:
        return bores_fit(a, b);
    case OW_AGREE_NAME:
        return strcmp(a->name, b->name) == 0;
    }
    return false;
}

size_t ow_joint_rule_count(void)
{
    return ow_joint_row_count();
}

const ow_joint_rule *ow_joint_rule_at(size_t index)
{
    const ow_joint_row *row = ow_joint_row_at(index);
    return row ? &row->rule : NULL;
}

const ow_joint_rule *ow_joint_find(const ow_end *a, const ow_end *b)
{
    const ow_joint_row *row;
    if (!ow_end_is_whole(a) || !ow_end_is_whole(b))
        return NULL;
    for (size_t i = 0; (row = ow_joint_row_at(i)); i++)
        if (ow_joint_row_fits(row, a, b) || ow_joint_row_fits(row, b, a))
            return &row->rule;
    return NULL;
}

bool ow_joint_turns(const ow_end *a, const ow_end *b)
{
    return ow_end_turns(a) || ow_end_turns(b);
}
