/* SPDX-License-Identifier: MIT */
#include "report/look.h"
#include "report/physics_parts.h"

static const double pas_per_mpas = 1e-3;

void ow_report_oil_text(ow_text *text, const ow_oil_request *request, const ow_oil_answer *answer,
                        const ow_style *style)
{
    const ow_oil *oil = &request->oil;
    if (oil->name[0] != '\0')
        ow_physics_title(text, OW_PAINT_STRONG, style, "%s at %.4g C", oil->name, request->temperature_c);
    else
        ow_physics_title(text, OW_PAINT_STRONG, style,
                         "oil of %.4g mm2/s at 40 C and %.4g at 100 C, at %.4g C", oil->kv40_mm2s,
                         oil->kv100_mm2s, request->temperature_c);
    ow_physics_row(text, "kinematic viscosity", "%.4g mm2/s", answer->viscosity_mm2s);
    ow_physics_row(text, "dynamic viscosity", "%.4g mPa.s",
                   answer->liquid.dynamic_viscosity_pas / pas_per_mpas);
    ow_physics_row(text, "density", "%.1f kg/m3", answer->liquid.density_kgm3);
    ow_physics_end(text, &request->assumptions, &answer->findings, style);
}

ow_status ow_report_oil_json(ow_text *text, const ow_oil_request *request, const ow_oil_answer *answer)
{
    ow_json json = ow_json_new(false);
    cJSON *root = json.root;
    ow_json_words(&json, root, "oil", request->oil.name);
    ow_json_figure(&json, root, "temperature_c", request->temperature_c);
    ow_json_figure(&json, root, "viscosity_mm2s", answer->viscosity_mm2s);
    ow_json_figure(&json, root, "density_kgm3", answer->liquid.density_kgm3);
    ow_json_figure(&json, root, "dynamic_viscosity_mpas",
                   answer->liquid.dynamic_viscosity_pas / pas_per_mpas);
    ow_json_remarks(&json, root, "remarks", &answer->findings);
    ow_json_assumptions(&json, root, "assumptions", &request->assumptions);
    return ow_json_done(&json, text);
}
