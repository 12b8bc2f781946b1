/* SPDX-License-Identifier: MIT */
/* One layout while it is being read. */
#ifndef OW_LAYOUT_READING_H
#define OW_LAYOUT_READING_H

#include "layout/storage.h"
#include "yaml/yaml.h"

#define OW_LAYOUT_NODES_MAX 2000
#define OW_LAYOUT_BYTES_MAX ((size_t)1024 * 1024)

/* A given port as the tree names it. */
typedef struct ow_leaf {
    ow_given given;
    const char *words; /* as written in the canonical way: id, machine:port, or the END */
    size_t occurrence; /* 1 for the first leaf of these words in walking order */
    bool behind_hose;
    bool role_said; /* under `asked` */
    size_t rank;    /* place among the ports of its role */
} ow_leaf;

#define OW_LEAVES_MAX (1 + OW_PORTS_MAX) /* the source is leaf 0 */

typedef struct ow_reading {
    const ow_context *context;
    const ow_catalog *catalog;
    const ow_source *source;
    ow_layout *layout;
    const char *file; /* in the layout's arena */
    ow_layout_node *nodes;
    size_t node_count, node_capacity;
    ow_leaf leaves[OW_LEAVES_MAX];
    size_t leaf_count;
    ow_status status; /* the worst so far */
    size_t faults;
} ow_reading;

/* So many faults of one layout are told; then the rest of it is not read. */
#define OW_LAYOUT_FAULTS_MAX 200
/* Whether there is no sense in reading on. */
bool ow_reading_enough(const ow_reading *reading);

/* Takes note of a status: memory and limits stay, a fault of the input is remembered. */
void ow_reading_note(ow_reading *reading, ow_status status);
/* Reports a fault at a span. */
void ow_reading_fault(ow_reading *reading, ow_span span, const char *expected, const char *mend,
                      const char *format, ...) __attribute__((format(printf, 5, 6)));
/* The same for a word that is not known, with the nearest (may be NULL) as "did you mean …?". */
void ow_reading_unknown(ow_reading *reading, ow_span span, const char *expected, const char *nearest,
                        const char *what, const char *word);
/* A copy in the layout's arena; "" and a note when out of memory. */
const char *ow_reading_copy(ow_reading *reading, const char *words);

/* What a word of a layout names: a part of the catalogue, or a given port. */
typedef struct ow_named {
    const ow_part *part; /* NULL: `given` holds */
    ow_given given;
    const char *words; /* of the given port */
} ow_named;
/* False, and reported, if it names neither. */
bool ow_reading_find(ow_reading *reading, const char *words, ow_span span, ow_named *named);

/* The tree under `parts`. */
void ow_reading_parts(ow_reading *reading, const ow_yaml *parts);
/* The block `asked` (may be NULL). */
void ow_reading_asked(ow_reading *reading, const ow_yaml *asked);
/* Which leaf is to be served and which is kept, its name and its place: settled when all are known. */
void ow_reading_roles(ow_reading *reading, const ow_yaml *asked);

/* The roles that leaves have where nobody says. Shared with the writer. */
ow_role ow_leaf_usual_role(const ow_leaf *leaves, size_t count, size_t leaf);

#endif
