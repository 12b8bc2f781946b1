/* SPDX-License-Identifier: MIT */
/* Counter sheets: what goes on each, in the order in which it is read. */
#include "drawing/html.h"

#include <math.h>
#include <string.h>

#include "base/memory.h"
#include "drawing/layout_svg.h"
#include "drawing/layout_words.h"
#include "report/look.h"

#define LONG 80        /* bytes: a title of more is set smaller */
#define DENSE_JOINTS 9 /* more of them do not fit on two pages in the usual type */

void ow_html_layout_title(ow_text *text, const ow_layout *layout)
{
    ow_words_of_layout(layout, text);
}

void ow_html_layout_heading(ow_text *text, const ow_layout *layout)
{
    ow_text words = ow_text_new(text->context);
    ow_words_of_layout(layout, &words);
    ow_html_element(text, "h2", ow_text_words(&words));
    ow_text_done_into(&words, text);
}

/* How tall the drawing of one of `count` layouts that stand for themselves may be, mm: three share a page. */
static double tall_of(size_t count)
{
    return count == 1 ? 100.0 : fmin(fmax(190.0 / (double)count, 46.0), 80.0);
}

static ow_status draw_layout(ow_text *text, const ow_layout *layout, const ow_findings *findings, double tall)
{
    const ow_layout_look look = {.bare = true, .alone = true, .most_height = tall};
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    ow_text_add(text, "<figure>\n");
    sheet.captioned = true;
    ow_status status = ow_sheet_finish(&sheet, ow_sheet_put_layout(&sheet, layout, findings, &look), text);
    ow_text_add(text, "</figure>\n");
    return status;
}

/* Drawings of layouts that stand for themselves. */
static ow_status write_layouts(ow_text *text, const ow_counter_sheet *sheet)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < sheet->layout_count && status == OW_OK; index++) {
        if (sheet->layout_count > 1)
            ow_html_layout_heading(text, sheet->layouts[index]);
        status =
            draw_layout(text, sheet->layouts[index], sheet->findings == NULL ? NULL : sheet->findings[index],
                        tall_of(sheet->layout_count));
    }
    return status;
}

static void write_findings(ow_text *text, const ow_counter_sheet *sheet)
{
    if (sheet->plan != NULL)
        ow_html_findings(text, &sheet->plan->findings);
    for (size_t index = 0; sheet->findings != NULL && index < sheet->layout_count; index++)
        ow_html_findings(text, sheet->findings[index]);
}

/* The circuit whose cautions are wanted: OW_CIRCUIT_NONE for those of all. */
static ow_circuit circuit_of(const ow_counter_sheet *sheet)
{
    for (size_t index = 1; index < sheet->layout_count; index++)
        if (sheet->layouts[index]->circuit != sheet->layouts[0]->circuit)
            return OW_CIRCUIT_NONE;
    return sheet->layout_count > 0 ? sheet->layouts[0]->circuit : OW_CIRCUIT_NONE;
}

/* Much to say is set smaller, so that it stays on two pages. */
static const char *look_of(const ow_counter_sheet *sheet)
{
    size_t joints = 0;
    for (size_t index = 0; index < sheet->layout_count; index++)
        joints += ow_layout_joint_count(sheet->layouts[index]);
    return sheet->plan != NULL || joints > DENSE_JOINTS ? " class=\"dense\"" : "";
}

static void write_layout_facts(ow_text *text, const ow_counter_sheet *sheet)
{
    ow_text words = ow_text_new(text->context);
    size_t joints = 0;
    for (size_t index = 0; index < sheet->layout_count; index++)
        joints += ow_layout_joint_count(sheet->layouts[index]);
    ow_text_format(&words, "%zu", joints);
    ow_html_fact(text, "joints", ow_text_words(&words));
    words.length = 0;
    double narrowest = sheet->layout_count == 1 ? ow_layout_narrowest_bore_m(sheet->layouts[0]) : 0.0;
    if (narrowest > 0.0) {
        ow_quantity_write(&words, OW_LENGTH, narrowest, 2);
        ow_html_fact(text, "narrowest bore", ow_text_words(&words));
    }
    words.length = 0;
    if (sheet->bill != NULL &&
        sheet->bill->unpriced_count < sheet->bill->part_count) { /* else there is none */
        ow_look_price(&words, sheet->bill->total_cents);
        ow_html_fact(text, sheet->bill->unpriced_count > 0 ? "price of what has one" : "price",
                     ow_text_words(&words));
    }
    ow_text_done_into(&words, text);
}

static void write_head(ow_text *text, const ow_counter_sheet *sheet)
{
    ow_text_add(text, "<header>\n<div class=\"head\">\n");
    ow_html_element(text, strlen(sheet->title) > LONG ? "h1 class=\"long\"" : "h1", sheet->title);
    ow_html_element(text, sheet->no ? "p class=\"verdict no\"" : "p class=\"verdict\"", sheet->verdict);
    ow_text_add(text, "</div>\n<dl class=\"facts\">\n");
    if (sheet->plan != NULL)
        ow_html_job_facts(text, sheet->plan);
    write_layout_facts(text, sheet);
    ow_text_add(text, "</dl>\n");
    ow_html_reading(text, sheet->reading, sheet->decide);
    ow_text_add(text, "</header>\n");
}

/* First what is looked at, then what is done. */
ow_status ow_html_sheet(ow_text *text, const ow_counter_sheet *sheet)
{
    ow_html_begin(text, sheet->title, look_of(sheet));
    write_head(text, sheet);
    ow_status status = sheet->plan != NULL ? ow_html_figures(text, sheet->plan) : write_layouts(text, sheet);
    if (status != OW_OK)
        return status;
    write_findings(text, sheet);
    ow_html_cautions(text, circuit_of(sheet));
    ow_text_add(text, "<div class=\"columns\">\n");
    ow_html_assumptions(text, sheet->assumptions);
    ow_html_joint_cautions(text, sheet->layouts, sheet->layout_count);
    ow_text_add(text, "</div>\n");
    if (sheet->bill != NULL)
        ow_html_bill(text, sheet->bill);
    ow_html_joints(text, sheet->layouts, sheet->layout_count);
    if (sheet->plan != NULL)
        ow_html_order_of_work(text, sheet->plan);
    ow_html_signature(text, "Fitted", "Checked for leaks");
    ow_html_end(text);
    return ow_text_status(text);
}

/* ---- checked layouts --------------------------------------------------------------------------- */

bool ow_html_verdict(ow_text *verdict, const ow_findings *const *findings, size_t count, size_t parts)
{
    size_t counts[3] = {0, 0, 0};
    for (size_t index = 0; index < count; index++)
        for (size_t at = 0; findings != NULL && at < findings[index]->count; at++)
            counts[findings[index]->items[at].severity]++;
    ow_text_format(verdict, "%zu part%s. ", parts, parts == 1 ? "" : "s");
    if (findings == NULL) {
        ow_text_add(verdict, "A bill: the joints were not checked.");
        return false;
    }
    if (counts[OW_ERROR] > 0)
        ow_text_format(verdict, "NOT to be built as drawn: %zu error%s", counts[OW_ERROR],
                       counts[OW_ERROR] == 1 ? "" : "s");
    else
        ow_text_add(verdict, "Checked, no error");
    ow_text_format(verdict, ", %zu warning%s, %zu note%s.", counts[OW_WARNING],
                   counts[OW_WARNING] == 1 ? "" : "s", counts[OW_NOTE], counts[OW_NOTE] == 1 ? "" : "s");
    return counts[OW_ERROR] > 0;
}

static bool is_named(const ow_layout *const *layouts, size_t last, size_t given, const char *id)
{
    for (size_t index = 0; index <= last; index++)
        for (size_t at = 0; at < (index == last ? given : layouts[index]->given_count); at++) {
            const ow_machine *machine = layouts[index]->givens[at].machine;
            if (machine != NULL && strcmp(machine->id, id) == 0)
                return true;
        }
    return false;
}

/* One layout by what it joins; several, each of which has its own heading below, by the machines. */
static void write_title(ow_text *title, const ow_layout *const *layouts, size_t count)
{
    if (count == 1) {
        ow_words_of_layout(layouts[0], title);
        return;
    }
    for (size_t index = 0; index < count; index++)
        for (size_t at = 0; at < layouts[index]->given_count; at++) {
            const ow_machine *machine = layouts[index]->givens[at].machine;
            if (machine == NULL || is_named(layouts, index, at, machine->id))
                continue;
            ow_text_add(title, title->length > 0 ? ", " : "");
            ow_text_add(title, machine->id);
        }
    ow_text_format(title, "%s%zu layouts", title->length > 0 ? ": " : "", count);
}

/* A sheet of layouts that are not in one array; bill included. */
static ow_status write_sheet(ow_text *text, const ow_layout *const *layouts,
                             const ow_findings *const *findings, size_t count, const ow_bill *bill)
{
    ow_text title = ow_text_new(text->context), verdict = ow_text_new(text->context);
    write_title(&title, layouts, count);
    bool no = ow_html_verdict(&verdict, findings, count, bill->part_count);
    const ow_counter_sheet sheet = {.title = ow_text_words(&title),
                                    .verdict = ow_text_words(&verdict),
                                    .no = no,
                                    .layouts = layouts,
                                    .findings = findings,
                                    .layout_count = count,
                                    .bill = bill};
    ow_status status = ow_html_sheet(text, &sheet);
    ow_text_done_into(&title, text);
    ow_text_done_into(&verdict, text);
    return status == OW_OK ? ow_text_status(text) : status;
}

ow_status ow_sheet_layouts_html(ow_text *text, const ow_layout *layouts, const ow_findings *findings,
                                size_t count)
{
    const ow_layout **each = ow_new_array(text->context, count + 1, sizeof *each);
    const ow_findings **found = ow_new_array(text->context, count + 1, sizeof *found);
    ow_bill bill;
    ow_status status =
        each == NULL || found == NULL ? OW_MEMORY : ow_bill_new(text->context, layouts, count, &bill);
    if (status == OW_OK) {
        for (size_t index = 0; index < count; index++) {
            each[index] = &layouts[index];
            found[index] = findings == NULL ? NULL : &findings[index];
        }
        status = write_sheet(text, each, findings == NULL ? NULL : found, count, &bill);
        ow_bill_done(&bill);
    }
    ow_release(text->context, found);
    ow_release(text->context, each);
    return status;
}

ow_status ow_sheet_check_html(ow_text *text, const ow_layout *layouts, const ow_checked *checked)
{
    return ow_sheet_layouts_html(text, layouts, checked->findings, checked->count);
}

/* ---- plans ----------------------------------------------------------------------------------------- */

ow_status ow_sheet_plan_html(ow_text *text, const ow_plan *plan)
{
    const ow_layout **layouts = ow_new_array(text->context, plan->layout_count + 1, sizeof *layouts);
    ow_text verdict = ow_text_new(text->context);
    const ow_findings *findings = &plan->findings;
    if (layouts == NULL)
        return OW_MEMORY;
    for (size_t index = 0; index < plan->layout_count; index++)
        layouts[index] = &plan->layouts[index];
    bool no = ow_html_verdict(&verdict, &findings, 1, plan->bill.part_count);
    const ow_counter_sheet sheet = {.title = plan->job->title != NULL ? plan->job->title : "Plan",
                                    .verdict = ow_text_words(&verdict),
                                    .no = no,
                                    .layouts = layouts,
                                    .layout_count = plan->layout_count,
                                    .bill = &plan->bill,
                                    .assumptions = &plan->assumptions,
                                    .plan = plan};
    ow_status status = ow_html_sheet(text, &sheet);
    ow_release(text->context, layouts);
    ow_text_done_into(&verdict, text);
    return status == OW_OK ? ow_text_status(text) : status;
}
