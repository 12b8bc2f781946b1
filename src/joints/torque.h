/* SPDX-License-Identifier: MIT */
/* The tables of tightening figures, and which rows speak of a joint. */
#ifndef OW_JOINTS_TORQUE_H
#define OW_JOINTS_TORQUE_H

#include "materials/metal.h"
#include "oilway/card.h"

typedef enum ow_thread_state {
    OW_THREAD_NOT_SAID,
    OW_THREAD_DRY,
    OW_THREAD_OILED,
    OW_THREAD_RING_OILED, /* only the O-ring */
    OW_THREAD_SEALANT
} ow_thread_state;

typedef struct ow_torque_row {
    ow_thread thread; /* pitch 0: not given by the source */
    ow_seat seat;
    unsigned materials;
    double least_nm, most_nm;       /* 0: the source counts turns */
    double least_turns, most_turns; /* 0: the source gives torque */
    ow_thread_state state;
    int source; /* number in torque.c */
    const char *what;
} ow_torque_row;

typedef struct ow_torque_rows {
    const ow_torque_row *rows;
    size_t count;
} ow_torque_rows;
extern const ow_torque_rows ow_torque_inch_rows;
extern const ow_torque_rows ow_torque_metric_rows;
extern const ow_torque_rows ow_torque_flat_rows;

/* Fills the card's torques with the rows of that thread and seat; materials 0: of every material. */
void ow_torque_fill(const ow_thread *thread, ow_seat seat, unsigned materials, ow_card *card);

#endif
