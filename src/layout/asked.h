/* SPDX-License-Identifier: MIT */
/* The keys of `asked`, in the words of the command's options: one table for reading and writing. */
#ifndef OW_LAYOUT_ASKED_H
#define OW_LAYOUT_ASKED_H

#include "oilway/layout.h"
#include "oilway/quantity.h"

typedef enum ow_asked_type {
    OW_ASKED_QUANTITY, /* double; OW_NOT_SAID = not asked */
    OW_ASKED_RANGE,    /* two doubles, one behind the other */
    OW_ASKED_CHOICE,   /* an enum of the size of int: place in `choices` */
    OW_ASKED_YES,      /* bool */
    OW_ASKED_UNLESS,   /* bool, the other way round: the key says what the limit refuses */
    OW_ASKED_DEGREES   /* temperature_c, and has_temperature */
} ow_asked_type;

#define OW_ASKED_CHOICES 4
typedef struct ow_asked_key {
    const char *key;
    ow_asked_type type;
    ow_dimension dimension;
    double low, high; /* SI */
    size_t offset;    /* in ow_limits */
    const char *choices[OW_ASKED_CHOICES];
    ow_circuit refuses; /* OW_ASKED_UNLESS: the circuit that refuses it where nobody says */
} ow_asked_key;

size_t ow_asked_key_count(void);
const ow_asked_key *ow_asked_key_at(size_t index);
const ow_asked_key *ow_asked_key_find(const char *key); /* NULL if there is none */

#endif
