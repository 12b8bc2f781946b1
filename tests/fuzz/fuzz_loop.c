/* SPDX-License-Identifier: MIT */
/* Any bytes as a LOOP: nothing harms, and what can be read is reckoned into finite figures that print. */
#include <math.h>

#include "oilway/report_physics.h"
#include "support/fuzz_report.h"

static void check_siphon(const ow_siphon *siphon)
{
    OW_FUZZ_CHECK(isfinite(siphon->flow_m3s) && siphon->flow_m3s >= 0.0);
    OW_FUZZ_CHECK(isfinite(siphon->rise_k) && siphon->rise_k >= 0.0 && isfinite(siphon->hot_c));
    OW_FUZZ_CHECK(isfinite(siphon->drive_pa) && isfinite(siphon->boiling_c));
    OW_FUZZ_CHECK(siphon->stands_still == (siphon->flow_m3s == 0.0));
}

static void reckon(const ow_context *context, const ow_loop_text *loop)
{
    ow_loop_answer answer;
    if (ow_loop_reckon(context, loop, &answer) != OW_OK)
        return;
    check_siphon(&answer.siphon);
    for (size_t i = 0; i < OW_CURVE_POINTS; i++)
        check_siphon(&answer.curve[i].siphon);
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(context);
    ow_report_loop_text(&text, loop, &answer, &style);
    OW_FUZZ_CHECK(ow_report_loop_json(&text, loop, &answer) == OW_OK);
    ow_text_done(&text);
    ow_loop_answer_done(&answer);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    size_t told = 0;
    ow_context context = OW_CONTEXT_INIT;
    ow_loop_text loop;
    context.report = ow_fuzz_report;
    context.report_user = &told;
    if (size > 4096)
        return 0;
    ow_status status = ow_loop_read(&context, "loop.yaml", (const char *)data, size, &loop);
    OW_FUZZ_CHECK((status == OW_OK) == (told == 0));
    if (status != OW_OK)
        return 0;
    reckon(&context, &loop);
    ow_loop_free(&loop);
    return 0;
}
