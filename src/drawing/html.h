/* SPDX-License-Identifier: MIT */
/* The pieces of a counter sheet: plain HTML with one style sheet of its own, headings in order, tables with
 * their headings, nothing that runs and nothing that is fetched. */
#ifndef OW_DRAWING_HTML_H
#define OW_DRAWING_HTML_H

#include "drawing/canvas.h"
#include "oilway/draw.h"

/* What a sheet is made of; what is NULL or 0 is left out. */
typedef struct ow_counter_sheet {
    const char *title;
    const char *verdict; /* beside the title */
    bool no;             /* it is not to be built so */
    const ow_layout *const *layouts;
    const ow_findings *const *findings; /* one for each layout, or NULL */
    size_t layout_count;
    const ow_bill *bill;
    const ow_assumptions *assumptions;
    const char *reading, *decide; /* what an open end was read as, and what tells its readings apart */
    const ow_plan *plan; /* with its own findings and figures: of its layouts only the feed is drawn */
} ow_counter_sheet;

/* A whole page. OW_OK, OW_MEMORY. */
ow_status ow_html_sheet(ow_text *text, const ow_counter_sheet *sheet);
/* A page up to its first element, and its end. look: attributes of its main element, "" for none. */
void ow_html_begin(ow_text *text, const char *title, const char *look);
void ow_html_end(ow_text *text);

/* ---- pieces ---------------------------------------------------------------------------------- */

/* <name>words</name>, escaped. */
void ow_html_element(ow_text *text, const char *name, const char *words);
/* A table up to its first row; headings are separated by '|', one that begins with '#' is of figures, a
 * number behind ':' is the column's width in hundredths (of those that the style sheet has). */
void ow_html_table_begin(ow_text *text, const char *caption, const char *headings);
void ow_html_table_end(ow_text *text);
/* The headings alone. */
void ow_html_table_head(ow_text *text, const char *headings);
/* A cell; figures stand to the right. */
void ow_html_cell(ow_text *text, const char *words);
void ow_html_figure_cell(ow_text *text, const char *words);
/* A box to tick, with a name for those who listen. */
void ow_html_tick_cell(ow_text *text, const char *what);

/* One of the facts at the head of a sheet: nothing where there is no value. */
void ow_html_fact(ow_text *text, const char *name, const char *value);
/* One of the signs of a drawing (drawing/marks.h) among words; frees the canvas. */
void ow_html_mark(ow_text *text, ow_canvas *canvas, const char *name);

/* html_sheet.c: what a layout joins, in words; an h2 that says it. */
void ow_html_layout_title(ow_text *text, const ow_layout *layout);
void ow_html_layout_heading(ow_text *text, const ow_layout *layout);
/* html_sheet.c: parts and findings counted, for the box beside the title; whether something is wrong.
 * findings NULL: nothing was checked. */
bool ow_html_verdict(ow_text *verdict, const ow_findings *const *findings, size_t count, size_t parts);
/* html_answers.c: that the sheet stands and falls with a reading; nothing where it is NULL. */
void ow_html_reading(ow_text *text, const char *reading, const char *decide);
/* html_joints.c */
void ow_html_joints(ow_text *text, const ow_layout *const *layouts, size_t count);
void ow_html_joint_cautions(ow_text *text, const ow_layout *const *layouts, size_t count);
/* html_bill.c */
void ow_html_bill(ow_text *text, const ow_bill *bill);
/* html_lists.c */
void ow_html_findings(ow_text *text, const ow_findings *findings);
void ow_html_assumptions(ow_text *text, const ow_assumptions *assumptions);
void ow_html_cautions(ow_text *text, ow_circuit circuit);
void ow_html_signature(ow_text *text, const char *first, const char *second);
/* html_plan.c: what a job says at the head; the order of work. */
void ow_html_job_facts(ow_text *text, const ow_plan *plan);
void ow_html_order_of_work(ow_text *text, const ow_plan *plan);
/* html_figures.c: the feed drawn; pressure by state, drains and coolant loops in columns. OW_OK, OW_MEMORY.
 */
ow_status ow_html_figures(ow_text *text, const ow_plan *plan);

#endif
