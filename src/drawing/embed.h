/* SPDX-License-Identifier: MIT */
/* Placing a rigid group of parts. */
#ifndef OW_DRAWING_EMBED_H
#define OW_DRAWING_EMBED_H

#include "drawing/figure.h"

/* Places a node so that the tip of its entry is there, going on in that direction. */
void ow_place_entry(ow_figure *figure, size_t index, ow_spot tip, double direction);
/* Places a group's nodes as they were chosen to lie, its entry (or the source's face) at the origin. */
void ow_place_group(ow_figure *figure, size_t group, ow_spot origin);
/* The box round a group's own parts, as placed. */
ow_box ow_group_bounds(const ow_figure *figure, size_t group);

#endif
