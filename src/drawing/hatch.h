/* SPDX-License-Identifier: MIT */
/* Hatching of cut surfaces: lines at 45 degrees through some regions and not through others. */
#ifndef OW_DRAWING_HATCH_H
#define OW_DRAWING_HATCH_H

#include "drawing/canvas.h"

#define OW_REGION_SPOTS 64
#define OW_HATCH_REGIONS 12

typedef struct ow_region { /* closed; mm on the paper */
    ow_spot spots[OW_REGION_SPOTS];
    size_t count;
} ow_region;

typedef struct ow_hatch {
    const ow_region *cut[OW_HATCH_REGIONS];  /* hatched: all of them together */
    const ow_region *open[OW_HATCH_REGIONS]; /* not hatched */
    size_t cut_count, open_count;
    double spacing;
    bool falling; /* lines from top left to bottom right; else rising */
} ow_hatch;

/* Lines of one spacing fall into one another wherever they are begun, so that regions may overlap. */
void ow_hatch_draw(ow_canvas *canvas, const ow_hatch *hatch);

void ow_region_put(ow_region *region, ow_spot spot);
/* Makes the region a shape on the canvas, closed; the caller ends it. */
void ow_region_shape(ow_canvas *canvas, const ow_region *region);

#endif
