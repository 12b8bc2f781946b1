/* SPDX-License-Identifier: MIT */
/* What stands behind the size of a screwed end: gender, seat, series, swivel; in any order, each once. */
#ifndef OW_ENDS_OPTIONS_H
#define OW_ENDS_OPTIONS_H

#include "ends/scan.h"

#define OW_WORD_NONE ((size_t)-1)

typedef struct ow_end_options {
    ow_gender gender;
    ow_seat seat;   /* OW_SEAT_NONE: not said */
    char series[8]; /* "10L", or "" */
    bool swivel;
    size_t seat_word, series_word, swivel_word, gender_word; /* OW_WORD_NONE: not said */
} ow_end_options;

/* Reads the words from `first` on. OW_INPUT with the fault told: unknown or doubled word, no gender. */
ow_status ow_end_read_options(const ow_end_scan *scan, size_t first, ow_end_options *options);

/* The word of the grammar for a seat, "" for those that are never written. */
const char *ow_seat_word(ow_seat seat);

/* Fills an end of a form with a size. Each tells its fault. */
ow_status ow_end_settle_thread(const ow_end_scan *scan, const ow_thread *thread, bool said_bspt,
                               const ow_end_options *options, ow_end *end);
ow_status ow_end_settle_size(const ow_end_scan *scan, ow_form form, ow_size_unit unit, int32_t size,
                             const ow_end_options *options, ow_end *end);

#endif
