/* SPDX-License-Identifier: MIT */
#include "oilway/hydraulics.h"

/* Published (P): R. Darby, Chemical Engineering Fluid Mechanics, 2nd edition 2001, as carried by the
 * general-purpose library fluids 1.0.22; the laminar term is Hooper's of 1981. */
#define DARBY "Darby 2001, 3-K method"

static const ow_three_k fittings[] = {
    {OW_PIECE_ELBOW_90, 800.0, 0.14, 4.0, DARBY ", 90 degree elbow, threaded, r/D 1"},
    {OW_PIECE_ELBOW_90_LONG, 800.0, 0.071, 4.2, DARBY ", 90 degree elbow, threaded, r/D 1.5"},
    {OW_PIECE_ELBOW_45, 500.0, 0.071, 4.2, DARBY ", 45 degree elbow, threaded"},
    {OW_PIECE_TEE_BRANCH, 500.0, 0.274, 4.0, DARBY ", tee through branch, threaded"},
    {OW_PIECE_TEE_BRANCH_DRILLED, 800.0, 0.28, 4.0, DARBY ", tee through branch, welded"},
    {OW_PIECE_TEE_RUN, 200.0, 0.091, 4.0, DARBY ", tee along the run, threaded"},
};

const ow_three_k *ow_three_k_find(ow_piece_kind kind)
{
    for (size_t i = 0; i < sizeof fittings / sizeof fittings[0]; i++)
        if (fittings[i].kind == kind)
            return &fittings[i];
    return NULL;
}
