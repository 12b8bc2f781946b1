/* SPDX-License-Identifier: MIT */
#ifndef OW_THREADS_PAIR_H
#define OW_THREADS_PAIR_H

#include "oilway/pairing.h"

/* Writes pairing->why from its figures. */
void ow_pairing_explain(ow_pairing *pairing);

#endif
