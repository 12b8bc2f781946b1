/* SPDX-License-Identifier: MIT */
#include "report/look.h"
#include "report/physics_parts.h"

static const double lpm = 1.0 / 60000.0;
static const double degree = 0.017453292519943295;

static void write_curve(ow_text *text, const ow_loop_answer *answer, const ow_style *style)
{
    ow_look_paint(text, OW_PAINT_STRONG, style,
                  "over the clocking angle (about 15 degrees is common practice)");
    ow_text_char(text, '\n');
    for (size_t i = 0; i < OW_CURVE_POINTS; i++) {
        const ow_siphon *siphon = &answer->curve[i].siphon;
        ow_text_format(text, "  %4.0f deg ", answer->curve[i].angle_rad / degree);
        if (siphon->stands_still)
            ow_text_add(text, "  stands still\n");
        else
            ow_text_format(text, "%8.3f L/min  %5.1f K warmer  %6.1f C%s\n", siphon->flow_m3s / lpm,
                           siphon->rise_k, siphon->hot_c, siphon->boils ? "  boils" : "");
    }
}

void ow_report_loop_text(ow_text *text, const ow_loop_text *loop, const ow_loop_answer *answer,
                         const ow_style *style)
{
    const ow_siphon *siphon = &answer->siphon;
    const char *verdict = siphon->stands_still ? "it stands still"
                          : siphon->boils      ? "it boils"
                                               : "it goes round";
    ow_physics_title(text, answer->ok ? OW_PAINT_GOOD : OW_PAINT_BAD, style,
                     "coolant loop %s, %s, %.4g W at %.4g C: %s", loop->loop.title,
                     ow_coolant_word(loop->loop.coolant), loop->loop.heat_w, loop->loop.cold_c, verdict);
    if (!siphon->stands_still) {
        ow_physics_row(text, "flow after shutdown", "%.4g L/min", siphon->flow_m3s / lpm);
        ow_physics_row(text, "drive", "%.4g Pa", siphon->drive_pa);
        ow_physics_row(text, "hot coolant", "%.1f C, %.1f K above the cold", siphon->hot_c, siphon->rise_k);
    }
    ow_physics_row(text, "boils at", "%.1f C under a cap of %.2g bar", siphon->boiling_c,
                   loop->loop.cap_pa / 1e5);
    ow_physics_row(text, "engine running, 5 L/min", "%.1f kPa all round, +%.2g K",
                   answer->forced.loss_pa / 1e3, answer->forced.rise_k);
    write_curve(text, answer, style);
    ow_physics_end(text, &loop->assumptions, &answer->findings, style);
    ow_report_cautions(text, OW_COOLANT, "  ");
}

static void write_siphon(ow_json *json, cJSON *item, const ow_siphon *siphon)
{
    bool moves = !siphon->stands_still;
    ow_json_figure(json, item, "flow_lpm", siphon->flow_m3s / lpm);
    ow_json_known_figure(json, item, "temperature_rise_k", moves, siphon->rise_k);
    ow_json_figure(json, item, "drive_pa", siphon->drive_pa);
    ow_json_known_figure(json, item, "hot_temperature_c", moves, siphon->hot_c);
    ow_json_bool(json, item, "stands_still", siphon->stands_still);
    ow_json_bool(json, item, "boils", siphon->boils);
}

ow_status ow_report_loop_json(ow_text *text, const ow_loop_text *loop, const ow_loop_answer *answer)
{
    ow_json json = ow_json_new(false);
    cJSON *root = json.root;
    ow_json_words(&json, root, "loop", loop->loop.title);
    ow_json_bool(&json, root, "ok", answer->ok);
    ow_json_figure(&json, root, "angle_deg", loop->loop.angle_rad / degree);
    write_siphon(&json, root, &answer->siphon);
    ow_json_figure(&json, root, "boiling_temperature_c", answer->siphon.boiling_c);
    ow_json_figure(&json, root, "forced_loss_kpa", answer->forced.loss_pa / 1e3);
    cJSON *curve = ow_json_list(&json, root, "curve");
    for (size_t i = 0; i < OW_CURVE_POINTS; i++) {
        cJSON *item = ow_json_object(&json, curve, NULL);
        ow_json_figure(&json, item, "angle_deg", answer->curve[i].angle_rad / degree);
        write_siphon(&json, item, &answer->curve[i].siphon);
    }
    ow_json_remarks(&json, root, "remarks", &answer->findings);
    ow_json_assumptions(&json, root, "assumptions", &loop->assumptions);
    return ow_json_done(&json, text);
}
