/* SPDX-License-Identifier: MIT */
#include "oilway/card.h"

#include "joints/card_internal.h"
#include "joints/words.h"

static void fill_words(ow_card *card)
{
    const ow_card_words *words = ow_card_words_find(card->rule->id);
    if (!words)
        return;
    card->face = words->face;
    card->sealant = words->sealant;
    card->reuse = words->reuse;
    while (card->caution_count < OW_CARD_CAUTIONS && words->cautions[card->caution_count]) {
        card->cautions[card->caution_count] = words->cautions[card->caution_count];
        card->caution_count++;
    }
}

/* The end that says by which seat the joint is tightened: the male, or what is not a bare tube. */
static const ow_end *leading_end(const ow_card *card)
{
    return card->ends[0].gender == OW_MALE ? &card->ends[0] : &card->ends[1];
}

static void fill_thread(ow_card *card, const ow_card_ask *ask)
{
    const ow_end *lead = leading_end(card);
    if (lead->form == OW_FORM_BANJO && ask->bolt) {
        card->thread = *ask->bolt;
        card->has_thread = true;
    } else {
        card->has_thread = ow_end_thread(lead, &card->thread);
    }
}

ow_status ow_card_of(const ow_end *a, const ow_end *b, const ow_card_ask *ask, ow_card *card)
{
    static const ow_card_ask NOTHING_MORE = {0};
    const ow_joint_rule *rule = ow_joint_find(a, b);
    if (!rule)
        return OW_NONE;
    if (!ask)
        ask = &NOTHING_MORE;
    *card = (ow_card){.ends = {*a, *b}, .rule = rule, .face = "", .sealant = "", .reuse = ""};
    fill_words(card);
    fill_thread(card, ask);
    ow_card_fill_consumables(card, ask);
    const ow_end *lead = leading_end(card);
    ow_seat seat = lead->form == OW_FORM_BANJO ? OW_SEAT_BANJO : lead->seat;
    if (card->has_thread)
        ow_torque_fill(&card->thread, seat, ow_material_bits(ask->material), card);
    ow_card_fill_engagement(card, seat, ask);
    return OW_OK;
}
