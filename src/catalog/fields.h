/* SPDX-License-Identifier: MIT */
/*
 * What a record of the catalogue may say, as data: one row for each key. The reader walks these rows,
 * and the tables in docs/catalogue.md are held against them by a test. A new field is a new row.
 */
#ifndef OW_CATALOG_FIELDS_H
#define OW_CATALOG_FIELDS_H

#include "catalog/kinds.h"

typedef enum ow_field_type {
    OW_FIELD_ID,        /* const char * */
    OW_FIELD_WORDS,     /* const char * */
    OW_FIELD_LIST,      /* const char *: one word or a list, joined by ", " */
    OW_FIELD_QUANTITY,  /* double, SI */
    OW_FIELD_NUMBER,    /* double, bare */
    OW_FIELD_RANGE,     /* ow_said_range */
    OW_FIELD_COUNT,     /* int, whole */
    OW_FIELD_CHOICE,    /* int: place in `choices` + 1 */
    OW_FIELD_FLAGS,     /* unsigned: one word or a list, bit 0 for the first of `choices` */
    OW_FIELD_YES,       /* bool */
    OW_FIELD_PRICE,     /* ow_said_price */
    OW_FIELD_PLACE,     /* ow_said_vector: three lengths, m */
    OW_FIELD_DIRECTION, /* ow_said_vector: three bare numbers, made a unit vector */
    OW_FIELD_END,       /* ow_end, whole */
    OW_FIELD_PORTS      /* the machine's ports */
} ow_field_type;

typedef struct ow_said_range {
    bool said;
    double low, high;
} ow_said_range;

typedef struct ow_said_price {
    bool said;
    int64_t cents;
} ow_said_price;

typedef struct ow_said_vector {
    bool said;
    double v[3];
} ow_said_vector;

/* A record while it is being read: where the fields land. */
typedef struct ow_draft {
    ow_part part; /* id, title and note also for machines */
    ow_said_range temperature;
    ow_said_price price;
    double bore_m, run_bore_m, branch_bore_m, side_bore_m;
    int bearing, restrictor, size; /* place in choices + 1; 0 = not said */
    double coolant_apart_m;
    size_t port_count;
    ow_port *ports;
    uint64_t said;           /* a bit for each field written, right or wrong */
    unsigned ends_said;      /* a bit for each of the kind's ends written */
    unsigned alternate_said; /* the same for its alternate set */
} ow_draft;

typedef struct ow_port_draft {
    ow_port port;
    int circuit;
    ow_said_vector position, direction;
} ow_port_draft;

typedef struct ow_stock_draft {
    const char *id;
    double quantity;
    ow_said_price price;
} ow_stock_draft;

#define OW_FIELD_CHOICES 4
typedef struct ow_field {
    const char *key;
    ow_field_type type;
    ow_dimension dimension; /* QUANTITY, RANGE */
    double low, high;       /* of numbers: least and most, SI */
    uint32_t kinds;         /* a bit for each kind that may say it */
    uint32_t needed;        /* a bit for each kind that must */
    size_t offset;          /* where it lands in the draft */
    const char *choices[OW_FIELD_CHOICES];
    const char *says; /* what it holds, for the reference */
} ow_field;

typedef struct ow_field_table {
    const ow_field *fields;
    size_t count;
} ow_field_table;

ow_field_table ow_record_fields(void); /* ow_draft; beside the ends, which the kinds name */
ow_field_table ow_port_fields(void);   /* ow_port_draft; kinds not used */
ow_field_table ow_stock_fields(void);  /* ow_stock_draft; kinds not used */

const ow_field *ow_field_find(ow_field_table table, const char *key); /* NULL if there is none */

#endif
