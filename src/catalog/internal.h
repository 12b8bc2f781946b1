/* SPDX-License-Identifier: MIT */
/* What a loaded catalogue is inside, and the state of one load. */
#ifndef OW_CATALOG_INTERNAL_H
#define OW_CATALOG_INTERNAL_H

#include "catalog/record.h"

#define OW_CATALOG_RECORDS_MAX ((size_t)1000 * 1000)
#define OW_CATALOG_COLUMNS_MAX 64

/* How to mend a row of a table that has not a cell for each column. */
#define OW_CELLS_TOO_FEW "write ~ for what is not known"
#define OW_CELLS_TOO_MANY "write a point for a decimal comma, and put quotes around a text that holds a comma"

/* One id: a part, a fixture or a machine, and where it is written. */
typedef struct ow_entry {
    ow_part *part; /* NULL: a machine */
    ow_machine *machine;
    ow_port *ports; /* the machine's */
    size_t folder;
    const ow_source *source;
    ow_span span; /* of the id */
} ow_entry;

/* An id that a later folder wrote anew. */
typedef struct ow_replaced {
    const char *id;
    ow_place before;
    const ow_source *source;
    ow_span span;
} ow_replaced;

/* A text that was read; check shows lines of it. */
typedef struct ow_kept_text {
    ow_source source;
    char *bytes; /* its text, a block of its own */
} ow_kept_text;

struct ow_catalog {
    const ow_context *context;
    ow_arena arena;
    ow_entry *entries;
    size_t entry_count, entry_capacity;
    ow_map ids; /* to entries */
    const ow_part **parts, **fixtures;
    const ow_machine **machines;
    size_t part_count, fixture_count, machine_count, page_count;
    const char **left_out;
    size_t left_out_count, left_out_capacity;
    ow_replaced *replaced;
    size_t replaced_count, replaced_capacity;
    ow_kept_text **texts;
    size_t text_count, text_capacity;
};

typedef struct ow_stock_row {
    const char *id;
    double quantity; /* OW_NOT_SAID: left as it is */
    ow_said_price price;
    size_t folder;
    const ow_source *source;
    ow_span span; /* of the id */
} ow_stock_row;

/* One load under way. */
typedef struct ow_loading {
    ow_context context; /* the caller's, but counting errors, which skip_bad makes warnings */
    const ow_context *outer;
    const ow_catalog_options *options;
    ow_catalog *catalog;
    ow_reader reader;
    size_t folder; /* the one being read, counted from 0 */
    size_t errors;
    size_t faults;                    /* of the text being read */
    bool lone_returns;                /* it has lines that end with a CR alone */
    size_t cursor_line, cursor_start; /* of the text being read: a line known already, and where it starts */
    ow_stock_row *stock;
    size_t stock_count, stock_capacity;
    ow_map stock_ids; /* to stock rows */
    ow_map left_ids;  /* ids of faulty records: what names them is not blamed */
} ow_loading;

ow_status ow_page_read(ow_loading *loading, const ow_yaml *document);
ow_status ow_stock_page_read(ow_loading *loading, const ow_yaml *map);
/* Lays the stock rows over the parts. */
ow_status ow_stock_apply(ow_loading *loading);
/* A record that was read without fault enters the catalogue; an id written twice is reported. */
ow_status ow_load_record(ow_loading *loading, ow_draft *draft, ow_span id_span);
ow_status ow_load_leave_out(ow_loading *loading, const char *prefix, const char *name);
/* Line and column of an offset; cheap when offsets grow. */
ow_place ow_load_place(ow_loading *loading, size_t offset);

#endif
