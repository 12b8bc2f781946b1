/* SPDX-License-Identifier: MIT */
/* The limits that a plan holds to though the job does not give them, listed among its assumptions. */
#include <stddef.h>

#include "plan/planning.h"

typedef enum limit_for { FOR_ANY, FOR_JOURNAL, FOR_BALL, FOR_COOLANT } limit_for;

#define NO_KEY ((size_t)-1)

static const struct {
    limit_for unit;
    size_t key; /* of the ow_said in the job that replaces it */
    const char *what;
    const char *value;
    ow_mark mark;
    const char *source;
} limits[] = {
    {FOR_JOURNAL, offsetof(ow_job, turbo_pressure_pa), "limit: pressure at a journal bearing, hot", "4.5 bar",
     OW_MARK_PRACTICE, "about 65 psi for a plain journal bearing"},
    {FOR_BALL, NO_KEY, "limit: pressure at a ball bearing behind its restrictor, hot at full revs",
     "2.8 to 3.1 bar", OW_MARK_PRACTICE, "40 to 45 psi"},
    {FOR_ANY, NO_KEY, "limit: pressure at the turbo, hot idle", "0.7 bar", OW_MARK_PRACTICE,
     "at least about 10 psi"},
    {FOR_ANY, NO_KEY, "limit: what the feed's hose may cost, hot at full revs",
     "10 % of the pressure that a -6 hose gives", OW_MARK_ASSUMED, "assumption of this program"},
    {FOR_ANY, offsetof(ow_job, fill), "limit: how full the drain may run", "50 % of its bore",
     OW_MARK_PRACTICE, "half full leaves the air its way"},
    {FOR_ANY, offsetof(ow_job, slope_rad), "limit: least slope of the drain", "15 degrees", OW_MARK_PRACTICE,
     "as near plumb as there is room for"},
    {FOR_ANY, NO_KEY, "limit: least true bore of the drain", "15 mm", OW_MARK_PRACTICE,
     "15 to 16 mm inside, and never less than the outlet"},
    {FOR_ANY, NO_KEY, "limit: oil standing over the turbo's outlet", "15 mm", OW_MARK_ASSUMED,
     "half of the usual 25 to 35 mm between outlet and seal"},
    {FOR_ANY, offsetof(ow_job, drain.crankcase_pa), "pressure in the crankcase", "0.5 kPa", OW_MARK_PRACTICE,
     "a healthy engine, from memory"},
    {FOR_ANY, NO_KEY, "head kept over what the crankcase's pressure needs", "50 mm", OW_MARK_ASSUMED,
     "assumption of this program"},
    {FOR_COOLANT, NO_KEY, "limit: kept below boiling after shutdown", "5 K", OW_MARK_ASSUMED,
     "assumption of this program"},
};

static bool concerns(const ow_planning *planning, limit_for unit)
{
    const ow_job *job = planning->job;
    if (unit == FOR_ANY || unit == FOR_COOLANT)
        return unit == FOR_ANY || job->has_coolant;
    for (size_t index = 0; index < job->turbo_count; index++) {
        bool ball = job->turbos[index]->bearing == OW_BEARING_BALL;
        if (ball == (unit == FOR_BALL) && (!ball || job->turbos[index]->restrictor != OW_BUILT_IN_YES))
            return true;
    }
    return false;
}

ow_status ow_plan_limits(ow_planning *planning)
{
    for (size_t index = 0; index < sizeof limits / sizeof limits[0]; index++) {
        const char *job = (const char *)planning->job;
        bool given =
            limits[index].key != NO_KEY && ((const ow_said *)(const void *)(job + limits[index].key))->said;
        if (!given && concerns(planning, limits[index].unit))
            ow_planning_assume(planning, limits[index].mark, limits[index].what, limits[index].source, "%s",
                               limits[index].value);
    }
    return planning->plan->assumptions.failed ? OW_MEMORY : OW_OK;
}
