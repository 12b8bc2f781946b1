/* SPDX-License-Identifier: MIT */
/* The catalogue for a person: one line a part, or one part whole. */
#include <string.h>

#include "report/look.h"

static void list_part(ow_text *text, const ow_part *part)
{
    size_t start = text->length;
    char words[OW_END_TEXT_SIZE];
    ow_text_add(text, part->id);
    ow_look_pad(text, start, 20);
    ow_text_add(text, ow_kind_word(part->kind));
    ow_look_pad(text, start, 34);
    for (size_t end = 0; end < part->end_count; end++)
        ow_text_format(text, "%s%s", end > 0 ? " / " : "", ow_end_name(&part->ends[end], words));
    if (part->has_price) {
        ow_text_add(text, "  ");
        ow_look_price(text, part->price_cents);
    }
    ow_text_char(text, '\n');
}

static void list_machine(ow_text *text, const ow_machine *machine)
{
    size_t start = text->length;
    ow_text_add(text, machine->id);
    ow_look_pad(text, start, 20);
    ow_text_add(text, ow_kind_word(machine->kind));
    ow_look_pad(text, start, 34);
    for (size_t port = 0; port < machine->port_count; port++)
        ow_text_format(text, "%s%s", port > 0 ? ", " : "", machine->ports[port].name);
    ow_text_char(text, '\n');
}

void ow_report_catalog_list_text(ow_text *text, const ow_catalog *catalog, const ow_style *style)
{
    (void)style;
    for (size_t index = 0; index < ow_catalog_machine_count(catalog); index++)
        list_machine(text, ow_catalog_machine_at(catalog, index));
    for (size_t index = 0; index < ow_catalog_fixture_count(catalog); index++)
        list_part(text, ow_catalog_fixture_at(catalog, index));
    for (size_t index = 0; index < ow_catalog_part_count(catalog); index++)
        list_part(text, ow_catalog_part_at(catalog, index));
}

static void fact(ow_text *text, const char *name, ow_dimension dimension, double value, int decimals)
{
    if (value < 0.0)
        return;
    ow_text_format(text, "  %s: ", name);
    ow_quantity_write(text, dimension, value, decimals);
    ow_text_char(text, '\n');
}

static void words_fact(ow_text *text, const char *name, const char *words)
{
    if (words != NULL && words[0] != '\0')
        ow_text_format(text, "  %s: %s\n", name, words);
}

static void show_ends(ow_text *text, const ow_part *part)
{
    for (size_t end = 0; end < part->end_count; end++) {
        char words[OW_END_TEXT_SIZE];
        ow_nominal nominal;
        ow_text_format(text, "  %s: %s", part->end_names[end], ow_end_name(&part->ends[end], words));
        if (part->leg_bore_m[end] >= 0.0) {
            ow_text_add(text, ", true bore ");
            ow_quantity_write(text, OW_LENGTH, part->leg_bore_m[end], 2);
        }
        if (ow_end_nominal(&part->ends[end], &nominal)) {
            ow_text_format(text, ", %s by name ", ow_nominal_of_word(nominal.of));
            ow_quantity_write(text, OW_LENGTH, nominal.size_m, 2);
        }
        ow_text_char(text, '\n');
    }
}

static void show_trade(ow_text *text, const ow_part *part)
{
    if (part->has_temperature)
        ow_text_format(text, "  temperature: %.6g to %.6g C\n", part->temperature_low_c,
                       part->temperature_high_c);
    if (part->fluids != 0)
        ow_text_format(text, "  fluids:%s%s\n", part->fluids & OW_FLUID_OIL ? " oil" : "",
                       part->fluids & OW_FLUID_COOLANT ? " coolant" : "");
    if (part->has_price) {
        ow_text_add(text, "  price: ");
        ow_look_price(text, part->price_cents);
        ow_text_add(text, part->kind == OW_HOSE ? " a metre\n" : "\n");
    }
    if (part->has_stock)
        ow_text_format(text, "  in the drawer: %.6g%s\n", part->stock_quantity,
                       part->kind == OW_HOSE ? " m" : "");
}

static void show_part(ow_text *text, const ow_part *part, const ow_style *style)
{
    ow_look_paint(text, OW_PAINT_STRONG, style, part->id);
    ow_text_format(text, "  %s, %s\n", ow_kind_word(part->kind), part->title);
    show_ends(text, part);
    fact(text, "orifice", OW_LENGTH, part->orifice_m, 3);
    fact(text, "length", OW_LENGTH, part->length_m, 2);
    fact(text, "branch length", OW_LENGTH, part->branch_length_m, 2);
    fact(text, "angle", OW_ANGLE, part->angle_rad, 1);
    fact(text, "bend radius", OW_LENGTH, part->bend_radius_m, 1);
    fact(text, "cross-hole", OW_LENGTH, part->hole_bore_m, 2);
    if (part->hole_count > 0)
        ow_text_format(text, "  cross-holes: %d\n", part->hole_count);
    fact(text, "rating", OW_PRESSURE, part->rating_pa, 1);
    fact(text, "hexagon", OW_LENGTH, part->hexagon_m, 2);
    fact(text, "mass", OW_MASS, part->mass_kg, 4);
    words_fact(text, "material", part->material);
    words_fact(text, "bolt pattern", part->bolt_pattern);
    show_trade(text, part);
    words_fact(text, "standards", part->standards);
    words_fact(text, "note", part->note);
    if (part->typical)
        ow_text_add(text, "  dimensions are typical, not a standard's: measure before relying on them\n");
    ow_text_format(text, "  page: %s (%s:%zu)\n", part->page, part->place.file, part->place.line);
}

static void show_machine(ow_text *text, const ow_machine *machine, const ow_style *style)
{
    ow_look_paint(text, OW_PAINT_STRONG, style, machine->id);
    ow_text_format(text, "  %s, %s\n", ow_kind_word(machine->kind), machine->title);
    words_fact(text, "bearing", ow_bearing_word(machine->bearing));
    if (machine->kind == OW_TURBO)
        words_fact(text, "restrictor", ow_built_in_word(machine->restrictor));
    words_fact(text, "size", ow_turbo_size_word(machine->size));
    fact(text, "coolant ports apart", OW_LENGTH, machine->coolant_apart_m, 1);
    for (size_t index = 0; index < machine->port_count; index++) {
        const ow_port *port = &machine->ports[index];
        char words[OW_END_TEXT_SIZE];
        ow_text_format(text, "  %s:%s  %s", machine->id, port->name, ow_end_name(&port->end, words));
        if (port->circuit != OW_CIRCUIT_NONE)
            ow_text_format(text, ", %s", ow_circuit_word(port->circuit));
        if (port->pressure_pa >= 0.0) {
            ow_text_add(text, ", ");
            ow_quantity_write(text, OW_PRESSURE, port->pressure_pa, 2);
        }
        if (port->holds[0] != '\0')
            ow_text_format(text, ", holds %s", port->holds);
        ow_text_char(text, '\n');
    }
    words_fact(text, "note", machine->note);
}

bool ow_report_catalog_show_text(ow_text *text, const ow_catalog *catalog, const char *id,
                                 const ow_style *style)
{
    const ow_machine *machine = ow_catalog_machine(catalog, id);
    const ow_part *part = ow_catalog_part(catalog, id);
    if (machine != NULL)
        show_machine(text, machine, style);
    else if (part != NULL)
        show_part(text, part, style);
    return machine != NULL || part != NULL;
}
