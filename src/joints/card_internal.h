/* SPDX-License-Identifier: MIT */
/* The parts that a card is filled by. */
#ifndef OW_JOINTS_CARD_INTERNAL_H
#define OW_JOINTS_CARD_INTERNAL_H

#include "joints/rings.h"
#include "joints/torque.h"
#include "oilway/card.h"

/* Adds what the rule needs, by size. card->thread is set where there is one. */
void ow_card_fill_consumables(ow_card *card, const ow_card_ask *ask);
/* After the torques: how far the threads engage, and what they need to bear the highest of them. */
void ow_card_fill_engagement(ow_card *card, ow_seat seat, const ow_card_ask *ask);

/* Threaded length of a standard's stud, from its shoulder. */
typedef struct ow_stud_row {
    ow_thread thread;
    ow_seat seat;
    double length_mm;
    const char *source;
} ow_stud_row;
const ow_stud_row *ow_stud_find(const ow_thread *thread, ow_seat seat); /* NULL: none tabulated */

#endif
