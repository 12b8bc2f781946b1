/* SPDX-License-Identifier: MIT */
/* One YAML document read into a struct whose pointers live in an arena of its own. */
#ifndef OW_PHYSICS_WHOLE_TEXT_H
#define OW_PHYSICS_WHOLE_TEXT_H

#include "physics/reading.h"

typedef void ow_whole_text_reader(ow_physics_reading *reading, const ow_yaml *map, void *into);

/*
 * Reads one document with the reader given. On a fault the assumptions are emptied and *storage is untouched;
 * else it is freed with ow_whole_text_free.
 */
ow_status ow_whole_text_read(const ow_context *context, const char *file, const char *text, size_t length,
                             ow_whole_text_reader *reader, void *into, ow_assumptions *assumptions,
                             void **storage);
void ow_whole_text_free(void *storage);

#endif
