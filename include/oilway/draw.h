/* SPDX-License-Identifier: MIT */
/*
 * Drawings as SVG and sheets as HTML, for the screen and for paper: self-contained (no script, no style sheet
 * of others, nothing fetched), black and white, with a title and a description for those who listen. Lengths
 * in a drawing are millimetres on paper; it is OW_DRAWING_WIDTH_MM wide. docs/drawings.md tells how to read
 * them.
 *
 * Each function appends to `text` and takes its memory through the text's context. OW_OK; OW_MEMORY, with the
 * text then incomplete.
 */
#ifndef OILWAY_DRAW_H
#define OILWAY_DRAW_H

#include "oilway/answer.h"
#include "oilway/check.h"
#include "oilway/plan.h"

#define OW_DRAWING_WIDTH_MM 190

typedef struct ow_draw_options {
    bool bare; /* the figure alone: no heading above, no list of parts, joints and findings below it */
} ow_draw_options;
#define OW_DRAW_OPTIONS_INIT \
    {                        \
        false                \
    }

/*
 * A layout to scale along its run: parts in section, joints lettered with both threads, the way of the fluid,
 * branches, stick-out, the narrowest bore, findings numbered where they occur. findings may be NULL, as
 * ow_check_layout gives them.
 */
ow_status ow_draw_layout_svg(ow_text *text, const ow_layout *layout, const ow_findings *findings,
                             const ow_draw_options *options);
/* Several layouts under one another; findings one for each, or NULL. */
ow_status ow_draw_layouts_svg(ow_text *text, const ow_layout *layouts, const ow_findings *findings,
                              size_t count, const ow_draw_options *options);

/* Every layout of the answers; where there is none, what is missing. */
ow_status ow_draw_answers_svg(ow_text *text, const ow_answers *answers, const ow_draw_options *options);

/*
 * Pressure along a feed, Pa gauge, a curve for each of the first three states; limit_pa is the highest
 * allowed at the turbo, or OW_NOT_SAID. feed and answer as ow_feed_solve takes and gives them.
 */
ow_status ow_draw_pressure_svg(ow_text *text, const ow_feed *feed, const ow_feed_answer *answer,
                               double limit_pa);
/* Natural circulation over the clocking angle: `count` angles in rising order and what the loop does at each;
 * siphon is at the loop's own angle. */
ow_status ow_draw_siphon_svg(ow_text *text, const ow_loop *loop, const ow_siphon *siphon,
                             const double *angles_rad, const ow_siphon *siphons, size_t count);
/* A return as a side elevation along its route: slopes, bores, how full it runs, the pool over the outlet,
 * the sump's level. `home` must have been reckoned. */
ow_status ow_draw_drain_svg(ow_text *text, const ow_plan_return *home, const ow_job_drain *asked);
/* The coolant loop: the housing at its clocking angle, cold in at the low port, hot out at the high one. */
ow_status ow_draw_coolant_svg(ow_text *text, const ow_plan_coolant *coolant);

/* All of a plan's: the layouts that are taken, pressure, drains, coolant. */
ow_status ow_draw_plan_svg(ow_text *text, const ow_plan *plan, const ow_draw_options *options);

/*
 * A made part for a turner: both threads with limits of size, bore, seats, undercuts, hexagon and lengths;
 * marked as a proposal to be checked by a competent person. least_bore_m: what the ask wants, or OW_NOT_SAID.
 */
ow_status ow_draw_sketch_svg(ow_text *text, const ow_missing *missing, double least_bore_m);

/* ---- counter sheets ------------------------------------------------------------------------ */

/*
 * One HTML page each, for A4 and Letter: the job, the drawing, the stack joint by joint, the bill with boxes
 * to tick, findings with mends and sources, assumptions, cautions, a place to sign. Well-formed XML too.
 */

/* The best layout of the first answer that has one; where there is none, what is missing. */
ow_status ow_sheet_answer_html(ow_text *text, const ow_answers *answers);
/* Layout `stack` of the answer to reading `reading`, both from 0, with what the ask itself brought up; where
 * an end was left open, which reading it holds for. OW_RANGE if there is none. */
ow_status ow_sheet_stack_html(ow_text *text, const ow_answers *answers, size_t reading, size_t stack);
ow_status ow_sheet_check_html(ow_text *text, const ow_layout *layouts, const ow_checked *checked);
/* The same with findings one for each layout, or NULL. */
ow_status ow_sheet_layouts_html(ow_text *text, const ow_layout *layouts, const ow_findings *findings,
                                size_t count);
ow_status ow_sheet_plan_html(ow_text *text, const ow_plan *plan);
/* The style sheet that stands in every page: for a server whose policy must name its hash. */
const char *ow_sheet_style(void);

#endif
