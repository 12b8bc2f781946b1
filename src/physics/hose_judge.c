/* SPDX-License-Identifier: MIT */
/* What is to be said of a hose's material in its service. */
#include "oilway/hose_judge.h"

static ow_status judge_fluid(const ow_hose_material *material, const ow_hose_service *service,
                             unsigned faults, const char *where, ow_findings *findings)
{
    const char *fluid = service->oil ? "oil" : "coolant";
    if (faults & OW_HOSE_FLUID)
        return ow_findings_add(findings, "hose-fluid", OW_ERROR, where, NULL, "%s does not stand %s (%s)",
                               material->title, fluid, material->source);
    if (faults & OW_HOSE_FLUID_LIMITED)
        return ow_findings_add(findings, "hose-fluid", OW_WARNING, where, NULL,
                               "%s stands %s fairly or for a while only (%s)", material->title, fluid,
                               material->source);
    return OW_OK;
}

static ow_status judge_heat(const ow_hose_material *material, const ow_hose_service *service, unsigned faults,
                            ow_severity worst, const char *where, ow_findings *findings)
{
    if (faults & OW_HOSE_HEAT)
        return ow_findings_add(findings, "hose-heat", worst, where, NULL,
                               "%s stands %.0f to %.0f C; it sees %.0f C (%s)", material->title,
                               material->low_c, material->short_high_c, service->temperature_c,
                               material->source);
    if (faults & OW_HOSE_HEAT_SHORT)
        return ow_findings_add(findings, "hose-heat", OW_WARNING, where, NULL,
                               "%s stands %.0f C for minutes only, %.0f C for ever (%s)", material->title,
                               service->temperature_c, material->high_c, material->source);
    return OW_OK;
}

static ow_status judge_pressure(const ow_hose_material *material, const ow_hose_service *service,
                                unsigned faults, ow_severity worst, const char *where, ow_findings *findings)
{
    if (!(faults & OW_HOSE_PRESSURE))
        return OW_OK;
    if (material->pressure_pa > 0.0)
        return ow_findings_add(findings, "hose-pressure", worst, where, NULL,
                               "%s is made for %.3g bar; it sees %.3g bar (%s)", material->title,
                               material->pressure_pa / 1e5, service->pressure_pa / 1e5, material->source);
    return ow_findings_add(findings, "hose-pressure", worst, where, NULL,
                           "%s carries oil without pressure only (%s)", material->title, material->source);
}

ow_status ow_hose_judge(const ow_hose_material *material, const ow_hose_service *service, unsigned told,
                        ow_severity worst, const char *where, ow_findings *findings)
{
    unsigned faults = ow_hose_faults(material, service) & ~told;
    ow_status status = judge_fluid(material, service, faults, where, findings);
    if (status == OW_OK)
        status = judge_heat(material, service, faults, worst, where, findings);
    return status == OW_OK ? judge_pressure(material, service, faults, worst, where, findings) : status;
}
