/* SPDX-License-Identifier: MIT */
/* Layouts from a YAML text: one document, one layout. */
#include <string.h>

#include "layout/reading.h"

static void read_from(ow_reading *reading, const ow_yaml *map)
{
    const ow_yaml *from =
        ow_yaml_need_such(reading->context, reading->source, map, "from", "from: brockle-4:gallery");
    ow_named named;
    reading->leaf_count = 1;
    reading->leaves[0] = (ow_leaf){.given = {.name = "from", .role = OW_ROLE_SOURCE}, .words = "from"};
    if (!from) {
        ow_reading_note(reading, OW_INPUT);
        return;
    }
    if (from->kind != OW_YAML_SCALAR) {
        ow_reading_fault(reading, from->span, "MACHINE:PORT, or an end in quotes", NULL,
                         "\"from\" is not a port");
        return;
    }
    if (!ow_reading_find(reading, from->words, from->span, &named))
        return;
    if (named.part) {
        ow_reading_fault(reading, from->span, "a given port", NULL, "\"%.60s\" is a part", from->words);
        return;
    }
    reading->leaves[0].given = named.given;
    reading->leaves[0].given.role = OW_ROLE_SOURCE;
}

static void read_head(ow_reading *reading, const ow_yaml *map)
{
    static const char *const known[] = {"layout", "circuit", "from", "asked", "parts"};
    static const char *const circuits[] = {"feed", "drain", "coolant"};
    ow_reading_note(reading, ow_yaml_known_keys(reading->context, reading->source, map, known,
                                                sizeof known / sizeof *known));
    const ow_yaml *title = ow_yaml_member(map, "layout"), *circuit = ow_yaml_member(map, "circuit");
    size_t choice;
    if (title && title->kind != OW_YAML_SCALAR)
        ow_reading_fault(reading, title->span, "a title", NULL, "\"layout\" is not a title");
    else if (title)
        reading->layout->title = ow_reading_copy(reading, title->words);
    if (circuit && !ow_yaml_is_null(circuit)) {
        ow_status status = ow_yaml_choice(reading->context, reading->source, circuit, circuits, 3, &choice);
        ow_reading_note(reading, status);
        if (status == OW_OK)
            reading->layout->circuit = (ow_circuit)(choice + 1);
    }
    read_from(reading, map);
}

/* Where nobody says it, the circuit is that of the source's port, else of the first port served. */
static void find_circuit(ow_reading *reading)
{
    for (size_t i = 0; i < reading->leaf_count && reading->layout->circuit == OW_CIRCUIT_NONE; i++)
        if (reading->leaves[i].given.port)
            reading->layout->circuit = reading->leaves[i].given.port->circuit;
}

static void hand_over(ow_reading *reading)
{
    ow_layout *layout = reading->layout;
    layout->nodes =
        ow_arena_get_array(ow_layout_arena(layout), reading->node_count + 1, sizeof *layout->nodes);
    if (!layout->nodes) {
        ow_reading_note(reading, OW_MEMORY);
        return;
    }
    memcpy(layout->nodes, reading->nodes, reading->node_count * sizeof *layout->nodes);
    layout->node_count = reading->node_count;
    ow_layout_number(layout);
}

/* What a program is given by --json is not what another command reads: a slip that is told as such. */
static bool is_answer(ow_reading *reading, const ow_yaml *map)
{
    const ow_yaml *first = map->kind == OW_YAML_MAP ? ow_yaml_member(map, "stacks") : NULL;
    if (first == NULL && map->kind == OW_YAML_MAP)
        first = ow_yaml_member(map, "circuits");
    if (first == NULL)
        return false;
    ow_reading_fault(reading, first->key_span, "a layout", "have it written with --format yaml",
                     "this is an answer in JSON");
    return true;
}

static void read_body(ow_reading *reading, const ow_yaml *map)
{
    const ow_yaml *asked = ow_yaml_member(map, "asked");
    if (is_answer(reading, map))
        return;
    read_head(reading, map);
    const ow_yaml *parts = ow_yaml_need_such(reading->context, reading->source, map, "parts",
                                             "parts: [tf-2-4, \"-4 flare37 female swivel\"]");
    if (!parts)
        ow_reading_note(reading, OW_INPUT);
    else
        ow_reading_parts(reading, parts);
    find_circuit(reading);
    ow_reading_asked(reading, asked);
    if (reading->status == OW_OK)
        ow_reading_roles(reading, asked);
    if (reading->status == OW_OK)
        hand_over(reading);
}

static ow_status read_layout(const ow_context *context, const ow_catalog *catalog, const ow_source *source,
                             const ow_yaml *map, ow_layout *layout)
{
    ow_status status = ow_layout_begin(context, layout);
    if (status != OW_OK)
        return status;
    ow_reading reading = {.context = context, .catalog = catalog, .source = source, .layout = layout};
    reading.file = source->name ? ow_reading_copy(&reading, source->name) : NULL;
    ow_reading_note(&reading, ow_yaml_is_document(context, source, map, OW_DOCUMENT_LAYOUT));
    if (reading.status == OW_OK && map->kind == OW_YAML_MAP)
        read_body(&reading, map);
    else if (reading.status == OW_OK)
        ow_reading_fault(&reading, map->span, "a map with \"layout\", \"from\" and \"parts\"", NULL,
                         "this is not a layout");
    if (reading.faults >= OW_LAYOUT_FAULTS_MAX)
        ow_report(context, OW_ERROR, OW_INPUT, source->name, NULL, NULL,
                  "more than %d faults: the rest of this layout was not read", OW_LAYOUT_FAULTS_MAX);
    ow_release(context, reading.nodes);
    if (reading.status != OW_OK)
        ow_layout_free(layout);
    return reading.status;
}

static ow_status read_documents(const ow_context *context, const ow_catalog *catalog,
                                const ow_yaml_text *yaml, ow_layout *made, size_t *count)
{
    ow_status worst = OW_OK;
    size_t failed = 0;
    *count = 0;
    for (size_t i = 0; i < yaml->document_count && worst != OW_MEMORY && failed < OW_LAYOUT_FAULTS_MAX; i++) {
        const ow_yaml *document = ow_yaml_real(yaml->documents[i]);
        if (ow_yaml_is_null(document))
            continue;
        ow_status status = read_layout(context, catalog, &yaml->source, document, &made[*count]);
        *count += status == OW_OK;
        failed += status != OW_OK;
        worst = status == OW_OK ? worst : status;
    }
    if (worst == OW_OK && *count == 0)
        worst = ow_report(context, OW_ERROR, OW_INPUT, yaml->source.name,
                          "a map with \"layout\", \"from\" and \"parts\"", NULL, "there is no layout in it");
    return worst;
}

ow_status ow_layouts_read(const ow_context *context, const ow_catalog *catalog, const char *file,
                          const char *text, size_t length, ow_layout **layouts, size_t *count)
{
    ow_yaml_text yaml;
    size_t made_count = 0;
    if (length > OW_LAYOUT_BYTES_MAX)
        return ow_report(context, OW_ERROR, OW_LIMIT, file, "at most 1 MiB", NULL, "the layout is too large");
    ow_status status = ow_yaml_read(context, file, text, length, &yaml);
    if (status != OW_OK)
        return status;
    ow_layout *made = ow_new_array(context, yaml.document_count + 1, sizeof *made);
    status = made ? read_documents(context, catalog, &yaml, made, &made_count) : OW_MEMORY;
    ow_yaml_done(&yaml);
    if (status != OW_OK) {
        ow_layouts_free(context, made, made_count);
        return status;
    }
    *layouts = made;
    *count = made_count;
    return OW_OK;
}
