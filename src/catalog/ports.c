/* SPDX-License-Identifier: MIT */
/* The named ports of a machine. */
#include <string.h>

#include "base/words.h"
#include "catalog/reader.h"

#define KEYS_MAX 16

static ow_status unknown_key(ow_reader *reader, ow_field_table table, const char *of, const ow_yaml *member)
{
    const char *known[KEYS_MAX];
    ow_text expected = ow_text_new(reader->context);
    for (size_t i = 0; i < table.count && i < KEYS_MAX; i++) {
        known[i] = table.fields[i].key;
        ow_text_format(&expected, "%s%s", i ? ", " : "one of ", known[i]);
    }
    ow_status status = ow_text_status(&expected);
    if (status == OW_OK)
        status = ow_misspelt(reader->context, reader->source, member->key_span, ow_text_words(&expected),
                             ow_words_nearest(member->key, strlen(member->key), known, table.count),
                             "unknown key \"%.60s\" in %s", member->key, of);
    ow_text_done(&expected);
    return status;
}

ow_status ow_fields_read(ow_reader *reader, ow_field_table table, const char *of, const ow_yaml *map,
                         void *draft, uint64_t *said)
{
    ow_status worst = OW_OK;
    for (const ow_yaml *member = map->first; member && worst != OW_MEMORY && !ow_reader_enough(reader);
         member = member->next) {
        const ow_field *field = ow_field_find(table, member->key);
        ow_status status;
        if (!field) {
            status = unknown_key(reader, table, of, member);
        } else {
            *said |= UINT64_C(1) << (field - table.fields);
            status = ow_field_read(reader, field, ow_yaml_real(member), draft);
        }
        worst = status == OW_OK ? worst : status;
    }
    return worst;
}

static ow_status remember_held(ow_reader *reader, const ow_yaml *node, const ow_port *port)
{
    if (port->holds[0] == '\0')
        return OW_OK;
    ow_status status = ow_grow(reader->context, (void **)&reader->held, &reader->held_capacity,
                               reader->held_count + 1, sizeof *reader->held);
    if (status == OW_OK)
        reader->held[reader->held_count++] = (ow_held){reader->source, node->span, port->holds, port->name};
    return status;
}

static ow_status read_port(ow_reader *reader, const ow_yaml *member, ow_port *port)
{
    ow_port_draft draft = {
        .port = {.bore_m = OW_NOT_SAID, .pressure_pa = OW_NOT_SAID, .holds = "", .note = ""}};
    const ow_yaml *map = ow_yaml_real(member);
    uint64_t said = 0;
    ow_status status = ow_reader_id(reader, "ports", member->key, member->key_span);
    if (map->kind != OW_YAML_MAP)
        return ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, map->span,
                                "a map such as {end: 1/8-27 NPT female, circuit: feed}", NULL,
                                "port \"%s\" is not a map", member->key);
    ow_status fields = ow_fields_read(reader, ow_port_fields(), "a port", map, &draft, &said);
    status = fields == OW_OK ? status : fields;
    if (status != OW_MEMORY && ow_yaml_is_null(ow_yaml_member(map, "end")))
        return ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, member->key_span,
                                "\"end\", such as \"end: 1/8-27 NPT female\"", NULL,
                                "port \"%s\" does not say its end", member->key);
    if (status != OW_OK)
        return status;
    *port = draft.port;
    port->name = ow_reader_words(reader, member->key);
    port->circuit = (ow_circuit)draft.circuit;
    port->has_position = draft.position.said;
    port->has_direction = draft.direction.said;
    memcpy(port->position_m, draft.position.v, sizeof port->position_m);
    memcpy(port->direction, draft.direction.v, sizeof port->direction);
    port->place = ow_reader_place(reader, member->key_span);
    return port->name ? remember_held(reader, ow_yaml_member(map, "holds"), port) : OW_MEMORY;
}

ow_status ow_ports_read(ow_reader *reader, const ow_yaml *node, size_t *count, ow_port **ports)
{
    if (node->kind != OW_YAML_MAP || node->count == 0 || node->count > OW_MACHINE_PORTS_MAX)
        return ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, node->span,
                                "a map of 1 to 64 named ports", NULL, "\"ports\" is not a map of ports");
    ow_port *read = ow_arena_get_array(reader->arena, node->count, sizeof *read);
    if (!read)
        return OW_MEMORY;
    ow_status worst = OW_OK;
    size_t at = 0;
    for (const ow_yaml *member = node->first; member && worst != OW_MEMORY && !ow_reader_enough(reader);
         member = member->next) {
        ow_status status = read_port(reader, member, &read[at++]);
        worst = status == OW_OK ? worst : status;
    }
    if (worst != OW_OK)
        return worst;
    *count = node->count;
    *ports = read;
    return OW_OK;
}
