/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "oilway/hydraulics.h"

static const double pi = 3.14159265358979323846;
static const double inch_m = 0.0254;

const char *ow_piece_word(ow_piece_kind kind)
{
#define WORD(name, word) word,
    static const char *const words[] = {OW_PIECE_LIST(WORD)};
#undef WORD
    return kind < OW_PIECE_KIND_COUNT ? words[kind] : "";
}

/* The size term is clamped at half an inch: it was fitted to pipes of that size and up (assumption). */
ow_loss ow_fitting_loss(ow_piece_kind kind, double bore_m)
{
    const ow_three_k *row = ow_three_k_find(kind);
    if (row == NULL)
        return (ow_loss){0.0, 0.0};
    double size_inch = fmax(bore_m / inch_m, 0.5);
    return (ow_loss){row->k1, row->ki * (1.0 + row->kd * pow(size_inch, -0.3))};
}

static bool is_holes(const ow_piece *piece)
{
    return piece->kind == OW_PIECE_HOLES || piece->kind == OW_PIECE_RESTRICTOR;
}

static bool has_length(const ow_piece *piece)
{
    return piece->kind == OW_PIECE_PIPE || is_holes(piece);
}

static bool between(double value, double low, double high)
{
    return value >= low && value <= high; /* false for NaN */
}

static bool piece_in_range(const ow_piece *piece)
{
    if (piece->kind == OW_PIECE_CHAMBER)
        return true;
    return piece->kind < OW_PIECE_KIND_COUNT && between(piece->bore_m, OW_BORE_LOW_M, OW_BORE_HIGH_M) &&
           (!has_length(piece) || between(piece->length_m, 0.0, OW_LENGTH_HIGH_M)) &&
           (!is_holes(piece) || (piece->count >= 1 && piece->count <= OW_HOLES_HIGH)) &&
           (piece->kind != OW_PIECE_FIXED || between(piece->coefficient, 0.0, OW_LOSS_COEFFICIENT_HIGH));
}

ow_status ow_pieces_check(const ow_piece *pieces, size_t count, size_t *wrong)
{
    for (size_t i = 0; i < count; i++) {
        if (!piece_in_range(&pieces[i])) {
            *wrong = i;
            return OW_RANGE;
        }
    }
    return OW_OK;
}

typedef struct flowing { /* what every loss along one line shares */
    const ow_liquid *liquid;
    double roughness_m;
    double flow_m3s;
} flowing;

/* Fills velocity, Reynolds number and bore for a share of the flow in one bore. */
static ow_piece_loss start_loss(const flowing *flow, double bore_m, double share)
{
    ow_piece_loss loss = {.kind = "", .name = "", .bore_m = bore_m};
    loss.velocity_ms = flow->flow_m3s * share / (0.25 * pi * bore_m * bore_m);
    loss.reynolds =
        flow->liquid->density_kgm3 * loss.velocity_ms * bore_m / flow->liquid->dynamic_viscosity_pas;
    return loss;
}

static ow_piece_loss own_loss(const flowing *flow, const ow_piece *piece)
{
    ow_piece_loss loss = start_loss(flow, piece->bore_m, is_holes(piece) ? 1.0 / piece->count : 1.0);
    double ratio = piece->length_m / piece->bore_m;
    ow_loss k;
    if (piece->kind == OW_PIECE_PIPE)
        k = ow_pipe_loss(loss.reynolds, ratio, fmin(flow->roughness_m / piece->bore_m, 0.05));
    else if (is_holes(piece))
        k = ow_short_tube_loss(ratio, loss.reynolds);
    else if (piece->kind == OW_PIECE_FIXED)
        k = (ow_loss){0.0, piece->coefficient};
    else
        k = ow_fitting_loss(piece->kind, piece->bore_m);
    loss.kind = ow_piece_word(piece->kind);
    loss.name = piece->name ? piece->name : "";
    loss.loss_pa = ow_loss_pa(k, flow->liquid, piece->bore_m, loss.velocity_ms);
    return loss;
}

/* A chamber, or what a hole opens into at either end: its formula holds from chamber to chamber. */
static bool is_wide(const ow_piece *piece)
{
    return piece->kind == OW_PIECE_CHAMBER || is_holes(piece);
}

/* The step from one piece to the next. False if there is none: same bore, a fixed loss, or wide
 * on both sides. */
static bool step_loss(const flowing *flow, const ow_piece *from, const ow_piece *to, ow_piece_loss *loss)
{
    bool from_chamber = is_wide(from), to_chamber = is_wide(to);
    if (from->kind == OW_PIECE_FIXED || to->kind == OW_PIECE_FIXED || (from_chamber && to_chamber) ||
        (!from_chamber && !to_chamber && from->bore_m == to->bore_m))
        return false;
    bool narrows = from_chamber || (!to_chamber && to->bore_m < from->bore_m);
    double small_m = narrows ? to->bore_m : from->bore_m;
    double large_m = narrows ? from->bore_m : to->bore_m;
    double ratio = from_chamber || to_chamber ? 0.0 : small_m / large_m * (small_m / large_m);
    *loss = start_loss(flow, small_m, 1.0);
    ow_loss k =
        narrows ? ow_contraction_loss(ratio, loss->reynolds) : ow_expansion_loss(ratio, loss->reynolds);
    loss->kind = from_chamber ? "entry" : to_chamber ? "exit" : narrows ? "contraction" : "expansion";
    loss->is_step = true;
    loss->loss_pa = ow_loss_pa(k, flow->liquid, small_m, loss->velocity_ms);
    return true;
}

/* Walks the line; losses may be NULL. Returns how many there are; *total their sum. */
static size_t walk(const ow_piece *before, const ow_piece *pieces, size_t count, const flowing *flow,
                   ow_piece_loss *losses, double *total)
{
    size_t written = 0;
    *total = 0.0;
    for (size_t i = 0; i < count; i++) {
        const ow_piece *from = i > 0 ? &pieces[i - 1] : before;
        ow_piece_loss found[2];
        size_t found_count = 0;
        if (from != NULL && step_loss(flow, from, &pieces[i], &found[0]))
            found_count = 1;
        if (pieces[i].kind != OW_PIECE_CHAMBER)
            found[found_count++] = own_loss(flow, &pieces[i]);
        for (size_t j = 0; j < found_count; j++) {
            found[j].piece = i;
            *total += found[j].loss_pa;
            if (losses != NULL)
                losses[written] = found[j];
            written++;
        }
    }
    return written;
}

double ow_pieces_loss_pa(const ow_piece *before, const ow_piece *pieces, size_t count,
                         const ow_liquid *liquid, double roughness_m, double flow_m3s)
{
    double total;
    walk(before, pieces, count, &(flowing){liquid, roughness_m, flow_m3s}, NULL, &total);
    return total;
}

size_t ow_pieces_losses(const ow_piece *before, const ow_piece *pieces, size_t count, const ow_liquid *liquid,
                        double roughness_m, double flow_m3s, ow_piece_loss *losses)
{
    double total;
    return walk(before, pieces, count, &(flowing){liquid, roughness_m, flow_m3s}, losses, &total);
}

double ow_pieces_volume_m3(const ow_piece *pieces, size_t count)
{
    double volume = 0.0;
    for (size_t i = 0; i < count; i++)
        if (has_length(&pieces[i]))
            volume += (is_holes(&pieces[i]) ? pieces[i].count : 1) * 0.25 * pi * pieces[i].bore_m *
                      pieces[i].bore_m * pieces[i].length_m;
    return volume;
}
