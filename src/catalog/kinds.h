/* SPDX-License-Identifier: MIT */
/* The kinds of record and the words of their ends, in order. */
#ifndef OW_CATALOG_KINDS_H
#define OW_CATALOG_KINDS_H

#include "oilway/catalog.h"

typedef struct ow_kind_row {
    const char *word;
    bool is_part;
    const char *ends[OW_PART_ENDS];      /* NULL-filled */
    const char *alternate[OW_PART_ENDS]; /* a second set of ends that the kind may have; NULL-filled */
} ow_kind_row;

/* One row for each kind, in the order of ow_kind. */
const ow_kind_row *ow_kind_row_of(ow_kind kind);
/* The kind of that word, or OW_KIND_COUNT. */
ow_kind ow_kind_find(const char *word);
bool ow_kind_is_machine(ow_kind kind);
/* Number of words in a set of ends. */
size_t ow_kind_end_count(const char *const ends[OW_PART_ENDS]);
/* Place of the key in a set of ends, or OW_PART_ENDS. */
size_t ow_kind_end_slot(const char *const ends[OW_PART_ENDS], const char *key);

#endif
