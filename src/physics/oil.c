/* SPDX-License-Identifier: MIT */
#include "oilway/oil.h"

#include <math.h>

static const double kelvin = 273.15;

static bool within(double value, double low, double high)
{
    return value >= low && value <= high; /* false for NaN */
}

/* log10 log10 (nu + 0.7), nu in mm2/s: ASTM D341 for 2 mm2/s and up. */
static double walther(double viscosity_mm2s)
{
    return log10(log10(viscosity_mm2s + 0.7));
}

ow_status ow_oil_set(const char *name, double kv40_mm2s, double kv100_mm2s, double density15_kgm3,
                     ow_oil *oil)
{
    if (!within(kv100_mm2s, OW_OIL_KV100_LOW_MM2S, OW_OIL_KV100_HIGH_MM2S) ||
        !within(kv40_mm2s, OW_OIL_KV100_LOW_MM2S, OW_OIL_KV40_HIGH_MM2S) || kv40_mm2s <= kv100_mm2s ||
        !within(density15_kgm3, OW_OIL_DENSITY15_LOW_KGM3, OW_OIL_DENSITY15_HIGH_KGM3))
        return OW_RANGE;
    double b = (walther(kv40_mm2s) - walther(kv100_mm2s)) / log10((100.0 + kelvin) / (40.0 + kelvin));
    double a = walther(kv40_mm2s) + b * log10(40.0 + kelvin);
    *oil = (ow_oil){name ? name : "", kv40_mm2s, kv100_mm2s, density15_kgm3, a, b};
    return OW_OK;
}

ow_status ow_oil_viscosity_mm2s(const ow_oil *oil, double temperature_c, double *viscosity_mm2s)
{
    if (!within(temperature_c, OW_OIL_TEMPERATURE_LOW_C, OW_OIL_TEMPERATURE_HIGH_C))
        return OW_RANGE;
    double w = oil->walther_a - oil->walther_b * log10(temperature_c + kelvin);
    double viscosity = pow(10.0, pow(10.0, w)) - 0.7;
    if (!within(viscosity, 0.0, OW_OIL_VISCOSITY_HIGH_MM2S))
        return OW_RANGE;
    *viscosity_mm2s = viscosity;
    return OW_OK;
}

double ow_oil_density_kgm3(const ow_oil *oil, double temperature_c)
{
    return oil->density15_kgm3 - 0.65 * (temperature_c - 15.0);
}

ow_status ow_oil_liquid(const ow_oil *oil, double temperature_c, ow_liquid *liquid)
{
    double viscosity_mm2s = 0.0;
    ow_status status = ow_oil_viscosity_mm2s(oil, temperature_c, &viscosity_mm2s);
    if (status != OW_OK)
        return status;
    liquid->density_kgm3 = ow_oil_density_kgm3(oil, temperature_c);
    liquid->dynamic_viscosity_pas = liquid->density_kgm3 * viscosity_mm2s * 1e-6;
    return OW_OK;
}
