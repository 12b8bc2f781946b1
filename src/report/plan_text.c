/* SPDX-License-Identifier: MIT */
/* A plan on one page: errors first, then feed, drain, coolant, what to look out for, bill, notes,
 * assumptions, cautions. */
#include <string.h>

#include "report/plan_parts.h"

static void head(ow_text *text, const char *words, const ow_style *style)
{
    ow_text_char(text, '\n');
    ow_look_paint(text, OW_PAINT_STRONG, style, words);
    ow_text_char(text, '\n');
}

void ow_plan_line(ow_text *text, const ow_style *style, const char *label, const char *words)
{
    size_t deeper = strspn(label, " ");
    if (words == NULL)
        return;
    ow_text_format(text, "  %s: ", label);
    ow_look_fold(text, style, strlen(label) + 4, deeper + 4, words);
    ow_text_char(text, '\n');
}

/* Findings are sorted, errors first; a view of some of them. */
static void write_findings(ow_text *text, const char *title, const ow_findings *all, bool errors,
                           const ow_style *style)
{
    ow_findings some = *all;
    size_t count = 0;
    while (count < all->count && all->items[count].severity >= OW_ERROR)
        count++;
    some.count = errors ? count : all->count - count;
    if (some.count == 0)
        return;
    if (!errors)
        some.items += count;
    head(text, title, style);
    ow_report_findings_text(text, &some, style);
}

/* "; 2 warnings, 1 note" */
static void write_counts(ow_text *text, const ow_findings *findings)
{
    size_t counts[] = {0, 0, 0};
    for (size_t index = 0; index < findings->count; index++)
        counts[findings->items[index].severity]++;
    const char *sign = "; ";
    for (size_t severity = 3; severity-- > 0;) {
        if (counts[severity] == 0)
            continue;
        ow_text_format(text, "%s%zu %s%s", sign, counts[severity], ow_severity_name((ow_severity)severity),
                       counts[severity] == 1 ? "" : "s");
        sign = ", ";
    }
    ow_text_char(text, '\n');
}

static void write_assumptions(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    head(text, "Assumed, because nobody said it", style);
    for (size_t index = 0; index < plan->assumptions.count; index++) {
        const ow_assumption *one = &plan->assumptions.items[index];
        ow_text line = ow_text_new(text->context);
        /* "assumption: assumption of this program" says it twice. */
        bool own = strncmp(one->source, "assumption", 10) == 0;
        ow_text_format(&line, "%s: %s (%s%s%s)", one->what, one->value, own ? "" : ow_mark_words(one->mark),
                       own ? "" : ": ", one->source);
        ow_text_add(text, "  ");
        if (ow_text_status(&line) == OW_OK)
            ow_look_fold(text, style, 2, 4, ow_text_words(&line));
        else
            text->failed = true;
        ow_text_char(text, '\n');
        ow_text_done_into(&line, text);
    }
}

static void write_notes(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    head(text, "Order of work", style);
    for (size_t index = 0; index < plan->note_count; index++) {
        ow_text_format(text, " %2zu. ", index + 1);
        ow_look_fold(text, style, 5, 5, plan->notes[index]);
        ow_text_char(text, '\n');
    }
}

static void write_cautions(ow_text *text, const ow_style *style)
{
    ow_text all = ow_text_new(text->context);
    ow_report_cautions(&all, OW_CIRCUIT_NONE, "");
    text->failed = text->failed || all.failed;
    head(text, "Cautions", style);
    for (const char *at = ow_text_words(&all); *at != '\0';) {
        size_t length = strcspn(at, "\n");
        ow_text one = ow_text_new(text->context);
        ow_text_bytes(&one, at, length);
        text->failed = text->failed || one.failed;
        ow_text_add(text, "  - ");
        ow_look_fold(text, style, 4, 4, ow_text_words(&one));
        ow_text_char(text, '\n');
        ow_text_done(&one);
        at += length + (at[length] == '\n' ? 1 : 0);
    }
    ow_text_done(&all);
}

void ow_report_plan_text(ow_text *text, const ow_plan *plan, const ow_style *style)
{
    ow_look_paint(text, OW_PAINT_STRONG, style, plan->job->title);
    ow_text_format(text, ": %s", plan->ok ? "it can be built as drawn" : "not as it stands");
    write_counts(text, &plan->findings);
    write_findings(text, "Errors", &plan->findings, true, style);
    head(text, "Feed", style);
    ow_plan_feed_text(text, &plan->feed, style);
    head(text, "Drain", style);
    ow_plan_drain_text(text, plan, style);
    if (plan->coolant_count > 0)
        head(text, "Coolant", style);
    for (size_t index = 0; index < plan->coolant_count; index++)
        ow_plan_coolant_text(text, &plan->coolants[index], style);
    write_findings(text, "To look out for", &plan->findings, false, style);
    ow_text_char(text, '\n');
    ow_report_bill_text(text, &plan->bill, style);
    write_notes(text, plan, style);
    write_assumptions(text, plan, style);
    write_cautions(text, style);
}

void ow_report_plan_yaml(ow_text *text, const ow_plan *plan)
{
    for (size_t index = 0; index < plan->layout_count; index++) {
        if (index > 0)
            ow_text_add(text, "---\n");
        ow_layout_write(text, &plan->layouts[index]);
    }
}
