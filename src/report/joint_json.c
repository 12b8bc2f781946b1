/* SPDX-License-Identifier: MIT */
#include "report/joint_json.h"

#include "oilway/report_joint.h"

static void add_range(ow_json *json, cJSON *parent, const char *name, bool known, double least, double most,
                      int decimals)
{
    if (!known) {
        ow_json_null(json, parent, name);
        return;
    }
    cJSON *range = ow_json_list(json, parent, name);
    ow_json_rounded(json, range, NULL, least, decimals);
    ow_json_rounded(json, range, NULL, most, decimals);
}

static void add_mates(ow_json *json, const ow_mates *mates, const ow_card_ask *ask)
{
    char name[OW_END_TEXT_SIZE];
    ow_card card;
    cJSON *item = ow_json_object(json, json->root, NULL);
    ow_json_words(json, item, "end", ow_end_name(&mates->ends[1], name));
    ow_json_words(json, item, "verdict", ow_verdict_word(mates->verdict));
    add_range(json, item, "turns", mates->has_turns, mates->turns_least, mates->turns_most, 2);
    ow_json_words(json, item, "why", mates->why);
    ow_json_words(json, item, "source", mates->source);
    ow_json_words(json, item, "reading", ow_end_name(&mates->ends[0], name));
    if (ask && ow_card_of(&mates->ends[0], &mates->ends[1], ask, &card) == OW_OK)
        ow_json_card(json, ow_json_object(json, item, "card"), &card);
}

ow_status ow_report_mates_json(ow_text *text, const ow_mates_list *list, const ow_card_ask *ask)
{
    ow_json json = ow_json_new(true);
    for (size_t i = 0; i < list->count; i++)
        add_mates(&json, &list->items[i], ask);
    return ow_json_done(&json, text);
}

static void add_millimetres(ow_json *json, cJSON *parent, const char *name, double value_mm)
{
    if (value_mm > 0.0)
        ow_json_rounded(json, parent, name, value_mm, 3);
    else
        ow_json_null(json, parent, name);
}

static void add_consumables(ow_json *json, cJSON *object, const ow_card *card)
{
    cJSON *list = ow_json_list(json, object, "consumables");
    for (size_t i = 0; i < card->consumable_count; i++) {
        const ow_consumable *consumable = &card->consumables[i];
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_words(json, item, "what", consumable->what);
        ow_json_words(json, item, "size", consumable->size);
        if (consumable->count > 0)
            ow_json_number(json, item, "count", (double)consumable->count);
        else
            ow_json_null(json, item, "count"); /* by need */
        add_millimetres(json, item, "inner_mm", consumable->inner_mm);
        add_millimetres(json, item, "outer_mm", consumable->outer_mm);
        add_millimetres(json, item, "thickness_mm", consumable->thickness_mm);
        ow_json_bool(json, item, "measure", consumable->measure);
        ow_json_words(json, item, "note", consumable->note);
        ow_json_words(json, item, "source", consumable->source);
    }
}

static void add_engagement(ow_json *json, cJSON *object, const ow_engagement *engagement)
{
    static const char *const ENOUGH[] = {
        [OW_ENOUGH_UNKNOWN] = NULL, [OW_ENOUGH] = "yes", [OW_NOT_ENOUGH] = "no"};
    double pitch_m = engagement->pitch_m;
    if (pitch_m <= 0.0) {
        ow_json_null(json, object, "engagement");
        return;
    }
    cJSON *item = ow_json_object(json, object, "engagement");
    add_range(json, item, "length_mm", engagement->has_length, engagement->least_m * 1e3,
              engagement->most_m * 1e3, 2);
    add_range(json, item, "turns", engagement->has_length, engagement->least_m / pitch_m,
              engagement->most_m / pitch_m, 2);
    ow_json_words(json, item, "source", engagement->has_length ? engagement->source : NULL);
    ow_json_scaled(json, item, "needed_mm", engagement->has_needed ? engagement->needed_m : -1.0, 1e3, 2);
    ow_json_scaled(json, item, "needed_turns", engagement->has_needed ? engagement->needed_m / pitch_m : -1.0,
                   1.0, 2);
    ow_json_words(json, item, "needed_why", engagement->has_needed ? engagement->needed_why : NULL);
    ow_json_scaled(json, item, "bears_nm", engagement->bears_nm > 0.0 ? engagement->bears_nm : -1.0, 1.0, 1);
    ow_json_words(json, item, "enough", ENOUGH[engagement->enough]);
}

static void add_torques(ow_json *json, cJSON *object, const ow_card *card)
{
    add_range(json, object, "torque_nm", card->has_torque, card->least_nm, card->most_nm, 2);
    if (card->torque_count == 0)
        ow_json_words(json, object, "torque_note", "no published figure");
    cJSON *list = ow_json_list(json, object, "tightening");
    for (size_t i = 0; i < card->torque_count; i++) {
        const ow_torque *torque = &card->torques[i];
        cJSON *item = ow_json_object(json, list, NULL);
        add_range(json, item, "torque_nm", torque->most_nm > 0.0, torque->least_nm, torque->most_nm, 2);
        add_range(json, item, "turns_from_finger_tight", torque->most_turns > 0.0, torque->least_turns,
                  torque->most_turns, 2);
        ow_json_words(json, item, "for", torque->what);
        ow_json_words(json, item, "material", torque->material);
        ow_json_words(json, item, "condition", torque->condition);
        ow_json_words(json, item, "source", torque->source);
    }
}

void ow_json_card(ow_json *json, cJSON *object, const ow_card *card)
{
    char name[OW_END_TEXT_SIZE];
    cJSON *ends = ow_json_list(json, object, "ends");
    ow_json_words(json, ends, NULL, ow_end_name(&card->ends[0], name));
    ow_json_words(json, ends, NULL, ow_end_name(&card->ends[1], name));
    ow_json_words(json, object, "rule", card->rule->id);
    ow_json_words(json, object, "verdict", ow_verdict_word(card->rule->verdict));
    ow_json_words(json, object, "seals_by", card->rule->seals_by);
    ow_json_words(json, object, "face", card->face);
    ow_json_words(json, object, "sealant", card->sealant);
    add_consumables(json, object, card);
    ow_json_words(json, object, "rings", card->ring_hint[0] ? card->ring_hint : NULL);
    add_engagement(json, object, &card->engagement);
    add_torques(json, object, card);
    ow_json_words(json, object, "reuse", card->reuse);
    cJSON *cautions = ow_json_list(json, object, "cautions");
    for (size_t i = 0; i < card->caution_count; i++)
        ow_json_words(json, cautions, NULL, card->cautions[i]);
    ow_json_words(json, object, "remark", card->rule->remark);
    ow_json_words(json, object, "source", card->rule->source);
}

ow_status ow_report_card_json(ow_text *text, const ow_card *card)
{
    ow_json json = ow_json_new(false);
    ow_json_card(&json, json.root, card);
    return ow_json_done(&json, text);
}
