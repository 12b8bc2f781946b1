/* SPDX-License-Identifier: MIT */
/* Any bytes as a LINE: nothing harms, and what can be read is reckoned into finite figures that print. */
#include <math.h>

#include "oilway/report_physics.h"
#include "support/fuzz_report.h"

static void check_results(const ow_feed_answer *answer)
{
    for (size_t i = 0; i < answer->state_count; i++) {
        const ow_feed_result *result = &answer->results[i];
        OW_FUZZ_CHECK(isfinite(result->flow_m3s) && result->flow_m3s >= 0.0);
        OW_FUZZ_CHECK(isfinite(result->turbo_pa) && result->turbo_pa >= 0.0);
        OW_FUZZ_CHECK(isfinite(result->first_oil_s) && isfinite(result->loss_pa));
        double through = 0.0;
        for (size_t j = 0; j < result->load_count; j++)
            through += result->loads[j].flow_m3s;
        OW_FUZZ_CHECK(fabs(through - result->flow_m3s) <= 1e-6 * result->flow_m3s + 1e-300);
        for (size_t j = 0; j < result->loss_count; j++)
            OW_FUZZ_CHECK(isfinite(result->losses[j].loss_pa) && isfinite(result->losses[j].reynolds));
    }
}

/* Small trees only: what a tree costs grows with every split behind a split. */
static void reckon(const ow_context *context, const ow_line *line)
{
    ow_line_answer answer;
    if (ow_branch_total(&line->feed.trunk) > 4 || line->feed.state_count > 3 ||
        ow_line_reckon(context, line, &answer) != OW_OK)
        return;
    check_results(&answer.feed);
    ow_style style = OW_STYLE_INIT;
    ow_text text = ow_text_new(context);
    ow_report_line_text(&text, line, &answer, &style);
    OW_FUZZ_CHECK(ow_report_line_json(&text, line, &answer) == OW_OK);
    ow_text_done(&text);
    ow_line_answer_done(&answer);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    size_t told = 0;
    ow_context context = OW_CONTEXT_INIT;
    ow_line line;
    context.report = ow_fuzz_report;
    context.report_user = &told;
    if (size > 4096)
        return 0;
    ow_status status = ow_line_read(&context, "line.yaml", (const char *)data, size, &line);
    OW_FUZZ_CHECK((status == OW_OK) == (told == 0));
    if (status != OW_OK)
        return 0;
    reckon(&context, &line);
    ow_line_free(&line);
    return 0;
}
