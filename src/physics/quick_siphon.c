/* SPDX-License-Identifier: MIT */
#include "base/source.h"
#include "oilway/quick.h"

static const double degree = 0.017453292519943295;

static ow_status judge_heat(const ow_siphon *siphon, ow_findings *findings)
{
    if (siphon->stands_still)
        return ow_findings_add(findings, "coolant-stands-still", OW_ERROR, "", NULL,
                               "The coolant does not go round by itself: what stands in the housing boils");
    if (siphon->boils)
        return ow_findings_add(findings, "coolant-boils", OW_ERROR, "", NULL,
                               "The coolant would reach %.1f C and boils at %.1f C", siphon->hot_c,
                               siphon->boiling_c);
    if (siphon->near_boiling)
        return ow_findings_add(findings, "coolant-margin", OW_WARNING, "", NULL,
                               "The coolant reaches %.1f C, %.1f K below boiling", siphon->hot_c,
                               siphon->boiling_c - siphon->hot_c);
    return OW_OK;
}

static ow_status judge_angle(const ow_loop *loop, ow_findings *findings)
{
    double angle = loop->angle_rad / degree;
    if (angle < 0.0)
        return ow_findings_add(findings, "coolant-cold-port-high", OW_WARNING, "", NULL,
                               "At %.3g degrees the cold port stands higher than the hot one", angle);
    if (angle > 20.0)
        return ow_findings_add(findings, "coolant-clocking", angle > 35.0 ? OW_ERROR : OW_WARNING, "", NULL,
                               "At %.3g degrees the oil outlet leans as much", angle);
    return OW_OK;
}

/* Where the water stands still for want of a rise, that is told already. */
static ow_status judge_rise(const ow_loop *loop, const ow_siphon *siphon, ow_findings *findings)
{
    if (siphon->stands_still || loop->rise_m > 0.0)
        return OW_OK;
    if (loop->rise_m < 0.0)
        return ow_findings_add(findings, "coolant-falls", OW_WARNING, "", NULL,
                               "The hot return ends %.0f mm below the high port", -loop->rise_m * 1e3);
    return ow_findings_add(findings, "coolant-no-rise", OW_NOTE, "", NULL,
                           "The hot return does not rise above the high port");
}

ow_status ow_loop_judge(const ow_loop *loop, const ow_siphon *siphon, ow_findings *findings)
{
    double known_c = ow_coolant_fit_high_c(loop->coolant);
    ow_status status = judge_heat(siphon, findings);
    if (status == OW_OK)
        status = judge_angle(loop, findings);
    if (status == OW_OK)
        status = judge_rise(loop, siphon, findings);
    if (status == OW_OK && !siphon->boils && siphon->hot_c > known_c)
        status = ow_findings_add(findings, "coolant-beyond-fit", OW_NOTE, "", NULL,
                                 "%.1f C is beyond the %.0f C that the properties are known to",
                                 siphon->hot_c, known_c);
    return status;
}

static ow_status find_curve(const ow_loop *loop, ow_loop_answer *answer)
{
    ow_loop turned = *loop;
    ow_status status = OW_OK;
    for (size_t i = 0; i < OW_CURVE_POINTS && status == OW_OK; i++) {
        turned.angle_rad = answer->curve[i].angle_rad = 5.0 * (double)i * degree;
        status = ow_siphon_solve(&turned, &answer->curve[i].siphon);
    }
    return status;
}

ow_status ow_loop_reckon(const ow_context *context, const ow_loop_text *loop, ow_loop_answer *answer)
{
    ow_loop_answer made = {.findings = ow_findings_new(context)};
    ow_status status = ow_siphon_solve(&loop->loop, &made.siphon);
    if (status == OW_OK)
        status = find_curve(&loop->loop, &made);
    if (status == OW_OK)
        status = ow_loop_forced(&loop->loop, OW_COOLANT_FORCED_M3S, &made.forced);
    if (status == OW_OK)
        status = ow_loop_judge(&loop->loop, &made.siphon, &made.findings);
    made.ok = !made.siphon.boils && !made.siphon.stands_still;
    if (status == OW_OK) {
        *answer = made;
        return OW_OK;
    }
    ow_findings_done(&made.findings);
    if (status == OW_RANGE)
        status = ow_report(context, OW_ERROR, OW_INPUT, NULL, "legs that resist the flow", NULL,
                           "the loop cannot be reckoned");
    return status;
}

void ow_loop_answer_done(ow_loop_answer *answer)
{
    ow_findings_done(&answer->findings);
}
