/* SPDX-License-Identifier: MIT */
/* A layout on a sheet that may hold others. */
#ifndef OW_DRAWING_LAYOUT_SVG_H
#define OW_DRAWING_LAYOUT_SVG_H

#include "drawing/sheet.h"
#include "oilway/finding.h"
#include "oilway/layout.h"

/* Adds a layout's drawing, with the lists below it unless bare; one that is bare and alone has no heading
 * either. findings may be NULL. OW_OK, OW_MEMORY. */
ow_status ow_sheet_put_layout(ow_sheet *sheet, const ow_layout *layout, const ow_findings *findings,
                              bool bare, bool alone);

#endif
