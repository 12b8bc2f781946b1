/* SPDX-License-Identifier: MIT */
/* The rubbers that O-rings are made of, and which fluid and heat each stands. */
#ifndef OILWAY_RING_MATERIAL_H
#define OILWAY_RING_MATERIAL_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/mark.h"

typedef struct ow_ring_material {
    const char *word; /* "NBR" */
    const char *title;
    bool oil, coolant; /* stands it; else it swells, hardens or is attacked */
    double low_c, high_c;
    const char *source;
    ow_mark mark;
} ow_ring_material;
size_t ow_ring_material_count(void);
const ow_ring_material *ow_ring_material_at(size_t index); /* NULL past the end */

/* What a ring sees. All false is "not known": then every fluid and heat is told. */
typedef struct ow_ring_service {
    bool oil, coolant;
    bool has_temperature;
    double temperature_c;
} ow_ring_service;

#define OW_RING_WORDS_SIZE 160
/* Which rubbers stand it: "NBR to 100 C or FKM to 200 C" for oil; where the fluid is not known, for each. */
void ow_ring_rubbers_write(const ow_ring_service *service, char words[OW_RING_WORDS_SIZE]);

#endif
