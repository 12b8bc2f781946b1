/* SPDX-License-Identifier: MIT */
/* Findings, assumptions, cautions, and the place to sign. */
#include <string.h>

#include "drawing/escape.h"
#include "drawing/html.h"
#include "oilway/report.h"

static void write_finding(ow_text *text, const ow_finding *finding)
{
    static const char *const SEVERITIES[] = {"note", "warning", "error"};
    ow_text_format(text, "<li class=\"%s\"><strong>%s</strong>", SEVERITIES[finding->severity],
                   SEVERITIES[finding->severity]);
    if (finding->where != NULL && finding->where[0] != '\0') {
        ow_text_add(text, ", ");
        ow_escape(text, finding->where);
    }
    ow_text_add(text, ": ");
    ow_escape(text, finding->message);
    size_t length = strlen(finding->message);
    if (length > 0 && finding->message[length - 1] != '.')
        ow_text_char(text, '.');
    if (finding->mend != NULL && finding->mend[0] != '\0') {
        ow_text_add(text, " <em>");
        ow_escape(text, finding->mend);
        ow_text_add(text, "</em>");
    }
    ow_text_add(text, " <small>");
    ow_escape(text, finding->rule->source);
    ow_text_add(text, "</small></li>\n");
}

void ow_html_findings(ow_text *text, const ow_findings *findings)
{
    ow_html_element(text, "h2", "Findings");
    if (findings == NULL || findings->count == 0) {
        ow_html_element(text, "p", "None: every joint and rule was looked at.");
        return;
    }
    ow_text_add(text, "<ol>\n");
    for (size_t index = 0; index < findings->count; index++)
        write_finding(text, &findings->items[index]);
    ow_text_add(text, "</ol>\n");
}

void ow_html_assumptions(ow_text *text, const ow_assumptions *assumptions)
{
    if (assumptions == NULL || assumptions->count == 0)
        return;
    ow_text_add(text, "<section class=\"run\">\n");
    ow_html_element(text, "h2", "Assumed: measure what matters");
    ow_text_add(text, "<ul>\n");
    for (size_t index = 0; index < assumptions->count; index++) {
        const ow_assumption *own = &assumptions->items[index];
        ow_text_add(text, "<li>");
        ow_escape(text, own->what);
        ow_text_add(text, ": ");
        ow_escape(text, own->value);
        ow_text_add(text, " <small>");
        ow_escape(text, own->source);
        ow_text_format(text, " (%s)</small></li>\n", ow_mark_words(own->mark));
    }
    ow_text_add(text, "</ul>\n</section>\n");
}

void ow_html_cautions(ow_text *text, ow_circuit circuit)
{
    ow_text words = ow_text_new(text->context);
    ow_report_cautions(&words, circuit, "");
    ow_text_add(text, "<section>\n");
    ow_html_element(text, "h2", "Caution");
    ow_text_add(text, "<ul>\n");
    const char *line = ow_text_words(&words);
    while (*line != '\0') { /* one to a line */
        size_t length = strcspn(line, "\n");
        ow_text_add(text, "<li>");
        ow_escape_bytes(text, line, length);
        ow_text_add(text, "</li>\n");
        line += length + (line[length] == '\n' ? 1 : 0);
    }
    ow_text_add(text, "</ul>\n</section>\n");
    ow_text_done_into(&words, text);
}

void ow_html_signature(ow_text *text)
{
    ow_text_add(text,
                "<section class=\"sign\" aria-label=\"Signatures\">\n<p>Fitted by (name, signature)</p>\n"
                "<p>Checked for leaks by (name, signature)</p>\n<p>Date</p>\n</section>\n");
}
