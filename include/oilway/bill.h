/* SPDX-License-Identifier: MIT */
/* The bill of fittings: parts counted, hoses cut, consumables by size, what is not in the drawer. */
#ifndef OILWAY_BILL_H
#define OILWAY_BILL_H

#include "oilway/card.h"
#include "oilway/layout.h"

/*
 * The card of the joint between node `child` and its parent: the material is that of the softer part, a banjo
 * eye knows its bolt. OW_NONE if the two ends do not join.
 */
ow_status ow_layout_joint_card(const ow_layout *layout, size_t child, ow_card *card);

/* Equal cuts of one hose. */
typedef struct ow_bill_cut {
    double length_m;
    size_t count;
    bool assumed; /* nobody chose the length: reckoned as 1 m */
} ow_bill_cut;

typedef struct ow_bill_line {
    const ow_part *part;
    size_t count;        /* pieces; of a hose: cut lengths */
    double length_m;     /* hose: all cuts together, else OW_NOT_SAID */
    bool length_assumed; /* of one cut at least */
    ow_bill_cut *cuts;   /* hose: in order of first use */
    size_t cut_count, cut_capacity;
    bool has_price;
    int64_t total_cents; /* each piece or cut by itself, as the search and the layout count it */
    bool has_stock;
    double short_by; /* pieces or metres not in the drawer; 0 if all are there */
} ow_bill_line;

typedef struct ow_bill_consumable {
    const char *what; /* "crush ring", "O-ring", "thread sealant", "clamp" */
    const char *size; /* "10 x 13.5 x 1 mm", or "" */
    size_t count;     /* 0: by need (sealant) */
    const char *source;
    const char *note;
} ow_bill_consumable;

typedef struct ow_bill {
    const ow_context *context;
    ow_bill_line *lines; /* in order of first use, source outward */
    size_t line_count;
    ow_bill_consumable *consumables;
    size_t consumable_count;
    size_t part_count; /* as section 3 of docs/layout.md counts */
    int64_t total_cents;
    size_t unpriced_count;
    void *storage;
} ow_bill;

/* The bill of several layouts together. OW_OK or OW_MEMORY. The layouts and catalogue must outlive it. */
ow_status ow_bill_new(const ow_context *context, const ow_layout *layouts, size_t count, ow_bill *bill);
void ow_bill_done(ow_bill *bill);

#endif
