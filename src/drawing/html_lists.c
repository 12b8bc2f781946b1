/* SPDX-License-Identifier: MIT */
/* Findings, assumptions, cautions, and the place to sign. */
#include <stdio.h>
#include <string.h>

#include "drawing/escape.h"
#include "drawing/html.h"
#include "drawing/marks.h"
#include "oilway/report.h"

static void write_finding(ow_text *text, const ow_finding *finding, size_t number)
{
    static const char *const SEVERITIES[] = {"note", "warning", "error"};
    ow_canvas canvas = ow_canvas_new(text->context);
    char name[32];
    (void)snprintf(name, sizeof name, "%zu", number);
    ow_text_format(text, "<li class=\"%s\">", SEVERITIES[finding->severity]);
    ow_draw_finding_mark(&canvas, finding->severity, number, (ow_spot){0.0, 0.0});
    ow_html_mark(text, &canvas, name);
    ow_text_format(text, "<div><strong>%s</strong>", SEVERITIES[finding->severity]);
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
    ow_text_add(text, "</small></div></li>\n");
}

void ow_html_findings(ow_text *text, const ow_findings *findings)
{
    ow_html_element(text, "h2", "Findings");
    if (findings == NULL || findings->count == 0) {
        ow_html_element(text, "p", "None: every joint and rule was looked at.");
        return;
    }
    ow_text_add(text, "<ol class=\"findings\">\n");
    for (size_t index = 0; index < findings->count; index++)
        write_finding(text, &findings->items[index], index + 1);
    ow_text_add(text, "</ol>\n");
}

static bool one_source(const ow_assumption *a, const ow_assumption *b)
{
    return a->mark == b->mark && strcmp(a->source, b->source) == 0;
}

/* All that rests on one source, which then is told once. */
static void write_assumed(ow_text *text, const ow_assumptions *assumptions, size_t first)
{
    const ow_assumption *own = &assumptions->items[first];
    ow_text_add(text, "<li>");
    for (size_t index = first; index < assumptions->count; index++) {
        const ow_assumption *other = &assumptions->items[index];
        if (!one_source(own, other))
            continue;
        ow_text_add(text, index > first ? "; " : "");
        ow_escape(text, other->what);
        ow_text_add(text, ": ");
        ow_escape(text, other->value);
    }
    ow_text_add(text, " <small>");
    ow_escape(text, own->source);
    if (own->mark != OW_MARK_ASSUMED || strstr(own->source, "assumption") == NULL)
        ow_text_format(text, " (%s)", ow_mark_words(own->mark));
    ow_text_add(text, "</small></li>\n");
}

void ow_html_assumptions(ow_text *text, const ow_assumptions *assumptions)
{
    if (assumptions == NULL || assumptions->count == 0)
        return;
    ow_text_add(text, "<section class=\"run\">\n");
    ow_html_element(text, "h2", "Assumed: measure what matters");
    ow_text_add(text, "\n<ul>\n");
    for (size_t index = 0; index < assumptions->count; index++) {
        size_t first = 0;
        while (!one_source(&assumptions->items[first], &assumptions->items[index]))
            first++;
        if (first == index)
            write_assumed(text, assumptions, index);
    }
    ow_text_add(text, "</ul>\n</section>\n");
}

void ow_html_cautions(ow_text *text, ow_circuit circuit)
{
    ow_text words = ow_text_new(text->context);
    ow_report_cautions(&words, circuit, "");
    ow_text_add(text, "<section class=\"run caution\">\n");
    ow_html_element(text, "h2", "Caution");
    ow_text_add(text, "\n<ul>\n");
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

/* Lines for two that answer for the work, and the date. */
void ow_html_signature(ow_text *text, const char *first, const char *second)
{
    ow_text_add(text, "<section class=\"sign\" aria-label=\"Signatures\">\n");
    ow_text_format(text, "<p>%s by (name, signature)</p>\n", first);
    ow_text_format(text, "<p>%s by (name, signature)</p>\n", second);
    ow_text_add(text, "<p>Date</p>\n</section>\n");
}
