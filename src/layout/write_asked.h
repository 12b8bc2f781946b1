/* SPDX-License-Identifier: MIT */
/* The line `asked` of a layout. */
#ifndef OW_LAYOUT_WRITE_ASKED_H
#define OW_LAYOUT_WRITE_ASKED_H

#include "oilway/layout.h"

/* Appends "asked: {…}\n", or nothing when there is nothing to say. */
void ow_write_asked(ow_text *text, const ow_layout *layout);
/* A given port as a layout names it: machine:port, an id, or an END in quotes. */
void ow_write_given(ow_text *text, const ow_given *given, size_t occurrence);

#endif
