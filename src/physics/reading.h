/* SPDX-License-Identifier: MIT */
/* What the readers of LINE and LOOP share: one text, one arena, and a status that remembers the worst. */
#ifndef OW_PHYSICS_READING_H
#define OW_PHYSICS_READING_H

#include "oilway/assumption.h"
#include "oilway/oil.h"
#include "yaml/yaml.h"

typedef struct ow_physics_reading {
    const ow_context *context;
    const ow_source *source;
    ow_arena *arena; /* what is read lives there */
    ow_assumptions *assumptions;
    ow_piece *wanted;         /* the piece written `restrictor: wanted`, or NULL */
    const ow_yaml *wanted_at; /* where it was written */
    ow_status status;         /* the worst so far; OW_MEMORY beats OW_INPUT */
} ow_physics_reading;

/* A quantity's key, dimension and range, SI. */
typedef struct ow_physics_field {
    const char *key;
    ow_dimension dimension;
    double low, high;
} ow_physics_field;

/* Remembers a status; true if it was OW_OK. */
bool ow_physics_note(ow_physics_reading *reading, ow_status status);
/* Reports a fault at a node, and remembers it. */
void ow_physics_fault(ow_physics_reading *reading, const ow_yaml *node, const char *expected,
                      const char *mend, const char *message_format, ...)
    __attribute__((format(printf, 5, 6)));
/* Reads a member that must be there; *value is untouched on a fault. */
void ow_physics_need(ow_physics_reading *reading, const ow_yaml *map, const ow_physics_field *field,
                     double *value);
/* Reads a member that may be there; false, *value untouched, if it is not. */
bool ow_physics_may(ow_physics_reading *reading, const ow_yaml *map, const ow_physics_field *field,
                    double *value);
/* A member's words, copied; `otherwise` where there is none. */
const char *ow_physics_words(ow_physics_reading *reading, const ow_yaml *map, const char *key,
                             const char *otherwise);
/* Whether the node is a map; reports if not, and every key that is not known. */
bool ow_physics_map(ow_physics_reading *reading, const ow_yaml *node, const char *const *known, size_t count);
/* An oil: a grade, or a map of kv40, kv100 and rho15. */
void ow_physics_oil(ow_physics_reading *reading, const ow_yaml *node, ow_oil *oil);
/* A list of pieces in the arena; `wanted` allowed where may_want. */
void ow_physics_pieces(ow_physics_reading *reading, const ow_yaml *node, bool may_want,
                       const ow_piece **pieces, size_t *count);

#endif
