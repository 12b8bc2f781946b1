/* SPDX-License-Identifier: MIT */
/* A layout on a sheet that may hold others. */
#ifndef OW_DRAWING_LAYOUT_SVG_H
#define OW_DRAWING_LAYOUT_SVG_H

#include "drawing/sheet.h"
#include "oilway/finding.h"
#include "oilway/layout.h"

typedef struct ow_layout_look {
    bool bare;          /* without the lists below it */
    bool alone;         /* if bare, without a heading too */
    double most_height; /* of the drawing, mm: words keep their size, parts shrink; 0: free */
} ow_layout_look;

/* Adds a layout's drawing. findings may be NULL. OW_OK, OW_MEMORY. */
ow_status ow_sheet_put_layout(ow_sheet *sheet, const ow_layout *layout, const ow_findings *findings,
                              const ow_layout_look *look);

#endif
