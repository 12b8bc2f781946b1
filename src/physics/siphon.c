/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "oilway/coolant.h"
#include "physics/root.h"

static const double pi = 3.14159265358979323846;

static bool within(double value, double low, double high)
{
    return value >= low && value <= high; /* false for NaN */
}

ow_status ow_loop_check(const ow_loop *loop)
{
    size_t wrong;
    bool right = (loop->coolant == OW_WATER || loop->coolant == OW_GLYCOL_50) &&
                 within(loop->heat_w, OW_COOLANT_HEAT_LOW_W, OW_COOLANT_HEAT_HIGH_W) &&
                 within(loop->cold_c, OW_COOLANT_LOW_C, OW_COOLANT_HIGH_C) &&
                 within(loop->apart_m, 0.0, OW_COOLANT_APART_HIGH_M) &&
                 within(loop->angle_rad, -pi / 2.0 - 1e-9, pi / 2.0 + 1e-9) &&
                 within(loop->rise_m, -OW_RISE_HIGH_M, OW_RISE_HIGH_M) &&
                 within(loop->jacket_coefficient, 0.0, OW_LOSS_COEFFICIENT_HIGH) &&
                 within(loop->jacket_bore_m, OW_BORE_LOW_M, OW_BORE_HIGH_M) &&
                 within(loop->roughness_m, 0.0, OW_ROUGHNESS_HIGH_M) &&
                 within(loop->cap_pa, 0.0, OW_COOLANT_CAP_HIGH_PA) && loop->cold_count >= 1 &&
                 loop->cold_count <= OW_PIECES_MAX && loop->hot_count >= 1 &&
                 loop->hot_count <= OW_PIECES_MAX;
    if (!right || ow_pieces_check(loop->cold_leg, loop->cold_count, &wrong) != OW_OK ||
        ow_pieces_check(loop->hot_leg, loop->hot_count, &wrong) != OW_OK)
        return OW_RANGE;
    return OW_OK;
}

/* A leg with its entry and exit. */
static double leg_loss_pa(const ow_piece *pieces, size_t count, const ow_liquid *liquid, double roughness_m,
                          double flow_m3s)
{
    static const ow_piece chamber = {.kind = OW_PIECE_CHAMBER};
    if (count == 0)
        return 0.0;
    double loss = ow_pieces_loss_pa(&chamber, pieces, count, liquid, roughness_m, flow_m3s);
    return loss + ow_pieces_loss_pa(&pieces[count - 1], &chamber, 1, liquid, roughness_m, flow_m3s);
}

static double jacket_loss_pa(const ow_loop *loop, const ow_liquid *liquid, double flow_m3s)
{
    double velocity = flow_m3s / (0.25 * pi * loop->jacket_bore_m * loop->jacket_bore_m);
    return ow_loss_pa((ow_loss){0.0, loop->jacket_coefficient}, liquid, loop->jacket_bore_m, velocity);
}

static double temperature_rise_k(const ow_loop *loop, double flow_m3s)
{
    double heat_per_volume = ow_coolant_density_kgm3(loop->coolant, loop->cold_c) *
                             ow_coolant_heat_jkgk(loop->coolant, loop->cold_c);
    return loop->heat_w / (heat_per_volume * flow_m3s);
}

/* Buoyancy: the jacket stands at the mean temperature over the height between its ports, the return
 * at the hot one over its rise; the cold column beside both. */
static double drive_pa(const ow_loop *loop, double rise_k)
{
    double cold = ow_coolant_density_kgm3(loop->coolant, loop->cold_c);
    double mean = ow_coolant_density_kgm3(loop->coolant, loop->cold_c + 0.5 * rise_k);
    double hot = ow_coolant_density_kgm3(loop->coolant, loop->cold_c + rise_k);
    return OW_GRAVITY_MS2 *
           ((cold - mean) * loop->apart_m * sin(loop->angle_rad) + (cold - hot) * loop->rise_m);
}

static double loop_loss_pa(const ow_loop *loop, double rise_k, double flow_m3s)
{
    ow_liquid cold = ow_coolant_liquid(loop->coolant, loop->cold_c);
    ow_liquid mean = ow_coolant_liquid(loop->coolant, loop->cold_c + 0.5 * rise_k);
    ow_liquid hot = ow_coolant_liquid(loop->coolant, loop->cold_c + rise_k);
    return leg_loss_pa(loop->cold_leg, loop->cold_count, &cold, loop->roughness_m, flow_m3s) +
           jacket_loss_pa(loop, &mean, flow_m3s) +
           leg_loss_pa(loop->hot_leg, loop->hot_count, &hot, loop->roughness_m, flow_m3s);
}

/* Drive less losses over the logarithm of the flow: small flows get hot and are driven hard. */
static double surplus(const void *data, double log_flow)
{
    const ow_loop *loop = data;
    double flow = exp(log_flow), rise = temperature_rise_k(loop, flow);
    return drive_pa(loop, rise) - loop_loss_pa(loop, rise, flow);
}

static ow_status judge(const ow_loop *loop, ow_siphon *siphon)
{
    ow_status status = ow_coolant_boiling_c(loop->coolant, loop->cap_pa, &siphon->boiling_c);
    siphon->hot_c = loop->cold_c + siphon->rise_k;
    siphon->boils = siphon->stands_still || siphon->hot_c >= siphon->boiling_c;
    siphon->near_boiling = siphon->boils || siphon->hot_c > siphon->boiling_c - OW_BOIL_MARGIN_K;
    return status;
}

ow_status ow_siphon_solve(const ow_loop *loop, ow_siphon *siphon)
{
    if (ow_loop_check(loop) != OW_OK)
        return OW_RANGE;
    ow_siphon found = {0};
    double least = temperature_rise_k(loop, 1.0) / OW_SIPHON_RISE_HIGH_K; /* flow that heats by that much */
    double low = log(least), high = low + log(1e6), root;
    if (surplus(loop, high) > 0.0)
        return OW_RANGE; /* nothing in the loop resists */
    if (surplus(loop, low) > 0.0 && ow_root_find(surplus, loop, low, high, &root)) {
        found.flow_m3s = exp(root);
        found.rise_k = temperature_rise_k(loop, found.flow_m3s);
        found.drive_pa = drive_pa(loop, found.rise_k);
    } else {
        found.stands_still = true;
    }
    ow_status status = judge(loop, &found);
    if (status == OW_OK)
        *siphon = found;
    return status;
}

static double narrowest_bore_m(const ow_piece *pieces, size_t count)
{
    double narrowest = 0.0;
    for (size_t i = 0; i < count; i++)
        if (pieces[i].kind != OW_PIECE_CHAMBER && (narrowest == 0.0 || pieces[i].bore_m < narrowest))
            narrowest = pieces[i].bore_m;
    return narrowest;
}

ow_status ow_loop_forced(const ow_loop *loop, double flow_m3s, ow_forced *forced)
{
    if (ow_loop_check(loop) != OW_OK || !within(flow_m3s, 1e-9, OW_FLOW_HIGH_M3S))
        return OW_RANGE;
    ow_liquid cold = ow_coolant_liquid(loop->coolant, loop->cold_c);
    double bore = narrowest_bore_m(loop->cold_leg, loop->cold_count);
    forced->jacket_pa = jacket_loss_pa(loop, &cold, flow_m3s);
    forced->loss_pa = forced->jacket_pa +
                      leg_loss_pa(loop->cold_leg, loop->cold_count, &cold, loop->roughness_m, flow_m3s) +
                      leg_loss_pa(loop->hot_leg, loop->hot_count, &cold, loop->roughness_m, flow_m3s);
    forced->reynolds =
        bore > 0.0 ? 4.0 * cold.density_kgm3 * flow_m3s / (pi * bore * cold.dynamic_viscosity_pas) : 0.0;
    forced->rise_k = temperature_rise_k(loop, flow_m3s);
    return OW_OK;
}
