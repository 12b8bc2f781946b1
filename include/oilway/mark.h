/* SPDX-License-Identifier: MIT */
/* How far a figure can be trusted: every table carries it beside its source. */
#ifndef OILWAY_MARK_H
#define OILWAY_MARK_H

typedef enum ow_mark {
    OW_MARK_PUBLISHED,   /* P: seen in a public copy */
    OW_MARK_FROM_MEMORY, /* M: published, quoted from memory */
    OW_MARK_DERIVED,     /* D: derived or computed, and checked by a second route */
    OW_MARK_PRACTICE,    /* C: common practice */
    OW_MARK_ASSUMED      /* A: an assumption of this program */
} ow_mark;
/* "published", "published, from memory", "derived", "common practice", "assumption". */
const char *ow_mark_words(ow_mark mark);

#endif
