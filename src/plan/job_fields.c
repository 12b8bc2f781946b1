/* SPDX-License-Identifier: MIT */
#include "plan/job_fields.h"

#include <stddef.h>

#define QUARTER_TURN_RAD 1.5707963267948966

const ow_job_field ow_job_fields[] = {
    {"feed", "hose", OW_LENGTH, 0.05, 20.0, offsetof(ow_job, feed.hose_m)},
    {"feed", "rise", OW_LENGTH, -5.0, 5.0, offsetof(ow_job, feed.rise_m)},
    {"feed", "bore", OW_LENGTH, 0.0005, 0.05, offsetof(ow_job, feed.bore_m)},
    {"drain", "oil-level", OW_LENGTH, -5.0, 5.0, offsetof(ow_job, drain.oil_level_m)},
    {"drain", "crankcase", OW_PRESSURE, -50e3, 50e3, offsetof(ow_job, drain.crankcase_pa)},
    {"drain", "flow", OW_FLOW, 1e-9, 1e-2, offsetof(ow_job, drain.flow_m3s)},
    {"drain", "aeration", OW_RATIO, 1.0, OW_DRAIN_AERATION_HIGH, offsetof(ow_job, drain.aeration)},
    {"coolant", "angle", OW_ANGLE, -QUARTER_TURN_RAD, QUARTER_TURN_RAD, offsetof(ow_job, coolant.angle_rad)},
    {"coolant", "cap", OW_PRESSURE, 0.0, OW_COOLANT_CAP_HIGH_PA, offsetof(ow_job, coolant.cap_pa)},
    {"coolant", "rise", OW_LENGTH, -2.0, 2.0, offsetof(ow_job, coolant.rise_m)},
    {"coolant", "heater-hose", OW_LENGTH, 0.005, 0.05, offsetof(ow_job, coolant.heater_hose_m)},
    {"coolant", "heat", OW_POWER, OW_COOLANT_HEAT_LOW_W, OW_COOLANT_HEAT_HIGH_W,
     offsetof(ow_job, coolant.heat_w)},
    {"limits", "turbo-pressure", OW_PRESSURE, 1e4, 100e5, offsetof(ow_job, turbo_pressure_pa)},
    {"limits", "fill", OW_RATIO, 0.05, 0.86, offsetof(ow_job, fill)},
    {"limits", "slope", OW_ANGLE, 0.0, QUARTER_TURN_RAD, offsetof(ow_job, slope_rad)},
};
const size_t ow_job_field_count = sizeof ow_job_fields / sizeof ow_job_fields[0];

const char *const ow_job_keys[] = {"job",  "engine", "turbo",   "keep",   "oil",    "states",
                                   "feed", "drain",  "coolant", "limits", "prefer", NULL};
const char *const ow_job_feed_keys[] = {"from", "to", NULL};
const char *const ow_job_drain_keys[] = {"to", "route", "hose", NULL};
const char *const ow_job_coolant_keys[] = {"from", "to", "heater", "coolant", "hoses", "hose", NULL};
