/* SPDX-License-Identifier: MIT */
#include "physics/branch_copy.h"

static void change_bore(ow_piece *piece, double bore_m)
{
    if (piece->kind == OW_PIECE_HOLES || piece->kind == OW_PIECE_RESTRICTOR ||
        piece->kind == OW_PIECE_CHAMBER)
        return;
    double changed = piece->bore_m + bore_m;
    piece->bore_m = changed > 0.5 * piece->bore_m ? changed : 0.5 * piece->bore_m;
}

ow_status ow_branch_copy(ow_arena *arena, const ow_branch *branch, double bore_m, ow_branch *copy)
{
    ow_branch made = *branch;
    ow_piece *pieces = ow_arena_get_array(arena, branch->piece_count, sizeof *pieces);
    ow_branch *branches = ow_arena_get_array(arena, branch->branch_count, sizeof *branches);
    if (pieces == NULL || branches == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < branch->piece_count; i++) {
        pieces[i] = branch->pieces[i];
        change_bore(&pieces[i], bore_m);
    }
    for (size_t i = 0; i < branch->branch_count; i++) {
        ow_status status = ow_branch_copy(arena, &branch->branches[i], bore_m, &branches[i]);
        if (status != OW_OK)
            return status;
    }
    made.pieces = pieces;
    made.branches = branches;
    *copy = made;
    return OW_OK;
}
