/* SPDX-License-Identifier: MIT */
/* What is to be said of a coolant loop: boiling, standing still, clocking, the outlet's lean, the return, the
 * heater. */
#include <math.h>
#include <string.h>

#include "oilway/hose_judge.h"
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
                               "after shutdown the water between %s and %s stands still and boils: the hot "
                               "return ends %.0f mm below the high port",
                               loop->low->name, loop->high->name, -loop->loop.rise_m * 1e3);
    if (siphon->stands_still)
        return ow_findings_add(findings, "coolant-stands-still", severity, where, NULL,
                               "after shutdown the water between %s and %s stands still and boils",
                               loop->low->name, loop->high->name);
    if (siphon->boils)
        return ow_findings_add(
            findings, "coolant-boils", severity, where, NULL,
            "after shutdown %.0f W bring it to %.0f C, and it boils at %.0f C; up to %.0f W it does not",
            loop->loop.heat_w, siphon->hot_c, siphon->boiling_c, loop->most_heat_w);
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

/* Where the hot return ends, by its port's position; else by the rise that is reckoned with. */
static ow_status judge_return(const ow_plan_coolant *loop, ow_findings *findings)
{
    const ow_port *to = loop->legs[loop->leg_count - 1].layout->givens[1].port;
    double end_m = loop->loop.rise_m;
    if (to != NULL && to->has_position && loop->high->has_position)
        end_m = to->position_m[2] - loop->high->position_m[2];
    if (end_m >= 0.0 && loop->loop.rise_m == 0.0)
        return ow_findings_add(findings, "coolant-no-rise", OW_NOTE, loop->turbo->id, NULL,
                               "the hot return does not rise: 0.2 m of rise help ten times as much as the "
                               "clocking");
    if (end_m >= 0.0 || loop->siphon.stands_still)
        return OW_OK;
    return ow_findings_add(findings, "coolant-falls", OW_WARNING, loop->turbo->id, NULL,
                           "the hot return ends %.0f mm below the high port: vapour collects and natural "
                           "circulation works against it",
                           -end_m * 1e3);
}

/* Of what a hose is made, against the hottest that it sees; its check has judged the rest. A class that does
 * not stand coolant is told and not used. */
static ow_status judge_hoses(const ow_plan_coolant *loop, const char *asked_class, ow_severity worst,
                             ow_findings *findings)
{
    const ow_hose_service service = {false, true, loop->loop.cap_pa,
                                     fmax(loop->siphon.hot_c, loop->loop.cold_c)};
    const unsigned checked = OW_HOSE_FLUID | OW_HOSE_FLUID_LIMITED | OW_HOSE_PRESSURE;
    const ow_hose_material *asked = asked_class != NULL ? ow_hose_material_find(asked_class) : NULL;
    const ow_hose_material *told = NULL;
    if (asked != NULL && asked->coolant == OW_STANDS_NOT)
        return ow_hose_judge(asked, &service, OW_HOSE_PRESSURE, OW_ERROR, loop->turbo->id, findings);
    if (loop->siphon.boils) /* told, and the cause of it */
        return OW_OK;
    for (size_t leg = 0; leg < loop->leg_count; leg++) {
        const ow_layout *layout = loop->legs[leg].layout;
        for (size_t node = 1; node < layout->node_count; node++) {
            const ow_part *part = layout->nodes[node].part;
            const ow_hose_material *material = part != NULL ? ow_part_hose_material(part) : NULL;
            if (material == NULL || material == told)
                continue;
            told = material;
            ow_status status = ow_hose_judge(material, &service, checked, worst, part->id, findings);
            if (status != OW_OK)
                return status;
        }
    }
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
    if (status == OW_OK)
        status = judge_hoses(loop, job->hose, given ? OW_ERROR : OW_WARNING, findings);
    if (status == OW_OK)
        status = judge_return(loop, findings);
    if (status == OW_OK && loop->teed)
        status = ow_findings_add(
            findings, "heater-valve", OW_NOTE, loop->turbo->id,
            "Tee in on the engine's side of the heater's valve.",
            "the loop hangs on the heater's hoses: behind the heater's valve, a shut valve stops it");
    if (status == OW_OK && loop->heater != NULL)
        status = ow_findings_add(findings, "heater-valve", OW_WARNING, loop->heater->id, NULL,
                                 "the loop runs through the heater: a heater valve that is shut stops it");
    return status;
}
