/* SPDX-License-Identifier: MIT */
/*
 * Laminar flow in a partly filled pipe, lengths in bores. The Poisson equation on the wetted segment,
 * no slip on the wall and no shear on the flat surface, reduces in bipolar coordinates to one
 * integral (derived for this project; see docs/physics.md for how it was checked).
 */
#include <math.h>

#include "oilway/drain.h"

static const double pi = 3.14159265358979323846;

/* Half the angle that the wetted arc spans at the centre. */
static double half_angle(double depth)
{
    return acos(fmin(fmax(1.0 - 2.0 * depth, -1.0), 1.0));
}

double ow_part_full_area(double depth)
{
    double phi = half_angle(depth);
    return 0.25 * (phi - sin(phi) * cos(phi));
}

double ow_part_full_perimeter(double depth)
{
    return half_angle(depth);
}

/*
 * k tanh(k phi) F(k)^2 without the hyperbolic functions that overflow: everything is divided by
 * e^(k pi), which leaves e^(-k (pi - phi)) and small terms.
 */
static double integrand(double k, double phi)
{
    if (k <= 0.0)
        return 0.0;
    double fade = exp(-2.0 * k * phi);
    double cosh_scaled = 0.5 * (1.0 + fade), sinh_scaled = -0.5 * expm1(-2.0 * k * phi); /* over e^(k phi) */
    double bracket = k * cosh_scaled - cos(phi) / sin(phi) * sinh_scaled;
    double a = 0.5 * sin(phi);
    double f = pi * a * a * bracket * 2.0 * exp(-k * (pi - phi)) / -expm1(-2.0 * k * pi);
    return k * sinh_scaled / cosh_scaled * f * f;
}

/* Over 0..infinity with k = exp(pi/2 sinh u), the double exponential rule of Takahasi and Mori. */
static double integral(double phi)
{
    const double step = 1.0 / 32.0;
    double sum = 0.0;
    for (int i = -140; i <= 120; i++) {
        double u = step * i;
        double k = exp(0.5 * pi * sinh(u));
        double weight = 0.5 * pi * cosh(u) * k;
        double value = integrand(k, phi);
        if (value > 0.0 && isfinite(weight))
            sum += weight * value;
    }
    return sum * step;
}

double ow_part_full_star(double depth)
{
    const double full = pi / 128.0;
    if (!(depth > 0.0))
        return 0.0;
    if (depth >= 1.0)
        return full;
    if (depth < 1e-3) /* thin film; the integral's terms would cancel */
        return 32.0 / 105.0 * pow(depth, 3.5);
    double phi = half_angle(depth), s = sin(phi), c = cos(phi), radius = 0.5;
    double segment = phi - s * c;
    double moment = pow(radius, 4) / 4.0 * (segment + 2.0 * s * s * s * c) -
                    4.0 / 3.0 * radius * c * pow(radius * s, 3) + pow(radius, 4) * c * c * segment;
    return moment - integral(phi) / pi;
}

double ow_part_full_star_compact(double depth)
{
    double x = fmin(fmax(depth, 0.0), 1.0);
    double series =
        0.304701 +
        x * (-0.451462 + x * (0.442490 + x * (-0.698692 + x * (0.821490 + x * (-0.550867 + x * 0.156858)))));
    return pow(x, 3.5) * series;
}
