/* SPDX-License-Identifier: MIT */
#include "oilway/quick.h"
#include "physics/option.h"

static const ow_option_field at = {
    "--at",          OW_TEMPERATURE, false, 1.0, OW_OIL_TEMPERATURE_LOW_C, OW_OIL_TEMPERATURE_HIGH_C,
    "-40 C to 200 C"};
static const ow_option_field kv40 = {"--kv40",
                                     OW_KINEMATIC_VISCOSITY,
                                     true,
                                     1e-6,
                                     OW_OIL_KV100_LOW_MM2S * 1e-6,
                                     OW_OIL_KV40_HIGH_MM2S * 1e-6,
                                     "2 to 5000 mm2/s, and above --kv100"};
static const ow_option_field kv100 = {"--kv100",
                                      OW_KINEMATIC_VISCOSITY,
                                      true,
                                      1e-6,
                                      OW_OIL_KV100_LOW_MM2S * 1e-6,
                                      OW_OIL_KV100_HIGH_MM2S * 1e-6,
                                      "2 to 100 mm2/s"};
static const ow_option_field rho15 = {
    "--rho15",          OW_DENSITY, true, 1.0, OW_OIL_DENSITY15_LOW_KGM3, OW_OIL_DENSITY15_HIGH_KGM3,
    "700 to 1000 kg/m3"};

/* The worse of two: OW_MEMORY beats OW_INPUT beats OW_OK. */
static ow_status worse(ow_status a, ow_status b)
{
    return a == OW_MEMORY || b == OW_OK ? a : b;
}

static ow_status read_measured(const ow_context *context, const ow_oil_words *words, ow_oil_request *request)
{
    double at40 = 0.0, at100 = 0.0, density = OW_OIL_DENSITY15_DEFAULT_KGM3;
    ow_status status = ow_option_read(context, &kv40, words->kv40, &at40);
    status = worse(status, ow_option_read(context, &kv100, words->kv100, &at100));
    if (words->rho15 != NULL)
        status = worse(status, ow_option_read(context, &rho15, words->rho15, &density));
    else
        status = worse(status, ow_oil_density_assume(density, &request->assumptions));
    if (status != OW_OK)
        return status;
    const char *name = words->grade != NULL ? words->grade : "";
    if (ow_oil_set(name, at40 * 1e6, at100 * 1e6, density, &request->oil) != OW_OK)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, "--kv40 above --kv100", NULL,
                         "no oil has %.4g mm2/s at 40 C and %.4g at 100 C", at40 * 1e6, at100 * 1e6);
    return OW_OK;
}

static ow_status report_grade(const ow_context *context, const char *grade)
{
    double low, high;
    ow_text known = ow_text_new(context);
    for (size_t i = 0; i < ow_typical_oil_count(); i++)
        ow_text_format(&known, "%s%s", i > 0 ? ", " : "", ow_typical_oil_at(i)->name);
    ow_status status = ow_text_status(&known);
    bool is_grade = ow_oil_grade_window(grade, &low, &high);
    if (status == OW_OK)
        status = ow_report(
            context, OW_ERROR, OW_INPUT, NULL, ow_text_words(&known),
            "give --kv40 and --kv100 from its product sheet",
            is_grade ? "no typical oil of grade \"%.40s\" is known" : "\"%.40s\" is no SAE grade", grade);
    ow_text_done(&known);
    return status;
}

static ow_status read_oil(const ow_context *context, const ow_oil_words *words, ow_oil_request *request)
{
    if (words->kv40 != NULL || words->kv100 != NULL)
        return read_measured(context, words, request);
    if (words->grade == NULL)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL,
                         "an SAE grade such as 15W-40, or --kv40 and --kv100", NULL, "no oil is given");
    const ow_typical_oil *typical = ow_typical_oil_find(words->grade);
    if (typical == NULL)
        return report_grade(context, words->grade);
    double density = typical->density15_kgm3;
    ow_status status = ow_typical_oil_assume(typical, &request->assumptions);
    if (status == OW_OK && words->rho15 != NULL)
        status = ow_option_read(context, &rho15, words->rho15, &density);
    if (status == OW_OK)
        status = ow_oil_set(typical->name, typical->kv40_mm2s, typical->kv100_mm2s, density, &request->oil);
    return status;
}

ow_status ow_oil_request_read(const ow_context *context, const ow_oil_words *words, ow_oil_request *request)
{
    ow_oil_request made = {.grade = words->grade, .assumptions = ow_assumptions_new(context)};
    ow_status status = read_oil(context, words, &made);
    status = worse(status, ow_option_read(context, &at, words->at, &made.temperature_c));
    if (status == OW_OK)
        *request = made;
    else
        ow_assumptions_done(&made.assumptions);
    return status;
}

void ow_oil_request_done(ow_oil_request *request)
{
    ow_assumptions_done(&request->assumptions);
}

/* What is to be said of an oil at a temperature. */
static ow_status judge(const ow_oil_request *request, const ow_oil_answer *answer, ow_findings *findings)
{
    double at_c = request->temperature_c, low, high;
    const ow_oil *oil = &request->oil;
    ow_status status = OW_OK;
    if (request->grade != NULL && ow_oil_grade_window(request->grade, &low, &high) &&
        !(oil->kv100_mm2s >= low && oil->kv100_mm2s < high))
        status = ow_findings_add(findings, "oil-window", OW_WARNING, "", NULL,
                                 "%.4g mm2/s at 100 C lies outside %.1f to %.1f of %.20s", oil->kv100_mm2s,
                                 low, high, request->grade);
    if (status == OW_OK && at_c < 20.0)
        status = ow_findings_add(findings, "oil-cold", OW_WARNING, "", NULL,
                                 "At %.4g C the figure is good to about 40 %%", at_c);
    if (status == OW_OK && at_c > 130.0)
        status = ow_findings_add(findings, "oil-hot", OW_WARNING, "", NULL, "%.4g C is hot for an oil", at_c);
    if (status == OW_OK && answer->viscosity_mm2s < 2.0)
        status = ow_findings_add(findings, "oil-thin", OW_WARNING, "", NULL,
                                 "%.3g mm2/s is less than the formula is made for", answer->viscosity_mm2s);
    return status;
}

ow_status ow_oil_reckon(const ow_context *context, const ow_oil_request *request, ow_oil_answer *answer)
{
    ow_oil_answer made = {.findings = ow_findings_new(context)};
    if (ow_oil_viscosity_mm2s(&request->oil, request->temperature_c, &made.viscosity_mm2s) != OW_OK ||
        ow_oil_liquid(&request->oil, request->temperature_c, &made.liquid) != OW_OK)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, "a temperature at which the oil flows", NULL,
                         "at %.4g C this oil is as good as solid", request->temperature_c);
    ow_status status = judge(request, &made, &made.findings);
    if (status == OW_OK)
        *answer = made;
    else
        ow_findings_done(&made.findings);
    return status;
}

void ow_oil_answer_done(ow_oil_answer *answer)
{
    ow_findings_done(&answer->findings);
}
