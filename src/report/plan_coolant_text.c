/* SPDX-License-Identifier: MIT */
/* A coolant loop of a plan for a person: its legs, its clocking, what goes round after shutdown and with the
 * pump. */
#include <math.h>

#include "report/plan_parts.h"

#define PRACTICE_DEG 15.0

static void write_clocking(ow_text *text, const ow_plan_coolant *loop, const ow_style *style)
{
    ow_text words = ow_text_new(text->context);
    double height_mm = loop->height_m * 1e3;
    ow_text_format(
        &words,
        "cold in at %s, hot out at %s: turned %.0f degrees, with %.0f mm between them, %s stands %.0f "
        "mm %s",
        loop->low->name, loop->high->name, loop->loop.angle_rad * OW_DEGREES_PER_RADIAN,
        loop->loop.apart_m * 1e3, loop->high->name, fabs(height_mm), height_mm < 0.0 ? "lower" : "higher");
    text->failed = text->failed || words.failed;
    ow_plan_line(text, style, "clocking", ow_text_words(&words));
    ow_text_done(&words);
}

static void write_siphon(ow_text *text, const ow_plan_coolant *loop, const ow_style *style)
{
    const ow_siphon *siphon = &loop->siphon;
    ow_text words = ow_text_new(text->context);
    if (siphon->stands_still)
        ow_text_format(&words, "with %.0f W it stands still and boils at %.0f C", loop->loop.heat_w,
                       siphon->boiling_c);
    else
        ow_text_format(
            &words,
            "%.3f L/min go round by themselves, carry %.0f W and get %.0f K warmer: %.0f C; it boils "
            "at %.0f C",
            siphon->flow_m3s * OW_LPM, loop->loop.heat_w, siphon->rise_k, siphon->hot_c, siphon->boiling_c);
    ow_text_format(&words, "; %.0f W are the most that it carries with %.0f K to spare", loop->most_heat_w,
                   OW_BOIL_MARGIN_K);
    text->failed = text->failed || words.failed;
    ow_plan_line(text, style, "after shutdown", ow_text_words(&words));
    ow_text_done(&words);
}

/* The flow at the angle of the curve that is nearest. */
static double flow_at(const ow_plan_coolant *loop, double angle_deg)
{
    size_t nearest = 0;
    for (size_t index = 1; index < loop->curve_count; index++) {
        if (fabs(loop->curve_angle_rad[index] * OW_DEGREES_PER_RADIAN - angle_deg) <
            fabs(loop->curve_angle_rad[nearest] * OW_DEGREES_PER_RADIAN - angle_deg))
            nearest = index;
    }
    return loop->curve[nearest].flow_m3s * OW_LPM;
}

static void write_curve(ow_text *text, const ow_plan_coolant *loop, const ow_style *style)
{
    ow_text_add(text, "    degrees");
    for (size_t index = 0; index < loop->curve_count; index++)
        ow_text_format(text, " %5.0f", loop->curve_angle_rad[index] * OW_DEGREES_PER_RADIAN);
    ow_text_add(text, "\n    L/min  ");
    for (size_t index = 0; index < loop->curve_count; index++)
        ow_text_format(text, " %5.3f", loop->curve[index].flow_m3s * OW_LPM);
    ow_text_add(text, "\n    hot, C ");
    for (size_t index = 0; index < loop->curve_count; index++) {
        if (loop->curve[index].stands_still)
            ow_text_add(text, " still");
        else
            ow_text_format(text, " %5.0f", loop->curve[index].hot_c);
    }
    ow_text_char(text, '\n');
    ow_text words = ow_text_new(text->context);
    ow_text_format(
        &words,
        "about %.0f degrees: here %.3f L/min, against %.3f level and %.3f at 45 degrees, where the oil "
        "outlet would lean too far; %s",
        PRACTICE_DEG, flow_at(loop, PRACTICE_DEG), flow_at(loop, 0.0), flow_at(loop, 45.0),
        2.0 * loop->loop.rise_m > loop->height_m ? "the return's rise does most of the work"
                                                 : "a return that rises would do more than any clocking");
    text->failed = text->failed || words.failed;
    ow_plan_line(text, style, "common practice", ow_text_words(&words));
    ow_text_done(&words);
}

void ow_plan_coolant_text(ow_text *text, const ow_plan_coolant *loop, const ow_style *style)
{
    for (size_t index = 0; index < loop->leg_count; index++) {
        const ow_plan_leg *leg = &loop->legs[index];
        ow_text_format(text, "  %s leg%s\n", leg->hot ? "hot" : "cold",
                       leg->layout == NULL ? ": nothing fits" : "");
        if (leg->layout != NULL)
            ow_report_layout_text(text, leg->layout, style);
    }
    if (!loop->reckoned)
        return;
    ow_text_char(text, '\n');
    write_clocking(text, loop, style);
    write_siphon(text, loop, style);
    write_curve(text, loop, style);
    ow_text_format(text, "  engine running: %.1f L/min cost %.1f kPa\n", loop->forced_m3s * OW_LPM,
                   loop->forced.loss_pa / 1e3);
}
