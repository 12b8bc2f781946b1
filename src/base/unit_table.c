/* SPDX-License-Identifier: MIT */
#include "base/unit_table.h"

/*
 * Factors: NIST Special Publication 811 (2008), appendix B.8: inch 0.0254 m, pound-force per square inch
 * 6894.757 Pa, degree Fahrenheit 5/9 K, centipoise 1e-3 Pa s, centistokes 1e-6 m2/s, all exact by definition
 * but the psi, which is 0.45359237 kg * 9.80665 m/s2 / (0.0254 m)^2 = 6894.757293168361... Pa.
 */
#define PSI 6894.757293168361
#define PI 3.14159265358979323846
#define DEGREE "\xC2\xB0" /* the sign, in UTF-8 */
#define PLAIN 1, 0
#define DECIMAL 1.0, 1.0, 0.0

const ow_unit ow_units[] = {
    /* dimension, name, any case, factor, shift, times, over, offset */
    {OW_LENGTH, "mm", true, 1, -3, DECIMAL},
    {OW_LENGTH, "cm", true, 1, -2, DECIMAL},
    {OW_LENGTH, "m", false, PLAIN, DECIMAL},
    {OW_LENGTH, "um", false, 1, -6, DECIMAL},
    {OW_LENGTH, "\xC2\xB5m", false, 1, -6, DECIMAL}, /* micro sign */
    {OW_LENGTH, "\xCE\xBCm", false, 1, -6, DECIMAL}, /* Greek mu */
    {OW_LENGTH, "in", true, 254, -4, DECIMAL},
    {OW_LENGTH, "inch", true, 254, -4, DECIMAL},
    {OW_LENGTH, "\"", false, 254, -4, DECIMAL},
    {OW_PRESSURE, "bar", true, 1, 5, DECIMAL},
    {OW_PRESSURE, "mbar", false, 1, 2, DECIMAL},
    {OW_PRESSURE, "psi", true, PLAIN, PSI, 1.0, 0.0},
    {OW_PRESSURE, "kPa", false, 1, 3, DECIMAL},
    {OW_PRESSURE, "MPa", false, 1, 6, DECIMAL},
    {OW_PRESSURE, "Pa", false, PLAIN, DECIMAL},
    {OW_TEMPERATURE, "C", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE, DEGREE "C", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE, "deg C", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE, "degC", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE, "F", true, PLAIN, 5.0, 9.0, -32.0},
    {OW_TEMPERATURE, DEGREE "F", true, PLAIN, 5.0, 9.0, -32.0},
    {OW_TEMPERATURE, "deg F", true, PLAIN, 5.0, 9.0, -32.0},
    {OW_TEMPERATURE, "degF", true, PLAIN, 5.0, 9.0, -32.0},
    {OW_TEMPERATURE, "K", false, PLAIN, 1.0, 1.0, -273.15},
    {OW_TEMPERATURE_STEP, "K", false, PLAIN, DECIMAL},
    {OW_TEMPERATURE_STEP, "C", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE_STEP, DEGREE "C", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE_STEP, "deg C", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE_STEP, "degC", true, PLAIN, DECIMAL},
    {OW_TEMPERATURE_STEP, "F", true, PLAIN, 5.0, 9.0, 0.0},
    {OW_TEMPERATURE_STEP, DEGREE "F", true, PLAIN, 5.0, 9.0, 0.0},
    {OW_TEMPERATURE_STEP, "deg F", true, PLAIN, 5.0, 9.0, 0.0},
    {OW_TEMPERATURE_STEP, "degF", true, PLAIN, 5.0, 9.0, 0.0},
    {OW_FLOW, "L/min", true, PLAIN, 1.0, 60000.0, 0.0},
    {OW_FLOW, "lpm", true, PLAIN, 1.0, 60000.0, 0.0},
    {OW_FLOW, "m3/s", false, PLAIN, DECIMAL},
    {OW_FLOW, "m\xC2\xB3/s", false, PLAIN, DECIMAL},
    {OW_ANGLE, "deg", true, PLAIN, PI, 180.0, 0.0},
    {OW_ANGLE, DEGREE, false, PLAIN, PI, 180.0, 0.0},
    {OW_ANGLE, "rad", true, PLAIN, DECIMAL},
    {OW_POWER, "W", true, PLAIN, DECIMAL},
    {OW_POWER, "kW", true, 1, 3, DECIMAL},
    {OW_MASS, "g", false, 1, -3, DECIMAL},
    {OW_MASS, "kg", true, PLAIN, DECIMAL},
    {OW_DYNAMIC_VISCOSITY, "mPa.s", false, 1, -3, DECIMAL},
    {OW_DYNAMIC_VISCOSITY, "mPa s", false, 1, -3, DECIMAL},
    {OW_DYNAMIC_VISCOSITY, "mPa\xC2\xB7s", false, 1, -3, DECIMAL},
    {OW_DYNAMIC_VISCOSITY, "Pa.s", false, PLAIN, DECIMAL},
    {OW_DYNAMIC_VISCOSITY, "Pa s", false, PLAIN, DECIMAL},
    {OW_DYNAMIC_VISCOSITY, "Pa\xC2\xB7s", false, PLAIN, DECIMAL},
    {OW_DYNAMIC_VISCOSITY, "cP", true, 1, -3, DECIMAL},
    {OW_KINEMATIC_VISCOSITY, "mm2/s", true, 1, -6, DECIMAL},
    {OW_KINEMATIC_VISCOSITY, "mm\xC2\xB2/s", true, 1, -6, DECIMAL},
    {OW_KINEMATIC_VISCOSITY, "m2/s", false, PLAIN, DECIMAL},
    {OW_KINEMATIC_VISCOSITY, "m\xC2\xB2/s", false, PLAIN, DECIMAL},
    {OW_KINEMATIC_VISCOSITY, "cSt", true, 1, -6, DECIMAL},
    {OW_DENSITY, "kg/m3", true, PLAIN, DECIMAL},
    {OW_DENSITY, "kg/m\xC2\xB3", true, PLAIN, DECIMAL},
    {OW_TIME, "s", false, PLAIN, DECIMAL},
    {OW_TIME, "min", true, 60, 0, DECIMAL},
    {OW_RATIO, "%", false, 1, -2, DECIMAL},
    {OW_RATIO, "", false, PLAIN, DECIMAL},
};
const size_t ow_unit_count = sizeof ow_units / sizeof ow_units[0];

const ow_dimension_row ow_dimension_rows[OW_DIMENSION_COUNT] = {
    [OW_LENGTH] = {"a length with its unit, such as 4.4 mm", " mm", 1e3, 1.0, 0.0},
    [OW_PRESSURE] = {"a pressure with its unit, such as 4.5 bar", " bar", 1.0, 1e5, 0.0},
    [OW_TEMPERATURE] = {"a temperature with its unit, such as 100 C", " C", 1.0, 1.0, 0.0},
    [OW_TEMPERATURE_STEP] = {"a difference of temperature with its unit, such as 10 K", " K", 1.0, 1.0, 0.0},
    [OW_FLOW] = {"a flow with its unit, such as 2 L/min", " L/min", 6e4, 1.0, 0.0},
    [OW_ANGLE] = {"an angle with its unit, such as 15 deg", " deg", 180.0, PI, 0.0},
    [OW_POWER] = {"a power with its unit, such as 300 W", " W", 1.0, 1.0, 0.0},
    [OW_MASS] = {"a mass with its unit, such as 35 g", " g", 1e3, 1.0, 0.0},
    [OW_DYNAMIC_VISCOSITY] = {"a dynamic viscosity with its unit, such as 8 mPa.s", " mPa.s", 1e3, 1.0, 0.0},
    [OW_KINEMATIC_VISCOSITY] = {"a kinematic viscosity with its unit, such as 14.7 mm2/s", " mm2/s", 1e6, 1.0,
                                0.0},
    [OW_DENSITY] = {"a density with its unit, such as 878 kg/m3", " kg/m3", 1.0, 1.0, 0.0},
    [OW_TIME] = {"a time with its unit, such as 5 s", " s", 1.0, 1.0, 0.0},
    [OW_RATIO] = {"a bare number or a percentage, such as 50 %", " %", 1e2, 1.0, 0.0},
};
