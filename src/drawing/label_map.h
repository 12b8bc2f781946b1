/* SPDX-License-Identifier: MIT */
/*
 * Which places are taken by obstacles: a grid of half millimetres over the paper with running sums (Crow
 * 1984, summed-area tables), so that a box is asked about in four look-ups however many obstacles there are.
 */
#ifndef OW_DRAWING_LABEL_MAP_H
#define OW_DRAWING_LABEL_MAP_H

#include "drawing/labels.h"

typedef struct ow_label_map {
    const ow_context *context;
    unsigned *sums; /* (columns + 1) by (rows + 1) */
    size_t columns, rows;
    double x, y; /* of its corner */
} ow_label_map;

/* Obstacles widened by a gap. OW_OK, OW_MEMORY: *map is empty then. */
ow_status ow_label_map_new(const ow_labels *labels, double gap, ow_label_map *map);
void ow_label_map_done(ow_label_map *map);
/* Whether no obstacle is in a box; a box within half a millimetre of one may count as not free. */
bool ow_label_map_is_free(const ow_label_map *map, const ow_box *box);

#endif
