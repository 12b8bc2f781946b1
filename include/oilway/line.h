/* SPDX-License-Identifier: MIT */
/*
 * A LINE and a LOOP: a feed and a coolant loop written down as YAML, piece by piece, without a catalogue.
 * docs/physics.md gives the keys.
 */
#ifndef OILWAY_LINE_H
#define OILWAY_LINE_H

#include "oilway/coolant.h"
#include "oilway/feed.h"

typedef struct ow_line {
    ow_feed feed; /* everything it points to is the line's */
    ow_assumptions assumptions;
    void *storage;
} ow_line;

/*
 * Reads a LINE of one document. All faults are reported, with their places. OW_INPUT, OW_LIMIT, OW_MEMORY:
 * *line untouched. The caller frees it with ow_line_free; `text` need not outlive the call, the context must.
 */
ow_status ow_line_read(const ow_context *context, const char *file, const char *text, size_t length,
                       ow_line *line);
void ow_line_free(ow_line *line);

typedef struct ow_loop_text {
    ow_loop loop;
    ow_assumptions assumptions;
    void *storage;
} ow_loop_text;

/* Reads a LOOP, as ow_line_read. */
ow_status ow_loop_read(const ow_context *context, const char *file, const char *text, size_t length,
                       ow_loop_text *loop);
void ow_loop_free(ow_loop_text *loop);

#endif
