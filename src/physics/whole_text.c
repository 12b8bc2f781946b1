/* SPDX-License-Identifier: MIT */
#include "physics/whole_text.h"

static void read_document(ow_physics_reading *reading, const ow_yaml_text *yaml, ow_whole_text_reader *reader,
                          void *into)
{
    if (yaml->document_count == 1) {
        reader(reading, ow_yaml_real(yaml->documents[0]), into);
        return;
    }
    const ow_yaml *second = yaml->document_count > 1 ? ow_yaml_real(yaml->documents[1]) : NULL;
    ow_physics_fault(reading, second, "one document",
                     second != NULL ? "write it into a file of its own; --- begins a new document" : NULL,
                     second != NULL ? "a second document" : "there is nothing to read");
}

ow_status ow_whole_text_read(const ow_context *context, const char *file, const char *text, size_t length,
                             ow_whole_text_reader *reader, void *into, ow_assumptions *assumptions,
                             void **storage)
{
    ow_yaml_text yaml;
    ow_status status = ow_yaml_read(context, file, text, length, &yaml);
    if (status != OW_OK)
        return status;
    ow_arena *arena = ow_new_array(context, 1, sizeof *arena);
    if (arena == NULL) {
        status = OW_MEMORY;
        goto done;
    }
    *arena = ow_arena_new(context);
    ow_physics_reading reading = {context, &yaml.source, arena, assumptions, NULL, NULL, OW_OK};
    read_document(&reading, &yaml, reader, into);
    status = reading.status;
    if (status == OW_OK)
        *storage = arena;
    else
        ow_whole_text_free(arena);
done:
    if (status != OW_OK)
        ow_assumptions_done(assumptions);
    ow_yaml_done(&yaml);
    return status;
}

void ow_whole_text_free(void *storage)
{
    ow_arena *arena = storage;
    if (arena == NULL)
        return;
    const ow_context *context = arena->context;
    ow_arena_done(arena);
    ow_release(context, arena);
}
