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

#define OW_DRAWING_WIDTH_MM 190

typedef struct ow_draw_options {
    bool bare; /* the figure alone: no list of parts, joints and findings below it */
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

#endif
