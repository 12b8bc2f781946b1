/* SPDX-License-Identifier: MIT */
/* The catalogue as JSON, in the units that the catalogue itself uses. */
#include "report/bores.h"
#include "report/parts_json.h"

#define DEGREES_PER_RADIAN 57.295779513082320876798154814105

static void write_part(ow_json *json, cJSON *item, const ow_part *part)
{
    ow_json_words(json, item, "id", part->id);
    ow_json_words(json, item, "kind", ow_kind_word(part->kind));
    ow_json_words(json, item, "title", part->title);
    cJSON *ends = ow_json_list(json, item, "ends");
    for (size_t end = 0; end < part->end_count; end++) {
        cJSON *one = ow_json_object(json, ends, NULL);
        ow_json_words(json, one, "name", part->end_names[end]);
        ow_json_end(json, one, "end", &part->ends[end]);
        ow_nominal nominal;
        ow_bores_json(json, one, part->leg_bore_m[end],
                      ow_end_nominal(&part->ends[end], &nominal) ? &nominal : NULL);
    }
    ow_json_words(json, item, "material", part->material);
    ow_json_scaled(json, item, "length_mm", part->length_m, 1e3, 4);
    ow_json_scaled(json, item, "angle_deg", part->angle_rad, DEGREES_PER_RADIAN, 4);
    ow_json_scaled(json, item, "orifice_mm", part->orifice_m, 1e3, 4);
    ow_json_scaled(json, item, "bend_radius_mm", part->bend_radius_m, 1e3, 4);
    ow_json_scaled(json, item, "rating_bar", part->rating_pa, 1e-5, 4);
    ow_json_cents(json, item, "price", part->has_price, part->price_cents);
    ow_json_bool(json, item, "typical", part->typical);
    ow_json_words(json, item, "standards", part->standards);
    ow_json_words(json, item, "page", part->page);
    if (part->has_stock)
        ow_json_number(json, item, "stock", part->stock_quantity);
    else
        ow_json_null(json, item, "stock");
}

/* Words, or null where they say nothing. */
static void write_said(ow_json *json, cJSON *item, const char *name, const char *words)
{
    ow_json_words(json, item, name, words[0] != '\0' ? words : NULL);
}

static void write_machine(ow_json *json, cJSON *item, const ow_machine *machine)
{
    ow_json_words(json, item, "id", machine->id);
    ow_json_words(json, item, "kind", ow_kind_word(machine->kind));
    ow_json_words(json, item, "title", machine->title);
    if (machine->kind == OW_TURBO) {
        write_said(json, item, "bearing", ow_bearing_word(machine->bearing));
        write_said(json, item, "restrictor", ow_built_in_word(machine->restrictor));
        write_said(json, item, "size", ow_turbo_size_word(machine->size));
    }
    cJSON *ports = ow_json_list(json, item, "ports");
    for (size_t index = 0; index < machine->port_count; index++) {
        const ow_port *port = &machine->ports[index];
        cJSON *one = ow_json_object(json, ports, NULL);
        ow_json_words(json, one, "name", port->name);
        ow_json_end(json, one, "end", &port->end);
        ow_json_words(json, one, "circuit", ow_circuit_word(port->circuit));
        ow_json_scaled(json, one, "bore_mm", port->bore_m, 1e3, 4);
        ow_json_scaled(json, one, "pressure_bar", port->pressure_pa, 1e-5, 4);
        ow_json_words(json, one, "holds", port->holds[0] != '\0' ? port->holds : NULL);
    }
}

/* Machines, switches and senders: what a job is about, and no part that is bought for it. */
static void write_given(ow_json *json, const ow_catalog *catalog)
{
    cJSON *machines = ow_json_list(json, json->root, "machines");
    for (size_t index = 0; index < ow_catalog_machine_count(catalog); index++)
        write_machine(json, ow_json_object(json, machines, NULL), ow_catalog_machine_at(catalog, index));
    cJSON *fixtures = ow_json_list(json, json->root, "fixtures");
    for (size_t index = 0; index < ow_catalog_fixture_count(catalog); index++)
        write_part(json, ow_json_object(json, fixtures, NULL), ow_catalog_fixture_at(catalog, index));
}

ow_status ow_report_catalog_given_json(ow_text *text, const ow_catalog *catalog)
{
    ow_json json = ow_json_new(false);
    write_given(&json, catalog);
    return ow_json_done(&json, text);
}

ow_status ow_report_catalog_list_json(ow_text *text, const ow_catalog *catalog)
{
    ow_json json = ow_json_new(false);
    write_given(&json, catalog);
    cJSON *parts = ow_json_list(&json, json.root, "parts");
    for (size_t index = 0; index < ow_catalog_part_count(catalog); index++)
        write_part(&json, ow_json_object(&json, parts, NULL), ow_catalog_part_at(catalog, index));
    return ow_json_done(&json, text);
}

ow_status ow_report_catalog_show_json(ow_text *text, const ow_catalog *catalog, const char *id)
{
    ow_json json = ow_json_new(false);
    const ow_machine *machine = ow_catalog_machine(catalog, id);
    const ow_part *part = ow_catalog_part(catalog, id);
    if (machine != NULL)
        write_machine(&json, json.root, machine);
    else if (part != NULL)
        write_part(&json, json.root, part);
    return ow_json_done(&json, text);
}
