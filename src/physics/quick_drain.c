/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "oilway/quick.h"
#include "physics/option.h"

static const double degree = 0.017453292519943295;
static const double lpm = 1.0 / 60000.0;

static const ow_option_field bore = {"--bore",
                                     OW_LENGTH,
                                     false,
                                     1.0,
                                     OW_BORE_LOW_M,
                                     OW_BORE_HIGH_M,
                                     "0.1 mm to 200 mm, the true inside diameter"};
static const ow_option_field slope = {
    "--slope", OW_ANGLE, false, 1.0, 0.0001, 1.5707963267948966 + 1e-9, "0.01 deg to 90 deg, downhill"};
static const ow_option_field flow = {
    "--flow", OW_FLOW, false, 1.0, 1e-6 / 60000.0, 0.01, "0.000001 L/min to 600 L/min"};
static const ow_option_field aeration = {"--aeration",           OW_RATIO, true, 1.0, 1.0,
                                         OW_DRAIN_AERATION_HIGH, "1 to 10"};

static ow_status worse(ow_status a, ow_status b)
{
    return a == OW_MEMORY || b == OW_OK ? a : b;
}

ow_status ow_drain_request_read(const ow_context *context, const ow_drain_words *words,
                                ow_drain_request *request)
{
    ow_drain_request made = {.aeration = OW_DRAIN_AERATION, .aeration_assumed = words->aeration == NULL};
    made.oil.assumptions = ow_assumptions_new(context);
    ow_status status = ow_oil_request_read(context, &words->oil, &made.oil);
    status = worse(status, ow_option_read(context, &bore, words->bore, &made.bore_m));
    status = worse(status, ow_option_read(context, &slope, words->slope, &made.slope_rad));
    status = worse(status, ow_option_read(context, &flow, words->flow, &made.flow_m3s));
    if (words->aeration != NULL)
        status = worse(status, ow_option_read(context, &aeration, words->aeration, &made.aeration));
    else
        status = worse(status, ow_assumptions_add(&made.oil.assumptions, OW_MARK_ASSUMED, "aeration",
                                                  "half gas by volume; no published figure was found",
                                                  "%.1f times the oil", made.aeration));
    if (status == OW_OK)
        *request = made;
    else
        ow_assumptions_done(&made.oil.assumptions);
    return status;
}

void ow_drain_request_done(ow_drain_request *request)
{
    ow_oil_request_done(&request->oil);
}

static double pool_m(double bore_m, double flow_m3s)
{
    return fmax(ow_pool_weir_m(bore_m, flow_m3s), ow_pool_orifice_m(bore_m, flow_m3s));
}

ow_status ow_drain_band_find(const ow_drain_request *request, ow_drain_band *band)
{
    ow_drain_band found = {1.0, 0.0, HUGE_VAL, 0.0};
    bool any = false;
    for (int warmer = -1; warmer <= 1; warmer++) {
        for (int wider = -1; wider <= 1; wider++) {
            double at_c = request->oil.temperature_c + warmer * OW_UNSURE_TEMPERATURE_K;
            at_c = fmin(fmax(at_c, OW_OIL_TEMPERATURE_LOW_C), OW_OIL_TEMPERATURE_HIGH_C);
            ow_drain_ask ask = {request->bore_m + wider * OW_UNSURE_BORE_M,
                                request->slope_rad,
                                request->flow_m3s * request->aeration,
                                {0.0, 0.0}};
            ow_drain_flow run;
            if (ow_oil_liquid(&request->oil.oil, at_c, &ask.liquid) != OW_OK ||
                ow_drain_run(&ask, &run) != OW_OK)
                continue; /* that corner says nothing */
            any = true;
            found.fill_low = fmin(found.fill_low, run.fill);
            found.fill_high = fmax(found.fill_high, run.fill);
            found.pool_low_m = fmin(found.pool_low_m, pool_m(ask.bore_m, ask.flow_m3s));
            found.pool_high_m = fmax(found.pool_high_m, pool_m(ask.bore_m, ask.flow_m3s));
        }
    }
    if (any)
        *band = found;
    return any ? OW_OK : OW_RANGE;
}

/* A limit passed only by the froth that was assumed is a warning; by what was given, an error. */
static ow_severity severity_of(const ow_drain_request *request, bool passes_without_froth)
{
    return request->aeration_assumed && passes_without_froth ? OW_WARNING : OW_ERROR;
}

static ow_status judge_fill(const ow_drain_request *request, const ow_drain_answer *answer,
                            ow_findings *findings)
{
    ow_drain_ask ask = {request->bore_m, request->slope_rad, request->flow_m3s, answer->liquid};
    ow_drain_flow oil_alone;
    bool passes = ow_drain_run(&ask, &oil_alone) == OW_OK && oil_alone.fill <= OW_DRAIN_FILL_LIMIT;
    ow_severity severity = severity_of(request, passes);
    double froth = request->flow_m3s * request->aeration / lpm;
    if (answer->flow.flooded)
        return ow_findings_add(findings, "drain-flooded", severity, "", NULL,
                               "%.3g L/min of froth are more than the pipe carries with a free surface",
                               froth);
    if (answer->flow.fill > OW_DRAIN_FILL_LIMIT)
        return ow_findings_add(findings, "drain-fill", severity, "", NULL,
                               "%.3g L/min of froth fill %.0f %% of the bore; half full carries %.3g", froth,
                               answer->flow.fill * 100.0, answer->flow.half_full_m3s / lpm);
    return OW_OK;
}

static ow_status judge_pool(const ow_drain_request *request, const ow_drain_answer *answer,
                            ow_findings *findings)
{
    double deeper = fmax(answer->pool_weir_m, answer->pool_orifice_m);
    if (deeper <= OW_DRAIN_POOL_LIMIT_M)
        return OW_OK;
    bool passes = pool_m(request->bore_m, request->flow_m3s) <= OW_DRAIN_POOL_LIMIT_M;
    return ow_findings_add(
        findings, "drain-pool", severity_of(request, passes), "", NULL,
        "The pool over an outlet of this bore is %.1f mm deep; %.1f mm of bore keep it at 15 mm",
        deeper * 1e3, answer->least_pool_bore_m * 1e3);
}

static ow_status judge_rest(const ow_drain_request *request, const ow_drain_answer *answer,
                            ow_findings *findings)
{
    const ow_drain_band *band = &answer->band;
    ow_status status = OW_OK;
    if (request->slope_rad < OW_DRAIN_SLOPE_WARN_RAD - 1e-9)
        status =
            ow_findings_add(findings, "drain-slope", OW_WARNING, "", NULL,
                            "Its slope is %.3g degrees; 15 or more are wanted", request->slope_rad / degree);
    if (status == OW_OK && request->bore_m < OW_DRAIN_BORE_M - 1e-9)
        status = ow_findings_add(findings, "drain-bore", OW_WARNING, "", NULL,
                                 "It is %.1f mm inside; 15 mm or more are wanted", request->bore_m * 1e3);
    if (status == OW_OK && request->oil.temperature_c < 20.0)
        status =
            ow_findings_add(findings, "oil-cold", OW_WARNING, "", NULL,
                            "At %.4g C the viscosity is good to about 40 %%", request->oil.temperature_c);
    if (status == OW_OK && answer->flow.reynolds > 2000.0 && answer->flow.reynolds < 4000.0)
        status = ow_findings_add(findings, "feed-transition", OW_NOTE, "", NULL, "The drain runs at Re %.0f",
                                 answer->flow.reynolds);
    if (status == OW_OK &&
        (band->fill_low <= OW_DRAIN_FILL_LIMIT) != (band->fill_high <= OW_DRAIN_FILL_LIMIT))
        status = ow_findings_add(findings, "unsure", OW_NOTE, "", NULL,
                                 "The fill lies between %.0f and %.0f %% of the bore", band->fill_low * 100.0,
                                 band->fill_high * 100.0);
    return status;
}

static ow_status judge(const ow_drain_request *request, const ow_drain_answer *answer, ow_findings *findings)
{
    ow_status status = judge_fill(request, answer, findings);
    if (status == OW_OK)
        status = judge_pool(request, answer, findings);
    if (status == OW_OK)
        status = judge_rest(request, answer, findings);
    return status;
}

ow_status ow_drain_reckon(const ow_context *context, const ow_drain_request *request, ow_drain_answer *answer)
{
    ow_oil_answer oil;
    ow_status status = ow_oil_reckon(context, &request->oil, &oil);
    if (status != OW_OK)
        return status;
    ow_drain_answer made = {.liquid = oil.liquid, .viscosity_mm2s = oil.viscosity_mm2s};
    ow_oil_answer_done(&oil);
    made.findings = ow_findings_new(context);
    ow_drain_ask ask = {request->bore_m, request->slope_rad, request->flow_m3s * request->aeration,
                        made.liquid};
    if (ow_drain_run(&ask, &made.flow) != OW_OK || ow_drain_band_find(request, &made.band) != OW_OK)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, flow.range, NULL, "the drain cannot be reckoned");
    made.least_bore_known = ow_drain_least_bore_m(&ask, &made.least_bore_m) == OW_OK;
    made.least_slope_known = ow_drain_least_slope_rad(&ask, &made.least_slope_rad) == OW_OK;
    made.pool_weir_m = ow_pool_weir_m(ask.bore_m, ask.flow_m3s);
    made.pool_orifice_m = ow_pool_orifice_m(ask.bore_m, ask.flow_m3s);
    made.least_pool_bore_m = ow_pool_least_bore_m(ask.flow_m3s, OW_DRAIN_POOL_LIMIT_M);
    status = judge(request, &made, &made.findings);
    made.ok = !ow_findings_have(&made.findings, OW_ERROR);
    if (status == OW_OK)
        *answer = made;
    else
        ow_findings_done(&made.findings);
    return status;
}

void ow_drain_answer_done(ow_drain_answer *answer)
{
    ow_findings_done(&answer->findings);
}
