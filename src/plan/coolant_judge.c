/* SPDX-License-Identifier: MIT */
/* What is to be said of a coolant loop: boiling, standing still, clocking, the outlet's lean, the return, the
 * heater. */
#include <math.h>

#include "plan/planning.h"

#define DEGREES_PER_RADIAN 57.295779513082320876798154814105
#define LEAN_WARN_DEG 20.0   /* from memory */
#define LEAN_REFUSE_DEG 35.0 /* from memory */

static ow_status judge_siphon(const ow_plan_coolant *loop, ow_severity severity, ow_findings *findings)
{
    const ow_siphon *siphon = &loop->siphon;
    const char *where = loop->turbo->id;
    /* Why it stands is part of the same finding: a return that falls is not told again. */
    if (siphon->stands_still && loop->loop.rise_m < 0.0)
        return ow_findings_add(findings, "coolant-stands-still", severity, where, NULL,
                               "after shutdown the water of %s stands still and boils: the hot return ends "
                               "%.0f mm below the high port",
                               where, -loop->loop.rise_m * 1e3);
    if (siphon->stands_still)
        return ow_findings_add(findings, "coolant-stands-still", severity, where, NULL,
                               "after shutdown the water of %s stands still and boils", where);
    if (siphon->boils)
        return ow_findings_add(
            findings, "coolant-boils", severity, where, NULL,
            "after shutdown it reaches %.0f C and boils at %.0f C: %.2f L/min carry %.0f W", siphon->hot_c,
            siphon->boiling_c, siphon->flow_m3s * 60000.0, loop->loop.heat_w);
    if (siphon->near_boiling)
        return ow_findings_add(findings, "coolant-margin", OW_WARNING, where, NULL,
                               "after shutdown it reaches %.0f C, less than 5 K below boiling at %.0f C",
                               siphon->hot_c, siphon->boiling_c);
    return OW_OK;
}

static ow_status judge_angle(const ow_plan_coolant *loop, ow_findings *findings)
{
    double angle_deg = loop->loop.angle_rad * DEGREES_PER_RADIAN;
    const char *where = loop->turbo->id;
    if (angle_deg < 0.0)
        return ow_findings_add(findings, "coolant-cold-port-high", OW_ERROR, where, NULL,
                               "the port that takes the cold water stands %.0f degrees high", -angle_deg);
    if (angle_deg < 5.0)
        return ow_findings_add(findings, "coolant-flat", OW_WARNING, where, NULL,
                               "the ports are clocked %.0f degrees off level; about 15 is common practice",
                               angle_deg);
    if (angle_deg > LEAN_WARN_DEG)
        return ow_findings_add(
            findings, "coolant-clocking", angle_deg > LEAN_REFUSE_DEG ? OW_ERROR : OW_WARNING, where, NULL,
            "clocked %.0f degrees, the oil outlet leans as much; over 20 is doubtful, over 35 too much",
            angle_deg);
    return OW_OK;
}

static ow_status judge_rise(const ow_plan_coolant *loop, ow_findings *findings)
{
    double rise_m = loop->loop.rise_m;
    const char *where = loop->turbo->id;
    if (rise_m < 0.0)
        return ow_findings_add(findings, "coolant-falls", OW_WARNING, where, NULL,
                               "the hot return ends %.0f mm below the high port: vapour collects and natural "
                               "circulation works against it",
                               -rise_m * 1e3);
    if (rise_m == 0.0)
        return ow_findings_add(findings, "coolant-no-rise", OW_NOTE, where, NULL,
                               "the hot return does not rise: 0.2 m of rise help ten times as much as the "
                               "clocking");
    return OW_OK;
}

ow_status ow_plan_coolant_judge(ow_planning *planning, const ow_plan_coolant *loop)
{
    ow_findings *findings = &planning->plan->findings;
    const ow_job_coolant *job = &planning->job->coolant;
    /* Only figures that the job gives may refuse it; an assumed heat or cap warns. */
    bool given = job->heat_w.said && job->cap_pa.said && job->rise_m.said;
    ow_status status = judge_siphon(loop, given ? OW_ERROR : OW_WARNING, findings);
    if (status == OW_OK)
        status = judge_angle(loop, findings);
    if (status == OW_OK && !loop->siphon.stands_still)
        status = judge_rise(loop, findings);
    if (status == OW_OK && loop->heater != NULL)
        status = ow_findings_add(findings, "heater-valve", OW_WARNING, loop->heater->id, NULL,
                                 "the loop runs through the heater: a heater valve that is shut stops it");
    return status;
}
