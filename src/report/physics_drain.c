/* SPDX-License-Identifier: MIT */
#include "report/look.h"
#include "report/physics_parts.h"

static const double lpm = 1.0 / 60000.0;
static const double degree = 0.017453292519943295;

static void write_least(ow_text *text, const ow_drain_answer *answer)
{
    if (answer->least_bore_known)
        ow_physics_row(text, "least bore at this slope", "%.1f mm", answer->least_bore_m * 1e3);
    if (answer->least_slope_known)
        ow_physics_row(text, "least slope for this bore", "%.1f deg", answer->least_slope_rad / degree);
    else
        ow_physics_row(text, "least slope for this bore", "none: even plumb is too little");
}

void ow_report_drain_text(ow_text *text, const ow_drain_request *request, const ow_drain_answer *answer,
                          const ow_style *style)
{
    const ow_drain_flow *flow = &answer->flow;
    const char *verdict = !answer->ok                                       ? "it does not do"
                          : ow_findings_have(&answer->findings, OW_WARNING) ? "see the warnings"
                                                                            : "it runs";
    ow_physics_title(text, answer->ok ? OW_PAINT_GOOD : OW_PAINT_BAD, style,
                     "drain of %.4g mm at %.3g deg, %.3g L/min of oil at %.4g C: %s", request->bore_m * 1e3,
                     request->slope_rad / degree, request->flow_m3s / lpm, request->oil.temperature_c,
                     verdict);
    ow_physics_row(text, "froth", "%.3g L/min (%.3g times the oil)",
                   request->flow_m3s * request->aeration / lpm, request->aeration);
    if (flow->flooded)
        ow_physics_row(text, "fill", "flooded");
    else
        ow_physics_row(text, "fill",
                       "%.0f %% of the bore, %.1f mm deep (%.0f to %.0f %% within what is unsure)",
                       flow->fill * 100.0, flow->depth_m * 1e3, answer->band.fill_low * 100.0,
                       answer->band.fill_high * 100.0);
    ow_physics_row(text, "flow", "%.3g m/s, Re %.4g, %s", flow->velocity_ms, flow->reynolds,
                   flow->turbulent ? "turbulent" : "laminar");
    ow_physics_row(text, "capacity half full", "%.4g L/min of froth", flow->half_full_m3s / lpm);
    write_least(text, answer);
    ow_physics_row(text, "pool over the outlet", "%.1f mm as a weir, %.1f mm as an orifice; 15 mm at most",
                   answer->pool_weir_m * 1e3, answer->pool_orifice_m * 1e3);
    ow_physics_row(text, "least bore for the pool", "%.1f mm", answer->least_pool_bore_m * 1e3);
    ow_physics_end(text, &request->oil.assumptions, &answer->findings, style);
    ow_report_cautions(text, OW_DRAIN, "  ");
}

ow_status ow_report_drain_json(ow_text *text, const ow_drain_request *request, const ow_drain_answer *answer)
{
    const ow_drain_flow *flow = &answer->flow;
    ow_json json = ow_json_new(false);
    cJSON *root = json.root;
    ow_json_bool(&json, root, "ok", answer->ok);
    ow_json_figure(&json, root, "q_star", flow->star);
    ow_json_figure(&json, root, "fill_fraction", flow->fill);
    ow_json_figure(&json, root, "depth_mm", flow->depth_m * 1e3);
    ow_json_figure(&json, root, "area_mm2", flow->area_m2 * 1e6);
    ow_json_figure(&json, root, "velocity_ms", flow->velocity_ms);
    ow_json_figure(&json, root, "reynolds", flow->reynolds);
    ow_json_bool(&json, root, "turbulent", flow->turbulent);
    ow_json_bool(&json, root, "flooded", flow->flooded);
    ow_json_figure(&json, root, "half_full_capacity_lpm", flow->half_full_m3s / lpm);
    ow_json_known_figure(&json, root, "least_bore_mm", answer->least_bore_known, answer->least_bore_m * 1e3);
    ow_json_known_figure(&json, root, "least_slope_deg", answer->least_slope_known,
                         answer->least_slope_rad / degree);
    ow_json_figure(&json, root, "pool_weir_mm", answer->pool_weir_m * 1e3);
    ow_json_figure(&json, root, "pool_orifice_mm", answer->pool_orifice_m * 1e3);
    ow_json_figure(&json, root, "least_bore_for_pool_mm", answer->least_pool_bore_m * 1e3);
    ow_json_figure(&json, root, "fill_fraction_low", answer->band.fill_low);
    ow_json_figure(&json, root, "fill_fraction_high", answer->band.fill_high);
    ow_json_figure(&json, root, "aeration", request->aeration);
    ow_json_figure(&json, root, "viscosity_mm2s", answer->viscosity_mm2s);
    ow_json_findings(&json, root, "findings", &answer->findings);
    ow_json_assumptions(&json, root, "assumptions", &request->oil.assumptions);
    return ow_json_done(&json, text);
}
