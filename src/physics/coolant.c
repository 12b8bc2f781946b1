/* SPDX-License-Identifier: MIT */
#include "oilway/coolant.h"

#include <math.h>
#include <string.h>

static const double standard_atmosphere_pa = 101325.0;
static const double kelvin = 273.15;

const char *ow_coolant_word(ow_coolant coolant)
{
    return coolant == OW_WATER ? "water" : "50 % glycol";
}

/* Lower case without blanks; false if it is longer than any spelling known. */
static bool squeeze(const char *words, char *plain, size_t size)
{
    size_t length = 0;
    for (; *words != '\0'; words++) {
        if (*words == ' ' || *words == '\t')
            continue;
        if (length + 1 >= size)
            return false;
        plain[length++] = (char)(*words >= 'A' && *words <= 'Z' ? *words - 'A' + 'a' : *words);
    }
    plain[length] = '\0';
    return true;
}

bool ow_coolant_find(const char *words, ow_coolant *coolant)
{
    static const struct spelling {
        const char *plain;
        ow_coolant coolant;
    } spellings[] = {{"water", OW_WATER},
                     {"50%glycol", OW_GLYCOL_50},
                     {"glycol50%", OW_GLYCOL_50},
                     {"50%ethyleneglycol", OW_GLYCOL_50},
                     {"glycol-50", OW_GLYCOL_50}};
    char plain[32];
    if (words == NULL || !squeeze(words, plain, sizeof plain))
        return false;
    for (size_t i = 0; i < sizeof spellings / sizeof spellings[0]; i++) {
        if (strcmp(plain, spellings[i].plain) == 0) {
            *coolant = spellings[i].coolant;
            return true;
        }
    }
    return false;
}

/* Water: fitted to IAPWS-95 at 3 bar, 0..130 C, within 0.34 kg/m3. Glycol: fitted to the table for
 * inhibited ethylene glycol, 50 % by volume, in the ASHRAE Handbook Fundamentals, within 0.08. */
double ow_coolant_density_kgm3(ow_coolant coolant, double t)
{
    if (coolant == OW_WATER)
        return 1000.282 + t * (-0.01036612 + t * (-5.136555e-3 + t * 1.044214e-5));
    return 1082.333 + t * (-0.3389746 + t * -2.431192e-3);
}

/* Water: the usual power-of-ten form (from memory), within 1 % of IAPWS 2008 from 20 to 130 C.
 * Glycol: fitted to Melinder 2010 at 52.7 % by mass, 0..100 C, within 4.4 %. */
double ow_coolant_viscosity_pas(ow_coolant coolant, double t)
{
    if (coolant == OW_WATER)
        return 2.414e-5 * pow(10.0, 247.8 / (t + 133.15));
    return 1e-3 * exp(-3.320274 + 685.6596 / (t + 125.5584));
}

/* Water: IAPWS, within 1.1 % over 0..120 C. Glycol: Melinder 2010, within 0.8 % over 0..100 C. */
double ow_coolant_heat_jkgk(ow_coolant coolant, double t)
{
    return coolant == OW_WATER ? 4200.0 : 3163.1 + 4.6853 * t;
}

ow_liquid ow_coolant_liquid(ow_coolant coolant, double t)
{
    return (ow_liquid){ow_coolant_density_kgm3(coolant, t), ow_coolant_viscosity_pas(coolant, t)};
}

double ow_coolant_fit_high_c(ow_coolant coolant)
{
    return coolant == OW_WATER ? 130.0 : 100.0; /* glycol: the viscosity's range is the shorter */
}

/* Saturation temperature of water, IAPWS Industrial Formulation 1997, region 4, backward equation. */
static double water_boiling_k(double pressure_pa)
{
    static const double n[] = {0.0, /* counted from 1, as printed */
                               0.11670521452767e4,
                               -0.72421316703206e6,
                               -0.17073846940092e2,
                               0.12020824702470e5,
                               -0.32325550322333e7,
                               0.14915108613530e2,
                               -0.48232657361591e4,
                               0.40511340542057e6,
                               -0.23855557567849e0,
                               0.65017534844798e3};
    double beta = pow(pressure_pa / 1e6, 0.25);
    double e = beta * beta + n[3] * beta + n[6];
    double f = n[1] * beta * beta + n[4] * beta + n[7];
    double g = n[2] * beta * beta + n[5] * beta + n[8];
    double d = 2.0 * g / (-f - sqrt(f * f - 4.0 * e * g));
    double sum = n[10] + d;
    return 0.5 * (sum - sqrt(sum * sum - 4.0 * (n[9] + n[10] * d)));
}

ow_status ow_coolant_boiling_c(ow_coolant coolant, double cap_pa, double *temperature_c)
{
    if (!(cap_pa >= 0.0 && cap_pa <= OW_COOLANT_CAP_HIGH_PA))
        return OW_RANGE;
    double water_share = coolant == OW_WATER ? 1.0 : 0.7556; /* mole fraction; glycol adds no vapour */
    *temperature_c = water_boiling_k((standard_atmosphere_pa + cap_pa) / water_share) - kelvin;
    return OW_OK;
}
