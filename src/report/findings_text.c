/* SPDX-License-Identifier: MIT */
/* Findings as a person reads them: what, where, how to mend it, by which source. */
#include <string.h>

#include "report/look.h"

static void write_one(ow_text *text, const ow_finding *finding, const ow_style *style)
{
    static const ow_paint paints[] = {
        [OW_NOTE] = OW_PAINT_FAINT, [OW_WARNING] = OW_PAINT_WARN, [OW_ERROR] = OW_PAINT_BAD};
    ow_text words = ow_text_new(text->context);
    ow_look_paint(text, paints[finding->severity], style, ow_severity_name(finding->severity));
    ow_text_format(&words, " %s: ", finding->rule->id);
    if (finding->where[0] != '\0')
        ow_text_format(&words, "%s: ", finding->where);
    ow_text_format(&words, "%s. %s (%s)", finding->message, finding->mend, finding->rule->source);
    ow_text_char(text, ' ');
    if (ow_text_status(&words) == OW_OK)
        ow_look_fold(text, style, strlen(ow_severity_name(finding->severity)) + 1, 4,
                     ow_text_words(&words) + 1);
    else
        text->failed = true; /* nothing to step over: the words may be empty */
    ow_text_char(text, '\n');
    ow_text_done_into(&words, text);
}

/* The worst first; else in the order in which they were found. */
void ow_report_findings_text(ow_text *text, const ow_findings *findings, const ow_style *style)
{
    static const ow_severity order[] = {OW_ERROR, OW_WARNING, OW_NOTE};
    for (size_t rank = 0; rank < sizeof order / sizeof order[0]; rank++) {
        for (size_t index = 0; index < findings->count; index++) {
            if (findings->items[index].severity == order[rank])
                write_one(text, &findings->items[index], style);
        }
    }
}
