/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "oilway/hydraulics.h"

static const double pi = 3.14159265358979323846;

/* Below this the formula of Churchill is 64/Re to the last digit and its powers only overflow. */
static const double plainly_laminar = 500.0;
static const double laminar_up_to = 2000.0;
static const double turbulent_from = 4000.0;

double ow_loss_coefficient(ow_loss loss, double reynolds)
{
    return loss.viscous / reynolds + loss.inertial;
}

double ow_loss_pa(ow_loss loss, const ow_liquid *liquid, double bore_m, double velocity_ms)
{
    double viscous = loss.viscous * liquid->dynamic_viscosity_pas / bore_m;
    return 0.5 * velocity_ms * (viscous + loss.inertial * liquid->density_kgm3 * velocity_ms);
}

/* S. W. Churchill, Chemical Engineering 84 (24), 1977; its 8/Re is laminar/(8 Re) with laminar = 64. */
double ow_friction_factor(double reynolds, double relative_roughness, double laminar)
{
    if (reynolds < plainly_laminar)
        return laminar / reynolds;
    double rough = pow(7.0 / reynolds, 0.9) + 0.27 * relative_roughness;
    double a = pow(2.457 * log(1.0 / rough), 16.0);
    double b = pow(37530.0 / reynolds, 16.0);
    return 8.0 * pow(pow(laminar / 8.0 / reynolds, 12.0) + pow(a + b, -1.5), 1.0 / 12.0);
}

ow_loss ow_pipe_loss(double reynolds, double length_per_bore, double relative_roughness)
{
    if (reynolds < plainly_laminar)
        return (ow_loss){64.0 * length_per_bore, 0.0};
    return (ow_loss){0.0, ow_friction_factor(reynolds, relative_roughness, 64.0) * length_per_bore};
}

/* How far from laminar (0) to turbulent (1): linear between, for want of anything known there. */
static double turbulent_share(double reynolds)
{
    double share = (reynolds - laminar_up_to) / (turbulent_from - laminar_up_to);
    return fmin(fmax(share, 0.0), 1.0);
}

/* Half the creeping end loss of a hole, fading as the short tube's does. */
static double creeping_end(double area_ratio, double reynolds)
{
    return 6.0 * pi * (1.0 - area_ratio) / (1.0 + reynolds / 12.0);
}

ow_loss ow_contraction_loss(double area_ratio, double reynolds)
{
    double share = turbulent_share(reynolds);
    double laminar = 0.28 * (1.0 - area_ratio);
    double turbulent = 0.5 * pow(1.0 - area_ratio, 0.75);
    return (ow_loss){(1.0 - share) * creeping_end(area_ratio, reynolds),
                     (1.0 - share) * laminar + share * turbulent};
}

ow_loss ow_expansion_loss(double area_ratio, double reynolds)
{
    double share = turbulent_share(reynolds);
    /* momentum balance with parabolic profiles: energy factor 2, momentum factor 4/3 */
    double laminar = 2.0 - 8.0 / 3.0 * area_ratio + 2.0 / 3.0 * area_ratio * area_ratio;
    double turbulent = (1.0 - area_ratio) * (1.0 - area_ratio);
    return (ow_loss){(1.0 - share) * creeping_end(area_ratio, reynolds),
                     (1.0 - share) * laminar + share * turbulent};
}

/* Merritt's capillary and orifice branches, joined with equal slope at y = 13.74/128. */
static ow_loss bore_loss(double length_per_bore, double reynolds)
{
    const double join = 13.74 / 128.0;
    double y_squared_times_reynolds = length_per_bore;
    if (y_squared_times_reynolds >= join * join * reynolds)
        return (ow_loss){64.0 * length_per_bore, 2.28};
    return (ow_loss){0.0, 13.74 * sqrt(length_per_bore / reynolds) + 2.28 - 64.0 * join * join};
}

ow_loss ow_short_tube_loss(double length_per_bore, double reynolds)
{
    ow_loss loss;
    if (length_per_bore < 0.5) {
        loss = (ow_loss){64.0 * length_per_bore, 1.0 / (0.61 * 0.61)}; /* sharp orifice */
    } else if (length_per_bore <= 20.0) {
        loss = bore_loss(length_per_bore, reynolds);
    } else { /* a pipe with its ends */
        ow_loss in = ow_contraction_loss(0.0, reynolds);
        ow_loss out = ow_expansion_loss(0.0, reynolds);
        loss = ow_pipe_loss(reynolds, length_per_bore, 0.0);
        return (ow_loss){loss.viscous + in.viscous + out.viscous, loss.inertial + in.inertial + out.inertial};
    }
    loss.viscous += 2.0 * creeping_end(0.0, reynolds); /* exact for a hole in a thin wall: Sampson 1891 */
    return loss;
}
