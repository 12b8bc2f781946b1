/* SPDX-License-Identifier: MIT */
#include "base/memory.h"
#include "base/source.h"
#include "oilway/quick.h"

/* Where the bearing's pressure limit is crossed within what is unsure. */
static ow_status judge_band(const ow_feed *feed, const ow_feed_result *result, const ow_feed_band *band,
                            ow_findings *findings)
{
    double limit = OW_FEED_JOURNAL_HIGH_PA;
    bool warm = result->state->oil_c >= 60.0;
    if (feed->restrictor.wanted || !warm)
        return OW_OK;
    bool high = (band->turbo_low_pa > limit) != (band->turbo_high_pa > limit);
    bool low = (band->turbo_low_pa < OW_FEED_IDLE_LOW_PA) != (band->turbo_high_pa < OW_FEED_IDLE_LOW_PA);
    if (!high && !low)
        return OW_OK;
    return ow_findings_add(findings, "unsure", OW_NOTE, result->state->name, NULL,
                           "The pressure at the turbo lies between %.2f and %.2f bar",
                           band->turbo_low_pa / 1e5, band->turbo_high_pa / 1e5);
}

static ow_status find_bands(const ow_context *context, const ow_feed *feed, ow_line_answer *answer)
{
    answer->bands = ow_new_array(context, feed->state_count, sizeof *answer->bands);
    if (answer->bands == NULL)
        return OW_MEMORY;
    ow_status status = OW_OK;
    for (size_t i = 0; i < feed->state_count && status == OW_OK; i++) {
        status = ow_feed_state_band(context, feed, i, &answer->bands[i]);
        if (status == OW_OK)
            status = judge_band(feed, &answer->feed.results[i], &answer->bands[i], &answer->findings);
    }
    return status;
}

ow_status ow_line_reckon(const ow_context *context, const ow_line *line, ow_line_answer *answer)
{
    ow_line_answer made = {.findings = ow_findings_new(context)};
    ow_status status = ow_feed_solve(context, &line->feed, &made.feed);
    if (status == OW_OK)
        status = ow_feed_judge(&line->feed, &made.feed, &made.findings);
    if (status == OW_OK)
        status = find_bands(context, &line->feed, &made);
    made.ok = !ow_findings_have(&made.findings, OW_ERROR);
    if (status == OW_OK) {
        *answer = made;
        return OW_OK;
    }
    ow_line_answer_done(&made);
    if (status == OW_RANGE)
        status = ow_report(context, OW_ERROR, OW_INPUT, NULL, NULL, NULL, "the line cannot be reckoned");
    return status;
}

void ow_line_answer_done(ow_line_answer *answer)
{
    ow_release(answer->findings.context, answer->bands);
    answer->bands = NULL;
    ow_findings_done(&answer->findings);
    ow_feed_answer_free(&answer->feed);
}
